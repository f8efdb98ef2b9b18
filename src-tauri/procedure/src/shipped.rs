//! Shipped checklists for tests of this crate.

use crate::{Procedure, parts};

macro_rules! shipped {
    ($name:literal) => {
        include_bytes!(concat!("../../../checklists/", $name)).as_slice()
    };
}

pub(crate) fn level_check() -> Procedure {
    joined(shipped!("level-check.checklist.json"))
}

pub(crate) fn return_visit() -> Procedure {
    joined(shipped!("return-visit.checklist.json"))
}

fn joined(checklist: &[u8]) -> Procedure {
    let part = |name: &str| match name {
        "identify" => Some(shipped!("parts/identify.part.json").to_vec()),
        "concern" => Some(shipped!("parts/concern.part.json").to_vec()),
        "level" => Some(shipped!("parts/level.part.json").to_vec()),
        "level-plug" => Some(shipped!("parts/level-plug.part.json").to_vec()),
        "road-before" => Some(shipped!("parts/road-before.part.json").to_vec()),
        "battery" => Some(shipped!("parts/battery.part.json").to_vec()),
        "lift" => Some(shipped!("parts/lift.part.json").to_vec()),
        _ => None,
    };
    parts::join(checklist, &part).unwrap().load().unwrap()
}
