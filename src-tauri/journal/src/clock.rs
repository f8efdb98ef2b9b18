//! The two clocks of an event, and how to see that the wall clock was set.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::BootId;

/// When an event was made, by both clocks of the device.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Stamp {
    /// Wall time: milliseconds since 1970-01-01T00:00:00 UTC. It can be set to anything at any time.
    pub wall_ms: i64,
    /// Milliseconds since the device booted, **counting sleep** (`CLOCK_BOOTTIME` on Linux and Android). A clock
    /// that stops in sleep would show every nap of the tablet as a jump of the wall clock.
    pub mono_ms: u64,
    /// Which boot `mono_ms` belongs to.
    pub boot: BootId,
}

/// Differences below this are reading noise and small steps, in ms. Common practice: a time service corrects
/// silently what is below a second.
const NOISE_MS: i128 = 1_000;
/// A time service may slew the wall clock by at most 0.5 ms a second (ntpd manual, option `-x`: "the slew rate of
/// typical Unix kernels is limited to 0.5 ms/s"), which is 1/2000 of the time gone by.
const SLEW_DIVISOR: i128 = 2_000;

/// How far the wall clock was set between two stamps, in ms: positive when it was set forward.
///
/// `None` when both clocks went on together (within 1 s and 1/2000 of the time between), and always when the
/// stamps are from different boots: then there is nothing to compare with.
pub fn clock_jump(prev: &Stamp, now: &Stamp) -> Option<i64> {
    if prev.boot != now.boot {
        return None;
    }
    let wall = i128::from(now.wall_ms) - i128::from(prev.wall_ms);
    let mono = i128::from(now.mono_ms) - i128::from(prev.mono_ms);
    let jump = wall - mono;
    if jump.abs() <= NOISE_MS + mono.abs() / SLEW_DIVISOR {
        return None;
    }
    // Saturates only for stamps some 290 million years apart.
    Some(i64::try_from(jump).unwrap_or(if jump < 0 { i64::MIN } else { i64::MAX }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use uuid::Uuid;

    fn stamp(boot: u128, wall_ms: i64, mono_ms: u64) -> Stamp {
        Stamp { wall_ms, mono_ms, boot: BootId(Uuid::from_u128(boot)) }
    }

    const HOUR: i64 = 3_600_000;

    #[test]
    fn clocks_that_go_on_together_are_no_jump() {
        let jump = clock_jump(&stamp(1, 1_000_000, 50), &stamp(1, 1_000_000 + HOUR, 50 + HOUR as u64));
        assert_eq!(jump, None);
    }

    #[test]
    fn a_wall_clock_set_a_day_back_is_a_jump_of_minus_a_day() {
        let day = 24 * HOUR;
        assert_eq!(clock_jump(&stamp(1, 0, 0), &stamp(1, 5_000 - day, 5_000)), Some(-day));
        assert_eq!(clock_jump(&stamp(1, 0, 0), &stamp(1, 5_000 + day, 5_000)), Some(day));
    }

    #[test]
    fn slewing_at_the_kernels_limit_is_no_jump_and_twice_that_is() {
        let slewed = HOUR + HOUR / 2_000;
        assert_eq!(clock_jump(&stamp(1, 0, 0), &stamp(1, slewed, HOUR as u64)), None);
        let set = HOUR + HOUR / 1_000;
        assert_eq!(clock_jump(&stamp(1, 0, 0), &stamp(1, set, HOUR as u64)), Some(HOUR / 1_000));
    }

    #[test]
    fn a_boot_between_leaves_nothing_to_compare() {
        assert_eq!(clock_jump(&stamp(1, 0, 0), &stamp(2, 100 * HOUR, 10)), None);
    }

    #[test]
    fn the_farthest_stamps_do_not_overflow() {
        assert_eq!(clock_jump(&stamp(1, i64::MIN, 0), &stamp(1, i64::MAX, 0)), Some(i64::MAX));
        assert_eq!(clock_jump(&stamp(1, i64::MAX, 0), &stamp(1, i64::MIN, u64::MAX)), Some(i64::MIN));
    }
}
