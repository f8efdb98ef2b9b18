//! What is longer than anybody types is refused with the limit; the list of jobs begins with the newest.

use panside_bay::enter::{Command, PersonId, new_request};
use panside_bay::people::Person;
use panside_bay::pins::{Pin, PinAuthority};
use panside_bay::start::NewJob;
use panside_bay::{BayError, clean};
use panside_job::size;
use panside_procedure::format::Role;
use panside_procedure::proof::go_on;

use crate::support::{CHECKLIST, PLAIN, SHEET, Shop, made, technician};

fn named(number: u64, name: String) -> Person {
    let id = PersonId(uuid::Uuid::from_u64_pair(7, number));
    Person { id, name, roles: [Role::Technician].into(), lead: false }
}

/// Says that it was refused as too long, with the limit in the sentence.
fn too_long<T: std::fmt::Debug>(result: Result<T, BayError>, most: usize) {
    let refused = result.unwrap_err();
    assert!(matches!(refused, BayError::Refused { .. }), "{refused:?}");
    assert!(refused.to_string().contains(&format!("{most} characters at most")), "{refused}");
}

#[test]
fn a_job_is_not_started_with_a_repair_order_or_label_that_nobody_types() {
    let mut shop = Shop::new();
    let long = "9".repeat(size::LINE + 1);
    let proved = shop.bay.prove(CHECKLIST, SHEET, PLAIN, &mut go_on).unwrap();
    let new = NewJob {
        sheet: SHEET,
        texts: None,
        repair_order: "RO 1042",
        label: "invented van",
        conditions: Default::default(),
        utc_offset_min: 0,
    };
    let mut start = |new: &NewJob<'_>| shop.bay.start(&proved, new, &technician(), new_request());
    too_long(start(&NewJob { repair_order: &long, ..new.clone() }), size::LINE);
    too_long(start(&NewJob { label: &long, ..new.clone() }), size::LINE);
    start(&new).unwrap();
}

#[test]
fn the_shops_people_and_pins_have_bounds() {
    let mut shop = Shop::new();
    let long = named(0, "x".repeat(size::LINE + 1));
    too_long(shop.bay.take_in(&[long], &[]), size::LINE);
    let crowd: Vec<Person> =
        (0..=size::PIECES as u64).map(|number| named(number, format!("Person {number}"))).collect();
    let refused = shop.bay.take_in(&crowd, &[]).unwrap_err();
    assert!(refused.to_string().contains("1000 at most"), "{refused}");
    let ode = technician().id;
    shop.bay.set_pin(ode, Pin::new("1234").unwrap(), PinAuthority::Own(ode)).unwrap();
    let endless: Pin = serde_json::from_value("1".repeat(1 << 20).into()).unwrap();
    assert!(matches!(shop.bay.give_pin(ode, &endless), Err(BayError::PinForm)));
}

#[test]
fn drafts_and_settings_have_bounds_and_the_store_goes_on() {
    let mut shop = Shop::new();
    let job = shop.start();
    let text = "x".repeat(1 << 21);
    for refused in [
        shop.bay.put_draft(job, "note", &text),
        shop.bay.put_draft(job, &text, "note"),
        shop.bay.put_setting("window", &text),
        shop.bay.put_setting(&text, "window"),
    ] {
        assert!(refused.unwrap_err().to_string().contains("the most that is kept"));
    }
    shop.bay.put_draft(job, "note", "dry").unwrap();
    shop.enter(job, &made("key_out"));
}

#[test]
fn a_refusal_that_quotes_what_was_typed_is_clean() {
    let mut shop = Shop::new();
    let job = shop.start();
    let step = "drain\u{1b}[2J\u{202e}\u{200b}\n";
    let refusal = shop.refused(job, &Command::Begin { step: step.to_owned() });
    let said = refusal.said_by(shop.bay.speaker());
    assert!(said.contains("drain [2J"), "{said}");
    assert_eq!(said, clean::line(&said));
}

#[test]
fn the_job_that_something_happened_in_last_is_listed_first() {
    let mut shop = Shop::new();
    let mut jobs = Vec::new();
    for _ in 0..3 {
        jobs.push(shop.start());
        shop.clock.advance_ms(60_000);
    }
    let listed = |shop: &Shop| shop.bay.jobs().unwrap().iter().map(|line| line.job).collect::<Vec<_>>();
    assert_eq!(listed(&shop), [jobs[2], jobs[1], jobs[0]]);
    shop.enter(jobs[0], &made("key_out"));
    let order = [jobs[0], jobs[2], jobs[1]];
    assert_eq!(listed(&shop), order);
    let lines = shop.bay.jobs().unwrap();
    assert_eq!(lines[0].changed_ms - lines[0].started_ms, 180_000);
    assert_eq!(lines[1].changed_ms, lines[1].started_ms);
    shop.bay.rebuild().unwrap();
    assert_eq!(shop.bay.jobs().unwrap(), lines, "made anew from the journal, the list says the same");
    assert_eq!(listed(&shop.restarted()), order);
}
