//! What a command leads to: the events to write, or a refusal. Every event is checked through
//! [`panside_procedure::Machine::step`] on the state that those before it leave, and every intent against the dangers
//! as well. A fact is never refused.

pub(crate) mod draft;
pub(crate) mod refuse;
pub(crate) mod signs;
pub(crate) mod turned_up;
pub(crate) mod unmet;
pub(crate) mod whole;
pub(crate) mod work;
mod written;

use panside_journal::{Stamp, clock_jump};
use panside_procedure::State;
use panside_procedure::machine::{Action, VarIx};

use crate::change::{gates, lost};
use crate::clock::{MINUTE_MS, measured_ms};
use crate::command::{Actor, Command, Refusal};
use crate::event::{ClockJumped, Event, Expired};
use crate::job::Job;
use crate::message::{Message, refused_not_started};
use crate::people::{Names, Roster};
use crate::size;

use draft::Draft;

/// The events that a command leads to. First come the introductions of people whom the job does not know by this name and
/// role, then what time has brought ([`due`]).
///
/// # Errors
/// A refusal that says why not and what would have to hold. Then nothing is to be written.
pub fn decide(
    job: &Job,
    shop: &Roster,
    command: &Command,
    who: &Actor,
    now: &Stamp,
) -> Result<Vec<Event>, Refusal> {
    size::check(who)?;
    size::check(command)?;
    if job.start.is_none() {
        return Err(refused_not_started().into());
    }
    shop.acting(*who)?;
    let (state, events) = aged(job, now);
    let mut draft = Draft { job, names: Names::Shop(shop), who, now, state, events };
    match command {
        Command::Begin { step } => draft.begin(step)?,
        Command::Leave { step } => draft.leave(step)?,
        Command::Enter { step, entry, value } => {
            draft.enter_all(step, &[(entry.clone(), value.clone())].into())?;
        }
        Command::Done { step, signatures } => draft.done(step, signatures, false)?,
        Command::Work { step, entries, signatures, later } => {
            draft.work(step, entries, signatures, *later)?
        }
        Command::VehicleAction { action } => draft.vehicle_action(action)?,
        Command::Sign { signature } => draft.sign(signature)?,
        Command::SignAgain { signatures } => draft.sign_again(signatures)?,
        Command::Skip { step, reason } => draft.skip(step, reason)?,
        Command::Void { step, reason } => draft.void(step, reason)?,
        Command::Correct { step, entries, signatures, reason } => {
            draft.correct(step, entries, signatures, reason.as_deref())?;
        }
        Command::Observe { condition, value, reason } => draft.observe(condition, value, reason)?,
        Command::ExplainMissed { step, reason } => draft.explain_missed(step, reason)?,
        Command::Found { text, at, urgency, photos } => draft.found(text, at.as_deref(), *urgency, photos)?,
        Command::DealtWith { found, text } => draft.dealt_with(*found, text)?,
        Command::AskCustomer { step, text, found, lines } => draft.ask_customer(step, text, *found, lines)?,
        Command::Answer { asked, answer } => draft.answer(*asked, answer)?,
        Command::GoOnWithout { asked, reason } => draft.go_on_without(*asked, reason)?,
        Command::PieceOff { name, count, at, photos } => {
            draft.piece_off(name, *count, at.as_deref(), photos)?;
        }
        Command::PieceBack { piece, count, torque } => draft.piece_back(*piece, *count, torque.as_deref())?,
        Command::PieceGone { piece, count, accounted } => draft.piece_gone(*piece, *count, accounted)?,
        Command::TakeBack { of, reason } => draft.take_back(*of, reason)?,
        Command::Finish => draft.finish()?,
        Command::Stop { reason } => draft.stop(reason)?,
    }
    let acts = std::iter::once((who.id, Some(who.role)));
    let appear = acts.chain(draft.events.iter().flat_map(Event::people));
    let strangers = job.people.strangers(shop, appear).into_iter().map(Event::from);
    Ok(strangers.chain(draft.events.iter().cloned()).collect())
}

/// What time alone has brought since the last event: the wall clock was set, knowledge has grown too old. [`decide()`]
/// puts it before the events of the next command.
#[must_use]
pub fn due(job: &Job, now: &Stamp) -> Vec<Event> {
    aged(job, now).1
}

/// The state as time has left it, with the events that say so.
pub(crate) fn aged(job: &Job, now: &Stamp) -> (State, Vec<Event>) {
    let mut events = Vec::new();
    let last = job.happened.last();
    if let Some(ms) = last.and_then(|last| clock_jump(&last.stamp, now)) {
        events.push(ClockJumped { ms }.into());
    }
    let mut state = job.state;
    for gate in gates(&job.procedure) {
        if ms_fresh(job, gate, now) != Some(0) {
            continue;
        }
        if let Ok(next) = job.procedure.machine.step(&state, Action::Expire(gate)) {
            let lost = lost(&job.procedure, &state, &next);
            state = next;
            events.push(Expired { gate: job.procedure.var_name(gate).to_owned(), lost }.into());
        }
    }
    (state, events)
}

/// Milliseconds for which a gate's knowledge stays good; 0 when it has grown too old. Nothing for a gate that does
/// not age or is not known. After a restart of the tablet its age is not known, and what is not known to be fresh is too
/// old.
pub(crate) fn ms_fresh(job: &Job, gate: VarIx, now: &Stamp) -> Option<u64> {
    let known = job.gate(gate).set.as_ref()?;
    let name = job.procedure.var_name(gate);
    let minutes = job.procedure.checklist.gates.iter().find(|found| found.id == name)?.fresh_for?;
    let fresh = u64::from(minutes) * MINUTE_MS;
    Some(measured_ms(&known.from, now).map_or(0, |age| fresh.saturating_sub(age)))
}

/// What is said about a value before it is entered.
///
/// # Errors
/// As [`decide()`] would refuse it.
pub(crate) fn judge(
    job: &Job,
    shop: &Roster,
    step: &str,
    entry: &str,
    value: &crate::EntryValue,
    now: &Stamp,
) -> Result<(String, bool, Vec<Message>), Refusal> {
    size::check(value)?;
    let (names, who) = (Names::Shop(shop), &Actor::NOBODY);
    let draft = Draft { job, names, who, now, state: job.state, events: Vec::new() };
    let (step, text) = draft.step(step)?;
    let entry = draft::find(text, entry)?;
    let judged = draft.judge(step, entry, value)?;
    let not_yet = entry.classes.get(&judged.class).is_some_and(|effect| effect.not_yet);
    Ok((judged.class, not_yet, judged.said))
}

#[cfg(test)]
mod tests;
