//! The open store behind the commands. One at a time is at it; none of them keeps the window from drawing.

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
        Desk {
            seat: Arc::new(Mutex::new(Seat { store, state, bay, demo })),
            proofs: Proofs::default(),
            plans: Plans::default(),
            demo_clock,
        }
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

    /// Opens the store that could not be opened, or reads an open one anew after a failed write.
    pub async fn open_again(&self) -> Result<(), Trouble> {
        self.seated(|seat| {
            if let Ok(bay) = &mut seat.bay {
                return Ok(bay.reopen()?);
            }
            seat.bay = open(&seat.store, &seat.state, seat.demo.as_ref());
            seat.bay.as_ref().map(drop).map_err(Clone::clone)
        })
        .await
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
        let run = move || work(&mut seat.lock().unwrap_or_else(PoisonError::into_inner));
        match tauri::async_runtime::spawn_blocking(run).await {
            Ok(answer) => answer,
            Err(error) => Err(Trouble::other(format!(
                "Something broke inside Panside: {error}. What was saved is safe; close the window and open it again."
            ))),
        }
    }
}

fn open(store: &Path, state: &Path, demo: Option<&Arc<DemoClock>>) -> Result<Bay, Trouble> {
    let clock: Box<dyn Clock> = match demo {
        Some(clock) => Box::new(Arc::clone(clock)),
        None => Box::new(SystemClock::new()),
    };
    let bay = Bay::open_noted(store, clock, Some(state.to_owned()))?;
    if let Some(clock) = demo {
        let kept = bay.setting(AHEAD)?.and_then(|text| text.parse::<i64>().ok()).unwrap_or(0);
        clock.set_ahead_ms(kept);
    }
    Ok(bay)
}
