//! What is kept of people's PINs, by name. What the text says is the layer's above; the PIN itself is not in it.

use std::collections::BTreeMap;

use rusqlite::params;

use crate::StoreError;
use crate::error::sql;
use crate::open::Store;

const KEEPING: &str = "keeping what is known of a PIN";
const READING: &str = "reading what is known of the PINs";
const PUT: &str = "INSERT INTO pins (name, text) VALUES (?1, ?2) ON CONFLICT (name) DO UPDATE SET text = ?2";
const ALL: &str = "SELECT name, text FROM pins";

impl Store {
    /// Keeps what is known of a person's PIN, in place of what stood there.
    ///
    /// # Errors
    /// Those of a write.
    pub fn put_pin(&mut self, name: &str, text: &str) -> Result<(), StoreError> {
        self.write(KEEPING, |tx| {
            tx.execute(PUT, params![name, text]).map_err(sql(KEEPING))?;
            Ok(())
        })
    }

    /// What is known of all PINs, by name.
    ///
    /// # Errors
    /// What the disk said.
    pub fn pins(&self) -> Result<BTreeMap<String, String>, StoreError> {
        let read = |conn: &rusqlite::Connection| -> rusqlite::Result<_> {
            let mut query = conn.prepare_cached(ALL)?;
            query.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?.collect()
        };
        read(self.reader()?).map_err(sql(READING))
    }
}
