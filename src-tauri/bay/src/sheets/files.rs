//! Spec sheets as files: out beside the store, in from anywhere.

use panside_journal::PersonId;
use panside_procedure::load;
use panside_shop::Thing;

use crate::setup::one_of_the_shop;
use crate::shelf::Shelf;
use crate::{Bay, BayError};

/// The most characters of the id of a sheet or a checklist.
pub(crate) const LONGEST_ID: usize = 100;

/// Whether an id can become a file's name.
pub(crate) fn names_file(id: &str) -> bool {
    (1..=LONGEST_ID).contains(&id.len()) && id.chars().all(|c| matches!(c, 'a'..='z' | '0'..='9' | '-'))
}

impl Bay {
    /// Takes in for `who` a sheet from the bytes of its file and answers its id. The same file taken in twice is there
    /// once.
    ///
    /// # Errors
    /// [`BayError::Sheet`] and [`BayError::SheetLacks`] with everything that is wrong in the file, [`BayError::SheetId`];
    /// [`BayError::SheetBuiltIn`] for one that the program carries; [`BayError::Shop`] where the same or a newer revision
    /// is here, or for somebody who is not of the shop; [`BayError::Store`] with what the disk said.
    pub fn import_sheet(
        &mut self,
        shelf: Shelf<'_>,
        bytes: &[u8],
        who: Option<PersonId>,
    ) -> Result<String, BayError> {
        let sheet = load::sheet(bytes).map_err(BayError::Sheet)?;
        self.specs(&sheet)?;
        let id = sheet.id.clone();
        if !names_file(&id) {
            return Err(BayError::SheetId(id.chars().take(LONGEST_ID).collect()));
        }
        if shelf.sheet(&id).is_ok() {
            return Err(BayError::SheetBuiltIn(id));
        }
        let seen = self.heads_of(&Thing::Sheet(id.clone()))?;
        self.put_sheet((&sheet, bytes), (None, seen), one_of_the_shop(who)?, &[])?;
        Ok(id)
    }

    /// Writes a sheet's newest revision into the store's folder `sheets` and answers the file's path.
    ///
    /// # Errors
    /// [`BayError::NotOnShelf`] when there is none, [`BayError::Store`] with what the disk said.
    pub fn export_sheet(&self, shelf: Shelf<'_>, id: &str) -> Result<String, BayError> {
        let text = self.sheet_text(shelf, id)?;
        let revision = load::sheet(&text).map_err(BayError::Sheet)?.revision;
        let path = self.store.put_sheet_file(&format!("{id}-{revision}.sheet.json"), &text)?;
        Ok(path.to_string_lossy().into_owned())
    }
}
