//! Trouble codes and the vehicle identification number.

use panside_trade::code::{read_answer, read_codes};
use panside_trade::vin::read_vin;
use panside_trade::{Worked, Working};

use super::given::{Given, wrong};
use super::{Figure, once, perhaps};
use crate::exit::{Exit, Failure};
use crate::message::*;

pub const FIGURES: &[Figure] = &[
    Figure {
        name: "code",
        about: cli_code,
        keys: &[perhaps("codes", cli_code_codes), perhaps("bytes", cli_code_bytes)],
        example: "codes=P0765,U0100",
        work: codes,
    },
    Figure {
        name: "vin",
        about: cli_vin,
        keys: &[once("vin", cli_vin_vin)],
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
                byte.ok_or_else(|| wrong("bytes", text, cli_bytes_form()))
            };
            let bytes = text.split(':').map(byte).collect::<Result<Vec<u8>, Failure>>()?;
            Ok(read_answer(&bytes)?.working())
        }
        _ => Err(Failure::new(Exit::Usage, cli_codes_or_bytes())),
    }
}
