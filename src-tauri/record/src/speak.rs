//! How every form of a record says numbers, times and lists. The words come from the message files.

use panside_messages::{Message, Speaker};
use panside_trade::number::parse_number;

use crate::messages;

/// Who says a record, with what is asked of the language again and again.
pub(crate) struct Say<'a> {
    speaker: &'a Speaker,
    /// The decimal sign of the language.
    decimal: String,
}

impl<'a> Say<'a> {
    pub fn by(speaker: &'a Speaker) -> Say<'a> {
        Say { speaker, decimal: speaker.within(&messages::decimal_sign()) }
    }

    pub fn speaker(&self) -> &'a Speaker {
        self.speaker
    }

    /// The language's tag.
    pub fn tag(&self) -> &'static str {
        self.speaker.language().tag()
    }

    /// A sentence, or words that stand by themselves.
    pub fn says(&self, message: &Message) -> String {
        self.speaker.say(message)
    }

    /// The same within a sentence, or where it begins with what a person typed.
    pub fn within(&self, message: &Message) -> String {
        self.speaker.within(message)
    }

    /// A number as the language writes it, however it was typed. What is no number stays as it is.
    pub fn number(&self, typed: &str) -> String {
        match parse_number(typed) {
            Ok(_) => typed.replace([',', '.'], &self.decimal),
            Err(_) => typed.to_owned(),
        }
    }

    /// A number with its unit.
    pub fn measure(&self, typed: &str, unit: &str) -> String {
        self.as_typed(&self.number(typed), unit)
    }

    /// A number as it was typed, with its unit.
    pub fn as_typed(&self, value: &str, unit: &str) -> String {
        self.within(&messages::measure(value, unit))
    }

    /// Several things that belong together.
    pub fn listed(&self, parts: impl IntoIterator<Item = String>) -> String {
        self.chained(parts, messages::list_comma)
    }

    /// Several things, each of which may have commas.
    pub fn apart(&self, parts: impl IntoIterator<Item = String>) -> String {
        self.chained(parts, messages::list_semicolon)
    }

    /// Steps that follow each other, as the stages of a torque.
    pub fn apart_by_then(&self, parts: impl IntoIterator<Item = String>) -> String {
        self.chained(parts, messages::list_then)
    }

    fn chained(
        &self,
        parts: impl IntoIterator<Item = String>,
        next: fn(String, String) -> Message,
    ) -> String {
        let mut parts: Vec<String> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        // Pair by pair: put together from the start, each of a thousand parts would be written a thousand times.
        while parts.len() > 1 {
            let mut rest = parts.into_iter();
            parts = Vec::new();
            while let Some(start) = rest.next() {
                parts.push(match rest.next() {
                    Some(part) => self.within(&next(start, part)),
                    None => start,
                });
            }
        }
        parts.pop().unwrap_or_default()
    }

    /// Minutes as hours and minutes.
    pub fn clock(&self, minutes: u64) -> String {
        let two =
            |number: u64| if number < 10 { ["0", &number.to_string()].concat() } else { number.to_string() };
        self.within(&messages::hours_minutes((minutes / 60).to_string(), two(minutes % 60)))
    }

    /// Minutes as labor is counted: hours to a tenth.
    pub fn labor(&self, minutes: u64) -> String {
        let tenths = (minutes * 10 + 30) / 60;
        let hours = [(tenths / 10).to_string(), (tenths % 10).to_string()].join(".");
        self.within(&messages::hours_labor(self.number(&hours)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_shown_with_the_languages_decimal_sign_and_labor_to_a_tenth_of_an_hour() {
        let say = Say::by(Speaker::english());
        assert_eq!(say.number("9,0"), "9.0");
        assert_eq!(say.number("148230.5"), "148230.5");
        assert_eq!(say.number("OL, open"), "OL, open", "what is no number stays");
        assert_eq!(
            [0, 3, 24, 85, 447].map(|minutes| say.labor(minutes)),
            ["0.0 h", "0.1 h", "0.4 h", "1.4 h", "7.5 h"]
        );
        assert_eq!(say.clock(65), "1 h 05 min");
        assert_eq!(say.apart(["a".into(), String::new(), "b".into()]), "a; b");
    }
}
