//! The device's clocks, and one that is set by hand for scripts and tests.
//!
//! The window's demo clock (`--demo-clock`, given by `cargo xtask run` only) lets minutes pass, so that a demo job can
//! be walked without waiting for exhausts to cool. How far it is ahead is kept; it never goes back.

use std::sync::atomic::{AtomicI64, Ordering};
use std::time::Instant;

use panside_journal::{BootId, Stamp};
use uuid::Uuid;

use crate::enter::request_named;

/// Tells both clocks.
pub trait Clock: Send {
    /// Now.
    fn now(&self) -> Stamp;
}

/// The clocks of the device.
///
/// On Linux and Android the monotonic one is `/proc/uptime`, which counts sleep, and the boot is the kernel's
/// `boot_id`. Elsewhere each start of the program counts as a boot of its own, so that times of two starts are
/// compared by the wall clock only.
#[derive(Debug)]
pub struct SystemClock {
    boot: BootId,
    started: Instant,
    counts_sleep: bool,
}

impl SystemClock {
    /// Looks which boot this is.
    #[must_use]
    pub fn new() -> Self {
        let kernel = std::fs::read_to_string("/proc/sys/kernel/random/boot_id")
            .ok()
            .and_then(|text| text.trim().parse::<Uuid>().ok());
        let boot = BootId(kernel.unwrap_or_else(Uuid::now_v7));
        SystemClock { boot, started: Instant::now(), counts_sleep: kernel.is_some() }
    }

    fn mono_ms(&self) -> u64 {
        let uptime = || {
            let text = std::fs::read_to_string("/proc/uptime").ok()?;
            let (seconds, hundredths) = text.split_whitespace().next()?.split_once('.')?;
            Some(seconds.parse::<u64>().ok()? * 1000 + hundredths.parse::<u64>().ok()? * 10)
        };
        let since_start = || u64::try_from(self.started.elapsed().as_millis()).unwrap_or(u64::MAX);
        if self.counts_sleep { uptime().unwrap_or_else(since_start) } else { since_start() }
    }
}

impl Default for SystemClock {
    fn default() -> Self {
        Self::new()
    }
}

impl Clock for SystemClock {
    fn now(&self) -> Stamp {
        Stamp { wall_ms: chrono::Utc::now().timestamp_millis(), mono_ms: self.mono_ms(), boot: self.boot }
    }
}

/// A clock that goes on only when told to.
#[derive(Debug)]
pub struct ManualClock {
    began: Stamp,
    passed_ms: AtomicI64,
}

impl ManualClock {
    /// Stands at a wall time in milliseconds since 1970 UTC, at the beginning of a boot of its own.
    #[must_use]
    pub fn at(wall_ms: i64) -> Self {
        Self::from(Stamp { wall_ms, mono_ms: 0, boot: BootId(Uuid::now_v7()) })
    }

    /// The same at the beginning of a boot that follows from a name: clocks of one name are of one boot.
    #[must_use]
    pub fn named(wall_ms: i64, name: &str) -> Self {
        Self::from(Stamp { wall_ms, mono_ms: 0, boot: BootId(request_named(name).0) })
    }

    /// Stands at an earlier wall time of the boot that a device is in; nothing where that began later.
    #[must_use]
    pub fn earlier(device: &Stamp, wall_ms: i64) -> Option<Self> {
        let before = u64::try_from(device.wall_ms.checked_sub(wall_ms)?).ok()?;
        let mono_ms = device.mono_ms.checked_sub(before)?;
        Some(Self::from(Stamp { wall_ms, mono_ms, boot: device.boot }))
    }

    /// Goes on by so many milliseconds; backwards is not possible.
    pub fn advance_ms(&self, by: u32) {
        self.passed_ms.fetch_add(i64::from(by), Ordering::Relaxed);
    }
}

impl Clock for ManualClock {
    fn now(&self) -> Stamp {
        let passed = self.passed_ms.load(Ordering::Relaxed);
        let Stamp { wall_ms, mono_ms, boot } = self.began;
        Stamp { wall_ms: wall_ms + passed, mono_ms: mono_ms + passed.unsigned_abs(), boot }
    }
}

impl From<Stamp> for ManualClock {
    fn from(began: Stamp) -> Self {
        ManualClock { began, passed_ms: AtomicI64::new(0) }
    }
}

/// The device's clocks, ahead by what was let pass: for looking at a demo job without waiting for it.
#[derive(Debug, Default)]
pub struct DemoClock {
    device: SystemClock,
    ahead_ms: AtomicI64,
}

impl DemoClock {
    /// How far it is ahead.
    #[must_use]
    pub fn ahead_ms(&self) -> i64 {
        self.ahead_ms.load(Ordering::Relaxed)
    }

    /// Goes on from where an earlier start of the program left it.
    pub fn set_ahead_ms(&self, ahead: i64) {
        self.ahead_ms.store(ahead, Ordering::Relaxed);
    }

    /// Lets so many milliseconds pass; backwards is not possible.
    pub fn let_pass_ms(&self, by: u32) {
        self.ahead_ms.fetch_add(i64::from(by), Ordering::Relaxed);
    }
}

impl Clock for DemoClock {
    fn now(&self) -> Stamp {
        let (device, ahead) = (self.device.now(), self.ahead_ms());
        let mono_ms = device.mono_ms.saturating_add(ahead.unsigned_abs());
        Stamp { wall_ms: device.wall_ms.saturating_add(ahead), mono_ms, boot: device.boot }
    }
}

impl<C: Clock + Sync> Clock for std::sync::Arc<C> {
    fn now(&self) -> Stamp {
        C::now(self)
    }
}

/// Minutes that the device's wall clock is ahead of UTC now.
#[must_use]
pub fn utc_offset_min() -> i32 {
    chrono::Local::now().offset().local_minus_utc() / 60
}

/// Milliseconds since 1970 of a time as RFC 3339 writes it.
#[must_use]
pub fn parse_time(text: &str) -> Option<i64> {
    chrono::DateTime::parse_from_rfc3339(text).ok().map(|time| time.timestamp_millis())
}

/// Hours and minutes of a stamp, by a wall clock so many minutes ahead of UTC.
#[must_use]
pub fn time_of_day(stamp: &Stamp, utc_offset_min: i32) -> String {
    let local = stamp.wall_ms + i64::from(utc_offset_min) * 60_000;
    chrono::DateTime::from_timestamp_millis(local)
        .map_or_else(|| "--:--".to_owned(), |time| time.format("%H:%M").to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_device_clocks_go_on_within_one_boot() {
        let clock = SystemClock::new();
        let first = clock.now();
        let second = clock.now();
        assert_eq!(first.boot, second.boot);
        assert!(second.mono_ms >= first.mono_ms);
    }

    #[test]
    fn the_wall_clock_counts_milliseconds_since_1970() {
        let unix = || std::time::UNIX_EPOCH.elapsed().map_or(0, |since| since.as_millis() as i64);
        let (before, told, after) = (unix(), SystemClock::new().now().wall_ms, unix());
        assert!((before..=after).contains(&told), "{before} {told} {after}");
    }

    #[test]
    fn a_clock_set_by_hand_stands_until_told() {
        let clock = ManualClock::at(1000);
        clock.advance_ms(250);
        assert_eq!((clock.now().wall_ms, clock.now().mono_ms), (1250, 250));
    }

    #[test]
    fn clocks_of_one_name_are_of_one_boot() {
        assert_eq!(ManualClock::named(0, "walk").now().boot, ManualClock::named(9, "walk").now().boot);
        assert_ne!(ManualClock::named(0, "walk").now().boot, ManualClock::named(0, "other").now().boot);
    }

    #[test]
    fn an_earlier_time_is_of_the_same_boot_unless_that_had_not_begun() {
        let device = Stamp { wall_ms: 10_000, mono_ms: 600, boot: BootId(Uuid::nil()) };
        let at = |wall_ms| ManualClock::earlier(&device, wall_ms).map(|clock| clock.now());
        assert_eq!(at(9_500), Some(Stamp { wall_ms: 9_500, mono_ms: 100, ..device }));
        assert_eq!(at(9_399), None, "it booted at 9,400");
        assert_eq!(at(10_001), None, "that is still to come");
    }
}
