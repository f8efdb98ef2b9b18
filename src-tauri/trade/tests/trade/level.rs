//! The fluid level: bands against numpy 2.4.6, classes at the marks, and all that keeps a level unclear.
//!
//! The chart is invented for these tests and belongs to no vehicle.

use panside_trade::TradeError;
use panside_trade::level::{
    LevelChart, LevelClass, LevelPoint, LevelReading, LevelReason, LevelResult, Mark, Stick, judge,
};
use panside_trade::measure::{Length, Temperature};
use proptest::prelude::*;

use crate::{Outcome, same};

/// (°C, low mark mm, high mark mm)
const ROWS: [(f64, f64, f64); 5] =
    [(20.0, 12.0, 20.0), (40.0, 16.0, 25.0), (60.0, 21.0, 31.0), (80.0, 28.0, 39.0), (100.0, 36.0, 48.0)];

fn mm(value: f64) -> Result<Length, TradeError> {
    Length::from_millimetres(value)
}

fn chart_of(rows: &[(f64, f64, f64)]) -> Result<LevelChart, TradeError> {
    let point = |(celsius, low, high): &(f64, f64, f64)| {
        Ok(LevelPoint { temperature: Temperature::from_celsius(*celsius)?, low: mm(*low)?, high: mm(*high)? })
    };
    LevelChart::new(rows.iter().map(point).collect::<Result<_, TradeError>>()?)
}

fn trace(celsius: f64, millimetres: f64) -> Result<LevelReading, TradeError> {
    Ok(LevelReading {
        temperature: Temperature::from_celsius(celsius)?,
        stick: Stick::Trace(mm(millimetres)?),
    })
}

fn dry(celsius: f64, confirmed: bool) -> Result<LevelReading, TradeError> {
    Ok(LevelReading { temperature: Temperature::from_celsius(celsius)?, stick: Stick::NoTrace { confirmed } })
}

/// Judges on the test chart, with 2 mm allowed between readings.
fn judged(readings: &[LevelReading]) -> Result<LevelResult, TradeError> {
    judge(&chart_of(&ROWS)?, readings, mm(2.0)?)
}

fn outcome(readings: &[LevelReading]) -> Result<(LevelClass, LevelReason), TradeError> {
    judged(readings).map(|result| (result.class, result.reason))
}

#[test]
fn the_band_between_two_rows_agrees_with_numpy() -> Outcome {
    // Values printed by numpy 2.4.6, numpy.interp over the columns of ROWS.
    let printed = [
        (20.0, 12.0, 20.0),
        (33.3, 14.66, 23.325),
        (50.0, 18.5, 28.0),
        (58.0, 20.5, 30.4),
        (62.5, 21.875, 32.0),
        (77.7, 27.195, 38.08),
        (95.0, 34.0, 45.75),
        (100.0, 36.0, 48.0),
    ];
    for (celsius, low, high) in printed {
        let band = chart_of(&ROWS)?.band_at(Temperature::from_celsius(celsius)?)?;
        assert!(same(band.low.millimetres(), low), "{celsius}");
        assert!(same(band.high.millimetres(), high), "{celsius}");
    }
    Ok(())
}

#[test]
fn two_agreeing_readings_below_the_low_mark_are_below() -> Outcome {
    let result = judged(&[trace(58.0, 17.0)?, trace(58.0, 17.5)?])?;
    assert_eq!((result.class, result.reason), (LevelClass::Below, LevelReason::ReadingsAgree));
    // 17 mm against the low mark of 20.5 mm that numpy.interp gives at 58 °C.
    let first = result.readings[0];
    let nearest = first.nearest_mark.unwrap();
    assert_eq!(nearest.mark, Mark::Low);
    assert!(same(nearest.distance.millimetres(), 3.5));
    assert!(same(first.above_low_mark.unwrap().millimetres(), -3.5));
    assert!(same(result.spread.unwrap().millimetres(), 0.5));
    Ok(())
}

#[test]
fn two_agreeing_readings_above_the_high_mark_are_above() -> Outcome {
    let result = judged(&[trace(80.0, 43.0)?, trace(80.0, 43.0)?])?;
    assert_eq!((result.class, result.reason), (LevelClass::Above, LevelReason::ReadingsAgree));
    let nearest = result.readings[0].nearest_mark.unwrap();
    assert_eq!((nearest.mark, nearest.distance.millimetres()), (Mark::High, 4.0));
    Ok(())
}

#[test]
fn the_nearer_mark_is_named_for_a_level_inside_the_band() -> Outcome {
    let result = judged(&[trace(80.0, 30.0)?, trace(80.0, 37.0)?])?;
    let nearest: Vec<_> = result.readings.iter().filter_map(|judged| judged.nearest_mark).collect();
    assert_eq!(
        nearest.iter().map(|it| (it.mark, it.distance.millimetres())).collect::<Vec<_>>(),
        [(Mark::Low, 2.0), (Mark::High, 2.0)]
    );
    assert!(result.readings.iter().all(|judged| judged.class == LevelClass::In));
    Ok(())
}

#[test]
fn on_either_mark_is_in() -> Outcome {
    for (celsius, mark) in [(80.0, 28.0), (80.0, 39.0)] {
        let readings = [trace(celsius, mark)?, trace(celsius, mark)?];
        assert_eq!(outcome(&readings)?, (LevelClass::In, LevelReason::ReadingsAgree), "{mark}");
    }
    let just_below = [trace(80.0, 27.999)?, trace(80.0, 27.999)?];
    assert_eq!(outcome(&just_below)?.0, LevelClass::Below);
    let just_above = [trace(80.0, 39.001)?, trace(80.0, 39.001)?];
    assert_eq!(outcome(&just_above)?.0, LevelClass::Above);
    Ok(())
}

#[test]
fn a_mark_that_was_typed_in_full_is_in_at_every_tenth_of_a_degree() -> Outcome {
    // In whole tenths of a degree and thousandths of a millimetre the mark is an exact sum. In binary it is not:
    // at 57.6 °C the low mark of 20.4 mm comes out as 20.400000000000002 mm.
    for rows in ROWS.windows(2) {
        let ((from, low, high), (_, next_low, next_high)) = (rows[0], rows[1]);
        for tenths in 0..=200_i32 {
            let celsius = f64::from(from as i32 * 10 + tenths) / 10.0;
            for (mark, next) in [(low, next_low), (high, next_high)] {
                let thousandths = mark as i32 * 1000 + (next as i32 - mark as i32) * 5 * tenths;
                let reading = trace(celsius, f64::from(thousandths) / 1000.0)?;
                assert_eq!(outcome(&[reading, reading])?.0, LevelClass::In, "{celsius} °C: {thousandths}");
            }
        }
    }
    Ok(())
}

#[test]
fn in_the_middle_of_the_band_the_low_mark_is_named() -> Outcome {
    let result = judged(&[trace(80.0, 33.5)?, trace(80.0, 33.5)?])?;
    let nearest = result.readings[0].nearest_mark.unwrap();
    assert_eq!((nearest.mark, nearest.distance.millimetres()), (Mark::Low, 5.5));
    Ok(())
}

#[test]
fn one_reading_is_not_yet_a_level() -> Outcome {
    assert_eq!(outcome(&[])?, (LevelClass::Unclear, LevelReason::TooFewReadings));
    let result = judged(&[trace(80.0, 30.0)?])?;
    assert_eq!((result.class, result.reason), (LevelClass::Unclear, LevelReason::TooFewReadings));
    assert_eq!(result.readings[0].class, LevelClass::In, "what the one reading says is still shown");
    Ok(())
}

#[test]
fn a_temperature_outside_the_chart_leaves_the_level_unclear() -> Outcome {
    for celsius in [19.9, 100.1, -5.0] {
        let result = judged(&[trace(80.0, 30.0)?, trace(celsius, 30.0)?])?;
        assert_eq!((result.class, result.reason), (LevelClass::Unclear, LevelReason::OutsideChart));
        assert_eq!(result.readings[1].band, None, "nothing is guessed beyond the chart");
        assert_eq!(result.readings[1].class, LevelClass::Unclear);
        assert_eq!(result.spread, None);
    }
    assert_eq!(
        outcome(&[trace(20.0, 15.0)?, trace(20.0, 15.0)?])?.0,
        LevelClass::In,
        "the ends belong to it"
    );
    Ok(())
}

#[test]
fn readings_at_different_temperatures_are_compared_on_their_own_bands() -> Outcome {
    // 4 mm above the low mark each time, while the traces themselves are 8 mm apart.
    let same_level = [trace(80.0, 32.0)?, trace(100.0, 40.0)?];
    assert_eq!(outcome(&same_level)?, (LevelClass::In, LevelReason::ReadingsAgree));
    // The same trace twice, but the fluid has warmed: 4 mm above the low mark, then 4 mm below.
    let same_trace = [trace(80.0, 32.0)?, trace(100.0, 32.0)?];
    assert_eq!(outcome(&same_trace)?, (LevelClass::Unclear, LevelReason::ReadingsDisagree));
    Ok(())
}

#[test]
fn readings_agree_up_to_and_with_the_difference_allowed() -> Outcome {
    let apart = |millimetres: f64| outcome(&[trace(80.0, 30.0)?, trace(80.0, 30.0 + millimetres)?]);
    assert_eq!(apart(2.0)?, (LevelClass::In, LevelReason::ReadingsAgree));
    assert_eq!(apart(2.001)?, (LevelClass::Unclear, LevelReason::ReadingsDisagree));
    let third_one_off = [trace(80.0, 30.0)?, trace(80.0, 30.5)?, trace(80.0, 35.0)?];
    assert_eq!(outcome(&third_one_off)?, (LevelClass::Unclear, LevelReason::ReadingsDisagree));
    Ok(())
}

#[test]
fn readings_on_both_sides_of_a_mark_leave_the_level_unclear() -> Outcome {
    let around_the_mark = [trace(80.0, 27.5)?, trace(80.0, 28.5)?];
    assert_eq!(outcome(&around_the_mark)?, (LevelClass::Unclear, LevelReason::ClassesDiffer));
    Ok(())
}

#[test]
fn a_dry_stick_asks_for_a_second_look_before_it_means_low() -> Outcome {
    let first_look = [dry(80.0, false)?, dry(80.0, false)?];
    assert_eq!(outcome(&first_look)?, (LevelClass::Unclear, LevelReason::NoTrace));
    assert_eq!(outcome(&[dry(80.0, true)?, dry(80.0, false)?])?.1, LevelReason::NoTrace);

    let result = judged(&[dry(80.0, true)?, dry(82.0, true)?])?;
    assert_eq!((result.class, result.reason), (LevelClass::Below, LevelReason::NoTraceConfirmed));
    assert_eq!(result.readings[0].nearest_mark, None, "how far below is not known");
    assert_eq!(result.spread, None);
    Ok(())
}

#[test]
fn a_dry_stick_beside_a_trace_is_a_disagreement() -> Outcome {
    let readings = [dry(80.0, true)?, trace(80.0, 26.0)?];
    assert_eq!(outcome(&readings)?, (LevelClass::Unclear, LevelReason::ReadingsDisagree));
    Ok(())
}

#[test]
fn a_trace_below_the_end_of_the_stick_is_refused() -> Outcome {
    let refused = judged(&[trace(80.0, -1.0)?, trace(80.0, 30.0)?]);
    assert_eq!(refused, Err(TradeError::StickBelowEnd { millimetres: -1.0 }));
    let refused = judge(&chart_of(&ROWS)?, &[], mm(-0.5)?);
    assert_eq!(refused, Err(TradeError::AgreementNegative { millimetres: -0.5 }));
    Ok(())
}

#[test]
fn a_chart_that_is_not_in_order_is_refused() {
    assert_eq!(chart_of(&ROWS[..1]), Err(TradeError::TableTooShort { points: 1 }));
    let twice = [(40.0, 1.0, 2.0), (40.0, 1.0, 2.0)];
    assert_eq!(chart_of(&twice), Err(TradeError::TableNotRising { previous: 40.0, next: 40.0 }));
    for (low, high) in [(5.0, 5.0), (6.0, 5.0), (-1.0, 5.0)] {
        let refused = chart_of(&[(40.0, 1.0, 2.0), (60.0, low, high)]);
        assert_eq!(refused, Err(TradeError::ChartMarks { celsius: 60.0, low, high }));
    }
}

#[test]
fn json_can_not_bring_in_a_chart_that_is_refused() {
    let chart = chart_of(&ROWS).unwrap();
    let text = serde_json::to_string(&chart).unwrap();
    assert_eq!(serde_json::from_str::<LevelChart>(&text).unwrap(), chart);
    let mut turned: Vec<LevelPoint> = chart.points().to_vec();
    turned.reverse();
    let text = serde_json::to_string(&turned).unwrap();
    assert!(serde_json::from_str::<LevelChart>(&text).is_err());
}

#[test]
fn a_level_result_reads_back_from_its_record() -> Outcome {
    let result = judged(&[trace(80.0, 30.0)?, trace(82.5, 31.0)?, dry(60.0, true)?])?;
    let text = serde_json::to_string(&result).unwrap();
    assert!(text.contains(r#""class":"unclear","reason":"readings_disagree""#), "{text}");
    assert!(text.contains(r#"{"no_trace":{"confirmed":true}}"#), "{text}");
    assert_eq!(serde_json::from_str::<LevelResult>(&text).unwrap(), result);
    Ok(())
}

proptest! {
    #[test]
    fn more_fluid_never_gives_a_lower_class(
        celsius in 20.0..=100.0_f64,
        lower in 0.0..60.0_f64,
        more in 0.0..30.0_f64,
    ) {
        let class = |millimetres| {
            outcome(&[trace(celsius, millimetres)?, trace(celsius, millimetres)?]).map(|(class, _)| class)
        };
        let (before, after) = (class(lower).unwrap(), class(lower + more).unwrap());
        prop_assert!(before <= after, "{before:?} became {after:?}");
        prop_assert_ne!(after, LevelClass::Unclear);
    }

    #[test]
    fn on_the_mark_is_in_at_any_temperature(celsius in 20.0..=100.0_f64) {
        let band = chart_of(&ROWS).unwrap().band_at(Temperature::from_celsius(celsius).unwrap()).unwrap();
        for mark in [band.low, band.high] {
            let reading = trace(celsius, mark.millimetres()).unwrap();
            prop_assert_eq!(outcome(&[reading, reading]).unwrap().0, LevelClass::In);
        }
    }

    #[test]
    fn the_order_of_readings_does_not_matter(
        celsius in prop::collection::vec(15.0..105.0_f64, 2..5),
        millimetres in prop::collection::vec(0.0..60.0_f64, 5),
    ) {
        let readings: Vec<_> =
            celsius.iter().zip(&millimetres).map(|(c, m)| trace(*c, *m).unwrap()).collect();
        let turned: Vec<_> = readings.iter().rev().copied().collect();
        prop_assert_eq!(outcome(&readings).unwrap(), outcome(&turned).unwrap());
    }
}
