//! A time to wait, counted from the beginning of the step.

use panside_procedure::format::Checklist;
use panside_procedure::format::entry::Timer;

use super::kind::{self, Kind};
use super::{Classified, Context, no_sheet_value};
use crate::clock::{MINUTE_MS, surely_ms};
use crate::command::Refusal;
use crate::message::{
    Message, limit_minutes, timer_elapsed, timer_not_begun, timer_restarted, timer_running,
};
use crate::sheet::Specs;
use crate::value::EntryValue;

pub(super) fn classify(asked: &Timer, specs: &Specs, context: &Context<'_>) -> Result<Classified, Refusal> {
    let wait = wait_ms(asked, specs).ok_or_else(|| no_sheet_value(&asked.at_least))?;
    let restarted = context.begun.is_some_and(|begun| begun.boot != context.at.boot);
    match ms_left(asked, specs, context) {
        None => Err(timer_not_begun(minutes_up(wait)).into()),
        Some(0) => Ok(Classified::new("elapsed", EntryValue::Timer {}, timer_elapsed(minutes_up(wait)))),
        Some(left) if restarted => Err(timer_restarted(minutes_up(left), minutes_up(wait)).into()),
        Some(left) => Err(timer_running(minutes_up(left), minutes_up(wait)).into()),
    }
}

/// Milliseconds still to wait; 0 when it has elapsed, nothing while the step is not begun. Only what has passed for sure
/// counts ([`surely_ms`]): after a restart of the tablet the wait begins anew with that, at the worst.
pub(crate) fn ms_left(asked: &Timer, specs: &Specs, context: &Context<'_>) -> Option<u64> {
    Some(wait_ms(asked, specs)?.saturating_sub(surely_ms(context.begun?, context.at)))
}

fn wait_ms(asked: &Timer, specs: &Specs) -> Option<u64> {
    let minutes = specs.measure(&asked.at_least)?.value();
    // A measure is finite, not negative for a time and at most 10¹², so that this fits.
    Some((minutes * MINUTE_MS as f64).ceil() as u64)
}

/// Whole minutes, begun ones counted.
fn minutes_up(ms: u64) -> i64 {
    i64::try_from(ms.div_ceil(MINUTE_MS)).unwrap_or(i64::MAX)
}

impl Kind for Timer {
    fn classify(
        &self,
        specs: &Specs,
        value: &EntryValue,
        context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Timer {} => classify(self, specs, context),
            _ => Err(kind::other("timer", value)),
        }
    }

    fn limits(&self, specs: &Specs, _checklist: &Checklist) -> Vec<Message> {
        specs.measure(&self.at_least).map(limit_minutes).into_iter().collect()
    }

    fn units(&self) -> Vec<String> {
        Vec::new()
    }

    fn temperature_units(&self) -> Vec<String> {
        Vec::new()
    }

    fn converted<'v>(&self, _value: &'v EntryValue) -> Option<(&'v str, &'v str)> {
        None
    }

    fn in_short(&self, _value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        None
    }

    fn is_measured(&self) -> bool {
        false
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::people::{Names, Roster};
    use crate::testing::{boot, procedure, specs, stamp};
    use panside_journal::Stamp;

    fn wait(begun: Option<Stamp>, at: Stamp) -> Result<Classified, Refusal> {
        let context = Context {
            checklist: &procedure().checklist,
            begun: begun.as_ref(),
            at: &at,
            utc_offset_min: 0,
            names: Names::Shop(&Roster::default()),
            step: "cure",
            entry: "wait",
            past: None,
        };
        classify(&Timer { at_least: "cure".into() }, &specs(), &context)
    }

    #[test]
    fn the_wait_is_over_to_the_millisecond_and_before_that_the_minutes_left_are_named() {
        // The fixture's cure takes 20 minutes.
        let mut early = stamp(20);
        early.mono_ms -= 1;
        early.wall_ms += 3_600_000;
        assert_eq!(wait(Some(stamp(0)), early).unwrap_err().message, timer_running(1_i64, 20_i64));
        assert_eq!(wait(Some(stamp(0)), stamp(20)).unwrap().class, "elapsed");
        assert_eq!(wait(Some(stamp(3)), stamp(8)).unwrap_err().message, timer_running(15_i64, 20_i64));
    }

    #[test]
    fn after_a_restart_only_the_time_since_then_counts_wherever_the_wall_clock_stands() {
        let up_for =
            |minutes: u64, wall| Stamp { boot: boot(2), mono_ms: minutes * MINUTE_MS, ..stamp(wall) };
        // The wall clock was set a day forward while the tablet was off, an hour back, and not at all.
        for wall in [24 * 60, -60, 40] {
            let early = wait(Some(stamp(0)), up_for(5, wall)).unwrap_err();
            assert_eq!(early.message, timer_restarted(15_i64, 20_i64), "at minute {wall}");
            assert_eq!(wait(Some(stamp(0)), up_for(20, wall)).unwrap().class, "elapsed", "at minute {wall}");
        }
    }

    #[test]
    fn a_wait_of_a_step_that_is_not_begun_has_not_begun() {
        assert_eq!(wait(None, stamp(90)).unwrap_err().message, timer_not_begun(20_i64));
    }
}
