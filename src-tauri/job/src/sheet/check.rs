//! Whether a sheet fits a checklist: every key is there, and every limit is of the quantity that is asked for.

use panside_procedure::Procedure;
use panside_procedure::format::{Ask, Entry, Step};
use panside_procedure::load::lacking;
use panside_trade::units::Unit;

use super::needs::fits;
use super::{SheetProblem, Spec, Specs};
use crate::message::{sheet_entry_unit, sheet_lacks, sheet_quantity};

/// Everything about a sheet that does not fit a checklist. Nothing: the checklist can be worked with this sheet.
#[must_use]
pub fn check(procedure: &Procedure, specs: &Specs) -> Vec<SheetProblem> {
    let lacks = lacking(procedure, &specs.sheet);
    let mut problems: Vec<_> =
        lacks.into_iter().map(|what| SheetProblem { key: None, message: sheet_lacks(what) }).collect();
    for (_, step) in procedure.steps() {
        for entry in &step.entries {
            entry_fits(step, entry, specs, &mut problems);
        }
    }
    problems
}

fn entry_fits(step: &Step, entry: &Entry, specs: &Specs, problems: &mut Vec<SheetProblem>) {
    if let Ask::Reading(reading) = &entry.ask
        && let Err(error) = reading.unit.parse::<Unit>()
    {
        let known = error.message().args.remove("known");
        let message =
            sheet_entry_unit(&entry.id, &step.id, &reading.unit, known.unwrap_or_else(|| "".into()));
        problems.push(SheetProblem { key: None, message });
        return;
    }
    for need in entry.ask.sheet_needs() {
        let Some(wanted) = need.unit.and_then(|unit| unit.parse::<Unit>().ok()) else { continue };
        let found = match specs.get(need.key) {
            Some(Spec::Measure(limit) | Spec::Range(limit, _)) => limit.unit(),
            // A key that is missing or of another kind is told by `lacking`.
            _ => continue,
        };
        if !fits(wanted, found) {
            let message = sheet_quantity(&entry.id, &step.id, wanted.symbol(), found.symbol());
            problems.push(SheetProblem { key: Some(need.key.to_owned()), message });
        }
    }
}
