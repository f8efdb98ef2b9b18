//! What an action means: one test for each rule of the checklist format.

mod ends;
mod explain;
mod facts;
mod lapses;
mod moves;
mod order;
mod voided;
mod work;
