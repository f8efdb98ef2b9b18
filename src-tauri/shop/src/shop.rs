//! The shop, folded from its events.
//!
//! A [`Shop`] keeps every event once, by its hash, under the thing that it is about; all else is read off that set. So
//! the order in which events come, how often, and in which portions, can't make a difference.

use std::collections::{BTreeMap, BTreeSet};

use panside_job::value::Tool;
use panside_journal::{DeviceId, Hash, PersonId, Stamp};

use crate::event::{ChecklistAdopted, SheetKept, ShopEvent, ValueKept};
use crate::thing::{Person, Said, Thing, ToolId};

/// An event with what the journal says about it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ShopHappened {
    /// The event's hash. It covers the body and with it `from`, so that no event can be among those that it replaces,
    /// directly or by way of others.
    pub hash: Hash,
    /// The device that wrote it.
    pub device: DeviceId,
    /// Its place in that device's chain.
    pub seq: u64,
    /// When, by that device's clocks.
    pub stamp: Stamp,
    /// Who did it.
    pub who: PersonId,
    /// What happened.
    pub event: ShopEvent,
}

impl ShopHappened {
    /// What it says about its thing, piece by piece.
    #[must_use]
    pub fn said(&self) -> BTreeSet<Said> {
        self.event.said(self.hash)
    }

    /// Which of several heads is shown: the greatest. What is there goes before what was removed, so that nothing is
    /// lost from sight; then the later by its device's wall clock, which people would expect though a clock can be set
    /// wrong; then the greater hash, which is as good as a coin and falls the same on every device.
    fn rank(&self) -> (bool, i64, Hash) {
        let (wall_ms, hash) = self.told_at();
        (!self.event.removes(), wall_ms, hash)
    }

    fn told_at(&self) -> (i64, Hash) {
        (self.stamp.wall_ms, self.hash)
    }
}

/// All that is known of one thing.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
struct Register {
    events: BTreeMap<Hash, ShopHappened>,
    /// Named by the `from` of an event of this thing; not all of them need be here.
    replaced: BTreeSet<Hash>,
}

impl Register {
    /// Events that no other replaces, the one that is shown first.
    fn heads(&self) -> Vec<&ShopHappened> {
        let heads = self.events.values().filter(|happened| !self.replaced.contains(&happened.hash));
        let mut heads: Vec<_> = heads.collect();
        heads.sort_by_key(|happened| std::cmp::Reverse(happened.rank()));
        heads
    }
}

/// A value that the shop has for all its vehicles.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OfShop<'a> {
    /// What it is.
    pub body: &'a ValueKept,
    /// Who kept it.
    pub who: PersonId,
    /// When, by the wall clock of their device.
    pub wall_ms: i64,
}

/// The shop.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Shop {
    things: BTreeMap<Thing, Register>,
}

impl Shop {
    /// The shop after these events, of any devices, in any order, each any number of times.
    #[must_use]
    pub fn fold(events: impl IntoIterator<Item = ShopHappened>) -> Shop {
        let mut shop = Shop::default();
        events.into_iter().for_each(|happened| shop.take(happened));
        shop
    }

    /// Takes in one more event. One that is known already changes nothing.
    pub fn take(&mut self, happened: ShopHappened) {
        let register = self.things.entry(happened.event.thing()).or_default();
        register.replaced.extend(happened.event.replaces());
        register.events.insert(happened.hash, happened);
    }

    /// The shop's people: the roster that a job's signatures are held against.
    ///
    /// There is always a lead where there are people. Two devices may each take the lead from one of the last two, so
    /// that nobody is left; then [`Shop::stand_in_lead`] is shown as the lead until somebody is made one.
    #[must_use]
    pub fn people(&self) -> BTreeMap<PersonId, Person> {
        let mut people = self.people_as_written();
        if let Some(person) = self.stand_in_lead().and_then(|id| people.get_mut(id)) {
            person.lead = true;
        }
        people
    }

    /// Who counts as the lead although the events leave none: the person of whom it was last written, by wall clock and
    /// hash, that they are a lead. Nobody while there is a lead.
    #[must_use]
    pub fn stand_in_lead(&self) -> Option<&PersonId> {
        let here = self.people_as_written();
        if here.values().any(|person| person.lead) {
            return None;
        }
        let events = self.things.values().flat_map(|register| register.events.values());
        let people = events.filter_map(|happened| Some((happened.event.person()?, happened.told_at())));
        let people = people.filter(|(person, _)| here.contains_key(&person.id));
        people.max_by_key(|(person, told_at)| (person.lead, *told_at)).map(|(person, _)| &person.id)
    }

    fn people_as_written(&self) -> BTreeMap<PersonId, Person> {
        let people = self.shown().filter_map(|happened| happened.event.person());
        people.map(|person| (person.id.to_owned(), person.clone())).collect()
    }

    /// The people who work here no more, as they were last.
    #[must_use]
    pub fn left(&self) -> BTreeMap<PersonId, Person> {
        let left = self.last_before_removed(|event| event.person().cloned());
        left.into_iter().map(|person| (person.id, Person { lead: false, ..person })).collect()
    }

    /// The torque tools that were taken off the list, as they were last.
    #[must_use]
    pub fn tools_off(&self) -> BTreeMap<ToolId, Tool> {
        let tool = |event: &ShopEvent| match event {
            ShopEvent::ToolKept(body) => Some((body.id, body.tool.clone())),
            _ => None,
        };
        self.last_before_removed(tool).into_iter().collect()
    }

    /// What was last said of each thing that is off the shop's list.
    fn last_before_removed<T>(&self, said: impl Fn(&ShopEvent) -> Option<T>) -> Vec<T> {
        let removed = self.shown().filter(|happened| happened.event.removes());
        let last = removed.filter_map(|happened| {
            self.history(&happened.event.thing()).into_iter().rev().find_map(|before| said(&before.event))
        });
        last.collect()
    }

    /// The torque tools on the list.
    #[must_use]
    pub fn tools(&self) -> BTreeMap<ToolId, &Tool> {
        let kept = self.shown().filter_map(|happened| match &happened.event {
            ShopEvent::ToolKept(body) => Some((body.id, &body.tool)),
            _ => None,
        });
        kept.collect()
    }

    /// The revision of each spec sheet that jobs are started with, by the sheet's id.
    #[must_use]
    pub fn sheets(&self) -> BTreeMap<&str, &SheetKept> {
        let kept = self.shown().filter_map(|happened| match &happened.event {
            ShopEvent::SheetKept(body) => Some((body.sheet.id.as_str(), body)),
            _ => None,
        });
        kept.collect()
    }

    /// The adopted revision of each checklist, by the checklist's id.
    #[must_use]
    pub fn checklists(&self) -> BTreeMap<&str, &ChecklistAdopted> {
        let adopted = self.shown().filter_map(|happened| match &happened.event {
            ShopEvent::ChecklistAdopted(body) => Some((body.checklist.id.as_str(), body)),
            _ => None,
        });
        adopted.collect()
    }

    /// The values for all vehicles, by key.
    #[must_use]
    pub fn values(&self) -> BTreeMap<&str, OfShop<'_>> {
        let kept = self.shown().filter_map(|happened| match &happened.event {
            ShopEvent::ValueKept(body) => {
                let kept = OfShop { body, who: happened.who, wall_ms: happened.stamp.wall_ms };
                Some((body.key.as_str(), kept))
            }
            _ => None,
        });
        kept.collect()
    }

    /// The devices that have a name.
    #[must_use]
    pub fn devices(&self) -> BTreeMap<DeviceId, &str> {
        let named = self.shown().filter_map(|happened| match &happened.event {
            ShopEvent::DeviceNamed(body) => Some((body.device, body.name.as_str())),
            _ => None,
        });
        named.collect()
    }

    /// The event that says how a thing stands: its one head, or the head that is shown of several. A person's PIN is
    /// found here by [`Thing::Pin`].
    #[must_use]
    pub fn newest(&self, thing: &Thing) -> Option<&ShopHappened> {
        self.heads(thing).first().copied()
    }

    /// The heads of a thing, the one that is shown first. A change of it has to name them all.
    #[must_use]
    pub fn heads(&self, thing: &Thing) -> Vec<&ShopHappened> {
        self.things.get(thing).map(Register::heads).unwrap_or_default()
    }

    /// Everything that happened to a thing: what was replaced before what replaced it, and otherwise by the devices' wall
    /// clocks.
    #[must_use]
    pub fn history(&self, thing: &Thing) -> Vec<&ShopHappened> {
        let Some(Register { events, .. }) = self.things.get(thing) else { return Vec::new() };
        let mut waiting: Vec<_> = events.values().collect();
        waiting.sort_by_key(|happened| happened.told_at());
        let mut told: Vec<&ShopHappened> = Vec::with_capacity(waiting.len());
        let mut behind: BTreeSet<Hash> = events.keys().copied().collect();
        let next = |waiting: &[&ShopHappened], behind: &BTreeSet<Hash>| {
            waiting.iter().position(|happened| happened.event.replaces().is_disjoint(behind))
        };
        while let Some(at) = next(&waiting, &behind) {
            let happened = waiting.remove(at);
            behind.remove(&happened.hash);
            told.push(happened);
        }
        told
    }

    /// Hashes that some event names as replaced and that are not here as events of the same thing: not received yet,
    /// or lost. What such an event says counts all the same, since it says the whole state of its thing.
    #[must_use]
    pub fn missing(&self) -> BTreeSet<Hash> {
        let of = |register: &Register| -> Vec<Hash> {
            let replaced = register.replaced.iter();
            replaced.filter(|hash| !register.events.contains_key(hash)).copied().collect()
        };
        self.things.values().flat_map(of).collect()
    }

    /// Every thing with its heads, the one that is shown first.
    pub(crate) fn things(&self) -> impl Iterator<Item = (&Thing, Vec<&ShopHappened>)> {
        self.things.iter().map(|(thing, register)| (thing, register.heads()))
    }

    /// The shown head of each thing.
    pub(crate) fn shown(&self) -> impl Iterator<Item = &ShopHappened> {
        self.things().filter_map(|(_, heads)| heads.first().copied())
    }

    /// An event of a thing.
    pub(crate) fn event(&self, thing: &Thing, hash: &Hash) -> Option<&ShopHappened> {
        self.things.get(thing)?.events.get(hash)
    }
}
