//! What the window can be started with.

use std::fmt;
use std::path::PathBuf;

use crate::message::{panside_unknown_option, speaker};

/// Options of the program.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Options {
    /// The folder of the store. Nothing: the app's own data folder.
    pub store: Option<PathBuf>,
    /// Time can be let pass, for looking at a demo job. Never for a vehicle.
    pub demo_clock: bool,
}

/// An option that is not known or lacks its value.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub struct UnknownOption(pub String);

impl fmt::Display for UnknownOption {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&speaker().say(&panside_unknown_option(&self.0)))
    }
}

impl Options {
    /// Reads the words after the program's name.
    ///
    /// # Errors
    /// [`UnknownOption`] with the word.
    pub fn read(words: impl IntoIterator<Item = String>) -> Result<Options, UnknownOption> {
        let mut options = Options::default();
        let mut words = words.into_iter();
        while let Some(word) = words.next() {
            match word.as_str() {
                "--demo-clock" => options.demo_clock = true,
                "--store" => {
                    let folder = words.next().ok_or(UnknownOption(word))?;
                    options.store = Some(PathBuf::from(folder));
                }
                _ => return Err(UnknownOption(word)),
            }
        }
        Ok(options)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(words: &[&str]) -> Result<Options, UnknownOption> {
        Options::read(words.iter().map(|word| (*word).to_owned()))
    }

    #[test]
    fn a_store_and_the_demo_clock_can_be_named() -> Result<(), UnknownOption> {
        let options = read(&["--store", "/tmp/bay", "--demo-clock"])?;
        assert_eq!(options, Options { store: Some("/tmp/bay".into()), demo_clock: true });
        assert_eq!(read(&[])?, Options::default());
        Ok(())
    }

    #[test]
    fn what_is_not_known_is_named() {
        assert_eq!(read(&["--stroe", "x"]), Err(UnknownOption("--stroe".into())));
        assert_eq!(read(&["--store"]), Err(UnknownOption("--store".into())));
    }
}
