//! Saving what holds of damaged stores, held against a reading of the truth.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use panside_journal::{DeviceId, Event, Hash, Subject, verify_subject_chain};
use panside_store::{
    Meaning, NewPhoto, Options, PhotoFormat, Salvaged, Standing, Store, StoreError, Trouble, salvage,
};
use tempfile::tempdir;
use uuid::Uuid;

use crate::support::{
    Chance, Outcome, copy, draft, epoch, job, label_of, meaning_of, options, origin, seed, store_with, write,
};

const PAGE: usize = 4096;
const ENTRIES: u64 = 300;

/// The device that receives what is saved.
fn receiver() -> Options {
    Options { device: DeviceId(Uuid::from_u128(0xD9)), epoch: epoch(9), ..options() }
}

fn save(from: &Path, into: &Path) -> Result<Salvaged, StoreError> {
    salvage(from, into, receiver(), &label_of, &meaning_of)
}

type Truth = BTreeMap<Subject, Vec<Event>>;

fn truth_of(store: &Store) -> Result<Truth, StoreError> {
    store.jobs()?.into_iter().map(|row| Ok((row.job.into(), store.events(row.job)?))).collect()
}

/// The numbers of the entries whose rows stand on one of these pages of a file: an event's body stands nowhere else.
fn numbers_on(pages: &[&[u8]]) -> BTreeSet<u64> {
    let mark = b"{\"number\":";
    let mut numbers = BTreeSet::new();
    for page in pages {
        for at in (0..page.len()).filter(|at| page[*at..].starts_with(mark)) {
            let digits = page[at + mark.len()..].iter().take_while(|byte| byte.is_ascii_digit());
            let number = digits.fold(0, |number, digit| number * 10 + u64::from(digit - b'0'));
            numbers.insert(number);
        }
    }
    numbers
}

fn number_of(event: &Event) -> u64 {
    let body = String::from_utf8_lossy(&event.body).into_owned();
    body.trim_start_matches("{\"number\":")
        .split(',')
        .next()
        .and_then(|digits| digits.parse().ok())
        .unwrap_or(0)
}

/// Saves a damaged copy and holds the new store against the truth: every event is one of the truth and in its place,
/// everything before the first entry on a damaged page is there, and whatever isn't is named.
fn judge(damaged: &Path, truth: &Truth, hurt: &BTreeSet<u64>) -> Result<u64, Box<dyn std::error::Error>> {
    let place = tempdir()?;
    let into = place.path().join("saved");
    let report = save(damaged, &into)?;
    let mut store = Store::open(&into, receiver())?;
    assert_eq!((store.standing(), store.troubles().len()), (&Standing::Ready, 0), "{:?}", store.troubles());
    let found = store.check(&meaning_of)?.troubles;
    assert!(found.is_empty(), "{found:?}");
    let mut lost = 0;
    for (subject, events) in truth {
        let saved = store.events(*subject)?;
        verify_subject_chain(&saved)?;
        assert_eq!(saved, events[..saved.len()], "{subject}");
        let sure = events.iter().position(|event| hurt.contains(&number_of(event))).unwrap_or(events.len());
        assert!(saved.len() >= sure, "{subject}: {} saved, {sure} stand on whole pages", saved.len());
        let told = report.rest.iter().find(|rest| rest.subject == *subject);
        if saved.len() < events.len() {
            let told = told.ok_or_else(|| format!("{subject} lacks entries and is not named"))?;
            assert_eq!(told.saved, saved.len() as u64);
            assert!(told.of > told.saved && told.of <= events.len() as u64, "{told:?}");
            lost += 1;
        } else {
            assert!(told.is_none(), "{told:?}");
        }
    }
    for (subject, _) in truth.iter().filter(|(_, events)| !events.is_empty()) {
        write(&mut store, subject.job().ok_or("a job")?, 10_000 + u64::from(subject.id().as_bytes()[15]))?;
    }
    assert!(store.check(&meaning_of)?.troubles.is_empty(), "it can be worked with");
    assert_eq!(fs::read_to_string(into.join("salvage.txt"))?, report.message().english() + "\n");
    Ok(lost)
}

#[test]
fn a_whole_store_is_saved_whole() -> Outcome {
    let dir = tempdir()?;
    let store = store_with(dir.path(), 20)?;
    let truth = truth_of(&store)?;
    let place = tempdir()?;
    let busy = save(dir.path(), &place.path().join("saved"));
    assert!(matches!(busy, Err(StoreError::Locked { .. })), "{busy:?}");
    drop(store);
    assert_eq!(judge(dir.path(), &truth, &BTreeSet::new())?, 0, "from the log");
    Store::open(dir.path(), options())?.close()?;
    assert_eq!(judge(dir.path(), &truth, &BTreeSet::new())?, 0, "from the database");
    Ok(())
}

#[test]
fn pages_cut_out_of_the_database_cost_the_entries_on_them_and_no_others() -> Outcome {
    let dir = tempdir()?;
    let store = store_with(dir.path(), ENTRIES)?;
    let truth = truth_of(&store)?;
    store.close()?;
    let whole = fs::read(dir.path().join("journal.db"))?;
    let pages: Vec<&[u8]> = whole.chunks(PAGE).collect();
    let mut chance = Chance(seed());
    let mut lost = 0;
    for time in 0..12 {
        // Page 1 has the schema: without it SQLite reads nothing at all.
        let gone: Vec<usize> = match time {
            0 => vec![0],
            _ => (0..3).map(|_| chance.below(pages.len() as u64) as usize).collect(),
        };
        let mut cut = whole.clone();
        for page in &gone {
            cut[page * PAGE..(page + 1) * PAGE].fill(0);
        }
        let copied = tempdir()?;
        copy(dir.path(), copied.path())?;
        fs::write(copied.path().join("journal.db"), cut)?;
        let hurt = numbers_on(&gone.iter().map(|page| pages[*page]).collect::<Vec<_>>());
        lost += judge(copied.path(), &truth, &hurt)
            .map_err(|error| format!("seed {}, time {time}, pages {gone:?}: {error}", seed()))?;
    }
    assert!(lost > 3, "only {lost}: the cuts must hit entries");
    Ok(())
}

#[test]
fn a_file_cut_off_anywhere_keeps_what_stands_before() -> Outcome {
    let dir = tempdir()?;
    let store = store_with(dir.path(), ENTRIES)?;
    let truth = truth_of(&store)?;
    store.close()?;
    let whole = fs::read(dir.path().join("journal.db"))?;
    for cut in [whole.len() / 3, whole.len() / 2 + 1000, whole.len() - 1] {
        let copied = tempdir()?;
        copy(dir.path(), copied.path())?;
        fs::write(copied.path().join("journal.db"), &whole[..cut])?;
        let hurt = numbers_on(&whole[cut / PAGE * PAGE..].chunks(PAGE).collect::<Vec<_>>());
        judge(copied.path(), &truth, &hurt).map_err(|error| format!("cut at {cut}: {error}"))?;
    }
    Ok(())
}

#[test]
fn bits_flipped_in_the_database_cost_at_most_the_entries_on_their_pages() -> Outcome {
    let dir = tempdir()?;
    let store = store_with(dir.path(), 80)?;
    let truth = truth_of(&store)?;
    store.close()?;
    let whole = fs::read(dir.path().join("journal.db"))?;
    let mut chance = Chance(seed());
    for time in 0..40 {
        let mut flipped = whole.clone();
        let mut hit = Vec::new();
        for _ in 0..8 {
            let bit = chance.below(whole.len() as u64 * 8) as usize;
            flipped[bit / 8] ^= 1 << (bit % 8);
            hit.push(whole.chunks(PAGE).nth(bit / 8 / PAGE).unwrap_or_default());
        }
        let copied = tempdir()?;
        copy(dir.path(), copied.path())?;
        fs::write(copied.path().join("journal.db"), flipped)?;
        judge(copied.path(), &truth, &numbers_on(&hit))
            .map_err(|error| format!("seed {}, time {time}: {error}", seed()))?;
    }
    Ok(())
}

#[test]
fn entries_that_stand_in_the_log_alone_are_saved_past_a_flipped_bit() -> Outcome {
    let dir = tempdir()?;
    let store = store_with(dir.path(), 40)?;
    let truth = truth_of(&store)?;
    drop(store);
    let log = fs::read(dir.path().join("journal.db-wal"))?;
    let mut flipped = log.clone();
    // In the checksum of an early frame: SQLite leaves out all that follows it.
    flipped[32 + 40 * (24 + PAGE) + 20] ^= 1;
    let copied = tempdir()?;
    copy(dir.path(), copied.path())?;
    fs::write(copied.path().join("journal.db-wal"), flipped)?;
    let short = Store::open_read_only(copied.path())?;
    assert!(truth_of(&short)? != truth, "SQLite itself reads less");
    drop(short);
    assert_eq!(judge(copied.path(), &truth, &BTreeSet::new())?, 0);
    Ok(())
}

#[test]
fn long_entries_documents_photos_and_settings_are_saved_with_what_is_missing_named() -> Outcome {
    let dir = tempdir()?;
    let mut store = store_with(dir.path(), 6)?;
    let long = format!("{{\"note\":\"{}\"}}", "y".repeat(30_000));
    let (expected, origin) = (store.head(job(1))?, origin(7));
    store.append(&panside_store::Entry {
        subject: job(1).into(),
        expected,
        origin: &origin,
        drafts: &[draft(&long)],
        label: "{\"events\":3}",
    })?;
    let text = "z".repeat(50_000);
    let (kept, hurt) =
        (store.put_document("checklist", text.as_bytes())?, store.put_document("sheet", b"{\"a\":1}")?);
    store.put_setting("setup", "{\"people\":[]}")?;
    for bytes in [&b"holds"[..], b"thumb is gone", b"is altered"] {
        let format = PhotoFormat::Jpeg;
        let photo = NewPhoto { job: job(1), format, bytes, thumbnail: &bytes[1..], width: 4, height: 3 };
        store.put_photo(&photo)?;
    }
    let events = store.events(job(1))?;
    store.close()?;
    let path = |folder: &str, bytes: &[u8]| {
        let hash = Hash::of(bytes).to_string();
        dir.path().join(folder).join(&hash[..2]).join(format!("{hash}.jpg"))
    };
    fs::remove_file(path("thumbs", b"thumb is gone"))?;
    fs::write(path("photos", b"is altered"), b"scribble")?;
    rusqlite::Connection::open(dir.path().join("journal.db"))?
        .execute("UPDATE documents SET bytes = x'00' WHERE hash = ?1", [hurt.0])?;

    let altered = Hash::of(b"is altered");
    let names = move |subject: Subject, events: &[Event]| {
        let mut meaning: Meaning = meaning_of(subject, events);
        if subject == Subject::Job(job(1)) {
            meaning.photos.insert(altered);
            meaning.documents.extend([kept, hurt]);
        }
        meaning
    };
    let place = tempdir()?;
    let into = place.path().join("saved");
    let report = salvage(dir.path(), &into, receiver(), &label_of, &names)?;
    assert_eq!((report.events, report.documents, report.photos), (7, 1, 2), "{report:?}");
    assert!(report.rest.is_empty() && report.unread.is_empty(), "{report:?}");
    let said: Vec<_> = report.missing.iter().map(ToString::to_string).collect();
    assert_eq!(said.len(), 2, "{said:?}");
    assert!(matches!(&report.missing[0], Trouble::DocumentMissing { hash, .. } if *hash == hurt), "{said:?}");
    assert!(matches!(&report.missing[1], Trouble::PhotoUnkept { hash, .. } if *hash == altered), "{said:?}");
    let store = Store::open(&into, receiver())?;
    assert_eq!(store.events(job(1))?, events);
    assert_eq!(store.document(&kept)?.bytes, text.as_bytes());
    assert_eq!(store.photo(&Hash::of(b"thumb is gone"))?, b"thumb is gone");
    assert_eq!(store.setting("setup")?.as_deref(), Some("{\"people\":[]}"));
    Ok(())
}

#[test]
fn entries_that_were_lost_and_gone_on_without_do_not_come_back_in_place_of_the_later_ones() -> Outcome {
    let (dir, old) = (tempdir()?, tempdir()?);
    let mut store = store_with(dir.path(), 6)?;
    store.close()?;
    copy(dir.path(), old.path())?;
    store = Store::open(dir.path(), options())?;
    write(&mut store, job(1), 7)?;
    drop(store);
    // The log of the one with a lost entry beside the database of the one that went on without.
    let mut store = Store::open(old.path(), options())?;
    store.begin_epoch(epoch(1), "gone on")?;
    for number in 20..24 {
        write(&mut store, job(1), number)?;
    }
    let truth = truth_of(&store)?;
    store.close()?;
    fs::copy(dir.path().join("journal.db-wal"), old.path().join("journal.db-wal"))?;
    let place = tempdir()?;
    let into = place.path().join("saved");
    save(old.path(), &into)?;
    assert_eq!(truth_of(&Store::open(&into, receiver())?)?, truth);
    Ok(())
}

#[test]
fn nothing_is_saved_over_other_files() -> Outcome {
    let (dir, other) = (tempdir()?, tempdir()?);
    store_with(dir.path(), 2)?.close()?;
    fs::write(other.path().join("letter.txt"), b"dear")?;
    let refused = save(dir.path(), other.path());
    assert!(matches!(refused, Err(StoreError::NotEmpty { .. })), "{refused:?}");
    let inside = save(dir.path(), &dir.path().join("saved"));
    assert!(matches!(inside, Err(StoreError::InsideStore { .. })), "{inside:?}");
    let none = save(&other.path().join("nowhere"), &other.path().join("new"));
    assert!(matches!(none, Err(StoreError::NoStore { .. })), "{none:?}");
    Ok(())
}
