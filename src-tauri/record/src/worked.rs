//! How a value that was worked out came about, step by step as its figure tells it.

use panside_job::entry::{BalanceResult, CoilJudged, CoolDownResult, LevelJudged, TorqueJudged};
use panside_job::job::EnteredValue;
use panside_trade::{Worked, Working};

/// The steps of the reckoning, each as `what: how = value`. Empty where nothing was worked out.
pub(crate) fn how(entered: &EnteredValue) -> Vec<String> {
    let workings = match entered.value.kind() {
        "coil" => entered.worked_out::<CoilJudged>().map(|judged| vec![judged.result.working()]),
        "cool_down" => entered.worked_out::<CoolDownResult>().map(|judged| {
            let surface = judged.surface.map(|surface| surface.working());
            judged.cooling.map(|cooling| cooling.working()).into_iter().chain(surface).collect()
        }),
        "balance" => entered
            .worked_out::<BalanceResult>()
            .map(|judged| judged.balance.iter().map(Worked::working).collect()),
        "level" => entered.worked_out::<LevelJudged>().map(|judged| {
            let learnt = judged.learnt.map(|learnt| learnt.working());
            learnt.into_iter().chain(judged.top_up.map(|top_up| top_up.working())).collect()
        }),
        "torque" => entered
            .worked_out::<TorqueJudged>()
            .map(|judged| judged.adapter.iter().map(Worked::working).collect()),
        _ => None,
    };
    workings.iter().flatten().flat_map(lines).collect()
}

fn lines(working: &Working) -> Vec<String> {
    let line = |line: &panside_trade::working::Line| match &line.how {
        Some(how) => format!("{}: {how} = {}", line.what, line.value),
        None => format!("{}: {}", line.what, line.value),
    };
    working.steps.iter().map(line).collect()
}
