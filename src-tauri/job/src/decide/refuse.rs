//! Why the rules or a danger refuse an action, as a [`Refusal`].

use panside_journal::Stamp;
use panside_procedure::machine::{Action, Blocked, DangerIx, InJob, StepIx, Unmet};
use panside_procedure::{Shown, State};

use super::unmet::Because;
use crate::command::Refusal;
use crate::job::Job;
use crate::message::*;

/// What an action would change, or why it is refused: by the rules, or by a danger it would run into.
pub(crate) fn allowed(job: &Job, state: &State, action: Action, now: &Stamp) -> Result<State, Refusal> {
    match job.procedure.machine.step(state, action) {
        Ok(next) => danger(job, state, action).map_or(Ok(next), Err),
        Err(_) => Err(why_not(job, state, action, now)),
    }
}

/// The danger an intent would run into. Getting out of a step is never refused, and a danger that holds already does
/// not stand in the way of what ends it; but nobody begins work while one holds that work runs into.
fn danger(job: &Job, state: &State, action: Action) -> Option<Refusal> {
    if matches!(action, Action::Leave(_) | Action::Observe(..) | Action::Expire(_)) {
        return None;
    }
    let machine = &job.procedure.machine;
    let already = machine.dangers_now(state);
    let begins = matches!(action, Action::Begin(_));
    let counts = |danger: DangerIx| {
        !already.iter().any(|held| held == danger) || (begins && machine.dangers[danger.at()].doing)
    };
    let met = machine.dangers_of(state, action).iter().find(|&danger| counts(danger))?;
    let danger = &job.procedure.checklist.dangers[met.at()];
    Some(refused_danger(danger.signal, &danger.text).into())
}

/// Why the rules refuse an action.
pub(crate) fn why_not(job: &Job, state: &State, action: Action, now: &Stamp) -> Refusal {
    let because = Because::of(job, now);
    let Some((blocked, unmet)) = job.procedure.machine.explain(state, action) else {
        return unmet_never().into();
    };
    Refusal {
        message: message(job, state, action, blocked),
        unmet: unmet_of(job, &because, state, action, blocked, &unmet),
    }
}

fn unmet_of(
    job: &Job,
    because: &Because<'_>,
    state: &State,
    action: Action,
    blocked: Blocked,
    unmet: &[Unmet],
) -> Vec<Message> {
    match (blocked, action) {
        // A worked step can be begun again only when its own predicate for that holds.
        (Blocked::NotNow, Action::Begin(step)) if job.procedure.machine.is_worked(state, step) => {
            let again = job.procedure.machine.steps[step.at()].again.as_ref();
            again.map(|again| because.unmet(again, state)).unwrap_or_default()
        }
        // What the end needs beside the piece is said with it.
        (Blocked::PieceOff, _) => {
            let mut said = because.say_all(unmet);
            said.extend(because.unmet(&job.procedure.machine.done_when, state));
            said.dedup();
            said
        }
        _ => because.say_all(unmet),
    }
}

fn message(job: &Job, state: &State, action: Action, blocked: Blocked) -> Message {
    let procedure = &job.procedure;
    let machine = &procedure.machine;
    let title = |step: StepIx| procedure.step(step).title.as_str();
    match blocked {
        Blocked::Over if machine.is_finished(state) => refused_finished(),
        Blocked::Over => refused_stopped(),
        Blocked::Ending => refused_ending(),
        Blocked::NotInJob => match action {
            Action::Begin(step) | Action::Skip(step) if machine.in_job(state, step) == InJob::Undecided => {
                refused_undecided(title(step))
            }
            Action::Begin(step) | Action::Skip(step) => refused_not_in_job(title(step)),
            _ => unmet_never(),
        },
        Blocked::Phase(first) => refused_phase(title(first)),
        Blocked::After(first) => refused_after(title(first)),
        Blocked::Needs => match action {
            Action::Finish => refused_finish(),
            Action::Stop => refused_stop(),
            Action::Vehicle(made) => refused_needs(&procedure.vehicle_action_text(made).title),
            Action::Begin(step) => refused_needs(title(step)),
            _ => unmet_never(),
        },
        Blocked::PieceOff => refused_finish(),
        Blocked::Permit(permit) => {
            let (text, step) = (&procedure.sign_off(permit).text, title(machine.signs[permit.at()].step));
            if machine.has_lapsed(state, permit) {
                refused_permit_lapsed(text, step)
            } else {
                refused_permit_missing(text, step)
            }
        }
        Blocked::Busy(step) => refused_busy(title(step)),
        Blocked::While => match action {
            Action::Done(step, _) => refused_while(title(step)),
            _ => unmet_never(),
        },
        Blocked::Sign(given) => refused_sign_untrue(&procedure.sign_off(given).text),
        Blocked::Stands(step) => refused_stands(title(step)),
        Blocked::MayNotSkip => match action {
            Action::Skip(step) => refused_may_not_skip(title(step)),
            _ => unmet_never(),
        },
        Blocked::Same => match action {
            Action::Vehicle(made) => refused_same_vehicle_action(&procedure.vehicle_action_text(made).title),
            Action::Observe(var, value) => {
                refused_same_value(procedure.var_label(var), procedure.value_label(var, value))
            }
            _ => unmet_never(),
        },
        Blocked::NotNow => not_now(job, state, action),
    }
}

/// The step or sign-off is not in the state that the action asks for.
fn not_now(job: &Job, state: &State, action: Action) -> Message {
    let procedure = &job.procedure;
    let machine = &procedure.machine;
    match action {
        Action::Leave(step) | Action::Done(step, _) => refused_not_in_progress(&procedure.step(step).title),
        Action::Void(step) => refused_not_worked(&procedure.step(step).title),
        Action::Correct(step, _) => refused_not_voided(&procedure.step(step).title),
        Action::Begin(step) | Action::Skip(step) => {
            let title = &procedure.step(step).title;
            match machine.shown(state, step) {
                Shown::InProgress => refused_in_progress(title),
                Shown::Voided => refused_voided(title),
                Shown::Skipped => refused_skipped(title),
                _ => refused_worked(title),
            }
        }
        Action::Sign(given) if machine.is_valid(state, given) => {
            refused_sign_valid(&procedure.sign_off(given).text)
        }
        Action::Sign(given) => refused_not_worked(&procedure.step(machine.signs[given.at()].step).title),
        Action::Observe(var, _) | Action::Expire(var) => {
            refused_no_such("condition", procedure.var_name(var))
        }
        Action::Vehicle(_) | Action::Piece(_) | Action::Finish | Action::Stop => unmet_never(),
    }
}
