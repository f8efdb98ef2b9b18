//! A checklist into a Machine.

use std::collections::{BTreeMap, BTreeSet};

use panside_messages::Message;

use super::bind::{Binder, Fields, Known, Reads, Where};
use super::check;
use super::names::Names;
use super::outcomes::{MOST_OUTCOMES, OutcomeTable};
use super::phases::phases;
use super::place::Places;
use super::vehicle::{Fit, There};
use super::voided::add_voided_with;
use super::{MOST_PROBLEMS, Problem, Problems, Procedure, sizes};
use crate::format::{Assignments, Checklist, ClassEffect, Ends, Pieces, SignKind, Step};
use crate::machine::{
    Assign, DangerRule, DependencyIndex, FollowRule, ItemIx, ItemRule, Layout, Machine, Outcome, PhaseIx,
    Pred, SignIx, SignRule, StepIx, StepRule, Tree, VarIx, Variable, VariableKind, VehicleActionRule, WORDS,
};
use crate::message::*;

pub(super) fn procedure(checklist: Checklist, places: &Places, known: &Known) -> Result<Procedure, Problems> {
    let mut problems = sizes::sizes(&checklist, places);
    let fits = problems.is_empty();
    let names = Names::of(&checklist, places, &mut problems);
    if !fits {
        // What is out of bounds has no room in a state and no bit in a test.
        return Err(Problems(sorted(problems)));
    }
    if problems.is_empty() {
        problems.extend(check::rules(&checklist, &names, places));
    }
    let mut layout = Layout::default();
    let Some(fields) = fields(&checklist, &mut layout) else {
        problems.push(check::at(places, "", problem_state(WORDS * 64)));
        return Err(Problems(sorted(problems)));
    };
    let step_places: Vec<(usize, usize)> = checklist
        .phases
        .iter()
        .enumerate()
        .flat_map(|(phase, is)| (0..is.steps.len()).map(move |step| (phase, step)))
        .collect();
    let binder = Binder::new(&checklist, &names, &fields, known);
    let mut builder = Builder { binder: &binder, places, problems, outcomes: Vec::new(), since: Vec::new() };
    let there = builder.there();
    let machine = builder.machine(layout);
    let Builder { problems, outcomes, since, .. } = builder;
    if problems.is_empty() {
        let places = places.clone();
        Ok(Procedure {
            checklist,
            machine,
            names,
            outcomes,
            since,
            step_places,
            places,
            fit: Fit::default(),
            known: known.clone(),
            there,
        })
    } else {
        Err(Problems(sorted(problems)))
    }
}

fn sorted(mut problems: Vec<Problem>) -> Vec<Problem> {
    problems.sort();
    problems.dedup();
    problems.truncate(MOST_PROBLEMS);
    problems
}

/// Room for everything, or nothing when the state is too small.
fn fields(checklist: &Checklist, layout: &mut Layout) -> Option<Fields> {
    let mut fields = Fields::default();
    let steps = checklist.phases.iter().map(|phase| phase.steps.len()).sum::<usize>();
    for _ in 0..steps {
        // The work fields stand first and side by side: a phase is tested a word at a time.
        fields.steps.push(layout.take(3)?);
    }
    for _ in 0..checklist.crew {
        let field = layout.take(steps as u64)?;
        layout.begun.push(field);
    }
    layout.over = Some(layout.take(3)?);
    layout.end_work();
    let variable = |layout: &mut Layout, kind, size: usize| {
        let field = layout.take((size.max(1) - 1) as u64)?;
        Some((field, kind, u8::try_from(size).unwrap_or(u8::MAX)))
    };
    for condition in &checklist.conditions {
        let var = variable(layout, VariableKind::Condition, condition.values.len())?;
        layout.matter[usize::from(var.0.word)] |= var.0.bits();
        fields.vars.push(var);
    }
    for fact in &checklist.facts {
        fields.vars.push(variable(layout, VariableKind::Fact, fact.values.len())?);
    }
    for gate in &checklist.gates {
        fields.vars.push(variable(layout, VariableKind::Gate, gate.classes.len() + 1)?);
    }
    for _ in &checklist.sign_offs {
        let field = layout.take(2)?;
        layout.lapsed_bits[usize::from(field.word)] |= 2 << field.shift;
        fields.signs.push(field);
    }
    for item in &checklist.items {
        fields.items.push((layout.take(u64::from(item.count))?, item.count));
    }
    layout.piece_off = Some(layout.take(1)?);
    fields.piece_off = layout.piece_off;
    layout.voided_once = Some(layout.take(1)?);
    layout.observed_once = Some(layout.take(1)?);
    layout.excused = layout.take_bits(checklist.dangers.len())?;
    Some(fields)
}

struct Builder<'a> {
    binder: &'a Binder<'a>,
    places: &'a Places,
    problems: Vec<Problem>,
    outcomes: Vec<OutcomeTable>,
    /// By step: since when its wait runs.
    since: Vec<Option<Pred>>,
}

impl Builder<'_> {
    fn problem(&mut self, place: &str, what: Message) {
        self.problems.push(check::at(self.places, place, what));
    }

    fn pred(&mut self, text: &str, place: &str, stands: Where, negated: bool) -> (Pred, Reads) {
        match self.binder.compile(text, stands, negated) {
            Ok(found) => found,
            Err(error) => {
                self.problem(place, error.message());
                (Tree::Const(false).into(), Reads::default())
            }
        }
    }

    fn rule(&mut self, text: &str, place: &str) -> Pred {
        self.pred(text, place, Where::Rule, false).0
    }

    /// When what hangs on the vehicle is there.
    fn there(&mut self) -> There {
        let checklist = self.binder.checklist;
        let mut there = There::default();
        for (at, item) in checklist.items.iter().enumerate() {
            if let Some(on) = &item.on {
                let on = self.pred(on, &format!("/items/{at}/on"), Where::Vehicle, false).0;
                there.items.push((item.id.clone(), on));
            }
        }
        for (at, condition) in checklist.conditions.iter().enumerate() {
            if let Some(on) = &condition.on {
                let on = self.pred(on, &format!("/conditions/{at}/on"), Where::Vehicle, false).0;
                there.conditions.push((condition.id.clone(), on));
            }
        }
        for (number, (place, step)) in check::steps(checklist).enumerate() {
            for (at, entry) in step.entries.iter().enumerate() {
                if let Some(on) = &entry.on {
                    let on = self.pred(on, &format!("{place}/entries/{at}/on"), Where::Vehicle, false).0;
                    there.entries.push((StepIx::of(number), entry.id.clone(), on));
                }
            }
        }
        there
    }

    fn machine(&mut self, layout: Layout) -> Machine {
        let checklist = self.binder.checklist;
        let dangers = self.dangers();
        let vars = self.variables();
        let mut steps = Vec::new();
        for (phase_at, phase) in checklist.phases.iter().enumerate() {
            for (at, step) in phase.steps.iter().enumerate() {
                let rule = self.step(
                    step,
                    PhaseIx::of(phase_at),
                    steps.len(),
                    &format!("/phases/{phase_at}/steps/{at}"),
                );
                steps.push(rule);
            }
        }
        add_voided_with(&mut steps);
        let vehicle_actions =
            checklist.vehicle_actions.iter().enumerate().map(|(at, made)| VehicleActionRule {
                needs: self.rule(&made.needs, &format!("/vehicle_actions/{at}/needs")),
                makes: self.assign(&made.makes),
            });
        let vehicle_actions = vehicle_actions.collect();
        let signs = self.signs();
        let follows = checklist.follows.iter().enumerate().map(|(at, follow)| {
            let when = self.pred(&follow.when, &format!("/follows/{at}/when"), Where::Matter, false).0;
            let mut assign = self.assign(&follow.makes);
            assign.edits.extend(self.assign(&follow.sets).edits);
            FollowRule { when, assign }
        });
        let follows = follows.collect();
        let items =
            self.binder.fields.items.iter().map(|&(field, count)| ItemRule { field, count }).collect();
        Machine {
            layout,
            vars,
            phases: phases(checklist, &steps, self.binder.names),
            steps,
            vehicle_actions,
            signs,
            items,
            follows,
            dangers,
            done_when: self.rule(&checklist.done_when, "/done_when"),
            safe_to_leave: self.rule(&checklist.safe_to_leave, "/safe_to_leave"),
            start_when: self.pred(&checklist.start_when, "/start_when", Where::Matter, false).0,
            starts: self.starts(),
            readers: DependencyIndex::default(),
        }
        .ready()
    }

    fn dangers(&mut self) -> Vec<DangerRule> {
        let checklist = self.binder.checklist;
        let mut read = BTreeSet::new();
        let mut rules = Vec::new();
        for (at, danger) in checklist.dangers.iter().enumerate() {
            let place = format!("/dangers/{at}/when");
            let (when, reads) = self.pred(&danger.when, &place, Where::Danger, false);
            if reads.more_than_matter && !reads.doing {
                self.problem(&place, problem_danger_doing());
            }
            read.extend(reads.vars);
            rules.push(DangerRule { when, doing: reads.doing });
        }
        self.problems.extend(check::skip(checklist, self.binder.names, &read, self.places));
        rules
    }

    fn variables(&mut self) -> Vec<Variable> {
        let checklist = self.binder.checklist;
        let by_vehicle_actions: BTreeSet<&String> =
            checklist.vehicle_actions.iter().flat_map(|made| made.makes.keys()).collect();
        let first_gate = checklist.conditions.len() + checklist.facts.len();
        let mut vars = Vec::new();
        for (at, &(field, kind, size)) in self.binder.fields.vars.iter().enumerate() {
            let gate = at.checked_sub(first_gate).map(|at| (at, &checklist.gates[at]));
            let holds_while = gate.and_then(|(at, gate)| {
                let text = gate.holds_while.as_ref()?;
                Some(self.pred(text, &format!("/gates/{at}/holds_while"), Where::Holds, false).0)
            });
            let ages = gate.is_some_and(|(_, gate)| gate.fresh_for.is_some());
            let by_vehicle_actions = by_vehicle_actions.contains(&self.binder.names.vars[at]);
            vars.push(Variable { field, kind, size, holds_while, ages, by_vehicle_actions, absent: false });
        }
        vars
    }

    fn signs(&mut self) -> Vec<SignRule> {
        let checklist = self.binder.checklist;
        let signs = checklist.sign_offs.iter().enumerate().map(|(at, sign)| SignRule {
            field: self.binder.fields.signs[at],
            step: check::steps(checklist)
                .position(|(_, step)| check::signs_of(step).any(|given| *given == sign.id))
                .map_or(StepIx(0), StepIx::of),
            permit: sign.kind == SignKind::Permit,
            holds_while: self
                .pred(&sign.holds_while, &format!("/sign_offs/{at}/holds_while"), Where::Holds, false)
                .0,
        });
        signs.collect()
    }

    fn starts(&self) -> Vec<(VarIx, Vec<u8>)> {
        let checklist = self.binder.checklist;
        let all = |count: usize| (0..count).filter_map(|value| u8::try_from(value).ok()).collect::<Vec<u8>>();
        let conditions = checklist.conditions.iter().enumerate().map(|(at, condition)| {
            let value = |name: &String| self.binder.names.value_of(VarIx::of(at), name);
            let start: Vec<u8> = condition.start.iter().filter_map(value).collect();
            (VarIx::of(at), if start.is_empty() { vec![0] } else { start })
        });
        let first = checklist.conditions.len();
        let facts = checklist.facts.iter().enumerate();
        let facts = facts.map(|(at, fact)| {
            let var = VarIx::of(first + at);
            (
                var,
                self.binder
                    .known
                    .facts
                    .get(&var)
                    .map_or_else(|| all(fact.values.len()), |&value| vec![value]),
            )
        });
        conditions.chain(facts).collect()
    }

    /// Fields and values of assignments; names that do not fit were told by the checks.
    fn assign(&self, assignments: &Assignments) -> Assign {
        let edits = assignments.iter().filter_map(|(name, value)| {
            let var = self.binder.names.var(name)?;
            let value = self.binder.names.value_of(var, value)?;
            Some((self.binder.fields.vars[var.at()].0, u64::from(value)))
        });
        Assign { edits: edits.collect() }
    }

    fn step(&mut self, step: &Step, phase: PhaseIx, at: usize, place: &str) -> StepRule {
        let names = self.binder.names;
        let on = step.on.as_ref().map(|text| {
            let place = format!("{place}/on");
            (self.pred(text, &place, Where::On, false).0, self.pred(text, &place, Where::On, true).0)
        });
        // What the facts of the vehicle settle with a yes is part of every job on it.
        let on = on.filter(|(yes, _)| !matches!(yes.tree(), Tree::Const(true)));
        let needs = self.rule(&step.needs, &format!("{place}/needs"));
        let while_ = match &step.while_ {
            Some(text) => self.rule(text, &format!("{place}/while")),
            None => needs.clone(),
        };
        let again = step.again.as_ref().map(|text| self.rule(text, &format!("{place}/again")));
        let steps = |ids: &[String]| ids.iter().filter_map(|id| names.step(id)).collect::<Vec<StepIx>>();
        let pieces = |pieces: &Pieces| {
            let found = pieces.iter().filter_map(|(id, count)| Some((names.item(id)?, *count)));
            found.collect::<Vec<(ItemIx, u8)>>()
        };
        let signs = |ids: &mut dyn Iterator<Item = &String>| {
            ids.filter_map(|id| names.sign(id)).collect::<Vec<SignIx>>()
        };
        let since = step.wait.as_ref().and_then(|wait| wait.since.as_ref());
        let since = since.map(|text| self.pred(text, &format!("{place}/wait/since"), Where::Matter, false).0);
        self.since.push(since);
        let (outcomes, effects) = self.outcomes(step, place);
        StepRule {
            work: self.binder.fields.steps[at],
            phase,
            on,
            after: steps(&step.after),
            needs,
            while_,
            again,
            permits: signs(&mut step.permits.iter()),
            signs: signs(&mut check::signs_of(step)),
            relies_on: steps(&step.relies_on),
            voided_with: Vec::new(),
            on_begin: self.assign(&step.on_begin),
            on_leave: self.assign(&step.on_leave),
            writes: written(&effects, names, |effect| &effect.sets).into_keys().collect(),
            makes: written(&effects, names, |effect| &effect.makes).into_iter().collect(),
            outcomes,
            takes_off: pieces(&step.takes_off),
            puts_back: pieces(&step.puts_back),
            may_skip: step.may_skip,
            when_ending: step.when_ending,
        }
    }

    /// Every way the step can turn out, and what each does.
    fn outcomes(&mut self, step: &Step, place: &str) -> (Vec<Outcome>, Vec<ClassEffect>) {
        let Some(table) = OutcomeTable::of(step) else {
            self.problem(place, problem_outcomes(MOST_OUTCOMES));
            self.outcomes.push(OutcomeTable::default());
            return (Vec::new(), Vec::new());
        };
        let mut outcomes = Vec::new();
        let mut effects = Vec::new();
        for at in 0..table.len() {
            let effect = self.effect(step, &table, at, place);
            let correction: Assignments =
                effect.sets.iter().filter(|(gate, _)| !self.ages(gate)).map(clone_pair).collect();
            let mut assign = self.assign(&effect.sets);
            assign.edits.extend(self.assign(&effect.makes).edits);
            outcomes.push(Outcome {
                assign,
                corrected: self.assign(&correction),
                ends: effect.ends.is_some(),
            });
            effects.push(effect);
        }
        self.outcomes.push(table);
        (outcomes, effects)
    }

    fn ages(&self, gate: &str) -> bool {
        self.binder.checklist.gates.iter().any(|found| found.id == gate && found.fresh_for.is_some())
    }

    /// What one outcome does: what the step always does, and the classes of every entry.
    fn effect(&mut self, step: &Step, table: &OutcomeTable, outcome: usize, place: &str) -> ClassEffect {
        let mut all =
            ClassEffect { sets: step.sets.clone(), makes: step.makes.clone(), ..ClassEffect::default() };
        let chosen: BTreeMap<&str, &str> =
            table.groups(outcome).map(|(entry, group)| (entry, group[0].as_str())).collect();
        for entry in &step.entries {
            let class = chosen.get(entry.id.as_str()).copied();
            let only =
                || entry.classes.iter().find(|(_, effect)| !effect.not_yet).map(|(class, _)| class.as_str());
            let Some(effect) = class.or_else(only).and_then(|class| entry.classes.get(class)) else {
                continue;
            };
            if effect.ends == Some(Ends::Stop) {
                all.ends = Some(Ends::Stop);
            }
            for (from, into) in [(&effect.sets, &mut all.sets), (&effect.makes, &mut all.makes)] {
                for (name, value) in from {
                    let before = into.insert(name.clone(), value.clone());
                    if before.is_some_and(|before| before != *value) {
                        self.problem(place, problem_contradict(name));
                    }
                }
            }
        }
        all
    }
}

fn clone_pair((name, value): (&String, &String)) -> (String, String) {
    (name.clone(), value.clone())
}

/// Variables that effects write, with the values as bits.
fn written(
    effects: &[ClassEffect],
    names: &Names,
    of: fn(&ClassEffect) -> &Assignments,
) -> BTreeMap<VarIx, u64> {
    let mut found = BTreeMap::new();
    for (name, value) in effects.iter().flat_map(of) {
        if let Some(var) = names.var(name)
            && let Some(value) = names.value_of(var, value)
        {
            *found.entry(var).or_insert(0) |= 1 << value;
        }
    }
    found
}
