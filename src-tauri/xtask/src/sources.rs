//! Where everything comes from that is built upon, and under which licence: the crates of Cargo.lock and the packages of
//! ui/package-lock.json. Nothing is fetched for it.
//!
//! Every crate of the lock file is looked at for where it comes from; licences are those of the crates that are built on
//! this system. Of what was found wrong in a release nothing is known here: that list is on the net only.

use std::path::Path;

use serde_json::Value;

use crate::failure::Failure;
use crate::licence::is_met;
use crate::stage::{answer, command};

/// What `source` says of a crate from the public registry. One of ours has none.
const CRATES_IO: &str = "registry+https://github.com/rust-lang/crates.io-index";

/// How `resolved` of a package begins. npm leaves it out for its own registry.
const NPM: &str = "https://registry.npmjs.org/";

const FILES_ONLY: &str = "its terms stay with its own files, which are used as they are";

/// A licence that is taken from one package only, and why.
const EXCEPTIONS: [(&str, &str, &str); 10] = [
    ("cssparser", "MPL-2.0", FILES_ONLY),
    ("cssparser-macros", "MPL-2.0", FILES_ONLY),
    ("dtoa-short", "MPL-2.0", FILES_ONLY),
    ("option-ext", "MPL-2.0", FILES_ONLY),
    ("selectors", "MPL-2.0", FILES_ONLY),
    ("webdriver", "MPL-2.0", FILES_ONLY),
    ("axe-core", "MPL-2.0", FILES_ONLY),
    ("lightningcss", "MPL-2.0", FILES_ONLY),
    ("jpeg-encoder", "IJG", "it asks for a sentence, which the README has"),
    ("@fontsource/atkinson-hyperlegible", "OFL-1.1", "a typeface: it may be bundled, not sold by itself"),
];

/// A package as its lock file, or its own description, states it.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Package {
    name: String,
    /// What is wrong with where it comes from.
    source: Option<String>,
    /// Its licence; nothing where it is not looked at.
    licence: Option<String>,
}

/// Looks at every package.
///
/// # Errors
/// `Failure::Check` with every package whose source or licence is not taken; when a lock file can't be read.
pub fn check(root: &Path) -> Result<(), Failure> {
    let lock = read(&root.join("Cargo.lock"))?;
    let packages = [crates(&lock), licences_of_crates(root)?, packages(&root.join("ui"))?].concat();
    let wrong = wrong(&packages);
    if wrong.is_empty() {
        let licences = packages.iter().filter(|package| package.licence.is_some()).count();
        println!("   all come from crates.io or npm's registry; {licences} licences are taken.");
        return Ok(());
    }
    let mends = "Take another package, or add it to EXCEPTIONS in xtask/src/sources.rs with the reason.";
    Err(Failure::Check(format!("{}\n{mends}", wrong.join("\n"))))
}

/// A sentence for each package that is not taken, and for each exception that nothing needs any more.
fn wrong(packages: &[Package]) -> Vec<String> {
    let sources = packages.iter().filter_map(|package| package.source.clone());
    let licences = packages.iter().filter_map(|package| {
        let (name, licence) = (&package.name, package.licence.as_ref()?);
        match is_met(licence, exception(name).map(|(_, licence, _)| *licence)) {
            Some(true) => None,
            Some(false) => Some(format!("{name} is under \"{licence}\", which is not taken.")),
            None => Some(format!("{name} is under \"{licence}\", which can't be read.")),
        }
    });
    let needs = |name: &str| {
        packages.iter().any(|package| {
            package.name == name
                && package.licence.as_ref().is_some_and(|one| is_met(one, None) == Some(false))
        })
    };
    let idle = EXCEPTIONS.iter().filter(|(name, ..)| !needs(name));
    let idle = idle.map(|(name, licence, _)| format!("Nothing needs the exception for {name} ({licence})."));
    sources.chain(licences).chain(idle).collect()
}

/// The exception for a package. Its builds for single systems are named after it.
fn exception(name: &str) -> Option<&'static (&'static str, &'static str, &'static str)> {
    EXCEPTIONS.iter().find(|(package, ..)| name == *package || builds_of(package, name))
}

fn builds_of(package: &str, name: &str) -> bool {
    const SYSTEMS: [&str; 5] = ["-android-", "-darwin-", "-freebsd-", "-linux-", "-win32-"];
    name.strip_prefix(package).is_some_and(|rest| SYSTEMS.iter().any(|system| rest.starts_with(system)))
}

/// Where the crates of a lock file come from.
fn crates(lock: &str) -> Vec<Package> {
    let blocks = lock.split("[[package]]").skip(1);
    let packages = blocks.map(|block| {
        let says = |key: &str| {
            let line = block.lines().find_map(|line| line.strip_prefix(key)?.strip_prefix(" = \""));
            line.map(|value| value.trim_end_matches('"').to_owned())
        };
        let name = says("name").unwrap_or_default();
        let source = match (says("source").as_deref(), says("checksum")) {
            (Some(CRATES_IO), Some(_)) => None,
            (None, _) if name.starts_with("panside") || name == "xtask" => None,
            (from, _) => Some(format!("{name} comes from {}.", from.unwrap_or("a folder"))),
        };
        Package { name, source, licence: None }
    });
    packages.collect()
}

/// What the crates that are built on this system say of their licence.
fn licences_of_crates(root: &Path) -> Result<Vec<Package>, Failure> {
    let version = answer(command(root, "rustc", &["-vV"]))?;
    let host = version.lines().find_map(|line| line.strip_prefix("host: ")).unwrap_or_default();
    let words = ["metadata", "--format-version", "1", "--offline", "--locked", "--filter-platform", host];
    let metadata = parsed("cargo metadata", &answer(command(root, "cargo", &words))?)?;
    let all = metadata["packages"].as_array().map_or(&[][..], Vec::as_slice);
    Ok(all.iter().map(|one| package(text(&one["name"]), None, text(&one["license"]))).collect())
}

/// The packages of the page: by their own description where they are installed, else by the lock file, which has those
/// for other systems too.
fn packages(ui: &Path) -> Result<Vec<Package>, Failure> {
    let lock = parsed("ui/package-lock.json", &read(&ui.join("package-lock.json"))?)?;
    let all = lock["packages"].as_object().into_iter().flatten().filter(|(place, _)| !place.is_empty());
    let packages = all.map(|(place, locked)| {
        let installed = ui.join(place).join("package.json");
        let own = if installed.is_file() { parsed(place, &read(&installed)?)? } else { locked.clone() };
        let name = place.rsplit("node_modules/").next().unwrap_or(place);
        Ok(package(name, elsewhere(name, locked), text(&own["license"])))
    });
    packages.collect()
}

/// What is wrong with where a package of the page comes from.
fn elsewhere(name: &str, locked: &Value) -> Option<String> {
    let resolved = locked["resolved"].as_str();
    let at_home = resolved.is_none_or(|from| from.starts_with(NPM)) && locked["link"] != true;
    if at_home && locked["integrity"].is_string() {
        return None;
    }
    Some(format!("{name} comes from {}.", resolved.unwrap_or("nobody knows where: it has no integrity")))
}

fn package(name: &str, source: Option<String>, licence: &str) -> Package {
    Package { name: name.to_owned(), source, licence: Some(licence.to_owned()) }
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap_or_default()
}

fn read(path: &Path) -> Result<String, Failure> {
    std::fs::read_to_string(path).map_err(|source| Failure::File {
        doing: "Reading",
        path: path.to_owned(),
        source,
    })
}

fn parsed(what: &str, json: &str) -> Result<Value, Failure> {
    serde_json::from_str(json)
        .map_err(|error| Failure::Check(format!("What {what} says is no JSON: {error}.")))
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    /// Every exception with a package that needs it.
    fn needed() -> Vec<Package> {
        EXCEPTIONS.iter().map(|(name, licence, _)| package(name, None, licence)).collect()
    }

    #[test]
    fn a_crate_from_a_git_repository_or_a_strange_folder_is_told() {
        let lock = format!(
            "version = 4\n\n[[package]]\nname = \"good\"\nversion = \"1.0.0\"\nsource = \"{CRATES_IO}\"\n\
             checksum = \"ab\"\n\n[[package]]\nname = \"panside-job\"\nversion = \"0.1.0\"\n\n[[package]]\n\
             name = \"forked\"\nversion = \"1.0.0\"\nsource = \"git+https://example.org/forked#ab\"\n\n\
             [[package]]\nname = \"beside\"\nversion = \"1.0.0\"\n"
        );
        let told: Vec<String> = crates(&lock).into_iter().filter_map(|package| package.source).collect();
        assert_eq!(
            told,
            ["forked comes from git+https://example.org/forked#ab.", "beside comes from a folder."]
        );
    }

    #[test]
    fn a_package_of_the_page_from_elsewhere_is_told() {
        let sum = "sha512-ab";
        assert_eq!(elsewhere("a", &json!({ "integrity": sum })), None);
        assert_eq!(elsewhere("a", &json!({ "integrity": sum, "resolved": format!("{NPM}a/-/a.tgz") })), None);
        for strange in [
            json!({}),
            json!({ "integrity": sum, "resolved": "https://example.org/a.tgz" }),
            json!({ "resolved": "git+ssh://git@example.org/a.git#ab" }),
            json!({ "resolved": "../a", "link": true, "integrity": sum }),
        ] {
            assert!(elsewhere("a", &strange).is_some(), "{strange}");
        }
    }

    #[test]
    fn a_licence_is_told_unless_it_is_taken_or_the_package_is_an_exception() {
        assert_eq!(wrong(&needed()), Vec::<String>::new());
        let more = [package("copied", None, "GPL-3.0-only"), package("silent", None, "")];
        let told = wrong(&[needed(), more.to_vec()].concat());
        assert_eq!(told.len(), 2, "{told:?}");
        let other = package("not-an-exception", None, "MPL-2.0");
        assert_eq!(wrong(&[needed(), vec![other]].concat()).len(), 1, "an exception is for one package");
        let build = package("lightningcss-linux-x64-gnu", None, "MPL-2.0");
        assert_eq!(wrong(&[needed(), vec![build]].concat()), Vec::<String>::new());
    }

    #[test]
    fn an_exception_that_nothing_needs_is_told() {
        let told = wrong(&needed()[1..]);
        assert_eq!(told, ["Nothing needs the exception for cssparser (MPL-2.0)."]);
    }
}
