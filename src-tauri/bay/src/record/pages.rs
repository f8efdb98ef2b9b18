//! The record as pages, with the job's photos from the store.

use std::collections::BTreeMap;

use panside_journal::Hash;
use panside_photo::{Kind, Limits, VIEW_SIDE, take_in};
use panside_record::{Document, PdfInputs, PdfPhoto};
use panside_store::{Files, StoreError};

use crate::{Bay, BayError};

impl Bay {
    /// A record as pages. A photo whose file is not there or not whole is told in its place.
    ///
    /// # Errors
    /// [`BayError::Record`] when the pages cannot be written.
    pub fn pages(&self, document: &Document) -> Result<Vec<u8>, BayError> {
        pages(document, &self.store.files())
    }
}

/// A record as pages, with its photos from these files.
pub(crate) fn pages(document: &Document, files: &Files) -> Result<Vec<u8>, BayError> {
    // One photo at a time, and each once however often it was entered: decoding takes memory.
    let mut photos = BTreeMap::new();
    for photo in &document.photos {
        if !photos.contains_key(&photo.hash) {
            photos.insert(photo.hash.clone(), for_pages(&photo.hash, files));
        }
    }
    Ok(document.to_pdf(&PdfInputs { photos })?)
}

fn for_pages(hash: &str, files: &Files) -> PdfPhoto {
    let lacking = |why: String| PdfPhoto::Lacking { why };
    let Ok(hash) = hash.parse::<Hash>() else { return lacking("its hash is none".to_owned()) };
    match files.photo(&hash) {
        Ok(bytes) => upright(bytes).unwrap_or_else(|error| lacking(format!("its file is damaged ({error})"))),
        Err(StoreError::PhotoMissing { .. }) => lacking("its file is not in the store".to_owned()),
        Err(StoreError::PhotoAltered { .. }) => {
            lacking("its file is not the one that was taken in".to_owned())
        }
        Err(error) => lacking(format!("its file cannot be read ({error})")),
    }
}

/// The photo as it is kept, where that is an upright JPEG of the size of a page; else the view that is made of it.
fn upright(bytes: Vec<u8>) -> Result<PdfPhoto, panside_photo::PhotoError> {
    let photo = take_in(&bytes, &Limits::default())?;
    let fits = photo.width.max(photo.height) <= VIEW_SIDE && photo.orientation == 1;
    let as_kept = photo.kind == Kind::Jpeg && fits;
    Ok(PdfPhoto::Jpeg(if as_kept { bytes } else { photo.view }))
}
