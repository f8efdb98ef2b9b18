//! Names of people, torque tools and devices: which are taken, and which two can't be told apart.
//!
//! Two names can't be told apart when their skeletons are the same: the characters of each replaced by what they look
//! like, after UTS #39, *Unicode Security Mechanisms*, section 4, with the confusables of `unicode-security`. Around it,
//! compatibility forms are taken apart (NFKD of UAX #15: full-width letters, ligatures, circled letters), case counts for
//! nothing, and white space, punctuation and symbols are left out.

use std::fmt;

use panside_messages::Message;
use unicode_normalization::UnicodeNormalization;
use unicode_properties::{GeneralCategory, GeneralCategoryGroup, UnicodeGeneralCategory};
use unicode_security::skeleton;

use crate::message::*;

/// The most characters (Unicode scalar values, after NFC) that a name may have.
pub const LONGEST: usize = 60;

/// Why a name isn't taken.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NameError {
    /// Nothing but white space.
    Missing,
    /// Too long to be read in a list or a signature.
    TooLong {
        /// How many it has.
        chars: usize,
    },
    /// A name by which nobody can be called.
    NoLetter {
        /// The name.
        name: String,
    },
    /// A label with nothing to read.
    NoLetterOrDigit {
        /// The name.
        name: String,
    },
    /// A character that nobody sees, or that changes how the others are shown.
    Hidden {
        /// What kind of character it is.
        what: Hidden,
        /// Its code point.
        code: u32,
        /// Its place among the characters, counted from 1, without white space at the front.
        place: usize,
    },
}

impl NameError {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        match self {
            NameError::Missing => shop_name_missing(),
            NameError::TooLong { chars } => shop_name_too_long(*chars, LONGEST),
            NameError::NoLetter { name } => shop_name_no_letter(name),
            NameError::NoLetterOrDigit { name } => shop_name_no_letter_or_digit(name),
            NameError::Hidden { what, code, place } => {
                shop_name_hidden(what.message(), format!("{code:04X}"), *place)
            }
        }
    }
}

impl fmt::Display for NameError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}

/// Kinds of characters that no name may have.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hidden {
    /// A control character.
    Control,
    /// One that sets the direction of writing.
    Direction,
    /// One that shows nothing: zero width, filler, variation, format.
    Invisible,
    /// One that Unicode gives no meaning: for private use, or not assigned.
    Unassigned,
}

impl Hidden {
    fn message(self) -> Message {
        match self {
            Hidden::Control => shop_hidden_control(),
            Hidden::Direction => shop_hidden_direction(),
            Hidden::Invisible => shop_hidden_invisible(),
            Hidden::Unassigned => shop_hidden_unassigned(),
        }
    }
}

/// A person's name as it is kept: trimmed, white space within it one space, composed (NFC).
///
/// # Errors
/// [`NameError`] with what is wrong. It must have a letter.
pub fn of_person(typed: &str) -> Result<String, NameError> {
    let name = cleaned(typed)?;
    if name.chars().any(char::is_alphabetic) { Ok(name) } else { Err(NameError::NoLetter { name }) }
}

/// The name of a tool or a device as it is kept, as [`of_person`] keeps a person's.
///
/// # Errors
/// [`NameError`] with what is wrong. It must have a letter or a digit: tools are often called by their number.
pub fn of_thing(typed: &str) -> Result<String, NameError> {
    let name = cleaned(typed)?;
    if name.chars().any(char::is_alphanumeric) { Ok(name) } else { Err(NameError::NoLetterOrDigit { name }) }
}

fn cleaned(typed: &str) -> Result<String, NameError> {
    let name: String = typed.split_whitespace().collect::<Vec<_>>().join(" ").nfc().collect();
    let chars = name.chars().count();
    if chars == 0 {
        return Err(NameError::Missing);
    }
    if chars > LONGEST {
        return Err(NameError::TooLong { chars });
    }
    let hidden = name.chars().enumerate().find_map(|(at, c)| hidden(c).map(|what| (what, c, at)));
    match hidden {
        Some((what, c, at)) => Err(NameError::Hidden { what, code: c.into(), place: at + 1 }),
        None => Ok(name),
    }
}

fn hidden(c: char) -> Option<Hidden> {
    match c {
        // The property Bidi_Control of UAX #9.
        '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => {
            Some(Hidden::Direction)
        }
        // The one braille pattern without a dot: a symbol by its category, blank on every screen.
        '\u{2800}' => Some(Hidden::Invisible),
        _ => match c.general_category() {
            GeneralCategory::Control => Some(Hidden::Control),
            GeneralCategory::Format => Some(Hidden::Invisible),
            GeneralCategory::PrivateUse | GeneralCategory::Unassigned => Some(Hidden::Unassigned),
            // A skeleton leaves out what is Default_Ignorable: variation selectors, fillers, joiners.
            _ => skeleton(c.encode_utf8(&mut [0; 4])).next().is_none().then_some(Hidden::Invisible),
        },
    }
}

/// What a name looks like. Two names of which one form is the same can't be told apart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Look {
    /// As it is written: a capital I is a small l.
    written: String,
    /// Compatibility forms taken apart, and whatever its case: a full-width R is a small r, a capital I a small i, a
    /// Cyrillic capital В a small b.
    caseless: String,
}

impl Look {
    /// What a name looks like.
    #[must_use]
    pub fn of(name: &str) -> Look {
        let written: String = name.chars().filter(|c| tells_apart(*c)).collect();
        let caseless: String = name.nfkd().filter(|c| tells_apart(*c)).map(caseless).collect();
        Look { written: skeleton(&written).collect(), caseless: caseless.nfd().collect() }
    }

    /// Whether the two can't be told apart.
    #[must_use]
    pub fn is_like(&self, other: &Look) -> bool {
        self.written == other.written || self.caseless == other.caseless
    }
}

/// Whether people tell names apart by this character: letters, marks and numbers, but not the modifier letters that
/// look like punctuation, such as the apostrophe U+02BC.
fn tells_apart(c: char) -> bool {
    let counts = |c: char| {
        use GeneralCategoryGroup::{Letter, Mark, Number};
        matches!(c.general_category_group(), Letter | Mark | Number)
    };
    let modifier = c.general_category() == GeneralCategory::ModifierLetter;
    counts(c) && (!modifier || skeleton(c.encode_utf8(&mut [0; 4])).any(counts))
}

/// What one character looks like, whatever its case. A letter of another script may look like a Latin one in one case
/// only (Cyrillic В and в), so the case that does is taken.
fn caseless(c: char) -> String {
    let small: String = skeleton(&folded(c.encode_utf8(&mut [0; 4]))).collect();
    let capital: String = skeleton(&c.to_uppercase().collect::<String>()).collect();
    let latin = [&small, &capital].into_iter().find(|text| text.is_ascii());
    latin.map_or_else(|| small.clone(), |text| text.to_ascii_lowercase())
}

/// Without case. By way of the capitals, so that ß is ss and both forms of sigma are one.
fn folded(text: &str) -> String {
    text.to_lowercase().to_uppercase().to_lowercase()
}
