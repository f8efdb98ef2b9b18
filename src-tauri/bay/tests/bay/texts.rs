//! A job that is walked in another language: it pins the translation, and stays readable without it.

use std::collections::BTreeMap;
use std::sync::Arc;

use panside_bay::enter::{Hash, JobId, new_request};
use panside_bay::prove::go_on;
use panside_bay::shelf::Shelf;
use panside_bay::start::NewJob;
use panside_bay::{Bay, BayError};
use panside_messages::language::accented;
use panside_procedure::Procedure;
use panside_procedure::format::{Checklist, Texts};
use rusqlite::Connection;

use crate::support::{CHECKLIST, PLAIN, SHEET, Shop, made, technician};

const LANGUAGE: &str = "qps-ploc";

fn checklist() -> Checklist {
    Procedure::load(CHECKLIST).unwrap().checklist
}

/// The checklist's texts, accented, with one change to them.
fn texts(change: impl FnOnce(&mut Texts)) -> Vec<u8> {
    let mut texts = Texts::of(&checklist(), LANGUAGE);
    texts.texts.values_mut().for_each(|text| *text = accented(text));
    change(&mut texts);
    serde_json::to_vec(&texts).unwrap()
}

fn start(shop: &mut Shop, texts: Option<&[u8]>) -> Result<JobId, BayError> {
    let proved = shop.bay.prove(CHECKLIST, SHEET, PLAIN, &mut go_on)?;
    let new = NewJob {
        sheet: SHEET,
        texts,
        repair_order: "RO 1042",
        label: "invented van",
        conditions: BTreeMap::new(),
        utc_offset_min: 0,
    };
    shop.bay.start(&proved, &new, &technician(), new_request())
}

/// Closes the shop, changes its database behind its back, and opens it again.
fn changed(shop: Shop, change: &str) -> Shop {
    let Shop { dir, clock, bay } = shop;
    bay.close().unwrap();
    let conn = Connection::open(dir.path().join("journal.db")).unwrap();
    conn.execute_batch(change).unwrap();
    conn.close().unwrap();
    let bay = Bay::open(dir.path(), Box::new(Arc::clone(&clock))).unwrap();
    Shop { dir, clock, bay }
}

#[test]
fn a_job_is_shown_in_the_words_it_was_started_with_and_beside_it_another_in_its_own() {
    let mut shop = Shop::new();
    let bytes = texts(|_| {});
    let job = start(&mut shop, Some(&bytes)).unwrap();
    let own = start(&mut shop, None).unwrap();
    shop.enter(job, &made("key_out"));
    let mut shop = shop.restarted();
    let title = checklist().title;
    assert_eq!(shop.bay.view(job).unwrap().title, accented(&title));
    assert_eq!(shop.bay.view(own).unwrap().title, title);
    let (_, started) = shop.bay.job(job).unwrap().start.clone().unwrap();
    let pinned = started.texts.unwrap();
    assert_eq!((pinned.language.as_str(), pinned.hash), (LANGUAGE, Hash::of(&bytes)));
    assert_eq!(shop.bay.job(own).unwrap().start.clone().unwrap().1.texts, None);
    assert!(shop.bay.check().unwrap().troubles.is_empty());
    assert!(shop.bay.troubles().is_empty());
}

#[test]
fn a_translation_with_mistakes_starts_no_job() {
    let mut shop = Shop::new();
    let bytes = texts(|texts| texts.revision += 1);
    let refused = start(&mut shop, Some(&bytes)).unwrap_err();
    assert!(matches!(refused, BayError::Texts(_)), "{refused:?}");
    assert!(refused.to_string().contains("the texts of revision 2"), "{refused}");
    assert!(shop.bay.jobs().unwrap().is_empty());
}

#[test]
fn a_job_whose_translation_is_gone_or_altered_is_shown_in_its_own_words_and_that_is_said() {
    for (change, why) in [
        ("DELETE FROM documents WHERE kind = 'texts'", "is not in this store"),
        ("UPDATE documents SET bytes = x'7b7d' WHERE kind = 'texts'", "was altered on disk"),
    ] {
        let mut shop = Shop::new();
        let job = start(&mut shop, Some(&texts(|_| {}))).unwrap();
        let mut shop = changed(shop, change);
        assert_eq!(shop.bay.view(job).unwrap().title, checklist().title);
        shop.enter(job, &made("key_out"));
        let said = shop.bay.troubles();
        let [one] = said.as_slice() else { panic!("said once: {said:?}") };
        assert!(one.contains("is shown in the checklist's own words") && one.contains(why), "{one}");
        assert!(!shop.bay.is_troubled(), "it hinders no entry");
        assert_eq!(shop.bay.record(job).unwrap().damaged, said);
        let found: Vec<String> = shop.bay.check().unwrap().troubles.iter().map(ToString::to_string).collect();
        assert_eq!(found.len(), 1, "{found:?}");
    }
}

#[test]
fn the_shelf_has_the_texts_of_a_checklist_by_language_and_revision() {
    let (fits, older) = (texts(|_| {}), texts(|texts| texts.revision = 0));
    let checklist = checklist();
    let find = |texts: &[&[u8]], language: &str| {
        let shelf = Shelf { checklists: &[CHECKLIST], sheets: &[SHEET], texts, parts: &[] };
        shelf.texts(&checklist, language).map(Hash::of)
    };
    assert_eq!(find(&[&older, &fits], LANGUAGE), Some(Hash::of(&fits)));
    assert_eq!(find(&[&older], LANGUAGE), None);
    assert_eq!(find(&[&fits], "es"), None);
}
