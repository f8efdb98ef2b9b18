//! The shop's people. A person is an id; the name is what they are called, and may change. Whoever acts or signs is one
//! of them.
//!
//! `Bay::enter` gives `decide` the shop's [`Roster`]: who is not on it, or not what they sign as, is refused, and a
//! second person is another id. An `Actor` has no name, so that none can be claimed.

use std::collections::{BTreeMap, BTreeSet};

use panside_job::people::{Member, Roster};
use panside_journal::{Hash, PersonId};
use panside_procedure::format::Role;
pub use panside_shop::Person;
use panside_shop::{Shop, ShopCommand};
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

use crate::setup::{Setup, one_of_the_shop};
use crate::{Bay, BayError};

/// A person as typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct TypedPerson {
    /// Whom it changes or puts back on the list; nothing for somebody new.
    pub id: Option<PersonId>,
    /// What [`Setup::seen`] has of them; nothing for somebody new.
    pub seen: BTreeSet<Hash>,
    /// What they are called.
    pub name: String,
    /// What they are.
    pub roles: BTreeSet<Role>,
    /// They lead the shop.
    pub lead: bool,
}

/// The shop's people.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct People(BTreeMap<PersonId, Person>);

impl People {
    /// One of them.
    ///
    /// # Errors
    /// [`BayError::NoPerson`] for somebody who is not.
    pub fn person(&self, id: PersonId) -> Result<&Person, BayError> {
        self.0.get(&id).ok_or(BayError::NoPerson)
    }

    /// All of them as the rules ask after them.
    #[must_use]
    pub fn roster(&self) -> Roster {
        let member = |one: &Person| (one.id, Member { name: one.name.clone(), roles: one.roles.clone() });
        self.0.values().map(member).collect()
    }
}

impl Bay {
    /// The shop's people: what each entry needs of the shop. [`Bay::setup`] has all that a screen shows of it.
    ///
    /// # Errors
    /// [`BayError::Store`] when what is written about the shop does not hold, or with what the disk said.
    pub fn people(&self) -> Result<People, BayError> {
        Ok(People(self.shop()?.people()))
    }

    /// Keeps somebody new whom `who` adds, a person with what was changed of them, or one who is back; answers the shop setup.
    /// What was entered before keeps the name of its day. The first of a shop adds themself.
    ///
    /// # Errors
    /// [`BayError::Shop`]: what is no name, or one that can't be told from another's; no role; somebody else than a lead
    /// who says who leads; a person who was changed meanwhile; somebody who is not of the shop. [`BayError::PinAsked`]
    /// where it says who leads, and `who` has a PIN and has not given it. [`BayError::Refused`] for more or longer ones
    /// than are taken; [`BayError::Store`] with what the disk said.
    pub fn put_person(&mut self, typed: TypedPerson, who: Option<PersonId>) -> Result<Setup, BayError> {
        let shop = self.shop()?;
        let (people, left) = (shop.people(), shop.left());
        self.within_bounds(&typed, people.len() + left.len(), typed.id.is_none())?;
        let TypedPerson { id, seen, name, roles, lead } = typed;
        let new = PersonId(Uuid::now_v7());
        let who = one_of_the_shop(if people.is_empty() { Some(id.unwrap_or(new)) } else { who })?;
        let led = id.is_some_and(|id| leads(&shop, id));
        let command = match id {
            None => ShopCommand::AddPerson { id: new, name, roles, lead },
            Some(id) => ShopCommand::ChangePerson { id, seen, name, roles, lead },
        };
        self.change_people(who, &command, led != lead && !people.is_empty())
    }

    /// Takes a person off the list who works here no more, and answers the shop setup. What they signed stays theirs.
    ///
    /// # Errors
    /// [`BayError::Shop`] for the last lead, a lead whom somebody else than a lead lets go, a person who was changed
    /// meanwhile; [`BayError::PinAsked`] as in [`Bay::put_person`]; [`BayError::Store`] with what the disk said.
    pub fn remove_person(
        &mut self,
        id: PersonId,
        seen: BTreeSet<Hash>,
        who: Option<PersonId>,
    ) -> Result<Setup, BayError> {
        let leads = leads(&*self.shop()?, id);
        self.change_people(one_of_the_shop(who)?, &ShopCommand::RemovePerson { id, seen }, leads)
    }

    /// Who leads is said by a lead who shows by their PIN, where they have one, that they are it.
    fn change_people(
        &mut self,
        who: PersonId,
        command: &ShopCommand,
        about_leads: bool,
    ) -> Result<Setup, BayError> {
        // What is refused anyway asks nobody for a PIN.
        let decided = self.decide_shop(who, command)?;
        if about_leads {
            if self.pin_of(who)? == Some(false) {
                let name = self.people()?.person(who)?.name.clone();
                return Err(BayError::PinAsked { person: who, name });
            }
            self.given.use_up(who);
        }
        if let Some(event) = decided {
            self.write_shop(who, &event, &[])?;
        }
        self.setup()
    }
}

fn leads(shop: &Shop, id: PersonId) -> bool {
    shop.people().get(&id).is_some_and(|one| one.lead)
}
