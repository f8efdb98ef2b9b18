//! Where rules and constants come from, and how well that was seen.
//!
//! No text of a standard could be read: it is behind a pay wall. What is said of a standard here is second-hand, read
//! on a page that quotes it. A shop that owns the standard can compare, and correct a value in one place.

use panside_messages::Message;
use serde::Serialize;

use crate::message::working::*;

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

impl Seen {
    /// What the message chooses its words by.
    fn word(self) -> &'static str {
        match self {
            Seen::Read => "read",
            Seen::SecondHand => "second_hand",
            Seen::Memory => "memory",
            Seen::CommonPractice => "common_practice",
            Seen::Ours => "ours",
        }
    }
}

/// Where a rule or a constant comes from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Source {
    /// What it is and says.
    pub says: Message,
    /// How well it was seen.
    pub seen: Seen,
}

impl Source {
    /// What it is and says, and how well it was seen.
    #[must_use]
    pub fn message(&self) -> Message {
        source_seen(self.says.clone(), self.seen.word())
    }
}

/// Declares the sources: what gives one, the message that it is and says, how well it was seen.
macro_rules! sources {
    ($($name:ident $says:ident $seen:ident;)+) => {
        $(pub(crate) fn $name() -> Source {
            Source { says: $says(), seen: Seen::$seen }
        })+
    };
}

sources! {
    chart source_chart Ours;
    level_conditions source_level_conditions CommonPractice;
    read_twice source_read_twice CommonPractice;
    level_first source_level_first CommonPractice;
    add_less source_add_less CommonPractice;
    drained_first source_drained_first CommonPractice;
    least_squares source_least_squares Memory;
    expansion source_expansion SecondHand;
    uncertainty source_uncertainty Memory;
    copper source_copper SecondHand;
    meter_error source_meter_error SecondHand;
    code_form source_code_form SecondHand;
    code_groups source_code_groups SecondHand;
    vin_rule source_vin_rule SecondHand;
    vin_years source_vin_years SecondHand;
    vin_lookalikes source_vin_lookalikes Ours;
    tool_rules source_tool_rules SecondHand;
    calibrated_yearly source_calibrated_yearly Memory;
    guard_band source_guard_band SecondHand;
    adapter source_adapter Read;
    angle_marked source_angle_marked CommonPractice;
    proof_loads source_proof_loads SecondHand;
    nut_factor source_nut_factor Read;
    coarse_pitch source_coarse_pitch Memory;
    star source_star Memory;
    from_the_middle source_from_the_middle CommonPractice;
    newton source_newton Memory;
    reheats source_reheats CommonPractice;
    touch source_touch SecondHand;
    gloves source_gloves SecondHand;
    planck source_planck Memory;
    radiometry source_radiometry SecondHand;
    emissivities source_emissivities SecondHand;
    tenths source_tenths SecondHand;
    line_rounding source_line_rounding Ours;
}
