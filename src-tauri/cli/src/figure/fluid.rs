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

const READING: &str = "what the stick shows, with its own temperature and time if need be, 31mm or 31mm:46C or 31mm:46C:12min; dry, or dry-confirmed after a second look";
const MARK: &str = "a row of the chart: temperature, low and high mark, 40C:12mm:22mm; else --sheet";

const LEVEL_KEYS: &[Key] = &[
    often("reading", READING),
    perhaps("temp", "fluid temperature of the readings, 46C"),
    perhaps_often("mark", MARK),
    perhaps("chart", "the chart's key on the sheet, level_chart"),
    perhaps("agree", "how far readings may differ, 2mm"),
    perhaps("floor", "level floor, yes or no"),
    perhaps("idle", "engine idling, yes or no"),
    perhaps("park", "in park, yes or no"),
    perhaps("cycled", "ranges cycled, yes or no"),
    perhaps("started", "when the engine was started, 5min"),
    perhaps("changed", "when fluid was last added or drained, 10min"),
    perhaps("now", "now, 15min"),
];

pub const FIGURES: &[Figure] = &[
    Figure {
        name: "level",
        about: "where the fluid level stands at its temperature",
        keys: LEVEL_KEYS,
        example: "temp=46C reading=17mm reading=17,5mm --sheet checklists/sheets/demo-six-speed.sheet.json",
        work: level,
    },
    Figure {
        name: "diagnosis",
        about: "whether the symptom may be judged yet",
        keys: &[
            perhaps_often("level", "a time and where the level stood, 10min:below, in, above or unclear"),
            perhaps_often("tried", "a time and what a try of the concern showed, 20min:shows or gone"),
        ],
        example: "level=10min:below level=30min:in tried=40min:shows",
        work: diagnosis,
    },
    Figure {
        name: "topup",
        about: "how much to pour in after a reading",
        keys: &[
            often("reading", READING),
            perhaps("temp", "fluid temperature of the readings, 46C"),
            perhaps_often("mark", MARK),
            perhaps("chart", "the chart's key on the sheet, level_chart"),
            perhaps("agree", "how far readings may differ, 2mm"),
            perhaps("gain", "rise for each litre, 15mm/L"),
            perhaps_often(
                "addition",
                "what was added with the height above the low mark before and after, 0.5L:-8mm:-1mm",
            ),
            perhaps("share", "share of the estimate to pour, 80%"),
            perhaps("pour", "the most at once, 0.5L"),
        ],
        example: "temp=46C reading=8mm reading=9mm mark=40C:12mm:22mm mark=58C:21mm:31mm gain=15mm/L",
        work: topup,
    },
    Figure {
        name: "gain",
        about: "rise of the level for each litre, learnt from additions",
        keys: &[often(
            "addition",
            "what was added with the height above the low mark before and after, 0.5L:-8mm:-1mm",
        )],
        example: "addition=0.5L:-12mm:-4.8mm addition=0.3L:-4.8mm:0mm",
        work: gain,
    },
    Figure {
        name: "refill",
        about: "how much to pour in first after a drain",
        keys: &[
            once("drained", "what came out and its temperature, 4.2L:45C"),
            once("poured", "temperature of the new fluid, 20C"),
            once("density", "its density at 15 °C, 850kg/m3"),
            perhaps("holdback", "what to stay short by, 0.3L"),
            perhaps_often("reading", READING),
            perhaps("temp", "fluid temperature of those readings at intake, 46C"),
            perhaps_often("mark", MARK),
            perhaps("chart", "the chart's key on the sheet, level_chart"),
            perhaps("agree", "how far readings may differ, 2mm"),
            perhaps("gain", "rise for each litre, 15mm/L; needed with readings"),
        ],
        example: "drained=4.2L:45C poured=20C density=850kg/m3 holdback=0.3L",
        work: refill,
    },
    Figure {
        name: "balance",
        about: "what was drained against what went in, at 15 °C, with the uncertainty of the difference",
        keys: &[
            often(
                "drained",
                "a volume, how far it may be off, its temperature and how far that may be off, 4.2L:0.05L:45C:2K",
            ),
            often("added", "the same of what went in, 4.0L:0.02L:20C:2K"),
            once("density", "density at 15 °C and how far it may be off, 850kg/m3:10kg/m3"),
            perhaps("unseen", "what may be lost unseen, 0.1L"),
            perhaps("capacity", "what the transmission holds, 7L"),
        ],
        example: "drained=4.2L:0.05L:45C:2K added=3.6L:0.02L:20C:2K added=0.3L:0.02L:20C:2K density=850kg/m3:10kg/m3 unseen=0.1L",
        work: balance_of,
    },
];

fn chart(given: &Given) -> Result<(LevelChart, Length), Failure> {
    let row = |text: &str| {
        let [at, low, high] = parts("mark", text, "temperature:low:high, such as 40C:12mm:22mm")?;
        Ok(LevelPoint {
            temperature: quantity("mark", at, Unit::DegreeCelsius)?,
            low: quantity("mark", low, Unit::Millimetre)?,
            high: quantity("mark", high, Unit::Millimetre)?,
        })
    };
    let rows = given.all("mark").map(row).collect::<Result<Vec<_>, Failure>>()?;
    let agree: Length = given.quantity("agree", Unit::Millimetre, "2mm")?;
    if !rows.is_empty() {
        return Ok((LevelChart::new(rows).map_err(FigureError::from)?, agree));
    }
    let sheet = given.sheet().ok_or_else(|| {
        Failure::new(Exit::Usage, "The chart is missing: give mark=… twice or more, or --sheet FILE.")
    })?;
    let key = given.or("chart", "level_chart");
    let (chart, allowed) = sheet
        .chart(key)
        .ok_or_else(|| Failure::new(Exit::DoesNotLoad, format!("The sheet has no level chart \"{key}\".")))?;
    Ok((chart.clone(), if given.get("agree").is_some() { agree } else { allowed }))
}

fn reading(given: &Given, text: &str) -> Result<(Moment, LevelReading), Failure> {
    let (shown, rest) = text.split_once(':').map_or((text, None), |(shown, rest)| (shown, Some(rest)));
    let (own, at) = match rest.map(|rest| rest.split_once(':').unwrap_or((rest, "0min"))) {
        Some((own, at)) => (Some(own), moment("reading", at)?),
        None => (None, Moment::from_ms(0)),
    };
    let temperature: Temperature = match own {
        Some(own) => quantity("reading", own, Unit::DegreeCelsius)?,
        None => quantity("temp", given.need("temp", ", or give each reading its own")?, Unit::DegreeCelsius)?,
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
        let [at, class] = parts("level", text, "time:class, such as 10min:below")?;
        let class = match class {
            "below" => LevelClass::Below,
            "in" => LevelClass::In,
            "above" => LevelClass::Above,
            "unclear" => LevelClass::Unclear,
            _ => return Err(wrong("level", text, "the level is below, in, above or unclear.")),
        };
        Ok((moment("level", at)?, class))
    };
    let tried = |text: &str| {
        let [at, symptom] = parts("tried", text, "time:symptom, such as 20min:shows")?;
        let symptom = match symptom {
            "shows" => Symptom::Shows,
            "gone" => Symptom::Gone,
            _ => return Err(wrong("tried", text, "the symptom shows or is gone.")),
        };
        Ok((moment("tried", at)?, symptom))
    };
    let levels = given.all("level").map(level).collect::<Result<Vec<_>, Failure>>()?;
    let tries = given.all("tried").map(tried).collect::<Result<Vec<_>, Failure>>()?;
    Ok(diagnosis_gate(&levels, &tries)?.working())
}

fn additions(given: &Given) -> Result<Vec<Addition>, Failure> {
    let addition = |text: &str| {
        let [volume, before, after] = parts("addition", text, "volume:before:after, such as 0.5L:-8mm:-1mm")?;
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
    let text = given.need("gain", ": the rise for each litre, such as gain=15mm/L")?;
    let length = text.strip_suffix("/L").or(text.strip_suffix("/l"));
    let length =
        length.ok_or_else(|| wrong("gain", text, "write a length for each litre, such as 15mm/L."))?;
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
    let [volume, temperature] = parts("drained", text, "volume:temperature, such as 4.2L:45C")?;
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
            let form = "volume:off by:temperature:off by, such as 4.2L:0.05L:45C:2K";
            let [volume, off_by, temperature, temperature_off_by] = parts(key, text, form)?;
            Ok(Amount {
                volume: quantity(key, volume, Unit::Litre)?,
                off_by: quantity(key, off_by, Unit::Litre)?,
                temperature: quantity(key, temperature, Unit::DegreeCelsius)?,
                temperature_off_by: quantity::<TemperatureDifference>(key, temperature_off_by, Unit::Kelvin)?,
            })
        };
        given.all(key).map(amount).collect::<Result<Vec<_>, Failure>>()
    };
    let [density, off_by] =
        parts("density", given.or("density", ""), "density:off by, such as 850kg/m3:10kg/m3")?;
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
