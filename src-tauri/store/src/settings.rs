//! Settings: what the tablet remembers between starts. They are no part of the journal and belong to no job.
//!
//! The key `window` has which screen, job, step, person, light and size the window had.

use rusqlite::{OptionalExtension, params};

use crate::error::{at_most, sql};
use crate::open::Store;
use crate::{Doing, StoreError};

const KEEPING: Doing = Doing::KeepingSetting;
const READING: Doing = Doing::ReadingSetting;
const PUT: &str =
    "INSERT INTO settings (key, text) VALUES (?1, ?2) ON CONFLICT (key) DO UPDATE SET text = ?2";
const GET: &str = "SELECT text FROM settings WHERE key = ?1";
/// The most bytes of a setting. The longest is a shop's people and tools: a few hundred bytes each.
const LARGEST: usize = 1 << 20;
/// The most bytes of a key, here and of drafts: far above any that is in use.
pub(crate) const LARGEST_KEY: usize = 1 << 10;

impl Store {
    /// Keeps a text under a key, in place of what stood there.
    ///
    /// # Errors
    /// [`StoreError::TooLong`]; those of a write.
    pub fn put_setting(&mut self, key: &str, text: &str) -> Result<(), StoreError> {
        at_most(KEEPING, key, LARGEST_KEY)?;
        at_most(KEEPING, text, LARGEST)?;
        self.write(KEEPING, |tx| {
            tx.execute(PUT, params![key, text]).map_err(sql(KEEPING))?;
            Ok(())
        })
    }

    /// The text under a key.
    ///
    /// # Errors
    /// What the disk said.
    pub fn setting(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.reader()?.query_row(GET, [key], |row| row.get(0)).optional().map_err(sql(READING))
    }
}
