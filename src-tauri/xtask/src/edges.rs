//! Which crate of ours may use which: the drawing in DEVELOPERS.md, held against what the Cargo.toml files say.
//!
//! A row of the drawing is `NAME ─▶ NAMES`, or `NAME ─▶ none`. Every crate of the workspace has one, and names only crates
//! whose rows stand above its own, so that arrows never point back. What a crate uses in its tests is on its row too;
//! what its build script uses has a row of its own, `NAME's build script`.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use serde_json::Value;

use crate::failure::Failure;
use crate::stage::{answer, command};

/// Where the drawing stands.
const PAPER: &str = "DEVELOPERS.md";
/// What a row has between a crate and those that it uses.
const ARROW: &str = " ─▶ ";
/// What a row says of a crate that uses none of ours.
const NONE: &str = "none";

/// What each crate uses, by its short name.
type Edges = BTreeMap<String, BTreeSet<String>>;

/// Compares the crates with the drawing.
///
/// # Errors
/// `Failure::Check` with a sentence for each edge that is on one side only; when the paper can't be read or cargo fails.
pub fn check(root: &Path) -> Result<(), Failure> {
    let path = root.join(PAPER);
    let paper = std::fs::read_to_string(&path).map_err(|source| Failure::File {
        doing: "Reading",
        path: path.clone(),
        source,
    })?;
    let words = ["metadata", "--format-version", "1", "--no-deps", "--offline", "--locked"];
    let metadata: Value = serde_json::from_str(&answer(command(root, "cargo", &words))?)
        .map_err(|error| Failure::Check(format!("What cargo metadata says is no JSON: {error}.")))?;
    let rows = rows(&paper);
    let edges = edges(&metadata);
    let wrong = wrong(&rows, &edges);
    if wrong.is_empty() {
        let count: usize = edges.values().map(BTreeSet::len).sum();
        println!("   {} crates and build scripts with {count} edges are as drawn.", edges.len());
        return Ok(());
    }
    Err(Failure::Check(wrong.join("\n")))
}

/// The rows of the drawing, from top to bottom.
fn rows(paper: &str) -> Vec<(String, BTreeSet<String>)> {
    let rows = paper.lines().filter_map(|line| {
        let (name, uses) = line.split_once(ARROW)?;
        let uses = uses.split(',').map(str::trim).filter(|name| *name != NONE);
        Some((name.trim().to_owned(), uses.map(str::to_owned).collect()))
    });
    rows.collect()
}

/// What `cargo metadata` says of the crates of this workspace and of each other.
fn edges(metadata: &Value) -> Edges {
    let mut edges = Edges::new();
    let packages = metadata["packages"].as_array().map_or(&[][..], Vec::as_slice);
    for package in packages {
        let name = short(&package["name"]);
        edges.entry(name.clone()).or_default();
        // One of ours is named by its folder; all others come from a registry.
        let ours = package["dependencies"].as_array().into_iter().flatten();
        for used in ours.filter(|used| used["path"].is_string()) {
            let at = if used["kind"] == "build" { format!("{name}'s build script") } else { name.clone() };
            edges.entry(at).or_default().insert(short(&used["name"]));
        }
    }
    edges
}

/// `job` for `panside-job`, `window` for `panside`.
fn short(name: &Value) -> String {
    let name = name.as_str().unwrap_or_default();
    match name.strip_prefix("panside") {
        Some("") => "window".to_owned(),
        Some(rest) => rest.trim_start_matches('-').to_owned(),
        None => name.to_owned(),
    }
}

/// A sentence for each edge or crate that is drawn and not there, or there and not drawn, and for each arrow that
/// points back.
fn wrong(rows: &[(String, BTreeSet<String>)], edges: &Edges) -> Vec<String> {
    let mut wrong = Vec::new();
    for (name, uses) in edges {
        let Some((_, drawn)) = rows.iter().find(|(row, _)| row == name) else {
            wrong.push(format!("`{name}` has no row in the drawing of {PAPER}; draw one: {name}{ARROW}…"));
            continue;
        };
        wrong.extend(uses.difference(drawn).map(|used| {
            format!(
                "`{name}` uses `{used}`, which {PAPER} does not draw. Take the dependency out of its Cargo.toml, or draw \
                 the edge and say there why it is needed."
            )
        }));
        wrong.extend(drawn.difference(uses).map(|used| {
            format!("{PAPER} draws that `{name}` uses `{used}`, and it does not. Take the edge out of the drawing.")
        }));
    }
    for (at, (name, uses)) in rows.iter().enumerate() {
        if !edges.contains_key(name) {
            wrong.push(format!("{PAPER} draws `{name}`, which is no crate of this workspace."));
        }
        if rows.iter().take(at).any(|(above, _)| above == name) {
            wrong.push(format!("{PAPER} draws `{name}` twice. Leave one row."));
        }
        let back = uses.iter().filter(|used| !rows.iter().take(at).any(|(above, _)| above == *used));
        wrong.extend(back.map(|used| {
            format!(
                "`{name}` uses `{used}`, whose row does not stand above its own: an arrow would point back."
            )
        }));
    }
    wrong
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    const PAPER: &str = "# Map\n\n```text\ntrade ─▶ none\njob   ─▶ trade\nwindow's build script ─▶ job\n\
                         window ─▶ job\n```\n\nMore.";

    /// A workspace as drawn above, with more that `job` uses.
    fn workspace(more: &[Value]) -> Value {
        let ours = |name: &str, kind: Option<&str>| json!({"name": name, "path": "/x", "kind": kind});
        let from_a_registry = json!({"name": "serde", "kind": null});
        let job = [&[ours("panside-trade", None), from_a_registry][..], more].concat();
        json!({"packages": [
            {"name": "panside-trade", "dependencies": []},
            {"name": "panside-job", "dependencies": job},
            {"name": "panside", "dependencies": [ours("panside-job", None), ours("panside-job", Some("build"))]},
        ]})
    }

    fn said(paper: &str, more: &[Value]) -> Vec<String> {
        wrong(&rows(paper), &edges(&workspace(more)))
    }

    #[test]
    fn crates_as_drawn_are_not_spoken_of() {
        assert_eq!(said(PAPER, &[]), Vec::<String>::new());
    }

    #[test]
    fn an_edge_that_is_not_drawn_is_named_with_what_to_do() {
        for kind in [json!(null), json!("dev")] {
            let paper = format!("store ─▶ none\n{PAPER}");
            let more = json!({"name": "panside-store", "path": "/x", "kind": kind});
            let said = said(&paper, &[more]);
            assert!(
                said[0].starts_with("`job` uses `store`, which DEVELOPERS.md does not draw. Take"),
                "{said:?}"
            );
        }
    }

    #[test]
    fn an_edge_that_is_drawn_only_is_named() {
        let said = said(&PAPER.replace("trade ─▶ none\n", "trade ─▶ none\nphoto ─▶ trade\n"), &[]);
        assert_eq!(said, ["DEVELOPERS.md draws `photo`, which is no crate of this workspace."]);
        let said = self::said(&PAPER.replace("window ─▶ job", "window ─▶ job, trade"), &[]);
        assert_eq!(said.len(), 1, "{said:?}");
        assert!(said[0].starts_with("DEVELOPERS.md draws that `window` uses `trade`, and it does not."));
    }

    #[test]
    fn a_crate_without_a_row_or_with_two_is_named() {
        let said = said(&PAPER.replace("window ─▶ job", "window ─▶ job\nwindow ─▶ job"), &[]);
        assert_eq!(said, ["DEVELOPERS.md draws `window` twice. Leave one row."]);
        let said = self::said(&PAPER.replace("window's build script ─▶ job\n", ""), &[]);
        assert_eq!(said.len(), 1, "{said:?}");
        assert!(said[0].starts_with("`window's build script` has no row"), "{said:?}");
    }

    #[test]
    fn an_arrow_that_points_back_is_named() {
        let turned = PAPER.replace("trade ─▶ none\njob   ─▶ trade\n", "job ─▶ trade\ntrade ─▶ none\n");
        let said = said(&turned, &[]);
        assert_eq!(said.len(), 1, "{said:?}");
        assert!(said[0].contains("an arrow would point back"), "{said:?}");
    }
}
