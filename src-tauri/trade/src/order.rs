//! The order in which the bolts of a cover are tightened, from where they sit, and which bolt is next.

use serde::{Deserialize, Serialize};

use crate::FigureError;
use crate::measure::Length;
use crate::message::working::*;
use crate::source;
use crate::working::{Worked, Working};

/// Distances that differ by less than this part of the layout's size count as equal: a drawing is no finer.
const SAME: f64 = 1e-6;

/// A bolt and where it sits. The axes are those of any drawing, y upwards.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bolt {
    /// What it is called, each once.
    pub id: String,
    /// To the right.
    pub x: Length,
    /// Upwards.
    pub y: Length,
}

/// How the order runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Pattern {
    /// For a ring of bolts: opposite, quarter, opposite, and so on to the gaps between.
    Star,
    /// From the middle out, each bolt followed by the one opposite: for pans and covers.
    Crosswise,
    /// From the middle out, round and round: for plates with bolts inside, such as valve bodies.
    Spiral,
}

/// An order of bolts, and what it was made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct BoltOrder {
    /// The bolts as given.
    pub bolts: Vec<Bolt>,
    /// How the order runs.
    pub pattern: Pattern,
    /// Ids in their order; the same in each stage.
    pub order: Vec<String>,
}

/// A layout to reckon with: each bolt as seen from the middle, in parts of the layout's size.
struct Layout {
    places: Vec<(f64, f64)>,
}

impl Layout {
    fn of(bolts: &[Bolt]) -> Result<Layout, FigureError> {
        for (index, bolt) in bolts.iter().enumerate() {
            let earlier = bolts.iter().take(index);
            if earlier.clone().any(|other| other.id == bolt.id) {
                return Err(FigureError::BoltTwice { id: bolt.id.clone() });
            }
            if let Some(other) = earlier.clone().find(|other| other.x == bolt.x && other.y == bolt.y) {
                return Err(FigureError::BoltsInOnePlace {
                    first: other.id.clone(),
                    second: bolt.id.clone(),
                });
            }
        }
        let count = bolts.len() as f64;
        let mean = |axis: fn(&Bolt) -> f64| bolts.iter().map(axis).sum::<f64>() / count;
        let (x, y) = (mean(|bolt| bolt.x.millimetres()), mean(|bolt| bolt.y.millimetres()));
        let seen = |bolt: &Bolt| (bolt.x.millimetres() - x, bolt.y.millimetres() - y);
        let places: Vec<(f64, f64)> = bolts.iter().map(seen).collect();
        let size = places.iter().map(|(x, y)| x.hypot(*y)).fold(f64::MIN_POSITIVE, f64::max);
        Ok(Layout { places: places.into_iter().map(|(x, y)| (x / size, y / size)).collect() })
    }

    fn radius(&self, bolt: usize) -> f64 {
        self.places.get(bolt).map_or(f64::INFINITY, |(x, y)| x.hypot(*y))
    }

    /// Angle around the middle, clockwise from the top, from 0 to 2π. The bolt in the middle has 0.
    fn clockwise(&self, bolt: usize) -> f64 {
        let (x, y) = self.places.get(bolt).copied().unwrap_or_default();
        if x.hypot(y) < SAME {
            return 0.0;
        }
        let angle = x.atan2(y).rem_euclid(std::f64::consts::TAU);
        // What lies a hair before the top is at the top.
        if std::f64::consts::TAU - angle < SAME { 0.0 } else { angle }
    }

    /// The bolt among `left` with the least `cost`; of equals the first.
    fn least(left: &[usize], cost: impl Fn(usize) -> f64) -> Option<usize> {
        let lowest = left.iter().map(|bolt| cost(*bolt)).fold(f64::INFINITY, f64::min);
        left.iter().copied().find(|bolt| cost(*bolt) <= lowest + SAME)
    }

    /// Bolts by their angle, clockwise from the top.
    fn around(&self) -> Vec<usize> {
        let mut left: Vec<usize> = (0..self.places.len()).collect();
        let mut ring = Vec::new();
        while let Some(next) = Layout::least(&left, |bolt| self.clockwise(bolt)) {
            left.retain(|bolt| *bolt != next);
            ring.push(next);
        }
        ring
    }

    fn crosswise(&self) -> Vec<usize> {
        let mut left: Vec<usize> = (0..self.places.len()).collect();
        let mut order = Vec::new();
        while let Some(near) = Layout::least(&left, |bolt| self.radius(bolt)) {
            left.retain(|bolt| *bolt != near);
            order.push(near);
            // A bolt in the middle has none opposite.
            let (x, y) = self.places.get(near).copied().unwrap_or_default();
            if self.radius(near) < SAME {
                continue;
            }
            let from_opposite = |bolt: usize| {
                self.places
                    .get(bolt)
                    .map_or(f64::INFINITY, |(other_x, other_y)| (x + other_x).hypot(y + other_y))
            };
            if let Some(opposite) = Layout::least(&left, from_opposite) {
                left.retain(|bolt| *bolt != opposite);
                order.push(opposite);
            }
        }
        order
    }

    fn spiral(&self) -> Vec<usize> {
        let mut left: Vec<usize> = (0..self.places.len()).collect();
        let mut order: Vec<usize> = Vec::new();
        while let Some(near) = Layout::least(&left, |bolt| self.radius(bolt)) {
            // Of those equally near, the first one clockwise from the last.
            let equal: Vec<usize> =
                left.iter().copied().filter(|bolt| self.radius(*bolt) <= self.radius(near) + SAME).collect();
            let from = order.last().map_or(0.0, |last| self.clockwise(*last));
            let onward = |bolt: usize| {
                let turn = (self.clockwise(bolt) - from).rem_euclid(std::f64::consts::TAU);
                if std::f64::consts::TAU - turn < SAME { 0.0 } else { turn }
            };
            let Some(next) = Layout::least(&equal, onward) else { break };
            left.retain(|bolt| *bolt != next);
            order.push(next);
        }
        order
    }
}

/// Places on a ring of so many in star order, counted from 0.
///
/// Multiples of four go by fours: opposite, quarter, opposite; the fours themselves follow with gaps between them, so
/// that no two next to each other follow. Other even rings go by pairs, odd ones by nearly half a turn.
fn star(count: usize) -> Vec<usize> {
    match count {
        0..=3 => (0..count).collect(),
        _ if count.is_multiple_of(4) => {
            let quarter = count / 4;
            let fours = apart(quarter);
            fours.into_iter().flat_map(|at| [at, at + 2 * quarter, at + quarter, at + 3 * quarter]).collect()
        }
        _ if count.is_multiple_of(2) => {
            let half = count / 2;
            apart(half).into_iter().flat_map(|at| [at, at + half]).collect()
        }
        // One after the next but one: the five-pointed star for five.
        _ => (0..count).map(|index| index * 2 % count).collect(),
    }
}

/// So many neighbours in an order that keeps them apart where that can be.
fn apart(count: usize) -> Vec<usize> {
    match count {
        0..=3 => (0..count).collect(),
        _ if count.is_multiple_of(2) => {
            apart(count / 2).into_iter().flat_map(|at| [at, at + count / 2]).collect()
        }
        _ => (0..count).step_by(2).chain((1..count).step_by(2)).collect(),
    }
}

/// Finds the order of a cover's bolts. Where it is turned, shifted or scaled does not matter, apart from bolts that
/// are equally near: there the one given first comes first.
///
/// # Errors
/// [`FigureError::NoBolts`], [`FigureError::BoltTwice`] and [`FigureError::BoltsInOnePlace`].
pub fn bolt_order(bolts: &[Bolt], pattern: Pattern) -> Result<BoltOrder, FigureError> {
    if bolts.is_empty() {
        return Err(FigureError::NoBolts);
    }
    let layout = Layout::of(bolts)?;
    let order = match pattern {
        Pattern::Star => {
            let ring = layout.around();
            star(ring.len()).into_iter().filter_map(|place| ring.get(place).copied()).collect()
        }
        Pattern::Crosswise => layout.crosswise(),
        Pattern::Spiral => layout.spiral(),
    };
    let order = order.into_iter().filter_map(|bolt| bolts.get(bolt)).map(|bolt| bolt.id.clone()).collect();
    Ok(BoltOrder { bolts: bolts.to_vec(), pattern, order })
}

impl BoltOrder {
    /// The next bolt of a stage after those that are done, in whatever order they were; nothing once all are done.
    ///
    /// # Errors
    /// [`FigureError::BoltUnknown`] for an id that is none of these.
    pub fn next(&self, done: &[String]) -> Result<Option<&str>, FigureError> {
        if let Some(id) = done.iter().find(|id| !self.order.contains(id)) {
            return Err(FigureError::BoltUnknown { id: id.clone() });
        }
        Ok(self.order.iter().find(|id| !done.contains(id)).map(String::as_str))
    }
}

impl BoltOrder {
    /// How the order came about, and which bolt of a stage is the next after those that are done.
    ///
    /// # Errors
    /// As [`BoltOrder::next`].
    pub fn working_after(&self, done: &[String]) -> Result<Working, FigureError> {
        let next = self.next(done)?.map_or_else(working_order_done, working_order_next);
        Ok(self.working().answer(next))
    }
}

impl Worked for BoltOrder {
    fn working(&self) -> Working {
        let (pattern, source) = match self.pattern {
            Pattern::Star => (working_order_star(), source::star()),
            Pattern::Crosswise => (working_order_crosswise(), source::from_the_middle()),
            Pattern::Spiral => (working_order_spiral(), source::from_the_middle()),
        };
        let mut working = Working::of(working_order()).given(working_order_pattern(), pattern);
        for bolt in &self.bolts {
            working = working.given(working_order_bolt(&bolt.id), format!("{}, {}", bolt.x, bolt.y));
        }
        working
            .answer(working_order_is(self.order.join(", ")))
            .answer(working_order_stages())
            .sources([source])
    }
}
