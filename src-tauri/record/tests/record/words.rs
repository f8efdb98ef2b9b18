//! Every word of a record is said by a message: none is left that a language would not change.

use std::collections::BTreeSet;
use std::error::Error;
use std::path::{Path, PathBuf};

use panside_messages::testing::{self, unsaid};
use panside_messages::{Language, Speaker};
use panside_record::{Document, Extent, PdfInputs};
use serde_json::Value;

use crate::bay::{Bay, CHECKLIST, SHEET, Tested};
use crate::figures::worked;
use crate::tools::File;

/// Names that are for the program alone.
const NAMES: &[&str] = &["text more", "other letters"];

/// The words of all strings in data, in small letters.
fn words_of(value: &Value, words: &mut BTreeSet<String>) {
    match value {
        Value::String(text) => words.extend(testing::words(text)),
        Value::Array(all) => all.iter().for_each(|one| words_of(one, words)),
        Value::Object(all) => all.values().for_each(|one| words_of(one, words)),
        _ => {}
    }
}

/// Everything that people, checklist and sheet put into the job.
fn data(bay: &Bay, files: [&[u8]; 2]) -> Result<BTreeSet<String>, Box<dyn Error>> {
    let mut words = BTreeSet::new();
    for file in files {
        words_of(&serde_json::from_slice(file)?, &mut words);
    }
    for happened in &bay.job.happened {
        let event = format!("{:?}", happened.event);
        event.split('"').skip(1).step_by(2).for_each(|text| words.extend(testing::words(text)));
    }
    Ok(words)
}

#[test]
fn in_another_language_every_word_that_is_not_the_jobs_own_is_another() -> Tested {
    let speaker = Speaker::of(Language::Accented);
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.close_up();
    let data = data(&bay, [CHECKLIST, SHEET])?;
    let mut inputs = bay.inputs();
    inputs.captions.clear();
    let document = Document::of(&bay.job, &inputs, speaker);
    let pages = |extent| PdfInputs { extent, ..PdfInputs::default() };
    let mut said = vec![
        document.to_text(speaker, Extent::Everything),
        document.to_customer_text(speaker),
        File::new(&document.to_pdf(speaker, &pages(Extent::Everything))?)?.words()?,
        File::new(&document.to_customer_pdf(speaker, &pages(Extent::File))?)?.words()?,
    ];
    said.extend(document.to_csv(speaker).map(|csv| csv.text));
    for text in said {
        assert_eq!(unsaid(&text, &data), BTreeSet::new(), "{text}");
    }
    Ok(())
}

#[test]
fn what_was_measured_is_said_by_messages_too() -> Tested {
    let speaker = Speaker::of(Language::Accented);
    let bay = worked()?;
    let fixtures: [&[u8]; 2] = [crate::figures::CHECKLIST, crate::figures::SHEET];
    let data = data(&bay, fixtures)?;
    let mut document = Document::of(&bay.job, &bay.inputs(), speaker);
    // The job's crate says what does not go by the rules, for whoever looks into it.
    document.disagreements.clear();
    // How values were worked out is said by the trade's crate, and stands where everything is asked for.
    let text = document.to_text(speaker, Extent::File);
    assert_eq!(unsaid(&text, &data), BTreeSet::new(), "{text}");
    Ok(())
}

/// What stands between quotes in code that is no test, without comments.
fn literals(code: &str) -> Vec<String> {
    let code = code.split("#[cfg(test)]").next().unwrap_or_default();
    // What an assertion says is for whoever changes the code.
    let is_code = |line: &&str| !line.trim_start().starts_with("//") && !line.contains("assert!(");
    let lines = code.lines().filter(is_code);
    let mut found = Vec::new();
    for line in lines {
        let line = line.split(" // ").next().unwrap_or_default().replace("\\\"", "'");
        found.extend(line.split('"').skip(1).step_by(2).map(str::to_owned));
    }
    found
}

fn files(dir: &Path, found: &mut Vec<PathBuf>) -> Result<(), Box<dyn Error>> {
    for entry in std::fs::read_dir(dir)? {
        let path = entry?.path();
        if path.is_dir() { files(&path, found)? } else { found.push(path) }
    }
    Ok(())
}

#[test]
fn no_sentence_stands_in_the_code() -> Tested {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut all = Vec::new();
    files(&root, &mut all)?;
    assert!(all.len() > 30, "{} files", all.len());
    for path in all {
        let name = path.strip_prefix(&root)?.to_string_lossy().into_owned();
        for literal in literals(&std::fs::read_to_string(&path)?) {
            let words =
                literal.split(' ').filter(|word| word.len() > 1 && word.chars().all(char::is_alphabetic));
            assert!(words.count() < 2 || NAMES.contains(&literal.as_str()), "{name}: \"{literal}\"");
        }
    }
    Ok(())
}
