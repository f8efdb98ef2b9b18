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
use panside_messages::{Message, Speaker};
use panside_procedure::proof::Ask;
use serde_json::{Value, json};

use crate::args::WalkArgs;
use crate::checklist;
use crate::exit::{Exit, Failure, read, read_document, write};
use crate::message::*;
use crate::out::{self, row, say};
use crate::prove::Meter;
use crate::record;
use crate::said;
use crate::script::{self, Line, Person, Script};
use crate::setup;
use crate::texts;
use crate::when::When;

/// Walks a script.
pub fn walk(args: &WalkArgs, speaker: &'static Speaker) -> Result<Exit, Failure> {
    // A wrong ending is said before the walk and not after it.
    args.record.as_deref().map(|path| args.print.form(path)).transpose()?;
    let mut script = script::read(&args.script)?;
    // The commands of a script keep their ids, on whatever day it is walked.
    let words = serde_json::to_string(&script)?;
    let walked = args.lines.unwrap_or(usize::MAX).min(script.lines.len());
    let when = When::of(&script, walked, args.until.as_deref())?;
    script.move_calibrations(when.days);
    let lines = &script.lines[..walked];
    let clock = Arc::new(when.clock(&words));
    let bay = Bay::open_noted(&args.store, Box::new(Arc::clone(&clock)), state_folder())?.speaking(speaker);
    record::look(&bay, args.even_so)?;
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
        let mut meter = Meter::new(self.bay.speaker());
        let proved =
            self.bay.prove(checklist.text.as_bytes(), &sheet, ask, &mut |progress| meter.show(progress));
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
            &cli_walk_job(job.to_string(), &self.script.repair_order, &self.script.title),
        )?;
        if self.script.demo && !self.args.json {
            say(self.bay.speaker(), &cli_walk_demo());
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
            self.print(json!({ "goes_on_after": behind }), &cli_walk_goes_on(behind))?;
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
        if let Some(words) = script::numbers_in(&mut command, self.bay.job(job)?) {
            let what = cli_script_line(number, cli_script_nothing(words));
            return Err(Failure::new(Exit::DoesNotLoad, cli_script(self.args.script.as_path(), what)));
        }
        let command = script::command(&self.args.script, line, number, command, &self.script.people)?;
        let head = self.bay.head(job)?;
        let request = self.request(number);
        let asked = said::command(&command);
        let who = self.bay.people()?.person(self.actor.id)?.name.clone();
        match (self.bay.enter(job, head, request, &self.actor, &command)?, &line.refused) {
            (Answer::Entered { events, .. }, None) => {
                for event in &events {
                    let said = self.bay.speaker().within(&said::event(self.bay.job(job)?, event));
                    let as_json = json!({ "line": number, "who": who, "event": event.kind(), "said": said });
                    self.print_line(as_json, &who, &said)?;
                }
                Ok(())
            }
            (Answer::Refused(refusal), Some(expected)) if refusal.message.id == *expected => {
                let speaker = self.bay.speaker();
                let said = refusal.said_by(speaker);
                let as_json = json!({ "line": number, "who": who, "refused": expected, "said": said });
                self.print_line(as_json, &who, &speaker.within(&cli_walk_refused(refusal.sentences())))
            }
            (Answer::Refused(refusal), expected) => {
                let why = unexpected(number, asked, &refusal, expected.as_deref());
                Err(Failure::new(Exit::Refused, why))
            }
            (Answer::Entered { .. }, Some(expected)) => {
                Err(Failure::new(Exit::Refused, cli_walk_taken(number, asked, expected)))
            }
        }
    }

    /// Takes in a photo for each `{"photo_file": NAME}` and puts its value in the place.
    fn take_photos(&mut self, job: JobId, value: &mut Value) -> Result<(), Failure> {
        if let Some(name) = value.get("photo_file").and_then(Value::as_str) {
            let path = match (self.script.photos.get(name), &self.args.photo) {
                (Some(file), _) => self.folder.join(file),
                (None, Some(file)) => file.clone(),
                (None, None) => {
                    return Err(Failure::new(Exit::Usage, cli_script_no_photo(name)));
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
            row(format_args!("\n{}", self.bay.record_text(&document, self.args.print.pages())));
        }
        if let Some(path) = &self.args.record {
            record::save(&self.bay, &document, path, &self.args.print)?;
            self.print(json!({ "record": path }), &cli_record_in(path.as_path()))?;
        }
        Ok(())
    }

    fn time(&self) -> String {
        time_of_day(&self.clock.now(), self.script.utc_offset_min)
    }

    fn print(&self, as_json: Value, as_text: &Message) -> Result<(), Failure> {
        if self.args.json {
            out::print_json(&serde_json::to_string(&as_json)?);
        } else {
            say(self.bay.speaker(), as_text);
        }
        Ok(())
    }

    /// Prints what came of a line, in columns: its number, the time of day, who, and what is said.
    fn print_line(&self, as_json: Value, who: &str, said: &str) -> Result<(), Failure> {
        if self.args.json {
            out::print_json(&serde_json::to_string(&as_json)?);
        } else {
            let text = format!("{:>4}  {}  {who:<12} {said}", as_json["line"].to_string(), self.time());
            row(format_args!("{}", clean::line(&text)));
        }
        Ok(())
    }
}

/// Why a line ends the walk whose command is refused.
fn unexpected(number: usize, command: Message, refusal: &Refusal, expected: Option<&str>) -> Message {
    let (id, sentences) = (&refusal.message.id, refusal.sentences());
    match expected {
        None => cli_walk_not_expected(number, command, id, sentences),
        Some(expected) => cli_walk_other_refusal(number, command, id, expected, sentences),
    }
}

fn first_actor(script: &Script) -> Result<Actor, Failure> {
    let first = script.lines.iter().find_map(|line| line.who.as_ref());
    let first = first.ok_or_else(|| Failure::new(Exit::DoesNotLoad, cli_script_no_who()))?;
    actor(script, first)
}

fn actor(script: &Script, who: &str) -> Result<Actor, Failure> {
    script
        .people
        .get(who)
        .and_then(Person::acts)
        .ok_or_else(|| Failure::new(Exit::DoesNotLoad, cli_script_nobody(who)))
}
