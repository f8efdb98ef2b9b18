//! The steps of opening: the file's signature, the lock, making a new store, connecting, loading.

use std::fs::{self, File, TryLockError};
use std::io::Read;
use std::path::{Path, PathBuf};
use std::time::Duration;

use panside_journal::{DeviceId, EpochId, Head};
use rusqlite::config::DbConfig;
use rusqlite::{Connection, ErrorCode, OpenFlags, params};

use crate::error::{file, sql};
use crate::head_file::{self, Found};
use crate::migrations::{self, MIGRATIONS, MIN_READER, Migration, NEWEST};
use crate::open::{Options, Standing, Store, Verify};
use crate::seen::{self, Seen};
use crate::walk::{self, Walk};
use crate::write::{Checkpoint, checkpoint};
use crate::{Doing, StoreError, Trouble, backup, disk, rows};

/// "PnSd": says in the file's header whose database this is.
const APPLICATION_ID: u32 = 0x506e_5364;
const OPENING: Doing = Doing::Opening;
const MAKING: Doing = Doing::MakingStore;
/// How long to wait for another connection before giving up.
const PATIENCE: Duration = Duration::from_secs(5);

const INSERT_META: &str = "INSERT INTO meta (only_row, min_reader, device) VALUES (1, ?1, ?2)";
const INSERT_FIRST_EPOCH: &str =
    "INSERT INTO epochs (number, epoch, from_seq, from_hash, why) VALUES (1, ?1, 0, ?2, 'first')";

pub(crate) fn database(dir: &Path) -> PathBuf {
    dir.join("journal.db")
}

pub(crate) fn head_file(dir: &Path) -> PathBuf {
    dir.join("journal.head")
}

/// Reads the first bytes of the database file, before SQLite or the lock touch anything: is it ours? A store is
/// renamed into place when it is whole, so the signature is always there (SQLite file format, 1.3: the magic
/// string at byte 0, the application id as a big-endian number at byte 68).
pub(crate) fn check_signature(path: &Path) -> Result<(), StoreError> {
    let mut start = Vec::new();
    let opened = disk::open_for_reading(path);
    opened.and_then(|f| f.take(72).read_to_end(&mut start)).map_err(file(OPENING, path))?;
    if start.starts_with(b"SQLite format 3\0") && start.ends_with(&APPLICATION_ID.to_be_bytes()) {
        return Ok(());
    }
    Err(StoreError::NotAStore { path: path.to_owned() })
}

/// The writer's lock, let go of when it is dropped.
///
/// Closing the file would not do: a process that is being started at that moment has the file too until it runs its
/// own program, and would hold the lock on.
#[derive(Debug)]
pub(crate) struct Lock(File);

impl Drop for Lock {
    fn drop(&mut self) {
        // Where this fails, closing the file right after it lets go as well.
        let _ = self.0.unlock();
    }
}

/// Takes the writer's lock.
pub(crate) fn lock(dir: &Path) -> Result<Lock, StoreError> {
    let path = dir.join("lock");
    let lock = disk::open_or_create(&path).map_err(file(OPENING, &path))?;
    match lock.try_lock() {
        Ok(()) => Ok(Lock(lock)),
        Err(TryLockError::WouldBlock) => Err(StoreError::Locked { dir: dir.to_owned() }),
        Err(TryLockError::Error(error)) => Err(file(OPENING, &path)(error)),
    }
}

/// Makes a new store beside its final name and renames it into place when it is whole.
pub(crate) fn make(dir: &Path, options: &Options) -> Result<(), StoreError> {
    let path = database(dir);
    let part = path.with_added_extension(disk::PART);
    for leftover in ["", "-wal", "-shm", "-journal"] {
        let mut name = part.clone().into_os_string();
        name.push(leftover);
        match fs::remove_file(&name) {
            Err(error) if error.kind() != std::io::ErrorKind::NotFound => {
                return Err(file(MAKING, Path::new(&name))(error));
            }
            _ => {}
        }
    }
    // SQLite gives its other files the mode of this one.
    disk::create_new(&part).map_err(file(MAKING, &part))?;
    let mut conn = Connection::open(&part).map_err(sql(MAKING))?;
    fill(&mut conn, options).map_err(sql(MAKING))?;
    conn.close().map_err(|(_, error)| sql(MAKING)(error))?;
    fs::rename(&part, &path).map_err(file(MAKING, &path))?;
    disk::sync_parent(MAKING, &path)
}

fn fill(conn: &mut Connection, options: &Options) -> rusqlite::Result<()> {
    conn.pragma_update(None, "application_id", APPLICATION_ID)?;
    conn.pragma_update(None, "journal_mode", "WAL")?;
    conn.pragma_update(None, "synchronous", "FULL")?;
    migrations::run(conn, 0, MIGRATIONS, MIN_READER)?;
    conn.execute(INSERT_META, params![MIN_READER, options.device.0.as_bytes()])?;
    conn.execute(INSERT_FIRST_EPOCH, params![options.epoch.0.as_bytes(), Head::NONE.hash.0])?;
    checkpoint(conn, Checkpoint::Truncate)?;
    Ok(())
}

fn connect(path: &str, flags: OpenFlags) -> rusqlite::Result<Connection> {
    // A connection is used by one thread at a time (Rust sees to it), so SQLite need not lock for itself.
    let flags = flags
        | OpenFlags::SQLITE_OPEN_URI
        | OpenFlags::SQLITE_OPEN_NO_MUTEX
        | OpenFlags::SQLITE_OPEN_NOFOLLOW;
    let conn = Connection::open_with_flags(path, flags)?;
    conn.busy_timeout(PATIENCE)?;
    conn.pragma_update(None, "foreign_keys", "ON")?;
    // Closing must not checkpoint by itself: its failure would go unseen, and after a fault it would write.
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true)?;
    // A plan hangs on the statement alone. Without this, SQLite compiles a statement that looks at a partial index anew
    // for each value given to it: a third of the work of an entry.
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_ENABLE_QPSG, true)?;
    Ok(conn)
}

/// The database's name as SQLite takes it in a URI.
fn uri(dir: &Path, more: &str) -> String {
    let path = database(dir).to_string_lossy().replace('%', "%25").replace('?', "%3f").replace('#', "%23");
    format!("file:{path}{more}")
}

fn connect_for_writing(dir: &Path, options: &Options) -> rusqlite::Result<Connection> {
    let conn = connect(&uri(dir, ""), OpenFlags::SQLITE_OPEN_READ_WRITE)?;
    conn.pragma_update(None, "journal_mode", "WAL")?;
    conn.pragma_update(None, "synchronous", "FULL")?;
    conn.pragma_update(None, "wal_autocheckpoint", 0)?;
    if let Some(pages) = options.max_pages {
        conn.pragma_update(None, "max_page_count", pages)?;
    }
    Ok(conn)
}

/// Connects without the means to write. SQLite needs two small files beside a database with a log; where they
/// can't be made, as on a read-only disk, the database is read as it lies, without what only its log has. The
/// head file then shows what is missing.
pub(crate) fn connect_for_reading(dir: &Path) -> rusqlite::Result<Connection> {
    let conn = connect(&uri(dir, ""), OpenFlags::SQLITE_OPEN_READ_ONLY)?;
    match conn.query_row("SELECT count(*) FROM sqlite_schema", [], |_| Ok(())) {
        Err(error)
            if matches!(
                error.sqlite_error_code(),
                Some(ErrorCode::CannotOpen | ErrorCode::ReadOnly | ErrorCode::PermissionDenied)
            ) =>
        {
            connect(&uri(dir, "?immutable=1"), OpenFlags::SQLITE_OPEN_READ_ONLY)
        }
        read => read.map(|()| conn),
    }
}

/// The store's format, found without changing any byte; refused when it is too new to be read.
fn look(dir: &Path) -> Result<u32, StoreError> {
    let mut log = database(dir).into_os_string();
    log.push("-wal");
    // With no log to take into account, SQLite need not even make its helper files.
    let quiet = fs::metadata(&log).map_or(true, |log| log.len() == 0);
    let conn = connect(&uri(dir, if quiet { "?immutable=1" } else { "" }), OpenFlags::SQLITE_OPEN_READ_ONLY)
        .map_err(sql(OPENING))?;
    let found: u32 = conn.pragma_query_value(None, "user_version", |row| row.get(0)).map_err(sql(OPENING))?;
    if found > NEWEST {
        let min_reader = conn.query_row("SELECT min_reader FROM meta", [], |row| row.get::<_, u32>(0));
        // A newer store that doesn't say so in a way we understand is not for us.
        if min_reader.map_or(true, |min| min > NEWEST) {
            return Err(StoreError::Newer { path: database(dir), found, known: NEWEST });
        }
    }
    Ok(found)
}

/// Verifies the journal in one state of the database, as far as is asked, and tells the newest epoch.
fn looked(
    conn: &Connection,
    device: DeviceId,
    found: &Found,
    verify: Verify,
) -> Result<(Walk, EpochId), StoreError> {
    let tx = conn.unchecked_transaction().map_err(sql(OPENING))?;
    let marked = match verify {
        Verify::Marked => walk::marked(&tx, device, found)?,
        Verify::All => None,
    };
    let walk = match marked {
        Some(walk) => walk,
        None => walk::walk(&tx, device, found)?,
    };
    let epochs = walk::epochs(&tx).map_err(sql(OPENING))?;
    let epoch = epochs.last().map_or(EpochId(uuid::Uuid::nil()), |(epoch, _)| *epoch);
    Ok((walk, epoch))
}

/// Which files were opened: the same names may stand for others later, when a folder is exchanged or a card is taken
/// out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Opened {
    database: Option<(u64, u64)>,
    head_file: Option<(u64, u64)>,
}

impl Opened {
    /// The files as they are now. A head file may not be there yet.
    pub(crate) fn of(dir: &Path) -> Result<Opened, StoreError> {
        let database = identity(&database(dir)).map_err(file(OPENING, &database(dir)))?;
        Ok(Opened { database: Some(database), head_file: identity(&head_file(dir)).ok() })
    }

    /// Whether the names still stand for the files that were opened.
    pub(crate) fn unchanged(&self, dir: &Path) -> Result<(), StoreError> {
        for (path, opened) in [(database(dir), self.database), (head_file(dir), self.head_file)] {
            if opened.is_some() && identity(&path).ok() != opened {
                return Err(StoreError::Replaced { path });
            }
        }
        Ok(())
    }
}

/// What tells one file from another of the same name: its disk and its number on it.
///
/// Only that is asked. Where the times are asked too, newer kernels give the file's next write a time of its own, and the
/// next sync must then write that down too: a third of what a sync takes.
#[cfg(target_os = "linux")]
pub(crate) fn identity(path: &Path) -> std::io::Result<(u64, u64)> {
    use rustix::fs::{AtFlags, CWD, StatxFlags, makedev, statx};
    match statx(CWD, path, AtFlags::SYMLINK_NOFOLLOW, StatxFlags::INO) {
        Ok(found) => Ok((makedev(found.stx_dev_major, found.stx_dev_minor), found.stx_ino)),
        // Not every kernel and sandbox knows this call; where it is the file that can't be looked at, this says so too.
        Err(_) => identity_and_times(path),
    }
}

#[cfg(all(unix, not(target_os = "linux")))]
pub(crate) fn identity(path: &Path) -> std::io::Result<(u64, u64)> {
    identity_and_times(path)
}

#[cfg(unix)]
fn identity_and_times(path: &Path) -> std::io::Result<(u64, u64)> {
    use std::os::unix::fs::MetadataExt;
    fs::symlink_metadata(path).map(|found| (found.dev(), found.ino()))
}

/// Other systems keep an open file from being replaced.
#[cfg(not(unix))]
pub(crate) fn identity(path: &Path) -> std::io::Result<(u64, u64)> {
    fs::symlink_metadata(path).map(|_| (0, 0))
}

/// The folder itself, where it was reached through a link.
pub(crate) fn real(dir: &Path) -> Result<PathBuf, StoreError> {
    fs::canonicalize(dir).map_err(file(OPENING, dir))
}

/// Brings a store up to date, after its database was backed up beside it.
pub(crate) fn bring_up(
    dir: &Path,
    conn: &mut Connection,
    version: u32,
    migrations: &[Migration],
    min_reader: u32,
) -> Result<(), StoreError> {
    if migrations.iter().any(|migration| migration.number > version) {
        backup::before_migration(dir, version)?;
    }
    migrations::run(conn, version, migrations, min_reader).map_err(sql(Doing::BringingUpToDate))
}

/// Connects, migrates, verifies, compares. The lock, if any, is the caller's.
pub(crate) fn load(dir: &Path, options: Options, for_writing: bool) -> Result<Store, StoreError> {
    // The head file is read first: a writer beside us only ever moves the database ahead of it.
    let found = head_file::read(&head_file(dir))?;
    let version = look(dir)?;
    let writing = for_writing && version <= NEWEST;
    let conn = if writing {
        let mut conn = connect_for_writing(dir, &options).map_err(sql(OPENING))?;
        bring_up(dir, &mut conn, version, MIGRATIONS, MIN_READER)?;
        conn
    } else if version < NEWEST {
        return Err(StoreError::Older { path: database(dir) });
    } else {
        connect_for_reading(dir).map_err(sql(OPENING))?
    };
    let device = conn
        .query_row("SELECT device FROM meta", [], |row| rows::uuid(row, 0))
        .map(DeviceId)
        .map_err(sql(OPENING))?;
    let (Walk { head, mut troubles, tally, .. }, epoch) = looked(&conn, device, &found, options.verify)?;
    let seen = options.seen.as_ref().filter(|_| writing).map(|state| Seen::at(state, device));
    if let Some(seen) = &seen {
        troubles.extend(seen::look(seen, dir, &conn, head, &tally).map_err(sql(OPENING))?);
    }
    let troubled = troubles.iter().any(Trouble::stops_writing);
    let mut store = Store {
        dir: dir.to_owned(),
        options,
        conn: Some(conn),
        standing: if troubled { Standing::Troubled } else { Standing::ReadOnly },
        troubles,
        device,
        epoch,
        head,
        tally,
        opened: Opened::of(dir)?,
        head_file: None,
        found,
        since_checkpoint: 0,
        seen,
        lock: None,
    };
    if writing && !troubled {
        store.settle(OPENING)?;
    }
    Ok(store)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[cfg(unix)]
    #[test]
    fn files_are_told_apart_as_by_all_that_the_system_says() -> Result<(), Box<dyn std::error::Error>> {
        let dir = tempfile::tempdir()?;
        let (file, link) = (dir.path().join("file"), dir.path().join("link"));
        fs::write(&file, b"one")?;
        std::os::unix::fs::symlink(&file, &link)?;
        for path in [dir.path(), &file, &link] {
            assert_eq!(identity(path)?, identity_and_times(path)?);
        }
        assert_ne!(identity(&file)?, identity(&link)?);
        let gone = identity(&dir.path().join("gone")).map_err(|error| error.kind());
        assert_eq!(gone, Err(std::io::ErrorKind::NotFound));
        Ok(())
    }

    #[test]
    fn a_store_is_backed_up_before_it_is_brought_up_to_date() -> Result<(), Box<dyn std::error::Error>> {
        let dir = tempfile::tempdir()?;
        let options = Options::new(DeviceId(uuid::Uuid::from_u128(1)), EpochId(uuid::Uuid::from_u128(2)));
        let mut store = Store::open(dir.path(), options.clone())?;
        store.put_setting("setup", "before")?;
        store.close()?;
        // A migration as a later version might have it: it changes what is kept.
        let migrations = [
            Migration { number: 1, sql: MIGRATIONS[0].sql },
            Migration {
                number: 2,
                sql: "UPDATE settings SET text = 'after'; CREATE TABLE later (id INTEGER) STRICT;",
            },
        ];
        let mut conn = connect_for_writing(dir.path(), &options)?;
        bring_up(dir.path(), &mut conn, 1, &migrations, 1)?;
        conn.close().map_err(|(_, error)| error)?;
        let kept = dir.path().join("before-format-2");
        let before = Store::open_read_only(&kept)?;
        assert_eq!(before.setting("setup")?.as_deref(), Some("before"), "this version reads the backup");
        assert!(before.troubles().is_empty(), "{:?}", before.troubles());
        let after = Store::open_read_only(dir.path())?;
        assert_eq!(after.setting("setup")?.as_deref(), Some("after"));
        // Where the backup can't be made nothing is changed.
        std::fs::remove_dir_all(&kept)?;
        std::fs::write(dir.path().join("before-format-3.part"), b"a file in the way")?;
        let more = Migration { number: 3, sql: "UPDATE settings SET text = 'later still'" };
        let mut conn = connect_for_writing(dir.path(), &options)?;
        assert!(bring_up(dir.path(), &mut conn, 2, &[more], 1).is_err());
        assert_eq!(Store::open_read_only(dir.path())?.setting("setup")?.as_deref(), Some("after"));
        Ok(())
    }

    #[test]
    fn a_store_of_the_newest_format_is_opened_without_a_backup() -> Result<(), Box<dyn std::error::Error>> {
        let dir = tempfile::tempdir()?;
        let options = Options::new(DeviceId(uuid::Uuid::from_u128(1)), EpochId(uuid::Uuid::from_u128(2)));
        Store::open(dir.path(), options.clone())?.close()?;
        Store::open(dir.path(), options)?.close()?;
        let names = std::fs::read_dir(dir.path())?.map(|entry| entry.map(|entry| entry.file_name()));
        let names: Vec<_> = names.collect::<Result<_, _>>()?;
        assert!(names.iter().all(|name| !name.to_string_lossy().starts_with("before")), "{names:?}");
        Ok(())
    }
}
