//! How a value that was worked out came about, step by step as its figure tells it.

use panside_job::entry::{DecidedBy, NamedResult, WorkedOut};
use panside_trade::{Worked, Working};

use crate::messages;
use crate::source::{Found, Source};
use crate::speak::Say;

/// The steps of the calculation, each as `what: how = value`; of a decision what it was decided by. Empty where nothing was
/// worked out. One that this version can't read is said.
pub(crate) fn how(source: Source<'_>, found: &Found<'_>) -> Vec<String> {
    let (worked_out, say) = (found.value.worked_out.as_ref(), source.say);
    let workings: Vec<Working> = match worked_out {
        None
        | Some(
            WorkedOut::Reading(_) | WorkedOut::Vin(_) | WorkedOut::Codes(_) | WorkedOut::Authorization(_),
        ) => Vec::new(),
        Some(WorkedOut::Estimate(estimate)) => vec![estimate.working()],
        Some(WorkedOut::Coil(judged)) => vec![judged.result.working()],
        Some(WorkedOut::Coils(judged)) => {
            let named = |coil: &NamedResult| {
                let lines = lines(&coil.result.working(), say).into_iter();
                lines.map(|line| format!("{}, {line}", coil.name)).collect::<Vec<_>>()
            };
            return judged.coils.iter().flat_map(named).collect();
        }
        Some(WorkedOut::CoolDown(judged)) => {
            let surface = judged.surface.as_ref().map(Worked::working);
            judged.cooling.as_ref().map(Worked::working).into_iter().chain(surface).collect()
        }
        Some(WorkedOut::Balance(judged)) => judged.balance.iter().map(Worked::working).collect(),
        Some(WorkedOut::Level(judged)) => {
            let learnt = judged.learnt.as_ref().map(Worked::working);
            learnt.into_iter().chain(judged.top_up.as_ref().map(Worked::working)).collect()
        }
        Some(WorkedOut::Torque(judged)) => judged.adapter.iter().map(Worked::working).collect(),
        Some(WorkedOut::Decision(result)) => {
            let checklist = &source.job.procedure.checklist;
            let input = |input: &DecidedBy| {
                let (entry, is) = (input.called(&found.step.id, checklist), input.was(checklist));
                say.within(&messages::value_decided_by(entry, is))
            };
            return result.inputs.iter().map(input).collect();
        }
        Some(WorkedOut::Unreadable { kind, version }) => {
            return vec![say.says(&messages::how_unreadable(kind, version.to_string()))];
        }
    };
    workings.iter().flat_map(|working| lines(working, say)).collect()
}

fn lines(working: &Working, say: &Say<'_>) -> Vec<String> {
    working.steps.iter().map(|line| line.said(say.speaker())).collect()
}
