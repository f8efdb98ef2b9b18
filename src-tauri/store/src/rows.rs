//! How ids, hashes and events stand in the database.

use panside_journal::{
    BootId, DeviceId, EpochId, Event, EventId, Format, Hash, Head, Header, JobId, PersonId, RequestId,
    Subject,
};
use rusqlite::types::ValueRef;
use rusqlite::{Connection, Row, params};
use uuid::Uuid;

/// The columns that [`header`], [`hash_of`] and [`body_of`] read, in their order.
macro_rules! event_columns {
    () => {
        "format, device, epoch, device_seq, id, shop, subject, subject_seq, request, request_hash, boot, \
         wall_ms, mono_ms, who, kind, version, body_hash, prev_device, prev_subject, hash, body"
    };
}

/// All events in the order they were written; then the row's number, and whether it stands on a side.
pub(crate) const ALL_EVENTS: &str =
    concat!("SELECT ", event_columns!(), ", row, side FROM events ORDER BY row");
/// The events about one subject in their order.
pub(crate) const EVENTS_OF_SUBJECT: &str = concat!(
    "SELECT ",
    event_columns!(),
    " FROM events WHERE shop = ?1 AND subject = ?2 AND side = 0 ORDER BY subject_seq"
);
/// The same, found without an index.
pub(crate) const EVENTS_OF_SUBJECT_BY_SCAN: &str = concat!(
    "SELECT ",
    event_columns!(),
    " FROM events NOT INDEXED WHERE shop = ?1 AND subject = ?2 AND side = 0 ORDER BY subject_seq"
);
/// The events about one subject that stand on a side.
pub(crate) const SIDES_OF_SUBJECT: &str =
    concat!("SELECT ", event_columns!(), " FROM events WHERE shop = ?1 AND subject = ?2 AND side = 1");
/// The newest event that a device wrote.
pub(crate) const NEWEST_OF_DEVICE: &str =
    concat!("SELECT ", event_columns!(), " FROM events WHERE device = ?1 ORDER BY device_seq DESC LIMIT 1");
const INSERT_EVENT: &str = concat!(
    "INSERT INTO events (",
    event_columns!(),
    ", side) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20, \
     ?21, ?22)"
);
const SUBJECT_HEAD: &str = "SELECT subject_seq, hash FROM events WHERE shop = ?1 AND subject = ?2 AND side = 0 \
                            ORDER BY subject_seq DESC LIMIT 1";

pub(crate) fn uuid(row: &Row<'_>, column: usize) -> rusqlite::Result<Uuid> {
    row.get(column).map(Uuid::from_bytes)
}

pub(crate) fn hash(row: &Row<'_>, column: usize) -> rusqlite::Result<Hash> {
    row.get(column).map(Hash)
}

/// A count: SQLite keeps signed numbers, and none of ours is below zero.
pub(crate) fn count(row: &Row<'_>, column: usize) -> rusqlite::Result<u64> {
    let number: i64 = row.get(column)?;
    u64::try_from(number).map_err(|_| rusqlite::Error::IntegralValueOutOfRange(column, number))
}

pub(crate) fn head(row: &Row<'_>, seq: usize, hash_column: usize) -> rusqlite::Result<Head> {
    Ok(Head { seq: count(row, seq)?, hash: hash(row, hash_column)? })
}

/// Sealing refuses numbers above 2^53, so this never saturates.
pub(crate) fn signed(number: u64) -> i64 {
    i64::try_from(number).unwrap_or(i64::MAX)
}

/// What an event is about, from two columns beside each other.
pub(crate) fn subject(row: &Row<'_>, column: usize) -> rusqlite::Result<Subject> {
    let id = uuid(row, column + 1)?;
    match row.get::<_, i64>(column)? {
        0 => Ok(Subject::Job(JobId(id))),
        1 => Ok(Subject::Shop(DeviceId(id))),
        other => Err(rusqlite::Error::IntegralValueOutOfRange(column, other)),
    }
}

/// A subject as the two columns have it.
pub(crate) fn columns(subject: Subject) -> (i64, [u8; 16]) {
    (i64::from(subject.is_shop()), subject.id().into_bytes())
}

/// The header in a row of events.
pub(crate) fn header(row: &Row<'_>) -> rusqlite::Result<Header> {
    Ok(Header {
        format: Format(row.get(0)?),
        device: DeviceId(uuid(row, 1)?),
        epoch: EpochId(uuid(row, 2)?),
        device_seq: count(row, 3)?,
        id: EventId(uuid(row, 4)?),
        subject: subject(row, 5)?,
        subject_seq: count(row, 7)?,
        request: RequestId(uuid(row, 8)?),
        request_hash: hash(row, 9)?,
        boot: BootId(uuid(row, 10)?),
        wall_ms: row.get(11)?,
        mono_ms: count(row, 12)?,
        who: PersonId(uuid(row, 13)?),
        kind: row.get(14)?,
        version: row.get(15)?,
        body_hash: hash(row, 16)?,
        prev_device: hash(row, 17)?,
        prev_subject: hash(row, 18)?,
    })
}

/// The hash in a row of events.
pub(crate) fn hash_of(row: &Row<'_>) -> rusqlite::Result<Hash> {
    hash(row, 19)
}

/// The body in a row of events, byte for byte, even when it is no text any more.
pub(crate) fn body_of<'a>(row: &'a Row<'_>) -> rusqlite::Result<&'a [u8]> {
    let value = row.get_ref(20)?;
    match value {
        ValueRef::Text(bytes) | ValueRef::Blob(bytes) => Ok(bytes),
        other => Err(rusqlite::Error::InvalidColumnType(20, "body".to_owned(), other.data_type())),
    }
}

/// The event in a row of events.
pub(crate) fn event(row: &Row<'_>) -> rusqlite::Result<Event> {
    Ok(Event { header: header(row)?, body: body_of(row)?.to_vec(), hash: hash_of(row)? })
}

pub(crate) fn insert_event(conn: &Connection, event: &Event, side: bool) -> rusqlite::Result<()> {
    let h = &event.header;
    let (shop, subject) = columns(h.subject);
    conn.prepare_cached(INSERT_EVENT)?.execute(params![
        h.format.0,
        h.device.0.as_bytes(),
        h.epoch.0.as_bytes(),
        signed(h.device_seq),
        h.id.0.as_bytes(),
        shop,
        subject,
        signed(h.subject_seq),
        h.request.0.as_bytes(),
        h.request_hash.0,
        h.boot.0.as_bytes(),
        h.wall_ms,
        signed(h.mono_ms),
        h.who.0.as_bytes(),
        h.kind,
        h.version,
        h.body_hash.0,
        h.prev_device.0,
        h.prev_subject.0,
        event.hash.0,
        rusqlite::types::ToSqlOutput::Borrowed(ValueRef::Text(&event.body)),
        side,
    ])?;
    Ok(())
}

/// The newest event about a subject, from the events themselves; [`Head::NONE`] where there is none.
pub(crate) fn subject_head(conn: &Connection, subject: Subject) -> rusqlite::Result<Head> {
    use rusqlite::OptionalExtension;
    conn.prepare_cached(SUBJECT_HEAD)?
        .query_row(columns(subject), |row| head(row, 0, 1))
        .optional()
        .map(|found| found.unwrap_or(Head::NONE))
}
