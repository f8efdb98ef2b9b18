//! Where a test or a picture is made: a store of its own, a photo, a screen.

use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use crate::window::programs::root;
use crate::window::{Job, Programs, Result, Screen, Trouble, Window, demo_photo};

/// One window at a time is on the machine, so that times are of one window.
static ALONE: Mutex<()> = Mutex::new(());

/// A folder with a store and a photo, and a screen. All of it is gone with the value.
#[derive(Debug)]
pub struct Place {
    programs: Programs,
    screen: Screen,
    folder: tempfile::TempDir,
    photo: PathBuf,
    _alone: MutexGuard<'static, ()>,
}

impl Place {
    /// With the demo job walked so many lines into a new store, the last of them just now.
    ///
    /// # Errors
    /// When something is missing or the walk fails.
    pub fn after(lines: usize) -> Result<Place> {
        let place = Place::empty(None)?;
        place.walk(lines)?;
        Ok(place)
    }

    /// Without a store yet; with another photo than the drawn one, where one is given.
    ///
    /// # Errors
    /// When something is missing.
    pub fn empty(photo: Option<&Path>) -> Result<Place> {
        let alone = ALONE.lock().unwrap_or_else(PoisonError::into_inner);
        let (programs, screen, folder) = (Programs::find()?, Screen::start()?, folder()?);
        let photo = match photo {
            Some(photo) => photo.to_owned(),
            None => folder.path().join("photo.jpg"),
        };
        if !photo.exists() {
            demo_photo(&photo)?;
        }
        Ok(Place { programs, screen, folder, photo, _alone: alone })
    }

    /// Walks the demo job so many lines into the store, the last of them just now.
    ///
    /// # Errors
    /// When the walk fails.
    pub fn walk(&self, lines: usize) -> Result {
        self.programs.walk(&script(), &self.store(), lines, "now", &self.photo)
    }

    /// Walks the whole demo job into another store, its last line at a time (RFC 3339).
    ///
    /// # Errors
    /// When the walk fails.
    pub fn walk_all(&self, store: &Path, until: &str) -> Result {
        self.programs.walk(&script(), store, usize::MAX, until, &self.photo)
    }

    /// Opens the window on the store.
    ///
    /// # Errors
    /// When it does not come up.
    pub fn open(&self) -> Result<Window> {
        self.open_on(&self.screen)
    }

    /// Opens a window on the same store on another screen.
    ///
    /// # Errors
    /// When it does not come up.
    pub fn open_on(&self, screen: &Screen) -> Result<Window> {
        Window::open(screen, &self.programs, &self.store())
    }

    /// A hand that walks the demo job.
    ///
    /// # Errors
    /// When the script can't be read.
    pub fn job(&self) -> Result<Job> {
        Job::new(&script(), &self.photo)
    }

    /// The programs under test.
    #[must_use]
    pub fn programs(&self) -> &Programs {
        &self.programs
    }

    /// The screen with its driver.
    #[must_use]
    pub fn screen(&self) -> &Screen {
        &self.screen
    }

    /// The folder of the store.
    #[must_use]
    pub fn store(&self) -> PathBuf {
        self.path("bay")
    }

    /// The photo for every photo.
    #[must_use]
    pub fn photo(&self) -> &Path {
        &self.photo
    }

    /// A file in the folder.
    #[must_use]
    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Writes a file into the folder.
    ///
    /// # Errors
    /// When the disk fails.
    pub fn write(&self, name: &str, bytes: impl AsRef<[u8]>) -> Result<PathBuf> {
        let path = self.path(name);
        std::fs::write(&path, bytes).map_err(|source| Trouble::File {
            doing: "Writing",
            path: path.clone(),
            source,
        })?;
        Ok(path)
    }
}

/// The script of the demo job.
fn script() -> PathBuf {
    root().join("checklists/demo/demo.walk.json")
}

/// A folder of its own; it is removed with the value.
///
/// # Errors
/// When it can't be made.
pub fn folder() -> Result<tempfile::TempDir> {
    tempfile::tempdir().map_err(|source| Trouble::File {
        doing: "Making a folder in",
        path: std::env::temp_dir(),
        source,
    })
}
