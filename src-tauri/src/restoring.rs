//! The ways back that shut the store: restoring a backup, and saving what holds of a damaged store. Backups are looked at
//! beside the desk, whether or not the store can be opened.
//!
//! What works on the store's files goes through `Desk::shut`: the store is closed, and what lies there afterwards is
//! opened, after a failure too, but no empty one where a store stood that is gone. Proofs and plans that were held are
//! forgotten, and what a verifier finds counts only for the opening that it was begun for. After restoring, the page
//! shows what came of it and is loaded anew, so that nothing of the old store is shown or kept. A backup now
//! (`backing`) runs beside the desk too.

use panside_bay::BayError;
use panside_bay::way_back::{self, BackupLine, Onlooker, RestorePage, SalvagedPage, whole_path};

use crate::desk::{Desk, off_thread};
use crate::message::{panside_restored_why, speaker};
use crate::trouble::Trouble;

/// The backups in a folder, the newest first.
///
/// # Errors
/// When the folder isn't there or can't be read.
pub async fn list(desk: &Desk, folder: String) -> Result<Vec<BackupLine>, Trouble> {
    let (_, onlooker) = desk.onlooker().await?;
    Ok(off_thread(move || way_back::found(&folder, onlooker)).await??)
}

/// Reads a backup again and says what restoring it would come to.
///
/// # Errors
/// When the backup doesn't hold.
pub async fn look_ahead(desk: &Desk, backup: String) -> Result<RestorePage, Trouble> {
    let (store, onlooker) = desk.onlooker().await?;
    Ok(off_thread(move || way_back::look_ahead(&backup, &store, onlooker)).await??)
}

/// Restores a backup. The store that is there is moved aside; what is open then is the restored one.
///
/// # Errors
/// Why it was not restored: then the store that was there is open again.
pub async fn restore(desk: &Desk, backup: String) -> Result<RestorePage, Trouble> {
    let (_, onlooker) = desk.onlooker().await?;
    desk.shut(move |shut| {
        let (backup, now) = (whole_path(&backup)?, shut.clock.now());
        // Kept with the new epoch that a restored store begins.
        let why = speaker().within(&panside_restored_why());
        let restored = way_back::restore(&backup, shut.store, Some(shut.state.to_owned()), &why, &now)?;
        Ok(RestorePage::after(&restored, Onlooker { now_ms: now.wall_ms, ..onlooker }))
    })
    .await
}

/// Saves what holds of the store into a new one. The store that is there stays as it is.
///
/// # Errors
/// Why nothing was saved.
pub async fn salvage(desk: &Desk, into: String) -> Result<SalvagedPage, Trouble> {
    desk.shut(move |shut| {
        let saved = way_back::salvage(shut.store, &whole_path(&into)?, Some(shut.state.to_owned()))?;
        Ok::<_, BayError>(SalvagedPage::of(&saved, speaker()))
    })
    .await
}

#[cfg(test)]
mod tests {
    use std::path::PathBuf;

    use panside_bay::way_back::BackupPlan;
    use tauri::async_runtime::block_on;
    use tempfile::TempDir;

    use super::*;
    use crate::trouble::TroubleKind;
    use crate::{backing, opened};

    /// A desk, and a folder for its backups beside the store.
    struct Shop {
        dir: TempDir,
        desk: Desk,
    }

    impl Shop {
        fn new() -> Shop {
            let dir = tempfile::tempdir().unwrap();
            std::fs::create_dir(dir.path().join("backups")).unwrap();
            let desk = Shop::open(&dir);
            let folder = dir.path().join("backups").to_string_lossy().into_owned();
            let plan = BackupPlan { folder, every_hours: 24, keep: 14 };
            block_on(desk.with(move |bay| bay.put_backup_plan(Some(&plan)))).unwrap();
            Shop { dir, desk }
        }

        fn open(dir: &TempDir) -> Desk {
            Desk::open(dir.path().join("bay"), dir.path().join("state"), false)
        }

        fn path(&self, name: &str) -> String {
            self.dir.path().join(name).to_string_lossy().into_owned()
        }

        /// Keeps where the page is, as the page does.
        fn at(&self, screen: &'static str) {
            block_on(self.desk.with(move |bay| bay.put_setting("window", screen))).unwrap();
        }

        fn back_up(&self) -> String {
            block_on(backing::now(&self.desk)).unwrap().backups.made.unwrap().path
        }

        fn sees(&self) -> Result<Option<String>, Trouble> {
            Ok(block_on(opened::look(&self.desk))?.window)
        }

        /// What lies beside the store, but for backups and notes.
        fn beside(&self) -> Vec<PathBuf> {
            let entries = std::fs::read_dir(self.dir.path()).unwrap().map(|entry| entry.unwrap().path());
            entries.filter(|path| path.to_string_lossy().contains(".before-")).collect()
        }
    }

    #[test]
    fn a_restored_store_is_what_the_page_sees_next_and_takes_what_comes() {
        let shop = Shop::new();
        shop.at("before");
        let backup = shop.back_up();
        shop.at("after");
        let listed = block_on(list(&shop.desk, shop.path("backups"))).unwrap();
        assert_eq!(listed.iter().map(|line| &line.path).collect::<Vec<_>>(), [&backup]);
        let ahead = block_on(look_ahead(&shop.desk, backup.clone())).unwrap();
        assert_eq!(shop.sees().unwrap().as_deref(), Some("after"), "asking changes nothing");
        let restored = block_on(restore(&shop.desk, backup)).unwrap();
        assert_eq!(shop.sees().unwrap().as_deref(), Some("before"));
        let aside = shop.beside();
        assert_eq!(restored.moved_to.as_deref(), Some(&*aside[0].to_string_lossy()));
        assert_eq!(RestorePage { moved_to: None, ..restored }, ahead, "as it was told");
        shop.at("onward");
        assert_eq!(shop.sees().unwrap().as_deref(), Some("onward"));
        assert_eq!(block_on(opened::look(&shop.desk)).unwrap().troubles.said, Vec::<String>::new());
        // What made room for it is whole.
        let kept = Desk::open(aside[0].clone(), shop.dir.path().join("other state"), false);
        assert_eq!(block_on(opened::look(&kept)).unwrap().window.as_deref(), Some("after"));
    }

    #[test]
    fn where_restoring_fails_the_store_that_was_there_is_open_again_and_the_reason_said() {
        let shop = Shop::new();
        shop.at("here");
        let backup = shop.back_up();
        std::fs::write(PathBuf::from(&backup).join("journal.db"), b"scribble").unwrap();
        for (from, why) in [
            (backup, "is not a Panside store"),
            (shop.path("backups"), "is no backup that can be read"),
            ("backups".into(), "Type it from / on"),
        ] {
            let ahead = block_on(look_ahead(&shop.desk, from.clone())).unwrap_err();
            assert!(ahead.message.contains(why), "{}", ahead.message);
            let refused = block_on(restore(&shop.desk, from)).unwrap_err();
            assert!(refused.message.contains(why), "{}", refused.message);
            assert_eq!(shop.sees().unwrap().as_deref(), Some("here"));
            shop.at("here");
        }
        assert_eq!(shop.beside(), Vec::<PathBuf>::new());
    }

    #[test]
    fn a_store_that_cannot_be_opened_any_more_is_restored_all_the_same() {
        let shop = Shop::new();
        shop.at("before");
        let backup = shop.back_up();
        drop(shop.desk);
        let [database, mark] =
            ["journal.db", "journal.head"].map(|name| shop.dir.path().join("bay").join(name));
        std::fs::remove_file(database).unwrap();
        std::fs::write(mark, b"").unwrap();
        let shop = Shop { desk: Shop::open(&shop.dir), dir: shop.dir };
        assert_eq!(shop.sees().unwrap_err().kind, TroubleKind::Store);
        let listed = block_on(list(&shop.desk, shop.path("backups"))).unwrap();
        assert!(listed[0].facts.as_ref().is_some_and(|facts| !facts.another), "{listed:?}");
        let restored = block_on(restore(&shop.desk, backup)).unwrap();
        assert_eq!(restored.lacks.unwrap().entries, None, "nobody can tell");
        assert_eq!(shop.sees().unwrap().as_deref(), Some("before"));
    }

    #[test]
    fn no_empty_store_is_made_where_one_stood_that_is_gone() {
        let shop = Shop::new();
        let away = shop.dir.path().join("away");
        let moved = shop.desk.shut({
            let away = away.clone();
            move |shut| {
                std::fs::rename(shut.store, &away).unwrap();
                Err::<(), _>(BayError::WholePath("the store is elsewhere".into()))
            }
        });
        assert!(block_on(moved).is_err());
        let gone = block_on(shop.desk.open_again()).unwrap_err();
        assert!(gone.message.contains("the store is elsewhere"), "{}", gone.message);
        assert!(!shop.dir.path().join("bay").exists());
        std::fs::rename(away, shop.dir.path().join("bay")).unwrap();
        block_on(shop.desk.open_again()).unwrap();
    }

    #[test]
    fn what_can_be_read_is_saved_and_the_store_is_open_again() {
        let shop = Shop::new();
        shop.at("here");
        let saved = block_on(salvage(&shop.desk, shop.path("saved"))).unwrap();
        assert_eq!(saved.into, shop.path("saved"));
        assert_eq!(shop.sees().unwrap().as_deref(), Some("here"));
        let inside = block_on(salvage(&shop.desk, shop.path("bay/saved"))).unwrap_err();
        assert!(inside.message.contains("inside the store"), "{}", inside.message);
        shop.at("onward");
        let other = Desk::open(saved.into.into(), shop.dir.path().join("other state"), false);
        assert_eq!(block_on(opened::look(&other)).unwrap().window.as_deref(), Some("here"));
    }

    #[test]
    fn a_backup_now_that_fails_is_said_and_kept_until_one_is_made() {
        let shop = Shop::new();
        std::fs::remove_dir(shop.path("backups")).unwrap();
        let failed = block_on(backing::now(&shop.desk)).unwrap_err();
        assert!(failed.message.contains("Plug in its disk"), "{}", failed.message);
        let told = block_on(shop.desk.with(|bay| bay.backups())).unwrap();
        assert!(told.made.is_none() && told.failed.unwrap().contains("Plug in its disk"));
        std::fs::create_dir(shop.path("backups")).unwrap();
        shop.back_up();
        assert_eq!(block_on(shop.desk.with(|bay| bay.backups())).unwrap().failed, None);
        block_on(shop.desk.with(|bay| bay.put_backup_plan(None))).unwrap();
        let none = block_on(backing::now(&shop.desk)).unwrap_err();
        assert!(none.message.contains("Name the folder for backups first"), "{}", none.message);
    }
}
