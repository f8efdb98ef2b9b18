//! Can finish, and can stop whatever comes, on the steps that Stateright's search went: two fixpoints, written plainly.

use std::collections::{BTreeMap, HashMap};

use super::bay::{Bay, Deed, Over};

/// From how many observations of a value the job can still finish, and from how many it cannot.
pub type Table = BTreeMap<(String, String), (usize, usize)>;

/// Every state of a search, with what leads out of it.
#[derive(Default)]
pub struct Steps {
    numbers: HashMap<Bay, usize>,
    over: Vec<Over>,
    out: Vec<Vec<(Deed, usize)>>,
}

impl Steps {
    /// The number of a state, which is new or known.
    pub fn number(&mut self, bay: &Bay) -> usize {
        if let Some(&number) = self.numbers.get(bay) {
            return number;
        }
        let number = self.over.len();
        self.numbers.insert(bay.clone(), number);
        self.over.push(bay.over);
        self.out.push(Vec::new());
        number
    }

    pub fn add(&mut self, from: &Bay, deed: Deed, to: &Bay) {
        let (from, to) = (self.number(from), self.number(to));
        self.out[from].push((deed, to));
    }

    pub fn dead_ends(&self) -> usize {
        self.out.iter().filter(|out| out.is_empty()).count()
    }

    /// Adds the states of which this can be said, until it can be said of no other.
    fn until_no_more(&self, mut can: Vec<bool>, leads: impl Fn(usize, &[bool]) -> bool) -> Vec<bool> {
        loop {
            let more: Vec<usize> =
                (0..can.len()).filter(|&state| !can[state] && leads(state, &can)).collect();
            if more.is_empty() {
                return can;
            }
            more.into_iter().for_each(|state| can[state] = true);
        }
    }

    /// States from which what a technician plans (no skipping, no stopping) leads to the finished job, unless a
    /// class ended it.
    pub fn can_finish(&self) -> Vec<bool> {
        let plans = |deed: &Deed| {
            !matches!(deed, Deed::Skip(_) | Deed::Void(_) | Deed::Observe(..) | Deed::Expire(_) | Deed::Stop)
        };
        let finished = self.over.iter().map(|over| *over == Over::Finished).collect();
        self.until_no_more(finished, |state, can| {
            self.over[state] == Over::No && self.out[state].iter().any(|(deed, to)| plans(deed) && can[*to])
        })
    }

    /// States from which the technician can bring about the end or a safe stop, whatever the entries say, though before
    /// each deed one gate may grow too old. `ways` is in how many ways a step can turn out.
    pub fn can_stop(&self, ways: impl Fn(&str) -> usize) -> Vec<bool> {
        let over = self.over.iter().map(|over| matches!(over, Over::Finished | Over::Stopped)).collect();
        self.until_no_more(over, |state, can| {
            // Where one gate may have grown too old on the way there.
            let firm = |to: usize| {
                let mut ages = self.out[to].iter().filter(|(deed, _)| matches!(deed, Deed::Expire(_)));
                can[to] && ages.all(|(_, aged)| can[*aged])
            };
            self.out[state].iter().any(|(deed, to)| match deed {
                Deed::Expire(_) | Deed::Void(_) | Deed::Observe(..) => false,
                Deed::Done(step, _) | Deed::Correct(step, _) => {
                    let same = self.out[state].iter().filter(|(other, _)| same_step(deed, other));
                    same.clone().count() == ways(step) && same.clone().all(|(_, to)| firm(*to))
                }
                _ => firm(*to),
            })
        })
    }

    /// For each value that a running job can be observed to have: whether the job can still finish.
    pub fn after_observing(&self, can_finish: &[bool]) -> Table {
        let mut table = Table::new();
        let running = (0..self.over.len()).filter(|&state| self.over[state] == Over::No);
        for (deed, to) in running.flat_map(|state| &self.out[state]) {
            if let Deed::Observe(name, value) = deed {
                let row = table.entry((name.clone(), value.clone())).or_default();
                let count = if can_finish[*to] { &mut row.0 } else { &mut row.1 };
                *count += 1;
            }
        }
        table
    }
}

fn same_step(one: &Deed, other: &Deed) -> bool {
    match (one, other) {
        (Deed::Done(one, _), Deed::Done(other, _)) | (Deed::Correct(one, _), Deed::Correct(other, _)) => {
            one == other
        }
        _ => false,
    }
}
