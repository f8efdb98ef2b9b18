//! What devices did without knowing of each other, for people to settle.

use std::collections::BTreeSet;

use panside_messages::{Arg, Message};

use crate::message::*;
use crate::name::Look;
use crate::shop::{Shop, ShopHappened};
use crate::thing::{Said, Thing};

/// A thing that was changed on both sides, or on more than two. A change that names all heads settles it.
#[derive(Debug, PartialEq, Eq)]
pub struct BothSides<'a> {
    /// What was changed.
    pub thing: &'a Thing,
    /// Each side's last change, the one that is shown first.
    pub sides: Vec<Side<'a>>,
}

/// The last change on one side.
#[derive(Debug, PartialEq, Eq)]
pub struct Side<'a> {
    /// Who did it, when, on which device, and the whole state after it.
    pub happened: &'a ShopHappened,
    /// What it says that was not so in each of the events that it replaced. All of it where one of those isn't here.
    pub changed: BTreeSet<Said>,
}

impl Shop {
    /// What was done on both sides of the same thing. Where all sides say the same, such as the same sheet taken in
    /// from a file on two devices, there is nothing to settle and nothing is told.
    #[must_use]
    pub fn both_sides(&self) -> Vec<BothSides<'_>> {
        let differ = self.things().filter(|(_, heads)| !agree(heads));
        let told = differ.map(|(thing, heads)| {
            let side = |happened| Side { happened, changed: self.changed(thing, happened) };
            BothSides { thing, sides: heads.into_iter().map(side).collect() }
        });
        told.collect()
    }

    /// What somebody of the shop has to settle: what was done on both sides of the same thing, names that can't be told
    /// apart, a shop whose leads are all gone.
    #[must_use]
    pub fn unsettled(&self) -> Vec<Message> {
        let both = self.both_sides().into_iter().map(|both| self.say_both(&both));
        let alike = self.look_alikes().into_iter();
        let alike = alike.map(|(one, other)| shop_alike(self.called(&one), self.called(&other), one.noun()));
        let stand_in = self.stand_in_lead();
        let stand_in = stand_in.map(|person| shop_stand_in(self.called(&Thing::Person(*person))));
        both.chain(alike).chain(stand_in).collect()
    }

    fn say_both(&self, both: &BothSides<'_>) -> Message {
        let side = |side: &Side<'_>| {
            let who = self.called(&Thing::Person(side.happened.who));
            let device = self.called(&Thing::Device(side.happened.device));
            let changed = side.changed.iter().map(Said::message);
            let changed = changed.reduce(shop_next_piece);
            shop_side(who, device, changed.unwrap_or_else(shop_said_nothing))
        };
        let sides = both.sides.iter().map(side).reduce(shop_next_side);
        let sides = sides.unwrap_or_else(shop_said_nothing);
        shop_both_sides(both.thing.noun(), self.called(both.thing), sides)
    }

    /// What a thing is called, as well as is known here.
    fn called(&self, thing: &Thing) -> Arg {
        let last_name = || {
            let before = self.history(thing).into_iter().rev();
            before.filter_map(|happened| happened.event.name()).next().map(Arg::from)
        };
        match thing {
            Thing::Person(id) => last_name().unwrap_or_else(|| id.to_string().into()),
            Thing::Pin(id) => self.called(&Thing::Person(*id)),
            Thing::Tool(id) => last_name().unwrap_or_else(|| id.to_string().into()),
            Thing::Sheet(id) | Thing::Checklist(id) => id.into(),
            Thing::Device(id) => last_name().unwrap_or_else(|| shop_device(id.to_string()).into()),
            Thing::Value(key) => self.values().get(key.as_str()).map_or(key, |kept| &kept.body.name).into(),
        }
    }

    /// Pairs of people, of tools and of devices whose names can't be told apart. On one device such a name is refused;
    /// two devices may each add one.
    #[must_use]
    pub fn look_alikes(&self) -> Vec<(Thing, Thing)> {
        let named = self.shown().filter_map(|one| Some((one.event.thing(), Look::of(one.event.name()?))));
        let named: Vec<_> = named.collect();
        let mut pairs = Vec::new();
        for (at, (thing, look)) in named.iter().enumerate() {
            let later = named[at + 1..].iter();
            let like = later.filter(|(other, of)| other.is_of_kind(thing) && of.is_like(look));
            pairs.extend(like.map(|(other, _)| (thing.clone(), other.clone())));
        }
        pairs
    }

    fn changed(&self, thing: &Thing, happened: &ShopHappened) -> BTreeSet<Said> {
        let before = happened.event.replaces().iter().map(|hash| self.event(thing, hash));
        let before: Option<Vec<BTreeSet<Said>>> = before.map(|one| one.map(ShopHappened::said)).collect();
        let mut said = happened.said();
        if let Some(before) = before.filter(|before| !before.is_empty()) {
            said.retain(|piece| !before.iter().all(|said| said.contains(piece)));
        }
        said
    }
}

/// Whether these events say the same about their thing.
pub(crate) fn agree(heads: &[&ShopHappened]) -> bool {
    heads.windows(2).all(|pair| pair[0].said() == pair[1].said())
}
