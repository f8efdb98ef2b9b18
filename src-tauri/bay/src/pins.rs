//! PINs: who a person is at a hold point. A PIN is asked for a signature that the checklist asks of a role, for checking
//! a spec sheet, and for changing a PIN; a person without one works as before, and the record says so.
//!
//! What is kept is a hash (Argon2id, a salt for each PIN) and how often a wrong PIN was tried. The PIN itself is in no
//! journal, draft or log. Four to eight digits are few: whoever has the tablet's files and time finds them out. It keeps
//! a colleague from signing for another, not a thief.

use std::collections::BTreeMap;
use std::fmt;

use argon2::Argon2;
use argon2::password_hash::phc::PasswordHash;
use argon2::password_hash::{PasswordHasher, PasswordVerifier};
use panside_job::clock::{civil_date, elapsed_ms};
use panside_job::decide::person;
use panside_job::{Actor, Request, size};
use panside_journal::Stamp;
use panside_procedure::Procedure;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

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
    /// The name as it was written when it was set.
    name: String,
    /// The hash with its salt, in the PHC string format.
    hash: String,
    /// Who set it.
    set_by: String,
    /// When, in ms since 1970.
    set_ms: i64,
    /// Wrong tries since the last right one.
    wrong: u32,
    /// The last of them.
    last: Option<Stamp>,
}

/// That a person has a PIN.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PinHolder {
    /// The person.
    pub name: String,
    /// Who set it.
    pub set_by: String,
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
pub(crate) struct GivenPins(BTreeMap<String, Stamp>);

impl GivenPins {
    fn has(&self, name: &str, now: &Stamp) -> bool {
        self.0.get(&person(name)).is_some_and(|at| elapsed_ms(at, now).is_some_and(|ms| ms <= GIVEN_FOR_MS))
    }

    /// A PIN that was given is used: the next act asks for it again.
    pub(crate) fn use_up(&mut self, name: &str) {
        self.0.remove(&person(name));
    }
}

impl Bay {
    /// Who has a PIN.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said, [`BayError::Json`] when the list is damaged.
    pub fn pin_holders(&self, utc_offset_min: i32) -> Result<Vec<PinHolder>, BayError> {
        let kept = self.kept_pins()?.into_values();
        let holder = |kept: Kept| PinHolder {
            on: civil_date(kept.set_ms, utc_offset_min).to_string(),
            name: kept.name,
            set_by: kept.set_by,
        };
        Ok(kept.map(holder).collect())
    }

    /// Gives a person's PIN for what comes next. Each try is counted on disk before it is looked at.
    ///
    /// # Errors
    /// [`BayError::PinForm`]; [`BayError::NoPin`] when they have none; [`BayError::Store`] with what the disk said.
    pub fn give_pin(&mut self, name: &str, pin: &Pin) -> Result<PinReply, BayError> {
        // What is none is nobody's PIN, and costs no try.
        let pin = pin.clone().checked()?;
        let now = self.clock.now();
        let kept = self.kept_pins()?.remove(&person(name));
        let mut kept = kept.ok_or_else(|| BayError::NoPin(name.to_owned()))?;
        let wait_s = kept.wait_ms(&now).div_ceil(1000);
        if wait_s > 0 {
            return Ok(PinReply { right: false, wait_s });
        }
        kept.wrong = kept.wrong.saturating_add(1);
        kept.last = Some(now);
        self.put_pin(&kept)?;
        if !pin.opens(&kept.hash)? {
            return Ok(PinReply { right: false, wait_s: kept.wait_ms(&now).div_ceil(1000) });
        }
        kept.wrong = 0;
        kept.last = None;
        self.put_pin(&kept)?;
        self.given.0.insert(person(name), now);
        Ok(PinReply { right: true, wait_s: 0 })
    }

    /// Sets a person's PIN. Who has one gives it first ([`Bay::give_pin`]), for their own as for another's.
    ///
    /// # Errors
    /// [`BayError::PinAsked`] with whose PIN is to be given first; [`BayError::PinOfOther`] for somebody without a PIN
    /// who would set another's; [`BayError::PinForm`]; [`BayError::Store`] with what the disk said.
    pub fn set_pin(&mut self, name: &str, pin: Pin, by: &Actor) -> Result<(), BayError> {
        let pin = pin.checked()?;
        size::check(&(name, by)).map_err(|refusal| self.refused(refusal))?;
        let given = self.pin_of(&by.name)?;
        if given.is_none() && person(name) != person(&by.name) {
            return Err(BayError::PinOfOther(by.name.clone()));
        }
        if given == Some(false) {
            return Err(BayError::PinAsked(by.name.clone()));
        }
        let kept = Kept {
            name: name.trim().to_owned(),
            hash: pin.hashed()?,
            set_by: by.name.trim().to_owned(),
            set_ms: self.clock.now().wall_ms,
            wrong: 0,
            last: None,
        };
        self.put_pin(&kept)?;
        self.given.use_up(&by.name);
        Ok(())
    }

    /// Whether a person's PIN was given for what is done now; nothing: they have none.
    pub(crate) fn pin_of(&self, name: &str) -> Result<Option<bool>, BayError> {
        let has = self.store.pins()?.contains_key(&person(name));
        Ok(has.then(|| self.given.has(name, &self.clock.now())))
    }

    /// A wish in which every signature at a hold point says whether the PIN was given, and who has to give theirs first.
    pub(crate) fn with_pins(
        &self,
        procedure: &Procedure,
        wish: &Request,
    ) -> Result<(Request, Option<String>), BayError> {
        let mut wish = wish.clone();
        let mut lacking = None;
        for signature in wish.signatures_mut() {
            let asked = procedure.names.sign(&signature.sign);
            let hold_point = asked.is_some_and(|sign| procedure.sign_off(sign).by.is_some());
            let pin = if hold_point { Some(self.pin_of(&signature.by)?) } else { None };
            if pin == Some(Some(false)) {
                lacking = lacking.or_else(|| Some(signature.by.trim().to_owned()));
            }
            signature.pin = pin.map(|given| given == Some(true));
        }
        Ok((wish, lacking))
    }

    /// The PINs given for these signatures were used.
    pub(crate) fn use_pins(&mut self, wish: &mut Request) {
        for signature in wish.signatures_mut() {
            self.given.use_up(&signature.by);
        }
    }

    fn kept_pins(&self) -> Result<BTreeMap<String, Kept>, BayError> {
        let read = |(name, text): (String, String)| Ok((name, serde_json::from_str(&text)?));
        self.store.pins()?.into_iter().map(read).collect()
    }

    fn put_pin(&mut self, kept: &Kept) -> Result<(), BayError> {
        Ok(self.store.put_pin(&person(&kept.name), &serde_json::to_string(kept)?)?)
    }
}

impl Kept {
    /// How long no try counts. Where a clock went backwards nobody knows how much of it has passed: it begins anew.
    fn wait_ms(&self, now: &Stamp) -> u64 {
        let Some(last) = &self.last else { return 0 };
        if self.wrong < FREE_TRIES {
            return 0;
        }
        let whole = FIRST_WAIT_MS << (self.wrong - FREE_TRIES).min(MOST_DOUBLINGS);
        whole.saturating_sub(elapsed_ms(last, now).unwrap_or(0))
    }
}
