//! What measurements and findings do not bear out is refused, on the checklists that the program carries.

use serde_json::{Value, json};

use crate::support::{Desk, Said, json as read_json, script};

/// A demo walk as far as a step, with other values at some entries, and at the step's entry these tries.
struct Walk {
    walk: Value,
}

impl Walk {
    fn of(name: &str) -> Walk {
        let path = script(name);
        let mut walk = read_json(&path);
        for file in ["checklist", "sheet"] {
            walk[file] = json!(path.parent().unwrap().join(walk[file].as_str().unwrap()));
        }
        Walk { walk }
    }

    fn lines(&mut self) -> &mut Vec<Value> {
        self.walk["lines"].as_array_mut().unwrap()
    }

    /// Other values at a step that is worked; what is null is not entered.
    fn with(mut self, step: &str, values: Value) -> Walk {
        let worked = |line: &&mut Value| line.pointer("/do/work/step") == Some(&json!(step));
        let line = self.lines().iter_mut().rfind(worked).unwrap_or_else(|| panic!("nobody works {step}"));
        for (entry, value) in values.as_object().unwrap() {
            let entries = line["do"]["work"]["entries"].as_object_mut().unwrap();
            match value {
                Value::Null => entries.remove(entry),
                value => entries.insert(entry.clone(), value.clone()),
            };
        }
        self
    }

    /// Walks as far as the step, does these in its place, and no more. Each is a command with the message that must refuse it.
    fn tries(mut self, step: &str, tries: &[(Value, Option<&str>)]) -> Said {
        let of_step = |line: &Value| {
            let is = |command: &str| line["do"][command]["step"] == json!(step);
            line.get("refused").is_none() && ["begin", "work"].into_iter().any(is)
        };
        let end = self.lines().iter().position(of_step).unwrap();
        self.lines().truncate(end);
        let lines = tries.iter().map(|(command, refused)| match refused {
            Some(id) => json!({"after_min": 1, "do": command, "refused": id}),
            None => json!({"after_min": 1, "do": command}),
        });
        let lines: Vec<Value> = lines.collect();
        self.lines().extend(lines);
        let desk = Desk::new();
        let said = desk.walk(&desk.write("tried.walk.json", self.walk.to_string()));
        assert_eq!(said.code, 0, "{}\n{}", said.out, said.err);
        said
    }
}

fn begin(step: &str) -> (Value, Option<&'static str>) {
    (json!({"begin": {"step": step}}), None)
}

fn enter(step: &str, entry: &str, value: Value) -> Value {
    json!({"enter": {"step": step, "entry": entry, "value": value}})
}

fn decide(step: &str, entry: &str, class: &str) -> Value {
    enter(step, entry, json!({"decision": {"class": class}}))
}

fn against(step: &str, entry: &str, class: &str, by: &str) -> Value {
    let told = json!({"reason": "seen before on this vehicle", "by": by});
    enter(step, entry, json!({"decision": {"class": class, "against": told}}))
}

/// What the hydraulic chart says, in the step of the cause.
fn fed(class: &str) -> (Value, Option<&'static str>) {
    (enter("cause", "fed", json!({"choice": {"class": class}})), None)
}

/// The coils of the demo sheet's list, warm: the first three have the same limits.
fn coils(shows: [&str; 3]) -> Value {
    let list = ["shift 1", "shift 2", "third gear", "line pressure"]
        .into_iter()
        .zip(shows.into_iter().chain(["4,1"]));
    let readings: Vec<Value> = list.map(|(coil, shows)| json!({"coil": coil, "shows": shows})).collect();
    json!({"coils": {"readings": readings, "unit": "Ω", "temperature": "62", "temperature_unit": "°C"}})
}

const GOOD: [&str; 3] = ["6,2", "6,2", "6,2"];
const OPEN: [&str; 3] = ["6,2", "6,2", "OL"];

#[test]
fn a_good_coil_is_not_named_as_the_one_that_is_out() {
    let at = "coils_warm";
    let tries = [
        begin(at),
        (decide(at, "judged", "none"), Some("decision-first")),
        (enter(at, "coils", coils(GOOD)), None),
        (decide(at, "judged", "one"), Some("decision-not")),
        (against(at, "judged", "one", "tech"), Some("decision-not")),
        (decide(at, "judged", "none"), None),
    ];
    Walk::of("free-joint").tries(at, &tries);
}

/// All coils good at the case connector.
fn good_coils() -> Value {
    json!({"coils": coils(GOOD), "judged": {"decision": {"class": "none"}}})
}

#[test]
fn a_good_coil_cannot_be_named_as_the_cause() {
    let tries = [
        begin("cause"),
        fed("fits"),
        (decide("cause", "cause", "coil"), Some("decision-not")),
        (against("cause", "cause", "coil", "writer"), Some("decision-not")),
        (decide("cause", "cause", "sticking_valve"), None),
    ];
    Walk::of("free-joint").with("coils_warm", good_coils()).tries("cause", &tries);
}

#[test]
fn a_valve_is_not_named_before_the_hydraulic_chart_was_looked_at() {
    let tries = [begin("cause"), (decide("cause", "cause", "sticking_valve"), Some("decision-first"))];
    Walk::of("free-joint").with("coils_warm", good_coils()).tries("cause", &tries);
}

/// A valve that the table does not name, for which a reason and a second person are needed.
fn no_valve(table: &str) -> [(Value, Option<&'static str>); 4] {
    let valve = |by: &str| against("cause", "cause", "sticking_valve", by);
    [
        (decide("cause", "cause", "sticking_valve"), Some("decision-why")),
        (valve("tech"), Some("decision-second")),
        (decide("cause", "cause", table), None),
        (valve("second"), None),
    ]
}

#[test]
fn a_valve_is_named_beside_an_open_coil_by_no_one_alone() {
    let open = json!({"coils": coils(OPEN)});
    let tries = [vec![begin("cause"), fed("fits")], no_valve("coil").to_vec()].concat();
    Walk::of("free-joint").with("coils_warm", open).tries("cause", &tries);
}

#[test]
fn an_open_coil_is_called_good_by_no_one_alone() {
    let tries = [
        begin("coils_warm"),
        (enter("coils_warm", "coils", coils(OPEN)), None),
        (decide("coils_warm", "judged", "none"), Some("decision-why")),
        (against("coils_warm", "judged", "none", "tech"), Some("decision-second")),
        (against("coils_warm", "judged", "none", "second"), None),
    ];
    Walk::of("free-joint").tries("coils_warm", &tries);
}

#[test]
fn a_valve_that_nobody_commanded_or_that_follows_is_named_by_no_one_alone() {
    for command in ["shifts", "no_click", "not_possible"] {
        let tries = [vec![begin("cause"), fed("fits")], no_valve("not_found").to_vec()].concat();
        Walk::of("free-joint")
            .with("commanded", json!({"commanded": {"choice": {"class": command}}}))
            .with("coils_warm", good_coils())
            .tries("cause", &tries);
    }
}

#[test]
fn a_valve_is_no_cause_of_what_shows_elsewhere_or_with_a_loose_terminal() {
    let tries = [vec![begin("cause"), fed("does_not_fit")], no_valve("other").to_vec()].concat();
    Walk::of("free-joint").with("coils_warm", good_coils()).tries("cause", &tries);
    let loose = json!({"grip": {"choice": {"class": "loose"}}});
    let tries = [vec![begin("cause"), fed("fits")], no_valve("wiring").to_vec()].concat();
    Walk::of("free-joint").with("coils_warm", good_coils()).with("wiring", loose).tries("cause", &tries);
}

#[test]
fn no_plug_is_pulled_before_the_solenoid_was_commanded() {
    let mut walk = Walk::of("free-joint");
    walk.lines().retain(|line| line.pointer("/do/work/step") != Some(&json!("commanded")));
    walk.tries("coils_warm", &[(json!({"begin": {"step": "coils_warm"}}), Some("refused-needs"))]);
}

#[test]
fn a_coil_is_no_cause_while_a_wire_is_out_of_limits_or_a_terminal_is_loose() {
    for wrong in [
        json!({"wires": {"reading": {"value": "350", "unit": "mV"}}}),
        json!({"ground": {"reading": {"value": "400", "unit": "Ω"}}}),
        json!({"grip": {"choice": {"class": "loose"}}}),
    ] {
        let tries = [
            begin("cause"),
            fed("fits"),
            (decide("cause", "cause", "coil"), Some("decision-not")),
            (decide("cause", "cause", "wiring"), None),
        ];
        Walk::of("free-joint").with("wiring", wrong).tries("cause", &tries);
    }
}

#[test]
fn one_coil_that_is_out_does_not_make_it_the_pack() {
    let one = json!({"coils": coils(["6,2", "6,2", "7,1"]), "judged": {"decision": {"class": "one"}}});
    let tries = [
        begin("cause"),
        (decide("cause", "cause", "pack"), Some("decision-not")),
        (decide("cause", "cause", "other"), None),
    ];
    Walk::of("solenoid-pack").with("coils_warm", one).tries("cause", &tries);
}

#[test]
fn a_concern_that_did_not_show_goes_on_with_a_reason_and_a_name_only() {
    let all_good = json!({"not_right": {"several": {"found": []}}, "how": null});
    let tries = [
        begin("cause"),
        fed("fits"),
        (enter("cause", "bulletins", json!({"choice": {"class": "none"}})), None),
        (decide("cause", "shown", "shown"), Some("decision-not")),
        (decide("cause", "shown", "goes_on"), Some("decision-why")),
        (decide("cause", "shown", "not_shown"), None),
        (decide("cause", "cause", "coil"), None),
        (enter("cause", "which", json!({"note": {"text": "third gear"}})), None),
        (json!({"done": {"step": "cause"}}), Some("refused-not-yet")),
        (against("cause", "shown", "goes_on", "tech"), None),
        (json!({"done": {"step": "cause"}}), None),
    ];
    Walk::of("free-joint").with("road_before", all_good).tries("cause", &tries);
}

#[test]
fn a_road_test_says_both_where_it_is_not_right_and_what_it_does() {
    for half in [json!({"how": null}), json!({"not_right": {"several": {"found": []}}})] {
        let tries = [
            begin("cause"),
            (decide("cause", "shown", "shown"), Some("decision-not")),
            (decide("cause", "shown", "half_said"), None),
        ];
        Walk::of("free-joint").with("road_before", half).tries("cause", &tries);
    }
}

#[test]
fn a_concern_is_gone_after_the_work_only_when_all_is_right_or_a_second_person_says_so() {
    let at = "road_after";
    let not_right = enter(at, "not_right", json!({"several": {"found": ["shift_2_3"]}}));
    let tries = [
        begin(at),
        (not_right, None),
        (decide(at, "after_work", "gone"), Some("decision-not")),
        (decide(at, "after_work", "another"), Some("decision-why")),
        (against(at, "after_work", "another", "tech"), Some("decision-second")),
        (against(at, "after_work", "another", "second"), None),
        (decide(at, "after_work", "still"), None),
    ];
    Walk::of("free-joint").tries(at, &tries);
}

#[test]
fn chips_in_the_pan_are_carried_on_with_by_no_one_alone() {
    let tries = [
        begin("judge"),
        (decide("judge", "verdict", "carry_on"), Some("decision-why")),
        (against("judge", "verdict", "carry_on", "tech"), Some("decision-second")),
        (against("judge", "verdict", "carry_on", "second"), None),
        (decide("judge", "verdict", "stop_and_call"), None),
    ];
    let said = Walk::of("stop-and-call").tries("judge", &tries);
    assert!(said.out.contains("seen before on this vehicle"), "{}", said.out);
}

#[test]
fn particles_longer_than_a_millimeter_are_not_carried_on_with() {
    let long = json!({"longest": {"choice": {"class": "long"}}});
    let tries = [begin("judge"), (decide("judge", "verdict", "carry_on"), Some("decision-why"))];
    Walk::of("pan-and-filter").with("open_filter", long).tries("judge", &tries);
}

#[test]
fn particles_with_a_burnt_smell_are_between_the_rows() {
    let found = json!({"found": {"several": {"found": ["paste", "burnt"]}}});
    let fine = json!({"longest": {"choice": {"class": "fine"}}});
    let tries = [
        begin("judge"),
        (decide("judge", "verdict", "carry_on"), Some("decision-why")),
        (decide("judge", "verdict", "stop_and_call"), None),
    ];
    Walk::of("pan-and-filter")
        .with("pan_debris", found.clone())
        .with("open_filter", fine)
        .tries("judge", &tries);
    let tries = [begin("judge"), (decide("judge", "verdict", "carry_on"), None)];
    Walk::of("pan-and-filter").with("pan_debris", found).tries("judge", &tries);
}

#[test]
fn milky_fluid_ends_the_job_and_burnt_fluid_is_noted_first() {
    let at = "read_level";
    let level = Walk::of("level-check")
        .lines()
        .iter()
        .rfind(|line| line["do"]["work"]["step"] == at)
        .unwrap()
        .clone();
    let entries = &level["do"]["work"]["entries"];
    let given = |entry: &str| (enter(at, entry, entries[entry].clone()), None);
    let looks = |entry: &str, class: &str| (enter(at, entry, json!({"choice": {"class": class}})), None);
    let first = [begin(at), given("stick"), given("photo_drop"), looks("smell", "burnt")];
    let done = |refused| (json!({"done": {"step": at}}), refused);

    let milky = [
        looks("colour", "milky"),
        (decide(at, "condition", "usable"), Some("decision-not")),
        (decide(at, "condition", "coolant"), None),
        done(None),
        (json!({"begin": {"step": "correct_level"}}), Some("refused-ending")),
    ];
    Walk::of("level-check").tries(at, &[first.as_slice(), &milky].concat());

    let burnt = [
        looks("colour", "dark"),
        (decide(at, "condition", "burnt"), Some("decision-not")),
        (enter(at, "noted", json!({"note": {"text": "faint"}})), None),
        (decide(at, "condition", "burnt"), None),
        // What it was decided by has changed since.
        looks("smell", "normal"),
        done(Some("refused-missing")),
        (decide(at, "condition", "usable"), None),
        done(None),
    ];
    Walk::of("level-check").tries(at, &[first.as_slice(), &burnt].concat());
}
