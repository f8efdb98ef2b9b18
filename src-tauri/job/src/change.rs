//! What one action changes in rule state beyond itself.

use panside_procedure::machine::{SignIx, StepIx, VarIx, VariableKind};
use panside_procedure::{Procedure, Shown, State};

use crate::event::Lost;

/// Sign-offs that were valid and lapsed, gates that were known and are not.
pub(crate) fn lost(procedure: &Procedure, before: &State, after: &State) -> Lost {
    let machine = &procedure.machine;
    let lapsed = (0..machine.signs.len())
        .map(SignIx::of)
        .filter(|&given| machine.is_valid(before, given) && !machine.is_valid(after, given));
    let forgotten =
        gates(procedure).filter(|&gate| machine.value(before, gate) != 0 && machine.value(after, gate) == 0);
    Lost {
        lapsed: lapsed.map(|given| procedure.sign_off(given).id.clone()).collect(),
        forgotten: forgotten.map(|gate| procedure.var_name(gate).to_owned()).collect(),
    }
}

/// Every gate.
pub(crate) fn gates(procedure: &Procedure) -> impl Iterator<Item = VarIx> + '_ {
    vars(procedure, VariableKind::Gate)
}

/// Every condition, fact or gate.
pub(crate) fn vars(procedure: &Procedure, kind: VariableKind) -> impl Iterator<Item = VarIx> + '_ {
    let vars = procedure.machine.vars.iter().enumerate();
    vars.filter(move |(_, var)| var.kind == kind).map(|(at, _)| VarIx::of(at))
}

/// Steps that were worked and now are voided, by id.
pub(crate) fn voided(procedure: &Procedure, before: &State, after: &State) -> Vec<String> {
    left_worked(procedure, before, after, true)
}

/// Steps that were worked and now are as if never touched, by id.
pub(crate) fn undone(procedure: &Procedure, before: &State, after: &State) -> Vec<String> {
    left_worked(procedure, before, after, false)
}

fn left_worked(procedure: &Procedure, before: &State, after: &State, to_voided: bool) -> Vec<String> {
    let machine = &procedure.machine;
    let gone = procedure.steps().filter(|&(step, _)| {
        machine.is_worked(before, step)
            && !machine.is_worked(after, step)
            && is_voided(procedure, after, step) == to_voided
    });
    gone.map(|(_, step)| step.id.clone()).collect()
}

/// Whether a step is voided and not corrected.
pub(crate) fn is_voided(procedure: &Procedure, state: &State, step: StepIx) -> bool {
    procedure.machine.shown(state, step) == Shown::Voided
}
