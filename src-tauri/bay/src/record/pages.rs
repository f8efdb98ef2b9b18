//! The record as pages, with the job's photos from the store, and in its other forms.

use std::collections::BTreeMap;

use panside_journal::Hash;
use panside_messages::Speaker;
use panside_photo::{Kind, Limits, VIEW_SIDE, take_in};
use panside_record::{Csv, Document, Extent, Lacks, Paper, PdfInputs, PdfPhoto};
use panside_store::{Files, StoreError};

use crate::{Bay, BayError};

/// Which pages are made of a record.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pages {
    /// Those of the service writer and the file.
    Record(Extent),
    /// The customer's copy.
    Customer,
}

impl Bay {
    /// A record as pages. A photo whose file is not there or not whole is told in its place.
    ///
    /// # Errors
    /// [`BayError::Record`] when the pages cannot be written.
    pub fn pages(&self, document: &Document, which: Pages, paper: Paper) -> Result<Vec<u8>, BayError> {
        pages(document, (which, paper), &self.store.files(), self.speaker)
    }

    /// A record as plain text.
    #[must_use]
    pub fn record_text(&self, document: &Document, which: Pages) -> String {
        match which {
            Pages::Record(extent) => document.to_text(self.speaker, extent),
            Pages::Customer => document.to_customer_text(self.speaker),
        }
    }

    /// Parts, labor and measurements of a record for pasting.
    #[must_use]
    pub fn record_csv(&self, document: &Document) -> [Csv; 3] {
        document.to_csv(self.speaker)
    }
}

/// A record as pages, with its photos from these files.
pub(crate) fn pages(
    document: &Document,
    (which, paper): (Pages, Paper),
    files: &Files,
    speaker: &Speaker,
) -> Result<Vec<u8>, BayError> {
    // One photo at a time, and each once however often it was entered: decoding takes memory.
    let mut photos = BTreeMap::new();
    for photo in &document.photos {
        let is_shown = photo.first_page || which != Pages::Customer;
        if is_shown && !photos.contains_key(&photo.hash) {
            photos.insert(photo.hash.clone(), for_pages(&photo.hash, files));
        }
    }
    let inputs = |extent| PdfInputs { photos, paper, extent };
    Ok(match which {
        Pages::Record(extent) => document.to_pdf(speaker, &inputs(extent))?,
        Pages::Customer => document.to_customer_pdf(speaker, &inputs(Extent::File))?,
    })
}

fn for_pages(hash: &str, files: &Files) -> PdfPhoto {
    let Ok(hash) = hash.parse::<Hash>() else { return PdfPhoto::Lacking(Lacks::NoHash) };
    match files.photo(&hash) {
        Ok(bytes) => {
            upright(bytes).unwrap_or_else(|error| PdfPhoto::Lacking(Lacks::Damaged(error.message())))
        }
        Err(StoreError::PhotoMissing { .. }) => PdfPhoto::Lacking(Lacks::NotInStore),
        Err(StoreError::PhotoAltered { .. }) => PdfPhoto::Lacking(Lacks::Altered),
        Err(error) => PdfPhoto::Lacking(Lacks::Unreadable(error.message().into())),
    }
}

/// The photo as it is kept, where that is an upright JPEG of the size of a page; else the view that is made of it.
fn upright(bytes: Vec<u8>) -> Result<PdfPhoto, panside_photo::PhotoError> {
    let photo = take_in(&bytes, &Limits::default())?;
    let fits = photo.width.max(photo.height) <= VIEW_SIDE && photo.orientation == 1;
    let as_kept = photo.kind == Kind::Jpeg && fits;
    Ok(PdfPhoto::Jpeg(if as_kept { bytes } else { photo.view }))
}
