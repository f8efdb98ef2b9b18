//! Planning a job while the window goes on: a good order is answered at once, the best one follows. The page asks again
//! until it is there; a search that nobody asks after ends by itself.
//!
//! There is one search for each job and number of people; after 5 s without a question it ends. For the number of
//! people that is not chosen only a good order is asked for; the best one for a single person is asked for too, as it
//! takes a moment.

use std::collections::BTreeMap;
use std::ops::ControlFlow;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

use panside_bay::enter::JobId;
use panside_bay::plan::{BUDGET, NoPlan, PlanPage, Progress, ToPlan};
use serde::Serialize;
use ts_rs::TS;

use crate::desk::{Desk, off_thread};
use crate::message::speaker;
use crate::trouble::Trouble;

/// How long a search goes on when nobody asks how far it is. The page asks several times a second.
const PATIENCE: Duration = Duration::from_secs(5);

/// A plan, as far as it is found.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Planning {
    /// The order. Nothing where there is none.
    pub page: Option<PlanPage>,
    /// Why there is none.
    pub none: Option<String>,
    /// A better one is being looked for: how much of what may be looked at was, in hundred parts. Nothing when the search is
    /// over.
    pub searching: Option<u8>,
}

impl Planning {
    fn of(found: Result<PlanPage, NoPlan>) -> Planning {
        match found {
            Ok(page) => Planning { page: Some(page), none: None, searching: None },
            Err(why) => Planning::none(speaker().say(&why.message())),
        }
    }

    fn none(why: String) -> Planning {
        Planning { page: None, none: Some(why), searching: None }
    }

    /// Whether a search may add to a good order that was found at once.
    fn can_be_bettered(&self) -> bool {
        self.page.as_ref().is_some_and(|page| !page.exact || !page.meanwhile.running.is_empty())
    }
}

/// A search for the best order.
#[derive(Debug)]
struct Search {
    ended: AtomicBool,
    looked_at: AtomicUsize,
    /// When somebody last asked how far it is.
    asked: Mutex<Instant>,
}

impl Search {
    fn new() -> Search {
        let asked = Mutex::new(Instant::now());
        Search { ended: AtomicBool::new(false), looked_at: AtomicUsize::new(0), asked }
    }

    fn asked(&self) -> std::sync::MutexGuard<'_, Instant> {
        self.asked.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Hears how far it is, and says whether to go on. What can be done meanwhile is searched after the plan, and counts anew.
    fn goes_on(&self, progress: Progress) -> ControlFlow<()> {
        self.looked_at.fetch_max(progress.looked_at, Ordering::Relaxed);
        if self.is_over(Instant::now()) { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
    }

    fn is_over(&self, now: Instant) -> bool {
        let unasked = now.saturating_duration_since(*self.asked());
        self.ended.load(Ordering::Relaxed) || unasked > PATIENCE
    }

    fn percent(&self) -> u8 {
        let percent = self.looked_at.load(Ordering::Relaxed) * 100 / BUDGET.moments;
        u8::try_from(percent).map_or(100, |percent| percent.min(100))
    }
}

/// How far the plan of a job for so many people is.
#[derive(Debug, Clone)]
struct Kept {
    /// The number of the event that it was made on.
    seq: u64,
    planning: Planning,
    /// The search that goes on.
    search: Option<Arc<Search>>,
    /// The best was looked for to the end.
    searched: bool,
}

impl Kept {
    /// Whether it is what is asked for, or will be.
    fn answers(&self, asked: Asked) -> bool {
        !asked.stale && (!asked.best || self.searched || self.search.is_some())
    }

    /// What is answered to somebody who asks.
    fn told(&self) -> Planning {
        let searching = self.search.as_ref().map(|search| {
            *search.asked() = Instant::now();
            search.percent()
        });
        Planning { searching, ..self.planning.clone() }
    }
}

/// A job and how many people it is planned for.
type For = (JobId, u8);

/// The newest plan of each job, for one person and for two.
#[derive(Debug, Clone, Default)]
pub struct Plans(Arc<Mutex<BTreeMap<For, Kept>>>);

impl Plans {
    fn with<T>(&self, work: impl FnOnce(&mut BTreeMap<For, Kept>) -> T) -> T {
        work(&mut self.0.lock().unwrap_or_else(PoisonError::into_inner))
    }

    /// Puts a plan in; the search for an earlier one ends.
    fn put(&self, plan: For, kept: Kept) {
        let before = self.with(|plans| plans.insert(plan, kept));
        if let Some(search) = before.and_then(|before| before.search) {
            search.ended.store(true, Ordering::Relaxed);
        }
    }

    /// Forgets them all, and ends their searches: in another store the same number may stand for another entry.
    pub fn forget(&self) {
        for kept in self.with(std::mem::take).into_values() {
            if let Some(search) = kept.search {
                search.ended.store(true, Ordering::Relaxed);
            }
        }
    }

    /// Puts in what a search found, unless the job has gone on meanwhile. Nothing: it was broken off, and what stood before
    /// stands.
    fn found(&self, plan: For, search: &Arc<Search>, planning: Option<Planning>) {
        self.with(|plans| {
            let own = |kept: &&mut Kept| kept.search.as_ref().is_some_and(|now| Arc::ptr_eq(now, search));
            let Some(kept) = plans.get_mut(&plan).filter(own) else { return };
            kept.search = None;
            kept.searched = planning.is_some();
            if let Some(planning) = planning {
                kept.planning = planning;
            }
        });
    }
}

/// What is asked for.
#[derive(Debug, Clone, Copy)]
pub struct Asked {
    /// The job.
    pub job: JobId,
    /// How many people are planned for, 1 or 2.
    pub people: u8,
    /// The best order is wanted, not just a good one.
    pub best: bool,
    /// What waits run on with the clock: the plan is made anew though nothing was entered.
    pub stale: bool,
}

/// The plan of a job as it stands, as far as it is found.
///
/// # Errors
/// When the job can't be read.
pub async fn look(desk: &Desk, asked: Asked) -> Result<Planning, Trouble> {
    let (plans, plan) = (desk.plans(), (asked.job, asked.people));
    let to_plan = desk.with(move |bay| bay.to_plan(asked.job)).await?;
    let seq = to_plan.seq();
    let before = plans.with(|plans| plans.get(&plan).cloned()).filter(|kept| kept.seq == seq);
    if let Some(kept) = before.as_ref().filter(|kept| kept.answers(asked)) {
        return Ok(kept.told());
    }
    // The best order of a minute ago is better than a good one of now.
    let shown = before.filter(|kept| kept.searched && asked.best).map(|kept| kept.planning);
    let (planning, open) = off_thread(move || begin(to_plan, asked.people, shown)).await?;
    let open = open.filter(|_| asked.best).map(|to_plan| (to_plan, Arc::new(Search::new())));
    let search = open.as_ref().map(|(_, search)| Arc::clone(search));
    let kept = Kept { seq, planning, searched: asked.best && search.is_none(), search };
    plans.put(plan, kept.clone());
    if let Some((to_plan, search)) = open {
        tauri::async_runtime::spawn(async move {
            let heard = Arc::clone(&search);
            let best = off_thread(move || to_plan.best(&mut |progress| heard.goes_on(progress)));
            let planning = match best.await {
                Ok(Err(NoPlan::Cancelled)) => None,
                Ok(found) => Some(Planning::of(found)),
                Err(trouble) => Some(Planning::none(trouble.message)),
            };
            plans.found(plan, &search, planning);
        });
    }
    Ok(kept.told())
}

/// What is shown first, else a good order; and what to search, where a search may add to it.
fn begin(to_plan: ToPlan, people: u8, shown: Option<Planning>) -> (Planning, Option<ToPlan>) {
    let to_plan = match to_plan.for_people(people) {
        Ok(to_plan) => to_plan,
        Err(why) => return (Planning::none(why.to_string()), None),
    };
    if let Some(shown) = shown {
        return (shown, Some(to_plan));
    }
    let quick = Planning::of(to_plan.quick());
    let open = quick.can_be_bettered();
    (quick, open.then_some(to_plan))
}

#[cfg(test)]
mod tests {
    use super::*;

    const HALF: Progress =
        Progress { looked_at: BUDGET.moments / 2, waiting: 0, bound: 438, total: Some(444) };

    fn kept(search: Option<Arc<Search>>, searched: bool) -> Kept {
        Kept { seq: 1, planning: Planning::none("No allowed order.".into()), search, searched }
    }

    #[test]
    fn a_search_goes_on_while_somebody_asks_and_tells_how_far_it_is() {
        let search = Arc::new(Search::new());
        let _ = search.goes_on(HALF);
        // What can be done meanwhile is searched afterwards, and counts from the beginning.
        let _ = search.goes_on(Progress { looked_at: 1024, ..HALF });
        let asked = *search.asked();
        assert!(!search.is_over(asked + PATIENCE));
        assert_eq!(kept(Some(Arc::clone(&search)), false).told().searching, Some(50));
        search.ended.store(true, Ordering::Relaxed);
        assert_eq!(search.goes_on(HALF), ControlFlow::Break(()));
    }

    #[test]
    fn a_search_that_nobody_asks_after_ends_unless_somebody_asks_again() {
        let search = Arc::new(Search::new());
        let begun = *search.asked();
        let late = begun + PATIENCE + Duration::from_millis(1);
        assert!(search.is_over(late));
        kept(Some(Arc::clone(&search)), false).told();
        let asked = *search.asked();
        assert!(asked >= begun && !search.is_over(asked + PATIENCE));
    }

    #[test]
    fn a_search_that_was_broken_off_is_begun_again_by_who_wants_the_best() {
        let job: JobId = "01890a5d-ac96-774b-bcce-b302099a8057".parse().unwrap();
        let (plans, plan, search) = (Plans::default(), (job, 2), Arc::new(Search::new()));
        plans.put(plan, kept(Some(Arc::clone(&search)), false));
        plans.found(plan, &search, None);
        let best = Asked { job, people: 2, best: true, stale: false };
        let stands = plans.with(|plans| plans.get(&plan).cloned()).unwrap();
        assert!(
            stands.planning.none.is_some() && stands.told().searching.is_none(),
            "what stood before stands"
        );
        assert!(!stands.answers(best) && stands.answers(Asked { best: false, ..best }));
    }

    #[test]
    fn a_newer_plan_ends_the_search_for_the_one_before_and_takes_nothing_from_it() {
        let job: JobId = "01890a5d-ac96-774b-bcce-b302099a8057".parse().unwrap();
        let (plans, plan, search) = (Plans::default(), (job, 2), Arc::new(Search::new()));
        plans.put(plan, kept(Some(Arc::clone(&search)), false));
        plans.put(plan, kept(None, false));
        assert_eq!(search.goes_on(HALF), ControlFlow::Break(()));
        plans.found(plan, &search, Some(Planning::none("of before".into())));
        let stands = plans.with(|plans| plans.get(&plan).cloned()).unwrap();
        assert_eq!(stands.planning.none.as_deref(), Some("No allowed order."));
    }

    #[test]
    fn plans_of_a_store_that_is_shut_are_forgotten_and_their_searches_end() {
        let job: JobId = "01890a5d-ac96-774b-bcce-b302099a8057".parse().unwrap();
        let (plans, search) = (Plans::default(), Arc::new(Search::new()));
        plans.put((job, 2), kept(Some(Arc::clone(&search)), false));
        plans.forget();
        assert_eq!(search.goes_on(HALF), ControlFlow::Break(()));
        assert!(plans.with(|plans| plans.is_empty()));
    }
}
