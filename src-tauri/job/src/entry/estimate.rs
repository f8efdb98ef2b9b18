//! An estimate: its lines read and added up by [`panside_trade::estimate`].

use panside_procedure::format::Checklist;
use panside_procedure::format::entry;
use panside_trade::TradeError;
use panside_trade::estimate::{Estimate, Line, MayTurnUp};
use panside_trade::money::{Currency, Hundredths, Money};

use super::kind::{self, Kind};
use super::{Classified, Context};
use crate::command::Refusal;
use crate::message::{
    Message, estimate_comes_to, estimate_empty, estimate_limit, estimate_line, estimate_no_name,
    estimate_unpriced, estimate_zero,
};
use crate::sheet::Specs;
use crate::value::{EntryValue, EstimateLines, LaborLine, MayTurnUpLine, PartLine};

/// The codes that an amount may be typed in, the usual one first.
pub(super) fn currencies() -> Vec<String> {
    Currency::ALL.map(|currency| currency.code().to_owned()).to_vec()
}

/// A currency as it was typed.
pub(super) fn currency(typed: &str) -> Result<Currency, Refusal> {
    typed.parse().map_err(|error: TradeError| error.message().into())
}

/// The lines added up.
///
/// # Errors
/// A refusal that names the line.
pub(crate) fn added_up(typed: &EstimateLines) -> Result<Estimate, Refusal> {
    let currency = currency(&typed.currency)?;
    if typed.parts.is_empty() && typed.labor.is_empty() && typed.may_turn_up.is_empty() {
        return Err(estimate_empty().into());
    }
    let parts = (1..)
        .zip(&typed.parts)
        .map(|(place, part)| line(place, &part.name, &part.quantity, part.price.as_deref()));
    let labor = (1..)
        .zip(&typed.labor)
        .map(|(place, labor)| line(place, &labor.what, &labor.hours, labor.rate.as_deref()));
    let may_turn_up = (1..).zip(&typed.may_turn_up).map(|(place, one): (i64, _)| {
        let what = name(place, &one.what)?;
        let up_to = one.up_to.parse().map_err(|error: TradeError| of_line(what, &error))?;
        Ok(MayTurnUp { what: what.to_owned(), up_to })
    });
    let (parts, labor) = (parts.collect::<Result<_, Refusal>>()?, labor.collect::<Result<_, Refusal>>()?);
    let may_turn_up = may_turn_up.collect::<Result<_, Refusal>>()?;
    Estimate::of(currency, parts, labor, may_turn_up).map_err(|error| error.message().into())
}

fn line(place: i64, what: &str, quantity: &str, price: Option<&str>) -> Result<Line, Refusal> {
    let what = name(place, what)?;
    let wrong = |error: TradeError| of_line(what, &error);
    let quantity: Hundredths = quantity.parse().map_err(wrong)?;
    if quantity == Hundredths::default() {
        return Err(estimate_zero(what).into());
    }
    let price = filled(price).map(str::parse::<Money>).transpose().map_err(wrong)?;
    Line::new(what, quantity, price).map_err(wrong)
}

fn name(place: i64, typed: &str) -> Result<&str, Refusal> {
    let name = typed.trim();
    if name.is_empty() { Err(estimate_no_name(place).into()) } else { Ok(name) }
}

/// What is wrong with a line, with what it is called.
fn of_line(what: &str, error: &TradeError) -> Refusal {
    estimate_line(what, error.message()).into()
}

/// What was typed in a field that may stay empty.
fn filled(typed: Option<&str>) -> Option<&str> {
    typed.map(str::trim).filter(|text| !text.is_empty())
}

/// As it is kept: without spaces around what was typed.
fn kept(typed: &EstimateLines) -> EstimateLines {
    let text = |text: &str| text.trim().to_owned();
    let perhaps = |text: &Option<String>| filled(text.as_deref()).map(str::to_owned);
    let part = |part: &PartLine| PartLine {
        name: text(&part.name),
        number: perhaps(&part.number),
        quantity: text(&part.quantity),
        price: perhaps(&part.price),
    };
    let labor = |labor: &LaborLine| LaborLine {
        what: text(&labor.what),
        hours: text(&labor.hours),
        rate: perhaps(&labor.rate),
    };
    let may = |one: &MayTurnUpLine| MayTurnUpLine { what: text(&one.what), up_to: text(&one.up_to) };
    EstimateLines {
        currency: text(&typed.currency),
        parts: typed.parts.iter().map(part).collect(),
        labor: typed.labor.iter().map(labor).collect(),
        may_turn_up: typed.may_turn_up.iter().map(may).collect(),
    }
}

fn classify(typed: &EstimateLines) -> Result<Classified, Refusal> {
    let estimate = added_up(typed)?;
    let money = |money: Money| money.said(estimate.currency);
    let mut said = vec![estimate_comes_to(
        money(estimate.sum),
        money(estimate.parts_sum),
        money(estimate.labor_sum),
        estimate.hours.to_string(),
    )];
    if estimate.limit > estimate.sum {
        said.push(estimate_limit(money(estimate.limit)));
    }
    if estimate.unpriced > 0 {
        said.push(estimate_unpriced(estimate.unpriced));
    }
    Ok(Classified::worked_out("estimated", EntryValue::Estimate(kept(typed)), said, estimate))
}

impl Kind for entry::Estimate {
    fn classify(&self, _: &Specs, value: &EntryValue, _: &Context<'_>) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Estimate(lines) => classify(lines),
            _ => Err(kind::other("estimate", value)),
        }
    }

    fn limits(&self, _: &Specs, _: &Checklist) -> Vec<Message> {
        Vec::new()
    }

    fn units(&self) -> Vec<String> {
        currencies()
    }

    fn temperature_units(&self) -> Vec<String> {
        Vec::new()
    }

    fn converted<'v>(&self, _: &'v EntryValue) -> Option<(&'v str, &'v str)> {
        None
    }

    fn in_short(&self, _: &EntryValue, _: &Checklist) -> Option<String> {
        None
    }

    fn is_measured(&self) -> bool {
        false
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{estimate, try_entry};

    fn enter(lines: EstimateLines) -> Result<Classified, Refusal> {
        try_entry("go_ahead", "estimate", EntryValue::Estimate(lines))
    }

    fn refused(lines: EstimateLines) -> String {
        enter(lines).unwrap_err().message.english()
    }

    fn priced(price: &str) -> EstimateLines {
        let mut lines = estimate();
        lines.parts[0].price = Some(price.into());
        lines
    }

    #[test]
    fn an_estimate_says_what_it_comes_to_before_tax_and_at_most() {
        let judged = enter(estimate()).unwrap();
        let said: Vec<String> = judged.said.iter().map(Message::english).collect();
        assert_eq!(said[0], "264.60 USD before tax: parts 24.60 USD, labor 240.00 USD for 2.5 h.");
        assert_eq!(said[1], "With all that may turn up at most 349.60 USD before tax.");
        assert_eq!(judged.value, EntryValue::Estimate(estimate()), "as typed");
    }

    #[test]
    fn prices_with_commas_are_read_or_refused_and_never_misread() {
        let comes_to = |price: &str| enter(priced(price)).unwrap().said[0].english();
        assert!(comes_to("1,250.00").starts_with("1490.00 USD"));
        assert!(comes_to("1.250,00").starts_with("1490.00 USD"));
        assert!(comes_to("12,50").starts_with("252.50 USD"));
        let either = "Pan gasket: \"1,250\" can be 1250 or 1.25. Type it as one of these.";
        assert_eq!(refused(priced("1,250")), either);
    }

    #[test]
    fn what_is_no_price_is_refused_with_its_line() {
        assert_eq!(refused(priced("-5")), "Pan gasket: \"-5\" is below zero. Type an amount from 0 on.");
        assert!(refused(priced("1e9")).starts_with("Pan gasket: \"e\" in \"1e9\""));
        assert!(refused(priced("1000000000")).contains("too large"));
        assert!(refused(priced("free")).contains("is not part of a number"));
    }

    #[test]
    fn a_line_needs_a_name_and_how_much_but_no_price() {
        let mut lines = priced("  ");
        let judged = enter(lines.clone()).unwrap();
        assert_eq!(judged.said[2].english(), "One line has no price and is not in the sum.");
        let EntryValue::Estimate(kept) = &judged.value else { panic!("{judged:?}") };
        assert_eq!(kept.parts[0].price, None, "blank is none");
        lines.parts[0].quantity = "0".into();
        assert!(refused(lines.clone()).starts_with("Pan gasket: none of it."));
        lines.parts[0].name = " ".into();
        assert!(refused(lines).starts_with("Line 1 has no name."));
    }

    #[test]
    fn a_currency_and_a_line_must_be_there() {
        assert!(
            refused(EstimateLines { currency: String::new(), ..estimate() })
                .starts_with("The currency is missing.")
        );
        let empty = EstimateLines { currency: "USD".into(), ..EstimateLines::default() };
        assert_eq!(refused(empty), "The estimate is empty. Add a part or labor.");
    }

    #[test]
    fn two_hundred_lines_are_added_up() {
        let part = estimate().parts[0].clone();
        let lines = EstimateLines { parts: vec![part; 200], ..estimate() };
        // 200 × 24.60 + 240.00
        assert!(enter(lines).unwrap().said[0].english().starts_with("5160.00 USD"));
    }
}
