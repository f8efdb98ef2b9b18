//! Numbers as people type them, with decimal comma or decimal point, and with or without their unit.
//!
//! Separators for thousands and exponents are refused: a number that could be read in two ways must not be taken in
//! one of them in silence. One comma or point alone is always the decimal sign, so `1,234` is a little more than one.

use crate::TradeError;
use crate::measure::Measure;
use crate::units::Unit;

/// The minus sign as it is printed; the hyphen is the one on keyboards.
pub(crate) const MINUS: char = '\u{2212}';

/// Reads a number: spaces around it, a hyphen or minus sign in front, digits, and one decimal comma or point with a
/// digit behind it (`0.5`, `.5`, `−12,75`).
///
/// # Errors
/// [`TradeError::NumberEmpty`], [`TradeError::NumberCharacter`] (letters, inner spaces, a sign in the middle),
/// [`TradeError::NumberSeparators`], [`TradeError::NumberUnfinished`] and [`TradeError::NumberTooLarge`].
pub fn parse_number(text: &str) -> Result<f64, TradeError> {
    let typed = text.trim();
    if typed.is_empty() {
        return Err(TradeError::NumberEmpty);
    }
    let unsigned = typed.strip_prefix(['-', MINUS]);
    let mut digits = String::new();
    let mut separators = 0;
    for character in unsigned.unwrap_or(typed).chars() {
        match character {
            '0'..='9' => digits.push(character),
            ',' | '.' => {
                digits.push('.');
                separators += 1;
            }
            _ => return Err(TradeError::NumberCharacter { text: typed.to_owned(), character }),
        }
    }
    if separators > 1 {
        return Err(TradeError::NumberSeparators { text: typed.to_owned() });
    }
    if !digits.ends_with(|last: char| last.is_ascii_digit()) {
        return Err(TradeError::NumberUnfinished { text: typed.to_owned() });
    }
    match digits.parse::<f64>() {
        // Zero has no sign here: "-0" must not be written to a record as something else than "0".
        Ok(0.0) => Ok(0.0),
        Ok(value) if value.is_finite() => Ok(if unsigned.is_some() { -value } else { value }),
        _ => Err(TradeError::NumberTooLarge { text: typed.to_owned() }),
    }
}

/// Reads a number and the unit behind it, if there is one; else it is taken in `default_unit`. The measure keeps the
/// unit that was typed.
///
/// # Errors
/// As [`parse_number`]; [`TradeError::UnitUnknown`]; [`TradeError::QuantityDiffers`] if the unit measures something
/// else than `default_unit`; and as [`Measure::new`].
pub fn parse_measure(text: &str, default_unit: Unit) -> Result<Measure, TradeError> {
    let in_number = |c: char| c.is_ascii_digit() || c.is_whitespace() || matches!(c, ',' | '.' | '-' | MINUS);
    let (number, unit) = text.split_at(text.find(|c| !in_number(c)).unwrap_or(text.len()));
    let value = parse_number(number)?;
    let unit = if unit.is_empty() { default_unit } else { unit.parse()? };
    Measure::new(value, unit)?.of(default_unit.quantity())
}
