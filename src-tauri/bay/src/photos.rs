//! A photo in: stripped, hashed, on disk, before any event names it.

use panside_job::EntryValue;
use panside_journal::JobId;
use panside_photo::{Kind, Limits, take_in};
use panside_store::{NewPhoto, PhotoFormat};

use crate::{Bay, BayError};

impl Bay {
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
}
