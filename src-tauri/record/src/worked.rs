//! How a value that was worked out came about, step by step as its figure tells it.

use panside_job::entry::WorkedOut;
use panside_messages::Speaker;
use panside_trade::{Worked, Working};

/// The steps of the calculation, each as `what: how = value`. Empty where nothing was worked out. One that this version
/// can't read is said.
pub(crate) fn how(worked_out: Option<&WorkedOut>) -> Vec<String> {
    let workings: Vec<Working> = match worked_out {
        None | Some(WorkedOut::Reading(_) | WorkedOut::Vin(_) | WorkedOut::Codes(_)) => Vec::new(),
        Some(WorkedOut::Coil(judged)) => vec![judged.result.working()],
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
        Some(WorkedOut::Unreadable { kind, version }) => return vec![unreadable(kind, *version)],
    };
    workings.iter().flat_map(lines).collect()
}

fn unreadable(kind: &str, version: u32) -> String {
    format!(
        "How this was worked out is kept in a form that this version of Panside can't read ({kind}, version {version}). The \
         value and its class stand as they were entered; a newer version shows the steps."
    )
}

fn lines(working: &Working) -> Vec<String> {
    working.steps.iter().map(|line| line.said(Speaker::english())).collect()
}
