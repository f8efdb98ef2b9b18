//! Backups by the shop's plan, beside the desk: after opening, and then every hour, it is looked whether one is due.

use std::path::Path;
use std::time::Duration;

use crate::desk::Desk;
use crate::trouble::Trouble;

const LOOK_AGAIN: Duration = Duration::from_secs(60 * 60);

/// Begins, for as long as the window is open.
pub fn begin(desk: Desk) {
    std::thread::spawn(move || {
        loop {
            if let Err(trouble) = tauri::async_runtime::block_on(look(&desk)) {
                // A backup that failed is kept and told by `opened`. Where that can't be kept either, the store is in
                // trouble and every screen says so; here it goes to the system's log.
                eprintln!("Panside could not look after its backups: {}", trouble.message);
            }
            std::thread::sleep(LOOK_AGAIN);
        }
    });
}

/// Makes a backup if one is due. The desk is free while it is made.
async fn look(desk: &Desk) -> Result<(), Trouble> {
    let due = desk.with(|bay| Ok(bay.backup_due()?.map(|(plan, now_ms)| (bay.backing(), plan, now_ms))));
    let Some((backing, plan, now_ms)) = due.await? else { return Ok(()) };
    let keep = usize::try_from(plan.keep).unwrap_or(usize::MAX);
    let run = move || backing.run(Path::new(&plan.folder), keep, now_ms);
    let made = tauri::async_runtime::spawn_blocking(run).await;
    let made = made.map_err(|error| Trouble::other(format!("The backup broke off: {error}.")))?;
    desk.with(move |bay| bay.note_backup(made.as_ref())).await
}
