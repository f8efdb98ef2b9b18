//! Points in time. They come in from outside: nothing here reads a clock.

use serde::{Deserialize, Serialize};

use crate::FigureError;

const MS_A_MINUTE: f64 = 60_000.0;

/// A point in time, in milliseconds from any zero. Moments of one figure are of one clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Moment(i64);

impl Moment {
    /// The moment so many milliseconds after the zero; negative before it.
    pub const fn from_ms(ms: i64) -> Moment {
        Moment(ms)
    }

    /// Milliseconds after the zero.
    pub const fn ms(self) -> i64 {
        self.0
    }

    /// Minutes from an earlier moment to this one; negative if the other is later.
    pub fn minutes_since(self, earlier: Moment) -> f64 {
        // Wider, so that the two ends of the range can be told apart too.
        (i128::from(self.0) - i128::from(earlier.0)) as f64 / MS_A_MINUTE
    }
}

/// Looks that moments never go back and none lies after `now`.
///
/// # Errors
/// [`FigureError::ClockWentBack`] and [`FigureError::InTheFuture`], each with the place counted from 1.
pub(crate) fn check_order(
    moments: impl IntoIterator<Item = Moment>,
    now: Option<Moment>,
) -> Result<(), FigureError> {
    let mut last = None;
    for (index, moment) in moments.into_iter().enumerate() {
        if last.is_some_and(|last| moment < last) {
            return Err(FigureError::ClockWentBack { position: index + 1 });
        }
        if now.is_some_and(|now| moment > now) {
            return Err(FigureError::InTheFuture { position: index + 1 });
        }
        last = Some(moment);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clock_that_jumped_backwards_is_named_by_its_entry() {
        let at = |list: [i64; 3]| check_order(list.map(Moment::from_ms), Some(Moment::from_ms(10)));
        assert_eq!(at([1, 1, 9]), Ok(()));
        assert_eq!(at([1, 5, 4]), Err(FigureError::ClockWentBack { position: 3 }));
        assert_eq!(at([1, 11, 12]), Err(FigureError::InTheFuture { position: 2 }));
    }

    #[test]
    fn the_ends_of_time_do_not_run_over() {
        let (first, last) = (Moment::from_ms(i64::MIN), Moment::from_ms(i64::MAX));
        assert!(last.minutes_since(first) > 0.0 && first.minutes_since(last) < 0.0);
        assert_eq!(Moment::from_ms(90_000).minutes_since(Moment::from_ms(0)), 1.5);
    }
}
