//! What does not fit: files that are no photo, texts that are no number, texts that would be a program.

use panside_tests::window::{Place, Result, Trouble, Window};

/// The line after which somebody is in the step `identify`.
const IN_IDENTIFY: usize = 1;

/// The line after which somebody is in the step `concern`.
const IN_CONCERN: usize = 3;

/// Would set a mark in the page, were it ever taken for more than text.
const SCRIPT: &str = "<img src=x onerror=\"window.__ran=1\"><script>window.__ran=1</script>";

#[test]
fn a_file_that_is_no_photo_is_refused_in_place_and_a_good_one_then_goes_in() -> Result {
    let place = Place::after(IN_IDENTIFY)?;
    let mut window = place.open()?;
    let row = "[data-row=\"identify/photo_as_found\"]";
    window.tap_selector(row)?;
    let text = place.write("notes.txt", "This is a text, whatever its name says.")?;
    let named = place.write("notes.jpg", "This is a text, whatever its name says.")?;
    let huge = place.write("huge.png", one_colour(20_000, 10_000)?)?;
    for (file, says) in [
        (text, "not a JPEG or PNG photo. Take the photo again"),
        (named, "not a JPEG or PNG photo. Take the photo again"),
        (huge, "20000 x 10000 = 200000000 pixels"),
    ] {
        window.give_photo("photo_as_found", &file)?;
        let says = serde_json::Value::from(says);
        window.wait(
            &format!("{says} on the pad"),
            &format!("seen.said.some((said) => said.includes({says}))"),
        )?;
    }
    window.give_photo("photo_as_found", place.photo())?;
    assert_eq!(window.left("Photo")?, None, "a good photo is entered");
    nothing_broke(&mut window)?;
    window.close().map(drop)
}

#[test]
fn letters_and_units_that_do_not_fit_are_no_number_and_a_decimal_comma_is() -> Result {
    let place = Place::after(IN_IDENTIFY)?;
    let mut window = place.open()?;
    let row = "[data-row=\"identify/odometer\"]";
    let field = "[role=dialog] input";
    window.tap_selector(row)?;
    for wrong in ["abc", "148 thousand", "12.6 °C", "1e400", "1,2,3"] {
        window.replace_in(field, wrong)?;
        window.tap_words("entry-enter")?;
        let said = window.left("Odometer")?;
        assert!(said.is_some(), "\"{wrong}\" is taken for a number of kilometres");
    }
    window.replace_in(field, "148320,5")?;
    window.tap_words("entry-enter")?;
    assert_eq!(window.left("Odometer")?, None, "a decimal comma is a decimal sign");
    assert!(window.shows(row, "148320,5 km")?, "what was typed stays as it was typed");
    nothing_broke(&mut window)?;
    window.close().map(drop)
}

#[test]
fn a_program_in_a_note_stays_text_on_every_screen() -> Result {
    let place = Place::after(IN_CONCERN)?;
    let mut window = place.open()?;
    let mut job = place.job()?;
    let mut concern = job.command_of(IN_CONCERN + 1);
    concern["work"]["entries"]["more"]["note"]["text"] = SCRIPT.into();
    job.make(&mut window, concern)?;
    window.tap_words("frame-more")?;
    window.tap_words("screens-place-record")?;
    window.wait(
        "the text on the record",
        &format!("seen.text.includes({})", serde_json::Value::from(SCRIPT)),
    )?;
    nothing_broke(&mut window)?;
    window.close().map(drop)
}

/// No program ran, no picture was looked for, and the page's own scripts made no mistake.
fn nothing_broke(window: &mut Window) -> Result {
    let script = "return [window.__ran === undefined, document.querySelector('img[src=x]') === null]";
    assert_eq!(window.run("looking", script, vec![])?, serde_json::json!([true, true]));
    assert_eq!(window.see()?.mistakes, Vec::<String>::new());
    Ok(())
}

/// A whole PNG of one colour, one bit a pixel, so that many megapixels take no room.
fn one_colour(width: u32, height: u32) -> Result<Vec<u8>> {
    let failed =
        |error: png::EncodingError| Trouble::wrong(format!("The large picture can't be made: {error}"));
    let mut file = Vec::new();
    let mut encoder = png::Encoder::new(&mut file, width, height);
    encoder.set_color(png::ColorType::Grayscale);
    encoder.set_depth(png::BitDepth::One);
    let mut writer = encoder.write_header().map_err(failed)?;
    let row = width.div_ceil(8) as usize;
    writer.write_image_data(&vec![0; row * height as usize]).map_err(failed)?;
    writer.finish().map_err(failed)?;
    Ok(file)
}
