//! A photo in: stripped, hashed, on disk, before any event names it.

use std::collections::BTreeSet;

use panside_job::{EntryValue, Event};
use panside_journal::{Hash, JobId};
use panside_photo::{Kind, Limits, take_in};
use panside_store::{Files, NewPhoto, PhotoFormat, PhotoRow, Swept};

use crate::jobs::happened;
use crate::{Bay, BayError};

/// The most bytes of a photo file.
pub const LARGEST_PHOTO: usize = panside_photo::LARGEST_FILE;

/// The photos that an event names.
pub(crate) fn photos_of(event: &Event) -> Vec<Hash> {
    let hash = |value: &EntryValue| match value {
        EntryValue::Photo { hash, .. } => hash.parse().ok(),
        _ => None,
    };
    event.values().into_iter().filter_map(hash).collect()
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
    /// As [`PhotoIntake::take_in`] and [`Bay::keep_photo`].
    pub fn add_photo(&mut self, job: JobId, bytes: &[u8]) -> Result<EntryValue, BayError> {
        let photo = self.photo_intake(job)?.take_in(bytes)?;
        self.keep_photo(&photo)
    }

    /// What takes in photos for a job while the store goes on.
    ///
    /// # Errors
    /// [`BayError::Store`] when the store takes no entries.
    pub fn photo_intake(&self, job: JobId) -> Result<PhotoIntake, BayError> {
        self.store.writable()?;
        Ok(PhotoIntake { job, files: self.store.files() })
    }

    /// Keeps a photo that was taken in, and answers the value to enter for it.
    ///
    /// # Errors
    /// [`BayError::Store`] when the disk refuses.
    pub fn keep_photo(&mut self, photo: &PhotoRow) -> Result<EntryValue, BayError> {
        let hash = self.store.keep_photo(photo)?;
        Ok(EntryValue::Photo { hash: hash.to_string(), width: photo.width, height: photo.height })
    }

    /// The store's files, to be read while the store goes on.
    #[must_use]
    pub fn files(&self) -> Files {
        self.store.files()
    }

    /// The small picture of a kept photo, as JPEG.
    ///
    /// # Errors
    /// [`BayError::Store`] when it is not kept, is damaged, or with what the disk said.
    pub fn thumbnail(&self, hash: &Hash) -> Result<Vec<u8>, BayError> {
        Ok(self.store.thumbnail(hash)?)
    }
}

/// Takes in photos for a job while the store goes on.
#[derive(Debug, Clone)]
pub struct PhotoIntake {
    job: JobId,
    files: Files,
}

impl PhotoIntake {
    /// Takes in the bytes of a photo file: location out, its files written. [`Bay::keep_photo`] keeps it.
    ///
    /// # Errors
    /// [`BayError::Photo`] when it is no whole photo of a possible size; [`BayError::Store`] when the disk refuses.
    pub fn take_in(&self, bytes: &[u8]) -> Result<PhotoRow, BayError> {
        let photo = take_in(bytes, &Limits::default())?;
        let format = match photo.kind {
            Kind::Jpeg => PhotoFormat::Jpeg,
            Kind::Png => PhotoFormat::Png,
        };
        let written = self.files.write_photo(&NewPhoto {
            job: self.job,
            format,
            bytes: &photo.kept,
            thumbnail: &photo.thumbnail,
            width: photo.width,
            height: photo.height,
        })?;
        Ok(written)
    }
}
