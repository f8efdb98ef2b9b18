//! Parts as they are billed: what was put in new beside what was estimated, each part once.

use crate::bill::Fitted;
use crate::document::Document;
use crate::messages;
use crate::money::{Estimate, Line};
use crate::speak::Say;

/// A part that was estimated, put in, or both.
pub(crate) struct Billed<'a> {
    pub name: &'a str,
    /// The estimate's line with its currency.
    pub line: Option<(&'a Line, &'a Estimate)>,
    /// How many new pieces went in; nothing where nobody counts such pieces.
    pub fitted: Option<i32>,
}

/// Every part once: those of the estimates, then what was put in beside them.
pub(crate) fn billed(document: &Document) -> Vec<Billed<'_>> {
    let fitted = &document.parts.fitted;
    let mut taken: Vec<&str> = Vec::new();
    let lines = document.money.estimates.iter().flat_map(|of| of.parts.iter().map(move |line| (line, of)));
    let mut all = Vec::new();
    for (line, estimate) in lines {
        let same = |part: &&Fitted| part.name.eq_ignore_ascii_case(&line.what);
        // A part that two lines name was put in once.
        let found = fitted.iter().find(same).filter(|part| !taken.contains(&part.id.as_str()));
        taken.extend(found.map(|part| part.id.as_str()));
        let fitted = found.map(|part| part.pieces);
        all.push(Billed { name: &line.what, line: Some((line, estimate)), fitted });
    }
    let beside = fitted.iter().filter(|part| !taken.contains(&part.id.as_str()));
    all.extend(beside.map(|part| Billed { name: &part.name, line: None, fitted: Some(part.pieces) }));
    all
}

impl Billed<'_> {
    /// What it is, with its part number.
    pub fn called(&self, say: &Say<'_>) -> String {
        match self.line.and_then(|(line, _)| line.number.as_ref()) {
            Some(number) => say.within(&messages::part_numbered(self.name, number)),
            None => self.name.to_owned(),
        }
    }

    /// Whether another number went in than was estimated.
    pub fn differs(&self) -> bool {
        let estimated = self.line.map(|(line, _)| line.quantity.as_str());
        self.fitted.zip(estimated).is_some_and(|(fitted, estimated)| fitted.to_string() != estimated)
    }

    /// How many went in, and how many were estimated where that is another number.
    pub fn quantity(&self, say: &Say<'_>) -> String {
        let estimated = self.line.map(|(line, _)| say.number(&line.quantity));
        match (self.fitted, estimated) {
            (Some(fitted), Some(estimated)) if self.differs() => {
                say.within(&messages::part_differs(fitted.to_string(), estimated))
            }
            (Some(fitted), _) => fitted.to_string(),
            (None, Some(estimated)) => say.within(&messages::part_estimated(estimated)),
            (None, None) => String::new(),
        }
    }

    /// What it comes to by the estimate.
    pub fn amount(&self, say: &Say<'_>) -> String {
        let amount =
            self.line.and_then(|(line, of)| Some(say.measure(line.comes_to.as_ref()?, &of.currency)));
        amount.unwrap_or_default()
    }
}

/// Texts of labels that no line of an estimate has as its part number.
pub(crate) fn other_labels(document: &Document) -> impl Iterator<Item = &crate::account::Said> {
    let lines = document.money.estimates.iter().flat_map(|of| &of.parts);
    let numbers: Vec<&String> = lines.filter_map(|line| line.number.as_ref()).collect();
    let scanned = document.parts.scanned.iter();
    scanned.filter(move |said| !numbers.iter().any(|number| number.eq_ignore_ascii_case(&said.text)))
}
