//! Who may sign what.

use panside_journal::PersonId;
use panside_procedure::format::{Ask, Entry, Role, SignOff, Step};

use super::draft::Draft;
use crate::command::{Actor, Refusal};
use crate::message::{
    Message, decision_second, missing_signature, refused_no_such, refused_sign_not_asked,
    refused_sign_other_person, refused_sign_role, refused_sign_same_person, refused_sign_twice,
};
use crate::value::{EntryValue, Signature};

impl<'a> Draft<'a> {
    /// Checks the signatures given for a step and puts them in the order of its entries. Those that are missing are
    /// told in `absent`.
    pub fn signatures(
        &self,
        step: &Step,
        worker: Option<PersonId>,
        given: &[Signature],
        absent: &mut Vec<Message>,
    ) -> Result<Vec<Signature>, Refusal> {
        let asked: Vec<&str> = signs_of(step).map(|(_, sign)| sign).collect();
        for signature in given {
            let sign_off = self.sign_off(&signature.sign)?;
            if !asked.contains(&signature.sign.as_str()) {
                return Err(refused_sign_not_asked(&sign_off.text, &step.title).into());
            }
            if given.iter().filter(|other| other.sign == signature.sign).count() > 1 {
                return Err(refused_sign_twice(&sign_off.text).into());
            }
        }
        let mut signs = Vec::new();
        for sign in asked {
            let sign_off = self.sign_off(sign)?;
            match given.iter().find(|signature| signature.sign == sign) {
                Some(signature) => signs.push(self.signature(sign_off, worker, signature)?),
                None => absent.push(missing(sign_off)),
            }
        }
        Ok(signs)
    }

    /// Checks one signature: who signs is of the shop, and is what they sign as. `worker` is who began the step that it
    /// speaks of; nothing where nobody did.
    pub fn signature(
        &self,
        sign_off: &SignOff,
        worker: Option<PersonId>,
        signature: &Signature,
    ) -> Result<Signature, Refusal> {
        let by = signature.by;
        let name = self.names.name(by)?;
        let is_worker = Some(by) == worker || by == self.who.id;
        let text = &sign_off.text;
        match sign_off.by {
            None if !is_worker => Err(refused_sign_other_person(text, self.names.name(self.who.id)?).into()),
            Some(Role::SecondPerson) if is_worker => Err(refused_sign_same_person(text, name).into()),
            Some(role @ (Role::ServiceWriter | Role::Technician)) if signature.role != role => {
                Err(refused_sign_role(text, role).into())
            }
            _ => {
                self.names.acting(Actor { id: by, role: signature.role })?;
                Ok(signature.clone())
            }
        }
    }

    /// Whoever stands for a decision against the table is another than works the step, where the checklist asks for that.
    pub fn stands_for(
        &self,
        entry: &Entry,
        value: &EntryValue,
        worker: Option<PersonId>,
    ) -> Result<(), Refusal> {
        let (Ask::Decision(asked), EntryValue::Decision { class, against: Some(told), .. }) =
            (&entry.ask, value)
        else {
            return Ok(());
        };
        let is_worker = Some(told.by) == worker || told.by == self.who.id;
        if is_worker && asked.against(class).is_some_and(|against| against.with_second_person) {
            return Err(decision_second(self.names.name(told.by)?).into());
        }
        Ok(())
    }

    pub fn sign_off(&self, id: &str) -> Result<&'a SignOff, Refusal> {
        let procedure = &self.job.procedure;
        let given = procedure.names.sign(id).ok_or_else(|| Refusal::from(refused_no_such("sign_off", id)))?;
        Ok(procedure.sign_off(given))
    }
}

/// What is said where a signature is missing.
pub(crate) fn missing(sign_off: &SignOff) -> Message {
    missing_signature(&sign_off.text, sign_off.by.unwrap_or(Role::Technician))
}

/// The sign-offs a step asks for: entry id and sign-off id.
pub(crate) fn signs_of(step: &Step) -> impl Iterator<Item = (&str, &str)> {
    step.entries.iter().filter_map(|entry| match &entry.ask {
        Ask::SignOff(asked) => Some((entry.id.as_str(), asked.sign.as_str())),
        _ => None,
    })
}
