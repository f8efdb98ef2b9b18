//! Spec sheets of the shop: made, edited, checked, taken in and handed out.

use std::collections::BTreeSet;

use panside_bay::BayError;
use panside_bay::enter::{Actor, Hash};
use panside_bay::sheets::{SheetFrom, SheetPage, Typed, TypedSheet};
use panside_bay::shelf::Shelf;
use panside_procedure::format::Role;

use crate::support::{CHECKLIST, MARL, ODE, PLAIN, SHEET, Shop, technician};

const SHELF: Shelf<'static> = Shelf { checklists: &[CHECKLIST], sheets: &[SHEET], texts: &[], parts: &[] };

fn second_person() -> Actor {
    Actor { id: MARL, role: Role::SecondPerson }
}

fn range(min: &str, max: &str) -> Typed {
    Typed::Range { min: min.into(), max: max.into(), unit: "Ω".into() }
}

/// The page after the coil's range was typed.
fn type_coil(shop: &mut Shop, typed: &TypedSheet, is: Typed) -> SheetPage {
    let mut typed = typed.clone();
    typed.values.get_mut("coil").unwrap().is = is;
    shop.bay.type_sheet(SHELF, typed).unwrap()
}

/// A copy of the shelf's sheet, kept under a title of its own; answers its id.
fn copied(shop: &mut Shop, title: &str) -> String {
    let page = shop.bay.begin_sheet(SHELF, &SheetFrom::Copy("invented-van".into())).unwrap();
    let typed = TypedSheet { title: title.into(), ..page.typed };
    let draft = typed.draft.clone();
    shop.bay.type_sheet(SHELF, typed).unwrap();
    shop.bay.keep_sheet(SHELF, &draft, &technician(), 0).unwrap()
}

/// The sheet with the coil's range changed: its next revision.
fn edited(shop: &mut Shop, id: &str) {
    let page = shop.bay.begin_sheet(SHELF, &SheetFrom::Edit(id.into())).unwrap();
    type_coil(shop, &page.typed, range("6,1", "6,9"));
    shop.bay.keep_sheet(SHELF, id, &technician(), 0).unwrap();
}

/// What the page of a sheet shows as the newest of it.
fn seen(shop: &Shop, id: &str) -> BTreeSet<Hash> {
    shop.bay.sheet(SHELF, id).unwrap().typed.seen
}

fn problems(page: &SheetPage, key: &str) -> Vec<String> {
    let value = page.view.values.iter().find(|value| value.key == key).unwrap();
    value.problems.iter().map(|problem| problem.message.text.clone()).collect()
}

#[test]
fn a_new_sheet_has_a_field_for_all_that_the_checklist_asks_and_says_what_is_missing() {
    let mut shop = Shop::new();
    let page = shop.bay.begin_sheet(SHELF, &SheetFrom::Checklist("pan-short".into())).unwrap();
    assert_eq!(page.typed.values.len(), 6);
    assert!(!page.typed.demo);
    assert_eq!(page.view.title.as_ref().unwrap().text, "Say which vehicles the sheet is for.");
    assert_eq!(problems(&page, "supporter_needed")[0], "Choose one of: no or yes.");
    let error = shop.bay.keep_sheet(SHELF, &page.typed.draft, &technician(), 0).unwrap_err().to_string();
    assert!(error.contains("\nTouch limit: A number is missing."), "{error}");
    assert!(shop.bay.sheets(SHELF).unwrap().sheets.len() == 1, "nothing unfinished is offered");
}

#[test]
fn what_is_typed_is_judged_in_sentences_and_survives_a_restart() {
    let mut shop = Shop::new();
    let page = shop.bay.begin_sheet(SHELF, &SheetFrom::Copy("invented-van".into())).unwrap();
    let page = type_coil(&mut shop, &page.typed, range("5,6", "5.0"));
    let sentence = "The range 5.6 to 5 is reversed. Correct the sheet.";
    let no_source = "Say where the value comes from: the document and its place in it.";
    assert_eq!(problems(&page, "coil"), [sentence, no_source], "it no longer comes from the other sheet");
    let typed = TypedSheet { source: "our manual".into(), ..page.typed };
    let page = shop.bay.type_sheet(SHELF, typed).unwrap();
    assert_eq!(problems(&page, "coil"), [sentence]);
    let mut shop = shop.restarted();
    let again = shop.bay.typed_sheet(SHELF, &page.typed.draft).unwrap();
    assert_eq!(again.typed, page.typed);
    assert_eq!(problems(&again, "coil"), [sentence]);
    assert_eq!(shop.bay.sheets(SHELF).unwrap().unfinished.len(), 1);
    shop.bay.drop_sheet(&page.typed.draft).unwrap();
    assert!(matches!(shop.bay.typed_sheet(SHELF, &page.typed.draft), Err(BayError::SheetDraft)));
}

#[test]
fn a_copy_of_a_demo_sheet_stays_demo_and_is_entered_by_who_made_it_today() {
    let mut shop = Shop::new();
    let id = copied(&mut shop, "Our van (six speed)");
    assert_eq!(id, "our-van-six-speed");
    let page = shop.bay.sheet(SHELF, &id).unwrap();
    assert!(page.typed.demo && !page.built_in && !page.typing);
    assert_eq!(page.fits.len(), 1);
    let coil = page.view.values.iter().find(|value| value.key == "coil").unwrap();
    let entered = coil.entered.as_ref().unwrap();
    assert_eq!((entered.by.as_str(), entered.on.as_deref()), ("R. Ode", Some("2026-03-02")));
    let offers = shop.bay.offers(SHELF, PLAIN).unwrap();
    let offered: Vec<_> = offers[0].sheets.iter().map(|sheet| sheet.id.as_str()).collect();
    assert_eq!(offered, ["invented-van", "our-van-six-speed"], "it is offered beside those of the shelf");
}

#[test]
fn an_edit_makes_a_new_revision_and_the_newest_is_offered() {
    let mut shop = Shop::new();
    let id = copied(&mut shop, "Our van");
    edited(&mut shop, &id);
    let offers = shop.bay.offers(SHELF, PLAIN).unwrap();
    let ours = offers[0].sheets.iter().find(|sheet| sheet.id == id).unwrap();
    assert_eq!(ours.revision, 2);
    assert!(shop.bay.sheets(SHELF).unwrap().unfinished.is_empty(), "what is kept is no draft any more");
}

#[test]
fn a_sheet_of_the_program_is_copied_and_never_changed() {
    let mut shop = Shop::new();
    let error = shop.bay.begin_sheet(SHELF, &SheetFrom::Edit("invented-van".into())).unwrap_err();
    assert!(matches!(error, BayError::SheetBuiltIn(_)), "{error}");
}

#[test]
fn a_job_keeps_the_sheet_it_was_started_with_when_that_is_edited() {
    let mut shop = Shop::new();
    let id = copied(&mut shop, "Our van");
    let text = shop.bay.sheet_text(SHELF, &id).unwrap();
    let job = shop.try_start(CHECKLIST, &text).unwrap();
    edited(&mut shop, &id);
    assert_ne!(shop.bay.sheet_text(SHELF, &id).unwrap(), text, "the sheet has moved on");
    let mut shop = shop.restarted();
    let open = shop.bay.job(job).unwrap();
    let (_, started) = open.start.as_ref().unwrap();
    assert_eq!((started.sheet.revision, started.sheet.hash), (1, Hash::of(&text)));
    let (low, high) = open.specs.range("coil").unwrap();
    assert_eq!((low.value(), high.value()), (5.0, 5.6), "the values of the revision it began with");
}

#[test]
fn a_second_person_checks_values_and_a_change_takes_the_check_away() {
    let mut shop = Shop::new();
    let id = copied(&mut shop, "Our van");
    let keys = ["coil".to_owned(), "cure".to_owned()];
    let own = shop.bay.check_sheet(SHELF, (&id, seen(&shop, &id)), &keys, &technician(), 0).unwrap_err();
    assert_eq!(own.to_string(), "Coil resistance: R. Ode entered this value, so a second person checks it.");
    shop.bay.check_sheet(SHELF, (&id, seen(&shop, &id)), &keys, &second_person(), 0).unwrap();
    let line = |shop: &Shop| {
        let list = shop.bay.sheets(SHELF).unwrap();
        list.sheets.into_iter().find(|sheet| sheet.id == id).unwrap()
    };
    assert_eq!((line(&shop).revision, line(&shop).checked), (2, 2));
    edited(&mut shop, &id);
    let page = shop.bay.sheet(SHELF, &id).unwrap();
    let checked = |key: &str| page.view.values.iter().find(|one| one.key == key).unwrap().checked.clone();
    assert_eq!(checked("coil"), None);
    assert_eq!(checked("cure").unwrap().by, "T. Marl");
    assert_eq!(line(&shop).checked, 1);
}

#[test]
fn a_check_of_a_revision_that_was_replaced_meanwhile_is_refused() {
    let mut shop = Shop::new();
    let id = copied(&mut shop, "Our van");
    let early = seen(&shop, &id);
    edited(&mut shop, &id);
    let late = shop.bay.check_sheet(SHELF, (&id, early), &["coil".into()], &second_person(), 0).unwrap_err();
    assert!(late.to_string().contains("This spec sheet was changed meanwhile"), "{late}");
}

#[test]
fn a_sheet_goes_out_as_a_file_and_comes_in_on_another_tablet() {
    let mut shop = Shop::new();
    let id = copied(&mut shop, "Our van");
    let path = shop.bay.export_sheet(SHELF, &id).unwrap();
    assert!(path.ends_with("/sheets/our-van-1.sheet.json"), "{path}");
    let bytes = std::fs::read(path).unwrap();
    let mut other = Shop::new();
    assert_eq!(other.bay.import_sheet(SHELF, &bytes, Some(ODE)).unwrap(), id);
    assert_eq!(other.bay.import_sheet(SHELF, &bytes, Some(ODE)).unwrap(), id, "twice is once");
    assert_eq!(other.bay.sheet_text(SHELF, &id).unwrap(), bytes);
}

#[test]
fn a_sheet_written_before_there_were_checks_is_taken_in() {
    let mut shop = Shop::new();
    let old = String::from_utf8(SHEET.to_vec()).unwrap().replace("invented-van", "older-van");
    assert_eq!(shop.bay.import_sheet(SHELF, old.as_bytes(), Some(ODE)).unwrap(), "older-van");
    assert_eq!(shop.bay.sheets(SHELF).unwrap().sheets.len(), 2);
}

#[test]
fn a_file_that_is_no_good_sheet_is_refused_in_sentences_and_nothing_is_kept() {
    let mut shop = Shop::new();
    let text = String::from_utf8(SHEET.to_vec()).unwrap();
    let cases: [(Vec<u8>, &str); 6] = [
        (b"\xff\xfe".to_vec(), "not UTF-8"),
        (b"a photo".to_vec(), "not JSON"),
        (text.replace("panside-sheet/1", "panside-sheet/9").into_bytes(), "panside-sheet/9"),
        (text.replace("invented-van", "../van").into_bytes(), "small letters, digits and hyphens"),
        (text.clone().into_bytes(), "belongs to the program"),
        (
            text.replace("invented-van", "van").replace("\"max\": 5.6", "\"max\": 4.6").into_bytes(),
            "is reversed",
        ),
    ];
    for (bytes, says) in cases {
        let error = shop.bay.import_sheet(SHELF, &bytes, Some(ODE)).unwrap_err().to_string();
        assert!(error.contains(says), "{error}");
    }
    assert_eq!(shop.bay.sheets(SHELF).unwrap().sheets.len(), 1);
}

#[test]
fn an_older_revision_or_another_text_under_the_same_one_is_not_taken_in() {
    let mut shop = Shop::new();
    let id = copied(&mut shop, "Our van");
    let first = shop.bay.sheet_text(SHELF, &id).unwrap();
    let other = String::from_utf8(first.clone()).unwrap().replace("Our van", "Their van");
    let clash = shop.bay.import_sheet(SHELF, other.as_bytes(), Some(ODE)).unwrap_err().to_string();
    assert!(clash.contains("Revision 1 of the spec sheet \"our-van\" is here already"), "{clash}");
    edited(&mut shop, &id);
    let late = shop.bay.import_sheet(SHELF, &first, Some(ODE)).unwrap_err().to_string();
    assert!(
        late.contains("Revision 2 of the spec sheet \"our-van\" is here already; this one says 1"),
        "{late}"
    );
}

#[test]
fn a_sheet_that_was_kept_elsewhere_since_its_editing_began_is_not_written_over() {
    let mut shop = Shop::new();
    let id = copied(&mut shop, "Our van");
    let page = shop.bay.begin_sheet(SHELF, &SheetFrom::Edit(id.clone())).unwrap();
    type_coil(&mut shop, &page.typed, range("6,1", "6,9"));
    let next = seen(&shop, &id);
    shop.bay.check_sheet(SHELF, (&id, next), &["cure".into()], &second_person(), 0).unwrap();
    let late = shop.bay.keep_sheet(SHELF, &id, &technician(), 0).unwrap_err();
    assert!(late.to_string().contains("changed meanwhile"), "{late}");
    assert_eq!(shop.bay.sheets(SHELF).unwrap().sheets.iter().find(|one| one.id == id).unwrap().revision, 2);
    assert!(shop.bay.typed_sheet(SHELF, &id).is_ok(), "what is typed stays");
}
