//! Invented jobs in the plainest terms: so many minutes, this zone, after those steps, the lift up or down. They are made
//! by chance from fixed seeds, written as a checklist for the planner, and solved apart by whoever reads the terms.

use panside_procedure::Procedure;
use panside_procedure::plan::{Minutes, Task};
use panside_tests::named;
use serde::Serialize;
use serde_json::{Map, Value, json};

/// `SplitMix64` (Steele, Lea and Flood, 2014; constants from memory): small, and the same everywhere.
pub struct Chance(pub u64);

impl Chance {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    pub fn below(&mut self, end: u32) -> u32 {
        u32::try_from(self.next() % u64::from(end)).unwrap_or(0)
    }

    pub fn one_in(&mut self, of: u32) -> bool {
        self.below(of) == 0
    }
}

/// What a step needs of the lift.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Lift {
    Any,
    Floor,
    Up,
    /// On the floor again, where the lift goes up only once.
    Back,
}

/// A wait of a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Wait {
    No,
    /// It is begun only so many minutes after that step is done: something cures.
    Cures {
        after: usize,
        minutes: u32,
    },
    /// It is begun only when the engine has been off for so many minutes: something cools.
    Cools {
        minutes: u32,
    },
    /// After its hands so many minutes pass in which it may be left: something drains.
    Drains {
        minutes: u32,
    },
    /// After its hands somebody stays and watches for so many minutes.
    Watched {
        minutes: u32,
    },
}

/// One step.
#[derive(Debug, Clone, Serialize)]
pub struct Step {
    pub minutes: u32,
    /// 1 to 4.
    pub zone: u8,
    pub phase: usize,
    pub after: Vec<usize>,
    pub lift: Lift,
    /// It is worked with the engine running (or, false, off). Nothing: either.
    pub engine: Option<bool>,
    pub wait: Wait,
    /// It finds out what others need to know; that grows old.
    pub probes: bool,
    /// It needs to be known what the probe finds out.
    pub knows: bool,
    /// It is done only while that step is not: what it works at is then gone.
    pub not_once: Option<usize>,
}

/// A job.
#[derive(Debug, Clone, Serialize)]
pub struct Instance {
    pub people: usize,
    pub walk: u32,
    pub raise: u32,
    pub lower: u32,
    /// The lift goes up once and down once.
    pub lift_once: bool,
    pub start: u32,
    pub stop: u32,
    /// Minutes for which what the probe finds out stays known.
    pub fresh: u32,
    pub steps: Vec<Step>,
}

const ZONES: [&str; 4] = ["under", "engine_bay", "cabin", "bench"];

impl Instance {
    /// A small job with everything in it that takes time.
    pub fn small(seed: u64) -> Instance {
        let chance = &mut Chance(seed);
        let count = 2 + chance.below(8) as usize;
        let people = 1 + chance.below(2) as usize;
        // What makes many moments is not all in one job, since whoever tries them all is slow.
        let many = count > if people == 2 { 4 } else { 7 };
        let (lifts, engine, probe) = (chance.one_in(2), chance.one_in(3), chance.one_in(3));
        let (lifts, engine) = (lifts && !many, engine && !many && !(lifts && people == 2));
        let longest = if many { 2 } else { 5 };
        let zones = if many && count > 7 && people == 2 {
            1
        } else if many {
            2
        } else {
            3
        };
        let cut = chance.below(count as u32 + 1) as usize;
        let probing = chance.below(count as u32) as usize;
        let mut steps: Vec<Step> = Vec::new();
        for at in 0..count {
            let after = (0..at).filter(|_| chance.one_in(if many { 2 } else { 4 })).collect();
            let lift = match chance.below(3) {
                0 if lifts => Lift::Floor,
                1 if lifts => Lift::Up,
                _ => Lift::Any,
            };
            let engine = (engine && chance.one_in(3)).then(|| chance.one_in(2));
            let minutes = 1 + chance.below(longest + 1);
            let wait = match chance.below(9) {
                0 | 1 if at > 0 => Wait::Cures { after: chance.below(at as u32) as usize, minutes },
                2 if engine.is_some() => Wait::Cools { minutes },
                3 => Wait::Drains { minutes },
                4 => Wait::Watched { minutes: minutes.min(3) },
                _ => Wait::No,
            };
            // An engine that runs is not under a vehicle that is up.
            let engine = if lift == Lift::Up && engine == Some(true) { None } else { engine };
            let not_once = (at + 1 < count && chance.one_in(8))
                .then(|| at + 1 + chance.below((count - at - 1) as u32) as usize);
            steps.push(Step {
                minutes: chance.below(longest + 1),
                zone: 1 + chance.below(zones) as u8,
                phase: usize::from(at >= cut),
                after,
                lift,
                engine,
                wait,
                probes: probe && at == probing,
                knows: probe && at > probing && chance.one_in(2),
                not_once,
            });
        }
        Instance {
            people,
            walk: chance.below(3),
            raise: chance.below(4),
            lower: chance.below(4),
            lift_once: false,
            start: 1,
            stop: chance.below(2),
            fresh: 3 + chance.below(9),
            steps,
        }
    }

    /// A larger job, in which the lift goes up once and nothing grows old.
    pub fn large(seed: u64) -> Instance {
        let chance = &mut Chance(seed ^ 0x1a5_9e00);
        let count = 12 + chance.below(14) as usize;
        let people = 1 + chance.below(2) as usize;
        let lifts = chance.one_in(2);
        let mut steps: Vec<Step> = Vec::new();
        for at in 0..count {
            let near = at.saturating_sub(5)..at;
            let after = near.filter(|_| chance.one_in(3)).collect();
            let lift = match (3 * at / count, chance.one_in(4)) {
                _ if !lifts => Lift::Any,
                (_, true) => Lift::Any,
                (0, _) => Lift::Floor,
                (1, _) => Lift::Up,
                _ => Lift::Back,
            };
            let minutes = 5 + chance.below(40);
            let wait = match chance.below(12) {
                0 if at > 0 => {
                    Wait::Cures { after: at - 1 - chance.below(at.min(3) as u32) as usize, minutes }
                }
                1 => Wait::Drains { minutes },
                2 => Wait::Watched { minutes },
                _ => Wait::No,
            };
            steps.push(Step {
                minutes: 1 + chance.below(25),
                zone: 1 + chance.below(4) as u8,
                phase: 0,
                after,
                lift,
                engine: None,
                wait,
                probes: false,
                knows: false,
                not_once: None,
            });
        }
        let (raise, lower) = (1 + chance.below(5), 1 + chance.below(5));
        let walk = chance.below(3);
        Instance { people, walk, raise, lower, lift_once: true, start: 1, stop: 0, fresh: 30, steps }
    }

    /// Whether some step asks for the lift, which then can be moved.
    pub fn lifts(&self) -> bool {
        self.steps.iter().any(|step| step.lift != Lift::Any)
    }

    /// Whether some step asks for the engine, which then can be started and stopped.
    pub fn runs(&self) -> bool {
        self.steps.iter().any(|step| step.engine.is_some())
    }

    /// The job as a checklist.
    pub fn checklist(&self) -> Value {
        let phases = 1 + self.steps.iter().map(|step| step.phase).max().unwrap_or(0);
        let steps = |phase: usize| -> Vec<Value> {
            let own = self.steps.iter().enumerate().filter(|(_, step)| step.phase == phase);
            own.map(|(at, step)| self.step(at, step)).collect()
        };
        let phases = (0..phases).filter(|&phase| !steps(phase).is_empty());
        let phases =
            phases.map(|at| json!({ "id": format!("phase_{at}"), "title": "Phase", "steps": steps(at) }));
        let mut conditions = vec![
            json!({ "id": "lift", "label": "a label", "values": named(&["floor", "up", "back"]) }),
            json!({ "id": "engine", "label": "a label", "values": named(&["off", "running"]) }),
        ];
        let made = |at: usize| json!({ "id": format!("made_{at}"), "label": "a label", "values": named(&["no", "yes"]) });
        conditions.extend((0..self.steps.len()).map(made));
        let down = if self.lift_once { "back" } else { "floor" };
        let mut vehicle_actions = Vec::new();
        if self.lifts() {
            vehicle_actions.extend([
                json!({ "id": "raise", "title": "Raise", "needs": "lift = floor", "makes": { "lift": "up" }, "minutes": self.raise }),
                json!({ "id": "lower", "title": "Lower", "needs": "lift = up", "makes": { "lift": down }, "minutes": self.lower }),
            ]);
        }
        if self.runs() {
            vehicle_actions.extend([
                json!({ "id": "start", "title": "Start", "needs": "engine = off", "makes": { "engine": "running" }, "minutes": self.start }),
                json!({ "id": "stop", "title": "Stop", "needs": "engine = running", "makes": { "engine": "off" }, "minutes": self.stop }),
            ]);
        }
        json!({
            "format": "panside-checklist/1", "id": "invented", "title": "Invented", "revision": 1, "demo": true,
            "crew": self.people, "conditions": conditions, "vehicle_actions": vehicle_actions,
            "gates": [{ "id": "probe", "label": "a label", "classes": named(&["cool"]), "fresh_for": self.fresh }],
            "phases": phases.collect::<Vec<_>>(),
            "dangers": [{ "id": "fumes", "signal": "danger", "text": "Nobody runs an engine on the lift.",
                "when": "engine = running and lift = up" }],
            "done_when": "lift != up and engine = off", "safe_to_leave": "true"
        })
    }

    fn step(&self, at: usize, step: &Step) -> Value {
        let mut needs = vec!["true".to_owned()];
        match step.lift {
            Lift::Any => {}
            Lift::Floor => needs.push("lift = floor".to_owned()),
            Lift::Up => needs.push("lift = up".to_owned()),
            Lift::Back => needs.push("lift = back".to_owned()),
        }
        needs.extend(step.engine.map(|runs| format!("engine = {}", if runs { "running" } else { "off" })));
        needs.extend(step.knows.then(|| "probe = cool".to_owned()));
        needs.extend(step.not_once.map(|other| format!("made_{other} = no")));
        let mut text = json!({
            "id": format!("step_{at}"), "title": "Step", "instruction": "Do it.", "minutes": step.minutes,
            "zone": ZONES[usize::from(step.zone) - 1], "needs": needs.join(" and "),
            "after": step.after.iter().map(|before| format!("step_{before}")).collect::<Vec<_>>(),
            "makes": Map::from_iter([(format!("made_{at}"), json!("yes"))])
        });
        if step.probes {
            text["sets"] = json!({ "probe": "cool" });
            text["again"] = json!("not known(probe)");
        }
        let wait = match step.wait {
            Wait::No => return text,
            Wait::Cures { after, minutes } => {
                json!({ "minutes": minutes, "since": format!("made_{after} = yes") })
            }
            Wait::Cools { minutes } => json!({ "minutes": minutes, "since": "engine = off" }),
            Wait::Drains { minutes } => json!({ "minutes": minutes, "attended": false }),
            Wait::Watched { minutes } => json!({ "minutes": minutes, "attended": true }),
        };
        text["wait"] = wait;
        text["wait"]["for"] = json!("it");
        text
    }

    /// The checklist, loaded.
    pub fn procedure(&self) -> Procedure {
        let text = self.checklist().to_string();
        Procedure::load(text.as_bytes()).unwrap_or_else(|problems| panic!("{problems}\n{text}"))
    }

    /// The job from its start on, as the planner takes it.
    pub fn task<'a>(&self, procedure: &'a Procedure) -> Task<'a> {
        let start = procedure.machine.start(&[]).unwrap_or_else(|| panic!("it may start"));
        let minutes = Minutes::of(procedure, self.walk, &|_| None);
        Task { people: self.people, minutes, ..Task::new(procedure, start) }
    }
}
