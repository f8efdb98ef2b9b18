//! A text read from the vehicle or a label: a vehicle identification number, trouble codes, any text.

use panside_procedure::format::Checklist;
use panside_procedure::format::entry::{Scan, ScanOf};
use panside_trade::code::{System, TroubleCode, read_codes};
use panside_trade::vin::{Suggestion, Vin, VinProblem, read_vin};

use super::kind::{self, Kind, measures_nothing};
use super::{Classified, Context, name_of};
use crate::command::Refusal;
use crate::message::{
    Message, code_apart, code_told, scan_empty, scan_no_codes, scan_read, vin_character, vin_check_digit,
    vin_fits, vin_length, vin_year,
};
use crate::sheet::Specs;
use crate::value::EntryValue;

/// How many numbers that may be meant are told.
const MOST_SUGGESTED: usize = 3;

pub(super) fn classify(of: ScanOf, text: &str) -> Result<Classified, Refusal> {
    match of {
        ScanOf::Vin => vin(text),
        ScanOf::Codes => codes(text),
        ScanOf::Text if text.trim().is_empty() => Err(scan_empty().into()),
        ScanOf::Text => {
            let text = text.trim().to_owned();
            let said = scan_read(&text);
            Ok(Classified::new("read", EntryValue::Scan { text }, said))
        }
    }
}

/// A number of the wrong length or with a character that none has is no number. A check digit that does not fit is
/// told and not refused: it is not used everywhere.
fn vin(text: &str) -> Result<Classified, Refusal> {
    let read = read_vin(text);
    let refused = read.problems.iter().find_map(|problem| match problem {
        VinProblem::Length { found } => Some(vin_length(*found)),
        VinProblem::Character { position, found } => Some(vin_character(found.to_string(), *position)),
        VinProblem::CheckDigit { .. } | VinProblem::ModelYear { .. } => None,
    });
    let perhaps: Vec<Message> = perhaps(&read);
    if let Some(message) = refused {
        return Err(Refusal { message, unmet: perhaps });
    }
    let mut said = vec![scan_read(&read.vin)];
    said.extend(read.problems.iter().filter_map(|problem| match problem {
        VinProblem::CheckDigit { found, expected } => {
            Some(vin_check_digit(found.to_string(), expected.to_string()))
        }
        VinProblem::ModelYear { found } => Some(vin_year(found.to_string())),
        VinProblem::Length { .. } | VinProblem::Character { .. } => None,
    }));
    said.extend(perhaps);
    said.extend(read.fits().then(vin_fits));
    let value = EntryValue::Scan { text: read.vin.clone() };
    Ok(Classified::worked_out("read", value, said, read))
}

/// Numbers that may be meant, likeliest first.
fn perhaps(read: &Vin) -> Vec<Message> {
    read.suggestions.iter().take(MOST_SUGGESTED).map(Suggestion::message).collect()
}

/// Codes by their structure. A code of another system is told as set apart: it does not bear on the transmission by
/// itself. No code at all is an answer as well.
fn codes(text: &str) -> Result<Classified, Refusal> {
    let read = read_codes(text).map_err(|error| Refusal::from(error.message()))?;
    let names: Vec<String> = read.codes.iter().map(ToString::to_string).collect();
    let text = names.join(" ");
    let mut said = vec![if names.is_empty() { scan_no_codes() } else { scan_read(&text) }];
    said.extend(read.codes.iter().map(|code| tell(*code)));
    Ok(Classified::worked_out("read", EntryValue::Scan { text }, said, read))
}

/// What a code's structure says. Who made it and which family it is of decide what it is told with.
fn tell(code: TroubleCode) -> Message {
    let (system, origin) = (name_of(code.system()), name_of(code.origin()));
    let part = code.subsystem().map_or_else(|| "none".to_owned(), name_of);
    let name = code.to_string();
    let apart = match (code.system(), code.subsystem()) {
        (System::Chassis | System::Body, _) => true,
        (System::Powertrain | System::Network, None) => false,
        (_, Some(part)) => {
            use panside_trade::code::Subsystem::{Computer, Hybrid, Transmission};
            !matches!(part, Transmission | Computer | Hybrid)
        }
    };
    if apart { code_apart(name, system, origin, part) } else { code_told(name, system, origin, part) }
}

impl Kind for Scan {
    fn classify(
        &self,
        _specs: &Specs,
        value: &EntryValue,
        _context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Scan { text } => classify(self.of, text),
            _ => Err(kind::other("scan", value)),
        }
    }

    measures_nothing!();

    fn in_short(&self, value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        let EntryValue::Scan { text } = value else { return None };
        Some(text.clone())
    }
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
        for bad in ["IM8GDM9AXKP042788", "1M8GDM9AXKPO42788", "1M8GDM9AXKP0427Q8", "1M8GDM9AXKPÄ42788"] {
            assert_eq!(read(ScanOf::Vin, bad), Err("vin-character".into()), "{bad}");
        }
        assert_eq!(vin("1M8GDM9AXKPO42788").unwrap_err().message, vin_character("O", 12_usize));
    }

    #[test]
    fn codes_have_the_form_of_the_standard() {
        // P0765, P02A7 and U0100 decode from two bytes in the scanner library of scapy 2.8.0.
        assert_eq!(read(ScanOf::Codes, "p0765, P02a7\nU0100"), Ok("P0765 P02A7 U0100".into()));
        for bad in ["X0765", "P4765", "P076", "P07655", "P07G5", "0765", "PÖ765"] {
            assert_eq!(read(ScanOf::Codes, bad), Err("trade-code-form".into()), "{bad}");
        }
    }

    #[test]
    fn no_codes_are_an_answer_and_padding_is_none() {
        assert_eq!(read(ScanOf::Codes, "  "), Ok(String::new()));
        assert_eq!(read(ScanOf::Codes, "P0000"), Err("trade-code-padding".into()));
    }

    #[test]
    fn a_label_needs_some_text() {
        assert_eq!(read(ScanOf::Text, " lot 7 "), Ok("lot 7".into()));
        assert_eq!(read(ScanOf::Text, " "), Err("scan-empty".into()));
    }
}
