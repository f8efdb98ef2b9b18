//! Labour from clock events: time by phase, waiting and unplanned time with their reasons, against what was expected.

use std::collections::BTreeMap;

use panside_messages::Message;
use serde::{Deserialize, Serialize};

use crate::FigureError;
use crate::measure::Duration;
use crate::message::working::*;
use crate::moment::{Moment, check_order};
use crate::source;
use crate::text::figure;
use crate::working::{Worked, Working};

const MS_A_TENTH: i128 = 360_000;
const MS_A_MINUTE: f64 = 60_000.0;

/// What time is spent on.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Spent {
    /// Planned work.
    Work,
    /// Waiting, with its reason: cooling, draining, parts, an answer.
    Waiting(String),
    /// Work that was not planned, with its reason.
    Unplanned(String),
}

/// What the clock was told.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Clocked {
    /// Clocked on, or over to something else.
    On {
        /// The phase of the job.
        phase: String,
        /// What for.
        spent: Spent,
    },
    /// Clocked off.
    Off,
}

/// A part of the day on the clock.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Share {
    /// The phase of the job.
    pub phase: String,
    /// What for.
    pub spent: Spent,
    /// How long, in milliseconds.
    pub ms: i64,
}

/// Labour, and what it was made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Labour {
    /// The clock events.
    pub events: Vec<(Moment, Clocked)>,
    /// Until when it is counted, if still clocked on.
    pub until: Moment,
    /// What was expected in all, if the checklist says so.
    pub expected: Option<Duration>,
    /// Time by phase and by what it was spent on.
    pub shares: Vec<Share>,
    /// Planned work in milliseconds.
    pub work_ms: i64,
    /// Waiting in milliseconds.
    pub waiting_ms: i64,
    /// Unplanned work in milliseconds.
    pub unplanned_ms: i64,
    /// Work, planned and unplanned, in tenths of an hour, to the nearest. Waiting is not in it.
    pub tenths: i64,
}

/// Tenths of an hour to the nearest, half up: 3 to 8 minutes are one tenth.
pub fn tenths(ms: i64) -> i64 {
    // In between wider than what it comes from, and smaller than that when it comes out.
    ((i128::from(ms) * 2 + MS_A_TENTH).div_euclid(MS_A_TENTH * 2)) as i64
}

/// Adds up clock events. Each phase, reason and kind is counted apart; what still runs is counted until `until`.
///
/// # Errors
/// [`FigureError::ClockWentBack`] and [`FigureError::InTheFuture`] for times that can't be, [`FigureError::NotClockedOn`]
/// for clocking off twice, [`FigureError::ReasonMissing`] for waiting or unplanned work without a reason.
pub fn labour(
    events: Vec<(Moment, Clocked)>,
    until: Moment,
    expected: Option<Duration>,
) -> Result<Labour, FigureError> {
    check_order(events.iter().map(|(at, _)| *at), Some(until))?;
    let mut shares: BTreeMap<(String, Spent), i128> = BTreeMap::new();
    let mut running: Option<(Moment, (String, Spent))> = None;
    for (index, (at, clocked)) in events.iter().enumerate() {
        let position = index + 1;
        let next = match clocked {
            Clocked::On { spent: Spent::Waiting(reason) | Spent::Unplanned(reason), .. }
                if reason.trim().is_empty() =>
            {
                return Err(FigureError::ReasonMissing { position });
            }
            Clocked::On { phase, spent } => Some((*at, (phase.clone(), spent.clone()))),
            Clocked::Off if running.is_none() => return Err(FigureError::NotClockedOn { position }),
            Clocked::Off => None,
        };
        if let Some((since, what)) = std::mem::replace(&mut running, next) {
            *shares.entry(what).or_default() += i128::from(at.ms()) - i128::from(since.ms());
        }
    }
    if let Some((since, what)) = running {
        *shares.entry(what).or_default() += i128::from(until.ms()) - i128::from(since.ms());
    }
    let sum = |wanted: fn(&Spent) -> bool| {
        shares.iter().filter(|((_, spent), _)| wanted(spent)).map(|(_, ms)| ms).sum::<i128>()
    };
    let fit = |ms: i128| i64::try_from(ms).map_err(|_| FigureError::TooLong);
    let work_ms = fit(sum(|spent| matches!(spent, Spent::Work)))?;
    let waiting_ms = fit(sum(|spent| matches!(spent, Spent::Waiting(_))))?;
    let unplanned_ms = fit(sum(|spent| matches!(spent, Spent::Unplanned(_))))?;
    let worked = fit(i128::from(work_ms) + i128::from(unplanned_ms))?;
    let shares = shares
        .into_iter()
        .map(|((phase, spent), ms)| Ok(Share { phase, spent, ms: fit(ms)? }))
        .collect::<Result<_, FigureError>>()?;
    Ok(Labour { events, until, expected, shares, work_ms, waiting_ms, unplanned_ms, tenths: tenths(worked) })
}

fn minutes(ms: i64) -> String {
    format!("{} min", figure(ms as f64 / MS_A_MINUTE))
}

impl Clocked {
    fn message(&self) -> Message {
        match self {
            Clocked::On { phase, spent: Spent::Work } => working_labour_on(phase),
            Clocked::On { phase, spent: Spent::Waiting(reason) } => working_labour_on_waiting(phase, reason),
            Clocked::On { phase, spent: Spent::Unplanned(reason) } => {
                working_labour_on_unplanned(phase, reason)
            }
            Clocked::Off => working_labour_off(),
        }
    }
}

impl Spent {
    fn message(&self) -> Message {
        match self {
            Spent::Work => working_labour_work(),
            Spent::Waiting(reason) => working_labour_waiting(reason),
            Spent::Unplanned(reason) => working_labour_unplanned(reason),
        }
    }
}

impl Worked for Labour {
    fn working(&self) -> Working {
        let mut working = Working::of(working_labour());
        let first = self.events.first().map_or(self.until, |(at, _)| *at);
        for (at, clocked) in &self.events {
            working = working.given(working_after(figure(at.minutes_since(first))), clocked.message());
        }
        for share in &self.shares {
            working = working.step(working_name(&share.phase), share.spent.message(), minutes(share.ms));
        }
        let worked = self.work_ms.saturating_add(self.unplanned_ms);
        working = working
            .step(
                working_labour_work(),
                working_labour_work_how(),
                format!("{} + {}", minutes(self.work_ms), minutes(self.unplanned_ms)),
            )
            .step(
                working_labour_tenths(),
                working_labour_tenths_how(minutes(worked)),
                self.tenths.to_string(),
            )
            .answer(working_labour_sum(figure(self.tenths as f64 / 10.0), minutes(self.waiting_ms)));
        if let Some(expected) = self.expected {
            let over = worked as f64 / MS_A_MINUTE - expected.minutes();
            let than = if over > 0.0 { "more" } else { "less" };
            working = working.answer(working_labour_expected(expected, figure(over.abs()), than));
        }
        working.sources([source::tenths()])
    }
}
