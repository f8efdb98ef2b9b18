//! Events and commands as lines to read while a walk goes on.

use panside_bay::enter::{Answered, Command, Entered, EntryValue, Event, Job, PersonId, WorkedOut, in_short};
use panside_messages::{Arg, Message};
use panside_procedure::Procedure;

use crate::message::*;

/// What happened, to be said after who did it.
pub fn event(job: &Job, event: &Event) -> Message {
    let procedure = &job.procedure;
    let called = |person| job.people.called(person, job.last_seq());
    let step = |id: &str| cli_step(title(procedure, id), id);
    let said = match event {
        Event::Started(started) => cli_event_started(&started.checklist.id, started.checklist.revision),
        Event::Introduced(new) => cli_event_introduced(&new.name, new.role),
        Event::Begun(begun) => cli_event_begun(step(&begun.step)),
        Event::Left(left) => cli_event_left(step(&left.step)),
        Event::Entered(entered) => {
            cli_event_entered(&entered.entry, value(procedure, entered, &called), &entered.class)
        }
        Event::Done(done) => {
            let signs = done.signs.iter().map(|sign| cli_signed_by(&sign.sign, called(sign.by)));
            match signs.reduce(cli_next) {
                None => cli_event_done(step(&done.step)),
                Some(signs) => cli_event_done_signed(step(&done.step), signs),
            }
        }
        Event::VehicleAction(done) => cli_event_vehicle_action(vehicle_action_title(procedure, &done.action)),
        Event::Signed(signed) => cli_event_signed(&signed.signature.sign),
        Event::Skipped(skipped) => cli_event_skipped(step(&skipped.step), &skipped.reason),
        Event::Voided(voided) => {
            let (step, reason) = (step(&voided.step), &voided.reason);
            if voided.also.is_empty() {
                cli_event_voided(step, reason)
            } else {
                cli_event_voided_also(step, voided.also.clone(), reason)
            }
        }
        Event::Corrected(again) => cli_event_corrected(step(&again.step)),
        Event::Observed(seen) => {
            let reason = &seen.reason;
            if seen.undone.is_empty() {
                cli_event_observed(&seen.condition, &seen.value, reason)
            } else {
                cli_event_observed_undone(&seen.condition, &seen.value, seen.undone.clone(), reason)
            }
        }
        Event::Expired(expired) => cli_event_expired(&expired.gate),
        Event::MissedExplained(missed) => cli_event_explained(step(&missed.step), &missed.reason),
        Event::Found(found) => cli_event_found(&found.text, found.urgency.word(), found.photos.len()),
        Event::DealtWith(dealt) => cli_event_dealt_with(dealt.found, &dealt.text),
        Event::Asked(asked) => cli_event_asked(&asked.text, step(&asked.step)),
        Event::Answered(answered) => cli_event_answered(answered.asked, class_of(answered)),
        Event::WentOn(went) => cli_event_went_on(went.asked, &went.reason),
        Event::PieceOff(off) => cli_event_piece_off(&off.name, u32::from(off.count)),
        Event::PieceBack(back) => cli_event_piece_back(back.piece, u32::from(back.count)),
        Event::PieceGone(gone) => {
            cli_event_piece_gone(gone.piece, u32::from(gone.count), &gone.accounted.reason)
        }
        Event::TakenBack(back) => cli_event_taken_back(back.of, &back.reason),
        Event::Finished(_) => cli_event_finished(),
        Event::Stopped(stopped) => cli_event_stopped(&stopped.reason),
        Event::ClockJumped(jumped) => cli_event_clock(jumped.ms / 1000),
    };
    let Some(lost) = event.lost().filter(|lost| !lost.is_empty()) else { return said };
    let names: Vec<String> = lost.lapsed.iter().chain(&lost.forgotten).cloned().collect();
    cli_event_lapses(said, names)
}

/// What is asked for, to be said within a sentence.
pub fn command(command: &Command) -> Message {
    match command {
        Command::Begin { step } => cli_to_begin(step),
        Command::Leave { step } => cli_to_leave(step),
        Command::Enter { step, entry, .. } => cli_to_enter(entry, step),
        Command::Done { step, .. } => cli_to_be_done(step),
        Command::Work { step, .. } => cli_to_work(step),
        Command::VehicleAction { action } => cli_to_act(action),
        Command::Sign { signature } => cli_to_sign(&signature.sign),
        Command::SignAgain { .. } => cli_to_sign_again(),
        Command::Skip { step, .. } => cli_to_skip(step),
        Command::Void { step, .. } => cli_to_void(step),
        Command::Correct { step, .. } => cli_to_correct(step),
        Command::Observe { condition, value, .. } => cli_to_observe(condition, value),
        Command::ExplainMissed { step, .. } => cli_to_explain(step),
        Command::Found { text, .. } => cli_to_find(text),
        Command::DealtWith { found, .. } => cli_to_deal_with(*found),
        Command::AskCustomer { text, .. } => cli_to_ask(text),
        Command::Answer { asked, .. } => cli_to_answer(*asked),
        Command::GoOnWithout { asked, .. } => cli_to_go_on(*asked),
        Command::PieceOff { name, .. } => cli_to_take_off(name),
        Command::PieceBack { piece, .. } | Command::PieceGone { piece, .. } => cli_to_put_back(*piece),
        Command::TakeBack { of, .. } => cli_to_take_back(*of),
        Command::Finish => cli_to_finish(),
        Command::Stop { .. } => cli_to_stop(),
    }
}

/// What an answer turned out to be.
fn class_of(answered: &Answered) -> &str {
    match &answered.worked_out {
        WorkedOut::Authorization(judged) => &judged.class,
        _ => "",
    }
}

fn title<'a>(procedure: &'a Procedure, id: &'a str) -> &'a str {
    procedure.names.step(id).map_or(id, |step| &procedure.step(step).title)
}

fn vehicle_action_title<'a>(procedure: &'a Procedure, id: &'a str) -> &'a str {
    procedure.names.vehicle_action(id).map_or(id, |made| &procedure.vehicle_action_text(made).title)
}

/// What was entered, in few words.
fn value(procedure: &Procedure, entered: &Entered, called: &impl Fn(PersonId) -> String) -> Arg {
    let Entered { step, entry, value, class, .. } = entered;
    let asked = procedure.names.step(step).map(|step| procedure.step(step));
    let asked = asked.and_then(|step| step.entries.iter().find(|found| found.id == *entry));
    let said = match (value, asked) {
        (EntryValue::SignOff(signature), _) => cli_value_signed(called(signature.by)).into(),
        (EntryValue::Torque { stages, unit, tool, .. }, _) => {
            let stages = stages.iter().map(Arg::from);
            let stages = stages.reduce(|start, next| cli_value_then(start, next).into());
            cli_value_torque(stages.unwrap_or_else(|| Arg::from("")), unit, &tool.name).into()
        }
        (EntryValue::Photo { hash, width, height }, _) => {
            cli_value_photo(*width, *height, &hash[..hash.len().min(12)]).into()
        }
        (value, Some(entry)) => in_short(&entry.ask, value, class, &procedure.checklist),
        (_, None) => Arg::from(class),
    };
    match value.accounted() {
        None => said,
        Some(why) => cli_value_because(said, &why.reason).into(),
    }
}
