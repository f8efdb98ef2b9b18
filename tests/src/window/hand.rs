//! One open window, and the finger on it.

use std::path::Path;
use std::time::{Duration, Instant};

use fantoccini::elements::{Element, ElementRef};
use fantoccini::error::CmdError;
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use tokio::runtime::Runtime;

use crate::window::look::PATIENCE_MS;
use crate::window::times::Painted;
use crate::window::{Programs, Result, Screen, Times, Trouble, Words};

/// What WebKit's driver says when an answer of the page got lost on the way.
const LOST_ANSWER: &str = "Could not parse script result";
/// How often the page is asked again then.
const ASKED_AGAIN: usize = 2;

/// What looks at the page from inside.
const EYES: &str = include_str!("eyes.js");

/// The name of an element in what the driver answers (W3C WebDriver, "web element identifier").
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
        // Longer than anything here waits for by itself.
        let timeouts = json!({ "script": 2 * PATIENCE_MS });
        let capabilities =
            [("webkitgtk:browserOptions".to_owned(), options), ("timeouts".to_owned(), timeouts)];
        let capabilities = capabilities.into_iter().collect();
        let mut builder = ClientBuilder::new(HttpConnector::new());
        builder.capabilities(capabilities);
        let client = runtime.block_on(builder.connect(&screen.address()))?;
        let mut window = Window { client, runtime, words: Words::read()?, times: Times::default() };
        window.come_up()?;
        Ok(window)
    }

    /// Waits until a page that was just loaded has found out where it was.
    fn come_up(&mut self) -> Result {
        self.run("the script that looks", EYES, vec![])?;
        self.wait("the window to find out where it was", "seen.ready")?;
        self.settle()
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

    /// Taps the button that says what a message of the window says, and that has the page loaded anew.
    ///
    /// # Errors
    /// When there is no such button to touch, or the page does not come up again.
    pub fn tap_words_anew(&mut self, id: &str) -> Result {
        let says = self.words.say(id)?;
        let (button, _) = self.find(&says, "window.__eyes.button(arguments[0])", &says)?;
        self.times.taps += 1;
        self.driver(&says, |window| window.runtime.block_on(button.click()))?;
        let since = Instant::now();
        // The script that looks goes with the page that it was put into.
        while self.run("waiting for a new page", "return window.__eyes === undefined", vec![])?
            != Value::Bool(true)
        {
            if since.elapsed() > Duration::from_millis(PATIENCE_MS.into()) {
                return Err(self.not_seen("a new page"));
            }
            std::thread::sleep(Duration::from_millis(20));
        }
        self.come_up()
    }

    /// Taps what a CSS selector finds first.
    ///
    /// # Errors
    /// When there is nothing to touch.
    pub fn tap_selector(&mut self, selector: &str) -> Result {
        self.tap_at(selector, "window.__eyes.at(arguments[0])", selector)
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
        let times: Vec<Painted> = serde_json::from_value(times)
            .map_err(|source| Trouble::Json { what: "The times of the taps".into(), source })?;
        self.times.painted.extend(times);
        Ok(())
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
        let scrolled = found["scrolled"] == Value::Bool(true);
        if scrolled {
            // The page takes the first tap after a scroll for one that the scroll misled, unless a hand pauses.
            self.settle()?;
            self.run("pausing after a scroll", "window.__eyes.pause()", vec![])?;
        }
        Ok((element, scrolled))
    }

    /// Runs a script in the page that waits and changes nothing, and answers what it gives to its last argument. The driver
    /// loses such an answer once in some thousand; then the page is asked again.
    pub(crate) fn run_async(&mut self, what: &str, script: &str, arguments: Vec<Value>) -> Result<Value> {
        for _ in 0..ASKED_AGAIN {
            let arguments = arguments.clone();
            let run =
                |window: &mut Window| window.runtime.block_on(window.client.execute_async(script, arguments));
            match self.driver(what, run) {
                Err(Trouble::Driver(_, error)) if error.to_string().contains(LOST_ANSWER) => {}
                answer => return answer,
            }
        }
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
