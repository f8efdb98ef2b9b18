//! Small checklists, each for other parts of the format, counted both ways in all three kinds of runs.

use panside_procedure::Procedure;

use super::runs::Kind;
use super::{KINDS, differs, proved, runs};

fn counts_alike(text: &str) -> Result<(), String> {
    let procedure = Procedure::load(text.as_bytes()).map_err(|problems| problems.to_string())?;
    for kind in KINDS {
        let (counted, difference) = differs(&procedure, kind)?;
        println!(
            "{} {kind:?}: {} states, {} transitions, {} can finish, {} can stop, {:?}",
            procedure.checklist.id,
            counted.states,
            counted.transitions,
            counted.can_finish,
            counted.can_stop,
            counted.dangers
        );
        assert_eq!(difference, None, "{}", procedure.checklist.id);
        // A checklist in which little can happen would compare nothing.
        assert!(counted.states > 10 || kind != Kind::Plain);
    }
    Ok(())
}

macro_rules! counted_alike {
    ($($name:ident: $file:literal),* $(,)?) => {$(
        #[test]
        fn $name() -> Result<(), String> {
            counts_alike(include_str!(concat!("checklists/", $file)))
        }
    )*};
}

counted_alike! {
    conditional_steps_count_alike: "conditional.json",
    phases_beside_each_other_count_alike: "beside.json",
    work_done_again_counts_alike: "redo.json",
    skipped_steps_count_alike: "skip.json",
    permits_that_lapse_count_alike: "permits.json",
    attests_that_lapse_count_alike: "attests.json",
    changes_that_follow_by_themselves_count_alike: "follows.json",
    readings_that_grow_old_count_alike: "expire.json",
    voided_lines_count_alike: "void.json",
    observations_count_alike: "observe.json",
    a_job_that_ends_early_counts_alike: "ends.json",
    two_people_at_once_count_alike: "crew.json",
    pieces_off_and_back_count_alike: "items.json",
}

/// The comparison can fail: a signature that lapses for one of both only is noticed.
#[test]
fn a_rule_that_only_one_of_both_has_is_noticed() -> Result<(), String> {
    let text = include_str!("checklists/permits.json");
    let procedure = Procedure::load(text.as_bytes()).map_err(|problems| problems.to_string())?;
    for kind in KINDS {
        let (by_proof, _) = proved(&procedure, kind)?;
        let mut changed = procedure.checklist.clone();
        "true".clone_into(&mut changed.sign_offs[0].holds_while);
        let here = runs::count(changed, kind)?;
        assert_ne!(here, by_proof, "{kind:?}");
    }
    Ok(())
}
