//! Order: whether a step is in the job, whether its phase is open, whether a step before it is behind.

use panside_procedure::format::{Phase, Step};

use super::says::{all, any, hands_in, not, work as work_of};
use super::{Writer, work};

impl<'a> Writer<'a> {
    pub fn work_is(&self, id: &str, value: usize) -> String {
        format!("({} == {value})", work_of(id))
    }

    fn untouched(&self, step: &Step) -> String {
        all([self.work_is(&step.id, work::UNTOUCHED), format!("({} == 0)", hands_in(&step.id))])
    }

    /// In the job: once touched it stays in, else `on` must surely hold.
    pub fn in_job(&self, step: &Step) -> String {
        let Some(on) = &step.on else { return "true".to_owned() };
        any([self.says.rule(on), not(&self.untouched(step))])
    }

    /// Not in the job: untouched, and `on` surely does not hold.
    fn not_in_job(&self, step: &Step) -> String {
        let Some(on) = &step.on else { return "false".to_owned() };
        all([self.untouched(step), not(&self.says.perhaps(on))])
    }

    pub fn phase_of(&self, step: &Step) -> &'a Phase {
        let holds = |phase: &&Phase| phase.steps.iter().any(|one| one.id == step.id);
        let phases = &self.checklist.phases;
        phases.iter().find(holds).unwrap_or(&phases[0])
    }

    fn waits_for(&self, later: &Phase, earlier: &Phase) -> bool {
        let place = |phase: &Phase| self.checklist.phases.iter().position(|one| one.id == phase.id);
        place(earlier) < place(later) && !later.beside.contains(&earlier.id)
    }

    /// What is asked of each phase, as a macro each.
    pub fn macros(&self) -> String {
        let define = |phase: &'a Phase| {
            let entered = any(phase.steps.iter().map(|step| not(&self.untouched(step))));
            let later = self.checklist.phases.iter().filter(|later| self.waits_for(later, phase));
            let passed = any(later.map(entered_by_name));
            let open = self.dealt_with_before(phase);
            format!(
                "#define {} {entered}\n#define {} {passed}\n#define {} {}\n",
                entered_by_name(phase),
                passed_by_name(phase),
                self.open(phase),
                any([entered_by_name(phase), passed_by_name(phase), open]),
            )
        };
        self.checklist.phases.iter().map(define).collect()
    }

    /// It came into the job, or may still come, when its phase had passed.
    fn missed(&self, step: &Step) -> String {
        if step.on.is_none() {
            return "false".to_owned();
        }
        all([self.untouched(step), not(&self.not_in_job(step)), passed_by_name(self.phase_of(step))])
    }

    pub fn open(&self, phase: &Phase) -> String {
        format!("open_{}", phase.id)
    }

    fn dealt_with_before(&self, phase: &Phase) -> String {
        let earlier = self.checklist.phases.iter().filter(|earlier| self.waits_for(phase, earlier));
        all(earlier.flat_map(|earlier| &earlier.steps).map(|step| {
            let touched = not(&self.work_is(&step.id, work::UNTOUCHED));
            any([touched, self.not_in_job(step), self.missed(step)])
        }))
    }

    pub fn behind(&self, step: &Step) -> String {
        let worked = self.work_is(&step.id, work::WORKED);
        let skipped = self.work_is(&step.id, work::SKIPPED);
        let untouched = self.work_is(&step.id, work::UNTOUCHED);
        any([worked, skipped, all([untouched, any([self.not_in_job(step), self.missed(step)])])])
    }
}

fn entered_by_name(phase: &Phase) -> String {
    format!("entered_{}", phase.id)
}

fn passed_by_name(phase: &Phase) -> String {
    format!("passed_{}", phase.id)
}
