//! A document from a job and what the job does not know.

use std::collections::BTreeMap;

use panside_job::{Event, Job, Message, figures};
use panside_journal::PersonId;
use panside_messages::Speaker;
use panside_procedure::machine::VarIx;

use super::{
    COME_FIRST, DEMO_MARK, DangerNow, Document, End, Journal, Papers, Proof, RECORD_FORMAT, Stands, Vehicle,
};
use crate::account::{self, Account};
use crate::by::iso;
use crate::day;
use crate::departures;
use crate::inputs::RecordInputs;
use crate::items::{self, Tally};
use crate::measured;
use crate::missing::missing;
use crate::signs;
use crate::source::Source;
use crate::steps;
use crate::time;

/// What a proof covers.
const PROOF_COVERS: &str = "The proof covers allowed orders of what was entered. It does not cover what was not entered \
                            or was entered wrongly, and it does not physically stop anyone.";
/// What a chain shows and what not.
const CHAIN_SHOWS: &str = "Each event names the one before it by hash, so that an event changed, taken out, put in or \
                           moved shows. A tail cut off or a whole chain made anew does not show by itself: it shows \
                           against a head that was kept elsewhere, such as the one printed here.";

impl Document {
    /// What classes are called, so that it can be put in.
    pub fn each_label(&mut self, put: &mut dyn FnMut(&mut Message)) {
        let steps = self.phases.iter_mut().flat_map(|phase| &mut phase.steps);
        for attempt in steps.flat_map(|step| &mut step.attempts) {
            attempt.entries.iter_mut().for_each(|entry| put(&mut entry.called));
        }
        self.levels.iter_mut().for_each(|level| put(&mut level.called));
        self.torques.iter_mut().for_each(|torque| put(&mut torque.called));
        self.by_name.iter_mut().for_each(|passed| put(&mut passed.called));
    }

    /// The record of a job as it stands now.
    #[must_use]
    pub fn of(job: &Job, inputs: &RecordInputs) -> Document {
        let source = Source { job };
        let (checklist, sheet) = (&job.procedure.checklist, &job.specs.sheet);
        let started = job.start.as_ref().map(|(_, started)| started);
        let demo = checklist.demo || sheet.demo || started.is_some_and(|started| started.demo);
        let tally = items::of(source);
        let came_in = started.map(|started| started.conditions.clone()).unwrap_or_default();
        Document {
            format: RECORD_FORMAT.to_owned(),
            title: checklist.title.clone(),
            demo: demo.then(|| DEMO_MARK.to_owned()),
            damaged: inputs.damaged.clone(),
            job: inputs.job.to_string(),
            generated_utc: iso(&inputs.generated, 0),
            generated_local: iso(&inputs.generated, job.utc_offset_min()),
            vehicle: Vehicle {
                repair_order: started.map(|started| started.repair_order.clone()).unwrap_or_default(),
                label: started.map(|started| started.label.clone()).unwrap_or_default(),
                vin: account::vin(source),
                odometer: account::odometer(source),
                otherwise: otherwise(job, &came_in),
                came_in,
                stands: stands(job),
            },
            started: job.start.as_ref().map(|(mark, _)| source.by(mark)),
            end: end(source),
            people: people(job),
            papers: started.map(|started| Papers {
                checklist: started.checklist.clone(),
                sheet: started.sheet.clone(),
                sheet_title: sheet.title.clone(),
            }),
            account: Account::of(source),
            time: time::of(source, &inputs.generated),
            missing: missing(job),
            dangers: dangers(job),
            codes: account::codes(source),
            phases: steps::of(source),
            vehicle_actions: departures::vehicle_actions(source),
            day: day::of(source),
            levels: measured::levels(source),
            charts: measured::charts(sheet),
            figures: figures::figures(job),
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
            disagreements: disagreements(job, inputs, &tally),
            tally,
            proof: proof(job, inputs),
            journal: Journal { events: inputs.events, head: inputs.head, shows: CHAIN_SHOWS.to_owned() },
            come_first: COME_FIRST.to_owned(),
        }
    }
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
fn people(job: &Job) -> Vec<String> {
    let mut came: Vec<PersonId> = Vec::new();
    for happened in &job.happened {
        if !came.contains(&happened.who) {
            came.push(happened.who);
        }
    }
    came.into_iter().map(|person| names(job, person)).collect()
}

fn names(job: &Job, person: PersonId) -> String {
    let mut names: Vec<&str> = Vec::new();
    for appeared in job.people.of(person) {
        if !names.contains(&appeared.name.as_str()) {
            names.push(&appeared.name);
        }
    }
    match names.as_slice() {
        [] => person.to_string(),
        [only] => (*only).to_owned(),
        [first, later @ ..] => format!("{first} (later {})", later.join(", ")),
    }
}

fn dangers(job: &Job) -> Vec<DangerNow> {
    let now = job.procedure.machine.dangers_now(&job.state);
    let texts = now.iter().map(|number| &job.procedure.checklist.dangers[number.at()]);
    texts
        .map(|text| DangerNow { id: text.id.clone(), signal: text.signal, text: text.text.clone() })
        .collect()
}

fn disagreements(job: &Job, inputs: &RecordInputs, tally: &Tally) -> Vec<String> {
    let speaker = Speaker::english();
    let differs = job.disagreements.iter();
    let mut all: Vec<String> =
        differs.map(|found| format!("event {}: {}", found.seq, speaker.within(&found.what))).collect();
    if job.last_seq() != inputs.events {
        all.push(format!(
            "the journal has {} events and the record was made of {}",
            inputs.events,
            job.last_seq()
        ));
    }
    for item in &job.procedure.checklist.items {
        let counted =
            tally.items.iter().find(|found| found.id == item.id).map_or(0, |found| found.pieces.left);
        let by_job = job.tally.off(&item.id);
        if counted != by_job {
            all.push(format!("{}: {counted} left off by the record, {by_job} by the job", item.name));
        }
    }
    all
}

fn proof(job: &Job, inputs: &RecordInputs) -> Proof {
    let pinned = job.start.as_ref().map(|(_, started)| started.checklist.hash);
    Proof {
        of_this_checklist: inputs.proof.as_ref().is_some_and(|proof| Some(proof.checklist) == pinned),
        summary: inputs.proof.clone(),
        covers: PROOF_COVERS.to_owned(),
    }
}

/// What does not stand as it came in.
fn otherwise(job: &Job, came_in: &BTreeMap<String, String>) -> Vec<Stands> {
    let stands = stands(job).into_iter().filter(|(id, value)| came_in.get(id) != Some(value));
    let labelled = stands.map(|(id, value)| {
        let (what, is) = job.procedure.labels_of(&id, &value);
        Stands { what: what.to_owned(), is: is.to_owned() }
    });
    labelled.collect()
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
