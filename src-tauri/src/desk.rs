//! The open store behind the commands. One at a time is at it; none of them keeps the window from drawing. What takes long
//! (photos, records, figures, plans, proofs) is done beside the desk, so that no entry waits for it.
//!
//! One mutex guards the store. `Desk::beside` takes what is needed under it (`Bay::to_record`, `to_plan`,
//! `photo_intake`: the folded job is shared, and the next entry goes into a copy) and works without it. Files beside
//! the journal need no connection (`store::Files`); a photo's row is written under the mutex at the end.

use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use panside_bay::clock::{Clock, DemoClock, SystemClock};
use panside_bay::way_back::Onlooker;
use panside_bay::{Bay, BayError};

use crate::message::*;
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
    /// How often a store was opened here: what was found of an earlier one is not held against this one.
    opening: u64,
    /// A store stood here. Where it is gone no empty one is made in its place.
    stood: bool,
}

/// Where the store lies while it is shut.
pub struct Shut<'a> {
    /// Its folder.
    pub store: &'a Path,
    /// Where it is noted, outside of the store, how far it has come.
    pub state: &'a Path,
    /// The clock.
    pub clock: &'a dyn Clock,
}

impl Seat {
    /// Opens the store, or keeps why it can't be opened.
    fn open(&mut self) {
        if self.stood && !self.store.exists() {
            return;
        }
        self.opening += 1;
        self.bay = open(&self.store, &self.state, self.demo.as_ref());
        self.stood |= self.store.exists();
    }

    /// Shuts the store, does something with its files, and opens what is there then.
    fn shut<T>(&mut self, work: impl FnOnce(&Shut<'_>) -> Result<T, BayError>) -> Result<T, Trouble> {
        let shut = Trouble::other(&panside_shut_meanwhile());
        if let Ok(bay) = std::mem::replace(&mut self.bay, Err(shut))
            && let Err(error) = bay.close()
        {
            // What is wrong with a store must not keep anybody from the way back. What closing could not carry over stands
            // in the log, which belongs to the files.
            eprintln!("{}", speaker().say(&panside_shut_unsettled(error.message())));
        }
        let clock = clock(self.demo.as_ref());
        let done = work(&Shut { store: &self.store, state: &self.state, clock: &*clock });
        let done = done.map_err(Trouble::from);
        if let Err(trouble) = &done {
            self.bay = Err(trouble.clone());
        }
        self.open();
        done
    }
}

impl Desk {
    /// Opens the store. When it can't be opened, every command answers why, until [`Desk::open_again`].
    pub fn open(store: PathBuf, state: PathBuf, demo_clock: bool) -> Desk {
        let demo = demo_clock.then(Arc::<DemoClock>::default);
        let bay = Err(Trouble::other(&panside_not_opened()));
        let mut seat = Seat { store, state, bay, demo, opening: 0, stood: false };
        seat.open();
        let seat = Arc::new(Mutex::new(seat));
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
            seat.open();
            seat.bay.as_ref().map(drop).map_err(Clone::clone)
        })
        .await?;
        verify_beside(&self.seat);
        Ok(())
    }

    /// Shuts the store, does something with its files, and opens what is there then. Whoever asks for something meanwhile
    /// waits. What was proved and planned before is asked of the store anew.
    pub async fn shut<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Shut<'_>) -> Result<T, BayError> + Send + 'static,
    ) -> Result<T, Trouble> {
        let done = self.seated(move |seat| seat.shut(work)).await;
        self.proofs.forget();
        self.plans.forget();
        verify_beside(&self.seat);
        done
    }

    /// Where the store lies, and for whom backups are looked at; whether or not it can be opened.
    pub async fn onlooker(&self) -> Result<(PathBuf, Onlooker), Trouble> {
        self.seated(|seat| {
            let device = seat.bay.as_ref().ok().map(Bay::device);
            let now_ms = clock(seat.demo.as_ref()).now().wall_ms;
            Ok((seat.store.clone(), Onlooker { device, now_ms, speaker: speaker() }))
        })
        .await
    }

    /// Lets time pass on the demo clock.
    pub async fn let_pass(&self, minutes: u16) -> Result<(), Trouble> {
        self.seated(move |seat| {
            let (Some(clock), Ok(bay)) = (&seat.demo, &mut seat.bay) else {
                return Err(Trouble::other(&panside_no_demo_clock()));
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
    let (verifier, opening) = {
        let seat = seat.lock().unwrap_or_else(PoisonError::into_inner);
        match &seat.bay {
            Ok(bay) => (bay.verifier(), seat.opening),
            // There is nothing to verify, and why has been said.
            Err(_) => return,
        }
    };
    let seat = Arc::clone(seat);
    std::thread::spawn(move || {
        let found = verifier.run();
        let mut seat = seat.lock().unwrap_or_else(PoisonError::into_inner);
        if seat.opening == opening
            && let Ok(bay) = &mut seat.bay
        {
            bay.verified(found);
        }
    });
}

/// Does something away from the thread that draws.
pub async fn off_thread<T: Send + 'static>(work: impl FnOnce() -> T + Send + 'static) -> Result<T, Trouble> {
    let done = tauri::async_runtime::spawn_blocking(work).await;
    done.map_err(|error| Trouble::other(&panside_broke(error.to_string())))
}

fn clock(demo: Option<&Arc<DemoClock>>) -> Box<dyn Clock> {
    match demo {
        Some(clock) => Box::new(Arc::clone(clock)),
        None => Box::new(SystemClock::new()),
    }
}

fn open(store: &Path, state: &Path, demo: Option<&Arc<DemoClock>>) -> Result<Bay, Trouble> {
    let bay = Bay::open_at_once(store, clock(demo), Some(state.to_owned()))?;
    if let Some(clock) = demo {
        let kept = bay.setting(AHEAD)?.and_then(|text| text.parse::<i64>().ok()).unwrap_or(0);
        // A restored store may be from before: its clock goes on all the same.
        clock.set_ahead_ms(kept.max(clock.ahead_ms()));
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
