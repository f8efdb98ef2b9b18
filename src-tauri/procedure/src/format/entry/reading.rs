//! A measured value: temperature, voltage, resistance, volume.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Bound, Kind, Listed, Read, SheetNeed, Wrong};
use crate::format::sheet::ValueKind;

/// No limits are given: the value is taken down.
pub const READ: &str = "read";
/// Within the sheet's limits.
pub const INSIDE: &str = "inside";
/// Not within the sheet's limits.
pub const OUTSIDE: &str = "outside";

/// A value with its unit, judged against at most one limit of the spec sheet.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskReading")]
#[serde(deny_unknown_fields)]
pub struct Reading {
    /// The unit it is asked in (`°C`, `V`, `Ω`, `L`, `km`, …). Others of the same quantity are converted.
    pub unit: String,
    /// Sheet key of a measure it must not be above.
    #[serde(default)]
    pub at_most: Option<String>,
    /// Sheet key of a measure it must not be below.
    #[serde(default)]
    pub at_least: Option<String>,
    /// Sheet key of a range it must be in.
    #[serde(default)]
    pub within: Option<String>,
    /// The limit is there to judge the vehicle by: a value outside of it is taken down like any other. Without this a
    /// value outside must hold the step, end the job or change something.
    #[serde(default)]
    #[ts(skip)]
    pub evidence: bool,
}

impl Reading {
    /// Whether there is a limit to judge by.
    #[must_use]
    pub fn is_judged(&self) -> bool {
        self.at_most.is_some() || self.at_least.is_some() || self.within.is_some()
    }
}

impl Kind for Reading {
    fn classes(&self) -> Vec<&str> {
        if self.is_judged() { vec![INSIDE, OUTSIDE] } else { vec![READ] }
    }

    fn holds(&self) -> &'static [&'static str] {
        &[]
    }

    fn good(&self) -> Option<Vec<&str>> {
        (self.is_judged() && !self.evidence).then(|| vec![INSIDE])
    }

    fn planned(&self) -> Option<&'static str> {
        None
    }

    fn measures(&self) -> bool {
        true
    }

    fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        let unit = Some(self.unit.as_str());
        let measure = |key, how| SheetNeed { key, kind: ValueKind::Measure, unit, how, spare: false };
        let mut needs: Vec<_> = [(&self.at_most, Bound::AtMost), (&self.at_least, Bound::AtLeast)]
            .into_iter()
            .filter_map(|(key, how)| Some(measure(key.as_deref()?, how)))
            .collect();
        if let Some(key) = &self.within {
            needs.push(SheetNeed { key, kind: ValueKind::Range, unit, how: Bound::Is, spare: false });
        }
        needs
    }

    fn reads(&self) -> Vec<Read<'_>> {
        Vec::new()
    }

    fn lists(&self) -> Vec<Listed> {
        Vec::new()
    }

    fn judges(&self) -> bool {
        self.is_judged()
    }

    fn answers(&self) -> bool {
        false
    }

    fn wrong(&self) -> Vec<Wrong> {
        Vec::new()
    }
}
