//! The real window, driven as a person would: by finding what is seen and tapping it.
//!
//! A [`Place`] has a store of its own and a [`Screen`] in memory with the web view's driver; a [`Window`] is opened on
//! it; a [`Job`] walks a script of commands by tapping. The script stays the single truth of what is done.

mod hand;
mod job;
mod look;
mod pads;
mod photo;
mod place;
mod programs;
mod screen;
mod script;
mod times;
mod trouble;
mod words;

pub use hand::Window;
pub use job::Job;
pub use look::{MainButton, Seen};
pub use photo::demo_photo;
pub use place::Place;
pub use programs::{Programs, run};
pub use screen::Screen;
pub use times::Times;
pub use trouble::{Result, Trouble};
pub use words::Words;
