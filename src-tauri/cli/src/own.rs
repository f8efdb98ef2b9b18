//! `store adopt`, `store checklists`, `store checklist`: the shop's own checklists.

use std::path::{Path, PathBuf};

use panside_bay::BayError;
use panside_bay::checklists::ChecklistLine;
use panside_bay::shelf::Shelf;
use panside_messages::Speaker;
use panside_procedure::load;
use panside_procedure::proof::Ask;

use crate::checklist;
use crate::exit::{Exit, Failure, read_document, write};
use crate::message::*;
use crate::out::{self, row, say};
use crate::prove::Meter;
use crate::record;
use crate::way_back;

/// The command line carries no checklists of its own.
const NOTHING: Shelf<'static> = Shelf { checklists: &[], sheets: &[], texts: &[], parts: &[] };

/// Takes in a checklist, proves it for the vehicles of the sheets that fit it, and adopts it.
pub fn adopt(
    dir: &Path,
    file: &Path,
    who: &str,
    sheets: &[PathBuf],
    speaker: &'static Speaker,
) -> Result<Exit, Failure> {
    // What is wrong in a file is said with its name, before the store is opened.
    let (joined, _) = checklist::load(file)?;
    let sheets = sheets.iter().map(|path| sheet(path)).collect::<Result<Vec<_>, _>>()?;
    let sheets: Vec<&[u8]> = sheets.iter().map(Vec::as_slice).collect();
    let shelf = Shelf { sheets: &sheets, ..NOTHING };
    let mut bay = way_back::open(dir, speaker)?;
    let people = bay.setup()?.people;
    let person = people.iter().find(|person| person.name == who);
    let person = person.ok_or_else(|| Failure::new(Exit::Refused, cli_own_nobody(who)))?;
    let hash = bay.take_in_checklist(shelf, joined.text.as_bytes())?;
    let mut meter = Meter::new(speaker);
    let proved = bay.prove_checklist(shelf, &hash, Ask::default(), &mut |progress| meter.show(progress));
    meter.end();
    proved?;
    let line = bay.checklist(shelf, &hash, Ask::default())?;
    bay.adopt_checklist(shelf, (&hash, line.seen), Ask::default(), Some(person.id))?;
    say(speaker, &cli_own_adopted(&line.offer.id, line.offer.revision, &person.name));
    bay.close()?;
    Ok(Exit::Done)
}

fn sheet(path: &Path) -> Result<Vec<u8>, Failure> {
    let bytes = read_document(path)?;
    load::sheet(&bytes).map_err(|problems| Failure::does_not_load(path, &problems))?;
    Ok(bytes)
}

/// Lists what the shop has adopted and what is taken in.
pub fn list(dir: &Path, json: bool, speaker: &'static Speaker) -> Result<Exit, Failure> {
    let list = record::open(dir, speaker)?.checklists(NOTHING, Ask::default())?;
    if json {
        out::json(&list)?;
        return Ok(Exit::Done);
    }
    for ChecklistLine { offer, adopted, .. } in &list.checklists {
        let said = cli_own_row(&offer.id, offer.revision, &offer.title);
        let said = if *adopted { said } else { cli_own_taken_in(said) };
        row(format_args!("{}", speaker.within(&said)));
    }
    list.unreadable.into_iter().for_each(|trouble| say(speaker, &cli_own_trouble(trouble)));
    Ok(Exit::Done)
}

/// Writes the adopted revision of a checklist to a file; where none is adopted, what is taken in.
pub fn export(dir: &Path, id: &str, file: &Path, speaker: &'static Speaker) -> Result<Exit, Failure> {
    let bay = record::open(dir, speaker)?;
    let list = bay.checklists(NOTHING, Ask::default())?.checklists;
    let found = list.into_iter().find(|line| line.offer.id == id);
    let found = found.ok_or_else(|| BayError::NotOnShelf(id.to_owned()))?;
    write(file, &bay.offered(NOTHING, &found.offer.hash)?)?;
    say(speaker, &cli_own_written(file));
    Ok(Exit::Done)
}
