//! The customer's answer: what was agreed to, by whom and how.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Kind, Listed, Read, SheetNeed, Wrong};

/// The amount was agreed to.
pub const AGREED: &str = "agreed";
/// The customer said no.
pub const DECLINED: &str = "declined";
/// An amount was agreed to that is less than the estimate says: the step is held.
pub const BELOW: &str = "below";
/// The customer was asked, and has not answered: the step is held.
pub const PENDING: &str = "pending";

/// What the customer answers, with the amount that it is for.
#[derive(Debug, Clone, Default, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskAuthorization")]
#[serde(deny_unknown_fields)]
pub struct Authorization {
    /// The estimate that is answered, as `step.entry`. Absent: the amount stands by itself.
    #[serde(default, rename = "for")]
    pub of: Option<String>,
    /// Who may have given it, to tap.
    #[serde(default)]
    pub given_by: Vec<String>,
}

impl Kind for Authorization {
    fn classes(&self) -> Vec<&str> {
        let below = self.of.is_some().then_some(BELOW);
        [AGREED, DECLINED, PENDING].into_iter().chain(below).collect()
    }

    fn holds(&self) -> &'static [&'static str] {
        &[PENDING, BELOW]
    }

    fn good(&self) -> Option<Vec<&str>> {
        Some(vec![AGREED])
    }

    fn planned(&self) -> Option<&'static str> {
        None
    }

    fn measures(&self) -> bool {
        false
    }

    fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        Vec::new()
    }

    fn reads(&self) -> Vec<Read<'_>> {
        self.of.iter().map(|entry| Read { entry, kind: "estimate", unit: None }).collect()
    }

    fn lists(&self) -> Vec<Listed> {
        Vec::new()
    }

    fn judges(&self) -> bool {
        true
    }

    fn answers(&self) -> bool {
        true
    }

    fn wrong(&self) -> Vec<Wrong> {
        Vec::new()
    }
}
