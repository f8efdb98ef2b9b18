//! Starting a job.

use std::collections::BTreeMap;
use std::ops::ControlFlow;

use panside_bay::BayError;
use panside_bay::enter::new_request;
use panside_bay::prove::go_on;
use panside_bay::start::NewJob;
use serde_json::{Value, json};

use crate::support::{CHECKLIST, PLAIN, SHEET, Shop, technician};

fn changed(bytes: &[u8], change: impl FnOnce(&mut Value)) -> Vec<u8> {
    let mut value: Value = serde_json::from_slice(bytes).unwrap();
    change(&mut value);
    serde_json::to_vec(&value).unwrap()
}

#[test]
fn a_job_stands_in_the_list_with_what_it_is_called() {
    let mut shop = Shop::new();
    let job = shop.start();
    let jobs = shop.bay.jobs().unwrap();
    assert_eq!(jobs.len(), 1);
    assert_eq!((jobs[0].job, jobs[0].repair_order.as_str(), jobs[0].demo), (job, "RO 1042", true));
    assert!(!jobs[0].ended);
}

#[test]
fn a_checklist_that_is_refuted_starts_no_job_and_the_shortest_run_is_told() {
    let mut shop = Shop::new();
    let unsafe_one = changed(CHECKLIST, |value| {
        let lower = value["vehicle_actions"]
            .as_array_mut()
            .unwrap()
            .iter_mut()
            .find(|made| made["id"] == "lower")
            .unwrap();
        lower["needs"] = json!("lift != floor");
    });
    let Err(BayError::NotProved { id, why }) = shop.try_start(&unsafe_one, SHEET) else {
        panic!("lowering with the pan off must not be proved");
    };
    assert_eq!(id, "pan-short");
    let why = why.english();
    assert!(why.contains("then vehicle action lower"), "{why}");
    assert!(shop.bay.jobs().unwrap().is_empty());
}

#[test]
fn a_proof_is_made_once_and_kept() {
    let mut shop = Shop::new();
    let mut looked = 0;
    shop.bay
        .prove(CHECKLIST, SHEET, PLAIN, &mut |_| {
            looked += 1;
            ControlFlow::Continue(())
        })
        .unwrap();
    assert!(looked > 0, "the first proof searches");
    let mut shop = shop.restarted();
    let mut again = 0;
    shop.bay
        .prove(CHECKLIST, SHEET, PLAIN, &mut |_| {
            again += 1;
            ControlFlow::Continue(())
        })
        .unwrap();
    assert_eq!(again, 0, "the kept one is taken");
}

#[test]
fn a_sheet_that_lacks_a_value_starts_no_job() {
    let mut shop = Shop::new();
    let bare = changed(SHEET, |value| value["values"] = json!({}));
    let Err(BayError::SheetLacks(lacks)) = shop.try_start(CHECKLIST, &bare) else {
        panic!("it lacks everything")
    };
    assert!(lacks.iter().all(|lack| lack.english().contains("on the sheet")), "{lacks:?}");
    assert!(shop.bay.jobs().unwrap().is_empty());
}

#[test]
fn the_same_start_sent_twice_starts_one_job() {
    let mut shop = Shop::new();
    let proved = shop.bay.prove(CHECKLIST, SHEET, PLAIN, &mut go_on).unwrap();
    let new = NewJob {
        sheet: SHEET,
        texts: None,
        repair_order: "RO 1042",
        label: "invented van",
        conditions: BTreeMap::new(),
        utc_offset_min: 0,
    };
    let request = new_request();
    let first = shop.bay.start(&proved, &new, &technician(), request).unwrap();
    let second = shop.bay.start(&proved, &new, &technician(), request).unwrap();
    assert_eq!(first, second);
    assert_eq!(shop.events(first), 1);
}

#[test]
fn a_vehicle_that_may_not_come_in_like_that_is_refused_in_words() {
    let mut shop = Shop::new();
    let proved = shop.bay.prove(CHECKLIST, SHEET, PLAIN, &mut go_on).unwrap();
    let conditions = BTreeMap::from([("lift".to_owned(), "raised".to_owned())]);
    let new =
        NewJob { sheet: SHEET, texts: None, repair_order: "RO 1", label: "", conditions, utc_offset_min: 0 };
    let refused = shop.bay.start(&proved, &new, &technician(), new_request()).unwrap_err();
    assert!(matches!(refused, BayError::Refused { .. }), "a vehicle in the air is no intake: {refused:?}");
    assert!(refused.to_string().to_lowercase().contains("lift"), "{refused}");
}
