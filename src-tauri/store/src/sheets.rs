//! Spec sheets that were made here or taken in, revision by revision, and what is typed of them. A revision once kept
//! stays as it is.

use std::collections::BTreeMap;

use rusqlite::{OptionalExtension, params};

use crate::StoreError;
use crate::error::{at_most, sql};
use crate::open::Store;
use crate::settings::LARGEST_KEY;

const KEEPING: &str = "keeping a spec sheet";
const READING: &str = "reading the spec sheets";
const DRAFTING: &str = "keeping what is typed of a spec sheet";
const PUT: &str = "INSERT OR IGNORE INTO sheets (id, revision, text) VALUES (?1, ?2, ?3)";
const NEWEST: &str = "SELECT id, max(revision), text FROM sheets GROUP BY id ORDER BY id";
const GET: &str = "SELECT text FROM sheets WHERE id = ?1 AND revision = ?2";
const PUT_DRAFT: &str =
    "INSERT INTO sheet_drafts (id, text) VALUES (?1, ?2) ON CONFLICT (id) DO UPDATE SET text = ?2";
const DRAFTS: &str = "SELECT id, text FROM sheet_drafts";
const CLEAR_DRAFT: &str = "DELETE FROM sheet_drafts WHERE id = ?1";

/// The most bytes of what is typed of a spec sheet: as much as of its file.
const LARGEST_DRAFT: usize = 4 << 20;

/// A spec sheet as it was kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptSheet {
    /// Its id.
    pub id: String,
    /// Its revision.
    pub revision: u32,
    /// Its text.
    pub text: String,
}

impl Store {
    /// Keeps a revision of a spec sheet, and forgets what was typed of it: both or neither.
    ///
    /// # Errors
    /// [`StoreError::SheetThere`] when this revision is kept already, and those of a write.
    pub fn put_sheet(&mut self, sheet: &KeptSheet, typed_as: Option<&str>) -> Result<(), StoreError> {
        self.write(KEEPING, |tx| {
            let put = params![sheet.id, sheet.revision, sheet.text];
            if tx.execute(PUT, put).map_err(sql(KEEPING))? == 0 {
                return Err(StoreError::SheetThere { id: sheet.id.clone(), revision: sheet.revision });
            }
            if let Some(id) = typed_as {
                tx.execute(CLEAR_DRAFT, [id]).map_err(sql(KEEPING))?;
            }
            Ok(())
        })
    }

    /// The newest revision of every spec sheet, by id.
    ///
    /// # Errors
    /// What the disk said.
    pub fn sheets(&self) -> Result<Vec<KeptSheet>, StoreError> {
        let read = |conn: &rusqlite::Connection| -> rusqlite::Result<_> {
            let mut query = conn.prepare_cached(NEWEST)?;
            let kept = |row: &rusqlite::Row<'_>| {
                Ok(KeptSheet { id: row.get(0)?, revision: row.get(1)?, text: row.get(2)? })
            };
            query.query_map([], kept)?.collect()
        };
        read(self.reader()?).map_err(sql(READING))
    }

    /// The text of one revision.
    ///
    /// # Errors
    /// What the disk said.
    pub fn sheet(&self, id: &str, revision: u32) -> Result<Option<String>, StoreError> {
        self.reader()?
            .query_row(GET, params![id, revision], |row| row.get(0))
            .optional()
            .map_err(sql(READING))
    }

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
        self.write(DRAFTING, |tx| {
            tx.execute(CLEAR_DRAFT, [id]).map_err(sql(DRAFTING))?;
            Ok(())
        })
    }
}
