//! How much of everything there may be. What is larger is refused before anything is worked out from it, so that no file
//! can take more time or memory than it is worth.

use panside_messages::Message;

use super::Problem;
use super::check::{at, steps};
use super::outcomes::MOST_OUTCOMES;
use super::place::Places;
use crate::format::entry::{Listed, MOST_FIRST_PAGE};
use crate::format::{Ask, Checklist, Entry, Named, Step};
use crate::machine::{DangerSet, WORDS};
use crate::message::*;

/// A name, a value or a class has so many characters at most: it is said again in messages and in every order.
const LONGEST_NAME: usize = 64;
/// A text of a translation has so many characters at most: more than fits on a screen beside what is entered.
pub(crate) const LONGEST_TEXT: usize = 4000;
/// People in a step at one time: each more multiplies the states of a search, and more are not at one vehicle (common practice).
const MOST_CREW: usize = 3;
/// Phases: nobody finds their place among more headings. Each is looked at in every state, so they are in no mask.
const MOST_PHASES: usize = 64;
/// Who is in which step is kept in eight bits, with 0 for nobody. A set of steps has room for one more.
const MOST_STEPS: usize = u8::MAX as usize;
/// Dangers: each needs its bit in a set, since which of them holds is said.
const MOST_DANGERS: usize = DangerSet::MOST;
/// Conditions, gates and items: at a bit each, all of a kind take half of a state at most. What of them depends on a change is
/// kept as bits of which the last stands for all from the 64th on, so that no mask bounds them.
const MOST_OF_STATE: usize = WORDS * 64 / 2;
/// Sign-offs: half of a state likewise, at two bits each.
const MOST_SIGN_OFFS: usize = MOST_OF_STATE / 2;
/// Facts: the vehicle can come in with each of their two values or more, and not in more than [`MOST_STARTS`] ways.
const MOST_FACTS: usize = MOST_STARTS.ilog2() as usize;
/// Keys of the sheet, terms, follows and vehicle actions: they take no room in a state, but each follow and vehicle action
/// is looked at in many, and the actions of a checklist are numbered by 16 bits.
const MOST_RULES: usize = 512;
/// Values of a condition or fact, and with `unknown` those of a gate: a test has a bit in a word for each.
const MOST_VALUES: usize = u64::BITS as usize;
/// Pieces of an item: none to all of them off are the values of a test.
pub const MOST_PIECES: u8 = MOST_VALUES as u8 - 1;
/// What one step, or one entry, has of anything: as much as a step can turn out in ways, and more than fits on a page.
const MOST_OF_STEP: usize = MOST_OUTCOMES;
/// What a step is marked with: every danger asks for it.
const MOST_MARKS: usize = 16;
/// A step or vehicle action of more than a week is a slip of the pen.
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
        sizes.bound(format!("{place}/steps"), "steps_of_phase", phase.steps.len(), 1, MOST_STEPS);
        sizes.bound(format!("{place}/beside"), "phases", phase.beside.len(), 0, MOST_PHASES - 1);
    }
    for (place, step) in steps(checklist) {
        sizes.step(&place, step);
    }
    sizes.first_page(checklist);
    sizes.starts(checklist);
    sizes.problems
}

struct Sizes<'a> {
    places: &'a Places,
    problems: Vec<Problem>,
}

impl Sizes<'_> {
    fn problem(&mut self, place: &str, what: Message) {
        self.problems.push(at(self.places, place, what));
    }

    /// `what` is a word that the sentence knows, or the field of the file.
    fn bound(&mut self, place: String, what: &str, is: usize, least: usize, most: usize) {
        if is < least || is > most {
            self.problem(&place, problem_bound(what, is, least, most));
        }
    }

    fn name(&mut self, place: &str, name: &str) {
        let length = name.chars().count();
        if length > LONGEST_NAME {
            let begin: String = name.chars().take(20).collect();
            self.problem(place, problem_long_name(begin, length, LONGEST_NAME));
        }
    }

    fn lists(&mut self, checklist: &Checklist) {
        self.bound("/crew".into(), "crew", usize::from(checklist.crew), 1, MOST_CREW);
        self.bound("/phases".into(), "phases", checklist.phases.len(), 1, MOST_PHASES);
        self.bound("/phases".into(), "steps", steps(checklist).count(), 1, MOST_STEPS);
        self.bound("/dangers".into(), "dangers", checklist.dangers.len(), 1, MOST_DANGERS);
        for (list, length, most) in [
            ("facts", checklist.facts.len(), MOST_FACTS),
            ("conditions", checklist.conditions.len(), MOST_OF_STATE),
            ("gates", checklist.gates.len(), MOST_OF_STATE),
            ("sheet_keys", checklist.sheet_keys.len(), MOST_RULES),
            ("terms", checklist.terms.len(), MOST_RULES),
            ("follows", checklist.follows.len(), MOST_RULES),
            ("items", checklist.items.len(), MOST_OF_STATE),
            ("sign_offs", checklist.sign_offs.len(), MOST_SIGN_OFFS),
            ("vehicle_actions", checklist.vehicle_actions.len(), MOST_RULES),
        ] {
            self.bound(format!("/{list}"), list, length, 0, most);
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
        for (place, made) in checklist.vehicle_actions.iter().enumerate() {
            let place = format!("/vehicle_actions/{place}");
            self.name(&place, &made.id);
            self.bound(format!("{place}/minutes"), "minutes", made.minutes as usize, 0, MOST_MINUTES);
        }
    }

    fn variables(&mut self, checklist: &Checklist) {
        for (place, condition) in checklist.conditions.iter().enumerate() {
            let place = format!("/conditions/{place}");
            self.name(&place, &condition.id);
            self.values(&format!("{place}/values"), "values", &condition.values, 2, MOST_VALUES);
            for (list, values) in [("start", &condition.start), ("recover", &condition.recover)] {
                self.bound(format!("{place}/{list}"), "values", values.len(), 0, MOST_VALUES);
            }
        }
        for (place, fact) in checklist.facts.iter().enumerate() {
            let place = format!("/facts/{place}");
            self.name(&place, &fact.id);
            self.values(&format!("{place}/values"), "values", &fact.values, 2, MOST_VALUES);
        }
        for (place, gate) in checklist.gates.iter().enumerate() {
            let place = format!("/gates/{place}");
            self.name(&place, &gate.id);
            self.values(&format!("{place}/classes"), "classes", &gate.classes, 1, MOST_VALUES - 1);
        }
        for (place, item) in checklist.items.iter().enumerate() {
            let place = format!("/items/{place}");
            self.name(&place, &item.id);
            let (least, most) = (usize::from(item.fewest()), usize::from(MOST_PIECES));
            self.bound(format!("{place}/count"), "pieces", usize::from(item.count), least, most);
        }
    }

    fn values(&mut self, place: &str, what: &str, values: &[Named], least: usize, most: usize) {
        self.bound(place.to_owned(), what, values.len(), least, most);
        for (at, value) in values.iter().enumerate().take(most) {
            self.name(&format!("{place}/{at}"), &value.id);
        }
    }

    fn step(&mut self, place: &str, step: &Step) {
        self.name(place, &step.id);
        self.bound(format!("{place}/minutes"), "minutes", step.minutes as usize, 0, MOST_MINUTES);
        for (list, length, most) in [
            ("after", step.after.len(), MOST_STEPS - 1),
            ("relies_on", step.relies_on.len(), MOST_STEPS - 1),
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
            self.bound(format!("{place}/classes"), "changes_of_class", written, 0, MOST_OF_STEP);
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

    fn first_page(&mut self, checklist: &Checklist) {
        let asked = steps(checklist).flat_map(|(_, step)| &step.entries);
        let photos = asked.filter(|entry| matches!(&entry.ask, Ask::Photo(photo) if photo.first_page));
        self.bound("/phases".into(), "first_page", photos.count(), 0, MOST_FIRST_PAGE);
    }

    fn starts(&mut self, checklist: &Checklist) {
        let conditions = checklist.conditions.iter().map(|condition| condition.start.len().max(1));
        let facts = checklist.facts.iter().map(|fact| fact.values.len());
        let ways = conditions.chain(facts).try_fold(1, |ways: usize, more| ways.checked_mul(more));
        if ways.is_none_or(|ways| ways > MOST_STARTS) {
            self.problem("/conditions", problem_starts(MOST_STARTS));
        }
    }
}
