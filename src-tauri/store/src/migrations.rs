//! Migrations: numbered, forward only. A fresh store runs the same ones as an old one.
//!
//! To add a migration: write `sql/NNNN_name.sql`, add it to [`MIGRATIONS`], set [`MIN_READER`] if older programs would
//! misread the store, renew the committed schema (`tests/store/schema.sql`), and add a test that migrates a store made by the version
//! before.

use rusqlite::{Connection, TransactionBehavior};

/// One migration.
pub(crate) struct Migration {
    /// The store's format after it (`user_version`).
    pub(crate) number: u32,
    pub(crate) sql: &'static str,
}

/// All migrations, in order.
pub(crate) const MIGRATIONS: &[Migration] =
    &[Migration { number: 1, sql: include_str!("sql/0001_journal.sql") }];

/// The newest format that this version knows.
pub(crate) const NEWEST: u32 = MIGRATIONS[MIGRATIONS.len() - 1].number;

/// The oldest version, named by the newest format it knows, that may still **read** a store of format [`NEWEST`].
/// A migration that only adds leaves it; so an older app can show a newer store, which it never writes.
pub(crate) const MIN_READER: u32 = 1;

/// Runs every migration above `from`, each in a transaction of its own with its number, so that a kill leaves the
/// store at one version or the next.
pub(crate) fn run(
    conn: &mut Connection,
    from: u32,
    migrations: &[Migration],
    min_reader: u32,
) -> rusqlite::Result<()> {
    for migration in migrations.iter().filter(|migration| migration.number > from) {
        let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate)?;
        tx.execute_batch(migration.sql)?;
        // A fresh store has no row yet; whoever makes it fills it in.
        tx.execute("UPDATE meta SET min_reader = ?1", [min_reader])?;
        tx.pragma_update(None, "user_version", migration.number)?;
        tx.commit()?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn version(conn: &Connection) -> rusqlite::Result<u32> {
        conn.pragma_query_value(None, "user_version", |row| row.get(0))
    }

    #[test]
    fn migrations_rise_by_one_from_one() {
        let numbers: Vec<u32> = MIGRATIONS.iter().map(|migration| migration.number).collect();
        assert_eq!(numbers, (1..=NEWEST).collect::<Vec<_>>());
        assert!((1..=NEWEST).contains(&MIN_READER));
    }

    #[test]
    fn a_fresh_store_ends_at_the_committed_schema() -> rusqlite::Result<()> {
        let mut conn = Connection::open_in_memory()?;
        run(&mut conn, 0, MIGRATIONS, MIN_READER)?;
        let mut query = conn.prepare("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name")?;
        let parts = query.query_map([], |row| row.get::<_, String>(0))?.collect::<Result<Vec<_>, _>>()?;
        let schema = parts.join(";\n\n") + ";\n";
        assert_eq!(schema, include_str!("../tests/store/schema.sql"), "the new schema:\n{schema}");
        Ok(())
    }

    /// Migrations as a later version might have them: one that adds, one that fails halfway.
    const LATER: &[Migration] = &[
        Migration { number: 1, sql: include_str!("sql/0001_journal.sql") },
        Migration { number: 2, sql: "ALTER TABLE photos ADD COLUMN note TEXT;" },
        Migration { number: 3, sql: "CREATE TABLE later (id INTEGER) STRICT; CREATE TABLE nonsense;" },
    ];

    #[test]
    fn an_old_store_climbs_only_what_it_lacks_and_keeps_its_rows() -> rusqlite::Result<()> {
        let mut conn = Connection::open_in_memory()?;
        run(&mut conn, 0, MIGRATIONS, 1)?;
        conn.execute("INSERT INTO meta VALUES (1, 1, x'01')", [])?;
        conn.execute("INSERT INTO photos VALUES (x'01', x'02', 'jpg', 3, 4, 5, x'06')", [])?;
        run(&mut conn, 1, &LATER[..2], 2)?;
        assert_eq!(version(&conn)?, 2);
        let size: i64 = conn.query_row("SELECT size FROM photos WHERE note IS NULL", [], |row| row.get(0))?;
        assert_eq!(size, 3);
        let min_reader: u32 = conn.query_row("SELECT min_reader FROM meta", [], |row| row.get(0))?;
        assert_eq!(min_reader, 2);
        Ok(())
    }

    #[test]
    fn a_migration_that_fails_halfway_leaves_the_version_before() -> rusqlite::Result<()> {
        let mut conn = Connection::open_in_memory()?;
        assert!(run(&mut conn, 0, LATER, 3).is_err());
        assert_eq!(version(&conn)?, 2);
        let later: i64 =
            conn.query_row("SELECT count(*) FROM sqlite_schema WHERE name = 'later'", [], |row| row.get(0))?;
        assert_eq!(later, 0);
        Ok(())
    }
}
