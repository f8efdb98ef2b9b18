//! What can happen in the shop, and the form in which the journal keeps it.
//!
//! The rules are those of `panside_job::event`: each kind has a name and the version of its body;
//! `tests/fixtures/events.jsonl` keeps samples of every form ever written. Every change carries the whole new state of
//! its thing and `from`, the hashes of the events that it replaces: all heads that its author saw, none for a new thing.
//! No body ever has a PIN or a hash of one.

use std::collections::BTreeSet;

use panside_job::event::Pinned;
use panside_job::sheet::Typed;
use panside_job::value::Tool;
use panside_journal::{DeviceId, Hash, PersonId};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

pub use panside_job::JobError;

use crate::thing::{Person, Said, Thing, ToolId};

/// See [`ShopEvent::PersonAdded`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PersonAdded {
    /// The new person.
    pub person: Person,
}

/// See [`ShopEvent::PersonChanged`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PersonChanged {
    /// The person as they are from now on.
    pub person: Person,
    /// The events that it replaces.
    pub from: BTreeSet<Hash>,
}

/// See [`ShopEvent::PersonLeft`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PersonLeft {
    /// Who.
    pub id: PersonId,
    /// The events that it replaces.
    pub from: BTreeSet<Hash>,
}

/// Who vouched for a new PIN.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PinSetBy {
    /// The person set their first one.
    OwnFirst,
    /// The person gave the old one.
    OwnByOld,
    /// A lead set it for the person, before a second person.
    LeadAndSecond {
        /// The lead.
        lead: PersonId,
        /// The second person: neither the lead nor whose PIN it is.
        second: PersonId,
    },
}

/// See [`ShopEvent::PinSet`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PinSet {
    /// Whose PIN it is.
    pub person: PersonId,
    /// Who vouched for it.
    pub how: PinSetBy,
    /// The events that it replaces.
    pub from: BTreeSet<Hash>,
}

/// See [`ShopEvent::ToolKept`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ToolKept {
    /// Stays when the name changes.
    pub id: ToolId,
    /// The tool as it is from now on.
    pub tool: Tool,
    /// The events that it replaces.
    pub from: BTreeSet<Hash>,
}

/// See [`ShopEvent::ToolRemoved`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ToolRemoved {
    /// The tool.
    pub id: ToolId,
    /// The events that it replaces.
    pub from: BTreeSet<Hash>,
}

/// See [`ShopEvent::SheetKept`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SheetKept {
    /// The revision: its hash says which one it is, its number is for people.
    pub sheet: Pinned,
    /// The content that it was made from, by hash. Absent: it was typed anew or came in as a file.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub made_from: Option<Hash>,
    /// The events that it replaces.
    pub from: BTreeSet<Hash>,
}

/// See [`ShopEvent::ChecklistAdopted`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ChecklistAdopted {
    /// The revision from which jobs are started from now on.
    pub checklist: Pinned,
    /// The events that it replaces.
    pub from: BTreeSet<Hash>,
}

/// See [`ShopEvent::DeviceNamed`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DeviceNamed {
    /// The device; not always the one that wrote this.
    pub device: DeviceId,
    /// As [`crate::name::of_thing`] gives it.
    pub name: String,
    /// The events that it replaces.
    pub from: BTreeSet<Hash>,
}

/// See [`ShopEvent::ValueKept`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ValueKept {
    /// Its key on spec sheets.
    pub key: String,
    /// What people read for the key.
    pub name: String,
    /// What it is, as typed.
    pub is: Typed,
    /// Where it comes from.
    pub source: String,
    /// The events that it replaces.
    pub from: BTreeSet<Hash>,
}

panside_job::events! {
    /// One thing that happened in the shop: the body of a journal event.
    ShopEvent;
    /// A person came to the shop's list.
    PersonAdded: "person_added", version 1;
    /// A person's name, roles or lead changed, or they are back.
    PersonChanged: "person_changed", version 1;
    /// A person works here no more. What they signed stays theirs.
    PersonLeft: "person_left", version 1;
    /// A person's PIN was set.
    PinSet: "pin_set", version 1;
    /// A torque tool is new, is another than before, or is back.
    ToolKept: "tool_kept", version 1;
    /// A torque tool was taken off the list.
    ToolRemoved: "tool_removed", version 1;
    /// A revision of a spec sheet was kept.
    SheetKept: "sheet_kept", version 1;
    /// A revision of a checklist was adopted.
    ChecklistAdopted: "checklist_adopted", version 1;
    /// A device got a name.
    DeviceNamed: "device_named", version 1;
    /// The shop has a value, or another one, for all its vehicles.
    ValueKept: "value_kept", version 1;
}

impl ShopEvent {
    /// What it is about.
    #[must_use]
    pub fn thing(&self) -> Thing {
        match self {
            ShopEvent::PersonAdded(PersonAdded { person })
            | ShopEvent::PersonChanged(PersonChanged { person, .. }) => Thing::Person(person.id.to_owned()),
            ShopEvent::PersonLeft(body) => Thing::Person(body.id),
            ShopEvent::PinSet(body) => Thing::Pin(body.person.to_owned()),
            ShopEvent::ToolKept(ToolKept { id, .. }) | ShopEvent::ToolRemoved(ToolRemoved { id, .. }) => {
                Thing::Tool(*id)
            }
            ShopEvent::SheetKept(body) => Thing::Sheet(body.sheet.id.clone()),
            ShopEvent::ChecklistAdopted(body) => Thing::Checklist(body.checklist.id.clone()),
            ShopEvent::DeviceNamed(body) => Thing::Device(body.device),
            ShopEvent::ValueKept(body) => Thing::Value(body.key.clone()),
        }
    }

    /// The events that it replaces: its `from`.
    #[must_use]
    pub fn replaces(&self) -> &BTreeSet<Hash> {
        const NONE: &BTreeSet<Hash> = &BTreeSet::new();
        match self {
            ShopEvent::PersonAdded(_) => NONE,
            ShopEvent::PersonChanged(PersonChanged { from, .. })
            | ShopEvent::PersonLeft(PersonLeft { from, .. })
            | ShopEvent::PinSet(PinSet { from, .. })
            | ShopEvent::ToolKept(ToolKept { from, .. })
            | ShopEvent::ToolRemoved(ToolRemoved { from, .. })
            | ShopEvent::SheetKept(SheetKept { from, .. })
            | ShopEvent::ChecklistAdopted(ChecklistAdopted { from, .. })
            | ShopEvent::DeviceNamed(DeviceNamed { from, .. })
            | ShopEvent::ValueKept(ValueKept { from, .. }) => from,
        }
    }

    /// What it says about its thing, piece by piece. `hash` is the event's own.
    #[must_use]
    pub fn said(&self, hash: Hash) -> BTreeSet<Said> {
        match self {
            ShopEvent::PersonAdded(PersonAdded { person })
            | ShopEvent::PersonChanged(PersonChanged { person, .. }) => {
                let Person { id: _, name, roles, lead } = person;
                [Said::Name(name.clone()), Said::Roles(roles.clone()), Said::Lead(*lead)].into()
            }
            ShopEvent::PinSet(body) => [Said::Pin(body.how.clone(), hash)].into(),
            ShopEvent::ToolKept(body) => said_of_tool(&body.tool),
            ShopEvent::PersonLeft(_) | ShopEvent::ToolRemoved(_) => [Said::Removed].into(),
            ShopEvent::SheetKept(SheetKept { sheet: pinned, .. })
            | ShopEvent::ChecklistAdopted(ChecklistAdopted { checklist: pinned, .. }) => {
                [Said::Content(pinned.hash, pinned.revision)].into()
            }
            ShopEvent::DeviceNamed(body) => [Said::Name(body.name.clone())].into(),
            ShopEvent::ValueKept(body) => [Said::Value(body.is.in_short(), body.source.clone())].into(),
        }
    }

    /// Its thing is off the shop's list after it.
    #[must_use]
    pub fn removes(&self) -> bool {
        matches!(self, ShopEvent::PersonLeft(_) | ShopEvent::ToolRemoved(_))
    }

    /// The person as they are after it, where it is about one.
    #[must_use]
    pub fn person(&self) -> Option<&Person> {
        match self {
            ShopEvent::PersonAdded(PersonAdded { person })
            | ShopEvent::PersonChanged(PersonChanged { person, .. }) => Some(person),
            _ => None,
        }
    }

    /// The name that its thing has after it, where names have to be told apart.
    #[must_use]
    pub fn name(&self) -> Option<&str> {
        match self {
            ShopEvent::ToolKept(body) => Some(&body.tool.name),
            ShopEvent::DeviceNamed(body) => Some(&body.name),
            _ => self.person().map(|person| person.name.as_str()),
        }
    }
}

fn said_of_tool(tool: &Tool) -> BTreeSet<Said> {
    let Tool { name, min, max, unit, class_percent, calibrated_on, certificate, calibration_due } = tool;
    let calibration = Said::Calibration {
        class_percent: class_percent.clone(),
        on: calibrated_on.clone(),
        certificate: certificate.clone(),
        due: calibration_due.clone(),
    };
    [Said::Name(name.clone()), Said::Range(min.clone(), max.clone(), unit.clone()), calibration].into()
}
