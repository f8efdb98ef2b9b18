//! Adapters, guard bands, tools, angle stages, and torque against thread and grade.

use chrono::NaiveDate;
use panside_trade::bolt::{BoltClass, Grade, Thread, bolt_sense};
use panside_trade::measure::{Angle, Length, Measure, Torque};
use panside_trade::torque::{
    AngleClass, AngleStage, GuardClass, Reach, TorqueReason, TorqueStage, TorqueTool, accept,
    calibration_due, guard, judge_angle, setting_with_adapter, tool_use, torque_through_adapter,
};
use panside_trade::units::Unit;
use panside_trade::{FigureError, Worked as _};
use proptest::prelude::*;

use crate::{Worked, near};

const DAY: NaiveDate = NaiveDate::from_ymd_opt(2026, 5, 4).unwrap();
const DUE: NaiveDate = NaiveDate::from_ymd_opt(2026, 6, 30).unwrap();

fn nm(value: f64) -> Torque {
    Torque::from_newton_metres(value).unwrap()
}

fn degrees(value: f64) -> Angle {
    Angle::from_degrees(value).unwrap()
}

fn mm(value: f64) -> Length {
    Length::from_millimetres(value).unwrap()
}

fn reach(tool: f64, adapter: f64, angle: f64) -> Reach {
    Reach { tool: mm(tool), adapter: mm(adapter), angle: degrees(angle) }
}

fn tool() -> TorqueTool {
    TorqueTool::new(nm(5.0), nm(25.0), 4.0, DUE).unwrap()
}

#[test]
fn adapters_straight_on_give_the_published_settings() -> Worked {
    let published = [
        // agentcalc.com, torque wrench extension calculator.
        (80.0, Unit::NewtonMetre, 400.0, 50.0, 71.1, 0.05),
        // torqwrench.com, extensions.
        (30.0, Unit::PoundForceFoot, 12.0 * 25.4, 6.0 * 25.4, 20.0, 1e-9),
        // An adapter maker's leaflet, p. 2.
        (20.0, Unit::PoundForceFoot, 12.0 * 25.4, 3.0 * 25.4, 16.0, 1e-9),
        // US Navy aviation training manual, 3-8.
        (100.0, Unit::PoundForceInch, 12.0 * 25.4, 6.0 * 25.4, 66.7, 0.05),
        // An aircraft maintenance manual, 2-90.
        (30.0, Unit::PoundForceFoot, 304.8, 76.2, 24.0, 1e-9),
    ];
    let mut largest: f64 = 0.0;
    for (torque, unit, length, adapter, expected, rounding) in published {
        let result = setting_with_adapter(Measure::new(torque, unit)?, reach(length, adapter, 0.0))?;
        let off = (result.setting.value() - expected).abs();
        assert!(off <= rounding, "{torque} {unit}: {}", result.setting);
        assert_eq!(result.setting.unit(), unit);
        largest = largest.max(off);
    }
    println!(
        "published adapter settings: {} cases, largest difference {largest:.2e} of a printed unit",
        published.len()
    );
    Ok(())
}

#[test]
fn a_square_adapter_changes_nothing_and_one_that_points_back_raises_the_setting() -> Worked {
    // The same page and physicsforums 860812: at 90° no change, beyond it the lever is shorter.
    assert_eq!(reach(400.0, 50.0, 90.0).factor()?, 1.0);
    assert_eq!(reach(400.0, 50.0, -90.0).factor()?, 1.0);
    assert!(near(reach(400.0, 50.0, 180.0).factor()?, 400.0 / 350.0, 1e-12));
    // US Army TM 9-254, figure 4-6: lever = tool + adapter × cos angle.
    assert!(near(reach(400.0, 50.0, 60.0).factor()?, 400.0 / 425.0, 1e-12));
    Ok(())
}

#[test]
fn a_reach_that_can_not_be_is_refused() -> Worked {
    assert!(matches!(reach(0.0, 50.0, 0.0).factor(), Err(FigureError::ToolLength { .. })));
    assert!(matches!(reach(-1.0, 50.0, 0.0).factor(), Err(FigureError::ToolLength { .. })));
    assert!(matches!(reach(400.0, -50.0, 0.0).factor(), Err(FigureError::AdapterLength { .. })));
    assert!(matches!(reach(400.0, 50.0, 181.0).factor(), Err(FigureError::AdapterAngle { .. })));
    for adapter in [400.0, 390.0, 1000.0] {
        assert_eq!(reach(400.0, adapter, 180.0).factor(), Err(FigureError::AdapterReach));
    }
    let length = Measure::new(9.0, Unit::Millimetre)?;
    assert!(matches!(setting_with_adapter(length, reach(400.0, 50.0, 0.0)), Err(FigureError::Trade(_))));
    Ok(())
}

fn guarded(target: f64, tolerance: f64, setting: f64, deviation: f64) -> Result<GuardClass, FigureError> {
    let stage = TorqueStage::new(nm(target), tolerance)?;
    let tool = TorqueTool::new(nm(5.0), nm(100.0), deviation, DUE)?;
    Ok(guard(accept(stage, Measure::new(setting, Unit::NewtonMetre)?, tool, DAY)?)?.class)
}

#[test]
fn a_click_is_proved_only_inside_the_narrowed_limits() -> Worked {
    // 10 % around 20 N·m with a tool of 4 %: 18 × 1.04 = 18.72 to 22 × 0.96 = 21.12 N·m (ISO 14253-1, second-hand).
    for (setting, class) in [
        (20.0, GuardClass::Proved),
        (18.72, GuardClass::Proved),
        (21.12, GuardClass::Proved),
        (18.71, GuardClass::Undecided),
        (21.13, GuardClass::Undecided),
        (22.5, GuardClass::Undecided),
        // 22.88 / 1.04 = 22 and 17.28 / 0.96 = 18: from there on outside, whatever the tool is off.
        (22.89, GuardClass::Outside),
        (17.27, GuardClass::Outside),
    ] {
        assert_eq!(guarded(20.0, 10.0, setting, 4.0)?, class, "{setting}");
    }
    Ok(())
}

#[test]
fn the_deviation_is_in_parts_of_the_true_torque() -> Worked {
    // The rule with its check cases (from memory; the clause's title was seen): set 100, true 104.0 is −3.846 %, passes
    // 4 %; true 104.5 is −4.306 %, fails; true 96.0 is +4.167 %, fails.
    let deviation = |set: f64, real: f64| (set - real) / real * 100.0;
    for (real, within) in [(104.0, true), (104.5, false), (96.0, false)] {
        // A tool of 4 % set to 100: what it may really give lies from 100 / 1.04 to 100 / 0.96.
        let may_be = (100.0 / 1.04..=100.0 / 0.96).contains(&real);
        assert_eq!(may_be, within, "{real}: {}", deviation(100.0, real));
        assert_eq!(deviation(100.0, real).abs() <= 4.0, within);
    }
    Ok(())
}

#[test]
fn a_tolerance_finer_than_the_tool_can_not_be_proved() -> Worked {
    let stage = TorqueStage::new(nm(20.0), 3.0)?;
    let result = guard(accept(stage, Measure::new(20.0, Unit::NewtonMetre)?, tool(), DAY)?)?;
    assert!(!result.can_be_proved());
    assert_eq!(result.class, GuardClass::Undecided);
    assert!(result.working().to_string().contains("finer than the tool"));
    Ok(())
}

#[test]
fn a_tool_is_looked_at_before_it_is_used() -> Worked {
    assert_eq!(tool_use(tool(), nm(9.0), DUE).reasons, []);
    assert_eq!(tool_use(tool(), nm(4.0), DUE).reasons, [TorqueReason::ToolOutOfRange]);
    let late = tool_use(tool(), nm(4.0), DUE.succ_opt().unwrap());
    assert_eq!(late.reasons, [TorqueReason::ToolOutOfRange, TorqueReason::CalibrationPast]);
    assert!(late.working().to_string().contains("take another tool"));
    Ok(())
}

#[test]
fn a_calibration_holds_for_a_year_to_the_day() -> Worked {
    let date = |year, month, day| NaiveDate::from_ymd_opt(year, month, day).unwrap();
    assert_eq!(calibration_due(date(2025, 6, 30), 12)?, DUE);
    assert_eq!(calibration_due(date(2024, 2, 29), 12)?, date(2025, 2, 28));
    assert_eq!(calibration_due(date(2025, 8, 31), 6)?, date(2026, 2, 28));
    for months in [0, u32::MAX] {
        assert_eq!(calibration_due(DAY, months), Err(FigureError::CalibrationMonths { months }));
    }
    Ok(())
}

#[test]
fn an_angle_is_short_inside_or_over() -> Worked {
    let stage = AngleStage::new(degrees(90.0), degrees(5.0))?;
    for (turned, class) in [
        (84.9, AngleClass::Short),
        (85.0, AngleClass::Inside),
        (95.0, AngleClass::Inside),
        (95.1, AngleClass::Over),
    ] {
        assert_eq!(judge_angle(stage, degrees(turned))?.class, class, "{turned}");
    }
    assert!(judge_angle(stage, degrees(80.0))?.working().to_string().contains("turn on by 10 °"));
    for turned in [-1.0, 720.1] {
        assert!(matches!(judge_angle(stage, degrees(turned)), Err(FigureError::AngleTurned { .. })));
    }
    for (target, tolerance) in [(0.0, 5.0), (90.0, 0.0), (90.0, 90.0), (-90.0, 5.0), (721.0, 5.0)] {
        let made = AngleStage::new(degrees(target), degrees(tolerance));
        assert!(matches!(made, Err(FigureError::AngleStage { .. })), "{target} ± {tolerance}");
    }
    Ok(())
}

#[test]
fn stress_areas_and_proof_loads_are_those_of_the_tables() -> Worked {
    // ISO 898-1 as suppliers' tables print it: area in mm², proof load in N for 8.8, 10.9 and 12.9, in whole hundreds
    // from the rounded area, so that a hundred newtons are its rounding.
    let tables = [
        ("M6", 20.1, [11_600.0, 16_700.0, 19_500.0]),
        ("M8", 36.6, [21_200.0, 30_400.0, 35_500.0]),
        ("M10", 58.0, [33_700.0, 48_100.0, 56_300.0]),
        ("M12", 84.3, [48_900.0, 70_000.0, 81_800.0]),
    ];
    let mut largest: f64 = 0.0;
    for (text, area, loads) in tables {
        let thread: Thread = text.parse()?;
        assert!(near(thread.stress_area(), area, 0.002), "{text}: {}", thread.stress_area());
        for (grade, load) in [Grade::G8_8, Grade::G10_9, Grade::G12_9].into_iter().zip(loads) {
            let found = bolt_sense(nm(1.0), thread, grade)?.proof_load.kilonewtons() * 1000.0;
            assert!((found - load).abs() <= 100.0, "{text} {grade}: {found}");
            largest = largest.max((found / load - 1.0).abs());
        }
    }
    println!("proof loads of ISO 898-1: 12 cases, largest difference {:.2} %", largest * 100.0);
    Ok(())
}

#[test]
fn the_pull_of_a_torque_is_that_of_the_textbook() -> Worked {
    // Shigley, 9th ed., p. 440: 3/4-16 UNF, 25 kip, K 0.2 takes 3750 lbf·in. Outside the threads judged here, so the
    // same sum is made with M10: T = 0.2 × F × d scales with d. And #10 (fliphtml5, p. 103): 1275 lbf, 0.190 in, K 0.2:
    // 48.5 lbf·in.
    let inch = 25.4;
    let thread = Thread::new(mm(0.190 * inch), mm(0.8))?;
    let sense = bolt_sense(Torque::from_pound_force_inches(48.5)?, thread, Grade::G8_8)?;
    let pounds = sense.usual.kilonewtons() / 4.448_221_615_260_5e-3;
    assert!(near(pounds, 1275.0, 0.002), "{pounds}");
    // The same row for K 0.3 takes 72.7 lbf·in.
    let dry = bolt_sense(Torque::from_pound_force_inches(72.7)?, thread, Grade::G8_8)?;
    assert!(near(dry.least.kilonewtons() / 4.448_221_615_260_5e-3, 1275.0, 0.002));
    Ok(())
}

#[test]
fn the_assembly_torques_of_a_published_table_lie_within_the_pull_that_is_told() -> Worked {
    // A maker's catalogue, p. 685, by VDI 2230 (2001): preload in kN and torque in N·m for 8.8, 10.9 and 12.9.
    let rows = [
        ("M8x1", [(20.7, 22.8), (30.4, 33.5), (35.6, 39.2)]),
        ("M8x1", [(20.2, 26.1), (29.7, 38.3), (34.7, 44.9)]),
        ("M8x1", [(19.7, 29.2), (28.9, 42.8), (33.9, 50.1)]),
        ("M10x1.25", [(32.4, 44.0), (47.5, 65.0), (55.6, 76.0)]),
        ("M10x1.25", [(31.6, 51.0), (46.4, 75.0), (54.3, 87.0)]),
        ("M10x1.25", [(30.8, 57.0), (45.2, 83.0), (52.9, 98.0)]),
        ("M12x1.25", [(49.1, 79.0), (72.1, 116.0), (84.4, 135.0)]),
        ("M12x1.25", [(48.0, 90.0), (70.5, 133.0), (82.5, 155.0)]),
        ("M12x1.25", [(46.8, 101.0), (68.7, 149.0), (80.4, 174.0)]),
    ];
    for (text, grades) in rows {
        for ((preload, torque), grade) in grades.into_iter().zip([Grade::G8_8, Grade::G10_9, Grade::G12_9]) {
            let sense = bolt_sense(nm(torque), text.parse()?, grade)?;
            let told = sense.least.kilonewtons()..=sense.most.kilonewtons();
            assert!(told.contains(&preload), "{text} {grade}: {preload} kN, told {told:?}");
            assert_ne!(sense.class, BoltClass::Impossible, "{text} {grade}");
        }
    }
    Ok(())
}

#[test]
fn nine_kilogram_force_metres_can_not_be_meant_for_an_m6() -> Worked {
    let m6: Thread = "M6".parse()?;
    assert_eq!(bolt_sense(nm(9.0), m6, Grade::G8_8)?.class, BoltClass::Plausible);
    let feet = bolt_sense(Torque::from_pound_force_feet(12.0)?, m6, Grade::G8_8)?;
    assert_eq!(feet.class, BoltClass::High);
    let kilograms = bolt_sense(Torque::from_kilogram_force_metres(9.0)?, m6, Grade::G8_8)?;
    assert_eq!(kilograms.class, BoltClass::Impossible);
    assert!(kilograms.working().to_string().contains("Wrong unit"));
    assert!(bolt_sense(nm(0.0), m6, Grade::G8_8).is_err());
    Ok(())
}

#[test]
fn threads_and_grades_are_read_as_they_are_written() -> Worked {
    for (text, shown) in [
        ("M6", "M6×1"),
        ("m8", "M8×1.25"),
        ("M8x1", "M8×1"),
        ("M10×1,25", "M10×1.25"),
        (" M3.5 ", "M3.5×0.6"),
    ] {
        assert_eq!(text.parse::<Thread>()?.to_string(), shown);
    }
    for text in ["", "6", "M", "M11", "M6x", "Mx1", "M6x-1", "M6 8.8", "1/4-20"] {
        assert!(text.parse::<Thread>().is_err(), "{text}");
    }
    for text in ["M2", "M20x2", "M6x2", "M6x0"] {
        let refused = text.parse::<Thread>().unwrap_err();
        assert!(
            matches!(refused, FigureError::ThreadRange { .. } | FigureError::ThreadForm { .. }),
            "{text}"
        );
    }
    assert_eq!("8,8".parse::<Grade>()?, Grade::G8_8);
    for text in ["", "8", "5.8", "10.90"] {
        assert!(text.parse::<Grade>().is_err(), "{text}");
    }
    Ok(())
}

proptest! {
    #[test]
    fn what_is_set_arrives_at_the_bolt(
        torque in 1.0..200.0_f64,
        length in 100.0..600.0_f64,
        adapter in 0.0..80.0_f64,
        angle in -180.0..180.0_f64,
    ) {
        let wanted = Measure::new(torque, Unit::PoundForceFoot).unwrap();
        let by = reach(length, adapter, angle);
        let set = setting_with_adapter(wanted, by).unwrap().setting;
        prop_assert!(near(torque_through_adapter(set, by).unwrap().value(), torque, 1e-12));
    }

    #[test]
    fn the_unit_of_the_torque_does_not_matter(torque in 1.0..200.0_f64, adapter in 0.0..200.0_f64, angle in 0.0..120.0_f64) {
        let by = reach(400.0, adapter, angle);
        let feet = Measure::new(torque, Unit::PoundForceFoot).unwrap();
        let metres = feet.to(Unit::NewtonMetre).unwrap();
        let one = setting_with_adapter(feet, by).unwrap().setting.to(Unit::NewtonMetre).unwrap();
        let other = setting_with_adapter(metres, by).unwrap().setting;
        prop_assert!(near(one.value(), other.value(), 1e-12));
    }

    #[test]
    fn a_longer_adapter_straight_on_is_set_lower(adapter in 0.0..300.0_f64, more in 0.1..50.0_f64) {
        let factor = |length: f64| reach(400.0, length, 0.0).factor().unwrap();
        prop_assert!(factor(adapter + more) < factor(adapter));
    }

    #[test]
    fn proved_is_inside_and_inside_is_never_outside(
        target in 6.0..90.0_f64,
        tolerance in 1.0..20.0_f64,
        off in -0.3..0.3_f64,
        deviation in 1.0..7.0_f64,
    ) {
        let setting = target * (1.0 + off);
        let class = guarded(target, tolerance, setting, deviation).unwrap();
        let inside = off.abs() * 100.0 <= tolerance;
        prop_assert!(class != GuardClass::Proved || inside);
        prop_assert!(class != GuardClass::Outside || !inside);
    }

    #[test]
    fn more_torque_pulls_more(torque in 0.1..100.0_f64, more in 0.01..10.0_f64) {
        let thread = "M8".parse().unwrap();
        let pull = |torque: f64| bolt_sense(nm(torque), thread, Grade::G10_9).unwrap();
        prop_assert!(pull(torque).usual < pull(torque + more).usual);
        let one = pull(torque);
        prop_assert!(one.least <= one.usual && one.usual <= one.most);
    }
}
