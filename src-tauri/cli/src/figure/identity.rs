//! Trouble codes and the vehicle identification number.

use panside_trade::code::{read_answer, read_codes};
use panside_trade::vin::read_vin;
use panside_trade::{Worked, Working};

use super::given::{Given, wrong};
use super::{Figure, once, perhaps};
use crate::exit::{Exit, Failure};

pub const FIGURES: &[Figure] = &[
    Figure {
        name: "code",
        about: "trouble codes by their structure",
        keys: &[
            perhaps("codes", "codes with commas between them, P0765,U0100"),
            perhaps("bytes", "instead: the bytes of an answer, 43:01:07:65"),
        ],
        example: "codes=P0765,U0100",
        work: codes,
    },
    Figure {
        name: "vin",
        about: "a vehicle identification number: check digit, model year, what it may be misread from",
        keys: &[once("vin", "the number, 17 characters")],
        example: "vin=1M8GDM9AXKP042788",
        work: |given| Ok(read_vin(given.or("vin", "")).working()),
    },
];

fn codes(given: &Given) -> Result<Working, Failure> {
    match (given.get("codes"), given.get("bytes")) {
        (Some(codes), None) => Ok(read_codes(codes)?.working()),
        (None, Some(text)) => {
            let byte = |part: &str| {
                let is_byte = part.len() == 2 && part.chars().all(|digit| digit.is_ascii_hexdigit());
                let byte = u8::from_str_radix(part, 16).ok().filter(|_| is_byte);
                byte.ok_or_else(|| {
                    wrong("bytes", text, "write two hexadecimal digits a byte, such as 43:01:07:65.")
                })
            };
            let bytes = text.split(':').map(byte).collect::<Result<Vec<u8>, Failure>>()?;
            Ok(read_answer(&bytes)?.working())
        }
        _ => Err(Failure::new(Exit::Usage, "Give either codes=P0765,U0100 or bytes=43:01:07:65.")),
    }
}
