//! The joined text, copied piece by piece.

use std::collections::BTreeMap;
use std::ops::Range;

use serde_json::Value;

use super::gather::{Added, NAMED, gather};
use super::read::{Used, set_texts};
use super::{Joined, Piece, Source, file_of};
use crate::load::read::Json;
use crate::load::{LARGEST_FILE, Problem, Problems};
use crate::message::*;

/// The fields of a checklist in the order they are written in.
const FIELDS: [&str; 20] = [
    "format",
    "id",
    "title",
    "revision",
    "demo",
    "crew",
    "facts",
    "conditions",
    "gates",
    "sheet_keys",
    "terms",
    "start_when",
    "follows",
    "items",
    "sign_offs",
    "phases",
    "vehicle_actions",
    "dangers",
    "done_when",
    "safe_to_leave",
];

/// A checklist and its parts as one text.
pub(super) fn joined(own: Json, parts: &[Used]) -> Result<Joined, Problems> {
    let source = |file: Option<String>, json: &Json| Source { file, places: json.places.by_byte() };
    let mut sources = vec![source(None, &own)];
    sources.extend(parts.iter().map(|used| source(Some(file_of(&used.by.part)), &used.json)));
    if parts.is_empty() {
        return Ok(Joined { text: own.text, pieces: vec![Piece { at: 0, from: Some((0, 0)) }], sources });
    }
    let added = gather(&own, parts)?;
    let mut writer =
        Writer { own: &own, parts, holes: holes(&own, parts), text: String::new(), pieces: Vec::new() };
    writer.whole(&added);
    if writer.is_full() {
        let what = part_whole(LARGEST_FILE / (1024 * 1024));
        return Err(Problems(vec![Problem::at(own.places.find(""), "", what)]));
    }
    Ok(Joined { text: writer.text, pieces: writer.pieces, sources })
}

/// Bytes of a source that something else stands for.
#[derive(Debug, Clone)]
struct Hole {
    bytes: Range<usize>,
    by: Filling,
}

#[derive(Debug, Clone)]
enum Filling {
    /// The steps or phases of a part.
    Part(usize),
    /// A word of the checklist, by its bytes there.
    Word(Range<usize>),
}

/// The holes of every source, in order: where the checklist uses parts, and the settings in each part.
fn holes(own: &Json, parts: &[Used]) -> Vec<Vec<Hole>> {
    let uses = parts.iter().enumerate();
    let uses = uses
        .filter_map(|(at, used)| Some(Hole { bytes: own.places.bytes(&used.place)?, by: Filling::Part(at) }));
    let mut all = vec![uses.collect()];
    all.extend(parts.iter().map(|used| {
        let set = set_texts(&used.json).into_iter();
        let set = set.filter_map(|(bytes, name)| {
            let word = own.places.bytes(&format!("{}/with/{name}", used.place))?;
            Some(Hole { bytes, by: Filling::Word(word) })
        });
        set.collect()
    }));
    all
}

struct Writer<'a> {
    own: &'a Json,
    parts: &'a [Used],
    holes: Vec<Vec<Hole>>,
    text: String,
    pieces: Vec<Piece>,
}

impl Writer<'_> {
    fn whole(&mut self, added: &BTreeMap<&'static str, Vec<Added>>) {
        let Some(fields) = self.own.value.as_object() else { return };
        // What is no field of a checklist is kept, for loading to tell.
        let others = fields.keys().map(String::as_str).filter(|name| !FIELDS.contains(name));
        let mut before = "{\n  ";
        for name in FIELDS.into_iter().chain(others) {
            let added = added.get(name).map_or(&[][..], Vec::as_slice);
            if !fields.contains_key(name) && added.is_empty() {
                continue;
            }
            self.glue(&format!("{before}{}: ", Value::from(name)));
            self.field(name, added);
            before = ",\n  ";
        }
        self.glue("\n}\n");
    }

    /// A field of the checklist with what parts add to it.
    fn field(&mut self, name: &str, added: &[Added]) {
        let (open, close) = if NAMED.contains(&name) { ("{", "\n  }") } else { ("[", "\n  ]") };
        let own = self.own.places.bytes(&format!("/{name}"));
        let list = own.clone().filter(|bytes| self.own.text[bytes.clone()].starts_with(open));
        match (own, list) {
            (Some(bytes), _) if added.is_empty() => return self.copy(0, bytes),
            // It is no list, which loading tells.
            (Some(bytes), None) => return self.copy(0, bytes),
            (None, _) => self.glue(open),
            (Some(_), Some(bytes)) => {
                let inner = self.own.text[bytes.start..bytes.end - 1].trim_end();
                self.copy(0, bytes.start..bytes.start + inner.len());
                if inner.len() > open.len() {
                    self.glue(",");
                }
            }
        }
        for (at, one) in added.iter().enumerate() {
            self.glue(if at == 0 { "\n    " } else { ",\n    " });
            if let Some(key) = &one.key {
                self.glue(&format!("{}: ", Value::from(key.as_str())));
            }
            self.copy(1 + one.part, one.bytes.clone());
        }
        self.glue(close);
    }

    /// Copies bytes of a source; what stands for a hole goes in its place.
    fn copy(&mut self, source: usize, bytes: Range<usize>) {
        let mut from = bytes.start;
        let first = self.holes[source].partition_point(|hole| hole.bytes.start < bytes.start);
        for at in first.. {
            let Some(hole) = self.holes[source].get(at).filter(|hole| hole.bytes.end <= bytes.end).cloned()
            else {
                break;
            };
            self.piece(source, from..hole.bytes.start);
            from = hole.bytes.end;
            match hole.by {
                Filling::Word(bytes) => self.piece(0, bytes),
                Filling::Part(part) => self.brought(part),
            }
        }
        self.piece(source, from..bytes.end);
    }

    /// Copies the steps or phases of a part.
    fn brought(&mut self, part: usize) {
        let used = &self.parts[part];
        let list = used.brings();
        for at in 0..used.part.steps.len() + used.part.phases.len() {
            if at > 0 {
                self.glue(",\n        ");
            }
            if let Some(bytes) = used.json.places.bytes(&format!("/{list}/{at}")) {
                self.copy(1 + part, bytes);
            }
        }
    }

    fn piece(&mut self, source: usize, bytes: Range<usize>) {
        if self.is_full() || bytes.is_empty() {
            return;
        }
        self.pieces.push(Piece { at: self.text.len(), from: Some((source, bytes.start)) });
        let json = source.checked_sub(1).map_or(self.own, |part| &self.parts[part].json);
        self.text.push_str(&json.text[bytes]);
    }

    /// Writes what stands in no file.
    fn glue(&mut self, text: &str) {
        self.pieces.push(Piece { at: self.text.len(), from: None });
        self.text.push_str(text);
    }

    /// A word that is set in many places can make more of the files than they are.
    fn is_full(&self) -> bool {
        self.text.len() > LARGEST_FILE
    }
}
