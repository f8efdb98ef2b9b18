//! A job walked by tapping: each line of the script is done as a hand would do it, and a line that must be refused is
//! tried, and what the window says is read.

use std::path::{Path, PathBuf};

use serde_json::{Value, json};

use crate::window::pads::{Pads, close_all, row, single, text};
use crate::window::script::{Line, Script, Step};
use crate::window::{Result, Trouble, Window};

/// Minutes that a tap on the demo clock lets pass.
const CLOCK_STEP: u64 = 5;

/// A job in a window.
#[derive(Debug)]
pub struct Job {
    script: Script,
    photo: PathBuf,
    /// Parts of minutes that did not pass yet: the demo clock goes by whole ones.
    owed_min: f64,
    /// Lines that were tried and could not even be asked for.
    pub not_offered: Vec<usize>,
    /// Lines that were refused, as they must be.
    pub refused: usize,
}

/// What came of a line.
enum Came {
    /// It was taken.
    Taken,
    /// It was refused with these words.
    Refused(String),
    /// The window does not offer it, so that there is nothing to refuse.
    NotOffered,
}

impl Job {
    /// A job by a script, with the photo file for all its photos.
    ///
    /// # Errors
    /// When the script can't be read.
    pub fn new(script: &Path, photo: &Path) -> Result<Job> {
        let script = Script::read(script)?;
        Ok(Job { script, photo: photo.to_owned(), owed_min: 0.0, not_offered: Vec::new(), refused: 0 })
    }

    /// Walks the lines from one to another, counted from 1 and both with it.
    ///
    /// # Errors
    /// [`Trouble::Line`] at the first that does not go as it must.
    pub fn walk(&mut self, window: &mut Window, from: usize, to: usize) -> Result {
        for number in from..=to.min(self.script.lines.len()) {
            let line = self.script.lines[number - 1].clone();
            self.line(window, number, &line).map_err(|trouble| Trouble::Line {
                number,
                command: line.command.to_string(),
                trouble: Box::new(trouble),
            })?;
        }
        Ok(())
    }

    /// A line's command, with nothing done yet; lines are counted from 1.
    #[must_use]
    pub fn command_of(&self, line: usize) -> Value {
        self.script.lines.get(line.wrapping_sub(1)).map_or(Value::Null, |line| line.command.clone())
    }

    /// Does one command that must be taken.
    ///
    /// # Errors
    /// When it is not.
    pub fn make(&mut self, window: &mut Window, command: Value) -> Result {
        self.line(window, 0, &Line { who: None, after_min: 0.0, command, refused: None })
    }

    fn line(&mut self, window: &mut Window, number: usize, line: &Line) -> Result {
        self.wait(window, line.after_min)?;
        if let Some(who) = &line.who {
            self.work(window, who)?;
        }
        match (self.ask(window, line)?, &line.refused) {
            (Came::Taken, None) => Ok(()),
            (Came::NotOffered, Some(_)) => {
                self.not_offered.push(number);
                Ok(())
            }
            (Came::Refused(said), Some(id)) if window.words.holds(&said, id)? => {
                self.refused += 1;
                Ok(())
            }
            (Came::Refused(said), Some(id)) => {
                Err(Trouble::wrong(format!("\"{id}\" must refuse it, but it says: {said}")))
            }
            (Came::Refused(said), None) => Err(Trouble::wrong(format!("It is refused: {said}"))),
            (Came::Taken, Some(id)) => {
                Err(Trouble::wrong(format!("It is taken, and \"{id}\" must refuse it.")))
            }
            (Came::NotOffered, None) => Err(window.not_seen("a way to do it")),
        }
    }

    /// Lets minutes pass: the last of them by a tap on the clock, which draws the page anew.
    fn wait(&mut self, window: &mut Window, minutes: f64) -> Result {
        self.owed_min += minutes;
        let whole = self.owed_min.trunc();
        self.owed_min -= whole;
        let whole = whole as u64;
        let by_hand = if whole >= CLOCK_STEP { CLOCK_STEP } else { 0 };
        if whole > by_hand {
            window.invoke("let_pass", json!({ "minutes": whole - by_hand }))?;
        }
        if by_hand > 0 {
            let words = window.words.with("frame-let-pass", &[("minutes", CLOCK_STEP.into())])?;
            window.tap(&words)?;
            // It is no part of the job.
            window.times.taps -= 1;
        }
        Ok(())
    }

    /// Somebody else works from here on.
    fn work(&mut self, window: &mut Window, who: &str) -> Result {
        let name = self.name(who);
        let works = window.words.say("frame-who-opens")?;
        if window.offers(&format!("{works} {name}"))? {
            return Ok(());
        }
        window.tap(&works)?;
        window.tap(&name)
    }

    /// What somebody is called whom the script knows by a short name.
    fn name(&self, who: &str) -> String {
        self.script.people.get(who).map(|person| person.name.clone()).unwrap_or_default()
    }

    fn ask(&mut self, window: &mut Window, line: &Line) -> Result<Came> {
        if line.command == "finish" {
            return finish(window);
        }
        let (kind, asked) = single(&line.command)?;
        let step = match asked.get("step").and_then(Value::as_str) {
            Some(id) => Some(self.script.step(id)?),
            None => None,
        };
        match (kind, step) {
            ("vehicle_action", None) => self.vehicle_action(window, text(asked, "action")?),
            ("sign", None) => sign_again(window),
            ("observe", None) => observe(window, asked),
            (_, None) => Err(Trouble::wrong(format!("No hand is known for {}.", line.command))),
            (kind, Some((number, step))) => {
                look_at(window, number, step)?;
                self.at_step(window, kind, step, asked, line.refused.is_some())
            }
        }
    }

    fn at_step(
        &self,
        window: &mut Window,
        kind: &str,
        step: &Step,
        asked: &Value,
        trying: bool,
    ) -> Result<Came> {
        match kind {
            "begin" => begin(window),
            "leave" => {
                window.tap_words("sheet-leave")?;
                Ok(Came::Taken)
            }
            "enter" => {
                let value = json!({ (text(asked, "entry")?): asked["value"] });
                match self.entries(window, step, &value)? {
                    None => close_all(window).map(|()| Came::Taken),
                    Some(said) => Ok(Came::Refused(said)),
                }
            }
            "work" => {
                if let Some(said) = self.entries(window, step, &asked["entries"])? {
                    close_all(window)?;
                    return Ok(Came::Refused(said));
                }
                self.sign_and_done(window, asked, trying)
            }
            "done" => self.sign_and_done(window, asked, true),
            "correct" => self.correct(window, step, asked),
            "void" => reason(window, "screens-more-void", text(asked, "reason")?),
            "skip" => reason(window, "screens-more-skip", text(asked, "reason")?),
            other => Err(Trouble::wrong(format!("No hand is known for \"{other}\"."))),
        }
    }

    /// Enters the values of a step, one after the other. Answers why one was refused.
    fn entries(&self, window: &mut Window, step: &Step, entries: &Value) -> Result<Option<String>> {
        let pads = Pads { script: &self.script, photo: &self.photo };
        for (entry, value) in step.asked(entries)? {
            let said = pads.enter(window, step, entry, value)?;
            if said.is_some() {
                return Ok(said);
            }
        }
        Ok(None)
    }

    /// Signs what is to be signed, and presses Done where it is open; where it is tried, in any case.
    fn sign_and_done(&self, window: &mut Window, asked: &Value, trying: bool) -> Result<Came> {
        close_all(window)?;
        for signature in asked.get("signatures").and_then(Value::as_array).into_iter().flatten() {
            let name = self.name(text(signature, "by")?);
            let signed = window.words.with("sheet-signed-by", &[("name", name.clone().into())])?;
            let sign = window.words.with("sheet-sign-as", &[("name", name.into())])?;
            if window.offers(&sign)? {
                window.tap(&sign)?;
            } else if !window.offers(&signed)? {
                return Ok(Came::NotOffered);
            }
        }
        match window.see()?.main {
            Some(main) if main.closed && !trying => Ok(Came::Taken),
            _ => press_main(window, "sheet-main-done"),
        }
    }

    /// Corrects a voided step: only what is otherwise is entered again.
    fn correct(&self, window: &mut Window, step: &Step, asked: &Value) -> Result<Came> {
        window.tap_words("sheet-main-correct")?;
        let pads = Pads { script: &self.script, photo: &self.photo };
        for (entry, value) in step.asked(&asked["entries"])? {
            if !window.shows(&row(step, entry), &shown(entry, value)?)? {
                pads.enter(window, step, entry, value)?;
            }
        }
        close_all(window)?;
        press_main(window, "sheet-main-correct")
    }

    fn vehicle_action(&self, window: &mut Window, id: &str) -> Result<Came> {
        let title = self.script.vehicle_actions.get(id).cloned().unwrap_or_default();
        let vehicle_actions = window.words.say("frame-vehicle-actions-title")?;
        if window.see()?.dialogs.last() != Some(&vehicle_actions) {
            close_all(window)?;
            window.tap_words("frame-opens-vehicle-actions")?;
        }
        window.tap(&title)?;
        let said = window.see()?.said.join(" ");
        let entered = window.words.with("frame-vehicle-actions-entered", &[("action", title.into())])?;
        Ok(if said.contains(&entered) { Came::Taken } else { Came::Refused(said) })
    }
}

/// Looks at a step: goes there by the job steps, unless it is shown.
fn look_at(window: &mut Window, number: usize, step: &Step) -> Result {
    if window.see()?.step.as_ref() != Some(&step.title) {
        close_all(window)?;
        // The line is for the eye; its words begin so.
        let job_steps = format!("{}:", window.words.say("frame-job-steps-title")?);
        window.tap(&job_steps)?;
        let says = format!("{number} {}", step.title);
        // A phase that is done is folded.
        while !window.offers(&says)? {
            window.tap_selector("[role=dialog] [aria-expanded=false]")?;
        }
        window.tap(&says)?;
        let title = Value::from(step.title.as_str());
        return window.wait(&format!("the step \"{}\"", step.title), &format!("seen.step === {title}"));
    }
    Ok(())
}

fn begin(window: &mut Window) -> Result<Came> {
    close_all(window)?;
    let again = window.words.say("sheet-again")?;
    if window.offers(&again)? {
        window.tap(&again)?;
        return Ok(Came::Taken);
    }
    press_main(window, "sheet-main-begin")
}

/// Presses the main button, which must say what a message says. Answers what it says when it is closed.
fn press_main(window: &mut Window, id: &str) -> Result<Came> {
    let says = window.words.say(id)?;
    let before = window.see()?;
    match &before.main {
        Some(main) if main.says == says => {}
        _ => return Err(window.not_seen(&format!("the main button \"{says}\""))),
    }
    window.tap_selector("button.main")?;
    let why = window.words.say("sheet-why-not")?;
    let after = window.see()?;
    if after.dialogs.last() == Some(&why) {
        let said = window.dialog_text()?;
        window.tap_words("back")?;
        return Ok(Came::Refused(said));
    }
    let same = after.step == before.step && after.main.is_some_and(|main| main.says == says);
    Ok(if same { Came::Refused(after.said.join(" ")) } else { Came::Taken })
}

/// Chooses something in More and gives a reason for it.
fn reason(window: &mut Window, choice: &str, reason: &str) -> Result<Came> {
    close_all(window)?;
    window.tap_words("frame-more")?;
    window.tap_words(choice)?;
    window.type_into("[role=dialog] textarea", reason)?;
    window.tap_words("screens-reason-enter")?;
    closed_or_why(window)
}

fn observe(window: &mut Window, asked: &Value) -> Result<Came> {
    close_all(window)?;
    window.tap_words("frame-opens-vehicle-actions")?;
    window.tap_words("frame-vehicle-actions-observe")?;
    window.tap(&in_words(text(asked, "condition")?))?;
    window.tap(&in_words(text(asked, "value")?))?;
    window.type_into("[role=dialog] textarea", text(asked, "reason")?)?;
    window.tap_words("screens-reason-enter")?;
    closed_or_why(window)
}

/// Signs again what has lapsed, from wherever that is offered.
fn sign_again(window: &mut Window) -> Result<Came> {
    let vehicle_actions = window.words.say("frame-vehicle-actions-renew")?;
    if !window.offers(&vehicle_actions)? {
        close_all(window)?;
        window.tap_words("frame-more")?;
        window.tap_words("screens-more-renew")?;
    } else {
        window.tap(&vehicle_actions)?;
    }
    let again = window.words.with("screens-renew-sign", &[("count", 1.into())])?;
    window.tap(&again)?;
    closed_or_why(window)
}

fn finish(window: &mut Window) -> Result<Came> {
    close_all(window)?;
    window.tap_words("frame-more")?;
    window.tap_words("screens-place-record")?;
    window.tap_words("screens-record-finish")?;
    let said = window.dialog_text()?;
    let finish = window.words.say("screens-finish-do")?;
    window.tap(&finish)?;
    if window.see()?.dialogs.is_empty() {
        return Ok(Came::Taken);
    }
    window.tap_words("back")?;
    window.tap_words("screens-place-job")?;
    Ok(Came::Refused(said))
}

/// Nothing is laid over any more: it was taken. Else it says why not.
fn closed_or_why(window: &mut Window) -> Result<Came> {
    let seen = window.see()?;
    if seen.dialogs.is_empty() { Ok(Came::Taken) } else { Ok(Came::Refused(seen.said.join(" "))) }
}

/// What a row shows of a value.
fn shown(entry: &crate::window::script::Entry, value: &Value) -> Result<String> {
    let (kind, given) = single(value)?;
    match kind {
        "reading" => measured(given, "value", "unit"),
        "coil" => {
            let at = measured(given, "temperature", "temperature_unit")?;
            Ok(format!("{} ({at})", measured(given, "shows", "unit")?))
        }
        "coils" => {
            let readings = given["readings"].as_array().into_iter().flatten();
            let read = readings.map(|reading| {
                let shows = text(reading, "shows")?.replace(',', ".");
                Ok(format!("{} {shows} {}", text(reading, "coil")?, text(given, "unit")?))
            });
            let read = read.collect::<Result<Vec<_>>>()?.join(", ");
            Ok(format!("{read} ({})", measured(given, "temperature", "temperature_unit")?))
        }
        "choice" | "decision" => {
            let options = entry.ask.pointer(&format!("/{kind}/options")).and_then(Value::as_array);
            let chosen = options.into_iter().flatten().find(|option| option["class"] == given["class"]);
            chosen.map_or(Ok(String::new()), |option| text(option, "label").map(str::to_owned))
        }
        "note" | "scan" => text(given, "text").map(str::to_owned),
        other => Err(Trouble::wrong(format!("No hand is known for \"{other}\" in a correction."))),
    }
}

/// A number and its unit, with the point that the keypad types.
fn measured(given: &Value, value: &str, unit: &str) -> Result<String> {
    Ok(format!("{} {}", text(given, value)?.replace(',', "."), text(given, unit)?))
}

/// An id in words, as the window writes what has no words of its own.
fn in_words(id: &str) -> String {
    id.replace('_', " ")
}
