//! Starting a job: the vehicle as it comes in must be one the checklist may begin with.

use std::collections::BTreeMap;

use panside_journal::Hash;
use panside_procedure::format::Checklist;
use panside_procedure::machine::VariableKind;
use panside_procedure::{Procedure, State};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::change::vars;
use crate::command::Refusal;
use crate::decide::unmet::Because;
use crate::event::{Event, Introduced, Pinned, PinnedTexts, Started};
use crate::message::{Arg, refused_no_such, start_no_repair_order, start_not_allowed, start_value};
use crate::sheet::Specs;
use crate::size;

/// What is known when a vehicle comes in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Intake {
    /// SHA-256 of the checklist's bytes.
    pub checklist_hash: Hash,
    /// SHA-256 of the sheet's bytes.
    pub sheet_hash: Hash,
    /// The checklist's texts in another language.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub texts: Option<PinnedTexts>,
    /// How the vehicle comes in, by condition id. What is left out has the first value it can come in with.
    #[serde(default)]
    pub conditions: BTreeMap<String, String>,
    /// Number of the repair order. Never empty.
    pub repair_order: String,
    /// What the job is called in the list of jobs.
    pub label: String,
    /// Minutes that the shop's wall clock is ahead of UTC.
    #[serde(default)]
    pub utc_offset_min: i32,
}

/// The first event of a job, started by `by` ([`crate::Roster::acting`]). Whether the checklist is proved and whether the sheet fits it
/// ([`crate::sheet::check`]) is asked before.
///
/// # Errors
/// A refusal for a vehicle that comes in otherwise than the checklist allows, for a condition or value that it does
/// not have, and for an empty repair order.
pub fn start(
    procedure: &Procedure,
    specs: &Specs,
    intake: &Intake,
    by: Introduced,
) -> Result<Event, Refusal> {
    size::check(intake)?;
    let repair_order = intake.repair_order.trim();
    if repair_order.is_empty() {
        return Err(start_no_repair_order().into());
    }
    let machine = &procedure.machine;
    let mut conditions = BTreeMap::new();
    let mut given = Vec::new();
    if let Some(other) = intake.conditions.keys().find(|id| !has_condition(&procedure.checklist, id)) {
        return Err(refused_no_such("condition", other).into());
    }
    for (var, starts) in &machine.starts {
        let name = procedure.var_name(*var);
        let word = match machine.vars[var.at()].kind {
            VariableKind::Fact => fact(procedure, specs, name),
            _ => intake.conditions.get(name).map(String::as_str),
        };
        let value = match word {
            Some(word) => procedure.names.value_of(*var, word).filter(|value| starts.contains(value)),
            None => starts.first().copied(),
        };
        let Some(value) = value else {
            let wants = starts.iter().map(|&value| procedure.value_label(*var, value).to_owned()).collect();
            let word = procedure.labels_of(name, word.unwrap_or_default()).1;
            return Err(start_value(procedure.var_label(*var), word, Arg::AnyOf(wants)).into());
        };
        given.push((*var, value));
        if machine.vars[var.at()].kind == VariableKind::Condition {
            conditions.insert(name.to_owned(), procedure.value_name(*var, value).to_owned());
        }
    }
    if machine.start(&given).is_none() {
        let mut state = State::default();
        given.iter().for_each(|(var, value)| machine.vars[var.at()].field.set(&mut state, u64::from(*value)));
        let unmet = Because::of_rules(procedure).unmet(&machine.start_when, &state);
        return Err(Refusal { message: start_not_allowed(), unmet });
    }
    let (checklist, sheet) = (&procedure.checklist, &specs.sheet);
    Ok(Event::Started(Started {
        checklist: Pinned {
            id: checklist.id.clone(),
            revision: checklist.revision,
            hash: intake.checklist_hash,
        },
        sheet: Pinned { id: sheet.id.clone(), revision: sheet.revision, hash: intake.sheet_hash },
        texts: intake.texts.clone(),
        demo: checklist.demo || sheet.demo,
        conditions,
        repair_order: repair_order.to_owned(),
        label: intake.label.trim().to_owned(),
        utc_offset_min: intake.utc_offset_min,
        by,
    }))
}

fn has_condition(checklist: &Checklist, id: &str) -> bool {
    checklist.conditions.iter().any(|condition| condition.id == id)
}

/// The word that the sheet has for a fact.
pub(crate) fn fact<'a>(procedure: &Procedure, specs: &'a Specs, fact: &str) -> Option<&'a str> {
    let fact = procedure.checklist.facts.iter().find(|found| found.id == fact)?;
    specs.fact(&fact.sheet)
}

/// A condition that is asked about when a vehicle comes in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Question {
    /// Condition id.
    pub condition: String,
    /// In words.
    pub name: String,
    /// What it can be; the first is taken where nothing is answered.
    pub answers: Vec<Answer>,
}

/// A value that a condition can come in with.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[ts(rename = "IntakeAnswer")]
pub struct Answer {
    /// The value.
    pub value: String,
    /// In words.
    pub says: String,
}

/// Every condition that can be asked about at intake, with the values it can come in with.
#[must_use]
pub fn questions(procedure: &Procedure) -> Vec<Question> {
    let conditions = vars(procedure, VariableKind::Condition).filter_map(|var| {
        let (_, starts) = procedure.machine.starts.iter().find(|(found, _)| *found == var)?;
        let answer = |&value: &u8| {
            let says = procedure.value_label(var, value).to_owned();
            Answer { says, value: procedure.value_name(var, value).to_owned() }
        };
        let answers: Vec<Answer> = starts.iter().map(answer).collect();
        let condition = procedure.var_name(var).to_owned();
        (answers.len() > 1).then(|| Question {
            name: procedure.var_label(var).to_owned(),
            condition,
            answers,
        })
    });
    conditions.collect()
}

#[cfg(test)]
mod tests {
    use panside_procedure::format::Role;

    use super::*;
    use crate::message::unmet_value;
    use crate::testing::{person, procedure, specs};

    fn ada() -> Introduced {
        Introduced { person: person("Ada"), name: "Ada".into(), role: Role::Technician }
    }

    fn intake(conditions: &[(&str, &str)]) -> Intake {
        Intake {
            checklist_hash: Hash::of(b"checklist"),
            sheet_hash: Hash::of(b"sheet"),
            texts: None,
            conditions: conditions.iter().map(|(name, value)| ((*name).into(), (*value).into())).collect(),
            repair_order: " RO 1042 ".into(),
            label: "invented van".into(),
            utc_offset_min: 60,
        }
    }

    #[test]
    fn a_start_takes_down_every_condition_also_those_not_asked_about() {
        let Event::Started(started) =
            start(&procedure(), &specs(), &intake(&[("key", "secured")]), ada()).unwrap()
        else {
            panic!("a job begins with its start");
        };
        assert_eq!(started.conditions["key"], "secured");
        assert_eq!(started.conditions["lift"], "floor");
        assert_eq!((started.repair_order.as_str(), started.demo), ("RO 1042", true));
    }

    #[test]
    fn a_vehicle_that_comes_in_otherwise_is_refused() {
        let refused = start(&procedure(), &specs(), &intake(&[("engine", "running")]), ada()).unwrap_err();
        assert_eq!(refused.message, start_value("engine", "running", Arg::AnyOf(vec!["off".into()])));
        let unknown = start(&procedure(), &specs(), &intake(&[("boat", "afloat")]), ada()).unwrap_err();
        assert_eq!(unknown.message, refused_no_such("condition", "boat"));
    }

    #[test]
    fn a_start_that_only_the_rule_for_starting_forbids_says_what_it_lacks() {
        let text = include_str!("../tests/fixtures/pan.checklist.json");
        let text = text.replace(r#""draws": "engine""#, r#""start": ["off", "running"], "draws": "engine""#);
        let procedure = Procedure::load(text.as_bytes()).unwrap();
        let refused = start(&procedure, &specs(), &intake(&[("engine", "running")]), ada()).unwrap_err();
        assert_eq!(refused.message, start_not_allowed());
        assert_eq!(refused.unmet, [unmet_value("engine", "running", Arg::AnyOf(vec!["off".into()]))]);
    }

    #[test]
    fn a_start_needs_a_repair_order() {
        let blank = Intake { repair_order: " ".into(), ..intake(&[]) };
        assert_eq!(
            start(&procedure(), &specs(), &blank, ada()).unwrap_err().message,
            start_no_repair_order()
        );
    }

    #[test]
    fn a_repair_order_and_a_label_of_more_than_a_line_are_refused() {
        let long = "9".repeat(size::LINE + 1);
        for intake in [
            Intake { repair_order: long.clone(), ..intake(&[]) },
            Intake { label: long.clone(), ..intake(&[]) },
        ] {
            let refused = start(&procedure(), &specs(), &intake, ada()).unwrap_err();
            assert_eq!(refused.message.id, "refused-too-long");
        }
    }

    #[test]
    fn only_what_can_come_in_either_way_is_asked_about() {
        let asked = questions(&procedure());
        assert_eq!(asked.len(), 1);
        assert_eq!(asked[0].condition, "key");
        let answers: Vec<_> = asked[0].answers.iter().map(|a| (a.value.as_str(), a.says.as_str())).collect();
        assert_eq!(answers, [("in_car", "in the vehicle"), ("secured", "put away")]);
    }
}
