//! Backups by the shop's plan, beside the desk: after opening, and then every hour, it is looked whether one is due.

use std::path::Path;
use std::time::Duration;

use panside_bay::way_back::{BackedUpPage, BackupPlan};

use crate::desk::{Desk, off_thread};
use crate::message::{panside_backups_unseen, speaker};
use crate::trouble::Trouble;

const LOOK_AGAIN: Duration = Duration::from_secs(60 * 60);

/// Begins, for as long as the window is open.
pub fn begin(desk: Desk) {
    std::thread::spawn(move || {
        loop {
            if let Err(trouble) = tauri::async_runtime::block_on(look(&desk)) {
                // A backup that failed is kept and told by `opened`. Where that can't be kept either, the store is in
                // trouble and every screen says so; here it goes to the system's log.
                eprintln!("{}", speaker().say(&panside_backups_unseen(trouble.message)));
            }
            std::thread::sleep(LOOK_AGAIN);
        }
    });
}

/// Makes a backup if one is due. The desk is free while it is made.
async fn look(desk: &Desk) -> Result<(), Trouble> {
    let due = desk.with(|bay| Ok(bay.backup_due()?.map(|due| (bay.backing(), due))));
    let Some((backing, (plan, now_ms))) = due.await? else { return Ok(()) };
    let made = off_thread(move || backing.run(Path::new(&plan.folder), keep(&plan), now_ms)).await?;
    desk.with(move |bay| bay.note_backup(made.as_ref())).await
}

/// Makes a backup by the plan now, whether or not one is due. The desk is free while it is made.
///
/// # Errors
/// Why it came to nothing, which is kept too; where the shop named no folder.
pub async fn now(desk: &Desk) -> Result<BackedUpPage, Trouble> {
    let asked = desk.with(|bay| Ok((bay.backing(), bay.backup_now()?)));
    let (backing, (plan, now_ms)) = asked.await?;
    let made = off_thread(move || backing.run(Path::new(&plan.folder), keep(&plan), now_ms)).await?;
    desk.with(move |bay| {
        let noted = bay.note_backup(made.as_ref());
        // Why no backup was made matters more than that this could not be kept.
        let made = made?;
        noted?;
        Ok(BackedUpPage::of(&made, bay.backups()?))
    })
    .await
}

fn keep(plan: &BackupPlan) -> usize {
    usize::try_from(plan.keep).unwrap_or(usize::MAX)
}
