//! Predicates made by chance, written as text, loaded, and judged over states made by chance: the outcome is held
//! against the tree that the text was made from, judged as plainly as can be.

use panside_procedure::machine::{DangerIx, ItemIx, SignIx, StepIx, VariableKind};
use panside_procedure::{Procedure, State, predicate};
use serde_json::{Value, json};

use crate::chance::Chance;
use crate::corpus::Corpus;
use crate::{Came, Input, mutate};

/// Predicates of a case; as many in rules as in dangers.
const COUNT: usize = 8;
const TERMS: usize = 3;
const STATES: usize = 25;
/// Conditions, facts and gates with their values.
const VARIABLES: [(&str, &[&str]); 5] = [
    ("lift", &["floor", "raised", "on_locks"]),
    ("pan", &["on", "off"]),
    ("first", &["no", "yes"]),
    ("level", &["low", "in_range", "high"]),
    ("joint", &["free"]),
];
const FIRST_GATE: usize = 3;
const ITEMS: [(&str, u8); 2] = [("bolts", 16), ("rings", 1)];
const STEPS: [&str; 2] = ["look", "drain"];
const SIGNS: [&str; 2] = ["clear", "torqued"];

/// What a text says.
#[derive(Debug, Clone)]
enum Said {
    Const(bool),
    Term(usize),
    Is { variable: usize, values: Vec<usize>, unequal: bool },
    Known(usize),
    Worked(usize),
    Signed(usize),
    Empty { item: usize, count: u8, unequal: bool },
    TrayClear,
    Not(Box<Said>),
    All(Vec<Said>),
    Any(Vec<Said>),
}

/// Where it stands: a rule never takes unknown for a yes, a danger always does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Stands {
    Rule,
    Danger,
}

/// What is judged of: places in the values, 0 for unknown where it is a gate.
struct Facts {
    variables: Vec<usize>,
    worked: Vec<bool>,
    signed: Vec<bool>,
    empty: Vec<u8>,
}

fn said(chance: &mut Chance, depth: usize, terms: usize) -> Said {
    let parts =
        |chance: &mut Chance| (0..2 + chance.below(3)).map(|_| said(chance, depth - 1, terms)).collect();
    match chance.below(if depth == 0 { 11 } else { 20 }) {
        0 => Said::Const(chance.once_in(2)),
        1 if terms > 0 => Said::Term(chance.below(terms)),
        2 => Said::Known(FIRST_GATE + chance.below(VARIABLES.len() - FIRST_GATE)),
        3 => Said::Worked(chance.below(STEPS.len())),
        4 => Said::Signed(chance.below(SIGNS.len())),
        5 => {
            let item = chance.below(ITEMS.len());
            let count = chance.below(usize::from(ITEMS[item].1) + 1) as u8;
            Said::Empty { item, count, unequal: chance.once_in(2) }
        }
        6 => Said::TrayClear,
        7..=10 | 1 => {
            let variable = chance.below(VARIABLES.len());
            let values = VARIABLES[variable].1.len();
            let chosen: Vec<usize> = (0..1 + chance.below(3)).map(|_| chance.below(values)).collect();
            Said::Is { variable, unequal: chosen.len() == 1 && chance.once_in(3), values: chosen }
        }
        11..=13 => Said::Not(Box::new(said(chance, depth - 1, terms))),
        14..=16 => Said::All(parts(chance)),
        _ => Said::Any(parts(chance)),
    }
}

impl Said {
    /// As an author could write it, with more parentheses and spaces than are needed now and then.
    fn text(&self, chance: &mut Chance) -> String {
        let value = |variable: usize, at: usize| VARIABLES[variable].1[at];
        let sign = |unequal: bool| if unequal { "!=" } else { "=" };
        match self {
            Said::Const(value) => value.to_string(),
            Said::Term(at) => format!("t{at}"),
            Said::Is { variable, values, unequal }
                if values.len() == 1 && (*unequal || chance.once_in(2)) =>
            {
                format!("{} {} {}", VARIABLES[*variable].0, sign(*unequal), value(*variable, values[0]))
            }
            Said::Is { variable, values, .. } => {
                let values: Vec<&str> = values.iter().map(|&at| value(*variable, at)).collect();
                format!(
                    "{} in {{{}}}",
                    VARIABLES[*variable].0,
                    values.join(*chance.pick(&[",", ", ", " , "]))
                )
            }
            Said::Known(gate) => format!("known({})", VARIABLES[*gate].0),
            Said::Worked(step) => format!("worked({})", STEPS[*step]),
            Said::Signed(given) => format!("signed( {} )", SIGNS[*given]),
            Said::Empty { item, count, unequal } => {
                format!("empty({}){}{count}", ITEMS[*item].0, sign(*unequal))
            }
            Said::TrayClear => "tray_clear".to_owned(),
            Said::Not(inner) => match inner.as_ref() {
                Said::All(_) | Said::Any(_) => format!("not ({})", inner.text(chance)),
                _ => format!("not {}", inner.text(chance)),
            },
            Said::All(parts) => {
                let parts: Vec<String> = parts.iter().map(|part| part.within(chance, false)).collect();
                parts.join(" and ")
            }
            Said::Any(parts) => {
                let parts: Vec<String> = parts.iter().map(|part| part.within(chance, true)).collect();
                parts.join(" or  ")
            }
        }
    }

    /// In a row of "and" or "or".
    fn within(&self, chance: &mut Chance, either: bool) -> String {
        let text = self.text(chance);
        let needs = matches!(self, Said::Any(_)) || matches!(self, Said::All(_)) && !either;
        if needs || chance.once_in(6) { format!("({text})") } else { text }
    }

    /// Whether it holds; with `opposite`, whether its opposite does. Nothing known is neither.
    fn holds(&self, facts: &Facts, terms: &[Said], stands: Stands, opposite: bool) -> bool {
        match self {
            Said::Const(value) => *value != opposite,
            Said::Term(at) => terms[*at].holds(facts, terms, stands, opposite),
            Said::Is { variable, values, unequal } => {
                let is = facts.variables[*variable];
                if *variable < FIRST_GATE {
                    return (values.contains(&is) != *unequal) != opposite;
                }
                match is.checked_sub(1) {
                    None => stands == Stands::Danger,
                    Some(is) => (values.contains(&is) != *unequal) != opposite,
                }
            }
            Said::Known(gate) => (facts.variables[*gate] != 0) != opposite,
            Said::Worked(step) => facts.worked[*step] != opposite,
            Said::Signed(given) => facts.signed[*given] != opposite,
            Said::Empty { item, count, unequal } => ((facts.empty[*item] == *count) != *unequal) != opposite,
            Said::TrayClear => facts.empty.iter().all(|empty| *empty == 0) != opposite,
            Said::Not(inner) => inner.holds(facts, terms, stands, !opposite),
            Said::All(parts) if !opposite => parts.iter().all(|part| part.holds(facts, terms, stands, false)),
            Said::Any(parts) if opposite => parts.iter().all(|part| part.holds(facts, terms, stands, true)),
            Said::All(parts) | Said::Any(parts) => {
                parts.iter().any(|part| part.holds(facts, terms, stands, opposite))
            }
        }
    }
}

/// Terms, predicates and a checklist that has them, the first half in vehicle actions and the second in dangers.
fn drawn(chance: &mut Chance) -> (Vec<Said>, Vec<Said>, Value) {
    // A term reads earlier ones only, so that none goes in a ring.
    let terms: Vec<Said> = (0..TERMS).map(|at| said(chance, 2, at)).collect();
    let all: Vec<Said> = (0..2 * COUNT).map(|_| said(chance, 3, TERMS)).collect();
    let texts: Vec<String> = all.iter().map(|one| one.text(chance)).collect();
    let named: serde_json::Map<String, Value> =
        terms.iter().enumerate().map(|(at, term)| (format!("t{at}"), json!(term.text(chance)))).collect();
    let variable = |at: usize, field: &str| json!({"id": VARIABLES[at].0, "label": "a label", field: panside_tests::named(VARIABLES[at].1)});
    let mut fact = variable(2, "values");
    fact["sheet"] = json!("first");
    let sign = |at: usize| json!({"id": SIGNS[at], "kind": "permit", "text": "Signed."});
    let entry = |at: usize| json!([{"id": "s", "label": "Signed", "ask": {"sign_off": {"sign": SIGNS[at]}}}]);
    let step = |at: usize| {
        json!({"id": STEPS[at], "title": "A step", "instruction": "Do it.", "zone": "bench", "tags": ["work"],
            "entries": entry(at)})
    };
    let vehicle_actions = texts[..COUNT].iter().enumerate();
    let vehicle_actions = vehicle_actions.map(|(at, text)| {
        json!({"id": format!("m{at}"), "title": "A vehicle action", "needs": text,
        "makes": {"lift": VARIABLES[0].1[at % 3]}})
    });
    let dangers = texts[COUNT..].iter().enumerate();
    let dangers = dangers.map(|(at, text)| {
        json!({"id": format!("d{at}"), "signal": "notice", "text": "A danger.",
        "when": format!("({text}) and not doing.tag = work")})
    });
    let items = ITEMS.map(|(id, count)| json!({"id": id, "name": id, "count": count, "reuse": "yes"}));
    let checklist = json!({
        "format": "panside-checklist/1", "id": "drawn", "title": "Drawn", "revision": 1,
        "conditions": [variable(0, "values"), variable(1, "values")], "facts": [fact], "sheet_keys": {"first": "the first"},
        "gates": [variable(3, "classes"), variable(4, "classes")], "terms": named, "items": items,
        "sign_offs": [sign(0), sign(1)],
        "phases": [{"id": "all", "title": "All", "steps": [step(0), step(1)]}],
        "vehicle_actions": vehicle_actions.collect::<Value>(), "dangers": dangers.collect::<Value>(),
        "done_when": "true", "safe_to_leave": "true",
    });
    (terms, all, checklist)
}

pub fn make(chance: &mut Chance, corpus: &Corpus) -> Input {
    let seed = chance.next();
    let (_, _, checklist) = drawn(&mut Chance::of(seed, 0));
    let wild = mutate::predicate(chance, corpus);
    let files = vec![
        ("drawn.checklist.json".to_owned(), format!("{checklist:#}").into_bytes()),
        ("wild.txt".to_owned(), wild.into_bytes()),
    ];
    Input { files, seed }
}

pub fn run(input: &Input, _: &Corpus) -> Result<Came, String> {
    if let Err(error) = predicate::parse(&String::from_utf8_lossy(&input.files[1].1)) {
        drop(error.to_string());
    }
    let mut chance = Chance::of(input.seed, 0);
    let (terms, all, mut checklist) = drawn(&mut chance);
    let refused = allow_what_may_be_unknown(&mut checklist)?;
    let procedure = Procedure::load(checklist.to_string().as_bytes())
        .map_err(|problems| format!("made by the grammar and refused: {problems}"))?;
    for _ in 0..STATES {
        let (state, facts) = state(&procedure, &mut chance);
        let dangers = procedure.machine.dangers_now(&state);
        for (at, one) in all.iter().enumerate().filter(|(at, _)| !refused.contains(at)) {
            let (is, should) = match at.checked_sub(COUNT) {
                None => (
                    procedure.machine.vehicle_actions[at].needs.holds(&state),
                    one.holds(&facts, &terms, Stands::Rule, false),
                ),
                Some(at) => {
                    (dangers.contains(DangerIx::of(at)), one.holds(&facts, &terms, Stands::Danger, false))
                }
            };
            if is != should {
                return Err(format!(
                    "predicate {at} is {is} and should be {should}: {one:?} over {:?}",
                    facts.variables
                ));
            }
        }
    }
    Ok(if refused.len() <= COUNT { Came::Taken } else { Came::Refused })
}

/// Rules that take unknown for a yes, or a tray that is not clear, are refused as they should be; they are left out, and which they are is answered.
fn allow_what_may_be_unknown(checklist: &mut Value) -> Result<Vec<usize>, String> {
    let Err(problems) = Procedure::load(checklist.to_string().as_bytes()) else { return Ok(Vec::new()) };
    if problems.0.iter().any(|problem| problem.to_string().contains("say it shorter")) {
        *checklist = drawn(&mut Chance::of(0, 0)).2;
        return Ok((0..2 * COUNT).collect());
    }
    let mut refused = Vec::new();
    for problem in &problems.0 {
        let at = problem.place.strip_prefix("/vehicle_actions/").and_then(|rest| rest.strip_suffix("/needs"));
        let Some(at) = at.and_then(|at| at.parse::<usize>().ok()).filter(|_| {
            ["can be unknown", "tray_clear can only"].iter().any(|why| problem.to_string().contains(why))
        }) else {
            return Err(format!("made by the grammar and refused: {problem}"));
        };
        checklist["vehicle_actions"][at]["needs"] = json!("true");
        refused.push(at);
    }
    Ok(refused)
}

/// A state by chance, possible or not, and what it says.
fn state(procedure: &Procedure, chance: &mut Chance) -> (State, Facts) {
    let machine = &procedure.machine;
    let mut state = State::default();
    let mut facts =
        Facts { variables: Vec::new(), worked: Vec::new(), signed: Vec::new(), empty: Vec::new() };
    for variable in &machine.vars {
        let value = chance.below(usize::from(variable.size));
        assert!(variable.kind == VariableKind::Gate || facts.variables.len() < FIRST_GATE);
        variable.field.set(&mut state, value as u64);
        facts.variables.push(value);
    }
    for rule in &machine.steps {
        let work = chance.below(4) as u64;
        rule.work.set(&mut state, work);
        facts.worked.push(work == 1);
    }
    for rule in &machine.signs {
        let sign = chance.below(3) as u64;
        rule.field.set(&mut state, sign);
        facts.signed.push(sign == 1);
    }
    for rule in &machine.items {
        let empty = chance.below(usize::from(rule.count) + 1) as u8;
        rule.field.set(&mut state, u64::from(empty));
        facts.empty.push(empty);
    }
    // The fields are where the machine says they are.
    for (at, empty) in facts.empty.iter().enumerate() {
        assert_eq!(machine.empty(&state, ItemIx::of(at)), *empty);
    }
    assert!((0..STEPS.len()).all(|at| machine.is_worked(&state, StepIx::of(at)) == facts.worked[at]));
    assert!((0..SIGNS.len()).all(|at| machine.is_valid(&state, SignIx::of(at)) == facts.signed[at]));
    (state, facts)
}
