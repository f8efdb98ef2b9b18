//! What the page can ask for: one line each over `panside-bay`. The table makes the command, its registration and
//! its line in `ui/src/core/commands.ts`.
//!
//! `cargo xtask types` writes the page's files; the test command compares them. Photos cross as raw bytes.

use std::collections::{BTreeMap, BTreeSet};

use panside_bay::JobLine;
use panside_bay::checklists::ChecklistList;
use panside_bay::clock::utc_offset_min;
use panside_bay::closing::{RecordPage, SavedPages};
use panside_bay::enter::{
    Actor, Asking, Command, EntryValue, Hash, Head, JobId, PersonId, Preview, RequestId,
};
use panside_bay::figures::FiguresPage;
use panside_bay::page::{JobPage, Reply};
use panside_bay::people::TypedPerson;
use panside_bay::pins::{Pin, PinAuthority, PinHolder, PinReply};
use panside_bay::setup::{KeptTool, Setup, Tool, ToolId, ToolView, TypedTool};
use panside_bay::sheets::{SheetFrom, SheetList, SheetPage, SheetValueView, TypedSheet};
use panside_bay::shelf::ChecklistOffer;
use panside_bay::start::NewJob;
use panside_bay::values::{ShopValue, TypedShopValue};
use panside_bay::way_back::{BackedUpPage, BackupLine, BackupPlan, Backups, RestorePage, SalvagedPage};
use tauri::ipc::{InvokeBody, Request, Response};

use crate::backing;
use crate::desk::Desk;
use crate::message::{panside_checklist_bare, panside_photo_bare, panside_sheet_bare};
use crate::opened;
use crate::opened::{Found, Opened};
use crate::planning::{self, Asked, Planning};
use crate::proving::{self, ASK, Proving};
use crate::restoring;
use crate::shelf::SHELF;
use crate::shown::Shown;
use crate::table::commands;
use crate::trouble::Trouble;

commands! {
    raw: add_photo, photo, thumbnail, import_sheet, import_checklist;

    /// What the window finds when it opens: troubles of the store, people and tools, where it was.
    opened() -> Opened { |desk| opened::look(&desk).await }
    /// Opens a store that could not be opened, or reads it anew after a failed write.
    open_again() -> () { |desk| desk.open_again().await }
    /// What was found wrong with the store, at its opening or since.
    troubles() -> Found { |desk| desk.with(|bay| Found::of(bay)).await }
    /// Goes on from what is there, where newest entries are lost or the folder was copied; answers what is still wrong.
    go_on() -> Found {
        |desk| desk.with(|bay| {
            bay.go_on("gone on with in the window")?;
            Found::of(bay)
        }).await
    }
    /// How it stands with the shop's backups.
    backups() -> Backups { |desk| desk.with(|bay| bay.backups()).await }
    /// Keeps where and how often the shop backs up; nothing ends it.
    put_backup_plan(plan: Option<BackupPlan>) -> Backups {
        |desk| desk.with(move |bay| {
            bay.put_backup_plan(plan.as_ref())?;
            bay.backups()
        }).await
    }
    /// Makes a backup by the plan now.
    back_up() -> BackedUpPage { |desk| backing::now(&desk).await }
    /// The backups in a folder, the newest first.
    backups_in(folder: String) -> Vec<BackupLine> { |desk| restoring::list(&desk, folder).await }
    /// Reads a backup again and says what restoring it would come to.
    look_at_backup(backup: String) -> RestorePage { |desk| restoring::look_ahead(&desk, backup).await }
    /// Restores a backup; the store that is there is moved aside. What is open then is the restored one.
    restore(backup: String) -> RestorePage { |desk| restoring::restore(&desk, backup).await }
    /// Saves what holds of a damaged store into a new one; the store that is there stays as it is.
    salvage(into: String) -> SalvagedPage { |desk| restoring::salvage(&desk, into).await }
    /// The jobs on this tablet.
    jobs() -> Vec<JobLine> { |desk| desk.with(|bay| bay.jobs()).await }
    /// What a job can be started with.
    offers() -> Vec<ChecklistOffer> { |desk| desk.with(|bay| bay.offers(SHELF, ASK)).await }
    /// How far the proof of a checklist for the vehicle of a sheet is, or for every vehicle where none is given; begins it
    /// where there is none. It goes on when nobody asks.
    prove(checklist: Hash, sheet: Option<String>) -> Proving { |desk| proving::look(&desk, checklist, sheet).await }
    /// Starts a job with a proved checklist.
    start(checklist: Hash, sheet: String, repair_order: String, label: String, conditions: BTreeMap<String, String>, actor: Actor, request: RequestId) -> JobId {
        |desk| desk.with(move |bay| {
            let new = NewJob {
                sheet: &bay.sheet_text(SHELF, &sheet)?,
                texts: None,
                repair_order: &repair_order,
                label: &label,
                conditions,
                utc_offset_min: utc_offset_min(),
            };
            bay.start_proved(&bay.offered(SHELF, &checklist)?, ASK, &new, &actor, request)
        }).await
    }
    /// A job as its screen shows it.
    look(job: JobId) -> JobPage { |desk| desk.with(move |bay| bay.page(job)).await }
    /// The order with the least expected time for 1 or 2 people, as far as it is found: at once a good one, then the `best`
    /// where that is wanted; `stale` has it made anew by the clock.
    plan(job: JobId, people: u8, best: bool, stale: bool) -> Planning {
        |desk| planning::look(&desk, Asked { job, people, best, stale }).await
    }
    /// Enters a command. When it is not refused, it is on disk.
    enter(job: JobId, head: Head, request: RequestId, actor: Actor, command: Command) -> Reply {
        |desk| desk.with(move |bay| bay.carry_out(job, head, request, &actor, &command)).await
    }
    /// What a value that is being typed would turn out to be.
    preview(job: JobId, step: String, entry: String, value: EntryValue) -> Preview {
        |desk| desk.with(move |bay| bay.preview(job, &step, &entry, &value)).await
    }
    /// What a supplement, or the answer to one, that is being typed would turn out to be.
    preview_asking(job: JobId, typed: Asking) -> Preview {
        |desk| desk.with(move |bay| bay.preview_asking(job, &typed)).await
    }
    /// Keeps what is typed and not yet done.
    put_draft(job: JobId, key: String, text: String) -> () { |desk| desk.with(move |bay| bay.put_draft(job, &key, &text)).await }
    /// Forgets what was typed.
    clear_draft(job: JobId, key: String) -> () { |desk| desk.with(move |bay| bay.clear_draft(job, &key)).await }
    /// Keeps somebody new who works in the shop, what was changed of a person, or one who is back.
    put_person(person: TypedPerson, who: Option<PersonId>) -> Setup { |desk| desk.with(move |bay| bay.put_person(person, who)).await }
    /// Takes a person off the list who works here no more.
    remove_person(id: PersonId, seen: BTreeSet<Hash>, who: Option<PersonId>) -> Setup {
        |desk| desk.with(move |bay| bay.remove_person(id, seen, who)).await
    }
    /// Gives a person's PIN for what comes next.
    give_pin(person: PersonId, pin: Pin) -> PinReply { |desk| desk.with(move |bay| bay.give_pin(person, &pin)).await }
    /// Sets a person's PIN, and answers who has one.
    set_pin(person: PersonId, pin: Pin, by: PinAuthority) -> Vec<PinHolder> {
        |desk| desk.with(move |bay| {
            bay.set_pin(person, pin, by)?;
            bay.pin_holders(utc_offset_min())
        }).await
    }
    /// What is to be said of torque tools today.
    judge_tools(tools: Vec<Tool>) -> Vec<ToolView> {
        |desk| desk.with(move |bay| Ok(bay.judge_tools(&tools, utc_offset_min()))).await
    }
    /// Keeps a torque tool: a new one, one that is otherwise than before, or one that is back.
    put_tool(tool: TypedTool, who: Option<PersonId>) -> KeptTool {
        |desk| desk.with(move |bay| bay.put_tool(tool, who, utc_offset_min())).await
    }
    /// Takes a torque tool off the list.
    remove_tool(id: ToolId, seen: BTreeSet<Hash>, who: Option<PersonId>) -> Setup {
        |desk| desk.with(move |bay| bay.remove_tool(id, seen, who)).await
    }
    /// Gives this device a name.
    name_device(name: String, seen: BTreeSet<Hash>, who: Option<PersonId>) -> Setup {
        |desk| desk.with(move |bay| bay.name_device(name, seen, who)).await
    }
    /// The values that checklists ask of the shop for all its vehicles.
    shop_values() -> Vec<ShopValue> {
        |desk| desk.with(|bay| bay.shop_values(SHELF, utc_offset_min())).await
    }
    /// What is to be said of such a value while it is typed.
    judge_shop_value(value: TypedShopValue) -> SheetValueView {
        |desk| desk.with(move |bay| bay.judge_shop_value(SHELF, &value)).await
    }
    /// Keeps such a value, typed or as it was offered, and answers all of them.
    put_shop_value(value: TypedShopValue, who: Option<PersonId>) -> Vec<ShopValue> {
        |desk| desk.with(move |bay| bay.put_shop_value(SHELF, value, who, utc_offset_min())).await
    }
    /// The shop's spec sheets and those of the program.
    sheets() -> SheetList { |desk| desk.with(|bay| bay.sheets(SHELF)).await }
    /// A spec sheet as it was kept.
    sheet(id: String) -> SheetPage { |desk| desk.with(move |bay| bay.sheet(SHELF, &id)).await }
    /// Begins to type a spec sheet, or goes on with a change of it.
    begin_sheet(from: SheetFrom) -> SheetPage { |desk| desk.with(move |bay| bay.begin_sheet(SHELF, &from)).await }
    /// A spec sheet as far as it is typed.
    typed_sheet(draft: String) -> SheetPage { |desk| desk.with(move |bay| bay.typed_sheet(SHELF, &draft)).await }
    /// Keeps what is typed of a spec sheet, and says what is wrong with it.
    type_sheet(typed: TypedSheet) -> SheetPage { |desk| desk.with(move |bay| bay.type_sheet(SHELF, typed)).await }
    /// Forgets what is typed of a spec sheet.
    drop_sheet(draft: String) -> () { |desk| desk.with(move |bay| bay.drop_sheet(&draft)).await }
    /// Keeps what is typed as the spec sheet's next revision, and answers its id.
    keep_sheet(draft: String, actor: Actor) -> String {
        |desk| desk.with(move |bay| bay.keep_sheet(SHELF, &draft, &actor, utc_offset_min())).await
    }
    /// Keeps that somebody compared values of a spec sheet with their sources.
    check_sheet(id: String, seen: BTreeSet<Hash>, keys: Vec<String>, actor: Actor) -> () {
        |desk| desk.with(move |bay| bay.check_sheet(SHELF, (&id, seen), &keys, &actor, utc_offset_min())).await
    }
    /// Writes a spec sheet as a file beside the store and answers its path.
    export_sheet(id: String) -> String { |desk| desk.with(move |bay| bay.export_sheet(SHELF, &id)).await }
    /// The checklists of the program and those of the shop.
    checklists() -> ChecklistList { |desk| desk.with(|bay| bay.checklists(SHELF, ASK)).await }
    /// Has jobs started with a checklist of the shop from now on.
    adopt_checklist(checklist: Hash, seen: BTreeSet<Hash>, who: Option<PersonId>) -> ChecklistList {
        |desk| desk.with(move |bay| {
            bay.adopt_checklist(SHELF, (&checklist, seen), ASK, who)?;
            bay.checklists(SHELF, ASK)
        }).await
    }
    /// Forgets a checklist that was taken in and is not adopted.
    drop_checklist(id: String) -> ChecklistList {
        |desk| desk.with(move |bay| {
            bay.drop_checklist(&id)?;
            bay.checklists(SHELF, ASK)
        }).await
    }
    /// Writes a checklist as a file beside the store and answers its path.
    export_checklist(checklist: Hash) -> String {
        |desk| desk.with(move |bay| bay.export_checklist(SHELF, &checklist)).await
    }
    /// Keeps what the window wants to find again.
    put_setting(key: String, text: String) -> () { |desk| desk.with(move |bay| bay.put_setting(&key, &text)).await }
    /// The record as far as the job has come: what is in it, what it lacks.
    record_page(job: JobId) -> RecordPage {
        |desk| desk.beside(move |bay| bay.to_record(job), |job| job.record_page()).await
    }
    /// What was measured in the job, as drawings.
    figures(job: JobId) -> FiguresPage {
        |desk| desk.beside(move |bay| bay.to_record(job), |job| Ok(job.figures_page())).await
    }
    /// Writes pages of the record as PDF beside the store and answers the file's path.
    save_record(job: JobId, pages: SavedPages) -> String {
        |desk| desk.beside(move |bay| bay.to_record(job), move |job| job.save(pages)).await
    }
    /// Lets minutes pass on the demo clock.
    let_pass(minutes: u16) -> () { |desk| desk.let_pass(minutes).await }
}

/// Takes in a photo: its bytes are the body, the job stands in the header `job`. Answers the value to enter.
#[tauri::command]
pub async fn add_photo(
    request: Request<'_>,
    desk: tauri::State<'_, Desk>,
) -> Result<Shown<EntryValue>, Trouble> {
    let job = request.headers().get("job").and_then(|job| job.to_str().ok()?.parse::<JobId>().ok());
    let (Some(job), InvokeBody::Raw(bytes)) = (job, request.body()) else {
        return Err(Trouble::other(&panside_photo_bare()));
    };
    let bytes = bytes.clone();
    let photo = desk.beside(move |bay| bay.photo_intake(job), move |intake| intake.take_in(&bytes)).await?;
    desk.with(move |bay| bay.keep_photo(&photo)).await.map(Shown)
}

/// The bytes of a kept photo.
#[tauri::command]
pub async fn photo(hash: Hash, desk: tauri::State<'_, Desk>) -> Result<Response, Trouble> {
    let bytes = desk.beside(|bay| Ok(bay.files()), move |files| Ok(files.photo(&hash)?)).await?;
    Ok(Response::new(bytes))
}

/// The small picture of a kept photo.
#[tauri::command]
pub async fn thumbnail(hash: Hash, desk: tauri::State<'_, Desk>) -> Result<Response, Trouble> {
    desk.with(move |bay| bay.thumbnail(&hash)).await.map(Response::new)
}

/// Takes in a spec sheet: its file's bytes are the body, who does it stands in the header `who`. Answers its id.
#[tauri::command]
pub async fn import_sheet(
    request: Request<'_>,
    desk: tauri::State<'_, Desk>,
) -> Result<Shown<String>, Trouble> {
    let InvokeBody::Raw(bytes) = request.body() else {
        return Err(Trouble::other(&panside_sheet_bare()));
    };
    let bytes = bytes.clone();
    let who = request.headers().get("who").and_then(|who| who.to_str().ok()?.parse().ok().map(PersonId));
    desk.with(move |bay| bay.import_sheet(SHELF, &bytes, who)).await.map(Shown)
}

/// Takes in a checklist: its file's bytes are the body. Answers the hash of its text.
#[tauri::command]
pub async fn import_checklist(
    request: Request<'_>,
    desk: tauri::State<'_, Desk>,
) -> Result<Shown<Hash>, Trouble> {
    let InvokeBody::Raw(bytes) = request.body() else {
        return Err(Trouble::other(&panside_checklist_bare()));
    };
    let bytes = bytes.clone();
    desk.with(move |bay| bay.take_in_checklist(SHELF, &bytes)).await.map(Shown)
}
