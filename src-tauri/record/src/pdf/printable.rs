//! What was typed, as it can be printed.

use std::collections::BTreeSet;

use panside_messages::clean::line;

/// Stands for a character that cannot be shown.
pub(super) const UNSHOWN: char = '\u{fffd}';

/// The text without what steers, with one blank for each stretch of blanks. A sign stands for characters that no face
/// has, that mean something in one font only (private use), or that are no characters; they are added to `unshown`.
pub(super) fn printable(
    text: &str,
    is_in_a_face: impl Fn(char) -> bool,
    unshown: &mut BTreeSet<char>,
) -> String {
    let mut shown = String::new();
    for c in line(text).chars() {
        if c.is_whitespace() {
            // Blanks at the ends stay one: parts of a paragraph are put together.
            if !shown.ends_with(' ') {
                shown.push(' ');
            }
        } else if is_no_character(c) || !is_in_a_face(c) {
            unshown.insert(c);
            shown.push(UNSHOWN);
        } else {
            shown.push(c);
        }
    }
    shown
}

/// A character as the number that Unicode gives it.
pub(super) fn code_point(c: char) -> String {
    format!("U+{:04X}", u32::from(c))
}

/// Private use areas, and code points that Unicode keeps from being characters.
fn is_no_character(c: char) -> bool {
    let code = u32::from(c);
    matches!(code, 0xe000..=0xf8ff | 0xf_0000..=0x10_ffff | 0xfdd0..=0xfdef) || code & 0xfffe == 0xfffe
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_steers_or_hides_is_gone_and_what_cannot_be_shown_is_shown_as_that() {
        let mut unshown = BTreeSet::new();
        let mut latin = |text| printable(text, |c| c < '\u{3000}', &mut unshown);
        assert_eq!(latin("pan\u{202e}\r\n\tup\u{200b}\u{feff}"), "pan up");
        assert_eq!(latin("sol\u{ad}enoid  Ω"), "solenoid Ω");
        assert_eq!(latin(" and "), " and ");
        assert_eq!(latin("a\u{e000}b\u{fffe} 漢"), "a\u{fffd}b\u{fffd} \u{fffd}");
        assert_eq!(unshown.into_iter().collect::<String>(), "漢\u{e000}\u{fffe}");
    }
}
