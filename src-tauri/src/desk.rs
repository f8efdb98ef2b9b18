//! The open store behind the commands. One at a time is at it; none of them keeps the window from drawing. What takes long
//! (photos, records, figures, plans, proofs) is done beside the desk, so that no entry waits for it.
//!
//! One mutex guards the store. `Desk::beside` takes what is needed under it (`Bay::to_record`, `to_plan`,
//! `photo_intake`: the folded job is shared, and the next entry goes into a copy) and works without it. Files beside
//! the journal need no connection (`store::Files`); a photo's row is written under the mutex at the end.

use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use panside_bay::clock::{Clock, DemoClock, SystemClock};
use panside_bay::{Bay, BayError};

use crate::planning::Plans;
use crate::proving::Proofs;
use crate::trouble::Trouble;

/// Under which setting it is kept how far the demo clock is ahead, so that no restart turns it back.
const AHEAD: &str = "demo_clock_ahead_ms";

/// The desk that every command works at.
#[derive(Clone)]
pub struct Desk {
    seat: Arc<Mutex<Seat>>,
    proofs: Proofs,
    plans: Plans,
    demo_clock: bool,
}

struct Seat {
    store: PathBuf,
    /// Where it is noted, outside of the store, how far it has come.
    state: PathBuf,
    /// The store, or why it is not open.
    bay: Result<Bay, Trouble>,
    demo: Option<Arc<DemoClock>>,
}

impl Desk {
    /// Opens the store. When it can't be opened, every command answers why, until [`Desk::open_again`].
    pub fn open(store: PathBuf, state: PathBuf, demo_clock: bool) -> Desk {
        let demo = demo_clock.then(Arc::<DemoClock>::default);
        let bay = open(&store, &state, demo.as_ref());
        let seat = Arc::new(Mutex::new(Seat { store, state, bay, demo }));
        verify_beside(&seat);
        Desk { seat, proofs: Proofs::default(), plans: Plans::default(), demo_clock }
    }

    /// Whether time can be let pass.
    pub fn has_demo_clock(&self) -> bool {
        self.demo_clock
    }

    /// The proofs that are under way.
    pub fn proofs(&self) -> Proofs {
        self.proofs.clone()
    }

    /// The plans that were asked for.
    pub fn plans(&self) -> Plans {
        self.plans.clone()
    }

    /// Does something with the store, away from the thread that draws.
    pub async fn with<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Bay) -> Result<T, BayError> + Send + 'static,
    ) -> Result<T, Trouble> {
        self.seated(move |seat| match &mut seat.bay {
            Ok(bay) => Ok(work(bay)?),
            Err(trouble) => Err(trouble.clone()),
        })
        .await
    }

    /// Takes something from the store, and works with it beside the desk.
    pub async fn beside<A: Send + 'static, T: Send + 'static>(
        &self,
        take: impl FnOnce(&mut Bay) -> Result<A, BayError> + Send + 'static,
        work: impl FnOnce(A) -> Result<T, BayError> + Send + 'static,
    ) -> Result<T, Trouble> {
        let taken = self.with(take).await?;
        Ok(off_thread(move || work(taken)).await??)
    }

    /// Opens the store that could not be opened, or reads an open one anew after a failed write.
    pub async fn open_again(&self) -> Result<(), Trouble> {
        self.seated(|seat| {
            if let Ok(bay) = &mut seat.bay {
                return Ok(bay.reopen()?);
            }
            seat.bay = open(&seat.store, &seat.state, seat.demo.as_ref());
            seat.bay.as_ref().map(drop).map_err(Clone::clone)
        })
        .await?;
        verify_beside(&self.seat);
        Ok(())
    }

    /// Lets time pass on the demo clock.
    pub async fn let_pass(&self, minutes: u16) -> Result<(), Trouble> {
        self.seated(move |seat| {
            let (Some(clock), Ok(bay)) = (&seat.demo, &mut seat.bay) else {
                return Err(Trouble::other("Time goes its own way here: the window has no demo clock."));
            };
            clock.let_pass_ms(u32::from(minutes) * 60_000);
            Ok(bay.put_setting(AHEAD, &clock.ahead_ms().to_string())?)
        })
        .await
    }

    async fn seated<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Seat) -> Result<T, Trouble> + Send + 'static,
    ) -> Result<T, Trouble> {
        let seat = Arc::clone(&self.seat);
        // A command that panicked left the store as it was on disk: whoever comes next folds it anew.
        off_thread(move || work(&mut seat.lock().unwrap_or_else(PoisonError::into_inner))).await?
    }
}

/// Verifies what opening left out, on a thread of its own. What it finds stops entries where it must, and is said with
/// whatever is asked for next ([`Desk::troubles`]).
fn verify_beside(seat: &Arc<Mutex<Seat>>) {
    let verifier = match &seat.lock().unwrap_or_else(PoisonError::into_inner).bay {
        Ok(bay) => bay.verifier(),
        // There is nothing to verify, and why has been said.
        Err(_) => return,
    };
    let seat = Arc::clone(seat);
    std::thread::spawn(move || {
        let found = verifier.run();
        if let Ok(bay) = &mut seat.lock().unwrap_or_else(PoisonError::into_inner).bay {
            bay.verified(found);
        }
    });
}

/// Does something away from the thread that draws.
pub async fn off_thread<T: Send + 'static>(work: impl FnOnce() -> T + Send + 'static) -> Result<T, Trouble> {
    tauri::async_runtime::spawn_blocking(work).await.map_err(|error| {
        Trouble::other(format!(
            "Something broke inside Panside: {error}. What was saved is safe; close the window and open it again."
        ))
    })
}

fn open(store: &Path, state: &Path, demo: Option<&Arc<DemoClock>>) -> Result<Bay, Trouble> {
    let clock: Box<dyn Clock> = match demo {
        Some(clock) => Box::new(Arc::clone(clock)),
        None => Box::new(SystemClock::new()),
    };
    let bay = Bay::open_at_once(store, clock, Some(state.to_owned()))?;
    if let Some(clock) = demo {
        let kept = bay.setting(AHEAD)?.and_then(|text| text.parse::<i64>().ok()).unwrap_or(0);
        clock.set_ahead_ms(kept);
    }
    Ok(bay)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::mpsc;

    #[test]
    fn the_store_takes_entries_while_somebody_works_beside_the_desk() {
        let dir = tempfile::tempdir().unwrap();
        let desk = Desk::open(dir.path().join("bay"), dir.path().join("state"), false);
        let ((begun, has_begun), (go, may_go)) = (mpsc::channel(), mpsc::channel());
        let at_work = {
            let desk = desk.clone();
            tauri::async_runtime::spawn(async move {
                let half_way = move |before| {
                    begun.send(()).unwrap();
                    may_go.recv().unwrap();
                    Ok(before)
                };
                desk.beside(|bay| bay.setting("screen"), half_way).await
            })
        };
        tauri::async_runtime::block_on(async {
            has_begun.recv().unwrap();
            desk.with(|bay| bay.put_setting("screen", "record")).await.unwrap();
            go.send(()).unwrap();
            assert_eq!(at_work.await.unwrap().unwrap(), None, "it works on what it took");
            assert_eq!(desk.with(|bay| bay.setting("screen")).await.unwrap().as_deref(), Some("record"));
        });
    }
}
