//! One step of the view, with its entries.

use panside_journal::Stamp;
use panside_procedure::format::entry::{Coils, Note};
use panside_procedure::format::{Ask, Entry};
use panside_procedure::machine::{Action, StepIx, VehicleActionIx};
use panside_procedure::{Shown, State};
use panside_trade::coil::OVERLOAD;
use panside_trade::estimate::Estimate;
use panside_trade::measure::Measure;
use panside_trade::money::Money;

use super::decision::{self, draft, is_stale};
use super::make::At;
use super::{Amount, AngleView, EntryView, EstimateView, StepView, TorqueView};
use crate::command::Refusal;
use crate::decide::signs::signs_of;
use crate::decide::work::refuse_missing;
use crate::entry::decision::said_then;
use crate::entry::{self, Context, Past, classify, estimate_of, ms_left};
use crate::event::Event;
use crate::figures::{BoltMap, bolt_map, when};
use crate::job::{Attempt, EnteredValue, Job};
use crate::message::decision_again;
use crate::people::Names;
use crate::value::EntryValue;

pub(super) fn step(at: At<'_>, number: StepIx) -> StepView {
    let procedure = &at.job.procedure;
    let machine = &procedure.machine;
    let (text, detail) = (procedure.step(number), at.job.step(number));
    let shown = machine.shown(at.state, number);
    let attempt = detail.shown();
    let done = (shown == Shown::InProgress).then(|| done(at, number)).flatten();
    let signs: Vec<String> = signs_of(text).map(|(_, sign)| sign.to_owned()).collect();
    let lapsed =
        machine.steps[number.at()].signs.iter().filter(|&&given| machine.has_lapsed(at.state, given));
    StepView {
        number: number.at() + 1,
        id: text.id.clone(),
        phase: machine.steps[number.at()].phase.at(),
        title: text.title.clone(),
        instruction: text.instruction.clone(),
        zone: text.zone,
        cautions: text.cautions.clone(),
        minutes: text.minutes,
        shown,
        held: shown == Shown::InProgress && done.is_none() && !signs.is_empty(),
        begin: at.refusal(Action::Begin(number)),
        done,
        helps: helps(at, number, shown),
        skip: at.refusal(Action::Skip(number)),
        void: at.refusal(Action::Void(number)),
        entries: text.entries.iter().map(|entry| entry_view(at, number, shown, attempt, entry)).collect(),
        signs,
        lapsed: lapsed.map(|&given| procedure.sign_off(given).id.clone()).collect(),
        begun: attempt.map(|attempt| attempt.begun.clone()),
        ended: attempt.and_then(|attempt| attempt.ended.as_ref()).map(|(_, mark)| mark.clone()),
        skipped_for: detail.skipped.clone(),
        voided_for: detail.voids.last().map(|void| void.reason.clone()),
        missed_for: detail.missed.clone(),
    }
}

/// Why a step in progress cannot be done: what must hold while it is worked does not, or something is missing.
fn done(at: At<'_>, step: StepIx) -> Option<Refusal> {
    let draft = draft(at);
    draft.goes_on(step).and_then(|()| refuse_missing(at.job.procedure.step(step), draft.missing(step))).err()
}

/// Vehicle actions that would bring what a step lacks: after one of them less is unmet, and nothing new.
fn helps(at: At<'_>, step: StepIx, shown: Shown) -> Vec<String> {
    let procedure = &at.job.procedure;
    let machine = &procedure.machine;
    let lacks = |state: &State| {
        let mut unmet = Vec::new();
        match shown {
            Shown::InProgress => machine.unmet(&machine.steps[step.at()].while_, state, &mut unmet),
            Shown::Open | Shown::Waiting => {
                unmet =
                    machine.explain(state, Action::Begin(step)).map(|(_, unmet)| unmet).unwrap_or_default();
            }
            _ => {}
        }
        unmet
    };
    let now = lacks(at.state);
    if now.is_empty() {
        return Vec::new();
    }
    let brings = |next: &State| {
        let then = lacks(next);
        then.len() < now.len() && then.iter().all(|one| now.contains(one))
    };
    let made = at.vehicle_actions.iter().enumerate().filter(|(_, next)| next.as_ref().is_ok_and(brings));
    made.map(|(number, _)| procedure.vehicle_action_text(VehicleActionIx::of(number)).id.clone()).collect()
}

fn entry_view<'a>(
    at: At<'a>,
    number: StepIx,
    shown: Shown,
    attempt: Option<&'a Attempt>,
    entry: &'a Entry,
) -> EntryView {
    let step = at.job.procedure.step(number).id.as_str();
    let last = attempt.and_then(|attempt| attempt.latest(&entry.id));
    let ended =
        last.filter(|_| shown != Shown::Voided && attempt.is_some_and(|attempt| attempt.ended.is_some()));
    let judged_at = |seq: u64, begun: Option<&'a Stamp>, at_stamp: &'a Stamp, past: Past<'a>| Context {
        checklist: &at.job.procedure.checklist,
        begun,
        at: at_stamp,
        utc_offset_min: at.job.utc_offset_min(),
        names: Names::Job(&at.job.people, seq),
        step,
        entry: &entry.id,
        past: Some(past),
    };
    let begun = attempt.map(|attempt| &attempt.begun.stamp);
    let ms_left = match &entry.ask {
        Ask::Timer(asked) if shown == Shown::InProgress => ms_left(
            asked,
            &at.job.specs,
            &judged_at(at.job.last_seq(), begun, at.now, Past::of(at.job, &[], at.now)),
        ),
        _ => None,
    };
    let is_stale = shown == Shown::InProgress && last.is_some_and(|last| is_stale(at, number, entry, last));
    let say = |entered: &'a EnteredValue| {
        if is_stale {
            return vec![decision_again(&entry.label)];
        }
        let names = Names::Job(&at.job.people, entered.mark.seq);
        if let Some(said) = said_then(&entry.ask, entered, names) {
            return said;
        }
        let past = Past::before(at.job, entered.mark.seq, &entered.mark.stamp);
        let context = judged_at(entered.mark.seq, begun, &entered.mark.stamp, past);
        classify(&entry.ask, &at.job.specs, &entered.value, &context)
            .map(|judged| judged.said)
            .unwrap_or_default()
    };
    let kind = entry::of(&entry.ask);
    EntryView {
        id: entry.id.clone(),
        label: entry.label.clone(),
        ask: entry.ask.clone(),
        optional: entry.optional,
        limits: kind.limits(&at.job.specs, &at.job.procedure.checklist),
        units: units_of(at.job, &entry.ask, kind.units()),
        temperature_units: kind.temperature_units(),
        torque: torque_of(at, &entry.ask),
        estimate: estimate_view(at, &entry.ask),
        overload: overload_of(&entry.ask),
        coils: coils_of(at, &entry.ask),
        bolts: bolts_of(at, &entry.ask, last),
        decision: decision::view(at, step, &entry.ask, ended),
        value: last.map(|entered| entered.value.clone()),
        class: last.map(|entered| entered.class.clone()),
        ends: entry
            .classes
            .iter()
            .filter(|(_, effect)| effect.ends.is_some())
            .map(|(class, _)| class.clone())
            .collect(),
        not_yet: is_stale
            || last.is_some_and(|entered| {
                entry.classes.get(&entered.class).is_some_and(|effect| effect.not_yet)
            }),
        said: last.map(say).unwrap_or_default(),
        ms_left,
    }
}

/// What the sheet asks for at a torque.
fn torque_of(at: At<'_>, ask: &Ask) -> Option<TorqueView> {
    let Ask::Torque(asked) = ask else { return None };
    let specs = &at.job.specs;
    let stages = specs.torque(&asked.spec)?.stages().iter().map(|stage| Measure::from(stage.target()).into());
    let angle = specs
        .angle(&asked.spec)
        .map(|(angle, fasteners)| AngleView { by: Measure::from(angle.target()).into(), fasteners });
    Some(TorqueView { stages: stages.collect(), angle })
}

/// What the customer is asked about comes to.
fn estimate_view(at: At<'_>, ask: &Ask) -> Option<EstimateView> {
    let Ask::Authorization(asked) = ask else { return None };
    Some(comes_to(&estimate_of(asked, Past::of(at.job, &[], at.now))?))
}

/// What an estimate comes to.
pub(super) fn comes_to(estimate: &Estimate) -> EstimateView {
    let amount =
        |money: Money| Amount { value: money.to_string(), unit: estimate.currency.code().to_owned() };
    let more = estimate.limit > estimate.sum;
    EstimateView { sum: amount(estimate.sum), limit: more.then(|| amount(estimate.limit)) }
}

/// The units of a kind; of currencies the one that was last entered on this job first.
fn units_of(job: &Job, ask: &Ask, units: Vec<String>) -> Vec<String> {
    if matches!(ask, Ask::Estimate(_) | Ask::Authorization(_)) { currencies(job, units) } else { units }
}

/// Currencies, the one that was last entered on a job first.
pub(super) fn currencies(job: &Job, mut units: Vec<String>) -> Vec<String> {
    let last = job.happened.iter().rev().find_map(|happened| match &happened.event {
        Event::Entered(entered) => match &entered.value {
            EntryValue::Estimate(lines) => Some(&lines.currency),
            EntryValue::Authorization(answered) => Some(&answered.currency),
            _ => None,
        },
        Event::Asked(asked) => Some(&asked.lines.currency),
        _ => None,
    });
    // A stable sort: the others keep their order.
    units.sort_by_key(|unit| Some(unit) != last);
    units
}

fn overload_of(ask: &Ask) -> Vec<String> {
    match ask {
        Ask::Coil(_) | Ask::Coils(_) => OVERLOAD.map(str::to_owned).to_vec(),
        Ask::Reading(asked) if entry::is_resistance(asked) => OVERLOAD.map(str::to_owned).to_vec(),
        _ => Vec::new(),
    }
}

/// The coils of the sheet's list.
fn coils_of(at: At<'_>, ask: &Ask) -> Vec<String> {
    match ask {
        Ask::Coils(Coils { of, .. }) | Ask::Note(Note { words_of: Some(of), .. }) => {
            let coils = at.job.specs.coils(of).unwrap_or_default();
            coils.iter().map(|coil| coil.name.clone()).collect()
        }
        _ => Vec::new(),
    }
}

/// The map of a torque's fasteners, with what was last entered.
fn bolts_of(at: At<'_>, ask: &Ask, last: Option<&EnteredValue>) -> Option<BoltMap> {
    let Ask::Torque(asked) = ask else { return None };
    let entered = last.map(|entered| (&entered.value, when(at.job, &entered.mark)));
    bolt_map(&at.job.specs, asked, entered.as_ref().map(|(value, time)| (*value, time.as_str())))
}
