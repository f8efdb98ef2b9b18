//! Which steps are in each other's way: what one does, when it is done, can keep another from being begun or done. Of two
//! people one may then do best to begin later than he could.

use super::rules::Rules;
use crate::machine::{Field, Pred, StepIx, Test, Tree, work};

/// For each step the others that it can disturb, unless they come after it anyway.
pub(super) fn pairs(rules: &Rules<'_>) -> Vec<Vec<StepIx>> {
    let steps = || (0..rules.machine.steps.len()).map(StepIx::of);
    let writes: Vec<Vec<(Field, u64)>> = writes(rules);
    let reads: Vec<Vec<&Pred>> = steps().map(|step| reads(rules, step)).collect();
    let disturbs = |writer: StepIx, reader: StepIx| {
        let mut edits = writes[writer.at()].iter();
        writer != reader
            && !waits_for(rules, reader, writer)
            && edits.any(|&edit| reads[reader.at()].iter().any(|pred| can_fail(pred.tree(), edit)))
    };
    steps().map(|writer| steps().filter(|&reader| disturbs(writer, reader)).collect()).collect()
}

/// Whether a step can't be begun before another one is dealt with.
fn waits_for(rules: &Rules<'_>, step: StepIx, other: StepIx) -> bool {
    let rule = rules.rule(step);
    let phase = &rules.machine.phases[rule.phase.at()];
    let field = rules.rule(other).work;
    let certain = phase
        .waits_on
        .iter()
        .any(|&(word, bits)| usize::from(field.word) == word && bits >> field.shift & 1 == 1);
    certain || phase.waits_on_some.contains(&other) || rule.after.contains(&other)
}

/// Everything that each step gives a value, with the value.
fn writes(rules: &Rules<'_>) -> Vec<Vec<(Field, u64)>> {
    let machine = rules.machine;
    let of_step = machine.steps.iter().zip(rules.task.outcomes_of(machine)).map(|(rule, outcome)| {
        let own = rule.on_begin.edits.iter().chain(&rule.on_leave.edits).chain(outcome).copied();
        let items = rule.takes_off.iter().chain(&rule.puts_back).map(|&(item, _)| item);
        // An item's count can become anything.
        let items = items.flat_map(|item| {
            let place = &machine.items[item.at()];
            (0..=u64::from(place.count)).map(|value| (place.field, value))
        });
        own.chain(items).chain([(rule.work, work::WORKED)]).collect()
    });
    of_step.collect()
}

/// What must hold for a step to be begun and done, with what keeps the knowledge and the signatures in it.
fn reads<'r>(rules: &'r Rules<'_>, step: StepIx) -> Vec<&'r Pred> {
    let (machine, rule) = (rules.machine, rules.rule(step));
    let mut fields = Vec::new();
    tested(rule.needs.tree(), &mut fields);
    tested(rule.while_.tree(), &mut fields);
    let gates = machine.vars.iter().filter(|var| fields.contains(&var.field));
    let gates = gates.filter_map(|var| var.holds_while.as_ref());
    let signs = machine.signs.iter().filter(|sign| fields.contains(&sign.field));
    let signs = signs.chain(rule.permits.iter().map(|permit| &machine.signs[permit.at()]));
    [&rule.needs, &rule.while_].into_iter().chain(gates).chain(signs.map(|sign| &sign.holds_while)).collect()
}

fn tested(tree: &Tree, fields: &mut Vec<Field>) {
    match tree {
        Tree::Test(Test::In { field, .. }) => fields.push(*field),
        Tree::All(parts) | Tree::Any(parts) => parts.iter().for_each(|part| tested(part, fields)),
        Tree::Test(_) | Tree::Const(_) => {}
    }
}

/// Whether giving a field this value can make a predicate fail.
fn can_fail(tree: &Tree, (field, value): (Field, u64)) -> bool {
    match tree {
        Tree::Const(_) => false,
        Tree::Test(Test::In { field: read, values }) => *read == field && values >> value & 1 == 0,
        Tree::Test(_) => true,
        Tree::All(parts) | Tree::Any(parts) => parts.iter().any(|part| can_fail(part, (field, value))),
    }
}
