//! Changes by chance: to a text byte by byte, and to JSON part by part.

use serde_json::{Value, json};

use crate::chance::Chance;
use crate::corpus::Corpus;

/// No case grows beyond this, a little more than what loading takes.
const LARGEST: usize = 5 * 1024 * 1024;

/// Pieces of JSON and of predicates.
const TOKENS: [&str; 24] = [
    "{",
    "}",
    "[",
    "]",
    ":",
    ",",
    "\"",
    "\\",
    "\\u0000",
    "\\ud800",
    "null",
    "true",
    "1e400",
    "-0",
    "99999999999999999999",
    " and ",
    " or ",
    "not ",
    "known(",
    "(",
    ")",
    "!=",
    " in {",
    "\u{feff}",
];

/// A text with some bytes changed; it need not be UTF-8 any more.
pub fn text(chance: &mut Chance, text: &str, corpus: &Corpus) -> Vec<u8> {
    let mut bytes = text.as_bytes().to_vec();
    for _ in 0..=chance.below(4) {
        let at = chance.below(bytes.len() + 1);
        let longest = 1 << chance.below(12);
        let until = (at + 1 + chance.below(longest)).min(bytes.len());
        match chance.below(7) {
            0 if at < bytes.len() => bytes[at] = chance.next() as u8,
            1 => drop(bytes.drain(at..until)),
            2 => {
                let again = bytes[at..until].repeat(1 + chance.below(3));
                bytes.splice(at..at, again);
            }
            3 | 4 => drop(bytes.splice(at..at, chance.pick(&TOKENS).bytes())),
            5 => drop(bytes.splice(at..until, chance.pick(&corpus.words).bytes())),
            _ => bytes.truncate(if chance.once_in(8) { at } else { LARGEST }),
        }
    }
    bytes
}

/// A value with some of its parts changed. Pieces are taken from `other` too.
pub fn value(chance: &mut Chance, value: &Value, other: &Value, corpus: &Corpus) -> Value {
    let mut changed = value.clone();
    for _ in 0..=chance.below(3) {
        let places = places(&changed);
        let place = chance.pick(&places).clone();
        let piece = piece(chance, &changed, other, corpus);
        let Some((parent, name)) = place.rsplit_once('/') else { continue };
        let kind = chance.below(5);
        match changed.pointer_mut(parent) {
            Some(Value::Object(fields)) => {
                let name = name.replace("~1", "/").replace("~0", "~");
                match kind {
                    0 => drop(fields.remove(&name)),
                    1 => {
                        let moved = fields.remove(&name).unwrap_or_default();
                        fields.insert(chance.pick(&corpus.words).clone(), moved);
                    }
                    2 => drop(fields.insert(chance.pick(&corpus.words).clone(), piece)),
                    _ => drop(fields.insert(name, piece)),
                }
            }
            Some(Value::Array(list)) => {
                let at = name.parse::<usize>().unwrap_or(0).min(list.len() - 1);
                match kind {
                    0 => drop(list.remove(at)),
                    1 => {
                        let times = *chance.pick(&[1, 1, 2, 20, 600]);
                        let again = vec![list[at].clone(); times];
                        list.splice(at..at, again);
                    }
                    2 => {
                        let other = chance.below(list.len());
                        list.swap(at, other);
                    }
                    _ => list[at] = piece,
                }
            }
            _ => {}
        }
        if changed.to_string().len() > LARGEST {
            return value.clone();
        }
    }
    changed
}

/// Where every part of a value is.
fn places(value: &Value) -> Vec<String> {
    let mut found = vec![String::new()];
    let mut at = 0;
    while let Some(place) = found.get(at).cloned() {
        at += 1;
        match value.pointer(&place) {
            Some(Value::Array(list)) => found.extend((0..list.len()).map(|at| format!("{place}/{at}"))),
            Some(Value::Object(fields)) => found.extend(
                fields.keys().map(|name| format!("{place}/{}", name.replace('~', "~0").replace('/', "~1"))),
            ),
            _ => {}
        }
    }
    found
}

/// Something to put in a place: a part from somewhere else, or something no author would write.
fn piece(chance: &mut Chance, value: &Value, other: &Value, corpus: &Corpus) -> Value {
    let from = if chance.once_in(3) { other } else { value };
    match chance.below(10) {
        0..=3 => {
            let places = places(from);
            let place: &String = chance.pick(&places);
            from.pointer(place).cloned().unwrap_or_default()
        }
        4 => json!(chance.pick(&corpus.words)),
        5 => json!(chance.pick(&corpus.predicates)),
        6 => json!(predicate(chance, corpus)),
        7 => (0..1 + chance.below(120)).fold(Value::Null, |inner, _| json!([inner])),
        8 => {
            let text = *chance.pick(&["x", "ä", "$x", "\u{0}", "🔧"]);
            json!(text.repeat(1 << chance.below(14)))
        }
        _ => chance
            .pick(&[
                json!(null),
                json!(true),
                json!(0),
                json!(1),
                json!(63),
                json!(255),
                json!(-1),
                json!(u64::MAX),
                json!(i64::MIN),
                json!(1e308),
                json!(5e-324),
                json!(""),
                json!("unknown"),
                json!([]),
                json!({}),
            ])
            .clone(),
    }
}

/// A predicate with some of its words changed.
pub fn predicate(chance: &mut Chance, corpus: &Corpus) -> String {
    let mut words: Vec<String> = chance.pick(&corpus.predicates).split(' ').map(str::to_owned).collect();
    for _ in 0..=chance.below(4) {
        let at = chance.below(words.len() + 1);
        match chance.below(4) {
            0 if at < words.len() => drop(words.remove(at)),
            1 => words.insert(at, (*chance.pick(&TOKENS)).to_owned()),
            2 => words.insert(at, chance.pick(&corpus.words).clone()),
            _ => {
                let more = chance.pick(&corpus.predicates).clone();
                words.splice(at..at, [if chance.once_in(2) { "and" } else { "or" }.to_owned(), more]);
            }
        }
    }
    words.join(" ")
}
