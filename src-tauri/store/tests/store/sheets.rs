//! What is typed of a spec sheet survives a restart, until the sheet is kept or what was typed is put away.

use panside_journal::{Draft, Head, PersonId, Subject};
use panside_store::{Entry, Store, StoreError, With};
use tempfile::tempdir;
use uuid::Uuid;

use crate::support::{Outcome, options, origin};

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

#[test]
fn what_goes_with_an_entry_is_written_with_it_or_not_at_all() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    store.put_sheet_draft("invented-van", "typed")?;
    let person = PersonId(Uuid::from_u128(7));
    let with = [With::SheetTyped("invented-van"), With::Pin { person, text: "set" }];
    let drafts: [Draft; 1] = [crate::support::draft("{}")];
    let origin = origin(1);
    let subject = Subject::Shop(store.device());
    let entry = Entry {
        subject,
        expected: Head { seq: 1, ..Head::NONE },
        origin: &origin,
        drafts: &drafts,
        label: "",
    };
    let stale = store.append_with(&entry, &with);
    assert!(matches!(stale, Err(StoreError::Stale { .. })), "{stale:?}");
    assert_eq!((store.sheet_drafts()?.len(), store.pins()?.len()), (1, 0), "nothing is half written");
    store.append_with(&Entry { expected: Head::NONE, ..entry }, &with)?;
    assert_eq!((store.sheet_drafts()?.len(), store.pins()?[&person].as_str()), (0, "set"));
    Ok(())
}
