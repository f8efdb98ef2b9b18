//! What an answer, a reading, a count or a permit means, whatever else the checklist says.

use panside_procedure::proof::{Answer, Property};
use serde_json::{Value, json};

use super::{PLAIN, fails_only, is_proved, proof};
use crate::bay::{choice, danger, entry, pan_job, sign_off, signature};
use crate::said::said;
use crate::support::Draft;

/// The pan job with one more entry at the filling.
fn filled_with(asked: Value) -> Draft {
    pan_job().add("fill", "entries", asked)
}

fn not_used(draft: &Draft) -> String {
    said(&fails_only(draft, Property::AllUsed).what)
}

fn dry(bad: Value) -> Value {
    let mut asked = choice("floor", &["dry", "wet"], json!({"dry": {}, "wet": bad}));
    asked["ask"]["choice"]["good"] = json!(["dry"]);
    asked
}

#[test]
fn an_answer_that_is_not_good_does_not_pass_as_if_it_were() {
    let passes = filled_with(dry(json!({})));
    assert_eq!(not_used(&passes), "step \"fill\" is done with \"floor\" = wet as if that were good");
    is_proved(&filled_with(dry(json!({"not_yet": true}))));
    is_proved(&filled_with(dry(json!({"ends": "stop"}))));
    let question = choice("colour", &["red", "brown"], json!({"red": {}, "brown": {}}));
    is_proved(&filled_with(question));
}

#[test]
fn it_is_seen_without_looking_at_observations() {
    let proof = proof(&filled_with(dry(json!({}))), PLAIN);
    assert!(proof.properties.contains(&(Property::AllUsed, Answer::Fails)));
}

#[test]
fn a_reading_outside_its_limit_does_not_pass_unless_it_only_judges_the_vehicle() {
    let warm = |outside: Value, evidence: bool| {
        let ask = json!({"reading": {"unit": "Ω", "at_most": "wire", "evidence": evidence}});
        filled_with(entry("wire", ask, json!({"inside": {}, "outside": outside})))
    };
    let what = "step \"fill\" is done with \"wire\" = outside as if that were good";
    assert_eq!(not_used(&warm(json!({}), false)), what);
    is_proved(&warm(json!({}), true));
    is_proved(&warm(json!({"not_yet": true}), false));
}

#[test]
fn a_level_out_of_its_band_does_not_pass() {
    let classes = json!({"below": {"not_yet": true}, "in": {}, "above": {}, "unclear": {"not_yet": true}});
    let read = filled_with(entry("stick", json!({"level": {"chart": "level_chart"}}), classes));
    assert_eq!(not_used(&read), "step \"fill\" is done with \"stick\" = above as if that were good");
}

#[test]
fn what_is_counted_is_what_comes_off_or_goes_back() {
    let short = pan_job().set("pan_off", "takes_off", json!({"bolts": 3, "gasket": 1}));
    let found = proof(&short, PLAIN).findings;
    let says = "step \"pan_off\" counts 4 of \"bolts\", but does not take off or put back so many";
    assert!(
        found.iter().any(|found| found.property == Property::NothingLeft && said(&found.what) == says),
        "{found:?}"
    );
}

#[test]
fn a_permit_of_whoever_works_has_a_ground_and_the_customers_word_needs_none() {
    let always = |by: Value| {
        let mut permit = sign_off("told", "permit", "true");
        permit["by"] = by;
        pan_job().add("", "sign_offs", permit).add("decide", "entries", signature("told"))
    };
    let what = "permit \"told\" never lapses, though it speaks of what somebody has looked at: say what it holds while";
    assert_eq!(not_used(&always(json!("technician"))), what);
    assert_eq!(not_used(&always(json!("second_person"))), what);
    is_proved(&always(json!("service_writer")));
}

#[test]
fn what_is_measured_does_not_stay_known_for_ever() {
    let for_ever = pan_job().without("level", "holds_while").without("level", "fresh_for");
    let found = proof(&for_ever, PLAIN).findings;
    let what = "gate \"level\" is measured and stays known for ever: say what it holds while";
    assert_eq!(found.iter().map(|found| said(&found.what)).collect::<Vec<_>>(), [what]);
    let on_purpose = for_ever.clone().set("level", "holds_while", json!("true"));
    assert_eq!(proof(&on_purpose, PLAIN).findings, []);
    // What only decides whether a step is part of the job was found once and stays so.
    let only_on =
        for_ever.set("", "done_when", json!("tray_clear and signed(torqued) and worked(read_again)"));
    assert_eq!(proof(&only_on, PLAIN).findings, []);
}

#[test]
fn a_temperature_grows_old_and_hangs_on_what_heats() {
    let cool = |gate: Value| {
        let ask = json!({"reading": {"unit": "°C", "at_most": "drain_limit"}});
        let classes = json!({"inside": {"sets": {"pan_probe": "cool"}}, "outside": {"not_yet": true}});
        pan_job()
            .add("", "gates", gate)
            .add("", "dangers", danger("scald", "doing.tag = drains and pan_probe != cool"))
            .set("drain", "tags", json!(["drains"]))
            .set("drain", "needs", json!("safe_under and pan_probe = cool"))
            .set("shake", "again", json!("not known(pan_probe)"))
            .add("shake", "entries", entry("probe", ask, classes))
    };
    let what =
        "gate \"pan_probe\" is a temperature: say what it holds while, and for how many minutes it is fresh";
    let holds = json!({"id": "pan_probe", "classes": ["cool"], "holds_while": "engine = off"});
    assert_eq!(not_used(&cool(holds.clone())), what);
    let mut both = holds;
    both["fresh_for"] = json!(30);
    let found = proof(&cool(both), PLAIN).findings;
    assert!(!found.iter().any(|found| said(&found.what) == what), "{found:?}");
}

#[test]
fn a_value_that_nothing_makes_and_nothing_asks_for_is_found() {
    let pan = json!(["on", "off", "hung"]);
    assert_eq!(not_used(&pan_job().set("pan", "values", pan)), "nothing makes pan = hung");
    let verdict = json!(["service", "leak", "refused", "wait"]);
    assert_eq!(not_used(&pan_job().set("verdict", "classes", verdict)), "nothing makes verdict = wait");
}
