//! Predicates with names into predicates with fields.
//!
//! Negations are pushed down to the tests. What a gate that is `unknown` means depends on where the predicate
//! stands: a rule never takes it for a yes, a danger always does, and a step's `on` stays undecided.

use std::collections::{BTreeMap, BTreeSet};

use super::Procedure;
use super::names::Names;
use crate::format::sheet::{Value, ValueKind};
use crate::format::{Checklist, Sheet, Zone};
use crate::machine::{Field, Pred, SignIx, StepIx, StepSet, Test, Tree, VarIx, VariableKind};
use crate::predicate::{self, Doing, Expr, Node, PredicateError};

/// Terms within terms deeper than this are refused, so that no file can exhaust the stack.
const DEEPEST_TERMS: usize = 16;
/// A predicate with more parts, its terms written out, is refused, so that no file can exhaust the memory.
const MOST_PARTS: usize = 2_000;

/// Where a predicate stands, and so what it may read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Where {
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

/// The fields that names stand for.
#[derive(Debug, Clone, Default)]
pub(super) struct Fields {
    pub vars: Vec<(Field, VariableKind, u8)>,
    pub steps: Vec<Field>,
    pub signs: Vec<Field>,
    pub items: Vec<(Field, u8)>,
}

pub(super) struct Binder<'a> {
    pub checklist: &'a Checklist,
    pub names: &'a Names,
    pub fields: &'a Fields,
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
    pub fn new(checklist: &'a Checklist, names: &'a Names, fields: &'a Fields) -> Self {
        let terms = checklist.terms.iter().map(|(name, text)| (name.as_str(), predicate::parse(text)));
        Binder { checklist, names, fields, terms: terms.collect() }
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
        let error = |message: String| PredicateError { at: expr.at, message };
        self.parts += match &expr.is {
            Node::Is { values, .. } => values.len(),
            Node::TrayClear => self.binder.fields.items.len().max(1),
            _ => 1,
        };
        if self.parts > MOST_PARTS {
            return Err(error(format!(
                "with its terms written out this has more than {MOST_PARTS} parts; say it shorter"
            )));
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
                Ok(test(self.binder.fields.steps[step.at()], flip(0b0010, negated, 4)))
            }
            Node::Signed(name) => {
                let sign = self.sign(name).map_err(error)?;
                self.work_only("signed").map_err(error)?;
                Ok(test(self.binder.fields.signs[sign.at()], flip(0b010, negated, 3)))
            }
            Node::Empty { item, count, negated: unequal } => {
                let found = self.binder.names.item(item);
                let item = found.ok_or_else(|| error(format!("no item is called \"{item}\"")))?;
                self.work_only("empty").map_err(error)?;
                let (field, most) = self.binder.fields.items[item.at()];
                if *count > most {
                    return Err(error(format!("there are only {most} of these; compare with 0 to {most}")));
                }
                Ok(test(field, flip(1 << count, negated != *unequal, most + 1)))
            }
            Node::TrayClear => {
                self.work_only("tray_clear").map_err(error)?;
                let tests = self.binder.fields.items.iter();
                let tests = tests.map(|&(field, most)| test(field, flip(1, negated, most + 1))).collect();
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
        let error = |message: String| PredicateError { at, message };
        let binder = self.binder;
        let Some(parsed) = binder.terms.get(name) else {
            let message = if self.binder.names.var(name).is_some() {
                format!("\"{name}\" has values: write {name} = value")
            } else {
                format!("no term, condition, fact or gate is called \"{name}\"")
            };
            return Err(error(message));
        };
        if self.open_terms.iter().any(|open| open == name) {
            return Err(error(format!("the term \"{name}\" uses itself")));
        }
        if self.open_terms.len() >= DEEPEST_TERMS {
            return Err(error(format!(
                "terms stand in each other deeper than {DEEPEST_TERMS}; write some of them out"
            )));
        }
        let within = |inner: PredicateError| error(format!("in the term \"{name}\": {inner}"));
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
        let error = |at: usize, message: String| PredicateError { at, message };
        let names = self.binder.names;
        let var = names
            .var(name)
            .ok_or_else(|| error(at, format!("no condition, fact or gate is called \"{name}\"")))?;
        let (field, kind, size) = self.binder.fields.vars[var.at()];
        self.may_read(name, kind).map_err(|message| error(at, message))?;
        let mut bits = 0;
        for (value, at) in values {
            let place = names.value_of(var, value).ok_or_else(|| {
                let choices = names.values(var).iter().filter(|value| *value != "unknown");
                let choices = choices.cloned().collect::<Vec<_>>().join(", ");
                error(*at, format!("\"{value}\" is no value of {name}; it can be {choices}"))
            })?;
            if kind == VariableKind::Gate && place == 0 {
                return Err(error(*at, format!("write \"not known({name})\" instead of {name} = unknown")));
            }
            bits |= 1 << place;
        }
        self.read(var);
        if kind != VariableKind::Gate {
            return Ok(test(field, flip(bits, negated, size)));
        }
        let unknown = 1;
        if negated && self.place_refuses_unknown() && !known.contains(&var) {
            let message = format!(
                "{name} can be unknown, and \"not\" or != would take that for a yes; write \"known({name}) and …\" \
                 or name the classes that do with {name} in {{…}}"
            );
            return Err(error(at, message));
        }
        let known_bits = flip(bits, negated, size) & !unknown;
        Ok(test(field, if self.place == Where::Danger { known_bits | unknown } else { known_bits }))
    }

    fn place_refuses_unknown(&self) -> bool {
        matches!(self.place, Where::Rule | Where::Holds)
    }

    fn may_read(&self, name: &str, kind: VariableKind) -> Result<(), String> {
        match (self.place, kind) {
            (Where::Matter, VariableKind::Gate) => {
                Err(format!("{name} is a gate; only conditions and facts can be read here"))
            }
            (Where::On, VariableKind::Condition) => {
                Err(format!("{name} is a condition; \"on\" reads gates and facts only"))
            }
            _ => Ok(()),
        }
    }

    fn gate(&self, name: &str) -> Result<(VarIx, Field, u8), String> {
        let var = self.binder.names.var(name).ok_or_else(|| format!("no gate is called \"{name}\""))?;
        let (field, kind, size) = self.binder.fields.vars[var.at()];
        if kind != VariableKind::Gate {
            return Err(format!("{name} is never unknown; known(…) is for gates"));
        }
        self.may_read(name, kind)?;
        Ok((var, field, size))
    }

    fn step(&self, name: &str) -> Result<StepIx, String> {
        self.binder.names.step(name).ok_or_else(|| format!("no step is called \"{name}\""))
    }

    fn sign(&self, name: &str) -> Result<SignIx, String> {
        self.binder.names.sign(name).ok_or_else(|| format!("no sign-off is called \"{name}\""))
    }

    fn read(&mut self, var: VarIx) {
        self.reads.vars.insert(var);
        self.reads.more_than_matter |= self.binder.fields.vars[var.at()].1 == VariableKind::Gate;
    }

    /// Marks that more than matter is read, where that is allowed.
    fn work_only(&mut self, what: &str) -> Result<(), String> {
        if matches!(self.place, Where::Rule | Where::Danger) {
            self.reads.more_than_matter = true;
            return Ok(());
        }
        Err(format!(
            "{what} cannot be read here; it can in needs, while, again, done_when, safe_to_leave and dangers"
        ))
    }

    fn may_read_doing(&mut self) -> Result<(), String> {
        if self.place != Where::Danger {
            return Err("what is being done can only be read in dangers".to_owned());
        }
        self.reads.doing = true;
        Ok(())
    }

    fn doing(&mut self, doing: Doing, name: &str, negated: bool) -> Result<Tree, String> {
        self.may_read_doing()?;
        if matches!(doing, Doing::Moving | Doing::Moved) {
            let made = self
                .binder
                .names
                .vehicle_action(name)
                .ok_or_else(|| format!("no vehicle action is called \"{name}\""))?;
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
            return Err(format!("no step has \"{name}\" here, so this can never hold"));
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

/// What a checklist needs and a sheet lacks.
pub(super) fn lacking(procedure: &Procedure, sheet: &Sheet) -> Vec<String> {
    let mut needs: Vec<(String, &str, ValueKind)> = Vec::new();
    for (_, step) in procedure.steps() {
        for entry in &step.entries {
            let who = format!("entry \"{}\" of step \"{}\"", entry.id, step.id);
            needs.extend(entry.ask.sheet_needs().into_iter().map(|need| (who.clone(), need.key, need.kind)));
        }
    }
    let facts = &procedure.checklist.facts;
    needs.extend(
        facts.iter().map(|fact| (format!("fact \"{}\"", fact.id), fact.sheet.as_str(), ValueKind::Fact)),
    );
    let mut lacking: Vec<String> =
        needs.iter().filter_map(|(who, key, kind)| lacks(sheet, who, key, *kind)).collect();
    for fact in facts {
        if let Some(Value::Fact(word)) = sheet.values.get(&fact.sheet).map(|value| &value.is)
            && fact.values.iter().all(|known| known.id != *word)
        {
            let choices: Vec<&str> = fact.values.iter().map(|known| known.id.as_str()).collect();
            let choices = choices.join(", ");
            lacking.push(format!(
                "\"{}\" on the sheet \"{}\" is \"{word}\"; it can be {choices}",
                fact.sheet, sheet.id
            ));
        }
    }
    lacking
}

fn lacks(sheet: &Sheet, who: &str, key: &str, kind: ValueKind) -> Option<String> {
    let (wanted, sheet_id) = (kind.name(), &sheet.id);
    match sheet.values.get(key).map(|value| value.is.kind()) {
        None => Some(format!("{who} needs \"{key}\" on the sheet \"{sheet_id}\": add it as a {wanted}")),
        Some(found) if found != kind => Some(format!(
            "{who} needs \"{key}\" as a {wanted}, but the sheet \"{sheet_id}\" has a {} there",
            found.name()
        )),
        Some(_) => None,
    }
}
