//! What is kept of people's PINs, by the person's id. What the text says is the layer's above; the PIN itself is not in it.

use std::collections::BTreeMap;

use panside_journal::PersonId;
use rusqlite::{Connection, params};
use uuid::Uuid;

use crate::error::sql;
use crate::open::Store;
use crate::{Doing, StoreError};

const KEEPING: Doing = Doing::KeepingPin;
const READING: Doing = Doing::ReadingPins;
const PUT: &str =
    "INSERT INTO pins (person, text) VALUES (?1, ?2) ON CONFLICT (person) DO UPDATE SET text = ?2";
const ALL: &str = "SELECT person, text FROM pins";

impl Store {
    /// Keeps what is known of a person's PIN, in place of what stood there.
    ///
    /// # Errors
    /// Those of a write.
    pub fn put_pin(&mut self, person: PersonId, text: &str) -> Result<(), StoreError> {
        self.write(KEEPING, |tx| put(tx, person, text).map_err(sql(KEEPING)))
    }

    /// What is known of all PINs, by person.
    ///
    /// # Errors
    /// What the disk said.
    pub fn pins(&self) -> Result<BTreeMap<PersonId, String>, StoreError> {
        let read = |conn: &rusqlite::Connection| -> rusqlite::Result<_> {
            let mut query = conn.prepare_cached(ALL)?;
            query.query_map([], |row| Ok((person(row)?, row.get(1)?)))?.collect()
        };
        read(self.reader()?).map_err(sql(READING))
    }
}

/// Puts a person's row.
pub(crate) fn put(conn: &Connection, person: PersonId, text: &str) -> rusqlite::Result<()> {
    conn.execute(PUT, params![person.to_string(), text]).map(|_| ())
}

fn person(row: &rusqlite::Row<'_>) -> rusqlite::Result<PersonId> {
    let text: String = row.get(0)?;
    text.parse::<Uuid>().map(PersonId).map_err(|error| {
        rusqlite::Error::FromSqlConversionFailure(0, rusqlite::types::Type::Text, Box::new(error))
    })
}
