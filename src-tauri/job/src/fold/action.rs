//! A recorded event as an action of the Machine.

use panside_procedure::machine::{Action, OutcomeIx, StepIx};
use panside_procedure::{NoOutcome, Procedure};

use crate::event::Event;
use crate::message::{
    Message, differs_action, differs_no_gate, differs_no_sign_off, differs_no_step, differs_no_value,
    differs_no_vehicle_action, differs_observed,
};

/// The action an event stands for. Nothing for events that change no rule state.
///
/// # Errors
/// What the checklist does not have.
pub(super) fn of(procedure: &Procedure, event: &Event) -> Result<Option<Action>, Message> {
    let names = &procedure.names;
    let step = |id: &str| names.step(id).ok_or_else(|| differs_no_step(id));
    Ok(Some(match event {
        Event::Begun(body) => Action::Begin(step(&body.step)?),
        Event::Left(body) => Action::Leave(step(&body.step)?),
        Event::Done(body) => {
            let step = step(&body.step)?;
            Action::Done(step, outcome(procedure, step, &body.classes))
        }
        Event::Corrected(body) => {
            let step = step(&body.step)?;
            Action::Correct(step, outcome(procedure, step, &body.classes))
        }
        Event::VehicleAction(body) => {
            let made = names.vehicle_action(&body.action);
            Action::Vehicle(made.ok_or_else(|| differs_no_vehicle_action(&body.action))?)
        }
        Event::Signed(body) => {
            let sign = &body.signature.sign;
            Action::Sign(names.sign(sign).ok_or_else(|| differs_no_sign_off(sign))?)
        }
        Event::Skipped(body) => Action::Skip(step(&body.step)?),
        Event::Voided(body) => Action::Void(step(&body.step)?),
        Event::Observed(body) => {
            let var = names.var(&body.condition);
            let found = var.and_then(|var| Some((var, names.value_of(var, &body.value)?)));
            let (var, value) = found.ok_or_else(|| differs_no_value(&body.condition, &body.value))?;
            Action::Observe(var, value)
        }
        Event::Expired(body) => {
            Action::Expire(names.var(&body.gate).ok_or_else(|| differs_no_gate(&body.gate))?)
        }
        Event::Finished(_) => Action::Finish,
        Event::Stopped(_) => Action::Stop,
        Event::Started(_)
        | Event::Introduced(_)
        | Event::Entered(_)
        | Event::MissedExplained(_)
        | Event::ClockJumped(_)
        | Event::Found(_)
        | Event::DealtWith(_)
        | Event::Asked(_)
        | Event::Answered(_)
        | Event::WentOn(_)
        // Whether a piece is off hangs on all of them: `Job::take_turned_up` works it out.
        | Event::PieceOff(_)
        | Event::PieceBack(_)
        | Event::PieceGone(_)
        | Event::TakenBack(_) => return Ok(None),
    }))
}

/// What the rules would not have allowed.
pub(super) fn not_allowed(procedure: &Procedure, action: Action) -> Message {
    let title = |step| procedure.step(step).title.as_str();
    let (kind, what) = match action {
        Action::Begin(step) => ("begin", title(step)),
        Action::Leave(step) => ("leave", title(step)),
        Action::Done(step, _) => ("done", title(step)),
        Action::Skip(step) => ("skip", title(step)),
        Action::Void(step) => ("void", title(step)),
        Action::Correct(step, _) => ("correct", title(step)),
        Action::Vehicle(made) => ("vehicle_action", procedure.vehicle_action_text(made).title.as_str()),
        Action::Sign(given) => ("sign", procedure.sign_off(given).text.as_str()),
        Action::Observe(var, value) => {
            let is = procedure.value_label(var, value);
            return differs_observed(procedure.var_label(var), is);
        }
        Action::Expire(gate) => ("expire", procedure.var_label(gate)),
        Action::Piece(_) => ("piece", ""),
        Action::Finish => ("finish", ""),
        Action::Stop => ("stop", ""),
    };
    differs_action(kind, what)
}

/// The outcome that recorded classes make. Classes that are none any more make an outcome that does not exist: the
/// Machine refuses it and, as recorded, takes over the step as worked without setting anything from it. That only
/// takes permission away.
fn outcome(
    procedure: &Procedure,
    step: StepIx,
    classes: &std::collections::BTreeMap<String, String>,
) -> OutcomeIx {
    match procedure.outcome(step, classes) {
        Ok(outcome) => outcome,
        Err(NoOutcome::NotYet(_) | NoOutcome::Missing(_) | NoOutcome::NoClass(..)) => OutcomeIx(u16::MAX),
    }
}
