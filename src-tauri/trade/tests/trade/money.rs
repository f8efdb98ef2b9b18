//! Amounts as people type them, and estimates added up, against Python's decimal.

use panside_trade::estimate::{Estimate, Line, MayTurnUp};
use panside_trade::money::{Currency, Hundredths, Money};
use panside_trade::{TradeError, Worked as _};
use proptest::prelude::*;

use crate::Outcome;

fn money(text: &str) -> Result<u64, TradeError> {
    text.parse::<Money>().map(Money::hundredths)
}

#[test]
fn a_comma_and_a_point_are_both_the_decimal_sign() -> Outcome {
    let cases = [("12.50", 1250), ("12,50", 1250), ("12.5", 1250), (" 7 ", 700), (".5", 50), ("0,05", 5)];
    for (text, hundredths) in cases {
        assert_eq!(money(text)?, hundredths, "{text}");
    }
    Ok(())
}

#[test]
fn thousands_are_read_where_they_can_be_nothing_else() -> Outcome {
    let cases = [
        ("1,250.00", 125_000),
        ("1.250,00", 125_000),
        ("1,250.5", 125_050),
        ("1,250,000", 125_000_000),
        ("1.250.000,75", 125_000_075),
        ("1250", 125_000),
    ];
    for (text, hundredths) in cases {
        assert_eq!(money(text)?, hundredths, "{text}");
    }
    Ok(())
}

#[test]
fn a_comma_that_can_be_either_is_refused_with_both_readings() {
    let either = |text: &str, whole: &str, parts: &str| {
        let ambiguous =
            TradeError::AmountAmbiguous { text: text.into(), whole: whole.into(), parts: parts.into() };
        assert_eq!(money(text), Err(ambiguous));
    };
    either("1,250", "1250", "1.25");
    either("1.250", "1250", "1.25");
    either("12,000", "12000", "12");
    assert_eq!(
        money("1,250").unwrap_err().to_string(),
        "\"1,250\" can be 1250 or 1.25. Type it as one of these."
    );
}

#[test]
fn what_is_no_amount_is_refused_and_says_why() {
    let said = |text: &str| money(text).unwrap_err().to_string();
    assert_eq!(said("  "), "No amount yet. Type it, such as 12.50.");
    assert_eq!(said("-5"), "\"-5\" is below zero. Type an amount from 0 on.");
    assert_eq!(said("−5,00"), "\"−5,00\" is below zero. Type an amount from 0 on.");
    assert_eq!(said("1e9"), "\"e\" in \"1e9\" is not part of a number.");
    assert_eq!(said("twelve"), "\"t\" in \"twelve\" is not part of a number.");
    assert_eq!(said("1 250"), "\" \" in \"1 250\" is not part of a number.");
    assert_eq!(said("12."), "\"12.\" needs a digit at the end.");
    assert_eq!(
        said("1000000000"),
        "\"1000000000\" is too large: at most 9999999.99. Look for a digit too many."
    );
    for text in ["0.125", "1250,125", "1,250.125"] {
        assert_eq!(money(text), Err(TradeError::AmountPlaces { text: text.into() }));
    }
    for text in ["1,25,0", "1.25.00", "0,125.00", "1,250.000,00", "1.25,000,000", "12,34.5"] {
        assert_eq!(money(text), Err(TradeError::NumberSeparators { text: text.into() }), "{text}");
    }
    assert!("99999999999999999999999".parse::<Money>().is_err());
}

#[test]
fn a_currency_is_one_of_those_that_are_known() {
    assert_eq!(" EUR ".parse(), Ok(Currency::Eur));
    let said = |text: &str| text.parse::<Currency>().unwrap_err().to_string();
    assert_eq!(said(""), "The currency is missing. Choose one of: USD, CAD, MXN, EUR, GBP.");
    assert_eq!(
        said("XYZ"),
        "The currency \"XYZ\" is not known here. Choose one of: USD, CAD, MXN, EUR, GBP."
    );
    for currency in Currency::ALL {
        assert_eq!(currency.code().parse(), Ok(currency));
    }
}

fn line(what: &str, quantity: &str, price: Option<&str>) -> Result<Line, TradeError> {
    Line::new(what, quantity.parse()?, price.map(str::parse).transpose()?)
}

#[test]
fn an_estimate_is_rounded_line_by_line_and_says_what_has_no_price() -> Outcome {
    // Python 3.11: sum((Decimal(q) * Decimal(p)).quantize(Decimal("0.01"), ROUND_HALF_UP) for q, p in lines) gives
    // 134.77 for the parts and 261.26 for the labor (1.25 × 94.99 = 118.7375, 1.5 × 95.01 = 142.515).
    let parts = vec![
        line("filter", "1", Some("48.90"))?,
        line("fluid, quart", "5.5", Some("12.35"))?,
        line("drain plug washer", "3", Some("5,98"))?,
        line("pan gasket", "1", None)?,
    ];
    let labor = vec![line("pan and filter", "1.25", Some("94.99"))?, line("relearn", "1,5", Some("95.01"))?];
    let seized = MayTurnUp { what: "seized flange nut".into(), up_to: "1,250.00".parse()? };
    let estimate = Estimate::of(Currency::Usd, parts, labor, vec![seized])?;
    assert_eq!(estimate.parts_sum.said(Currency::Usd), "134.77 USD");
    assert_eq!(
        (estimate.labor_sum.to_string(), estimate.hours.to_string()),
        ("261.26".into(), "2.75".into())
    );
    assert_eq!((estimate.sum.to_string(), estimate.limit.to_string()), ("396.03".into(), "1646.03".into()));
    assert_eq!(estimate.unpriced, 1);
    let working = estimate.working().to_string();
    for part in ["1.25 × 94.99 = 118.74 USD", "no price", "134.77 + 261.26 = 396.03 USD", "before tax"] {
        assert!(working.contains(part), "{part}: {working}");
    }
    Ok(())
}

#[test]
fn amounts_that_cannot_be_counted_are_refused() {
    let much = Money::of(u64::MAX);
    assert_eq!(much.plus(Money::of(1)), Err(TradeError::SumTooLarge));
    assert_eq!(much.times(Hundredths::of(200)), Err(TradeError::SumTooLarge));
    assert_eq!(much.times(Hundredths::of(100)), Ok(much));
}

proptest! {
    #[test]
    fn what_is_shown_is_read_back_as_the_same(hundredths in 0_u64..=999_999_999) {
        prop_assert_eq!(Money::of(hundredths).to_string().parse(), Ok(Money::of(hundredths)));
        let shown = Hundredths::of(hundredths).to_string();
        prop_assert_eq!(shown.parse(), Ok(Hundredths::of(hundredths)));
        prop_assert_eq!(shown.replace('.', ",").parse(), Ok(Hundredths::of(hundredths)));
    }

    #[test]
    fn whatever_is_typed_is_answered(text in "[-−0-9.,eE $€]{0,14}") {
        if let Ok(money) = text.parse::<Money>() {
            prop_assert!(money.hundredths() <= 999_999_999);
        }
    }
}
