//! The store: one folder with the journal's database, its head file and the photos. All disk I/O, no rule.
//!
//! What it promises: an entry that [`Store::append`] confirmed is on disk (`synchronous=FULL`) and stays; if it
//! doesn't, the loss is said at the next opening and not passed over. What it doesn't: protect from a disk that
//! lies about syncing, or from someone who makes the whole folder anew.
//!
//! ```text
//! journal.db     events and what is derived from them (SQLite, WAL)
//! journal.head   the newest confirmed event, written after each commit
//! lock           held by the one process that writes
//! photos/ab/     the photos, each named by its SHA-256 (ab.. are its first digits)
//! thumbs/ab/     their small pictures, named like the photo
//! records/       records as they were handed over
//! checklists/    checklists as they were handed over
//! sheets/        spec sheets as they were handed over
//! ```
//!
//! When something is wrong there is a way back: [`Backing`] makes backups while the store is in use, [`restore`] goes
//! back to one, [`Store::go_on`] goes on from what is there, [`salvage`] saves what holds of a damaged store.
//!
//! One process writes, others may read beside it. After any failed write the store stops writing
//! ([`Standing::Faulted`]) until [`Store::reopen`] has read it anew: a failed sync that is tried again may say
//! "done" and have kept nothing.
//!
//! An event is about a `Subject`: a job, or the shop as one device tells it. `heads` has the newest event about each.
//! Its rows are hashed, and the head file has the hashes added up, so that the window opens by that mark alone
//! (`Verify::Marked`), verifies each job when it is read ([`Store::events`]) and the rest beside the work
//! ([`Store::verifier`]). `receive` takes over events of other devices in any order.
//!
//! What can be wrong is a [`Trouble`]; it says whether writing stops, and whether a new epoch or a list made anew ends
//! it. An epoch is a stretch of writing on one device: a store that was restored, copied or gone on with begins a new
//! one. The ways back stand in `backup` and `manifest`, `restore`, `lacks` (what a backup lacks, before it is restored
//! and after), `epoch`, and `salvage` over `saved` and `carve`. `carve` reads records out of pages without SQLite's
//! trees, so a column that is added to a table goes at its end. `seen` notes outside the folder how far a store has
//! come, in `$XDG_STATE_HOME/panside`; tests give a folder of their own or none. The shop's plan for backups is in the
//! bay's `way_back`.
//!
//! A change of the tables is a new numbered file in `sql/`; a released one never changes. A copy of the database,
//! `before-format-N` in the store's folder, is made before a migration. Beside the journal stand drafts (what is
//! typed), settings (where the window was) and PINs; none of them is part of it.

#![allow(clippy::disallowed_methods, reason = "this crate is the edge to the disk")]

mod append;
mod backup;
mod carve;
mod check;
mod disk;
mod documents;
mod doing;
mod drafts;
mod epoch;
mod error;
mod files;
mod head_file;
mod heads;
mod indexes;
mod jobs;
mod lacks;
mod load;
mod manifest;
mod message;
mod migrations;
mod open;
pub mod outside;
mod photos;
mod pins;
mod proofs;
mod read;
mod receive;
mod records;
mod restore;
mod rows;
mod salvage;
mod saved;
mod seen;
mod settings;
mod sheets;
mod trouble;
mod verifier;
mod walk;
mod write;

pub use append::{Appended, Entry, With};
pub use backup::{BackedUp, Backing};
pub use check::{Meaning, MeaningOf, Report};
pub use disk::FileKind;
pub use documents::Document;
pub use doing::Doing;
pub use error::StoreError;
pub use files::Files;
pub use jobs::{JobRow, LabelOf};
pub use lacks::{Lacks, NewerThere, Outlook, outlook};
pub use manifest::{BackedPhoto, FoundBackup, Manifest, backups, verify_backup};
pub use message::MESSAGES;
pub use open::{Options, Standing, Store, Verify};
pub use photos::{NewPhoto, PhotoFormat, PhotoRow, Swept};
pub use read::Readable;
pub use receive::{BothSides, Received};
pub use restore::{Restored, restore};
pub use salvage::{Rest, Salvaged, salvage};
pub use trouble::Trouble;
pub use verifier::Verifier;
