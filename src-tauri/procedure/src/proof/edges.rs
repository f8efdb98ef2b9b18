//! The steps between states, three to four bytes each: what kind, and how far the target's number is away.

use std::ops::Range;

use super::graph::grow_gently;

/// What a step means for the ends of the job.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// The technician decides on it, on the way to the end.
    Plain,
    /// The technician decides on it, but no plan counts on it: skipping, stopping.
    NotPlanned,
    /// A gate grows too old.
    Age,
    /// A void.
    Void,
    /// An observation.
    Observe,
    /// The first of so many ways a step can turn out; those that are allowed stand side by side.
    First(u8),
    /// Another way the same step can turn out.
    Further,
}

impl Kind {
    /// Whether a technician plans it.
    pub fn is_plain(self) -> bool {
        matches!(self, Kind::Plain | Kind::First(_) | Kind::Further)
    }

    fn code(self) -> u8 {
        match self {
            Kind::Plain => 0,
            Kind::NotPlanned => 1,
            Kind::Age => 2,
            Kind::Void => 3,
            Kind::Observe => 4,
            Kind::First(_) => 5,
            Kind::Further => 6,
        }
    }
}

/// A step to the state with this number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Edge {
    pub kind: Kind,
    pub to: u32,
}

/// States whose edges begin at a place that is kept.
pub const BLOCK: u32 = 16;

/// The edges of all states that were looked at, in order.
#[derive(Debug, Default)]
pub struct Edges {
    bytes: Vec<u8>,
    /// Where the edges of each block of states begin.
    blocks: Vec<u64>,
    states: u32,
}

/// Edges of a block, and where those of each state end.
#[derive(Debug, Default)]
pub struct Block {
    edges: Vec<Edge>,
    ends: Vec<usize>,
}

impl Block {
    /// States in it.
    pub fn len(&self) -> usize {
        self.ends.len()
    }

    /// The edges of one of its states.
    pub fn of(&self, at: usize) -> &[Edge] {
        let begin = if at == 0 { 0 } else { self.ends[at - 1] };
        &self.edges[begin..self.ends[at]]
    }
}

const SIGN: u8 = 0b0000_1000;
/// Ends the edges of a state.
const END: u8 = 7;

impl Edges {
    /// Bytes taken, spare room included.
    pub fn bytes(&self) -> usize {
        self.bytes.capacity() + self.blocks.capacity() * 8
    }

    /// States whose edges are in it.
    pub fn states(&self) -> u32 {
        self.states
    }

    /// Says that the edges added from here on leave the next state.
    pub fn next_state(&mut self) {
        grow_gently(&mut self.bytes, 1);
        if self.states > 0 {
            self.bytes.push(END);
        }
        if self.states.is_multiple_of(BLOCK) {
            grow_gently(&mut self.blocks, 1);
            self.blocks.push(self.bytes.len() as u64);
        }
        self.states += 1;
    }

    /// Adds an edge to the state last begun.
    pub fn add(&mut self, edge: Edge) {
        let from = self.states - 1;
        let distance = edge.to.abs_diff(from);
        let length = (32 - distance.leading_zeros()).div_ceil(8) as u8;
        let sign = if edge.to < from { SIGN } else { 0 };
        grow_gently(&mut self.bytes, 6);
        self.bytes.push(edge.kind.code() | sign | length << 4);
        if let Kind::First(ways) = edge.kind {
            self.bytes.push(ways);
        }
        // Four bytes are written at once, of which those that are not needed are taken back.
        let end = self.bytes.len() + usize::from(length);
        self.bytes.extend_from_slice(&distance.to_le_bytes());
        self.bytes.truncate(end);
    }

    /// Reads the edges of the states of a block.
    pub fn read(&self, block: u32, into: &mut Block) {
        into.edges.clear();
        into.ends.clear();
        let first = block * BLOCK;
        let begin = self.blocks[block as usize] as usize;
        let mut rest = &self.bytes[begin..];
        for from in first..(first + BLOCK).min(self.states) {
            while let Some((&head, tail)) = rest.split_first() {
                rest = tail;
                if head == END {
                    break;
                }
                let mut ways = 0;
                if head & 7 == 5 {
                    (ways, rest) = rest.split_first().map_or((0, rest), |(ways, tail)| (*ways, tail));
                }
                // Four bytes are read at once, of which those that are not the distance's are cut off.
                let length = usize::from(head >> 4);
                let number =
                    rest.first_chunk().map_or_else(|| last_bytes(rest), |four| u32::from_le_bytes(*four));
                let distance = (u64::from(number) & !(u64::MAX << (8 * length))) as u32;
                rest = rest.get(length..).unwrap_or_default();
                let to = if head & SIGN == 0 { from + distance } else { from - distance };
                into.edges.push(Edge { kind: kind(head & 7, ways), to });
            }
            into.ends.push(into.edges.len());
        }
    }

    /// Shows the edges of states in ascending order.
    pub fn each(&self, states: Range<u32>, mut show: impl FnMut(u32, &[Edge])) {
        let mut block = Block::default();
        let mut number = states.start;
        while number < states.end.min(self.states) {
            self.read(number / BLOCK, &mut block);
            let first = number / BLOCK * BLOCK;
            for at in (number - first) as usize..block.len().min((states.end - first) as usize) {
                show(first + at as u32, block.of(at));
            }
            number = first + BLOCK;
        }
    }

    /// The first of these states that an edge leaves of which this holds.
    pub fn find(&self, states: Range<u32>, wanted: impl Fn(&Edge) -> bool) -> Option<u32> {
        let mut found = None;
        self.each(states, |number, edges| {
            if found.is_none() && edges.iter().any(&wanted) {
                found = Some(number);
            }
        });
        found
    }
}

/// A number of fewer than four bytes at the very end.
fn last_bytes(bytes: &[u8]) -> u32 {
    bytes.iter().rev().fold(0, |number, byte| number << 8 | u32::from(*byte))
}

fn kind(code: u8, ways: u8) -> Kind {
    match code {
        0 => Kind::Plain,
        1 => Kind::NotPlanned,
        2 => Kind::Age,
        3 => Kind::Void,
        4 => Kind::Observe,
        5 => Kind::First(ways),
        _ => Kind::Further,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn edges_are_read_as_they_were_added() {
        let kinds = [
            Kind::Plain,
            Kind::NotPlanned,
            Kind::Age,
            Kind::Void,
            Kind::Observe,
            Kind::First(64),
            Kind::Further,
        ];
        let targets = [0, 1, 40, 255, 256, 70_000, 20_000_000, u32::MAX - 2];
        let mut edges = Edges::default();
        let of = |state: u32| {
            let edge = move |at: usize| Edge {
                kind: kinds[(state as usize + at) % kinds.len()],
                to: targets[(state as usize * 3 + at) % targets.len()],
            };
            (0..state as usize % 5).map(edge).collect::<Vec<_>>()
        };
        for state in 0..100 {
            edges.next_state();
            of(state).into_iter().for_each(|edge| edges.add(edge));
        }
        let mut read = 0;
        edges.each(0..u32::MAX, |state, found| {
            assert_eq!((state, found), (read, of(state).as_slice()));
            read += 1;
        });
        assert_eq!(read, 100);
        let mut some = Vec::new();
        edges.each(17..35, |state, _| some.push(state));
        assert_eq!(some, (17..35).collect::<Vec<_>>());
        assert_eq!(
            edges.find(10..100, |edge| edge.to == 70_000),
            (10..100).find(|state| { of(*state).iter().any(|edge| edge.to == 70_000) })
        );
    }
}
