//! Every way of doing a small job, minute by minute: what can be so after that many minutes, until the job can be over.
//! Written from the terms of the job and from what the plan's documentation says about time; it knows no checklist, no
//! machine and no bound, and leaves nothing out because it looks worse.

use std::collections::BTreeSet;

use super::instance::{Instance, Lift, Step, Wait};

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Doing {
    Free,
    Walking,
    Working(usize),
    Staying(usize),
    Moving(VehicleAction),
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum VehicleAction {
    Raise,
    Lower,
    Start,
    Stop,
}

const VEHICLE_ACTIONS: [VehicleAction; 4] =
    [VehicleAction::Raise, VehicleAction::Lower, VehicleAction::Start, VehicleAction::Stop];

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Person {
    doing: Doing,
    left: u32,
    /// 0 for anywhere.
    zone: u8,
}

#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
struct Moment {
    people: Vec<Person>,
    done: u16,
    up: bool,
    runs: bool,
    /// Minutes since each step was done, and since the engine is off; no more than what counts.
    since_done: Vec<u32>,
    since_off: u32,
    /// What is left of what drains at each step; nothing while it does not.
    drains: Vec<Option<u32>>,
    /// For how long it is still known what the probe found out.
    known: u32,
}

/// The fewest minutes in which a job can be done; nothing where it cannot.
pub fn fewest_minutes(job: &Instance) -> Option<u32> {
    let count = job.steps.len();
    let start = Moment {
        people: vec![Person { doing: Doing::Free, left: 0, zone: 0 }; job.people],
        done: 0,
        up: false,
        runs: false,
        since_done: vec![0; count],
        since_off: 0,
        drains: vec![None; count],
        known: 0,
    };
    let mut seen = BTreeSet::new();
    let mut now = BTreeSet::from([start]);
    for minute in 0.. {
        let all = everything_at_once(job, now);
        if all.iter().any(|moment| is_over(job, moment)) {
            return Some(minute);
        }
        let may_wait = |moment: &&Moment| !moment.people.iter().any(|person| ends(moment, person));
        let later: BTreeSet<Moment> = all.iter().filter(may_wait).cloned().map(a_minute_later).collect();
        seen.extend(all);
        // What could be so earlier brings nothing new.
        now = later.into_iter().filter(|moment| !seen.contains(moment)).collect();
        if now.is_empty() {
            return None;
        }
    }
    None
}

/// Everything that can be made of these moments without a minute passing.
fn everything_at_once(job: &Instance, now: BTreeSet<Moment>) -> BTreeSet<Moment> {
    let mut all = now.clone();
    let mut open: Vec<Moment> = now.into_iter().collect();
    while let Some(moment) = open.pop() {
        for next in at_once(job, &moment) {
            if all.insert(next.clone()) {
                open.push(next);
            }
        }
    }
    all
}

fn is_over(job: &Instance, moment: &Moment) -> bool {
    moment.done.count_ones() as usize == job.steps.len()
        && !moment.up
        && !moment.runs
        && moment.people.iter().all(|person| person.doing == Doing::Free)
}

/// Whether what a person does is over now.
fn ends(moment: &Moment, person: &Person) -> bool {
    match person.doing {
        Doing::Free => false,
        Doing::Staying(step) => moment.drains[step] == Some(0),
        Doing::Walking | Doing::Working(_) | Doing::Moving(_) => person.left == 0,
    }
}

fn at_once(job: &Instance, moment: &Moment) -> Vec<Moment> {
    let ending: Vec<usize> =
        (0..moment.people.len()).filter(|&who| ends(moment, &moment.people[who])).collect();
    if !ending.is_empty() {
        return ending.into_iter().filter_map(|who| end(job, moment, who)).map(sorted).collect();
    }
    let mut found = Vec::new();
    for who in 0..moment.people.len() {
        match moment.people[who].doing {
            Doing::Free => {
                found.extend((0..job.steps.len()).filter_map(|step| begin(job, moment, who, step)));
                found.extend(VEHICLE_ACTIONS.iter().filter_map(|&made| make(job, moment, who, made)));
                let from = moment.people[who].zone;
                for zone in (1..=4).filter(|&zone| from != 0 && zone != from) {
                    let walking = Person { doing: Doing::Walking, left: job.walk, zone };
                    found.push(with(moment, who, walking));
                }
            }
            Doing::Staying(_) => {
                let zone = moment.people[who].zone;
                found.push(with(moment, who, Person { doing: Doing::Free, left: 0, zone }));
            }
            _ => {}
        }
    }
    found.into_iter().map(sorted).collect()
}

fn a_minute_later(mut moment: Moment) -> Moment {
    for person in &mut moment.people {
        person.left = person.left.saturating_sub(1);
    }
    // No wait is longer than 8 minutes, so that more need not be told apart.
    for (at, since) in moment.since_done.iter_mut().enumerate() {
        *since = if moment.done >> at & 1 == 1 { (*since + 1).min(8) } else { 0 };
    }
    moment.since_off = if moment.runs { 0 } else { (moment.since_off + 1).min(8) };
    for left in moment.drains.iter_mut().flatten() {
        *left = left.saturating_sub(1);
    }
    moment.known = moment.known.saturating_sub(1);
    sorted(moment)
}

/// Whether a step could be worked as things are.
fn suits(step: &Step, moment: &Moment) -> bool {
    let lift = match step.lift {
        Lift::Any => true,
        Lift::Floor => !moment.up,
        Lift::Up => moment.up,
        Lift::Back => false,
    };
    lift && step.engine.is_none_or(|runs| runs == moment.runs)
        && (!step.knows || moment.known > 0)
        && step.not_once.is_none_or(|other| moment.done >> other & 1 == 0)
}

fn begin(job: &Instance, moment: &Moment, who: usize, at: usize) -> Option<Moment> {
    let step = &job.steps[at];
    let person = moment.people[who];
    let done = |other: usize| moment.done >> other & 1 == 1;
    let again = done(at) && step.probes && moment.known == 0;
    let in_it = moment
        .people
        .iter()
        .any(|person| matches!(person.doing, Doing::Working(is) | Doing::Staying(is) if is == at));
    let waited = match step.wait {
        Wait::Cures { after, minutes } => done(after) && moment.since_done[after] >= minutes,
        Wait::Cools { minutes } => !moment.runs && moment.since_off >= minutes,
        Wait::Drains { .. } => moment.drains[at].is_none_or(|left| left == 0),
        Wait::No | Wait::Watched { .. } => true,
    };
    let phase_open = (0..job.steps.len()).all(|other| job.steps[other].phase >= step.phase || done(other));
    let allowed = (!done(at) || again)
        && !in_it
        && waited
        && phase_open
        && step.after.iter().all(|&before| done(before))
        && suits(step, moment)
        && [0, step.zone].contains(&person.zone)
        && !something_moves(moment);
    let watched = if let Wait::Watched { minutes } = step.wait { minutes } else { 0 };
    let left = if moment.drains[at] == Some(0) { 0 } else { step.minutes + watched };
    allowed.then(|| with(moment, who, Person { doing: Doing::Working(at), left, zone: step.zone }))
}

fn something_moves(moment: &Moment) -> bool {
    moment.people.iter().any(|person| matches!(person.doing, Doing::Moving(_)))
}

fn make(job: &Instance, moment: &Moment, who: usize, made: VehicleAction) -> Option<Moment> {
    if something_moves(moment) {
        return None;
    }
    let after = moved(job, moment, made)?;
    let left = match made {
        VehicleAction::Raise => job.raise,
        VehicleAction::Lower => job.lower,
        VehicleAction::Start => job.start,
        VehicleAction::Stop => job.stop,
    };
    let zone = moment.people[who].zone;
    Some(if left == 0 { after } else { with(moment, who, Person { doing: Doing::Moving(made), left, zone }) })
}

/// The vehicle after a vehicle action, if it may be made: nobody is in a step that would no longer suit, and no engine runs on the
/// lift.
fn moved(job: &Instance, moment: &Moment, made: VehicleAction) -> Option<Moment> {
    let mut after = moment.clone();
    let may = match made {
        VehicleAction::Raise => job.lifts() && !moment.up,
        VehicleAction::Lower => moment.up,
        VehicleAction::Start => job.runs() && !moment.runs,
        VehicleAction::Stop => moment.runs,
    };
    match made {
        VehicleAction::Raise => after.up = true,
        VehicleAction::Lower => after.up = false,
        VehicleAction::Start => after.runs = true,
        VehicleAction::Stop => after.runs = false,
    }
    if after.runs {
        after.since_off = 0;
    }
    let stands = moment.people.iter().all(|person| match person.doing {
        Doing::Working(step) | Doing::Staying(step) => {
            suits(&job.steps[step], moment) && suits(&job.steps[step], &after)
        }
        _ => true,
    });
    (may && stands && !(after.runs && after.up)).then_some(after)
}

fn end(job: &Instance, moment: &Moment, who: usize) -> Option<Moment> {
    let person = moment.people[who];
    let free = Person { doing: Doing::Free, left: 0, zone: person.zone };
    match person.doing {
        Doing::Free => None,
        Doing::Walking => Some(with(moment, who, free)),
        Doing::Moving(made) => Some(with(&moved(job, moment, made)?, who, free)),
        Doing::Working(at)
            if moment.drains[at].is_none() && matches!(job.steps[at].wait, Wait::Drains { .. }) =>
        {
            let Wait::Drains { minutes } = job.steps[at].wait else { return None };
            let mut next = with(moment, who, Person { doing: Doing::Staying(at), ..person });
            next.drains[at] = Some(minutes);
            Some(next)
        }
        Doing::Working(at) | Doing::Staying(at) => {
            if !suits(&job.steps[at], moment) {
                return None;
            }
            let mut next = with(moment, who, free);
            if next.done >> at & 1 == 0 {
                next.since_done[at] = 0;
            }
            next.done |= 1 << at;
            next.drains[at] = None;
            if job.steps[at].probes {
                next.known = job.fresh;
            }
            Some(next)
        }
    }
}

fn with(moment: &Moment, who: usize, is: Person) -> Moment {
    let mut next = moment.clone();
    next.people[who] = is;
    next
}

/// People are interchangeable.
fn sorted(mut moment: Moment) -> Moment {
    moment.people.sort_unstable();
    moment
}
