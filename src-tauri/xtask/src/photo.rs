//! The photo of the demo job.
//!
//! The project carries no picture of its own. Until the demo has a picture of the trade, it takes the small
//! JPEG with camera data that the crate `kamadak-exif` brings for its tests.

use std::path::{Path, PathBuf};

use serde_json::Value;

use crate::failure::Failure;
use crate::stage::{answer, command};

/// The crate that brings the picture.
const CRATE: &str = "kamadak-exif";

/// Where the picture lies in that crate.
const PICTURE: &str = "tests/exif.jpg";

/// The path of a JPEG file that the demo job adds as a photo.
///
/// # Errors
/// When the workspace doesn't depend on the crate, or its folder lacks the picture.
pub fn demo_photo(root: &Path) -> Result<PathBuf, Failure> {
    // Without a platform, cargo would fetch the crates of all platforms to describe them.
    let rustc = answer(command(root, "rustc", &["-vV"]))?;
    let platform = host(&rustc).ok_or_else(|| {
        Failure::Check("`rustc -vV` names no host platform, so the demo photo can't be found.".into())
    })?;
    let metadata = ["metadata", "--format-version", "1", "--filter-platform", platform];
    let json = answer(command(root, "cargo", &metadata))?;
    let photo = crate_folder(&json, CRATE).map(|folder| folder.join(PICTURE)).ok_or_else(|| {
        Failure::Check(format!("The workspace doesn't depend on {CRATE}, which brings the demo photo."))
    })?;
    if photo.is_file() {
        Ok(photo)
    } else {
        Err(Failure::Check(format!("The demo photo {} is not there.", photo.display())))
    }
}

/// The host platform in the answer of `rustc -vV`.
fn host(rustc: &str) -> Option<&str> {
    rustc.lines().find_map(|line| line.strip_prefix("host: "))
}

/// The folder of the crate `name`, from the answer of `cargo metadata`.
fn crate_folder(metadata: &str, name: &str) -> Option<PathBuf> {
    let metadata: Value = serde_json::from_str(metadata).ok()?;
    let package = metadata.get("packages")?.as_array()?.iter().find(|package| package["name"] == name)?;
    Path::new(package.get("manifest_path")?.as_str()?).parent().map(Path::to_path_buf)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_host_is_read_from_what_rustc_says() {
        let said = "rustc 1.95.0\nbinary: rustc\nhost: x86_64-unknown-linux-gnu\nrelease: 1.95.0\n";
        assert_eq!(host(said), Some("x86_64-unknown-linux-gnu"));
        assert_eq!(host("rustc 1.95.0"), None);
    }

    #[test]
    fn a_crate_is_found_by_its_exact_name() {
        let metadata = r#"{"packages":[
            {"name":"exif-other","manifest_path":"/registry/exif-other-1.0.0/Cargo.toml"},
            {"name":"exif","manifest_path":"/registry/exif-2.0.0/Cargo.toml"}]}"#;
        assert_eq!(crate_folder(metadata, "exif"), Some(PathBuf::from("/registry/exif-2.0.0")));
        assert_eq!(crate_folder(metadata, "kamadak"), None);
        assert_eq!(crate_folder("no json", "exif"), None);
    }
}
