//! Every figure's working in another language: what comes out unaccented was made past the message files.

use chrono::NaiveDate;
use panside_messages::{Language, Speaker};
use panside_trade::balance::{Amount, Fluid, balance};
use panside_trade::bolt::{Grade, bolt_sense};
use panside_trade::code::read_codes;
use panside_trade::coil::{CoilLimits, CoilReading, MeterError, MeterShows, judge_coil};
use panside_trade::cooldown::{Cooling, Place, cool_down};
use panside_trade::diagnosis::{Symptom, diagnosis_gate};
use panside_trade::estimate::{Estimate, Line, MayTurnUp};
use panside_trade::gain::{Addition, learn_gain};
use panside_trade::labour::{Clocked, Spent, labour};
use panside_trade::level::{
    LevelChart, LevelClass, LevelConditions, LevelPoint, LevelReading, LevelTimes, Stick, check_level, judge,
};
use panside_trade::measure::{Measure, Torque};
use panside_trade::moment::Moment;
use panside_trade::money::Currency;
use panside_trade::order::{Bolt, Pattern, bolt_order};
use panside_trade::surface::{InfraredReading, Surface, surface_temperature};
use panside_trade::topup::{Drained, first_refill, top_up};
use panside_trade::torque::{
    AngleStage, Reach, TorqueStage, TorqueTool, accept, guard, judge_angle, setting_with_adapter, tool_use,
};
use panside_trade::touch::{Gloves, touch_limit};
use panside_trade::units::Unit;
use panside_trade::vin::read_vin;
use panside_trade::{FigureError, TradeError, Worked, Working};

type Workings = Result<Vec<Working>, FigureError>;

/// Plain words that come from mathematics and units.
const NOT_SAID: [&str; 4] = ["min", "mod", "cos", "lbf"];

fn of<T: TryFrom<Measure, Error = TradeError>>(value: f64, unit: Unit) -> Result<T, TradeError> {
    Measure::new(value, unit)?.try_into()
}

fn at(minutes: i64) -> Moment {
    Moment::from_ms(minutes * 60_000)
}

fn fluid() -> Workings {
    let mm = |value| of(value, Unit::Millimetre);
    let celsius = |value| of(value, Unit::DegreeCelsius);
    let litres = |value| of(value, Unit::Litre);
    let point = |celsius, low, high| -> Result<LevelPoint, TradeError> {
        let temperature = of(celsius, Unit::DegreeCelsius)?;
        Ok(LevelPoint { temperature, low: mm(low)?, high: mm(high)? })
    };
    let chart = LevelChart::new(vec![point(40.0, 12.0, 22.0)?, point(58.0, 21.0, 31.0)?])?;
    let trace = |shows: f64| -> Result<LevelReading, TradeError> {
        Ok(LevelReading { temperature: celsius(46.0)?, stick: Stick::Trace(of(shows, Unit::Millimetre)?) })
    };
    let dry = |confirmed| -> Result<LevelReading, TradeError> {
        Ok(LevelReading { temperature: celsius(46.0)?, stick: Stick::NoTrace { confirmed } })
    };
    let readings = [(at(1), trace(17.0)?), (at(3), dry(false)?), (at(5), trace(8.0)?), (at(6), dry(true)?)];
    let times = LevelTimes { engine_started: at(2), fluid_changed: Some(at(4)), now: at(9) };
    let met = LevelConditions::MET;
    let apart = check_level(&chart, met, &readings, times, mm(2.0)?)?;
    let nothing = LevelConditions { level_floor: false, idling: false, in_park: false, ranges_cycled: false };
    let not_judged = check_level(&chart, nothing, &readings, times, mm(2.0)?)?;
    let below = judge(&chart, &[trace(8.0)?, trace(8.0)?], mm(2.0)?)?;
    let empty = judge(&chart, &[dry(true)?, dry(true)?], mm(2.0)?)?;
    let above = judge(&chart, &[trace(27.0)?, trace(27.0)?], mm(2.0)?)?;
    let added = Addition { volume: litres(0.5)?, before: mm(-8.0)?, after: mm(-1.0)? };
    let learnt = learn_gain(&[added, Addition { after: mm(-0.5)?, ..added }])?;
    let amount = |volume| -> Result<Amount, TradeError> {
        Ok(Amount {
            volume: of(volume, Unit::Litre)?,
            off_by: litres(0.02)?,
            temperature: celsius(20.0)?,
            temperature_off_by: of(2.0, Unit::Kelvin)?,
        })
    };
    let fluid = Fluid {
        drained: vec![amount(4.2)?],
        added: vec![amount(2.6)?],
        density: of(850.0, Unit::KilogramPerCubicMetre)?,
        density_off_by: of(10.0, Unit::KilogramPerCubicMetre)?,
        unseen: litres(0.1)?,
        capacity: Some(litres(3.0)?),
    };
    let drained = Drained {
        volume: litres(4.2)?,
        temperature: celsius(45.0)?,
        pour_temperature: celsius(20.0)?,
        density: of(850.0, Unit::KilogramPerCubicMetre)?,
        hold_back: litres(0.3)?,
        intake: None,
    };
    let gain = learnt.gain;
    Ok(vec![
        apart.working(),
        not_judged.working(),
        below.working(),
        learnt.working(),
        top_up(&empty, gain, 80.0, litres(0.5)?)?.working(),
        top_up(&above, gain, 80.0, litres(0.5)?)?.working(),
        first_refill(drained.clone())?.working(),
        first_refill(Drained { intake: Some((below, gain)), ..drained })?.working(),
        balance(fluid)?.working(),
        diagnosis_gate(&[(at(1), LevelClass::In)], &[(at(2), Symptom::Gone)])?.working(),
        diagnosis_gate(&[(at(1), LevelClass::Below)], &[(at(2), Symptom::Shows)])?.working(),
    ])
}

fn tightening() -> Workings {
    let torque = |value| of::<Torque>(value, Unit::NewtonMetre);
    let day = |month| NaiveDate::from_ymd_opt(2026, month, 1).unwrap();
    let tool = TorqueTool::new(torque(5.0)?, torque(25.0)?, 4.0, day(6))?;
    let stage = TorqueStage::new(torque(9.0)?, 10.0)?;
    let click = |value, unit, month| -> Workings {
        Ok(vec![guard(accept(stage, Measure::new(value, unit)?, tool, day(month))?)?.working()])
    };
    let degrees = |value| of(value, Unit::Degree);
    let (tool_length, adapter) = (of(12.0, Unit::Inch)?, of(6.0, Unit::Inch)?);
    let reach = Reach { tool: tool_length, adapter, angle: degrees(0.0)? };
    let bolts: Vec<Bolt> = [("1", 0.0, 9.0), ("2", 9.0, 0.0), ("3", 0.0, -9.0)]
        .into_iter()
        .map(|(id, x, y)| {
            Ok(Bolt { id: id.to_owned(), x: of(x, Unit::Millimetre)?, y: of(y, Unit::Millimetre)? })
        })
        .collect::<Result<_, TradeError>>()?;
    let mut workings = [
        click(9.0, Unit::NewtonMetre, 5)?,
        click(8.2, Unit::NewtonMetre, 5)?,
        click(79.7, Unit::NewtonMetre, 7)?,
    ]
    .concat();
    workings.extend([
        tool_use(tool, torque(4.0)?, day(7)).working(),
        tool_use(tool, torque(9.0)?, day(5)).working(),
        setting_with_adapter(Measure::new(30.0, Unit::PoundForceFoot)?, reach)?.working(),
        judge_angle(AngleStage::new(degrees(90.0)?, degrees(5.0)?)?, degrees(80.0)?)?.working(),
        bolt_sense(torque(9.0)?, "M6".parse()?, Grade::G8_8)?.working(),
        bolt_order(&bolts, Pattern::Star)?.working_after(&[])?,
        bolt_order(&bolts, Pattern::Crosswise)?.working_after(&["1", "2", "3"].map(str::to_owned))?,
    ]);
    Ok(workings)
}

fn the_rest() -> Workings {
    let ohms = |value| of(value, Unit::Ohm);
    let celsius = |value| of(value, Unit::DegreeCelsius);
    let minutes = |value| of(value, Unit::Minute);
    let limits = CoilLimits { lowest: ohms(5.0)?, highest: ohms(5.6)?, at: celsius(20.0)? };
    let coil = CoilReading {
        shows: MeterShows::Reading(ohms(6.9)?),
        leads: ohms(0.2)?,
        meter: MeterError { percent: 0.5, digits: ohms(0.02)? },
        temperature: celsius(62.0)?,
        temperature_off_by: of(2.0, Unit::Kelvin)?,
    };
    let cooling = Cooling {
        place: Place::Joint,
        readings: vec![
            (at(0), celsius(200.0)?),
            (at(2), celsius(180.0)?),
            (at(12), celsius(140.0)?),
            (at(22), celsius(109.0)?),
            (at(32), celsius(86.0)?),
        ],
        probe_off_by: of(1.0, Unit::Kelvin)?,
        ambient: celsius(22.0)?,
        ambient_off_by: of(2.0, Unit::Kelvin)?,
        engine_off: Some(at(1)),
        limit: celsius(48.0)?,
    };
    let infrared = InfraredReading {
        shows: celsius(60.0)?,
        set_to: 0.95,
        surface: Surface::Bright.emissivity(),
        ambient: celsius(22.0)?,
    };
    let on = |spent| Clocked::On { phase: "1".to_owned(), spent };
    let events = vec![
        (at(0), on(Spent::Work)),
        (at(20), on(Spent::Waiting("2".to_owned()))),
        (at(30), on(Spent::Unplanned("3".to_owned()))),
        (at(40), Clocked::Off),
    ];
    Ok(vec![
        judge_coil(coil, limits)?.working(),
        judge_coil(CoilReading { shows: MeterShows::Overload, ..coil }, limits)?.working(),
        cool_down(Cooling { place: Place::Shell, engine_off: None, ..cooling.clone() })?.working(),
        cool_down(cooling)?.working(),
        surface_temperature(infrared)?.working(),
        touch_limit(minutes(10.0)?, Gloves::None)?.working(),
        touch_limit(minutes(0.1)?, Gloves::ContactHeat(2))?.working(),
        touch_limit(minutes(10.0)?, Gloves::ContactHeat(2))?.working(),
        labour(events, at(60), Some(minutes(45.0)?))?.working(),
        estimate()?.working(),
        read_codes("P0765, U0100, C1234")?.working(),
        read_codes("")?.working(),
        read_vin("1M8GDM9AXKP042788").working(),
        read_vin("1M8GDM9AXKPO4278B").working(),
        read_vin("1M8").working(),
    ])
}

fn estimate() -> Result<Estimate, TradeError> {
    let (two, price) = ("2".parse()?, Some("12.50".parse()?));
    let parts = vec![Line::new("1", two, price)?, Line::new("2", two, None)?];
    let nut = MayTurnUp { what: "3".to_owned(), up_to: "60".parse()? };
    Estimate::of(Currency::Usd, parts, vec![Line::new("4", two, price)?], vec![nut])
}

/// A word with a letter that the pseudo-language would have accented; what has a digit in it is a name or a code.
fn is_plain(word: &str) -> bool {
    let spelled = word.len() > 2 && word.chars().all(|letter| letter.is_ascii_alphabetic());
    spelled && word.contains(|letter: char| "aceginosuyz".contains(letter)) && !NOT_SAID.contains(&word)
}

#[test]
fn no_figure_says_a_word_past_the_message_files() -> crate::Worked {
    for working in [fluid()?, tightening()?, the_rest()?].concat() {
        let text = working.said(Speaker::of(Language::Accented));
        let plain: Vec<&str> =
            text.split(|c: char| !c.is_alphanumeric()).filter(|word| is_plain(word)).collect();
        assert!(plain.is_empty(), "{plain:?} in {text}");
    }
    Ok(())
}

#[test]
fn no_figure_says_a_message_without_its_sentence() -> crate::Worked {
    for working in [fluid()?, tightening()?, the_rest()?].concat() {
        let text = working.to_string();
        assert!(!text.contains("working-") && !text.contains("source-"), "{text}");
    }
    Ok(())
}
