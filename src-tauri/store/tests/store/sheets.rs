//! Spec sheets: every revision stays as it was kept; what is typed survives a restart.

use panside_store::{KeptSheet, Store, StoreError};
use tempfile::tempdir;

use crate::kit::{Outcome, options};

fn sheet(revision: u32, text: &str) -> KeptSheet {
    KeptSheet { id: "invented-van".into(), revision, text: text.into() }
}

#[test]
fn the_newest_revision_is_listed_and_the_older_ones_stay() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    for revision in [1, 2, 10] {
        store.put_sheet(&sheet(revision, &format!("text {revision}")), None)?;
    }
    store.close()?;
    let store = Store::open(dir.path(), options())?;
    assert_eq!(store.sheets()?, [sheet(10, "text 10")]);
    assert_eq!(store.sheet("invented-van", 2)?.as_deref(), Some("text 2"));
    assert_eq!(store.sheet("invented-van", 3)?, None);
    Ok(())
}

#[test]
fn a_revision_is_never_overwritten_and_what_was_typed_is_kept_then() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    store.put_sheet(&sheet(1, "first"), None)?;
    store.put_sheet_draft("invented-van", "typed")?;
    let again = store.put_sheet(&sheet(1, "second"), Some("invented-van"));
    assert!(matches!(again, Err(StoreError::SheetThere { revision: 1, .. })), "{again:?}");
    assert_eq!(store.sheet("invented-van", 1)?.as_deref(), Some("first"));
    assert_eq!(store.sheet_drafts()?["invented-van"], "typed");
    store.put_sheet(&sheet(2, "second"), Some("invented-van"))?;
    assert!(store.sheet_drafts()?.is_empty(), "what is kept is no draft any more");
    Ok(())
}

#[test]
fn what_is_typed_of_a_sheet_is_there_after_a_restart_until_it_is_put_away() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    store.put_sheet_draft("", "a new one")?;
    store.put_sheet_draft("", "a new one, longer")?;
    store.close()?;
    let mut store = Store::open(dir.path(), options())?;
    assert_eq!(store.sheet_drafts()?[""], "a new one, longer");
    store.clear_sheet_draft("")?;
    assert!(store.sheet_drafts()?.is_empty());
    Ok(())
}
