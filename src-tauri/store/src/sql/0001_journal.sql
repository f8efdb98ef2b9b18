-- Migration 1: the journal, what it names by hash, and what is kept beside it.

-- One row. `min_reader` keeps its name and place for ever: an older program reads it to learn whether it may
-- still read this store.
CREATE TABLE meta (
  only_row   INTEGER PRIMARY KEY CHECK (only_row = 1),
  min_reader INTEGER NOT NULL,
  device     BLOB NOT NULL
) STRICT;

-- Each stretch of writing on this device, and the head it went on from. `lost_*` is the head that the head file
-- named when that wasn't it.
CREATE TABLE epochs (
  number    INTEGER PRIMARY KEY,
  epoch     BLOB NOT NULL UNIQUE,
  from_seq  INTEGER NOT NULL,
  from_hash BLOB NOT NULL,
  lost_seq  INTEGER,
  lost_hash BLOB,
  why       TEXT NOT NULL
) STRICT;

-- The journal: append-only, in the order of `row`. Bodies stay as they were first written.
CREATE TABLE events (
  row          INTEGER PRIMARY KEY,
  format       INTEGER NOT NULL,
  device       BLOB NOT NULL,
  epoch        BLOB NOT NULL,
  device_seq   INTEGER NOT NULL,
  id           BLOB NOT NULL UNIQUE,
  shop         INTEGER NOT NULL,
  subject      BLOB NOT NULL,
  subject_seq  INTEGER NOT NULL,
  side         INTEGER NOT NULL DEFAULT 0,
  request      BLOB NOT NULL,
  request_hash BLOB NOT NULL,
  boot         BLOB NOT NULL,
  wall_ms      INTEGER NOT NULL,
  mono_ms      INTEGER NOT NULL,
  who          BLOB NOT NULL,
  kind         TEXT NOT NULL,
  version      INTEGER NOT NULL,
  body         TEXT NOT NULL,
  body_hash    BLOB NOT NULL,
  prev_device  BLOB NOT NULL,
  prev_subject BLOB NOT NULL,
  hash         BLOB NOT NULL,
  UNIQUE (device, device_seq, epoch)
) STRICT;

-- The line of events about a subject that counts: a job (shop = 0), or the shop as one device knows it (shop = 1).
CREATE UNIQUE INDEX events_by_subject ON events (shop, subject, subject_seq) WHERE side = 0;
-- What was written on the other side of a job that went on in two places.
CREATE INDEX events_on_sides ON events (shop, subject) WHERE side = 1;

-- Finds the answer to a request that comes a second time.
CREATE INDEX events_by_request ON events (request);

-- The newest event about each subject and, of a job, its line in the list of jobs. Derived from the events: `rebuild`
-- makes it anew. `sum` is a hash over the row; the head file keeps all of them added up.
CREATE TABLE heads (
  shop      INTEGER NOT NULL,
  subject   BLOB NOT NULL,
  head_seq  INTEGER NOT NULL,
  head_hash BLOB NOT NULL,
  label     TEXT NOT NULL,
  sum       BLOB NOT NULL,
  PRIMARY KEY (shop, subject)
) STRICT, WITHOUT ROWID;

-- Received events whose predecessor is not here yet.
CREATE TABLE waiting (
  hash BLOB PRIMARY KEY,
  prev BLOB NOT NULL,
  line TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX waiting_by_prev ON waiting (prev);

-- Texts that jobs and the shop name by hash: checklists and sheets.
CREATE TABLE documents (
  hash  BLOB PRIMARY KEY,
  kind  TEXT NOT NULL,
  bytes BLOB NOT NULL
) STRICT;

-- The photo files that are kept for a job.
CREATE TABLE photos (
  job        BLOB NOT NULL,
  hash       BLOB NOT NULL,
  format     TEXT NOT NULL,
  size       INTEGER NOT NULL,
  width      INTEGER NOT NULL,
  height     INTEGER NOT NULL,
  thumb_hash BLOB NOT NULL,
  PRIMARY KEY (job, hash)
) STRICT, WITHOUT ROWID;

-- What is typed and not yet done. No part of the journal.
CREATE TABLE drafts (
  job  BLOB NOT NULL,
  key  TEXT NOT NULL,
  text TEXT NOT NULL,
  PRIMARY KEY (job, key)
) STRICT, WITHOUT ROWID;

-- Proofs of checklists, by the checklist's hash and what was asked of which engine. They can be made again.
CREATE TABLE proofs (
  checklist BLOB NOT NULL,
  engine    TEXT NOT NULL,
  proof     TEXT NOT NULL,
  PRIMARY KEY (checklist, engine)
) STRICT, WITHOUT ROWID;

-- What the tablet remembers between starts, such as which screen was open. No part of the journal.
CREATE TABLE settings (
  key  TEXT PRIMARY KEY,
  text TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- What is typed of a sheet and not yet kept, by the sheet's id; a new one has none yet. No part of
-- the journal.
CREATE TABLE sheet_drafts (
  id   TEXT PRIMARY KEY,
  text TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- What is kept of people's PINs, by the person's id as text: never the PIN itself. No part of the journal.
CREATE TABLE pins (
  person TEXT PRIMARY KEY,
  text   TEXT NOT NULL
) STRICT, WITHOUT ROWID;
