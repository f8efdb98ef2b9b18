//! Parts, labor and measurements as comma-separated values (RFC 4180), for pasting into a shop's other programs.

use panside_messages::clean::line;
use panside_messages::{Message, Speaker};
use panside_trade::number::parse_number;

use crate::document::Document;
use crate::messages;
use crate::money::{Estimate, Line};
use crate::say::{Billed, billed, measured, other_labels};
use crate::speak::Say;
use crate::time::Kind;

/// A file of comma-separated values.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Csv {
    /// The file's name.
    pub name: &'static str,
    /// What is in it.
    pub text: String,
}

impl Document {
    /// New parts and fluid, labor, and measurements, each as a file.
    #[must_use]
    pub fn to_csv(&self, speaker: &Speaker) -> [Csv; 3] {
        let say = &Say::by(speaker);
        [
            Csv { name: "parts.csv", text: parts(self, say) },
            Csv { name: "labor.csv", text: labor(self, say) },
            Csv { name: "measurements.csv", text: measurements(self, say) },
        ]
    }
}

fn parts(document: &Document, say: &Say<'_>) -> String {
    let head = [
        messages::column_part(),
        messages::column_number(),
        messages::column_quantity(),
        messages::column_unit(),
        messages::column_price(),
        messages::column_amount(),
        messages::column_currency(),
    ];
    let mut rows: Vec<_> = billed(document).iter().map(|part| part_row(part, say)).collect();
    let filled = document.fluid.filled_in_all.as_ref();
    rows.extend(filled.map(|filled| {
        let label = say.listed(document.fluid.label.iter().cloned());
        let name = if label.is_empty() { say.says(&messages::heading_fluid()) } else { label };
        wide(head.len(), [name, String::new(), say.number(&filled.value), filled.unit.clone()])
    }));
    rows.extend(
        other_labels(document)
            .map(|said| wide(head.len(), [say.within(&messages::labeled(&said.label, &said.text))])),
    );
    csv(say, &head, rows)
}

/// A part with the pieces that went in, as many as were estimated where nobody counts them, and its price.
fn part_row(part: &Billed<'_>, say: &Say<'_>) -> Vec<String> {
    let line = part.line.map(|(line, _)| line);
    let quantity = match (part.fitted, line) {
        (Some(pieces), _) => pieces.to_string(),
        (None, Some(line)) => say.number(&line.quantity),
        (None, None) => String::new(),
    };
    let number = line.and_then(|line| line.number.clone()).unwrap_or_default();
    let [price, amount, currency] = money(part.line, say);
    // The estimate's amount is for as many as were estimated.
    let amount = if part.differs() { String::new() } else { amount };
    vec![part.name.to_owned(), number, quantity, String::new(), price, amount, currency]
}

/// Price, amount and currency of an estimate's line.
fn money(line: Option<(&Line, &Estimate)>, say: &Say<'_>) -> [String; 3] {
    let text = |text: &Option<String>| text.as_ref().map(|text| say.number(text)).unwrap_or_default();
    line.map_or_else(Default::default, |(line, of)| {
        [text(&line.price), text(&line.comes_to), of.currency.clone()]
    })
}

/// A row with empty cells up to so many.
fn wide<const N: usize>(columns: usize, cells: [String; N]) -> Vec<String> {
    cells.into_iter().chain(std::iter::repeat_n(String::new(), columns - N)).collect()
}

fn labor(document: &Document, say: &Say<'_>) -> String {
    let head = [
        messages::column_phase(),
        messages::column_planned(),
        messages::column_unplanned(),
        messages::column_waiting(),
        messages::column_reason(),
        messages::column_estimated(),
        messages::column_price(),
        messages::column_amount(),
        messages::column_currency(),
    ];
    let rows = document.time.phases.iter().filter(|phase| phase.minutes.labor() + phase.minutes.waiting > 0);
    let rows = rows.map(|phase| {
        let minutes = [phase.minutes.planned, phase.minutes.unplanned, phase.minutes.waiting];
        let steps = document.phases.iter().filter(|one| one.id == phase.phase).flat_map(|one| &one.steps);
        let reasons = steps.flat_map(|step| {
            let of_step = document.time.apart.iter().filter(|apart| apart.step == step.id);
            of_step
                .filter(|apart| apart.kind == Kind::Unplanned)
                .flat_map(|apart| apart.reasons.iter().cloned())
        });
        let [planned, unplanned, waiting] = minutes.map(|one| say.labor(one));
        wide(head.len(), [phase.title.clone(), planned, unplanned, waiting, say.apart(reasons)])
    });
    let estimated =
        document.money.estimates.iter().flat_map(|of| of.labor.iter().map(move |line| (line, of)));
    let estimated = estimated.map(|(line, of)| {
        let hours = say.within(&messages::hours_labor(say.number(&line.quantity)));
        let blank = || String::new();
        let cells = [line.what.clone(), blank(), blank(), blank(), blank(), hours];
        cells.into_iter().chain(money(Some((line, of)), say)).collect()
    });
    csv(say, &head, rows.chain(estimated).collect())
}

fn measurements(document: &Document, say: &Say<'_>) -> String {
    let head = [
        messages::column_step(),
        messages::column_entry(),
        messages::column_value(),
        messages::column_sheet(),
        messages::column_result(),
    ];
    csv(say, &head, measured(document, say))
}

fn csv(say: &Say<'_>, head: &[Message], rows: Vec<Vec<String>>) -> String {
    let head = head.iter().map(|column| say.says(column)).collect();
    let lines = [head]
        .into_iter()
        .chain(rows)
        .map(|row: Vec<String>| row.iter().map(|text| cell(text)).collect::<Vec<_>>().join(",") + "\r\n");
    lines.collect()
}

/// A cell: quoted where it must be, and never one that a spreadsheet would take for a formula.
fn cell(text: &str) -> String {
    let mut text = line(text);
    if text.starts_with(['=', '+', '-', '@']) && parse_number(&text).is_err() {
        text.insert(0, '\'');
    }
    if text.contains([',', '"', '\n']) { ["\"", &text.replace('"', "\"\""), "\""].concat() } else { text }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cell_is_quoted_where_it_must_be_and_is_no_formula() {
        let cells = ["pan bolts", "4, then 9", "the \"long\" one", "=2+2", "-4.5", "-> see note"];
        let written =
            ["pan bolts", "\"4, then 9\"", "\"the \"\"long\"\" one\"", "'=2+2", "-4.5", "'-> see note"];
        assert_eq!(cells.map(cell), written);
    }
}
