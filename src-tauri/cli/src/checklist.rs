//! Reading a checklist with the parts it uses, and `join`.

use std::path::Path;

use panside_procedure::{Joined, Procedure, parts};

use crate::args::JoinArgs;
use crate::exit::{Exit, Failure, read_document};
use crate::out::print;

/// A checklist's file with its parts, which lie in the folder `parts` beside it.
pub fn load(path: &Path) -> Result<(Joined, Procedure), Failure> {
    let joined = joined(path)?;
    let procedure = joined.load().map_err(|problems| Failure::does_not_load(path, &problems))?;
    Ok((joined, procedure))
}

fn joined(path: &Path) -> Result<Joined, Failure> {
    let folder = path.parent().unwrap_or(Path::new("."));
    let part = |name: &str| read_document(&folder.join(parts::file_of(name))).ok();
    parts::join(&read_document(path)?, &part).map_err(|problems| Failure::does_not_load(path, &problems))
}

/// Prints a checklist with its parts in place.
pub fn join(args: &JoinArgs) -> Result<Exit, Failure> {
    print(format_args!("{}", joined(&args.file)?.text));
    Ok(Exit::Done)
}
