//! How many taps, and how soon each was seen.

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
    /// Milliseconds from a tap until what it changed was painted.
    pub painted_ms: Vec<f64>,
}

impl Times {
    /// The value below which this part of the times lies, from 0 to 1, by the nearest rank; nothing without times.
    #[must_use]
    pub fn part(&self, part: f64) -> Option<f64> {
        let mut sorted = self.painted_ms.clone();
        sorted.sort_by(f64::total_cmp);
        let rank = (part * sorted.len() as f64).ceil() as usize;
        sorted.get(rank.saturating_sub(1)).copied()
    }

    /// In a few words.
    #[must_use]
    pub fn to_text(&self) -> String {
        let ms = |part| self.part(part).map_or_else(|| "none".to_owned(), |ms| format!("{ms:.0} ms"));
        format!(
            "{} taps ({} after scrolling), {} photos, {} characters typed; tap to painted: median {}, 95 % {}, longest {} of {}",
            self.taps,
            self.scrolled,
            self.photos,
            self.typed,
            ms(0.5),
            ms(0.95),
            ms(1.0),
            self.painted_ms.len()
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_median_and_the_tail_are_taken_by_nearest_rank() {
        let times = Times { painted_ms: (1..=20).rev().map(f64::from).collect(), ..Times::default() };
        assert_eq!(times.part(0.5), Some(10.0));
        assert_eq!(times.part(0.95), Some(19.0));
        assert_eq!(times.part(1.0), Some(20.0));
        assert_eq!(Times::default().part(0.5), None);
    }
}
