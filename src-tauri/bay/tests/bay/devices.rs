//! Two tablets of one shop that write without knowing of each other: whatever each hears of the other, in whatever order
//! and pieces, they end with the same people, tools, sheets and jobs, and say what was done on both sides.

use std::sync::Arc;

use panside_bay::Bay;
use panside_bay::clock::ManualClock;
use panside_bay::enter::{Answer, JobId, PersonId, new_request};
use panside_bay::people::TypedPerson;
use panside_bay::pins::{Pin, PinAuthority};
use panside_bay::setup::{Tool, TypedTool};
use panside_bay::sheets::{SheetFrom, TypedSheet};
use panside_bay::shelf::Shelf;
use panside_journal::{Event, Subject};
use panside_procedure::format::Role;
use panside_store::{Options, Store, StoreError};
use proptest::prelude::*;
use tempfile::TempDir;

use crate::support::{CHECKLIST, LUND, ODE, SHEET, Shop, begin, made, technician};

const SHELF: Shelf<'static> = Shelf { checklists: &[CHECKLIST], sheets: &[SHEET], texts: &[], parts: &[] };

/// What somebody does on a tablet.
#[derive(Debug, Clone, Copy)]
enum Turn {
    Rename(u8),
    Leave,
    Tool(u8),
    ToolOff,
    Sheet(u8),
    Pin,
    Name(u8),
    Work,
}

fn turn() -> impl Strategy<Value = Turn> {
    prop_oneof![
        (0..3_u8).prop_map(Turn::Rename),
        Just(Turn::Leave),
        (0..3_u8).prop_map(Turn::Tool),
        Just(Turn::ToolOff),
        (0..3_u8).prop_map(Turn::Sheet),
        Just(Turn::Pin),
        (0..2_u8).prop_map(Turn::Name),
        Just(Turn::Work),
    ]
}

/// Another tablet of the same shop, which has heard all of it, texts included.
fn second(first: &Shop) -> Shop {
    let dir = TempDir::new().unwrap();
    let clock = Arc::new(ManualClock::at(1_772_438_400_000));
    let mut bay = Bay::open(dir.path(), Box::new(Arc::clone(&clock))).unwrap();
    bay.receive(&events(first)).unwrap();
    let mut shop = Shop { dir, clock, bay };
    copy_texts(first, &mut shop);
    shop
}

/// Everything that is written in a shop's store.
fn events(shop: &Shop) -> Vec<Event> {
    let store = Store::open_read_only(shop.dir.path()).unwrap();
    let jobs = store.jobs().unwrap().into_iter().map(|row| Subject::Job(row.job));
    let subjects = jobs.chain(store.shops().unwrap().into_iter().map(|(subject, _)| subject));
    let lines = subjects.flat_map(|subject| store.events(subject).unwrap());
    let sides = store.both_sides().unwrap().into_iter().flat_map(|both| both.side);
    lines.chain(sides).collect()
}

/// Carries over the texts that events name; events alone go by `receive`.
fn copy_texts(from: &Shop, to: &mut Shop) {
    let texts: Vec<_> = {
        let store = Store::open_read_only(from.dir.path()).unwrap();
        let of = |kind| store.documents(kind).unwrap();
        let hashes = of("sheet").into_iter().chain(of("checklist"));
        hashes.map(|hash| store.document(&hash).unwrap()).collect()
    };
    let Shop { dir, clock, bay } = std::mem::replace(to, Shop::new());
    drop(bay);
    let options = Options::new(
        panside_journal::DeviceId(uuid::Uuid::nil()),
        panside_journal::EpochId(uuid::Uuid::nil()),
    );
    let mut store = Store::open(dir.path(), options).unwrap();
    for text in texts {
        store.put_document(&text.kind, &text.bytes).unwrap();
    }
    store.close().unwrap();
    let bay = Bay::open(dir.path(), Box::new(Arc::clone(&clock))).unwrap();
    *to = Shop { dir, clock, bay };
}

fn wrench(max: u8) -> Tool {
    Tool {
        name: "wrench B".into(),
        min: "5".into(),
        max: (20 + max).to_string(),
        unit: "N·m".into(),
        class_percent: None,
        calibrated_on: None,
        certificate: None,
        calibration_due: "2027-03-01".into(),
    }
}

/// Does it, where the shop as this tablet knows it lets anybody. What is refused changes nothing.
fn act(shop: &mut Shop, job: JobId, turn: Turn) {
    shop.clock.advance_ms(1_000);
    let setup = shop.bay.setup().unwrap();
    let who = setup.people.iter().find(|one| one.lead).map(|one| one.id);
    let ode = || setup.people.iter().chain(&setup.left).find(|one| one.id == ODE).unwrap();
    match turn {
        Turn::Rename(to) => {
            let name = ["R. Ode", "R. Odell", "Rut Ode"][usize::from(to)].to_owned();
            let seen = setup.seen(ODE.0);
            let roles = [Role::Technician].into();
            let typed = TypedPerson { id: Some(ODE), seen, name, roles, lead: ode().lead };
            let _ = shop.bay.put_person(typed, who);
        }
        Turn::Leave => {
            let _ = shop.bay.remove_person(ODE, setup.seen(ODE.0), who);
        }
        Turn::Tool(max) => {
            let id = setup.tools.iter().chain(&setup.tools_off).map(|one| one.id).next();
            let seen = id.map(|id| setup.seen(id.0)).unwrap_or_default();
            let _ = shop.bay.put_tool(TypedTool { id, seen, tool: wrench(max) }, who, 0);
        }
        Turn::ToolOff => {
            if let Some(one) = setup.tools.first() {
                let _ = shop.bay.remove_tool(one.id, setup.seen(one.id.0), who);
            }
        }
        Turn::Sheet(content) => {
            let page = shop.bay.begin_sheet(SHELF, &SheetFrom::Edit("our-van".into())).unwrap();
            let title = format!("Our van {content}");
            shop.bay.type_sheet(SHELF, TypedSheet { title, ..page.typed }).unwrap();
            let _ = shop.bay.keep_sheet(SHELF, "our-van", &actor(who), 0);
            shop.bay.drop_sheet("our-van").unwrap();
        }
        Turn::Pin => {
            let pin = Pin::new("4711").unwrap();
            let _ = shop.bay.give_pin(LUND, &pin);
            let _ = shop.bay.set_pin(LUND, pin, PinAuthority::Own(LUND));
        }
        Turn::Name(number) => {
            let seen = setup.seen(setup.device.id.0);
            let _ = shop.bay.name_device(format!("Bay {number} {}", setup.device.id), seen, who);
        }
        Turn::Work => {
            let Ok(head) = shop.bay.head(job) else { return };
            match shop.bay.enter(job, head, new_request(), &technician(), &made("key_out")) {
                Ok(Answer::Entered { .. } | Answer::Refused(_)) => {}
                Err(error) => assert!(error.to_string().contains("two places"), "{error}"),
            }
        }
    }
}

fn actor(who: Option<PersonId>) -> panside_bay::enter::Actor {
    panside_bay::enter::Actor { id: who.unwrap(), role: Role::ServiceWriter }
}

/// All that the two have to agree on.
fn shown(shop: &Shop) -> String {
    let mut setup = shop.bay.setup().unwrap();
    setup.device.name = None;
    setup.seen.retain(|id, _| *id != setup.device.id.to_string());
    setup.device.id = panside_journal::DeviceId(uuid::Uuid::nil());
    let sheets = shop.bay.sheets(SHELF).unwrap();
    let jobs: Vec<_> = shop.bay.jobs().unwrap();
    let both = shop.bay.both_sides().unwrap();
    format!("{setup:#?}\n{:#?}\n{:?}\n{jobs:#?}\n{both:#?}", sheets.sheets, sheets.unreadable)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]

    #[test]
    fn two_tablets_that_hear_of_each_other_in_any_order_end_alike(
        turns in prop::collection::vec((any::<bool>(), turn()), 1..14),
        hear_at in 0..14_usize,
        order in any::<u64>(),
        cut in any::<prop::sample::Index>(),
    ) {
        let mut one = Shop::new();
        let page = one.bay.begin_sheet(SHELF, &SheetFrom::Copy("invented-van".into())).unwrap();
        let draft = page.typed.draft.clone();
        one.bay.type_sheet(SHELF, TypedSheet { title: "Our van".into(), ..page.typed }).unwrap();
        one.bay.keep_sheet(SHELF, &draft, &technician(), 0).unwrap();
        let job = one.start();
        let mut other = second(&one);

        for (at, (first, turn)) in turns.into_iter().enumerate() {
            if at == hear_at {
                other.bay.receive(&events(&one)).unwrap();
                copy_texts(&one, &mut other);
            }
            act(if first { &mut one } else { &mut other }, job, turn);
        }

        let mut all: Vec<Event> = events(&one).into_iter().chain(events(&other)).collect();
        all.sort_by_key(|event| panside_journal::Hash::of(format!("{order} {}", event.hash).as_bytes()));
        let (early, late) = all.split_at(cut.index(all.len()));
        one.bay.receive(late).unwrap();
        one.bay.receive(early).unwrap();
        other.bay.receive(&all).unwrap();
        copy_texts(&other, &mut one);
        copy_texts(&one, &mut other);
        prop_assert_eq!(shown(&one), shown(&other));

        // After a restart it is the same.
        let before = shown(&one);
        prop_assert_eq!(shown(&one.restarted()), before);
    }
}

#[test]
fn a_job_that_went_on_on_two_tablets_is_told_and_takes_nothing_more() {
    let mut one = Shop::new();
    let job = one.start();
    let mut other = second(&one);
    one.enter(job, &made("key_out"));
    other.clock.advance_ms(1_000);
    other.enter(job, &begin("identify"));
    one.bay.receive(&events(&other)).unwrap();
    assert_eq!(one.bay.both_sides().unwrap().len(), 1);
    let head = one.bay.head(job).unwrap();
    let again = one.bay.enter(job, head, new_request(), &technician(), &begin("identify"));
    let forked = matches!(&again, Err(panside_bay::BayError::Store(StoreError::Forked { .. })));
    assert!(forked, "{again:?}");
}

#[test]
fn a_person_changed_on_two_tablets_is_said_and_settled_by_who_sees_both() {
    let mut one = Shop::new();
    let mut other = second(&one);
    act(&mut one, JobId(uuid::Uuid::nil()), Turn::Rename(1));
    act(&mut other, JobId(uuid::Uuid::nil()), Turn::Rename(2));
    one.bay.receive(&events(&other)).unwrap();
    let setup = one.bay.setup().unwrap();
    let [said] = setup.unsettled.as_slice() else { panic!("{:?}", setup.unsettled) };
    assert!(said.contains("K. Lund on device"), "{said}");
    assert!(said.contains("name \"R. Odell\"") && said.contains("name \"Rut Ode\""), "{said}");
    act(&mut one, JobId(uuid::Uuid::nil()), Turn::Rename(1));
    assert_eq!(one.bay.setup().unwrap().unsettled, [] as [String; 0]);
}

#[test]
fn who_set_a_pin_is_written_and_the_pin_is_not() {
    let mut shop = Shop::new();
    shop.bay.set_pin(LUND, Pin::new("47114711").unwrap(), PinAuthority::Own(LUND)).unwrap();
    let set: Vec<Event> = events(&shop).into_iter().filter(|one| one.header.kind == "pin_set").collect();
    let [set] = set.as_slice() else { panic!("{set:?}") };
    assert_eq!(set.header.who, LUND);
    let body = String::from_utf8(set.body.clone()).unwrap();
    assert!(body.contains("own_first") && !body.contains("47114711") && !body.contains("argon2"), "{body}");
}

#[test]
fn a_kept_sheet_whose_text_is_gone_is_found_by_the_check_and_named_in_the_list() {
    let mut shop = Shop::new();
    let page = shop.bay.begin_sheet(SHELF, &SheetFrom::Copy("invented-van".into())).unwrap();
    let draft = page.typed.draft.clone();
    shop.bay.type_sheet(SHELF, TypedSheet { title: "Our van".into(), ..page.typed }).unwrap();
    shop.bay.keep_sheet(SHELF, &draft, &technician(), 0).unwrap();
    assert!(shop.bay.check().unwrap().troubles.is_empty());
    let Shop { dir, clock, bay } = shop;
    bay.close().unwrap();
    let db = rusqlite::Connection::open(dir.path().join("journal.db")).unwrap();
    assert_eq!(db.execute("DELETE FROM documents WHERE kind = 'sheet'", []).unwrap(), 1);
    drop(db);
    let bay = Bay::open(dir.path(), Box::new(clock)).unwrap();
    assert_eq!(bay.check().unwrap().troubles.len(), 1);
    let list = bay.sheets(SHELF).unwrap();
    assert!(list.unreadable[0].starts_with("our-van: "), "{:?}", list.unreadable);
}
