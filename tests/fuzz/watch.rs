//! Overruns: a case that takes too long or too much memory ends the run with its number.

use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

/// No case takes so long, on a machine that does other things too: the longest take some hundred milliseconds.
const LONGEST: Duration = Duration::from_secs(30);
/// What the process may take in all: a file of 4 MB takes some hundred MB while it is read.
const MOST_BYTES: u64 = 2 << 30;
/// No case is running.
const NONE: u64 = u64::MAX;

/// Looks at what is running, from beside.
pub struct Watch(Arc<AtomicU64>);

impl Watch {
    pub fn begin(seed: u64) -> Watch {
        let case = Arc::new(AtomicU64::new(NONE));
        let seen = Arc::clone(&case);
        // It ends with the process.
        std::thread::spawn(move || look(seed, &seen));
        Watch(case)
    }

    /// This case begins now.
    pub fn now(&self, case: u64) {
        self.0.store(case, Ordering::Relaxed);
    }

    /// No more cases come.
    pub fn end(&self) {
        self.now(NONE);
    }
}

fn look(seed: u64, case: &AtomicU64) {
    let (mut running, mut since) = (NONE, Instant::now());
    loop {
        std::thread::sleep(Duration::from_millis(100));
        let now = case.load(Ordering::Relaxed);
        if now != running {
            (running, since) = (now, Instant::now());
        }
        let what = match memory() {
            Some(bytes) if bytes > MOST_BYTES => format!("it takes {} MB", bytes >> 20),
            _ if since.elapsed() > LONGEST => format!("it takes more than {} s", LONGEST.as_secs()),
            _ => continue,
        };
        if running != NONE {
            // The case cannot be ended from here, so the run is.
            println!("FINDING, --seed {seed} --case {running}: {what}");
            std::process::exit(1);
        }
    }
}

/// What the process has in memory; nothing where the system does not tell it like Linux does.
fn memory() -> Option<u64> {
    let told = std::fs::read_to_string("/proc/self/statm").ok()?;
    let pages: u64 = told.split(' ').nth(1)?.parse().ok()?;
    Some(pages * 4096)
}
