//! The Debian packages that Tauri's window needs to be built and that the tests look at files with, and Node for the
//! page.
//!
//! Missing packages are installed where that needs no question: as root, or where `sudo` asks for no password.
//! Elsewhere the one line to run is printed. A system without `dpkg-query` isn't Debian: there the compiler says
//! what is missing.

use std::io::ErrorKind;
use std::path::Path;
use std::process::Stdio;

use crate::failure::Failure;
use crate::stage::{answer, call, command};

/// What Tauri 2 names as needed on Debian: https://v2.tauri.app/start/prerequisites/ (section Linux), and
/// pkg-config, by which the build finds the libraries.
pub const WINDOW: &[&str] = &[
    "libwebkit2gtk-4.1-dev",
    "libxdo-dev",
    "libssl-dev",
    "libayatana-appindicator3-dev",
    "librsvg2-dev",
    "build-essential",
    "curl",
    "wget",
    "file",
    "pkg-config",
];

/// What the tests look with: poppler and qpdf at the record's pages, and PDFBox Preflight with Java, of whose libraries
/// the last two are not asked for by its package; a screen in memory and the web view's driver at the window; Chromium
/// at each screen; Python's libraries, and SPIN with its C preprocessor (gcc) and a quick C
/// compiler, for a second opinion.
pub const TESTS: &[&str] = &[
    "poppler-utils",
    "qpdf",
    "default-jre-headless",
    "libpdfbox2-java",
    "libfontbox2-java",
    "libcommons-logging-java",
    "libactivation-java",
    "libjaxb-api-java",
    "xvfb",
    "webkit2gtk-driver",
    "chromium",
    "python3-venv",
    "spin",
    "gcc",
    "tcc",
];

/// What the bench compares with and measures by: SPIN with its C compiler, and GNU time.
pub const BENCH: &[&str] = &["spin", "gcc", "time"];

/// The lowest Node that builds the page, as major and minor version: the one that Vite 8 asks for.
const NODE: (u32, u32) = (20, 19);

/// Looks for the Debian packages and installs those that are missing.
///
/// # Errors
/// `Failure::Machine` with the line to run, when they can't be installed from here.
pub fn debian(root: &Path, wanted: &[&str]) -> Result<(), Failure> {
    let Some(listing) = dpkg_listing(root, wanted)? else {
        println!("   no dpkg-query here, so not Debian: packages are not checked.");
        return Ok(());
    };
    let missing = missing(&listing, wanted);
    if missing.is_empty() {
        println!("   all {} packages are installed.", wanted.len());
        return Ok(());
    }
    println!("   missing: {}", missing.join(" "));
    let Some(prefix) = rights(root) else {
        return Err(Failure::Machine(format!(
            "Packages are missing and this user may not install them. Run this line, then try again:\n\
             sudo apt-get update && sudo apt-get install -y {}",
            missing.join(" ")
        )));
    };
    update(root)?;
    let install = [prefix, &["apt-get", "install", "-y", "--no-install-recommends"], &missing].concat();
    call(command(root, "env", &install))
}

/// Fetches the lists of packages, where this user may.
///
/// # Errors
/// `Failure::Machine` with the line to run, when they may not.
pub fn update(root: &Path) -> Result<(), Failure> {
    let Some(prefix) = rights(root) else {
        return Err(Failure::Machine("Run this line, then try again:\nsudo apt-get update".to_owned()));
    };
    call(command(root, "env", &[prefix, &["apt-get", "update"]].concat()))
}

/// The words to put after `env` so that apt-get may install without asking; none when it may not.
fn rights(root: &Path) -> Option<&'static [&'static str]> {
    let quiet = |program: &str, arguments: &[&str]| {
        command(root, program, arguments).stdout(Stdio::piped()).stderr(Stdio::null()).output().ok()
    };
    let is_root = quiet("id", &["-u"]).is_some_and(|output| output.stdout.trim_ascii() == b"0");
    if is_root {
        return Some(&["DEBIAN_FRONTEND=noninteractive"]);
    }
    let may_sudo = quiet("sudo", &["-n", "true"]).is_some_and(|output| output.status.success());
    may_sudo.then_some(&["sudo", "-n", "DEBIAN_FRONTEND=noninteractive"])
}

/// What dpkg-query knows about the packages; none when there is no dpkg-query. Its exit code is 1 as soon as one
/// package is unknown, so it isn't looked at.
fn dpkg_listing(root: &Path, wanted: &[&str]) -> Result<Option<String>, Failure> {
    let form = "--showformat=${Package}\\t${db:Status-Status}\\n";
    let arguments = [&["--show", form], wanted].concat();
    let mut query = command(root, "dpkg-query", &arguments);
    match query.stderr(Stdio::null()).output() {
        Ok(output) => Ok(Some(String::from_utf8_lossy(&output.stdout).into_owned())),
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(None),
        Err(source) => Err(Failure::Start { line: "dpkg-query --show".into(), source }),
    }
}

/// Those of `wanted` that `listing` doesn't show as installed. A line is a package name, a tab and its state; a
/// package that was removed but keeps its settings is listed too, with another state.
fn missing<'a>(listing: &str, wanted: &[&'a str]) -> Vec<&'a str> {
    let installed = |name: &str| {
        listing.lines().filter_map(|line| line.split_once('\t')).any(|line| line == (name, "installed"))
    };
    wanted.iter().copied().filter(|name| !installed(name)).collect()
}

/// Checks that Node is there and new enough.
///
/// # Errors
/// `Failure::Machine` with the version that is needed.
pub fn node(root: &Path) -> Result<(), Failure> {
    let (major, minor) = NODE;
    let needs = format!("The page needs Node {major}.{minor} or newer");
    let version = answer(command(root, "node", &["--version"])).map_err(|failure| {
        Failure::Machine(format!("{needs}, and none was found: {failure}\nInstall it, then try again."))
    })?;
    let version = version.trim();
    match parse_node(version) {
        Some(found) if found >= NODE => {
            println!("   Node {version}.");
            Ok(())
        }
        _ => Err(Failure::Machine(format!("{needs}; `node --version` says {version}. Install a newer one."))),
    }
}

/// Major and minor number of a version such as `v20.20.2`.
fn parse_node(version: &str) -> Option<(u32, u32)> {
    let mut numbers = version.strip_prefix('v')?.split('.');
    Some((numbers.next()?.parse().ok()?, numbers.next()?.parse().ok()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_package_counts_as_there_only_when_it_is_installed() {
        let listing = "curl\tinstalled\nwget\tconfig-files\nlibssl-dev\tnot-installed\n";
        assert_eq!(missing(listing, &["curl", "wget", "libssl-dev", "file"]), ["wget", "libssl-dev", "file"]);
    }

    #[test]
    fn a_name_that_is_only_the_start_of_another_is_not_taken_for_it() {
        assert_eq!(missing("libssl-dev-extra\tinstalled\n", &["libssl-dev"]), ["libssl-dev"]);
    }

    #[test]
    fn an_empty_listing_means_that_all_are_missing() {
        assert_eq!(missing("", WINDOW), WINDOW);
    }

    #[test]
    fn node_versions_are_compared_as_numbers() {
        assert_eq!(parse_node("v20.20.2"), Some((20, 20)));
        assert!(parse_node("v9.30.0") < Some(NODE));
        assert!(parse_node("v20.9.0") < Some(NODE));
        assert!(parse_node("v24.0.0") >= Some(NODE));
        assert_eq!(parse_node("twenty"), None);
    }
}
