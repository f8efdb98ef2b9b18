//! What an event is about.

use std::fmt;
use std::str::FromStr;

use panside_messages::Message;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use uuid::Uuid;

use crate::message::journal_no_subject;
use crate::{DeviceId, JobId};

/// What an event is about: one job, or the shop. Written `job:UUID` and `shop:UUID`.
///
/// The shop's events stand in one chain for each device that writes some, named by the device: two tablets may change
/// the shop's people at the same time, and neither chain waits for the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Subject {
    /// One job.
    Job(JobId),
    /// The shop, as the events of this device tell it.
    Shop(DeviceId),
}

impl Subject {
    /// The job, where it is one.
    pub fn job(self) -> Option<JobId> {
        match self {
            Subject::Job(job) => Some(job),
            Subject::Shop(_) => None,
        }
    }

    /// Whether it is the shop.
    pub fn is_shop(self) -> bool {
        matches!(self, Subject::Shop(_))
    }

    /// The id of the job, or of the device whose shop events they are.
    pub fn id(self) -> Uuid {
        match self {
            Subject::Job(job) => job.0,
            Subject::Shop(device) => device.0,
        }
    }
}

impl From<JobId> for Subject {
    fn from(job: JobId) -> Subject {
        Subject::Job(job)
    }
}

impl fmt::Display for Subject {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Subject::Job(job) => write!(f, "job:{job}"),
            Subject::Shop(device) => write!(f, "shop:{device}"),
        }
    }
}

/// A text that names no subject.
#[derive(Debug, thiserror::Error)]
pub struct NoSubject(String);

impl NoSubject {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        journal_no_subject(&self.0)
    }
}

impl fmt::Display for NoSubject {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message().english())
    }
}

impl FromStr for Subject {
    type Err = NoSubject;

    fn from_str(text: &str) -> Result<Subject, NoSubject> {
        let named = text.split_once(':').and_then(|(what, id)| {
            let id: Uuid = id.parse().ok()?;
            match what {
                "job" => Some(Subject::Job(JobId(id))),
                "shop" => Some(Subject::Shop(DeviceId(id))),
                _ => None,
            }
        });
        // One spelling only, or two texts would mean one subject.
        named.filter(|subject| subject.to_string() == text).ok_or_else(|| NoSubject(text.to_owned()))
    }
}

impl Serialize for Subject {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Subject {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Subject, D::Error> {
        String::deserialize(deserializer)?.parse().map_err(de::Error::custom)
    }
}
