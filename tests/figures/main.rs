//! The numbers of the trade against libraries that nobody here wrote, asked through Python: numpy, scipy, pint, vininfo,
//! networkx. Published values stand in the crate's own tests.
//!
//! Each test prints a row: the figure, what was asked, how many cases, and the largest difference that was seen. They
//! are the rows of the table "Numbers against libraries" in tests/README.md: `cargo test -p panside-tests --test figures
//! -- --nocapture`.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says where")]

mod chance;
mod cooling;
mod fluid;
mod identity;
mod money;
mod tightening;
mod time;

/// The largest difference that a figure showed, and over how many cases.
struct Seen {
    figure: &'static str,
    asked: &'static str,
    cases: usize,
    largest: f64,
}

impl Seen {
    fn of(figure: &'static str, asked: &'static str) -> Seen {
        Seen { figure, asked, cases: 0, largest: 0.0 }
    }

    /// Compares two numbers by the difference in parts of the second, near zero by the difference itself.
    fn compare(&mut self, found: f64, expected: f64) {
        self.differ((found - expected).abs() / expected.abs().max(1.0));
    }

    fn differ(&mut self, difference: f64) {
        // A difference that is not a number is the largest there can be.
        self.largest = self.largest.max(if difference.is_nan() { f64::INFINITY } else { difference });
        self.cases += 1;
    }

    /// Prints the row and says whether no difference is larger than allowed.
    fn tell(&self, allowed: f64) {
        println!("| {} | {} | {} | {:.1e} |", self.figure, self.asked, self.cases, self.largest);
        assert!(self.cases > 0, "nothing was compared");
        assert!(self.largest <= allowed, "{}: {} is more than {allowed}", self.figure, self.largest);
    }
}
