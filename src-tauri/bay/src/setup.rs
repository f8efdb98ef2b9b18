//! What a shop has, as its setup screen shows it: people, torque tools, this device; and whatever else a window wants to
//! find again.

use std::collections::{BTreeMap, BTreeSet};

use panside_job::clock::civil_date;
use panside_job::size;
pub use panside_job::tool::ToolView;
use panside_job::tool::judge;
pub use panside_job::value::Tool;
use panside_journal::{DeviceId, Hash, PersonId};
pub use panside_shop::ToolId;
use panside_shop::{ShopCommand, Thing};
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

use crate::people::Person;
use crate::shop::hashes;
use crate::{Bay, BayError};

/// The shop's people and torque tools, and the device that shows them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Setup {
    /// Who works here.
    pub people: Vec<Person>,
    /// Who worked here before.
    pub left: Vec<Person>,
    /// The torque tools with their calibration.
    pub tools: Vec<SetupTool>,
    /// Torque tools that were taken off the list, such as one that is away for calibration.
    pub tools_off: Vec<SetupTool>,
    /// This device.
    pub device: Device,
    /// By the id of a person, tool or device: the newest events about it that this shows. A change names them, so that
    /// one that came meanwhile is noticed.
    pub seen: BTreeMap<String, BTreeSet<Hash>>,
    /// What devices wrote without knowing of each other and somebody has to settle, as sentences.
    pub unsettled: Vec<String>,
}

/// A torque tool of the shop.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct SetupTool {
    /// Stays when its name changes.
    pub id: ToolId,
    /// The tool.
    pub tool: Tool,
}

/// A device of the shop.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Device {
    /// Its id.
    pub id: DeviceId,
    /// What it is called; nothing yet.
    pub name: Option<String>,
}

/// A torque tool as typed.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct TypedTool {
    /// Which tool it changes or puts back on the list; nothing for a new one.
    pub id: Option<ToolId>,
    /// What [`Setup::seen`] has of it; nothing for a new one.
    pub seen: BTreeSet<Hash>,
    /// The tool.
    pub tool: Tool,
}

/// A torque tool that was kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct KeptTool {
    /// Which it is.
    pub id: ToolId,
    /// The shop setup with it.
    pub setup: Setup,
}

impl Setup {
    /// What a change of a person, tool or device names as seen.
    #[must_use]
    pub fn seen(&self, id: Uuid) -> BTreeSet<Hash> {
        self.seen.get(&id.to_string()).cloned().unwrap_or_default()
    }
}

impl Bay {
    /// The shop's people and tools.
    ///
    /// # Errors
    /// [`BayError::Store`] when what is written about the shop does not hold, or with what the disk said.
    pub fn setup(&self) -> Result<Setup, BayError> {
        let shop = self.shop()?;
        let tool = |(id, tool)| SetupTool { id, tool };
        let mut setup = Setup {
            people: shop.people().into_values().collect(),
            left: shop.left().into_values().collect(),
            tools: shop.tools().into_iter().map(|(id, one)| tool((id, one.clone()))).collect(),
            tools_off: shop.tools_off().into_iter().map(tool).collect(),
            device: self.this_device(&shop),
            seen: BTreeMap::new(),
            unsettled: shop.unsettled().iter().map(|one| self.speaker.say(one)).collect(),
        };
        let people = setup.people.iter().chain(&setup.left).map(|one| (one.id.0, Thing::Person(one.id)));
        let tools = setup.tools.iter().chain(&setup.tools_off).map(|one| (one.id.0, Thing::Tool(one.id)));
        let device = (setup.device.id.0, Thing::Device(setup.device.id));
        let things = people.chain(tools).chain([device]);
        setup.seen = things.map(|(id, thing)| (id.to_string(), hashes(&shop, &thing))).collect();
        Ok(setup)
    }

    fn this_device(&self, shop: &panside_shop::Shop) -> Device {
        let id = self.store.device();
        Device { id, name: shop.devices().get(&id).map(|name| (*name).to_owned()) }
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

    /// Keeps a tool that `who` typed, new, changed or back on the list, and answers which it is, with the shop setup.
    ///
    /// # Errors
    /// [`BayError::Tool`] with everything that is wrong with it, [`BayError::Shop`] when another one has a name like it,
    /// when it was changed meanwhile, or for somebody who is not of the shop; [`BayError::Refused`] for more or longer
    /// ones than are taken; [`BayError::Store`] with what the disk said.
    pub fn put_tool(
        &mut self,
        typed: TypedTool,
        who: Option<PersonId>,
        utc_offset_min: i32,
    ) -> Result<KeptTool, BayError> {
        let tool = trimmed(&typed.tool);
        let view = self.judge_tools(std::slice::from_ref(&tool), utc_offset_min).remove(0);
        if !view.problems.is_empty() {
            return Err(BayError::Tool(view.problems.into_iter().map(|one| one.message).collect()));
        }
        let id = typed.id.unwrap_or_else(|| ToolId(Uuid::now_v7()));
        let setup = self.setup()?;
        self.within_bounds(&tool, setup.tools.len() + setup.tools_off.len(), typed.id.is_none())?;
        let command = ShopCommand::KeepTool { id, seen: typed.seen, tool: Box::new(tool) };
        self.change_shop(one_of_the_shop(who)?, &command, &[])?;
        Ok(KeptTool { id, setup: self.setup()? })
    }

    /// Takes a tool off the list, and answers the shop setup.
    ///
    /// # Errors
    /// [`BayError::Shop`] when it isn't on the list or was changed meanwhile; [`BayError::Store`] with what the disk said.
    pub fn remove_tool(
        &mut self,
        id: ToolId,
        seen: BTreeSet<Hash>,
        who: Option<PersonId>,
    ) -> Result<Setup, BayError> {
        self.change_shop(one_of_the_shop(who)?, &ShopCommand::RemoveTool { id, seen }, &[])?;
        self.setup()
    }

    /// Gives this device a name, and answers the shop setup.
    ///
    /// # Errors
    /// [`BayError::Shop`] for what is no name or like another device's, or when it was changed meanwhile;
    /// [`BayError::Store`] with what the disk said.
    pub fn name_device(
        &mut self,
        name: String,
        seen: BTreeSet<Hash>,
        who: Option<PersonId>,
    ) -> Result<Setup, BayError> {
        size::check(&name)?;
        let command = ShopCommand::NameDevice { device: self.store.device(), seen, name };
        self.change_shop(one_of_the_shop(who)?, &command, &[])?;
        self.setup()
    }

    /// Takes in people and tools that come with something else, such as a script: people by their ids, tools by their
    /// names. Those who are here already stay as they are. In a shop without people the first lead among them, else the
    /// first, adds themself and then the others.
    ///
    /// # Errors
    /// [`BayError::Shop`] when the shop has people and none of these is one of them, or a name is like another;
    /// [`BayError::Refused`] for more or longer ones than are taken; [`BayError::Store`] with what the disk said.
    pub fn take_in(&mut self, people: &[Person], tools: &[Tool]) -> Result<Setup, BayError> {
        let add = |one: &Person| ShopCommand::AddPerson {
            id: one.id,
            name: one.name.clone(),
            roles: one.roles.clone(),
            lead: one.lead,
        };
        size::check(&(people, tools))?;
        if self.shop()?.people().is_empty()
            && let Some(first) = people.iter().find(|one| one.lead).or(people.first())
        {
            self.change_shop(first.id, &add(first), &[])?;
        }
        let here = self.shop()?.people();
        let known = || people.iter().filter_map(|one| here.get(&one.id));
        let who = known().find(|one| one.lead).or_else(|| known().next()).map(|one| one.id);
        for person in people.iter().filter(|one| !here.contains_key(&one.id)) {
            self.change_shop(one_of_the_shop(who)?, &add(person), &[])?;
        }
        for tool in tools {
            let tool = trimmed(tool);
            if !self.shop()?.tools().values().any(|has| has.name == tool.name) {
                let id = ToolId(Uuid::now_v7());
                let command = ShopCommand::KeepTool { id, seen: BTreeSet::new(), tool: Box::new(tool) };
                self.change_shop(one_of_the_shop(who)?, &command, &[])?;
            }
        }
        self.setup()
    }

    /// Sees that what is typed is no longer than is taken and, where it is new, that there is room for one more beside
    /// the `there`.
    pub(crate) fn within_bounds<T: Serialize>(
        &self,
        typed: &T,
        there: usize,
        new: bool,
    ) -> Result<(), BayError> {
        let counted = vec![(); if new { there + 1 } else { 0 }];
        Ok(size::check(typed).and_then(|()| size::check(&counted))?)
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

/// Who changes the shop; where nobody has said who works, nobody does.
pub(crate) fn one_of_the_shop(who: Option<PersonId>) -> Result<PersonId, BayError> {
    who.ok_or_else(|| panside_shop::ShopRefusal::WhoUnknown.into())
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
