//! A photo file taken apart: what stays byte for byte, and the EXIF notes that are written anew.

use crate::{Kind, PhotoError, jpeg, png};

/// The most bytes of a colour profile. Profiles of cameras and screens have some kilobytes, those of printers up to
/// about 2 MB (seen; from memory).
pub(crate) const LARGEST_PROFILE: usize = 4_000_000;
/// More than the notes take that are written anew.
pub(crate) const ROOM_FOR_NOTES: usize = 512;

/// The parts of one file. Everything that neither the picture nor its colours need is already left out.
pub(crate) struct Parts {
    pub(crate) kind: Kind,
    /// Width of the stored picture, before its orientation is applied. Never 0.
    pub(crate) width: u32,
    /// Height of the stored picture, before its orientation is applied. Never 0.
    pub(crate) height: u32,
    /// Bytes of memory that decoding its pixels takes, by what its header says.
    pub(crate) decoding: u64,
    /// The EXIF block (a TIFF structure) as the camera wrote it.
    pub(crate) exif: Option<Vec<u8>>,
    /// The kept bytes before the place of the EXIF block.
    pub(crate) head: Vec<u8>,
    /// The kept bytes behind the place of the EXIF block, with [`ROOM_FOR_NOTES`] behind them.
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
            (Some(exif), Kind::Png) => png::exif_chunk(&exif),
        };
        // Put in front in the same memory: a photo is not in it twice.
        let mut kept = self.tail;
        kept.splice(0..0, self.head.into_iter().chain(notes));
        kept
    }
}
