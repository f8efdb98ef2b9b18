//! What an action means: one test for each rule of the checklist format.

mod ends;
mod explain;
mod facts;
mod lapses;
mod order;
mod vehicle_actions;
mod voided;
mod work;
