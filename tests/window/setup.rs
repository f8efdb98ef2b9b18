//! The shop setup in the real window: a spec sheet is copied and typed, comes back after a kill, is kept, and is checked by a
//! second person with a PIN.

use panside_tests::window::{Place, Result, Screen, Window};

const TITLE: &str = "Demo wagon of this shop";
const SECOND: &str = "T. Marl";

#[test]
fn a_sheet_typed_in_the_setup_survives_a_kill_and_is_checked_by_a_second_person_with_a_pin() -> Result {
    let place = Place::after(1)?;
    let mut window = place.open()?;
    window.tap_words("frame-more")?;
    window.tap_words("screens-place-setup")?;
    window.tap_words("screens-sheet-new")?;
    window.tap("Demo: five-door wagon")?;
    window.tap_words("screens-sheet-for")?;
    window.replace_in("[role=dialog] input", TITLE)?;
    window.replace_in("[role=dialog] label:nth-of-type(2) input", "service information, page 7")?;
    window.tap_words("back")?;
    window.tap("fluid temperature for the level")?;
    window.tap("4")?;
    window.tap("5")?;
    let killed = place.screen().windows();
    place.screen().kill(killed[0])?;
    drop(window);

    // The driver still waits for the window that was killed, so the new one has its own.
    let screen = Screen::start()?;
    let mut window = place.open_on(&screen)?;
    window.wait("the value that was open", "seen.dialogs.includes('fluid temperature for the level')")?;
    assert_eq!(window.field_text(&window.words.say("screens-sheet-min")?)?, "45");
    window.tap_words("back")?;
    says(&mut window, TITLE)?;
    window.tap_words("screens-sheet-keep")?;
    says(&mut window, "revision 1")?;

    window.tap_words("screens-place-setup")?;
    let switch = window.words.say("screens-setup-work")?;
    window.tap(&format!("{switch} : {SECOND}"))?;
    let set_pin = window.words.say("screens-pin-new")?;
    window.tap(&format!("{set_pin}: {SECOND}"))?;
    digits(&mut window, "4711")?;
    window.tap_words("screens-pin-onward")?;
    digits(&mut window, "4711")?;
    window.tap_words("screens-pin-set")?;
    window.tap(&format!("Open: {TITLE}"))?;
    window.tap_words("screens-sheet-compare")?;
    window.tap("fluid temperature for the level")?;
    window.tap("CHECKED: 1 value")?;
    digits(&mut window, "1111")?;
    window.tap_words("screens-pin-give")?;
    says(&mut window, &format!("That is not the PIN of {SECOND}."))?;
    digits(&mut window, "4711")?;
    window.tap_words("screens-pin-give")?;
    says(&mut window, &format!("checked by {SECOND}"))?;
    says(&mut window, "revision 2")?;
    assert_eq!(window.see()?.mistakes, Vec::<String>::new());
    window.close().map(drop)
}

fn digits(window: &mut Window, digits: &str) -> Result {
    digits.chars().try_for_each(|digit| window.tap(&digit.to_string()))
}

/// Waits until the window says something.
fn says(window: &mut Window, what: &str) -> Result {
    window.wait(what, &format!("seen.text.includes({})", serde_json::Value::from(what)))
}
