//! `new-checklist`: a small checklist to begin from.

use std::path::Path;

use panside_bay::{BayError, outside};
use serde_json::Value;

use crate::args::NewChecklistArgs;
use crate::exit::{Exit, Failure};
use crate::out::say;

/// What is written, with `ID` and `TITLE` for the two that differ.
const SMALL: &str = include_str!("new.checklist.json");

/// How the name of a checklist's file ends.
const ENDING: &str = ".checklist.json";

/// Writes a small checklist that loads and is proved, where there is no file yet.
pub fn write(args: &NewChecklistArgs) -> Result<Exit, Failure> {
    let id = id_of(&args.file)?;
    let title = args.title.clone().unwrap_or_else(|| id.replace('-', " "));
    let text = SMALL.replacen("\"id\": ID", &format!("\"id\": {}", Value::from(id)), 1).replacen(
        "\"title\": TITLE",
        &format!("\"title\": {}", Value::from(title)),
        1,
    );
    let path = args.file.display();
    outside::write_new(&args.file, text.as_bytes()).map_err(BayError::from)?;
    say!("{path} is written. Change it, and see what still holds: panside-cli prove {path}");
    Ok(Exit::Done)
}

/// The checklist's id: the name of its file.
fn id_of(path: &Path) -> Result<&str, Failure> {
    let name = path.file_name().and_then(|name| name.to_str()).and_then(|name| name.strip_suffix(ENDING));
    let proper = |char: char| char.is_ascii_lowercase() || char.is_ascii_digit() || char == '-';
    name.filter(|id| !id.is_empty() && id.chars().all(proper)).ok_or_else(|| {
        let message = format!(
            "{} is no name for a checklist: write it in lower-case letters, digits and hyphens, and end it in {ENDING}.",
            path.display()
        );
        Failure::new(Exit::Usage, message)
    })
}
