//! Records as they were handed over: files beside the journal, for people to take away. Nothing reads them again.

use std::path::PathBuf;

use crate::StoreError;
use crate::disk::{make_dir, write_whole};
use crate::open::Store;

const KEEPING: &str = "saving a record";

impl Store {
    /// Writes a record whole or not at all, and answers where it is. The name has no folder in it.
    ///
    /// # Errors
    /// With what the disk said.
    pub fn put_record(&self, name: &str, bytes: &[u8]) -> Result<PathBuf, StoreError> {
        let folder = self.dir.join("records");
        make_dir(KEEPING, &folder)?;
        let path = folder.join(name);
        write_whole(KEEPING, &path, bytes)?;
        Ok(path)
    }
}
