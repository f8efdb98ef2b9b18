//! Photos: files named by the hash of their bytes, and the rows that say which job keeps them.
//!
//! The bytes come in as they are to be kept: location and serial numbers are taken out before, by the photo
//! layer. The order is: small picture, photo (each a temporary file, synced, renamed, the folder synced), row,
//! and then, by the caller, the event that names the photo. A kill at any point leaves at most files that no
//! event names; [`Store::sweep`] takes them away.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use panside_journal::{Hash, JobId};
use rusqlite::{Connection, OptionalExtension, Row, params};

use crate::error::{file, sql};
use crate::open::Store;
use crate::{Doing, StoreError, disk, rows};

pub(crate) const KEEPING: Doing = Doing::KeepingPhoto;
const READING: Doing = Doing::ReadingPhoto;
const SWEEPING: Doing = Doing::SweepingPhotos;
const PUT: &str = "INSERT OR REPLACE INTO photos (job, hash, format, size, width, height, thumb_hash) \
                   VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
const ALL: &str = "SELECT job, hash, format, size, width, height, thumb_hash FROM photos ORDER BY job, hash";
const OF_JOB: &str = "SELECT job, hash, format, size, width, height, thumb_hash FROM photos \
                      WHERE job = ?1 ORDER BY hash";
const BY_HASH: &str = "SELECT job, hash, format, size, width, height, thumb_hash FROM photos \
                       WHERE hash = ?1 LIMIT 1";

/// The format of a kept photo.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PhotoFormat {
    /// JPEG.
    Jpeg,
    /// PNG.
    Png,
}

impl PhotoFormat {
    pub(crate) const ALL: [PhotoFormat; 2] = [PhotoFormat::Jpeg, PhotoFormat::Png];

    pub(crate) fn extension(self) -> &'static str {
        match self {
            PhotoFormat::Jpeg => "jpg",
            PhotoFormat::Png => "png",
        }
    }

    pub(crate) fn from_extension(text: &str) -> Option<PhotoFormat> {
        PhotoFormat::ALL.into_iter().find(|format| format.extension() == text)
    }
}

/// A photo to keep.
#[derive(Clone, Copy, Debug)]
pub struct NewPhoto<'a> {
    /// The job it is for.
    pub job: JobId,
    /// The format of `bytes`.
    pub format: PhotoFormat,
    /// The photo as it is to be kept.
    pub bytes: &'a [u8],
    /// Its small picture: JPEG.
    pub thumbnail: &'a [u8],
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
}

/// A kept photo.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PhotoRow {
    /// The job it is kept for.
    pub job: JobId,
    /// SHA-256 of its bytes: its name.
    pub hash: Hash,
    /// Its format.
    pub format: PhotoFormat,
    /// Its size in bytes.
    pub size: u64,
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
    /// SHA-256 of its small picture.
    pub thumbnail: Hash,
}

/// What a sweep took away.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Swept {
    /// Files, whole or in part.
    pub files: u64,
    /// Rows.
    pub rows: u64,
}

pub(crate) fn path_in(dir: &Path, folder: &str, hash: &Hash, extension: &str) -> PathBuf {
    let name = hash.to_string();
    dir.join(folder).join(&name[..2]).join(format!("{name}.{extension}"))
}

fn row(row: &Row<'_>) -> rusqlite::Result<PhotoRow> {
    let format: String = row.get(2)?;
    let format = PhotoFormat::from_extension(&format).ok_or_else(|| {
        rusqlite::Error::InvalidColumnType(2, "format".to_owned(), rusqlite::types::Type::Text)
    })?;
    Ok(PhotoRow {
        job: JobId(rows::uuid(row, 0)?),
        hash: rows::hash(row, 1)?,
        format,
        size: rows::count(row, 3)?,
        width: row.get(4)?,
        height: row.get(5)?,
        thumbnail: rows::hash(row, 6)?,
    })
}

/// Every photo of every job.
pub(crate) fn all(conn: &Connection) -> rusqlite::Result<Vec<PhotoRow>> {
    conn.prepare(ALL)?.query_map([], row)?.collect()
}

/// The most bytes of a small picture that are read: far above any that was ever made.
pub(crate) const LARGEST_THUMBNAIL: u64 = 8 << 20;

/// The most bytes of a photo's file that are read where no row says its size: far above what is taken in.
pub(crate) const LARGEST_PHOTO: u64 = 256 << 20;

/// Reads the file `named` of at most `most` bytes and checks that they have the hash `content`.
pub(crate) fn read(
    root: &Path,
    path: &Path,
    named: Hash,
    content: Hash,
    most: u64,
) -> Result<Vec<u8>, StoreError> {
    match disk::no_links_to(root, path).and_then(|()| disk::read_up_to(path, most)) {
        Ok(Some(bytes)) if Hash::of(&bytes) == content => Ok(bytes),
        Ok(_) => Err(StoreError::PhotoAltered { hash: named }),
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => {
            Err(StoreError::PhotoMissing { hash: named })
        }
        Err(error) => Err(file(READING, path)(error)),
    }
}

impl Store {
    /// Keeps a photo and its small picture, and returns the hash that names it. Done before the event that names
    /// it. Keeping it twice is keeping it once.
    ///
    /// # Errors
    /// [`StoreError::DiskFull`] or [`StoreError::File`]: the photo isn't kept, and the journal goes on. Those of
    /// a write.
    pub fn put_photo(&mut self, photo: &NewPhoto<'_>) -> Result<Hash, StoreError> {
        self.writable()?;
        let written = self.files().write_photo(photo)?;
        self.keep_photo(&written)
    }

    /// Keeps a photo whose files are written, and returns the hash that names it.
    ///
    /// # Errors
    /// Those of a write.
    pub fn keep_photo(&mut self, photo: &PhotoRow) -> Result<Hash, StoreError> {
        self.put_photo_row(photo).map(|_| photo.hash)
    }

    /// Says that a photo is kept for a job; answers whether that is new or changed. Its files are there already.
    pub(crate) fn put_photo_row(&mut self, photo: &PhotoRow) -> Result<bool, StoreError> {
        self.write(KEEPING, |tx| {
            let put = params![
                photo.job.0.as_bytes(),
                photo.hash.0,
                photo.format.extension(),
                rows::signed(photo.size),
                photo.width,
                photo.height,
                photo.thumbnail.0
            ];
            Ok(tx.execute(PUT, put).map_err(sql(KEEPING))? > 0)
        })
    }

    /// The bytes of a kept photo, checked against its hash.
    ///
    /// # Errors
    /// [`StoreError::PhotoUnknown`], [`StoreError::PhotoMissing`], [`StoreError::PhotoAltered`].
    pub fn photo(&self, hash: &Hash) -> Result<Vec<u8>, StoreError> {
        photo_in(&self.dir, &self.photo_row(hash)?)
    }

    /// The small picture of a kept photo, checked against the hash it was kept with.
    ///
    /// # Errors
    /// As [`Store::photo`].
    pub fn thumbnail(&self, hash: &Hash) -> Result<Vec<u8>, StoreError> {
        thumbnail_in(&self.dir, &self.photo_row(hash)?)
    }

    /// The photos kept for a job.
    ///
    /// # Errors
    /// What the disk said.
    pub fn photos(&self, job: JobId) -> Result<Vec<PhotoRow>, StoreError> {
        let read = |conn: &Connection| -> rusqlite::Result<_> {
            conn.prepare_cached(OF_JOB)?.query_map([job.0.as_bytes()], row)?.collect()
        };
        read(self.reader()?).map_err(sql(READING))
    }

    /// Whether a photo is kept for a job, with its file.
    ///
    /// # Errors
    /// What the disk said.
    pub fn keeps_photo(&self, job: JobId, hash: &Hash) -> Result<bool, StoreError> {
        let found = self.photos(job)?.into_iter().find(|row| row.hash == *hash);
        Ok(found.is_some_and(|row| path_in(&self.dir, "photos", hash, row.format.extension()).is_file()))
    }

    fn photo_row(&self, hash: &Hash) -> Result<PhotoRow, StoreError> {
        self.reader()?
            .query_row(BY_HASH, [hash.0], row)
            .optional()
            .map_err(sql(READING))?
            .ok_or(StoreError::PhotoUnknown { hash: *hash })
    }

    /// Takes away every photo that isn't in `named`, and every file that isn't whole. `named` are the photos that
    /// the events of **all** jobs name. Call it after opening, when no photo waits for its event. Files that this
    /// store didn't write are left alone.
    ///
    /// # Errors
    /// What the disk said; what was taken away by then stays away.
    pub fn sweep(&mut self, named: &BTreeSet<Hash>) -> Result<Swept, StoreError> {
        let rows = self.write(SWEEPING, |tx| {
            let mut gone = 0;
            for photo in all(tx).map_err(sql(SWEEPING))?.iter().filter(|p| !named.contains(&p.hash)) {
                gone += tx
                    .execute(
                        "DELETE FROM photos WHERE job = ?1 AND hash = ?2",
                        params![photo.job.0.as_bytes(), photo.hash.0],
                    )
                    .map_err(sql(SWEEPING))?;
            }
            Ok(gone as u64)
        })?;
        Ok(Swept { files: sweep_files(&self.dir, named)?, rows })
    }
}

/// The photo of a row, read from the folders in `dir` and checked.
pub(crate) fn photo_in(dir: &Path, row: &PhotoRow) -> Result<Vec<u8>, StoreError> {
    read(dir, &path_in(dir, "photos", &row.hash, row.format.extension()), row.hash, row.hash, row.size)
}

/// The small picture of a row, read from the folders in `dir` and checked.
pub(crate) fn thumbnail_in(dir: &Path, row: &PhotoRow) -> Result<Vec<u8>, StoreError> {
    read(dir, &path_in(dir, "thumbs", &row.hash, "jpg"), row.hash, row.thumbnail, LARGEST_THUMBNAIL)
}

/// Writes a photo and its small picture into the folders in `dir`, each whole or not at all, the photo last.
pub(crate) fn write_in(
    doing: Doing,
    dir: &Path,
    (hash, format): (&Hash, PhotoFormat),
    photo: &[u8],
    thumbnail: &[u8],
) -> Result<(), StoreError> {
    for (path, bytes) in [
        (path_in(dir, "thumbs", hash, "jpg"), thumbnail),
        (path_in(dir, "photos", hash, format.extension()), photo),
    ] {
        disk::make_dir_in(doing, dir, path.parent().unwrap_or(dir))?;
        disk::write_whole(doing, &path, bytes)?;
    }
    Ok(())
}

/// Takes away the photo files in `dir` that `named` does not name, and those that aren't whole.
pub(crate) fn sweep_files(dir: &Path, named: &BTreeSet<Hash>) -> Result<u64, StoreError> {
    let mut files = 0;
    for folder in ["photos", "thumbs"] {
        for sub in list(&dir.join(folder))? {
            // Whatever else lies there, a link too, is not ours and stays.
            for path in if disk::plain_folder(&sub).is_ok() { list(&sub)? } else { Vec::new() } {
                if is_ours_and_unnamed(&path, named) {
                    fs::remove_file(&path).map_err(file(SWEEPING, &path))?;
                    files += 1;
                }
            }
        }
    }
    Ok(files)
}

/// What is in a folder; nothing when there is no such folder.
fn list(dir: &Path) -> Result<Vec<PathBuf>, StoreError> {
    match disk::plain_folder(dir) {
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Ok(Vec::new()),
        found => found.map_err(file(SWEEPING, dir))?,
    }
    fs::read_dir(dir)
        .and_then(|entries| entries.map(|entry| entry.map(|entry| entry.path())).collect())
        .map_err(file(SWEEPING, dir))
}

/// `<hash>.<jpg|png>` that nothing names, or the same with `.part` after it.
fn is_ours_and_unnamed(path: &Path, named: &BTreeSet<Hash>) -> bool {
    let Some(name) = path.file_name().and_then(|name| name.to_str()) else { return false };
    let (whole, in_part) = match name.strip_suffix(disk::PART).and_then(|name| name.strip_suffix('.')) {
        Some(whole) => (whole, true),
        None => (name, false),
    };
    let Some((hash, extension)) = whole.split_once('.') else { return false };
    let Ok(hash) = hash.parse::<Hash>() else { return false };
    PhotoFormat::from_extension(extension).is_some() && (in_part || !named.contains(&hash))
}
