//! The record as one document, format `panside-record/1`.

mod make;

use std::collections::BTreeMap;

use panside_job::event::Pinned;
use panside_job::figures::Figure;
use panside_journal::Hash;
use panside_messages::clean::json;
use panside_procedure::format::Signal;
use serde::{Deserialize, Serialize};

use crate::account::{Account, Authorized, Codes};
use crate::bill::{FluidUsed, Parts};
use crate::by::By;
use crate::day::Track;
use crate::departures::{ByName, ClockSet, Explained, Observed, Restarted, VehicleAction, Voided};
use crate::error::RecordError;
use crate::inputs::ProofSummary;
use crate::items::Tally;
use crate::measured::{Chart, Level, Photo, Torque};
use crate::missing::Missing;
use crate::money::Money;
use crate::signs::SignOff;
use crate::steps::Phase;
use crate::time::Time;
use crate::turned_up::TurnedUp;

/// The value of `format` in a record.
pub const RECORD_FORMAT: &str = "panside-record/1";
/// The finished record of one job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Document {
    /// Always `panside-record/1`.
    pub format: String,
    /// What the job is: the checklist's title.
    pub title: String,
    /// The demo mark, where checklist or sheet is invented.
    pub demo: Option<String>,
    /// Stands on every page of a record that is made from data with something wrong.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub damaged_mark: Option<String>,
    /// What was found wrong with the data that the record is made from. Empty for data in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub damaged: Vec<String>,
    /// The job's id.
    pub job: String,
    /// When the record was made, UTC.
    pub generated_utc: String,
    /// The same by the shop's clock.
    pub generated_local: String,
    /// The vehicle.
    pub vehicle: Vehicle,
    /// When the job started, and by whom. Nothing for a job without a start.
    pub started: Option<By>,
    /// How it ended.
    pub end: End,
    /// Everybody who made an event, in the order in which they first did.
    pub people: Vec<String>,
    /// Checklist and sheet. Nothing for a job without a start.
    pub papers: Option<Papers>,
    /// Concern, cause and correction.
    pub account: Account,
    /// What the customer agreed to.
    pub authorized: Vec<Authorized>,
    /// Estimates, and the amounts that were agreed to. Absent in records from before there were any.
    #[serde(default, skip_serializing_if = "Money::is_empty")]
    pub money: Money,
    /// What turned up outside of what the checklist foresaw.
    #[serde(default, skip_serializing_if = "TurnedUp::is_empty")]
    pub turned_up: TurnedUp,
    /// New parts.
    pub parts: Parts,
    /// Fluid filled and drained.
    pub fluid: FluidUsed,
    /// Time.
    pub time: Time,
    /// What the job lacks.
    pub missing: Vec<Missing>,
    /// Dangers that hold now.
    pub dangers: Vec<DangerNow>,
    /// Codes as read, and what was said of them.
    pub codes: Vec<Codes>,
    /// Every entry, by phase and step.
    pub phases: Vec<Phase>,
    /// Every vehicle action.
    pub vehicle_actions: Vec<VehicleAction>,
    /// How high the vehicle was and whether its engine ran, over the job.
    pub day: Vec<Track>,
    /// Level readings.
    pub levels: Vec<Level>,
    /// The sheet's level charts.
    pub charts: Vec<Chart>,
    /// What was measured, as drawings with their sentences. Absent in records from before there were any.
    #[serde(default)]
    pub figures: Vec<Figure>,
    /// Torque as clicked.
    pub torques: Vec<Torque>,
    /// Sign-offs, with every time given.
    pub sign_offs: Vec<SignOff>,
    /// What came off and what went on again.
    pub tally: Tally,
    /// Photos.
    pub photos: Vec<Photo>,
    /// What was voided.
    pub voided: Vec<Voided>,
    /// What was skipped.
    pub skipped: Vec<Explained>,
    /// What was missed, with the explanation.
    pub missed: Vec<Explained>,
    /// What passed by a reason and a name: a tool excepted, a balance explained, a level given up.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub by_name: Vec<ByName>,
    /// When the vehicle was not as shown.
    pub observed: Vec<Observed>,
    /// When the wall clock was set.
    pub clock_set: Vec<ClockSet>,
    /// When the tablet was restarted.
    pub restarted: Vec<Restarted>,
    /// Where the record and today's rules, or two counts of the same, differ. The record was kept as it is.
    pub disagreements: Vec<String>,
    /// What was proved and what is taken for granted.
    pub proof: Proof,
    /// The journal behind the record.
    pub journal: Journal,
    /// What comes first.
    pub come_first: String,
}

/// The vehicle and its repair order.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Vehicle {
    /// Number of the repair order, as the shop writes it.
    pub repair_order: String,
    /// What the job is called in the list of jobs.
    pub label: String,
    /// Vehicle identification number as read, where the checklist asks for it.
    pub vin: Option<String>,
    /// Its plate, where the checklist asks for it.
    pub plate: Option<String>,
    /// Its engine, where the checklist asks for it.
    pub engine: Option<String>,
    /// Odometer as typed, where the checklist asks for it.
    pub odometer: Option<String>,
    /// Odometer as it left, as typed, where it was read again.
    pub odometer_out: Option<String>,
    /// How it came in: every condition with its value.
    pub came_in: BTreeMap<String, String>,
    /// How it stands now, or stood when the job ended: every condition with its value.
    pub stands: BTreeMap<String, String>,
    /// What stands otherwise than it came in, as people call it.
    pub changed: Vec<String>,
}

/// The files that the job goes by.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Papers {
    /// The checklist, by hash.
    pub checklist: Pinned,
    /// The spec sheet, by hash.
    pub sheet: Pinned,
    /// Which vehicles the sheet is for.
    pub sheet_title: String,
}

/// How a job ended.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "how", rename_all = "snake_case", deny_unknown_fields)]
pub enum End {
    /// It is still open.
    Open,
    /// It is still open and ends by stop and call.
    Ending,
    /// It was finished.
    Finished {
        /// By whom and when.
        by: By,
    },
    /// It was stopped before its end.
    Stopped {
        /// By whom and when.
        by: By,
        /// Why.
        reason: String,
    },
}

/// A danger that holds.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DangerNow {
    /// Its id.
    pub id: String,
    /// The signal word.
    pub signal: Signal,
    /// What it does and the way back to safe.
    pub text: String,
}

/// What was proved.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Proof {
    /// The proof. Nothing: none came with this record.
    pub summary: Option<ProofSummary>,
    /// It is of the checklist that the job goes by.
    pub of_this_checklist: bool,
    /// What a proof covers.
    pub covers: String,
}

/// The journal behind the record: a witness of its newest event.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Journal {
    /// Events of the job.
    pub events: u64,
    /// Hash of the newest one.
    pub head: Hash,
    /// What a chain shows and what not.
    pub shows: String,
}

impl Document {
    /// What stands on every page: that values are invented, that data is damaged; empty for most records.
    #[must_use]
    pub fn mark(&self) -> String {
        self.demo.iter().chain(&self.damaged_mark).map(String::as_str).collect::<Vec<_>>().join("; ")
    }

    /// The document as indented JSON, members always in the same order, with a line break at the end.
    ///
    /// # Errors
    /// [`RecordError::Unwritable`] when the JSON writer fails.
    pub fn to_json(&self) -> Result<Vec<u8>, RecordError> {
        let repair_order = || self.vehicle.repair_order.clone();
        let text = serde_json::to_string_pretty(self)
            .map_err(|source| RecordError::Unwritable { repair_order: repair_order(), source })?;
        Ok((json(&text) + "\n").into_bytes())
    }
}
