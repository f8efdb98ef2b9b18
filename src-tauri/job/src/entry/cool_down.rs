//! A hot part probed until it may be touched: the reading decides, and earlier readings tell by
//! [`panside_trade::cooldown`] before which time it will not be cool.

use panside_journal::Stamp;
use panside_procedure::format::Checklist;
use panside_procedure::format::entry::{CoolDown, ProbedPlace};
use panside_trade::FigureError;
use panside_trade::cooldown::{self, Cooling, CoolingClass, LEAST_READINGS, Place};
use panside_trade::measure::{Measure, Temperature, TemperatureDifference};
use panside_trade::moment::Moment;
use panside_trade::number::parse_number;
use panside_trade::surface::{InfraredReading, Surface, SurfaceTemperature, surface_temperature};
use panside_trade::units::{Quantity, Unit};
use serde::{Deserialize, Serialize};

use super::kind::{self, Kind};
use super::past::{Heated, Taken};
use super::{Classified, Context, of_sheet, quantity};
use crate::clock::{MINUTE_MS, measured_ms, surely_ms, time_of_day};
use crate::command::Refusal;
use crate::message::{
    Message, cool_down_cool, cool_down_hot, cool_down_infrared, cool_down_left_out, cool_down_never,
    cool_down_no_ambient, cool_down_no_curve, cool_down_no_evidence, cool_down_not_before, cool_down_older,
    cool_down_rises, cool_down_spread, cool_down_too_few, limit_at_most,
};
use crate::sheet::Specs;
use crate::units;
use crate::value::{EntryValue, Probed, ProbedBy, ProbedSurface};

/// How far a contact probe is taken to be off to both sides, in K; a rise within twice that is no rise. Our choice.
const PROBE_OFF_K: f64 = 1.0;

/// How far the surroundings may be off, or change while it cools, to both sides, in K. Our choice.
const AMBIENT_OFF_K: f64 = 2.0;

/// Readings nearer to each other than this are one reading, the later one: the first was mistyped or the probe had not
/// settled. Our choice.
const ONE_READING_MS: i64 = 60_000;

/// A probed surface judged, and how it came about. Moments are milliseconds since 1970 by the tablet's clock.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CoolDownResult {
    /// `cool` or `hot`.
    pub class: String,
    /// What the probe shows.
    pub shows: Temperature,
    /// The touch limit.
    pub limit: Temperature,
    /// The surface by infrared, where it was read so.
    pub surface: Option<SurfaceTemperature>,
    /// The cool-down with all its readings; nothing by infrared or where the surroundings are not known.
    pub cooling: Option<cooldown::CoolDown>,
    /// The moment before which it will not be cool.
    pub not_before: Option<Moment>,
    /// Earlier readings that do not count, as the tablet was restarted since.
    pub left_out: usize,
}

pub(super) fn classify(
    asked: &CoolDown,
    specs: &Specs,
    typed: &Probed,
    context: &Context<'_>,
) -> Result<Classified, Refusal> {
    let limit: Temperature = of_sheet(specs, &asked.limit)?;
    let shows: Temperature = quantity(&typed.value, &typed.unit)?;
    let ambient = match &typed.ambient {
        Some(text) if !text.trim().is_empty() => Some(quantity::<Temperature>(text, &typed.unit)?),
        _ => None,
    };
    let mut result = CoolDownResult {
        class: String::new(),
        shows,
        limit,
        surface: None,
        cooling: None,
        not_before: None,
        left_out: 0,
    };
    let (mut said, mut foretold) = (Vec::new(), Vec::new());
    match &typed.by {
        ProbedBy::Contact => contact(asked, ambient, context, &mut result, &mut foretold)?,
        ProbedBy::Infrared { set_to, surface } => {
            infrared(set_to, *surface, ambient, &mut result, &mut said)?;
        }
    }
    let is_hot = result.surface.map_or(shows, |surface| surface.highest) > limit;
    let shown = as_typed(shows, typed);
    let (class, first) = if is_hot {
        ("hot", cool_down_hot(shown, Measure::from(limit), context.checklist.sheet_label(&asked.limit)))
    } else {
        // What is foretold of a part that is cool tells nobody anything, but that it grew hotter does.
        foretold.retain(|message| *message == cool_down_rises());
        ("cool", cool_down_cool(shown, Measure::from(limit), context.checklist.sheet_label(&asked.limit)))
    };
    class.clone_into(&mut result.class);
    said.insert(0, first);
    said.append(&mut foretold);
    let value = EntryValue::CoolDown(trimmed(typed));
    Ok(Classified::worked_out(class, value, said, result))
}

/// A contact probe: this reading and those before it make the curve.
fn contact(
    asked: &CoolDown,
    ambient: Option<Temperature>,
    context: &Context<'_>,
    result: &mut CoolDownResult,
    foretold: &mut Vec<Message>,
) -> Result<(), Refusal> {
    let Some(ambient) = ambient else {
        foretold.push(cool_down_no_ambient());
        return Ok(());
    };
    let figure = |error: FigureError| Refusal::from(error.message());
    let kelvins = |value| TemperatureDifference::from_kelvins(value).map_err(|error| figure(error.into()));
    let (earlier, left_out) = earlier(context);
    let now = Moment::from_ms(context.at.wall_ms);
    let readings = from_the_hottest(earlier.into_iter().chain([(now, result.shows)]).collect(), PROBE_OFF_K);
    let heated = context.past.map_or(Heated::Never, |past| past.heated(&asked.heated_by));
    let engine_off = match heated {
        Heated::Never => None,
        Heated::Now => Some(now),
        // Where nobody knows how long ago, the latest that it can have been.
        Heated::Until(stamp) => Some(before(context.at, surely_ms(&stamp, context.at))),
    };
    let place = match asked.place {
        ProbedPlace::Joint => Place::Joint,
        ProbedPlace::Shell => Place::Shell,
    };
    let older = readings.len();
    let down = cooldown::cool_down(Cooling {
        place,
        readings,
        probe_off_by: kelvins(PROBE_OFF_K)?,
        ambient,
        ambient_off_by: kelvins(AMBIENT_OFF_K)?,
        engine_off,
        limit: result.limit,
    })
    .map_err(figure)?;
    foretold.extend(say(&down, context));
    let older = older - down.counted;
    if older > 0 {
        foretold.push(cool_down_older(older));
    }
    if left_out > 0 {
        foretold.push(cool_down_left_out(left_out));
    }
    let after_ms = down.not_before.map(|time| (time.minutes() * MINUTE_MS as f64).ceil() as i64);
    result.not_before = after_ms.and_then(|ms| now.ms().checked_add(ms)).map(Moment::from_ms);
    result.left_out = left_out;
    result.cooling = Some(down);
    Ok(())
}

/// Contact readings before this one on its clock, oldest first, and how many a restart of the tablet left without a time.
fn earlier(context: &Context<'_>) -> (Vec<(Moment, Temperature)>, usize) {
    let taken = context.past.map(|past| past.readings(context.step, context.entry)).unwrap_or_default();
    let probed = |taken: &Taken<'_>| match taken.value {
        EntryValue::CoolDown(Probed { value, unit, by: ProbedBy::Contact, .. }) => {
            Some((*taken.at, quantity::<Temperature>(value, unit).ok()?))
        }
        _ => None,
    };
    let mut next = context.at.wall_ms;
    let (mut kept, mut left_out) = (Vec::new(), 0);
    for (stamp, celsius) in taken.iter().filter_map(probed).rev() {
        match measured_ms(&stamp, context.at).map(|ago| before(context.at, ago)) {
            Some(then) if then.ms() <= next => {
                if next - then.ms() >= ONE_READING_MS {
                    kept.push((then, celsius));
                    next = then.ms();
                }
            }
            _ => left_out += 1,
        }
    }
    kept.reverse();
    (kept, left_out)
}

/// So many milliseconds before a stamp, on its wall clock as it stands.
fn before(at: &Stamp, ms: u64) -> Moment {
    Moment::from_ms(at.wall_ms.saturating_sub_unsigned(ms))
}

/// After a rise the curve begins anew from the hottest reading; where that is the last one, all are kept, so that the
/// rise is told.
fn from_the_hottest(readings: Vec<(Moment, Temperature)>, off_by: f64) -> Vec<(Moment, Temperature)> {
    let mut hottest = 0;
    let mut coolest = f64::INFINITY;
    for (at, (_, temperature)) in readings.iter().enumerate() {
        coolest = coolest.min(temperature.celsius());
        if temperature.celsius() > coolest + 2.0 * off_by {
            (hottest, coolest) = (at, temperature.celsius());
        }
    }
    if hottest + 1 == readings.len() { readings } else { readings.into_iter().skip(hottest).collect() }
}

/// What is foretold.
fn say(down: &cooldown::CoolDown, context: &Context<'_>) -> Option<Message> {
    Some(match down.class {
        CoolingClass::Below => return None,
        CoolingClass::TooFewReadings => cool_down_too_few(down.counted, LEAST_READINGS),
        CoolingClass::Rises => cool_down_rises(),
        CoolingClass::NeverBelow => cool_down_never(),
        CoolingClass::NoCurve => cool_down_no_curve(),
        CoolingClass::Cools => match down.not_before {
            Some(time) => {
                // At most a day and its spread, so this fits.
                let minutes = time.minutes().ceil() as i64;
                let then = context.at.wall_ms.saturating_add(minutes.saturating_mul(MINUTE_MS as i64));
                cool_down_not_before(time_of_day(then, context.utc_offset_min), minutes)
            }
            None => cool_down_spread(),
        },
    })
}

/// An infrared meter: the hottest that the surface may be counts, and a surface that is not dull proves nothing.
fn infrared(
    set_to: &str,
    surface: ProbedSurface,
    ambient: Option<Temperature>,
    result: &mut CoolDownResult,
    said: &mut Vec<Message>,
) -> Result<(), Refusal> {
    let Some(ambient) = ambient else { return Err(cool_down_no_ambient().into()) };
    let surface = match surface {
        ProbedSurface::Coated => Surface::Coated,
        ProbedSurface::Oxidised => Surface::Oxidised,
        ProbedSurface::Rusty => Surface::Rusty,
        ProbedSurface::Bright => Surface::Bright,
    };
    let set_to = parse_number(set_to).map_err(|error| Refusal::from(error.message()))?;
    let reading = InfraredReading { shows: result.shows, set_to, surface: surface.emissivity(), ambient };
    let found = match surface_temperature(reading) {
        Ok(found) => found,
        // So hot that it can't be told how hot: hot it is.
        Err(FigureError::Radiation { .. }) if result.shows > result.limit => return Ok(()),
        Err(error) => return Err(error.message().into()),
    };
    // What is too hot even as it reads is too hot; everything else on such a surface is no evidence.
    if !found.is_evidence && result.shows <= result.limit {
        return Err(cool_down_no_evidence().into());
    }
    said.push(cool_down_infrared(Measure::from(found.lowest), Measure::from(found.highest)));
    result.surface = Some(found);
    Ok(())
}

/// A temperature in the unit that it was typed in.
fn as_typed(shows: Temperature, typed: &Probed) -> Measure {
    let measure = Measure::from(shows);
    typed.unit.parse().and_then(|unit| measure.to(unit)).unwrap_or(measure)
}

fn trimmed(typed: &Probed) -> Probed {
    let trim = |text: &String| text.trim().to_owned();
    let by = match &typed.by {
        ProbedBy::Contact => ProbedBy::Contact,
        ProbedBy::Infrared { set_to, surface } => {
            ProbedBy::Infrared { set_to: trim(set_to), surface: *surface }
        }
    };
    let ambient = typed.ambient.as_ref().map(trim).filter(|text| !text.is_empty());
    Probed { value: trim(&typed.value), unit: trim(&typed.unit), by, ambient }
}

impl Kind for CoolDown {
    fn classify(
        &self,
        specs: &Specs,
        value: &EntryValue,
        context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::CoolDown(probed) => classify(self, specs, probed, context),
            _ => Err(kind::other("cool_down", value)),
        }
    }

    fn limits(&self, specs: &Specs, checklist: &Checklist) -> Vec<Message> {
        let limit = specs.measure(&self.limit);
        limit.map(|limit| limit_at_most(limit, checklist.sheet_label(&self.limit))).into_iter().collect()
    }

    fn units(&self) -> Vec<String> {
        units::of(Quantity::Temperature, Unit::DegreeCelsius)
    }

    fn temperature_units(&self) -> Vec<String> {
        Vec::new()
    }

    fn converted<'v>(&self, value: &'v EntryValue) -> Option<(&'v str, &'v str)> {
        let EntryValue::CoolDown(probed) = value else { return None };
        Some((&probed.value, &probed.unit))
    }

    fn in_short(&self, value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        let EntryValue::CoolDown(probed) = value else { return None };
        Some(format!("{} {}", probed.value, probed.unit))
    }

    fn is_measured(&self) -> bool {
        true
    }
}
