//! What was entered, as it was typed. Measured values stay decimal text with the text of their unit: no float can
//! change a figure between the hand and the record.

use std::collections::BTreeMap;

use panside_procedure::format::Role;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// A signature under one sign-off.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Signature {
    /// Id in the checklist's `sign_offs`.
    pub sign: String,
    /// The name of who signs; the same text as in [`crate::Actor::name`].
    pub by: String,
    /// As what they sign.
    pub role: Role,
    /// At a hold point, a sign-off that is asked of a role: whether the person gave their PIN, or had none to give.
    /// Absent elsewhere and in signatures from before there were PINs. Whoever checks PINs puts it in; what a wish
    /// says here counts for nothing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pin: Option<bool>,
}

/// What was entered at one entry of a step: one variant for each kind in `panside_procedure::format::Ask`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum EntryValue {
    /// A signature. It is given together with *Done*, never before.
    SignOff(Signature),
    /// A measured value.
    Reading {
        /// Decimal text, with comma or point.
        value: String,
        /// The unit as text, such as `°C`.
        unit: String,
    },
    /// Readings of the stick.
    Level {
        /// At least two are needed for a level to be known.
        readings: Vec<StickReading>,
        /// Seating of the stick, temperature and idle were looked at again and the stick still stayed dry.
        #[serde(default)]
        confirmed_no_trace: bool,
    },
    /// Pieces counted.
    Count {
        /// How many were counted, by item id.
        of: BTreeMap<String, u32>,
        /// Where the missing ones are, and who says so.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        accounted: Option<Accounted>,
    },
    /// Fasteners tightened with a setting tool.
    Torque {
        /// The setting that clicked at each stage, in order, as decimal text.
        stages: Vec<String>,
        /// The unit of the settings as text, such as `N·m`.
        unit: String,
        /// The tool.
        tool: Tool,
    },
    /// A photo that is on disk.
    Photo {
        /// SHA-256 of the kept bytes, 64 lower-case hex digits.
        hash: String,
        /// Width in pixels, above 0.
        width: u32,
        /// Height in pixels, above 0.
        height: u32,
    },
    /// An answer.
    Choice {
        /// The class of the option chosen.
        class: String,
    },
    /// A text read from the vehicle or a label.
    Scan {
        /// The text.
        text: String,
    },
    /// The wait is over.
    Timer {},
    /// Free text.
    Note {
        /// The text.
        text: String,
    },
}

impl EntryValue {
    /// The name of its kind, as `Ask::kind` gives it.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        match self {
            EntryValue::SignOff(_) => "sign_off",
            EntryValue::Reading { .. } => "reading",
            EntryValue::Level { .. } => "level",
            EntryValue::Count { .. } => "count",
            EntryValue::Torque { .. } => "torque",
            EntryValue::Photo { .. } => "photo",
            EntryValue::Choice { .. } => "choice",
            EntryValue::Scan { .. } => "scan",
            EntryValue::Timer {} => "timer",
            EntryValue::Note { .. } => "note",
        }
    }
}

/// One reading of the stick with the fluid's temperature.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct StickReading {
    /// Fluid temperature as decimal text.
    pub temperature: String,
    /// Its unit as text.
    pub temperature_unit: String,
    /// What the stick showed.
    pub stick: StickShows,
}

/// What the stick showed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum StickShows {
    /// The wet edge, from the end of the stick.
    Trace {
        /// Decimal text, 0 or more.
        value: String,
        /// Its unit as text.
        unit: String,
    },
    /// The stick stayed dry.
    NoTrace,
}

/// Where pieces are that a count did not find.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Accounted {
    /// Where they are, in words. Never empty.
    pub reason: String,
    /// Who says so. Never empty.
    pub by: String,
}

/// A torque tool as it stood in the shop's list when it was used.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Tool {
    /// What the shop calls it.
    pub name: String,
    /// Lowest torque it is calibrated for, as decimal text.
    pub min: String,
    /// Highest torque it is calibrated for, as decimal text.
    pub max: String,
    /// The unit of both as text.
    pub unit: String,
    /// How far a click may lie from the setting, in percent of it, as decimal text. Absent: class A of ISO 6789 for
    /// its range, as `panside_trade::torque::class_a_deviation_percent` gives it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub class_percent: Option<String>,
    /// The day on which it was calibrated, as `YYYY-MM-DD`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub calibrated_on: Option<String>,
    /// The number of the calibration's certificate, as it stands there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub certificate: Option<String>,
    /// The last day on which its calibration holds, as `YYYY-MM-DD`.
    pub calibration_due: String,
}
