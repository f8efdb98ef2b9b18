//! Everything that can be done to a job, each with when it is allowed and what it changes at first.

use std::collections::{BTreeMap, BTreeSet};

use panside_procedure::format::{Ask, ClassEffect, Pieces, SignOff, Step};

use super::option::{Deed, Line};
use super::says::{HANDS, Hands, all, any, hands_in, not, off, signed, value_of, work as work_of};
use super::{OBSERVED_ONCE, Runs, VOIDED_ONCE, Writer, over, work};

/// One way in which a step can turn out.
#[derive(Clone, Default)]
struct Outcome {
    sets: BTreeMap<String, String>,
    makes: BTreeMap<String, String>,
    ends: bool,
}

/// Every way a step can turn out: one effect of each entry that has any but "not yet".
fn outcomes(step: &Step) -> Vec<Outcome> {
    let mut found = vec![Outcome { sets: step.sets.clone(), makes: step.makes.clone(), ends: false }];
    for entry in &step.entries {
        let mut effects: Vec<&ClassEffect> = Vec::new();
        for effect in entry.classes.values().filter(|effect| !effect.not_yet) {
            if !effects.contains(&effect) {
                effects.push(effect);
            }
        }
        if !effects.is_empty() {
            let with = |outcome: &Outcome, effect: &ClassEffect| {
                let mut more = outcome.clone();
                more.sets.extend(effect.sets.clone());
                more.makes.extend(effect.makes.clone());
                more.ends |= effect.ends.is_some();
                more
            };
            found =
                found.iter().flat_map(|one| effects.iter().map(move |effect| with(one, effect))).collect();
        }
    }
    found
}

fn signs_of(step: &Step) -> BTreeSet<&str> {
    let asked = step.entries.iter().filter_map(|entry| match &entry.ask {
        Ask::SignOff(asked) => Some(asked.sign.as_str()),
        _ => None,
    });
    asked.collect()
}

fn gates_of(step: &Step) -> BTreeSet<String> {
    outcomes(step).into_iter().flat_map(|outcome| outcome.sets.into_keys()).collect()
}

impl<'a> Writer<'a> {
    /// The ways to a start: each value that conditions can have at intake, and facts at all.
    pub fn starts(&self) -> Vec<Deed<'a>> {
        let checklist = self.checklist;
        let conditions = checklist.conditions.iter().map(|one| {
            let first = vec![one.values[0].id.as_str()];
            let start = one.start.iter().map(String::as_str);
            (one.id.as_str(), if one.start.is_empty() { first } else { start.collect() })
        });
        let facts = checklist.facts.iter();
        let facts = facts.map(|one| {
            (one.id.as_str(), one.values.iter().map(|value| value.id.as_str()).collect::<Vec<_>>())
        });
        let mut starts: Vec<Vec<Line>> = vec![Vec::new()];
        for (name, values) in conditions.chain(facts) {
            let with = |start: &Vec<Line>, value: &str| {
                let set = Line::set(value_of(name), self.says.number(name, value));
                [start.clone(), vec![set]].concat()
            };
            starts =
                starts.iter().flat_map(|start| values.iter().map(move |value| with(start, value))).collect();
        }
        let deed = |does| {
            let mut deed = Deed::new("start".to_owned(), vec![format!("over == {}", over::NOT_STARTED)]);
            deed.does = does;
            deed.only_if = Some(self.says.rule(&checklist.start_when));
            deed.then = vec![Line::set("over".to_owned(), over::NO)];
            (deed.during, deed.after, deed.starts) = (Hands::Nobody, Hands::Nobody, true);
            deed
        };
        starts.into_iter().map(deed).collect()
    }

    /// Everything that can be done in the runs.
    pub fn deeds(&self) -> Vec<Deed<'a>> {
        let checklist = self.checklist;
        let mut deeds = vec![self.finish(), self.stop()];
        for step in self.steps() {
            deeds.extend([self.begin(step), self.leave(step)]);
            deeds.extend(outcomes(step).into_iter().map(|outcome| self.done(step, &outcome)));
            deeds.extend(step.may_skip.then(|| self.skip(step)));
            if self.runs == Runs::OneVoid {
                deeds.push(self.void(step));
                deeds.extend(outcomes(step).into_iter().map(|outcome| self.correct(step, &outcome)));
            }
        }
        for made in &checklist.vehicle_actions {
            let does: Vec<Line> = self.assign(&made.makes);
            let changes = any(made
                .makes
                .iter()
                .map(|(name, value)| format!("({} != {})", value_of(name), self.says.number(name, value))));
            let guard = vec![self.says.rule(&made.needs), changes, self.all_may_stay(None)];
            let written = made.makes.keys().map(|name| value_of(name)).collect();
            let mut deed = self.running(format!("vehicle action {}", made.id), guard);
            deed.does = does;
            deed.only_if = Some(self.all_may_stay(Some(&self.may_change(written))));
            deed.moving = Some(&made.id);
            (deed.during, deed.after) = (Hands::Noted, Hands::Noted);
            deeds.push(deed);
        }
        deeds.extend(checklist.sign_offs.iter().map(|sign| self.sign(sign)));
        for gate in checklist.gates.iter().filter(|gate| gate.fresh_for.is_some()) {
            let known = format!("{} != 0", value_of(&gate.id));
            let mut deed = self.running(format!("expire {}", gate.id), vec![known]);
            deed.does = vec![Line::set(value_of(&gate.id), 0)];
            deeds.push(deed);
        }
        if self.runs == Runs::OneObservation {
            let values = checklist
                .conditions
                .iter()
                .flat_map(|one| one.values.iter().map(|value| (&*one.id, &*value.id)));
            deeds.extend(values.map(|(name, value)| self.observe(name, value)));
        }
        deeds
    }

    fn running(&self, title: String, guard: Vec<String>) -> Deed<'a> {
        Deed::new(title, [vec![format!("over <= {}", over::ENDING)], guard].concat())
    }

    pub fn assign(&self, values: &BTreeMap<String, String>) -> Vec<Line> {
        values.iter().map(|(name, value)| Line::set(value_of(name), self.says.number(name, value))).collect()
    }

    fn permitted(step: &Step) -> String {
        all(step.permits.iter().map(|permit| format!("({} == 1)", signed(permit))))
    }

    /// Whoever is in a step may stay there, as far as what that asks is among these variables; absent: at all. Steps that
    /// ask the same are asked together.
    fn all_may_stay(&self, among: Option<&BTreeSet<String>>) -> String {
        let mut alike: BTreeMap<String, Vec<String>> = BTreeMap::new();
        for step in self.steps() {
            let while_ = step.while_.as_ref().unwrap_or(&step.needs);
            let permits = step.permits.iter().map(|permit| signed(permit));
            let asked: BTreeSet<String> = self.says.reads(while_).into_iter().chain(permits).collect();
            if among.is_none_or(|among| !among.is_disjoint(&asked)) {
                let stays = all([self.says.rule(while_), Self::permitted(step)]);
                alike.entry(stays).or_default().push(format!("({} == 1)", hands_in(&step.id)));
            }
        }
        let may_stay = |(stays, in_it): (String, Vec<String>)| any([not(&any(in_it)), stays]);
        any(["(people == 0)".to_owned(), all(alike.into_iter().map(may_stay))])
    }

    fn begin(&self, step: &'a Step) -> Deed<'a> {
        let again = step.again.as_ref().map_or("false".to_owned(), |again| self.says.rule(again));
        let worked = all([self.work_is(&step.id, work::WORKED), again]);
        let mut guard = vec![
            format!("people < {}", self.checklist.crew),
            format!("{} == 0", hands_in(&step.id)),
            any([self.work_is(&step.id, work::UNTOUCHED), worked]),
            self.says.rule(&step.needs),
            Self::permitted(step),
            self.in_job(step),
            self.open(self.phase_of(step)),
        ];
        let before = self.steps().filter(|one| step.after.contains(&one.id));
        guard.extend(before.map(|before| self.behind(before)));
        if !step.when_ending {
            guard.push(format!("over == {}", over::NO));
        }
        let mut deed = self.running(format!("begin {}", step.id), guard);
        deed.does =
            vec![Line::set(hands_in(&step.id), 1), Line::new(&["people", HANDS], "people++".to_owned())];
        deed.does.extend(self.assign(&step.on_begin));
        deed.begins = true;
        deed.strict = true;
        (deed.during, deed.after) = (self.with(step), self.with(step));
        deed
    }

    /// Who can be in a step while somebody surely is in this one, and once they are out of it.
    fn with(&self, step: &'a Step) -> Hands<'a> {
        if self.checklist.crew == 1 { Hands::Only(step) } else { Hands::Anybody }
    }

    fn without(&self) -> Hands<'a> {
        if self.checklist.crew == 1 { Hands::Nobody } else { Hands::Anybody }
    }

    fn goes_out(step: &Step) -> [Line; 2] {
        [Line::set(hands_in(&step.id), 0), Line::new(&["people", HANDS], "people--".to_owned())]
    }

    fn leave(&self, step: &'a Step) -> Deed<'a> {
        let mut deed =
            self.running(format!("leave {}", step.id), vec![format!("{} == 1", hands_in(&step.id))]);
        deed.does = Self::goes_out(step).to_vec();
        deed.does.extend(self.assign(&step.on_leave));
        (deed.during, deed.after) = (self.without(), self.without());
        deed
    }

    fn done(&self, step: &'a Step, outcome: &Outcome) -> Deed<'a> {
        let stays = self.says.rule(step.while_.as_ref().unwrap_or(&step.needs));
        let guard = vec![format!("{} == 1", hands_in(&step.id)), stays, Self::permitted(step)];
        let mut deed = self.running(format!("done {}", step.id), guard);
        let fresh = not(&self.work_is(&step.id, work::WORKED));
        let pieces =
            self.pieces(&step.takes_off, true).into_iter().chain(self.pieces(&step.puts_back, false));
        deed.does.extend(pieces.map(|line| line.only_if(&fresh)));
        deed.does.push(Line::set(work_of(&step.id), work::WORKED));
        deed.does.extend(self.assign(&outcome.sets));
        deed.does.extend(self.assign(&outcome.makes));
        deed.does.extend(outcome.ends.then(|| Line::set("over".to_owned(), over::ENDING)));
        deed.only_if = Some(all(self.given(step).map(|sign| self.says.rule(&sign.holds_while))));
        deed.then.extend(self.given(step).map(|sign| Line::set(signed(&sign.id), 1)));
        deed.then.extend(Self::goes_out(step));
        deed.strict = true;
        (deed.during, deed.after) = (self.with(step), self.without());
        deed
    }

    fn given(&self, step: &'a Step) -> impl Iterator<Item = &'a SignOff> {
        let signs = signs_of(step);
        self.checklist.sign_offs.iter().filter(move |sign| signs.contains(sign.id.as_str()))
    }

    /// Pieces off or back; more than there are is all, fewer than none is none.
    fn pieces(&self, pieces: &Pieces, taken_off: bool) -> Vec<Line> {
        let line = |(item, count): (&String, &u8)| {
            let (name, most) = (
                off(item),
                self.checklist.items.iter().find(|one| one.id == *item).map_or(0, |one| one.count),
            );
            let text = if taken_off {
                format!("{name} = ({name} + {count} > {most} -> {most} : {name} + {count})")
            } else {
                format!("{name} = ({name} < {count} -> 0 : {name} - {count})")
            };
            Line::new(&[&name], text)
        };
        pieces.iter().map(line).collect()
    }

    fn sign(&self, sign: &'a SignOff) -> Deed<'a> {
        let by = self.steps().filter(|step| signs_of(step).contains(sign.id.as_str()));
        let worked = any(by.map(|step| self.work_is(&step.id, work::WORKED)));
        let guard = vec![format!("{} == 0", signed(&sign.id)), worked, self.says.rule(&sign.holds_while)];
        let mut deed = self.running(format!("sign {}", sign.id), guard);
        deed.does = vec![Line::set(signed(&sign.id), 1)];
        deed
    }

    fn skip(&self, step: &'a Step) -> Deed<'a> {
        let guard = vec![
            format!("over == {}", over::NO),
            self.work_is(&step.id, work::UNTOUCHED),
            format!("{} == 0", hands_in(&step.id)),
            self.in_job(step),
            self.open(self.phase_of(step)),
        ];
        let mut deed = self.running(format!("skip {}", step.id), guard);
        deed.does = vec![Line::set(work_of(&step.id), work::SKIPPED)];
        deed
    }

    fn finish(&self) -> Deed<'a> {
        let guard = vec![
            format!("over == {}", over::NO),
            "people == 0".to_owned(),
            self.says.rule(&self.checklist.done_when),
        ];
        let mut deed = self.running("finish".to_owned(), guard);
        deed.does = vec![Line::set("over".to_owned(), over::FINISHED)];
        (deed.leaves, deed.strict) = (true, true);
        deed
    }

    /// One stopped job is like another: nothing more happens in it.
    fn stop(&self) -> Deed<'a> {
        let guard = vec!["people == 0".to_owned(), self.says.rule(&self.checklist.safe_to_leave)];
        let mut deed = self.running("stop".to_owned(), guard);
        (deed.leaves, deed.strict, deed.clears) = (true, true, true);
        deed
    }

    /// Steps voided with this one where they are worked: those that build on it, however far back.
    fn voided_with(&self, step: &Step) -> BTreeSet<&'a str> {
        let mut voided = BTreeSet::new();
        for one in self.steps() {
            if one.id == step.id || one.relies_on.iter().any(|base| voided.contains(base.as_str())) {
                voided.insert(one.id.as_str());
            }
        }
        voided
    }

    fn void(&self, step: &'a Step) -> Deed<'a> {
        let voided = self.voided_with(step);
        let in_it =
            |id: &&str| not(&all([self.work_is(id, work::WORKED), format!("({} == 1)", hands_in(id))]));
        let mut guard = vec![format!("{VOIDED_ONCE} == 0"), self.work_is(&step.id, work::WORKED)];
        guard.extend(voided.iter().map(in_it));
        let mut deed = self.running(format!("void {}", step.id), guard);
        deed.does = vec![Line::set(VOIDED_ONCE.to_owned(), 1)];
        for (at, gone) in self.steps().enumerate().filter(|(_, one)| voided.contains(one.id.as_str())) {
            let worked = self.work_is(&gone.id, work::WORKED);
            for gate in gates_of(gone) {
                let later = self
                    .steps()
                    .skip(at + 1)
                    .filter(|later| !voided.contains(later.id.as_str()) && gates_of(later).contains(&gate));
                let kept = any(later.map(|later| self.work_is(&later.id, work::WORKED)));
                deed.does.push(Line::set(value_of(&gate), 0).only_if(&all([worked.clone(), not(&kept)])));
            }
            deed.does
                .extend(signs_of(gone).into_iter().map(|sign| Line::set(signed(sign), 0).only_if(&worked)));
            deed.does.push(Line::set(work_of(&gone.id), work::VOIDED).only_if(&worked));
        }
        deed
    }

    /// A correction: gates that do not age, and what is signed where it is so.
    fn correct(&self, step: &'a Step, outcome: &Outcome) -> Deed<'a> {
        let mut guard = vec![self.work_is(&step.id, work::VOIDED)];
        guard.extend(step.relies_on.iter().map(|base| not(&self.work_is(base, work::VOIDED))));
        let mut deed = self.running(format!("correct {}", step.id), guard);
        let mut sets = outcome.sets.clone();
        sets.retain(|gate, _| {
            self.checklist.gates.iter().any(|one| one.id == *gate && one.fresh_for.is_none())
        });
        deed.does = vec![Line::set(work_of(&step.id), work::WORKED)];
        deed.does.extend(self.assign(&sets));
        deed.does.extend(outcome.ends.then(|| Line::set("over".to_owned(), over::ENDING)));
        let signs = self
            .given(step)
            .map(|sign| Line::set(signed(&sign.id), 1).only_if(&self.says.rule(&sign.holds_while)));
        deed.then = signs.collect();
        deed
    }

    /// The vehicle is not as shown: what made the condition otherwise was not worked, unless vehicle actions write it.
    fn observe(&self, name: &'a str, value: &str) -> Deed<'a> {
        let number = self.says.number(name, value);
        let guard = vec![format!("{OBSERVED_ONCE} == 0"), format!("{} != {number}", value_of(name))];
        let mut deed = self.running(format!("observe {name} {value}"), guard);
        deed.does = vec![Line::set(OBSERVED_ONCE.to_owned(), 1), Line::set(value_of(name), number)];
        deed.observes = true;
        if self.checklist.vehicle_actions.iter().any(|made| made.makes.contains_key(name)) {
            return deed;
        }
        for step in self.steps() {
            let made: BTreeSet<String> =
                outcomes(step).into_iter().filter_map(|mut outcome| outcome.makes.remove(name)).collect();
            if made.is_empty() || made.contains(value) {
                continue;
            }
            let worked = self.work_is(&step.id, work::WORKED);
            let pieces =
                self.pieces(&step.takes_off, false).into_iter().chain(self.pieces(&step.puts_back, true));
            deed.does.extend(pieces.map(|line| line.only_if(&worked)));
            deed.does
                .extend(signs_of(step).into_iter().map(|sign| Line::set(signed(sign), 0).only_if(&worked)));
            deed.does.push(Line::set(work_of(&step.id), work::UNTOUCHED).only_if(&worked));
        }
        deed
    }
}
