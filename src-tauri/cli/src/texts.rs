//! `texts`: what people read of a checklist, to be translated, and what is wrong with a translation.

use std::path::{Path, PathBuf};

use clap::Args;
use panside_messages::Speaker;
use panside_procedure::format::Texts;
use panside_procedure::{Procedure, texts};

use crate::checklist;
use crate::exit::{Exit, Failure, read_document, write};
use crate::out;

/// `texts`.
#[derive(Debug, Args)]
pub struct TextsArgs {
    /// The checklist.
    pub file: PathBuf,
    /// The language that it is to be translated into, as a BCP 47 tag.
    #[arg(long, value_name = "LANGUAGE", default_value = "en", conflicts_with = "check")]
    pub into: String,
    /// Write it to this file instead.
    #[arg(long, conflicts_with = "check")]
    pub out: Option<PathBuf>,
    /// Say what is wrong with this translation.
    #[arg(long, value_name = "FILE")]
    pub check: Option<PathBuf>,
}

/// Prints a checklist's own texts, or checks a translation.
pub fn texts(args: &TextsArgs, speaker: &Speaker) -> Result<Exit, Failure> {
    let (_, procedure) = checklist::load(&args.file)?;
    let checklist = &procedure.checklist;
    if let Some(path) = &args.check {
        let checked = Texts::checked(checklist, &read_document(path)?);
        let texts = checked.map_err(|problems| Failure::does_not_load(path, &problems))?;
        out::say(speaker, &texts.fit());
        return Ok(Exit::Done);
    }
    let texts = Texts::of(checklist, &args.into);
    match &args.out {
        Some(path) => {
            write(path, format!("{}\n", serde_json::to_string_pretty(&texts)?).as_bytes())?;
            out::row(format_args!("{}", path.display()));
        }
        None => out::json(&texts)?,
    }
    Ok(Exit::Done)
}

/// The bytes of a checklist's texts in a language, from the folder beside its file.
pub fn beside(checklist: &Path, procedure: &Procedure, language: &str) -> Result<Vec<u8>, Failure> {
    let folder = checklist.parent().unwrap_or(Path::new("."));
    read_document(&folder.join(texts::file_of(&procedure.checklist.id, language)))
}
