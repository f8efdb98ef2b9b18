//! What the store's errors say.

use std::error::Error;
use std::fmt;

use panside_messages::{Arg, Message};

use super::StoreError;
use crate::message::*;

/// A number of bytes, in the largest unit that says it whole.
fn size(bytes: usize) -> String {
    let units = [(1 << 20, "MiB"), (1_000_000, "MB"), (1 << 10, "KiB"), (1_000, "kB")];
    let whole = units.into_iter().find(|(unit, _)| bytes >= *unit && bytes.is_multiple_of(*unit));
    whole.map_or_else(|| format!("{bytes} B"), |(unit, name)| format!("{} {name}", bytes / unit))
}

/// What the system said, without the number that only a programmer looks up.
fn words(source: &std::io::Error) -> String {
    let said = source.to_string();
    said.split(" (os error").next().unwrap_or_default().to_owned()
}

impl StoreError {
    /// What to say to a person, with what the system said behind it.
    #[must_use]
    pub fn message(&self) -> Message {
        match self.cause() {
            Some(cause) => store_with_cause(self.alone(), cause),
            None => self.alone(),
        }
    }

    /// What the system said, as a sentence; nothing where there is nothing to add.
    fn cause(&self) -> Option<Message> {
        let said = match self {
            StoreError::File { source, .. }
            | StoreError::CannotRead { source, .. }
            | StoreError::CannotWrite { source, .. }
            | StoreError::LeftAside { source, .. } => words(source),
            StoreError::Sql { source, .. } | StoreError::Damaged { source, .. } => source.to_string(),
            StoreError::Journal(source) => return Some(source.message()),
            StoreError::Unconfirmed { source, .. } => match &**source {
                StoreError::DiskFull { .. } => return Some(store_system_says(store_no_space())),
                source => return source.cause(),
            },
            _ => return None,
        };
        Some(store_system_says(said))
    }

    /// What is at the bottom of it: what the system said, or else the error's own message.
    pub(crate) fn root(&self) -> Arg {
        match self {
            StoreError::Unconfirmed { source, .. } => return source.root(),
            StoreError::Journal(source) => return source.message().into(),
            _ => {}
        }
        let Some(mut root) = self.source() else { return self.message().into() };
        while let Some(deeper) = root.source() {
            root = deeper;
        }
        root.to_string().into()
    }

    fn alone(&self) -> Message {
        match self {
            StoreError::Locked { dir } => store_locked(dir.as_path()),
            StoreError::NoStore { dir } => store_no_store(dir.as_path()),
            StoreError::DatabaseGone { dir } => store_database_gone(dir.as_path()),
            StoreError::NotAStore { path } => store_not_a_store(path.as_path()),
            StoreError::Newer { path, found, known } => store_newer(path.as_path(), *found, *known),
            StoreError::Older { path } => store_older(path.as_path()),
            StoreError::ReadOnly => store_read_only(),
            StoreError::Troubled { trouble } => store_troubled(trouble.clone()),
            StoreError::Faulted { why } => store_faulted(why.clone()),
            StoreError::Unconfirmed { doing, .. } => store_unconfirmed(doing.message()),
            StoreError::Stale { expected, head, .. } => store_stale(head.seq, expected.seq),
            StoreError::RequestReused { request } => store_request_reused(request.to_string()),
            StoreError::Nothing => store_nothing(),
            StoreError::NotAllThere { subject, listed, found } => {
                store_not_all_there(subject.to_string(), listed.seq, found.seq)
            }
            StoreError::Forked { seq, .. } => store_forked(*seq),
            StoreError::OwnEventUnknown { subject, seq } => {
                store_own_event_unknown(*seq, subject.to_string())
            }
            StoreError::DeviceForked { device, seq } => store_device_forked(device.to_string(), *seq),
            StoreError::Replaced { path } => store_replaced(path.as_path()),
            StoreError::EpochUsed => store_epoch_used(),
            StoreError::Journal(_) => store_journal(),
            StoreError::DocumentMissing { hash } => store_document_missing(hash.to_string()),
            StoreError::DocumentAltered { hash } => store_document_altered(hash.to_string()),
            StoreError::DocumentKind { hash, kept, given } => {
                store_document_kind(hash.to_string(), kept, given)
            }
            StoreError::PhotoUnknown { hash } => store_photo_unknown(hash.to_string()),
            StoreError::PhotoMissing { hash } => store_photo_missing(hash.to_string()),
            StoreError::PhotoAltered { hash } => store_photo_altered(hash.to_string()),
            StoreError::DiskFull { doing } => store_disk_full(doing.message()),
            StoreError::Damaged { doing, .. } => store_damaged(doing.message()),
            StoreError::Sql { doing, .. } => store_sql(doing.message()),
            StoreError::File { doing, path, .. } => store_file(path.as_path(), doing.message()),
            StoreError::NotPlain { path, what } => store_not_plain(path.as_path(), what.message()),
            StoreError::NoName { path } => store_no_name(path.as_path()),
            StoreError::NameNotText { path } => store_name_not_text(path.as_path()),
            StoreError::TooLarge { path, most } => store_too_large(path.as_path(), size(*most)),
            StoreError::TooLong { doing, most } => store_too_long(doing.message(), size(*most)),
            StoreError::CannotRead { path, .. } => store_cannot_read(path.as_path()),
            StoreError::CannotWrite { path, .. } => store_cannot_write(path.as_path()),
            StoreError::AlreadyThere { path } => store_already_there(path.as_path()),
            StoreError::BackupFolder { dir } => store_backup_folder(dir.as_path()),
            StoreError::InsideStore { dir } => store_inside_store(dir.as_path()),
            StoreError::BackupBusy { dir } => store_backup_busy(dir.as_path()),
            StoreError::NotBackedUp { trouble } => store_not_backed_up(trouble.clone()),
            StoreError::NotABackup { path, why } => store_not_a_backup(path.as_path(), why.clone()),
            StoreError::BackupAltered { path, trouble } => {
                store_backup_altered(path.as_path(), trouble.clone())
            }
            StoreError::NotEmpty { dir } => store_not_empty(dir.as_path()),
            StoreError::LeftAside { aside, dir, why, .. } => {
                store_left_aside(why.message(), aside.as_path(), dir.as_path())
            }
            StoreError::Busy => store_busy(),
        }
    }
}

impl fmt::Display for StoreError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}
