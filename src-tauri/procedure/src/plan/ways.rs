//! What can be done at a moment.

use super::moment::{Busy, Moment, Op, Person, Who};
use super::rules::{IDLE, Order, Rules};
use crate::machine::{Action, Before, InJob, SignIx, State, StepIx, VehicleActionIx, over, work};

/// The zones of a bay; 0 is anywhere.
const ZONES: std::ops::RangeInclusive<u8> = 1..=4;

impl Rules<'_> {
    /// Everything that can come next. What is over is ended first, then people begin something, or time passes.
    pub fn ways(&self, moment: &Moment, into: &mut Vec<(Op, Moment)>) {
        into.clear();
        let dangers = self.machine.dangers_now(&moment.state);
        let before = Before::new(self.machine, &moment.state, dangers);
        let over: Vec<usize> =
            (0..moment.people.len()).filter(|&person| self.is_over(moment, person)).collect();
        let mut late = false;
        let mut try_one = |op: Op| {
            if let Some(next) = self.carried_out(&before, moment, op) {
                late |= matches!(op, Op::Begin(_, step) if self.better_late(&moment.state, step));
                into.push((op, next));
            }
        };
        if !over.is_empty() {
            over.into_iter().for_each(|person| try_one(Op::End(Who::of(person))));
            return;
        }
        let mut last = None;
        for (at, person) in moment.people.iter().enumerate() {
            match person.doing {
                // One who is like the one before begins nothing that that one would not.
                Busy::Free | Busy::Idling if last != Some(*person) => {
                    last = Some(*person);
                    self.beginnings(moment, at, &mut try_one);
                }
                Busy::Staying(step) => try_one(Op::Leave(Who::of(at), step)),
                _ => {}
            }
        }
        if moment.people.iter().any(|person| person.doing == Busy::Free) {
            (0..self.machine.signs.len()).for_each(|at| try_one(Op::Sign(SignIx::of(at))));
            (0..self.machine.steps.len())
                .map(StepIx::of)
                .filter(|step| self.rule(*step).work.get(&moment.state) == work::VOIDED)
                .for_each(|step| try_one(Op::Correct(step)));
        }
        if let Some(minutes) = self.until_something(moment) {
            // Mostly nothing is won by beginning later than one could, unless something happens before.
            let minutes = if late && self.may_tick(moment) { 1 } else { minutes };
            if let Some(next) = self.carried_out(&before, moment, Op::Pass(minutes)) {
                into.push((Op::Pass(minutes), next));
            }
        }
    }

    fn is_over(&self, moment: &Moment, person: usize) -> bool {
        let person = &moment.people[person];
        match person.doing {
            Busy::Free | Busy::Idling | Busy::Nobody => false,
            Busy::Staying(step) => self.wait_within(moment, step) == Some(0),
            Busy::Walking | Busy::Working(_) | Busy::Moving(_) => person.left == 0,
        }
    }

    /// What a free person can begin.
    fn beginnings(&self, moment: &Moment, person: usize, try_one: &mut impl FnMut(Op)) {
        let Person { at, doing, walked, .. } = moment.people[person];
        let who = Who::of(person);
        let mut wanted = [false; 5];
        for step in (0..self.machine.steps.len()).map(StepIx::of) {
            let zone = self.zones[step.at()];
            // What can't be begun yet may be possible when somebody has walked there.
            wanted[usize::from(zone)] |= self.can_come(&moment.state, step);
            let in_zone = at == 0 || at == zone;
            if in_zone
                && (doing == Busy::Free || self.better_late(&moment.state, step))
                && self.may_come(&moment.state, step)
            {
                try_one(Op::Begin(who, step));
            }
        }
        if doing == Busy::Idling {
            return;
        }
        if at != 0 && !walked {
            ZONES
                .filter(|&zone| zone != at && wanted[usize::from(zone)])
                .for_each(|zone| try_one(Op::Walk(who, zone)));
        }
        (0..self.machine.vehicle_actions.len())
            .for_each(|made| try_one(Op::Vehicle(who, VehicleActionIx::of(made))));
    }

    /// Whether a step can still be begun some time, by what has been done.
    fn may_come(&self, state: &State, step: StepIx) -> bool {
        let rule = self.rule(step);
        match rule.work.get(state) {
            work::UNTOUCHED => !self.machine.is_begun(state, step),
            work::WORKED => rule.again.as_ref().is_some_and(|again| again.holds(state)),
            _ => false,
        }
    }

    /// The moment after something is done; nothing where the rules do not allow it.
    pub fn after(&self, moment: &Moment, op: Op) -> Option<Moment> {
        let dangers = self.machine.dangers_now(&moment.state);
        self.carried_out(&Before::new(self.machine, &moment.state, dangers), moment, op)
    }

    /// As [`Rules::after`], people as they were; whoever follows a person sorts them himself.
    pub fn after_unsorted(&self, before: &Before<'_>, moment: &Moment, op: Op) -> Option<Moment> {
        match op {
            Op::Pass(minutes) => Some(self.pass(moment, minutes)),
            Op::End(who) => self.end(before, moment, who.at()),
            Op::Walk(who, zone) => {
                let left = self.task.minutes.walk;
                let walking = Person { doing: Busy::Walking, left, at: zone, walked: true };
                Some(with(moment.clone(), who.at(), walking))
            }
            Op::Begin(who, step) => self.begin(before, moment, who.at(), step),
            Op::Leave(who, step) => {
                // What leaving changes is not changed while something moves.
                if self.something_moves(moment) && !self.rule(step).on_leave.edits.is_empty() {
                    return None;
                }
                let next = self.act(before, Action::Leave(step))?;
                Some(with(
                    self.moved_on(moment, next, None),
                    who.at(),
                    Person::free(moment.people[who.at()].at),
                ))
            }
            Op::Vehicle(who, made) => self.vehicle_action(before, moment, who.at(), made),
            Op::Sign(given) => Some(self.moved_on(moment, self.act(before, Action::Sign(given))?, None)),
            Op::Correct(step) => {
                let next = self.act(before, Action::Correct(step, self.task.outcomes[step.at()]))?;
                Some(self.moved_on(moment, next, None))
            }
        }
    }

    fn carried_out(&self, before: &Before<'_>, moment: &Moment, op: Op) -> Option<Moment> {
        let mut next = self.after_unsorted(before, moment, op)?;
        next.people.sort_unstable();
        Some(next)
    }

    fn something_moves(&self, moment: &Moment) -> bool {
        moment.people.iter().any(|person| matches!(person.doing, Busy::Moving(_)))
    }

    fn begin(&self, before: &Before<'_>, moment: &Moment, person: usize, step: StepIx) -> Option<Moment> {
        let within = self.wait_within(moment, step);
        let runs = within.is_some_and(|left| left != 0 && left != IDLE);
        if self.something_moves(moment)
            || runs
            || self.wait_before(moment, step) > 0
            || !self.in_order(&moment.state, step)
        {
            return None;
        }
        let next = self.act(before, Action::Begin(step))?;
        let left = if within == Some(0) { 0 } else { self.hands(step) };
        let at = self.zones[step.at()];
        let busy = Person { doing: Busy::Working(step), left, ..Person::free(at) };
        Some(with(self.moved_on(moment, next, None), person, busy))
    }

    fn vehicle_action(
        &self,
        before: &Before<'_>,
        moment: &Moment,
        person: usize,
        made: VehicleActionIx,
    ) -> Option<Moment> {
        if self.something_moves(moment) {
            return None;
        }
        let next = self.act(before, Action::Vehicle(made))?;
        Some(match self.task.minutes.vehicle_actions[made.at()] {
            0 => self.moved_on(moment, next, None),
            left => {
                let moving = Person { doing: Busy::Moving(made), left, ..moment.people[person] };
                with(moment.clone(), person, moving)
            }
        })
    }

    fn end(&self, before: &Before<'_>, moment: &Moment, person: usize) -> Option<Moment> {
        let is = moment.people[person];
        let free = Person { walked: is.walked, ..Person::free(is.at) };
        match is.doing {
            Busy::Free | Busy::Idling | Busy::Nobody => None,
            Busy::Walking => Some(with(moment.clone(), person, free)),
            Busy::Moving(made) => {
                let next = self.act(before, Action::Vehicle(made))?;
                Some(with(self.moved_on(moment, next, None), person, free))
            }
            Busy::Working(step) if self.wait_within(moment, step) == Some(IDLE) => {
                let mut next = with(moment.clone(), person, Person { doing: Busy::Staying(step), ..is });
                if let Some(at) = self.of_step[step.at()]
                    && let super::rules::Clock::Within { minutes, .. } = self.clocks[at]
                {
                    next.clocks[at] = minutes;
                }
                Some(next)
            }
            Busy::Working(step) | Busy::Staying(step) => {
                let next = self.act(before, Action::Done(step, self.task.outcomes[step.at()]))?;
                Some(with(self.moved_on(moment, next, Some(step)), person, free))
            }
        }
    }

    /// Whether the order that is asked for lets a step be begun now.
    fn in_order(&self, state: &State, step: StepIx) -> bool {
        let untouched = |step: StepIx| {
            self.rule(step).work.get(state) == work::UNTOUCHED && !self.machine.is_begun(state, step)
        };
        match self.order {
            Order::Free => true,
            Order::First(first) => step == first || !untouched(first),
            Order::File => {
                let earlier = (0..step.at()).map(StepIx::of);
                !untouched(step) || earlier.into_iter().all(|earlier| !self.is_open(state, earlier))
            }
        }
    }

    /// Whether a step has still to be done: it is in the job, untouched and not missed.
    fn is_open(&self, state: &State, step: StepIx) -> bool {
        self.rule(step).work.get(state) == work::UNTOUCHED
            && !self.machine.is_begun(state, step)
            && self.machine.in_job(state, step) == InJob::Yes
            && !self.machine.is_missed(state, step)
    }

    /// Whether this is the end: nobody is at anything, nothing is left, and the job may be ended.
    pub fn is_end(&self, moment: &Moment) -> bool {
        if moment.people.iter().any(|person| !person.is_free() && !person.is_nobody()) {
            return false;
        }
        self.may_end(&moment.state)
    }

    /// Whether the job may be ended in this state, by what is left to do.
    pub fn may_end(&self, state: &State) -> bool {
        if self.machine.over(state) == over::ENDING {
            return self.machine.step(state, Action::Stop).is_ok();
        }
        self.machine.step(state, Action::Finish).is_ok()
            && !(0..self.machine.steps.len()).map(StepIx::of).any(|step| self.is_open(state, step))
    }

    /// Where the search begins: as it is, and with one or all of those who are in a step out of it. Only here may
    /// somebody leave a step that is not waiting: what is in progress may have been begun otherwise than planned.
    pub fn beginnings_of_all(&self) -> Vec<(Vec<Op>, Moment)> {
        let mut seeds = vec![(Vec::new(), self.now())];
        let mut at = 0;
        while let Some((ops, moment)) = seeds.get(at).cloned() {
            at += 1;
            for (person, is) in moment.people.iter().enumerate() {
                if let Busy::Working(step) | Busy::Staying(step) = is.doing
                    && let Some(next) = self.after(&moment, Op::Leave(Who::of(person), step))
                {
                    let ops = ops.iter().copied().chain([Op::Leave(Who::of(person), step)]).collect();
                    seeds.push((ops, next));
                }
            }
        }
        seeds
    }
}

fn with(mut moment: Moment, person: usize, is: Person) -> Moment {
    moment.people[person] = is;
    moment
}
