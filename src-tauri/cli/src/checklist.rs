//! Reading a checklist with the parts it uses, and `join`.

use std::cell::Cell;
use std::path::Path;

use panside_procedure::{Joined, Procedure, parts};

use crate::args::JoinArgs;
use crate::exit::{Exit, Failure, read_document};
use crate::out::print_json;

/// A checklist's file with its parts, which lie in the folder `parts` beside it.
pub fn load(path: &Path) -> Result<(Joined, Procedure), Failure> {
    let joined = joined(path)?;
    let procedure = joined.load().map_err(|problems| Failure::does_not_load(path, &problems))?;
    Ok((joined, procedure))
}

fn joined(path: &Path) -> Result<Joined, Failure> {
    let folder = path.parent().unwrap_or(Path::new("."));
    let checklist = read_document(path)?;
    // A part that is not there is named with the place that names it; one that is there and is not read, by itself.
    let unread = Cell::new(None);
    let part = |name: &str| {
        let file = folder.join(parts::file_of(name));
        read_document(&file).map_err(|failure| file.exists().then(|| unread.set(Some(failure)))).ok()
    };
    let joined = parts::join(&checklist, &part);
    match unread.take() {
        Some(failure) => Err(failure),
        None => joined.map_err(|problems| Failure::does_not_load(path, &problems)),
    }
}

/// Prints a checklist with its parts in place.
pub fn join(args: &JoinArgs) -> Result<Exit, Failure> {
    print_json(joined(&args.file)?.text.trim_end());
    Ok(Exit::Done)
}
