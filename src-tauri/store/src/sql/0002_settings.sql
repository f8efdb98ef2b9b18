-- Rung 2: what the tablet remembers between starts: people, tools, which screen was open. No part of the journal.
CREATE TABLE settings (
  key  TEXT PRIMARY KEY,
  text TEXT NOT NULL
) STRICT, WITHOUT ROWID;
