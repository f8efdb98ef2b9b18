//! The plan in the real window: for one person at once to the best order, for two as a plan only; the choice is there
//! again in the next window.

use std::time::Instant;

use panside_tests::window::{Place, Result, Window};
use serde_json::{Value, json};

/// The line after which the demo job is begun.
const BEGUN: usize = 1;

/// The line after which somebody is at the fire watch, and the exhaust cools.
const WATCHES: usize = 82;

#[test]
fn the_plan_is_shown_for_one_person_and_for_two_and_says_what_a_second_person_saves() -> Result {
    let place = Place::after(BEGUN)?;
    let mut window = place.open()?;
    open_plan(&mut window)?;
    window.wait("the best order for one person", &says(&window, "plan-exact")?)?;
    let only = window.words.say("plan-only")?;
    let first = window.words.with("plan-person", &[("person", 1.into())])?;
    let seen = window.see()?;
    assert!(!seen.text.contains(&only) && !seen.text.contains(&first), "{}", seen.text);
    let one = planned(&mut window, 1)?;

    let tapped = Instant::now();
    window.tap_words("plan-people-2")?;
    window.wait("who does what", &says(&window, "plan-only")?)?;
    println!("   a plan for two people after {} ms", tapped.elapsed().as_millis());
    let two = planned(&mut window, 2)?;
    let minutes = |plan: &Value| plan["page"]["total_min"].as_u64();
    let second = window.words.with("plan-person", &[("person", 2.into())])?;
    let seen = window.see()?;
    assert!(seen.text.contains(&first) && seen.text.contains(&second), "{}", seen.text);
    let saves = window.words.with(
        "plan-second",
        &[
            ("alone", hours(&one).into()),
            ("alone_is", "exact".into()),
            ("second", hours(&two).into()),
            ("second_is", "most".into()),
        ],
    )?;
    assert!(seen.text.contains(&saves), "\"{saves}\" is not in: {}", seen.text);
    assert!(minutes(&two) < minutes(&one), "{two} against {one}");
    assert_eq!((&one["page"]["plan_only"], &two["page"]["plan_only"]), (&json!(false), &json!(true)));
    assert!(seen.mistakes.is_empty(), "{:?}", seen.mistakes);
    window.close()?;

    place.screen().wait_closed()?;
    let mut window = place.open()?;
    window.wait("the plan for two, where the window was", &says(&window, "plan-only")?)?;
    assert!(is_chosen(&mut window, "plan-people-2")? && !is_chosen(&mut window, "plan-people-1")?);
    window.tap_words("plan-people-1")?;
    window.wait("one person's plan again", &says(&window, "plan-exact")?)?;
    window.close().map(drop)
}

#[test]
fn what_can_be_done_meanwhile_stays_that_of_the_live_job_though_two_are_planned_for() -> Result {
    let place = Place::after(WATCHES)?;
    let mut window = place.open()?;
    let nothing = says(&window, "plan-nothing")?;
    window.wait("that who watches can do nothing else", &nothing)?;
    open_plan(&mut window)?;
    window.tap_words("plan-people-2")?;
    window.wait("the plan for two", &says(&window, "plan-only")?)?;
    let (one, two) = (planned(&mut window, 1)?, planned(&mut window, 2)?);
    let runs =
        |plan: &Value| plan["page"]["meanwhile"]["running"].as_array().is_some_and(|all| !all.is_empty());
    assert!(runs(&one) && !runs(&two), "what is waited for is told to the live job's people: {one} {two}");
    window.tap_words("back")?;
    window.wait("that nothing else can be done still", &nothing)?;
    window.close().map(drop)
}

/// Opens the job steps in the order of the plan.
fn open_plan(window: &mut Window) -> Result {
    window.tap_selector("button.pane.job-steps")?;
    window.tap_words("plan-order")
}

/// The condition that the window says what a message says.
fn says(window: &Window, id: &str) -> Result<String> {
    Ok(format!("seen.text.includes({})", Value::from(window.words.say(id)?)))
}

fn is_chosen(window: &mut Window, id: &str) -> Result<bool> {
    let says = window.words.say(id)?;
    window.holds_down(&says)
}

/// What the core knows of a plan by now.
fn planned(window: &mut Window, people: u8) -> Result<Value> {
    let job = window.invoke("jobs", json!({}))?[0]["job"].clone();
    window.invoke("plan", json!({ "job": job, "people": people, "best": false, "stale": false }))
}

/// Minutes as the window shows them.
fn hours(plan: &Value) -> String {
    let minutes = plan["page"]["total_min"].as_u64().unwrap_or_default();
    format!("{} h {:02}", minutes / 60, minutes % 60)
}
