//! Backups in the real window: planned, made, looked at and restored, and the job goes on from there.

use std::path::Path;

use panside_tests::window::{Place, Result, Trouble, Window};

/// The line after which the backup is made; the next two are entered, lost by restoring and entered again.
const BACKED_UP: usize = 3;

#[test]
fn a_backup_is_planned_made_and_restored_and_what_came_after_it_is_entered_again() -> Result {
    let place = Place::after(BACKED_UP)?;
    let folder = place.path("backups");
    std::fs::create_dir(&folder).map_err(|source| Trouble::File {
        doing: "Making the folder",
        path: folder.clone(),
        source,
    })?;
    let mut window = place.open()?;
    setup(&mut window)?;
    window.tap_words("screens-backups-plan")?;
    window.type_into("[role=dialog] input", &folder.to_string_lossy())?;
    window.tap_words("screens-setup-keep")?;
    says(&mut window, "Every 24 hours, the newest 14 are kept")?;
    window.tap_words("screens-backups-now")?;
    says(&mut window, "Backed up and verified: ")?;
    window.tap_words("screens-place-job")?;
    place.job()?.walk(&mut window, BACKED_UP + 1, BACKED_UP + 2)?;

    setup(&mut window)?;
    window.tap_words("screens-restore")?;
    window.tap(&format!("Restore: {}", only_backup(&folder)?))?;
    says(&mut window, "made on this tablet are not in it.")?;
    window.tap_words("screens-restore-do")?;
    window.wait("the restored store", "seen.dialogs.includes('The backup is restored')")?;
    says(&mut window, "bay.before-")?;
    window.tap_words_anew("screens-restored-on")?;

    says(&mut window, "Every 24 hours, the newest 14 are kept")?;
    window.tap_words("screens-place-job")?;
    place.job()?.walk(&mut window, BACKED_UP + 1, BACKED_UP + 2)?;
    assert_eq!(window.see()?.mistakes, Vec::<String>::new());
    window.close().map(drop)
}

fn setup(window: &mut Window) -> Result {
    window.tap_words("frame-more")?;
    window.tap_words("screens-place-setup")
}

/// The name of the one backup in a folder.
fn only_backup(folder: &Path) -> Result<String> {
    let read = |source| Trouble::File { doing: "Reading", path: folder.to_owned(), source };
    let entries = std::fs::read_dir(folder).map_err(read)?.filter_map(std::result::Result::ok);
    let names: Vec<String> = entries
        .filter(|entry| entry.path().join("manifest.json").exists())
        .map(|entry| entry.file_name().to_string_lossy().into_owned())
        .collect();
    match names.as_slice() {
        [name] => Ok(name.clone()),
        _ => Err(Trouble::wrong(format!("one backup was made, and these are there: {names:?}"))),
    }
}

/// Waits until the window says something.
fn says(window: &mut Window, what: &str) -> Result {
    window.wait(what, &format!("seen.text.includes({})", serde_json::Value::from(what)))
}
