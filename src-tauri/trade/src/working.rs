//! How a figure came about, line by line: the same for a record, a window and a terminal.

use std::fmt;

use serde::Serialize;

use crate::source::Source;

/// One line: what it is about, how it was reckoned, and what came out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Line {
    /// What it is about.
    pub what: String,
    /// The reckoning with its numbers; nothing where a value was only taken over.
    pub how: Option<String>,
    /// What came out, with its unit.
    pub value: String,
}

/// How a figure came about.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Working {
    /// What was worked out.
    pub figure: &'static str,
    /// What went in.
    pub given: Vec<Line>,
    /// Each step of the reckoning, in its order.
    pub steps: Vec<Line>,
    /// The answer in sentences.
    pub answer: Vec<String>,
    /// Where the rule and its constants come from.
    pub sources: Vec<Source>,
}

/// A result that can say how it came about.
pub trait Worked {
    /// What went in, each step, the answer and the sources.
    fn working(&self) -> Working;
}

impl Working {
    pub(crate) fn of(figure: &'static str) -> Working {
        Working { figure, given: Vec::new(), steps: Vec::new(), answer: Vec::new(), sources: Vec::new() }
    }

    pub(crate) fn given(mut self, what: impl Into<String>, value: impl fmt::Display) -> Working {
        self.given.push(Line { what: what.into(), how: None, value: value.to_string() });
        self
    }

    pub(crate) fn step(
        mut self,
        what: impl Into<String>,
        how: impl Into<String>,
        value: impl fmt::Display,
    ) -> Working {
        self.steps.push(Line { what: what.into(), how: Some(how.into()), value: value.to_string() });
        self
    }

    pub(crate) fn answer(mut self, sentence: impl fmt::Display) -> Working {
        self.answer.push(sentence.to_string());
        self
    }

    pub(crate) fn sources(mut self, sources: &[Source]) -> Working {
        self.sources.extend_from_slice(sources);
        self
    }
}

impl fmt::Display for Working {
    /// Plain text, a heading for each part that is not empty.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "{}", self.figure)?;
        let lines = |f: &mut fmt::Formatter<'_>, title: &str, lines: &[Line]| {
            if lines.is_empty() {
                return Ok(());
            }
            writeln!(f, "\n  {title}")?;
            let width = lines.iter().map(|line| line.what.chars().count()).max().unwrap_or(0);
            lines.iter().try_for_each(|line| match &line.how {
                Some(how) => writeln!(f, "    {:width$}  {how} = {}", line.what, line.value),
                None => writeln!(f, "    {:width$}  {}", line.what, line.value),
            })
        };
        lines(f, "given", &self.given)?;
        lines(f, "steps", &self.steps)?;
        writeln!(f, "\n  result")?;
        self.answer.iter().try_for_each(|sentence| writeln!(f, "    {sentence}"))?;
        writeln!(f, "\n  source")?;
        self.sources.iter().try_for_each(|source| writeln!(f, "    {source}"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::COPPER;

    #[test]
    fn a_working_reads_as_given_steps_result_source() {
        let working = Working::of("coil resistance")
            .given("reading", "6.9 Ω")
            .step("at 20 °C", "6.9 Ω / 1.165", "5.92 Ω")
            .answer("It is too high.")
            .sources(&[COPPER]);
        let text = working.to_string();
        let order =
            ["coil resistance", "given", "6.9 Ω", "steps", "= 5.92 Ω", "result", "too high", "source"];
        let places: Vec<_> = order.iter().filter_map(|part| text.find(part)).collect();
        assert_eq!(places.len(), order.len(), "{text}");
        assert!(places.is_sorted(), "{text}");
    }
}
