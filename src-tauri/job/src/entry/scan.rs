//! A text read from the vehicle or a label: a vehicle identification number, trouble codes, any text.

use panside_procedure::format::entry::ScanOf;

use super::Classified;
use crate::message::{
    code_form, code_padding, scan_empty, scan_no_codes, scan_read, vin_character, vin_length,
};
use crate::request::Refusal;
use crate::value::EntryValue;

/// Characters of a vehicle identification number (ISO 3779, second-hand).
const VIN_LENGTH: usize = 17;

pub(super) fn classify(of: ScanOf, text: &str) -> Result<Classified, Refusal> {
    let text = match of {
        ScanOf::Vin => vin(text)?,
        ScanOf::Codes => codes(text)?,
        ScanOf::Text if text.trim().is_empty() => return Err(scan_empty().into()),
        ScanOf::Text => text.trim().to_owned(),
    };
    let said = if text.is_empty() { scan_no_codes() } else { scan_read(&text) };
    Ok(Classified::new("read", EntryValue::Scan { text }, said))
}

/// Capital letters and digits without I, O and Q, which look like 1 and 0. The check digit is not judged: it is not
/// used everywhere.
fn vin(text: &str) -> Result<String, Refusal> {
    let vin = text.trim().to_uppercase();
    let length = vin.chars().count();
    if length != VIN_LENGTH {
        return Err(vin_length(length).into());
    }
    let allowed = |c: char| c.is_ascii_digit() || (c.is_ascii_uppercase() && !matches!(c, 'I' | 'O' | 'Q'));
    match vin.chars().enumerate().find(|(_, character)| !allowed(*character)) {
        Some((at, character)) => Err(vin_character(character.to_string(), at + 1).into()),
        None => Ok(vin),
    }
}

/// Codes of the form that SAE J2012 gives (second-hand): a letter for the system, a digit from 0 to 3, three
/// hexadecimal digits. Spaces or commas stand between them. No code at all is an answer as well.
fn codes(text: &str) -> Result<String, Refusal> {
    let codes =
        text.split(|c: char| c.is_whitespace() || matches!(c, ',' | ';')).filter(|code| !code.is_empty());
    let mut read = Vec::new();
    for code in codes.map(str::to_uppercase) {
        let has_form = match code.as_bytes() {
            [system, origin, number @ ..] => {
                matches!(system, b'P' | b'C' | b'B' | b'U')
                    && matches!(origin, b'0'..=b'3')
                    && number.len() == 3
                    && number.iter().all(u8::is_ascii_hexdigit)
            }
            _ => false,
        };
        if !has_form {
            return Err(code_form(code).into());
        }
        if code.ends_with("0000") {
            return Err(code_padding(code).into());
        }
        read.push(code);
    }
    Ok(read.join(" "))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(of: ScanOf, text: &str) -> Result<String, String> {
        match classify(of, text) {
            Ok(Classified { value: EntryValue::Scan { text }, .. }) => Ok(text),
            Ok(other) => Err(format!("{other:?}")),
            Err(refusal) => Err(refusal.message.id),
        }
    }

    #[test]
    fn a_vin_has_seventeen_characters_and_is_kept_in_capitals() {
        // The worked example of the check digit in the encyclopedia article on vehicle identification numbers.
        assert_eq!(read(ScanOf::Vin, " 1m8gdm9axkp042788 "), Ok("1M8GDM9AXKP042788".into()));
        assert_eq!(read(ScanOf::Vin, "1M8GDM9AXKP04278"), Err("vin-length".into()));
        assert_eq!(read(ScanOf::Vin, ""), Err("vin-length".into()));
    }

    #[test]
    fn letters_that_look_like_digits_are_refused_with_their_place() {
        for bad in ["IM8GDM9AXKP042788", "1M8GDM9AXKPO42788", "1M8GDM9AXKP0427Q8", "1M8GDM9AXKP-42788"] {
            assert_eq!(read(ScanOf::Vin, bad), Err("vin-character".into()), "{bad}");
        }
        assert_eq!(vin("1M8GDM9AXKPO42788").unwrap_err().message, vin_character("O", 12_usize));
    }

    #[test]
    fn codes_have_the_form_of_the_standard() {
        // P0765, P02A7 and U0100 decode from two bytes in the scanner library of scapy 2.8.0.
        assert_eq!(read(ScanOf::Codes, "p0765, P02a7\nU0100"), Ok("P0765 P02A7 U0100".into()));
        for bad in ["X0765", "P4765", "P076", "P07655", "P07G5", "0765", "PÖ765"] {
            assert_eq!(read(ScanOf::Codes, bad), Err("code-form".into()), "{bad}");
        }
    }

    #[test]
    fn no_codes_are_an_answer_and_padding_is_none() {
        assert_eq!(read(ScanOf::Codes, "  "), Ok(String::new()));
        assert_eq!(read(ScanOf::Codes, "P0000"), Err("code-padding".into()));
    }

    #[test]
    fn a_label_needs_some_text() {
        assert_eq!(read(ScanOf::Text, " lot 7 "), Ok("lot 7".into()));
        assert_eq!(read(ScanOf::Text, " "), Err("scan-empty".into()));
    }
}
