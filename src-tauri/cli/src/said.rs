//! Events and commands as lines to read while a walk goes on.

use panside_bay::enter::{Command, Entered, EntryValue, Event, Job, PersonId, in_short};
use panside_messages::Speaker;
use panside_procedure::Procedure;

/// What happened, in one line.
pub fn event(speaker: &Speaker, job: &Job, event: &Event) -> String {
    let procedure = &job.procedure;
    let called = |person| job.people.called(person, job.last_seq());
    let step = |id: &str| format!("{} ({id})", title(procedure, id));
    let said = match event {
        Event::Started(started) => {
            format!("starts with {} revision {}", started.checklist.id, started.checklist.revision)
        }
        Event::Introduced(new) => format!("names {}, {}", new.name, new.role.noun()),
        Event::Begun(begun) => format!("begins {}", step(&begun.step)),
        Event::Left(left) => format!("leaves {}", step(&left.step)),
        Event::Entered(entered) => {
            let said = value(speaker, procedure, entered, &called);
            format!("enters {}: {said} -> {}", entered.entry, entered.class)
        }
        Event::Done(done) => {
            let signs: Vec<_> =
                done.signs.iter().map(|sign| format!("{} by {}", sign.sign, called(sign.by))).collect();
            let signed =
                if signs.is_empty() { String::new() } else { format!(", signed: {}", signs.join(", ")) };
            format!("done {}{signed}", step(&done.step))
        }
        Event::VehicleAction(done) => {
            format!("vehicle action: {}", vehicle_action_title(procedure, &done.action))
        }
        Event::Signed(signed) => format!("signs {} again", signed.signature.sign),
        Event::Skipped(skipped) => format!("skips {}: {}", step(&skipped.step), skipped.reason),
        Event::Voided(voided) => {
            let also = if voided.also.is_empty() {
                String::new()
            } else {
                format!(", and with it {}", voided.also.join(", "))
            };
            format!("voids {}{also}: {}", step(&voided.step), voided.reason)
        }
        Event::Corrected(again) => format!("corrects {}", step(&again.step)),
        Event::Observed(seen) => {
            let undone = if seen.undone.is_empty() {
                String::new()
            } else {
                format!(", so not worked: {}", seen.undone.join(", "))
            };
            format!("observes {} = {}{undone}: {}", seen.condition, seen.value, seen.reason)
        }
        Event::Expired(expired) => format!("{} has grown too old", expired.gate),
        Event::MissedExplained(missed) => format!("explains {}: {}", step(&missed.step), missed.reason),
        Event::Finished(_) => "the job is finished".to_owned(),
        Event::Stopped(stopped) => format!("the job is stopped: {}", stopped.reason),
        Event::ClockJumped(jumped) => format!("the wall clock was set by {} s", jumped.ms / 1000),
    };
    let Some(lost) = event.lost().filter(|lost| !lost.is_empty()) else { return said };
    let names: Vec<&str> = lost.lapsed.iter().chain(&lost.forgotten).map(String::as_str).collect();
    format!("{said} [lapses: {}]", names.join(", "))
}

/// What is asked for, in a few words.
pub fn command(command: &Command) -> String {
    match command {
        Command::Begin { step } => format!("to begin \"{step}\""),
        Command::Leave { step } => format!("to leave \"{step}\""),
        Command::Enter { step, entry, .. } => format!("to enter \"{entry}\" at \"{step}\""),
        Command::Done { step, .. } => format!("to be done with \"{step}\""),
        Command::Work { step, .. } => format!("to work \"{step}\""),
        Command::VehicleAction { action } => format!("the vehicle action \"{action}\""),
        Command::Sign { signature } => format!("to sign \"{}\"", signature.sign),
        Command::SignAgain { .. } => "to sign again".to_owned(),
        Command::Skip { step, .. } => format!("to skip \"{step}\""),
        Command::Void { step, .. } => format!("to void \"{step}\""),
        Command::Correct { step, .. } => format!("to correct \"{step}\" afterwards"),
        Command::Observe { condition, value, .. } => format!("to observe {condition} = {value}"),
        Command::ExplainMissed { step, .. } => format!("to explain \"{step}\""),
        Command::Finish => "to finish the job".to_owned(),
        Command::Stop { .. } => "to stop the job".to_owned(),
    }
}

fn title<'a>(procedure: &'a Procedure, id: &'a str) -> &'a str {
    procedure.names.step(id).map_or(id, |step| &procedure.step(step).title)
}

fn vehicle_action_title<'a>(procedure: &'a Procedure, id: &'a str) -> &'a str {
    procedure.names.vehicle_action(id).map_or(id, |made| &procedure.vehicle_action_text(made).title)
}

fn value(
    speaker: &Speaker,
    procedure: &Procedure,
    entered: &Entered,
    called: &impl Fn(PersonId) -> String,
) -> String {
    let Entered { step, entry, value, class, .. } = entered;
    let because = value.accounted().map_or(String::new(), |why| format!(" ({})", why.reason));
    let asked = procedure.names.step(step).map(|step| procedure.step(step));
    let asked = asked.and_then(|step| step.entries.iter().find(|found| found.id == *entry));
    let said = match (value, asked) {
        (EntryValue::SignOff(signature), _) => format!("signed by {}", called(signature.by)),
        (EntryValue::Torque { stages, unit, tool, .. }, _) => {
            format!("{} {unit} with {}", stages.join(", then "), tool.name)
        }
        (EntryValue::Photo { hash, width, height }, _) => {
            format!("photo {width} x {height}, {}", &hash[..hash.len().min(12)])
        }
        (value, Some(entry)) => speaker.arg(&in_short(&entry.ask, value, class, &procedure.checklist)),
        (_, None) => class.clone(),
    };
    format!("{said}{because}")
}
