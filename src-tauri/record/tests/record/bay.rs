//! A job that the tests write down by hand, event by event.

use std::collections::BTreeMap;
use std::error::Error;
use std::sync::Arc;

use panside_job::event::{Begun, Done, Entered, Event, Introduced, Lost, Pinned, Started, VehicleAction};
use panside_job::value::{StickReading, StickShows, Tool};
use panside_job::{EntryValue, Happened, Job, Signature, Specs};
use panside_journal::{BootId, Hash, JobId, PersonId, Stamp};
use panside_messages::Speaker;
use panside_procedure::format::Role;
use panside_procedure::{Procedure, load};
use panside_record::{Document, Extent, PdfInputs, RecordError, RecordInputs};
use uuid::Uuid;

/// What a test answers with.
pub type Tested = Result<(), Box<dyn Error>>;

pub const CHECKLIST: &[u8] = include_bytes!("../fixtures/short.checklist.json");
pub const SHEET: &[u8] = include_bytes!("../fixtures/short.sheet.json");

/// 2026-03-02T08:00:00Z, as GNU date gives it.
const MORNING_MS: i64 = 1_772_438_400_000;

pub const PHOTO: &str = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

/// Stands on every form of a record made with invented content.
pub const DEMO_MARK: &str = "demo values, not for a vehicle";

/// The forms of a record in English, with everything.
pub trait Said {
    fn text(&self) -> String;
    fn pdf(&self, inputs: &PdfInputs) -> Result<Vec<u8>, RecordError>;
    fn twin(&self, inputs: &PdfInputs) -> Result<Vec<u8>, RecordError>;
}

impl Said for Document {
    fn text(&self) -> String {
        self.to_text(Speaker::english(), Extent::Everything)
    }

    fn pdf(&self, inputs: &PdfInputs) -> Result<Vec<u8>, RecordError> {
        self.to_pdf(Speaker::english(), &everything(inputs))
    }

    fn twin(&self, inputs: &PdfInputs) -> Result<Vec<u8>, RecordError> {
        self.to_pdf_a1b(Speaker::english(), &everything(inputs))
    }
}

fn everything(inputs: &PdfInputs) -> PdfInputs {
    PdfInputs { extent: Extent::Everything, ..inputs.clone() }
}

/// A time in minutes after eight in the first boot of the device.
fn stamp(minute: i64) -> Stamp {
    let ms = minute * 60_000;
    Stamp { wall_ms: MORNING_MS + ms, mono_ms: ms.unsigned_abs(), boot: BootId(Uuid::from_u128(1)) }
}

/// A bay in which events are written down, a minute apart unless said otherwise.
pub struct Bay {
    pub job: Job,
    pub minute: i64,
    pub who: &'static str,
    /// Minutes by which the wall clock was set.
    pub wall_set: i64,
    /// Which boot of the device it is; its monotonic clock runs on all the same.
    pub boot: u128,
}

impl Bay {
    /// A bay whose job has started at eight, one hour ahead of UTC.
    pub fn open() -> Result<Bay, Box<dyn Error>> {
        Bay::with(CHECKLIST, SHEET)
    }

    /// The same with other files.
    pub fn with(checklist: &[u8], sheet: &[u8]) -> Result<Bay, Box<dyn Error>> {
        let procedure = Arc::new(Procedure::load(checklist)?);
        let sheet = load::sheet(sheet)?;
        let demo = procedure.checklist.demo || sheet.demo;
        let (specs, problems) = Specs::readable(&sheet);
        if !problems.is_empty() {
            return Err("the fixture's sheet has mistakes".into());
        }
        let mut bay =
            Bay { job: Job::new(procedure, Arc::new(specs)), minute: 0, who: "Ada", wall_set: 0, boot: 1 };
        let pinned = |id: &str, revision, hash| Pinned { id: id.into(), revision, hash };
        bay.at(
            0,
            Started {
                checklist: pinned("pan-for-records", 3, Hash::of(CHECKLIST)),
                sheet: pinned("invented-wagon", 2, Hash::of(SHEET)),
                texts: None,
                demo,
                conditions: BTreeMap::from([("lift".into(), "floor".into()), ("pan".into(), "on".into())]),
                repair_order: "20417".into(),
                label: "invented wagon".into(),
                utc_offset_min: 60,
                by: introduced("Ada", "Ada"),
            },
        );
        Ok(bay)
    }

    /// Writes an event down at a minute.
    pub fn at(&mut self, minute: i64, event: impl Into<Event>) {
        self.minute = minute;
        let event = event.into();
        let is_new = self.job.people.of(person(self.who)).is_empty();
        if is_new && !matches!(event, Event::Started(_) | Event::Introduced(_)) {
            self.take(introduced(self.who, self.who).into());
        }
        self.take(event);
    }

    fn take(&mut self, event: Event) {
        let (seq, who) = (self.job.last_seq() + 1, person(self.who));
        self.job.take(Happened { seq, stamp: self.stamp(self.minute), who, event });
    }

    fn stamp(&self, minute: i64) -> Stamp {
        let stamp = stamp(minute);
        let wall_ms = stamp.wall_ms + self.wall_set * 60_000;
        Stamp { wall_ms, boot: BootId(Uuid::from_u128(self.boot)), ..stamp }
    }

    /// The time at which the next event is written down.
    pub fn now(&self) -> Stamp {
        self.stamp(self.minute + 1)
    }

    /// Writes an event down a minute later.
    pub fn then(&mut self, event: impl Into<Event>) {
        self.at(self.minute + 1, event);
    }

    pub fn begin(&mut self, step: &str) {
        self.then(Begun { step: step.into(), lost: Lost::default() });
    }

    pub fn enter(&mut self, step: &str, entry: &str, value: EntryValue, class: &str) {
        self.then(Entered {
            step: step.into(),
            entry: entry.into(),
            value,
            class: class.into(),
            worked_out: None,
        });
    }

    pub fn done(&mut self, step: &str, classes: &[(&str, &str)], signs: &[(&str, &str)]) {
        self.then(done(step, classes, self.who, signs));
    }

    /// Begins a step, enters the values and is done.
    pub fn work(&mut self, step: &str, entries: &[(&str, EntryValue, &str)], signs: &[(&str, &str)]) {
        self.begin(step);
        for (entry, value, class) in entries {
            self.enter(step, entry, value.clone(), class);
        }
        let classes: Vec<_> = entries.iter().map(|(entry, _, class)| (*entry, *class)).collect();
        self.done(step, &classes, signs);
    }

    pub fn moved(&mut self, made: &str, lapsed: &[&str]) {
        let lapsed = lapsed.iter().map(|sign| (*sign).to_owned()).collect();
        self.then(VehicleAction { action: made.into(), lost: Lost { lapsed, forgotten: Vec::new() } });
    }

    /// Takes the vehicle in and opens it, up to and with the pan down.
    pub fn open_up(&mut self) {
        let km = reading("148230,5", "km");
        let vin = EntryValue::Scan { text: "1M8GDM9AXKP042788".into() };
        let codes = EntryValue::Scan { text: "P0765 C0035".into() };
        self.work(
            "identify",
            &[
                ("vin", vin, "read"),
                ("odometer", km, "read"),
                ("codes", codes, "read"),
                ("bearing", choice("apart"), "apart"),
            ],
            &[],
        );
        self.work("concern", &[("where", choice("two_three"), "two_three")], &[]);
        self.work("wipe", &[], &[]);
        self.moved("raise", &[]);
        self.work("push", &[], &[("firm", "pushed")]);
        self.begin("cool");
        self.enter("cool", "exhaust", reading("63,2", "°C"), "outside");
        self.minute += 25;
        self.enter("cool", "exhaust", reading("47,5", "°C"), "inside");
        self.done("cool", &[("exhaust", "inside")], &[]);
        self.work("free_nuts", &[("why", note("nuts rusted to the studs"), "written")], &[]);
        self.work("pan_down", &[("bolts", bolts(16), "all")], &[]);
    }

    /// Finds the cause, hangs the pan, puts new nuts on, lowers and hands over.
    pub fn close_up(&mut self) {
        self.work("find", &[("cause", note("coil weak when warm"), "written")], &[]);
        let photo = EntryValue::Photo { hash: PHOTO.into(), width: 2048, height: 1536 };
        self.work(
            "pan_up",
            &[("torque", clicked(), "inside"), ("photo", photo, "taken")],
            &[("signed", "torqued")],
        );
        self.work("nuts_on", &[], &[]);
        self.moved("lower", &["pushed"]);
        self.work("level", &[("stick", stick(), "in")], &[]);
        self.work("hand_over", &[("correction", note("solenoid, filter and gasket new"), "written")], &[]);
    }

    pub fn inputs(&self) -> RecordInputs {
        RecordInputs {
            job: JobId(Uuid::from_u128(7)),
            head: Hash::of(b"the newest event"),
            events: self.job.last_seq(),
            generated: self.stamp(self.minute + 2),
            proof: None,
            damaged: Vec::new(),
            captions: BTreeMap::from([(PHOTO.to_owned(), "dry after ten minutes".to_owned())]),
        }
    }

    pub fn document(&self) -> Document {
        Document::of(&self.job, &self.inputs(), Speaker::english())
    }
}

/// The id of the person whom the tests call so: always the same for one name.
pub fn person(name: &str) -> PersonId {
    let mut bytes = [0; 16];
    bytes.copy_from_slice(&Hash::of(name.as_bytes()).0[..16]);
    PersonId(Uuid::from_bytes(bytes))
}

/// The technician whom the tests know as `person`, under a name.
pub fn introduced(who: &str, name: &str) -> Introduced {
    Introduced { person: person(who), name: name.into(), role: Role::Technician }
}

/// A step done. Signatures are given by entry and sign-off, and each makes its entry signed.
pub fn done(step: &str, classes: &[(&str, &str)], by: &str, signs: &[(&str, &str)]) -> Done {
    let sign = |(_, sign): &(&str, &str)| Signature {
        sign: (*sign).into(),
        by: person(by),
        role: Role::Technician,
        pin: None,
    };
    let signed = signs.iter().map(|(entry, _)| (*entry, "signed"));
    let classes = classes.iter().copied().chain(signed);
    Done {
        step: step.into(),
        classes: classes.map(|(entry, class)| (entry.into(), class.into())).collect(),
        signs: signs.iter().map(sign).collect(),
        later: false,
        lost: Lost::default(),
    }
}

pub fn reading(value: &str, unit: &str) -> EntryValue {
    EntryValue::Reading { value: value.into(), unit: unit.into() }
}

pub fn choice(class: &str) -> EntryValue {
    EntryValue::Choice { class: class.into() }
}

pub fn note(text: &str) -> EntryValue {
    EntryValue::Note { text: text.into() }
}

pub fn bolts(pieces: u32) -> EntryValue {
    EntryValue::Count { of: BTreeMap::from([("pan_bolts".into(), pieces)]), accounted: None }
}

pub fn clicked() -> EntryValue {
    let tool = Tool {
        name: "wrench B".into(),
        min: "3".into(),
        max: "15".into(),
        unit: "N·m".into(),
        class_percent: None,
        calibrated_on: None,
        certificate: None,
        calibration_due: "2026-12-31".into(),
    };
    EntryValue::Torque {
        stages: vec!["4,0".into(), "9,0".into()],
        unit: "N·m".into(),
        tool: Box::new(tool),
        adapter: None,
        angles: Vec::new(),
        exception: None,
    }
}

pub fn stick() -> EntryValue {
    let reading = |trace: &str| StickReading {
        temperature: "60".into(),
        temperature_unit: "°C".into(),
        stick: StickShows::Trace { value: trace.into(), unit: "mm".into() },
    };
    EntryValue::Level {
        readings: vec![reading("25,5"), reading("26")],
        confirmed_no_trace: false,
        given_up: None,
    }
}
