//! Helpers shared by the whole-project tests.
