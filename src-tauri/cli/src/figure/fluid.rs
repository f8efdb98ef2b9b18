//! Level, diagnosis, top-up, refill and balance.

use panside_trade::balance::{Amount, Fluid, balance};
use panside_trade::diagnosis::{Symptom, diagnosis_gate};
use panside_trade::gain::{Addition, Gain, learn_gain};
use panside_trade::level::{
    LevelChart, LevelCheck, LevelClass, LevelConditions, LevelPoint, LevelReading, LevelTimes, Stick,
    check_level,
};
use panside_trade::measure::{Density, Length, Temperature, TemperatureDifference, Volume};
use panside_trade::moment::Moment;
use panside_trade::topup::{Drained, first_refill, top_up};
use panside_trade::units::Unit;
use panside_trade::{FigureError, Worked, Working};

use super::given::{Given, moment, parts, percent, quantity, wrong};
use super::{Figure, Key, often, once, perhaps, perhaps_often};
use crate::exit::{Exit, Failure};
use crate::message::*;

const LEVEL_KEYS: &[Key] = &[
    often("reading", cli_key_reading),
    perhaps("temp", cli_key_temp),
    perhaps_often("mark", cli_key_mark),
    perhaps("chart", cli_key_chart),
    perhaps("agree", cli_key_agree),
    perhaps("floor", cli_key_floor),
    perhaps("idle", cli_key_idle),
    perhaps("park", cli_key_park),
    perhaps("cycled", cli_key_cycled),
    perhaps("started", cli_key_started),
    perhaps("changed", cli_key_changed),
    perhaps("now", cli_key_now),
];

pub const FIGURES: &[Figure] = &[
    Figure {
        name: "level",
        about: cli_level,
        keys: LEVEL_KEYS,
        example: "temp=46C reading=17mm reading=17,5mm --sheet checklists/sheets/demo-six-speed.sheet.json",
        work: level,
    },
    Figure {
        name: "diagnosis",
        about: cli_diagnosis,
        keys: &[perhaps_often("level", cli_diagnosis_level), perhaps_often("tried", cli_diagnosis_tried)],
        example: "level=10min:below level=30min:in tried=40min:shows",
        work: diagnosis,
    },
    Figure {
        name: "topup",
        about: cli_topup,
        keys: &[
            often("reading", cli_key_reading),
            perhaps("temp", cli_key_temp),
            perhaps_often("mark", cli_key_mark),
            perhaps("chart", cli_key_chart),
            perhaps("agree", cli_key_agree),
            perhaps("gain", cli_topup_gain),
            perhaps_often("addition", cli_key_addition),
            perhaps("share", cli_topup_share),
            perhaps("pour", cli_topup_pour),
        ],
        example: "temp=46C reading=8mm reading=9mm mark=40C:12mm:22mm mark=58C:21mm:31mm gain=15mm/L",
        work: topup,
    },
    Figure {
        name: "gain",
        about: cli_gain,
        keys: &[often("addition", cli_key_addition)],
        example: "addition=0.5L:-12mm:-4.8mm addition=0.3L:-4.8mm:0mm",
        work: gain,
    },
    Figure {
        name: "refill",
        about: cli_refill,
        keys: &[
            once("drained", cli_refill_drained),
            once("poured", cli_refill_poured),
            once("density", cli_refill_density),
            perhaps("holdback", cli_refill_holdback),
            perhaps_often("reading", cli_key_reading),
            perhaps("temp", cli_refill_temp),
            perhaps_often("mark", cli_key_mark),
            perhaps("chart", cli_key_chart),
            perhaps("agree", cli_key_agree),
            perhaps("gain", cli_refill_gain),
        ],
        example: "drained=4.2L:45C poured=20C density=850kg/m3 holdback=0.3L",
        work: refill,
    },
    Figure {
        name: "balance",
        about: cli_balance,
        keys: &[
            often("drained", cli_balance_drained),
            often("added", cli_balance_added),
            once("density", cli_balance_density),
            perhaps("unseen", cli_balance_unseen),
            perhaps("capacity", cli_balance_capacity),
        ],
        example: "drained=4.2L:0.05L:45C:2K added=3.6L:0.02L:20C:2K added=0.3L:0.02L:20C:2K density=850kg/m3:10kg/m3 unseen=0.1L",
        work: balance_of,
    },
];

fn chart(given: &Given) -> Result<(LevelChart, Option<Length>), Failure> {
    let row = |text: &str| {
        let [at, low, high] = parts("mark", text, cli_form_mark())?;
        Ok(LevelPoint {
            temperature: quantity("mark", at, Unit::DegreeCelsius)?,
            low: quantity("mark", low, Unit::Millimetre)?,
            high: quantity("mark", high, Unit::Millimetre)?,
        })
    };
    let rows = given.all("mark").map(row).collect::<Result<Vec<_>, Failure>>()?;
    let agree: Length = given.quantity("agree", Unit::Millimetre, "2mm")?;
    if !rows.is_empty() {
        return Ok((LevelChart::new(rows).map_err(FigureError::from)?, Some(agree)));
    }
    let sheet = given.sheet().ok_or_else(|| Failure::new(Exit::Usage, cli_chart_missing()))?;
    let key = given.or("chart", "level_chart");
    let (chart, allowed) =
        sheet.chart(key).ok_or_else(|| Failure::new(Exit::DoesNotLoad, cli_no_chart(key)))?;
    Ok((chart.clone(), if given.get("agree").is_some() { Some(agree) } else { allowed }))
}

fn reading(given: &Given, text: &str) -> Result<(Moment, LevelReading), Failure> {
    let (shown, rest) = text.split_once(':').map_or((text, None), |(shown, rest)| (shown, Some(rest)));
    let (own, at) = match rest.map(|rest| rest.split_once(':').unwrap_or((rest, "0min"))) {
        Some((own, at)) => (Some(own), moment("reading", at)?),
        None => (None, Moment::from_ms(0)),
    };
    let temperature: Temperature = match own {
        Some(own) => quantity("reading", own, Unit::DegreeCelsius)?,
        None => quantity("temp", given.need("temp", cli_temp_missing)?, Unit::DegreeCelsius)?,
    };
    let stick = match shown {
        "dry" => Stick::NoTrace { confirmed: false },
        "dry-confirmed" => Stick::NoTrace { confirmed: true },
        trace => Stick::Trace(quantity("reading", trace, Unit::Millimetre)?),
    };
    Ok((at, LevelReading { temperature, stick }))
}

fn checked(given: &Given) -> Result<LevelCheck, Failure> {
    let (chart, agree) = chart(given)?;
    let readings = given.all("reading").map(|text| reading(given, text)).collect::<Result<Vec<_>, _>>()?;
    let conditions = LevelConditions {
        level_floor: given.yes("floor")?,
        idling: given.yes("idle")?,
        in_park: given.yes("park")?,
        ranges_cycled: given.yes("cycled")?,
    };
    let latest = readings.iter().map(|(at, _)| *at).max().unwrap_or(Moment::from_ms(0));
    let times = LevelTimes {
        engine_started: moment("started", given.or("started", "0min"))?,
        fluid_changed: given.get("changed").map(|text| moment("changed", text)).transpose()?,
        now: given.get("now").map(|text| moment("now", text)).transpose()?.unwrap_or(latest),
    };
    Ok(check_level(&chart, conditions, &readings, times, agree)?)
}

fn level(given: &Given) -> Result<Working, Failure> {
    Ok(checked(given)?.working())
}

fn diagnosis(given: &Given) -> Result<Working, Failure> {
    let level = |text: &str| {
        let [at, class] = parts("level", text, cli_form_level())?;
        let class = match class {
            "below" => LevelClass::Below,
            "in" => LevelClass::In,
            "above" => LevelClass::Above,
            "unclear" => LevelClass::Unclear,
            _ => return Err(wrong("level", text, cli_level_words())),
        };
        Ok((moment("level", at)?, class))
    };
    let tried = |text: &str| {
        let [at, symptom] = parts("tried", text, cli_form_tried())?;
        let symptom = match symptom {
            "shows" => Symptom::Shows,
            "gone" => Symptom::Gone,
            _ => return Err(wrong("tried", text, cli_tried_words())),
        };
        Ok((moment("tried", at)?, symptom))
    };
    let levels = given.all("level").map(level).collect::<Result<Vec<_>, Failure>>()?;
    let tries = given.all("tried").map(tried).collect::<Result<Vec<_>, Failure>>()?;
    Ok(diagnosis_gate(&levels, &tries)?.working())
}

fn additions(given: &Given) -> Result<Vec<Addition>, Failure> {
    let addition = |text: &str| {
        let [volume, before, after] = parts("addition", text, cli_form_addition())?;
        Ok(Addition {
            volume: quantity("addition", volume, Unit::Litre)?,
            before: quantity("addition", before, Unit::Millimetre)?,
            after: quantity("addition", after, Unit::Millimetre)?,
        })
    };
    given.all("addition").map(addition).collect()
}

fn gain(given: &Given) -> Result<Working, Failure> {
    Ok(learn_gain(&additions(given)?)?.working())
}

fn typed_gain(given: &Given) -> Result<Gain, Failure> {
    let text = given.need("gain", cli_gain_missing)?;
    let length = text.strip_suffix("/L").or(text.strip_suffix("/l"));
    let length = length.ok_or_else(|| wrong("gain", text, cli_gain_form()))?;
    let rise: Length = quantity("gain", length, Unit::Millimetre)?;
    Ok(Gain::from_mm_per_litre(rise.millimetres())?)
}

fn topup(given: &Given) -> Result<Working, Failure> {
    let additions = additions(given)?;
    let gain = if additions.is_empty() { typed_gain(given)? } else { learn_gain(&additions)?.gain };
    let share = percent("share", given.or("share", "80%"))?;
    let level = checked(given)?.result.ok_or(FigureError::LevelNotKnown)?;
    Ok(top_up(&level, gain, share, given.quantity("pour", Unit::Litre, "0.5L")?)?.working())
}

fn refill(given: &Given) -> Result<Working, Failure> {
    let text = given.or("drained", "");
    let [volume, temperature] = parts("drained", text, cli_form_drained())?;
    let intake = if given.get("reading").is_some() {
        let gain = typed_gain(given)?;
        checked(given)?.result.map(|level| (level, gain))
    } else {
        None
    };
    let drained = Drained {
        volume: quantity("drained", volume, Unit::Litre)?,
        temperature: quantity("drained", temperature, Unit::DegreeCelsius)?,
        pour_temperature: given.quantity("poured", Unit::DegreeCelsius, "")?,
        density: given.quantity("density", Unit::KilogramPerCubicMetre, "")?,
        hold_back: given.quantity("holdback", Unit::Litre, "0L")?,
        intake,
    };
    Ok(first_refill(drained)?.working())
}

fn balance_of(given: &Given) -> Result<Working, Failure> {
    let amounts = |key: &str| {
        let amount = |text: &str| {
            let [volume, off_by, temperature, temperature_off_by] = parts(key, text, cli_form_amount())?;
            Ok(Amount {
                volume: quantity(key, volume, Unit::Litre)?,
                off_by: quantity(key, off_by, Unit::Litre)?,
                temperature: quantity(key, temperature, Unit::DegreeCelsius)?,
                temperature_off_by: quantity::<TemperatureDifference>(key, temperature_off_by, Unit::Kelvin)?,
            })
        };
        given.all(key).map(amount).collect::<Result<Vec<_>, Failure>>()
    };
    let [density, off_by] = parts("density", given.or("density", ""), cli_form_density())?;
    let fluid = Fluid {
        drained: amounts("drained")?,
        added: amounts("added")?,
        density: quantity::<Density>("density", density, Unit::KilogramPerCubicMetre)?,
        density_off_by: quantity::<Density>("density", off_by, Unit::KilogramPerCubicMetre)?,
        unseen: given.quantity::<Volume>("unseen", Unit::Litre, "0L")?,
        capacity: given.get("capacity").map(|text| quantity("capacity", text, Unit::Litre)).transpose()?,
    };
    Ok(balance(fluid)?.working())
}
