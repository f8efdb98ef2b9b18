//! A photo file taken apart: what stays byte for byte, and the EXIF notes that are written anew.

use crate::{Kind, PhotoError, jpeg, png};

/// The parts of one file. Everything that neither the picture nor its colours need is already left out.
pub(crate) struct Parts {
    pub(crate) kind: Kind,
    /// Width of the stored picture, before its orientation is applied. Never 0.
    pub(crate) width: u32,
    /// Height of the stored picture, before its orientation is applied. Never 0.
    pub(crate) height: u32,
    /// The EXIF block (a TIFF structure) as the camera wrote it.
    pub(crate) exif: Option<Vec<u8>>,
    /// The kept bytes before the place of the EXIF block.
    pub(crate) head: Vec<u8>,
    /// The kept bytes behind the place of the EXIF block.
    pub(crate) tail: Vec<u8>,
}

impl Parts {
    /// Takes a file of this kind apart.
    pub(crate) fn of(kind: Kind, bytes: &[u8]) -> Result<Parts, PhotoError> {
        match kind {
            Kind::Jpeg => jpeg::parts(bytes),
            Kind::Png => png::parts(bytes),
        }
    }

    /// The file put together again, with `exif` (a TIFF structure) as its only notes.
    pub(crate) fn join(self, exif: Option<Vec<u8>>) -> Vec<u8> {
        let notes = match (exif, self.kind) {
            (None, _) => Vec::new(),
            (Some(exif), Kind::Jpeg) => jpeg::exif_segment(&exif),
            (Some(exif), Kind::Png) => png::exif_chunk(exif),
        };
        let mut kept = self.head;
        kept.reserve_exact(notes.len() + self.tail.len());
        kept.extend_from_slice(&notes);
        kept.extend_from_slice(&self.tail);
        kept
    }
}
