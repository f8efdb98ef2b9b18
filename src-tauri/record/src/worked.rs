//! How a value that was worked out came about, step by step as its figure tells it.

use panside_job::entry::{BalanceResult, CoilJudged, CoolDownResult, LevelJudged, TorqueJudged};
use panside_job::job::EnteredValue;
use panside_trade::{Worked, Working};
use serde::de::DeserializeOwned;

/// The steps of the reckoning, each as `what: how = value`. Empty where nothing was worked out, and where a value was
/// put right on paper: that keeps no reckoning.
pub(crate) fn how(entered: &EnteredValue) -> Vec<String> {
    let workings =
        match entered.value.kind() {
            "coil" => read::<CoilJudged>(entered).map(|judged| vec![judged.result.working()]),
            "cool_down" => read::<CoolDownResult>(entered).map(|judged| {
                let surface = judged.surface.map(|surface| surface.working());
                judged.cooling.map(|cooling| cooling.working()).into_iter().chain(surface).collect()
            }),
            "balance" => read::<BalanceResult>(entered)
                .map(|judged| judged.balance.iter().map(Worked::working).collect()),
            "level" => read::<LevelJudged>(entered).map(|judged| {
                let learnt = judged.learnt.map(|learnt| learnt.working());
                learnt.into_iter().chain(judged.top_up.map(|top_up| top_up.working())).collect()
            }),
            "torque" => read::<TorqueJudged>(entered)
                .map(|judged| judged.adapter.iter().map(Worked::working).collect()),
            _ => None,
        };
    workings.iter().flatten().flat_map(lines).collect()
}

fn read<T: DeserializeOwned>(entered: &EnteredValue) -> Option<T> {
    // A record of another version may have kept less: then the value stands without its reckoning.
    serde_json::from_str(entered.detail.as_deref()?).ok()
}

fn lines(working: &Working) -> Vec<String> {
    let line = |line: &panside_trade::working::Line| match &line.how {
        Some(how) => format!("{}: {how} = {}", line.what, line.value),
        None => format!("{}: {}", line.what, line.value),
    };
    working.steps.iter().map(line).collect()
}
