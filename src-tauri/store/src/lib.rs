//! SQLite and photo files: all disk I/O, no rule.
