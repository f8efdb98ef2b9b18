//! An invented shop with tablets that write without knowing of each other.

use std::collections::BTreeSet;

use panside_job::event::Pinned;
use panside_job::sheet::Typed;
use panside_job::value::Tool;
use panside_journal::{BootId, DeviceId, Hash, PersonId, Stamp};
use panside_procedure::format::Role;
use panside_shop::{Shop, ShopCommand, ShopEvent, ShopHappened, ShopRefusal, Thing, ToolId};
use uuid::Uuid;

/// The only place that makes a person's id: by its JSON, whatever type stands behind it.
pub fn person_id(number: u128) -> PersonId {
    serde_json::from_value(serde_json::json!(Uuid::from_u128(number))).unwrap()
}

pub fn ada() -> PersonId {
    person_id(1)
}

pub fn bo() -> PersonId {
    person_id(2)
}

pub fn cy() -> PersonId {
    person_id(3)
}

pub fn tool_id(number: u128) -> ToolId {
    ToolId(Uuid::from_u128(number))
}

pub fn technician() -> BTreeSet<Role> {
    [Role::Technician].into()
}

pub fn tool(name: &str, max: &str) -> Tool {
    Tool {
        name: name.into(),
        min: "3".into(),
        max: max.into(),
        unit: "N·m".into(),
        class_percent: None,
        calibrated_on: None,
        certificate: None,
        calibration_due: "2027-05-31".into(),
    }
}

/// The touch limit for all vehicles, by who saw these heads of it.
pub fn touch_limit(seen: BTreeSet<Hash>, degrees: &str) -> ShopCommand {
    let is = Typed::Measure { value: degrees.into(), unit: "°C".into() };
    let (key, name, source) = ("touch_limit".into(), "touch limit".into(), "common practice".into());
    ShopCommand::KeepValue { key, seen, name, is, source }
}

pub fn revision(id: &str, revision: u32, content: &str) -> Pinned {
    Pinned { id: id.into(), revision, hash: Hash::of(content.as_bytes()) }
}

pub fn hashes(heads: &[&ShopHappened]) -> BTreeSet<Hash> {
    heads.iter().map(|head| head.hash).collect()
}

/// A tablet: what it knows, in the order in which it came.
#[derive(Debug, Clone)]
pub struct Tablet {
    pub device: DeviceId,
    pub known: Vec<ShopHappened>,
    /// What its wall clock shows, in ms.
    pub wall_ms: i64,
    written: u64,
    shop: Shop,
}

impl Tablet {
    pub fn new(number: u128) -> Tablet {
        let device = DeviceId(Uuid::from_u128(number));
        Tablet { device, known: Vec::new(), wall_ms: 1_000, written: 0, shop: Shop::default() }
    }

    pub fn shop(&self) -> &Shop {
        &self.shop
    }

    /// The heads of a thing as this tablet shows them.
    pub fn seen(&self, thing: &Thing) -> BTreeSet<Hash> {
        hashes(&self.shop.heads(thing))
    }

    /// Decides, and writes what was decided.
    pub fn ask(&mut self, command: &ShopCommand, who: &PersonId) -> Result<ShopHappened, ShopRefusal> {
        let event = self.shop.decide(command, who)?;
        Ok(self.write(event, who))
    }

    /// Writes an event as a journal would: its hash covers all of it.
    pub fn write(&mut self, event: ShopEvent, who: &PersonId) -> ShopHappened {
        self.written += 1;
        self.wall_ms += 1;
        let (kind, version, body) = event.to_body().unwrap();
        let header = format!("{} {} {} {kind} {version} ", self.device, self.written, self.wall_ms);
        let happened = ShopHappened {
            hash: Hash::of(&[header.as_bytes(), &body].concat()),
            device: self.device,
            seq: self.written,
            stamp: Stamp { wall_ms: self.wall_ms, mono_ms: 0, boot: BootId(self.device.0) },
            who: who.to_owned(),
            event,
        };
        self.take(happened.clone());
        happened
    }

    pub fn take(&mut self, happened: ShopHappened) {
        self.known.push(happened.clone());
        self.shop.take(happened);
    }

    pub fn receive(&mut self, other: &Tablet) {
        other.known.iter().for_each(|happened| self.take(happened.clone()));
    }

    // Commands with what this tablet shows as seen.

    pub fn add(&mut self, id: &PersonId, name: &str, who: &PersonId) -> Result<ShopHappened, ShopRefusal> {
        let (id, name) = (id.to_owned(), name.to_owned());
        self.ask(&ShopCommand::AddPerson { id, name, roles: technician(), lead: false }, who)
    }

    pub fn change(
        &mut self,
        id: &PersonId,
        (name, roles, lead): (&str, BTreeSet<Role>, bool),
        who: &PersonId,
    ) -> Result<ShopHappened, ShopRefusal> {
        let seen = self.seen(&Thing::Person(id.to_owned()));
        self.ask(&ShopCommand::ChangePerson { id: id.to_owned(), seen, name: name.into(), roles, lead }, who)
    }

    pub fn leave(&mut self, id: &PersonId, who: &PersonId) -> Result<ShopHappened, ShopRefusal> {
        let seen = self.seen(&Thing::Person(*id));
        self.ask(&ShopCommand::RemovePerson { id: *id, seen }, who)
    }

    pub fn keep_tool(&mut self, id: ToolId, tool: Tool) -> Result<ShopHappened, ShopRefusal> {
        let seen = self.seen(&Thing::Tool(id));
        self.ask(&ShopCommand::KeepTool { id, seen, tool: Box::new(tool) }, &ada())
    }

    pub fn remove_tool(&mut self, id: ToolId) -> Result<ShopHappened, ShopRefusal> {
        let seen = self.seen(&Thing::Tool(id));
        self.ask(&ShopCommand::RemoveTool { id, seen }, &ada())
    }

    pub fn keep_sheet(
        &mut self,
        sheet: Pinned,
        made_from: Option<Hash>,
    ) -> Result<ShopHappened, ShopRefusal> {
        let seen = self.seen(&Thing::Sheet(sheet.id.clone()));
        self.ask(&ShopCommand::KeepSheet { sheet, made_from, seen }, &ada())
    }
}

/// Two tablets of a shop with Ada, who is its lead, Bo, a wrench and a sheet; both know all of it.
pub fn two_tablets() -> (Tablet, Tablet) {
    let mut first = Tablet::new(0xA);
    first.add(&ada(), "Ada Pike", &ada()).unwrap();
    first.add(&bo(), "Bo Lind", &ada()).unwrap();
    first.keep_tool(tool_id(1), tool("quarter-inch", "15")).unwrap();
    first.keep_sheet(revision("invented-van", 1, "one"), None).unwrap();
    let mut second = Tablet::new(0xB);
    second.receive(&first);
    (first, second)
}
