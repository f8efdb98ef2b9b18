//! What is written, voided and corrected.

use super::*;

#[test]
fn skipping_needs_a_reason_and_the_checklists_leave() {
    let mut bay = Bay::open();
    let skip = |step: &str, reason: &str| Command::Skip { step: step.into(), reason: reason.into() };
    assert_eq!(bay.ask(skip("photo", " ")).unwrap_err().message, refused_no_reason());
    assert_eq!(bay.ask(skip("identify", "later")).unwrap_err().message, refused_may_not_skip("Identify"));
    bay.must(skip("photo", "camera broken"));
    assert_eq!(bay.step("photo").skipped_for.unwrap().text, "camera broken");
    assert_eq!(bay.begin("photo").unwrap_err().message, refused_skipped("Photo of the routing"));
}

#[test]
fn voiding_takes_along_what_builds_on_it_and_a_correction_counts_in_order() {
    let mut bay = Bay::open();
    bay.work_up_to("verdict");
    let events = bay.must(void("pan_down"));
    let Event::Voided(voided) = &events[0] else { panic!("a void was asked for") };
    assert_eq!(voided.also, ["verdict"]);
    assert_eq!(voided.lost.forgotten, ["verdict", "debris"]);
    assert_eq!(bay.job.tally.off("pan_bolts"), 16, "the vehicle does not change because a line is voided");
    let right = |step: &str, entry: &str, value: EntryValue| Command::Correct {
        step: step.into(),
        entries: [(entry.to_owned(), value)].into(),
        signatures: Vec::new(),
        reason: None,
    };
    let early = bay.ask(right("verdict", "found", choice("carry_on"))).unwrap_err();
    assert_eq!(early.message, refused_after("Pan down"));
    let short = bay.ask(right("pan_down", "bolts", pieces(15))).unwrap_err();
    assert_eq!(short.message, refused_not_yet("Counted into the tray"));
    bay.must(right("pan_down", "bolts", pieces(16)));
    bay.must(right("verdict", "found", choice("carry_on")));
    assert_eq!(bay.step("verdict").shown, Shown::Done);
    assert_eq!(
        bay.ask(right("verdict", "found", choice("chips"))).unwrap_err().message,
        refused_not_voided("Verdict")
    );
}

#[test]
fn paper_is_judged_as_of_the_day_of_the_work() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_up");
    bay.must(void("pan_up"));
    bay.minute += 2 * 24 * 60;
    let due_then = Tool { calibration_due: "2026-03-02".into(), ..crate::testing::tool() };
    let mut right_tool = clicked();
    let EntryValue::Torque { tool, .. } = &mut right_tool else { panic!("clicks are torque") };
    **tool = due_then;
    let right = Command::Correct {
        step: "pan_up".into(),
        entries: [("torque".to_owned(), right_tool)].into(),
        signatures: vec![sign("pan_torqued", "Ada", Role::Technician)],
        reason: Some("wrong tool chosen".into()),
    };
    bay.must(right);
    assert_eq!(bay.step("pan_up").shown, Shown::Done);
}

#[test]
fn a_missed_step_wants_a_reason_and_only_a_missed_one() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_up");
    let why = |reason: &str| Command::ExplainMissed { step: "look_again".into(), reason: reason.into() };
    assert_eq!(bay.ask(why("no chips")).unwrap_err().message, refused_not_missed("Second look"));
    bay.must(void("verdict"));
    bay.must(Command::Correct {
        step: "verdict".into(),
        entries: [("found".to_owned(), choice("chips"))].into(),
        signatures: Vec::new(),
        reason: None,
    });
    assert_eq!(bay.step("look_again").shown, Shown::Missed);
    assert_eq!(bay.ask(why("")).unwrap_err().message, refused_no_reason());
    bay.must(why("seen by Bo, not signed"));
    assert_eq!(bay.step("look_again").missed_for.unwrap().text, "seen by Bo, not signed");
}

#[test]
fn what_was_done_before_is_marked_as_entered_later() {
    let mut bay = Bay::open();
    let photo = EntryValue::Photo { hash: Hash::of(b"routing").to_string(), width: 10, height: 10 };
    let entries = BTreeMap::from([("routing".to_owned(), photo)]);
    let events =
        bay.must(Command::Work { step: "photo".into(), entries, signatures: Vec::new(), later: true });
    assert!(matches!(events.last(), Some(Event::Done(done)) if done.later));
}
