//! A checklist as a model for SPIN, a model checker that nobody here wrote.
//!
//! Written from the parsed format and its page on, apart from the Machine and from the second interpreter. Each thing
//! that can be done is one option of one loop, carried out in one step (`d_step`) with what follows and what lapses. A
//! state of the model is a state of the job: what is only used within a step is hidden, so SPIN neither stores nor
//! compares it. One state more stands before the start, from which each start is chosen.
//!
//! What is allowed only if its outcome is (a sign-off that must hold, a person who must be able to stay) puts
//! everything back where it is not: a step to the same state, told as `refused`.

mod deeds;
mod option;
mod order;
mod says;
mod spin;

use std::collections::BTreeSet;
use std::fmt::Write as _;

use panside_procedure::format::{Checklist, Step};
use panside_procedure::predicate::PredicateError;

use says::Says;
pub use spin::{Counted, SpinError, search};

/// Which runs the model has. All of them with ageing and skipping.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Runs {
    /// No void and no observation.
    Plain,
    /// At most one void.
    OneVoid,
    /// At most one observation.
    OneObservation,
}

/// Values of a step's work.
mod work {
    pub const UNTOUCHED: usize = 0;
    pub const WORKED: usize = 1;
    pub const VOIDED: usize = 2;
    pub const SKIPPED: usize = 3;
}

/// Values of `over`.
mod over {
    pub const NO: usize = 0;
    pub const ENDING: usize = 1;
    pub const FINISHED: usize = 2;
    pub const STOPPED: usize = 3;
    pub const NOT_STARTED: usize = 4;
}

/// Marks of a search that are part of its states.
const VOIDED_ONCE: &str = "voided_once";
const OBSERVED_ONCE: &str = "observed_once";

/// A model.
#[derive(Debug, Clone)]
pub struct Model {
    /// The text for SPIN.
    pub text: String,
    /// Options that lead from before the start to one.
    pub starts: usize,
}

/// Writes the model of a checklist.
///
/// # Errors
/// A predicate that cannot be read; a checklist that loads has none.
pub fn model(checklist: &Checklist, runs: Runs) -> Result<Model, PredicateError> {
    let writer = Writer { checklist, runs, says: Says::new(checklist)? };
    let starts = writer.starts();
    let options: Vec<String> = starts.iter().chain(&writer.deeds()).map(|deed| writer.option(deed)).collect();
    let mut text = format!(
        "/* {}, revision {}: {runs:?}\n   spin -o1 -o2 -a MODEL && tcc -w -DSAFETY -DNOREDUCE -o search pan.c && \
         ./search -c0 -n -m3000000 */\n",
        checklist.title, checklist.revision
    );
    text.push_str(&writer.macros());
    for (name, most, first) in writer.variables() {
        // Writing into a String can't fail.
        let _ = writeln!(text, "unsigned {name} : {} = {first};", bits(most));
    }
    for name in writer.hidden(&options) {
        let _ = writeln!(text, "hidden byte {name};");
    }
    let _ = writeln!(text, "\nactive proctype job() {{\n  do\n{}  od\n}}", options.concat());
    Ok(Model { text, starts: starts.len() })
}

fn bits(most: usize) -> u32 {
    (usize::BITS - most.leading_zeros()).max(1)
}

struct Writer<'a> {
    checklist: &'a Checklist,
    runs: Runs,
    says: Says<'a>,
}

impl<'a> Writer<'a> {
    fn steps(&self) -> impl Iterator<Item = &'a Step> + use<'a> {
        self.checklist.phases.iter().flat_map(|phase| &phase.steps)
    }

    /// Every variable that is part of a state: its name, its highest value and its first.
    fn variables(&self) -> Vec<(String, usize, usize)> {
        let checklist = self.checklist;
        let mut variables = vec![("over".to_owned(), over::NOT_STARTED, over::NOT_STARTED)];
        let mut add = |name: String, most: usize| variables.push((name, most, 0));
        add("people".to_owned(), usize::from(checklist.crew));
        checklist.conditions.iter().for_each(|one| add(says::value_of(&one.id), one.values.len() - 1));
        checklist.facts.iter().for_each(|one| add(says::value_of(&one.id), one.values.len() - 1));
        checklist.gates.iter().for_each(|one| add(says::value_of(&one.id), one.classes.len()));
        checklist.items.iter().for_each(|one| add(says::off(&one.id), usize::from(one.count)));
        checklist.sign_offs.iter().for_each(|one| add(says::signed(&one.id), 1));
        for step in self.steps() {
            add(says::work(&step.id), work::SKIPPED);
            add(says::hands_in(&step.id), 1);
        }
        match self.runs {
            Runs::Plain => {}
            Runs::OneVoid => add(VOIDED_ONCE.to_owned(), 1),
            Runs::OneObservation => {
                add(OBSERVED_ONCE.to_owned(), 1);
                (0..checklist.dangers.len()).for_each(|at| add(says::excused(at), 1));
            }
        }
        variables
    }

    /// What the options use within a step.
    fn hidden(&self, options: &[String]) -> BTreeSet<String> {
        let kept = self.variables().into_iter().map(|(name, ..)| option::kept(&name));
        let met = (0..self.checklist.dangers.len()).map(option::met);
        let fixed = [option::MORE, option::TOUCHED].map(str::to_owned);
        let used = |name: &String| {
            let assigned = format!(" {name} = ");
            options.iter().any(|option| option.contains(&assigned))
        };
        let noted =
            self.checklist.dangers.iter().flat_map(|danger| self.says.noted(&danger.when).into_keys());
        kept.chain(met).chain(noted).chain(fixed).filter(used).collect()
    }
}
