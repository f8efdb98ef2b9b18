//! Money and quantities as whole hundredths, so that sums are exact: no float comes near them.
//!
//! What is typed is read in one way or refused. A comma or a point with one or two digits behind it is the decimal sign;
//! a sign that repeats, or that comes before another one, parts thousands. `1,250` alone can be either, so it is refused
//! with both readings.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

use crate::TradeError;
use crate::number::MINUS;

/// The most that is typed at once, in hundredths: 9,999,999.99. Our choice; a digit too many is seen, and sums fit.
const MOST: u64 = 999_999_999;

/// A number that is never below zero, in hundredths: a quantity, or hours.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Hundredths(u64);

/// An amount of money in hundredths of its currency.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Money(u64);

impl Hundredths {
    /// So many hundredths.
    #[must_use]
    pub fn of(hundredths: u64) -> Hundredths {
        Hundredths(hundredths)
    }

    /// How many hundredths.
    #[must_use]
    pub fn hundredths(self) -> u64 {
        self.0
    }

    /// The sum.
    ///
    /// # Errors
    /// [`TradeError::SumTooLarge`].
    pub fn plus(self, other: Hundredths) -> Result<Hundredths, TradeError> {
        self.0.checked_add(other.0).map(Hundredths).ok_or(TradeError::SumTooLarge)
    }
}

impl Money {
    /// So many hundredths of the currency.
    #[must_use]
    pub fn of(hundredths: u64) -> Money {
        Money(hundredths)
    }

    /// How many hundredths.
    #[must_use]
    pub fn hundredths(self) -> u64 {
        self.0
    }

    /// The amount for a quantity, to the nearest hundredth, half up.
    ///
    /// # Errors
    /// [`TradeError::SumTooLarge`].
    pub fn times(self, quantity: Hundredths) -> Result<Money, TradeError> {
        let exact = u128::from(self.0) * u128::from(quantity.0);
        u64::try_from((exact + 50) / 100).map(Money).map_err(|_| TradeError::SumTooLarge)
    }

    /// The sum.
    ///
    /// # Errors
    /// [`TradeError::SumTooLarge`].
    pub fn plus(self, other: Money) -> Result<Money, TradeError> {
        self.0.checked_add(other.0).map(Money).ok_or(TradeError::SumTooLarge)
    }

    /// The sum of all of them.
    ///
    /// # Errors
    /// [`TradeError::SumTooLarge`].
    pub fn sum(amounts: impl IntoIterator<Item = Money>) -> Result<Money, TradeError> {
        amounts.into_iter().try_fold(Money::default(), Money::plus)
    }

    /// The amount with its currency.
    #[must_use]
    pub fn said(self, currency: Currency) -> String {
        format!("{self} {}", currency.code())
    }
}

impl fmt::Display for Hundredths {
    /// Without idle zeros: `2`, `1.5`, `0.25`.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let text = Money(self.0).to_string();
        out.write_str(text.trim_end_matches('0').trim_end_matches('.'))
    }
}

impl fmt::Display for Money {
    /// With both places, without thousands separators: `1250.00`.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}.{:02}", self.0 / 100, self.0 % 100)
    }
}

impl FromStr for Hundredths {
    type Err = TradeError;

    fn from_str(text: &str) -> Result<Hundredths, TradeError> {
        hundredths(text).map(Hundredths)
    }
}

impl FromStr for Money {
    type Err = TradeError;

    fn from_str(text: &str) -> Result<Money, TradeError> {
        hundredths(text).map(Money)
    }
}

/// Reads a number of hundredths as it is typed.
fn hundredths(text: &str) -> Result<u64, TradeError> {
    let typed = text.trim();
    let text = || typed.to_owned();
    if typed.is_empty() {
        return Err(TradeError::AmountEmpty);
    }
    if let Some(positive) = typed.strip_prefix(['-', MINUS])
        && positive.starts_with(|first: char| first.is_ascii_digit())
    {
        return Err(TradeError::AmountBelowZero { text: text() });
    }
    if let Some(character) = typed.chars().find(|c| !c.is_ascii_digit() && !matches!(c, ',' | '.')) {
        return Err(TradeError::NumberCharacter { text: text(), character });
    }
    if typed.ends_with([',', '.']) {
        return Err(TradeError::NumberUnfinished { text: text() });
    }
    let (whole, places) = split(typed)?;
    if places.len() > 2 {
        return Err(TradeError::AmountPlaces { text: text() });
    }
    let digits = format!("{whole}{places:0<2}");
    let value = digits.parse().ok().filter(|value| *value <= MOST);
    value.ok_or_else(|| TradeError::AmountTooLarge { text: text(), most: Money(MOST) })
}

/// Digits before and behind the decimal sign.
fn split(typed: &str) -> Result<(String, &str), TradeError> {
    let Some(at) = typed.rfind([',', '.']) else { return Ok((typed.to_owned(), "")) };
    let (before, behind) = (&typed[..at], &typed[at + 1..]);
    let last = &typed[at..=at];
    let separators = || TradeError::NumberSeparators { text: typed.to_owned() };
    if before.contains(last) {
        // A decimal sign stands once, so this one parts thousands all the way.
        return thousands(typed, last).map(|whole| (whole, "")).ok_or_else(separators);
    }
    let other = if last == "," { "." } else { "," };
    if before.contains(other) {
        return thousands(before, other).map(|whole| (whole, behind)).ok_or_else(separators);
    }
    if behind.len() == 3 && thousands(typed, last).is_some() {
        let parts = format!("{before}.{}", behind.trim_end_matches('0'));
        let parts = parts.trim_end_matches('.').to_owned();
        return Err(TradeError::AmountAmbiguous {
            text: typed.to_owned(),
            whole: [before, behind].concat(),
            parts,
        });
    }
    Ok((before.to_owned(), behind))
}

/// The digits of a number whose thousands are parted, if they are parted rightly.
fn thousands(text: &str, sign: &str) -> Option<String> {
    let mut groups = text.split(sign);
    let first = groups.next()?;
    let fits = (1..=3).contains(&first.len())
        && !first.starts_with('0')
        && groups.clone().all(|group| group.len() == 3)
        && text.chars().all(|c| c.is_ascii_digit() || sign.starts_with(c));
    fits.then(|| groups.fold(first.to_owned(), |whole, group| whole + group))
}

/// The currencies that an amount can be in: each has hundredths.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "UPPERCASE")]
pub enum Currency {
    /// US dollar.
    Usd,
    /// Canadian dollar.
    Cad,
    /// Mexican peso.
    Mxn,
    /// Euro.
    Eur,
    /// Pound sterling.
    Gbp,
}

impl Currency {
    /// Every currency, the usual one first.
    pub const ALL: [Currency; 5] =
        [Currency::Usd, Currency::Cad, Currency::Mxn, Currency::Eur, Currency::Gbp];

    /// Its code by ISO 4217, from memory.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Currency::Usd => "USD",
            Currency::Cad => "CAD",
            Currency::Mxn => "MXN",
            Currency::Eur => "EUR",
            Currency::Gbp => "GBP",
        }
    }
}

impl FromStr for Currency {
    type Err = TradeError;

    fn from_str(text: &str) -> Result<Currency, TradeError> {
        let known = || Currency::ALL.map(Currency::code).join(", ");
        let typed = text.trim();
        if typed.is_empty() {
            return Err(TradeError::CurrencyMissing { known: known() });
        }
        let found = Currency::ALL.into_iter().find(|currency| currency.code() == typed);
        found.ok_or_else(|| TradeError::CurrencyUnknown { text: typed.to_owned(), known: known() })
    }
}
