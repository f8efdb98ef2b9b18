//! Planning a job while the window goes on: a good order is answered at once, the best one follows. The page asks again
//! until it is there.

use std::collections::BTreeMap;
use std::ops::ControlFlow;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

use panside_bay::enter::JobId;
use panside_bay::plan::{NoPlan, PlanPage, ToPlan};
use serde::Serialize;
use ts_rs::TS;

use crate::desk::Desk;
use crate::trouble::Trouble;

/// A plan, as far as it is found.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Planning {
    /// The order. Nothing where there is none.
    pub page: Option<PlanPage>,
    /// Why there is none.
    pub none: Option<String>,
    /// A better one is being looked for.
    pub searching: bool,
}

impl Planning {
    fn of(found: Result<PlanPage, NoPlan>, searching: bool) -> Planning {
        match found {
            Ok(page) => Planning { searching: searching && !page.exact, page: Some(page), none: None },
            Err(why) => Planning { page: None, none: Some(why.to_string()), searching: false },
        }
    }
}

/// A plan with the event that it was made on, and how its search is ended.
#[derive(Debug, Clone)]
struct Kept {
    seq: u64,
    planning: Planning,
    end: Arc<AtomicBool>,
}

/// The newest plan of each job.
#[derive(Debug, Clone, Default)]
pub struct Plans(Arc<Mutex<BTreeMap<JobId, Kept>>>);

impl Plans {
    fn get(&self, job: &JobId) -> Option<Kept> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).get(job).cloned()
    }

    /// Puts a plan in; the search for an earlier one ends.
    fn put(&self, job: JobId, kept: Kept) {
        let before = self.0.lock().unwrap_or_else(PoisonError::into_inner).insert(job, kept);
        if let Some(before) = before {
            before.end.store(true, Ordering::Relaxed);
        }
    }

    /// Puts in what a search found, unless the job has gone on meanwhile.
    fn found(&self, job: &JobId, end: &Arc<AtomicBool>, planning: Planning) {
        let mut plans = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(kept) = plans.get_mut(job).filter(|kept| Arc::ptr_eq(&kept.end, end)) {
            kept.planning = planning;
        }
    }
}

/// The plan of a job as it stands, as far as it is found. What waits run on with the clock: a plan that is `stale`
/// is made anew though nothing was entered.
///
/// # Errors
/// When the job can't be read.
pub async fn look(desk: &Desk, job: JobId, stale: bool) -> Result<Planning, Trouble> {
    let plans = desk.plans();
    let to_plan = desk.with(move |bay| bay.to_plan(job)).await?;
    let seq = to_plan.seq();
    if let Some(kept) = plans.get(&job).filter(|kept| kept.seq == seq && !stale) {
        return Ok(kept.planning);
    }
    let to_plan = Arc::new(to_plan);
    let quick = off_thread(Arc::clone(&to_plan), |to_plan| to_plan.quick()).await?;
    let planning = Planning::of(quick, true);
    let end = Arc::new(AtomicBool::new(false));
    plans.put(job, Kept { seq, planning: planning.clone(), end: Arc::clone(&end) });
    if planning.searching || planning.page.as_ref().is_some_and(|page| !page.meanwhile.running.is_empty()) {
        tauri::async_runtime::spawn(async move {
            let ended = Arc::clone(&end);
            let best = off_thread(to_plan, move |to_plan| {
                to_plan.best(&mut |_| {
                    if ended.load(Ordering::Relaxed) {
                        ControlFlow::Break(())
                    } else {
                        ControlFlow::Continue(())
                    }
                })
            });
            let planning = match best.await {
                Ok(found) => Planning::of(found, false),
                Err(trouble) => Planning { page: None, none: Some(trouble.message), searching: false },
            };
            plans.found(&job, &end, planning);
        });
    }
    Ok(planning)
}

async fn off_thread<T: Send + 'static>(
    to_plan: Arc<ToPlan>,
    work: impl FnOnce(&ToPlan) -> T + Send + 'static,
) -> Result<T, Trouble> {
    tauri::async_runtime::spawn_blocking(move || work(&to_plan))
        .await
        .map_err(|error| Trouble::other(format!("The plan broke off: {error}.")))
}
