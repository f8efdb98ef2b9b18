//! Times and how they are shown.

use std::time::{Duration, Instant};

/// Times of the same thing.
#[derive(Default)]
pub struct Times(Vec<Duration>);

impl Times {
    /// Does something and takes down how long it took.
    pub fn time<T>(&mut self, work: impl FnOnce() -> T) -> T {
        let began = Instant::now();
        let done = work();
        self.0.push(began.elapsed());
        done
    }

    /// The time below which so many of a hundred lie.
    pub fn percentile(&self, of_hundred: usize) -> Duration {
        let mut sorted = self.0.clone();
        sorted.sort();
        sorted
            .get((sorted.len() * of_hundred / 100).min(sorted.len().saturating_sub(1)))
            .copied()
            .unwrap_or_default()
    }

    /// The same, for people.
    pub fn shown(&self, of_hundred: usize) -> String {
        shown(self.percentile(of_hundred))
    }
}

fn shown(time: Duration) -> String {
    match time.as_micros() {
        us if us < 10_000 => format!("{us} us"),
        us if us < 10_000_000 => format!("{:.1} ms", us as f64 / 1e3),
        us => format!("{:.1} s", us as f64 / 1e6),
    }
}

/// Prints one comparison.
pub fn row(name: &str, ours: Duration, peer: Duration, wanted: &str) {
    let ratio = ours.as_secs_f64() / peer.as_secs_f64().max(1e-9);
    println!("{name:<44} {:>10} {:>10} {ratio:>7.2}  {wanted}", shown(ours), shown(peer));
}
