//! What a window asks for: pages of jobs, what can be started, people and tools, the saved record.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use panside_bay::clock::{Clock, DemoClock, ManualClock};
use panside_bay::closing::{Ended, MissingLine, SavedPages};
use panside_bay::enter::{Command, new_request};
use panside_bay::people::Person;
use panside_bay::prove::{Ask, go_on, search};
use panside_bay::setup::{KeptTool, SetupTool, Tool, TypedTool};
use panside_bay::shelf::Shelf;
use panside_bay::start::NewJob;
use panside_bay::{Bay, BayError};
use panside_shop::ShopRefusal;
use tempfile::TempDir;

use crate::support::{CHECKLIST, ODE, PLAIN, SHEET, Shop, begin, made, people, technician};

const SHELF: Shelf<'static> = Shelf { checklists: &[CHECKLIST], sheets: &[SHEET], texts: &[], parts: &[] };

fn new_job() -> NewJob<'static> {
    NewJob {
        sheet: SHEET,
        texts: None,
        repair_order: "RO 7",
        label: "invented van",
        conditions: BTreeMap::new(),
        utc_offset_min: 60,
    }
}

#[test]
fn a_page_carries_the_job_its_head_and_what_was_typed() {
    let mut shop = Shop::new();
    let job = shop.start();
    shop.bay.put_draft(job, "level/stick", "58").unwrap();
    let page = shop.restarted().bay.page(job).unwrap();
    assert_eq!((page.head.seq, page.view.seq), (1, 1));
    assert_eq!(page.drafts["level/stick"], "58");
    assert!(!page.view.items.is_empty(), "counts need the names of the pieces");
}

#[test]
fn a_refused_command_is_answered_with_sentences_and_the_job_as_it_is() {
    let mut shop = Shop::new();
    let job = shop.start();
    let page = shop.bay.page(job).unwrap();
    let reply = shop.bay.carry_out(job, page.head, new_request(), &technician(), &made("lower")).unwrap();
    let refused = reply.refused.unwrap();
    assert!(!refused.message.text.is_empty());
    assert!(refused.unmet.iter().all(|unmet| !unmet.text.is_empty()));
    assert_eq!(reply.page.head, page.head, "nothing was written");
}

#[test]
fn an_entered_command_is_answered_with_the_job_after_it() {
    let mut shop = Shop::new();
    let job = shop.start();
    let head = shop.bay.head(job).unwrap();
    let step = shop.bay.page(job).unwrap().view.steps[0].id.clone();
    let reply = shop.bay.carry_out(job, head, new_request(), &technician(), &begin(&step)).unwrap();
    assert!(reply.refused.is_none());
    assert_eq!(reply.page.head.seq, 2);
}

#[test]
fn a_checklist_is_offered_with_the_sheets_that_fit_and_whether_it_is_proved() {
    let mut shop = Shop::new();
    let offers = shop.bay.offers(SHELF, PLAIN).unwrap();
    assert_eq!(offers[0].id, "pan-short");
    assert_eq!(offers[0].sheets.len(), 1);
    assert_eq!(offers[0].questions[0].name, "key");
    assert!(!offers[0].proved);
    let found = search(CHECKLIST, SHEET, PLAIN, &mut go_on).unwrap();
    shop.bay.keep_proof(found).unwrap();
    assert!(shop.bay.offers(SHELF, PLAIN).unwrap()[0].proved);
}

#[test]
fn where_a_revision_is_not_proved_the_last_one_that_is_can_still_be_started() {
    let mut shop = Shop::new();
    let before = String::from_utf8_lossy(CHECKLIST).replace("\"revision\": 1", "\"revision\": 0");
    let found = search(before.as_bytes(), SHEET, PLAIN, &mut go_on).unwrap();
    shop.bay.keep_proof(found).unwrap();
    let offers = shop.bay.offers(SHELF, PLAIN).unwrap();
    let told = offers.iter().map(|offer| (offer.revision, offer.proved)).collect::<Vec<_>>();
    assert_eq!(told, [(1, false), (0, true)]);
    let offered = shop.bay.offered(SHELF, &offers[1].hash).unwrap();
    assert_eq!(offered, before.as_bytes());
    let poor = Ask { states: 10, ..PLAIN };
    let refused = search(CHECKLIST, SHEET, poor, &mut go_on).unwrap_err().to_string();
    assert!(refused.contains("did not come to its end"), "{refused}");

    let found = search(CHECKLIST, SHEET, PLAIN, &mut go_on).unwrap();
    shop.bay.keep_proof(found).unwrap();
    assert_eq!(shop.bay.offers(SHELF, PLAIN).unwrap().len(), 1, "the newest is enough once it is proved");
}

#[test]
fn a_job_is_started_only_once_its_proof_is_kept() {
    let mut shop = Shop::new();
    let early = shop.bay.start_proved(CHECKLIST, PLAIN, &new_job(), &technician(), new_request());
    assert!(matches!(early, Err(BayError::NotProvedYet)), "{early:?}");
    shop.bay.keep_proof(search(CHECKLIST, SHEET, PLAIN, &mut go_on).unwrap()).unwrap();
    shop.bay.start_proved(CHECKLIST, PLAIN, &new_job(), &technician(), new_request()).unwrap();
    assert_eq!(shop.bay.jobs().unwrap().len(), 1);
}

#[test]
fn what_is_not_on_the_shelf_is_named() {
    let Err(error) = SHELF.sheet("boat") else { panic!("there is no boat") };
    assert!(error.to_string().contains("\"boat\""), "{error}");
    assert!(matches!(SHELF.sheet("pan-short"), Err(BayError::NotOnShelf(_))), "a checklist is no sheet");
}

#[test]
fn people_and_tools_are_there_after_a_restart_and_nobody_is_there_twice() {
    let mut shop = Shop::new();
    let tool = Tool {
        name: "wrench B".into(),
        min: "5".into(),
        max: "25".into(),
        unit: "N·m".into(),
        class_percent: None,
        calibrated_on: None,
        certificate: None,
        calibration_due: "2027-03-01".into(),
    };
    let [ode, lund, _] = people();
    let renamed = Person { name: "R. Ode again".into(), ..ode.clone() };
    shop.bay.take_in(&[ode.clone(), renamed, lund.clone()], &[tool.clone(), tool.clone()]).unwrap();
    let kept = shop.restarted().bay.setup().unwrap();
    assert_eq!(kept.people.len(), 3);
    assert!(people().iter().all(|one| kept.people.contains(one)), "{:?}", kept.people);
    assert_eq!(kept.tools.into_iter().map(|one| one.tool).collect::<Vec<_>>(), [tool]);
}

fn new(tool: Tool) -> TypedTool {
    TypedTool { id: None, seen: [].into(), tool }
}

fn wrench() -> Tool {
    Tool {
        name: "wrench B".into(),
        min: "5".into(),
        max: "25".into(),
        unit: "N·m".into(),
        class_percent: None,
        calibrated_on: Some("2026-03-01".into()),
        certificate: Some(" invented 7-114 ".into()),
        calibration_due: "2027-03-01".into(),
    }
}

#[test]
fn a_tool_is_kept_once_under_its_name_and_changed_in_its_place() {
    let mut shop = Shop::new();
    let KeptTool { id, setup } = shop.bay.put_tool(new(wrench()), Some(ODE), 0).unwrap();
    let again = shop.bay.put_tool(new(wrench()), Some(ODE), 0).unwrap_err();
    assert!(matches!(again, BayError::Shop(ShopRefusal::LooksLike { .. })), "{again}");
    let renamed = Tool { name: "wrench C".into(), ..wrench() };
    let typed = TypedTool { id: Some(id), seen: setup.seen(id.0), tool: renamed };
    assert_eq!(shop.bay.put_tool(typed, Some(ODE), 0).unwrap().id, id);
    let tools = shop.restarted().bay.setup().unwrap().tools;
    assert_eq!((tools.len(), tools[0].id), (1, id));
    let tool = &tools[0].tool;
    assert_eq!((tool.name.as_str(), tool.certificate.as_deref()), ("wrench C", Some("invented 7-114")));
}

#[test]
fn a_tool_that_was_taken_off_the_list_can_be_put_back() {
    let mut shop = Shop::new();
    let KeptTool { id, setup } = shop.bay.put_tool(new(wrench()), Some(ODE), 0).unwrap();
    let setup = shop.bay.remove_tool(id, setup.seen(id.0), Some(ODE)).unwrap();
    assert_eq!((setup.tools.len(), setup.tools_off.len()), (0, 1));
    let SetupTool { id, tool } = setup.tools_off[0].clone();
    let back = TypedTool { id: Some(id), seen: setup.seen(id.0), tool };
    let setup = shop.bay.put_tool(back, Some(ODE), 0).unwrap().setup;
    assert_eq!((setup.tools.len(), setup.tools_off.len()), (1, 0));
}

#[test]
fn a_device_has_a_name() {
    let mut shop = Shop::new();
    let setup = shop.bay.setup().unwrap();
    assert_eq!(setup.device.name, None);
    let named = shop.bay.name_device(" Bay 2 ".into(), setup.seen(setup.device.id.0), Some(ODE)).unwrap();
    assert_eq!(named.device.name.as_deref(), Some("Bay 2"));
}

#[test]
fn a_tool_whose_range_is_turned_is_not_kept_and_one_out_of_date_is_told() {
    let mut shop = Shop::new();
    let turned = Tool { min: "25".into(), max: "5".into(), ..wrench() };
    let error = shop.bay.put_tool(new(turned), Some(ODE), 0).unwrap_err().to_string();
    assert!(error.contains("The tool's range 25 N·m to 5 N·m is not possible."), "{error}");
    let old = Tool { calibrated_on: None, calibration_due: "2026-03-01".into(), ..wrench() };
    let setup = shop.bay.put_tool(new(old), Some(ODE), 0).unwrap().setup;
    let view = &shop.bay.judge_tools(&[setup.tools[0].tool.clone()], 0)[0];
    let said = "Its calibration ended on 2026-03-01; today is 2026-03-02. Nothing torqued with it counts.";
    assert_eq!(view.past.as_ref().unwrap().text, said);
}

#[test]
fn the_page_of_an_open_record_says_what_is_missing() {
    let mut shop = Shop::new();
    let job = shop.start();
    let page = shop.bay.record_page(job).unwrap();
    assert_eq!(page.ended, Ended::Open);
    let not_worked = page.missing.iter().find(|group| group.says == "Not done").unwrap();
    let step = &shop.bay.page(job).unwrap().view.steps[0];
    assert_eq!(not_worked.what[0], MissingLine { says: step.title.clone(), step: Some(step.id.clone()) });
    assert_eq!(page.events, 1);
}

#[test]
fn the_page_of_a_record_names_days_times_and_steps() {
    let mut shop = Shop::new();
    let job = shop.start();
    let mut bytes = std::io::Cursor::new(Vec::new());
    let picture = image::RgbImage::from_pixel(40, 30, image::Rgb([10, 90, 40]));
    picture.write_to(&mut bytes, image::ImageFormat::Png).unwrap();
    let photo = shop.bay.add_photo(job, &bytes.into_inner()).unwrap();
    let entries = [("routing".to_owned(), photo)].into();
    shop.enter(
        job,
        &Command::Work { step: "photo".to_owned(), entries, signatures: Vec::new(), later: false },
    );
    shop.clock.advance_ms(65 * 60_000);
    shop.enter(job, &Command::Stop { reason: "the customer calls".to_owned() });
    let page = shop.bay.record_page(job).unwrap();
    // The job began at 2026-03-02T08:00:00Z, as GNU date gives it, in a shop whose clock shows UTC.
    let photo = &page.photos[0];
    assert_eq!((photo.day.as_str(), photo.time.as_str()), ("2026-03-02", "08:00"));
    assert_eq!(photo.step_title, "Photo of the routing");
    let end = page.end.unwrap();
    assert_eq!((end.day.as_str(), end.time.as_str()), ("2026-03-02", "09:05"));
}

#[test]
fn a_saved_record_is_a_pdf_in_the_store_named_by_its_repair_order() {
    let mut shop = Shop::new();
    let job = shop.start();
    let mut paths = BTreeSet::new();
    for pages in [SavedPages::Record, SavedPages::Everything, SavedPages::Customer] {
        let path = shop.bay.save_record(job, pages).unwrap();
        assert!(path.contains("/records/RO-1042-"), "{path}");
        assert!(std::fs::read(&path).unwrap().starts_with(b"%PDF-"));
        paths.insert(path);
    }
    assert_eq!(paths.len(), 3, "none is written over another");
}

#[test]
fn a_repair_order_that_looks_like_a_path_stays_in_the_folder_of_records() {
    let mut shop = Shop::new();
    let proved = shop.bay.prove(CHECKLIST, SHEET, PLAIN, &mut go_on).unwrap();
    let new = NewJob { repair_order: "../../etc/x", ..new_job() };
    let job = shop.bay.start(&proved, &new, &technician(), new_request()).unwrap();
    let path = shop.bay.save_record(job, SavedPages::Record).unwrap();
    let name = std::path::Path::new(&path).file_name().unwrap().to_string_lossy().into_owned();
    assert!(name.starts_with("------etc-x-"), "{name}");
    assert_eq!(std::fs::read_dir(shop.dir.path().join("records")).unwrap().count(), 1);
}

#[test]
fn a_demo_clock_goes_on_ahead_by_what_was_let_pass_and_never_back() {
    let clock = DemoClock::default();
    let before = clock.now();
    clock.let_pass_ms(5 * 60_000);
    let after = clock.now();
    assert!(after.wall_ms - before.wall_ms >= 300_000);
    assert!(after.mono_ms - before.mono_ms >= 300_000);
    assert_eq!(after.boot, before.boot);
    assert_eq!(clock.ahead_ms(), 300_000);
}

#[test]
fn a_store_that_another_has_open_is_told_from_other_troubles() {
    let dir = TempDir::new().unwrap();
    let clock = Arc::new(ManualClock::at(0));
    let _first = Bay::open(dir.path(), Box::new(Arc::clone(&clock))).unwrap();
    let second = Bay::open(dir.path(), Box::new(clock)).unwrap_err();
    assert!(second.is_locked(), "{second}");
    assert!(!BayError::NotProvedYet.is_locked());
}
