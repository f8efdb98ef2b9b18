//! The part that a service writer reads in a minute: vehicle, concern, cause, correction, time, what is open.

use panside_procedure::format::Signal;

use super::{Block, Left, Right, Section, Table, row};
use crate::account::{Codes, Said};
use crate::by::minutes_of;
use crate::document::{DangerNow, Document, End};
use crate::missing::MissingKind;
use crate::time::Kind;

/// Name of the fact that says how the vehicle stands.
const LEFT_AS: &str = "Status at the end";
/// Said of a state that is read from damaged data.
const AS_FAR: &str = "as far as the damaged data can be read";
/// Longer lists of missing steps are counted here and named further down.
const NAMED: usize = 6;

/// The repair order, or that there is none.
pub(crate) fn order(document: &Document) -> &str {
    let order = &document.vehicle.repair_order;
    if order.is_empty() { "not entered" } else { order }
}

/// Something that the service writer has to see to.
pub(crate) struct Open {
    /// What kind of thing it is; empty where there is none.
    pub heading: String,
    /// What it is.
    pub text: String,
    /// Somebody can be badly hurt.
    pub is_danger: bool,
}

impl Open {
    fn new(heading: impl Into<String>, text: impl Into<String>) -> Open {
        Open { heading: heading.into(), text: text.into(), is_danger: false }
    }

    /// Both in one line.
    pub fn line(&self) -> String {
        if self.heading.is_empty() { self.text.clone() } else { format!("{}: {}", self.heading, self.text) }
    }
}

/// What names the job.
pub(crate) fn facts(document: &Document) -> Vec<Vec<String>> {
    all_facts(document, Some(row(LEFT_AS, left(document))))
}

/// What names the job, without how the vehicle was left: for a form that tells it elsewhere, by [`left_as`].
pub(crate) fn facts_but_left(document: &Document) -> Vec<Vec<String>> {
    all_facts(document, None)
}

/// How the vehicle was left.
pub(crate) fn left_as(document: &Document) -> Open {
    Open::new(LEFT_AS, left(document))
}

fn all_facts(document: &Document, left: Option<Vec<String>>) -> Vec<Vec<String>> {
    let vehicle = &document.vehicle;
    let mut rows = vec![row("Vehicle", &vehicle.label)];
    rows.extend(vehicle.vin.iter().map(|vin| row("VIN", vin)));
    rows.extend(vehicle.odometer.iter().map(|odometer| row("Odometer", odometer)));
    rows.extend(
        document.started.iter().map(|by| row("Started", format!("{} {}", by.day_and_time(), by.who))),
    );
    let state = end(&document.end);
    rows.push(row("State", if document.damaged.is_empty() { state } else { format!("{state}, {AS_FAR}") }));
    rows.extend(left);
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
    let stands = document.vehicle.otherwise.iter().map(|stands| format!("{} {}", stands.what, stands.is));
    let stands: Vec<_> = stands.collect();
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

/// What the service writer has to see to, as a section.
pub(crate) fn open(document: &Document) -> Section {
    Section::new("Open", open_lines(document).iter().map(|open| Block::Line(open.line())).collect())
}

/// What the service writer has to see to, dangers among the first.
pub(crate) fn open_lines(document: &Document) -> Vec<Open> {
    let mut lines: Vec<_> = document.damaged.iter().map(|found| Open::new("Damaged data", found)).collect();
    lines.extend(document.dangers.iter().map(danger_line));
    lines.extend(MissingKind::ALL.iter().filter_map(|kind| missing_line(document, *kind)));
    lines.extend(
        document.skipped.iter().map(|step| Open::new("Skipped", format!("{}: {}", step.title, step.reason))),
    );
    let told = [("Voided", document.voided.len()), ("Vehicle status corrected", document.observed.len())];
    let told = told.iter().filter(|(_, times)| *times > 0);
    lines.extend(told.map(|(what, times)| Open::new(*what, format!("{times}, see below"))));
    lines.extend(document.codes.iter().map(codes_line));
    if lines.is_empty() {
        lines.push(Open::new("", "nothing"));
    }
    lines
}

fn danger_line(danger: &DangerNow) -> Open {
    let is_danger = danger.signal == Signal::Danger;
    Open { is_danger, ..Open::new(format!("{} now", signal(danger.signal)), &danger.text) }
}

fn missing_line(document: &Document, kind: MissingKind) -> Option<Open> {
    let of_kind = document.missing.iter().filter(|missing| missing.kind == kind);
    let what: Vec<_> = of_kind.map(|missing| missing.what.as_str()).collect();
    match what.len() {
        0 => None,
        count if count > NAMED => Some(Open::new(kind.says(), format!("{count}, see below"))),
        _ => Some(Open::new(kind.says(), what.join("; "))),
    }
}

fn codes_line(codes: &Codes) -> Open {
    let read = if codes.codes.is_empty() { "none".to_owned() } else { codes.codes.join(" ") };
    let said = codes.said.as_ref().map(|said| format!(" ({said})")).unwrap_or_default();
    Open::new(format!("{}, {}", codes.label, codes.by.day_and_time()), format!("{read}{said}"))
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_open_is_a_heading_and_a_text_and_only_the_worst_dangers_stand_out() {
        let danger = |signal| DangerNow { id: "oil".into(), signal, text: "Oil on the floor.".into() };
        let [worst, less] = [Signal::Danger, Signal::Warning].map(|signal| danger_line(&danger(signal)));
        assert_eq!((worst.heading.as_str(), worst.text.as_str()), ("DANGER now", "Oil on the floor."));
        assert_eq!(worst.line(), "DANGER now: Oil on the floor.");
        assert_eq!((worst.is_danger, less.is_danger), (true, false));
        assert!(!Open::new("DANGER now, as read", "none").is_danger, "whatever its heading says");
        assert_eq!(Open::new("", "nothing").line(), "nothing");
    }
}
