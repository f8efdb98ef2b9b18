//! What was found, told as what each person does when, and what is waited for meanwhile.

use super::moment::{Busy, Moment, Op, Person};
use super::rules::{Clock, Rules};
use super::search::{Searched, minutes_of};
use super::{Certainty, MOST_PEOPLE, Plan, tidy};
use crate::format::Zone;
use crate::machine::{Before, SignIx, State, StepIx, VehicleActionIx};

/// One thing that a person does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Doing {
    /// Who, from 0.
    pub person: usize,
    /// What.
    pub what: What,
    /// Minutes from now when it begins.
    pub from: u32,
    /// Minutes from now when it is over.
    pub until: u32,
}

/// What a person does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum What {
    /// Works a step to its end.
    Work(StepIx),
    /// Works a step until its hands are free, and leaves it while its wait runs.
    Start(StepIx),
    /// Leaves a step that is in progress.
    Leave(StepIx),
    /// Makes a vehicle action.
    Vehicle(VehicleActionIx),
    /// Walks to a zone.
    Walk(Zone),
    /// Signs again.
    Sign(SignIx),
    /// Corrects a voided step afterwards.
    Correct(StepIx),
}

/// Something that is waited for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Waiting {
    /// The step that it belongs to.
    pub step: StepIx,
    /// Minutes from now when it begins; what runs already begins now.
    pub from: u32,
    /// Minutes from now when it is over.
    pub until: u32,
    /// Somebody stays and watches.
    pub attended: bool,
    /// Minutes of it in which nobody does anything.
    pub idle: u32,
}

const ZONES: [Zone; 4] = [Zone::Under, Zone::EngineBay, Zone::Cabin, Zone::Bench];

/// The plan that a search found, without what it does for nothing. Its certainty is for the caller to say.
pub(super) fn plan(rules: &Rules<'_>, searched: &Searched) -> Plan {
    let ops = tidy::tidied(rules, searched.ops.as_deref().unwrap_or_default());
    let mut teller = Teller::new(rules);
    ops.iter().for_each(|&op| teller.tell(op));
    let Teller { mut doings, mut waits, now, .. } = teller;
    doings.sort_by_key(|doing| (doing.from, doing.until, doing.person));
    waits.sort_by_key(|wait| (wait.from, wait.until));
    for wait in waits.iter_mut().filter(|wait| !wait.attended) {
        wait.idle = idle(&doings, wait.from, wait.until);
    }
    let bound = searched.bound.min(now);
    let certainty = Certainty::Quick;
    Plan { doings, waits, total: now, bound, certainty, looked_at: searched.looked_at }
}

/// Minutes in a stretch of time in which nobody does anything.
fn idle(doings: &[Doing], from: u32, until: u32) -> u32 {
    let busy = |minute: u32| doings.iter().any(|doing| doing.from <= minute && minute < doing.until);
    (from..until).filter(|&minute| !busy(minute)).count() as u32
}

struct Teller<'r, 'a> {
    rules: &'r Rules<'a>,
    moment: Moment,
    now: u32,
    /// Since when each person is busy with what.
    since: [u32; MOST_PEOPLE],
    doings: Vec<Doing>,
    waits: Vec<Waiting>,
    /// Since when each wait before a step runs, and whether it was told.
    runs: Vec<Option<(u32, bool)>>,
}

impl<'r, 'a> Teller<'r, 'a> {
    fn new(rules: &'r Rules<'a>) -> Teller<'r, 'a> {
        let moment = rules.now();
        let mut teller = Teller {
            runs: vec![None; rules.clocks.len()],
            since: [0; MOST_PEOPLE],
            doings: Vec::new(),
            waits: Vec::new(),
            now: 0,
            rules,
            moment,
        };
        teller.look_at_clocks();
        // A wait that somebody stays at already.
        for person in teller.moment.people {
            if let Busy::Staying(step) = person.doing {
                teller.within(step);
            }
        }
        teller
    }

    fn tell(&mut self, op: Op) {
        let state: State = self.moment.state;
        let machine = self.rules.machine;
        let before = Before::new(machine, &state, machine.dangers_now(&state));
        let Some(next) = self.rules.after_unsorted(&before, &self.moment, op) else { return };
        match op {
            Op::End(who) => self.ended(who.at(), next.people[who.at()]),
            Op::Leave(who, step) => {
                let person = who.at();
                let began = self.since[person];
                let stayed = matches!(self.moment.people[person].doing, Busy::Staying(_));
                self.done(person, if stayed { What::Start(step) } else { What::Leave(step) }, began);
            }
            Op::Begin(who, step) => {
                self.since[who.at()] = self.now;
                self.before(step);
            }
            Op::Vehicle(who, made) => {
                let person = who.at();
                self.since[person] = self.now;
                // One that takes no time is over at once.
                if !matches!(next.people[person].doing, Busy::Moving(_)) {
                    self.done(person, What::Vehicle(made), self.now);
                }
            }
            Op::Walk(who, _) => self.since[who.at()] = self.now,
            Op::Sign(given) => self.done(self.someone_free(), What::Sign(given), self.now),
            Op::Correct(step) => self.done(self.someone_free(), What::Correct(step), self.now),
            Op::Pass(_) => {}
        }
        self.now += minutes_of(op);
        self.moment = next;
        self.look_at_clocks();
    }

    fn done(&mut self, person: usize, what: What, from: u32) {
        self.doings.push(Doing { person, what, from, until: self.now });
    }

    fn someone_free(&self) -> usize {
        self.moment.people.iter().position(Person::is_free).unwrap_or(0)
    }

    /// What somebody was busy with is over.
    fn ended(&mut self, person: usize, after: Person) {
        let from = self.since[person];
        match (self.moment.people[person].doing, after.doing) {
            (Busy::Working(step), Busy::Staying(_)) => self.within(step),
            (Busy::Working(step) | Busy::Staying(step), _) => {
                self.done(person, What::Work(step), from);
                let watching = u32::from(self.rules.task.minutes.watching[step.at()]);
                if watching > 0 {
                    let from = from.max(self.now.saturating_sub(watching));
                    self.waits.push(Waiting { step, from, until: self.now, attended: true, idle: 0 });
                }
            }
            (Busy::Moving(made), _) => self.done(person, What::Vehicle(made), from),
            (Busy::Walking, _) => {
                let zone = ZONES[usize::from(after.at.clamp(1, 4)) - 1];
                self.done(person, What::Walk(zone), from);
            }
            (Busy::Free | Busy::Idling | Busy::Nobody, _) => {}
        }
    }

    /// The wait within a step begins.
    fn within(&mut self, step: StepIx) {
        let left = match self.rules.wait_within(&self.moment, step) {
            Some(left) if left != super::rules::IDLE => u32::from(left),
            _ => self.rules.full_wait_within(step),
        };
        let wait = Waiting { step, from: self.now, until: self.now + left, attended: false, idle: 0 };
        self.waits.push(wait);
    }

    /// A step is begun: the wait before it is told, if it was not.
    fn before(&mut self, step: StepIx) {
        let Some(at) = self.rules.of_step[step.at()] else { return };
        let Clock::Before { minutes, .. } = self.rules.clocks[at] else { return };
        let Some((from, false)) = self.runs[at] else { return };
        self.runs[at] = Some((from, true));
        let ran_before = if from == 0 { self.ran_already(at) } else { 0 };
        let until = from + u32::from(minutes.saturating_sub(ran_before));
        if until > from {
            self.waits.push(Waiting { step, from, until, attended: false, idle: 0 });
        }
    }

    /// Minutes that a wait had run when the plan begins.
    fn ran_already(&self, at: usize) -> u16 {
        match self.rules.clocks[at] {
            Clock::Before { minutes, .. } => minutes.saturating_sub(self.rules.now().clocks[at]),
            _ => 0,
        }
    }

    fn look_at_clocks(&mut self) {
        for (at, clock) in self.rules.clocks.iter().enumerate() {
            if let Clock::Before { since, .. } = clock {
                match (since.holds(&self.moment.state), self.runs[at]) {
                    (true, None) => self.runs[at] = Some((self.now, false)),
                    (false, _) => self.runs[at] = None,
                    _ => {}
                }
            }
        }
    }
}
