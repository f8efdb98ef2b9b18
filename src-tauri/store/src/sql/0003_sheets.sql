-- Rung 3: spec sheets that were made here or taken in, and those that are being typed. No part of the journal.

-- Every revision as it was kept; none is ever overwritten.
CREATE TABLE sheets (
  id       TEXT NOT NULL,
  revision INTEGER NOT NULL,
  text     TEXT NOT NULL,
  PRIMARY KEY (id, revision)
) STRICT, WITHOUT ROWID;

-- What is typed of a sheet and not yet kept, by the sheet's id; a new one has none yet.
CREATE TABLE sheet_drafts (
  id   TEXT PRIMARY KEY,
  text TEXT NOT NULL
) STRICT, WITHOUT ROWID;
