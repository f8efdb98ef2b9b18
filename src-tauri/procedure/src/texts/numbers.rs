//! Numbers in a text. A number that got lost in a translation is one that somebody works by.

use std::collections::BTreeSet;

/// The numbers of a text that another one lacks, as the text has them. How a number is grouped and which mark stands
/// before its decimals is left to the language.
pub(super) fn lost(original: &str, translated: &str) -> Vec<String> {
    let there: BTreeSet<String> = numbers(translated).iter().map(|number| plain(number)).collect();
    let mut lost = numbers(original);
    lost.retain(|number| !there.contains(&plain(number)));
    lost.dedup();
    lost
}

/// Runs of digits, with single marks between them.
fn numbers(text: &str) -> Vec<String> {
    let mut all = Vec::new();
    let mut number = String::new();
    let mut chars = text.chars().peekable();
    while let Some(char) = chars.next() {
        let goes_on = chars.peek().is_some_and(char::is_ascii_digit);
        if char.is_ascii_digit() || (!number.is_empty() && is_mark(char) && goes_on) {
            number.push(char);
        } else if !number.is_empty() {
            all.push(std::mem::take(&mut number));
        }
    }
    all.extend(Some(number).filter(|number| !number.is_empty()));
    all
}

/// Marks within a number: point, comma, apostrophe and the spaces that break no line.
fn is_mark(char: char) -> bool {
    matches!(char, '.' | ',' | '\'' | '’' | '\u{a0}' | '\u{202f}')
}

/// The number with one mark for all.
fn plain(number: &str) -> String {
    number.chars().map(|char| if is_mark(char) { '.' } else { char }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_is_found_in_whatever_way_a_language_writes_it() {
        for (original, translated) in [
            ("Warm to 37.5 °C.", "Auf 37,5 °C erwärmen."),
            ("Tighten 16 bolts to 9 N·m.", "Serrez à 9 N·m les 16 vis."),
            ("After 1,000 km", "Après 1\u{202f}000 km"),
            ("Read P0765.", "P0765 auslesen."),
            ("no number", "keine 3"),
        ] {
            assert_eq!(lost(original, translated), [""; 0], "{translated}");
        }
    }

    #[test]
    fn a_number_that_is_left_out_or_changed_is_lost() {
        assert_eq!(lost("16 bolts to 9.5 N·m, all 16", "alle Schrauben mit 95 N·m"), ["16", "9.5", "16"]);
        assert_eq!(lost("Wait 5 minutes.", "15 Minuten warten."), ["5"]);
        assert_eq!(lost("0.1 to 0.4", "0.1 à 0.3."), ["0.4"]);
        assert_eq!(lost("Wait 5.", "Cinq."), ["5"]);
    }
}
