//! The files beside the journal, for whoever works while the store goes on: reading and writing them needs no connection.

use std::path::PathBuf;

use panside_journal::Hash;

use crate::open::Store;
use crate::photos::{self, NewPhoto, PhotoFormat, PhotoRow};
use crate::records::hand_over;
use crate::{Doing, StoreError};

/// The files of a store, apart from its journal.
#[derive(Clone, Debug)]
pub struct Files {
    pub(crate) dir: PathBuf,
}

impl Store {
    /// Its files, to be read and written while it goes on.
    pub fn files(&self) -> Files {
        Files { dir: self.dir.clone() }
    }
}

impl Files {
    /// The bytes of a photo's file, checked against its hash. Whether a row says that it is kept is not asked.
    ///
    /// # Errors
    /// [`StoreError::PhotoMissing`], [`StoreError::PhotoAltered`].
    pub fn photo(&self, hash: &Hash) -> Result<Vec<u8>, StoreError> {
        let mut found = Err(StoreError::PhotoMissing { hash: *hash });
        for format in PhotoFormat::ALL {
            found = photos::read(&self.dir, &self.path_of(hash, format), *hash, *hash, photos::LARGEST_PHOTO);
            if !matches!(found, Err(StoreError::PhotoMissing { .. })) {
                break;
            }
        }
        found
    }

    /// Writes the files of a photo and of its small picture, and answers what [`Store::keep_photo`] keeps of it. Until then
    /// no more than a sweep would take away.
    ///
    /// # Errors
    /// [`StoreError::DiskFull`] or [`StoreError::File`].
    pub fn write_photo(&self, photo: &NewPhoto<'_>) -> Result<PhotoRow, StoreError> {
        let (hash, thumbnail) = (Hash::of(photo.bytes), Hash::of(photo.thumbnail));
        photos::write_in(photos::KEEPING, &self.dir, (&hash, photo.format), photo.bytes, photo.thumbnail)?;
        Ok(PhotoRow {
            job: photo.job,
            hash,
            format: photo.format,
            size: photo.bytes.len() as u64,
            width: photo.width,
            height: photo.height,
            thumbnail,
        })
    }

    /// Writes a record whole or not at all, and answers where it is. The name has no folder in it.
    ///
    /// # Errors
    /// With what the disk said.
    pub fn put_record(&self, name: &str, bytes: &[u8]) -> Result<PathBuf, StoreError> {
        hand_over(Doing::SavingRecord, &self.dir, "records", name, bytes)
    }

    fn path_of(&self, hash: &Hash, format: PhotoFormat) -> PathBuf {
        photos::path_in(&self.dir, "photos", hash, format.extension())
    }
}
