//! Where rules and constants come from, and how well that was seen.
//!
//! No text of a standard could be read: it is behind a pay wall. What is said of a standard here is second-hand, read
//! on a page that quotes it. A shop that owns the standard can compare, and correct a value in one place.

use std::fmt;

use serde::Serialize;

/// How well a source was seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Seen {
    /// Read in the source itself.
    Read,
    /// Read on a page that quotes it.
    SecondHand,
    /// From memory.
    Memory,
    /// Common practice of the trade, without a source.
    CommonPractice,
    /// A choice made here.
    Ours,
}

/// Where a rule or a constant comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Source {
    /// What it is and says.
    pub says: &'static str,
    /// How well it was seen.
    pub seen: Seen,
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let seen = match self.seen {
            Seen::Read => "read",
            Seen::SecondHand => "second-hand",
            Seen::Memory => "from memory",
            Seen::CommonPractice => "common practice",
            Seen::Ours => "our choice",
        };
        write!(f, "{} ({seen})", self.says)
    }
}

const fn source(says: &'static str, seen: Seen) -> Source {
    Source { says, seen }
}

pub(crate) const CHART: Source =
    source("the sheet's chart, on straight lines between its rows, never beyond them", Seen::Ours);
pub(crate) const LEVEL_CONDITIONS: Source = source(
    "the level counts on a level floor, idling, in park, after the ranges were cycled",
    Seen::CommonPractice,
);
pub(crate) const READ_TWICE: Source =
    source("the level is read at least twice and the readings must agree", Seen::CommonPractice);
pub(crate) const LEVEL_FIRST: Source =
    source("level and temperature come before any diagnosis", Seen::CommonPractice);
pub(crate) const ADD_LESS: Source =
    source("add less than the estimate, then read again", Seen::CommonPractice);
pub(crate) const DRAINED_FIRST: Source =
    source("the first refill is what was drained, the rest follows the reading", Seen::CommonPractice);
pub(crate) const LEAST_SQUARES: Source =
    source("least squares; the spread from what is left over, by Student's t (textbook)", Seen::Memory);
pub(crate) const EXPANSION: Source = source(
    "ASTM D1250 / API MPMS 11.1, lubricating oils, table 54D: K0 = 0, K1 = 0.6278 in °C; transmission fluid is an oil \
     with many additives, so this is an estimate",
    Seen::SecondHand,
);
pub(crate) const UNCERTAINTY: Source = source(
    "JCGM 100 (GUM): limits to both sides count as rectangular, parts add up as squares, coverage factor 2",
    Seen::Memory,
);
pub(crate) const COPPER: Source =
    source("NBS Handbook 100, copper: 0.00393 / °C at 20 °C, linear up to 200 °C", Seen::SecondHand);
pub(crate) const METER_ERROR: Source =
    source("a meter's error is its percent of the reading and its last digits together", Seen::SecondHand);
pub(crate) const CODE_FORM: Source =
    source("SAE J2012 / ISO 15031-6: two bytes, system and origin in the upper four bits", Seen::SecondHand);
pub(crate) const CODE_GROUPS: Source = source(
    "SAE J2012 groups as two scan tool manuals and a forum page quote them; where they differ on 3xxx in body and \
     chassis, \"reserved\" is taken",
    Seen::SecondHand,
);
pub(crate) const VIN_RULE: Source =
    source("49 CFR 565.15 (c): values, weights, remainder by 11", Seen::SecondHand);
pub(crate) const VIN_YEARS: Source = source(
    "49 CFR 565.15: position 10 by a cycle of 30 years; position 7 tells the cycle of light vehicles only",
    Seen::SecondHand,
);
pub(crate) const VIN_LOOKALIKES: Source =
    source("characters that are taken for each other by eye", Seen::Ours);
pub(crate) const TOOL_RULES: Source = source(
    "ISO 6789:2003, type II class A: 4 %, 6 % up to 10 N·m; used within its range only",
    Seen::SecondHand,
);
pub(crate) const CALIBRATED_YEARLY: Source =
    source("ISO 6789: a click tool is calibrated every 12 months or 5000 clicks", Seen::Memory);
pub(crate) const GUARD_BAND: Source = source(
    "ISO 14253-1: proved inside when the limits, narrowed by the uncertainty, are kept",
    Seen::SecondHand,
);
pub(crate) const ADAPTER: Source = source(
    "setting = torque × L / (L + E cos angle): US Army TM 9-254, US Navy aviation training manual",
    Seen::Read,
);
pub(crate) const PROOF_LOADS: Source = source(
    "ISO 898-1: stress area and proof stress, as suppliers' tables give them; 8.8 from memory",
    Seen::SecondHand,
);
pub(crate) const NUT_FACTOR: Source = source(
    "Shigley, Mechanical Engineering Design, 9th ed., T = K F d and table 8-15: K 0.12 to 0.30",
    Seen::Read,
);
pub(crate) const COARSE_PITCH: Source = source("ISO 261: coarse pitches", Seen::Memory);
pub(crate) const STAR: Source =
    source("star pattern as in ASME PCC-1, the older one: opposite, quarter, opposite", Seen::Memory);
pub(crate) const FROM_THE_MIDDLE: Source =
    source("a cover is tightened from the middle out, crosswise, in stages", Seen::CommonPractice);
pub(crate) const NEWTON: Source =
    source("Newton's law of cooling, T = Ta + (T0 − Ta) e^(−k t) (textbook)", Seen::Memory);
pub(crate) const REHEATS: Source =
    source("a catalyst's core heats its shell again: joint and shell are both probed", Seen::CommonPractice);
pub(crate) const TOUCH: Source = source(
    "ISO 13732-1, bare metal, as pages and ECMA-287 quote it: 65 °C 1 s, 55 °C 10 s, 48 °C 10 min, 43 °C longer; \
     51 °C for 1 min is from memory",
    Seen::SecondHand,
);
pub(crate) const GLOVES: Source =
    source("EN 407, contact heat: level 1 to 4 holds 100, 250, 350, 500 °C for 15 s", Seen::SecondHand);
pub(crate) const PLANCK: Source =
    source("Planck's law over 8 to 14 µm, CODATA 2018 constants (textbook)", Seen::Memory);
pub(crate) const RADIOMETRY: Source = source(
    "what an infrared meter takes up: emissivity × surface + (1 − emissivity) × surroundings (camera manuals)",
    Seen::SecondHand,
);
pub(crate) const EMISSIVITIES: Source =
    source("emissivity at 8 to 14 µm from the tables in meters' and cameras' manuals", Seen::SecondHand);
pub(crate) const TENTHS: Source = source(
    "a tenth of an hour is 6 minutes, to the nearest: 3 to 8 minutes are 0.1 h (a time card chart); some shops round up",
    Seen::SecondHand,
);
