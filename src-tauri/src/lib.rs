//! The window: a thin shell that opens the page of `ui/` and passes its calls to the core.
//!
//! It holds no rule and no sum. The page has no permission of Tauri's own, see `capabilities/default.json`,
//! and may load nothing from outside the program, see the content security policy in `tauri.conf.json`.
//!
//! So there are no inline styles or scripts in the page, and pictures are `blob:` addresses of bytes that the core
//! gave.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "the edge: the program's words, its folders and the lock around the store"
)]

mod backing;
mod commands;
mod desk;
mod message;
mod opened;
mod options;
mod planning;
mod proving;
mod restoring;
mod shelf;
mod shown;
mod table;
mod trouble;
pub mod types;

use panside_bay::way_back::state_folder;
use tauri::Manager;

pub use options::{Options, UnknownOption};

use desk::Desk;
use message::{panside_no_window, speaker};

/// Opens the window and stays until it is closed.
///
/// # Errors
/// Tauri's error when the window can't be opened, for example because there is no display.
pub fn open(options: Options) -> tauri::Result<()> {
    tauri::Builder::default()
        .setup(move |app| {
            let store = match options.store {
                Some(folder) => folder,
                None => app.path().app_data_dir()?.join("bay"),
            };
            // A tablet has no folder for such notes but the app's own.
            let state = match state_folder() {
                Some(folder) => folder,
                None => app.path().app_data_dir()?.join("seen"),
            };
            let desk = Desk::open(store, state, options.demo_clock);
            backing::begin(desk.clone());
            app.manage(desk);
            Ok(())
        })
        .invoke_handler(commands::handler())
        .run(tauri::generate_context!())
}

/// Why the window can't be opened, as a sentence.
#[must_use]
pub fn no_window(error: &tauri::Error) -> String {
    speaker().say(&panside_no_window(error.to_string()))
}

/// What Android and iOS start. They show no error text, so a failure goes to the system's log.
#[cfg_attr(mobile, tauri::mobile_entry_point)]
pub fn start() {
    if let Err(error) = open(Options::default()) {
        eprintln!("{}", no_window(&error));
    }
}
