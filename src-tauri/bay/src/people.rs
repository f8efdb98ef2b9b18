//! The shop's people. A person is an id; the name is what they are called, and may change. Whoever acts or signs is one
//! of them.

use std::collections::BTreeSet;

use panside_job::people::{Member, Roster};
use panside_journal::PersonId;
use panside_procedure::format::Role;
pub use panside_shop::Person;
use panside_shop::name::{self, Look};
use serde::Deserialize;
use ts_rs::TS;
use uuid::Uuid;

use crate::kit::Kit;
use crate::{Bay, BayError};

/// A person as typed.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct TypedPerson {
    /// Whom it changes; nothing for somebody new.
    pub id: Option<PersonId>,
    /// What they are called.
    pub name: String,
    /// What they are.
    pub roles: BTreeSet<Role>,
    /// They lead the shop.
    pub lead: bool,
}

impl Kit {
    /// One of the shop's people.
    ///
    /// # Errors
    /// [`BayError::NoPerson`] for somebody who is not.
    pub fn person(&self, id: PersonId) -> Result<&Person, BayError> {
        self.people.iter().find(|person| person.id == id).ok_or(BayError::NoPerson)
    }

    /// The shop's people as the rules ask after them.
    #[must_use]
    pub fn roster(&self) -> Roster {
        let member = |one: &Person| (one.id, Member { name: one.name.clone(), roles: one.roles.clone() });
        self.people.iter().map(member).collect()
    }
}

/// Sees that everybody is another person under a name that can be read, and that no two names look alike: they would
/// be one person to whoever reads a signature.
///
/// # Errors
/// [`BayError::Name`], [`BayError::LooksLike`], [`BayError::PersonTwice`].
pub(crate) fn told_apart(people: &[Person]) -> Result<(), BayError> {
    let mut seen: Vec<(PersonId, Look, &str)> = Vec::new();
    for person in people {
        let look = Look::of(&name::of_person(&person.name)?);
        for (id, other, existing) in &seen {
            if *id == person.id {
                return Err(BayError::PersonTwice);
            }
            if other.is_like(&look) {
                let (name, existing) = (person.name.clone(), (*existing).to_owned());
                return Err(BayError::LooksLike { name, existing });
            }
        }
        seen.push((person.id, look, &person.name));
    }
    Ok(())
}

impl Bay {
    /// Keeps somebody new, or a person with what was changed of them, and answers the kit. What was entered before keeps
    /// the name of its day.
    ///
    /// # Errors
    /// [`BayError::Name`] for what is no name, [`BayError::LooksLike`] for one that can't be told from another's,
    /// [`BayError::PersonRole`] where that is missing, [`BayError::NoPerson`] for a person who is no longer of the shop; [`BayError::Store`] with what the disk said.
    pub fn put_person(&mut self, typed: TypedPerson) -> Result<Kit, BayError> {
        let TypedPerson { id, name, roles, lead } = typed;
        let name = name::of_person(&name)?;
        if roles.is_empty() {
            return Err(BayError::PersonRole);
        }
        let mut kit = self.kit()?;
        match id {
            None => kit.people.push(Person { id: PersonId(Uuid::now_v7()), name, roles, lead }),
            Some(id) => {
                let found = kit.people.iter_mut().find(|person| person.id == id);
                *found.ok_or(BayError::NoPerson)? = Person { id, name, roles, lead };
            }
        }
        self.put_kit(&kit)?;
        Ok(kit)
    }
}
