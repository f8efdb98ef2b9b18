//! The part that a service writer reads in a minute: vehicle, concern, cause, correction, time, what is open.

use panside_procedure::format::Signal;

use super::hours;
use super::page::{Page, Side};
use crate::account::{Codes, Said};
use crate::by::minutes_of;
use crate::document::{Document, End};
use crate::missing::MissingKind;
use crate::source::words;
use crate::time::Kind;

/// Longer lists of missing steps are counted here and named further down.
const NAMED: usize = 6;

pub(super) fn write(document: &Document, page: &mut Page) {
    head(document, page);
    let account = &document.account;
    said(page, "Concern", &account.concern);
    said(page, "Cause", &account.cause);
    said(page, "Correction", &account.correction);
    time(document, page);
    open(document, page);
    page.blank();
    page.paragraph(0, &document.come_first);
}

fn head(document: &Document, page: &mut Page) {
    let vehicle = &document.vehicle;
    let order = if vehicle.repair_order.is_empty() { "not entered" } else { &vehicle.repair_order };
    page.ends(&format!("Bay record, repair order {order}"), document.demo.as_deref().unwrap_or_default());
    page.paragraph(0, &document.title);
    let row = |name: &str, value: String| vec![name.to_owned(), value];
    let mut rows = vec![row("Vehicle", vehicle.label.clone())];
    rows.extend(vehicle.vin.iter().map(|vin| row("VIN", vin.clone())));
    rows.extend(vehicle.odometer.iter().map(|odometer| row("Odometer", odometer.clone())));
    rows.extend(
        document.started.iter().map(|by| row("Started", format!("{} {}", by.day_and_time(), by.who))),
    );
    rows.push(row("State", end(&document.end)));
    let stands = vehicle.stands.iter().filter(|(id, value)| vehicle.came_in.get(*id) != Some(value));
    let stands: Vec<_> = stands.map(|(id, value)| format!("{} {}", words(id), words(value))).collect();
    rows.push(row("Left", if stands.is_empty() { "as it came in".to_owned() } else { stands.join(", ") }));
    rows.push(row("People", document.people.join(", ")));
    rows.push(row("Record made", minutes_of(&document.generated_local)));
    page.table(0, &[Side::Left, Side::Left], &rows);
}

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

fn said(page: &mut Page, heading: &str, said: &[Said]) {
    page.heading(heading);
    if said.is_empty() {
        page.paragraph(2, "not entered");
    }
    let rows: Vec<_> = said.iter().map(|said| vec![said.label.clone(), said.text.clone()]).collect();
    page.table(2, &[Side::Left, Side::Left], &rows);
}

fn time(document: &Document, page: &mut Page) {
    page.heading("Time");
    let time = &document.time;
    let row = |name: &str, minutes: u64| vec![name.to_owned(), hours(minutes)];
    let rows = [
        row("planned work", time.in_steps.planned),
        row("unplanned", time.in_steps.unplanned),
        row("waiting", time.in_steps.waiting),
        row("in all, from the start", time.total),
    ];
    page.table(2, &[Side::Left, Side::Right], &rows);
    for step in &time.apart {
        let kind = if step.kind == Kind::Waiting { "waiting" } else { "unplanned" };
        page.paragraph(2, &format!("{kind} {}: {}", hours(step.minutes), step.title));
    }
    if time.untimed > 0 {
        page.paragraph(
            2,
            &format!(
                "not timed, as entered in one go or later, or over a clock set back: {} steps",
                time.untimed
            ),
        );
    }
    if time.unknown_gaps > 0 {
        page.paragraph(2, &format!("gaps of unknown length, not in the total: {}", time.unknown_gaps));
    }
}

fn open(document: &Document, page: &mut Page) {
    page.heading("Open");
    let before = page.length();
    for danger in &document.dangers {
        page.paragraph(2, &format!("{} now: {}", signal(danger.signal), danger.text));
    }
    for kind in MissingKind::ALL {
        let what: Vec<_> = document
            .missing
            .iter()
            .filter(|missing| missing.kind == *kind)
            .map(|missing| missing.what.as_str())
            .collect();
        match what.len() {
            0 => {}
            count if count > NAMED => page.paragraph(2, &format!("{}: {count}, named below", kind.says())),
            _ => page.paragraph(2, &format!("{}: {}", kind.says(), what.join("; "))),
        }
    }
    for step in &document.set_aside {
        page.paragraph(2, &format!("Set aside: {}: {}", step.title, step.reason));
    }
    let told = [("Struck", document.struck.len()), ("Vehicle not as shown", document.observed.len())];
    for (what, times) in told.into_iter().filter(|(_, times)| *times > 0) {
        page.paragraph(2, &format!("{what}: {times}, told below"));
    }
    for codes in &document.codes {
        page.paragraph(2, &codes_line(codes));
    }
    if page.length() == before {
        page.paragraph(2, "nothing");
    }
}

fn codes_line(codes: &Codes) -> String {
    let read = if codes.codes.is_empty() { "none".to_owned() } else { codes.codes.join(" ") };
    let said = codes.said.as_ref().map(|said| format!(" ({said})")).unwrap_or_default();
    format!("{}, {}: {read}{said}", codes.label, codes.by.day_and_time())
}

/// The signal word.
fn signal(signal: Signal) -> &'static str {
    match signal {
        Signal::Danger => "DANGER",
        Signal::Warning => "WARNING",
        Signal::Caution => "CAUTION",
        Signal::Notice => "NOTICE",
    }
}
