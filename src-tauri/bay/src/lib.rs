//! The use cases: the one API of window, command line and tests.
