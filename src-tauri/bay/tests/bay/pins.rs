//! PINs: asked at hold points, slow to guess, written nowhere.

use std::path::Path;

use panside_bay::BayError;
use panside_bay::closing::SavedPages;
use panside_bay::enter::{Answer, Command, EntryValue, Event, JobId, new_request};
use panside_bay::people::{Person, TypedPerson};
use panside_bay::pins::{Pin, PinAuthority, PinReply, ResetBy};
use panside_bay::record::{Extent, Pages};
use panside_bay::sheets::{SheetFrom, TypedSheet};
use panside_bay::shelf::Shelf;
use panside_job::value::{Authorized, EstimateLines, LaborLine, Means};
use panside_job::{Signature, SignedPin};
use panside_procedure::format::Role;
use panside_shop::PinSetBy;

use crate::support::{CHECKLIST, LUND, MARL, NOBODY, ODE, SHEET, Shop, technician, writer};

const SHELF: Shelf<'static> = Shelf { checklists: &[CHECKLIST], sheets: &[SHEET], texts: &[], parts: &[] };
pub const RIGHT: PinReply = PinReply { right: true, wait_s: 0 };
/// No test's files hold these digits by chance.
pub const DIGITS: &str = "83504179";
const OWN_ODE: PinAuthority = PinAuthority::Own(ODE);
const OWN_LUND: PinAuthority = PinAuthority::Own(LUND);
const LUND_AND_MARL: ResetBy = ResetBy { lead: LUND, second: MARL };
const BY_LUND_AND_MARL: PinAuthority = PinAuthority::Lead(LUND_AND_MARL);

pub fn pin(digits: &str) -> Pin {
    Pin::new(digits).unwrap()
}

/// The service writer signs that the customer has said yes: a hold point.
pub fn signed() -> Command {
    let (sign, pin) = ("concern_told".to_owned(), Some(SignedPin::Own));
    let signature = Signature { sign, by: LUND, role: Role::ServiceWriter, pin };
    Command::Work {
        step: "go_ahead".to_owned(),
        entries: go_ahead(),
        signatures: vec![signature],
        later: false,
    }
}

/// What the customer was asked, and agreed to.
fn go_ahead() -> std::collections::BTreeMap<String, EntryValue> {
    let labor = LaborLine { what: "pan and filter".into(), hours: "2.5".into(), rate: Some("96".into()) };
    let estimate = EstimateLines { currency: "USD".into(), labor: vec![labor], ..EstimateLines::default() };
    let answer = Authorized {
        answer: panside_job::value::Answer::Agreed,
        amount: "240".into(),
        currency: "USD".into(),
        given_by: "owner".into(),
        means: Some(Means::InPerson),
        given_at: None,
    };
    let entries =
        [("estimate", EntryValue::Estimate(estimate)), ("answer", EntryValue::Authorization(answer))];
    entries.map(|(entry, value)| (entry.to_owned(), value)).into()
}

/// A job at the step where the service writer signs.
pub fn at_the_hold_point(shop: &mut Shop) -> JobId {
    let job = shop.start();
    let text = |text: &str| EntryValue::Scan { text: text.into() };
    let km = EntryValue::Reading { value: "184312".into(), unit: "km".into() };
    let entries = [("vin", text("1M8GDM9AXKP042788")), ("codes", text("P0765")), ("odometer", km)];
    work(shop, job, "identify", &entries);
    let mut bytes = std::io::Cursor::new(Vec::new());
    let picture = image::RgbImage::from_pixel(600, 400, image::Rgb([10, 90, 40]));
    picture.write_to(&mut bytes, image::ImageFormat::Png).unwrap();
    let routing = shop.bay.add_photo(job, &bytes.into_inner()).unwrap();
    work(shop, job, "photo", &[("routing", routing)]);
    job
}

fn work(shop: &mut Shop, job: JobId, step: &str, entries: &[(&str, EntryValue)]) {
    let entries = entries.iter().map(|(entry, value)| ((*entry).to_owned(), value.clone())).collect();
    shop.enter(job, &Command::Work { step: step.into(), entries, signatures: Vec::new(), later: false });
}

fn pins_in(events: &[Event]) -> Vec<Option<SignedPin>> {
    let signs = events.iter().flat_map(|event| match event {
        Event::Done(done) => done.signs.clone(),
        _ => Vec::new(),
    });
    signs.map(|signature| signature.pin).collect()
}

pub fn given(shop: &mut Shop, job: JobId) -> String {
    let document = shop.bay.record(job).unwrap();
    shop.bay.record_text(&document, Pages::Record(Extent::Everything))
}

#[test]
fn who_has_no_pin_signs_as_before_and_the_record_says_so() {
    let mut shop = Shop::new();
    let job = at_the_hold_point(&mut shop);
    let events = shop.enter(job, &signed());
    assert_eq!(pins_in(&events), [Some(SignedPin::NoPin)], "what the command claimed counts for nothing");
    assert!(given(&mut shop, job).contains("K. Lund, service writer, no PIN"));
}

#[test]
fn a_hold_point_waits_for_the_pin_of_who_signs_and_the_record_says_it_was_given() {
    let mut shop = Shop::new();
    let job = at_the_hold_point(&mut shop);
    shop.bay.set_pin(LUND, pin(DIGITS), OWN_LUND).unwrap();
    let refusal = shop.refused(job, &signed());
    assert_eq!(refusal.pin_of(), Some(LUND));
    assert_eq!(shop.bay.give_pin(LUND, &pin(DIGITS)).unwrap(), RIGHT);
    let events = shop.enter(job, &signed());
    assert_eq!(pins_in(&events), [Some(SignedPin::Own)]);
    assert!(given(&mut shop, job).contains("K. Lund, service writer, PIN given"));
}

#[test]
fn a_window_is_told_whose_pin_is_missing() {
    let mut shop = Shop::new();
    let job = at_the_hold_point(&mut shop);
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    let head = shop.bay.head(job).unwrap();
    let reply = shop.bay.carry_out(job, head, new_request(), &technician(), &signed()).unwrap();
    assert_eq!(reply.pin_of, Some(LUND));
    let said = &reply.refused.unwrap().message.text;
    assert_eq!(said, "This is a hold point. K. Lund must give a PIN to sign it.");
}

#[test]
fn a_pin_is_used_once_and_ends_by_itself() {
    let mut shop = Shop::new();
    let job = at_the_hold_point(&mut shop);
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    shop.bay.give_pin(LUND, &pin("4711")).unwrap();
    shop.clock.advance_ms(121_000);
    assert!(shop.refused(job, &signed()).pin_of().is_some(), "two minutes are over");
    shop.bay.give_pin(LUND, &pin("4711")).unwrap();
    let mut shop = shop.restarted();
    assert!(shop.refused(job, &signed()).pin_of().is_some(), "a restart forgets it");
    shop.bay.give_pin(LUND, &pin("4711")).unwrap();
    shop.enter(job, &signed());
    let again = shop.bay.set_pin(LUND, pin("1234"), OWN_LUND);
    assert!(matches!(again, Err(BayError::PinAsked { .. })), "the signature has used it up: {again:?}");
}

#[test]
fn the_rules_are_asked_before_the_pin() {
    let mut shop = Shop::new();
    let job = shop.start();
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    let refusal = shop.refused(job, &signed());
    assert_eq!(refusal.pin_of(), None, "the step is not open yet: nobody types a PIN for nothing");
}

#[test]
fn a_pin_has_four_to_eight_digits() {
    for wrong in ["", "123", "123456789", "12a4", "12 4", "１２３４"] {
        assert!(matches!(Pin::new(wrong), Err(BayError::PinForm)), "{wrong}");
    }
    assert!(Pin::new("0000").is_ok() && Pin::new("12345678").is_ok());
}

#[test]
fn after_three_wrong_tries_even_the_right_pin_has_to_wait_and_each_further_one_doubles_it() {
    let mut shop = Shop::new();
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    let wrong = |shop: &mut Shop| shop.bay.give_pin(LUND, &pin("0000")).unwrap().wait_s;
    assert_eq!([wrong(&mut shop), wrong(&mut shop), wrong(&mut shop)], [0, 0, 30]);
    shop.clock.advance_ms(10_000);
    assert_eq!(shop.bay.give_pin(LUND, &pin("4711")).unwrap(), PinReply { right: false, wait_s: 20 });
    let mut shop = shop.restarted();
    assert_eq!(wrong(&mut shop), 20, "the tries are counted on disk, and one that waits counts for nothing");
    shop.clock.advance_ms(20_000);
    assert_eq!(wrong(&mut shop), 60);
    shop.clock.advance_ms(60_000);
    assert_eq!(shop.bay.give_pin(LUND, &pin("4711")).unwrap(), RIGHT);
    assert_eq!(wrong(&mut shop), 0, "the right one begins the count anew");
}

#[test]
fn the_wait_ends_at_sixteen_minutes() {
    let mut shop = Shop::new();
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    let mut waits = Vec::new();
    for _ in 0..10 {
        waits.push(shop.bay.give_pin(LUND, &pin("0000")).unwrap().wait_s);
        shop.clock.advance_ms(16 * 60_000);
    }
    assert_eq!(waits, [0, 0, 30, 60, 120, 240, 480, 960, 960, 960]);
}

/// R. Ode, K. Lund and T. Marl have PINs.
fn all_have_pins(shop: &mut Shop) {
    for (person, digits) in [(ODE, "2580"), (LUND, "4711"), (MARL, "1357")] {
        shop.bay.set_pin(person, pin(digits), PinAuthority::Own(person)).unwrap();
    }
}

#[test]
fn setting_the_wall_clock_ends_no_wait_and_a_restart_begins_it_anew() {
    for set_min in [-60, 0, 24 * 60] {
        let mut shop = Shop::new();
        shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
        let tried = |shop: &mut Shop, digits: &str| shop.bay.give_pin(LUND, &pin(digits)).unwrap();
        for _ in 0..3 {
            tried(&mut shop, "0000");
        }
        shop.clock.advance_ms(29_000);
        let mut shop = shop.rebooted(set_min);
        assert_eq!(tried(&mut shop, "4711"), PinReply { right: false, wait_s: 30 }, "set by {set_min} min");
        shop.clock.advance_ms(30_000);
        assert_eq!(tried(&mut shop, "4711"), RIGHT, "set by {set_min} min");
    }
}

#[test]
fn nobody_sets_another_persons_pin_alone_neither_the_first_nor_a_later_one() {
    let mut shop = Shop::new();
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    shop.bay.give_pin(LUND, &pin("4711")).unwrap();
    let first = shop.bay.set_pin(ODE, pin("2580"), OWN_LUND).unwrap_err();
    assert!(matches!(&first, BayError::PinOfOther(name) if name == "R. Ode"), "{first}");
    shop.bay.set_pin(ODE, pin("2580"), OWN_ODE).unwrap();
    let later = shop.bay.set_pin(ODE, pin("1111"), OWN_LUND).unwrap_err();
    assert!(matches!(later, BayError::PinOfOther(_)), "{later}");
    assert_eq!(shop.bay.give_pin(ODE, &pin("2580")).unwrap(), RIGHT);
    let nobody = shop.bay.set_pin(NOBODY, pin("1111"), PinAuthority::Own(NOBODY)).unwrap_err();
    assert!(matches!(nobody, BayError::NoPerson), "{nobody}");
}

#[test]
fn a_forgotten_pin_is_set_by_the_lead_with_a_second_person_after_both_gave_theirs() {
    let mut shop = Shop::new();
    all_have_pins(&mut shop);
    let reset = |shop: &mut Shop| shop.bay.set_pin(ODE, pin("1111"), BY_LUND_AND_MARL);
    for (giver, digits) in [(LUND, "4711"), (MARL, "1357")] {
        let asked = reset(&mut shop).unwrap_err();
        assert!(matches!(asked, BayError::PinAsked { person, .. } if person == giver), "{asked}");
        shop.bay.give_pin(giver, &pin(digits)).unwrap();
    }
    reset(&mut shop).unwrap();
    assert_eq!(shop.bay.give_pin(ODE, &pin("1111")).unwrap(), RIGHT);
    let holders = shop.bay.pin_holders(0).unwrap();
    let ode = holders.iter().find(|one| one.person == ODE).unwrap();
    let set_by = PinSetBy::LeadAndSecond { lead: LUND, second: MARL };
    assert_eq!((&ode.how, ode.on.as_str()), (&set_by, "2026-03-02"));
    assert!(holders.iter().all(|one| one.person == ODE || one.how == PinSetBy::OwnFirst));
    let again = reset(&mut shop).unwrap_err();
    assert!(matches!(again, BayError::PinAsked { .. }), "each PIN served for one reset: {again}");
}

#[test]
fn only_a_lead_with_a_pin_resets_and_never_their_own() {
    let mut shop = Shop::new();
    shop.bay.set_pin(ODE, pin("2580"), OWN_ODE).unwrap();
    shop.bay.set_pin(MARL, pin("1357"), PinAuthority::Own(MARL)).unwrap();
    let reset = |shop: &mut Shop, person, lead, second| {
        shop.bay.set_pin(person, pin("1111"), PinAuthority::Lead(ResetBy { lead, second })).unwrap_err()
    };
    let without = reset(&mut shop, ODE, LUND, MARL);
    assert!(matches!(without, BayError::PinLead(_)), "K. Lund leads and has no PIN: {without}");
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    for (person, lead, second) in [(ODE, MARL, LUND), (LUND, LUND, MARL)] {
        let refused = reset(&mut shop, person, lead, second);
        assert!(matches!(refused, BayError::PinLead(_)), "{refused}");
    }
    let stranger = reset(&mut shop, ODE, NOBODY, MARL);
    assert!(matches!(stranger, BayError::NoPerson), "{stranger}");
}

#[test]
fn the_second_person_of_a_reset_is_a_third_who_has_a_pin() {
    let mut shop = Shop::new();
    shop.bay.set_pin(ODE, pin("2580"), OWN_ODE).unwrap();
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    shop.bay.give_pin(LUND, &pin("4711")).unwrap();
    for second in [ODE, LUND, MARL] {
        let by = PinAuthority::Lead(ResetBy { lead: LUND, second });
        let refused = shop.bay.set_pin(ODE, pin("1111"), by).unwrap_err();
        assert!(matches!(&refused, BayError::PinSecond(name) if name == "R. Ode"), "{refused}");
    }
}

#[test]
fn a_first_pin_is_not_reset_by_others() {
    let mut shop = Shop::new();
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    shop.bay.set_pin(MARL, pin("1357"), PinAuthority::Own(MARL)).unwrap();
    shop.bay.give_pin(LUND, &pin("4711")).unwrap();
    shop.bay.give_pin(MARL, &pin("1357")).unwrap();
    let refused = shop.bay.set_pin(ODE, pin("1111"), BY_LUND_AND_MARL).unwrap_err();
    assert!(matches!(refused, BayError::PinFirstOwn(_)), "{refused}");
}

#[test]
fn whoever_set_the_pin_for_another_stands_beside_what_it_signs_until_the_person_sets_their_own() {
    let mut shop = Shop::new();
    let job = at_the_hold_point(&mut shop);
    let setup = shop.bay.setup().unwrap();
    let Person { id, name, roles, .. } = shop.bay.people().unwrap().person(ODE).unwrap().clone();
    let lead = TypedPerson { id: Some(id), seen: setup.seen(id.0), name, roles, lead: true };
    shop.bay.put_person(lead, Some(LUND)).unwrap();
    all_have_pins(&mut shop);
    shop.bay.give_pin(ODE, &pin("2580")).unwrap();
    shop.bay.give_pin(MARL, &pin("1357")).unwrap();
    let by = ResetBy { lead: ODE, second: MARL };
    shop.bay.set_pin(LUND, pin("1111"), PinAuthority::Lead(by)).unwrap();
    shop.bay.give_pin(LUND, &pin("1111")).unwrap();
    let events = shop.enter(job, &signed());
    assert_eq!(pins_in(&events), [Some(SignedPin::SetBy { lead: ODE, second: MARL })]);
    let says = "K. Lund, service writer, PIN given, set by R. Ode with T. Marl";
    assert!(given(&mut shop, job).contains(says));
    shop.bay.give_pin(LUND, &pin("1111")).unwrap();
    shop.bay.set_pin(LUND, pin("2222"), OWN_LUND).unwrap();
    assert!(
        shop.bay.pin_holders(0).unwrap().iter().all(|one| !matches!(one.how, PinSetBy::LeadAndSecond { .. }))
    );
}

#[test]
fn ones_own_pin_is_changed_by_giving_the_old_one() {
    let mut shop = Shop::new();
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    assert!(matches!(shop.bay.set_pin(LUND, pin("1234"), OWN_LUND), Err(BayError::PinAsked { .. })));
    shop.bay.give_pin(LUND, &pin("4711")).unwrap();
    shop.bay.set_pin(LUND, pin("1234"), OWN_LUND).unwrap();
    assert!(!shop.bay.give_pin(LUND, &pin("4711")).unwrap().right);
    assert!(shop.bay.give_pin(LUND, &pin("1234")).unwrap().right);
}

#[test]
fn a_spec_sheet_is_checked_with_the_pin_of_who_checks() {
    let mut shop = Shop::new();
    let page = shop.bay.begin_sheet(SHELF, &SheetFrom::Copy("invented-van".into())).unwrap();
    let draft = page.typed.draft.clone();
    shop.bay.type_sheet(SHELF, TypedSheet { title: "Our van".into(), ..page.typed }).unwrap();
    let id = shop.bay.keep_sheet(SHELF, &draft, &technician(), 0).unwrap();
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    let check = |shop: &mut Shop| {
        let seen = shop.bay.sheet(SHELF, &id).unwrap().typed.seen;
        shop.bay.check_sheet(SHELF, (&id, seen), &["coil".into()], &writer(), 0)
    };
    assert!(matches!(check(&mut shop), Err(BayError::PinAsked { .. })));
    shop.bay.give_pin(LUND, &pin("4711")).unwrap();
    check(&mut shop).unwrap();
    let page = shop.bay.sheet(SHELF, &id).unwrap();
    let coil = page.view.values.into_iter().find(|value| value.key == "coil").unwrap();
    assert!(coil.checked.unwrap().pin);
}

#[test]
fn two_people_with_the_same_pin_have_different_hashes_and_nobody_without_one_gives_one() {
    let mut shop = Shop::new();
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    shop.bay.set_pin(ODE, pin("4711"), OWN_ODE).unwrap();
    shop.bay.close().unwrap();
    let database = std::fs::read(shop.dir.path().join("journal.db")).unwrap();
    let text = String::from_utf8_lossy(&database);
    let hashes: Vec<&str> = text.split("$argon2id$v=19$").skip(1).map(|rest| &rest[..80]).collect();
    assert!(hashes.len() >= 2, "the hashes name their kind");
    assert_ne!(hashes[0], hashes[1], "each PIN has a salt of its own");
    let mut shop = Shop::new();
    let nobody = shop.bay.give_pin(MARL, &pin("4711")).unwrap_err();
    assert!(matches!(nobody, BayError::NoPin(_)), "{nobody}");
}

#[test]
fn a_pin_is_in_no_file_and_printing_it_shows_nothing() {
    let mut shop = Shop::new();
    let job = at_the_hold_point(&mut shop);
    shop.bay.set_pin(LUND, pin(DIGITS), OWN_LUND).unwrap();
    shop.bay.give_pin(LUND, &pin("83504178")).unwrap();
    shop.bay.give_pin(LUND, &pin(DIGITS)).unwrap();
    shop.enter(job, &signed());
    shop.bay.save_record(job, SavedPages::Record).unwrap();
    assert_eq!(files_with(shop.dir.path(), DIGITS), Vec::<String>::new());
    assert_eq!(files_with(shop.dir.path(), "83504178"), Vec::<String>::new(), "a wrong one neither");
    assert!(!format!("{:?}", pin(DIGITS)).contains('8'));
}

/// The files below a folder that hold these digits.
fn files_with(folder: &Path, digits: &str) -> Vec<String> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(files_with(&path, digits));
        } else if std::fs::read(&path).unwrap().windows(digits.len()).any(|part| part == digits.as_bytes()) {
            found.push(path.to_string_lossy().into_owned());
        }
    }
    found
}

#[test]
fn the_same_command_sent_twice_asks_for_no_second_pin() {
    let mut shop = Shop::new();
    let job = at_the_hold_point(&mut shop);
    shop.bay.set_pin(LUND, pin("4711"), OWN_LUND).unwrap();
    shop.bay.give_pin(LUND, &pin("4711")).unwrap();
    let (head, request) = (shop.bay.head(job).unwrap(), new_request());
    let send = |shop: &mut Shop| shop.bay.enter(job, head, request, &technician(), &signed()).unwrap();
    assert!(matches!(send(&mut shop), Answer::Entered { already: false, .. }));
    assert!(matches!(send(&mut shop), Answer::Entered { already: true, .. }));
}
