-- Rung 4: what is kept of people's PINs, by name: never the PIN itself. No part of the journal.
CREATE TABLE pins (
  name TEXT PRIMARY KEY,
  text TEXT NOT NULL
) STRICT, WITHOUT ROWID;
