//! What was handed over: files beside the journal, for people to take away. Nothing reads them again.

use std::path::{Path, PathBuf};

use crate::disk::{make_dir_in, write_whole};
use crate::open::Store;
use crate::{Doing, StoreError};

impl Store {
    /// Writes a spec sheet whole or not at all, and answers where it is. The name has no folder in it.
    ///
    /// # Errors
    /// With what the disk said.
    pub fn put_sheet_file(&self, name: &str, bytes: &[u8]) -> Result<PathBuf, StoreError> {
        hand_over(Doing::SavingSheet, &self.dir, "sheets", name, bytes)
    }

    /// Writes a checklist whole or not at all, and answers where it is. The name has no folder in it.
    ///
    /// # Errors
    /// With what the disk said.
    pub fn put_checklist_file(&self, name: &str, bytes: &[u8]) -> Result<PathBuf, StoreError> {
        hand_over(Doing::SavingChecklist, &self.dir, "checklists", name, bytes)
    }
}

pub(crate) fn hand_over(
    doing: Doing,
    root: &Path,
    folder: &str,
    name: &str,
    bytes: &[u8],
) -> Result<PathBuf, StoreError> {
    let folder = root.join(folder);
    make_dir_in(doing, root, &folder)?;
    let path = folder.join(name);
    write_whole(doing, &path, bytes)?;
    Ok(path)
}
