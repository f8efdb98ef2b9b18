//! What is typed of spec sheets and not kept. A sheet that is kept is a document, named by an event of the shop.

use std::collections::BTreeMap;

use rusqlite::{Connection, params};

use crate::error::{at_most, sql};
use crate::open::Store;
use crate::settings::LARGEST_KEY;
use crate::{Doing, StoreError};

const READING: Doing = Doing::ReadingSheets;
const DRAFTING: Doing = Doing::KeepingSheetDraft;
const PUT_DRAFT: &str =
    "INSERT INTO sheet_drafts (id, text) VALUES (?1, ?2) ON CONFLICT (id) DO UPDATE SET text = ?2";
const DRAFTS: &str = "SELECT id, text FROM sheet_drafts";
const CLEAR_DRAFT: &str = "DELETE FROM sheet_drafts WHERE id = ?1";

/// The most bytes of what is typed of a spec sheet: as much as of its file.
const LARGEST_DRAFT: usize = 4 << 20;

impl Store {
    /// Keeps what is typed of a spec sheet, in place of what stood there.
    ///
    /// # Errors
    /// [`StoreError::TooLong`]; those of a write.
    pub fn put_sheet_draft(&mut self, id: &str, text: &str) -> Result<(), StoreError> {
        at_most(DRAFTING, id, LARGEST_KEY)?;
        at_most(DRAFTING, text, LARGEST_DRAFT)?;
        self.write(DRAFTING, |tx| {
            tx.execute(PUT_DRAFT, params![id, text]).map_err(sql(DRAFTING))?;
            Ok(())
        })
    }

    /// What is typed of spec sheets and not kept, by id.
    ///
    /// # Errors
    /// What the disk said.
    pub fn sheet_drafts(&self) -> Result<BTreeMap<String, String>, StoreError> {
        let read = |conn: &rusqlite::Connection| -> rusqlite::Result<_> {
            let mut query = conn.prepare_cached(DRAFTS)?;
            query.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?.collect()
        };
        read(self.reader()?).map_err(sql(READING))
    }

    /// Forgets what was typed of a spec sheet; there need not be any.
    ///
    /// # Errors
    /// Those of a write.
    pub fn clear_sheet_draft(&mut self, id: &str) -> Result<(), StoreError> {
        self.write(DRAFTING, |tx| clear_draft(tx, id).map_err(sql(DRAFTING)))
    }
}

/// Forgets what was typed of a spec sheet.
pub(crate) fn clear_draft(conn: &Connection, id: &str) -> rusqlite::Result<()> {
    conn.execute(CLEAR_DRAFT, [id]).map(|_| ())
}
