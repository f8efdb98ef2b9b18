//! Programs that no one here wrote, called on a file. One that is not installed fails the test: what was not looked at
//! was not checked.

use std::error::Error;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use serde_json::Value;
use tempfile::TempDir;

type Answer<T> = Result<T, Box<dyn Error>>;

/// Where Debian's packages put the programs of Java.
const JAVA: &str = "/usr/share/java";
/// What Preflight needs. The last two are not among what its package asks for.
const JARS: &[&str] =
    &["preflight", "pdfbox2", "xmpbox", "fontbox2", "commons-logging", "javax.activation", "jaxb-api"];

/// A PDF on disk.
pub struct File {
    dir: TempDir,
}

impl File {
    pub fn new(bytes: &[u8]) -> Answer<File> {
        let dir = TempDir::new()?;
        std::fs::write(dir.path().join("record.pdf"), bytes)?;
        Ok(File { dir })
    }

    fn path(&self) -> PathBuf {
        self.dir.path().join("record.pdf")
    }

    /// The words of each page, laid out as on the page.
    pub fn pages(&self) -> Answer<Vec<String>> {
        let output = call("pdftotext", &[Path::new("-layout"), &self.path(), Path::new("-")])?;
        let text = String::from_utf8(said(&output)?)?;
        // A form feed ends each page.
        Ok(text.trim_end_matches('\u{c}').split('\u{c}').map(str::to_owned).collect())
    }

    /// All words, with one blank for each stretch of blanks.
    pub fn words(&self) -> Answer<String> {
        let output = call("pdftotext", &[&self.path(), Path::new("-")])?;
        let text = String::from_utf8(said(&output)?)?;
        Ok(text.split_whitespace().collect::<Vec<_>>().join(" "))
    }

    /// Left and right end of every word, in points.
    pub fn word_ends(&self) -> Answer<Vec<(f64, f64)>> {
        let output = call("pdftotext", &[Path::new("-bbox"), &self.path(), Path::new("-")])?;
        let text = String::from_utf8(said(&output)?)?;
        let number = |line: &str, name: &str| -> Option<f64> {
            line.split_once(&format!("{name}=\""))?.1.split_once('"')?.0.parse().ok()
        };
        let words = text.lines().filter(|line| line.trim_start().starts_with("<word"));
        let ends: Vec<_> =
            words.filter_map(|line| Some((number(line, "xMin")?, number(line, "xMax")?))).collect();
        if ends.is_empty() { Err("pdftotext found no word".into()) } else { Ok(ends) }
    }

    /// The bytes of the first attachment.
    pub fn attached(&self) -> Answer<Vec<u8>> {
        let out = self.dir.path().join("attached");
        let arguments = [Path::new("-save"), Path::new("1"), Path::new("-o"), &out, &self.path()];
        said(&call("pdfdetach", &arguments)?)?;
        Ok(std::fs::read(out)?)
    }

    /// What qpdf finds wrong; empty for a sound file.
    pub fn qpdf_check(&self) -> Answer<String> {
        let output = call("qpdf", &[Path::new("--check"), &self.path()])?;
        let text =
            format!("{}{}", String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr));
        let is_sound = output.status.success() && text.contains("No syntax or stream encoding errors found");
        Ok(if is_sound && !text.contains("WARNING") { String::new() } else { text })
    }

    /// Every object of the file, by what others call it.
    pub fn objects(&self) -> Answer<serde_json::Map<String, Value>> {
        let output = call("qpdf", &[Path::new("--json=2"), Path::new("--json-key=qpdf"), &self.path()])?;
        let mut json: Value = serde_json::from_slice(&said(&output)?)?;
        let Value::Object(objects) = json["qpdf"][1].take() else {
            return Err("qpdf told no objects".into());
        };
        Ok(objects)
    }

    /// What Preflight says of the file as PDF/A-1b, and whether it takes it.
    pub fn preflight(&self) -> Answer<(bool, String)> {
        let jars = JARS.iter().map(|name| format!("{JAVA}/{name}.jar"));
        let jars: Vec<_> = jars.collect();
        if let Some(lacking) = jars.iter().find(|jar| !Path::new(jar).exists()) {
            return Err(format!("{lacking} is not there. {INSTALL}").into());
        }
        let class = Path::new("org.apache.pdfbox.preflight.Validator_A1b");
        let (jars, path) = (jars.join(":"), self.path());
        let arguments = [Path::new("-cp"), Path::new(&jars), class, &path];
        let output = call("java", &arguments)?;
        let text =
            format!("{}{}", String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr));
        Ok((output.status.success() && text.contains("is a valid PDF/A-1b file"), text))
    }
}

const INSTALL: &str = "Run `cargo xtask test --only packages`, which installs it on Debian.";

fn call(program: &str, arguments: &[&Path]) -> Answer<Output> {
    let output = Command::new(program).args(arguments).output();
    output.map_err(|error| format!("{program} cannot be called: {error}. {INSTALL}").into())
}

fn said(output: &Output) -> Answer<Vec<u8>> {
    if output.status.success() {
        Ok(output.stdout.clone())
    } else {
        Err(String::from_utf8_lossy(&output.stderr).into_owned().into())
    }
}
