//! How much of everything there may be. What is larger is refused before anything is worked out from it, so that no file
//! can take more time or memory than it is worth.

use super::Problem;
use super::check::{at, steps};
use super::place::Places;
use crate::format::entry::Listed;
use crate::format::{Checklist, Entry, Step};
use crate::machine::StepSet;

/// A name, a value or a class has so many characters at most: it is said again in messages and in every order.
const LONGEST_NAME: usize = 64;
/// Lists that nothing else bounds: there is no room in a state for more.
const MOST: usize = 512;
/// What one step, or one entry, has of anything.
const MOST_OF_STEP: usize = 64;
/// What a step is marked with: every danger asks for it.
const MOST_MARKS: usize = 16;
/// A step or move of more than a week is a slip of the pen.
const MOST_MINUTES: usize = 7 * 24 * 60;
/// The vehicle can come in in so many ways at most; the proof begins at each.
const MOST_STARTS: usize = 4096;

/// Everything of which there is too much or too little.
pub(super) fn sizes(checklist: &Checklist, places: &Places) -> Vec<Problem> {
    let mut sizes = Sizes { places, problems: Vec::new() };
    sizes.lists(checklist);
    sizes.variables(checklist);
    for (place, phase) in checklist.phases.iter().enumerate() {
        let place = format!("/phases/{place}");
        sizes.name(&place, &phase.id);
        sizes.bound(format!("{place}/steps"), "steps in the phase", phase.steps.len(), 1, 255);
        sizes.bound(format!("{place}/beside"), "phases", phase.beside.len(), 0, 64);
    }
    for (place, step) in steps(checklist) {
        sizes.step(&place, step);
    }
    sizes.starts(checklist);
    sizes.problems
}

struct Sizes<'a> {
    places: &'a Places,
    problems: Vec<Problem>,
}

impl Sizes<'_> {
    fn bound(&mut self, place: String, what: &str, is: usize, least: usize, most: usize) {
        if is < least || is > most {
            let message = format!("{what}: there are {is}; {least} to {most} are possible");
            self.problems.push(at(self.places, &place, message));
        }
    }

    fn name(&mut self, place: &str, name: &str) {
        let length = name.chars().count();
        if length > LONGEST_NAME {
            let begin: String = name.chars().take(20).collect();
            let message = format!(
                "the name \"{begin}…\" has {length} characters; {LONGEST_NAME} are the most, a title can say more"
            );
            self.problems.push(at(self.places, place, message));
        }
    }

    fn lists(&mut self, checklist: &Checklist) {
        self.bound("/crew".into(), "people in a step at one time", usize::from(checklist.crew), 1, 3);
        self.bound("/phases".into(), "phases", checklist.phases.len(), 1, 64);
        self.bound("/phases".into(), "steps", steps(checklist).count(), 1, StepSet::MOST - 1);
        self.bound("/dangers".into(), "dangers", checklist.dangers.len(), 1, 63);
        for (list, length) in [
            ("facts", checklist.facts.len()),
            ("conditions", checklist.conditions.len()),
            ("gates", checklist.gates.len()),
            ("terms", checklist.terms.len()),
            ("follows", checklist.follows.len()),
            ("items", checklist.items.len()),
            ("sign_offs", checklist.sign_offs.len()),
            ("moves", checklist.moves.len()),
        ] {
            self.bound(format!("/{list}"), list, length, 0, MOST);
        }
        for name in checklist.terms.keys() {
            self.name(&format!("/terms/{name}"), name);
        }
        for (place, sign) in checklist.sign_offs.iter().enumerate() {
            self.name(&format!("/sign_offs/{place}"), &sign.id);
        }
        for (place, danger) in checklist.dangers.iter().enumerate() {
            self.name(&format!("/dangers/{place}"), &danger.id);
        }
        for (place, made) in checklist.moves.iter().enumerate() {
            let place = format!("/moves/{place}");
            self.name(&place, &made.id);
            self.bound(format!("{place}/minutes"), "minutes", made.minutes as usize, 0, MOST_MINUTES);
        }
    }

    fn variables(&mut self, checklist: &Checklist) {
        for (place, condition) in checklist.conditions.iter().enumerate() {
            let place = format!("/conditions/{place}");
            self.name(&place, &condition.id);
            self.values(&format!("{place}/values"), "values", &condition.values, 2, 60);
            for (list, values) in [("start", &condition.start), ("recover", &condition.recover)] {
                self.bound(format!("{place}/{list}"), "values", values.len(), 0, 60);
            }
        }
        for (place, fact) in checklist.facts.iter().enumerate() {
            let place = format!("/facts/{place}");
            self.name(&place, &fact.id);
            self.values(&format!("{place}/values"), "values", &fact.values, 2, 60);
        }
        for (place, gate) in checklist.gates.iter().enumerate() {
            let place = format!("/gates/{place}");
            self.name(&place, &gate.id);
            self.values(&format!("{place}/classes"), "classes", &gate.classes, 1, 59);
        }
        for (place, item) in checklist.items.iter().enumerate() {
            let place = format!("/items/{place}");
            self.name(&place, &item.id);
            self.bound(format!("{place}/count"), "pieces", usize::from(item.count), 1, 63);
        }
    }

    fn values(&mut self, place: &str, what: &str, values: &[String], least: usize, most: usize) {
        self.bound(place.to_owned(), what, values.len(), least, most);
        for (at, value) in values.iter().enumerate().take(most) {
            self.name(&format!("{place}/{at}"), value);
        }
    }

    fn step(&mut self, place: &str, step: &Step) {
        self.name(place, &step.id);
        self.bound(format!("{place}/minutes"), "minutes", step.minutes as usize, 0, MOST_MINUTES);
        for (list, length, most) in [
            ("after", step.after.len(), StepSet::MOST),
            ("relies_on", step.relies_on.len(), StepSet::MOST),
            ("permits", step.permits.len(), MOST_OF_STEP),
            ("touches", step.touches.len(), MOST_MARKS),
            ("tags", step.tags.len(), MOST_MARKS),
            ("on_begin", step.on_begin.len(), MOST_OF_STEP),
            ("on_leave", step.on_leave.len(), MOST_OF_STEP),
            ("makes", step.makes.len(), MOST_OF_STEP),
            ("sets", step.sets.len(), MOST_OF_STEP),
            ("takes_off", step.takes_off.len(), MOST_OF_STEP),
            ("puts_back", step.puts_back.len(), MOST_OF_STEP),
            ("entries", step.entries.len(), MOST_OF_STEP),
            ("cautions", step.cautions.len(), MOST_OF_STEP),
        ] {
            self.bound(format!("{place}/{list}"), list, length, 0, most);
        }
        for (at, entry) in step.entries.iter().enumerate().take(MOST_OF_STEP) {
            self.entry(&format!("{place}/entries/{at}"), entry);
        }
    }

    fn entry(&mut self, place: &str, entry: &Entry) {
        self.name(place, &entry.id);
        self.bound(format!("{place}/classes"), "classes", entry.classes.len(), 0, MOST_OF_STEP);
        for effect in entry.classes.values().take(MOST_OF_STEP) {
            let written = effect.sets.len() + effect.makes.len();
            self.bound(format!("{place}/classes"), "changes of one class", written, 0, MOST_OF_STEP);
        }
        let kind = entry.ask.kind();
        for Listed { at, what, length } in entry.ask.lists() {
            self.bound(format!("{place}/ask/{kind}{at}"), what, length, 0, MOST_OF_STEP);
        }
        // A choice's classes are names that its author gives.
        for class in entry.ask.classes().into_iter().take(MOST_OF_STEP) {
            self.name(&format!("{place}/ask/{kind}"), class);
        }
    }

    fn starts(&mut self, checklist: &Checklist) {
        let conditions = checklist.conditions.iter().map(|condition| condition.start.len().max(1));
        let facts = checklist.facts.iter().map(|fact| fact.values.len());
        let ways = conditions.chain(facts).try_fold(1, |ways: usize, more| ways.checked_mul(more));
        if ways.is_none_or(|ways| ways > MOST_STARTS) {
            let message = format!(
                "the vehicle can come in in more than {MOST_STARTS} ways; ask for fewer conditions at the start, or \
                 for fewer facts"
            );
            self.problems.push(at(self.places, "/conditions", message));
        }
    }
}
