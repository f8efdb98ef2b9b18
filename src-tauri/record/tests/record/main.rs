//! Records of a small invented job whose events are written down by hand.
//!
//! - `bay`: the job and its events
//! - `account`: what a record tells of a job that went well
//! - `first`: what stands on the first page, on the customer's copy and in the tables for pasting
//! - `open`: what it tells of what is open or went otherwise
//! - `figures`: what was worked out at an entry
//! - `people`: who is named, and as what they were called
//! - `forms`: JSON and text
//! - `pages`: the PDF's words and pictures, by poppler's `pdftotext` and `pdfdetach`
//! - `archive`: the PDF as a file for archives, by `qpdf` and by Apache PDFBox Preflight
//! - `words`: that every word is said by a message
//! - `tools`: calling these programs

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "other programs look at the files that are made here"
)]

mod account;
mod archive;
mod bay;
mod figures;
mod first;
mod forms;
mod money;
mod open;
mod pages;
mod people;
mod tools;
mod turned_up;
mod words;

use panside_record::steps::{Entry, Step};
use panside_record::{Document, MissingKind};

fn step<'a>(document: &'a Document, id: &str) -> Result<&'a Step, String> {
    let mut steps = document.phases.iter().flat_map(|phase| &phase.steps);
    steps.find(|step| step.id == id).ok_or_else(|| format!("no step {id}"))
}

fn entries<'a>(document: &'a Document, id: &str) -> Result<Vec<&'a Entry>, String> {
    Ok(step(document, id)?.attempts.iter().flat_map(|attempt| &attempt.entries).collect())
}

fn missing(document: &Document, kind: MissingKind) -> Vec<&str> {
    let of_kind = document.missing.iter().filter(|missing| missing.kind == kind);
    of_kind.map(|missing| missing.what.as_str()).collect()
}
