//! Proving a checklist while the window goes on. The page asks how far it is.

use std::collections::BTreeMap;
use std::ops::ControlFlow;
use std::sync::{Arc, Mutex, PoisonError};

use panside_bay::prove::{Ask, search};
use serde::Serialize;
use ts_rs::TS;

use crate::desk::Desk;
use crate::shelf::SHELF;
use crate::trouble::Trouble;

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

/// The proofs under way or ended, by checklist.
#[derive(Debug, Clone, Default)]
pub struct Proofs(Arc<Mutex<BTreeMap<String, Proving>>>);

impl Proofs {
    fn set(&self, checklist: &str, now: Proving) {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).insert(checklist.to_owned(), now);
    }

    fn get(&self, checklist: &str) -> Option<Proving> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).get(checklist).cloned()
    }
}

/// Says how far the proof of a checklist is, and begins it where there is none and none is under way. One that
/// failed is told once and begun again when asked again.
///
/// # Errors
/// When there is no such checklist or the store can't be read.
pub async fn look(desk: &Desk, checklist: String) -> Result<Proving, Trouble> {
    let proofs = desk.proofs();
    if let Some(now) = proofs.get(&checklist) {
        if now.failed.is_some() {
            proofs.0.lock().unwrap_or_else(PoisonError::into_inner).remove(&checklist);
        }
        return Ok(now);
    }
    let bytes = SHELF.checklist(&checklist)?;
    if desk.with(move |bay| bay.proved(bytes, Ask::default())).await?.is_some() {
        return Ok(Proving { proved: true, ..Proving::default() });
    }
    let begun = Proving { doing: "reading".into(), ..Proving::default() };
    proofs.set(&checklist, begun.clone());
    let desk = desk.clone();
    tauri::async_runtime::spawn(async move {
        let ended = match run(&desk, &checklist, bytes).await {
            Ok(()) => Proving { proved: true, ..Proving::default() },
            Err(failed) => Proving { failed: Some(failed), ..Proving::default() },
        };
        desk.proofs().set(&checklist, ended);
    });
    Ok(begun)
}

async fn run(desk: &Desk, checklist: &str, bytes: &'static [u8]) -> Result<(), Trouble> {
    let (proofs, name) = (desk.proofs(), checklist.to_owned());
    let searched = tauri::async_runtime::spawn_blocking(move || {
        search(bytes, Ask::default(), &mut |progress| {
            let doing = format!("{}: {}", progress.search, progress.doing);
            proofs.set(&name, Proving { doing, states: progress.states, ..Proving::default() });
            ControlFlow::Continue(())
        })
    });
    let found =
        searched.await.map_err(|error| Trouble::other(format!("The proof broke off: {error}.")))??;
    desk.with(move |bay| bay.keep_proof(found).map(drop)).await
}
