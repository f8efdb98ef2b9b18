//! The customer's answer, held against the estimate that it is for.

use chrono::{NaiveDateTime, NaiveTime};
use panside_procedure::format::Checklist;
use panside_procedure::format::entry::Authorization;
use panside_trade::TradeError;
use panside_trade::estimate::Estimate;
use panside_trade::money::{Currency, Money};
use serde::{Deserialize, Serialize};

use super::estimate::{added_up, currencies, currency};
use super::kind::{self, Kind};
use super::past::Past;
use super::{Classified, Context};
use crate::clock::{civil_time, day_of};
use crate::command::Refusal;
use crate::message::{
    Message, authorization_agreed, authorization_ahead, authorization_below, authorization_currency,
    authorization_declined, authorization_no_means, authorization_no_person, authorization_pending,
    authorization_time, authorization_within, estimate_unpriced,
};
use crate::sheet::Specs;
use crate::value::{Answer, Authorized, EntryValue};

/// An answer judged, and what it was held against.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct AuthorizationResult {
    /// `agreed`, `declined`, `below` or `pending`.
    pub class: String,
    /// What it is for; nothing where no amount was typed.
    pub amount: Option<Money>,
    /// Its currency; nothing without an amount.
    pub currency: Option<Currency>,
    /// What the estimate came to then; nothing where there was none.
    pub sum: Option<Money>,
    /// The same with all that may turn up.
    pub limit: Option<Money>,
}

/// The estimate that an answer is for, as it was last entered.
pub(crate) fn estimate_of(asked: &Authorization, past: Past<'_>) -> Option<Estimate> {
    let (step, entry) = asked.of.as_deref()?.split_once('.')?;
    match past.latest(step, entry).last()?.value {
        EntryValue::Estimate(lines) => added_up(lines).ok(),
        _ => None,
    }
}

/// Judges an answer against what was asked, if something was.
pub(crate) fn answered(
    estimate: Option<&Estimate>,
    typed: &Authorized,
    context: &Context<'_>,
) -> Result<Classified, Refusal> {
    let typed = kept(typed);
    if let Some(at) = &typed.given_at {
        not_ahead(at, context)?;
    }
    let amount = amount(&typed)?;
    let mut said = match typed.answer {
        Answer::Pending => vec![authorization_pending()],
        Answer::Declined => vec![authorization_declined(giver(&typed)?, means(&typed)?)],
        Answer::Agreed => {
            let (amount, currency) = amount.map_or_else(|| read(&typed), Ok)?;
            let (by, means) = (giver(&typed)?, means(&typed)?);
            vec![authorization_agreed(amount.said(currency), by, means)]
        }
    };
    let below = match (estimate, amount) {
        (Some(estimate), Some(amount)) if typed.answer == Answer::Agreed => {
            against(estimate, amount, &mut said)?
        }
        _ => false,
    };
    let class = match typed.answer {
        Answer::Agreed if below => "below",
        Answer::Agreed => "agreed",
        Answer::Declined => "declined",
        Answer::Pending => "pending",
    };
    let result = AuthorizationResult {
        class: class.to_owned(),
        amount: amount.map(|(money, _)| money),
        currency: amount.map(|(_, currency)| currency),
        sum: estimate.map(|estimate| estimate.sum),
        limit: estimate.map(|estimate| estimate.limit),
    };
    Ok(Classified::worked_out(class, EntryValue::Authorization(typed), said, result))
}

/// Whether the amount is less than the estimate says; what is to be said of it.
fn against(
    estimate: &Estimate,
    (amount, currency): (Money, Currency),
    said: &mut Vec<Message>,
) -> Result<bool, Refusal> {
    let money = |money: Money| money.said(estimate.currency);
    if currency != estimate.currency {
        return Err(authorization_currency(currency.code(), estimate.currency.code()).into());
    }
    let below = amount < estimate.sum;
    if below {
        said.insert(0, authorization_below(money(amount), money(estimate.sum)));
    } else if amount < estimate.limit {
        said.push(authorization_within(money(estimate.limit)));
    }
    if estimate.unpriced > 0 {
        said.push(estimate_unpriced(estimate.unpriced));
    }
    Ok(below)
}

/// The amount with its currency; nothing where none was typed.
fn amount(answered: &Authorized) -> Result<Option<(Money, Currency)>, Refusal> {
    if answered.amount.is_empty() { Ok(None) } else { read(answered).map(Some) }
}

fn read(answered: &Authorized) -> Result<(Money, Currency), Refusal> {
    let amount = answered.amount.parse().map_err(|error: TradeError| Refusal::from(error.message()))?;
    Ok((amount, currency(&answered.currency)?))
}

fn giver(answered: &Authorized) -> Result<&str, Refusal> {
    match answered.given_by.as_str() {
        "" => Err(authorization_no_person().into()),
        giver => Ok(giver),
    }
}

fn means(answered: &Authorized) -> Result<&'static str, Refusal> {
    answered.means.map(|means| means.word()).ok_or_else(|| authorization_no_means().into())
}

/// As it is kept: without spaces around what was typed.
fn kept(typed: &Authorized) -> Authorized {
    let text = |text: &str| text.trim().to_owned();
    let given_at = typed.given_at.as_deref().map(text).filter(|at| !at.is_empty());
    Authorized {
        amount: text(&typed.amount),
        currency: text(&typed.currency),
        given_by: text(&typed.given_by),
        given_at,
        ..*typed
    }
}

/// A time by the shop's clock that is not after now.
fn not_ahead(typed: &str, context: &Context<'_>) -> Result<(), Refusal> {
    let now = civil_time(context.at.wall_ms, context.utc_offset_min);
    let at = match typed.split_once(' ') {
        Some((day, time)) => day_of(day).zip(time_of(time)).map(|(day, time)| day.and_time(time)),
        None => now.zip(time_of(typed)).map(|(now, time)| now.date().and_time(time)),
    };
    let at: NaiveDateTime = at.ok_or_else(|| Refusal::from(authorization_time(typed)))?;
    if now.is_some_and(|now| at > now) { Err(authorization_ahead(typed).into()) } else { Ok(()) }
}

fn time_of(text: &str) -> Option<NaiveTime> {
    NaiveTime::parse_from_str(text, "%H:%M").ok().filter(|time| time.format("%H:%M").to_string() == text)
}

impl Kind for Authorization {
    fn classify(
        &self,
        _specs: &Specs,
        value: &EntryValue,
        context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Authorization(typed) => {
                let estimate = context.past.and_then(|past| estimate_of(self, past));
                answered(estimate.as_ref(), typed, context)
            }
            _ => Err(kind::other("authorization", value)),
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
    use crate::command::Command;
    use crate::testing::{Bay, agreed, estimate, sign};
    use crate::value::Means;
    use panside_procedure::format::Role;

    /// A job at its go-ahead, with the estimate of 264.60 in, at most 349.60.
    fn asked() -> Bay {
        let mut bay = Bay::open();
        bay.work_up_to("photo");
        bay.begin("go_ahead").unwrap();
        bay.enter("go_ahead", "estimate", EntryValue::Estimate(estimate())).unwrap();
        bay
    }

    fn enter(bay: &mut Bay, answered: Authorized) -> Result<(), Refusal> {
        bay.enter("go_ahead", "answer", EntryValue::Authorization(answered)).map(|_| ())
    }

    /// The class that it came to, and what is said of it.
    fn judged(bay: &Bay) -> (String, Vec<String>) {
        let view = bay.step("go_ahead");
        let answer = &view.entries[1];
        (answer.class.clone().unwrap(), answer.said.iter().map(Message::english).collect())
    }

    fn done(bay: &mut Bay) -> Result<(), Refusal> {
        let signatures = vec![sign("concern_told", "Wim", Role::ServiceWriter)];
        bay.ask(Command::Done { step: "go_ahead".into(), signatures }).map(|_| ())
    }

    #[test]
    fn the_pad_can_offer_what_the_estimate_comes_to() {
        let view = asked().step("go_ahead");
        let offered = view.entries[1].estimate.clone().unwrap();
        assert_eq!((offered.sum.value.as_str(), offered.sum.unit.as_str()), ("264.60", "USD"));
        assert_eq!(offered.limit.unwrap().value, "349.60");
    }

    #[test]
    fn less_than_the_estimate_holds_the_step_and_says_both_amounts() {
        let mut bay = asked();
        enter(&mut bay, agreed("264,59")).unwrap();
        let (class, said) = judged(&bay);
        assert_eq!(class, "below");
        assert_eq!(
            said[0],
            "264.59 USD is less than the estimate of 264.60 USD. Enter the full amount that was agreed to, or make the \
             estimate smaller."
        );
        assert!(done(&mut bay).is_err());
        enter(&mut bay, agreed("264.60")).unwrap();
        let (class, said) = judged(&bay);
        assert_eq!(class, "agreed");
        assert_eq!(said[0], "Agreed to 264.60 USD before tax by owner, by phone.");
        assert_eq!(said[1], "What may turn up is not covered in full: that takes 349.60 USD.");
        done(&mut bay).unwrap();
    }

    #[test]
    fn an_estimate_that_was_changed_is_answered_again() {
        let mut bay = asked();
        enter(&mut bay, agreed("349.60")).unwrap();
        let mut more = estimate();
        more.labor[0].hours = "9".into();
        bay.enter("go_ahead", "estimate", EntryValue::Estimate(more)).unwrap();
        let refused = done(&mut bay).unwrap_err();
        assert!(
            refused.unmet[0]
                .english()
                .starts_with("Estimate was changed after Customer's answer was entered.")
        );
        enter(&mut bay, agreed("349.60")).unwrap();
        assert_eq!(judged(&bay).0, "below");
    }

    #[test]
    fn an_estimate_corrected_afterwards_is_held_against_the_answer_that_comes_with_it() {
        let mut bay = Bay::open();
        bay.work_up_to("go_ahead");
        bay.must(Command::Void { step: "go_ahead".into(), reason: "wrong hours".into() });
        let mut more = estimate();
        more.labor[0].hours = "9".into();
        let correct = |amount: &str| Command::Correct {
            step: "go_ahead".into(),
            entries: [
                ("estimate".to_owned(), EntryValue::Estimate(more.clone())),
                ("answer".to_owned(), EntryValue::Authorization(agreed(amount))),
            ]
            .into(),
            signatures: vec![sign("concern_told", "Wim", Role::ServiceWriter)],
            reason: None,
        };
        assert!(
            bay.ask(correct("349.60")).unwrap_err().unmet[0].english().contains("less than the estimate")
        );
        // 24.60 + 9 × 96.00
        bay.must(correct("888.60"));
    }

    #[test]
    fn no_ends_the_job_and_no_answer_holds_the_step() {
        let mut bay = asked();
        let nothing = Authorized {
            answer: Answer::Pending,
            amount: String::new(),
            currency: String::new(),
            given_by: String::new(),
            means: None,
            given_at: None,
        };
        enter(&mut bay, nothing.clone()).unwrap();
        assert_eq!(judged(&bay).0, "pending");
        assert!(done(&mut bay).is_err());
        let no = Authorized { answer: Answer::Declined, ..nothing };
        assert_eq!(enter(&mut bay, no.clone()).unwrap_err().message, authorization_no_person());
        let no = Authorized { given_by: "owner".into(), ..no };
        assert_eq!(enter(&mut bay, no.clone()).unwrap_err().message, authorization_no_means());
        enter(&mut bay, Authorized { means: Some(Means::Written), ..no }).unwrap();
        assert_eq!(judged(&bay), ("declined".into(), vec!["Declined by owner, by written message.".into()]));
        done(&mut bay).unwrap();
        assert_eq!(bay.view().over, crate::view::Over::Ending);
    }

    #[test]
    fn an_amount_has_a_currency_and_it_is_the_estimates() {
        let mut bay = asked();
        let mut refused = |answered| enter(&mut bay, answered).unwrap_err().message.english();
        let none = Authorized { currency: " ".into(), ..agreed("300") };
        assert!(refused(none).starts_with("The currency is missing."));
        let euros = Authorized { currency: "EUR".into(), ..agreed("300") };
        assert!(refused(euros).starts_with("The answer is in EUR, the estimate in USD."));
        assert_eq!(refused(agreed(" ")), "No amount yet. Type it, such as 12.50.");
        assert!(refused(agreed("1,250")).contains("1250 or 1.25"));
        assert!(refused(agreed("-300")).contains("below zero"));
        assert!(refused(agreed("1e9")).contains("not part of a number"));
    }

    #[test]
    fn a_typed_time_is_not_after_now() {
        // The bay's day is 2026-03-02 and begins at 08:00.
        let mut bay = asked();
        let mut at =
            |text: &str| enter(&mut bay, Authorized { given_at: Some(text.into()), ..agreed("300") });
        at("07:30").unwrap();
        at("2026-03-01 17:05").unwrap();
        assert_eq!(at("17:05").unwrap_err().message, authorization_ahead("17:05"));
        for text in ["7:30", "half past", "2026-3-1 07:30", "25:00"] {
            assert_eq!(at(text).unwrap_err().message, authorization_time(text));
        }
    }

    #[test]
    fn without_an_estimate_an_amount_stands_by_itself() {
        let alone = Authorization { of: None, given_by: Vec::new() };
        assert!(!panside_procedure::format::entry::Kind::classes(&alone).contains(&"below"));
        let context_free =
            crate::testing::try_entry("go_ahead", "answer", EntryValue::Authorization(agreed("5")));
        assert_eq!(context_free.unwrap().class, "agreed", "no estimate is known");
    }
}
