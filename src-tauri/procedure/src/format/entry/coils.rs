//! The coils of all solenoids at one connector, each judged by its own limits.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Bound, Kind, Listed, Read, SheetNeed, Wrong};
use crate::format::sheet::ValueKind;

/// Every coil that was measured is within its limits, also with every error against it.
pub const INSIDE: &str = "inside";
/// One coil is outside its limits, open or short.
pub const ONE: &str = "one";
/// More than one is.
pub const SEVERAL: &str = "several";
/// None is out for sure, and a limit of one at least lies within the errors of meter and thermometer.
pub const UNCLEAR: &str = "unclear";

/// The resistances of the coils that the spec sheet lists, at one temperature.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskCoils")]
#[serde(deny_unknown_fields)]
pub struct Coils {
    /// Sheet key of the list of coils.
    pub of: String,
    /// Sheet key of the temperature for which their limits stand. Absent: 20 °C.
    #[serde(default)]
    pub at: Option<String>,
    /// One coil is enough, such as that of a new solenoid; else each of the list is measured.
    #[serde(default)]
    pub some: bool,
    /// What is wrong with them is what is looked for: the work goes on whatever they show, and others judge by it.
    #[serde(default)]
    #[ts(skip)]
    pub evidence: bool,
}

impl Kind for Coils {
    fn classes(&self) -> Vec<&str> {
        vec![INSIDE, ONE, SEVERAL, UNCLEAR]
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
        let list = SheetNeed {
            key: &self.of,
            kind: ValueKind::Coils,
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
        std::iter::once(list).chain(at).collect()
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
