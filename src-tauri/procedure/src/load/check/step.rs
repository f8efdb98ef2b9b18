//! What a step and its entries must keep to.

use std::collections::{BTreeMap, BTreeSet};

use super::Check;
use crate::format::entry::Read;
use crate::format::{Ask, Entry, SignKind, Step, Wait};

/// The most minutes that a wait can take: a day.
const LONGEST_WAIT: u32 = 24 * 60;

impl Check<'_> {
    pub(super) fn step(&mut self, place: &str, step: &Step) {
        for (list, ids) in [("after", &step.after), ("relies_on", &step.relies_on)] {
            for (at, id) in ids.iter().enumerate() {
                let own = self.names.step(&step.id);
                let place = format!("{place}/{list}/{at}");
                match self.names.step(id) {
                    None => self.problem(&place, format!("no step is called \"{id}\"")),
                    Some(found) if list == "relies_on" && own.is_some_and(|own| found >= own) => {
                        self.problem(
                            &place,
                            format!("\"{id}\" is no earlier step; a step builds on earlier ones"),
                        );
                    }
                    Some(_) => {}
                }
            }
        }
        for (at, id) in step.permits.iter().enumerate() {
            let sign = self.checklist.sign_offs.iter().find(|sign| sign.id == *id);
            if sign.is_none_or(|sign| sign.kind != SignKind::Permit) {
                self.problem(&format!("{place}/permits/{at}"), format!("no permit is called \"{id}\""));
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
                self.problem(&place, format!("the entry \"{}\" stands twice in this step", entry.id));
            }
            self.entry(&place, entry);
        }
        if let Some(wait) = &step.wait {
            self.wait(&format!("{place}/wait"), wait, step);
        }
    }

    fn wait(&mut self, place: &str, wait: &Wait, step: &Step) {
        if wait.minutes == 0 || wait.minutes > LONGEST_WAIT {
            let message = format!("{} minutes to wait; 1 to {LONGEST_WAIT} are possible", wait.minutes);
            self.problem(&format!("{place}/minutes"), message);
        }
        if wait.for_.trim().is_empty() {
            self.problem(&format!("{place}/for"), "say what is waited for, like \"the exhaust to cool\"");
        }
        let timed = step.entries.iter().any(|entry| matches!(entry.ask, Ask::Timer(_)));
        match (&wait.since, wait.attended) {
            (Some(_), Some(_)) => {
                self.problem(
                    place,
                    "a wait with \"since\" lies before the step, where nobody attends; take one of the two out",
                );
            }
            (None, None) => {
                self.problem(place, "say with \"attended\" whether somebody must stay while the time passes");
            }
            (None, Some(false)) if timed => {
                self.problem(
                    place,
                    "the step's timer runs while somebody is in it, so this wait must be \"attended\": true",
                );
            }
            _ => {}
        }
    }

    /// The good answers are answers, not all of them, and the work goes on with each.
    /// No class may be called good that holds the step or ends the job. Which kinds hold by themselves is theirs.
    fn good_answers(&mut self, place: &str, entry: &Entry) {
        for good in entry.ask.good().unwrap_or_default() {
            if entry.classes.get(good).is_some_and(|effect| effect.not_yet || effect.ends.is_some()) {
                self.problem(
                    &format!("{place}/ask/{}", entry.ask.kind()),
                    format!("\"{good}\" holds the step or ends the job, so it is no good answer"),
                );
            }
        }
    }

    fn pieces(&mut self, place: &str, pieces: &BTreeMap<String, u8>) {
        for (id, &count) in pieces {
            let place = format!("{place}/{id}");
            match self.checklist.items.iter().find(|item| item.id == *id) {
                None => self.problem(&place, format!("no item is called \"{id}\"")),
                Some(item) if count == 0 || count > item.count => {
                    self.problem(
                        &place,
                        format!("{count} pieces; there are {} of {}", item.count, item.name),
                    );
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
                    let message = format!(
                        "a {} can come out as \"{class}\"; say what that does (an empty {{}} for nothing)",
                        entry.ask.kind()
                    );
                    self.problem(&classes_place, message);
                }
            }
        }
        for (class, effect) in &entry.classes {
            let place = format!("{classes_place}/{class}");
            if !can_return.contains(&class.as_str()) {
                let choices = can_return.join(", ");
                self.problem(
                    &place,
                    format!("a {} never comes out as \"{class}\"; it can be {choices}", entry.ask.kind()),
                );
            }
            let nothing_else = effect.sets.is_empty() && effect.makes.is_empty() && effect.ends.is_none();
            if effect.not_yet && !nothing_else {
                self.problem(&place, "\"not_yet\" keeps the step begun and changes nothing; remove the rest");
            }
            if entry.ask.must_be_not_yet().contains(&class.as_str()) && !effect.not_yet {
                self.problem(
                    &place,
                    format!("\"{class}\" must be \"not_yet\": the step is held until it is corrected"),
                );
            }
            if entry.optional && (effect.not_yet || !nothing_else) {
                self.problem(
                    &place,
                    "an optional entry cannot decide anything; make it required or take this out",
                );
            }
            let hands = matches!(&entry.ask, Ask::Choice(choice) if choice.hands_did);
            if !effect.makes.is_empty() && !hands {
                self.problem(
                    &place,
                    "only a choice with \"hands_did\": true may change conditions: it tells what the hands did",
                );
            }
            self.conditions(&format!("{place}/makes"), &effect.makes, true);
            self.gates(&format!("{place}/sets"), &effect.sets);
        }
        if !can_return.is_empty()
            && can_return.iter().all(|class| entry.classes.get(*class).is_some_and(|e| e.not_yet))
        {
            self.problem(&classes_place, "every class is \"not_yet\", so the step could never be done");
        }
        for wrong in entry.ask.wrong() {
            let of_fields = format!("{place}/ask/{}{}", entry.ask.kind(), wrong.at);
            self.problem(if wrong.at.is_empty() { place } else { &of_fields }, wrong.message);
        }
        if matches!(entry.ask, Ask::Choice(_) | Ask::Several(_)) {
            self.good_answers(place, entry);
        }
        for read in entry.ask.reads() {
            self.read(place, read);
        }
        match &entry.ask {
            Ask::SignOff(asked) if self.names.sign(&asked.sign).is_none() => {
                self.problem(place, format!("no sign-off is called \"{}\"", asked.sign));
            }
            Ask::SignOff(_) if entry.optional => {
                self.problem(place, "a sign-off is never optional; skip the step or take it out");
            }
            Ask::Count(count) => self.pieces(&format!("{place}/ask/count/of"), &count.of),
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
        let wanted = unit.map_or_else(|| format!("a {kind}"), |unit| format!("a {kind} in {unit}"));
        match named.map(|entry| &entry.ask) {
            None => {
                self.problem(
                    place,
                    format!("no entry is called \"{read}\"; write it as step.entry, {wanted}"),
                );
            }
            Some(Ask::Reading(reading))
                if kind == "reading" && unit.is_none_or(|unit| reading.unit == unit) => {}
            Some(ask) if ask.kind() == kind && kind != "reading" => {}
            Some(_) => self.problem(place, format!("\"{read}\" must be {wanted}")),
        }
    }
}
