//! Where each part of a JSON text stands, and which keys stand twice.
//!
//! `serde_json` has read the text already, so that only its shape matters here.

use std::collections::BTreeMap;

/// Line and column, both from 1.
pub type LineColumn = (usize, usize);

/// The places of a JSON text by JSON pointer.
#[derive(Debug, Clone, Default)]
pub struct Places {
    at: BTreeMap<String, LineColumn>,
    /// Pointers of keys that stand twice in one object.
    pub twice: Vec<String>,
}

impl Places {
    /// Finds the places of a text that is valid JSON.
    #[must_use]
    pub fn of(text: &str) -> Places {
        let mut scan = Scan { chars: text.chars().peekable(), line: 1, column: 1, places: Places::default() };
        scan.value(&mut String::new());
        scan.places
    }

    /// The place of a part, or of the nearest part around it.
    #[must_use]
    pub fn find(&self, pointer: &str) -> LineColumn {
        let mut pointer = pointer;
        loop {
            if let Some(&place) = self.at.get(pointer) {
                return place;
            }
            match pointer.rfind('/') {
                Some(cut) => pointer = &pointer[..cut],
                None => return (1, 1),
            }
        }
    }
}

struct Scan<'a> {
    chars: std::iter::Peekable<std::str::Chars<'a>>,
    line: usize,
    column: usize,
    places: Places,
}

impl Scan<'_> {
    fn next(&mut self) -> Option<char> {
        let char = self.chars.next()?;
        if char == '\n' {
            self.line += 1;
            self.column = 1;
        } else {
            self.column += 1;
        }
        Some(char)
    }

    fn skip_space(&mut self) {
        while self.chars.peek().is_some_and(|char| char.is_whitespace() || *char == ',' || *char == ':') {
            self.next();
        }
    }

    fn value(&mut self, pointer: &mut String) {
        self.skip_space();
        if self.places.at.insert(pointer.clone(), (self.line, self.column)).is_some() {
            self.places.twice.push(pointer.clone());
        }
        match self.chars.peek() {
            Some('{') => self.children(pointer, '}', |scan, _| {
                scan.next();
                scan.string()
            }),
            Some('[') => self.children(pointer, ']', |_, count| count.to_string()),
            Some('"') => {
                self.next();
                self.string();
            }
            _ => {
                while self
                    .chars
                    .peek()
                    .is_some_and(|char| !matches!(char, ',' | '}' | ']') && !char.is_whitespace())
                {
                    self.next();
                }
            }
        }
    }

    fn children(&mut self, pointer: &mut String, end: char, name: fn(&mut Self, usize) -> String) {
        self.next();
        for count in 0.. {
            self.skip_space();
            match self.chars.peek() {
                None => return,
                Some(&char) if char == end => {
                    self.next();
                    return;
                }
                Some(_) => {}
            }
            let length = pointer.len();
            let name = name(self, count);
            pointer.push('/');
            pointer.push_str(&name.replace('~', "~0").replace('/', "~1"));
            self.value(pointer);
            pointer.truncate(length);
        }
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

    #[test]
    fn a_part_is_found_by_its_pointer() {
        let places = Places::of("{\n  \"steps\": [\n    {\"id\": \"a\"},\n    {\"id\": \"b\"}\n  ]\n}");
        assert_eq!(places.find("/steps/1/id"), (4, 12));
        assert_eq!(places.find("/steps/1/needs"), (4, 5), "what is not there is shown at what surrounds it");
        assert_eq!(places.find(""), (1, 1));
    }

    #[test]
    fn a_key_that_stands_twice_is_told() {
        assert_eq!(Places::of(r#"{"a": 1, "b": {"c": 1, "c": 2}}"#).twice, ["/b/c"]);
        assert_eq!(Places::of(r#"{"a": 1, "\u0061": 2, "n": 3, "\n": 4}"#).twice, ["/a"]);
    }
}
