//! The record as pages, with the job's photos from the store.

use std::collections::BTreeMap;

use panside_journal::{Hash, JobId};
use panside_photo::{Kind, Limits, VIEW_SIDE, take_in};
use panside_record::{Document, PdfInputs, PdfPhoto};
use panside_store::StoreError;

use crate::{Bay, BayError};

impl Bay {
    /// The record of a job as it stands now, as pages.
    ///
    /// # Errors
    /// As [`Bay::record`] and [`Bay::pages`].
    pub fn record_pdf(&mut self, job: JobId) -> Result<Vec<u8>, BayError> {
        let document = self.record(job)?;
        self.pages(&document)
    }

    /// A record as pages. A photo whose file is not there or not whole is told in its place.
    ///
    /// # Errors
    /// [`BayError::Record`] when the pages cannot be written.
    pub fn pages(&self, document: &Document) -> Result<Vec<u8>, BayError> {
        // One photo at a time, and each once however often it was entered: decoding takes memory.
        let mut photos = BTreeMap::new();
        for photo in &document.photos {
            if !photos.contains_key(&photo.hash) {
                photos.insert(photo.hash.clone(), self.photo_for_pages(&photo.hash));
            }
        }
        Ok(document.to_pdf(&PdfInputs { photos })?)
    }

    fn photo_for_pages(&self, hash: &str) -> PdfPhoto {
        let lacking = |why: String| PdfPhoto::Lacking { why };
        let Ok(hash) = hash.parse::<Hash>() else { return lacking("its hash is none".to_owned()) };
        match self.store.photo(&hash) {
            Ok(bytes) => {
                upright(bytes).unwrap_or_else(|error| lacking(format!("its file is damaged ({error})")))
            }
            Err(StoreError::PhotoUnknown { .. } | StoreError::PhotoMissing { .. }) => {
                lacking("its file is not in the store".to_owned())
            }
            Err(StoreError::PhotoAltered { .. }) => {
                lacking("its file is not the one that was taken in".to_owned())
            }
            Err(error) => lacking(format!("its file cannot be read ({})", error.said())),
        }
    }
}

/// The photo as it is kept, where that is an upright JPEG of the size of a page; else the view that is made of it.
fn upright(bytes: Vec<u8>) -> Result<PdfPhoto, panside_photo::PhotoError> {
    let photo = take_in(&bytes, &Limits::default())?;
    let fits = photo.width.max(photo.height) <= VIEW_SIDE && photo.orientation == 1;
    let as_kept = photo.kind == Kind::Jpeg && fits;
    Ok(PdfPhoto::Jpeg(if as_kept { bytes } else { photo.view }))
}
