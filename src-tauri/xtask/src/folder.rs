//! Folders as values: reading one, comparing two, and making one equal to another while leaving alone the files
//! that are equal already, so that nothing is built again for a new date alone.

use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use crate::failure::Failure;

/// The files of a folder: path inside it and content.
pub type Files = BTreeMap<PathBuf, Vec<u8>>;

/// How a file of a folder differs from the one that is wanted.
#[derive(Debug, PartialEq, Eq)]
pub enum Difference<'a> {
    /// Wanted but not there.
    Missing(&'a Path),
    /// There, with another content.
    Changed(&'a Path),
    /// There but not wanted.
    Extra(&'a Path),
}

/// Reads all files below `folder`. A folder that does not exist has no files.
///
/// # Errors
/// When something in it can't be read.
pub fn read(folder: &Path) -> Result<Files, Failure> {
    let mut files = Files::new();
    let mut open = vec![folder.to_path_buf()];
    while let Some(at) = open.pop() {
        let entries = match fs::read_dir(&at) {
            Err(error) if error.kind() == io::ErrorKind::NotFound && at == folder => continue,
            entries => entries.map_err(|source| file_failure("Reading the folder", &at, source))?,
        };
        for entry in entries {
            let path = entry.map_err(|source| file_failure("Reading the folder", &at, source))?.path();
            if path.is_dir() {
                open.push(path);
            } else {
                let bytes = fs::read(&path).map_err(|source| file_failure("Reading", &path, source))?;
                let inside = path.strip_prefix(folder).unwrap_or(&path).to_path_buf();
                files.insert(inside, bytes);
            }
        }
    }
    Ok(files)
}

/// What has to be done to `there` so that it equals `wanted`, sorted by kind and then by path.
pub fn differences<'a>(wanted: &'a Files, there: &'a Files) -> Vec<Difference<'a>> {
    let missing =
        wanted.keys().filter(|path| !there.contains_key(*path)).map(|path| Difference::Missing(path));
    let changed = wanted
        .iter()
        .filter(|(path, bytes)| there.get(*path).is_some_and(|other| other != *bytes))
        .map(|(path, _)| Difference::Changed(path));
    let extra = there.keys().filter(|path| !wanted.contains_key(*path)).map(|path| Difference::Extra(path));
    missing.chain(changed).chain(extra).collect()
}

/// Makes `folder` hold exactly the files `wanted` and returns how many files it wrote or removed. Files that are
/// equal already keep their date.
///
/// # Errors
/// When something can't be read, written or removed.
pub fn make_equal(wanted: &Files, folder: &Path) -> Result<usize, Failure> {
    let there = read(folder)?;
    let differences = differences(wanted, &there);
    for difference in &differences {
        match difference {
            Difference::Missing(inside) | Difference::Changed(inside) => {
                write(&folder.join(inside), wanted.get(*inside).map_or(&[], Vec::as_slice))?;
            }
            Difference::Extra(inside) => {
                let path = folder.join(inside);
                fs::remove_file(&path).map_err(|source| file_failure("Removing", &path, source))?;
            }
        }
    }
    Ok(differences.len())
}

/// Removes a folder with all that is in it, if it is there.
///
/// # Errors
/// When it can't be removed.
pub fn remove(folder: &Path) -> Result<(), Failure> {
    match fs::remove_dir_all(folder) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => {
            Err(file_failure("Removing the folder", folder, error))
        }
        _ => Ok(()),
    }
}

/// Makes a folder, with those above it.
///
/// # Errors
/// When it can't be made.
pub fn create(folder: &Path) -> Result<(), Failure> {
    fs::create_dir_all(folder).map_err(|source| file_failure("Making the folder", folder, source))
}

/// Writes a file, and the folder it lies in.
///
/// # Errors
/// When it can't be written.
pub fn write(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    if let Some(folder) = path.parent() {
        create(folder)?;
    }
    fs::write(path, bytes).map_err(|source| file_failure("Writing", path, source))
}

fn file_failure(doing: &'static str, path: &Path, source: io::Error) -> Failure {
    Failure::File { doing, path: path.to_path_buf(), source }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files(list: &[(&str, &str)]) -> Files {
        list.iter().map(|(path, text)| (PathBuf::from(path), text.as_bytes().to_vec())).collect()
    }

    #[test]
    fn missing_changed_and_extra_files_are_told_apart() {
        let wanted = files(&[("a", "1"), ("b", "2"), ("c", "3")]);
        let there = files(&[("a", "1"), ("b", "two"), ("d", "4")]);
        assert_eq!(
            differences(&wanted, &there),
            [
                Difference::Missing(Path::new("c")),
                Difference::Changed(Path::new("b")),
                Difference::Extra(Path::new("d")),
            ]
        );
        assert!(differences(&wanted, &wanted).is_empty());
    }

    #[test]
    fn a_folder_made_equal_has_exactly_the_wanted_files_and_equal_ones_keep_their_date()
    -> Result<(), Box<dyn std::error::Error>> {
        let folder = std::env::temp_dir().join(format!("panside-xtask-{}", std::process::id()));
        remove(&folder)?;
        make_equal(&files(&[("deep/a", "1"), ("b", "old"), ("gone", "x")]), &folder)?;
        let date = fs::metadata(folder.join("deep/a"))?.modified()?;
        let wanted = files(&[("deep/a", "1"), ("b", "new"), ("c", "3")]);
        assert_eq!(make_equal(&wanted, &folder)?, 3, "b is written, c is written, gone is removed");
        assert_eq!(read(&folder)?, wanted);
        assert_eq!(fs::metadata(folder.join("deep/a"))?.modified()?, date);
        assert_eq!(make_equal(&wanted, &folder)?, 0);
        remove(&folder)?;
        assert!(read(&folder)?.is_empty());
        Ok(())
    }
}
