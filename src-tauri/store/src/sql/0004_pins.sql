-- Rung 4: what is kept of people's PINs, by the person's id as text: never the PIN itself. No part of the journal.
CREATE TABLE pins (
  person TEXT PRIMARY KEY,
  text   TEXT NOT NULL
) STRICT, WITHOUT ROWID;
