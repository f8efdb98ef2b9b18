//! The part that a service writer reads in a minute: vehicle, concern, cause, correction, time, what is open.

use panside_procedure::format::Signal;

use super::{Block, Left, Right, Section, Table, row};
use crate::account::{Codes, Said};
use crate::by::minutes_of;
use crate::document::{Document, End};
use crate::missing::MissingKind;
use crate::source::words;
use crate::time::Kind;

/// Name of the fact that says how the vehicle stands.
pub(crate) const LEFT_AS: &str = "Status at the end";
/// Said of a state that is read from damaged data.
const AS_FAR: &str = "as far as the damaged data can be read";
/// Longer lists of missing steps are counted here and named further down.
const NAMED: usize = 6;

/// The repair order, or that there is none.
pub(crate) fn order(document: &Document) -> &str {
    let order = &document.vehicle.repair_order;
    if order.is_empty() { "not entered" } else { order }
}

/// What names the job.
pub(crate) fn facts(document: &Document) -> Vec<Vec<String>> {
    let vehicle = &document.vehicle;
    let mut rows = vec![row("Vehicle", &vehicle.label)];
    rows.extend(vehicle.vin.iter().map(|vin| row("VIN", vin)));
    rows.extend(vehicle.odometer.iter().map(|odometer| row("Odometer", odometer)));
    rows.extend(
        document.started.iter().map(|by| row("Started", format!("{} {}", by.day_and_time(), by.who))),
    );
    let state = end(&document.end);
    rows.push(row("State", if document.damaged.is_empty() { state } else { format!("{state}, {AS_FAR}") }));
    rows.push(row(LEFT_AS, left(document)));
    rows.push(row("People", document.people.join(", ")));
    rows.push(row("Record made", minutes_of(&document.generated_local)));
    rows
}

/// The same as a table, with the repair order.
pub(crate) fn facts_table(document: &Document) -> Table {
    let mut rows = vec![row("Repair order", order(document))];
    rows.extend(facts(document));
    Table::new(&[Left, Left], rows)
}

/// How the vehicle stands otherwise than it came in.
fn left(document: &Document) -> String {
    let vehicle = &document.vehicle;
    let stands = vehicle.stands.iter().filter(|(id, value)| vehicle.came_in.get(*id) != Some(value));
    let stands: Vec<_> = stands.map(|(id, value)| format!("{} {}", words(id), words(value))).collect();
    if stands.is_empty() { "as it came in".to_owned() } else { stands.join(", ") }
}

/// How the job ended.
fn end(end: &End) -> String {
    match end {
        End::Open => "still open".to_owned(),
        End::Ending => "still open, ending by stop and call".to_owned(),
        End::Finished { by } => format!("finished {} {}", by.day_and_time(), by.who),
        End::Stopped { by, reason } => {
            format!("stopped before its end {} {}: {reason}", by.day_and_time(), by.who)
        }
    }
}

/// Concern, cause and correction.
pub(crate) fn said(document: &Document) -> [Section; 3] {
    let account = &document.account;
    let parts =
        [("Concern", &account.concern), ("Cause", &account.cause), ("Correction", &account.correction)];
    parts.map(|(heading, said)| Section::new(heading, answers(said)))
}

fn answers(said: &[Said]) -> Vec<Block> {
    if said.is_empty() {
        return vec![Block::Line("not entered".to_owned())];
    }
    let rows = said.iter().map(|said| row(&said.label, &said.text)).collect();
    vec![Block::Table(Table::new(&[Left, Left], rows))]
}

/// Time by kind.
pub(crate) fn time_rows(document: &Document) -> Vec<Vec<String>> {
    let time = &document.time;
    vec![
        row("planned work", hours(time.in_steps.planned)),
        row("unplanned", hours(time.in_steps.unplanned)),
        row("waiting", hours(time.in_steps.waiting)),
        row("total, from the start", hours(time.total)),
    ]
}

/// Time by kind, and what of it was not planned.
pub(crate) fn time(document: &Document) -> Section {
    let time = &document.time;
    let mut blocks = vec![Block::Table(Table::new(&[Left, Right], time_rows(document)))];
    blocks.extend(time.apart.iter().map(|step| {
        let kind = if step.kind == Kind::Waiting { "waiting" } else { "unplanned" };
        Block::Line(format!("{kind} {}: {}", hours(step.minutes), step.title))
    }));
    if time.untimed > 0 {
        blocks.push(Block::Line(format!(
            "not timed (entered all at once, entered later, or the clock was set back): {} steps",
            time.untimed
        )));
    }
    if time.unknown_gaps > 0 {
        blocks.push(Block::Line(format!("gaps of unknown length, not in the total: {}", time.unknown_gaps)));
    }
    Section::new("Time", blocks)
}

/// What the service writer has to see to.
pub(crate) fn open(document: &Document) -> Section {
    let mut lines: Vec<_> = document.damaged.iter().map(|found| format!("Damaged data: {found}")).collect();
    lines.extend(
        document.dangers.iter().map(|danger| format!("{} now: {}", signal(danger.signal), danger.text)),
    );
    lines.extend(MissingKind::ALL.iter().filter_map(|kind| missing_line(document, *kind)));
    lines.extend(document.skipped.iter().map(|step| format!("Skipped: {}: {}", step.title, step.reason)));
    let told = [("Voided", document.voided.len()), ("Vehicle status corrected", document.observed.len())];
    let told = told.iter().filter(|(_, times)| *times > 0);
    lines.extend(told.map(|(what, times)| format!("{what}: {times}, see below")));
    lines.extend(document.codes.iter().map(codes_line));
    if lines.is_empty() {
        lines.push("nothing".to_owned());
    }
    Section::new("Open", lines.into_iter().map(Block::Line).collect())
}

fn missing_line(document: &Document, kind: MissingKind) -> Option<String> {
    let of_kind = document.missing.iter().filter(|missing| missing.kind == kind);
    let what: Vec<_> = of_kind.map(|missing| missing.what.as_str()).collect();
    match what.len() {
        0 => None,
        count if count > NAMED => Some(format!("{}: {count}, see below", kind.says())),
        _ => Some(format!("{}: {}", kind.says(), what.join("; "))),
    }
}

fn codes_line(codes: &Codes) -> String {
    let read = if codes.codes.is_empty() { "none".to_owned() } else { codes.codes.join(" ") };
    let said = codes.said.as_ref().map(|said| format!(" ({said})")).unwrap_or_default();
    format!("{}, {}: {read}{said}", codes.label, codes.by.day_and_time())
}

/// The signal word.
pub(super) fn signal(signal: Signal) -> &'static str {
    match signal {
        Signal::Danger => "DANGER",
        Signal::Warning => "WARNING",
        Signal::Caution => "CAUTION",
        Signal::Notice => "NOTICE",
    }
}

/// Minutes as hours and minutes.
pub(crate) fn hours(minutes: u64) -> String {
    format!("{} h {:02}", minutes / 60, minutes % 60)
}
