//! Settings: what the tablet remembers between starts. They are no part of the journal and belong to no job.

use rusqlite::{OptionalExtension, params};

use crate::StoreError;
use crate::error::sql;
use crate::open::Store;

const KEEPING: &str = "keeping a setting";
const READING: &str = "reading a setting";
const PUT: &str =
    "INSERT INTO settings (key, text) VALUES (?1, ?2) ON CONFLICT (key) DO UPDATE SET text = ?2";
const GET: &str = "SELECT text FROM settings WHERE key = ?1";

impl Store {
    /// Keeps a text under a key, in place of what stood there.
    ///
    /// # Errors
    /// Those of a write.
    pub fn put_setting(&mut self, key: &str, text: &str) -> Result<(), StoreError> {
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
