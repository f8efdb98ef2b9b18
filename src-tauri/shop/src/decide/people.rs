//! Commands about people and their PINs.

use std::collections::BTreeSet;

use panside_journal::{Hash, PersonId};
use panside_procedure::format::Role;

use crate::event::{PersonAdded, PersonChanged, PersonLeft, PinSet, PinSetBy, ShopEvent};
use crate::name;
use crate::refusal::ShopRefusal;
use crate::shop::Shop;
use crate::thing::{Person, Thing};

/// Name as typed, roles, lead.
type Wanted<'a> = (&'a str, &'a BTreeSet<Role>, bool);

impl Shop {
    pub(super) fn add_person(
        &self,
        id: &PersonId,
        (name, roles, lead): Wanted<'_>,
        who: &PersonId,
    ) -> Result<ShopEvent, ShopRefusal> {
        let thing = Thing::Person(id.to_owned());
        self.seen(&thing, &BTreeSet::new())?;
        let first = self.people().is_empty();
        let person = self.wanted(&thing, id, (name, roles, lead || first))?;
        if lead && !first {
            self.by_lead(who)?;
        }
        Ok(PersonAdded { person }.into())
    }

    pub(super) fn change_person(
        &self,
        id: &PersonId,
        seen: &BTreeSet<Hash>,
        wanted: Wanted<'_>,
        who: &PersonId,
    ) -> Result<ShopEvent, ShopRefusal> {
        let thing = Thing::Person(id.to_owned());
        let people = self.people();
        let before = people.get(id).cloned().or_else(|| self.left().remove(id));
        let now = before.ok_or_else(|| ShopRefusal::NotHere(thing.clone()))?;
        self.seen(&thing, seen)?;
        let person = self.wanted(&thing, id, wanted)?;
        if now.lead != person.lead {
            self.by_lead(who)?;
        }
        if !person.lead {
            self.not_the_last_lead(&now)?;
        }
        self.changed_by(PersonChanged { person, from: seen.clone() }.into())
    }

    pub(super) fn remove_person(
        &self,
        id: &PersonId,
        seen: &BTreeSet<Hash>,
        who: &PersonId,
    ) -> Result<ShopEvent, ShopRefusal> {
        let thing = Thing::Person(*id);
        let now = self.people().remove(id).ok_or_else(|| ShopRefusal::NotHere(thing.clone()))?;
        self.seen(&thing, seen)?;
        if now.lead {
            self.by_lead(who)?;
        }
        self.not_the_last_lead(&now)?;
        Ok(PersonLeft { id: *id, from: seen.clone() }.into())
    }

    fn not_the_last_lead(&self, person: &Person) -> Result<(), ShopRefusal> {
        let leads = self.people().into_values().filter(|one| one.lead).count();
        if person.lead && leads == 1 {
            return Err(ShopRefusal::LastLead { name: person.name.clone() });
        }
        Ok(())
    }

    pub(super) fn set_pin(
        &self,
        person: &PersonId,
        seen: &BTreeSet<Hash>,
        how: &PinSetBy,
        who: &PersonId,
    ) -> Result<ShopEvent, ShopRefusal> {
        let people = self.people();
        let known = |id: &PersonId| match people.get(id) {
            Some(person) => Ok(person),
            None => Err(ShopRefusal::NotHere(Thing::Person(id.to_owned()))),
        };
        known(person)?;
        match how {
            PinSetBy::OwnFirst | PinSetBy::OwnByOld if who != person => return Err(ShopRefusal::PinOfOther),
            PinSetBy::OwnFirst | PinSetBy::OwnByOld => {}
            PinSetBy::LeadAndSecond { lead, second } => {
                known(second)?;
                if who != lead || !known(lead)?.lead {
                    return Err(ShopRefusal::PinOfOther);
                }
                if lead == second || lead == person || second == person {
                    return Err(ShopRefusal::PinWitness);
                }
            }
        }
        self.seen(&Thing::Pin(person.to_owned()), seen)?;
        Ok(PinSet { person: person.to_owned(), how: how.clone(), from: seen.clone() }.into())
    }

    /// The person as asked for, if name and roles will do.
    fn wanted(
        &self,
        thing: &Thing,
        id: &PersonId,
        (name, roles, lead): Wanted<'_>,
    ) -> Result<Person, ShopRefusal> {
        let name = self.told_apart(thing, name::of_person(name)?)?;
        if roles.is_empty() {
            return Err(ShopRefusal::NoRole { name });
        }
        Ok(Person { id: id.to_owned(), name, roles: roles.clone(), lead })
    }

    fn by_lead(&self, who: &PersonId) -> Result<(), ShopRefusal> {
        let people = self.people();
        if people.get(who).is_some_and(|person| person.lead) {
            return Ok(());
        }
        let leads = people.into_values().filter(|person| person.lead).map(|person| person.name);
        Err(ShopRefusal::LeadAsked { leads: leads.collect() })
    }
}
