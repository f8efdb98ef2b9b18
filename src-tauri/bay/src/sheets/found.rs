//! The sheets there are: of the shop, and of the shelf.

use panside_procedure::format::Sheet;
use panside_procedure::load;

use super::SHEET;
use crate::shelf::Shelf;
use crate::{Bay, BayError};

/// The sheets there are, the newest revision of each.
pub(crate) struct Found {
    pub sheets: Vec<(Sheet, bool)>,
    pub unreadable: Vec<String>,
}

impl Bay {
    /// The text of a sheet's newest revision, as a job pins it.
    ///
    /// # Errors
    /// [`BayError::NotOnShelf`] when there is none, [`BayError::Store`] with what the disk said.
    pub fn sheet_text(&self, shelf: Shelf<'_>, id: &str) -> Result<Vec<u8>, BayError> {
        match self.shop()?.sheets().get(id) {
            Some(kept) => self.pinned(&kept.sheet.hash, SHEET),
            None => shelf.sheet(id).map(<[u8]>::to_vec),
        }
    }

    /// Every sheet in its newest revision: those of the shop, then those of the shelf that the shop has none of.
    pub(crate) fn found_sheets(&self, shelf: Shelf<'_>) -> Result<Found, BayError> {
        let mut found = Found { sheets: Vec::new(), unreadable: Vec::new() };
        let shop = self.shop()?;
        let ours = shop.sheets();
        for (id, one) in &ours {
            let text = self.pinned(&one.sheet.hash, SHEET);
            match text.and_then(|text| load::sheet(&text).map_err(BayError::Sheet)) {
                Ok(sheet) => found.sheets.push((sheet, false)),
                Err(error) => {
                    found.unreadable.push(format!("{id}: {}", self.speaker.say(&error.message())));
                }
            }
        }
        for bytes in shelf.sheets {
            let sheet = load::sheet(bytes).map_err(BayError::Sheet)?;
            if !ours.contains_key(sheet.id.as_str()) {
                found.sheets.push((sheet, true));
            }
        }
        found.sheets.sort_by(|(one, _), (other, _)| one.title.cmp(&other.title));
        Ok(found)
    }

    pub(super) fn found_sheet(&self, shelf: Shelf<'_>, id: &str) -> Result<(Sheet, bool), BayError> {
        let found = self.found_sheets(shelf)?.sheets.into_iter().find(|(sheet, _)| sheet.id == id);
        found.ok_or_else(|| BayError::NotOnShelf(id.to_owned()))
    }
}
