//! The names of things in the journal, each its own type so that a job can't be passed for a device.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// Declares one id that is a UUID: 16 bytes on disk, 36 lower-case characters in text.
macro_rules! uuid_id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, TS)]
        #[serde(transparent)]
        pub struct $name(pub Uuid);

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }

        impl FromStr for $name {
            type Err = uuid::Error;

            fn from_str(text: &str) -> Result<Self, Self::Err> {
                Uuid::from_str(text).map(Self)
            }
        }
    };
}

uuid_id! {
    /// The device that wrote an event; made once, when its store is made.
    DeviceId
}
uuid_id! {
    /// One stretch of writing on one device. A restored or copied store begins a new one, so that
    /// (device, epoch, sequence) is never written twice. It is a UUID and not a count because two copies of
    /// one backup would count to the same number.
    EpochId
}
uuid_id! {
    /// One job: one vehicle with one checklist.
    JobId
}
uuid_id! {
    /// One event. Version 7 (RFC 9562): its first bits are the wall time.
    EventId
}
uuid_id! {
    /// One command of a person, such as one tap; the same command sent again keeps the same id.
    RequestId
}
uuid_id! {
    /// One boot of the device's operating system; monotonic times compare only within it.
    BootId
}

uuid_id! {
    /// A person of the shop. A name is no id: two spellings of one name would be two people, and two people of one
    /// name one.
    PersonId
}

impl PersonId {
    /// The tablet itself, where nobody acted.
    pub const TABLET: PersonId = PersonId(Uuid::nil());
}
