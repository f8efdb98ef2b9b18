//! `new-checklist`: a small checklist to begin from.

use std::path::Path;

use panside_bay::{BayError, outside};
use panside_messages::Speaker;
use serde_json::Value;

use crate::args::NewChecklistArgs;
use crate::exit::{Exit, Failure};
use crate::message::{cli_new_name, cli_new_written};
use crate::out::say;

/// What is written, with `ID` and `TITLE` for the two that differ.
const SMALL: &str = include_str!("new.checklist.json");

/// How the name of a checklist's file ends.
const ENDING: &str = ".checklist.json";

/// Writes a small checklist that loads and is proved, where there is no file yet.
pub fn write(args: &NewChecklistArgs, speaker: &Speaker) -> Result<Exit, Failure> {
    let id = id_of(&args.file)?;
    let title = args.title.clone().unwrap_or_else(|| id.replace('-', " "));
    let text = SMALL.replacen("\"id\": ID", &format!("\"id\": {}", Value::from(id)), 1).replacen(
        "\"title\": TITLE",
        &format!("\"title\": {}", Value::from(title)),
        1,
    );
    outside::write_new(&args.file, text.as_bytes()).map_err(BayError::from)?;
    say(speaker, &cli_new_written(args.file.as_path()));
    Ok(Exit::Done)
}

/// The checklist's id: the name of its file.
fn id_of(path: &Path) -> Result<&str, Failure> {
    let name = path.file_name().and_then(|name| name.to_str()).and_then(|name| name.strip_suffix(ENDING));
    let proper = |char: char| char.is_ascii_lowercase() || char.is_ascii_digit() || char == '-';
    name.filter(|id| !id.is_empty() && id.chars().all(proper))
        .ok_or_else(|| Failure::new(Exit::Usage, cli_new_name(path, ENDING)))
}
