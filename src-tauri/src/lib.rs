//! The window: a thin shell that opens the page of `ui/` and passes its calls to the core.
//!
//! It holds no rule and no sum. The page has no permission of Tauri's own, see `capabilities/default.json`,
//! and may load nothing from outside the program, see the content security policy in `tauri.conf.json`.

/// Opens the window and stays until it is closed.
///
/// # Errors
/// Tauri's error when the window can't be opened, for example because there is no display.
pub fn open() -> tauri::Result<()> {
    tauri::Builder::default().run(tauri::generate_context!())
}

/// What Android and iOS start. They show no error text, so a failure goes to the system's log.
#[cfg_attr(mobile, tauri::mobile_entry_point)]
pub fn start() {
    if let Err(error) = open() {
        eprintln!("Panside can't open its window: {error}");
    }
}
