//! Verifying the whole journal beside the work.

use std::path::PathBuf;

use crate::error::sql;
use crate::open::Store;
use crate::walk::{self, Walk};
use crate::{Doing, StoreError, Trouble, head_file, load};

const VERIFYING: Doing = Doing::Verifying;

/// Walks over the whole journal on a connection of its own, for another thread, after a store was opened by
/// [`crate::Verify::Marked`]. What it finds goes to [`Store::note`].
#[derive(Debug)]
pub struct Verifier {
    dir: PathBuf,
    device: panside_journal::DeviceId,
}

impl Store {
    /// A verifier of this store.
    pub fn verifier(&self) -> Verifier {
        Verifier { dir: self.dir.clone(), device: self.device }
    }
}

impl Verifier {
    /// Verifies every event, and that the list of jobs is the one that they give.
    ///
    /// # Errors
    /// What the disk said when the journal couldn't be read at all.
    pub fn run(&self) -> Result<Vec<Trouble>, StoreError> {
        let found = head_file::read(&load::head_file(&self.dir))?;
        let conn = load::connect_for_reading(&self.dir).map_err(sql(VERIFYING))?;
        let tx = conn.unchecked_transaction().map_err(sql(VERIFYING))?;
        let Walk { troubles, .. } = walk::walk(&tx, self.device, &found)?;
        Ok(troubles)
    }
}
