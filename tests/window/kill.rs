//! The window ended without warning, and two windows on one store.

use panside_tests::window::{Place, Result, Screen};

/// The line after which somebody is in the step `bay_ready`, whose first entry is the battery at rest.
const IN_BAY_READY: usize = 10;

const ROW: &str = "[data-row=\"bay_ready/rest\"]";

#[test]
fn a_kill_in_the_middle_loses_nothing_and_the_window_comes_back_where_it_was() -> Result {
    let place = Place::after(IN_BAY_READY)?;
    let mut window = place.open()?;
    let step = window.see()?.step;
    window.tap_selector(ROW)?;
    window.tap("1")?;
    window.tap("2")?;
    let killed = place.screen().windows();
    assert_eq!(killed.len(), 1, "one window is open");
    place.screen().kill(killed[0])?;
    drop(window);

    // The driver still waits for the window that was killed, so the new one has its own.
    let screen = Screen::start()?;
    let mut window = place.open_on(&screen)?;
    assert_eq!(window.see()?.step, step, "it comes back to the same step");
    let typed = window.words.say("entry-typed")?;
    assert!(window.shows(ROW, "12 V")? && window.shows(ROW, &typed)?, "what was typed is there");
    assert_eq!(window.typed()?, "12", "and it stands on its pad, which is open again");
    place.job()?.walk(&mut window, IN_BAY_READY + 1, IN_BAY_READY + 2)?;
    assert_ne!(window.see()?.step, step, "the job goes on");
    window.close().map(drop)
}

#[test]
fn a_second_window_on_the_same_store_says_so_and_opens_once_the_first_is_closed() -> Result {
    let place = Place::after(1)?;
    let first = place.open()?;
    // A driver drives one window, so the second one has its own.
    let beside = Screen::start()?;
    let mut second = place.open_on(&beside)?;
    let seen = second.see()?;
    assert!(
        seen.text.contains("is open in another window or program. Close that one, then try again."),
        "the second window does not say why it can't open the store: {}",
        seen.text
    );
    first.close()?;
    place.screen().wait_closed()?;
    second.tap_words("sheet-try-again")?;
    second.wait("the job, now that the store is free", "seen.step !== null")?;
    second.close().map(drop)
}
