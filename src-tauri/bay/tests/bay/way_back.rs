//! The shop's plan for backups, and going on.

use panside_bay::BayError;
use panside_bay::way_back::{BackupMade, BackupPlan, age, is_due};
use tempfile::TempDir;

use crate::kit::Shop;

const HOUR_MS: i64 = 3_600_000;

fn plan(folder: &TempDir) -> BackupPlan {
    BackupPlan { folder: folder.path().to_string_lossy().into_owned(), every_hours: 12, keep: 2 }
}

#[test]
fn a_backup_is_due_after_its_hours_and_whenever_the_clock_was_set_back() {
    let plan = BackupPlan { folder: "/backups".into(), every_hours: 12, keep: 2 };
    let made = BackupMade { path: String::new(), wall_ms: 100 * HOUR_MS, events: 0, lacks: Vec::new() };
    assert!(is_due(&plan, None, 0), "none was made");
    assert!(!is_due(&plan, Some(&made), 112 * HOUR_MS - 1));
    assert!(is_due(&plan, Some(&made), 112 * HOUR_MS));
    assert!(is_due(&plan, Some(&made), 99 * HOUR_MS), "a backup from the future says nothing");
}

#[test]
fn an_age_is_said_in_the_unit_that_a_person_would_use() {
    let ago = |minutes: i64| age(0, minutes * 60_000);
    assert_eq!(ago(1), "1 minute ago");
    assert_eq!(ago(119), "119 minutes ago");
    assert_eq!(ago(120), "2 hours ago");
    assert_eq!(ago(47 * 60 + 59), "47 hours ago");
    assert_eq!(ago(3 * 1440), "3 days ago");
    assert_eq!(ago(-1), "in the future by this tablet's clock");
}

#[test]
fn a_backup_by_the_plan_is_made_when_it_is_due_and_then_told() {
    let mut shop = Shop::new();
    shop.start();
    let folder = TempDir::new().unwrap();
    assert!(shop.bay.backup_due().unwrap().is_none(), "no folder is named");
    shop.bay.put_backup_plan(Some(&plan(&folder))).unwrap();
    let (due, now) = shop.bay.backup_due().unwrap().unwrap();
    let made = shop.bay.backing().run(due.folder.as_ref(), due.keep as usize, now).unwrap();
    shop.bay.note_backup(Ok(&made)).unwrap();
    let told = shop.bay.backups().unwrap();
    assert!(!told.due && told.made.is_some_and(|told| told.events == made.manifest.events));
    assert_eq!(told.age.as_deref(), Some("0 minutes ago"));
    shop.clock.advance_ms(12 * 3_600_000);
    let mut shop = shop.restarted();
    assert!(shop.bay.backups().unwrap().due);
    // The stick was pulled out: it is due all the same, and said when the window opens.
    let (due, now) = shop.bay.backup_due().unwrap().unwrap();
    drop(folder);
    let failed = shop.bay.backing().run(due.folder.as_ref(), due.keep as usize, now);
    shop.bay.note_backup(failed.as_ref()).unwrap();
    assert!(shop.bay.backups().unwrap().due);
    let said = shop.bay.backup_trouble().unwrap().unwrap();
    assert!(said.contains("The last backup failed") && said.contains("Plug in its disk"), "{said}");
    shop.bay.put_backup_plan(None).unwrap();
    assert!(shop.bay.backup_due().unwrap().is_none());
}

#[test]
fn a_plan_that_could_never_be_kept_is_refused() {
    let mut shop = Shop::new();
    let folder = TempDir::new().unwrap();
    let good = plan(&folder);
    for wrong in [
        BackupPlan { folder: "backups".into(), ..good.clone() },
        BackupPlan { folder: "/nowhere/at/all".into(), ..good.clone() },
        BackupPlan { every_hours: 0, ..good.clone() },
        BackupPlan { keep: 0, ..good.clone() },
    ] {
        let refused = shop.bay.put_backup_plan(Some(&wrong));
        assert!(matches!(refused, Err(BayError::BackupPlan(_))), "{wrong:?}");
    }
    assert_eq!(shop.bay.backups().unwrap().plan, None);
}

#[test]
fn a_row_of_the_plan_that_cannot_be_read_locks_nobody_out() {
    let mut shop = Shop::new();
    shop.bay.put_setting("backup", "scribble").unwrap();
    assert_eq!(shop.bay.backups().unwrap().plan, None);
}
