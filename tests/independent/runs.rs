//! The runs of a checklist as a model for Stateright: its checker counts what can be reached.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Mutex, PoisonError};

use panside_procedure::format::Checklist;
use stateright::{Checker, Model, Property};

use super::bay::{Bay, Deed, Over, Work};
use super::deeds::Told;
use super::ends::{Steps, Table};
use super::truth::{Hand, Rules};

/// Which runs are searched. All of them with ageing and skipping.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    Plain,
    OneVoid,
    OneObservation,
}

/// What a search found.
#[derive(Debug, PartialEq, Eq)]
pub struct Counted {
    pub states: usize,
    pub transitions: usize,
    /// States that nothing leads out of.
    pub dead_ends: usize,
    /// States from which the end can be reached.
    pub can_finish: usize,
    /// States from which a safe stop can be reached whatever comes.
    pub can_stop: usize,
    /// Whether the job can still finish after an observation.
    pub after_observing: Table,
    pub dangers: BTreeSet<String>,
}

struct Runs {
    rules: Rules,
    kind: Kind,
    /// Filled while the checker asks for what follows on each state.
    met: Mutex<BTreeSet<String>>,
    steps: Mutex<Steps>,
}

/// Counts the states of a checklist with Stateright's breadth-first checker, and works out on the steps it went from
/// where a job can end.
///
/// Stateright keeps a 64-bit hash of each state; at some ten thousand states two that hash alike are out of reach.
pub fn count(checklist: Checklist, kind: Kind) -> Result<Counted, String> {
    let rules = Rules::new(checklist).map_err(|error| error.to_string())?;
    let runs = Runs { rules, kind, met: Mutex::default(), steps: Mutex::default() };
    let starts = runs.init_states().len();
    let checker = runs.checker().threads(1).spawn_bfs().join();
    let runs = checker.model();
    let steps = runs.steps.lock().unwrap_or_else(PoisonError::into_inner);
    let can_finish = steps.can_finish();
    let ways = |id: &str| runs.rules.step(id).map_or(0, |step| Rules::outcomes(step).len());
    let count = |can: &[bool]| can.iter().filter(|can| **can).count();
    Ok(Counted {
        states: checker.unique_state_count(),
        transitions: checker.state_count() - starts,
        dead_ends: steps.dead_ends(),
        can_finish: count(&can_finish),
        can_stop: count(&steps.can_stop(ways)),
        after_observing: steps.after_observing(&can_finish),
        dangers: runs.met.lock().unwrap_or_else(PoisonError::into_inner).clone(),
    })
}

impl Model for Runs {
    type State = Bay;
    type Action = Deed;

    fn init_states(&self) -> Vec<Bay> {
        let mut starts = vec![self.blank()];
        let checklist = &self.rules.checklist;
        let conditions = checklist.conditions.iter().map(|condition| {
            let first = vec![condition.values[0].id.clone()];
            (&condition.id, if condition.start.is_empty() { first } else { condition.start.clone() })
        });
        let facts = checklist.facts.iter();
        let facts = facts
            .map(|fact| (&fact.id, fact.values.iter().map(|value| value.id.clone()).collect::<Vec<_>>()));
        for (name, values) in conditions.chain(facts) {
            let with = |start: &Bay, value: &String| {
                let mut start = start.clone();
                start.matter.insert(name.clone(), value.clone());
                start
            };
            starts =
                starts.iter().flat_map(|start| values.iter().map(move |value| with(start, value))).collect();
        }
        let mut settled = Vec::new();
        for mut start in starts {
            self.rules.settle(&mut start, &mut Vec::new());
            if self.rules.holds(&checklist.start_when, &start) && !settled.contains(&start) {
                self.meet(&self.true_now(&start));
                self.steps.lock().unwrap_or_else(PoisonError::into_inner).number(&start);
                settled.push(start);
            }
        }
        settled
    }

    fn actions(&self, _: &Bay, deeds: &mut Vec<Deed>) {
        deeds.extend(self.all_deeds());
    }

    fn next_state(&self, bay: &Bay, deed: Deed) -> Option<Bay> {
        let (told, next) = self.follow(bay, &deed)?;
        self.meet(&self.met_by(bay, &deed, &told));
        let next = if next.over == Over::Stopped { Bay::stopped() } else { next };
        let mut steps = self.steps.lock().unwrap_or_else(PoisonError::into_inner);
        steps.add(bay, deed, &next);
        Some(next)
    }

    fn properties(&self) -> Vec<Property<Self>> {
        // Without a property that stays open the checker would stop at once.
        vec![Property::always("every state is visited", |_, _| true)]
    }
}

impl Runs {
    fn blank(&self) -> Bay {
        let checklist = &self.rules.checklist;
        Bay {
            matter: BTreeMap::new(),
            known: checklist.gates.iter().map(|gate| (gate.id.clone(), None)).collect(),
            work: self.rules.steps().map(|step| (step.id.clone(), Work::Untouched)).collect(),
            begun: BTreeSet::new(),
            signed: BTreeSet::new(),
            empty: checklist.items.iter().map(|item| (item.id.clone(), 0)).collect(),
            over: Over::No,
            voided_once: false,
            observed_once: false,
            excused: BTreeSet::new(),
        }
    }

    fn all_deeds(&self) -> Vec<Deed> {
        let checklist = &self.rules.checklist;
        let mut deeds = vec![Deed::Finish, Deed::Stop];
        for step in self.rules.steps() {
            let id = &step.id;
            deeds.extend([Deed::Begin(id.clone()), Deed::Leave(id.clone()), Deed::Skip(id.clone())]);
            let outcomes = 0..Rules::outcomes(step).len();
            deeds.extend(outcomes.clone().map(|outcome| Deed::Done(id.clone(), outcome)));
            if self.kind == Kind::OneVoid {
                deeds.push(Deed::Void(id.clone()));
                deeds.extend(outcomes.map(|outcome| Deed::Correct(id.clone(), outcome)));
            }
        }
        deeds.extend(checklist.vehicle_actions.iter().map(|made| Deed::Vehicle(made.id.clone())));
        deeds.extend(checklist.sign_offs.iter().map(|sign| Deed::Sign(sign.id.clone())));
        let ageing = checklist.gates.iter().filter(|gate| gate.fresh_for.is_some());
        deeds.extend(ageing.map(|gate| Deed::Expire(gate.id.clone())));
        if self.kind == Kind::OneObservation {
            for condition in &checklist.conditions {
                let values = condition.values.iter();
                deeds.extend(values.map(|value| Deed::Observe(condition.id.clone(), value.id.clone())));
            }
        }
        deeds
    }

    /// Carries out a deed and marks the state for this search.
    fn follow(&self, bay: &Bay, deed: &Deed) -> Option<(Told, Bay)> {
        let again = match deed {
            Deed::Void(_) => bay.voided_once,
            Deed::Observe(..) => bay.observed_once,
            _ => false,
        };
        if again {
            return None;
        }
        let told = self.rules.carry_out(bay, deed)?;
        let mut next = told.after.clone();
        next.voided_once |= matches!(deed, Deed::Void(_));
        if matches!(deed, Deed::Observe(..)) {
            next.observed_once = true;
            next.excused = self.true_now(&next);
        } else {
            // Excused while they stay true.
            next.excused = &next.excused & &self.true_now(&next);
        }
        Some((told, next))
    }

    fn meet(&self, dangers: &BTreeSet<String>) {
        let mut met = self.met.lock().unwrap_or_else(PoisonError::into_inner);
        met.extend(dangers.iter().cloned());
    }

    fn true_now(&self, bay: &Bay) -> BTreeSet<String> {
        let dangers = self.rules.checklist.dangers.iter();
        let now = dangers.filter(|danger| self.rules.is_danger(&danger.when, bay, Hand::Still));
        now.map(|danger| danger.id.clone()).collect()
    }

    /// The dangers a deed meets: those of the vehicle at every moment, those of what is done only when the deed
    /// begins work or changes a condition. A vehicle action is judged before and after it, the end of the job before it.
    fn met_by(&self, before: &Bay, deed: &Deed, told: &Told) -> BTreeSet<String> {
        if matches!(deed, Deed::Observe(..)) {
            return BTreeSet::new();
        }
        let judged_doing = matches!(deed, Deed::Begin(_))
            || told.moments.iter().any(|moment| moment.matter != before.matter);
        let hand = if let Deed::Vehicle(id) = deed { Hand::Moved(id) } else { Hand::Still };
        let mut met = BTreeSet::new();
        for danger in &self.rules.checklist.dangers {
            let doing = self.rules.reads_doing(&danger.when);
            let mut moments = told.moments.iter();
            let shows = (!doing || judged_doing)
                && moments.any(|moment| self.rules.is_danger(&danger.when, moment, hand));
            let shows_before = match deed {
                Deed::Vehicle(id) => doing && self.rules.is_danger(&danger.when, before, Hand::Moving(id)),
                Deed::Finish | Deed::Stop => {
                    self.rules.reads_leaving(&danger.when)
                        && self.rules.is_danger(&danger.when, before, Hand::Leaving)
                }
                _ => false,
            };
            // Nobody may begin, end or move anything into a danger of doing, or leave it so, excused or not.
            let strict = doing
                && matches!(
                    deed,
                    Deed::Begin(_) | Deed::Done(..) | Deed::Vehicle(_) | Deed::Finish | Deed::Stop
                );
            if (shows || shows_before) && (strict || !before.excused.contains(&danger.id)) {
                met.insert(danger.id.clone());
            }
        }
        met
    }
}
