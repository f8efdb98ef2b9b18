//! Proofs of checklists: they take long to make and stay true for the same text and the same engine.

use panside_journal::Hash;
use rusqlite::{OptionalExtension, params};

use crate::error::sql;
use crate::open::Store;
use crate::{Doing, StoreError};

const KEEPING: Doing = Doing::KeepingProof;
const READING: Doing = Doing::ReadingProof;
const PUT: &str = "INSERT OR REPLACE INTO proofs (checklist, engine, proof) VALUES (?1, ?2, ?3)";
const GET: &str = "SELECT proof FROM proofs WHERE checklist = ?1 AND engine = ?2";

impl Store {
    /// Keeps the proof of a checklist under its hash and the engine's name.
    ///
    /// # Errors
    /// Those of a write.
    pub fn put_proof(&mut self, checklist: &Hash, engine: &str, proof: &str) -> Result<(), StoreError> {
        self.write(KEEPING, |tx| {
            tx.execute(PUT, params![checklist.0, engine, proof]).map_err(sql(KEEPING))?;
            Ok(())
        })
    }

    /// The proof of a checklist, if that engine made one.
    ///
    /// # Errors
    /// What the disk said.
    pub fn proof(&self, checklist: &Hash, engine: &str) -> Result<Option<String>, StoreError> {
        self.reader()?
            .query_row(GET, params![checklist.0, engine], |row| row.get(0))
            .optional()
            .map_err(sql(READING))
    }
}
