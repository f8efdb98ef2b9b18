//! Labour.

use panside_trade::labour::{Clocked, Spent, labour};
use panside_trade::moment::Moment;
use panside_trade::units::Unit;
use panside_trade::{Worked, Working};

use super::given::{Given, moment, quantity, wrong};
use super::{Figure, often, perhaps};
use crate::exit::Failure;
use crate::message::*;

pub const FIGURES: &[Figure] = &[Figure {
    name: "labour",
    about: cli_labour,
    keys: &[
        often("event", cli_labour_event),
        perhaps("until", cli_labour_until),
        perhaps("expected", cli_labour_expected),
    ],
    example: "event=0min:on:drain event=20min:on:drain:waiting:cooling event=50min:on:pan event=95min:off expected=60min",
    work,
}];

fn event(text: &str) -> Result<(Moment, Clocked), Failure> {
    let parts: Vec<&str> = text.split(':').collect();
    let (at, clocked) = match parts.as_slice() {
        [at, "off"] => (at, Clocked::Off),
        [at, "on", phase] => (at, Clocked::On { phase: (*phase).to_owned(), spent: Spent::Work }),
        [at, "on", phase, kind @ ("waiting" | "unplanned"), reason] => {
            let reason = (*reason).to_owned();
            let spent = if *kind == "waiting" { Spent::Waiting(reason) } else { Spent::Unplanned(reason) };
            (at, Clocked::On { phase: (*phase).to_owned(), spent })
        }
        _ => return Err(wrong("event", text, cli_event_form())),
    };
    Ok((moment("event", at)?, clocked))
}

fn work(given: &Given) -> Result<Working, Failure> {
    let events = given.all("event").map(event).collect::<Result<Vec<_>, Failure>>()?;
    let last = events.last().map_or(Moment::from_ms(0), |(at, _)| *at);
    let until = given.get("until").map(|text| moment("until", text)).transpose()?.unwrap_or(last);
    let expected = given.get("expected").map(|text| quantity("expected", text, Unit::Minute)).transpose()?;
    Ok(labour(events, until, expected)?.working())
}
