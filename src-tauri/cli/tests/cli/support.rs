//! Calling the program, and what the tests lay before it.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use image::{ImageFormat, Rgb, RgbImage};
use serde_json::Value;
use tempfile::TempDir;

/// What the program said and how it ended.
pub struct Said {
    pub code: i32,
    pub out: String,
    pub err: String,
}

impl Said {
    pub fn of(output: &Output) -> Said {
        Said {
            code: output.status.code().unwrap_or(-1),
            out: String::from_utf8_lossy(&output.stdout).into_owned(),
            err: String::from_utf8_lossy(&output.stderr).into_owned(),
        }
    }

    /// Says that it ended with this code and said this on the error side.
    pub fn refuses(&self, code: i32, sentence: &str) {
        assert_eq!(self.code, code, "{}\n{}", self.out, self.err);
        assert!(self.err.contains(sentence), "\"{sentence}\" is not in: {}", self.err);
        assert!(!self.err.contains("panicked"), "{}", self.err);
    }
}

/// The program. What it notes of stores outside of them it notes in the folder for tests.
pub fn program() -> Command {
    let mut program = Command::new(env!("CARGO_BIN_EXE_panside-cli"));
    program.env("XDG_STATE_HOME", env!("CARGO_TARGET_TMPDIR"));
    program
}

/// Calls the program.
pub fn cli<S: AsRef<std::ffi::OsStr>>(arguments: &[S]) -> Said {
    Said::of(&program().args(arguments).output().unwrap())
}

/// The project's folder.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").canonicalize().unwrap()
}

/// The checklist of the demo job.
pub fn checklist() -> PathBuf {
    root().join("checklists/pan-and-solenoid.checklist.json")
}

/// That checklist with its parts in place.
pub fn joined() -> Value {
    let said = cli(&["join".as_ref(), checklist().as_os_str()]);
    assert_eq!(said.code, 0, "{}", said.err);
    serde_json::from_str(&said.out).unwrap()
}

/// A folder of its own, with a photo in it.
pub struct Desk {
    pub dir: TempDir,
    size: (u32, u32),
}

impl Desk {
    pub fn new() -> Desk {
        Desk { dir: TempDir::new().unwrap(), size: (1280, 960) }
    }

    /// With a photo of 12 megapixels, as a tablet takes them.
    pub fn with_large_photo() -> Desk {
        Desk { size: (4000, 3000), ..Desk::new() }
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.dir.path().join(name)
    }

    pub fn write(&self, name: &str, bytes: impl AsRef<[u8]>) -> PathBuf {
        let path = self.path(name);
        std::fs::write(&path, bytes).unwrap();
        path
    }

    pub fn photo(&self) -> PathBuf {
        let path = self.path("photo.jpg");
        if !path.exists() {
            let picture = RgbImage::from_fn(self.size.0, self.size.1, |x, y| {
                let shade = |by: u32| (x.wrapping_mul(by) ^ y.wrapping_mul(7)).to_le_bytes()[1];
                Rgb([shade(13), shade(29), shade(31)])
            });
            picture.save_with_format(&path, ImageFormat::Jpeg).unwrap();
        }
        path
    }

    /// Walks a script of the demo folder into the store "bay" of this desk.
    pub fn walk(&self, script: &Path) -> Said {
        cli(&[
            "walk".as_ref(),
            script.as_os_str(),
            "--store".as_ref(),
            self.path("bay").as_os_str(),
            "--record".as_ref(),
            self.path("record.json").as_os_str(),
            "--photo".as_ref(),
            self.photo().as_os_str(),
            "--plain-proof".as_ref(),
        ])
    }

    pub fn record(&self) -> Value {
        serde_json::from_slice(&std::fs::read(self.path("record.json")).unwrap()).unwrap()
    }
}

/// A walk script of the demo folder.
pub fn script(name: &str) -> PathBuf {
    root().join("checklists/demo").join(format!("{name}.walk.json"))
}

/// The JSON of a file.
pub fn json(path: &Path) -> Value {
    serde_json::from_slice(&std::fs::read(path).unwrap()).unwrap()
}
