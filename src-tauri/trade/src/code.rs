//! Trouble codes by the structure of SAE J2012 / ISO 15031-6: two bytes, or a letter, a digit and three hexadecimal
//! digits. What a code means beyond its structure is not told here.

use std::fmt;
use std::str::FromStr;

use panside_messages::Message;
use serde::{Deserialize, Serialize};

use crate::FigureError;
use crate::message::working::*;
use crate::message::*;
use crate::source;
use crate::working::{Worked, Working};

/// A trouble code.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct TroubleCode(u16);

/// Which part of the vehicle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum System {
    /// P.
    Powertrain,
    /// C.
    Chassis,
    /// B.
    Body,
    /// U.
    Network,
}

impl System {
    const ALL: [(System, char, &'static str); 4] = [
        (System::Powertrain, 'P', "powertrain"),
        (System::Chassis, 'C', "chassis"),
        (System::Body, 'B', "body"),
        (System::Network, 'U', "network"),
    ];
}

/// Who defines a code.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Origin {
    /// The standard: the same on every vehicle.
    Standard,
    /// The vehicle's maker: look in its own list.
    Maker,
    /// Reserved, or both by range.
    Reserved,
}

/// Which part of the powertrain, for codes of the standard.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Subsystem {
    /// 0, 1, 2: fuel and air metering.
    FuelAndAir,
    /// 3: ignition and misfire.
    Ignition,
    /// 4: auxiliary emission controls.
    Emissions,
    /// 5: speed and idle.
    SpeedAndIdle,
    /// 6: computer and its outputs.
    Computer,
    /// 7, 8, 9: transmission.
    Transmission,
    /// A, B, C: hybrid propulsion (from memory).
    Hybrid,
}

impl TroubleCode {
    /// The code of two bytes, as a control unit sends them. Every pair is one.
    pub fn from_bytes(bytes: [u8; 2]) -> TroubleCode {
        TroubleCode(u16::from_be_bytes(bytes))
    }

    /// The two bytes.
    pub fn to_bytes(self) -> [u8; 2] {
        self.0.to_be_bytes()
    }

    /// Whether these are the two empty bytes that fill up an answer: no code.
    pub fn is_padding(self) -> bool {
        self.0 == 0
    }

    /// The system, from the upper two bits.
    pub fn system(self) -> System {
        self.row().0
    }

    fn row(self) -> (System, char, &'static str) {
        let [powertrain, chassis, body, network] = System::ALL;
        match self.0 >> 14 {
            0 => powertrain,
            1 => chassis,
            2 => body,
            _ => network,
        }
    }

    /// The digit from 0 to 3 behind the letter.
    fn digit(self) -> u16 {
        self.0 >> 12 & 3
    }

    /// Who defines it.
    pub fn origin(self) -> Origin {
        match (self.system(), self.digit()) {
            (_, 0) | (System::Powertrain, 2) => Origin::Standard,
            (_, 1 | 2) => Origin::Maker,
            // P3000 to P33FF are the maker's, P3400 on are the standard's.
            (System::Powertrain, _) if self.number() < 0x400 => Origin::Maker,
            (System::Powertrain, _) => Origin::Standard,
            _ => Origin::Reserved,
        }
    }

    /// Which part of the powertrain; nothing for other systems, for a maker's codes and for parts without a name.
    pub fn subsystem(self) -> Option<Subsystem> {
        if self.system() != System::Powertrain || self.origin() != Origin::Standard || self.digit() == 3 {
            return None;
        }
        match self.0 >> 8 & 0xF {
            0..=2 => Some(Subsystem::FuelAndAir),
            3 => Some(Subsystem::Ignition),
            4 => Some(Subsystem::Emissions),
            5 => Some(Subsystem::SpeedAndIdle),
            6 => Some(Subsystem::Computer),
            7..=9 => Some(Subsystem::Transmission),
            0xA..=0xC => Some(Subsystem::Hybrid),
            _ => None,
        }
    }

    /// The lower twelve bits: three hexadecimal digits.
    pub fn number(self) -> u16 {
        self.0 & 0xFFF
    }
}

impl fmt::Display for TroubleCode {
    /// The code as it is said, such as `P0765`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}{}{:03X}", self.row().1, self.digit(), self.number())
    }
}

impl FromStr for TroubleCode {
    type Err = FigureError;

    /// Reads a code as it is said, in capital or small letters.
    ///
    /// # Errors
    /// [`FigureError::CodeForm`] for anything else, [`FigureError::CodePadding`] for a code ending in 0000, which is
    /// what fills up an answer without codes.
    fn from_str(text: &str) -> Result<TroubleCode, FigureError> {
        let plain = text.trim().to_uppercase();
        let malformed = || FigureError::CodeForm { text: text.trim().to_owned() };
        let mut characters = plain.chars();
        let letter = characters.next().ok_or_else(malformed)?;
        let system = System::ALL.iter().position(|row| row.1 == letter).ok_or_else(malformed)?;
        let rest = characters.as_str();
        let well_formed = rest.len() == 4
            && rest.chars().all(|character| character.is_ascii_hexdigit())
            && rest.starts_with(['0', '1', '2', '3']);
        if !well_formed {
            return Err(malformed());
        }
        if rest == "0000" {
            return Err(FigureError::CodePadding { text: plain });
        }
        let low = u16::from_str_radix(rest, 16).map_err(|_| malformed())?;
        // Four letters, so the place fits two bits.
        Ok(TroubleCode((system as u16) << 14 | low))
    }
}

impl TryFrom<String> for TroubleCode {
    type Error = FigureError;

    fn try_from(text: String) -> Result<TroubleCode, FigureError> {
        text.parse()
    }
}

impl From<TroubleCode> for String {
    fn from(code: TroubleCode) -> String {
        code.to_string()
    }
}

/// Codes that were read, in their order, each once.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Codes {
    /// What was read or received.
    pub from: String,
    /// The codes.
    pub codes: Vec<TroubleCode>,
}

/// Reads codes with spaces, commas or semicolons between them. None at all is an answer too.
///
/// # Errors
/// As the code's own [`FromStr`], for the first that can't be read.
pub fn read_codes(text: &str) -> Result<Codes, FigureError> {
    let parts =
        text.split(|c: char| c.is_whitespace() || matches!(c, ',' | ';')).filter(|part| !part.is_empty());
    let codes = parts.map(str::parse).collect::<Result<Vec<TroubleCode>, _>>()?;
    Ok(Codes { from: text.trim().to_owned(), codes: once_each(codes) })
}

/// What is wrong with an answer of a control unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AnswerWrong {
    /// It ends before its count.
    TooShort,
    /// It is an answer to another request.
    FirstByte,
    /// It says another number of codes than it has.
    Count,
}

impl AnswerWrong {
    pub(crate) fn message(self) -> Message {
        match self {
            AnswerWrong::TooShort => trade_answer_too_short(),
            AnswerWrong::FirstByte => trade_answer_first_byte(),
            AnswerWrong::Count => trade_answer_count(),
        }
    }
}

/// Reads the answer of a control unit to a request for codes on a CAN bus: 43 (or 47, 4A), how many, then two bytes
/// each; empty bytes at the end fill it up.
///
/// # Errors
/// [`FigureError::CodeAnswer`] if it is another answer or its count does not fit its codes.
pub fn read_answer(bytes: &[u8]) -> Result<Codes, FigureError> {
    let from = bytes.iter().map(|byte| format!("{byte:02X}")).collect::<Vec<_>>().join(" ");
    let refused = |why| FigureError::CodeAnswer { bytes: from.clone(), why };
    let [service, count, pairs @ ..] = bytes else { return Err(refused(AnswerWrong::TooShort)) };
    if !matches!(service, 0x43 | 0x47 | 0x4A) {
        return Err(refused(AnswerWrong::FirstByte));
    }
    let codes: Vec<TroubleCode> =
        pairs.as_chunks::<2>().0.iter().map(|pair| TroubleCode::from_bytes(*pair)).collect();
    let codes: Vec<_> = codes.into_iter().filter(|code| !code.is_padding()).collect();
    if codes.len() != usize::from(*count) {
        return Err(refused(AnswerWrong::Count));
    }
    Ok(Codes { from, codes: once_each(codes) })
}

fn once_each(codes: Vec<TroubleCode>) -> Vec<TroubleCode> {
    let mut kept: Vec<TroubleCode> = Vec::new();
    for code in codes {
        if !kept.contains(&code) {
            kept.push(code);
        }
    }
    kept
}

impl TroubleCode {
    /// System, origin and family.
    fn meaning(self) -> Message {
        let origin = match self.origin() {
            Origin::Standard => "standard",
            Origin::Maker => "maker",
            Origin::Reserved => "reserved",
        };
        let part = self.subsystem().map_or("none", |part| match part {
            Subsystem::FuelAndAir => "fuel_and_air",
            Subsystem::Ignition => "ignition",
            Subsystem::Emissions => "emissions",
            Subsystem::SpeedAndIdle => "speed_and_idle",
            Subsystem::Computer => "computer",
            Subsystem::Transmission => "transmission",
            Subsystem::Hybrid => "hybrid",
        });
        working_code(self.row().2, origin, part)
    }
}

impl Worked for Codes {
    fn working(&self) -> Working {
        let mut working = Working::of(working_codes()).given(working_read(), &self.from);
        for code in &self.codes {
            let [high, low] = code.to_bytes();
            let bytes = working_code_bytes(format!("{high:02X} {low:02X}"));
            working = working.step(working_name(code.to_string()), bytes, code.meaning());
        }
        let names: Vec<String> = self.codes.iter().map(ToString::to_string).collect();
        let answer = match names.len() {
            0 => working_codes_none(),
            count => working_codes_found(count, names),
        };
        working.answer(answer).sources([source::code_form(), source::code_groups()])
    }
}
