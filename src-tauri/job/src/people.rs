//! Who is known: the shop's people while something is decided, a job's people when it is shown. A person is an id; the
//! name is only what they are called, and may change.
//!
//! A job names its people itself, since it is read without the shop: its start and its `introduced` events say who
//! appears under which name and role, before they do, and a `Mark` has the name of its day.

use std::collections::{BTreeMap, BTreeSet};

use panside_journal::PersonId;
use panside_procedure::format::Role;

use crate::command::{Actor, Refusal};
use crate::event::Introduced;
use crate::message::{refused_no_person, refused_no_role};

/// One of the shop's people.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Member {
    /// What they are called.
    pub name: String,
    /// What they are; at least one.
    pub roles: BTreeSet<Role>,
}

/// The shop's people. Nobody else acts or signs.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Roster(BTreeMap<PersonId, Member>);

impl FromIterator<(PersonId, Member)> for Roster {
    fn from_iter<I: IntoIterator<Item = (PersonId, Member)>>(people: I) -> Roster {
        Roster(people.into_iter().collect())
    }
}

impl Roster {
    /// A person of the shop.
    #[must_use]
    pub fn get(&self, person: PersonId) -> Option<&Member> {
        self.0.get(&person)
    }

    /// A person as one of what they are. Anybody may be the second person for another's work.
    ///
    /// # Errors
    /// A refusal for somebody who is not of the shop, and for a role that the person does not have.
    pub fn acting(&self, actor: Actor) -> Result<Introduced, Refusal> {
        let Actor { id: person, role } = actor;
        let member = self.get(person).ok_or_else(refused_no_person)?;
        if role != Role::SecondPerson && !member.roles.contains(&role) {
            return Err(refused_no_role(&member.name, role).into());
        }
        Ok(Introduced { person, name: member.name.clone(), role })
    }
}

/// The people of one job, under every name and in every role in which they appeared. It is kept in the job's own
/// events, so that the job can be read by itself.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct People(BTreeMap<PersonId, Vec<Appeared>>);

/// A name and a role in which a person appears from an event on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Appeared {
    /// The event's number in the job.
    pub seq: u64,
    /// What they are called from then on.
    pub name: String,
    /// As what they appear.
    pub role: Role,
}

impl People {
    pub(crate) fn take(&mut self, seq: u64, introduced: &Introduced) {
        let Introduced { person, name, role } = introduced;
        self.0.entry(*person).or_default().push(Appeared { seq, name: name.clone(), role: *role });
    }

    /// The names and roles of a person, oldest first.
    #[must_use]
    pub fn of(&self, person: PersonId) -> &[Appeared] {
        self.0.get(&person).map_or(&[], Vec::as_slice)
    }

    /// What a person was called at an event; nothing for somebody whom the job does not know.
    #[must_use]
    pub fn name_at(&self, person: PersonId, seq: u64) -> Option<&str> {
        let then = self.of(person).iter().rfind(|appeared| appeared.seq <= seq)?;
        Some(&then.name)
    }

    /// What a person was called at an event; the id stands for somebody whom the job does not know.
    #[must_use]
    pub fn called(&self, person: PersonId, seq: u64) -> String {
        self.name_at(person, seq).map_or_else(|| person.to_string(), str::to_owned)
    }

    /// Everybody with their newest name.
    pub fn names(&self) -> impl Iterator<Item = (PersonId, &str)> {
        self.0.iter().filter_map(|(person, appeared)| Some((*person, appeared.last()?.name.as_str())))
    }

    /// Whether this name is the person's newest, and this role, where one is asked for, was told of it.
    fn knows(&self, person: PersonId, name: &str, role: Option<Role>) -> bool {
        let appeared = self.of(person);
        let told = |one: &Appeared| one.name == name && role.is_none_or(|role| one.role == role);
        appeared.last().is_some_and(|last| last.name == name) && appeared.iter().any(told)
    }

    /// Who has to be introduced before events in which these people appear. Somebody of no certain role is introduced
    /// in the first that they have.
    pub(crate) fn strangers(
        &self,
        shop: &Roster,
        appear: impl IntoIterator<Item = (PersonId, Option<Role>)>,
    ) -> Vec<Introduced> {
        let mut known = self.clone();
        let mut strangers = Vec::new();
        for (person, role) in appear {
            let Some(member) = shop.get(person) else { continue };
            if known.knows(person, &member.name, role) {
                continue;
            }
            let Some(role) = role.or_else(|| member.roles.first().copied()) else { continue };
            let stranger = Introduced { person, name: member.name.clone(), role };
            known.take(u64::MAX, &stranger);
            strangers.push(stranger);
        }
        strangers
    }
}

/// Where the names of people come from while a value is judged.
#[derive(Debug, Clone, Copy)]
pub enum Names<'a> {
    /// From the shop: something is decided now.
    Shop(&'a Roster),
    /// From the job as it stood at an event: something is shown that was decided then.
    Job(&'a People, u64),
}

impl<'a> Names<'a> {
    /// What a person is called.
    ///
    /// # Errors
    /// A refusal for somebody who is not known there.
    pub fn name(self, person: PersonId) -> Result<&'a str, Refusal> {
        let name = match self {
            Names::Shop(shop) => shop.get(person).map(|member| member.name.as_str()),
            Names::Job(people, seq) => people.name_at(person, seq),
        };
        name.ok_or_else(|| refused_no_person().into())
    }

    /// A person as one of what they are.
    ///
    /// # Errors
    /// As [`Roster::acting`]; in a job, as [`Names::name`].
    pub(crate) fn acting(self, actor: Actor) -> Result<(), Refusal> {
        match self {
            Names::Shop(shop) => shop.acting(actor).map(|_| ()),
            Names::Job(..) => self.name(actor.id).map(|_| ()),
        }
    }
}
