//! What devices did without knowing of each other, for people to settle.

use std::collections::BTreeSet;

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
