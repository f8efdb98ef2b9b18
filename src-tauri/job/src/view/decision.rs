//! What a decision's table says, and by what.

use panside_procedure::format::{Ask, Entry};
use panside_procedure::machine::StepIx;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::make::At;
use crate::command::Actor;
use crate::decide::draft::{Counted, Draft};
use crate::entry::decision::{self, Drawn};
use crate::entry::{DecidedBy, Past, WorkedOut};
use crate::job::EnteredValue;
use crate::message::{Message, as_said};
use crate::people::Names;

/// What a decision's table says: of a step in progress, to come or to be corrected what it says now, else what it
/// said then.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct DecisionView {
    /// The class that the table comes to; nothing while something is to be entered first.
    pub class: Option<String>,
    /// The sentence of its row, or what is to be entered first.
    pub says: Message,
    /// What decides, as far as it is there.
    pub inputs: Vec<DecisionInput>,
}

/// An entry that decides.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct DecisionInput {
    /// What it is called.
    pub label: Message,
    /// What it is.
    pub is: Message,
}

impl DecisionView {
    pub(super) fn each_message(&mut self, say: &mut dyn FnMut(&mut Message)) {
        say(&mut self.says);
        for DecisionInput { label, is } in &mut self.inputs {
            say(label);
            say(is);
        }
    }
}

/// The table of an entry; nothing for one of another kind.
pub(super) fn view(at: At<'_>, step: &str, ask: &Ask, ended: Option<&EnteredValue>) -> Option<DecisionView> {
    let Ask::Decision(asked) = ask else { return None };
    let checklist = &at.job.procedure.checklist;
    let inputs = |inputs: &[DecidedBy]| {
        let input = |input: &DecidedBy| DecisionInput {
            label: input.called(step, checklist),
            is: input.was(checklist),
        };
        inputs.iter().map(input).collect()
    };
    if let Some(WorkedOut::Decision(result)) = ended.and_then(|entered| entered.worked_out.as_ref()) {
        let (class, says) = (Some(result.table.clone()), as_said(result.says(asked)?));
        return Some(DecisionView { class, says, inputs: inputs(&result.inputs) });
    }
    let past = Past::of(at.job, &[], at.now);
    let Drawn { inputs: there, row } = decision::draw(asked, step, checklist, Some(past));
    let (class, says) = match row {
        Ok((_, class, says)) => (Some(class.to_owned()), as_said(says)),
        Err(first) => (None, first),
    };
    Some(DecisionView { class, says, inputs: inputs(&there) })
}

/// Whether a decision of a step in progress has to be made again.
pub(super) fn is_stale(at: At<'_>, step: StepIx, entry: &Entry, entered: &EnteredValue) -> bool {
    let EnteredValue { value, class, worked_out, .. } = entered;
    draft(at).is_stale(step, entry, Counted { value, class, worked_out: worked_out.as_ref() })
}

/// A command of nobody. Who it is only matters for signatures, which are judged when they are given.
pub(super) fn draft(at: At<'_>) -> Draft<'_> {
    Draft {
        job: at.job,
        names: Names::Job(&at.job.people, at.job.last_seq()),
        who: &Actor::NOBODY,
        now: at.now,
        state: *at.state,
        events: Vec::new(),
    }
}
