//! What a record tells of what is open: lapsed, voided, off, missing, stopped, not as shown.

use std::collections::BTreeMap;

use panside_job::EntryValue;
use panside_job::entry::WorkedOut;
use panside_job::event::{Corrected, Entered, Lost, Observed, Skipped, Stopped, Voided};
use panside_job::value::Accounted;
use panside_messages::Speaker;
use panside_record::document::End;
use panside_record::items::Pieces;
use panside_record::steps::Standing;
use panside_record::{Document, MissingKind};

use crate::bay::{self, Bay, Said, Tested, bolts, note};
use crate::{entries, missing, step};

#[test]
fn an_attest_that_lapsed_by_lowering_shows_who_signed_and_through_what_it_lapsed() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.close_up();
    let document = bay.document();
    let pushed = document.sign_offs.iter().find(|sign| sign.id == "pushed").ok_or("no sign-off")?;
    assert!(!pushed.valid);
    assert_eq!((pushed.given.len(), pushed.given[0].signed_by.as_str()), (1, "Ada"));
    let lapse = pushed.given[0].lapsed.as_ref().ok_or("it lapsed")?;
    assert_eq!(lapse.through, "\"Lower\"");
    assert!(lapse.by.seq > pushed.given[0].by.seq);
    let torqued = document.sign_offs.iter().find(|sign| sign.id == "torqued").ok_or("no sign-off")?;
    assert!(torqued.valid && torqued.given[0].lapsed.is_none());
    let text = document.text();
    assert!(text.contains("Stood firm when pushed. (no longer valid)"), "{text}");
    let in_one_line = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(in_one_line.contains("after \"Lower\""), "{text}");
    Ok(())
}

#[test]
fn a_voided_entry_stays_readable_with_its_reason_and_by_whom() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.who = "Bo";
    let (step_id, reason) = ("free_nuts".to_owned(), "typed into the wrong job".to_owned());
    bay.then(Voided { step: step_id.clone(), reason, also: Vec::new(), lost: Lost::default() });
    let document = bay.document();
    let why = entries(&document, "free_nuts")?;
    assert_eq!((why[0].value.as_str(), why[0].standing), ("nuts rusted to the studs", Standing::Void));
    let attempt = &step(&document, "free_nuts")?.attempts[0];
    assert_eq!(attempt.void_reason.as_deref(), Some("voided: typed into the wrong job"));
    let voided = &document.voided[0];
    assert_eq!((voided.by.who.as_str(), voided.corrected), ("Bo", false));
    assert_eq!(missing(&document, MissingKind::VoidedNotCorrected), ["Free the nuts"]);
    let text = document.text();
    assert!(text.contains("nuts rusted to the studs (no longer counts)"), "{text}");
    assert!(text.contains("typed into the wrong job (not corrected)"), "{text}");

    let values = BTreeMap::from([("why".to_owned(), note("nut split"))]);
    let classes = BTreeMap::from([("why".to_owned(), "written".to_owned())]);
    let (signs, lost) = (Vec::new(), Lost::default());
    bay.then(Corrected {
        step: step_id,
        classes,
        values,
        worked_out: BTreeMap::new(),
        signs,
        reason: None,
        lost,
    });
    let document = bay.document();
    let why: Vec<_> =
        entries(&document, "free_nuts")?.iter().map(|entry| (entry.value.clone(), entry.standing)).collect();
    let both = [("nuts rusted to the studs", Standing::Void), ("nut split", Standing::Counts)];
    assert_eq!(why, both.map(|(value, standing)| (value.to_owned(), standing)));
    assert!(document.voided[0].corrected);
    assert_eq!(missing(&document, MissingKind::VoidedNotCorrected), Vec::<&str>::new());
    assert_eq!(document.disagreements, Vec::<String>::new());
    Ok(())
}

#[test]
fn what_came_off_is_what_went_back_was_replaced_or_is_left() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    let off = bay.document().tally;
    // The fixture takes off 3 nuts, then 16 bolts and 1 gasket.
    assert_eq!(off.total, Pieces { came_off: 20, went_back: 0, replaced: 0, left: 20 });
    assert_eq!(
        missing(&bay.document(), MissingKind::PieceOff),
        ["pan bolts 16", "pan gasket 1", "joint nuts 3"]
    );
    bay.close_up();
    let back = bay.document().tally;
    // Bolts go back; gasket and nuts are never used again, so 1 + 3 are new.
    assert_eq!(back.total, Pieces { came_off: 20, went_back: 16, replaced: 4, left: 0 });
    for pieces in off.items.iter().chain(&back.items).map(|item| item.pieces) {
        assert_eq!(pieces.came_off, pieces.went_back + pieces.replaced + pieces.left);
    }
    Ok(())
}

#[test]
fn a_step_that_cannot_have_been_worked_moved_no_pieces_and_is_told() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.then(Observed {
        condition: "pan".into(),
        value: "on".into(),
        reason: "the pan still hangs".into(),
        undone: vec!["pan_down".into()],
        dangers: Vec::new(),
        lost: Lost::default(),
    });
    let document = bay.document();
    assert_eq!(document.tally.total, Pieces { came_off: 3, went_back: 0, replaced: 0, left: 3 });
    assert_eq!(document.observed[0].undone, ["Pan down"]);
    assert_eq!(entries(&document, "pan_down")?[0].standing, Standing::Void);
    assert_eq!(document.disagreements, Vec::<String>::new());
    assert!(document.text().contains("pan is on: the pan still hangs; cannot have been done: Pan down"));
    Ok(())
}

#[test]
fn steps_and_entries_that_are_missing_are_told() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.begin("find");
    let document = bay.document();
    assert_eq!(missing(&document, MissingKind::StepInProgress), ["Find the cause"]);
    assert_eq!(missing(&document, MissingKind::EntryMissing), ["\"Cause\" at \"Find the cause\""]);
    let not_worked = ["Pan up", "Nuts on", "Level", "Hand over"];
    assert_eq!(missing(&document, MissingKind::StepNotWorked), not_worked);
    let text = document.text();
    assert!(text.contains("Not done: Pan up; Nuts on; Level; Hand over"), "{text}");
    assert!(text.contains("Not entered: \"Cause\" at \"Find the cause\""), "{text}");
    assert!(text.contains("Off the vehicle: pan bolts 16; pan gasket 1; joint nuts 3"), "{text}");
    Ok(())
}

#[test]
fn a_done_step_without_its_signature_is_told_whatever_the_rules_allowed() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.work("find", &[], &[]);
    assert_eq!(missing(&bay.document(), MissingKind::EntryMissing), ["\"Cause\" at \"Find the cause\""]);
    bay.begin("pan_up");
    bay.done("pan_up", &[("torque", "inside"), ("photo", "taken")], &[]);
    let lacks = bay.document();
    assert!(missing(&lacks, MissingKind::EntryMissing).contains(&"\"Signed\" at \"Pan up\""));
    Ok(())
}

#[test]
fn a_count_that_came_out_short_is_told_with_where_the_missing_piece_is() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    let told = Accounted { reason: "snapped, stays in the case".into(), by: bay::person("Ada") };
    let EntryValue::Count { of, .. } = bolts(15) else { return Err("a count".into()) };
    let short = EntryValue::Count { of, accounted: Some(told) };
    bay.begin("pan_down");
    bay.enter("pan_down", "bolts", short, "accounted");
    bay.done("pan_down", &[("bolts", "accounted")], &[]);
    let document = bay.document();
    let accounted = &document.tally.accounted[0];
    assert_eq!((accounted.what.as_str(), accounted.says.as_str()), ("pan bolts 15 of 16", "Ada"));
    assert_eq!(document.tally.total.came_off, 20, "a step done again moves no pieces");
    Ok(())
}

#[test]
fn a_skipped_step_and_a_job_stopped_are_told_with_their_reasons() -> Tested {
    let mut bay = Bay::open()?;
    let reason = "customer takes it away".to_owned();
    bay.then(Skipped { step: "wipe".into(), reason: "no rags".into(), lost: Lost::default() });
    bay.then(Stopped { reason: reason.clone(), lost: Lost::default() });
    let document = bay.document();
    assert_eq!(document.skipped[0].reason, "no rags");
    assert!(
        !missing(&document, MissingKind::StepNotWorked).contains(&"Wipe the pan"),
        "what is skipped is not missing"
    );
    assert!(matches!(&document.end, End::Stopped { reason: why, .. } if *why == reason));
    assert!(document.text().contains("stopped before its end 2026-03-02 09:02 Ada: customer takes it away"));
    Ok(())
}

#[test]
fn an_event_that_the_rules_would_not_allow_and_a_journal_of_another_length_are_told() -> Tested {
    let mut bay = Bay::open()?;
    bay.begin("pan_up");
    let mut inputs = bay.inputs();
    inputs.events += 3;
    let document = Document::of(&bay.job, &inputs, Speaker::english());
    assert_eq!(document.disagreements.len(), 2, "{:?}", document.disagreements);
    assert_eq!(document.dangers[0].id, "off_the_locks", "somebody is under it");
    let text = document.text();
    assert!(text.contains("DANGER now: Under a vehicle that is not on locks"), "{text}");
    assert!(text.contains("The journal has 5 events and the record was made of 2"), "{text}");
    Ok(())
}

#[test]
fn a_value_whose_calculation_a_newer_version_wrote_stands_and_that_is_said() -> Tested {
    let mut bay = Bay::open()?;
    bay.begin("free_nuts");
    bay.then(Entered {
        step: "free_nuts".into(),
        entry: "why".into(),
        value: note("rusted"),
        class: "written".into(),
        worked_out: Some(WorkedOut::Unreadable { kind: "balance".into(), version: 7 }),
    });
    let document = bay.document();
    let entered = entries(&document, "free_nuts")?;
    assert_eq!(entered[0].value, "rusted");
    assert!(entered[0].how[0].contains("can't read (balance, version 7)"), "{:?}", entered[0].how);
    assert!(document.text().contains("(balance, version 7)"));
    Ok(())
}
