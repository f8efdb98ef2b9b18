//! Order: whether a step is in the job, whether its phase is open, whether a step before it is behind.

use panside_procedure::format::{Ask, Phase, Step};

use super::bay::{Bay, Outcome, Work};
use super::truth::{Hand, Rules, Truth};

impl Rules {
    pub fn step(&self, id: &str) -> Option<&Step> {
        self.steps().find(|step| step.id == id)
    }

    fn is_touched(bay: &Bay, step: &Step) -> bool {
        bay.work[&step.id] != Work::Untouched || bay.begun.contains(&step.id)
    }

    /// Whether the step is in the job: undecided while a gate that decides it is unknown; once begun it stays in.
    pub fn in_job(&self, bay: &Bay, step: &Step) -> Truth {
        match &step.on {
            Some(on) if !Self::is_touched(bay, step) => self.truth(on, bay, Hand::Still),
            _ => Truth::Yes,
        }
    }

    /// The phases a phase waits for: the earlier ones, but those it may stand beside.
    fn waits_for<'a>(&'a self, phase: &'a Phase) -> impl Iterator<Item = &'a Phase> {
        let earlier = self.checklist.phases.iter().take_while(move |other| other.id != phase.id);
        earlier.filter(|other| !phase.beside.contains(&other.id))
    }

    fn is_entered(bay: &Bay, phase: &Phase) -> bool {
        phase.steps.iter().any(|step| Self::is_touched(bay, step))
    }

    /// A phase has passed once a phase that waits for it has been entered.
    fn has_passed(&self, bay: &Bay, phase: &Phase) -> bool {
        let mut later =
            self.checklist.phases.iter().filter(|later| self.waits_for(later).any(|one| one.id == phase.id));
        later.any(|later| Self::is_entered(bay, later))
    }

    /// A conditional step that came into the job when its phase had passed.
    fn is_missed(&self, bay: &Bay, phase: &Phase, step: &Step) -> bool {
        step.on.is_some()
            && !Self::is_touched(bay, step)
            && self.in_job(bay, step) != Truth::No
            && self.has_passed(bay, phase)
    }

    /// Phases are barriers: a step opens when every step in the job of the earlier phases is dealt with, or once its
    /// own phase or a later one has been entered. What was missed holds nothing up.
    pub fn is_open(&self, bay: &Bay, phase: &Phase) -> bool {
        let deals_with = |earlier: &Phase, step: &Step| {
            bay.work[&step.id] != Work::Untouched
                || self.in_job(bay, step) == Truth::No
                || self.is_missed(bay, earlier, step)
        };
        Self::is_entered(bay, phase)
            || self.has_passed(bay, phase)
            || self.waits_for(phase).all(|earlier| earlier.steps.iter().all(|step| deals_with(earlier, step)))
    }

    pub fn phase_of(&self, step: &Step) -> Option<&Phase> {
        self.checklist.phases.iter().find(|phase| phase.steps.iter().any(|one| one.id == step.id))
    }

    /// `after`: worked, skipped, not in the job, or missed.
    pub fn is_behind(&self, bay: &Bay, id: &str) -> bool {
        let Some((phase, step)) = self.step(id).and_then(|step| Some((self.phase_of(step)?, step))) else {
            return false;
        };
        match bay.work[id] {
            Work::Worked | Work::Skipped => true,
            Work::Voided => false,
            Work::Untouched => self.in_job(bay, step) == Truth::No || self.is_missed(bay, phase, step),
        }
    }

    /// Every way in which a step can turn out: a class for each entry. Classes of one entry that do the same are
    /// taken once, and those that keep the step begun are left out.
    pub fn outcomes(step: &Step) -> Vec<Outcome> {
        let always = Outcome { sets: step.sets.clone(), makes: step.makes.clone(), ends: false };
        let mut outcomes = vec![always];
        for entry in &step.entries {
            let mut effects = Vec::new();
            for effect in entry.classes.values().filter(|effect| !effect.not_yet) {
                if !effects.contains(&effect) {
                    effects.push(effect);
                }
            }
            if effects.is_empty() {
                continue;
            }
            let mut more = Vec::new();
            for outcome in &outcomes {
                for effect in &effects {
                    let mut outcome = outcome.clone();
                    outcome.sets.extend(effect.sets.clone());
                    outcome.makes.extend(effect.makes.clone());
                    outcome.ends |= effect.ends.is_some();
                    more.push(outcome);
                }
            }
            outcomes = more;
        }
        outcomes
    }

    /// The sign-offs a step asks for.
    pub fn signs(step: &Step) -> impl Iterator<Item = &String> {
        step.entries.iter().filter_map(|entry| match &entry.ask {
            Ask::SignOff(asked) => Some(&asked.sign),
            _ => None,
        })
    }
}
