//! The resistance of a coil, worked out at the temperature for which its limits stand.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Bound, Kind, Listed, Read, SheetNeed, Wrong};
use crate::format::sheet::ValueKind;

/// Within the sheet's limits, also with every error against it.
pub const INSIDE: &str = "inside";
/// Below or above the sheet's limits, whatever the errors.
pub const OUTSIDE: &str = "outside";
/// Open: the meter shows overload, or far more than the limits.
pub const OPEN: &str = "open";
/// Short: not to be told from the leads, or far less than the limits.
pub const SHORT: &str = "short";
/// A limit lies within the errors of meter and thermometer.
pub const UNCLEAR: &str = "unclear";
/// Every class of a coil.
pub const CLASSES: [&str; 5] = [INSIDE, OUTSIDE, OPEN, SHORT, UNCLEAR];

/// A coil's resistance with the coil's temperature, judged against a range of the sheet.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskCoil")]
#[serde(deny_unknown_fields)]
pub struct Coil {
    /// Sheet key of the range it must be in.
    pub limits: String,
    /// Sheet key of the temperature for which that range stands. Absent: 20 °C.
    #[serde(default)]
    pub at: Option<String>,
    /// What is wrong with it is what is looked for: the work goes on whatever it shows, and others judge by it.
    #[serde(default)]
    #[ts(skip)]
    pub evidence: bool,
}

impl Kind for Coil {
    fn classes(&self) -> Vec<&str> {
        CLASSES.to_vec()
    }

    fn holds(&self) -> &'static [&'static str] {
        &[]
    }

    fn good(&self) -> Option<Vec<&str>> {
        (!self.evidence).then(|| vec![INSIDE])
    }

    fn planned(&self) -> Option<&'static str> {
        None
    }

    fn measures(&self) -> bool {
        true
    }

    fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        let limits = SheetNeed {
            key: &self.limits,
            kind: ValueKind::Range,
            unit: Some("Ω"),
            how: Bound::Is,
            spare: false,
        };
        let at = self.at.as_deref().map(|key| SheetNeed {
            key,
            kind: ValueKind::Measure,
            unit: Some("°C"),
            how: Bound::At,
            spare: false,
        });
        std::iter::once(limits).chain(at).collect()
    }

    fn reads(&self) -> Vec<Read<'_>> {
        Vec::new()
    }

    fn lists(&self) -> Vec<Listed> {
        Vec::new()
    }

    fn judges(&self) -> bool {
        true
    }

    fn answers(&self) -> bool {
        false
    }

    fn wrong(&self) -> Vec<Wrong> {
        Vec::new()
    }
}
