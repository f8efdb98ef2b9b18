//! What was typed, made safe to write down where it is read.

/// Characters that steer a terminal or turn the direction of writing are no part of what is said: each is a space.
pub(crate) fn clean(text: &str) -> String {
    let steers = |c: char| c.is_control() || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    text.chars().map(|c| if steers(c) { ' ' } else { c }).collect()
}
