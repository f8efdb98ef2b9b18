//! Parts, labor and measurements as comma-separated values (RFC 4180), for pasting into a shop's other programs.

use panside_messages::clean::line;
use panside_messages::{Message, Speaker};
use panside_trade::number::parse_number;

use crate::document::Document;
use crate::messages;
use crate::say::measured;
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
    let head = [messages::column_part(), messages::column_quantity(), messages::column_unit()];
    let fitted = document.parts.fitted.iter();
    let mut rows: Vec<_> =
        fitted.map(|part| vec![part.name.clone(), part.pieces.to_string(), String::new()]).collect();
    let filled = document.fluid.filled_in_all.as_ref();
    rows.extend(filled.map(|filled| {
        let label = say.listed(document.fluid.label.iter().cloned());
        let name = if label.is_empty() { say.says(&messages::heading_fluid()) } else { label };
        vec![name, say.number(&filled.value), filled.unit.clone()]
    }));
    let scanned = document.parts.scanned.iter();
    rows.extend(scanned.map(|said| {
        vec![say.within(&messages::labeled(&said.label, &said.text)), String::new(), String::new()]
    }));
    csv(say, &head, rows)
}

fn labor(document: &Document, say: &Say<'_>) -> String {
    let head = [
        messages::column_phase(),
        messages::column_planned(),
        messages::column_unplanned(),
        messages::column_waiting(),
        messages::column_reason(),
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
        let reasons = say.apart(reasons);
        let hours = minutes.map(|one| say.labor(one));
        [phase.title.clone()].into_iter().chain(hours).chain([reasons]).collect()
    });
    csv(say, &head, rows.collect())
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
