//! Labour: tenths against a published chart, what adds up, what is refused.

use panside_trade::labour::{Clocked, Labour, Spent, labour, tenths};
use panside_trade::measure::Duration;
use panside_trade::moment::Moment;
use panside_trade::{FigureError, Worked as _};
use proptest::prelude::*;

use crate::Worked;

const MINUTE: i64 = 60_000;

fn at(minutes: i64) -> Moment {
    Moment::from_ms(minutes * MINUTE)
}

fn on(phase: &str, spent: Spent) -> Clocked {
    Clocked::On { phase: phase.into(), spent }
}

#[test]
fn minutes_are_rounded_to_tenths_as_a_time_card_chart_has_it() {
    // A public chart of minutes and tenths, to the nearest: 0–2 is 0.0, 3–8 is 0.1, and so on to 57–59, which is 1.0.
    let chart = [
        (0, 2, 0),
        (3, 8, 1),
        (9, 14, 2),
        (15, 20, 3),
        (27, 32, 5),
        (33, 38, 6),
        (39, 44, 7),
        (45, 50, 8),
        (51, 56, 9),
        (57, 62, 10),
    ];
    let mut cases = 0;
    for (from, to, expected) in chart {
        for minutes in from..=to {
            assert_eq!(tenths(minutes * MINUTE), expected, "{minutes} min");
            cases += 1;
        }
    }
    // Its examples: 1 h 24 min is 1.4, 2 h 38 min is 2.6.
    assert_eq!((tenths(84 * MINUTE), tenths(158 * MINUTE)), (14, 26));
    println!("tenths of an hour against a published chart: {} cases, all equal", cases + 2);
}

#[test]
fn phases_waiting_and_unplanned_work_are_counted_apart() -> Worked {
    let events = vec![
        (at(0), on("drain", Spent::Work)),
        (at(20), on("drain", Spent::Waiting("cooling".into()))),
        (at(50), on("pan", Spent::Work)),
        (at(80), on("pan", Spent::Unplanned("seized nut".into()))),
        (at(95), Clocked::Off),
        (at(120), on("pan", Spent::Work)),
    ];
    let found = labour(events, at(130), Some(Duration::from_minutes(60.0)?))?;
    assert_eq!(found.work_ms, (20 + 30 + 10) * MINUTE);
    assert_eq!((found.waiting_ms, found.unplanned_ms), (30 * MINUTE, 15 * MINUTE));
    // 75 min of labour is 1.25 h, in tenths 1.3 (half up).
    assert_eq!(found.tenths, 13);
    assert_eq!(found.shares.len(), 4);
    let text = found.working().to_string();
    for part in ["1.3 h of labour", "waiting 30 min apart", "15 min more", "seized nut"] {
        assert!(text.contains(part), "{part}: {text}");
    }
    let json = serde_json::to_string(&found).unwrap();
    assert_eq!(serde_json::from_str::<Labour>(&json).unwrap(), found);
    Ok(())
}

#[test]
fn entries_that_can_not_be_are_told_by_their_place() {
    let work = || on("pan", Spent::Work);
    let told = |events| labour(events, at(60), None).unwrap_err();
    assert_eq!(
        told(vec![(at(10), work()), (at(5), Clocked::Off)]),
        FigureError::ClockWentBack { position: 2 }
    );
    assert_eq!(told(vec![(at(70), work())]), FigureError::InTheFuture { position: 1 });
    assert_eq!(told(vec![(at(10), Clocked::Off)]), FigureError::NotClockedOn { position: 1 });
    for spent in [Spent::Waiting(" ".into()), Spent::Unplanned(String::new())] {
        assert_eq!(told(vec![(at(0), on("pan", spent))]), FigureError::ReasonMissing { position: 1 });
    }
}

#[test]
fn no_entries_are_no_labour_and_the_ends_of_time_do_not_run_over() {
    assert_eq!(labour(vec![], at(60), None).unwrap().tenths, 0);
    let ever = vec![(Moment::from_ms(i64::MIN), on("pan", Spent::Work))];
    assert_eq!(labour(ever, Moment::from_ms(i64::MAX), None), Err(FigureError::TooLong));
}

proptest! {
    #[test]
    fn all_time_on_the_clock_is_in_one_of_the_sums(steps in prop::collection::vec((0..10_000_000_i64, 0..4_u8), 1..20)) {
        let mut now = 0;
        let mut clocked = 0;
        let mut running = false;
        let mut events = Vec::new();
        for (step, kind) in steps {
            if running {
                clocked += step;
            }
            now += step;
            let told = match kind {
                0 if running => Clocked::Off,
                1 => on("pan", Spent::Waiting("parts".into())),
                2 => on("pan", Spent::Unplanned("rust".into())),
                _ => on("drain", Spent::Work),
            };
            running = told != Clocked::Off;
            events.push((Moment::from_ms(now), told));
        }
        let found = labour(events, Moment::from_ms(now), None).unwrap();
        prop_assert_eq!(found.work_ms + found.waiting_ms + found.unplanned_ms, clocked);
        prop_assert_eq!(found.shares.iter().map(|share| share.ms).sum::<i64>(), clocked);
    }

    #[test]
    fn tenths_are_never_off_by_more_than_three_minutes(ms in 0..1_000_000_000_i64) {
        prop_assert!((tenths(ms) * 360_000 - ms).abs() <= 180_000);
    }
}
