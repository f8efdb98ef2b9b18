//! Text from names, notes, files and journals, made safe to show. What is kept stays as it was given; whoever shows it,
//! on a terminal, a page or a sheet of paper, cleans it here.
//!
//! What steers a terminal (control characters and with them every escape sequence) or turns the direction of writing is
//! a blank: it would hide, move or turn round what stands beside it. What shows nothing itself is left out.

use std::fmt::Write;

/// One line: line breaks are blanks as well, so that no text can pass for a line of its own.
#[must_use]
pub fn line(text: &str) -> String {
    cleaned(text, |_| false)
}

/// Several lines: line breaks and tabs stay.
#[must_use]
pub fn lines(text: &str) -> String {
    cleaned(text, |c| matches!(c, '\n' | '\t'))
}

/// JSON text whose strings mean the same: what steers or shows nothing is written as `\u` and its number.
#[must_use]
pub fn json(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for c in text.chars() {
        if (steers(c) && c != '\n') || shows_nothing(c) {
            // Outside of its strings JSON has none of these but line breaks. Writing into a String can't fail.
            for unit in c.encode_utf16(&mut [0; 2]) {
                let _ = write!(safe, "\\u{unit:04x}");
            }
        } else {
            safe.push(c);
        }
    }
    safe
}

fn cleaned(text: &str, stays: impl Fn(char) -> bool) -> String {
    let shown = |c| if steers(c) && !stays(c) { ' ' } else { c };
    text.chars().filter(|c| !shows_nothing(*c)).map(shown).collect()
}

/// Control characters, and those that turn the direction of writing (Unicode Bidirectional Algorithm, UAX 9, 2.1 and 2.2).
fn steers(c: char) -> bool {
    c.is_control() || matches!(c, '\u{2028}' | '\u{2029}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// Marks that show nothing themselves: joiners, direction marks, soft hyphens, choosers of a form, tags.
fn shows_nothing(c: char) -> bool {
    matches!(c, '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{180b}'..='\u{180f}' | '\u{200b}'..='\u{200f}'
        | '\u{2060}'..='\u{2065}' | '\u{206a}'..='\u{206f}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}'
        | '\u{e0000}'..='\u{e0fff}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_note_cannot_steer_a_terminal_or_turn_the_writing() {
        assert_eq!(line("torque \u{1b}[2J40\u{9b}31m N·m"), "torque  [2J40 31m N·m");
        assert_eq!(line("RO \u{202e}2401\u{202c} \u{2066}x\u{2069}"), "RO  2401   x ");
        assert_eq!(line("R.\u{200b} O\u{feff}de\u{200d}"), "R. Ode");
        assert_eq!(line("leak\n   9  done"), "leak    9  done");
        assert_eq!(lines("leak\n\tat the pan\r\u{7f}"), "leak\n\tat the pan  ");
        assert_eq!(line("Ölstand 48 °C, Ω, 漢, مرحبا"), "Ölstand 48 °C, Ω, 漢, مرحبا");
    }

    #[test]
    fn json_means_the_same_and_shows_what_it_hides() {
        let note = "a\u{1b}\u{9b}\u{202e}\u{200b}\u{e0041}\nb \\ \"c\" Ω";
        let text = serde_json::to_string_pretty(&[note]).unwrap();
        let safe = json(&text);
        assert_eq!(safe, "[\n  \"a\\u001b\\u009b\\u202e\\u200b\\udb40\\udc41\\nb \\\\ \\\"c\\\" Ω\"\n]");
        assert_eq!(serde_json::from_str::<Vec<String>>(&safe).unwrap(), [note]);
    }
}
