//! How ids, hashes and events stand in the database.

use panside_journal::{
    BootId, DeviceId, EpochId, Event, EventId, Format, Hash, Head, Header, JobId, PersonId, RequestId,
};
use rusqlite::types::ValueRef;
use rusqlite::{Connection, Row, params};
use uuid::Uuid;

/// The columns that [`header`], [`hash_of`] and [`body_of`] read, in their order.
macro_rules! event_columns {
    () => {
        "format, device, epoch, device_seq, id, job, job_seq, request, request_hash, boot, wall_ms, mono_ms, \
         who, kind, version, body_hash, prev_device, prev_job, hash, body"
    };
}

/// All events in the order they were written; the row's number comes last.
pub(crate) const ALL_EVENTS: &str = concat!("SELECT ", event_columns!(), ", row FROM events ORDER BY row");
/// The events of one job in their order.
pub(crate) const EVENTS_OF_JOB: &str =
    concat!("SELECT ", event_columns!(), " FROM events WHERE job = ?1 ORDER BY job_seq");
const INSERT_EVENT: &str = concat!(
    "INSERT INTO events (",
    event_columns!(),
    ") VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20)"
);
const JOB_HEAD: &str = "SELECT job_seq, hash FROM events WHERE job = ?1 ORDER BY job_seq DESC LIMIT 1";

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

/// The header in a row of events.
pub(crate) fn header(row: &Row<'_>) -> rusqlite::Result<Header> {
    Ok(Header {
        format: Format(row.get(0)?),
        device: DeviceId(uuid(row, 1)?),
        epoch: EpochId(uuid(row, 2)?),
        device_seq: count(row, 3)?,
        id: EventId(uuid(row, 4)?),
        job: JobId(uuid(row, 5)?),
        job_seq: count(row, 6)?,
        request: RequestId(uuid(row, 7)?),
        request_hash: hash(row, 8)?,
        boot: BootId(uuid(row, 9)?),
        wall_ms: row.get(10)?,
        mono_ms: count(row, 11)?,
        who: PersonId(uuid(row, 12)?),
        kind: row.get(13)?,
        version: row.get(14)?,
        body_hash: hash(row, 15)?,
        prev_device: hash(row, 16)?,
        prev_job: hash(row, 17)?,
    })
}

/// The hash in a row of events.
pub(crate) fn hash_of(row: &Row<'_>) -> rusqlite::Result<Hash> {
    hash(row, 18)
}

/// The body in a row of events, byte for byte, even when it is no text any more.
pub(crate) fn body_of<'a>(row: &'a Row<'_>) -> rusqlite::Result<&'a [u8]> {
    let value = row.get_ref(19)?;
    match value {
        ValueRef::Text(bytes) | ValueRef::Blob(bytes) => Ok(bytes),
        other => Err(rusqlite::Error::InvalidColumnType(19, "body".to_owned(), other.data_type())),
    }
}

/// The event in a row of events.
pub(crate) fn event(row: &Row<'_>) -> rusqlite::Result<Event> {
    Ok(Event { header: header(row)?, body: body_of(row)?.to_vec(), hash: hash_of(row)? })
}

pub(crate) fn insert_event(conn: &Connection, event: &Event) -> rusqlite::Result<()> {
    let h = &event.header;
    conn.prepare_cached(INSERT_EVENT)?.execute(params![
        h.format.0,
        h.device.0.as_bytes(),
        h.epoch.0.as_bytes(),
        signed(h.device_seq),
        h.id.0.as_bytes(),
        h.job.0.as_bytes(),
        signed(h.job_seq),
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
        h.prev_job.0,
        event.hash.0,
        rusqlite::types::ToSqlOutput::Borrowed(ValueRef::Text(&event.body)),
    ])?;
    Ok(())
}

/// The newest event of a job, from the events themselves; [`Head::NONE`] for a job that has none.
pub(crate) fn job_head(conn: &Connection, job: JobId) -> rusqlite::Result<Head> {
    use rusqlite::OptionalExtension;
    conn.prepare_cached(JOB_HEAD)?
        .query_row([job.0.as_bytes()], |row| head(row, 0, 1))
        .optional()
        .map(|found| found.unwrap_or(Head::NONE))
}
