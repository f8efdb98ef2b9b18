//! A value as it was typed, as one line of text.

use panside_job::EntryValue;
use panside_job::value::{StickReading, StickShows};
use panside_procedure::format::{Ask, Role};

use crate::source::{Source, words};

/// The value in words. Figures and units stand as they were typed.
pub(crate) fn text(source: Source<'_>, ask: Option<&Ask>, value: &EntryValue) -> String {
    match value {
        EntryValue::SignOff(signature) => format!("signed by {} as {}", signature.by, role(signature.role)),
        EntryValue::Reading { value, unit } => format!("{value} {unit}"),
        EntryValue::Level { readings, confirmed_no_trace } => {
            let mut said: Vec<_> = readings.iter().map(stick).collect();
            if *confirmed_no_trace {
                said.push("looked at again, still dry".to_owned());
            }
            said.join("; ")
        }
        EntryValue::Count { of, accounted } => {
            let counted = of.iter().map(|(id, pieces)| {
                format!("{} {pieces}", source.item(id).map_or_else(|| words(id), |item| item.name.clone()))
            });
            let counted = counted.collect::<Vec<_>>().join(", ");
            match accounted {
                Some(told) => format!("{counted}; the missing: {}, says {}", told.reason, told.by),
                None => counted,
            }
        }
        EntryValue::Torque { stages, unit, tool } => {
            format!("{} {unit}, {}", stages.join(", then "), tool.name)
        }
        EntryValue::Photo { hash, width, height } => {
            format!("photo {}, {width} × {height}", short(hash))
        }
        EntryValue::Choice { class } => answer(ask, class),
        EntryValue::Scan { text } if text.is_empty() => "none".to_owned(),
        EntryValue::Scan { text } | EntryValue::Note { text } => text.clone(),
        EntryValue::Timer {} => "waited".to_owned(),
    }
}

/// What the button of an answer says; its class in words where the checklist has no such answer.
fn answer(ask: Option<&Ask>, class: &str) -> String {
    let options = match ask {
        Some(Ask::Choice(choice)) => choice.options.as_slice(),
        _ => &[],
    };
    let option = options.iter().find(|option| option.class == class);
    option.map_or_else(|| words(class), |option| option.label.clone())
}

fn stick(reading: &StickReading) -> String {
    let at = format!("at {} {}", reading.temperature, reading.temperature_unit);
    match &reading.stick {
        StickShows::Trace { value, unit } => format!("{value} {unit} {at}"),
        StickShows::NoTrace => format!("no trace {at}"),
    }
}

/// A role in words.
pub(crate) fn role(role: Role) -> &'static str {
    match role {
        Role::Technician => "technician",
        Role::SecondPerson => "second person",
        Role::ServiceWriter => "service writer",
    }
}

/// The first digits of a hash, enough to find it again among a job's photos.
pub(crate) fn short(hash: &str) -> &str {
    hash.get(..12).unwrap_or(hash)
}
