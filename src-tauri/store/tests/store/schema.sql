CREATE TABLE documents (
  hash  BLOB PRIMARY KEY,
  kind  TEXT NOT NULL,
  bytes BLOB NOT NULL
) STRICT;

CREATE TABLE drafts (
  job  BLOB NOT NULL,
  key  TEXT NOT NULL,
  text TEXT NOT NULL,
  PRIMARY KEY (job, key)
) STRICT, WITHOUT ROWID;

CREATE TABLE epochs (
  number    INTEGER PRIMARY KEY,
  epoch     BLOB NOT NULL UNIQUE,
  from_seq  INTEGER NOT NULL,
  from_hash BLOB NOT NULL,
  lost_seq  INTEGER,
  lost_hash BLOB,
  why       TEXT NOT NULL
) STRICT;

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

CREATE INDEX events_by_request ON events (request);

CREATE UNIQUE INDEX events_by_subject ON events (shop, subject, subject_seq) WHERE side = 0;

CREATE INDEX events_on_sides ON events (shop, subject) WHERE side = 1;

CREATE TABLE heads (
  shop      INTEGER NOT NULL,
  subject   BLOB NOT NULL,
  head_seq  INTEGER NOT NULL,
  head_hash BLOB NOT NULL,
  label     TEXT NOT NULL,
  sum       BLOB NOT NULL,
  PRIMARY KEY (shop, subject)
) STRICT, WITHOUT ROWID;

CREATE TABLE meta (
  only_row   INTEGER PRIMARY KEY CHECK (only_row = 1),
  min_reader INTEGER NOT NULL,
  device     BLOB NOT NULL
) STRICT;

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

CREATE TABLE pins (
  person TEXT PRIMARY KEY,
  text   TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE proofs (
  checklist BLOB NOT NULL,
  engine    TEXT NOT NULL,
  proof     TEXT NOT NULL,
  PRIMARY KEY (checklist, engine)
) STRICT, WITHOUT ROWID;

CREATE TABLE settings (
  key  TEXT PRIMARY KEY,
  text TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE sheet_drafts (
  id   TEXT PRIMARY KEY,
  text TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE waiting (
  hash BLOB PRIMARY KEY,
  prev BLOB NOT NULL,
  line TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX waiting_by_prev ON waiting (prev);
