//! PINs: who a person is at a hold point. A PIN is asked for a signature that the checklist asks of a role, of a second
//! person who stands for a decision against its table, for checking a spec sheet, and for changing a PIN; a person without one works as before, and the record says so.
//!
//! What is kept is a hash (Argon2id, a salt for each PIN) and how often a wrong PIN was tried. The PIN itself is in no
//! journal, draft or log. Four to eight digits are few: whoever has the tablet's files and time finds them out. It keeps
//! a colleague from signing for another, not a thief.
//!
//! A command that signs a hold point is decided first. Then it is refused with `pin_of` until that person's PIN was given
//! (`give_pin`), which lasts two minutes, for one act; the page asks for it and makes the command again. The core of the
//! job sees a fact only: `Signature::pin` and the `pin` of a decision, put in by [`Bay::enter`], whatever the command says. A [`Pin`] is never written
//! and prints as nothing.
//!
//! A person sets a PIN of their own with the old one. A forgotten one is reset by `PinAuthority::Lead`, and then the
//! record names those two beside each signature. That a PIN was set, and by whose word, is an event of the shop.
//! Whoever says who leads gives their own PIN, where they have one.

use std::collections::BTreeMap;
use std::fmt;

use argon2::Argon2;
use argon2::password_hash::phc::PasswordHash;
use argon2::password_hash::{PasswordHasher, PasswordVerifier};
use panside_job::clock::{civil_date, measured_ms, surely_ms};
use panside_job::{Command, EntryValue, SignedPin};
use panside_journal::{PersonId, Stamp};
use panside_procedure::Procedure;
use panside_procedure::format::Ask;
use panside_shop::{PinSetBy, ShopCommand, Thing};
use panside_store::With;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::people::People;
use crate::{Bay, BayError};

/// Wrong tries in a row that cost no wait: a glove slips.
const FREE_TRIES: u32 = 3;
/// The wait after the last free try, doubled by each further one.
const FIRST_WAIT_MS: u64 = 30_000;
/// Doublings after which the wait stays as it is: 16 minutes.
const MOST_DOUBLINGS: u32 = 5;
/// How long a PIN that was given waits to be used.
const GIVEN_FOR_MS: u64 = 2 * 60_000;

/// A PIN as it is typed. It is never written anywhere, and printing it for debugging shows nothing of it.
#[derive(Clone, PartialEq, Eq, Deserialize, TS)]
#[serde(transparent)]
pub struct Pin(String);

impl fmt::Debug for Pin {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("Pin")
    }
}

impl Pin {
    /// What was typed, as a PIN.
    ///
    /// # Errors
    /// [`BayError::PinForm`] for anything but 4 to 8 digits.
    pub fn new(text: &str) -> Result<Pin, BayError> {
        Pin(text.to_owned()).checked()
    }

    fn checked(self) -> Result<Pin, BayError> {
        let good = (4..=8).contains(&self.0.len()) && self.0.bytes().all(|digit| digit.is_ascii_digit());
        if good { Ok(self) } else { Err(BayError::PinForm) }
    }

    fn hashed(&self) -> Result<String, BayError> {
        let hash = Argon2::default().hash_password(self.0.as_bytes());
        Ok(hash.map_err(|error| BayError::PinHash(error.to_string()))?.to_string())
    }

    fn opens(&self, hash: &str) -> Result<bool, BayError> {
        let hash = PasswordHash::new(hash).map_err(|error| BayError::PinHash(error.to_string()))?;
        Ok(Argon2::default().verify_password(self.0.as_bytes(), &hash).is_ok())
    }
}

/// What is kept of a person's PIN.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Kept {
    /// The hash with its salt, in the PHC string format.
    hash: String,
    /// By whose word it was set.
    how: PinSetBy,
    /// When it was set, in ms since 1970.
    set_ms: i64,
    /// Wrong tries since the last right one.
    wrong: u32,
    /// The last of them.
    last: Option<Stamp>,
}

/// The two who set a PIN for a person who had forgotten theirs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct ResetBy {
    /// Who leads the shop.
    pub lead: PersonId,
    /// Any other person of the shop who has a PIN.
    pub second: PersonId,
}

/// By whose word a PIN is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PinAuthority {
    /// By that of the person who acts: for their own PIN only. Who has one gives it first.
    Own(PersonId),
    /// By that of the shop's lead together with a second person, where the old one is forgotten. Both give theirs first.
    Lead(ResetBy),
}

/// That a person has a PIN.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PinHolder {
    /// The person.
    pub person: PersonId,
    /// By whose word it was set.
    pub how: PinSetBy,
    /// The day, as `YYYY-MM-DD`.
    pub on: String,
}

/// What became of a PIN that was given.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PinReply {
    /// It is the person's.
    pub right: bool,
    /// Seconds until the next try counts; 0: it may be tried at once.
    pub wait_s: u64,
}

/// PINs that were given and not used yet, by person. They are used once and end by themselves.
#[derive(Debug, Default)]
pub(crate) struct GivenPins(BTreeMap<PersonId, Stamp>);

impl GivenPins {
    fn has(&self, person: PersonId, now: &Stamp) -> bool {
        self.0.get(&person).is_some_and(|at| measured_ms(at, now).is_some_and(|ms| ms <= GIVEN_FOR_MS))
    }

    /// A PIN that was given is used: the next act asks for it again.
    pub(crate) fn use_up(&mut self, person: PersonId) {
        self.0.remove(&person);
    }
}

impl Bay {
    /// Who has a PIN.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said, [`BayError::Json`] when the list is damaged.
    pub fn pin_holders(&self, utc_offset_min: i32) -> Result<Vec<PinHolder>, BayError> {
        let holder = |(person, kept): (PersonId, Kept)| PinHolder {
            person,
            how: kept.how,
            on: civil_date(kept.set_ms, utc_offset_min).to_string(),
        };
        Ok(self.kept_pins()?.into_iter().map(holder).collect())
    }

    /// Gives a person's PIN for what comes next. Each try is counted on disk before it is looked at.
    ///
    /// # Errors
    /// [`BayError::PinForm`]; [`BayError::NoPerson`]; [`BayError::NoPin`] when they have none; [`BayError::Store`] with what the disk said.
    pub fn give_pin(&mut self, person: PersonId, pin: &Pin) -> Result<PinReply, BayError> {
        // What is none is nobody's PIN, and costs no try.
        let pin = pin.clone().checked()?;
        let now = self.clock.now();
        let name = self.people()?.person(person)?.name.clone();
        let mut kept = self.kept_pins()?.remove(&person).ok_or(BayError::NoPin(name))?;
        let wait_s = kept.wait_ms(&now).div_ceil(1000);
        if wait_s > 0 {
            return Ok(PinReply { right: false, wait_s });
        }
        kept.wrong = kept.wrong.saturating_add(1);
        kept.last = Some(now);
        self.put_pin(person, &kept)?;
        if !pin.opens(&kept.hash)? {
            return Ok(PinReply { right: false, wait_s: kept.wait_ms(&now).div_ceil(1000) });
        }
        kept.wrong = 0;
        kept.last = None;
        self.put_pin(person, &kept)?;
        self.given.0.insert(person, now);
        Ok(PinReply { right: true, wait_s: 0 })
    }

    /// Sets a person's PIN and writes by whose word. Nobody sets another's alone: where it is forgotten, the lead does so with a second person.
    ///
    /// # Errors
    /// [`BayError::PinAsked`] with whose PIN is to be given first ([`Bay::give_pin`]); [`BayError::PinOfOther`],
    /// [`BayError::PinFirstOwn`], [`BayError::PinLead`], [`BayError::PinSecond`] for who may not;
    /// [`BayError::NoPerson`]; [`BayError::PinForm`]; [`BayError::Store`] with what the disk said.
    pub fn set_pin(&mut self, person: PersonId, pin: Pin, by: PinAuthority) -> Result<(), BayError> {
        let pin = pin.checked()?;
        let people = self.people()?;
        let name = &people.person(person)?.name;
        let (how, gives) = match by {
            PinAuthority::Own(who) if who != person => return Err(BayError::PinOfOther(name.clone())),
            PinAuthority::Own(_) if self.pin_of(person)?.is_none() => (PinSetBy::OwnFirst, vec![person]),
            PinAuthority::Own(_) => (PinSetBy::OwnByOld, vec![person]),
            PinAuthority::Lead(who) => {
                self.may_reset(&people, person, who)?;
                let ResetBy { lead, second } = who;
                (PinSetBy::LeadAndSecond { lead, second }, vec![lead, second])
            }
        };
        for giver in &gives {
            if self.pin_of(*giver)? == Some(false) {
                let name = people.person(*giver)?.name.clone();
                return Err(BayError::PinAsked { person: *giver, name });
            }
        }
        let set_ms = self.clock.now().wall_ms;
        let seen = self.heads_of(&Thing::Pin(person))?;
        let command = ShopCommand::SetPin { person, seen, how: how.clone() };
        let kept = Kept { hash: pin.hashed()?, how, set_ms, wrong: 0, last: None };
        let with = With::Pin { person, text: &serde_json::to_string(&kept)? };
        self.change_shop(gives[0], &command, &[with])?;
        gives.into_iter().chain([person]).for_each(|giver| self.given.use_up(giver));
        Ok(())
    }

    /// Whether these two may set a forgotten PIN: a lead of the shop and any third person, both with a PIN of their own.
    fn may_reset(&self, people: &People, person: PersonId, who: ResetBy) -> Result<(), BayError> {
        let name = || -> Result<String, BayError> { Ok(people.person(person)?.name.clone()) };
        let pins = self.store.pins()?;
        if !pins.contains_key(&person) {
            return Err(BayError::PinFirstOwn(name()?));
        }
        if who.lead == person || !people.person(who.lead)?.lead || !pins.contains_key(&who.lead) {
            return Err(BayError::PinLead(name()?));
        }
        people.person(who.second)?;
        if [person, who.lead].contains(&who.second) || !pins.contains_key(&who.second) {
            return Err(BayError::PinSecond(name()?));
        }
        Ok(())
    }

    /// Whether a person's PIN was given for what is done now; nothing: they have none.
    pub(crate) fn pin_of(&self, person: PersonId) -> Result<Option<bool>, BayError> {
        let has = self.store.pins()?.contains_key(&person);
        Ok(has.then(|| self.given.has(person, &self.clock.now())))
    }

    /// A command in which every signature at a hold point, and every decision against a table that a second person stands for,
    /// says what is known of the PIN, and who has to give theirs first.
    pub(crate) fn with_pins(
        &self,
        procedure: &Procedure,
        command: &Command,
    ) -> Result<(Command, Option<PersonId>), BayError> {
        let mut command = command.clone();
        let mut lacking = None;
        let (kept, now) = (self.kept_pins()?, self.clock.now());
        let mut known = |by: PersonId, is_asked: bool| {
            let pin = kept.get(&by);
            if is_asked && pin.is_some() && !self.given.has(by, &now) {
                lacking = lacking.or(Some(by));
            }
            is_asked.then(|| pin.map_or(SignedPin::NoPin, Kept::signs))
        };
        for signature in command.signatures_mut() {
            let asked = procedure.names.sign(&signature.sign);
            let hold_point = asked.is_some_and(|sign| procedure.sign_off(sign).by.is_some());
            signature.pin = known(signature.by, hold_point);
        }
        for (by, pin, is_asked) in seconds(procedure, &mut command) {
            *pin = known(by, is_asked);
        }
        Ok((command, lacking))
    }

    /// The PINs given for these signatures and decisions were used.
    pub(crate) fn use_pins(&mut self, procedure: &Procedure, command: &mut Command) {
        for signature in command.signatures_mut() {
            self.given.use_up(signature.by);
        }
        for (by, _, is_asked) in seconds(procedure, command) {
            if is_asked {
                self.given.use_up(by);
            }
        }
    }

    fn kept_pins(&self) -> Result<BTreeMap<PersonId, Kept>, BayError> {
        let read = |(person, text): (PersonId, String)| Ok((person, serde_json::from_str(&text)?));
        self.store.pins()?.into_iter().map(read).collect()
    }

    fn put_pin(&mut self, person: PersonId, kept: &Kept) -> Result<(), BayError> {
        Ok(self.store.put_pin(person, &serde_json::to_string(kept)?)?)
    }
}

/// Who stands for decisions against their table, with what is known of the PIN, and whether it is asked for: where the
/// checklist wants a second person.
fn seconds<'a>(
    procedure: &Procedure,
    command: &'a mut Command,
) -> Vec<(PersonId, &'a mut Option<SignedPin>, bool)> {
    let Some((step, values)) = command.values_mut() else { return Vec::new() };
    let entries = procedure.names.step(step).map(|step| procedure.step(step).entries.as_slice());
    let asks = |entry: &str, class: &str| {
        let found = entries.unwrap_or_default().iter().find(|found| found.id == entry);
        let Some(Ask::Decision(asked)) = found.map(|found| &found.ask) else { return false };
        asked.against(class).is_some_and(|against| against.with_second_person)
    };
    let decisions = values.into_iter().filter_map(|(entry, value)| match value {
        EntryValue::Decision { class, against: Some(told), pin } => Some((told.by, pin, asks(entry, class))),
        _ => None,
    });
    decisions.collect()
}

impl Kept {
    /// What a signature says that was given with it.
    fn signs(&self) -> SignedPin {
        match self.how {
            PinSetBy::OwnFirst | PinSetBy::OwnByOld => SignedPin::Own,
            PinSetBy::LeadAndSecond { lead, second } => SignedPin::SetBy { lead, second },
        }
    }

    /// How long no try counts. Only what has passed for sure shortens it: setting the wall clock does not, and after a
    /// restart of the tablet it begins anew.
    fn wait_ms(&self, now: &Stamp) -> u64 {
        let Some(last) = &self.last else { return 0 };
        if self.wrong < FREE_TRIES {
            return 0;
        }
        let whole = FIRST_WAIT_MS << (self.wrong - FREE_TRIES).min(MOST_DOUBLINGS);
        whole.saturating_sub(surely_ms(last, now))
    }
}
