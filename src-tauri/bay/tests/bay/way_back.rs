//! The shop's plan for backups, and going on.

use panside_bay::BayError;
use panside_bay::clock::Clock;
use panside_bay::pins::{Pin, PinAuthority};
use panside_bay::way_back::{BackupMade, BackupPlan, Onlooker, age, found, is_due, look_ahead};
use panside_messages::Speaker;
use tempfile::TempDir;

use crate::support::{ODE, Shop};

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
    let ago = |minutes: i64| Speaker::english().within(&age(0, minutes * 60_000));
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
fn another_folder_gets_its_first_backup_at_once_and_an_ended_plan_has_nothing_to_complain_of() {
    let mut shop = Shop::new();
    let (one, other) = (TempDir::new().unwrap(), TempDir::new().unwrap());
    shop.bay.put_backup_plan(Some(&plan(&one))).unwrap();
    let made = shop.bay.back_up(one.path(), 2).unwrap();
    shop.bay.note_backup(Ok(&made)).unwrap();
    shop.bay.put_backup_plan(Some(&BackupPlan { every_hours: 6, ..plan(&one) })).unwrap();
    assert!(shop.bay.backups().unwrap().made.is_some(), "it is in that folder");
    shop.bay
        .put_backup_plan(Some(&BackupPlan {
            folder: format!(" {} ", other.path().display()),
            ..plan(&other)
        }))
        .unwrap();
    let told = shop.bay.backups().unwrap();
    assert_eq!(told.plan, Some(plan(&other)), "without the space around it");
    assert!(told.due && told.made.is_none(), "{told:?}");
    let gone = other.path().to_owned();
    drop(other);
    let failed = shop.bay.backing().run(&gone, 2, 0);
    shop.bay.note_backup(failed.as_ref()).unwrap();
    assert!(shop.bay.backups().unwrap().failed.is_some());
    shop.bay.put_backup_plan(None).unwrap();
    assert_eq!(shop.bay.backups().unwrap().failed, None);
    assert_eq!(shop.bay.backup_trouble().unwrap(), None);
}

#[test]
fn a_backup_is_looked_at_before_it_is_restored_by_job_and_by_whose_it_is() {
    let mut shop = Shop::new();
    let job = shop.start();
    let folder = TempDir::new().unwrap();
    let made = shop.bay.back_up(folder.path(), 2).unwrap();
    // The shop's three people are entries too.
    let before = shop.events(job) as u64 + 3;
    let later = shop.start();
    shop.bay.set_pin(ODE, Pin::new("1234").unwrap(), PinAuthority::Own(ODE)).unwrap();
    let onlooker = Onlooker {
        device: Some(shop.bay.device()),
        now_ms: shop.clock.now().wall_ms + HOUR_MS,
        speaker: Speaker::english(),
    };
    let lines = found(&folder.path().to_string_lossy(), onlooker).unwrap();
    let facts = lines[0].facts.clone().unwrap();
    assert_eq!((facts.events, &*facts.age, facts.another), (before, "60 minutes ago", false));
    let page = look_ahead(&made.path.to_string_lossy(), shop.dir.path(), onlooker).unwrap();
    let lacks = page.lacks.unwrap();
    let lacking = shop.events(later) as u64;
    assert_eq!(lacks.entries, Some(lacking + 1));
    let jobs: Vec<_> = lacks.jobs.iter().map(|job| (&*job.called, job.restored, job.lacking)).collect();
    let of_job = ("RO 1042 \"invented van\"", 0, lacking);
    assert_eq!(jobs, [of_job, ("The shop's people, tools, spec sheets and checklists", 3, 1)]);
    let another = Onlooker { device: Some(Shop::new().bay.device()), ..onlooker };
    assert!(found(&folder.path().to_string_lossy(), another).unwrap()[0].facts.as_ref().unwrap().another);
    assert!(matches!(found("backups", onlooker), Err(BayError::WholePath(_))));
}

#[test]
fn a_row_of_the_plan_that_cannot_be_read_locks_nobody_out() {
    let mut shop = Shop::new();
    shop.bay.put_setting("backup", "scribble").unwrap();
    assert_eq!(shop.bay.backups().unwrap().plan, None);
}
