//! The plan in the real window: for one person at once to the best order, for two as a plan only; the choice is there
//! again in the next window.

use std::time::{Duration, Instant};

use panside_tests::window::{Place, Result, Window};
use serde_json::{Value, json};

/// The line after which the demo job is begun.
const BEGUN: usize = 1;

/// The line after which the exhaust cools.
const COOLS: usize = 66;

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
    let one = planned(&mut window, 1, false)?;

    let tapped = Instant::now();
    window.tap_words("plan-people-2")?;
    window.wait("who does what", &says(&window, "plan-only")?)?;
    println!("   a plan for two people after {} ms", tapped.elapsed().as_millis());
    let two = planned(&mut window, 2, false)?;
    let minutes = |plan: &Value| plan["page"]["total_min"].as_u64();
    let second = window.words.with("plan-person", &[("person", 2.into())])?;
    let seen = window.see()?;
    assert!(seen.text.contains(&first) && seen.text.contains(&second), "{}", seen.text);
    assert!(window.words.holds(&seen.text, "plan-second")?, "{}", seen.text);
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
fn while_the_exhaust_cools_what_one_person_may_do_is_offered_though_two_are_planned_for() -> Result {
    let place = Place::after(COOLS)?;
    let mut window = place.open()?;
    open_plan(&mut window)?;
    window.tap_words("plan-people-2")?;
    window.wait("the plan for two", &says(&window, "plan-only")?)?;
    window.tap_words("back")?;
    let cheapest = cheapest_of_one_person(&mut window)?;
    assert!(!cheapest.is_empty(), "something can be done meanwhile");
    let meanwhile = Value::from(window.words.say("plan-meanwhile")?);
    let offered = format!(
        "window.__eyes.all('section').filter((each) => each.ariaLabel === {meanwhile})\
            .flatMap((each) => [...each.querySelectorAll('b')]).map((each) => each.innerText).join() === '{cheapest}'"
    );
    window.wait("the steps that one person may do meanwhile", &offered)?;
    window.close().map(drop)
}

/// Opens the thread in the order of the plan.
fn open_plan(window: &mut Window) -> Result {
    window.tap_selector("button.pane.thread")?;
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

fn job(window: &mut Window) -> Result<Value> {
    Ok(window.invoke("jobs", json!({}))?[0]["job"].clone())
}

/// What the core knows of a plan by now.
fn planned(window: &mut Window, people: u8, best: bool) -> Result<Value> {
    let job = job(window)?;
    window.invoke("plan", json!({ "job": job, "people": people, "best": best, "stale": false }))
}

/// Numbers of the three steps that cost one person least, but for the one in hand, once that is found.
fn cheapest_of_one_person(window: &mut Window) -> Result<String> {
    let mut plan = planned(window, 1, true)?;
    while !plan["searching"].is_null() {
        std::thread::sleep(Duration::from_millis(100));
        plan = planned(window, 1, true)?;
    }
    let job = job(window)?;
    let steps = window.invoke("look", json!({ "job": job }))?["view"]["steps"].clone();
    let number = |id: &Value| {
        let step = steps.as_array().into_iter().flatten().find(|step| step["id"] == *id);
        step.map(|step| step["number"].to_string()).unwrap_or_default()
    };
    let can = plan["page"]["meanwhile"]["can"].as_array().cloned().unwrap_or_default();
    let steps = can.iter().map(|can| &can["step"]).filter(|step| **step != "probe_exhaust");
    Ok(steps.take(3).map(number).collect::<Vec<_>>().join(","))
}
