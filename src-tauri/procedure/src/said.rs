//! What a checklist's words become in a message: the word a sentence chooses by.

use panside_messages::Arg;

use crate::format::{Role, Signal};

impl From<Role> for Arg {
    fn from(role: Role) -> Arg {
        Arg::from(match role {
            Role::Technician => "technician",
            Role::SecondPerson => "second_person",
            Role::ServiceWriter => "service_writer",
        })
    }
}

impl From<Signal> for Arg {
    fn from(signal: Signal) -> Arg {
        Arg::from(match signal {
            Signal::Danger => "danger",
            Signal::Warning => "warning",
            Signal::Caution => "caution",
            Signal::Notice => "notice",
        })
    }
}
