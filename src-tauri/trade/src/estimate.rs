//! An estimate: parts and labor with their prices, what may turn up on top, and what it all comes to, before tax.

use serde::{Deserialize, Serialize};

use crate::TradeError;
use crate::message::working::*;
use crate::money::{Currency, Hundredths, Money};
use crate::source;
use crate::working::{Worked, Working};

/// A line of an estimate: a part, or labor.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Line {
    /// The part, or the work.
    pub what: String,
    /// How many, or how many hours.
    pub quantity: Hundredths,
    /// For one of it, or for an hour.
    pub price: Option<Money>,
    /// What it comes to; nothing without a price.
    pub comes_to: Option<Money>,
}

impl Line {
    /// A line with what it comes to, to the nearest hundredth, half up.
    ///
    /// # Errors
    /// [`TradeError::SumTooLarge`].
    pub fn new(what: &str, quantity: Hundredths, price: Option<Money>) -> Result<Line, TradeError> {
        let comes_to = price.map(|price| price.times(quantity)).transpose()?;
        Ok(Line { what: what.to_owned(), quantity, price, comes_to })
    }
}

/// Something that may turn up, and what it costs at most.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct MayTurnUp {
    /// What it is.
    pub what: String,
    /// What it costs at most.
    pub up_to: Money,
}

/// An estimate with its totals, all before tax.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Estimate {
    /// Of every amount.
    pub currency: Currency,
    /// Parts.
    pub parts: Vec<Line>,
    /// Labor.
    pub labor: Vec<Line>,
    /// What may turn up.
    pub may_turn_up: Vec<MayTurnUp>,
    /// What the parts come to.
    pub parts_sum: Money,
    /// What the labor comes to.
    pub labor_sum: Money,
    /// How many hours of labor.
    pub hours: Hundredths,
    /// Parts and labor.
    pub sum: Money,
    /// What all that may turn up comes to at most.
    pub may_turn_up_sum: Money,
    /// The most that it can come to: the sum and all that may turn up.
    pub limit: Money,
    /// Lines without a price, which no sum counts.
    pub unpriced: usize,
}

impl Estimate {
    /// Adds up an estimate. Each line is rounded by itself, as it stands on a bill.
    ///
    /// # Errors
    /// [`TradeError::SumTooLarge`].
    pub fn of(
        currency: Currency,
        parts: Vec<Line>,
        labor: Vec<Line>,
        may_turn_up: Vec<MayTurnUp>,
    ) -> Result<Estimate, TradeError> {
        let add = |lines: &[Line]| Money::sum(lines.iter().filter_map(|line| line.comes_to));
        let (parts_sum, labor_sum) = (add(&parts)?, add(&labor)?);
        let hours = labor.iter().try_fold(Hundredths::default(), |hours, line| hours.plus(line.quantity))?;
        let sum = parts_sum.plus(labor_sum)?;
        let may_turn_up_sum = Money::sum(may_turn_up.iter().map(|one| one.up_to))?;
        let limit = sum.plus(may_turn_up_sum)?;
        let unpriced = parts.iter().chain(&labor).filter(|line| line.price.is_none()).count();
        Ok(Estimate {
            currency,
            parts,
            labor,
            may_turn_up,
            parts_sum,
            labor_sum,
            hours,
            sum,
            may_turn_up_sum,
            limit,
            unpriced,
        })
    }
}

impl Worked for Estimate {
    fn working(&self) -> Working {
        let said = |money: Money| money.said(self.currency);
        let mut working = Working::of(working_repair_estimate());
        for line in self.parts.iter().chain(&self.labor) {
            let what = working_name(&line.what);
            working = match (line.price, line.comes_to) {
                (Some(price), Some(sum)) => {
                    working.step(what, format!("{} × {price}", line.quantity), said(sum))
                }
                _ => working.step(what, line.quantity.to_string(), working_estimate_unpriced()),
            };
        }
        let sum_of = |amounts: [Money; 2]| amounts.map(|money| money.to_string()).join(" + ");
        working =
            working.step(working_estimate_sum(), sum_of([self.parts_sum, self.labor_sum]), said(self.sum));
        for one in &self.may_turn_up {
            working = working.given(working_name(&one.what), said(one.up_to));
        }
        working
            .step(working_estimate_limit(), sum_of([self.sum, self.may_turn_up_sum]), said(self.limit))
            .answer(working_estimate_comes_to(
                said(self.parts_sum),
                said(self.labor_sum),
                self.hours.to_string(),
                said(self.sum),
                said(self.limit),
            ))
            .sources([source::line_rounding()])
    }
}
