//! What was measured in a job as drawings: axes with units and ticks, bands, curves, readings, and the same in
//! sentences. Whoever draws them only puts lines and words in their places; nothing is worked out there.
//!
//! A place in a drawing is given in [`FULL`] parts of its width and height, counted from the left and from below, so
//! that a figure holds no floats and equal jobs give equal figures.
//!
//! One fold of the job gives each figure, from what the trade's functions worked out at the entry. The screen
//! (`ui/src/figures`), the record (`record/src/pdf/plot.rs`, `bolts.rs`) and the chart of a sheet that is typed draw
//! from the same. A level is joined to the one before it where the checklist names what was `added` between. A torque
//! with `positions` on the sheet is tapped on its map.

mod balance;
mod bolts;
mod coil;
mod cooling;
mod level;
mod plot;

use panside_procedure::format::{Ask, Entry, Step};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

pub use bolts::{BoltMap, DrawnBolt, StageLine};
pub use plot::{Axis, Band, Column, Label, Line, LineStyle, Plot, Point, Spot, Tick};

pub(crate) use bolts::{map as bolt_map, places as bolt_places};
pub(crate) use plot::Frame;

use crate::clock::civil_time;
use crate::job::{Attempt, EnteredValue, Job, Mark};
use crate::message::Message;

/// The whole width or height of a drawing.
pub const FULL: i32 = 10_000;

/// One drawing with what it says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Figure {
    /// What it is drawn from: the sheet's key, or step and entry.
    pub id: String,
    /// What it shows.
    pub kind: FigureKind,
    /// What stands above it.
    pub title: Message,
    /// All that it shows, in sentences.
    pub says: Vec<Message>,
    /// What is drawn.
    pub drawing: Drawing,
}

/// What a figure shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum FigureKind {
    /// The fluid level over temperature.
    Level,
    /// How a hot part cools.
    CoolDown,
    /// The resistance of coils over temperature.
    Coil,
    /// What came out and what went in.
    Balance,
    /// Fasteners on their map.
    Bolts,
}

/// What is drawn.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Drawing {
    /// Values over axes.
    Plot(Box<Plot>),
    /// Fasteners in their places.
    Bolts(BoltMap),
}

/// Every figure that the job has come to, in the order of the work.
#[must_use]
pub fn figures(job: &Job) -> Vec<Figure> {
    let taken = taken(job);
    let all = [level::figures, cooling::figures, coil::figures, bolts::figures, balance::figures];
    let mut found: Vec<(u64, Figure)> = all.into_iter().flat_map(|of_kind| of_kind(job, &taken)).collect();
    found.sort_by_key(|(first, _)| *first);
    found.into_iter().map(|(_, figure)| figure).collect()
}

impl Figure {
    /// Every message in it, for whoever puts the sentences in.
    pub fn each_message(&mut self, say: &mut dyn FnMut(&mut Message)) {
        say(&mut self.title);
        self.says.iter_mut().for_each(&mut *say);
        match &mut self.drawing {
            Drawing::Plot(plot) => plot.each_message(say),
            Drawing::Bolts(map) => map.each_message(say),
        }
    }
}

/// A number as it was typed, with the decimal sign of all other numbers in figures.
fn pointed(typed: &str) -> String {
    typed.replace(',', ".")
}

/// One value that was entered, with what stands around it.
#[derive(Clone, Copy)]
struct Taken<'a> {
    step: &'a Step,
    entry: &'a Entry,
    value: &'a EnteredValue,
    /// It is what holds: the last one, of the work that counts or is in progress.
    counts: bool,
    /// It was voided, or the vehicle showed that it cannot have been.
    void: bool,
}

impl Taken<'_> {
    fn is_of(&self, step: &Step, entry: &Entry) -> bool {
        self.step.id == step.id && self.entry.id == entry.id
    }
}

/// Every value that was entered at an entry that the checklist knows, by the order of events.
fn taken(job: &Job) -> Vec<Taken<'_>> {
    let mut all: Vec<Taken<'_>> = Vec::new();
    for (number, step) in job.procedure.steps() {
        let detail = job.step(number);
        for attempt in &detail.attempts {
            let holds = is_same(detail.in_progress().or_else(|| detail.counts()), attempt);
            for value in &attempt.entries {
                let Some(entry) = step.entries.iter().find(|entry| entry.id == value.entry) else { continue };
                let is_last = attempt.latest(&value.entry).is_some_and(|last| std::ptr::eq(last, value));
                let void = attempt.void.is_some();
                all.push(Taken { step, entry, value, counts: holds && is_last && !void, void });
            }
        }
    }
    all.sort_by_key(|taken| taken.value.mark.seq);
    all
}

fn is_same(one: Option<&Attempt>, other: &Attempt) -> bool {
    one.is_some_and(|one| std::ptr::eq(one, other))
}

/// Every entry of the checklist with its step.
fn asked(job: &Job) -> impl Iterator<Item = (&Step, &Entry, &Ask)> {
    job.procedure
        .steps()
        .flat_map(|(_, step)| step.entries.iter().map(move |entry| (step, entry, &entry.ask)))
}

/// When something happened by the shop's clock: the time, with its day where that is not the day of the start.
pub(crate) fn when(job: &Job, mark: &Mark) -> String {
    moment(job, mark.stamp.wall_ms)
}

/// A wall time by the shop's clock, as [`when`] gives it.
fn moment(job: &Job, wall_ms: i64) -> String {
    let offset = job.utc_offset_min();
    let start = job.start.as_ref().and_then(|(mark, _)| civil_time(mark.stamp.wall_ms, offset));
    match civil_time(wall_ms, offset) {
        Some(time) if start.is_some_and(|start| start.date() == time.date()) => {
            time.format("%H:%M").to_string()
        }
        Some(time) => time.format("%Y-%m-%d %H:%M").to_string(),
        None => wall_ms.to_string(),
    }
}

#[cfg(test)]
mod tests;
