//! A photo in: stripped, hashed, on disk, before any event names it.

use std::collections::BTreeSet;

use panside_job::{EntryValue, Event};
use panside_journal::{Hash, JobId};
use panside_photo::{Kind, Limits, take_in};
use panside_store::{NewPhoto, PhotoFormat, Swept};

use crate::jobs::happened;
use crate::{Bay, BayError};

/// The most bytes of a photo file.
pub const LARGEST_PHOTO: usize = panside_photo::LARGEST_FILE;

/// The photos that an event names.
pub(crate) fn photos_of(event: &Event) -> Vec<Hash> {
    let values: Vec<&EntryValue> = match event {
        Event::Entered(entered) => vec![&entered.value],
        Event::Rerecorded(again) => again.values.values().collect(),
        _ => Vec::new(),
    };
    let hash = |value: &EntryValue| match value {
        EntryValue::Photo { hash, .. } => hash.parse().ok(),
        _ => None,
    };
    values.into_iter().filter_map(hash).collect()
}

impl Bay {
    /// Makes the list of jobs anew and takes away photo files that no entry names: a kill between photo and entry
    /// leaves them.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said; [`BayError::Job`] when an event cannot be read. Then nothing is
    /// taken away.
    pub fn sweep(&mut self) -> Result<Swept, BayError> {
        // A job that the derived list lacks would lose its photos.
        self.rebuild()?;
        let mut named = BTreeSet::new();
        for row in self.store.jobs()? {
            for one in happened(&self.store.events(row.job)?)? {
                named.extend(photos_of(&one.event));
            }
        }
        Ok(self.store.sweep(&named)?)
    }

    /// Takes in the bytes of a photo file for a job, and answers the value to enter for it.
    ///
    /// # Errors
    /// [`BayError::Photo`] when it is no whole photo of a possible size; [`BayError::Store`] when the disk refuses.
    /// Nothing is left behind then.
    pub fn add_photo(&mut self, job: JobId, bytes: &[u8]) -> Result<EntryValue, BayError> {
        let photo = take_in(bytes, &Limits::default())?;
        let format = match photo.kind {
            Kind::Jpeg => PhotoFormat::Jpeg,
            Kind::Png => PhotoFormat::Png,
        };
        let hash = self.store.put_photo(&NewPhoto {
            job,
            format,
            bytes: &photo.kept,
            thumbnail: &photo.thumbnail,
            width: photo.width,
            height: photo.height,
        })?;
        Ok(EntryValue::Photo { hash: hash.to_string(), width: photo.width, height: photo.height })
    }

    /// The bytes of a kept photo, checked against its hash.
    ///
    /// # Errors
    /// [`BayError::Store`] when it is not kept, is damaged, or with what the disk said.
    pub fn photo(&self, hash: &Hash) -> Result<Vec<u8>, BayError> {
        Ok(self.store.photo(hash)?)
    }

    /// The small picture of a kept photo, as JPEG.
    ///
    /// # Errors
    /// As [`Bay::photo`].
    pub fn thumbnail(&self, hash: &Hash) -> Result<Vec<u8>, BayError> {
        Ok(self.store.thumbnail(hash)?)
    }
}
