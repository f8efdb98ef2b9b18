//! Numbers of the trade: pure functions, no I/O, no clock.
