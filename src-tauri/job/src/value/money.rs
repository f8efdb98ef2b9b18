//! Estimates, and what the customer answers to them. Amounts and quantities stay as typed, with comma or point.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Parts and labor with their prices, and what may turn up on top, before tax.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct EstimateLines {
    /// The currency of every amount, by its code.
    pub currency: String,
    /// Parts.
    #[serde(default)]
    pub parts: Vec<PartLine>,
    /// Labor.
    #[serde(default)]
    pub labor: Vec<LaborLine>,
    /// What may turn up.
    #[serde(default)]
    pub may_turn_up: Vec<MayTurnUpLine>,
}

/// A part of an estimate.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct PartLine {
    /// What it is.
    pub name: String,
    /// Its part number, as it stands on the label.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// How many, as decimal text.
    pub quantity: String,
    /// The price of one, as decimal text. Absent: not known yet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<String>,
}

/// Labor of an estimate.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct LaborLine {
    /// The work.
    pub what: String,
    /// Hours, as decimal text.
    pub hours: String,
    /// The price of an hour, as decimal text. Absent: not known yet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rate: Option<String>,
}

/// Something that may turn up when the work goes on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct MayTurnUpLine {
    /// What it is.
    pub what: String,
    /// What it costs at most, as decimal text.
    pub up_to: String,
}

/// The customer's answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Authorized {
    /// Yes, no, or none yet.
    pub answer: Answer,
    /// What it is for, as decimal text. May be empty where nothing was agreed to.
    pub amount: String,
    /// The currency, by its code.
    pub currency: String,
    /// Who gave it, such as the owner. Empty while there is no answer.
    pub given_by: String,
    /// How it was given. Absent while there is no answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub means: Option<Means>,
    /// When it was given by the shop's clock, as `HH:MM` of the same day or `YYYY-MM-DD HH:MM`. Absent: when it was
    /// entered.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub given_at: Option<String>,
}

/// What a customer answers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Answer {
    /// Go ahead.
    Agreed,
    /// No.
    Declined,
    /// None yet.
    Pending,
}

/// How an answer was given.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Means {
    /// In person.
    InPerson,
    /// By phone.
    Telephone,
    /// By written message.
    Written,
}

impl Means {
    /// What the message chooses its words by.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Means::InPerson => "in_person",
            Means::Telephone => "telephone",
            Means::Written => "written",
        }
    }
}
