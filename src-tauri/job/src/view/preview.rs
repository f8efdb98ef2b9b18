//! What is said about a value while it is typed.

use panside_journal::Stamp;
use panside_trade::measure::Measure;
use panside_trade::number::parse_number;
use panside_trade::units::Unit;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::Amount;
use crate::command::Refusal;
use crate::decide::draft::find;
use crate::decide::judge;
use crate::entry;
use crate::job::Job;
use crate::message::Message;
use crate::people::Roster;
use crate::value::EntryValue;

/// What a value would be if it were entered now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Preview {
    /// The class it would have; nothing where it would be refused.
    pub class: Option<String>,
    /// It would keep the step in progress.
    pub not_yet: bool,
    /// What is said about it: what it turned out to be, or why it is no value.
    pub said: Vec<Message>,
    /// What is typed in the other unit that is in use for it: a reading, a coil's temperature, a torque.
    pub other: Option<Amount>,
}

/// Judges a value that is not entered yet.
#[must_use]
pub fn preview(
    job: &Job,
    shop: &Roster,
    step: &str,
    entry: &str,
    value: &EntryValue,
    now: &Stamp,
) -> Preview {
    let (class, not_yet, said) = match judge(job, shop, step, entry, value, now) {
        Ok((class, not_yet, said)) => (Some(class), not_yet, said),
        Err(Refusal { message, unmet }) => (None, false, std::iter::once(message).chain(unmet).collect()),
    };
    let asked = job.procedure.names.step(step).and_then(|step| find(job.procedure.step(step), entry).ok());
    let other = asked.and_then(|entry| {
        let (value, unit) = entry::of(&entry.ask).converted(value)?;
        other_unit(value, unit)
    });
    Preview { class, not_yet, said, other }
}

/// The same in the unit that is used beside it in other places, where there is one.
fn other_unit(value: &str, unit: &str) -> Option<Amount> {
    let unit: Unit = unit.parse().ok()?;
    let other = match unit {
        Unit::DegreeCelsius => Unit::DegreeFahrenheit,
        Unit::DegreeFahrenheit => Unit::DegreeCelsius,
        Unit::Millimetre => Unit::Inch,
        Unit::Inch => Unit::Millimetre,
        Unit::NewtonMetre => Unit::PoundForceFoot,
        Unit::PoundForceFoot | Unit::PoundForceInch => Unit::NewtonMetre,
        Unit::KilogramForceMetre | Unit::KilogramForceCentimetre => Unit::NewtonMetre,
        Unit::Litre | Unit::Millilitre => Unit::UsQuart,
        Unit::UsQuart => Unit::Litre,
        Unit::Kilometre => Unit::Mile,
        Unit::Mile => Unit::Kilometre,
        _ => return None,
    };
    let there = Measure::new(parse_number(value).ok()?, unit).ok()?.to(other).ok()?;
    Some(there.into())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{Bay, degrees, litres};

    #[test]
    fn a_hot_exhaust_is_told_while_it_is_typed_in_both_units() {
        let mut bay = Bay::open();
        bay.work_up_to("locks");
        let hot = preview(&bay.job, &bay.shop, "probe", "exhaust", &degrees("63"), &bay.now());
        assert_eq!((hot.class.as_deref(), hot.not_yet), (Some("outside"), true));
        assert_eq!(hot.said[0].id, "reading-above");
        // 63 °C × 1.8 + 32
        assert_eq!(hot.other, Some(Amount { value: "145.4".into(), unit: "°F".into() }));
    }

    #[test]
    fn what_is_no_number_yet_is_told_and_has_no_other_unit() {
        let bay = Bay::open();
        let typing = preview(&bay.job, &bay.shop, "drain", "volume", &litres("3."), &bay.now());
        assert_eq!((typing.class, typing.other), (None, None));
        assert_eq!(typing.said[0].id, "trade-number-unfinished");
    }

    #[test]
    fn litres_and_quarts_stand_beside_each_other() {
        // 1 US liquid quart is 0.946352946 L (57.75 cubic inches, NIST SP 811).
        assert_eq!(other_unit("1", "qt"), Some(Amount { value: "0.9464".into(), unit: "L".into() }));
        assert_eq!(other_unit("12.4", "V"), None, "volts are volts everywhere");
    }
}
