//! What is seen in a window, and waiting until it is.

use std::path::PathBuf;

use serde::Deserialize;
use serde_json::Value;

use crate::window::{Result, Trouble, Window};

/// Milliseconds after which what is waited for will not come any more: so many that no busy machine needs them.
pub const PATIENCE_MS: u32 = 120_000;

/// What a window shows.
#[derive(Debug, Clone, Deserialize)]
pub struct Seen {
    /// It has found out where it was.
    pub ready: bool,
    /// Title of the step on the step sheet.
    pub step: Option<String>,
    /// What is laid over it, by title, the last on top.
    pub dialogs: Vec<String>,
    /// The main button.
    pub main: Option<MainButton>,
    /// What is told in place.
    pub said: Vec<String>,
    /// Every word that is shown.
    pub text: String,
    /// Mistakes in the page's scripts.
    pub mistakes: Vec<String>,
}

/// The button in the thumb corner.
#[derive(Debug, Clone, Deserialize)]
pub struct MainButton {
    /// What it says.
    pub says: String,
    /// It says why not, when it is tapped.
    pub closed: bool,
}

impl Window {
    /// What is shown now.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn see(&mut self) -> Result<Seen> {
        let seen = self.run("looking", "return window.__eyes.see()", vec![])?;
        serde_json::from_value(seen).map_err(|source| Trouble::Json { what: "What is seen".into(), source })
    }

    /// Whether a button that says this can be touched now.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn offers(&mut self, says: &str) -> Result<bool> {
        let found =
            self.run("looking", "return window.__eyes.button(arguments[0]) !== null", vec![says.into()])?;
        Ok(found == Value::Bool(true))
    }

    /// Whether what a CSS selector finds has a text in it.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn shows(&mut self, selector: &str, text: &str) -> Result<bool> {
        let script = "return window.__eyes.all(arguments[0]).some((each) => window.__eyes.words(each).includes(arguments[1]))";
        Ok(self.run("looking", script, vec![selector.into(), text.into()])? == Value::Bool(true))
    }

    /// Whether a button that says this is held down: its answer is the one that stands.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn holds_down(&mut self, says: &str) -> Result<bool> {
        let script = "return window.__eyes.button(arguments[0])?.element.ariaPressed === 'true'";
        Ok(self.run("looking", script, vec![says.into()])? == Value::Bool(true))
    }

    /// What stands in a field, found by its name.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn field_text(&mut self, name: &str) -> Result<String> {
        let script = "return window.__eyes.field(arguments[0])?.element.querySelector('input').value ?? ''";
        let found = self.run("looking at a field", script, vec![name.into()])?;
        Ok(found.as_str().unwrap_or_default().to_owned())
    }

    /// What stands in the field of the pad that is open.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn typed(&mut self) -> Result<String> {
        let script = "return document.querySelector('[role=dialog] input')?.value ?? ''";
        let found = self.run("looking at a field", script, vec![])?;
        Ok(found.as_str().unwrap_or_default().to_owned())
    }

    /// The unit of a keypad that has only one.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn only_unit(&mut self) -> Result<Option<String>> {
        let script = "return window.__eyes.all('.keypad .only').map(window.__eyes.words)[0] ?? null";
        Ok(self.run("looking at the unit", script, vec![])?.as_str().map(str::to_owned))
    }

    /// Everything that stands on what is laid over the rest, without its buttons.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn dialog_text(&mut self) -> Result<String> {
        let script = "return window.__eyes.dialog()";
        Ok(self.run("reading", script, vec![])?.as_str().unwrap_or_default().to_owned())
    }

    /// Waits until a condition on `seen` holds, in JavaScript.
    ///
    /// # Errors
    /// [`Trouble::NotSeen`] when it does not come to hold.
    pub fn wait(&mut self, what: &str, condition: &str) -> Result {
        let script = format!(
            "const done = arguments[0]; window.__eyes.until(() => {{ const seen = window.__eyes.see(); return {condition}; }}, {PATIENCE_MS}).then((held) => done(Boolean(held)))"
        );
        if self.run_async(what, &script, vec![])? == Value::Bool(true) {
            return Ok(());
        }
        Err(self.not_seen(what))
    }

    /// Waits until a button that says this opens, or what is typed has been judged: what is closed then says why when it is
    /// tapped.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn wait_open(&mut self, says: &str) -> Result {
        let script =
            format!("const [says, done] = arguments; window.__eyes.opened(says, {PATIENCE_MS}).then(done)");
        self.run_async("waiting for a button", &script, vec![says.into()]).map(drop)
    }

    /// Waits until no call is under way and what came is painted.
    ///
    /// # Errors
    /// When it does not come to rest.
    pub fn settle(&mut self) -> Result {
        let script = format!("window.__eyes.settled({PATIENCE_MS}).then(arguments[0])");
        if self.run_async("waiting for the window", &script, vec![])? == Value::Bool(true) {
            return Ok(());
        }
        Err(self.not_seen("the window to come to rest, but a call to the core does not end"))
    }

    /// Waits until a pad is left, or says why its value is not entered. Answers what it says.
    ///
    /// # Errors
    /// When neither comes.
    pub fn left(&mut self, pad: &str) -> Result<Option<String>> {
        let script =
            format!("const [pad, done] = arguments; window.__eyes.left(pad, {PATIENCE_MS}).then(done)");
        match self.run_async("waiting for a pad", &script, vec![pad.into()])? {
            Value::Bool(true) => Ok(None),
            Value::String(said) => Ok(Some(said)),
            _ => Err(self.not_seen(&format!("an answer of the pad \"{pad}\""))),
        }
    }

    /// What was looked for, and what there is instead.
    pub fn not_seen(&mut self, wanted: &str) -> Trouble {
        let seen = match self.see() {
            Ok(seen) => format!("There is: {}", seen.text),
            Err(error) => error.to_string(),
        };
        if let Some(path) = std::env::var_os("PANSIDE_LAST_PICTURE").map(PathBuf::from)
            && let Ok(picture) = self.picture()
            && let Err(error) = std::fs::write(&path, picture)
        {
            eprintln!("{}: {error}", path.display());
        }
        Trouble::NotSeen { wanted: wanted.to_owned(), seen }
    }
}
