//! Every mistake in a file is told with its place and what to do about it.

mod bounds;
mod classes;
mod decisions;
mod file;
mod labels;
mod names;
mod predicates;
mod rules;
mod sheets;

use panside_procedure::Problem;
use serde_json::Value;

use crate::said::{is_translated, what};
use crate::support::{Draft, labelled};

/// Every mistake of a draft.
fn mistakes(draft: &Draft) -> Vec<Problem> {
    match draft.load() {
        Ok(_) => panic!("this loads:\n{}", draft.text()),
        Err(problems) => {
            is_translated(&problems.0, &[&draft.text()]);
            problems.0
        }
    }
}

/// A draft has one mistake only, at this field of this part, and the sentence says this.
fn one_mistake(draft: &Draft, id: &str, field: &str, says: &str) {
    let found = mistakes(draft);
    let [problem] = found.as_slice() else { panic!("not one mistake: {found:#?}") };
    assert_eq!(problem.place, format!("{}{field}", draft.place(id)), "{problem}");
    assert!(what(problem).contains(says), "\"{problem}\" does not say \"{says}\"");
    stands_in_its_line(draft, problem);
}

/// The line that is told holds what the place names. The text has each field and element on a line of its own.
fn stands_in_its_line(draft: &Draft, problem: &Problem) {
    let text = draft.text();
    let line = text.lines().nth(problem.line - 1).unwrap_or_else(|| panic!("no line {}", problem.line));
    let Some((_, last)) = problem.place.rsplit_once('/') else { return assert_eq!(problem.line, 1) };
    let file = labelled(draft.0.clone());
    let in_file = file.pointer(&problem.place);
    let shown = match in_file {
        None => return,
        Some(Value::String(text)) if last.parse::<usize>().is_ok() => format!("\"{text}\""),
        Some(_) if last.parse::<usize>().is_ok() => "{".to_owned(),
        Some(_) => format!("\"{last}\": "),
    };
    assert!(line.contains(&shown), "line {} is {line}, not {}", problem.line, problem.place);
}
