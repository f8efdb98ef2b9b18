//! How many taps, and how soon each was seen.

use serde::Deserialize;

/// What was done with the hand, and how long the window took to show it.
#[derive(Debug, Clone, Default)]
pub struct Times {
    /// Taps on the glass.
    pub taps: usize,
    /// Taps that needed the page to be scrolled first.
    pub scrolled: usize,
    /// Characters typed on a real keyboard.
    pub typed: usize,
    /// Photos given.
    pub photos: usize,
    /// How long taps took to be seen.
    pub painted: Vec<Painted>,
}

/// A tap that was seen.
#[derive(Debug, Clone, Deserialize)]
pub struct Painted {
    /// Milliseconds from the tap until the first that it changed was painted.
    pub ms: f64,
    /// What the button said.
    pub says: String,
}

impl Times {
    /// The value below which this part of the times lies, from 0 to 1, by the nearest rank; nothing without times.
    #[must_use]
    pub fn part(&self, part: f64) -> Option<f64> {
        let mut sorted: Vec<f64> = self.painted.iter().map(|painted| painted.ms).collect();
        sorted.sort_by(f64::total_cmp);
        let rank = (part * sorted.len() as f64).ceil() as usize;
        sorted.get(rank.saturating_sub(1)).copied()
    }

    /// The slowest taps, the slowest first.
    #[must_use]
    pub fn slowest(&self, many: usize) -> Vec<&Painted> {
        let mut sorted: Vec<&Painted> = self.painted.iter().collect();
        sorted.sort_by(|one, other| other.ms.total_cmp(&one.ms));
        sorted.truncate(many);
        sorted
    }

    /// In a few words.
    #[must_use]
    pub fn to_text(&self) -> String {
        let ms = |part| self.part(part).map_or_else(|| "none".to_owned(), |ms| format!("{ms:.0} ms"));
        format!(
            "{} taps ({} after scrolling), {} photos, {} characters typed; tap to painted: median {}, 95 % {}",
            self.taps,
            self.scrolled,
            self.photos,
            self.typed,
            ms(0.5),
            ms(0.95)
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_median_and_the_tail_are_taken_by_nearest_rank() {
        let painted = (1..=20).rev().map(|ms| Painted { ms: f64::from(ms), says: String::new() }).collect();
        let times = Times { painted, ..Times::default() };
        assert_eq!(times.part(0.5), Some(10.0));
        assert_eq!(times.part(0.95), Some(19.0));
        assert_eq!(times.slowest(1).first().map(|painted| painted.ms), Some(20.0));
        assert_eq!(Times::default().part(0.5), None);
    }
}
