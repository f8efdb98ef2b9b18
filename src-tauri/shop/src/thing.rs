//! The things of a shop, and what an event says about one.

use std::collections::BTreeSet;
use std::fmt;

use panside_journal::{DeviceId, Hash, PersonId};
use panside_messages::Message;
use panside_procedure::format::Role;
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

use crate::event::PinSetBy;
use crate::message::*;

/// A torque tool, by an id that stays when its name changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(transparent)]
pub struct ToolId(pub Uuid);

impl fmt::Display for ToolId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// A person of the shop.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Person {
    /// Stays when the name changes.
    pub id: PersonId,
    /// As [`crate::name::of_person`] gives it.
    pub name: String,
    /// As what they may sign. At least one.
    pub roles: BTreeSet<Role>,
    /// Whether they are a lead: a lead makes leads and, with a second person, sets a forgotten PIN anew.
    pub lead: bool,
}

/// What can be changed on two devices at once without one of them knowing of the other.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Thing {
    /// A person's name, roles and lead.
    Person(PersonId),
    /// A person's PIN.
    Pin(PersonId),
    /// A torque tool.
    Tool(ToolId),
    /// A spec sheet, by its id.
    Sheet(String),
    /// A checklist, by its id.
    Checklist(String),
    /// A device's name.
    Device(DeviceId),
    /// A value for all vehicles, by its key on spec sheets.
    Value(String),
}

impl Thing {
    /// Whether both are people, both tools, and so on.
    pub(crate) fn is_of_kind(&self, other: &Thing) -> bool {
        std::mem::discriminant(self) == std::mem::discriminant(other)
    }

    /// What it is called in a sentence.
    pub(crate) fn noun(&self) -> Message {
        match self {
            Thing::Person(_) => shop_thing_person(),
            Thing::Pin(_) => shop_thing_pin(),
            Thing::Tool(_) => shop_thing_tool(),
            Thing::Sheet(_) => shop_thing_sheet(),
            Thing::Checklist(_) => shop_thing_checklist(),
            Thing::Device(_) => shop_thing_device(),
            Thing::Value(_) => shop_thing_value(),
        }
    }
}

/// One piece of what an event says about its thing, so that two events can be compared piece by piece.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Said {
    /// The name of a person, tool or device.
    Name(String),
    /// A person's roles.
    Roles(BTreeSet<Role>),
    /// Whether a person is a lead.
    Lead(bool),
    /// A tool's range as decimal texts, and its unit.
    Range(String, String, String),
    /// A tool's class, days and certificate of calibration.
    Calibration {
        /// Percent of the setting, as decimal text.
        class_percent: Option<String>,
        /// The day of calibration, as `YYYY-MM-DD`.
        on: Option<String>,
        /// The certificate's number.
        certificate: Option<String>,
        /// The last day on which it holds, as `YYYY-MM-DD`.
        due: String,
    },
    /// A sheet's or checklist's content by its hash, with the revision number that people read.
    Content(Hash, u32),
    /// How a PIN was set, and by which event: no two PINs are known to be the same.
    Pin(PinSetBy, Hash),
    /// A value for all vehicles with its unit, and where it comes from.
    Value(String, String),
    /// A tool was taken off the list.
    Removed,
}

impl Said {
    /// The piece as it stands in a list of what was changed.
    pub(crate) fn message(&self) -> Message {
        match self {
            Said::Name(name) => shop_said_name(name),
            Said::Roles(roles) => {
                let roles = roles.iter().map(|role| shop_role(*role)).reduce(shop_and);
                roles.map_or_else(shop_said_no_roles, shop_said_roles)
            }
            Said::Lead(true) => shop_said_lead(),
            Said::Lead(false) => shop_said_no_lead(),
            Said::Range(min, max, unit) => shop_said_range(min, max, unit),
            Said::Calibration { due, .. } => shop_said_calibration(due),
            Said::Content(_, revision) => shop_said_content(*revision),
            Said::Pin(..) => shop_said_pin(),
            Said::Value(is, source) => shop_said_value(is, source),
            Said::Removed => shop_said_removed(),
        }
    }
}
