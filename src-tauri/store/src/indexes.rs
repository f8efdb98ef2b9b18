//! SQLite's indexes over the events, held against the events. An index that holds stays: making it anew takes several times
//! as long as reading it.

use std::collections::BTreeSet;
use std::hash::{DefaultHasher, Hasher};

use panside_journal::Subject;
use rusqlite::types::ValueRef;
use rusqlite::{Connection, Row};

use crate::rows;

/// Every event, from the table alone. What stands in front is told of each; the columns of indexes follow.
const EVENTS: &str = "SELECT row, side, shop, subject, subject_seq, id, device, device_seq, epoch, request \
                      FROM events NOT INDEXED";
const NAMES: &str = "SELECT name FROM sqlite_schema WHERE type = 'index'";

/// An index over the events.
struct Index {
    name: &'static str,
    /// Its entries as they stand in it: its columns, then the event's row.
    entries: &'static str,
    /// Where its columns stand in [`EVENTS`].
    columns: &'static [usize],
    /// Whether it is about the events of one `side`.
    side: Option<i64>,
}

const INDEXES: [Index; 5] = [
    Index {
        name: "events_by_subject",
        entries: "SELECT shop, subject, subject_seq, row FROM events INDEXED BY events_by_subject WHERE side = 0",
        columns: &[2, 3, 4],
        side: Some(0),
    },
    Index {
        name: "events_on_sides",
        entries: "SELECT shop, subject, row FROM events INDEXED BY events_on_sides WHERE side = 1",
        columns: &[2, 3],
        side: Some(1),
    },
    Index {
        name: "sqlite_autoindex_events_1",
        entries: "SELECT id, row FROM events INDEXED BY sqlite_autoindex_events_1",
        columns: &[5],
        side: None,
    },
    Index {
        name: "sqlite_autoindex_events_2",
        entries: "SELECT device, device_seq, epoch, row FROM events INDEXED BY sqlite_autoindex_events_2",
        columns: &[6, 7, 8],
        side: None,
    },
    Index {
        name: "events_by_request",
        entries: "SELECT request, row FROM events INDEXED BY events_by_request",
        columns: &[9],
        side: None,
    },
];

/// What entries amount to, in whatever order they come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Sum {
    entries: u64,
    /// The hashes of the entries added up. They find what chance did, not what somebody made up; the chains find that.
    hashes: u64,
}

impl Sum {
    fn add(&mut self, entry: &[u8]) {
        let mut hasher = DefaultHasher::new();
        hasher.write(entry);
        self.entries += 1;
        self.hashes = self.hashes.wrapping_add(hasher.finish());
    }
}

/// Holds every index against what it is about, makes those anew that are not as they must be, and tells which subjects
/// have events.
pub(crate) fn mend(conn: &Connection) -> rusqlite::Result<BTreeSet<Subject>> {
    let (sums, subjects) = add_up(conn)?;
    let names: Vec<String> =
        conn.prepare(NAMES)?.query_map([], |row| row.get(0))?.collect::<Result<_, _>>()?;
    for name in names {
        let index = INDEXES.iter().zip(&sums).find(|(index, _)| index.name == name);
        if !index.is_some_and(|(index, sum)| holds(conn, index, sum)) {
            conn.execute_batch(&format!("REINDEX \"{name}\""))?;
        }
    }
    Ok(subjects)
}

/// What each index has to amount to, and the subjects that have events.
fn add_up(conn: &Connection) -> rusqlite::Result<([Sum; INDEXES.len()], BTreeSet<Subject>)> {
    let (mut sums, mut subjects) = ([Sum::default(); INDEXES.len()], BTreeSet::new());
    let (mut newest, mut entry) = (None, Vec::new());
    let mut query = conn.prepare(EVENTS)?;
    let mut found = query.query([])?;
    while let Some(row) = found.next()? {
        let (side, subject): (i64, Subject) = (row.get(1)?, rows::subject(row, 2)?);
        if newest != Some(subject) {
            subjects.insert(subject);
            newest = Some(subject);
        }
        for (index, sum) in INDEXES.iter().zip(&mut sums) {
            if index.side.is_none_or(|of| of == side) {
                put(row, index.columns.iter().copied().chain([0]), &mut entry)?;
                sum.add(&entry);
            }
        }
    }
    Ok((sums, subjects))
}

/// Whether an index has the entries it must have, each behind the one before it. One that can't be read has not.
fn holds(conn: &Connection, index: &Index, sum: &Sum) -> bool {
    let read = || -> rusqlite::Result<bool> {
        let (mut found, mut entry, mut before) = (Sum::default(), Vec::new(), Vec::new());
        let mut query = conn.prepare(index.entries)?;
        let mut entries = query.query([])?;
        while let Some(row) = entries.next()? {
            put(row, 0..=index.columns.len(), &mut entry)?;
            if entry <= before {
                return Ok(false);
            }
            found.add(&entry);
            std::mem::swap(&mut entry, &mut before);
        }
        Ok(found == *sum)
    };
    read().unwrap_or(false)
}

/// Puts columns side by side so that, ids being of one length, their bytes order as SQLite orders the columns.
fn put(row: &Row<'_>, columns: impl Iterator<Item = usize>, entry: &mut Vec<u8>) -> rusqlite::Result<()> {
    entry.clear();
    for column in columns {
        let (kind, bytes) = match row.get_ref(column)? {
            ValueRef::Null => (0, &[][..]),
            // With the sign turned round, the bytes of numbers order as the numbers do.
            ValueRef::Integer(number) => {
                entry.push(1);
                entry.extend_from_slice(&(number ^ i64::MIN).to_be_bytes());
                continue;
            }
            ValueRef::Real(number) => {
                entry.push(2);
                entry.extend_from_slice(&number.to_be_bytes());
                continue;
            }
            ValueRef::Text(bytes) => (3, bytes),
            ValueRef::Blob(bytes) => (4, bytes),
        };
        entry.push(kind);
        entry.extend_from_slice(bytes);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::migrations::{self, MIGRATIONS, MIN_READER};

    type Outcome = Result<(), Box<dyn std::error::Error>>;

    const COUNT: i64 = 500;
    const JOBS: usize = 20;
    /// Events of twenty jobs, some of them on sides. What they say is nothing.
    const FILL: &str = "WITH RECURSIVE numbers(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM numbers WHERE n < ?1) \
        INSERT INTO events SELECT n, 1, zeroblob(16), zeroblob(16), n, randomblob(16), 0, \
        CAST(printf('%016d', n % 20) AS BLOB), n, n % 7 = 0, randomblob(16), randomblob(32), zeroblob(16), n, n, \
        zeroblob(16), 'x', 1, '{}', randomblob(32), randomblob(32), randomblob(32), randomblob(32) FROM numbers";

    fn filled() -> rusqlite::Result<Connection> {
        let mut conn = Connection::open_in_memory()?;
        migrations::run(&mut conn, 0, MIGRATIONS, MIN_READER)?;
        conn.execute(FILL, [COUNT])?;
        Ok(conn)
    }

    /// What SQLite itself says of the whole database.
    fn said(conn: &Connection) -> rusqlite::Result<String> {
        conn.query_row("PRAGMA integrity_check", [], |row| row.get(0))
    }

    /// Does something to the schema itself and has SQLite read it anew.
    fn in_schema(conn: &Connection, sql: &str) -> rusqlite::Result<()> {
        conn.execute_batch(&format!("PRAGMA writable_schema = ON; {sql}; PRAGMA writable_schema = RESET"))
    }

    fn holding(conn: &Connection) -> rusqlite::Result<Vec<&'static str>> {
        let (sums, _) = add_up(conn)?;
        let found = INDEXES.iter().zip(&sums).filter(|(index, sum)| holds(conn, index, sum));
        Ok(found.map(|(index, _)| index.name).collect())
    }

    #[test]
    fn every_index_over_the_events_is_read_and_by_itself() -> Outcome {
        let conn = filled()?;
        let mut query = conn.prepare("SELECT name FROM pragma_index_list('events') ORDER BY name")?;
        let there: Vec<String> = query.query_map([], |row| row.get(0))?.collect::<Result<_, _>>()?;
        let mut known = INDEXES.map(|index| index.name);
        known.sort_unstable();
        assert_eq!(there, known);
        for index in INDEXES {
            let mut code = conn.prepare(&format!("EXPLAIN {}", index.entries))?;
            let opened = code.query_map([], |row| Ok((row.get(1)?, row.get(3)?)))?;
            let opened: Vec<(String, i64)> = opened.collect::<Result<_, _>>()?;
            let root: i64 =
                conn.query_row("SELECT rootpage FROM sqlite_schema WHERE name = ?1", [index.name], |row| {
                    row.get(0)
                })?;
            let roots: Vec<i64> =
                opened.iter().filter(|(code, _)| code == "OpenRead").map(|(_, root)| *root).collect();
            assert!(roots.contains(&root), "{}: {roots:?}", index.name);
            assert!(!opened.iter().any(|(code, _)| code.starts_with("Sorter")), "{}", index.name);
        }
        Ok(())
    }

    #[test]
    fn indexes_that_hold_are_known() -> Outcome {
        let conn = filled()?;
        assert_eq!(holding(&conn)?, INDEXES.map(|index| index.name));
        assert_eq!(mend(&conn)?.len(), JOBS);
        assert_eq!(said(&conn)?, "ok");
        Ok(())
    }

    #[test]
    fn an_index_with_the_entries_of_another_is_made_anew() -> Outcome {
        for (one, other) in [(0, 3), (1, 4), (2, 4), (0, 1)] {
            let (conn, names) = (filled()?, [INDEXES[one].name, INDEXES[other].name]);
            let [one, other] = names;
            let root = |of: &str| format!("(SELECT rootpage FROM sqlite_schema WHERE name = '{of}')");
            in_schema(
                &conn,
                &format!(
                    "UPDATE sqlite_schema SET rootpage = {} + {} - rootpage WHERE name IN ('{one}', '{other}')",
                    root(one),
                    root(other)
                ),
            )?;
            assert_ne!(said(&conn)?, "ok", "{names:?}");
            assert!(!holding(&conn)?.iter().any(|name| names.contains(name)), "{names:?}");
            mend(&conn)?;
            assert_eq!(said(&conn)?, "ok", "{names:?}");
            assert_eq!(holding(&conn)?, INDEXES.map(|index| index.name), "{names:?}");
        }
        Ok(())
    }

    #[test]
    fn an_index_that_missed_one_change_is_made_anew() -> Outcome {
        let changes = [
            ("events_by_subject", "UPDATE events SET subject_seq = 9000 WHERE row = 5"),
            ("events_by_subject", "DELETE FROM events WHERE row = 5"),
            ("events_by_subject", "UPDATE events SET row = 9000 WHERE row = 5"),
            ("events_on_sides", "UPDATE events SET side = 0 WHERE row = 7"),
            ("events_on_sides", "UPDATE events SET side = 1 WHERE row = 8"),
            ("events_by_request", "UPDATE events SET request = randomblob(16) WHERE row = 9"),
            ("events_by_request", "UPDATE events SET request = randomblob(3) WHERE row = 9"),
        ];
        for (name, change) in changes {
            let conn = filled()?;
            in_schema(
                &conn,
                &format!(
                    "CREATE TEMP TABLE kept AS SELECT * FROM sqlite_schema WHERE name = '{name}'; \
                     DELETE FROM sqlite_schema WHERE name = '{name}'"
                ),
            )?;
            conn.execute_batch(change)?;
            in_schema(&conn, "INSERT INTO sqlite_schema SELECT * FROM kept")?;
            // SQLite's own check would pass an entry too many in an index of some events.
            assert!(!holding(&conn)?.contains(&name), "{change}");
            mend(&conn)?;
            assert_eq!(said(&conn)?, "ok", "{change}");
            assert_eq!(holding(&conn)?, INDEXES.map(|index| index.name), "{change}");
        }
        Ok(())
    }
}
