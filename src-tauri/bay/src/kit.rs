//! What a shop has: people and torque tools, kept on the tablet; and whatever else a window wants to find again.

use panside_job::Actor;
pub use panside_job::value::Tool;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::{Bay, BayError};

/// Under which key the kit is kept.
const KIT: &str = "kit";

/// The shop's people and torque tools.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Kit {
    /// Who works here, by what they are.
    pub people: Vec<Actor>,
    /// The torque tools with their calibration.
    pub tools: Vec<Tool>,
}

impl Kit {
    /// Takes in those that it does not have, by name and role.
    pub fn add(&mut self, people: impl IntoIterator<Item = Actor>, tools: impl IntoIterator<Item = Tool>) {
        for person in people {
            if !self.people.contains(&person) {
                self.people.push(person);
            }
        }
        for tool in tools {
            if !self.tools.iter().any(|has| has.name == tool.name) {
                self.tools.push(tool);
            }
        }
    }
}

impl Bay {
    /// The shop's people and tools.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said, [`BayError::Json`] when the list is damaged.
    pub fn kit(&self) -> Result<Kit, BayError> {
        let kept = self.setting(KIT)?;
        kept.map_or_else(|| Ok(Kit::default()), |text| Ok(serde_json::from_str(&text)?))
    }

    /// Keeps the shop's people and tools.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said.
    pub fn put_kit(&mut self, kit: &Kit) -> Result<(), BayError> {
        self.put_setting(KIT, &serde_json::to_string(kit)?)
    }

    /// What is kept under a key of the tablet, such as which screen was open.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said.
    pub fn setting(&self, key: &str) -> Result<Option<String>, BayError> {
        Ok(self.store.setting(key)?)
    }

    /// Keeps a text under a key of the tablet.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said.
    pub fn put_setting(&mut self, key: &str, text: &str) -> Result<(), BayError> {
        Ok(self.store.put_setting(key, text)?)
    }
}
