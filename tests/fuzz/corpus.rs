//! What the cases are made from: the files of this repository.

use std::path::{Path, PathBuf};

use panside_procedure::parts;
use serde_json::Value;

/// A file with its text and what it says.
pub struct File {
    pub name: String,
    pub text: String,
    pub value: Value,
}

/// The files.
pub struct Corpus {
    /// Checklists that use no parts, or have them in place.
    pub whole: Vec<File>,
    /// Checklists that use parts.
    pub using: Vec<File>,
    pub parts: Vec<File>,
    pub sheets: Vec<File>,
    /// Every predicate in them.
    pub predicates: Vec<String>,
    /// Every text in them that is a name or a short word.
    pub words: Vec<String>,
}

impl Corpus {
    /// Reads them, seen from the folder of the whole-project tests.
    ///
    /// # Panics
    /// When one cannot be read: then there is nothing to begin from.
    pub fn read(tests: &Path) -> Corpus {
        let shipped = tests.join("../checklists");
        let using = files(&shipped, ".checklist.json");
        let parts = files(&shipped.join(parts::FOLDER), parts::ENDING);
        let part = |name: &str| {
            let found = parts.iter().find(|part| part.name.strip_suffix(parts::ENDING) == Some(name));
            found.map(|part| part.text.clone().into_bytes())
        };
        let mut whole = files(&tests.join("independent/checklists"), ".json");
        whole.extend(using.iter().map(|file| {
            let joined = parts::join(file.text.as_bytes(), &part);
            file_of(
                file.name.clone(),
                joined.unwrap_or_else(|problems| panic!("{}: {problems}", file.name)).text,
            )
        }));
        let mut corpus = Corpus {
            using,
            sheets: files(&shipped.join("sheets"), ".sheet.json"),
            predicates: Vec::new(),
            words: Vec::new(),
            whole,
            parts,
        };
        let mut texts = Vec::new();
        corpus.whole.iter().chain(&corpus.sheets).for_each(|file| texts_in(&file.value, &mut texts));
        let (predicates, words): (Vec<String>, Vec<String>) =
            texts.into_iter().filter(|text| text.len() < 300).partition(|text| text.contains(" = "));
        corpus.predicates = predicates;
        corpus.words = words.into_iter().filter(|text| text.len() < 30).collect();
        corpus
    }
}

fn files(folder: &Path, ending: &str) -> Vec<File> {
    let entries = std::fs::read_dir(folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
    let mut paths: Vec<PathBuf> = entries.flatten().map(|entry| entry.path()).collect();
    paths.retain(|path| path.to_string_lossy().ends_with(ending));
    paths.sort();
    assert!(!paths.is_empty(), "no file in {} ends in {ending}", folder.display());
    let read = |path: &PathBuf| {
        let text =
            std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        file_of(path.file_name().unwrap_or_default().to_string_lossy().into_owned(), text)
    };
    paths.iter().map(read).collect()
}

fn file_of(name: String, text: String) -> File {
    let value = serde_json::from_str(&text).unwrap_or_else(|error| panic!("{name}: {error}"));
    File { name, text, value }
}

fn texts_in(value: &Value, texts: &mut Vec<String>) {
    match value {
        Value::String(text) => texts.push(text.clone()),
        Value::Array(list) => list.iter().for_each(|value| texts_in(value, texts)),
        Value::Object(fields) => fields.iter().for_each(|(name, value)| {
            texts.push(name.clone());
            texts_in(value, texts);
        }),
        _ => {}
    }
}
