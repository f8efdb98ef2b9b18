//! One open window: what is seen in it, and the finger on it.

use std::path::{Path, PathBuf};

use fantoccini::elements::{Element, ElementRef};
use fantoccini::error::CmdError;
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde::Deserialize;
use serde_json::{Value, json};
use tokio::runtime::Runtime;

use crate::window::{Programs, Result, Screen, Times, Trouble, Words};

/// What looks at the page from inside.
const EYES: &str = include_str!("eyes.js");

/// Milliseconds in which what is waited for must come. The longest is a photo of many megapixels.
const PATIENCE_MS: u32 = 15_000;

/// Milliseconds in which a button opens once the core has looked at what is typed.
const MOMENT_MS: u32 = 1_500;

/// The name of an element in what the driver answers (W3C WebDriver, section 12.1, "web element identifier").
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

/// A window of Panside, opened by the driver of a screen.
#[derive(Debug)]
pub struct Window {
    client: Client,
    runtime: Runtime,
    /// The words that are looked for.
    pub words: Words,
    /// What the hand did.
    pub times: Times,
}

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
    /// Opens the window on a store. The demo clock is there, so that a test does not wait for an exhaust to cool.
    ///
    /// # Errors
    /// When it does not open, or its page does not come up.
    pub fn open(screen: &Screen, programs: &Programs, store: &Path) -> Result<Window> {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build();
        let runtime =
            runtime.map_err(|source| Trouble::Start { program: "the driver's client".into(), source })?;
        let arguments = json!(["--store", store, "--demo-clock"]);
        let options = json!({ "binary": programs.window, "args": arguments });
        let capabilities = [("webkitgtk:browserOptions".to_owned(), options)].into_iter().collect();
        let mut builder = ClientBuilder::new(HttpConnector::new());
        builder.capabilities(capabilities);
        let client = runtime.block_on(builder.connect(&screen.address()))?;
        let mut window = Window { client, runtime, words: Words::read()?, times: Times::default() };
        window.run("the script that looks", EYES, vec![])?;
        window.wait("the window to find out where it was", "seen.ready")?;
        window.settle()?;
        Ok(window)
    }

    /// Closes the window as a person does.
    ///
    /// # Errors
    /// When the driver can't.
    pub fn close(self) -> Result<Times> {
        let closed = self.runtime.block_on(self.client.close());
        closed.map_err(|error| Trouble::Driver("closing the window".into(), error))?;
        Ok(self.times)
    }

    /// What is shown now.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn see(&mut self) -> Result<Seen> {
        let seen = self.run("looking", "return window.__eyes.see()", vec![])?;
        serde_json::from_value(seen).map_err(|source| Trouble::Json { what: "What is seen".into(), source })
    }

    /// Taps the button that says this: just this, or begins with it, or has it in it.
    ///
    /// # Errors
    /// When there is no such button to touch, or two are alike.
    pub fn tap(&mut self, says: &str) -> Result {
        self.tap_at(&format!("a button that says \"{says}\""), "window.__eyes.button(arguments[0])", says)
    }

    /// Taps the button that says what a message of the window says.
    ///
    /// # Errors
    /// When there is no such button to touch, or two are alike.
    pub fn tap_words(&mut self, id: &str) -> Result {
        let says = self.words.say(id)?;
        self.tap(&says)
    }

    /// Taps what a CSS selector finds first.
    ///
    /// # Errors
    /// When there is nothing to touch.
    pub fn tap_selector(&mut self, selector: &str) -> Result {
        self.tap_at(selector, "window.__eyes.at(arguments[0])", selector)
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

    /// Whether a button that says this is held down: its answer is the one that stands.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn holds_down(&mut self, says: &str) -> Result<bool> {
        let script = "return window.__eyes.button(arguments[0])?.element.ariaPressed === 'true'";
        Ok(self.run("looking", script, vec![says.into()])? == Value::Bool(true))
    }

    /// Waits for a moment whether a button that says this opens; what is closed says why when it is tapped.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn wait_open(&mut self, says: &str) -> Result {
        let script = format!(
            "const [says, done] = arguments; window.__eyes.until(() => window.__eyes.button(says)?.closed === false, {MOMENT_MS}).then(done)"
        );
        self.run_async("waiting for a button", &script, vec![says.into()]).map(drop)
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

    /// Taps a field, found by its name, unless it is the one that is typed at.
    ///
    /// # Errors
    /// When there is no such field.
    pub fn come_to(&mut self, name: &str) -> Result {
        let look = "window.__eyes.field(arguments[0])";
        self.come_to_at(&format!("a field \"{name}\""), look, name)
    }

    /// Taps one of several fields, counted from 0, unless it is the one that is typed at.
    ///
    /// # Errors
    /// When there is no such field.
    pub fn come_to_nth(&mut self, selector: &str, place: usize) -> Result {
        let look = format!("window.__eyes.nth(arguments[0], {place})");
        self.come_to_at(&format!("field {} of {selector}", place + 1), &look, selector)
    }

    fn come_to_at(&mut self, what: &str, look: &str, argument: &str) -> Result {
        let script = format!("return {look}?.element.classList.contains('active') ?? false");
        if self.run(what, &script, vec![argument.into()])? == Value::Bool(true) {
            return Ok(());
        }
        self.tap_at(what, look, argument)
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

    /// Whether what a CSS selector finds has a text in it.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn shows(&mut self, selector: &str, text: &str) -> Result<bool> {
        let script = "return window.__eyes.all(arguments[0]).some((each) => window.__eyes.words(each).includes(arguments[1]))";
        Ok(self.run("looking", script, vec![selector.into(), text.into()])? == Value::Bool(true))
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

    /// Types on a real keyboard into what a CSS selector finds.
    ///
    /// # Errors
    /// When there is no such field.
    pub fn type_into(&mut self, selector: &str, text: &str) -> Result {
        let (field, _) = self.find(selector, "window.__eyes.at(arguments[0])", selector)?;
        self.times.typed += text.chars().count();
        self.driver("typing", |window| window.runtime.block_on(field.send_keys(text)))?;
        self.settle()
    }

    /// Types on a real keyboard in the place of what stands in a field.
    ///
    /// # Errors
    /// When there is no such field.
    pub fn replace_in(&mut self, selector: &str, text: &str) -> Result {
        self.tap_selector(selector)?;
        self.run("choosing what stands there", "document.activeElement.select()", vec![])?;
        self.type_into(selector, text)
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

    /// Gives a file to the field for photos of an entry, as the device's camera or file dialog would.
    ///
    /// # Errors
    /// When there is no such field.
    pub fn give_photo(&mut self, entry: &str, file: &Path) -> Result {
        let selector = format!("input[type=file][data-entry=\"{entry}\"]");
        let (field, _) = self.find("a field for a photo", "window.__eyes.at(arguments[0])", &selector)?;
        self.times.photos += 1;
        let path = file.to_string_lossy().into_owned();
        self.driver("giving a photo", |window| window.runtime.block_on(field.send_keys(&path)))?;
        self.settle()
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

    /// Calls a command of the core from the page, where a hand would take too long.
    ///
    /// # Errors
    /// When the command fails.
    pub fn invoke(&mut self, command: &str, takes: Value) -> Result<Value> {
        let script = "const [command, takes, done] = arguments; \
            window.__TAURI_INTERNALS__.invoke(command, takes).then((answer) => done({ answer }), (error) => done({ error }))";
        let answer = self.run_async(command, script, vec![command.into(), takes])?;
        match answer.get("error") {
            Some(error) => Err(Trouble::wrong(format!("\"{command}\" failed: {error}"))),
            None => Ok(answer.get("answer").cloned().unwrap_or_default()),
        }
    }

    /// Runs a script in the page and answers what it returns.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn run(&mut self, what: &str, script: &str, arguments: Vec<Value>) -> Result<Value> {
        self.driver(what, |window| window.runtime.block_on(window.client.execute(script, arguments)))
    }

    /// The window's picture, as PNG.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn picture(&mut self) -> Result<Vec<u8>> {
        self.driver("taking a picture", |window| window.runtime.block_on(window.client.screenshot()))
    }

    /// Takes down how long each tap took so far.
    ///
    /// # Errors
    /// When the driver fails.
    pub fn take_times(&mut self) -> Result {
        let times = self.run("reading the times", "return window.__eyes.times.splice(0)", vec![])?;
        let times: Vec<f64> = serde_json::from_value(times)
            .map_err(|source| Trouble::Json { what: "The times of the taps".into(), source })?;
        self.times.painted_ms.extend(times);
        Ok(())
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

    fn tap_at(&mut self, what: &str, look: &str, argument: &str) -> Result {
        let (element, scrolled) = self.find(what, look, argument)?;
        self.times.taps += 1;
        self.times.scrolled += usize::from(scrolled);
        self.driver(what, |window| window.runtime.block_on(element.click()))?;
        self.settle()
    }

    /// Waits for something to touch. Answers it, and whether it had to be scrolled to.
    fn find(&mut self, what: &str, look: &str, argument: &str) -> Result<(Element, bool)> {
        let script = format!(
            "const done = arguments[1]; window.__eyes.until(() => {look}, {PATIENCE_MS}).then(done)",
        );
        let found = self.run_async(what, &script, vec![argument.into()])?;
        let Some(id) = found.pointer(&format!("/element/{ELEMENT}")).and_then(Value::as_str) else {
            return Err(self.not_seen(what));
        };
        let element = Element::from_element_id(self.client.clone(), ElementRef::from(id.to_owned()));
        Ok((element, found["scrolled"] == Value::Bool(true)))
    }

    fn run_async(&mut self, what: &str, script: &str, arguments: Vec<Value>) -> Result<Value> {
        self.driver(what, |window| window.runtime.block_on(window.client.execute_async(script, arguments)))
    }

    fn driver<T>(
        &mut self,
        what: &str,
        call: impl FnOnce(&mut Window) -> std::result::Result<T, CmdError>,
    ) -> Result<T> {
        call(self).map_err(|error| Trouble::Driver(what.to_owned(), error))
    }
}
