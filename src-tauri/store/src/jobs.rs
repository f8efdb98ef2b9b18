//! The list of jobs: derived from the events, and made anew from them when it is wrong.

use panside_journal::{Event, Head, JobId, Subject};

use crate::error::sql;
use crate::heads::{self, Tally};
use crate::open::Store;
use crate::{Doing, StoreError, Trouble, indexes, rows};

const LISTING: Doing = Doing::ListingJobs;
const REBUILDING: Doing = Doing::RebuildingJobs;

/// One line of the list of jobs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JobRow {
    /// The job.
    pub job: JobId,
    /// Its newest event.
    pub head: Head,
    /// What the layer above wants to show of it: JSON text.
    pub label: String,
}

/// Makes a job's label from all its events; the layer above knows what they mean.
pub type LabelOf<'a> = &'a dyn Fn(&[Event]) -> String;

impl Store {
    /// All jobs, ordered by their id.
    ///
    /// # Errors
    /// What the disk said.
    pub fn jobs(&self) -> Result<Vec<JobRow>, StoreError> {
        let rows = heads::all(self.reader()?).map_err(sql(LISTING))?;
        let job =
            |row: heads::HeadRow| Some(JobRow { job: row.subject.job()?, head: row.head, label: row.label });
        Ok(rows.into_iter().filter_map(job).collect())
    }

    /// The devices whose events about the shop are here, each with the newest of them.
    ///
    /// # Errors
    /// What the disk said.
    pub fn shops(&self) -> Result<Vec<(Subject, Head)>, StoreError> {
        heads::shops(self.reader()?).map_err(sql(LISTING))
    }

    /// Makes the list of jobs anew from the events, and SQLite's indexes where they do not say what the events say. A store
    /// whose only trouble is its list takes entries again afterwards.
    ///
    /// # Errors
    /// [`StoreError::Journal`] when a chain doesn't hold; then the list stays as it was. Those of a write.
    pub fn rebuild(&mut self, label_of: LabelOf<'_>) -> Result<(), StoreError> {
        if !self.mends(Trouble::ends_with_rebuild) {
            self.writable()?;
        }
        self.make_list(label_of)?;
        self.settle(REBUILDING)
    }

    /// Makes the list anew. Whether the store takes entries afterwards is the caller's.
    pub(crate) fn make_list(&mut self, label_of: LabelOf<'_>) -> Result<(), StoreError> {
        let events = self.tally.events;
        self.tally = self.transact(REBUILDING, |tx| {
            let subjects = indexes::mend(tx).map_err(sql(REBUILDING))?;
            tx.execute_batch("DELETE FROM heads").map_err(sql(REBUILDING))?;
            let mut tally = Tally { events, ..Tally::NONE };
            for subject in subjects {
                let events = crate::read::chained(tx, subject)?;
                let label = if subject.is_shop() { String::new() } else { label_of(&events) };
                let head = rows::subject_head(tx, subject).map_err(sql(REBUILDING))?;
                heads::put(tx, &mut tally, subject, head, &label).map_err(sql(REBUILDING))?;
            }
            Ok(tally)
        })?;
        self.troubles.retain(|trouble| !trouble.ends_with_rebuild());
        Ok(())
    }
}

impl Trouble {
    /// Whether it is only about what is derived from the events, so that making that anew ends it.
    pub fn ends_with_rebuild(&self) -> bool {
        matches!(self, Trouble::ListDiffers { .. } | Trouble::ListUnknown)
    }
}
