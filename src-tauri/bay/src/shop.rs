//! The shop: folded from what its devices wrote about it, and changed by one more event. What a screen shows of it is
//! made of this in `setup`, `people`, `pins` and `sheets`.
//!
//! Each change names the events that its author's screen showed (`Setup::seen`, `TypedSheet::seen`), so that a change
//! that came meanwhile is noticed. What two devices wrote apart is shown (`Setup::unsettled`) until somebody who has seen
//! both keeps one. What depends on a change outside the journal is written in its transaction (`store::With`).

use std::cell::RefCell;
use std::collections::BTreeSet;
use std::sync::Arc;

use panside_journal::{Draft, Event, Hash, Head, Origin, PersonId, Request, Stamp, Subject};
use panside_shop::{Shop, ShopCommand, ShopEvent, ShopHappened, ShopRefusal, Thing};
use panside_store::{BothSides, Entry, Received, Trouble, With};

use crate::enter::new_request;
use crate::jobs::{event_id, label_of};
use crate::{Bay, BayError};

/// How far each device has come in what it writes about the shop.
type Heads = Vec<(Subject, Head)>;

/// The shop as it was last folded, and from how far.
#[derive(Default)]
pub(crate) struct Folded(RefCell<Option<(Heads, Arc<Shop>)>>);

impl Folded {
    fn at(&self, heads: &Heads) -> Option<Arc<Shop>> {
        let folded = self.0.borrow();
        folded.as_ref().filter(|(at, _)| at == heads).map(|(_, shop)| Arc::clone(shop))
    }

    fn keep(&self, heads: Heads, shop: Shop) -> Arc<Shop> {
        let shop = Arc::new(shop);
        *self.0.borrow_mut() = Some((heads, Arc::clone(&shop)));
        shop
    }

    /// Forgets it, so that it is read anew.
    pub(crate) fn forget(&self) {
        *self.0.borrow_mut() = None;
    }
}

impl Bay {
    /// The shop as all that is here tells it.
    ///
    /// # Errors
    /// [`BayError::Store`] when what is written about it does not hold, [`BayError::Job`] for what a newer version
    /// wrote.
    pub(crate) fn shop(&self) -> Result<Arc<Shop>, BayError> {
        let heads = self.store.shops()?;
        if let Some(shop) = self.folded.at(&heads) {
            return Ok(shop);
        }
        let mut shop = Shop::default();
        for (subject, _) in &heads {
            for event in self.store.events(*subject)? {
                shop.take(happened(&event)?);
            }
        }
        Ok(self.folded.keep(heads, shop))
    }

    /// Reads the shop when the store is opened. One that is damaged locks nobody out: what holds of it is shown, the
    /// damage is said, and the store takes no entry.
    pub(crate) fn look_at_shop(&mut self) -> Result<(), BayError> {
        let Err(error) = self.shop() else { return Ok(()) };
        let heads = self.store.shops()?;
        let mut shop = Shop::default();
        for (subject, _) in &heads {
            let readable = self.store.readable(*subject)?.events;
            readable.iter().filter_map(|event| happened(event).ok()).for_each(|one| shop.take(one));
        }
        self.folded.keep(heads, shop);
        self.store.note(vec![Trouble::Entries(error.message())]);
        Ok(())
    }

    /// Does what `who` asks of the shop.
    pub(crate) fn change_shop(
        &mut self,
        who: PersonId,
        command: &ShopCommand,
        with: &[With<'_>],
    ) -> Result<(), BayError> {
        match self.decide_shop(who, command)? {
            Some(event) => self.write_shop(who, &event, with),
            None => Ok(()),
        }
    }

    /// The event that `who` asks for; `None` where it would change nothing.
    pub(crate) fn decide_shop(
        &self,
        who: PersonId,
        command: &ShopCommand,
    ) -> Result<Option<ShopEvent>, BayError> {
        match self.shop()?.decide(command, &who) {
            Err(ShopRefusal::Unchanged(_)) => Ok(None),
            decided => Ok(Some(decided?)),
        }
    }

    /// Writes what was decided, and rows beside the journal with it.
    pub(crate) fn write_shop(
        &mut self,
        who: PersonId,
        event: &ShopEvent,
        with: &[With<'_>],
    ) -> Result<(), BayError> {
        let (kind, version, body) = event.to_body()?;
        let stamp = self.clock.now();
        let origin = Origin { request: Request { id: new_request(), hash: Hash::of(&body) }, who, stamp };
        let drafts = [Draft { id: event_id(&stamp), kind: kind.to_owned(), version, body }];
        let subject = Subject::Shop(self.store.device());
        let expected = self.store.head(subject)?;
        let entry = Entry { subject, expected, origin: &origin, drafts: &drafts, label: "" };
        self.store.append_with(&entry, with)?;
        Ok(())
    }

    /// The newest events about a thing, as whoever changes it has to have seen them.
    pub(crate) fn heads_of(&self, thing: &Thing) -> Result<BTreeSet<Hash>, BayError> {
        let shop = self.shop()?;
        Ok(hashes(&shop, thing))
    }

    /// Takes over events that other devices wrote, in any order and any pieces, each any number of times. What has been
    /// here before changes nothing.
    ///
    /// # Errors
    /// [`BayError::Store`] for events that don't hold, and with what the disk said; then nothing is taken over.
    pub fn receive(&mut self, events: &[Event]) -> Result<Received, BayError> {
        self.open.clear();
        Ok(self.store.receive(events, &label_of)?)
    }

    /// The jobs that went on in two places without one knowing of the other.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said.
    pub fn both_sides(&self) -> Result<Vec<BothSides>, BayError> {
        Ok(self.store.both_sides()?)
    }
}

/// The hashes of a thing's heads.
pub(crate) fn hashes(shop: &Shop, thing: &Thing) -> BTreeSet<Hash> {
    shop.heads(thing).iter().map(|head| head.hash).collect()
}

/// A stored event as the shop reads it.
pub(crate) fn happened(event: &Event) -> Result<ShopHappened, BayError> {
    let header = &event.header;
    Ok(ShopHappened {
        hash: event.hash,
        device: header.device,
        seq: header.device_seq,
        stamp: Stamp { wall_ms: header.wall_ms, mono_ms: header.mono_ms, boot: header.boot },
        who: header.who,
        event: ShopEvent::from_body(&header.kind, header.version, &event.body)?,
    })
}
