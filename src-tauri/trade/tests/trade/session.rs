//! Sessions of stick readings, and whether the symptom may be judged yet.

use panside_trade::diagnosis::{Closed, Symptom, diagnosis_gate};
use panside_trade::level::{
    LeftOut, LevelChart, LevelCheck, LevelClass, LevelConditions, LevelPoint, LevelReading, LevelReason,
    LevelTimes, NotJudged, Stick, check_level,
};
use panside_trade::measure::{Length, Temperature};
use panside_trade::moment::Moment;
use panside_trade::{FigureError, Worked as _};

use crate::Worked;

pub fn mm(value: f64) -> Length {
    Length::from_millimetres(value).unwrap()
}

pub fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value).unwrap()
}

/// The demo sheet's invented chart.
pub fn chart() -> LevelChart {
    let rows = [(40.0, 12.0, 22.0), (58.0, 21.0, 31.0), (70.0, 27.0, 37.0)];
    let points =
        rows.map(|(at, low, high)| LevelPoint { temperature: celsius(at), low: mm(low), high: mm(high) });
    LevelChart::new(points.to_vec()).unwrap()
}

pub const TIMES: LevelTimes =
    LevelTimes { engine_started: Moment::from_ms(0), fluid_changed: None, now: Moment::from_ms(600_000) };

fn read_at(ms: i64, at: f64, trace: f64) -> (Moment, LevelReading) {
    (Moment::from_ms(ms), LevelReading { temperature: celsius(at), stick: Stick::Trace(mm(trace)) })
}

pub fn session(
    conditions: LevelConditions,
    readings: &[(Moment, LevelReading)],
    times: LevelTimes,
) -> Result<LevelCheck, FigureError> {
    check_level(&chart(), conditions, readings, times, mm(2.0))
}

/// The level of two like readings.
pub fn level(at: f64, trace: f64) -> LevelCheck {
    session(LevelConditions::MET, &[read_at(1, at, trace), read_at(2, at, trace)], TIMES).unwrap()
}

#[test]
fn a_level_is_judged_only_as_it_must_be_read() -> Worked {
    let readings = [read_at(1, 46.0, 20.0), read_at(2, 46.0, 20.0)];
    let met = LevelConditions::MET;
    let check = session(met, &readings, TIMES)?;
    assert_eq!(check.class(), LevelClass::In);
    for (conditions, why) in [
        (LevelConditions { level_floor: false, ..met }, NotJudged::FloorNotLevel),
        (LevelConditions { idling: false, ..met }, NotJudged::NotIdling),
        (LevelConditions { in_park: false, ..met }, NotJudged::NotInPark),
        (LevelConditions { ranges_cycled: false, ..met }, NotJudged::RangesNotCycled),
    ] {
        let check = session(conditions, &readings, TIMES)?;
        assert_eq!((check.class(), check.not_judged.as_slice()), (LevelClass::Unclear, [why].as_slice()));
        assert!(check.working().to_string().contains(&why.message().english()));
    }
    Ok(())
}

#[test]
fn readings_before_the_engine_was_started_or_fluid_was_added_do_not_count() -> Worked {
    let readings =
        [read_at(1, 46.0, 5.0), read_at(11, 46.0, 10.0), read_at(21, 46.0, 20.0), read_at(22, 46.0, 20.5)];
    let times = LevelTimes {
        engine_started: Moment::from_ms(10),
        fluid_changed: Some(Moment::from_ms(20)),
        now: Moment::from_ms(30),
    };
    let check = session(LevelConditions::MET, &readings, times)?;
    let left_out: Vec<_> = check.readings.iter().map(|timed| timed.left_out).collect();
    assert_eq!(left_out, [Some(LeftOut::BeforeEngineStart), Some(LeftOut::BeforeFluidChange), None, None]);
    assert_eq!(check.class(), LevelClass::In);
    assert!(check.working().to_string().contains("the engine was started since"));
    let all_old = LevelTimes { engine_started: Moment::from_ms(25), ..times };
    let check = session(LevelConditions::MET, &readings, all_old)?;
    assert_eq!(check.result.map(|result| result.reason), Some(LevelReason::TooFewReadings));
    Ok(())
}

#[test]
fn a_clock_that_jumped_back_is_told_for_readings_too() {
    let back = session(LevelConditions::MET, &[read_at(9, 46.0, 20.0), read_at(3, 46.0, 20.0)], TIMES);
    assert_eq!(back, Err(FigureError::ClockWentBack { position: 2 }));
    let ahead = session(LevelConditions::MET, &[read_at(600_001, 46.0, 20.0)], TIMES);
    assert_eq!(ahead, Err(FigureError::InTheFuture { position: 1 }));
}

#[test]
fn a_level_says_each_step_and_never_goes_beyond_its_chart() -> Worked {
    let text = level(46.0, 31.0).working().to_string();
    // 12 + 9 × 6/18 = 15 and 22 + 9 × 6/18 = 25 mm, by hand.
    for part in [
        "12 + (21 − 12) × (46 − 40) / (58 − 40) = 15 mm",
        "= 25 mm",
        "above the band",
        "6 mm from the high mark",
    ] {
        assert!(text.contains(part), "{part}: {text}");
    }
    let outside = level(71.0, 31.0);
    assert_eq!(outside.class(), LevelClass::Unclear);
    assert!(outside.working().to_string().contains("outside the chart"));
    let json = serde_json::to_string(&outside).unwrap();
    assert_eq!(serde_json::from_str::<LevelCheck>(&json).unwrap(), outside);
    Ok(())
}

#[test]
fn diagnosis_opens_with_the_level_in_and_the_symptom_tried_again() -> Worked {
    use LevelClass::{Above, Below, In, Unclear};
    let at = Moment::from_ms;
    let closed = |levels: &[(Moment, LevelClass)], tries: &[(Moment, Symptom)]| {
        diagnosis_gate(levels, tries).map(|gate| gate.closed)
    };
    assert_eq!(closed(&[], &[])?, Some(Closed::LevelNotRead));
    assert_eq!(closed(&[(at(1), Below)], &[(at(2), Symptom::Shows)])?, Some(Closed::LevelBelow));
    assert_eq!(closed(&[(at(1), Above)], &[])?, Some(Closed::LevelAbove));
    assert_eq!(closed(&[(at(1), In), (at(2), Unclear)], &[])?, Some(Closed::LevelUnclear));
    let topped_up = [(at(1), Below), (at(5), In)];
    assert_eq!(closed(&topped_up, &[(at(2), Symptom::Shows)])?, Some(Closed::NotTriedAgain));
    let open = diagnosis_gate(&topped_up, &[(at(2), Symptom::Shows), (at(6), Symptom::Gone)])?;
    assert_eq!((open.closed, open.symptom), (None, Some(Symptom::Gone)));
    assert!(open.working().to_string().contains("gone"));
    let back = closed(&[(at(5), In), (at(1), In)], &[]);
    assert_eq!(back, Err(FigureError::ClockWentBack { position: 2 }));
    Ok(())
}
