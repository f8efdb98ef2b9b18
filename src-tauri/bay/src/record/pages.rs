//! The record as pages, with the job's photos from the store.

use std::collections::BTreeMap;

use panside_journal::Hash;
use panside_messages::{Message, Speaker};
use panside_photo::{Kind, Limits, VIEW_SIDE, take_in};
use panside_record::{Document, PdfInputs, PdfPhoto};
use panside_store::{Files, StoreError};

use crate::message::*;
use crate::{Bay, BayError};

impl Bay {
    /// A record as pages. A photo whose file is not there or not whole is told in its place.
    ///
    /// # Errors
    /// [`BayError::Record`] when the pages cannot be written.
    pub fn pages(&self, document: &Document) -> Result<Vec<u8>, BayError> {
        pages(document, &self.store.files(), self.speaker)
    }
}

/// A record as pages, with its photos from these files.
pub(crate) fn pages(document: &Document, files: &Files, speaker: &Speaker) -> Result<Vec<u8>, BayError> {
    // One photo at a time, and each once however often it was entered: decoding takes memory.
    let mut photos = BTreeMap::new();
    for photo in &document.photos {
        if !photos.contains_key(&photo.hash) {
            photos.insert(photo.hash.clone(), for_pages(&photo.hash, files, speaker));
        }
    }
    Ok(document.to_pdf(&PdfInputs { photos })?)
}

fn for_pages(hash: &str, files: &Files, speaker: &Speaker) -> PdfPhoto {
    let lacking = |why: Message| PdfPhoto::Lacking { why: speaker.within(&why) };
    let Ok(hash) = hash.parse::<Hash>() else { return lacking(bay_photo_no_hash()) };
    match files.photo(&hash) {
        Ok(bytes) => upright(bytes).unwrap_or_else(|error| lacking(bay_photo_damaged(error.message()))),
        Err(StoreError::PhotoMissing { .. }) => lacking(bay_photo_missing()),
        Err(StoreError::PhotoAltered { .. }) => lacking(bay_photo_altered()),
        Err(error) => lacking(bay_photo_unreadable(error.message())),
    }
}

/// The photo as it is kept, where that is an upright JPEG of the size of a page; else the view that is made of it.
fn upright(bytes: Vec<u8>) -> Result<PdfPhoto, panside_photo::PhotoError> {
    let photo = take_in(&bytes, &Limits::default())?;
    let fits = photo.width.max(photo.height) <= VIEW_SIDE && photo.orientation == 1;
    let as_kept = photo.kind == Kind::Jpeg && fits;
    Ok(PdfPhoto::Jpeg(if as_kept { bytes } else { photo.view }))
}
