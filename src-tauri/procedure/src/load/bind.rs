//! Predicates with names into predicates with fields.
//!
//! Negations are pushed down to the tests. What a gate that is `unknown` means depends on where the predicate
//! stands: a rule never takes it for a yes, a danger always does, and a step's `on` stays undecided.

use std::collections::{BTreeMap, BTreeSet};

use panside_messages::{Arg, Message};

use super::names::Names;
use crate::format::{Checklist, Zone};
use crate::machine::{Field, Pred, SignIx, StepIx, StepSet, Test, Tree, VarIx, VariableKind};
use crate::message::*;
use crate::predicate::{self, Doing, Expr, Node, PredicateError};

/// Terms within terms deeper than this are refused, so that no file can exhaust the stack.
const DEEPEST_TERMS: usize = 16;
/// A predicate with more parts, its terms written out, is refused, so that no file can exhaust the memory.
const MOST_PARTS: usize = 2_000;

/// Where a predicate stands, and so what it may read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Where {
    /// `on` of an entry or an item: facts.
    Vehicle,
    /// `start_when` and `follows`: conditions and facts.
    Matter,
    /// A step's `on`: gates and facts.
    On,
    /// `holds_while`: conditions, facts and gates.
    Holds,
    /// `needs`, `while`, `again`, `done_when`, `safe_to_leave`.
    Rule,
    /// A danger: also what is being done.
    Danger,
}

/// What a compiled predicate has read.
#[derive(Debug, Clone, Default)]
pub(super) struct Reads {
    pub vars: BTreeSet<VarIx>,
    /// Gates, sign-offs, steps or items were read.
    pub more_than_matter: bool,
    /// What is being done was read.
    pub doing: bool,
}

/// What is known of a vehicle: nothing of any, all of the one that a checklist is fitted to.
#[derive(Debug, Clone, Default)]
pub(super) struct Known {
    /// Its facts, as values of variables.
    pub facts: BTreeMap<VarIx, u8>,
    /// Steps that are part of no job on it.
    pub off: BTreeSet<StepIx>,
}

/// The fields that names stand for.
#[derive(Debug, Clone, Default)]
pub(super) struct Fields {
    pub vars: Vec<(Field, VariableKind, u8)>,
    pub steps: Vec<Field>,
    pub signs: Vec<Field>,
    pub items: Vec<(Field, u8)>,
    /// Whether a piece is off that the checklist does not know.
    pub piece_off: Option<Field>,
}

pub(super) struct Binder<'a> {
    pub checklist: &'a Checklist,
    pub names: &'a Names,
    pub fields: &'a Fields,
    /// What hangs on these is settled.
    pub known: &'a Known,
    /// Every term, parsed once.
    terms: BTreeMap<&'a str, Result<Expr, PredicateError>>,
}

struct Pass<'a> {
    binder: &'a Binder<'a>,
    place: Where,
    reads: Reads,
    open_terms: Vec<String>,
    parts: usize,
}

impl<'a> Binder<'a> {
    pub fn new(checklist: &'a Checklist, names: &'a Names, fields: &'a Fields, known: &'a Known) -> Self {
        let terms = checklist.terms.iter().map(|(name, text)| (name.as_str(), predicate::parse(text)));
        Binder { checklist, names, fields, known, terms: terms.collect() }
    }

    /// Compiles a predicate, or, with `negated`, its opposite.
    pub fn compile(&self, text: &str, place: Where, negated: bool) -> Result<(Pred, Reads), PredicateError> {
        let expr = predicate::parse(text)?;
        let mut pass =
            Pass { binder: self, place, reads: Reads::default(), open_terms: Vec::new(), parts: 0 };
        let pred = pass.bind(&expr, negated, &BTreeSet::new())?;
        Ok((pred.into(), pass.reads))
    }
}

impl Pass<'_> {
    fn bind(&mut self, expr: &Expr, negated: bool, known: &BTreeSet<VarIx>) -> Result<Tree, PredicateError> {
        let error = |what: Message| PredicateError { at: expr.at, what };
        self.parts += match &expr.is {
            Node::Is { values, .. } => values.len(),
            Node::TrayClear => self.binder.fields.items.len() + 1,
            _ => 1,
        };
        if self.parts > MOST_PARTS {
            return Err(error(predicate_parts(MOST_PARTS)));
        }
        match &expr.is {
            Node::Const(value) => Ok(Tree::Const(*value != negated)),
            Node::Not(inner) => self.bind(inner, !negated, known),
            Node::All(parts) | Node::Any(parts) => {
                let all = matches!(expr.is, Node::All(_)) != negated;
                let mut known = known.clone();
                if all {
                    known.extend(parts.iter().filter_map(|part| self.says_known(part, negated)));
                }
                let parts = parts
                    .iter()
                    .map(|part| self.bind(part, negated, &known))
                    .collect::<Result<Vec<_>, _>>()?;
                Ok(joined(parts, all))
            }
            Node::Term(name) => self.term(name, expr.at, negated, known),
            Node::Is { name, values, negated: unequal } => {
                self.is(name, values, negated != *unequal, known, expr.at)
            }
            Node::Known(name) => {
                let (var, field, size) = self.gate(name).map_err(error)?;
                self.read(var);
                let unknown = 1;
                Ok(test(field, if negated { unknown } else { all_values(size) & !unknown }))
            }
            Node::Worked(name) => {
                let step = self.step(name).map_err(error)?;
                self.work_only("worked").map_err(error)?;
                if self.binder.known.off.contains(&step) {
                    return Ok(Tree::Const(negated));
                }
                Ok(test(self.binder.fields.steps[step.at()], flip(0b0010, negated, 4)))
            }
            Node::Signed(name) => {
                let sign = self.sign(name).map_err(error)?;
                self.work_only("signed").map_err(error)?;
                Ok(test(self.binder.fields.signs[sign.at()], flip(0b010, negated, 3)))
            }
            Node::Empty { item, count, negated: unequal } => {
                let found = self.binder.names.item(item);
                let item = found.ok_or_else(|| error(problem_no_item(item)))?;
                self.work_only("empty").map_err(error)?;
                let (field, most) = self.binder.fields.items[item.at()];
                if *count > most {
                    return Err(error(predicate_pieces(u32::from(most))));
                }
                Ok(test(field, flip(1 << count, negated != *unequal, most + 1)))
            }
            Node::TrayClear => {
                self.work_only("tray_clear").map_err(error)?;
                // A piece that the checklist does not know must permit nothing, only forbid.
                if negated && self.place == Where::Rule {
                    return Err(error(predicate_tray_not_clear()));
                }
                let items = self.binder.fields.items.iter().copied();
                let places = items.chain(self.binder.fields.piece_off.map(|field| (field, 1)));
                let tests = places.map(|(field, most)| test(field, flip(1, negated, most + 1))).collect();
                Ok(if negated { Tree::Any(tests) } else { Tree::All(tests) })
            }
            Node::Doing(doing, name) => self.doing(*doing, name, negated).map_err(error),
            Node::Leaving => {
                self.may_read_doing().map_err(error)?;
                Ok(Tree::Test(Test::Leaving(!negated)))
            }
        }
    }

    /// The gate that a part of a conjunction says is known.
    fn says_known(&self, part: &Expr, negated: bool) -> Option<VarIx> {
        match (&part.is, negated) {
            (Node::Known(name), false) => self.binder.names.var(name),
            (Node::Not(inner), true) => self.says_known(inner, false),
            _ => None,
        }
    }

    fn term(
        &mut self,
        name: &str,
        at: usize,
        negated: bool,
        known: &BTreeSet<VarIx>,
    ) -> Result<Tree, PredicateError> {
        let error = |what: Message| PredicateError { at, what };
        let binder = self.binder;
        let Some(parsed) = binder.terms.get(name) else {
            let has_values = self.binder.names.var(name).is_some();
            return Err(error(if has_values {
                predicate_write_value(name)
            } else {
                predicate_no_term(name)
            }));
        };
        if self.open_terms.iter().any(|open| open == name) {
            return Err(error(predicate_term_ring(name)));
        }
        if self.open_terms.len() >= DEEPEST_TERMS {
            return Err(error(predicate_terms_deep(DEEPEST_TERMS)));
        }
        let within = |inner: PredicateError| error(predicate_in_term(name, inner.message()));
        let expr = parsed.as_ref().map_err(|inner| within(inner.clone()))?;
        self.open_terms.push(name.to_owned());
        let pred = self.bind(expr, negated, known).map_err(within)?;
        self.open_terms.pop();
        Ok(pred)
    }

    fn is(
        &mut self,
        name: &str,
        values: &[(String, usize)],
        negated: bool,
        known: &BTreeSet<VarIx>,
        at: usize,
    ) -> Result<Tree, PredicateError> {
        let error = |at: usize, what: Message| PredicateError { at, what };
        let names = self.binder.names;
        let var = names.var(name).ok_or_else(|| error(at, predicate_no_variable(name)))?;
        let (field, kind, size) = self.binder.fields.vars[var.at()];
        self.may_read(name, kind).map_err(|what| error(at, what))?;
        let mut bits = 0;
        for (value, at) in values {
            let place = names.value_of(var, value).ok_or_else(|| {
                let choices = names.values(var).iter().filter(|value| *value != "unknown");
                error(*at, problem_no_value_but(value, name, Arg::AnyOf(choices.cloned().collect())))
            })?;
            if kind == VariableKind::Gate && place == 0 {
                return Err(error(*at, predicate_write_unknown(name)));
            }
            bits |= 1 << place;
        }
        self.read(var);
        if let Some(value) = self.binder.known.facts.get(&var) {
            return Ok(Tree::Const((bits >> value & 1 == 1) != negated));
        }
        if kind != VariableKind::Gate {
            return Ok(test(field, flip(bits, negated, size)));
        }
        let unknown = 1;
        if negated && self.place_refuses_unknown() && !known.contains(&var) {
            return Err(error(at, predicate_unknown_yes(name)));
        }
        let known_bits = flip(bits, negated, size) & !unknown;
        Ok(test(field, if self.place == Where::Danger { known_bits | unknown } else { known_bits }))
    }

    fn place_refuses_unknown(&self) -> bool {
        matches!(self.place, Where::Rule | Where::Holds)
    }

    fn may_read(&self, name: &str, kind: VariableKind) -> Result<(), Message> {
        match (self.place, kind) {
            (Where::Vehicle, kind) if kind != VariableKind::Fact => Err(predicate_fact_here(name)),
            (Where::Matter, VariableKind::Gate) => Err(predicate_gate_here(name)),
            (Where::On, VariableKind::Condition) => Err(predicate_condition_here(name)),
            _ => Ok(()),
        }
    }

    fn gate(&self, name: &str) -> Result<(VarIx, Field, u8), Message> {
        let var = self.binder.names.var(name).ok_or_else(|| predicate_no_gate(name))?;
        let (field, kind, size) = self.binder.fields.vars[var.at()];
        if kind != VariableKind::Gate {
            return Err(predicate_never_unknown(name));
        }
        self.may_read(name, kind)?;
        Ok((var, field, size))
    }

    fn step(&self, name: &str) -> Result<StepIx, Message> {
        self.binder.names.step(name).ok_or_else(|| problem_no_step(name))
    }

    fn sign(&self, name: &str) -> Result<SignIx, Message> {
        self.binder.names.sign(name).ok_or_else(|| problem_no_sign_off(name))
    }

    fn read(&mut self, var: VarIx) {
        self.reads.vars.insert(var);
        self.reads.more_than_matter |= self.binder.fields.vars[var.at()].1 == VariableKind::Gate;
    }

    /// Marks that more than matter is read, where that is allowed.
    fn work_only(&mut self, what: &str) -> Result<(), Message> {
        if matches!(self.place, Where::Rule | Where::Danger) {
            self.reads.more_than_matter = true;
            return Ok(());
        }
        Err(predicate_not_here(what))
    }

    fn may_read_doing(&mut self) -> Result<(), Message> {
        if self.place != Where::Danger {
            return Err(predicate_doing_here());
        }
        self.reads.doing = true;
        Ok(())
    }

    fn doing(&mut self, doing: Doing, name: &str, negated: bool) -> Result<Tree, Message> {
        self.may_read_doing()?;
        if matches!(doing, Doing::Moving | Doing::Moved) {
            let made = self.binder.names.vehicle_action(name);
            let made = made.ok_or_else(|| predicate_no_vehicle_action(name))?;
            let test = if doing == Doing::Moving { Test::Moving } else { Test::Moved };
            return Ok(Tree::Test(test(made, !negated)));
        }
        let mut steps = StepSet::default();
        let all = self.binder.checklist.phases.iter().flat_map(|phase| &phase.steps);
        for (at, step) in all.enumerate() {
            let matches = match doing {
                Doing::Zone => zone_name(step.zone) == name,
                Doing::Touches => step.touches.iter().any(|part| part == name),
                _ => step.tags.iter().any(|tag| tag == name),
            };
            if matches {
                steps.insert(StepIx::of(at));
            }
        }
        if steps.is_empty() {
            return Err(predicate_nowhere(name));
        }
        Ok(Tree::Test(Test::Doing(steps, !negated)))
    }
}

fn zone_name(zone: Zone) -> &'static str {
    match zone {
        Zone::Under => "under",
        Zone::EngineBay => "engine_bay",
        Zone::Cabin => "cabin",
        Zone::Bench => "bench",
    }
}

/// Every one of the parts, or at least one of them; parts that are joined in the same way are taken apart, so that
/// a predicate is no deeper than it must be.
fn joined(parts: Vec<Tree>, all: bool) -> Tree {
    let mut flat = Vec::new();
    for part in parts {
        match part {
            Tree::All(inner) if all => flat.extend(inner),
            Tree::Any(inner) if !all => flat.extend(inner),
            other => flat.push(other),
        }
    }
    if all { Tree::All(flat) } else { Tree::Any(flat) }
}

fn test(field: Field, values: u64) -> Tree {
    Tree::Test(Test::In { field, values })
}

fn all_values(size: u8) -> u64 {
    u64::MAX >> (64 - u32::from(size.max(1)))
}

fn flip(bits: u64, negated: bool, size: u8) -> u64 {
    if negated { all_values(size) & !bits } else { bits }
}
