//! What a shop has: people and torque tools, kept on the tablet; and whatever else a window wants to find again.

use panside_job::clock::civil_date;
use panside_job::size;
pub use panside_job::tool::ToolView;
use panside_job::tool::judge;
pub use panside_job::value::Tool;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::people::{Person, told_apart};
use crate::{Bay, BayError};

/// Under which key the kit is kept.
const KIT: &str = "kit";

/// The shop's people and torque tools.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Kit {
    /// Who works here.
    pub people: Vec<Person>,
    /// The torque tools with their calibration.
    pub tools: Vec<Tool>,
}

impl Kit {
    /// Takes in those that it does not have: people by id, tools by name.
    pub fn add(&mut self, people: impl IntoIterator<Item = Person>, tools: impl IntoIterator<Item = Tool>) {
        for person in people {
            if self.person(person.id).is_err() {
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
    /// [`BayError::Refused`] for more or longer ones than are taken; [`BayError::Name`], [`BayError::LooksLike`] and
    /// [`BayError::PersonTwice`] for people who can't be told apart; [`BayError::Store`] with what the disk said.
    pub fn put_kit(&mut self, kit: &Kit) -> Result<(), BayError> {
        size::check(kit).map_err(|refusal| self.refused(refusal))?;
        told_apart(&kit.people)?;
        self.put_setting(KIT, &serde_json::to_string(kit)?)
    }

    /// What is to be said of each tool today.
    #[must_use]
    pub fn judge_tools(&self, tools: &[Tool], utc_offset_min: i32) -> Vec<ToolView> {
        let today = civil_date(self.clock.now().wall_ms, utc_offset_min);
        let judged = tools.iter().map(|tool| {
            let mut view = judge(&trimmed(tool), today);
            view.each_message(&mut |message| self.speaker.fill(message));
            view
        });
        judged.collect()
    }

    /// Keeps a tool, in place of the one called `replaces` or as a new one, and answers the kit.
    ///
    /// # Errors
    /// [`BayError::Tool`] with everything that is wrong, [`BayError::ToolThere`] when another one is called the same;
    /// [`BayError::Store`] with what the disk said.
    pub fn put_tool(
        &mut self,
        tool: Tool,
        replaces: Option<&str>,
        utc_offset_min: i32,
    ) -> Result<Kit, BayError> {
        let tool = trimmed(&tool);
        let view = self.judge_tools(std::slice::from_ref(&tool), utc_offset_min).remove(0);
        if !view.problems.is_empty() {
            return Err(BayError::Tool(view.problems.into_iter().map(|one| one.message.text).collect()));
        }
        let mut kit = self.kit()?;
        let named = |name: &str| kit.tools.iter().position(|one| one.name == name);
        let place = replaces.and_then(named);
        if named(&tool.name).is_some_and(|found| Some(found) != place) {
            return Err(BayError::ToolThere(tool.name));
        }
        match place {
            Some(place) => kit.tools[place] = tool,
            None => kit.tools.push(tool),
        }
        self.put_kit(&kit)?;
        Ok(kit)
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

/// A tool without spaces around what was typed; an empty field that may be absent is absent.
fn trimmed(tool: &Tool) -> Tool {
    let text = |text: &str| text.trim().to_owned();
    let optional = |typed: &Option<String>| typed.as_deref().map(text).filter(|text| !text.is_empty());
    Tool {
        name: text(&tool.name),
        min: text(&tool.min),
        max: text(&tool.max),
        unit: text(&tool.unit),
        class_percent: optional(&tool.class_percent),
        calibrated_on: optional(&tool.calibrated_on),
        certificate: optional(&tool.certificate),
        calibration_due: text(&tool.calibration_due),
    }
}
