//! Checklists of the shop: taken in, proved, adopted, offered, handed out.

use std::collections::{BTreeMap, BTreeSet};

use panside_bay::BayError;
use panside_bay::checklists::ChecklistLine;
use panside_bay::enter::{Hash, JobId, PersonId, new_request};
use panside_bay::prove::go_on;
use panside_bay::sheets::SheetFrom;
use panside_bay::shelf::{ChecklistOffer, Shelf};
use panside_bay::start::NewJob;
use serde_json::{Value, json};

use crate::support::{CHECKLIST, NOBODY, ODE, PLAIN, SHEET, Shop, made, technician};

const SHELF: Shelf<'static> =
    Shelf { checklists: &[CHECKLIST], sheets: &[SHEET], texts: &[], parts: &[PART] };
/// No sheet fits anything.
const NO_SHEETS: Shelf<'static> = Shelf { sheets: &[], ..SHELF };
/// A part of the program.
const PART: &[u8] = br#"{
  "format": "panside-part/1", "id": "look-around", "title": "A look around",
  "steps": [{ "id": "around", "title": "Look around", "instruction": "Walk around the vehicle once.", "zone": "bench" }]
}"#;
/// One that hangs on no vehicle.
const WASHER: &str = r#"{
  "format": "panside-checklist/1", "id": "our-washer", "title": "Our washer", "revision": 1, "demo": true,
  "conditions": [{ "id": "lift", "label": "lift", "values": [{ "id": "floor", "label": "on the floor" }, { "id": "locks", "label": "on the locks" }] }],
  "phases": [{ "id": "below", "title": "Below", "steps": [
    { "id": "look", "title": "Look", "instruction": "Look at the plug.", "zone": "under", "needs": "lift = locks" }
  ] }],
  "vehicle_actions": [
    { "id": "raise", "title": "Raise it", "needs": "lift = floor", "makes": { "lift": "locks" } },
    { "id": "lower", "title": "Lower it", "needs": "lift = locks", "makes": { "lift": "floor" } }
  ],
  "dangers": [{ "id": "crushed", "signal": "danger", "text": "It comes down.", "when": "doing.zone = under and lift != locks" }],
  "done_when": "lift = floor and worked(look)", "safe_to_leave": "lift = floor or lift = locks"
}"#;

/// The checklist of the shelf as one of the shop's own.
fn ours(revision: u32) -> Vec<u8> {
    changed(CHECKLIST, |value| {
        value["id"] = json!("our-pan");
        value["title"] = json!("Our pan");
        value["revision"] = json!(revision);
    })
}

fn changed(bytes: &[u8], change: impl FnOnce(&mut Value)) -> Vec<u8> {
    let mut value: Value = serde_json::from_slice(bytes).unwrap();
    change(&mut value);
    serde_json::to_vec_pretty(&value).unwrap()
}

fn line(shop: &Shop, shelf: Shelf<'_>, hash: &Hash) -> ChecklistLine {
    let list = shop.bay.checklists(shelf, PLAIN).unwrap();
    assert_eq!(list.unreadable, [""; 0]);
    list.checklists.into_iter().find(|line| line.offer.hash == *hash).unwrap()
}

fn adopt(shop: &mut Shop, shelf: Shelf<'_>, hash: &Hash, who: Option<PersonId>) -> Result<(), BayError> {
    let seen = line(shop, shelf, hash).seen;
    shop.bay.adopt_checklist(shelf, (hash, seen), PLAIN, who)
}

/// Taken in, proved and adopted.
fn adopted(shop: &mut Shop, bytes: &[u8]) -> Hash {
    let hash = shop.bay.take_in_checklist(SHELF, bytes).unwrap();
    shop.bay.prove_checklist(SHELF, &hash, PLAIN, &mut go_on).unwrap();
    adopt(shop, SHELF, &hash, Some(ODE)).unwrap();
    hash
}

fn offered(shop: &Shop, id: &str) -> Vec<ChecklistOffer> {
    let offers = shop.bay.offers(SHELF, PLAIN).unwrap();
    offers.into_iter().filter(|offer| offer.id == id).collect()
}

fn start(shop: &mut Shop, hash: &Hash) -> JobId {
    let bytes = shop.bay.offered(SHELF, hash).unwrap();
    let new = NewJob {
        sheet: SHEET,
        texts: None,
        repair_order: "RO 7",
        label: "ours",
        conditions: BTreeMap::new(),
        utc_offset_min: 0,
    };
    shop.bay.start_proved(&bytes, PLAIN, &new, &technician(), new_request()).unwrap()
}

#[test]
fn a_checklist_is_taken_in_proved_adopted_and_offered_and_a_job_is_walked_with_it() {
    let mut shop = Shop::new();
    let hash = shop.bay.take_in_checklist(SHELF, &ours(1)).unwrap();
    let taken_in = line(&shop, SHELF, &hash);
    assert!(!taken_in.built_in && !taken_in.adopted && !taken_in.proved);
    assert_eq!(taken_in.to_prove, [Some("invented-van".to_owned())]);
    assert!(taken_in.needs.contains(&"touch limit".to_owned()), "{:?}", taken_in.needs);
    assert!(offered(&shop, "our-pan").is_empty(), "nothing is offered that nobody adopted");

    shop.bay.prove_checklist(SHELF, &hash, PLAIN, &mut go_on).unwrap();
    assert!(offered(&shop, "our-pan").is_empty(), "a proof adopts nothing");
    adopt(&mut shop, SHELF, &hash, Some(ODE)).unwrap();

    let mut shop = shop.restarted();
    let now = line(&shop, SHELF, &hash);
    assert!(now.adopted && now.proved && now.to_prove.is_empty());
    let offer = &offered(&shop, "our-pan")[0];
    assert!(offer.proved && offer.sheets[0].proved);
    let job = start(&mut shop, &hash);
    shop.enter(job, &made("key_out"));
    assert_eq!(shop.events(job), 2);
    assert_eq!(offered(&shop, "pan-short").len(), 1, "those of the program are offered as before");
}

#[test]
fn what_is_refuted_says_its_shortest_run_and_is_not_adopted() {
    let mut shop = Shop::new();
    let unsafe_one = changed(&ours(1), |value| {
        let actions = value["vehicle_actions"].as_array_mut().unwrap();
        let lower = actions.iter_mut().find(|made| made["id"] == "lower").unwrap();
        lower["needs"] = json!("lift != floor");
    });
    let hash = shop.bay.take_in_checklist(SHELF, &unsafe_one).unwrap();
    let refuted = shop.bay.prove_checklist(SHELF, &hash, PLAIN, &mut go_on).unwrap_err();
    let Err(BayError::AdoptNotProved(id)) = adopt(&mut shop, SHELF, &hash, Some(ODE)) else {
        panic!("what is refuted must not be adopted");
    };
    assert_eq!(id, "our-pan");
    let BayError::NotProved { why, .. } = refuted else { panic!("{refuted}") };
    assert!(why.english().contains("then vehicle action lower"), "{}", why.english());
    assert!(offered(&shop, "our-pan").is_empty());
}

#[test]
fn a_search_that_does_not_come_to_its_end_proves_nothing() {
    let mut shop = Shop::new();
    let hash = shop.bay.take_in_checklist(SHELF, &ours(1)).unwrap();
    let ask = panside_bay::prove::Ask { states: 10, ..PLAIN };
    let error = shop.bay.prove_checklist(SHELF, &hash, ask, &mut go_on).unwrap_err();
    assert!(matches!(error, BayError::NotDecided { .. }), "{error}");
    assert!(!line(&shop, SHELF, &hash).proved);
}

#[test]
fn only_one_of_the_shop_adopts() {
    let mut shop = Shop::new();
    let hash = shop.bay.take_in_checklist(SHELF, &ours(1)).unwrap();
    shop.bay.prove_checklist(SHELF, &hash, PLAIN, &mut go_on).unwrap();
    for who in [None, Some(NOBODY)] {
        let refused = adopt(&mut shop, SHELF, &hash, who).unwrap_err();
        assert!(refused.to_string().contains("Who you are is not known in this shop"), "{refused}");
    }
    assert!(offered(&shop, "our-pan").is_empty());
}

#[test]
fn an_id_of_the_program_is_refused() {
    let mut shop = Shop::new();
    let refused = shop.bay.take_in_checklist(SHELF, CHECKLIST).unwrap_err();
    let says = "The program has a checklist with this id, \"pan-short\". Give yours another id";
    assert!(refused.to_string().starts_with(says), "{refused}");
    // One that the shop had before the program: it is said and no more offered.
    let mut shop = Shop::new();
    adopted(&mut shop, &ours(1));
    let text = ours(9);
    let later = Shelf { checklists: &[CHECKLIST, &text], ..SHELF };
    let list = shop.bay.checklists(later, PLAIN).unwrap();
    assert!(list.checklists.iter().all(|line| line.built_in));
    assert!(list.unreadable[0].contains("The program has a checklist with this id"), "{:?}", list.unreadable);
}

#[test]
fn a_job_keeps_the_revision_it_was_started_with() {
    let mut shop = Shop::new();
    let first = adopted(&mut shop, &ours(1));
    let job = start(&mut shop, &first);
    let second = adopted(&mut shop, &ours(2));
    let offers = offered(&shop, "our-pan");
    assert_eq!(offers.iter().map(|offer| (offer.revision, offer.hash)).collect::<Vec<_>>(), [(2, second)]);
    let mut shop = shop.restarted();
    let (_, started) = shop.bay.job(job).unwrap().start.clone().unwrap();
    assert_eq!((started.checklist.revision, started.checklist.hash), (1, first));
    shop.enter(job, &made("key_out"));
}

#[test]
fn a_taken_in_revision_changes_nothing_until_it_is_adopted_and_can_be_discarded() {
    let mut shop = Shop::new();
    let first = adopted(&mut shop, &ours(1));
    let second = shop.bay.take_in_checklist(SHELF, &ours(2)).unwrap();
    assert_eq!(offered(&shop, "our-pan")[0].hash, first);
    assert!(!line(&shop, SHELF, &second).adopted);
    shop.bay.drop_checklist("our-pan").unwrap();
    let list = shop.bay.checklists(SHELF, PLAIN).unwrap().checklists;
    let own: Vec<_> = list.iter().filter(|line| !line.built_in).map(|line| line.offer.hash).collect();
    assert_eq!(own, [first]);
}

#[test]
fn another_text_under_an_adopted_revision_and_a_change_that_was_not_seen_are_refused() {
    let mut shop = Shop::new();
    adopted(&mut shop, &ours(1));
    let other = changed(&ours(1), |value| value["title"] = json!("Another pan"));
    let hash = shop.bay.take_in_checklist(SHELF, &other).unwrap();
    shop.bay.prove_checklist(SHELF, &hash, PLAIN, &mut go_on).unwrap();
    let taken = adopt(&mut shop, SHELF, &hash, Some(ODE)).unwrap_err().to_string();
    assert!(taken.contains("\"our-pan\" was adopted as revision 1"), "{taken}");
    let unseen = shop.bay.adopt_checklist(SHELF, (&hash, BTreeSet::new()), PLAIN, Some(ODE)).unwrap_err();
    assert!(unseen.to_string().contains("This checklist was changed meanwhile"), "{unseen}");
}

#[test]
fn it_goes_out_byte_for_byte_as_it_came_in() {
    let mut shop = Shop::new();
    // Spaces and the order of fields are its author's.
    let text =
        String::from_utf8(ours(1)).unwrap().replace("\"id\": \"our-pan\"", "\"id\" :   \"our-pan\"") + "\n\n";
    let hash = adopted(&mut shop, text.as_bytes());
    let path = shop.bay.export_checklist(SHELF, &hash).unwrap();
    assert!(path.ends_with("/checklists/our-pan-1.checklist.json"), "{path}");
    let bytes = std::fs::read(path).unwrap();
    assert_eq!(bytes, text.as_bytes());
    let mut other = Shop::new();
    assert_eq!(other.bay.take_in_checklist(SHELF, &bytes).unwrap(), hash);
    assert_eq!(other.bay.take_in_checklist(SHELF, &bytes).unwrap(), hash, "twice is once");
    assert_eq!(other.bay.checklists(SHELF, PLAIN).unwrap().checklists.len(), 2);
    let built_in = shop.bay.export_checklist(SHELF, &Hash::of(CHECKLIST)).unwrap();
    assert_eq!(std::fs::read(built_in).unwrap(), CHECKLIST);
}

#[test]
fn parts_of_the_program_are_put_in_place_and_others_are_asked_for() {
    let mut shop = Shop::new();
    let using = |part: &str| {
        changed(WASHER.as_bytes(), |value| {
            value["phases"][0]["steps"].as_array_mut().unwrap().push(json!({ "use": part }));
        })
    };
    let hash = shop.bay.take_in_checklist(SHELF, &using("look-around")).unwrap();
    assert_eq!(line(&shop, SHELF, &hash).offer.steps, 2);
    let whole = std::fs::read_to_string(shop.bay.export_checklist(SHELF, &hash).unwrap()).unwrap();
    assert!(whole.contains("Walk around the vehicle once.") && !whole.contains("\"use\""), "{whole}");
    let refused = shop.bay.take_in_checklist(SHELF, &using("unheard-of")).unwrap_err().to_string();
    assert!(refused.contains("Print the whole with \"panside-cli join\", then take that in:"), "{refused}");
    assert!(refused.contains("parts/unheard-of.part.json"), "{refused}");
}

#[test]
fn what_hangs_on_no_vehicle_is_proved_for_every_one_without_a_sheet() {
    let mut shop = Shop::new();
    let hash = shop.bay.take_in_checklist(NO_SHEETS, WASHER.as_bytes()).unwrap();
    assert_eq!(line(&shop, NO_SHEETS, &hash).to_prove, [None]);
    shop.bay.prove_checklist(NO_SHEETS, &hash, PLAIN, &mut go_on).unwrap();
    assert!(line(&shop, NO_SHEETS, &hash).proved);
    adopt(&mut shop, NO_SHEETS, &hash, Some(ODE)).unwrap();
    assert!(offered(&shop, "our-washer")[0].proved, "a sheet that comes later needs no other proof");
}

#[test]
fn what_hangs_on_the_vehicle_needs_a_sheet_first_and_one_can_be_typed_for_it() {
    let mut shop = Shop::new();
    let hash = shop.bay.take_in_checklist(NO_SHEETS, &ours(1)).unwrap();
    let line = line(&shop, NO_SHEETS, &hash);
    assert!(!line.proved && line.to_prove.is_empty());
    let error = shop.bay.prove_checklist(NO_SHEETS, &hash, PLAIN, &mut go_on).unwrap_err();
    assert!(error.to_string().contains("\"our-pan\" needs a spec sheet first"), "{error}");
    let made_for = shop.bay.sheets(NO_SHEETS).unwrap().checklists;
    assert!(made_for.contains(&("our-pan".to_owned(), "Our pan".to_owned())), "{made_for:?}");
    let page = shop.bay.begin_sheet(NO_SHEETS, &SheetFrom::Checklist("our-pan".into())).unwrap();
    assert_eq!(page.typed.values.len(), 6);
    assert_eq!(page.view.values.iter().find(|value| value.key == "coil").unwrap().name, "coil resistance");
}

#[test]
fn a_file_that_is_no_good_checklist_is_refused_with_its_places_and_nothing_is_kept() {
    let mut shop = Shop::new();
    let text = String::from_utf8(ours(1)).unwrap();
    let mistaken = changed(&ours(1), |value| {
        value["done_when"] = json!("lift = moon");
        value["safe_to_leave"] = json!("lift = sun");
    });
    let both = shop.bay.take_in_checklist(SHELF, &mistaken).unwrap_err().to_string();
    assert!(both.contains("(/done_when)") && both.contains("(/safe_to_leave)"), "{both}");
    let mut large = ours(1);
    large.resize(5 * 1024 * 1024, b' ');
    let cases: [(Vec<u8>, &str); 6] = [
        (b"\xff\xfe".to_vec(), "not UTF-8"),
        (b"a photo".to_vec(), "not JSON"),
        (SHEET.to_vec(), "\"panside-sheet/1\""),
        (text.replace("panside-checklist/1", "panside-checklist/0").into_bytes(), "\"panside-checklist/0\""),
        (large, "more than 4 MB"),
        (text.replace("our-pan", "../our-pan").into_bytes(), "small letters, digits and hyphens"),
    ];
    for (bytes, says) in cases {
        let error = shop.bay.take_in_checklist(SHELF, &bytes).unwrap_err().to_string();
        assert!(error.contains(says), "{error}");
    }
    assert_eq!(shop.bay.checklists(SHELF, PLAIN).unwrap().checklists.len(), 1);
}
