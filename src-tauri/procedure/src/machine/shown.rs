//! What follows from a state and is not stored: whether a step is in the job, open, missed, lapsed.

use super::{Action, Blocked, Machine, PhaseIx, SignIx, State, StepIx, StepSet, over, sign, work};

/// Whether a step is part of this job.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InJob {
    /// It is.
    Yes,
    /// It is not.
    No,
    /// What decides it is not known yet.
    Undecided,
}

/// How a step is shown.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, serde::Deserialize, ts_rs::TS,
)]
#[serde(rename_all = "snake_case")]
pub enum Shown {
    /// It is not known yet whether it is part of this job.
    Undecided,
    /// Not part of this job.
    NotInThisJob,
    /// Something must come or hold first.
    Waiting,
    /// It can be begun.
    Open,
    /// Somebody is in it.
    InProgress,
    /// Worked, every attest valid.
    Done,
    /// Worked, but an attest of it has lapsed.
    Lapsed,
    /// What was entered is voided and not corrected.
    Voided,
    /// Skipped with a reason.
    Skipped,
    /// It came into the job after its phase had passed.
    Missed,
}

impl Machine {
    /// Whether a sign-off is valid.
    #[inline]
    #[must_use]
    pub fn is_valid(&self, state: &State, given: SignIx) -> bool {
        self.signs[given.at()].field.get(state) == sign::VALID
    }

    /// Whether a sign-off was given and has lapsed.
    #[must_use]
    pub fn has_lapsed(&self, state: &State, given: SignIx) -> bool {
        self.signs[given.at()].field.get(state) == sign::LAPSED
    }

    /// Whether the step is part of this job. Once begun or dealt with it stays in.
    #[must_use]
    pub fn in_job(&self, state: &State, step: StepIx) -> InJob {
        let rule = &self.steps[step.at()];
        let Some((yes, no)) = &rule.on else { return InJob::Yes };
        if rule.work.get(state) != work::UNTOUCHED || self.is_begun(state, step) || yes.holds(state) {
            InJob::Yes
        } else if no.holds(state) {
            InJob::No
        } else {
            InJob::Undecided
        }
    }

    /// Whether the job is ending by stop and call.
    #[must_use]
    pub fn is_ending(&self, state: &State) -> bool {
        self.over(state) == over::ENDING
    }

    /// Whether the job is finished.
    #[must_use]
    pub fn is_finished(&self, state: &State) -> bool {
        self.over(state) == over::FINISHED
    }

    /// Whether the job was stopped before its end.
    #[must_use]
    pub fn is_stopped(&self, state: &State) -> bool {
        self.over(state) == over::STOPPED
    }

    /// Whether the phase is open.
    ///
    /// # Errors
    /// [`Blocked::Phase`] with a step of an earlier phase that is not dealt with.
    pub fn phase_open(&self, state: &State, phase: PhaseIx) -> Result<(), Blocked> {
        let rule = &self.phases[phase.at()];
        if self.any_entered(state, &rule.entered, &rule.entered_steps) {
            return Ok(());
        }
        let untouched = |word: usize, mask: u64| {
            let work = state.words[word];
            !(work | work >> 1) & mask
        };
        let first_certain = rule.waits_on.iter().find_map(|&(word, mask)| {
            let open = untouched(word, mask);
            (open != 0).then(|| StepIx::of((word * 64 + open.trailing_zeros() as usize) / 2))
        });
        let waits_for = first_certain.or_else(|| {
            rule.waits_on_some.iter().copied().find(|&step| {
                // A step that came into the job after its phase had passed holds nothing up.
                self.steps[step.at()].work.get(state) == work::UNTOUCHED
                    && self.in_job(state, step) != InJob::No
                    && !self.is_missed(state, step)
            })
        });
        waits_for.map_or(Ok(()), |step| Err(Blocked::Phase(step)))
    }

    fn any_entered(&self, state: &State, words: &[(usize, u64)], steps: &StepSet) -> bool {
        words.iter().any(|&(word, mask)| state.words[word] & mask != 0)
            || self.begun(state).any(|step| steps.contains(step))
    }

    /// Whether a step of a phase that waits for this one has been entered.
    fn has_passed(&self, state: &State, phase: PhaseIx) -> bool {
        let steps = &self.phases[phase.at()].passed_steps;
        self.begun(state).any(|step| steps.contains(step))
            || (0..self.steps.len())
                .map(StepIx::of)
                .any(|step| steps.contains(step) && self.steps[step.at()].work.get(state) != work::UNTOUCHED)
    }

    /// Whether a conditional step came into the job after its phase had passed.
    #[must_use]
    pub fn is_missed(&self, state: &State, step: StepIx) -> bool {
        let rule = &self.steps[step.at()];
        rule.on.is_some()
            && rule.work.get(state) == work::UNTOUCHED
            && !self.is_begun(state, step)
            && self.in_job(state, step) != InJob::No
            && self.has_passed(state, rule.phase)
    }

    /// Whether a step that comes before another no longer stands in its way.
    pub(crate) fn is_behind(&self, state: &State, step: StepIx) -> bool {
        match self.steps[step.at()].work.get(state) {
            work::WORKED | work::SKIPPED => true,
            work::UNTOUCHED => self.in_job(state, step) == InJob::No || self.is_missed(state, step),
            _ => false,
        }
    }

    /// How the step is shown.
    #[must_use]
    pub fn shown(&self, state: &State, step: StepIx) -> Shown {
        let rule = &self.steps[step.at()];
        if self.is_begun(state, step) {
            return Shown::InProgress;
        }
        match rule.work.get(state) {
            work::WORKED => {
                let attests = rule.signs.iter().filter(|given| !self.signs[given.at()].permit);
                if attests.clone().all(|given| self.is_valid(state, *given)) {
                    Shown::Done
                } else {
                    Shown::Lapsed
                }
            }
            work::VOIDED => Shown::Voided,
            work::SKIPPED => Shown::Skipped,
            _ => match self.in_job(state, step) {
                InJob::Undecided if !self.has_passed(state, rule.phase) => Shown::Undecided,
                InJob::No => Shown::NotInThisJob,
                _ if self.is_missed(state, step) => Shown::Missed,
                _ if self.step(state, Action::Begin(step)).is_ok() => Shown::Open,
                _ => Shown::Waiting,
            },
        }
    }
}
