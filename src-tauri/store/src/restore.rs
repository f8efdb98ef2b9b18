//! Going back to a backup. The store that stood in the place is moved aside, never deleted, and looked at for what it
//! had that the backup hasn't.

use std::fs;
use std::path::{Path, PathBuf};

use panside_messages::Arg;

use crate::backup::{self, Kept, photos_of};
use crate::error::{file, sql};
use crate::jobs::LabelOf;
use crate::lacks::{Lacks, Sound, lacks, sound, stands};
use crate::manifest::Manifest;
use crate::message::store_troubles;
use crate::open::{Options, Standing, Store};
use crate::salvage::{lock_where_possible, place, put};
use crate::{Doing, StoreError, Trouble, disk, load, photos};

const RESTORING: Doing = Doing::Restoring;

/// A backup that was restored.
#[derive(Debug)]
pub struct Restored {
    /// What the backup says of itself: how old it is, and how far it goes.
    pub manifest: Manifest,
    /// Where the store is now that stood in the place, with all its files.
    pub moved_to: Option<PathBuf>,
    /// What it had that the backup lacks; nothing where no store stood in the place.
    pub lacks: Option<Lacks>,
    /// Photos that neither the backup nor the other store has whole.
    pub photos_missing: Vec<Trouble>,
}

/// Restores the backup in `from` to a store in `into`, which doesn't exist, is empty, or has a store in it: that one is
/// moved to `<into>.before-<UTC time>`. A new epoch begins, with the id in `options` and `why`; `wall_ms` is now, in
/// milliseconds since 1970 UTC.
///
/// # Errors
/// [`StoreError::NotABackup`], [`StoreError::BackupAltered`], [`StoreError::NotEmpty`]; [`StoreError::Locked`] while the
/// store in `into` is open; what the disk said. In all of these what stood in `into` stands there again.
/// [`StoreError::LeftAside`] where even that failed: then it is in the folder that the error names.
pub fn restore(
    from: &Path,
    into: &Path,
    options: Options,
    (why, wall_ms): (&str, i64),
    label_of: LabelOf<'_>,
) -> Result<Restored, StoreError> {
    let Sound { manifest, from, .. } = sound(from)?;
    let from = &from;
    let there = stands(into)?;
    let _lock = there.as_ref().map(|dir| lock_where_possible(dir)).transpose()?;
    // A folder that is reached through a link is exchanged where it is.
    let into = &place(RESTORING, into)?;
    let part = into.with_added_extension("restoring.part");
    disk::remove_dir(RESTORING, &part)?;
    disk::make_dir(RESTORING, &part)?;
    backup::copy_database(RESTORING, from, &part)?;
    let head = fs::read(load::head_file(from)).map_err(file(RESTORING, from))?;
    disk::write_whole(RESTORING, &load::head_file(&part), &head)?;
    let mut store = Store::open(&part, Options { seen: None, ..options.clone() })?;
    if *store.standing() != Standing::Ready {
        let troubles = store.troubles().iter().map(Trouble::message).collect();
        let trouble = store_troubles(Arg::Sentences(troubles));
        return Err(StoreError::BackupAltered { path: from.clone(), trouble });
    }
    let lacks = there.as_ref().map(|dir| lacks(dir, &store, &manifest, label_of)).transpose()?;
    let lost = lacks.as_ref().and_then(|lacks| lacks.confirmed).filter(|head| head.seq > manifest.head.seq);
    store.begin(options.epoch, why, lost)?;
    let photos_missing = copy_photos(&store, from, there.as_deref())?;
    store.close()?;
    let moved_to =
        exchange(&part, into, there.as_deref(), wall_ms, |into| Store::adopt(into, options)?.close())?;
    Ok(Restored { manifest, moved_to, lacks, photos_missing })
}

/// Copies the photos out of the backup, or from the store that stood in the place where the backup hasn't them whole.
fn copy_photos(store: &Store, from: &Path, there: Option<&Path>) -> Result<Vec<Trouble>, StoreError> {
    let sources: Vec<&Path> = [Some(photos_of(from)), there].into_iter().flatten().collect();
    let mut missing = Vec::new();
    for row in photos::all(store.reader()?).map_err(sql(RESTORING))? {
        if let Kept::Not(trouble) = backup::keep_photo(RESTORING, &sources, &store.dir, &row)? {
            missing.push(trouble);
        }
    }
    Ok(missing)
}

/// Puts the restored store in its place and opens it there; what stood there goes aside, and its folder is answered. Where
/// any of it fails, it stands there again.
fn exchange(
    part: &Path,
    into: &Path,
    there: Option<&Path>,
    wall_ms: i64,
    adopt: impl FnOnce(&Path) -> Result<(), StoreError>,
) -> Result<Option<PathBuf>, StoreError> {
    let aside = there.map(|dir| aside_of(dir, wall_ms));
    if let (Some(dir), Some(aside)) = (there, &aside) {
        fs::rename(dir, aside).map_err(file(RESTORING, dir))?;
    }
    let synced = || aside.as_ref().map_or(Ok(()), |aside| disk::sync_parent(RESTORING, aside));
    let placed = synced().and_then(|()| put(RESTORING, part, into)).and_then(|()| adopt(into));
    let Err(error) = placed else { return Ok(aside) };
    let back = || -> std::io::Result<()> {
        if into.exists() {
            fs::rename(into, part)?;
        }
        match (there, &aside) {
            (Some(dir), Some(aside)) => fs::rename(aside, dir),
            _ => Ok(()),
        }
    };
    match (back(), aside) {
        (Err(source), Some(aside)) => {
            Err(StoreError::LeftAside { aside, dir: into.to_owned(), why: Box::new(error), source })
        }
        _ => Err(error),
    }
}

fn aside_of(dir: &Path, wall_ms: i64) -> PathBuf {
    let parent = dir.parent().unwrap_or(dir);
    let name = dir.file_name().unwrap_or_default().to_string_lossy();
    backup::unused(parent, &format!("{name}.before-{}", backup::when(wall_ms)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn folder(path: &Path, text: &str) -> std::io::Result<()> {
        fs::create_dir(path)?;
        fs::write(path.join("journal.db"), text)
    }

    #[test]
    fn what_stood_in_the_place_stands_there_again_when_the_restored_store_does_not_open()
    -> Result<(), Box<dyn std::error::Error>> {
        let dir = tempfile::tempdir()?;
        let [part, into] = ["bay.restoring.part", "bay"].map(|name| dir.path().join(name));
        let broken = || Err(StoreError::Busy);
        for (made, adopted) in [(false, true), (true, false)] {
            folder(&into, "before")?;
            if made {
                folder(&part, "restored")?;
            }
            let failed = exchange(&part, &into, Some(&into), 0, |_| if adopted { Ok(()) } else { broken() });
            assert!(failed.is_err());
            assert_eq!(fs::read_to_string(into.join("journal.db"))?, "before", "made: {made}");
            assert_eq!(
                aside_of(&into, 0),
                dir.path().join("bay.before-1970-01-01T000000Z"),
                "nothing is aside"
            );
            fs::remove_dir_all(&into)?;
        }
        Ok(())
    }

    #[test]
    fn a_store_that_cannot_be_put_back_is_named_by_where_it_is() -> Result<(), Box<dyn std::error::Error>> {
        let dir = tempfile::tempdir()?;
        let [part, into] = ["bay.restoring.part", "bay"].map(|name| dir.path().join(name));
        folder(&into, "before")?;
        folder(&part, "restored")?;
        let failed = exchange(&part, &into, Some(&into), 0, |into| {
            // Somebody puts other files in the way meanwhile.
            fs::rename(into, dir.path().join("elsewhere")).map_err(file(RESTORING, into))?;
            fs::write(into, "a file").map_err(file(RESTORING, into))?;
            folder(&part, "more").map_err(file(RESTORING, into))?;
            Err(StoreError::Busy)
        });
        let Err(StoreError::LeftAside { aside, .. }) = failed else { return Err("it was put back".into()) };
        assert_eq!(fs::read_to_string(aside.join("journal.db"))?, "before");
        Ok(())
    }
}
