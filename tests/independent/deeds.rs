//! What each deed does, and when it is allowed.
//!
//! Where the format's page is silent this follows the crate, so that the comparison is about what the page says:
//! a permit must be valid at `done` too; before a vehicle action every begun step's `while` holds already; who is in a step
//! keeps it from being voided; a void reaches what builds on the step through one that is not worked, too; what
//! builds on a voided step is corrected after it; a step is skipped in an open phase of a running job; hands are
//! still there at the moments of `done`.

use std::collections::BTreeSet;

use panside_procedure::format::Step;

use super::bay::{Bay, Deed, Over, Work};
use super::truth::{Rules, Truth};

/// What a deed leads to, and the moments on the way at which a danger could show.
pub struct Told {
    pub after: Bay,
    pub moments: Vec<Bay>,
}

impl Rules {
    /// Carries out a deed; nothing where it is refused.
    pub fn carry_out(&self, bay: &Bay, deed: &Deed) -> Option<Told> {
        if matches!(bay.over, Over::Finished | Over::Stopped) {
            return None;
        }
        let mut next = bay.clone();
        let mut moments = Vec::new();
        match deed {
            Deed::Begin(id) => self.begin(bay, &mut next, self.step(id)?)?,
            Deed::Leave(id) => {
                next.begun.remove(id).then_some(())?;
                next.set_matter(&self.step(id)?.on_leave);
            }
            Deed::Done(id, outcome) => self.done(bay, &mut next, self.step(id)?, *outcome, &mut moments)?,
            Deed::Correct(id, outcome) => {
                self.correct(bay, &mut next, self.step(id)?, *outcome, &mut moments)?
            }
            Deed::Vehicle(id) => {
                let made = self.checklist.vehicle_actions.iter().find(|made| made.id == *id)?;
                (self.holds(&made.needs, bay) && self.all_may_stay(bay)).then_some(())?;
                next.set_matter(&made.makes);
                (next != *bay).then_some(())?;
            }
            Deed::Sign(id) => {
                let sign = self.checklist.sign_offs.iter().find(|sign| sign.id == *id)?;
                let step = self.steps().find(|step| Rules::signs(step).any(|given| given == id))?;
                let may = bay.work[&step.id] == Work::Worked && self.holds(&sign.holds_while, bay);
                (may && next.signed.insert(id.clone())).then_some(())?;
            }
            Deed::Skip(id) => {
                let step = self.step(id)?;
                let may = step.may_skip
                    && bay.over == Over::No
                    && bay.work[id] == Work::Untouched
                    && !bay.begun.contains(id)
                    && self.in_job(bay, step) == Truth::Yes
                    && self.is_open(bay, self.phase_of(step)?);
                may.then_some(())?;
                next.work.insert(id.clone(), Work::Skipped);
            }
            Deed::Void(id) => self.void(bay, &mut next, id)?,
            Deed::Observe(name, value) => self.observe(bay, &mut next, name, value)?,
            Deed::Expire(gate) => {
                next.known.insert(gate.clone(), None)??;
            }
            Deed::Finish => {
                let may = bay.over == Over::No
                    && bay.begun.is_empty()
                    && self.holds(&self.checklist.done_when, bay);
                may.then_some(())?;
                next.over = Over::Finished;
            }
            Deed::Stop => {
                (bay.begun.is_empty() && self.holds(&self.checklist.safe_to_leave, bay)).then_some(())?;
                next.over = Over::Stopped;
            }
        }
        self.settle(&mut next, &mut moments);
        if matches!(deed, Deed::Vehicle(_)) && !self.all_may_stay(&next) {
            return None;
        }
        moments.push(next.clone());
        Some(Told { after: next, moments })
    }

    fn permits_valid(bay: &Bay, step: &Step) -> bool {
        step.permits.iter().all(|permit| bay.signed.contains(permit))
    }

    fn while_holds(&self, bay: &Bay, step: &Step) -> bool {
        self.holds(step.while_.as_ref().unwrap_or(&step.needs), bay)
    }

    fn all_may_stay(&self, bay: &Bay) -> bool {
        let mut begun = self.steps().filter(|step| bay.begun.contains(&step.id));
        begun.all(|step| self.while_holds(bay, step) && Self::permits_valid(bay, step))
    }

    fn begin(&self, bay: &Bay, next: &mut Bay, step: &Step) -> Option<()> {
        let fresh = match bay.work[&step.id] {
            Work::Untouched => true,
            Work::Worked => step.again.as_ref().is_some_and(|again| self.holds(again, bay)),
            Work::Voided | Work::Skipped => false,
        };
        let may = fresh
            && (bay.over == Over::No || step.when_ending)
            && self.in_job(bay, step) == Truth::Yes
            && step.after.iter().all(|before| self.is_behind(bay, before))
            && self.is_open(bay, self.phase_of(step)?)
            && self.holds(&step.needs, bay)
            && Self::permits_valid(bay, step)
            && bay.begun.len() < usize::from(self.checklist.crew);
        (may && next.begun.insert(step.id.clone())).then_some(())?;
        next.set_matter(&step.on_begin);
        Some(())
    }

    fn done(
        &self,
        bay: &Bay,
        next: &mut Bay,
        step: &Step,
        outcome: usize,
        moments: &mut Vec<Bay>,
    ) -> Option<()> {
        let may =
            bay.begun.contains(&step.id) && self.while_holds(bay, step) && Self::permits_valid(bay, step);
        may.then_some(())?;
        let outcome = Rules::outcomes(step).into_iter().nth(outcome)?;
        if bay.work[&step.id] != Work::Worked {
            for (item, pieces) in &step.takes_off {
                let most = self.checklist.items.iter().find(|one| one.id == *item)?.count;
                next.empty.insert(item.clone(), (next.empty[item] + pieces).min(most));
            }
            for (item, pieces) in &step.puts_back {
                next.empty.insert(item.clone(), next.empty[item].saturating_sub(*pieces));
            }
        }
        next.work.insert(step.id.clone(), Work::Worked);
        next.set_known(&outcome.sets);
        next.set_matter(&outcome.makes);
        if outcome.ends {
            next.over = Over::Ending;
        }
        self.settle(next, moments);
        for id in Rules::signs(step) {
            let sign = self.checklist.sign_offs.iter().find(|sign| sign.id == *id)?;
            self.holds(&sign.holds_while, next).then_some(())?;
            next.signed.insert(id.clone());
        }
        next.begun.remove(&step.id);
        Some(())
    }

    /// From voided only: sets gates that do not age and signs where that is so.
    fn correct(
        &self,
        bay: &Bay,
        next: &mut Bay,
        step: &Step,
        outcome: usize,
        moments: &mut Vec<Bay>,
    ) -> Option<()> {
        let base_voided = step.relies_on.iter().any(|base| bay.work[base] == Work::Voided);
        (bay.work[&step.id] == Work::Voided && !base_voided).then_some(())?;
        let mut outcome = Rules::outcomes(step).into_iter().nth(outcome)?;
        for gate in self.checklist.gates.iter().filter(|gate| gate.fresh_for.is_some()) {
            outcome.sets.remove(&gate.id);
        }
        next.work.insert(step.id.clone(), Work::Worked);
        next.set_known(&outcome.sets);
        if outcome.ends {
            next.over = Over::Ending;
        }
        self.settle(next, moments);
        for id in Rules::signs(step) {
            let sign = self.checklist.sign_offs.iter().find(|sign| sign.id == *id)?;
            if self.holds(&sign.holds_while, next) {
                next.signed.insert(id.clone());
            }
        }
        Some(())
    }

    fn gates_of(step: &Step) -> BTreeSet<String> {
        Rules::outcomes(step).into_iter().flat_map(|outcome| outcome.sets.into_keys()).collect()
    }

    fn void(&self, bay: &Bay, next: &mut Bay, id: &str) -> Option<()> {
        (bay.work[id] == Work::Worked).then_some(())?;
        let mut voided = BTreeSet::from([id.to_owned()]);
        // A step names earlier ones only, so one pass in file order finds what builds on it, however far back.
        for step in self.steps() {
            if step.relies_on.iter().any(|base| voided.contains(base)) {
                voided.insert(step.id.clone());
            }
        }
        voided.retain(|step| bay.work[step] == Work::Worked);
        voided.is_disjoint(&bay.begun).then_some(())?;
        for (at, step) in self.steps().enumerate().filter(|(_, step)| voided.contains(&step.id)) {
            next.work.insert(step.id.clone(), Work::Voided);
            for gate in Self::gates_of(step) {
                let wrote_it_too = |later: &Step| {
                    bay.work[&later.id] == Work::Worked
                        && !voided.contains(&later.id)
                        && Self::gates_of(later).contains(&gate)
                };
                if !self.steps().skip(at + 1).any(wrote_it_too) {
                    next.known.insert(gate, None);
                }
            }
            next.signed.retain(|sign| !Rules::signs(step).any(|given| given == sign));
        }
        Some(())
    }

    fn observe(&self, bay: &Bay, next: &mut Bay, name: &str, value: &str) -> Option<()> {
        (bay.matter[name] != value).then_some(())?;
        next.matter.insert(name.to_owned(), value.to_owned());
        if self.checklist.vehicle_actions.iter().any(|made| made.makes.contains_key(name)) {
            return Some(());
        }
        for step in self.steps().filter(|step| bay.work[&step.id] == Work::Worked) {
            let made: BTreeSet<String> = Rules::outcomes(step)
                .into_iter()
                .filter_map(|mut outcome| outcome.makes.remove(name))
                .collect();
            if made.is_empty() || made.contains(value) {
                continue;
            }
            next.work.insert(step.id.clone(), Work::Untouched);
            for (item, pieces) in &step.takes_off {
                next.empty.insert(item.clone(), next.empty[item].saturating_sub(*pieces));
            }
            for (item, pieces) in &step.puts_back {
                let most = self.checklist.items.iter().find(|one| one.id == *item)?.count;
                next.empty.insert(item.clone(), (next.empty[item] + pieces).min(most));
            }
            next.signed.retain(|sign| !Rules::signs(step).any(|given| given == sign));
        }
        Some(())
    }

    /// Follows in file order until nothing changes, then lapses until nothing changes.
    pub fn settle(&self, bay: &mut Bay, moments: &mut Vec<Bay>) {
        moments.push(bay.clone());
        loop {
            let before = bay.clone();
            for follow in &self.checklist.follows {
                if self.holds(&follow.when, bay) {
                    bay.set_matter(&follow.makes);
                    bay.set_known(&follow.sets);
                    moments.push(bay.clone());
                }
            }
            if *bay == before {
                break;
            }
        }
        loop {
            let before = bay.clone();
            for gate in &self.checklist.gates {
                if gate.holds_while.as_ref().is_some_and(|holds| !self.holds(holds, bay)) {
                    bay.known.insert(gate.id.clone(), None);
                }
            }
            for sign in &self.checklist.sign_offs {
                if !self.holds(&sign.holds_while, bay) {
                    bay.signed.remove(&sign.id);
                }
            }
            if *bay == before {
                break;
            }
        }
    }
}
