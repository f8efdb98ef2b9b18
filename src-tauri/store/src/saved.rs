//! What can be read of a damaged store and verifies: by SQLite as far as it goes, and page by page.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use panside_journal::{
    BootId, DeviceId, EpochId, Event, EventId, Format, Hash, Header, JobId, PersonId, RequestId, Subject,
    check_event,
};
use uuid::Uuid;

use crate::carve::{Column, Form, Pages, Tree};
use crate::heads::HeadRow;
use crate::photos::{PhotoFormat, PhotoRow};
use crate::salvage::Rest;
use crate::{Document, StoreError, load};

/// The columns of `events` as they stand in the table (`sql/0001_journal.sql`). The row's number stands elsewhere.
const EVENT: [Form; 23] = [
    Form::Null,
    Form::Number,
    Form::Bytes(16),
    Form::Bytes(16),
    Form::Number,
    Form::Bytes(16),
    Form::Number,
    Form::Bytes(16),
    Form::Number,
    Form::Number,
    Form::Bytes(16),
    Form::Bytes(32),
    Form::Bytes(16),
    Form::Number,
    Form::Number,
    Form::Bytes(16),
    Form::Text,
    Form::Number,
    Form::Text,
    Form::Bytes(32),
    Form::Bytes(32),
    Form::Bytes(32),
    Form::Bytes(32),
];
/// The columns of `heads`.
const HEAD: [Form; 6] =
    [Form::Number, Form::Bytes(16), Form::Number, Form::Bytes(32), Form::Text, Form::Bytes(32)];
/// The columns of `documents`.
const DOCUMENT: [Form; 3] = [Form::Bytes(32), Form::Text, Form::Blob];
/// The columns of `photos`.
const PHOTO: [Form; 7] =
    [Form::Bytes(16), Form::Bytes(32), Form::Text, Form::Number, Form::Number, Form::Number, Form::Bytes(32)];

/// What was read.
pub(crate) struct Saved {
    /// The events that follow each other from a subject's first one on, subject by subject.
    pub(crate) events: Vec<Event>,
    /// Events of other devices that waited for others.
    pub(crate) waiting: Vec<Event>,
    pub(crate) documents: Vec<Document>,
    pub(crate) photos: Vec<PhotoRow>,
    /// The subjects whose events are not all there.
    pub(crate) rest: Vec<Rest>,
}

/// An event that holds by itself.
struct Found {
    event: Event,
    side: bool,
    /// SQLite reads it as part of the journal. Others may be left of a transaction that was never confirmed, or of a
    /// tail that was lost and gone on without.
    live: bool,
}

/// Reads a store that may be damaged, changing nothing in it.
pub(crate) fn read(dir: &Path) -> Result<Saved, StoreError> {
    let mut pages = Pages::open(dir)?;
    let mut found: BTreeMap<Hash, Found> = BTreeMap::new();
    let live = live(dir);
    pages.each(Tree::Table, &EVENT, &mut |columns| {
        let Some((event, side)) = event(columns) else { return false };
        if found.contains_key(&event.hash) {
            return true;
        }
        let holds = check_event(&event.header, &event.body, &event.hash).is_ok();
        if holds {
            let live = live.contains(&event.hash);
            found.insert(event.hash, Found { event, side, live });
        }
        holds
    });
    let mut listed: BTreeMap<Subject, u64> = BTreeMap::new();
    pages.each(Tree::Index, &HEAD, &mut |columns| {
        let Some(row) = head(columns).filter(HeadRow::holds) else { return false };
        let seq = listed.entry(row.subject).or_default();
        *seq = row.head.seq.max(*seq);
        true
    });
    let documents = documents(&mut pages);
    let photos = photos(&mut pages);
    let (events, rest) = lines(found, &listed);
    Ok(Saved { events, waiting: waiting(dir), documents, photos, rest })
}

/// The hashes of the events that SQLite reads, as far as it can.
fn live(dir: &Path) -> BTreeSet<Hash> {
    let mut live = BTreeSet::new();
    let mut read = || -> rusqlite::Result<()> {
        let conn = load::connect_for_reading(dir)?;
        let mut query = conn.prepare("SELECT hash FROM events NOT INDEXED")?;
        let mut rows = query.query([])?;
        while let Some(row) = rows.next()? {
            live.insert(crate::rows::hash(row, 0)?);
        }
        Ok(())
    };
    // Where SQLite stops, what it read until then counts, and the pages give the rest.
    let _ = read();
    live
}

/// Received events that wait; they are checked again when they are received.
fn waiting(dir: &Path) -> Vec<Event> {
    let mut waiting = Vec::new();
    let mut read = || -> rusqlite::Result<()> {
        let conn = load::connect_for_reading(dir)?;
        let mut query = conn.prepare("SELECT line FROM waiting")?;
        let mut rows = query.query([])?;
        while let Some(row) = rows.next()? {
            let event = Event::from_line(&row.get::<_, String>(0)?);
            let holds = |event: &Event| check_event(&event.header, &event.body, &event.hash).is_ok();
            waiting.extend(event.ok().filter(holds));
        }
        Ok(())
    };
    // They come again from the device that has them.
    let _ = read();
    waiting
}

fn documents(pages: &mut Pages) -> Vec<Document> {
    let mut documents: BTreeMap<Hash, Document> = BTreeMap::new();
    pages.each(Tree::Table, &DOCUMENT, &mut |columns| {
        let read = || Some((hash_at(columns, 0)?, text(columns, 1)?, columns[2].bytes()?));
        let Some((hash, kind, bytes)) = read().filter(|(hash, _, bytes)| Hash::of(bytes) == *hash) else {
            return false;
        };
        documents.entry(hash).or_insert(Document { kind, bytes: bytes.to_vec() });
        true
    });
    documents.into_values().collect()
}

/// The photo rows; whether a row is right shows when its files are held against it.
fn photos(pages: &mut Pages) -> Vec<PhotoRow> {
    let mut photos: BTreeMap<(JobId, Hash), PhotoRow> = BTreeMap::new();
    pages.each(Tree::Index, &PHOTO, &mut |columns| {
        let Some(row) = photo(columns) else { return false };
        photos.entry((row.job, row.hash)).or_insert(row);
        true
    });
    photos.into_values().collect()
}

/// Of each subject the events that follow each other from the first on, then those on sides that follow one of them;
/// and the subjects of which there were more.
fn lines(found: BTreeMap<Hash, Found>, listed: &BTreeMap<Subject, u64>) -> (Vec<Event>, Vec<Rest>) {
    let mut of: BTreeMap<Subject, Vec<Found>> = listed.keys().map(|subject| (*subject, Vec::new())).collect();
    for one in found.into_values() {
        of.entry(one.event.header.subject).or_default().push(one);
    }
    let (mut events, mut rest) = (Vec::new(), Vec::new());
    // Where another device wrote a number twice, only one can be kept.
    let mut numbers = BTreeSet::new();
    for (subject, found) in of {
        let newest = found.iter().filter(|one| one.live || !one.side);
        let newest = newest.map(|one| one.event.header.subject_seq).max().unwrap_or(0);
        let all = newest.max(listed.get(&subject).copied().unwrap_or(0));
        let (line, sides, after_gap) = line(found);
        let saved = line.len() as u64;
        if saved < all {
            rest.push(Rest { subject, saved, of: all, after_gap });
        }
        for event in line.into_iter().chain(sides) {
            let Header { device, device_seq, epoch, .. } = event.header;
            if numbers.insert((device, device_seq, epoch)) {
                events.push(event);
            }
        }
    }
    (events, rest)
}

/// A subject's events in their order, those on sides, and how many have nothing to follow.
fn line(mut found: Vec<Found>) -> (Vec<Event>, Vec<Event>, u64) {
    found.sort_by_key(|one| std::cmp::Reverse(one.event.header.subject_seq));
    // How far it goes on from an event: the later ones come first here.
    let mut goes_on: BTreeMap<Hash, u64> = BTreeMap::new();
    for one in &found {
        let far = goes_on.get(&one.event.hash).copied().unwrap_or(0) + 1;
        let before = goes_on.entry(one.event.header.prev_subject).or_default();
        *before = far.max(*before);
    }
    let mut after: BTreeMap<Hash, Vec<Found>> = BTreeMap::new();
    for one in found {
        after.entry(one.event.header.prev_subject).or_default().push(one);
    }
    let rank = |one: &Found| {
        let far = goes_on.get(&one.event.hash).copied().unwrap_or(0);
        (!one.side, one.live, far, std::cmp::Reverse(one.event.hash))
    };
    let (mut line, mut sides, mut at) = (Vec::new(), Vec::new(), Hash::NONE);
    let mut parted = Vec::new();
    while let Some(mut next) = after.remove(&at) {
        next.sort_by_key(&rank);
        let Some(best) = next.pop() else { break };
        parted.extend(next);
        at = best.event.hash;
        line.push(best.event);
    }
    // What stands on a side stands there by what SQLite says of it, and all that follows it with it.
    while let Some(one) = parted.pop() {
        if one.side {
            parted.extend(after.remove(&one.event.hash).unwrap_or_default());
            sides.push(one.event);
        }
    }
    sides.sort_by_key(|event| event.header.subject_seq);
    let after_gap = after.values().flatten().filter(|one| one.live || !one.side).count() as u64;
    (line, sides, after_gap)
}

fn event(columns: &[Column]) -> Option<(Event, bool)> {
    let header = Header {
        format: Format(number(columns, 1)?),
        device: DeviceId(uuid(columns, 2)?),
        epoch: EpochId(uuid(columns, 3)?),
        device_seq: number(columns, 4)?,
        id: EventId(uuid(columns, 5)?),
        subject: subject(columns, 6)?,
        subject_seq: number(columns, 8)?,
        request: RequestId(uuid(columns, 10)?),
        request_hash: hash_at(columns, 11)?,
        boot: BootId(uuid(columns, 12)?),
        wall_ms: number(columns, 13)?,
        mono_ms: number(columns, 14)?,
        who: PersonId(uuid(columns, 15)?),
        kind: text(columns, 16)?,
        version: number(columns, 17)?,
        body_hash: hash_at(columns, 19)?,
        prev_device: hash_at(columns, 20)?,
        prev_subject: hash_at(columns, 21)?,
    };
    let body = columns[18].bytes()?.to_vec();
    Some((Event { header, body, hash: hash_at(columns, 22)? }, columns[9].number()? != 0))
}

fn head(columns: &[Column]) -> Option<HeadRow> {
    let head = panside_journal::Head { seq: number(columns, 2)?, hash: hash_at(columns, 3)? };
    Some(HeadRow::read(subject(columns, 0)?, head, text(columns, 4)?, hash_at(columns, 5)?))
}

fn photo(columns: &[Column]) -> Option<PhotoRow> {
    Some(PhotoRow {
        job: JobId(uuid(columns, 0)?),
        hash: hash_at(columns, 1)?,
        format: PhotoFormat::from_extension(&text(columns, 2)?)?,
        size: number(columns, 3)?,
        width: number(columns, 4)?,
        height: number(columns, 5)?,
        thumbnail: hash_at(columns, 6)?,
    })
}

fn subject(columns: &[Column], at: usize) -> Option<Subject> {
    let id = uuid(columns, at + 1)?;
    match columns.get(at)?.number()? {
        0 => Some(Subject::Job(JobId(id))),
        1 => Some(Subject::Shop(DeviceId(id))),
        _ => None,
    }
}

fn number<T: TryFrom<i64>>(columns: &[Column], at: usize) -> Option<T> {
    T::try_from(columns.get(at)?.number()?).ok()
}

fn uuid(columns: &[Column], at: usize) -> Option<Uuid> {
    Uuid::from_slice(columns.get(at)?.bytes()?).ok()
}

fn hash_at(columns: &[Column], at: usize) -> Option<Hash> {
    Some(Hash(columns.get(at)?.bytes()?.try_into().ok()?))
}

fn text(columns: &[Column], at: usize) -> Option<String> {
    String::from_utf8(columns.get(at)?.bytes()?.to_vec()).ok()
}
