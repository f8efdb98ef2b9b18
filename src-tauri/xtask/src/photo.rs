//! The photo of the demo job: a real photograph that a Debian package carries. The project has no picture of its own.
//!
//! Package `lomiri-wallpapers-16.04`, file `seeding_by_Clements_Engelhardt.jpg` (dandelion seeds): 5312 x 2988 pixels,
//! licensed CC0-1.0 as the package's copyright file says. The package is unpacked below target/ and not installed.

use std::path::{Path, PathBuf};

use crate::failure::Failure;
use crate::folder;
use crate::packages;
use crate::stage::{call, command};

/// The package that brings the picture.
const PACKAGE: &str = "lomiri-wallpapers-16.04";

/// Where the picture lies in the package.
const PICTURE: &str = "usr/share/backgrounds/seeding_by_Clements_Engelhardt.jpg";

/// Where the package is unpacked.
const PLACE: &str = "target/demo-photo";

/// The path of the photo that the demo job takes, downloaded the first time.
///
/// # Errors
/// When the package can't be downloaded or unpacked; the sentence says what to do instead.
pub fn demo_photo(root: &Path) -> Result<PathBuf, Failure> {
    let place = root.join(PLACE);
    let picture = place.join(PICTURE);
    if picture.is_file() {
        println!("   the photo is there: {PLACE}/{PICTURE}");
        return Ok(picture);
    }
    folder::remove(&place)?;
    folder::create(&place)?;
    let download = || call(command(&place, "apt-get", &["download", "-q", PACKAGE]));
    if download().is_err() {
        // A machine that is new has no lists of packages yet.
        packages::update(root)?;
        download().map_err(|failure| {
            Failure::Machine(format!(
                "The photo of the demo job can't be downloaded: {failure}\nGive another JPEG of your own: \
                 cargo xtask run --photo FILE"
            ))
        })?;
    }
    let package =
        folder::read(&place)?.into_keys().find(|path| path.extension().is_some_and(|end| end == "deb"));
    let package =
        package.ok_or_else(|| Failure::Check(format!("`apt-get download {PACKAGE}` left no file.")))?;
    call(command(&place, "dpkg-deb", &["-x", &*package.to_string_lossy(), "."]))?;
    if picture.is_file() {
        Ok(picture)
    } else {
        Err(Failure::Check(format!("The package {PACKAGE} has no {PICTURE} any more.")))
    }
}
