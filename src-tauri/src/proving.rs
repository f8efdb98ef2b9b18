//! Proving a checklist while the window goes on. The page asks how far it is.
//!
//! A proof goes on when nobody asks, within a tablet's 5 million states and 512 MiB. Where a revision is refuted or not
//! decided, the last one that this tablet has proved is offered behind it.

use std::collections::BTreeMap;
use std::ops::ControlFlow;
use std::sync::{Arc, Mutex, PoisonError};

use panside_bay::enter::Hash;
use panside_bay::prove::{Ask, Progress, search, search_without_sheet};
use serde::Serialize;
use ts_rs::TS;

use crate::desk::{Desk, off_thread};
use crate::message::{panside_reading, speaker};
use crate::shelf::SHELF;
use crate::trouble::Trouble;

/// What is proved before a checklist can be started, within what a tablet can hold.
pub const ASK: Ask = Ask::TABLET;

/// How far a proof is.
#[derive(Debug, Clone, Default, Serialize, TS)]
pub struct Proving {
    /// It is proved and the proof is kept.
    pub proved: bool,
    /// What is being done.
    pub doing: String,
    /// States found so far in this search.
    pub states: usize,
    /// Why it came to nothing.
    pub failed: Option<Trouble>,
}

/// The proofs under way or ended, by checklist and sheet.
#[derive(Debug, Clone, Default)]
pub struct Proofs(Arc<Mutex<BTreeMap<Asked, Proving>>>);

/// A checklist, and the id of the spec sheet for whose vehicle it is proved; none: for every vehicle.
type Asked = (Hash, Option<String>);

impl Proofs {
    fn set(&self, asked: &Asked, now: Proving) {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).insert(asked.clone(), now);
    }

    fn get(&self, asked: &Asked) -> Option<Proving> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).get(asked).cloned()
    }

    /// Forgets them all: another store may not have them kept.
    pub fn forget(&self) {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).clear();
    }
}

/// Says how far the proof of a checklist for the vehicle of a sheet, or without one for every vehicle, is, and begins it where there is none and none is
/// under way. One that failed is told once and begun again when asked again.
///
/// # Errors
/// When there is no such checklist or sheet, or the store can't be read.
pub async fn look(desk: &Desk, checklist: Hash, sheet: Option<String>) -> Result<Proving, Trouble> {
    let proofs = desk.proofs();
    let asked = (checklist, sheet.clone());
    if let Some(now) = proofs.get(&asked) {
        if now.failed.is_some() {
            proofs.0.lock().unwrap_or_else(PoisonError::into_inner).remove(&asked);
        }
        return Ok(now);
    }
    let (bytes, sheet, proved) = desk
        .with(move |bay| {
            let bytes = bay.offered(SHELF, &checklist)?;
            let sheet = sheet.map(|id| bay.sheet_text(SHELF, &id)).transpose()?;
            let proved = match &sheet {
                Some(sheet) => bay.proved(&bytes, sheet, ASK)?.is_some(),
                None => bay.is_proved_without_sheet(&bytes, ASK)?,
            };
            Ok((bytes, sheet, proved))
        })
        .await?;
    if proved {
        return Ok(Proving { proved: true, ..Proving::default() });
    }
    let begun = Proving { doing: speaker().say(&panside_reading()), ..Proving::default() };
    proofs.set(&asked, begun.clone());
    let desk = desk.clone();
    tauri::async_runtime::spawn(async move {
        let ended = match run(&desk, asked.clone(), bytes, sheet).await {
            Ok(()) => Proving { proved: true, ..Proving::default() },
            Err(failed) => Proving { failed: Some(failed), ..Proving::default() },
        };
        desk.proofs().set(&asked, ended);
    });
    Ok(begun)
}

async fn run(desk: &Desk, asked: Asked, bytes: Vec<u8>, sheet: Option<Vec<u8>>) -> Result<(), Trouble> {
    let proofs = desk.proofs();
    let searched = off_thread(move || {
        let mut show = |progress: Progress| {
            let doing = speaker().say(&progress.message());
            proofs.set(&asked, Proving { doing, states: progress.states, ..Proving::default() });
            ControlFlow::Continue(())
        };
        match &sheet {
            Some(sheet) => search(&bytes, sheet, ASK, &mut show),
            None => search_without_sheet(&bytes, ASK, &mut show),
        }
    });
    let found = searched.await??;
    desk.with(move |bay| bay.keep_proof(found).map(drop)).await
}
