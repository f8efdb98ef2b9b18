//! A document from a job and what the job does not know.

use std::collections::BTreeMap;

use panside_job::figures::Figure;
use panside_job::{Event, Job, figures};
use panside_journal::PersonId;
use panside_messages::Speaker;
use panside_procedure::machine::VarIx;

use super::{DangerNow, Document, End, Journal, Papers, Proof, RECORD_FORMAT, Vehicle};
use crate::account::{self, Account};
use crate::bill;
use crate::by::iso;
use crate::day;
use crate::departures;
use crate::inputs::RecordInputs;
use crate::items::{self, Tally};
use crate::measured;
use crate::messages;
use crate::missing::missing;
use crate::money;
use crate::signs;
use crate::source::Source;
use crate::speak::Say;
use crate::steps;
use crate::time;
use crate::turned_up;

impl Document {
    /// The record of a job as it stands now, put into words by a speaker.
    #[must_use]
    pub fn of(job: &Job, inputs: &RecordInputs, speaker: &Speaker) -> Document {
        let say = &Say::by(speaker);
        let source = Source { job, say };
        let (checklist, sheet) = (&job.procedure.checklist, &job.specs.sheet);
        let started = job.start.as_ref().map(|(_, started)| started);
        let demo = checklist.demo || sheet.demo || started.is_some_and(|started| started.demo);
        let tally = items::of(source);
        Document {
            format: RECORD_FORMAT.to_owned(),
            title: checklist.title.clone(),
            demo: demo.then(|| say.within(&messages::demo_mark())),
            damaged_mark: (!inputs.damaged.is_empty()).then(|| say.within(&messages::damaged_mark())),
            damaged: inputs.damaged.clone(),
            job: inputs.job.to_string(),
            generated_utc: iso(&inputs.generated, 0, say),
            generated_local: iso(&inputs.generated, job.utc_offset_min(), say),
            vehicle: vehicle(source),
            started: job.start.as_ref().map(|(mark, _)| source.by(mark)),
            end: end(source),
            people: people(source),
            papers: started.map(|started| Papers {
                checklist: started.checklist.clone(),
                sheet: started.sheet.clone(),
                sheet_title: sheet.title.clone(),
            }),
            account: Account::of(source),
            authorized: account::authorized(source),
            money: money::of(source),
            turned_up: turned_up::of(source),
            parts: bill::parts(source, &tally),
            fluid: bill::fluid(source),
            time: time::of(source, &inputs.generated),
            missing: missing(source),
            dangers: dangers(job),
            codes: account::codes(source),
            phases: steps::of(source),
            vehicle_actions: departures::vehicle_actions(source),
            day: day::of(source),
            levels: measured::levels(source),
            charts: measured::charts(sheet),
            figures: figures(job, speaker),
            torques: measured::torques(source),
            sign_offs: signs::of(source),
            photos: measured::photos(source, &inputs.captions),
            voided: departures::voided(source),
            skipped: departures::skipped(source),
            missed: departures::missed(source),
            by_name: departures::by_name(source),
            observed: departures::observed(source),
            clock_set: departures::clock_set(source),
            restarted: departures::restarted(source),
            disagreements: disagreements(source, inputs, &tally),
            tally,
            proof: proof(source, inputs),
            journal: Journal {
                events: inputs.events,
                head: inputs.head,
                shows: say.says(&messages::chain_shows()),
            },
            come_first: say.says(&messages::come_first()),
        }
    }
}

fn vehicle(source: Source<'_>) -> Vehicle {
    let job = source.job;
    let started = job.start.as_ref().map(|(_, started)| started);
    let came_in = started.map(|started| started.conditions.clone()).unwrap_or_default();
    let stands = stands(job);
    let changed = stands.iter().filter(|(id, value)| came_in.get(*id) != Some(value));
    let changed = changed.map(|(id, value)| departures::status(source, id, value)).collect();
    let (odometer, odometer_out) = account::odometer(source);
    Vehicle {
        repair_order: started.map(|started| started.repair_order.clone()).unwrap_or_default(),
        label: started.map(|started| started.label.clone()).unwrap_or_default(),
        vin: account::vin(source),
        plate: account::named(source, "plate"),
        engine: account::named(source, "engine"),
        odometer,
        odometer_out,
        came_in,
        stands,
        changed,
    }
}

/// The figures of the job, with their sentences.
fn figures(job: &Job, speaker: &Speaker) -> Vec<Figure> {
    let mut figures = figures::figures(job);
    figures.iter_mut().for_each(|figure| figure.each_message(&mut |message| speaker.fill(message)));
    figures
}

fn end(source: Source<'_>) -> End {
    let Some(mark) = &source.job.end else {
        let is_ending = source.job.procedure.machine.is_ending(&source.job.state);
        return if is_ending { End::Ending } else { End::Open };
    };
    let by = source.by(mark);
    match source.event(mark.seq) {
        Some(Event::Stopped(body)) => End::Stopped { by, reason: body.reason.clone() },
        _ => End::Finished { by },
    }
}

/// Who worked on the job, in the order in which they came, each under all their names.
fn people(source: Source<'_>) -> Vec<String> {
    let job = source.job;
    let mut came: Vec<PersonId> = Vec::new();
    for happened in &job.happened {
        if !came.contains(&happened.who) {
            came.push(happened.who);
        }
    }
    came.into_iter().map(|person| names(source, person)).collect()
}

fn names(source: Source<'_>, person: PersonId) -> String {
    let mut names: Vec<&str> = Vec::new();
    for appeared in source.job.people.of(person) {
        if !names.contains(&appeared.name.as_str()) {
            names.push(&appeared.name);
        }
    }
    match names.as_slice() {
        [] => person.to_string(),
        [only] => (*only).to_owned(),
        [first, later @ ..] => {
            let later = source.say.listed(later.iter().map(|name| (*name).to_owned()));
            source.say.within(&messages::person_later(*first, later))
        }
    }
}

fn dangers(job: &Job) -> Vec<DangerNow> {
    let now = job.procedure.machine.dangers_now(&job.state);
    let texts = now.iter().map(|number| &job.procedure.checklist.dangers[number.at()]);
    texts
        .map(|text| DangerNow { id: text.id.clone(), signal: text.signal, text: text.text.clone() })
        .collect()
}

fn disagreements(source: Source<'_>, inputs: &RecordInputs, tally: &Tally) -> Vec<String> {
    let (job, say) = (source.job, source.say);
    let found = job.disagreements.iter();
    let mut all: Vec<String> =
        found.map(|found| say.says(&messages::differs_event(found.seq, found.what.clone()))).collect();
    if job.last_seq() != inputs.events {
        let [journal, record] = [inputs.events, job.last_seq()].map(|events| events.to_string());
        all.push(say.says(&messages::differs_length(journal, record)));
    }
    for item in &job.procedure.checklist.items {
        let counted =
            tally.items.iter().find(|found| found.id == item.id).map_or(0, |found| found.pieces.left);
        let by_job = job.tally.off(&item.id);
        if counted != by_job {
            let [record, job] = [counted, by_job].map(|pieces| pieces.to_string());
            all.push(say.within(&messages::differs_pieces(&item.name, record, job)));
        }
    }
    all
}

fn proof(source: Source<'_>, inputs: &RecordInputs) -> Proof {
    let pinned = source.job.start.as_ref().map(|(_, started)| started.checklist.hash);
    Proof {
        of_this_checklist: inputs.proof.as_ref().is_some_and(|proof| Some(proof.checklist) == pinned),
        summary: inputs.proof.as_ref().map(|summary| summary.said(source.say)),
        covers: source.say.says(&messages::proof_covers()),
    }
}

/// Every condition with its value.
fn stands(job: &Job) -> BTreeMap<String, String> {
    let conditions = job.procedure.checklist.conditions.iter().enumerate();
    let value = |at| job.procedure.machine.value(&job.state, VarIx::of(at));
    conditions
        .map(|(at, condition)| {
            let var = VarIx::of(at);
            (condition.id.clone(), job.procedure.value_name(var, value(at)).to_owned())
        })
        .collect()
}
