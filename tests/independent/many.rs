//! As many dangers as a checklist may have, counted both ways.

use panside_procedure::Procedure;
use panside_procedure::machine::DangerSet;
use panside_tests::many::with_many_dangers;

use super::{KINDS, differs};

fn counts_alike(text: &str) -> Result<(), String> {
    let checklist = serde_json::from_str(text).map_err(|error| error.to_string())?;
    let made = with_many_dangers(checklist).to_string();
    let procedure = Procedure::load(made.as_bytes()).map_err(|problems| problems.to_string())?;
    assert_eq!(procedure.machine.dangers.len(), DangerSet::MOST);
    for kind in KINDS {
        let (counted, difference) = differs(&procedure, kind)?;
        let met = counted.dangers.len();
        println!("{} {kind:?}: {} states, {met} dangers met", procedure.checklist.id, counted.states);
        assert_eq!(difference, None, "{}", procedure.checklist.id);
        // Where all or none are met nothing tells one from another.
        assert!(met > 64 && met < DangerSet::MOST, "{met} dangers are met");
        let late = |id: &String| id.strip_prefix("made_").is_some_and(|at| at.len() == 3 && at >= "192");
        assert!(counted.dangers.iter().any(late), "none of the last is met");
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
    many_dangers_count_alike_where_something_is_observed: "observe.json",
    many_dangers_count_alike_where_something_follows: "follows.json",
    many_dangers_count_alike_with_two_people: "crew.json",
    many_dangers_count_alike_where_the_job_ends_early: "ends.json",
}
