//! The walk script and the checklist that it walks, as far as a hand needs them.

use std::collections::BTreeMap;
use std::path::Path;

use panside_procedure::Procedure;
use serde::Deserialize;
use serde::de::DeserializeOwned;
use serde_json::Value;

use crate::window::{Result, Trouble};

/// A script of commands.
#[derive(Debug, Clone, Deserialize)]
pub struct Script {
    checklist: String,
    sheet: String,
    /// People by the short names of the lines.
    pub people: BTreeMap<String, Person>,
    /// What is done, in order.
    pub lines: Vec<Line>,
    /// The steps of the checklist, in its order.
    #[serde(skip)]
    pub steps: Vec<Step>,
    /// Titles of the vehicle actions, by id.
    #[serde(skip)]
    pub vehicle_actions: BTreeMap<String, String>,
    /// Names of the items that are counted, by id.
    #[serde(skip)]
    pub items: BTreeMap<String, String>,
}

/// Somebody.
#[derive(Debug, Clone, Deserialize)]
pub struct Person {
    /// The name as it is shown.
    pub name: String,
}

/// A line of a script.
#[derive(Debug, Clone, Deserialize)]
pub struct Line {
    /// Who does it, where that changes.
    pub who: Option<String>,
    /// Minutes before it.
    #[serde(default)]
    pub after_min: f64,
    /// What is done.
    #[serde(rename = "do")]
    pub command: Value,
    /// The message that must refuse it.
    pub refused: Option<String>,
}

/// A step of the checklist.
#[derive(Debug, Clone, Deserialize)]
pub struct Step {
    /// Its id.
    pub id: String,
    /// Its title.
    pub title: String,
    /// What it asks for.
    #[serde(default)]
    pub entries: Vec<Entry>,
}

/// An entry of a step.
#[derive(Debug, Clone, Deserialize)]
pub struct Entry {
    /// Its id.
    pub id: String,
    /// What it is called.
    pub label: String,
    /// Its kind, with its fields.
    pub ask: Value,
}

#[derive(Deserialize)]
struct Checklist {
    phases: Vec<Phase>,
    vehicle_actions: Vec<Titled>,
    items: Vec<Item>,
}

#[derive(Deserialize)]
struct Phase {
    steps: Vec<Step>,
}

#[derive(Deserialize)]
struct Titled {
    id: String,
    title: String,
}

#[derive(Deserialize)]
struct Item {
    id: String,
    name: String,
}

impl Script {
    /// Reads a script and the checklist that it names.
    ///
    /// # Errors
    /// When a file can't be read.
    pub fn read(path: &Path) -> Result<Script> {
        let mut script: Script = json(path)?;
        let folder = path.parent().unwrap_or(Path::new("."));
        let path = folder.join(&script.checklist);
        let text = crate::joined(&path).map_err(Trouble::wrong)?;
        let procedure =
            Procedure::load(text.as_bytes()).map_err(|problems| Trouble::wrong(problems.to_string()))?;
        let sheet = folder.join(&script.sheet);
        let name = sheet.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        let vehicle = crate::sheet(name.trim_end_matches(".sheet.json"));
        // As the window shows it: with as many of each item as the sheet counts.
        let fitted = procedure.fitted(&vehicle).map_err(|lacks| Trouble::wrong(format!("{lacks:?}")))?;
        let whole =
            serde_json::to_string(&fitted.checklist).map_err(|error| Trouble::wrong(error.to_string()))?;
        let checklist: Checklist = parsed(&path, whole.as_bytes())?;
        script.steps = checklist.phases.into_iter().flat_map(|phase| phase.steps).collect();
        script.vehicle_actions =
            checklist.vehicle_actions.into_iter().map(|each| (each.id, each.title)).collect();
        script.items = checklist.items.into_iter().map(|each| (each.id, each.name)).collect();
        Ok(script)
    }

    /// A step with its number.
    ///
    /// # Errors
    /// When there is none.
    pub fn step(&self, id: &str) -> Result<(usize, &Step)> {
        let found = (1..).zip(&self.steps).find(|(_, step)| step.id == id);
        found.ok_or_else(|| Trouble::wrong(format!("The checklist has no step \"{id}\".")))
    }
}

impl Step {
    /// The entries that have a value in `values`, in the order in which the step asks for them.
    ///
    /// # Errors
    /// When the step does not have one of them.
    pub fn asked<'a>(&'a self, values: &'a Value) -> Result<Vec<(&'a Entry, &'a Value)>> {
        let given = values.as_object().map_or(0, serde_json::Map::len);
        let asked = self.entries.iter().filter_map(|entry| Some((entry, values.get(&entry.id)?)));
        let asked: Vec<_> = asked.collect();
        if asked.len() == given {
            return Ok(asked);
        }
        Err(Trouble::wrong(format!("Step \"{}\" does not have all of these entries: {values}", self.id)))
    }
}

fn json<T: DeserializeOwned>(path: &Path) -> Result<T> {
    let bytes = std::fs::read(path).map_err(|source| Trouble::File {
        doing: "Reading",
        path: path.to_owned(),
        source,
    })?;
    parsed(path, &bytes)
}

fn parsed<T: DeserializeOwned>(path: &Path, bytes: &[u8]) -> Result<T> {
    serde_json::from_slice(bytes).map_err(|source| Trouble::Json { what: path.display().to_string(), source })
}
