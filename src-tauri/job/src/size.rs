//! How much a person may type at once. Whoever takes something in from a person asks [`check`] before looking at it.

use serde::Serialize;
use serde_json::Value;

use crate::command::Refusal;
use crate::message::{refused_too_long, refused_too_many};

/// The most characters of a line: a name, a repair order, a label, a number, a unit. Our choice.
pub const LINE: usize = 200;
/// The most characters of a text: a reason, a note, codes as a scan tool lists them. About two pages; our choice.
pub const TEXT: usize = 4_000;
/// The most pieces of one kind: entries of a step, readings, people, tools. Our choice.
pub const PIECES: usize = 1_000;

/// How much of a text that is too long is told, in characters.
const TOLD: usize = 30;

/// Sees that nothing in it is longer than is taken. Reasons and texts may be [`TEXT`] long, everything else [`LINE`].
///
/// # Errors
/// A refusal with the limit and the beginning of what is too long.
pub fn check(typed: &impl Serialize) -> Result<(), Refusal> {
    // What a person types has no map but by names, so that it can always be written as JSON.
    serde_json::to_value(typed).map_or(Ok(()), |typed| within(&typed, LINE))
}

fn within(value: &Value, most: usize) -> Result<(), Refusal> {
    match value {
        Value::String(text) => text_within(text, most),
        Value::Array(pieces) => {
            count_within(pieces.len())?;
            pieces.iter().try_for_each(|piece| within(piece, most))
        }
        Value::Object(fields) => {
            count_within(fields.len())?;
            fields.iter().try_for_each(|(name, value)| {
                text_within(name, LINE)?;
                within(value, if matches!(name.as_str(), "reason" | "text") { TEXT } else { LINE })
            })
        }
        _ => Ok(()),
    }
}

fn text_within(text: &str, most: usize) -> Result<(), Refusal> {
    // A text has at least as many bytes as characters.
    if text.len() <= most || text.trim().chars().count() <= most {
        return Ok(());
    }
    let start: String = text.trim().chars().take(TOLD).collect();
    Err(refused_too_long(start, most).into())
}

fn count_within(pieces: usize) -> Result<(), Refusal> {
    if pieces > PIECES { Err(refused_too_many(pieces, PIECES).into()) } else { Ok(()) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::command::Command;
    use crate::value::{EntryValue, StickReading, StickShows};

    #[test]
    fn a_name_has_200_characters_at_most_whatever_they_are() {
        let named = |name: String| check(&serde_json::json!({ "name": name }));
        assert_eq!(named("ö".repeat(LINE)), Ok(()));
        assert_eq!(named(format!("  {}  ", "x".repeat(LINE))), Ok(()), "spaces around it do not count");
        let refused = named("ö".repeat(LINE + 1)).unwrap_err();
        assert_eq!(refused.message, refused_too_long("ö".repeat(TOLD), 200_usize));
    }

    #[test]
    fn a_reason_and_a_note_may_be_longer_than_a_line() {
        let command = |reason: usize| Command::Stop { reason: "x".repeat(reason) };
        assert_eq!(check(&command(TEXT)), Ok(()));
        assert_eq!(
            check(&command(TEXT + 1)).unwrap_err().message,
            refused_too_long("x".repeat(TOLD), 4_000_usize)
        );
        let note = EntryValue::Note { text: "x".repeat(TEXT + 1) };
        assert_eq!(check(&note).unwrap_err().message.id, "refused-too-long");
        let step = Command::Begin { step: "x".repeat(LINE + 1) };
        assert_eq!(check(&step).unwrap_err().message.id, "refused-too-long");
    }

    #[test]
    fn a_level_has_no_more_readings_than_anybody_takes() {
        let dry = StickReading {
            temperature: "48".into(),
            temperature_unit: "°C".into(),
            stick: StickShows::NoTrace,
        };
        let level = |readings| EntryValue::Level {
            readings: vec![dry.clone(); readings],
            confirmed_no_trace: false,
            given_up: None,
        };
        assert_eq!(check(&level(PIECES)), Ok(()));
        assert_eq!(
            check(&level(PIECES + 1)).unwrap_err().message,
            refused_too_many(1_001_usize, 1_000_usize)
        );
    }
}
