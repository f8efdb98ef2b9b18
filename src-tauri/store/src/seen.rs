//! What is noted outside the store's folder of how far the store has come. The head file shows that the journal lost
//! entries; it can't show that the whole folder was set back or copied, head file and all. The note can.
//!
//! One small file a device, in a folder that the edge names and that isn't part of the store: the newest event, the
//! epoch, and which folder it was. It is written and synced at opening and at closing, and in between without a sync after
//! every [`EVERY`] entries. So it may be that many entries behind where a program was killed, and further behind after a
//! power cut: a folder that was set back by no more than that is not noticed. It is never ahead of what was confirmed.
//! Noticed is what entries show: a folder set back to a state with the same entries (other settings, other drafts) is not.

use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};

use panside_journal::{DeviceId, EpochId, Hash, Head};
use panside_messages::Arg;
use rusqlite::{Connection, OptionalExtension, params};
use serde::{Deserialize, Serialize};

use crate::head_file::{self, Found};
use crate::heads::Tally;
use crate::message::store_note_altered;
use crate::open::Store;
use crate::{Doing, Trouble, disk, load, rows, walk};

const FORMAT: &str = "panside-seen/1";
const NOTING: Doing = Doing::Noting;
const HASH_AT: &str = "SELECT hash FROM events WHERE device = ?1 AND device_seq = ?2";
/// After how many entries the note is renewed.
const EVERY: u32 = 32;

/// How carefully a note is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Noting {
    /// Now, and synced.
    Sure,
    /// When it is time, and not synced.
    SomeTimes,
}

/// The note of one device.
#[derive(Debug)]
pub(crate) struct Seen {
    path: PathBuf,
    since: u32,
}

#[derive(Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Note {
    format: String,
    device: DeviceId,
    epoch: EpochId,
    head: Head,
    folder: PathBuf,
    disk: u64,
    inode: u64,
}

impl Seen {
    pub(crate) fn at(state: &Path, device: DeviceId) -> Seen {
        Seen { path: state.join(format!("{device}.seen")), since: 0 }
    }

    fn not_noted(&self, why: impl Into<Arg>) -> Trouble {
        Trouble::NotNoted { path: self.path.clone(), why: why.into() }
    }

    /// The note, its check right; `None` where there is none.
    fn read(&self) -> Result<Option<Note>, Trouble> {
        let text = match fs::read_to_string(&self.path) {
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Ok(None),
            read => read.map_err(|error| self.not_noted(error.to_string()))?,
        };
        let whole = text.trim_end().rsplit_once('\n').filter(|(json, check)| {
            check.parse::<Hash>().is_ok_and(|check| check == Hash::of(json.as_bytes()))
        });
        let note = whole.and_then(|(json, _)| serde_json::from_str::<Note>(json).ok());
        note.filter(|note| note.format == FORMAT)
            .map(Some)
            .ok_or_else(|| self.not_noted(store_note_altered()))
    }

    fn write(&self, note: &Note, how: Noting) -> Result<(), Trouble> {
        let json = serde_json::to_string(note).map_err(|error| self.not_noted(error.to_string()))?;
        let text = format!("{json}\n{}\n", Hash::of(json.as_bytes()));
        let state = self.path.parent().unwrap_or(Path::new("."));
        disk::make_dir(NOTING, state).map_err(|error| self.not_noted(error.root()))?;
        match how {
            Noting::Sure => disk::write_whole(NOTING, &self.path, text.as_bytes())
                .map_err(|error| self.not_noted(error.root())),
            Noting::SomeTimes => {
                let part = self.path.with_added_extension(disk::PART);
                let written = File::create(&part)
                    .and_then(|mut out| out.write_all(text.as_bytes()))
                    .and_then(|()| fs::rename(&part, &self.path));
                written.map_err(|error| self.not_noted(error.to_string()))
            }
        }
    }

    /// Whether a note could be kept at all.
    fn can_be_kept(&self) -> Result<(), Trouble> {
        let state = self.path.parent().unwrap_or(Path::new("."));
        disk::make_dir(NOTING, state).map_err(|error| self.not_noted(error.root()))?;
        let part = self.path.with_added_extension(disk::PART);
        File::create(&part)
            .and_then(|_| fs::remove_file(&part))
            .map_err(|error| self.not_noted(error.to_string()))
    }
}

/// Holds a store against what is noted of it.
pub(crate) fn look(
    seen: &Seen,
    dir: &Path,
    conn: &Connection,
    have: Head,
    tally: &Tally,
) -> rusqlite::Result<Vec<Trouble>> {
    let note = match seen.read() {
        Ok(Some(note)) => note,
        // Nothing can be lost of a store without entries.
        Ok(None) if tally.events == 0 => return Ok(Vec::new()),
        // Where no note can be kept there never is one, and the store must be usable all the same.
        Ok(None) => return Ok(vec![seen.can_be_kept().err().unwrap_or(Trouble::NotSeenHere)]),
        Err(trouble) => return Ok(vec![trouble]),
    };
    let mut troubles = Vec::new();
    if note.head.seq > have.seq {
        troubles.push(Trouble::SetBack { have, noted: note.head });
    } else if note.head != Head::NONE && hash_at(conn, note.device, note.head.seq)? != Some(note.head.hash) {
        troubles.push(Trouble::HeadDiffers { named: note.head });
    } else if !walk::epochs(conn)?.iter().any(|(epoch, _)| *epoch == note.epoch) {
        troubles.push(Trouble::EpochLost);
    }
    if load::identity(dir).ok() != Some((note.disk, note.inode)) && is_another(&note, dir) {
        troubles.push(Trouble::Copied { original: note.folder });
    }
    Ok(troubles)
}

fn hash_at(conn: &Connection, device: DeviceId, seq: u64) -> rusqlite::Result<Option<Hash>> {
    let at = params![device.0.as_bytes(), rows::signed(seq)];
    conn.query_row(HASH_AT, at, |row| rows::hash(row, 0)).optional()
}

/// Whether the folder that was written last is still there, beside this one, with a store of the same device. A folder
/// that was moved to another disk, or unpacked over itself, is no copy.
fn is_another(note: &Note, dir: &Path) -> bool {
    if note.folder == dir || fs::canonicalize(&note.folder).is_ok_and(|real| real == dir) {
        return false;
    }
    match head_file::read(&load::head_file(&note.folder)) {
        Ok(Found::Mark { mark, .. }) => mark.device == note.device,
        _ => false,
    }
}

impl Store {
    /// Notes how far the store has come. Where that fails the entry stands all the same, and it is said.
    pub(crate) fn note_seen(&mut self, how: Noting) {
        let Some(seen) = &mut self.seen else { return };
        seen.since = seen.since.saturating_add(1);
        if how == Noting::SomeTimes && seen.since < EVERY {
            return;
        }
        seen.since = 0;
        let Ok((disk, inode)) = load::identity(&self.dir) else { return };
        let note = Note {
            format: FORMAT.to_owned(),
            device: self.device,
            epoch: self.epoch,
            head: self.head,
            folder: self.dir.clone(),
            disk,
            inode,
        };
        let said = self.troubles.iter().any(|trouble| matches!(trouble, Trouble::NotNoted { .. }));
        if let (Err(trouble), false) = (seen.write(&note, how), said) {
            self.troubles.push(trouble);
        }
    }
}
