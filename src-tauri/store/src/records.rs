//! What was handed over: files beside the journal, for people to take away. Nothing reads them again.

use std::path::PathBuf;

use crate::StoreError;
use crate::disk::{make_dir_in, write_whole};
use crate::open::Store;

impl Store {
    /// Writes a record whole or not at all, and answers where it is. The name has no folder in it.
    ///
    /// # Errors
    /// With what the disk said.
    pub fn put_record(&self, name: &str, bytes: &[u8]) -> Result<PathBuf, StoreError> {
        self.hand_over("saving a record", "records", name, bytes)
    }

    /// Writes a spec sheet whole or not at all, and answers where it is. The name has no folder in it.
    ///
    /// # Errors
    /// With what the disk said.
    pub fn put_sheet_file(&self, name: &str, bytes: &[u8]) -> Result<PathBuf, StoreError> {
        self.hand_over("saving a spec sheet as a file", "sheets", name, bytes)
    }

    fn hand_over(
        &self,
        doing: &'static str,
        folder: &str,
        name: &str,
        bytes: &[u8],
    ) -> Result<PathBuf, StoreError> {
        let folder = self.dir.join(folder);
        make_dir_in(doing, &self.dir, &folder)?;
        let path = folder.join(name);
        write_whole(doing, &path, bytes)?;
        Ok(path)
    }
}
