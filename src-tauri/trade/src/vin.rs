//! The vehicle identification number: its form, its check digit, its model year, and what it may be misread from.
//!
//! Values, weights and years are those of 49 CFR 565, second-hand; ISO 3779 itself was not seen. The check digit is
//! required in North America only: elsewhere a digit that does not fit is no proof of a misreading.

use panside_messages::{Arg, Message};
use serde::{Deserialize, Serialize};

use crate::message::working::*;
use crate::source;
use crate::working::{Worked, Working};

/// How many characters it has.
pub const LENGTH: usize = 17;

/// Place of the check digit, counted from 0.
const CHECK_AT: usize = 8;

/// Place of the model year, counted from 0.
const YEAR_AT: usize = 9;

const WEIGHTS: [u32; LENGTH] = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

/// The model years' characters from 1980 on: no I, O, Q, U, Z and 0.
const YEARS: &str = "ABCDEFGHJKLMNPRSTVWXY123456789";

/// Characters that are taken for each other by eye, each group in a row: our choice.
const LOOKALIKES: [&str; 10] = ["0OQD", "1IL7J", "2Z", "5S", "6G", "8B3", "UV", "VY", "MNH", "CG"];

/// What is wrong with a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum VinProblem {
    /// It has another number of characters than 17.
    Length {
        /// How many it has.
        found: usize,
    },
    /// A character that no number has: I, O, Q, or no letter and no digit.
    Character {
        /// Its place, counted from 1.
        position: usize,
        /// The character.
        found: char,
    },
    /// The check digit does not fit.
    CheckDigit {
        /// What stands at place 9.
        found: char,
        /// What the others ask for.
        expected: char,
    },
    /// Place 10 has a character that no model year has: U, Z or 0.
    ModelYear {
        /// The character.
        found: char,
    },
}

impl VinProblem {
    /// What is wrong, as a sentence that says what to do.
    fn message(self) -> Message {
        match self {
            VinProblem::Length { found } => working_vin_length(found),
            VinProblem::Character { position, found } => working_vin_character(position, found.to_string()),
            VinProblem::CheckDigit { found, expected } => {
                working_vin_check(found.to_string(), expected.to_string())
            }
            VinProblem::ModelYear { found } => working_vin_no_year(found.to_string()),
        }
    }
}

/// A number as it could have been meant.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Suggestion {
    /// The number.
    pub vin: String,
    /// What was taken for what: the place counted from 1, what was read and what may be meant.
    pub changes: Vec<(usize, char, char)>,
}

/// A number that was read, and all that is known of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Vin {
    /// What was typed or scanned.
    pub typed: String,
    /// The same in capitals, without spaces and hyphens around or between, and without the I that a label's bar code
    /// may put in front (from memory).
    pub vin: String,
    /// What is wrong; empty if nothing is.
    pub problems: Vec<VinProblem>,
    /// Sum of value × weight over all places; nothing where a character has no value or the length is wrong.
    pub sum: Option<u32>,
    /// The model years it may be of. One, if position 7 is used: that tells the cycle of light vehicles only.
    pub years: Vec<u16>,
    /// The same without using position 7.
    pub years_any_weight: Vec<u16>,
    /// What it may be misread from, likeliest first: numbers of the right form whose check digit fits.
    pub suggestions: Vec<Suggestion>,
}

impl Vin {
    /// Whether nothing is wrong with it.
    pub fn fits(&self) -> bool {
        self.problems.is_empty()
    }
}

/// The value of a character in the sum.
fn value(character: char) -> Option<u32> {
    match character {
        '0'..='9' => character.to_digit(10),
        'A'..='H' => Some(character as u32 - 'A' as u32 + 1),
        'J'..='N' => Some(character as u32 - 'J' as u32 + 1),
        'P' => Some(7),
        'R' => Some(9),
        'S'..='Z' => Some(character as u32 - 'S' as u32 + 2),
        _ => None,
    }
}

fn sum(characters: &[char]) -> Option<u32> {
    if characters.len() != LENGTH {
        return None;
    }
    characters.iter().zip(WEIGHTS).map(|(character, weight)| Some(value(*character)? * weight)).sum()
}

/// The check digit that a sum asks for.
fn digit_of(sum: u32) -> char {
    match sum % 11 {
        10 => 'X',
        rest => char::from_digit(rest, 10).unwrap_or('X'),
    }
}

/// Reads a number. Whatever is read comes back with what is wrong with it; nothing is refused.
pub fn read_vin(typed: &str) -> Vin {
    let mut characters: Vec<char> = typed
        .chars()
        .filter(|character| !character.is_whitespace() && *character != '-')
        .flat_map(char::to_uppercase)
        .collect();
    if characters.len() == LENGTH + 1 && characters.first() == Some(&'I') {
        characters.remove(0);
    }
    let problems = problems(&characters);
    let (years, years_any_weight) = years(&characters);
    Vin {
        typed: typed.to_owned(),
        vin: characters.iter().collect(),
        suggestions: if problems.is_empty() { Vec::new() } else { suggestions(&characters) },
        sum: sum(&characters),
        problems,
        years,
        years_any_weight,
    }
}

fn problems(characters: &[char]) -> Vec<VinProblem> {
    if characters.len() != LENGTH {
        return vec![VinProblem::Length { found: characters.len() }];
    }
    let bad = characters.iter().enumerate().filter(|(_, character)| value(**character).is_none());
    let mut problems: Vec<_> =
        bad.map(|(at, found)| VinProblem::Character { position: at + 1, found: *found }).collect();
    if let Some(found) = characters.get(YEAR_AT).copied()
        && value(found).is_some()
        && !YEARS.contains(found)
    {
        problems.push(VinProblem::ModelYear { found });
    }
    if let (Some(sum), Some(found)) = (sum(characters), characters.get(CHECK_AT).copied())
        && digit_of(sum) != found
    {
        problems.push(VinProblem::CheckDigit { found, expected: digit_of(sum) });
    }
    problems
}

/// The model years: of light vehicles, whose position 7 tells the cycle, and of any vehicle.
fn years(characters: &[char]) -> (Vec<u16>, Vec<u16>) {
    let code = characters.get(YEAR_AT).filter(|_| characters.len() == LENGTH);
    let Some(place) = code.and_then(|code| YEARS.chars().position(|year| year == *code)) else {
        return (Vec::new(), Vec::new());
    };
    // Thirty characters, so this fits.
    let first = 1980 + place as u16;
    let later = characters.get(6).is_some_and(char::is_ascii_alphabetic);
    (vec![if later { first + 30 } else { first }], vec![first, first + 30])
}

/// What a number may be misread from. Characters that no number has are put right first; then one more character is
/// taken for one that looks alike, or two neighbours are swapped.
fn suggestions(characters: &[char]) -> Vec<Suggestion> {
    if characters.len() != LENGTH {
        return Vec::new();
    }
    let mut found: Vec<Suggestion> = Vec::new();
    for start in put_right(characters) {
        let mut trials = vec![start.clone()];
        for at in 0..LENGTH {
            for other in alike(start[at]) {
                let mut trial = start.clone();
                trial[at] = other;
                trials.push(trial);
            }
        }
        for at in 0..LENGTH - 1 {
            let mut trial = start.clone();
            trial.swap(at, at + 1);
            trials.push(trial);
        }
        for trial in trials {
            let vin: String = trial.iter().collect();
            if problems(&trial).is_empty() && found.iter().all(|known| known.vin != vin) {
                let places = characters.iter().zip(&trial).enumerate();
                let changes = places
                    .filter(|(_, (read, meant))| read != meant)
                    .map(|(at, (read, meant))| (at + 1, *read, *meant));
                found.push(Suggestion { vin, changes: changes.collect() });
            }
        }
    }
    found.sort_by_key(|suggestion| suggestion.changes.len());
    found.truncate(12);
    found
}

/// The number with each character that no number has put right, in every way that looks alike: 1 for I, 0 for O and Q
/// first. At most 64 ways.
fn put_right(characters: &[char]) -> Vec<Vec<char>> {
    let mut ways = vec![characters.to_vec()];
    for (at, character) in characters.iter().enumerate() {
        if value(*character).is_some() {
            continue;
        }
        let others = alike(*character);
        ways = ways
            .iter()
            .flat_map(|way| {
                others.iter().map(move |other| {
                    let mut way = way.clone();
                    way[at] = *other;
                    way
                })
            })
            .take(64)
            .collect();
    }
    ways
}

/// Characters of numbers that look like this one.
fn alike(character: char) -> Vec<char> {
    let groups = LOOKALIKES.iter().filter(|group| group.contains(character));
    let others = groups.flat_map(|group| group.chars());
    others.filter(|other| *other != character && value(*other).is_some()).collect()
}

impl Suggestion {
    /// The number, and what may have been taken for what.
    #[must_use]
    pub fn message(&self) -> Message {
        let change = |(at, read, meant): &(usize, char, char)| {
            working_vin_change(meant.to_string(), read.to_string(), *at)
        };
        let mut changes: Vec<Message> = self.changes.iter().map(change).collect();
        let last = changes.pop().map(Arg::from).unwrap_or_else(|| "".into());
        let said = match changes.into_iter().reduce(working_vin_changes) {
            Some(start) => working_vin_changes_last(start, last).into(),
            None => last,
        };
        working_vin_perhaps(&self.vin, said)
    }
}

impl Worked for Vin {
    fn working(&self) -> Working {
        let mut working = Working::of(working_vin()).given(working_read(), &self.typed);
        if let Some(sum) = self.sum {
            let products: Vec<String> = self
                .vin
                .chars()
                .zip(WEIGHTS)
                .filter_map(|(character, weight)| Some((value(character)? * weight).to_string()))
                .collect();
            working = working.step(working_vin_sum(), products.join(" + "), sum.to_string()).step(
                working_vin_check_digit(),
                format!("{sum} mod 11"),
                digit_of(sum).to_string(),
            );
        }
        if let ([year], [first, second]) = (self.years.as_slice(), self.years_any_weight.as_slice()) {
            let code = self.vin.chars().nth(YEAR_AT).unwrap_or(' ');
            let years = working_vin_years(year.to_string(), first.to_string(), second.to_string());
            working = working.step(working_vin_year(), working_vin_year_how(code.to_string()), years);
        }
        if self.fits() {
            working = working.answer(working_vin_fits(&self.vin));
        }
        working = self.problems.iter().fold(working, |working, problem| working.answer(problem.message()));
        working = self.suggestions.iter().fold(working, |working, may| working.answer(may.message()));
        working.sources([source::vin_rule(), source::vin_years(), source::vin_lookalikes()])
    }
}
