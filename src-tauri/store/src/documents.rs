//! Documents: the texts of checklists, of their translations and of sheets that jobs pin by hash.

use panside_journal::Hash;
use rusqlite::{OptionalExtension, params};

use crate::error::sql;
use crate::open::Store;
use crate::{Doing, StoreError};

const KEEPING: Doing = Doing::KeepingDocument;
const READING: Doing = Doing::ReadingDocument;
const PUT: &str = "INSERT INTO documents (hash, kind, bytes) VALUES (?1, ?2, ?3)";
const GET: &str = "SELECT kind, bytes FROM documents WHERE hash = ?1";
const LIST: &str = "SELECT hash FROM documents WHERE kind = ?1 ORDER BY rowid";

/// A kept document.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Document {
    /// What it is, in the words of the layer above, such as "checklist".
    pub kind: String,
    /// Its bytes as they were given.
    pub bytes: Vec<u8>,
}

impl Store {
    /// Keeps a document and returns the hash that names it; keeping it twice is keeping it once. Done before the
    /// event that names it.
    ///
    /// # Errors
    /// [`StoreError::DocumentKind`] when it is kept under another kind, and those of a write.
    pub fn put_document(&mut self, kind: &str, bytes: &[u8]) -> Result<Hash, StoreError> {
        let hash = Hash::of(bytes);
        match self.find_document(&hash) {
            Ok(kept) if kept.kind == kind => return self.writable().map(|()| hash),
            Ok(Document { kind: kept, .. }) => {
                return Err(StoreError::DocumentKind { hash, kept, given: kind.to_owned() });
            }
            Err(StoreError::DocumentMissing { .. }) => {}
            Err(error) => return Err(error),
        }
        self.write(KEEPING, |tx| {
            tx.execute(PUT, params![hash.0, kind, bytes]).map_err(sql(KEEPING))?;
            Ok(hash)
        })
    }

    /// A kept document, its bytes checked against its hash.
    ///
    /// # Errors
    /// [`StoreError::DocumentMissing`], [`StoreError::DocumentAltered`].
    pub fn document(&self, hash: &Hash) -> Result<Document, StoreError> {
        let document = self.find_document(hash)?;
        if Hash::of(&document.bytes) != *hash {
            return Err(StoreError::DocumentAltered { hash: *hash });
        }
        Ok(document)
    }

    /// The documents of a kind, those kept first before the others.
    ///
    /// # Errors
    /// What the disk said.
    pub fn documents(&self, kind: &str) -> Result<Vec<Hash>, StoreError> {
        let reader = self.reader()?;
        let mut list = reader.prepare(LIST).map_err(sql(READING))?;
        let rows = list.query_map([kind], |row| row.get(0).map(Hash)).map_err(sql(READING))?;
        rows.collect::<Result<_, _>>().map_err(sql(READING))
    }

    fn find_document(&self, hash: &Hash) -> Result<Document, StoreError> {
        self.reader()?
            .query_row(GET, [hash.0], |row| Ok(Document { kind: row.get(0)?, bytes: row.get(1)? }))
            .optional()
            .map_err(sql(READING))?
            .ok_or(StoreError::DocumentMissing { hash: *hash })
    }
}
