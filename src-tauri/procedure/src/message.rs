//! What this crate says to a person, as message ids with arguments. The sentences stand in `en/procedure.ftl` of
//! `panside-messages`. Problems of a checklist are for its authors, and stand where they are found.

panside_messages::messages! {
    // Why there is no plan.
    procedure_plan_over "procedure-plan-over" ();
    procedure_plan_people "procedure-plan-people" (most);
    procedure_plan_crew "procedure-plan-crew" (people, problems);
    procedure_plan_no_way "procedure-plan-no-way" ();
    procedure_plan_not_found "procedure-plan-not-found" (moments);
    procedure_plan_cancelled "procedure-plan-cancelled" ();

    // How far a proof is.
    procedure_progress "procedure-progress" (runs, doing);
    procedure_runs_plain "procedure-runs-plain" ();
    procedure_runs_one_void "procedure-runs-one-void" ();
    procedure_runs_one_observation "procedure-runs-one-observation" ();
    procedure_looking_searching "procedure-looking-searching" ();
    procedure_looking_safe_to_leave "procedure-looking-safe-to-leave" ();
    procedure_looking_end "procedure-looking-end" ();
    procedure_looking_safe_stop "procedure-looking-safe-stop" ();
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("procedure", super::MESSAGES);
}
