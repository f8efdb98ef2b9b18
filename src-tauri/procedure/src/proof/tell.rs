//! Searches run side by side; whoever asked for the proof hears of them one at a time, and may end them.

use std::ops::ControlFlow;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::Sender;

use super::explore::Runs;
use super::{Looking, Progress};

/// What a search tells its progress to.
pub struct Teller<'a> {
    pub to: Sender<Progress>,
    pub cancelled: &'a AtomicBool,
}

impl Teller<'_> {
    /// Tells how far a search is, and answers whether it may go on.
    pub fn tell(&self, search: Runs, doing: Looking, states: usize, waiting: usize) -> ControlFlow<()> {
        let heard = self.to.send(Progress { search, doing, states, waiting });
        if heard.is_err() || self.cancelled.load(Ordering::Relaxed) {
            return ControlFlow::Break(());
        }
        ControlFlow::Continue(())
    }
}
