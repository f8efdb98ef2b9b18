//! Who a record names: as they were called at the entry, and whoever set the PIN that signed.

use panside_job::SignedPin;
use panside_job::event::{Done, Left, Lost};

use crate::bay::{Bay, Said, Tested, done, introduced, person};
use crate::step;

#[test]
fn a_renamed_person_keeps_the_earlier_name_in_earlier_entries() -> Tested {
    let mut bay = Bay::open()?;
    bay.begin("identify");
    bay.then(Left { step: "identify".into(), lost: Lost::default() });
    bay.then(introduced("Ada", "Ada Marl"));
    bay.begin("identify");
    let document = bay.document();
    let names: Vec<_> =
        step(&document, "identify")?.attempts.iter().map(|one| one.begun.who.as_str()).collect();
    assert_eq!(names, ["Ada", "Ada Marl"]);
    assert_eq!(document.started.map(|by| by.who).as_deref(), Some("Ada"));
    assert_eq!(document.people, ["Ada (later Ada Marl)"]);
    Ok(())
}

#[test]
fn two_people_of_one_name_are_two_people() -> Tested {
    let mut bay = Bay::open()?;
    bay.who = "the other Ada";
    bay.then(introduced("the other Ada", "Ada"));
    bay.begin("identify");
    assert_eq!(bay.document().people, ["Ada", "Ada"]);
    Ok(())
}

#[test]
fn who_set_the_pin_for_another_stands_beside_the_signature() -> Tested {
    for (pin, says) in [
        (SignedPin::NoPin, "Ada, technician, no PIN"),
        (SignedPin::Own, "Ada, technician, PIN given"),
        (
            SignedPin::SetBy { lead: person("Lea"), second: person("Bo") },
            "Ada, technician, PIN given, set by Lea with Bo",
        ),
    ] {
        let mut bay = Bay::open()?;
        bay.then(introduced("Lea", "Lea"));
        bay.then(introduced("Bo", "Bo"));
        bay.begin("push");
        let mut signed: Done = done("push", &[], "Ada", &[("firm", "pushed")]);
        signed.signs[0].pin = Some(pin);
        bay.then(signed);
        let text = bay.document().text();
        assert!(text.lines().any(|line| line.trim_end().ends_with(says)), "{says}: {text}");
    }
    Ok(())
}
