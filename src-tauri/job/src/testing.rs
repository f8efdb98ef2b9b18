//! What the tests of this crate share: a small invented checklist with its sheet, and a bay to work it in.

use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock};

use panside_journal::{BootId, Hash, PersonId, Stamp};
use panside_procedure::format::{Role, Sheet};
use panside_procedure::{Procedure, load};
use uuid::Uuid;

use crate::command::{Actor, Command, Refusal};
use crate::entry::{Classified, Context, classify};
use crate::event::{Event, Pinned};
use crate::job::{Happened, Job};
use crate::people::{Member, Names, Roster};
use crate::sheet::Specs;
use crate::start::{Intake, start};
use crate::value::{
    Answer, Authorized, EntryValue, EstimateLines, LaborLine, MayTurnUpLine, Means, PartLine, Signature,
    StickReading, StickShows, Tool,
};
use crate::view::{JobView, StepView, view};

/// 2026-03-02T08:00:00Z, as GNU date gives it.
const MORNING_MS: i64 = 1_772_438_400_000;

pub fn boot(number: u128) -> BootId {
    BootId(Uuid::from_u128(number))
}

/// A time of the test's day, in minutes after eight, in the first boot.
pub fn stamp(minute: i64) -> Stamp {
    let ms = minute * 60_000;
    Stamp { wall_ms: MORNING_MS + ms, mono_ms: 1_000_000 + ms.unsigned_abs(), boot: boot(1) }
}

pub fn procedure() -> Arc<Procedure> {
    static LOADED: LazyLock<Arc<Procedure>> = LazyLock::new(|| {
        let bytes = include_bytes!("../tests/fixtures/pan.checklist.json");
        Arc::new(Procedure::load(bytes).unwrap_or_else(|problems| panic!("{problems}")))
    });
    Arc::clone(&LOADED)
}

pub fn sheet() -> Sheet {
    load::sheet(include_bytes!("../tests/fixtures/pan.sheet.json")).unwrap()
}

pub fn specs() -> Arc<Specs> {
    static READ: LazyLock<Arc<Specs>> = LazyLock::new(|| Arc::new(Specs::of(&sheet()).unwrap()));
    Arc::clone(&READ)
}

/// A small checklist with one entry of each kind that is worked out, and its sheet.
pub fn figures() -> (Arc<Procedure>, Arc<Specs>) {
    static READ: LazyLock<(Arc<Procedure>, Arc<Specs>)> = LazyLock::new(|| {
        let bytes = include_bytes!("../tests/fixtures/figures.checklist.json");
        let procedure = Procedure::load(bytes).unwrap_or_else(|problems| panic!("{problems}"));
        let sheet = load::sheet(include_bytes!("../tests/fixtures/figures.sheet.json")).unwrap();
        (Arc::new(procedure), Arc::new(Specs::of(&sheet).unwrap()))
    });
    READ.clone()
}

pub fn tool() -> Tool {
    Tool {
        name: "quarter-inch click wrench".into(),
        min: "3".into(),
        max: "15".into(),
        unit: "N·m".into(),
        class_percent: None,
        calibrated_on: None,
        certificate: None,
        calibration_due: "2026-12-31".into(),
    }
}

/// Judges a value at an entry of a step that was just begun.
pub fn try_entry(step: &str, entry: &str, value: EntryValue) -> Result<Classified, Refusal> {
    let procedure = procedure();
    let step = procedure.step(procedure.names.step(step).unwrap());
    let entry = step.entries.iter().find(|found| found.id == entry).unwrap();
    let (at, begun) = (stamp(0), stamp(0));
    let shop = shop();
    let context = Context {
        checklist: &procedure.checklist,
        begun: Some(&begun),
        at: &at,
        utc_offset_min: 0,
        names: Names::Shop(&shop),
        step: &step.id,
        entry: &entry.id,
        past: None,
    };
    let judged = classify(&entry.ask, &specs(), &value, &context);
    if let Ok(classified) = &judged {
        assert!(entry.ask.classes().contains(&classified.class.as_str()), "only declared classes come out");
    }
    judged
}

/// The id of the person whom the tests call so: always the same for one name.
pub fn person(name: &str) -> PersonId {
    PersonId(Uuid::from_slice(&Hash::of(name.as_bytes()).0[..16]).unwrap())
}

/// Somebody of the shop.
pub fn member(name: &str, roles: &[Role]) -> (PersonId, Member) {
    (person(name), Member { name: name.into(), roles: roles.iter().copied().collect() })
}

/// Three technicians and a service writer.
pub fn shop() -> Roster {
    let technicians = ["Ada", "Bo", "Cem"].map(|name| member(name, &[Role::Technician]));
    technicians.into_iter().chain([member("Wim", &[Role::ServiceWriter])]).collect()
}

/// The same shop with these people added or in place of those with the same id.
pub fn shop_with<const N: usize>(people: [(PersonId, Member); N]) -> Roster {
    let before =
        ["Ada", "Bo", "Cem", "Wim"].map(|name| (person(name), shop().get(person(name)).unwrap().clone()));
    before.into_iter().chain(people).collect()
}

pub fn technician(name: &str) -> Actor {
    Actor { id: person(name), role: Role::Technician }
}

pub fn sign(sign: &str, by: &str, role: Role) -> Signature {
    Signature { sign: sign.into(), by: person(by), role, pin: None }
}

pub fn degrees(value: &str) -> EntryValue {
    EntryValue::Reading { value: value.into(), unit: "°C".into() }
}

pub fn litres(value: &str) -> EntryValue {
    EntryValue::Reading { value: value.into(), unit: "L".into() }
}

pub fn choice(class: &str) -> EntryValue {
    EntryValue::Choice { class: class.into() }
}

pub fn pieces(bolts: u32) -> EntryValue {
    let of = BTreeMap::from([("pan_bolts".to_owned(), bolts), ("gasket".to_owned(), 1)]);
    EntryValue::Count { of, accounted: None }
}

pub fn clicked() -> EntryValue {
    EntryValue::Torque {
        stages: vec!["4".into(), "9".into()],
        unit: "N·m".into(),
        tool: Box::new(tool()),
        adapter: None,
        angles: Vec::new(),
        exception: None,
    }
}

pub fn stick_in_band() -> EntryValue {
    let reading = StickReading {
        temperature: "60".into(),
        temperature_unit: "°C".into(),
        stick: StickShows::Trace { value: "25".into(), unit: "mm".into() },
    };
    EntryValue::Level { readings: vec![reading.clone(), reading], confirmed_no_trace: false, given_up: None }
}

/// 24.60 for the gasket and 2.5 hours at 96.00: 264.60, and up to 85.00 for a bolt that may snap.
pub fn estimate() -> EstimateLines {
    let part = |name: &str, price: Option<&str>| PartLine {
        name: name.into(),
        number: None,
        quantity: "1".into(),
        price: price.map(str::to_owned),
    };
    EstimateLines {
        currency: "USD".into(),
        parts: vec![part("pan gasket", Some("24,60"))],
        labor: vec![LaborLine {
            what: "pan and filter".into(),
            hours: "2.5".into(),
            rate: Some("96".into()),
        }],
        may_turn_up: vec![MayTurnUpLine { what: "snapped bolt".into(), up_to: "85".into() }],
    }
}

pub fn agreed(amount: &str) -> Authorized {
    Authorized {
        answer: Answer::Agreed,
        amount: amount.into(),
        currency: "USD".into(),
        given_by: "owner".into(),
        means: Some(Means::Telephone),
        given_at: None,
    }
}

/// What is entered at the go-ahead.
pub fn go_ahead() -> [(&'static str, EntryValue); 2] {
    [("estimate", EntryValue::Estimate(estimate())), ("answer", EntryValue::Authorization(agreed("349.60")))]
}

/// A job in a bay: commands are decided and what comes of them is taken over, a minute apart.
pub struct Bay {
    pub job: Job,
    pub minute: i64,
    pub shop: Roster,
    pub actor: Actor,
}

impl Bay {
    pub fn open() -> Bay {
        Bay::with(procedure(), specs())
    }

    /// A job on another checklist.
    pub fn with(procedure: Arc<Procedure>, specs: Arc<Specs>) -> Bay {
        let pinned = |id: &str| Pinned { id: id.into(), revision: 1, hash: Hash::of(id.as_bytes()) };
        let intake = Intake {
            checklist_hash: pinned("pan-short").hash,
            sheet_hash: pinned("invented-van").hash,
            texts: None,
            conditions: BTreeMap::new(),
            repair_order: "RO 1".into(),
            label: "invented van".into(),
            utc_offset_min: 0,
        };
        let (shop, actor) = (shop(), technician("Ada"));
        let started = start(&procedure, &specs, &intake, shop.acting(actor).unwrap()).unwrap();
        let mut bay = Bay { job: Job::new(procedure, specs), minute: 0, shop, actor };
        bay.record(vec![started]);
        bay
    }

    pub fn now(&self) -> Stamp {
        stamp(self.minute)
    }

    pub fn record(&mut self, events: Vec<Event>) {
        for event in events {
            let (seq, who) = (self.job.last_seq() + 1, self.actor.id);
            self.job.take(Happened { seq, stamp: self.now(), who, event });
        }
    }

    pub fn ask(&mut self, command: Command) -> Result<Vec<Event>, Refusal> {
        self.minute += 1;
        let events = crate::decide::decide(&self.job, &self.shop, &command, &self.actor, &self.now())?;
        self.record(events.clone());
        Ok(events)
    }

    /// Asks and fails the test when it is refused.
    pub fn must(&mut self, command: Command) -> Vec<Event> {
        self.ask(command.clone()).unwrap_or_else(|refusal| panic!("{command:?} was refused: {refusal:?}"))
    }

    pub fn begin(&mut self, step: &str) -> Result<Vec<Event>, Refusal> {
        self.ask(Command::Begin { step: step.into() })
    }

    pub fn enter(&mut self, step: &str, entry: &str, value: EntryValue) -> Result<Vec<Event>, Refusal> {
        self.ask(Command::Enter { step: step.into(), entry: entry.into(), value })
    }

    pub fn done(&mut self, step: &str) -> Result<Vec<Event>, Refusal> {
        self.ask(Command::Done { step: step.into(), signatures: Vec::new() })
    }

    pub fn work(
        &mut self,
        step: &str,
        entries: &[(&str, EntryValue)],
        signatures: &[Signature],
    ) -> Vec<Event> {
        self.must(work(step, entries, signatures))
    }

    pub fn vehicle_actions(&mut self, actions: &[&str]) {
        for made in actions {
            self.must(Command::VehicleAction { action: (*made).into() });
        }
    }

    /// Works the job up to and with a step of the usual order.
    pub fn work_up_to(&mut self, last: &str) {
        for step in USUAL_ORDER {
            self.work_usual(step);
            if *step == last {
                return;
            }
        }
        panic!("{last} is not in the usual order");
    }

    /// Works one step as it usually goes, with the vehicle actions before it.
    pub fn work_usual(&mut self, step: &str) {
        for command in usual(step) {
            if matches!(&command, Command::Work { step, .. } if step == "cure") {
                self.minute += 20;
            }
            self.must(command);
        }
    }

    pub fn view(&self) -> JobView {
        view(&self.job, &self.now())
    }

    pub fn step(&self, id: &str) -> StepView {
        self.view().steps.into_iter().find(|step| step.id == id).unwrap()
    }
}

/// The order in which the invented job goes when nothing comes between.
pub const USUAL_ORDER: &[&str] = &[
    "identify", "photo", "go_ahead", "locks", "probe", "coil", "drain", "pan_down", "verdict", "pan_up",
    "cure", "fill", "level",
];

pub fn work(step: &str, entries: &[(&str, EntryValue)], signatures: &[Signature]) -> Command {
    Command::Work {
        step: step.into(),
        entries: entries.iter().map(|(entry, value)| ((*entry).to_owned(), value.clone())).collect(),
        signatures: signatures.to_vec(),
        later: false,
    }
}

/// The commands by which a step is usually worked, with the vehicle actions before it.
pub fn usual(step: &str) -> Vec<Command> {
    let text = |text: &str| EntryValue::Scan { text: text.into() };
    let km = EntryValue::Reading { value: "184312".into(), unit: "km".into() };
    let photo = EntryValue::Photo { hash: Hash::of(b"routing").to_string(), width: 2048, height: 1536 };
    let ohms = EntryValue::Reading { value: "5.3".into(), unit: "Ω".into() };
    let made = |made: &str| Command::VehicleAction { action: made.into() };
    let ada = |id: &str| [sign(id, "Ada", Role::Technician)];
    match step {
        "identify" => {
            let vin = text("1M8GDM9AXKP042788");
            vec![work(step, &[("vin", vin), ("codes", text("P0765")), ("odometer", km)], &[])]
        }
        "photo" => vec![work(step, &[("routing", photo)], &[])],
        "go_ahead" => {
            vec![work(step, &go_ahead(), &[sign("concern_told", "Wim", Role::ServiceWriter)])]
        }
        "locks" => vec![made("key_out"), made("raise"), made("set_locks"), work(step, &[], &ada("on_locks"))],
        "probe" => vec![work(step, &[("exhaust", degrees("41"))], &[])],
        "coil" => vec![work(step, &[("ohms", ohms)], &[])],
        "drain" => vec![work(step, &[("volume", litres("3.6"))], &[])],
        "pan_down" => vec![work(step, &[("bolts", pieces(16))], &[])],
        "verdict" => vec![work(step, &[("found", choice("carry_on"))], &[])],
        "pan_up" => vec![work(step, &[("torque", clicked())], &ada("pan_torqued"))],
        "cure" => {
            vec![Command::Begin { step: step.into() }, work(step, &[("wait", EntryValue::Timer {})], &[])]
        }
        "fill" => vec![made("lower"), work(step, &[("volume", litres("3.6"))], &[])],
        "level" => {
            vec![made("key_in"), made("start_engine"), work(step, &[("stick", stick_in_band())], &[])]
        }
        other => panic!("{other} has no usual way"),
    }
}
