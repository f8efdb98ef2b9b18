//! What turns up outside of the checklist: findings, supplements, pieces that it does not know.

use panside_journal::Hash;

use super::*;
use crate::testing::{agreed, estimate};
use crate::turned_up::{PieceCame, Standing};
use crate::value::{Accounted, Answer, Authorized, EstimateLines, LaborLine, PartLine, Urgency};

fn found(text: &str, urgency: Urgency) -> Command {
    Command::Found { text: text.into(), at: None, urgency, photos: Vec::new() }
}

/// Two nuts at 8.90 and an hour at 96.00: 113.80.
fn lines() -> EstimateLines {
    EstimateLines {
        currency: "USD".into(),
        parts: vec![PartLine {
            name: "exhaust nut".into(),
            number: None,
            quantity: "2".into(),
            price: Some("8,90".into()),
        }],
        labor: vec![LaborLine { what: "split the nuts".into(), hours: "1".into(), rate: Some("96".into()) }],
        may_turn_up: Vec::new(),
    }
}

fn ask(step: &str) -> Command {
    Command::AskCustomer { step: step.into(), text: "nuts rusted solid".into(), found: None, lines: lines() }
}

fn answer(asked: u64, answer: Authorized) -> Command {
    Command::Answer { asked, answer }
}

fn declined() -> Authorized {
    Authorized { answer: Answer::Declined, amount: String::new(), ..agreed("0") }
}

fn pending() -> Authorized {
    Authorized { answer: Answer::Pending, given_by: String::new(), means: None, ..declined() }
}

fn piece(name: &str, count: u8) -> Command {
    Command::PieceOff { name: name.into(), count, at: Some("beside the case".into()), photos: Vec::new() }
}

fn back(piece: u64, count: u8) -> Command {
    Command::PieceBack { piece, count, torque: Some("10 N·m".into()) }
}

fn gone(piece: u64, count: u8, why: &str) -> Command {
    let accounted = Accounted { reason: why.into(), by: person("Bo") };
    Command::PieceGone { piece, count, accounted }
}

fn take_back(of: u64) -> Command {
    Command::TakeBack { of, reason: "another vehicle".into() }
}

fn last(bay: &Bay) -> u64 {
    bay.job.last_seq()
}

/// The drain is in progress with all its entries, and the customer was asked.
fn asked_at_the_drain() -> (Bay, u64) {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    bay.begin("drain").unwrap();
    bay.enter("drain", "volume", litres("3.6")).unwrap();
    bay.must(ask("drain"));
    let asked = last(&bay);
    (bay, asked)
}

#[test]
fn while_the_customer_has_not_answered_the_step_cannot_be_done_and_other_work_goes_on() {
    let (mut bay, asked) = asked_at_the_drain();
    let refused = bay.done("drain").unwrap_err();
    assert_eq!(refused.message, refused_asked("Drain"));
    assert_eq!(refused.unmet, [unmet_asked("nuts rusted solid", "open")]);
    assert_eq!(bay.step("drain").done, Some(refused.clone()), "the screen says the same");
    bay.must(answer(asked, pending()));
    assert_eq!(bay.done("drain").unwrap_err(), refused);
    let values = [("volume", litres("3.6"))];
    assert_eq!(bay.ask(work("drain", &values, &[])).unwrap_err(), refused, "all in one go neither");
    bay.must(Command::Leave { step: "drain".into() });
    bay.vehicle_actions(&["lower", "raise", "set_locks"]);
    bay.must(Command::Sign { signature: sign("on_locks", "Ada", Role::Technician) });
    bay.begin("drain").unwrap();
    bay.enter("drain", "volume", litres("3.6")).unwrap();
    bay.must(answer(asked, agreed("113.80")));
    bay.done("drain").unwrap();
}

#[test]
fn agreed_to_in_full_the_step_goes_on_and_to_less_it_waits() {
    let (mut bay, asked) = asked_at_the_drain();
    bay.must(answer(asked, agreed("100")));
    let refused = bay.done("drain").unwrap_err();
    assert_eq!(refused.unmet, [unmet_asked("nuts rusted solid", "below")]);
    bay.must(answer(asked, agreed("113,80")));
    assert_eq!(bay.job.turned_up.asked[0].standing(), Standing::Agreed);
    bay.done("drain").unwrap();
}

#[test]
fn declined_somebody_says_why_the_job_goes_on_without_it() {
    let (mut bay, asked) = asked_at_the_drain();
    let go_on = |reason: &str| Command::GoOnWithout { asked, reason: reason.into() };
    assert_eq!(bay.ask(go_on("later")).unwrap_err().message, refused_not_declined("nuts rusted solid"));
    bay.must(answer(asked, declined()));
    assert_eq!(bay.done("drain").unwrap_err().unmet, [unmet_asked("nuts rusted solid", "declined")]);
    assert_eq!(bay.ask(go_on(" ")).unwrap_err().message, refused_no_reason());
    bay.must(go_on("the old nuts hold"));
    bay.done("drain").unwrap();
    bay.must(answer(asked, agreed("113.80")));
    assert_eq!(bay.job.turned_up.asked[0].standing(), Standing::Agreed, "the last word counts");
}

#[test]
fn a_price_with_a_comma_is_read_or_refused_as_in_any_estimate() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    let mut either = lines();
    either.parts[0].price = Some("1,250".into());
    let asking =
        Command::AskCustomer { step: "drain".into(), text: "nuts".into(), found: None, lines: either };
    let refused = bay.ask(asking).unwrap_err().message.english();
    assert_eq!(refused, "Exhaust nut: \"1,250\" can be 1250 or 1.25. Type it as one of these.");
    bay.must(ask("drain"));
    let asked = &bay.job.turned_up.asked[0];
    // 2 × 8.90 + 96.00, as bc gives it.
    assert_eq!(asked.estimate().unwrap().sum.to_string(), "113.80");
    let euro = EstimateLines { currency: "EUR".into(), ..lines() };
    let asking = Command::AskCustomer { step: "drain".into(), text: "nuts".into(), found: None, lines: euro };
    assert_eq!(bay.ask(asking).unwrap_err().message, asked_currency("EUR", "USD"));
    let none = EstimateLines { currency: "USD".into(), ..EstimateLines::default() };
    let asking = Command::AskCustomer { step: "drain".into(), text: "nuts".into(), found: None, lines: none };
    assert_eq!(bay.ask(asking).unwrap_err().message, estimate_empty());
}

#[test]
fn only_a_step_with_something_left_to_do_waits_for_an_answer() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    assert_eq!(bay.ask(ask("coil")).unwrap_err().message.id, "refused-worked");
    assert_eq!(bay.ask(ask("boat")).unwrap_err().message, refused_no_such("step", "boat"));
    assert_eq!(bay.ask(ask("supporter")).unwrap_err().message.id, "refused-not-in-job");
    assert_eq!(bay.view().turned_up.asks_at.as_deref(), Some("drain"), "the first that is open");
}

#[test]
fn a_question_can_be_made_from_a_finding_and_taken_back_once() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    bay.must(found("nuts rusted solid", Urgency::Now));
    let finding = last(&bay);
    let asking = |found| Command::AskCustomer {
        step: "drain".into(),
        text: "nuts rusted solid".into(),
        found,
        lines: estimate(),
    };
    assert_eq!(bay.ask(asking(Some(1))).unwrap_err().message, refused_no_such("found", "1"));
    bay.must(asking(Some(finding)));
    let asked = last(&bay);
    assert!(bay.view().turned_up.found[0].is_asked);
    bay.must(take_back(asked));
    assert_eq!(bay.ask(take_back(asked)).unwrap_err().message, refused_taken_back("nuts rusted solid"));
    assert_eq!(
        bay.ask(answer(asked, agreed("9"))).unwrap_err().message,
        refused_taken_back("nuts rusted solid")
    );
    bay.work_usual("drain");
    assert_eq!(bay.ask(answer(7_000, agreed("9"))).unwrap_err().message, refused_no_such("question", "7000"));
    assert_eq!(bay.ask(take_back(2)).unwrap_err().message, refused_no_such("found", "2"));
}

#[test]
fn what_must_be_dealt_with_now_keeps_the_job_open_until_it_is() {
    let mut bay = Bay::open();
    bay.work_up_to("level");
    bay.vehicle_actions(&["stop_engine"]);
    bay.must(found("mount torn", Urgency::Soon));
    bay.must(found("line rubs", Urgency::Now));
    let line = last(&bay);
    let refused = bay.ask(Command::Finish).unwrap_err();
    assert_eq!(refused.message, refused_finish());
    assert_eq!(refused.unmet, [unmet_found("line rubs")]);
    assert_eq!(bay.view().finish, Some(refused));
    let deal = |text: &str| Command::DealtWith { found: line, text: text.into() };
    assert_eq!(bay.ask(deal(" ")).unwrap_err().message, refused_nothing_said());
    bay.must(deal("clamped away from the case"));
    assert_eq!(bay.ask(deal("again")).unwrap_err().message, refused_dealt_with("line rubs"));
    bay.must(Command::Finish);
    assert_eq!(bay.ask(found("too late", Urgency::Tell)).unwrap_err().message, refused_finished());
}

#[test]
fn a_finding_is_taken_down_in_any_step_with_photos_and_words() {
    let mut bay = Bay::open();
    let photo = EntryValue::Photo { hash: Hash::of(b"mount").to_string(), width: 20, height: 10 };
    let with = |photos| Command::Found {
        text: " mount torn ".into(),
        at: Some(" left ".into()),
        urgency: Urgency::Tell,
        photos,
    };
    bay.begin("identify").unwrap();
    bay.must(with(vec![photo.clone(), photo.clone()]));
    let detail = &bay.job.turned_up.found[0].found;
    assert_eq!(
        (detail.text.as_str(), detail.at.as_deref(), detail.photos.len()),
        ("mount torn", Some("left"), 2)
    );
    assert_eq!(bay.ask(with(vec![degrees("4")])).unwrap_err().message.id, "entry-kind");
    assert_eq!(bay.ask(found("", Urgency::Tell)).unwrap_err().message, refused_nothing_said());
    let long = "x".repeat(crate::size::TEXT + 1);
    assert_eq!(bay.ask(found(&long, Urgency::Tell)).unwrap_err().message.id, "refused-too-long");
    assert!(bay.job.turned_up.found[0].taken_back.is_none());
}

#[test]
fn with_a_piece_off_the_job_is_not_finished_until_all_of_it_is_back_or_accounted_for() {
    let mut bay = Bay::open();
    bay.work_up_to("level");
    bay.vehicle_actions(&["stop_engine"]);
    bay.must(piece("line clamp bolt", 3));
    let off = last(&bay);
    let refused = bay.ask(Command::Finish).unwrap_err();
    assert_eq!(
        (refused.message.id.as_str(), refused.unmet.as_slice()),
        ("refused-finish", &[unmet_piece_off("line clamp bolt", 3_i64)][..])
    );
    assert_eq!(bay.view().finish, Some(refused));
    assert_eq!(bay.ask(back(off, 4)).unwrap_err().message, refused_pieces_off("line clamp bolt", 3_i64));
    assert_eq!(bay.ask(back(off, 0)).unwrap_err().message, refused_pieces_off("line clamp bolt", 3_i64));
    bay.must(back(off, 2));
    assert_eq!(bay.view().turned_up.pieces[0].off, 1);
    assert!(bay.ask(Command::Finish).is_err());
    assert_eq!(bay.ask(gone(off, 1, " ")).unwrap_err().message, refused_no_reason());
    let events = bay.must(gone(off, 1, "snapped, a new one is in"));
    assert_eq!(events.iter().map(Event::kind).collect::<Vec<_>>(), ["introduced", "piece_gone"]);
    assert!(
        matches!(&bay.job.turned_up.pieces[0].became[1].how, PieceCame::Gone(said) if said.by == person("Bo"))
    );
    assert_eq!(bay.ask(back(off, 1)).unwrap_err().message, refused_pieces_off("line clamp bolt", 0_i64));
    bay.must(Command::Finish);
    assert_eq!(bay.job.disagreements, []);
}

#[test]
fn one_to_63_pieces_come_off() {
    let mut bay = Bay::open();
    for count in [0, 64, 255] {
        let refused = bay.ask(piece("bracket", count)).unwrap_err();
        assert_eq!(refused.message, refused_piece_count(i64::from(count), 63_i64));
    }
    bay.must(piece("bracket", 1));
    bay.must(piece("bracket bolt", 63));
    assert_eq!(bay.ask(piece(" ", 1)).unwrap_err().message, refused_nothing_said());
    assert!(bay.job.procedure.machine.is_piece_off(&bay.job.state));
    bay.must(take_back(last(&bay)));
    assert!(bay.job.procedure.machine.is_piece_off(&bay.job.state), "the other is still off");
    bay.must(take_back(last(&bay) - 2));
    assert!(!bay.job.procedure.machine.is_piece_off(&bay.job.state));
    let folded = Job::fold(crate::testing::procedure(), specs(), bay.job.happened.clone());
    assert_eq!((folded.state, folded.turned_up), (bay.job.state, bay.job.turned_up.clone()));
}

#[test]
fn a_job_with_a_piece_off_can_be_stopped() {
    let mut bay = Bay::open();
    bay.must(piece("bracket", 1));
    bay.must(Command::Stop { reason: "no parts".into() });
    assert_eq!(bay.ask(back(2, 1)).unwrap_err().message, refused_stopped());
}
