//! What was typed, as it can be printed.

use crate::clean::clean;

/// The text without what steers, with one blank for each stretch of blanks, and how many characters were replaced:
/// those that have no meaning outside one font (private use) and those that are none.
pub(super) fn printable(text: &str) -> (String, usize) {
    let mut unshown = 0;
    let shown: String = clean(text)
        .chars()
        .filter(|c| !is_invisible(*c))
        .map(|c| {
            let replaced = is_no_character(c);
            unshown += usize::from(replaced);
            if replaced { '\u{fffd}' } else { c }
        })
        .collect();
    let ends_blank = shown.ends_with(char::is_whitespace);
    let begins_blank = shown.starts_with(char::is_whitespace);
    let mut said = shown.split_whitespace().collect::<Vec<_>>().join(" ");
    // Blanks at the ends stay one: parts of a paragraph are put together.
    if begins_blank && !said.is_empty() {
        said.insert(0, ' ');
    }
    if ends_blank {
        said.push(' ');
    }
    (said, unshown)
}

/// Marks that show nothing themselves: joiners, direction marks, soft hyphens, choosers of a form, tags.
fn is_invisible(c: char) -> bool {
    matches!(c, '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{180b}'..='\u{180f}' | '\u{200b}'..='\u{200f}'
        | '\u{2060}'..='\u{206f}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}' | '\u{e0000}'..='\u{e0fff}')
}

/// Private use areas, and code points that Unicode keeps from being characters.
fn is_no_character(c: char) -> bool {
    let code = u32::from(c);
    matches!(code, 0xe000..=0xf8ff | 0xf_0000..=0x10_ffff | 0xfdd0..=0xfdef) || code & 0xfffe == 0xfffe
}

#[cfg(test)]
mod tests {
    use super::printable;

    #[test]
    fn what_steers_or_hides_is_gone_and_what_is_no_character_is_shown_as_such() {
        assert_eq!(printable("pan\u{202e}\r\n\tup\u{200b}\u{feff}"), ("pan up".to_owned(), 0));
        assert_eq!(printable("sol\u{ad}enoid  Ω"), ("solenoid Ω".to_owned(), 0));
        assert_eq!(printable("a\u{e000}b\u{fffe}"), ("a\u{fffd}b\u{fffd}".to_owned(), 2));
        assert_eq!(printable(" and "), (" and ".to_owned(), 0));
    }
}
