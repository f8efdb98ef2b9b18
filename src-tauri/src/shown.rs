//! What the page gets to show: every answer of a command as JSON whose texts are clean.
//!
//! The page draws text from journals, files, names and notes in hundreds of places, and HTML keeps neither direction
//! marks nor control characters from working. So they are cleaned here, where every answer passes.

use std::io::{self, Write};

use panside_bay::clean;
use serde::Serialize;
use serde_json::ser::{CharEscape, CompactFormatter, Formatter, Serializer};
use tauri::ipc::{InvokeResponseBody, IpcResponse};

/// An answer for the page.
#[derive(Debug)]
pub struct Shown<T>(pub T);

impl<T: Serialize> IpcResponse for Shown<T> {
    fn body(self) -> tauri::Result<InvokeResponseBody> {
        Ok(InvokeResponseBody::Json(json(&self.0)?))
    }
}

fn json(value: &impl Serialize) -> serde_json::Result<String> {
    let mut text = Vec::new();
    value.serialize(&mut Serializer::with_formatter(&mut text, Clean))?;
    Ok(String::from_utf8_lossy(&text).into_owned())
}

/// Writes JSON whose strings are cleaned on the way.
struct Clean;

impl Formatter for Clean {
    fn write_string_fragment<W: ?Sized + Write>(&mut self, out: &mut W, fragment: &str) -> io::Result<()> {
        out.write_all(clean::lines(fragment).as_bytes())
    }

    fn write_char_escape<W: ?Sized + Write>(&mut self, out: &mut W, escape: CharEscape) -> io::Result<()> {
        match escape {
            CharEscape::Quote
            | CharEscape::ReverseSolidus
            | CharEscape::Solidus
            | CharEscape::LineFeed
            | CharEscape::Tab => CompactFormatter.write_char_escape(out, escape),
            CharEscape::Backspace
            | CharEscape::FormFeed
            | CharEscape::CarriageReturn
            | CharEscape::AsciiControl(_) => out.write_all(b" "),
        }
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;

    #[test]
    fn a_note_with_direction_marks_and_escapes_comes_to_the_page_as_plain_text() -> serde_json::Result<()> {
        let note = "a \"b\" \\ c\n\t\u{1b}[2J\u{8}\u{202e}d\u{9b}\u{200b}e \u{2066}Ω\u{2069}";
        let answer = BTreeMap::from([(note, (note, 4, Some(true)))]);
        let read: BTreeMap<String, (String, u8, Option<bool>)> = serde_json::from_str(&json(&answer)?)?;
        let clean = "a \"b\" \\ c\n\t [2J  d e  Ω ";
        assert_eq!(read, BTreeMap::from([(clean.to_owned(), (clean.to_owned(), 4, Some(true)))]));
        Ok(())
    }
}
