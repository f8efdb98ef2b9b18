//! What it was to cost, and what the customer agreed to pay: estimates with their lines and sums, and all that was agreed
//! to. Sums are those that were worked out when an estimate was entered.

use panside_job::EntryValue;
use panside_job::entry::WorkedOut;
use panside_job::turned_up::Standing;
use panside_job::value::EstimateLines;
use panside_procedure::format::entry::AGREED;
use panside_trade::estimate::{Estimate as Sums, Line as Summed};
use panside_trade::money::{Currency, Money as Exact};
use serde::{Deserialize, Serialize};

use crate::bill::Amount;
use crate::by::By;
use crate::messages;
use crate::source::{Found, Source};
use crate::turned_up;

/// Money and words with the customer. Every amount is before tax.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Money {
    /// The estimates that count, in file order.
    pub estimates: Vec<Estimate>,
    /// What was agreed to, in file order.
    pub agreed: Vec<Agreed>,
    /// What was agreed to without the supplements, for each currency. Empty where there are none.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub agreed_at_first: Vec<Amount>,
    /// All of it together, for each currency.
    pub agreed_in_all: Vec<Amount>,
}

impl Money {
    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.estimates.is_empty() && self.agreed.is_empty()
    }
}

/// An amount that the customer agreed to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Agreed {
    /// Step id.
    pub step: String,
    /// The step's title.
    pub title: String,
    /// How much.
    pub amount: Amount,
    /// Who entered it, and when.
    pub by: By,
}

/// An estimate.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Estimate {
    /// Step id.
    pub step: String,
    /// What was asked.
    pub label: String,
    /// The currency of every amount.
    pub currency: String,
    /// Parts.
    pub parts: Vec<Line>,
    /// Labor; quantities are hours.
    pub labor: Vec<Line>,
    /// What may turn up.
    pub may_turn_up: Vec<Line>,
    /// What the parts come to.
    pub parts_sum: String,
    /// What the labor comes to.
    pub labor_sum: String,
    /// How many hours of labor.
    pub hours: String,
    /// Parts and labor.
    pub sum: String,
    /// The same with all that may turn up.
    pub limit: String,
    /// Lines without a price.
    pub unpriced: usize,
    /// Who entered it, and when.
    pub by: By,
}

/// A line of an estimate: quantity and price as typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Line {
    /// What it is.
    pub what: String,
    /// Its part number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// How many or how many hours. Empty for what may turn up.
    pub quantity: String,
    /// The price of one, or of an hour. Nothing: none was known.
    pub price: Option<String>,
    /// What it comes to, for what may turn up at most. Nothing: no price was known.
    pub comes_to: Option<String>,
}

/// Money and words with the customer, of the entries that count.
pub(crate) fn of(source: Source<'_>) -> Money {
    let mut money = Money::default();
    let mut sums: Vec<(Currency, Exact)> = Vec::new();
    for found in source.entered().filter(Found::counts) {
        match (&found.value.value, &found.value.worked_out) {
            (EntryValue::Estimate(typed), Some(WorkedOut::Estimate(worked))) => {
                let of = (found.step.id.clone(), found.label(), source.by(&found.value.mark));
                money.estimates.push(estimate(of, typed, worked));
            }
            (EntryValue::Authorization(_), Some(WorkedOut::Authorization(judged))) => {
                let amount = judged.amount.zip(judged.currency).filter(|_| judged.class == AGREED);
                if let Some((amount, currency)) = amount {
                    add(&mut sums, currency, amount);
                    money.agreed.push(Agreed {
                        step: found.step.id.clone(),
                        title: found.step.title.clone(),
                        amount: shown(amount, currency),
                        by: source.by(&found.value.mark),
                    });
                }
            }
            _ => {}
        }
    }
    money.agreed_at_first = amounts(&sums);
    supplements(source, &mut money, &mut sums);
    money.agreed_in_all = amounts(&sums);
    money
}

fn amounts(sums: &[(Currency, Exact)]) -> Vec<Amount> {
    sums.iter().map(|(currency, sum)| shown(*sum, *currency)).collect()
}

/// Supplements that the customer agreed to: their lines beside those of the estimates, and what they add to what is
/// authorized.
fn supplements(source: Source<'_>, money: &mut Money, sums: &mut Vec<(Currency, Exact)>) {
    let agreed = source.job.turned_up.asked.iter().filter(|one| one.standing() == Standing::Agreed);
    let mut any = false;
    for (one, last) in agreed.filter_map(|one| Some((one, one.answers.last()?))) {
        money.estimates.extend(turned_up::estimate(source, one));
        let judged = last.judged.as_ref();
        let Some((amount, currency)) = judged.and_then(|it| it.amount.zip(it.currency)) else { continue };
        any = true;
        add(sums, currency, amount);
        money.agreed.push(Agreed {
            step: one.asked.step.clone(),
            title: source.say.within(&messages::supplement(&one.asked.text)),
            amount: shown(amount, currency),
            by: source.by(&last.mark),
        });
    }
    if !any {
        money.agreed_at_first.clear();
    }
}

/// Adds to the sum of its currency. What can't be added stands by itself, so that no amount is lost.
fn add(sums: &mut Vec<(Currency, Exact)>, currency: Currency, amount: Exact) {
    let sum = sums.iter_mut().find(|(other, _)| *other == currency);
    match sum.map(|(_, sum)| (sum.plus(amount), sum)) {
        Some((Ok(more), sum)) => *sum = more,
        _ => sums.push((currency, amount)),
    }
}

fn shown(amount: Exact, currency: Currency) -> Amount {
    Amount { value: amount.to_string(), unit: currency.code().to_owned() }
}

/// An estimate of a step, with what it is called.
pub(crate) fn estimate(
    (step, label, by): (String, String, By),
    typed: &EstimateLines,
    worked: &Sums,
) -> Estimate {
    let parts = typed.parts.iter().zip(&worked.parts).map(|(part, worked)| {
        let texts = (&part.name, &part.quantity, part.price.as_ref());
        Line { number: part.number.clone(), ..line(texts, worked) }
    });
    let labor = typed.labor.iter().zip(&worked.labor);
    let labor = labor.map(|(labor, worked)| line((&labor.what, &labor.hours, labor.rate.as_ref()), worked));
    let may_turn_up = typed.may_turn_up.iter().zip(&worked.may_turn_up).map(|(may, worked)| Line {
        what: may.what.clone(),
        number: None,
        quantity: String::new(),
        price: None,
        comes_to: Some(worked.up_to.to_string()),
    });
    Estimate {
        step,
        label,
        currency: worked.currency.code().to_owned(),
        parts: parts.collect(),
        labor: labor.collect(),
        may_turn_up: may_turn_up.collect(),
        parts_sum: worked.parts_sum.to_string(),
        labor_sum: worked.labor_sum.to_string(),
        hours: worked.hours.to_string(),
        sum: worked.sum.to_string(),
        limit: worked.limit.to_string(),
        unpriced: worked.unpriced,
        by,
    }
}

fn line((what, quantity, price): (&String, &String, Option<&String>), worked: &Summed) -> Line {
    Line {
        what: what.clone(),
        number: None,
        quantity: quantity.clone(),
        price: price.cloned(),
        comes_to: worked.comes_to.map(|sum| sum.to_string()),
    }
}
