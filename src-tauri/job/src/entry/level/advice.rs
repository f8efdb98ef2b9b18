//! What a level means for what comes next: how far it is off, what to add or take out, and what stays closed.

use panside_procedure::format::entry::Level;
use panside_trade::diagnosis::{Closed, diagnosis_gate};
use panside_trade::gain::{Addition, Gain, LearntGain, learn_gain};
use panside_trade::level::{LevelClass, LevelResult};
use panside_trade::measure::{Length, Measure, Volume};
use panside_trade::moment::Moment;
use panside_trade::topup::{Advice, TopUp, USUAL_SHARE_PERCENT, top_up};
use panside_trade::units::Unit;

use super::super::past::{Past, Taken};
use super::super::{Context, name_of, quantity};
use super::judged;
use crate::message::{
    Message, level_add, level_closed, level_gain_learnt, level_gain_sheet, level_no_gain, level_off_by,
    level_take_out,
};
use crate::sheet::Specs;
use crate::value::EntryValue;

/// The most to pour at once, in L: our choice.
const LARGEST_POUR_L: f64 = 0.5;

/// What is told of a level.
#[derive(Default)]
pub(super) struct Advised {
    pub said: Vec<Message>,
    pub learnt: Option<LearntGain>,
    pub top_up: Option<TopUp>,
}

/// What to do about a level. Nothing of it is refused: where something can't be told, it is not said.
pub(super) fn of(asked: &Level, specs: &Specs, level: &LevelResult, context: &Context<'_>) -> Advised {
    let mut advised = Advised::default();
    if !matches!(level.class, LevelClass::Below | LevelClass::Above) {
        return advised;
    }
    advised.said.extend(off_by(level));
    let learnt = learnt(asked, specs, level, context);
    let sheet = asked.gain.as_deref().and_then(|key| specs.measure(key));
    let sheet = sheet.and_then(|gain| gain.to(Unit::MillimetrePerLitre).ok());
    let sheet = sheet.and_then(|gain| Gain::from_mm_per_litre(gain.value()).ok());
    let gain = learnt.as_ref().map(|learnt| learnt.gain).or(sheet);
    let pour = Volume::from_litres(LARGEST_POUR_L).ok();
    let worked = gain.zip(pour).and_then(|(gain, pour)| top_up(level, gain, USUAL_SHARE_PERCENT, pour).ok());
    if let Some(worked) = &worked {
        advised.said.extend(say(worked));
        advised.said.push(match &learnt {
            Some(learnt) => level_gain_learnt(worked.gain.to_string(), learnt.additions.len()),
            None => level_gain_sheet(worked.gain.to_string()),
        });
    }
    if let (None, Some(key)) = (gain, &asked.gain) {
        advised.said.push(level_no_gain(context.checklist.sheet_label(key)));
    }
    advised.said.extend(closed(level.class));
    Advised { learnt, top_up: worked, ..advised }
}

/// How far outside its band the level stands, by the readings that show a trace.
fn off_by(level: &LevelResult) -> Option<Message> {
    let distances = level.readings.iter().filter_map(|judged| judged.nearest_mark);
    let distances: Vec<f64> = distances.map(|nearest| nearest.distance.millimetres()).collect();
    let last = level.readings.iter().rfind(|judged| judged.band.is_some())?;
    let band = last.band?;
    let mean = distances.iter().sum::<f64>() / distances.len() as f64;
    // Without a trace the distance is not known, and is none.
    let mean = Length::from_millimetres(mean).ok()?;
    let [mean, low, high] = [mean, band.low, band.high].map(Measure::from);
    Some(level_off_by(name_of(level.class), mean, low, high, Measure::from(last.reading.temperature)))
}

fn say(worked: &TopUp) -> Option<Message> {
    match (worked.advice, worked.pours.first()) {
        (Advice::Add, Some(pour)) => {
            Some(level_add(Measure::from(*pour), worked.pours.len(), Measure::from(worked.estimate)))
        }
        (Advice::TakeOut, _) => Some(level_take_out(Measure::from(worked.estimate))),
        _ => None,
    }
}

/// What stays closed with the level as it is.
fn closed(class: LevelClass) -> Option<Message> {
    let gate = diagnosis_gate(&[(Moment::from_ms(0), class)], &[]).ok()?;
    let why = gate.closed.filter(|why| !matches!(why, Closed::NotTriedAgain | Closed::LevelUnclear))?;
    Some(level_closed(name_of(why)))
}

/// The rise for each litre from the additions of this job: the level before, what was added, the level after.
fn learnt(asked: &Level, specs: &Specs, now: &LevelResult, context: &Context<'_>) -> Option<LearntGain> {
    let (added, past) = (asked.added.as_ref()?, context.past?);
    let (step, entry) = added.volume.split_once('.')?;
    let volumes: Vec<(u64, f64)> = past.in_progress(step, entry).iter().filter_map(litres).collect();
    // What was added in all when the level at that place was read.
    let in_all = |place: u64| volumes.iter().rfind(|(at, _)| *at < place).map_or(0.0, |(_, litres)| *litres);
    let height = |level: &LevelResult| {
        let heights = level.readings.iter().map(|judged| judged.above_low_mark.map(Length::millimetres));
        let heights = heights.collect::<Option<Vec<f64>>>().filter(|list| !list.is_empty())?;
        let known = level.class != LevelClass::Unclear;
        known.then(|| heights.iter().sum::<f64>() / heights.len() as f64)
    };
    let before = added.before.as_deref().and_then(|before| before_all(asked, specs, past, before));
    let mut steps: Vec<(f64, f64)> =
        before.and_then(|level| height(&level)).map(|at| (0.0, at)).into_iter().collect();
    for taken in past.in_progress(context.step, context.entry) {
        let level = level_of(asked, specs, &taken);
        steps.extend(level.and_then(|level| height(&level)).map(|at| (in_all(taken.place), at)));
    }
    steps.push((in_all(u64::MAX), height(now)?));
    let additions = steps.windows(2).filter_map(|pair| {
        let [(had, before), (has, after)] = pair else { return None };
        let volume = (has - had > 1e-9).then(|| Volume::from_litres(has - had).ok())??;
        let [before, after] = [before, after].map(|mm| Length::from_millimetres(*mm));
        Some(Addition { volume, before: before.ok()?, after: after.ok()? })
    });
    learn_gain(&additions.collect::<Vec<_>>()).ok()
}

fn litres(taken: &Taken<'_>) -> Option<(u64, f64)> {
    match taken.value {
        EntryValue::Reading { value, unit } => {
            Some((taken.place, quantity::<Volume>(value, unit).ok()?.litres()))
        }
        _ => None,
    }
}

fn level_of(asked: &Level, specs: &Specs, taken: &Taken<'_>) -> Option<LevelResult> {
    match taken.value {
        EntryValue::Level { readings, confirmed_no_trace, .. } => {
            judged(asked, specs, readings, *confirmed_no_trace).ok()
        }
        _ => None,
    }
}

/// The last level that was read before anything was added.
fn before_all(asked: &Level, specs: &Specs, past: Past<'_>, entry: &str) -> Option<LevelResult> {
    let (step, entry) = entry.split_once('.')?;
    level_of(asked, specs, past.latest(step, entry).last()?)
}
