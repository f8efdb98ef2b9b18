//! The real window, driven as a person would: by finding what is seen and tapping it.
//!
//! [`Screen`] holds a screen in memory and the web view's driver; [`Window`] is one window opened on it; [`Job`]
//! walks a script of wishes by tapping. The script stays the single truth of what is done.

mod hand;
mod job;
mod pads;
mod photo;
mod programs;
mod screen;
mod script;
mod times;
mod trouble;
mod words;

pub use hand::{Seen, Window};
pub use job::Job;
pub use photo::demo_photo;
pub use programs::{Programs, folder, root};
pub use screen::Screen;
pub use script::{Line, Script};
pub use times::Times;
pub use trouble::{Result, Trouble};
pub use words::Words;
