//! What a technician would expect of a plan.
