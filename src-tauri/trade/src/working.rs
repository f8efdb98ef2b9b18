//! How a figure came about, line by line: the same for a record, a window and a terminal, in any language.

use std::fmt;

use panside_messages::{Arg, Message, Speaker};
use serde::Serialize;

use crate::message::working::*;
use crate::source::Source;

/// One line: what it is about, how it was calculated, and what came out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Line {
    /// What it is about.
    pub what: Message,
    /// The calculation with its numbers; nothing where a value was only taken over.
    pub how: Option<Arg>,
    /// What came out, with its unit.
    pub value: Arg,
}

/// How a figure came about.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Working {
    /// What was worked out.
    pub figure: Message,
    /// What went in.
    pub given: Vec<Line>,
    /// Each step of the calculation, in its order.
    pub steps: Vec<Line>,
    /// The answer in sentences.
    pub answer: Vec<Message>,
    /// Where the rule and its constants come from.
    pub sources: Vec<Source>,
}

/// A result that can say how it came about.
pub trait Worked {
    /// What went in, each step, the answer and the sources.
    fn working(&self) -> Working;
}

impl Line {
    /// The line as it stands by itself, such as `factor: 12 in / 18 in = 0.6667`.
    #[must_use]
    pub fn said(&self, speaker: &Speaker) -> String {
        format!("{}: {}", speaker.within(&self.what), self.came_out(speaker))
    }

    /// The calculation and what came out.
    fn came_out(&self, speaker: &Speaker) -> String {
        let value = speaker.arg(&self.value);
        self.how.as_ref().map_or_else(|| value.clone(), |how| format!("{} = {value}", speaker.arg(how)))
    }

    /// Puts their sentences into its messages.
    fn fill(&mut self, speaker: &Speaker) {
        self.what.text = speaker.within(&self.what);
        for arg in self.how.iter_mut().chain([&mut self.value]) {
            if let Arg::Said(message) = arg {
                message.text = speaker.within(message);
            }
        }
    }
}

impl Working {
    pub(crate) fn of(figure: Message) -> Working {
        Working { figure, given: Vec::new(), steps: Vec::new(), answer: Vec::new(), sources: Vec::new() }
    }

    pub(crate) fn given(mut self, what: Message, value: impl Into<Arg>) -> Working {
        self.given.push(Line { what, how: None, value: value.into() });
        self
    }

    pub(crate) fn step(mut self, what: Message, how: impl Into<Arg>, value: impl Into<Arg>) -> Working {
        self.steps.push(Line { what, how: Some(how.into()), value: value.into() });
        self
    }

    pub(crate) fn answer(mut self, sentence: Message) -> Working {
        self.answer.push(sentence);
        self
    }

    pub(crate) fn sources<const N: usize>(mut self, sources: [Source; N]) -> Working {
        self.sources.extend(sources);
        self
    }

    /// Puts their sentences into its messages, for a reader who has no speaker.
    pub fn fill(&mut self, speaker: &Speaker) {
        self.figure.text = speaker.within(&self.figure);
        self.given.iter_mut().chain(&mut self.steps).for_each(|line| line.fill(speaker));
        self.answer.iter_mut().for_each(|sentence| speaker.fill(sentence));
        self.sources.iter_mut().for_each(|source| source.says.text = speaker.within(&source.says));
    }

    /// Plain text, a heading for each part that is not empty.
    #[must_use]
    pub fn said(&self, speaker: &Speaker) -> String {
        let table = |lines: &[Line]| {
            let whats: Vec<String> = lines.iter().map(|line| speaker.within(&line.what)).collect();
            let width = whats.iter().map(|what| what.chars().count()).max().unwrap_or(0);
            let row = |(what, line): (&String, &Line)| format!("{what:width$}  {}", line.came_out(speaker));
            whats.iter().zip(lines).map(row).collect::<Vec<_>>()
        };
        let parts = [
            (working_given(), table(&self.given)),
            (working_steps(), table(&self.steps)),
            (working_result(), self.answer.iter().map(|sentence| speaker.say(sentence)).collect()),
            (working_source(), self.sources.iter().map(|it| speaker.within(&it.message())).collect()),
        ];
        let mut text = format!("{}\n", speaker.within(&self.figure));
        for (heading, lines) in parts.iter().filter(|(_, lines)| !lines.is_empty()) {
            text.push_str(&format!("\n  {}\n", speaker.within(heading)));
            lines.iter().for_each(|line| text.push_str(&format!("    {line}\n")));
        }
        text
    }
}

impl fmt::Display for Working {
    /// As it is said in English.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said(Speaker::english()))
    }
}

#[cfg(test)]
mod tests {
    use panside_messages::Language;

    use super::*;
    use crate::source;

    fn working() -> Working {
        Working::of(working_coil())
            .given(working_read(), "6.9 Ω")
            .step(working_at_temperature("20 °C"), "6.9 Ω / 1.165", "5.92 Ω")
            .answer(working_coil_high())
            .sources([source::copper()])
    }

    #[test]
    fn a_working_reads_as_given_steps_result_source() {
        let text = working().to_string();
        let order = [
            "coil resistance",
            "given",
            "read  6.9 Ω",
            "steps",
            "at 20 °C  6.9 Ω / 1.165 = 5.92 Ω",
            "result",
            "above",
            "source",
            "copper: 0.00393 / °C at 20 °C, linear up to 200 °C (second-hand)",
        ];
        let places: Vec<_> = order.iter().filter_map(|part| text.find(part)).collect();
        assert_eq!(places.len(), order.len(), "{text}");
        assert!(places.is_sorted(), "{text}");
    }

    #[test]
    fn another_language_has_the_same_numbers() {
        let text = working().said(Speaker::of(Language::Accented));
        assert!(text.contains("át 20 °C  6.9 Ω / 1.165 = 5.92 Ω"), "{text}");
    }

    #[test]
    fn a_line_stands_by_itself() {
        assert_eq!(working().steps[0].said(Speaker::english()), "at 20 °C: 6.9 Ω / 1.165 = 5.92 Ω");
    }

    #[test]
    fn a_reader_without_a_speaker_finds_every_sentence() {
        let mut working = working().given(working_read(), working_coil_overload());
        working.fill(Speaker::english());
        let json = serde_json::to_value(&working).unwrap();
        assert_eq!(json["figure"]["text"], "coil resistance");
        assert_eq!(json["given"][0]["value"]["text"], "6.9 Ω");
        assert_eq!(json["given"][1]["value"]["said"]["text"], "overload");
        assert_eq!(json["steps"][0]["what"]["text"], "at 20 °C");
        assert_eq!(json["answer"][0]["id"], "working-coil-high");
        assert!(json["sources"][0]["says"]["text"].as_str().unwrap().starts_with("NBS Handbook 100"));
    }
}
