//! The head file: the newest confirmed event, kept apart from the database.
//!
//! A flipped bit in the write-ahead log makes SQLite fall back to an earlier state without an error. So the head
//! is also kept here and compared at opening. Two slots are written in turn and each has its own check, so that
//! a write torn by a power cut leaves the one before it; they lie 4096 bytes apart, so that no sector holds both.

use std::fs::File;
use std::io::{Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

use panside_journal::{DeviceId, EpochId, Hash, Head};

use crate::disk;
use crate::error::file;
use crate::heads::Tally;
use crate::{Doing, StoreError};

const MAGIC: &str = "panside-head/1";
const SLOT_SIZE: usize = 512;
const SLOT_APART: usize = 4096;
const WRITING: Doing = Doing::WritingHeadFile;
const READING: Doing = Doing::ReadingHeadFile;

/// What the head file says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Mark {
    pub(crate) device: DeviceId,
    /// The epoch that events are written in, which may be newer than the head's own.
    pub(crate) epoch: EpochId,
    pub(crate) head: Head,
    /// What the whole journal amounts to.
    pub(crate) tally: Tally,
}

/// What was found in place of a head file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Found {
    Missing,
    Unreadable,
    Mark { mark: Mark, serial: u64 },
}

/// An open head file. It is never read again while it is written.
#[derive(Debug)]
pub(crate) struct HeadFile {
    path: PathBuf,
    file: File,
    serial: u64,
}

fn slot_text(serial: u64, mark: &Mark) -> String {
    let Mark { device, epoch, head, tally: Tally { events, subjects, sum } } = mark;
    let text =
        format!("{MAGIC} {serial} {device} {epoch} {} {} {events} {subjects} {sum}", head.seq, head.hash);
    let check = Hash::of(text.as_bytes());
    format!("{text} {check}\n")
}

fn read_slot(bytes: &[u8]) -> Option<(u64, Mark)> {
    let line = std::str::from_utf8(bytes).ok()?.lines().next()?;
    let (text, check) = line.rsplit_once(' ')?;
    if Hash::of(text.as_bytes()) != check.parse().ok()? {
        return None;
    }
    let mut words = text.split(' ');
    if words.next()? != MAGIC {
        return None;
    }
    let serial = words.next()?.parse().ok()?;
    let mark = Mark {
        device: words.next()?.parse().ok()?,
        epoch: words.next()?.parse().ok()?,
        head: Head { seq: words.next()?.parse().ok()?, hash: words.next()?.parse().ok()? },
        tally: Tally {
            events: words.next()?.parse().ok()?,
            subjects: words.next()?.parse().ok()?,
            sum: words.next()?.parse().ok()?,
        },
    };
    Some((serial, mark))
}

/// Reads the head file: the newer of its two slots.
pub(crate) fn read(path: &Path) -> Result<Found, StoreError> {
    let bytes = match disk::read_up_to(path, 2 * SLOT_APART as u64) {
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Ok(Found::Missing),
        read => read.map_err(file(READING, path))?.unwrap_or_default(),
    };
    let slots = bytes.chunks(SLOT_APART).map(|chunk| &chunk[..chunk.len().min(SLOT_SIZE)]);
    let newest = slots.filter_map(read_slot).max_by_key(|(serial, _)| *serial);
    Ok(newest.map_or(Found::Unreadable, |(serial, mark)| Found::Mark { mark, serial }))
}

impl HeadFile {
    /// Opens the head file for writing; `found` is what [`read`] gave. It is made anew when there was nothing to
    /// go on from.
    pub(crate) fn open(path: &Path, found: Found) -> Result<HeadFile, StoreError> {
        let serial = match found {
            Found::Mark { serial, .. } => serial,
            Found::Missing | Found::Unreadable => {
                disk::write_whole(WRITING, path, &[b' '; 2 * SLOT_APART])?;
                0
            }
        };
        let file = disk::open_for_writing(path).map_err(file(WRITING, path))?;
        Ok(HeadFile { path: path.to_owned(), file, serial })
    }

    /// Writes and syncs the newest head into the older slot.
    pub(crate) fn write(&mut self, mark: &Mark) -> Result<(), StoreError> {
        let serial = self.serial.saturating_add(1);
        let text = format!("{:SLOT_SIZE$}", slot_text(serial, mark));
        let place = if serial.is_multiple_of(2) { 0 } else { SLOT_APART as u64 };
        self.file
            .seek(SeekFrom::Start(place))
            .and_then(|_| self.file.write_all(text.as_bytes()))
            .and_then(|()| self.file.sync_data())
            .map_err(file(WRITING, &self.path))?;
        self.serial = serial;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uuid::Uuid;

    fn mark(seq: u64) -> Mark {
        Mark {
            device: DeviceId(Uuid::from_u128(1)),
            epoch: EpochId(Uuid::from_u128(2)),
            head: Head { seq, hash: Hash::of(&seq.to_be_bytes()) },
            tally: Tally { events: seq, subjects: 3, sum: Hash::of(b"rows") },
        }
    }

    #[test]
    fn the_newest_of_many_heads_is_read_back() -> Result<(), Box<dyn std::error::Error>> {
        let dir = tempfile::tempdir()?;
        let path = dir.path().join("journal.head");
        assert_eq!(read(&path)?, Found::Missing);
        let mut head = HeadFile::open(&path, Found::Missing)?;
        assert_eq!(read(&path)?, Found::Unreadable);
        for seq in 1..=5 {
            head.write(&mark(seq))?;
            assert_eq!(read(&path)?, Found::Mark { mark: mark(seq), serial: seq });
        }
        let mut again = HeadFile::open(&path, read(&path)?)?;
        again.write(&mark(6))?;
        assert_eq!(read(&path)?, Found::Mark { mark: mark(6), serial: 6 });
        assert_eq!(std::fs::metadata(&path)?.len(), 2 * SLOT_APART as u64);
        Ok(())
    }

    #[test]
    fn a_write_torn_at_any_byte_leaves_one_of_the_two_heads() -> Result<(), Box<dyn std::error::Error>> {
        let dir = tempfile::tempdir()?;
        let path = dir.path().join("journal.head");
        let mut head = HeadFile::open(&path, Found::Missing)?;
        head.write(&mark(1))?;
        head.write(&mark(2))?;
        let before = std::fs::read(&path)?;
        head.write(&mark(3))?;
        let after = std::fs::read(&path)?;
        for cut in 0..SLOT_SIZE {
            let mut torn = before.clone();
            torn[SLOT_APART..SLOT_APART + cut].copy_from_slice(&after[SLOT_APART..SLOT_APART + cut]);
            std::fs::write(&path, &torn)?;
            let Found::Mark { mark: found, .. } = read(&path)? else { return Err("no head".into()) };
            assert!(found == mark(2) || found == mark(3), "cut at {cut}");
        }
        Ok(())
    }

    #[test]
    fn a_bit_flipped_in_the_newest_slot_is_not_believed() -> Result<(), Box<dyn std::error::Error>> {
        let text = slot_text(7, &mark(7));
        for bit in 0..text.len() * 8 {
            let mut bytes = text.clone().into_bytes();
            bytes[bit / 8] ^= 1 << (bit % 8);
            // The line break at the end only separates; all that is said stands before it.
            let read = read_slot(&bytes);
            assert!(read.is_none() || (bit / 8 == text.len() - 1 && read == Some((7, mark(7)))), "bit {bit}");
        }
        Ok(())
    }
}
