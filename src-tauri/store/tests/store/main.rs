//! Tests of the store on a real disk.
//!
//! - `entries`: writing once, in order, and not on a stale head; what is kept beside the journal
//! - `opening`: what is refused and left untouched; a full store
//! - `epochs`: lost tails, copies, and going on in a new epoch
//! - `damage`: torn logs and flipped bits, found or harmless
//! - `photos`: photo files and sweeping
//! - `receiving`: a job that another device wrote
//! - `backups`, `salvaging`, `seen`: the ways back, and folders that were set back or copied
//! - `kill`: a process killed at any moment loses nothing it confirmed
//! - `links`: nothing goes through a link; modes
//! - `outside`: files that a person names
//! - `faults`: a disk that fails or is full (Linux: the faults are put between process and C library)
//! - `power`: a power cut after any sync

#![allow(clippy::disallowed_methods, clippy::disallowed_types, reason = "tests of the edge to the disk")]

mod backups;
mod damage;
mod entries;
mod epochs;
#[cfg(target_os = "linux")]
mod faults;
mod kill;
#[cfg(unix)]
mod links;
mod opening;
#[cfg(unix)]
mod outside;
mod photos;
#[cfg(target_os = "linux")]
mod power;
mod receiving;
mod salvaging;
mod seen;
mod sheets;
mod support;
