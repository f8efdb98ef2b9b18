//! The first page, the customer's copy and the tables for pasting: what a service writer and a customer need.

use panside_job::event::{Finished, Lost};
use panside_job::{EntryValue, SignedPin};
use panside_messages::Speaker;
use panside_record::{Document, Extent, Paper, PdfInputs, PdfPhoto};

use crate::bay::{Bay, CHECKLIST, PHOTO, SHEET, Said, Tested, choice, note, reading, stick};
use crate::pages::{jpeg, with_photo};
use crate::tools::File;

/// The fixture's job with what is billed: a go-ahead, fluid, a part number, the odometer as it leaves.
fn billed() -> Result<Bay, Box<dyn std::error::Error>> {
    let bill = r#"{ "id": "bill", "title": "Bill", "steps": [
        { "id": "ask", "title": "Ask the customer", "instruction": "Ask.", "zone": "bench", "entries": [
            { "id": "answer", "label": "Answer", "ask": { "choice": { "options": [
                { "class": "yes", "label": "go ahead" }, { "class": "no", "label": "no" }] } },
                "classes": { "yes": {}, "no": {} } },
            { "id": "amount", "label": "Amount", "ask": { "note": {} } },
            { "id": "asked", "label": "Asked", "ask": { "sign_off": { "sign": "agreed" } } }] },
        { "id": "fill", "title": "Fill", "instruction": "Fill.", "zone": "engine_bay", "entries": [
            { "id": "fluid", "label": "Fluid label", "ask": { "scan": { "of": "text" } } },
            { "id": "volume", "label": "Filled", "ask": { "reading": { "unit": "L" } } },
            { "id": "more", "label": "Topped up", "ask": { "reading": { "unit": "L" } } },
            { "id": "part_number", "label": "Gasket number", "ask": { "scan": { "of": "text" } } },
            { "id": "stick", "label": "Stick after", "ask": { "level": { "chart": "level_chart", "added": { "volume": "fill.more" } } },
                "classes": { "below": { "not_yet": true }, "in": {}, "above": { "not_yet": true }, "unclear": { "not_yet": true } } },
            { "id": "stick_first", "label": "Stick before", "ask": { "level": { "chart": "level_chart", "added": { "volume": "fill.volume" } } },
                "classes": { "below": { "not_yet": true }, "in": {}, "above": { "not_yet": true }, "unclear": { "not_yet": true } } },
            { "id": "out", "label": "Odometer out", "ask": { "reading": { "unit": "km" } } },
            { "id": "advice", "label": "Advice", "ask": { "note": {} } }] }] }"#;
    let checklist = String::from_utf8_lossy(CHECKLIST)
        .replace("\"sign_offs\": [", "\"sign_offs\": [\n    { \"id\": \"agreed\", \"kind\": \"permit\", \"text\": \"The customer agreed.\", \"by\": \"service_writer\", \"holds_while\": \"true\" },")
        .replace("\"pan and plug, dry\"", "\"pan and plug, dry\", \"first_page\": true")
        .replace("\"phases\": [", &["\"phases\": [", bill, ","].concat());
    let mut bay = Bay::with(checklist.as_bytes(), SHEET)?;
    bay.who = "Kim";
    bay.begin("ask");
    bay.enter("ask", "answer", choice("yes"), "yes");
    bay.enter("ask", "amount", note("640, the owner"), "written");
    let mut done =
        crate::bay::done("ask", &[("answer", "yes"), ("amount", "written")], "Kim", &[("asked", "agreed")]);
    done.signs[0].role = panside_procedure::format::Role::ServiceWriter;
    done.signs[0].pin = Some(SignedPin::Own);
    bay.then(done);
    bay.who = "Ada";
    bay.open_up();
    bay.close_up();
    let scan = |text: &str| EntryValue::Scan { text: text.into() };
    let filled = [
        ("fluid", scan("red, batch 7"), "read"),
        ("volume", reading("3,3", "L"), "read"),
        ("more", reading("0.4", "L"), "read"),
        ("part_number", scan("GK 16-2"), "read"),
        ("stick", stick(), "in"),
        ("stick_first", stick(), "in"),
        ("out", reading("148245", "km"), "read"),
        ("advice", note("hoses are hard"), "written"),
    ];
    bay.work("fill", &filled, &[]);
    bay.then(Finished { lost: Lost::default() });
    Ok(bay)
}

fn page_one(document: &Document) -> Result<String, Box<dyn std::error::Error>> {
    let inputs = with_photo(PdfPhoto::Jpeg(jpeg(64, 48, 7)?));
    let pages = File::new(&document.to_pdf(Speaker::english(), &inputs)?)?.pages()?;
    Ok(pages[0].split_whitespace().collect::<Vec<_>>().join(" "))
}

#[test]
fn the_first_page_has_what_a_service_writer_needs() -> Tested {
    let document = billed()?.document();
    let page = page_one(&document)?;
    for said in [
        "Repair order 20417",
        "1M8GDM9AXKP042788",
        "Odometer in 148230.5 km",
        "Odometer out 148245 km",
        "2-3 shift",
        "coil weak when warm",
        "solenoid, filter and gasket new",
        "Ask the customer 640, the owner; go ahead. Signed by Kim",
        "pan gasket 1",
        "joint nuts 3",
        "Gasket number: GK 16-2",
        "Labor in all",
        "Of it unplanned",
        "nuts rusted to the studs",
        "Filled in all 3.7 L",
        "red, batch 7",
        "Recommended: hoses are hard",
        "dry after ten minutes",
        "Kim, service writer",
        "Ada, technician",
    ] {
        assert!(page.contains(said), "\"{said}\" is not in: {page}");
    }
    for not in ["proved", "events", "Journal", &document.journal.head.to_string()] {
        assert!(!page.contains(not), "\"{not}\" says nothing to a service writer: {page}");
    }
    Ok(())
}

#[test]
fn labor_is_what_somebody_worked_and_waiting_is_not() -> Tested {
    let minutes = billed()?.document().time.in_steps;
    assert!(minutes.waiting > 20 && minutes.labor() == minutes.planned + minutes.unplanned);
    Ok(())
}

#[test]
fn a_record_without_any_of_it_says_so() -> Tested {
    let text = Bay::open()?.document().text();
    for said in ["No go-ahead entered", "AUTHORIZED BY THE CUSTOMER", "None filled", "SIGNED BY\n  Nobody"] {
        assert!(text.contains(said), "{said}\n{text}");
    }
    Ok(())
}

#[test]
fn the_customers_copy_is_a_page_of_plain_words_and_one_of_photos_without_data() -> Tested {
    let document = billed()?.document();
    let inputs = with_photo(PdfPhoto::Jpeg(jpeg(64, 48, 7)?));
    let file = File::new(&document.to_customer_pdf(Speaker::english(), &inputs)?)?;
    assert_eq!(file.qpdf_check()?, "");
    let pages = file.pages()?;
    assert_eq!(pages.len(), 2);
    let words = pages[0].split_whitespace().collect::<Vec<_>>().join(" ");
    for said in [
        "What you told us",
        "What we found",
        "What we did",
        "640, the owner",
        "pan gasket 1",
        "3.7 L",
        "hoses are hard",
    ] {
        assert!(words.contains(said), "\"{said}\" is not in: {words}");
    }
    assert!(pages[1].contains("Photo of the pan"), "{}", pages[1]);
    assert!(file.attached().is_err(), "the shop's data is not the customer's");
    let text = document.to_customer_text(Speaker::english());
    assert!(text.lines().all(|line| line.chars().count() <= 100) && text.contains("WHAT YOU AGREED TO"));
    Ok(())
}

#[test]
fn what_is_pasted_elsewhere_are_parts_labor_and_measurements() -> Tested {
    let [parts, labor, measurements] = billed()?.document().to_csv(Speaker::english());
    assert_eq!(parts.name, "parts.csv");
    let lines: Vec<_> = parts.text.split("\r\n").collect();
    let wanted = [
        "Part,Part number,Quantity,Unit,Price,Amount,Currency",
        "pan gasket,,1,,,,",
        "joint nuts,,3,,,,",
        "\"red, batch 7\",,3.7,L,,,",
        "Gasket number: GK 16-2,,,,,,",
        "",
    ];
    assert_eq!(lines, wanted);
    assert!(labor.text.contains("nuts rusted to the studs"), "{}", labor.text);
    assert!(
        measurements.text.contains("Exhaust,47.5 °C,at most 48 °C,within limits"),
        "{}",
        measurements.text
    );
    Ok(())
}

#[test]
fn the_file_says_a_limit_once_and_leaves_readings_to_everything() -> Tested {
    let document = billed()?.document();
    let file = document.to_text(Speaker::english(), Extent::File);
    let everything = document.text();
    assert_eq!(file.matches("at most 48 °C").count(), 1, "{file}");
    assert_eq!(
        everything.matches("at most 48 °C [").count() + everything.matches("[at most 48 °C").count(),
        1
    );
    assert!(!file.contains("63.2 °C") && everything.contains("63.2 °C"), "a reading that was replaced");
    assert!(!file.contains("VEHICLE ACTIONS") && everything.contains("VEHICLE ACTIONS"));
    assert!(file.contains("Ada, technician: 2026-03-02 "), "who signed, and when: {file}");
    Ok(())
}

#[test]
fn no_heading_stands_alone_at_the_foot_of_a_page() -> Tested {
    let english = include_str!("../../../messages/en/record.ftl");
    let headings = english.lines().filter_map(|line| line.strip_prefix("record-heading-")?.split_once(" = "));
    let headings: Vec<&str> = headings.map(|(_, text)| text).collect();
    assert!(headings.len() > 30);
    // Lines before it push each heading to the foot of a page once.
    for length in (0..60).step_by(10) {
        let mut bay = Bay::open()?;
        bay.open_up();
        bay.work("find", &[("cause", note(&"many words ".repeat(length * 12)), "written")], &[]);
        bay.close_up();
        for page in File::new(&bay.document().pdf(&PdfInputs::default())?)?.pages()? {
            let lines: Vec<_> = page.lines().map(str::trim).filter(|line| !line.is_empty()).collect();
            // The last line is the foot.
            let last = lines.iter().rev().nth(1).copied().unwrap_or_default();
            let last = last.trim_end_matches("demo values, not for a vehicle").trim();
            assert!(!headings.contains(&last), "\"{last}\" stands alone: {page}");
        }
    }
    Ok(())
}

#[test]
fn a4_has_the_same_pages_in_its_middle() -> Tested {
    let document = billed()?.document();
    let pages = |paper| {
        let inputs = PdfInputs { paper, ..PdfInputs::default() };
        File::new(&document.to_pdf(Speaker::english(), &inputs).map_err(|error| error.to_string())?)
    };
    let (letter, a4) = (pages(Paper::Letter)?, pages(Paper::A4)?);
    assert_eq!(letter.words()?, a4.words()?);
    let sizes = a4.objects()?;
    let sizes: Vec<_> = sizes.values().filter(|object| object["value"]["/Type"] == "/Page").collect();
    assert!(
        sizes.iter().all(|page| page["value"]["/MediaBox"] == serde_json::json!([0, 0, 595.28, 841.89])),
        "{sizes:?}"
    );
    // The columns of 516 points stand in the middle of 595.28.
    let out = a4.word_ends()?.into_iter().filter(|(left, right)| *left < 38.6 || *right > 556.7);
    assert_eq!(out.collect::<Vec<_>>(), [], "words beyond the columns");
    assert_eq!(a4.qpdf_check()?, "");
    assert!(document.photos.iter().any(|photo| photo.hash == PHOTO && photo.first_page));
    Ok(())
}
