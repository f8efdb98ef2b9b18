//! How long things take: from the checklist, and where a step asks for a timer from the sheet.

use crate::format::{Ask, Step};
use crate::load::Procedure;

/// Minutes to walk from one zone of a bay to another where nothing else is said. Common practice.
pub const WALK: u32 = 1;

/// A wait in whole minutes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Passing {
    /// Before the step.
    Before(u16),
    /// Within the step, after its hands; the step may be left meanwhile.
    Within(u16),
}

/// Expected minutes of everything that takes time.
#[derive(Debug, Clone)]
pub struct Minutes {
    /// Somebody's hands, by step; what is attended is among them.
    pub(super) hands: Vec<u16>,
    /// What of the hands is only watching, by step.
    pub(super) watching: Vec<u16>,
    /// What passes without hands, by step.
    pub(super) waits: Vec<Option<Passing>>,
    /// By vehicle action.
    pub(super) vehicle_actions: Vec<u16>,
    /// From one zone to another.
    pub(super) walk: u16,
    /// How long gates stay known, by gate as the checklist lists them.
    pub(super) fresh: Vec<Option<u16>>,
}

impl Minutes {
    /// The minutes of a checklist. `walk` is the way between two zones; `timer` gives the minutes that the sheet has under
    /// a key, where there is a sheet.
    #[must_use]
    pub fn of(procedure: &Procedure, walk: u32, timer: &dyn Fn(&str) -> Option<f64>) -> Minutes {
        let checklist = &procedure.checklist;
        let steps = || procedure.steps().map(|(_, step)| step);
        Minutes {
            hands: steps().map(|step| hands(step, timer)).collect(),
            watching: steps().map(|step| hands(step, timer).saturating_sub(whole(step.minutes))).collect(),
            waits: steps().map(passing).collect(),
            vehicle_actions: checklist.vehicle_actions.iter().map(|made| whole(made.minutes)).collect(),
            walk: whole(walk),
            fresh: checklist.gates.iter().map(|gate| gate.fresh_for.map(whole)).collect(),
        }
    }
}

/// Minutes that somebody is in the step.
fn hands(step: &Step, timer: &dyn Fn(&str) -> Option<f64>) -> u16 {
    let attended =
        step.wait.as_ref().filter(|wait| wait.attended == Some(true)).map_or(0, |wait| wait.minutes);
    let timers = step.entries.iter().filter_map(|entry| match &entry.ask {
        Ask::Timer(asked) => timer(&asked.at_least),
        _ => None,
    });
    // A float that is no number, negative or too large becomes the nearest whole number that there is.
    let timers = timers.map(|minutes| minutes.ceil() as u32).max().unwrap_or(0);
    whole(step.minutes.saturating_add(attended).max(timers))
}

fn passing(step: &Step) -> Option<Passing> {
    let wait = step.wait.as_ref()?;
    match (&wait.since, wait.attended) {
        (Some(_), _) => Some(Passing::Before(whole(wait.minutes))),
        (None, Some(false)) => Some(Passing::Within(whole(wait.minutes))),
        (None, _) => None,
    }
}

/// More minutes than a month are a month.
fn whole(minutes: u32) -> u16 {
    u16::try_from(minutes.min(30 * 24 * 60)).unwrap_or(u16::MAX)
}
