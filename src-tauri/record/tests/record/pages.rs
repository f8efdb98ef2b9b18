//! The record as pages: all of it there, whatever was typed, however much.

use std::collections::BTreeMap;
use std::error::Error;
use std::io::Cursor;

use image::{DynamicImage, ImageFormat, RgbImage};
use panside_job::EntryValue;
use panside_journal::Hash;
use panside_record::{Document, Lacks, PdfInputs, PdfPhoto};

use crate::bay::{Bay, CHECKLIST, DEMO_MARK, PHOTO, SHEET, Said, Tested, note};
use crate::tools::File;

/// A job that went well, with signs that the text's own face does not have.
fn closed() -> Result<Document, Box<dyn Error>> {
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.enter("find", "cause", note("coil 5,9 Ω at 20 °C, détente weak → new; Привод, 26 µm"), "written");
    bay.close_up();
    Ok(bay.document())
}

/// A JPEG that no other is like.
pub fn jpeg(width: u32, height: u32, shade: u8) -> Result<Vec<u8>, Box<dyn Error>> {
    let picture =
        RgbImage::from_fn(width, height, |x, y| image::Rgb([shade, x.to_le_bytes()[0], y.to_le_bytes()[0]]));
    let mut bytes = Cursor::new(Vec::new());
    DynamicImage::from(picture).write_to(&mut bytes, ImageFormat::Jpeg)?;
    Ok(bytes.into_inner())
}

pub fn with_photo(photo: PdfPhoto) -> PdfInputs {
    PdfInputs { photos: BTreeMap::from([(PHOTO.to_owned(), photo)]), ..PdfInputs::default() }
}

#[test]
fn equal_records_give_equal_pages_byte_for_byte() -> Tested {
    let inputs = with_photo(PdfPhoto::Jpeg(jpeg(64, 48, 7)?));
    assert_eq!(closed()?.pdf(&inputs)?, closed()?.pdf(&inputs)?);
    assert_eq!(closed()?.twin(&inputs)?, closed()?.twin(&inputs)?);
    Ok(())
}

#[test]
fn the_pages_say_what_was_entered_with_every_stage_and_every_sign() -> Tested {
    let words = File::new(&closed()?.pdf(&PdfInputs::default())?)?.words()?;
    let said = [
        "Repair order 20417",
        "2-3 shift",
        "coil weak when warm",
        "solenoid, filter and gasket new",
        "4.0, then 9.0 N·m",
        "4, then 9 N·m ± 10 %",
        "25.5 mm at 60 °C, 26 mm at 60 °C",
        "coil 5,9 Ω at 20 °C, détente weak → new; Привод, 26 µm",
        "Stood firm when pushed. (no longer valid)",
        "after \"Lower\"",
        "1M8GDM9AXKP042788",
        "still open",
        "The vehicle maker's service information, the lift maker's instructions",
    ];
    for text in said {
        assert!(words.contains(text), "\"{text}\" is not in: {words}");
    }
    Ok(())
}

#[test]
fn every_page_of_a_demo_record_is_marked_numbered_and_names_order_and_head() -> Tested {
    // Digits are of different width, so that one hash is longer than another.
    for digits in [0x00, 0x4d, 0xdd, 0xff] {
        let mut document = closed()?;
        document.journal.head = Hash([digits; 32]);
        let pages = File::new(&document.pdf(&PdfInputs::default())?)?.pages()?;
        assert!(pages.len() > 2, "{} pages", pages.len());
        for (at, page) in pages.iter().enumerate() {
            assert!(page.contains(DEMO_MARK), "page {} has no mark", at + 1);
            assert!(page.contains(&format!("Page {} of {}", at + 1, pages.len())), "{page}");
            assert!(page.contains("epair order 20417"), "{page}");
            let has_head = page.contains(&document.journal.head.to_string());
            assert_eq!(has_head, at > 0, "a hash says nothing to a service writer: {page}");
        }
    }
    let real = |bytes: &[u8]| {
        String::from_utf8_lossy(bytes).replacen("\"demo\": true", "\"demo\": false", 1).into_bytes()
    };
    let real = Bay::with(&real(CHECKLIST), &real(SHEET))?.document();
    let words = File::new(&real.pdf(&PdfInputs::default())?)?.words()?;
    assert!(!words.contains(DEMO_MARK), "a real record is not marked as invented");
    Ok(())
}

#[test]
fn the_attached_data_is_the_json_form_byte_for_byte() -> Tested {
    let document = closed()?;
    let attached = File::new(&document.pdf(&PdfInputs::default())?)?.attached()?;
    assert_eq!(attached, document.to_json()?);
    Ok(())
}

#[test]
fn a_photo_goes_in_byte_for_byte_and_one_that_lacks_says_why_in_its_place() -> Tested {
    let document = closed()?;
    let photo = jpeg(80, 60, 9)?;
    let has = |pdf: &[u8]| pdf.windows(photo.len()).any(|window| window == photo);
    let pdf = document.pdf(&with_photo(PdfPhoto::Jpeg(photo.clone())))?;
    assert!(has(&pdf));
    assert!(File::new(&pdf)?.words()?.contains("dry after ten minutes"), "its caption");

    let cases = [
        (PdfPhoto::Lacking(Lacks::NotInStore), "its file is not in the store"),
        (PdfPhoto::Jpeg(b"no picture".to_vec()), "its file cannot be read"),
        (PdfPhoto::Jpeg(for_a_press(&photo)), "its colors are for a printing press"),
    ];
    for (lacking, why) in cases {
        let words = File::new(&document.pdf(&with_photo(lacking))?)?.words()?;
        assert!(words.contains(&format!("The picture cannot be shown: {why}")), "{words}");
        assert!(words.contains("dry after ten minutes"), "the caption stays");
    }
    let words = File::new(&document.pdf(&PdfInputs::default())?)?.words()?;
    assert!(words.contains("The picture cannot be shown: it was not given"), "{words}");
    Ok(())
}

/// The same JPEG with four colours in its frame header (marker FF C0, count of colours ten bytes on).
fn for_a_press(jpeg: &[u8]) -> Vec<u8> {
    let mut bytes = jpeg.to_vec();
    if let Some(at) = bytes.windows(2).position(|pair| pair == [0xff, 0xc0]) {
        bytes[at + 9] = 4;
    }
    bytes
}

#[test]
fn sixty_photos_lying_and_upright_and_none_at_all_are_laid_out() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    let mut photos = BTreeMap::new();
    bay.begin("pan_up");
    for number in 0..60_u8 {
        let hash = format!("{number:064x}");
        let (width, height) = if number % 3 == 0 { (30, 40) } else { (40, 30) };
        photos.insert(hash.clone(), PdfPhoto::Jpeg(jpeg(width, height, number)?));
        bay.enter("pan_up", "photo", EntryValue::Photo { hash, width, height }, "taken");
    }
    let file = File::new(&bay.document().pdf(&PdfInputs { photos, ..PdfInputs::default() })?)?;
    let pictures =
        file.objects()?.values().filter(|object| object["stream"]["dict"]["/Subtype"] == "/Image").count();
    assert_eq!(pictures, 60);
    assert_eq!(file.qpdf_check()?, "");

    let none = Bay::open()?.document();
    assert!(none.photos.is_empty());
    assert!(File::new(&none.pdf(&PdfInputs::default())?)?.words()?.contains("Photos, 0"));
    Ok(())
}

#[test]
fn a_note_of_ten_thousand_characters_flows_over_pages_and_nothing_leaves_the_columns() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    let numbered: String = (0..1400).map(|number| format!("word{number} ")).collect();
    assert!(numbered.len() > 10_000);
    let endless = "x".repeat(3000);
    bay.work("find", &[("cause", note(&format!("{numbered}{endless}")), "written")], &[]);
    let file = File::new(&bay.document().pdf(&PdfInputs::default())?)?;
    let pages = file.pages()?;
    let with = |word: &str| pages.iter().rposition(|page| page.contains(word));
    assert!(with("word3 ") < with("word1399"), "it goes on over pages");
    assert!(pages[0].contains("more on the next pages"), "page one is one page: {}", pages[0]);
    let words = file.words()?;
    for number in 0..1400 {
        assert!(words.contains(&format!("word{number} ")), "word{number} is lost");
    }
    let crosses = words.split(' ').filter(|word| word.contains("xx")).map(str::len).sum::<usize>();
    assert!(crosses >= endless.len(), "an endless word is broken and not cut: {crosses}");
    // The columns of a page of 612 points end 48 points from its edges.
    for (left, right) in file.word_ends()? {
        assert!(left >= 47.0 && right <= 565.0, "a word from {left} to {right}");
    }
    Ok(())
}

#[test]
fn characters_that_steer_do_nothing_and_those_without_a_letter_are_shown_and_named() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    let nasty = "a\u{0}b\u{1b}[2J\u{202e}end\u{2066}, 漢字 \u{e000} \u{ffff} fin";
    bay.work("find", &[("cause", note(nasty), "written")], &[]);
    let document = bay.document();
    let file = File::new(&document.pdf(&PdfInputs::default())?)?;
    let words = file.words()?;
    assert!(words.contains("a b [2J end , \u{fffd}\u{fffd} \u{fffd} \u{fffd} fin"), "{words}");
    assert!(!words.contains(['\u{202e}', '\u{2066}', '\u{1b}']));
    assert!(words.contains("each shown as \u{fffd}: U+5B57, U+6F22, U+E000, U+FFFF."), "{words}");
    assert_eq!(file.attached()?, document.to_json()?, "the data has what was typed");
    Ok(())
}

#[test]
fn no_character_and_no_pair_with_an_accent_keeps_the_pages_from_being_written() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    // Latin to symbols, the last letters of the plane, and some of what lies beyond it.
    let ranges = [
        0..=0x2fff,
        0xa640..=0xa7ff,
        0xab30..=0xab6f,
        0xd7f0..=0xffff,
        0x1_d400..=0x1_d4ff,
        0x1_f600..=0x1_f64f,
    ];
    let singles: String = ranges.into_iter().flatten().filter_map(char::from_u32).collect();
    let accents = (0x300..=0x36f_u32).filter_map(char::from_u32);
    let pairs: String =
        accents.flat_map(|accent| ['e', 'Ж', '→', ' ', '漢'].map(|base| format!("{base}{accent}"))).collect();
    bay.work("find", &[("cause", note(&format!("{singles}{pairs} fin")), "written")], &[]);
    let document = bay.document();
    let words = File::new(&document.pdf(&PdfInputs::default())?)?.words()?;
    assert!(words.contains("fin") && words.contains('Ω') && words.contains('Ж'));
    assert!(File::new(&document.twin(&PdfInputs::default())?)?.preflight()?.0);
    Ok(())
}

#[test]
fn an_unfinished_job_and_one_without_a_start_have_pages() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.begin("find");
    let words = File::new(&bay.document().pdf(&PdfInputs::default())?)?.words()?;
    assert!(words.contains("Status still open"), "{words}");
    assert!(words.contains("Off the vehicle: pan bolts 16; pan gasket 1; joint nuts 3"), "{words}");
    assert!(words.matches("Not entered").count() >= 2, "neither cause nor correction: {words}");
    let start_less =
        Document { started: None, papers: None, phases: Vec::new(), day: Vec::new(), ..bay.document() };
    assert!(File::new(&start_less.pdf(&PdfInputs::default())?)?.words()?.contains("still open"));
    Ok(())
}

#[test]
fn the_day_is_told_from_every_event_that_moved_the_vehicle() -> Tested {
    let document = closed()?;
    let lift = document.day.iter().find(|track| track.draws == "lift").ok_or("no track of the lift")?;
    let had: Vec<_> = lift.had.iter().map(|had| had.value.as_str()).collect();
    assert_eq!(had, ["on the floor", "on the locks", "on the floor"]);
    assert_eq!(lift.had[0].since.seq, 1);
    let moved: Vec<_> = document.vehicle_actions.iter().map(|made| made.by.seq).collect();
    assert_eq!([lift.had[1].since.seq, lift.had[2].since.seq], moved[..]);
    Ok(())
}
