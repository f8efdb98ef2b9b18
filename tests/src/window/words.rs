//! The words of the window, from its own message files, so that a better word breaks no test.

use fluent_bundle::{FluentArgs, FluentBundle, FluentResource, FluentValue};
use unic_langid::LanguageIdentifier;

use crate::window::programs::root;
use crate::window::{Result, Trouble};

/// Every message in English: the window's and the core's.
pub struct Words(FluentBundle<FluentResource>);

impl std::fmt::Debug for Words {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str("Words")
    }
}

impl Words {
    /// Reads them.
    ///
    /// # Errors
    /// When a file can't be read.
    pub fn read() -> Result<Words> {
        let messages = root().join("src-tauri/messages/en");
        let mut files = vec![messages.join("job.ftl")];
        let window = messages.join("window");
        let fail = |doing, path: &std::path::Path| {
            let path = path.to_owned();
            move |source| Trouble::File { doing, path, source }
        };
        for entry in std::fs::read_dir(&window).map_err(fail("Reading the folder", &window))? {
            files.push(entry.map_err(fail("Reading the folder", &window))?.path());
        }
        let mut bundle = FluentBundle::new(vec![LanguageIdentifier::default()]);
        bundle.set_use_isolating(false);
        for path in files {
            let text = std::fs::read_to_string(&path).map_err(fail("Reading", &path))?;
            let resource = FluentResource::try_new(text)
                .map_err(|_| Trouble::wrong(format!("{} has a mistake in it.", path.display())))?;
            bundle.add_resource_overriding(resource);
        }
        Ok(Words(bundle))
    }

    /// A message without arguments.
    ///
    /// # Errors
    /// When there is no such message.
    pub fn say(&self, id: &str) -> Result<String> {
        self.with(id, &[])
    }

    /// A message with its arguments.
    ///
    /// # Errors
    /// When there is no such message, or an argument is left out.
    pub fn with(&self, id: &str, args: &[(&str, FluentValue<'_>)]) -> Result<String> {
        let mut given = FluentArgs::new();
        for (name, value) in args {
            given.set((*name).to_owned(), value.clone());
        }
        match self.formatted(id, &given)? {
            (text, true) => Ok(text),
            (text, false) => Err(Trouble::wrong(format!("\"{id}\" wants more arguments: {text}"))),
        }
    }

    /// Whether a text holds the sentence of a message, whatever its arguments are.
    ///
    /// # Errors
    /// When there is no such message.
    pub fn holds(&self, text: &str, id: &str) -> Result<bool> {
        let (sentence, _) = self.formatted(id, &FluentArgs::new())?;
        let mut rest = text;
        // An argument that is not given stands there as {$name}.
        for part in sentence.split("{$").map(|part| part.split_once('}').map_or(part, |(_, after)| after)) {
            match rest.find(part.trim()) {
                Some(at) => rest = &rest[at + part.trim().len()..],
                None => return Ok(false),
            }
        }
        Ok(true)
    }

    /// A message, and whether all its arguments were there.
    fn formatted(&self, id: &str, args: &FluentArgs<'_>) -> Result<(String, bool)> {
        let pattern = self.0.get_message(id).and_then(|message| message.value());
        let pattern = pattern.ok_or_else(|| Trouble::wrong(format!("No message is called \"{id}\".")))?;
        let mut errors = Vec::new();
        let text = self.0.format_pattern(pattern, Some(args), &mut errors).into_owned();
        Ok((text, errors.is_empty()))
    }
}
