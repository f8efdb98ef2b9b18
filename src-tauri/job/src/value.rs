//! What was entered, as it was typed. Measured values stay decimal text with the text of their unit: no float can
//! change a figure between the hand and the record.

mod money;
mod turned_up;

use std::collections::{BTreeMap, BTreeSet};

use panside_journal::PersonId;
use panside_procedure::format::Role;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

pub use money::{Answer, Authorized, EstimateLines, LaborLine, MayTurnUpLine, Means, PartLine};
pub use turned_up::Urgency;

/// A signature under one sign-off.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Signature {
    /// Id in the checklist's `sign_offs`.
    pub sign: String,
    /// Who signs.
    pub by: PersonId,
    /// As what they sign.
    pub role: Role,
    /// At a hold point, a sign-off that is asked of a role: what is known of the person's PIN. Absent elsewhere.
    /// Whoever checks PINs puts it in; what a command says here counts for nothing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pin: Option<SignedPin>,
}

/// What is known of a PIN at a hold point.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SignedPin {
    /// The person had none to give.
    NoPin,
    /// It was given, and the person had set it.
    Own,
    /// It was given, and others had set it for the person, who had forgotten theirs.
    SetBy {
        /// Who leads the shop.
        lead: PersonId,
        /// The second person, who gave their PIN too.
        second: PersonId,
    },
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
        /// Why the level can't be brought into its band, and who says so.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        given_up: Option<Accounted>,
    },
    /// A coil's resistance with the coil's temperature.
    Coil(CoilValue),
    /// The resistances of coils of the sheet's list, at one temperature.
    Coils(CoilsValue),
    /// A surface that was probed.
    CoolDown(Probed),
    /// What is known of the fluid's balance beside the amounts that other entries took down.
    Balance {
        /// Temperature of the fluid from the can as decimal text; empty where no amount asks for it.
        temperature: String,
        /// Its unit as text.
        temperature_unit: String,
        /// Why the two sides differ, and who says so.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        explained: Option<Accounted>,
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
        tool: Box<Tool>,
        /// The adapter between tool and bolt, where one was used.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        adapter: Option<Adapter>,
        /// The degrees each fastener was turned after the last stage, as decimal text, where the sheet asks for them.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        angles: Vec<String>,
        /// Why the tool was used although something speaks against it, and who says so.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        exception: Option<Accounted>,
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
    /// Any number of answers of a list.
    Several {
        /// The ids of the options that were found. Empty: none of them.
        found: BTreeSet<String>,
    },
    /// What follows from other entries, or what was decided against that.
    Decision {
        /// The class that is decided.
        class: String,
        /// Why it is not what the table says, and who stands for it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        against: Option<Accounted>,
        /// Where a second person has to stand for it: what is known of their PIN. Whoever checks PINs puts it in; what a
        /// command says here counts for nothing.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pin: Option<SignedPin>,
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
    /// Parts and labor with their prices.
    Estimate(EstimateLines),
    /// The customer's answer.
    Authorization(Authorized),
}

impl EntryValue {
    /// What somebody says and stands for in it, where it has a place for that and something stands there.
    #[must_use]
    pub fn accounted(&self) -> Option<&Accounted> {
        match self {
            EntryValue::Level { given_up, .. } => given_up.as_ref(),
            EntryValue::Balance { explained, .. } => explained.as_ref(),
            EntryValue::Count { accounted, .. } => accounted.as_ref(),
            EntryValue::Torque { exception, .. } => exception.as_ref(),
            EntryValue::Decision { against, .. } => against.as_ref(),
            _ => None,
        }
    }

    /// The name of its kind, as `Ask::kind` gives it.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        match self {
            EntryValue::SignOff(_) => "sign_off",
            EntryValue::Reading { .. } => "reading",
            EntryValue::Level { .. } => "level",
            EntryValue::Coil(_) => "coil",
            EntryValue::Coils(_) => "coils",
            EntryValue::CoolDown(_) => "cool_down",
            EntryValue::Balance { .. } => "balance",
            EntryValue::Count { .. } => "count",
            EntryValue::Torque { .. } => "torque",
            EntryValue::Photo { .. } => "photo",
            EntryValue::Choice { .. } => "choice",
            EntryValue::Several { .. } => "several",
            EntryValue::Decision { .. } => "decision",
            EntryValue::Scan { .. } => "scan",
            EntryValue::Timer {} => "timer",
            EntryValue::Note { .. } => "note",
            EntryValue::Estimate(_) => "estimate",
            EntryValue::Authorization(_) => "authorization",
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

/// What an ohmmeter showed at a coil.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct CoilValue {
    /// Decimal text, or `OL` where the meter shows overload.
    pub shows: String,
    /// The unit of all resistances here as text.
    pub unit: String,
    /// What it shows with its leads held together, as decimal text. Absent: it was zeroed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub leads: Option<String>,
    /// The coil's temperature as decimal text.
    pub temperature: String,
    /// Its unit as text.
    pub temperature_unit: String,
    /// How far the meter may be off. Absent: it is not known, and the reading is judged as it stands.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub meter: Option<MeterError>,
}

/// What an ohmmeter showed at the coils of a list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct CoilsValue {
    /// Each coil once.
    pub readings: Vec<CoilShown>,
    /// The unit of all resistances here as text.
    pub unit: String,
    /// What the meter shows with its leads held together, as decimal text. Absent: it was zeroed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub leads: Option<String>,
    /// The temperature of all coils as decimal text.
    pub temperature: String,
    /// Its unit as text.
    pub temperature_unit: String,
    /// How far the meter may be off. Absent: it is not known, and the readings are judged as they stand.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub meter: Option<MeterError>,
}

/// What an ohmmeter showed at one coil of a list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct CoilShown {
    /// The coil's name on the sheet.
    pub coil: String,
    /// Decimal text, or `OL` where the meter shows overload.
    pub shows: String,
}

/// How far an ohmmeter may be off to both sides, as its manual gives it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct MeterError {
    /// Percent of the reading, as decimal text.
    pub percent: String,
    /// The last digits as a resistance, decimal text: 3 digits of a display with two decimals are `0.03`.
    pub digits: String,
}

/// A surface that was probed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Probed {
    /// What the probe shows, as decimal text.
    pub value: String,
    /// The unit of both temperatures as text.
    pub unit: String,
    /// With what it was read.
    pub by: ProbedBy,
    /// Temperature of the surroundings as decimal text. Absent: no time can be told, and infrared says nothing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ambient: Option<String>,
}

/// With what a surface was read.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ProbedBy {
    /// A contact probe.
    Contact,
    /// An infrared meter.
    Infrared {
        /// The emissivity that is set on it, as decimal text.
        set_to: String,
        /// What the surface is.
        surface: ProbedSurface,
    },
}

/// What a surface is, for an infrared meter.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum ProbedSurface {
    /// Matt paint, tape or a marker made for it.
    Coated,
    /// Oxidised steel or iron.
    Oxidised,
    /// Red rust.
    Rusty,
    /// Bare bright metal.
    Bright,
}

/// An adapter that reaches past the tool's drive.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Adapter {
    /// From the middle of the grip to the tool's drive, as decimal text.
    pub tool: String,
    /// From the drive to the bolt, as decimal text.
    pub length: String,
    /// The unit of both as text.
    pub unit: String,
    /// Degrees between adapter and tool, as decimal text: 0 straight on, 90 square to it.
    pub angle: String,
}

/// What somebody says and stands for: where pieces are that a count did not find, why a balance differs, why a tool was used
/// all the same, why a level can't be reached, why a decision is not what its table says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Accounted {
    /// What they say. Never empty.
    pub reason: String,
    /// Who says so.
    pub by: PersonId,
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
