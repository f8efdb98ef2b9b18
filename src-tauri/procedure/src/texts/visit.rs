//! Goes to every text of a checklist that people read. Each type is taken apart field by field, without `..`: whoever adds
//! a field says here whether it is a text.

use crate::format::entry::{
    Authorization, Balance, Choice, ChoiceOption, Coil, Coils, CoolDown, Count, Decision, DecisionRow,
    Estimate, Level, Note, Photo, Reading, Scan, Several, SeveralOption, SignOffEntry, Timer, Torque,
};
use crate::format::{
    Ask, Caution, Checklist, Condition, Danger, Entry, Fact, Gate, Item, Named, Phase, SheetKey, SignOff,
    Step, VehicleAction, Wait,
};

/// What is done at each text, with its place.
type Visit<'a> = dyn FnMut(&str, &mut String) + 'a;

pub(super) fn each(checklist: &mut Checklist, visit: &mut Visit<'_>) {
    let Checklist {
        title,
        facts,
        conditions,
        gates,
        sheet_keys,
        items,
        sign_offs,
        phases,
        vehicle_actions,
        dangers,
        format: _,
        id: _,
        revision: _,
        demo: _,
        crew: _,
        terms: _,
        start_when: _,
        follows: _,
        done_when: _,
        safe_to_leave: _,
    } = checklist;
    visit("title", title);
    for Fact { id, label, values, sheet: _ } in facts {
        labelled(&format!("facts/{id}"), label, "values", values, visit);
    }
    for Condition { id, label, values, start: _, recover: _, on: _, draws: _ } in conditions {
        labelled(&format!("conditions/{id}"), label, "values", values, visit);
    }
    for Gate { id, label, classes, holds_while: _, fresh_for: _ } in gates {
        labelled(&format!("gates/{id}"), label, "classes", classes, visit);
    }
    for (key, said) in sheet_keys {
        let SheetKey { label, without, asked: _, usual: _, group: _, checked: _, ends_of: _ } = said;
        visit(&format!("sheet_keys/{key}"), label);
        without.iter_mut().for_each(|text| visit(&format!("sheet_keys/{key}/without"), text));
    }
    for Item { id, name, count: _, sheet: _, or_none: _, on: _, reuse: _, draws: _ } in items {
        visit(&format!("items/{id}/name"), name);
    }
    for SignOff { id, text, kind: _, holds_while: _, by: _ } in sign_offs {
        visit(&format!("sign_offs/{id}/text"), text);
    }
    for Phase { id, title, steps, beside: _ } in phases {
        visit(&format!("phases/{id}/title"), title);
        steps.iter_mut().for_each(|of| step(of, visit));
    }
    for VehicleAction { id, title, needs: _, makes: _, minutes: _ } in vehicle_actions {
        visit(&format!("vehicle_actions/{id}/title"), title);
    }
    for Danger { id, text, signal: _, when: _ } in dangers {
        visit(&format!("dangers/{id}/text"), text);
    }
}

fn labelled(place: &str, label: &mut String, list: &str, values: &mut [Named], visit: &mut Visit<'_>) {
    visit(&format!("{place}/label"), label);
    for Named { id, label } in values {
        visit(&format!("{place}/{list}/{id}"), label);
    }
}

fn step(step: &mut Step, visit: &mut Visit<'_>) {
    let Step {
        id,
        title,
        instruction,
        entries,
        cautions,
        wait,
        zone: _,
        on: _,
        after: _,
        needs: _,
        while_: _,
        again: _,
        permits: _,
        relies_on: _,
        touches: _,
        tags: _,
        on_begin: _,
        on_leave: _,
        makes: _,
        sets: _,
        takes_off: _,
        puts_back: _,
        may_skip: _,
        when_ending: _,
        minutes: _,
    } = step;
    let place = format!("steps/{id}");
    visit(&format!("{place}/title"), title);
    visit(&format!("{place}/instruction"), instruction);
    for (number, Caution { text, signal: _ }) in (1..).zip(cautions) {
        visit(&format!("{place}/cautions/{number}"), text);
    }
    if let Some(Wait { for_, minutes: _, since: _, attended: _ }) = wait {
        visit(&format!("{place}/wait/for"), for_);
    }
    for Entry { id, label, ask: of, optional: _, on: _, classes: _ } in entries {
        let place = format!("{place}/entries/{id}");
        visit(&format!("{place}/label"), label);
        ask(&place, of, visit);
    }
}

fn ask(place: &str, ask: &mut Ask, visit: &mut Visit<'_>) {
    match ask {
        Ask::Choice(Choice { options, hands_did: _, good: _ }) => {
            for ChoiceOption { class, label } in options {
                visit(&format!("{place}/options/{class}"), label);
            }
        }
        Ask::Several(Several { options, ranked: _, none: _, good: _ }) => {
            for SeveralOption { id, label, class: _ } in options {
                visit(&format!("{place}/options/{id}"), label);
            }
        }
        Ask::Decision(Decision { of: _, options, rows, against: _, good: _ }) => {
            for ChoiceOption { class, label } in options {
                visit(&format!("{place}/options/{class}"), label);
            }
            for (number, DecisionRow { when: _, otherwise: _, class: _, says }) in (1..).zip(rows) {
                visit(&format!("{place}/rows/{number}"), says);
            }
        }
        Ask::Photo(Photo { of, with_scale: _, first_page: _ }) => visit(&format!("{place}/of"), of),
        Ask::Note(Note { words, words_of: _ }) => listed(place, "words", words, visit),
        Ask::Estimate(Estimate { parts, labor, may_turn_up }) => {
            listed(place, "parts", parts, visit);
            listed(place, "labor", labor, visit);
            listed(place, "may_turn_up", may_turn_up, visit);
        }
        Ask::Authorization(Authorization { of: _, given_by }) => {
            listed(place, "given_by", given_by, visit);
        }
        // These have keys of the sheet, ids, units, and words that rules choose by.
        Ask::SignOff(SignOffEntry { sign: _ })
        | Ask::Reading(Reading { unit: _, at_most: _, at_least: _, within: _, evidence: _ })
        | Ask::Level(Level { chart: _, gain: _, added: _, may_give_up: _ })
        | Ask::Coil(Coil { limits: _, at: _, evidence: _ })
        | Ask::Coils(Coils { of: _, at: _, some: _, evidence: _ })
        | Ask::CoolDown(CoolDown { limit: _, place: _, heated_by: _ })
        | Ask::Balance(Balance { drained: _, added: _, density: _, unseen: _, capacity: _ })
        | Ask::Count(Count { of: _ })
        | Ask::Torque(Torque { spec: _, of: _, guarded: _, exceptions: _ })
        | Ask::Scan(Scan { of: _ })
        | Ask::Timer(Timer { at_least: _ }) => {}
    }
}

/// Texts of a list, by their number.
fn listed(place: &str, list: &str, texts: &mut [String], visit: &mut Visit<'_>) {
    for (number, text) in (1..).zip(texts) {
        visit(&format!("{place}/{list}/{number}"), text);
    }
}
