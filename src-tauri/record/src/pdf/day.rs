//! The day: where the vehicle was, when its engine ran, what was waiting and what was unplanned, along the clock.

use panside_messages::Message;

use super::clock::{Clock, Minute, day_of, minute_of, time_of_day, until};
use super::flow::Flow;
use super::ink::{Ink, LEFT, Look, RIGHT, WIDTH};
use super::sheet::{Owner, line, rect};
use crate::day::Track;
use crate::document::Document;
use crate::messages;
use crate::speak::Say;
use crate::time::Kind;

/// Room for the names of the rows.
const NAMES: f32 = 98.0;
/// From one height of the vehicle to the next, at the most, and all of them together.
const FLOOR_TO_UP: f32 = 15.0;
const HEIGHTS: f32 = 46.0;
/// Room for half of the last tick's words.
const HALF_TICK: f32 = 9.0;
/// From one lane to the next.
const LANE: f32 = 13.0;
/// Height of a bar in a lane.
const BAR: f32 = 6.0;

/// What a day of a usual height takes: its heights, three lanes, its axis.
pub(super) const HEIGHT: f32 = HEIGHTS + 3.0 * LANE + 36.0;

/// What names a lane, from how long it is in all.
type Timed = fn(String) -> Message;

/// A span of the day in a lane.
struct Bar {
    from: Minute,
    to: Minute,
    says: String,
}

/// A lane below the line.
struct Lane {
    name: String,
    kind: Option<Kind>,
    bars: Vec<Bar>,
}

/// Draws the day where the flow is; says so where its times cannot be read.
pub(super) fn draw(flow: &mut Flow<'_>, document: &Document, say: &Say<'_>) {
    let Some(clock) = Clock::of(document, LEFT + NAMES, WIDTH - NAMES - HALF_TICK) else {
        flow.paragraph(&say.says(&messages::day_no_clock()), Look::ASIDE, 0.0);
        return;
    };
    let lift = document.day.iter().find(|track| track.draws == "lift");
    let lanes = lanes(document, say);
    let heights = lift.map_or(0.0, |track| track.values.len() as f32 * up(track));
    let height = heights + lanes.len() as f32 * LANE + 36.0;
    let owner = flow.figure(alt(document, lift, &lanes, say), (LEFT, flow.y, WIDTH, height));
    let top = flow.y;
    if let Some(track) = lift {
        draw_heights(flow, owner, &clock, track, until(document), top);
    }
    let mut y = top + heights + 4.0;
    for lane in &lanes {
        flow.label(owner, &lane.name, Look::NOTE, LEFT, y + BAR);
        draw_lane(flow, owner, &clock, lane, y);
        y += LANE;
    }
    draw_axis(flow, owner, &clock, y + 2.0);
    flow.y = top + height;
}

/// From one of a vehicle's heights to the next.
fn up(track: &Track) -> f32 {
    FLOOR_TO_UP.min(HEIGHTS / track.values.len().max(1) as f32)
}

fn draw_heights(
    flow: &mut Flow<'_>,
    owner: Owner,
    clock: &Clock,
    track: &Track,
    until: Option<Minute>,
    top: f32,
) {
    let (rows, up) = (track.values.len(), up(track));
    // The first value is the floor.
    let height = |value: &str| {
        let row = track.values.iter().position(|known| known == value).unwrap_or(0);
        top + (rows - 1 - row) as f32 * up + up / 2.0
    };
    for value in &track.values {
        let y = height(value);
        flow.label(owner, value, Look::NOTE, LEFT, y + 3.0);
        flow.draw(owner, line(&[(LEFT + NAMES, y), (RIGHT - 4.0, y)]), None, Some((Ink::Hair, 0.4)));
    }
    let mut points: Vec<(f32, f32)> = Vec::new();
    for had in &track.had {
        let Some(minute) = minute_of(&had.since.local) else { continue };
        let (x, y) = (clock.at(minute), height(&had.value));
        points.extend(points.last().map(|(_, before)| (x, *before)));
        points.push((x, y));
    }
    points.extend(until.zip(points.last().copied()).map(|(end, (_, y))| (clock.at(end), y)));
    flow.draw(owner, line(&points), None, Some((Ink::Black, 1.8)));
}

fn draw_lane(flow: &mut Flow<'_>, owner: Owner, clock: &Clock, lane: &Lane, y: f32) {
    let mut taken: Vec<(f32, f32)> = Vec::new();
    for bar in &lane.bars {
        let (from, to) = (clock.at(bar.from), clock.at(bar.to));
        taken.push((from, to));
        let place = (from, y, (to - from).max(1.0), BAR);
        match lane.kind {
            None => flow.draw(owner, rect(place), Some(Ink::Accent), None),
            Some(Kind::Unplanned) => {
                hatch(flow, owner, place);
                flow.draw(owner, rect(place), None, Some((Ink::Black, 0.7)));
            }
            Some(_) => flow.draw(owner, rect(place), None, Some((Ink::Black, 0.7))),
        }
    }
    // The longest have their words first; those without room beside them have none.
    let mut bars: Vec<&Bar> = lane.bars.iter().filter(|bar| !bar.says.is_empty()).collect();
    bars.sort_by_key(|bar| bar.from - bar.to);
    let mut said: Vec<&str> = Vec::new();
    for bar in bars {
        let width = flow.letters.one(&bar.says, Look::FOOT).width;
        let beside = [clock.at(bar.to) + 3.0, clock.at(bar.from) - 3.0 - width];
        let is_free = |x: &f32| {
            let ends = (x - 2.0, x + width + 2.0);
            ends.0 > LEFT + NAMES
                && ends.1 < RIGHT
                && !taken.iter().any(|(from, to)| *from < ends.1 && ends.0 < *to)
        };
        if let (Some(x), false) = (beside.into_iter().find(is_free), said.contains(&bar.says.as_str())) {
            flow.label(owner, &bar.says, Look::FOOT, x, y + BAR - 0.5);
            taken.push((x, x + width));
            said.push(&bar.says);
        }
    }
}

/// Slanted strokes in a bar.
fn hatch(flow: &mut Flow<'_>, owner: Owner, (x, y, width, height): (f32, f32, f32, f32)) {
    let mut from = x - height + 3.0;
    while from < x + width {
        let (left, right) = (from.max(x), (from + height).min(x + width));
        let stroke = line(&[(left, y + height - (left - from)), (right, y + height - (right - from))]);
        if right > left {
            flow.draw(owner, stroke, None, Some((Ink::Black, 0.5)));
        }
        from += 3.0;
    }
}

fn draw_axis(flow: &mut Flow<'_>, owner: Owner, clock: &Clock, y: f32) {
    for (from, to) in clock.spans.clone() {
        let ends = [(clock.at(from), y), (clock.at(to).max(clock.at(from) + 2.0), y)];
        flow.draw(owner, line(&ends), None, Some((Ink::Black, 0.6)));
    }
    for x in clock.cuts() {
        for x in [x - 2.0, x + 2.0] {
            flow.draw(owner, line(&[(x - 2.0, y + 4.0), (x + 2.0, y - 4.0)]), None, Some((Ink::Dim, 0.6)));
        }
    }
    let mut free = 0.0;
    for tick in clock.ticks() {
        flow.draw(owner, line(&[(tick.x, y), (tick.x, y + 3.0)]), None, Some((Ink::Black, 0.6)));
        let width = flow.letters.one(&tick.label, Look::FOOT).width;
        let x = tick.x - width / 2.0;
        if x > free {
            flow.label(owner, &tick.label, Look::FOOT, x, y + 11.0);
            free = x + width + 3.0;
        }
    }
    let mut last = String::new();
    for (from, _) in clock.spans.clone() {
        let day = day_of(from);
        if day != last {
            flow.label(owner, &day, Look::FOOT, clock.at(from), y + 21.0);
            last = day;
        }
    }
}

/// The lanes that have something in them; the engine's always, where the checklist knows of it.
fn lanes(document: &Document, say: &Say<'_>) -> Vec<Lane> {
    let mut lanes = Vec::new();
    if let Some(track) = document.day.iter().find(|track| track.draws == "engine") {
        let bars = running(document, track);
        let minutes = bars.iter().map(|bar| u64::try_from(bar.to - bar.from).unwrap_or(0)).sum();
        lanes.push(Lane { name: say.says(&messages::lane_engine(say.clock(minutes))), kind: None, bars });
    }
    let time = document.time.in_steps;
    let apart_of: [(Timed, Kind, u64); 2] = [
        (messages::lane_waiting, Kind::Waiting, time.waiting),
        (messages::lane_unplanned, Kind::Unplanned, time.unplanned),
    ];
    for (name, kind, minutes) in apart_of {
        let bars = apart(document, kind);
        if !bars.is_empty() {
            lanes.push(Lane { name: say.says(&name(say.clock(minutes))), kind: Some(kind), bars });
        }
    }
    lanes
}

/// When a condition was not at rest.
fn running(document: &Document, track: &Track) -> Vec<Bar> {
    let ends = track.had.iter().skip(1).map(|had| minute_of(&had.since.local)).chain([until(document)]);
    let bars = track.had.iter().zip(ends).filter(|(had, _)| Some(&had.value) != track.values.first());
    bars.filter_map(|(had, end)| {
        let (from, to) = (minute_of(&had.since.local)?, end?);
        Some(Bar { from, to, says: String::new() })
    })
    .collect()
}

/// Attempts of one kind.
fn apart(document: &Document, kind: Kind) -> Vec<Bar> {
    let mut bars: Vec<Bar> = Vec::new();
    for step in document.phases.iter().flat_map(|phase| &phase.steps) {
        if !document.time.apart.iter().any(|apart| apart.step == step.id && apart.kind == kind) {
            continue;
        }
        for attempt in step.attempts.iter().filter(|attempt| !attempt.corrected && !attempt.later) {
            let end = attempt.ended.as_ref().map_or_else(|| until(document), |by| minute_of(&by.local));
            let Some((from, to)) = minute_of(&attempt.begun.local).zip(end) else { continue };
            bars.push(Bar { from, to, says: step.title.clone() });
        }
    }
    bars.sort_by_key(|bar| bar.from);
    bars
}

/// The picture in words.
fn alt(document: &Document, lift: Option<&Track>, lanes: &[Lane], say: &Say<'_>) -> String {
    let mut said = vec![say.says(&messages::day_alt())];
    if let Some(track) = lift {
        let had = track
            .had
            .iter()
            .map(|had| say.within(&messages::day_from(&had.value, had.since.day_and_time(say))));
        said.push(say.says(&messages::day_lift(say.listed(had))));
    }
    for lane in lanes {
        let bars = lane.bars.iter().map(|bar| {
            let (from, to) = (time_of_day(bar.from), time_of_day(bar.to));
            say.within(&messages::day_bar(from, to, &bar.says)).trim_end().to_owned()
        });
        let bars = if lane.bars.is_empty() { say.within(&messages::day_never()) } else { say.apart(bars) };
        said.push(say.says(&messages::day_lane(&lane.name, bars)));
    }
    said.extend(until(document).map(|end| say.says(&messages::day_until(day_of(end), time_of_day(end)))));
    said.join(" ")
}
