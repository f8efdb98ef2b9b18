//! `walk`: drives a job from a script through the use cases that the window has.
//!
//! Each line is a command with an id that follows from the script's text and the line's number, so that the same walk on
//! the same store goes on where it was cut off, and writes nothing twice.

use std::path::Path;
use std::sync::Arc;

use panside_bay::Bay;
use panside_bay::clean;
use panside_bay::clock::{Clock, ManualClock, time_of_day};
use panside_bay::enter::{Actor, Answer, JobId, Refusal, RequestId, request_named};
use panside_bay::photos::LARGEST_PHOTO;
use panside_bay::start::NewJob;
use panside_bay::way_back::state_folder;
use panside_messages::Speaker;
use panside_procedure::proof::Ask;
use serde_json::{Value, json};

use crate::args::WalkArgs;
use crate::checklist;
use crate::exit::{Exit, Failure, read, read_document, write};
use crate::out::{self, say};
use crate::prove::Meter;
use crate::record;
use crate::said;
use crate::script::{self, Line, Person, Script};
use crate::setup;
use crate::texts;
use crate::when::When;

/// Walks a script.
pub fn walk(args: &WalkArgs) -> Result<Exit, Failure> {
    // A wrong ending is told before the walk and not after it.
    args.record.as_deref().map(|path| args.print.form(path)).transpose()?;
    let mut script = script::read(&args.script)?;
    // The commands of a script keep their ids, on whatever day it is walked.
    let words = serde_json::to_string(&script)?;
    let walked = args.lines.unwrap_or(usize::MAX).min(script.lines.len());
    let when = When::of(&script, walked, args.until.as_deref())?;
    script.move_calibrations(when.days);
    let lines = &script.lines[..walked];
    let clock = Arc::new(when.clock(&words));
    let bay = Bay::open_noted(&args.store, Box::new(Arc::clone(&clock)), state_folder())?;
    record::said(&bay, args.even_so)?;
    let folder = args.script.parent().unwrap_or(Path::new(".")).to_owned();
    let mut walk =
        Walk { args, script: &script, words, folder: &folder, bay, clock, actor: first_actor(&script)? };
    let job = walk.start()?;
    walk.page(job, 0)?;
    let behind = walk.behind(job)?;
    for (number, line) in (1..).zip(lines) {
        walk.wait_and_turn_to(line)?;
        if number > behind {
            walk.line(job, number, line)?;
        }
        walk.page(job, number)?;
    }
    walk.end(job)?;
    walk.bay.close()?;
    Ok(Exit::Done)
}

struct Walk<'a> {
    args: &'a WalkArgs,
    script: &'a Script,
    /// The script's text, which names its commands.
    words: String,
    folder: &'a Path,
    bay: Bay,
    clock: Arc<ManualClock>,
    actor: Actor,
}

impl Walk<'_> {
    fn start(&mut self) -> Result<JobId, Failure> {
        let path = self.folder.join(&self.script.checklist);
        let (checklist, procedure) = checklist::load(&path)?;
        let texts = self.script.language.as_deref();
        let texts = texts.map(|language| texts::beside(&path, &procedure, language)).transpose()?;
        let sheet = read_document(&self.folder.join(&self.script.sheet))?;
        let ask = if self.args.plain_proof {
            Ask { void: false, observe: false, ..Ask::default() }
        } else {
            Ask::default()
        };
        let mut meter = Meter::new();
        let proved = self.bay.prove(checklist.text.as_bytes(), ask, &mut |progress| meter.show(progress));
        meter.end();
        let new = NewJob {
            sheet: &sheet,
            texts: texts.as_deref(),
            repair_order: &self.script.repair_order,
            label: &self.script.label,
            conditions: self.script.conditions.clone(),
            utc_offset_min: self.script.utc_offset_min,
        };
        setup::add(self.script, &mut self.bay)?;
        let job = self.bay.start(&proved?, &new, &self.actor, self.request(0))?;
        self.print(
            json!({ "started": job, "repair_order": self.script.repair_order, "demo": self.script.demo }),
            &format!("Job {job}: {}, {}", self.script.repair_order, self.script.title),
        )?;
        if self.script.demo && !self.args.json {
            say!("Demo values, not for a vehicle.");
        }
        Ok(job)
    }

    /// The id of a line's command; 0 for the start.
    fn request(&self, number: usize) -> RequestId {
        request_named(&format!("{number} {}", self.words))
    }

    /// How many lines are behind, because an earlier walk of this script was cut off after them.
    fn behind(&self, job: JobId) -> Result<usize, Failure> {
        let written = self.bay.requests_of(job)?;
        let behind = (1..=self.script.lines.len()).rfind(|&number| written.contains(&self.request(number)));
        if let Some(behind) = behind {
            self.print(
                json!({ "goes_on_after": behind }),
                &format!("Lines 1 to {behind} are in the journal already."),
            )?;
        }
        Ok(behind.unwrap_or(0))
    }

    fn wait_and_turn_to(&mut self, line: &Line) -> Result<(), Failure> {
        if let Some(who) = &line.who {
            self.actor = actor(self.script, who)?;
        }
        self.clock.advance_ms(line.wait_ms());
        Ok(())
    }

    /// Does one line.
    fn line(&mut self, job: JobId, number: usize, line: &Line) -> Result<(), Failure> {
        let mut command = line.command.clone();
        self.take_photos(job, &mut command)?;
        let command = script::command(line, number, command, &self.script.people)?;
        let head = self.bay.head(job)?;
        let request = self.request(number);
        let before = said::command(&command);
        let speaker = Speaker::english();
        let who = self.bay.people()?.person(self.actor.id)?.name.clone();
        match (self.bay.enter(job, head, request, &self.actor, &command)?, &line.refused) {
            (Answer::Entered { events, .. }, None) => {
                for event in &events {
                    let said = said::event(speaker, self.bay.job(job)?, event);
                    self.print(
                        json!({ "line": number, "who": who, "event": event.kind(), "said": said }),
                        &format!("{number:>4}  {}  {who:<12} {said}", self.time()),
                    )?;
                }
                Ok(())
            }
            (Answer::Refused(refusal), Some(expected)) if refusal.message.id == *expected => {
                let said = refusal.said_by(self.bay.speaker());
                self.print(
                    json!({ "line": number, "who": who, "refused": expected, "said": said }),
                    &format!("{number:>4}  {}  {who:<12} refused, as expected: {said}", self.time()),
                )?;
                Ok(())
            }
            (Answer::Refused(refusal), expected) => Err(Failure::new(
                Exit::Refused,
                self.unexpected(number, &before, &refusal, expected.as_deref()),
            )),
            (Answer::Entered { .. }, Some(expected)) => Err(Failure::new(
                Exit::Refused,
                format!("Line {number}: {before} was taken, though \"{expected}\" was expected."),
            )),
        }
    }

    fn unexpected(&self, number: usize, command: &str, refusal: &Refusal, expected: Option<&str>) -> String {
        let said = refusal.said_by(self.bay.speaker());
        match expected {
            None => format!("Line {number}: {command} is refused ({}). {said}", refusal.message.id),
            Some(expected) => format!(
                "Line {number}: {command} is refused with \"{}\", though \"{expected}\" was expected. {said}",
                refusal.message.id
            ),
        }
    }

    /// Takes in a photo for each `{"photo_file": NAME}` and puts its value in the place.
    fn take_photos(&mut self, job: JobId, value: &mut Value) -> Result<(), Failure> {
        if let Some(name) = value.get("photo_file").and_then(Value::as_str) {
            let path = match (self.script.photos.get(name), &self.args.photo) {
                (Some(file), _) => self.folder.join(file),
                (None, Some(file)) => file.clone(),
                (None, None) => {
                    let message =
                        format!("The script takes the photo \"{name}\": give a file with --photo FILE.");
                    return Err(Failure::new(Exit::Usage, message));
                }
            };
            *value = serde_json::to_value(self.bay.add_photo(job, &read(&path, LARGEST_PHOTO)?)?)?;
            return Ok(());
        }
        let parts: Vec<&mut Value> = match value {
            Value::Array(parts) => parts.iter_mut().collect(),
            Value::Object(parts) => parts.values_mut().collect(),
            _ => Vec::new(),
        };
        parts.into_iter().try_for_each(|part| self.take_photos(job, part))
    }

    /// Writes what a screen would show now.
    fn page(&mut self, job: JobId, number: usize) -> Result<(), Failure> {
        let Some(folder) = &self.args.pages else { return Ok(()) };
        write(&folder.join(format!("{number:03}.json")), &serde_json::to_vec(&self.bay.page(job)?)?)
    }

    fn end(&mut self, job: JobId) -> Result<(), Failure> {
        if let Some(folder) = &self.args.pages {
            write(&folder.join("record.json"), &serde_json::to_vec(&self.bay.record_page(job)?)?)?;
            write(&folder.join("figures.json"), &serde_json::to_vec(&self.bay.figures_page(job)?)?)?;
        }
        let document = self.bay.record(job)?;
        if !self.args.json && !self.args.no_text {
            say!("\n{}", self.bay.record_text(&document, self.args.print.pages()));
        }
        if let Some(path) = &self.args.record {
            record::save(&self.bay, &document, path, &self.args.print)?;
            self.print(json!({ "record": path }), &format!("The record is in {}.", path.display()))?;
        }
        Ok(())
    }

    fn time(&self) -> String {
        time_of_day(&self.clock.now(), self.script.utc_offset_min)
    }

    fn print(&self, as_json: Value, as_text: &str) -> Result<(), Failure> {
        if self.args.json {
            out::print_json(&serde_json::to_string(&as_json)?);
        } else {
            say!("{}", clean::line(as_text));
        }
        Ok(())
    }
}

fn first_actor(script: &Script) -> Result<Actor, Failure> {
    let first = script.lines.iter().find_map(|line| line.who.as_ref());
    let first = first.ok_or_else(|| Failure::new(Exit::DoesNotLoad, "The first line must say \"who\"."))?;
    actor(script, first)
}

fn actor(script: &Script, who: &str) -> Result<Actor, Failure> {
    script
        .people
        .get(who)
        .and_then(Person::acts)
        .ok_or_else(|| Failure::new(Exit::DoesNotLoad, format!("Nobody in \"people\" is called \"{who}\".")))
}
