//! What a step and its entries must keep to.

use std::collections::{BTreeMap, BTreeSet};

use panside_messages::Arg;

use super::Check;
use crate::format::entry::Read;
use crate::format::{Ask, Entry, SignKind, Step, Wait};
use crate::message::*;

/// The most minutes that a wait can take: a day.
const LONGEST_WAIT: u32 = 24 * 60;

impl Check<'_> {
    pub(super) fn step(&mut self, place: &str, step: &Step) {
        for (list, ids) in [("after", &step.after), ("relies_on", &step.relies_on)] {
            for (at, id) in ids.iter().enumerate() {
                let own = self.names.step(&step.id);
                let place = format!("{place}/{list}/{at}");
                match self.names.step(id) {
                    None => self.problem(&place, problem_no_step(id)),
                    Some(found) if list == "relies_on" && own.is_some_and(|own| found >= own) => {
                        self.problem(&place, problem_no_earlier_step(id));
                    }
                    Some(_) => {}
                }
            }
        }
        for (at, id) in step.permits.iter().enumerate() {
            let sign = self.checklist.sign_offs.iter().find(|sign| sign.id == *id);
            if sign.is_none_or(|sign| sign.kind != SignKind::Permit) {
                self.problem(&format!("{place}/permits/{at}"), problem_no_permit(id));
            }
        }
        self.conditions(&format!("{place}/makes"), &step.makes, true);
        self.conditions(&format!("{place}/on_begin"), &step.on_begin, true);
        self.conditions(&format!("{place}/on_leave"), &step.on_leave, true);
        self.gates(&format!("{place}/sets"), &step.sets);
        for (list, pieces) in [("takes_off", &step.takes_off), ("puts_back", &step.puts_back)] {
            self.pieces(&format!("{place}/{list}"), pieces);
        }
        let mut seen = BTreeSet::new();
        for (at, entry) in step.entries.iter().enumerate() {
            let place = format!("{place}/entries/{at}");
            if !seen.insert(&entry.id) {
                self.problem(&place, problem_entry_twice(&entry.id));
            }
            self.entry(&place, entry);
            if let Ask::Decision(asked) = &entry.ask {
                self.decision(&place, step, at, asked);
            }
        }
        if let Some(wait) = &step.wait {
            self.wait(&format!("{place}/wait"), wait, step);
        }
    }

    fn wait(&mut self, place: &str, wait: &Wait, step: &Step) {
        if wait.minutes == 0 || wait.minutes > LONGEST_WAIT {
            let what = problem_wait_minutes(wait.minutes, LONGEST_WAIT);
            self.problem(&format!("{place}/minutes"), what);
        }
        if wait.for_.trim().is_empty() {
            self.problem(&format!("{place}/for"), problem_wait_for());
        }
        let timed = step.entries.iter().any(|entry| matches!(entry.ask, Ask::Timer(_)));
        match (&wait.since, wait.attended) {
            (Some(_), Some(_)) => self.problem(place, problem_wait_since()),
            (None, None) => self.problem(place, problem_wait_attended()),
            (None, Some(false)) if timed => self.problem(place, problem_wait_timer()),
            _ => {}
        }
    }

    /// The good answers are answers, not all of them, and the work goes on with each.
    /// No class may be called good that holds the step or ends the job. Which kinds hold by themselves is theirs.
    fn good_answers(&mut self, place: &str, entry: &Entry) {
        for good in entry.ask.good().unwrap_or_default() {
            if entry.classes.get(good).is_some_and(|effect| effect.not_yet || effect.ends.is_some()) {
                self.problem(&format!("{place}/ask/{}", entry.ask.kind()), problem_good_holds(good));
            }
        }
    }

    fn pieces(&mut self, place: &str, pieces: &BTreeMap<String, u8>) {
        for (id, &count) in pieces {
            let place = format!("{place}/{id}");
            match self.checklist.items.iter().find(|item| item.id == *id) {
                None => self.problem(&place, problem_no_item(id)),
                Some(item) if count == 0 || count > item.count => {
                    let (pieces, most) = (u32::from(count), u32::from(item.count));
                    self.problem(&place, problem_pieces(pieces, most, &item.name));
                }
                Some(_) => {}
            }
        }
    }

    fn entry(&mut self, place: &str, entry: &Entry) {
        let can_return = entry.ask.classes();
        let classes_place = format!("{place}/classes");
        if !entry.classes.is_empty() || can_return.len() > 1 {
            for class in &can_return {
                if !entry.classes.contains_key(*class) {
                    self.problem(&classes_place, problem_class_left_out(entry.ask.kind(), *class));
                }
            }
        }
        for (class, effect) in &entry.classes {
            let place = format!("{classes_place}/{class}");
            if entry.on.is_some() && !effect.not_yet && !effect.is_nothing() {
                self.problem(&place, problem_on_decides(&entry.id));
            }
            if !can_return.contains(&class.as_str()) {
                let choices = can_return.iter().map(|class| (*class).to_owned()).collect();
                self.problem(&place, problem_class_never(entry.ask.kind(), class, Arg::AnyOf(choices)));
            }
            let nothing_else = effect.sets.is_empty() && effect.makes.is_empty() && effect.ends.is_none();
            if effect.not_yet && !nothing_else {
                self.problem(&place, problem_not_yet_alone());
            }
            if entry.ask.must_be_not_yet().contains(&class.as_str()) && !effect.not_yet {
                self.problem(&place, problem_must_hold(class));
            }
            if entry.optional && (effect.not_yet || !nothing_else) {
                self.problem(&place, problem_optional_decides());
            }
            let hands = matches!(&entry.ask, Ask::Choice(choice) if choice.hands_did);
            if !effect.makes.is_empty() && !hands {
                self.problem(&place, problem_hands_did());
            }
            self.conditions(&format!("{place}/makes"), &effect.makes, true);
            self.gates(&format!("{place}/sets"), &effect.sets);
        }
        if !can_return.is_empty()
            && can_return.iter().all(|class| entry.classes.get(*class).is_some_and(|e| e.not_yet))
        {
            self.problem(&classes_place, problem_all_not_yet());
        }
        for wrong in entry.ask.wrong() {
            let of_fields = format!("{place}/ask/{}{}", entry.ask.kind(), wrong.at);
            self.problem(if wrong.at.is_empty() { place } else { &of_fields }, wrong.what);
        }
        if matches!(entry.ask, Ask::Choice(_) | Ask::Several(_) | Ask::Decision(_)) {
            self.good_answers(place, entry);
        }
        for read in entry.ask.reads() {
            self.read(place, read);
        }
        match &entry.ask {
            Ask::SignOff(asked) if self.names.sign(&asked.sign).is_none() => {
                self.problem(place, problem_no_sign_off(&asked.sign));
            }
            Ask::SignOff(_) if entry.optional || entry.on.is_some() => {
                self.problem(place, problem_optional_sign())
            }
            Ask::Count(count) => self.pieces(&format!("{place}/ask/count/of"), &count.of),
            Ask::Torque(torque) => {
                for (at, id) in torque.of.iter().enumerate() {
                    if self.checklist.items.iter().all(|item| item.id != *id) {
                        self.problem(&format!("{place}/ask/torque/of/{at}"), problem_no_item(id));
                    }
                }
            }
            Ask::CoolDown(cool_down) => {
                self.conditions(&format!("{place}/ask/cool_down/heated_by"), &cool_down.heated_by, false);
            }
            _ => {}
        }
    }

    /// Another entry that this one reads, as `step.entry`.
    fn read(&mut self, place: &str, wanted: Read<'_>) {
        let Read { entry: read, kind, unit } = wanted;
        let steps = self.checklist.phases.iter().flat_map(|phase| &phase.steps);
        let named = read.split_once('.').and_then(|(step, id)| {
            let step = steps.into_iter().find(|found| found.id == step)?;
            step.entries.iter().find(|entry| entry.id == id)
        });
        let wanted = unit.map_or_else(|| entry_of_kind(kind), |unit| entry_in_unit(kind, unit));
        match named.map(|entry| &entry.ask) {
            None => self.problem(place, problem_no_entry(read, wanted)),
            Some(Ask::Reading(reading))
                if kind == "reading" && unit.is_none_or(|unit| reading.unit == unit) => {}
            Some(ask) if ask.kind() == kind && kind != "reading" => {}
            Some(_) => self.problem(place, problem_entry_kind(read, wanted)),
        }
    }
}
