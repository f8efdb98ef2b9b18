//! Checklists that share parts: a file that says `{"use": "NAME"}` into one text that has the part there.
//!
//! The joined text is an ordinary checklist, copied piece by piece from the files as they are written, so that it can
//! be read, hashed and kept like any other. Each place in it is known by the file it was copied from. A part brings
//! steps or phases to where it is used, and everything else that it has to the checklist's lists. Nothing is
//! overridden: what stands in two files must be the same in both.
//!
//! Whoever reads a checklist's file joins first: the command line (`cli/src/checklist.rs`), the tests
//! (`panside_tests::checklist`) and the window's build script, which builds the joined texts in. Only the joined text
//! is proved, hashed and kept. Parts have one level, and terms and words fit a part to a checklist, so that what is
//! read in the part is what holds.

mod gather;
mod read;
mod write;

use std::collections::BTreeMap;

use crate::load::place::{At, Places};
use crate::load::{Problems, Procedure};

/// The folder of parts, beside the checklists.
pub const FOLDER: &str = "parts";
/// How the names of part files end.
pub const ENDING: &str = ".part.json";

/// A checklist with its parts in place.
#[derive(Debug, Clone)]
pub struct Joined {
    /// The whole, as [`Procedure::load`] takes it. A checklist that uses no part is its own text.
    pub text: String,
    pieces: Vec<Piece>,
    /// The files: the checklist's own first, then the parts.
    sources: Vec<Source>,
}

/// From a byte of the joined text on, the text of a source from a byte on; nothing where joining itself wrote.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Piece {
    at: usize,
    from: Option<(usize, usize)>,
}

/// A file, as far as places in it are told.
#[derive(Debug, Clone)]
struct Source {
    file: Option<String>,
    places: BTreeMap<usize, At>,
}

/// Puts the parts that a checklist uses in their places. `part` gives the bytes of a part by its name.
///
/// # Errors
/// Every mistake in the use of parts and in the shape of the parts, each with its file, its place and what to do. What
/// is wrong with the whole is told by [`Joined::load`].
pub fn join(checklist: &[u8], part: &dyn Fn(&str) -> Option<Vec<u8>>) -> Result<Joined, Problems> {
    let (own, parts) = read::all(checklist, part)?;
    write::joined(own, &parts)
}

/// The file of a part, seen from the folder of the checklists.
#[must_use]
pub fn file_of(part: &str) -> String {
    format!("{FOLDER}/{part}{ENDING}")
}

impl Joined {
    /// Reads the checklist. Places that are told, then and by a proof, are those in the files it was joined from.
    ///
    /// # Errors
    /// Every mistake in it, each with its file, its place and what to do.
    pub fn load(&self) -> Result<Procedure, Problems> {
        Procedure::load_traced(self.text.as_bytes(), &|places| self.trace(places))
    }

    fn trace(&self, places: &mut Places) {
        let files = self.sources.iter().map(|source| source.file.clone()).collect();
        places.trace(files, &|byte| {
            // What joining put between the pieces stands for the checklist as a whole.
            let whole = At { file: 0, line: 1, column: 1 };
            let after = self.pieces.partition_point(|piece| piece.at <= byte);
            let Some(piece) = after.checked_sub(1).map(|at| self.pieces[at]) else { return whole };
            let Some((source, from)) = piece.from else { return whole };
            let found = self.sources[source].places.get(&(from + byte - piece.at));
            found.map_or(whole, |at| At { file: source, ..*at })
        });
    }
}
