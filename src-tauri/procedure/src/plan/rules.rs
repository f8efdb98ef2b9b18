//! The rules with time: which clocks there are, what an action does to them, and what a while does.

use super::minutes::Passing;
use super::moment::{Busy, Moment, Person};
use super::{MOST_PEOPLE, Task, disturb};
use crate::machine::{
    Action, Before, Field, Machine, Pred, State, StepIx, StepRule, UNKNOWN, VarIx, VariableKind, work,
};
use crate::proof::Apart;
use crate::proof::canon::canon;

/// A wait within a step that has not begun.
pub(super) const IDLE: u16 = u16::MAX;

/// Something that runs by itself.
#[derive(Debug, Clone, Copy)]
pub(super) enum Clock<'a> {
    /// What is left of a wait before a step.
    Before { step: StepIx, since: &'a Pred, minutes: u16 },
    /// What is left of a wait within a step, or [`IDLE`].
    Within { step: StepIx, minutes: u16 },
    /// For how long a gate stays known.
    Fresh { gate: VarIx, field: Field, minutes: u16 },
}

/// Which untouched steps may be begun.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Order {
    Free,
    /// Each only when all before it in the file are behind.
    File,
    /// This one before any other.
    First(StepIx),
}

pub(super) struct Rules<'a> {
    pub task: &'a Task<'a>,
    pub machine: &'a Machine,
    pub zones: Vec<u8>,
    pub clocks: Vec<Clock<'a>>,
    /// The clock of a step's wait.
    pub of_step: Vec<Option<usize>>,
    /// The clocks of gates that a step sets.
    sets: Vec<Vec<usize>>,
    /// By step: others that it can keep from being begun or done by being done before them.
    disturbs: Vec<Vec<StepIx>>,
    pub order: Order,
}

impl<'a> Rules<'a> {
    pub fn new(task: &'a Task<'a>) -> Rules<'a> {
        let machine = &task.procedure.machine;
        let mut rules = Rules {
            task,
            machine,
            zones: task.procedure.steps().map(|(_, step)| 1 + step.zone as u8).collect(),
            clocks: Vec::new(),
            of_step: vec![None; machine.steps.len()],
            sets: vec![Vec::new(); machine.steps.len()],
            disturbs: vec![Vec::new(); machine.steps.len()],
            order: Order::Free,
        };
        for at in 0..machine.steps.len() {
            let step = StepIx::of(at);
            let clock = match (task.minutes.waits[at], task.procedure.waits_since(step)) {
                (Some(Passing::Before(minutes)), Some(since)) => Clock::Before { step, since, minutes },
                (Some(Passing::Within(minutes)), _) => Clock::Within { step, minutes },
                _ => continue,
            };
            rules.of_step[at] = Some(rules.clocks.len());
            rules.clocks.push(clock);
        }
        let gates = machine.vars.iter().enumerate().filter(|(_, var)| var.kind == VariableKind::Gate);
        for ((at, var), fresh) in gates.zip(&task.minutes.fresh) {
            let Some(minutes) = *fresh else { continue };
            for (of_step, setter) in rules.sets.iter_mut().zip(rules.task.outcomes_of(machine)) {
                if setter.iter().any(|&(field, _)| field == var.field) {
                    of_step.push(rules.clocks.len());
                }
            }
            rules.clocks.push(Clock::Fresh { gate: VarIx::of(at), field: var.field, minutes });
        }
        // One person alone does one thing after the other.
        if task.people > 1 {
            rules.disturbs = disturb::pairs(&rules);
        }
        rules
    }

    pub fn hands(&self, step: StepIx) -> u16 {
        self.task.minutes.hands[step.at()]
    }

    pub fn rule(&self, step: StepIx) -> &StepRule {
        &self.machine.steps[step.at()]
    }

    /// Whether somebody can still have to begin a step: it is not worked, or can be worked again.
    pub fn can_come(&self, state: &State, step: StepIx) -> bool {
        let rule = self.rule(step);
        match rule.work.get(state) {
            work::UNTOUCHED => true,
            work::WORKED => rule.again.is_some(),
            _ => false,
        }
    }

    /// What is left of the wait before a step.
    pub fn wait_before(&self, moment: &Moment, step: StepIx) -> u16 {
        match self.of_step[step.at()] {
            Some(at) if matches!(self.clocks[at], Clock::Before { .. }) => moment.clocks[at],
            _ => 0,
        }
    }

    /// What is left of the wait within a step: nothing where it has none, [`IDLE`] where its hands are not over.
    pub fn wait_within(&self, moment: &Moment, step: StepIx) -> Option<u16> {
        let at = self.of_step[step.at()]?;
        matches!(self.clocks[at], Clock::Within { .. }).then(|| moment.clocks[at])
    }

    /// The state after an action; nothing where it is blocked or runs into a danger that is not there already.
    pub fn act(&self, before: &Before<'_>, action: Action) -> Option<State> {
        let (next, met) = self.machine.step_judged(before, action).ok()?;
        let begins = matches!(action, Action::Begin(_));
        let held = |danger: crate::machine::DangerIx| before.dangers.contains(danger);
        let counts = |danger| !held(danger) || begins && self.machine.dangers[danger.at()].doing;
        (!met.iter().any(counts)).then_some(next)
    }

    /// The moment after an action, with its clocks. `done` is the step that the action worked.
    pub fn moved_on(&self, moment: &Moment, next: State, done: Option<StepIx>) -> Moment {
        let set: &[usize] = done.map_or(&[], |step| &self.sets[step.at()]);
        let mut clocks = moment.clocks.clone();
        for (at, clock) in self.clocks.iter().enumerate() {
            clocks[at] = match *clock {
                Clock::Before { step, .. } if !self.can_come(&next, step) => 0,
                Clock::Before { since, minutes, .. } if !since.holds(&next) => minutes,
                Clock::Within { step, .. } if done == Some(step) => IDLE,
                Clock::Fresh { field, .. } if field.get(&next) == u64::from(UNKNOWN) => 0,
                Clock::Fresh { field, minutes, .. }
                    if set.contains(&at) || field.get(&next) != field.get(&moment.state) =>
                {
                    minutes
                }
                _ => clocks[at],
            };
        }
        Moment { state: canon(self.machine, Apart::default(), next), people: moment.people, clocks }
    }

    /// Whether a step can be better begun later than it could: what it finds out grows old, or it is in the way of others
    /// that are still to be done.
    pub fn better_late(&self, state: &State, step: StepIx) -> bool {
        !self.sets[step.at()].is_empty()
            || self.disturbs[step.at()].iter().any(|&other| self.can_come(state, other))
    }

    /// Minutes until something happens by itself; nothing where nothing will.
    pub fn until_something(&self, moment: &Moment) -> Option<u16> {
        let busy = moment.people.iter().filter_map(Person::busy).min();
        let all_busy = moment.people.iter().all(|person| person.busy().is_some() || person.is_nobody());
        let clocks =
            if all_busy { [None, None] } else { [false, true].map(|which| self.running(moment, which)) };
        clocks.into_iter().chain([busy]).flatten().min()
    }

    /// Whether a minute can be of use at which nothing happens: a wait or a person is under way.
    pub fn may_tick(&self, moment: &Moment) -> bool {
        self.running(moment, false).is_some() || moment.people.iter().any(|person| person.busy().is_some())
    }

    /// What is left of the clock that runs out first: of those of knowledge, or of waits.
    fn running(&self, moment: &Moment, knowledge: bool) -> Option<u16> {
        let running = self.clocks.iter().zip(&*moment.clocks).filter(|&(clock, &left)| match clock {
            Clock::Before { since, .. } => !knowledge && left > 0 && since.holds(&moment.state),
            Clock::Within { .. } => !knowledge && left > 0 && left != IDLE,
            Clock::Fresh { .. } => knowledge && left > 0,
        });
        running.map(|(_, &left)| left).min()
    }

    /// The moment some minutes later: clocks run, and what is known grows too old.
    pub fn pass(&self, moment: &Moment, minutes: u16) -> Moment {
        let mut later = moment.clone();
        for person in &mut later.people {
            person.left = person.left.saturating_sub(minutes);
        }
        let happens = self.until_something(moment).is_none_or(|next| next <= minutes);
        for person in &mut later.people {
            person.doing = match person.doing {
                Busy::Idling if happens => Busy::Free,
                Busy::Free if !happens => Busy::Idling,
                doing => doing,
            };
        }
        let mut old = Vec::new();
        for (clock, left) in self.clocks.iter().zip(&mut *later.clocks) {
            let runs = match clock {
                Clock::Before { since, .. } => since.holds(&moment.state),
                Clock::Within { .. } => *left != IDLE,
                Clock::Fresh { gate, .. } => {
                    if *left > 0 && *left <= minutes {
                        old.push(*gate);
                    }
                    true
                }
            };
            if runs {
                *left = left.saturating_sub(minutes);
            }
        }
        for gate in old {
            // One that grew old with another is unknown already.
            if let Ok(next) = self.machine.step(&later.state, Action::Expire(gate)) {
                later = self.moved_on(&later, next, None);
            }
        }
        later
    }

    /// Where a job stands, as a moment.
    pub fn now(&self) -> Moment {
        let start = &self.task.start;
        let clocks = self.clocks.iter().map(|clock| match *clock {
            Clock::Before { step, since, minutes } if since.holds(&start.state) => {
                minutes.saturating_sub(short(start.waited.get(&step)))
            }
            Clock::Before { minutes, .. } => minutes,
            Clock::Within { step, minutes } => {
                start.left.get(&step).map_or(IDLE, |_| minutes.saturating_sub(short(start.left.get(&step))))
            }
            Clock::Fresh { gate, minutes, .. } => minutes.saturating_sub(short(start.ages.get(&gate))).max(1),
        });
        let moment =
            Moment { state: start.state, people: [Person::NOBODY; MOST_PEOPLE], clocks: clocks.collect() };
        // Clocks of what is not waited for and not known stand at nothing.
        let mut moment = self.moved_on(&moment, start.state, None);
        let in_progress: Vec<StepIx> = self.machine.begun(&start.state).collect();
        let free = Person::free(start.at.map_or(0, |zone| 1 + zone as u8));
        for at in 0..self.task.people {
            let person = in_progress.get(at).map_or(free, |&step| self.in_progress(&mut moment, step));
            moment.people[at] = person;
        }
        moment.people.sort_unstable();
        moment
    }

    /// Somebody who is in a step already.
    fn in_progress(&self, moment: &mut Moment, step: StepIx) -> Person {
        let been = short(self.task.start.in_progress.get(&step));
        let at = self.zones[step.at()];
        let left = match self.wait_before(moment, step) {
            0 => self.hands(step).saturating_sub(been),
            // The hands are of use only when it is over.
            wait => self.hands(step).saturating_add(wait),
        };
        if let Some(clock) = self.of_step[step.at()]
            && let Clock::Within { minutes, .. } = self.clocks[clock]
            && (left == 0 || moment.clocks[clock] != IDLE)
        {
            if moment.clocks[clock] == IDLE {
                moment.clocks[clock] = minutes.saturating_sub(been.saturating_sub(self.hands(step)));
            }
            return Person { doing: Busy::Staying(step), ..Person::free(at) };
        }
        Person { doing: Busy::Working(step), left, ..Person::free(at) }
    }
}

fn short(minutes: Option<&u32>) -> u16 {
    minutes.map_or(0, |&minutes| u16::try_from(minutes).unwrap_or(u16::MAX))
}

impl Task<'_> {
    /// What each step assigns when it turns out as planned for.
    pub(super) fn outcomes_of<'m>(
        &'m self,
        machine: &'m Machine,
    ) -> impl Iterator<Item = &'m [(Field, u64)]> {
        machine.steps.iter().zip(&self.outcomes).map(|(rule, outcome)| {
            rule.outcomes.get(outcome.at()).map_or(&[] as &[(Field, u64)], |outcome| &outcome.assign.edits)
        })
    }
}
