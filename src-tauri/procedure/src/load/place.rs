//! Where each part of a JSON text stands, and which keys stand twice.
//!
//! `serde_json` has read the text already, so that only its shape matters here. The places are a tree like the text
//! itself, so that they take no more room than it does, however long its keys and however deep its lists.

use std::collections::BTreeMap;
use std::ops::Range;

use panside_messages::Message;

use crate::message::*;

/// Keys that stand twice are told up to this many.
const MOST_TWICE: usize = 100;

/// A line and a column, both from 1, and the file they are in where it is not the one that was read.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Spot {
    /// The part's file; nothing for the checklist's own.
    pub file: Option<String>,
    /// Line, from 1.
    pub line: usize,
    /// Column, from 1.
    pub column: usize,
}

impl Spot {
    /// As it is said in a sentence.
    #[must_use]
    pub fn message(&self) -> Message {
        match &self.file {
            Some(file) => spot_in_file(file, self.line, self.column),
            None => spot(self.line, self.column),
        }
    }

    /// The same with the place as a JSON pointer.
    #[must_use]
    pub(crate) fn at(&self, pointer: &str) -> Message {
        place(self.message(), if pointer.is_empty() { "/" } else { pointer })
    }
}

/// The places of a JSON text by JSON pointer.
#[derive(Debug, Clone, Default)]
pub struct Places {
    root: Node,
    /// Pointers of keys that stand twice in one object.
    pub twice: Vec<String>,
    /// The names of the files that places can be in; 0 is the file itself.
    files: Vec<Option<String>>,
}

/// Where a value stands and what is in it.
#[derive(Debug, Clone, Default)]
struct Node {
    at: At,
    bytes: Range<usize>,
    below: Below,
}

/// A place as numbers.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct At {
    /// Which file; 0 is the file itself.
    pub file: usize,
    /// Line, from 1.
    pub line: usize,
    /// Column, from 1.
    pub column: usize,
}

#[derive(Debug, Clone, Default)]
enum Below {
    #[default]
    Nothing,
    Elements(Vec<Node>),
    Fields(BTreeMap<String, Node>),
}

impl Places {
    /// Finds the places of a text that is valid JSON.
    #[must_use]
    pub fn of(text: &str) -> Places {
        let mut scan = Scan { rest: text.chars().peekable(), byte: 0, line: 1, column: 1, twice: Vec::new() };
        let root = scan.value(&mut Vec::new());
        Places { root, twice: scan.twice, files: vec![None] }
    }

    /// The place of a part, or of the nearest part around it.
    #[must_use]
    pub fn find(&self, pointer: &str) -> Spot {
        let At { file, line, column } = self.node(pointer).0.at;
        Spot { file: self.files.get(file).cloned().flatten(), line, column }
    }

    /// The bytes of a value that is there.
    #[must_use]
    pub fn bytes(&self, pointer: &str) -> Option<Range<usize>> {
        let (node, whole) = self.node(pointer);
        whole.then(|| node.bytes.clone())
    }

    /// The places of every value by the byte it begins at.
    #[must_use]
    pub fn by_byte(&self) -> BTreeMap<usize, At> {
        let mut found = BTreeMap::new();
        self.root.each(&mut |node| {
            found.insert(node.bytes.start, node.at);
        });
        found
    }

    /// Moves every place to where its value was copied from, which `origin` knows by the byte it begins at.
    pub fn trace(&mut self, files: Vec<Option<String>>, origin: &dyn Fn(usize) -> At) {
        self.files = files;
        self.root.change(&mut |node| node.at = origin(node.bytes.start));
    }

    /// The node at a pointer, or the nearest around it, and whether it is that one.
    fn node(&self, pointer: &str) -> (&Node, bool) {
        let mut node = &self.root;
        for name in pointer.split('/').skip(1) {
            let next = match &node.below {
                Below::Nothing => None,
                Below::Elements(all) => name.parse().ok().and_then(|at: usize| all.get(at)),
                Below::Fields(all) => all.get(&name.replace("~1", "/").replace("~0", "~")),
            };
            match next {
                Some(next) => node = next,
                None => return (node, false),
            }
        }
        (node, true)
    }
}

impl Node {
    fn each(&self, look: &mut dyn FnMut(&Node)) {
        look(self);
        match &self.below {
            Below::Nothing => {}
            Below::Elements(all) => all.iter().for_each(|node| node.each(look)),
            Below::Fields(all) => all.values().for_each(|node| node.each(look)),
        }
    }

    fn change(&mut self, change: &mut dyn FnMut(&mut Node)) {
        change(self);
        match &mut self.below {
            Below::Nothing => {}
            Below::Elements(all) => all.iter_mut().for_each(|node| node.change(change)),
            Below::Fields(all) => all.values_mut().for_each(|node| node.change(change)),
        }
    }
}

/// A JSON pointer of names.
fn pointer<'a>(names: impl Iterator<Item = &'a String>) -> String {
    names.fold(String::new(), |all, name| all + "/" + &name.replace('~', "~0").replace('/', "~1"))
}

struct Scan<'a> {
    rest: std::iter::Peekable<std::str::Chars<'a>>,
    byte: usize,
    line: usize,
    column: usize,
    twice: Vec<String>,
}

impl Scan<'_> {
    fn next(&mut self) -> Option<char> {
        let char = self.rest.next()?;
        self.byte += char.len_utf8();
        if char == '\n' {
            self.line += 1;
            self.column = 1;
        } else {
            self.column += 1;
        }
        Some(char)
    }

    fn skip_space(&mut self) {
        while self.rest.peek().is_some_and(|char| char.is_whitespace() || *char == ',' || *char == ':') {
            self.next();
        }
    }

    /// Reads a value that stands in those `around` it.
    fn value(&mut self, around: &mut Vec<String>) -> Node {
        self.skip_space();
        let at = At { file: 0, line: self.line, column: self.column };
        let begin = self.byte;
        let below = match self.rest.peek() {
            Some('{') => self.fields(around),
            Some('[') => self.elements(around),
            Some('"') => {
                self.next();
                self.string();
                Below::Nothing
            }
            _ => {
                let ends = |char: &char| matches!(char, ',' | '}' | ']') || char.is_whitespace();
                while self.rest.peek().is_some_and(|char| !ends(char)) {
                    self.next();
                }
                Below::Nothing
            }
        };
        Node { at, bytes: begin..self.byte, below }
    }

    fn elements(&mut self, around: &mut Vec<String>) -> Below {
        let mut all = Vec::new();
        self.next();
        while self.goes_on(']') {
            around.push(all.len().to_string());
            all.push(self.value(around));
            around.pop();
        }
        Below::Elements(all)
    }

    fn fields(&mut self, around: &mut Vec<String>) -> Below {
        let mut all = BTreeMap::new();
        self.next();
        while self.goes_on('}') {
            self.next();
            let name = self.string();
            around.push(name.clone());
            if all.insert(name, self.value(around)).is_some() && self.twice.len() < MOST_TWICE {
                self.twice.push(pointer(around.iter()));
            }
            around.pop();
        }
        Below::Fields(all)
    }

    /// Whether another one comes; reads the end where none does.
    fn goes_on(&mut self, end: char) -> bool {
        self.skip_space();
        let ends = self.rest.peek().is_none_or(|char| *char == end);
        if ends {
            self.next();
        }
        !ends
    }

    /// The rest of a string whose opening quote is read.
    fn string(&mut self) -> String {
        let mut quoted = String::from('"');
        while let Some(char) = self.next() {
            quoted.push(char);
            match char {
                '"' => break,
                '\\' => quoted.extend(self.next()),
                _ => {}
            }
        }
        // The same key can be written with and without \u escapes.
        serde_json::from_str(&quoted).unwrap_or(quoted)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn find(places: &Places, pointer: &str) -> (usize, usize) {
        let spot = places.find(pointer);
        (spot.line, spot.column)
    }

    #[test]
    fn a_part_is_found_by_its_pointer() {
        let places = Places::of("{\n  \"steps\": [\n    {\"id\": \"a\"},\n    {\"id\": \"b\"}\n  ]\n}");
        assert_eq!(find(&places, "/steps/1/id"), (4, 12));
        assert_eq!(
            find(&places, "/steps/1/needs"),
            (4, 5),
            "what is not there is shown at what surrounds it"
        );
        assert_eq!(find(&places, ""), (1, 1));
    }

    #[test]
    fn a_value_is_told_by_its_bytes() {
        let text = "{\"ä/b\": [1, {\"c\": \"ü\"}, []], \"d\": true}";
        let places = Places::of(text);
        let of = |pointer: &str| places.bytes(pointer).map(|bytes| &text[bytes]);
        assert_eq!(of("/ä~1b/1"), Some("{\"c\": \"ü\"}"));
        assert_eq!(of("/ä~1b/1/c"), Some("\"ü\""));
        assert_eq!(of("/ä~1b/2"), Some("[]"));
        assert_eq!(of("/d"), Some("true"));
        assert_eq!(of(""), Some(text));
        assert_eq!(of("/d/e"), None);
    }

    #[test]
    fn a_key_that_stands_twice_is_told() {
        assert_eq!(Places::of(r#"{"a": 1, "b": {"c": 1, "c": 2}}"#).twice, ["/b/c"]);
        assert_eq!(Places::of(r#"{"a": 1, "\u0061": 2, "n": 3, "\n": 4}"#).twice, ["/a"]);
    }
}
