//! What a service writer needs in a minute: vehicle, concern, cause, correction, what was agreed, parts, labor, fluid,
//! what is open, who signed.

use panside_messages::Message;
use panside_procedure::format::Signal;

use super::estimate::comes_to;
use super::parts::{Billed, billed, other_labels};
use super::turned_up::found_lines;
use super::{Block, Left, Named, Right, Section, Table, row};
use crate::account::{Authorized, Codes, Said};
use crate::bill::{Amount, Poured};
use crate::by::minutes_of;
use crate::document::{DangerNow, Document, End};
use crate::messages;
use crate::missing::MissingKind;
use crate::money::Estimate;
use crate::speak::Say;
use crate::time::{Kind, StepTime};
use crate::turned_up::Supplement;

/// Longer lists of missing steps are counted here and named further down.
const NAMED: usize = 6;

/// The first page, part by part.
pub(crate) struct First {
    pub name: String,
    pub facts: Vec<Vec<String>>,
    /// Concern, cause and correction.
    pub said: [Section; 3],
    pub authorized: Section,
    pub parts: Section,
    pub labor: Section,
    pub fluid: Section,
    pub open: Section,
    pub signed: Section,
}

/// The first page of a record.
pub(crate) fn first(document: &Document, say: &Say<'_>) -> First {
    First {
        name: say.says(&messages::record_of(order(document, say))),
        facts: facts(document, say),
        said: said(document, say),
        authorized: authorized(document, say),
        parts: parts(document, say),
        labor: labor(document, say),
        fluid: fluid(document, say),
        open: open(document, say),
        signed: signed(document, say),
    }
}

impl First {
    /// Its parts, in the order in which they are read.
    pub fn sections(self) -> Vec<Section> {
        let after = [self.authorized, self.parts, self.labor, self.fluid, self.open, self.signed];
        self.said.into_iter().chain(after).collect()
    }
}

/// The repair order, or that there is none.
pub(crate) fn order(document: &Document, say: &Say<'_>) -> String {
    let order = &document.vehicle.repair_order;
    if order.is_empty() { say.within(&messages::not_entered()) } else { order.clone() }
}

/// What names the job.
fn facts(document: &Document, say: &Say<'_>) -> Vec<Vec<String>> {
    let vehicle = &document.vehicle;
    let mut rows = vec![row(say, &messages::fact_vehicle(), &vehicle.label)];
    let known: [Named<&Option<String>>; 3] = [
        (messages::fact_vin, &vehicle.vin),
        (messages::fact_plate, &vehicle.plate),
        (messages::fact_engine, &vehicle.engine),
    ];
    rows.extend(known.iter().filter_map(|(name, text)| Some(row(say, &name(), (*text).clone()?))));
    let driven: [Named<&Option<String>>; 2] = [
        (messages::fact_odometer_in, &vehicle.odometer),
        (messages::fact_odometer_out, &vehicle.odometer_out),
    ];
    rows.extend(
        driven.iter().filter_map(|(name, text)| Some(row(say, &name(), distance(text.as_ref()?, say)))),
    );
    let started = document.started.as_ref();
    rows.extend(started.map(|by| row(say, &messages::fact_started(), by.when_and_who(say))));
    rows.push(row(say, &messages::fact_state(), state(document, say)));
    rows.push(row(say, &messages::fact_people(), say.listed(document.people.iter().cloned())));
    rows.push(row(say, &messages::fact_made(), minutes_of(&document.generated_local, say)));
    rows
}

/// A distance as typed with its unit, as the language writes it.
fn distance(typed: &str, say: &Say<'_>) -> String {
    typed.split_once(' ').map_or_else(|| typed.to_owned(), |(value, unit)| say.measure(value, unit))
}

/// How the job stands.
fn state(document: &Document, say: &Say<'_>) -> String {
    let state = say.within(&match &document.end {
        End::Open => messages::state_open(),
        End::Ending => messages::state_ending(),
        End::Finished { by } => messages::state_finished(by.when_and_who(say)),
        End::Stopped { by, reason } => messages::state_stopped(by.when_and_who(say), reason),
    });
    let as_far = (!document.damaged.is_empty()).then(|| say.within(&messages::state_as_far()));
    say.listed([state].into_iter().chain(as_far))
}

/// Concern, cause and correction.
fn said(document: &Document, say: &Say<'_>) -> [Section; 3] {
    let account = &document.account;
    let parts: [(Message, &Vec<Said>); 3] = [
        (messages::heading_concern(), &account.concern),
        (messages::heading_cause(), &account.cause),
        (messages::heading_correction(), &account.correction),
    ];
    parts.map(|(heading, said)| Section::new(&heading, say, vec![answers(said, say)]))
}

pub(super) fn answers(said: &[Said], say: &Say<'_>) -> Block {
    if said.is_empty() {
        return Block::Line(say.says(&messages::not_entered()));
    }
    let rows = said.iter().map(|said| vec![said.label.clone(), said.text.clone()]).collect();
    Block::Table(Table::new(&[Left, Left], rows))
}

fn authorized(document: &Document, say: &Say<'_>) -> Section {
    // The sums come first: a page that is full cuts what stands last.
    let go_aheads = document.authorized.iter().map(|one| vec![one.title.clone(), agreed(one, say)]);
    let sums = agreed_in_all(document, say).into_iter().chain(agreed_one_by_one(document, say));
    let sums = sums.chain(estimated(document, say));
    let rows: Vec<_> = sums.chain(go_aheads).collect();
    let block = if rows.is_empty() {
        Block::Line(say.says(&messages::no_go_ahead()))
    } else {
        Block::Table(Table::new(&[Left, Left], rows))
    };
    Section::new(&messages::heading_authorized(), say, vec![block])
}

/// What each estimate comes to.
fn estimated(document: &Document, say: &Say<'_>) -> Vec<Vec<String>> {
    let is_supplement = |label: &str| {
        let mut asked = document.turned_up.supplements.iter().filter_map(|one| one.estimate.as_ref());
        asked.any(|estimate| estimate.label == label)
    };
    // A supplement has its row already.
    let estimates = document.money.estimates.iter().filter(|estimate| !is_supplement(&estimate.label));
    estimates.map(|estimate| vec![estimate.label.clone(), comes_to(estimate, say)]).collect()
}

/// All amounts that were agreed to, where there are more than one.
pub(super) fn agreed_in_all(document: &Document, say: &Say<'_>) -> Option<Vec<String>> {
    let sums = document.money.agreed_in_all.iter().map(|sum| amount(sum, say));
    let sums = say.within(&messages::before_tax(say.listed(sums)));
    (document.money.agreed.len() > 1).then(|| row(say, &messages::agreed_in_all(), sums))
}

/// What was agreed to at first, and each supplement with what it adds; nothing where there is none.
fn agreed_one_by_one(document: &Document, say: &Say<'_>) -> Vec<Vec<String>> {
    let money = &document.money;
    let first = say.listed(money.agreed_at_first.iter().map(|sum| amount(sum, say)));
    let first = (!first.is_empty())
        .then(|| row(say, &messages::agreed_at_first(), say.within(&messages::before_tax(first))));
    first
        .into_iter()
        .chain(document.turned_up.supplements.iter().filter_map(|one| supplement(one, say)))
        .collect()
}

/// A supplement that counts, with the last answer to it.
pub(super) fn supplement(one: &Supplement, say: &Say<'_>) -> Option<Vec<String>> {
    let answer = one.answers.last().map_or_else(
        || say.within(&messages::no_answer_yet()),
        |last| say.within(&messages::when_who(last.by.day_and_time(say), &last.text)),
    );
    let name = say.within(&messages::supplement(&one.text));
    one.taken_back.is_none().then(|| vec![name, answer])
}

fn agreed(one: &Authorized, say: &Say<'_>) -> String {
    let agreed = say.apart(one.agreed.iter().map(|said| said.text.trim_end_matches('.').to_owned()));
    say.within(&messages::agreed_by(agreed, &one.signed_by, one.by.day_and_time(say)))
}

fn parts(document: &Document, say: &Say<'_>) -> Section {
    let rows: Vec<_> = billed(document).iter().map(|part| part_row(part, say)).collect();
    let has_amounts = !document.money.estimates.is_empty();
    let mut blocks = vec![if rows.is_empty() {
        Block::Line(say.says(&messages::no_new_parts()))
    } else {
        let sides: &[_] = if has_amounts { &[Left, Right, Right] } else { &[Left, Right] };
        Block::Table(Table::new(sides, rows))
    }];
    let labels = other_labels(document).chain(&document.account.old_parts);
    blocks.extend(labels.map(|said| labeled(said, say)));
    Section::new(&messages::heading_parts(), say, blocks)
}

/// A part with how many, and what it comes to where that was estimated.
fn part_row(part: &Billed<'_>, say: &Say<'_>) -> Vec<String> {
    vec![part.called(say), part.quantity(say), part.amount(say)]
}

fn labeled(said: &Said, say: &Say<'_>) -> Block {
    Block::Line(say.within(&messages::labeled(&said.label, &said.text)))
}

fn labor(document: &Document, say: &Say<'_>) -> Section {
    let time = &document.time;
    let mut rows: Vec<_> = document.money.estimates.iter().flat_map(|of| labor_estimated(of, say)).collect();
    rows.extend([
        row(say, &messages::labor_in_all(), say.labor(time.in_steps.labor())),
        row(say, &messages::labor_unplanned(), say.labor(time.in_steps.unplanned)),
        row(say, &messages::labor_waiting(), say.labor(time.in_steps.waiting)),
    ]);
    let mut blocks = vec![Block::Table(Table::new(&[Left, Right], rows))];
    let unplanned = time.apart.iter().filter(|step| step.kind == Kind::Unplanned);
    let unplanned = say.apart(unplanned.map(|step| why(step, say)));
    if !unplanned.is_empty() {
        blocks.push(Block::Line(say.says(&messages::labor_why(unplanned))));
    }
    if time.untimed > 0 {
        blocks.push(Block::Line(say.says(&messages::labor_untimed(time.untimed))));
    }
    Section::new(&messages::heading_labor(), say, blocks)
}

/// What an estimate has of labor: hours, and what they come to.
fn labor_estimated(of: &Estimate, say: &Say<'_>) -> Option<Vec<String>> {
    let hours = say.within(&messages::hours_labor(say.number(&of.hours)));
    let sum = say.measure(&of.labor_sum, &of.currency);
    let said = say.within(&messages::hours_for(hours, sum));
    (!of.labor.is_empty()).then(|| row(say, &messages::labor_estimated(), said))
}

/// An unplanned step with its time and the reason.
fn why(step: &StepTime, say: &Say<'_>) -> String {
    let time = say.within(&messages::step_time(&step.title, say.labor(step.minutes)));
    let reasons = say.apart(step.reasons.iter().map(|reason| reason.trim_end_matches('.').to_owned()));
    if reasons.is_empty() { time } else { say.within(&messages::with_remark(time, reasons)) }
}

fn fluid(document: &Document, say: &Say<'_>) -> Section {
    let fluid = &document.fluid;
    let mut blocks: Vec<Block> = fluid.label.iter().map(|text| Block::Line(text.clone())).collect();
    let sums: [Named<&Option<Amount>>; 2] =
        [(messages::fluid_filled, &fluid.filled_in_all), (messages::fluid_drained, &fluid.drained_in_all)];
    let sums = sums.iter().filter_map(|(name, sum)| Some(row(say, &name(), amount(sum.as_ref()?, say))));
    let poured = |one: &Poured| vec![one.title.clone(), amount(&one.amount, say)];
    let rows: Vec<_> = sums.chain(fluid.filled.iter().map(poured)).collect();
    if rows.is_empty() {
        blocks.push(Block::Line(say.says(&messages::fluid_none())));
    } else {
        blocks.push(Block::Table(Table::new(&[Left, Right], rows)));
    }
    Section::new(&messages::heading_fluid(), say, blocks)
}

pub(super) fn amount(amount: &Amount, say: &Say<'_>) -> String {
    say.measure(&amount.value, &amount.unit)
}

/// What the service writer has to see to.
fn open(document: &Document, say: &Say<'_>) -> Section {
    let dangers = document.dangers.iter().map(|danger| danger_block(danger, say));
    let mut lines: Vec<String> =
        document.damaged.iter().map(|found| say.says(&messages::damaged_data(found))).collect();
    lines.extend(MissingKind::ALL.iter().filter_map(|kind| missing_line(document, *kind, say)));
    if !matches!(document.end, End::Finished { .. }) && !document.vehicle.changed.is_empty() {
        let changed = say.listed(document.vehicle.changed.iter().cloned());
        lines.push(say.says(&messages::status_now(changed)));
    }
    let skipped = document.skipped.iter();
    lines.extend(skipped.map(|step| say.says(&messages::skipped_step(&step.title, &step.reason))));
    lines.extend(document.account.advice.iter().map(|said| say.says(&messages::advised(&said.text))));
    lines.extend(found_lines(document, true, say));
    lines.extend(
        document.codes.last().filter(|codes| !codes.codes.is_empty()).map(|codes| codes_line(codes, say)),
    );
    let mut blocks: Vec<_> = dangers.chain(lines.into_iter().map(Block::Line)).collect();
    if blocks.is_empty() {
        blocks.push(Block::Line(say.says(&messages::nothing_open())));
    }
    Section::new(&messages::heading_open(), say, blocks)
}

/// A danger that there is now; only where somebody can be badly hurt does it stand out.
fn danger_block(danger: &DangerNow, say: &Say<'_>) -> Block {
    let text = say.says(&messages::danger_now(danger.signal, &danger.text));
    if danger.signal == Signal::Danger { Block::Strong(text) } else { Block::Line(text) }
}

fn missing_line(document: &Document, kind: MissingKind, say: &Say<'_>) -> Option<String> {
    let of_kind = document.missing.iter().filter(|missing| missing.kind == kind);
    let what: Vec<_> = of_kind.map(|missing| missing.what.clone()).collect();
    match what.len() {
        0 => None,
        count if count > NAMED => Some(say.says(&messages::missing_count(kind.says(), count))),
        _ => Some(say.says(&messages::missing_named(kind.says(), say.apart(what)))),
    }
}

/// The codes that were read last.
pub(super) fn codes_line(codes: &Codes, say: &Say<'_>) -> String {
    let read = say.listed(codes.codes.iter().cloned());
    let line = say.within(&messages::codes_last(read));
    match &codes.said {
        Some(said) => say.within(&messages::with_remark(line, said)),
        None => line,
    }
}

fn signed(document: &Document, say: &Say<'_>) -> Section {
    let mut signers: Vec<String> = Vec::new();
    for given in document.sign_offs.iter().flat_map(|sign| &sign.given) {
        let signer = say.within(&messages::person_as(&given.signed_by, given.role));
        if !signers.contains(&signer) {
            signers.push(signer);
        }
    }
    let line = if signers.is_empty() { say.says(&messages::nobody_signed()) } else { say.apart(signers) };
    Section::new(&messages::heading_signed(), say, vec![Block::Line(line)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use panside_messages::Speaker;

    #[test]
    fn only_the_worst_dangers_stand_out() {
        let say = Say::by(Speaker::english());
        let danger = |signal| DangerNow { id: "oil".into(), signal, text: "Oil on the floor.".into() };
        let [worst, less] =
            [Signal::Danger, Signal::Warning].map(|signal| danger_block(&danger(signal), &say));
        assert!(matches!(worst, Block::Strong(text) if text == "DANGER now: Oil on the floor."));
        assert!(matches!(less, Block::Line(text) if text == "WARNING now: Oil on the floor."));
    }
}
