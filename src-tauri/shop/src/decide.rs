//! What a person asks of the shop, and the event or the refusal that answers it.
//!
//! Whoever asks shows by `seen` which heads of the thing they looked at; if those are no longer all its heads, they look
//! again. So nobody settles what both sides did without having seen both sides.

mod people;

use std::collections::BTreeSet;

use panside_job::event::Pinned;
use panside_job::sheet::Typed;
use panside_job::value::Tool;
use panside_journal::{DeviceId, Hash, PersonId};
use panside_procedure::format::Role;

use crate::both::agree;
use crate::event::{
    ChecklistAdopted, DeviceNamed, PinSetBy, SheetKept, ShopEvent, ToolKept, ToolRemoved, ValueKept,
};
use crate::name::{self, Look};
use crate::refusal::ShopRefusal;
use crate::shop::{Shop, ShopHappened};
use crate::thing::{Thing, ToolId};

/// What a person asks for. `seen`: the hashes of the thing's heads that the screen was drawn from, none for a new thing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ShopCommand {
    /// Add a person. The first of a shop adds themself and is a lead.
    AddPerson {
        /// A new id.
        id: PersonId,
        /// As typed.
        name: String,
        /// At least one.
        roles: BTreeSet<Role>,
        /// Whether they are a lead.
        lead: bool,
    },
    /// Change a person's name, roles or lead, also of one who had left and is back.
    ChangePerson {
        /// Who.
        id: PersonId,
        /// The heads that were seen.
        seen: BTreeSet<Hash>,
        /// As typed.
        name: String,
        /// At least one.
        roles: BTreeSet<Role>,
        /// Whether they are a lead.
        lead: bool,
    },
    /// A person works here no more.
    RemovePerson {
        /// Who.
        id: PersonId,
        /// The heads that were seen.
        seen: BTreeSet<Hash>,
    },
    /// Note that a PIN was set. Whether the old one was right is known to who keeps the PINs.
    SetPin {
        /// Whose.
        person: PersonId,
        /// The heads that were seen.
        seen: BTreeSet<Hash>,
        /// Who vouched for it.
        how: PinSetBy,
    },
    /// Keep a torque tool: a new one, one that is otherwise than before, or one that was removed.
    KeepTool {
        /// Its id.
        id: ToolId,
        /// The heads that were seen.
        seen: BTreeSet<Hash>,
        /// The tool, judged by `panside_job::tool::judge`.
        tool: Box<Tool>,
    },
    /// Take a torque tool off the list.
    RemoveTool {
        /// Its id.
        id: ToolId,
        /// The heads that were seen.
        seen: BTreeSet<Hash>,
    },
    /// Keep a revision of a spec sheet: a new one, or one of those that both sides kept.
    KeepSheet {
        /// The revision.
        sheet: Pinned,
        /// The content that it was made from; nothing for one that was typed anew or came in as a file.
        made_from: Option<Hash>,
        /// The heads that were seen.
        seen: BTreeSet<Hash>,
    },
    /// Start jobs from this revision of a checklist from now on.
    AdoptChecklist {
        /// The revision, proved.
        checklist: Pinned,
        /// The heads that were seen.
        seen: BTreeSet<Hash>,
    },
    /// Keep a value for all vehicles, judged by `panside_job::sheet::judge_shop_value`.
    KeepValue {
        /// Its key on spec sheets.
        key: String,
        /// The heads that were seen.
        seen: BTreeSet<Hash>,
        /// What people read for the key.
        name: String,
        /// What it is.
        is: Typed,
        /// Where it comes from.
        source: String,
    },
    /// Give a device a name.
    NameDevice {
        /// The device.
        device: DeviceId,
        /// The heads that were seen.
        seen: BTreeSet<Hash>,
        /// As typed.
        name: String,
    },
}

impl Shop {
    /// The event that a command leads to.
    ///
    /// # Errors
    /// The [`ShopRefusal`] that says why there is none and what to do.
    pub fn decide(&self, command: &ShopCommand, who: &PersonId) -> Result<ShopEvent, ShopRefusal> {
        let people = self.people();
        if !people.contains_key(who) && !people.is_empty() {
            return Err(ShopRefusal::WhoUnknown);
        }
        if people.is_empty() && !matches!(command, ShopCommand::AddPerson { id, .. } if id == who) {
            return Err(ShopRefusal::NobodyYet);
        }
        match command {
            ShopCommand::AddPerson { id, name, roles, lead } => {
                self.add_person(id, (name, roles, *lead), who)
            }
            ShopCommand::ChangePerson { id, seen, name, roles, lead } => {
                self.change_person(id, seen, (name, roles, *lead), who)
            }
            ShopCommand::RemovePerson { id, seen } => self.remove_person(id, seen, who),
            ShopCommand::SetPin { person, seen, how } => self.set_pin(person, seen, how, who),
            ShopCommand::KeepTool { id, seen, tool } => self.keep_tool(*id, seen, tool),
            ShopCommand::RemoveTool { id, seen } => self.remove_tool(*id, seen),
            ShopCommand::KeepSheet { sheet, made_from, seen } => self.keep_sheet(sheet, *made_from, seen),
            ShopCommand::AdoptChecklist { checklist, seen } => self.adopt_checklist(checklist, seen),
            ShopCommand::KeepValue { key, seen, name, is, source } => {
                self.seen(&Thing::Value(key.clone()), seen)?;
                let (key, name) = (key.clone(), name.clone());
                let source = source.trim().to_owned();
                self.changed_by(ValueKept { key, name, is: is.clone(), source, from: seen.clone() }.into())
            }
            ShopCommand::NameDevice { device, seen, name } => {
                let thing = Thing::Device(*device);
                self.seen(&thing, seen)?;
                let name = self.told_apart(&thing, name::of_thing(name)?)?;
                self.changed_by(DeviceNamed { device: *device, name, from: seen.clone() }.into())
            }
        }
    }

    /// The lowest number that a new revision of a spec sheet may have.
    #[must_use]
    pub fn next_revision(&self, sheet: &str) -> u32 {
        self.newest_revision(sheet).map_or(1, |newest| newest.saturating_add(1))
    }

    fn keep_tool(&self, id: ToolId, seen: &BTreeSet<Hash>, tool: &Tool) -> Result<ShopEvent, ShopRefusal> {
        let thing = Thing::Tool(id);
        self.seen(&thing, seen)?;
        let name = self.told_apart(&thing, name::of_thing(&tool.name)?)?;
        self.changed_by(ToolKept { id, tool: Tool { name, ..tool.clone() }, from: seen.clone() }.into())
    }

    fn remove_tool(&self, id: ToolId, seen: &BTreeSet<Hash>) -> Result<ShopEvent, ShopRefusal> {
        let thing = Thing::Tool(id);
        if !self.tools().contains_key(&id) {
            return Err(ShopRefusal::NotHere(thing));
        }
        self.seen(&thing, seen)?;
        Ok(ToolRemoved { id, from: seen.clone() }.into())
    }

    fn keep_sheet(
        &self,
        sheet: &Pinned,
        made_from: Option<Hash>,
        seen: &BTreeSet<Hash>,
    ) -> Result<ShopEvent, ShopRefusal> {
        let thing = Thing::Sheet(sheet.id.clone());
        self.seen(&thing, seen)?;
        let known = |hash: Hash| self.sheet_events(&sheet.id).any(|body| body.sheet.hash == hash);
        let chosen = self.sheet_heads(&sheet.id).any(|head| head.sheet == *sheet);
        if let Some(newest) = self.newest_revision(&sheet.id) {
            let Pinned { id, revision, hash: _ } = sheet.clone();
            if revision <= newest && !chosen {
                return Err(ShopRefusal::SheetOlder { id, revision, newest });
            }
            if made_from.is_some_and(|hash| !known(hash)) {
                return Err(ShopRefusal::SheetBase { id });
            }
        }
        self.changed_by(SheetKept { sheet: sheet.clone(), made_from, from: seen.clone() }.into())
    }

    /// An older revision may be adopted again, but no other text under the number of one.
    fn adopt_checklist(&self, checklist: &Pinned, seen: &BTreeSet<Hash>) -> Result<ShopEvent, ShopRefusal> {
        let thing = Thing::Checklist(checklist.id.clone());
        self.seen(&thing, seen)?;
        let before = |happened: &&ShopHappened| match &happened.event {
            ShopEvent::ChecklistAdopted(body) => Some(body.checklist.clone()),
            _ => None,
        };
        let history = self.history(&thing);
        let adopted: Vec<Pinned> = history.iter().filter_map(before).collect();
        let known = adopted.contains(checklist);
        if !known && adopted.iter().any(|one| one.revision == checklist.revision) {
            let Pinned { id, revision, .. } = checklist.clone();
            return Err(ShopRefusal::ChecklistRevision { id, revision });
        }
        self.changed_by(ChecklistAdopted { checklist: checklist.clone(), from: seen.clone() }.into())
    }

    fn newest_revision(&self, sheet: &str) -> Option<u32> {
        self.sheet_events(sheet).map(|body| body.sheet.revision).max()
    }

    fn sheet_events(&self, sheet: &str) -> impl Iterator<Item = &SheetKept> {
        kept(self.history(&Thing::Sheet(sheet.to_owned())))
    }

    fn sheet_heads(&self, sheet: &str) -> impl Iterator<Item = &SheetKept> {
        kept(self.heads(&Thing::Sheet(sheet.to_owned())))
    }

    /// Refuses a change by somebody who didn't see all heads of the thing as it stands.
    fn seen(&self, thing: &Thing, seen: &BTreeSet<Hash>) -> Result<(), ShopRefusal> {
        let heads: BTreeSet<Hash> = self.heads(thing).iter().map(|head| head.hash).collect();
        if heads == *seen {
            return Ok(());
        }
        let thing = thing.clone();
        Err(if heads.is_empty() { ShopRefusal::NotHere(thing) } else { ShopRefusal::ChangedMeanwhile(thing) })
    }

    /// The name, if it can be told from those of all other things of its kind. One that the thing has already is not
    /// refused: two devices may have added both, and then roles and calibrations still have to be kept.
    fn told_apart(&self, thing: &Thing, name: String) -> Result<String, ShopRefusal> {
        if self.heads(thing).iter().any(|head| head.event.name() == Some(&name)) {
            return Ok(name);
        }
        let look = Look::of(&name);
        if let Thing::Person(id) = thing {
            // A name that was signed with stays the name of who signed with it.
            let mut left = self.left().into_values().filter(|one| one.id != *id);
            if let Some(before) = left.find(|one| Look::of(&one.name).is_like(&look)) {
                return Err(ShopRefusal::LooksLikeLeft { name, existing: before.name });
            }
        }
        for other in self.shown() {
            let of = other.event.thing();
            if let Some(existing) = other.event.name()
                && of != *thing
                && of.is_of_kind(thing)
                && Look::of(existing).is_like(&look)
            {
                return Err(ShopRefusal::LooksLike { name, existing: existing.to_owned(), thing: of });
            }
        }
        Ok(name)
    }

    /// The event, if it changes something: the state, or that there are two sides.
    fn changed_by(&self, event: ShopEvent) -> Result<ShopEvent, ShopRefusal> {
        let thing = event.thing();
        let heads = self.heads(&thing);
        let same = heads.first().is_some_and(|head| head.said() == event.said(head.hash));
        if same && agree(&heads) { Err(ShopRefusal::Unchanged(thing)) } else { Ok(event) }
    }
}

/// The revisions that these events of a sheet kept.
fn kept(events: Vec<&ShopHappened>) -> impl Iterator<Item = &SheetKept> {
    events.into_iter().filter_map(|happened| match &happened.event {
        ShopEvent::SheetKept(body) => Some(body),
        _ => None,
    })
}
