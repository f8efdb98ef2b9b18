//! The record as a file for archives. No validator of PDF/A-3 or PDF/UA can be had here that no one here wrote: the
//! writer's own refuses what breaks them, `qpdf` shows the structure, and PDF/A-1b twin pages go through Apache PDFBox
//! Preflight.

use panside_record::PdfInputs;
use serde_json::{Map, Value};

use crate::bay::{Bay, Said, Tested, note};
use crate::pages::{jpeg, with_photo};
use crate::tools::File;
use panside_record::{Document, PdfPhoto};

fn document() -> Result<Document, Box<dyn std::error::Error>> {
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.work("find", &[("cause", note("coil 5,9 Ω, ≤ 5,6 Ω allowed; ü, Ж, ⌀, 漢"), "written")], &[]);
    bay.close_up();
    Ok(bay.document())
}

fn inputs() -> Result<PdfInputs, Box<dyn std::error::Error>> {
    Ok(with_photo(PdfPhoto::Jpeg(jpeg(400, 300, 3)?)))
}

/// The dictionaries of all objects.
fn dictionaries(objects: &Map<String, Value>) -> Vec<&Value> {
    let of = |object: &'_ Value| object["stream"].is_null();
    objects
        .values()
        .map(|object| if of(object) { &object["value"] } else { &object["stream"]["dict"] })
        .collect()
}

/// What stands in a place, there itself or as an object of its own.
fn resolve<'a>(objects: &'a Map<String, Value>, value: &'a Value) -> &'a Value {
    let named = value.as_str().and_then(|name| objects.get(&format!("obj:{name}")));
    named.map_or(value, |object| &object["value"])
}

fn of_type<'a>(dictionaries: &[&'a Value], name: &str) -> Vec<&'a Value> {
    dictionaries.iter().copied().filter(|dictionary| dictionary["/Type"] == name).collect()
}

#[test]
fn the_file_says_that_it_is_pdf_a_3a_and_pdf_ua_1_and_is_sound() -> Tested {
    let pdf = document()?.pdf(&inputs()?)?;
    // PDF/A has its metadata stand in the file as it is, for whoever looks for it without reading PDF.
    let text = String::from_utf8_lossy(&pdf);
    for said in [
        "<pdfaid:part>3</pdfaid:part>",
        "<pdfaid:conformance>A</pdfaid:conformance>",
        "<pdfuaid:part>1</pdfuaid:part>",
    ] {
        assert!(text.contains(said), "{said} is not in the metadata");
    }
    assert_eq!(File::new(&pdf)?.qpdf_check()?, "");
    Ok(())
}

#[test]
fn the_catalog_has_intent_language_outline_structure_and_the_attached_data() -> Tested {
    let objects = File::new(&document()?.pdf(&inputs()?)?)?.objects()?;
    let all = dictionaries(&objects);
    let catalog = of_type(&all, "/Catalog")[0];
    let entry = |key: &str| resolve(&objects, &catalog[key]);
    assert_eq!(entry("/OutputIntents").as_array().map(Vec::len), Some(1), "{catalog}");
    assert_eq!(catalog["/Lang"], "u:en");
    assert_eq!(entry("/MarkInfo")["/Marked"], true);
    assert_eq!(entry("/ViewerPreferences")["/DisplayDocTitle"], true);
    assert_eq!(entry("/AF").as_array().map(Vec::len), Some(1));
    assert!(catalog["/Outlines"].is_string() && catalog["/StructTreeRoot"].is_string());
    let file = of_type(&all, "/Filespec")[0];
    assert_eq!((&file["/AFRelationship"], &file["/UF"]), (&"/Data".into(), &"u:record.json".into()));
    let embedded = of_type(&all, "/EmbeddedFile")[0];
    assert_eq!(embedded["/Subtype"], "/application/json");
    // The record is made two minutes after its last event; the date is that one and not today's.
    let date = embedded["/Params"]["/ModDate"].as_str().unwrap_or_default();
    assert!(date.starts_with("u:D:20260302"), "{date}");
    Ok(())
}

#[test]
fn every_font_is_embedded_and_every_page_is_of_one_size() -> Tested {
    let file = File::new(&document()?.pdf(&inputs()?)?)?;
    let objects = file.objects()?;
    let all = dictionaries(&objects);
    let fonts = of_type(&all, "/FontDescriptor");
    assert!(fonts.len() >= 4, "two weights, other letters, signs: {}", fonts.len());
    for font in fonts {
        let has_file = ["/FontFile2", "/FontFile3"].iter().any(|key| font[*key].is_string());
        assert!(has_file, "{} is not embedded", font["/FontName"]);
    }
    let pages = of_type(&all, "/Page");
    assert_eq!(pages.len(), file.pages()?.len());
    assert!(pages.iter().all(|page| page["/MediaBox"] == serde_json::json!([0, 0, 612, 792])));
    assert!(pages.iter().all(|page| page["/Tabs"] == "/S" || page["/Annots"].is_null()));
    Ok(())
}

#[test]
fn headings_tables_with_their_heads_and_pictures_with_words_are_in_the_structure() -> Tested {
    let objects = File::new(&document()?.pdf(&inputs()?)?)?.objects()?;
    let all = dictionaries(&objects);
    let with = |name: &str| all.iter().filter(|dictionary| dictionary["/S"] == name).count();
    assert_eq!(with("/H1"), 1, "one title");
    for name in ["/H2", "/H3", "/H4", "/P", "/Table", "/TR", "/TH", "/TD"] {
        assert!(with(name) > 0, "no {name} in the structure");
    }
    let figures: Vec<_> = all.iter().filter(|dictionary| dictionary["/S"] == "/Figure").collect();
    assert_eq!(figures.len(), 4, "the day, the level small and large, one photo");
    let alts: Vec<_> = figures.iter().filter_map(|figure| figure["/Alt"].as_str()).collect();
    assert_eq!(alts.len(), figures.len(), "every picture has words");
    for words in ["The job by the clock", "floor", "25.5 mm (60 °C)", "dry after ten minutes"] {
        assert!(alts.iter().any(|alt| alt.contains(words)), "\"{words}\" is not in {alts:?}");
    }
    Ok(())
}

#[test]
fn the_twin_pages_are_pdf_a_1b_to_preflight_and_what_is_not_is_refused() -> Tested {
    let document = document()?;
    let twin = document.twin(&inputs()?)?;
    let (valid, said) = File::new(&twin)?.preflight()?;
    assert!(valid, "{said}");

    // Controls: the same pages in the other form, and the twin with another part number in its metadata.
    let (valid, said) = File::new(&document.pdf(&inputs()?)?)?.preflight()?;
    assert!(!valid, "PDF/A-3 has what PDF/A-1 forbids: {said}");
    let part = b"<pdfaid:part>1<";
    let at = twin.windows(part.len()).position(|window| window == part).ok_or("the twin names no part")?;
    let mut other = twin;
    other[at + part.len() - 2] = b'9';
    let (valid, said) = File::new(&other)?.preflight()?;
    assert!(!valid, "{said}");
    Ok(())
}

#[test]
fn the_twin_has_the_same_words_and_no_attachment() -> Tested {
    let document = document()?;
    let twin = File::new(&document.twin(&inputs()?)?)?;
    assert_eq!(twin.words()?, File::new(&document.pdf(&inputs()?)?)?.words()?);
    assert_eq!(twin.qpdf_check()?, "");
    assert!(of_type(&dictionaries(&twin.objects()?), "/EmbeddedFile").is_empty());
    Ok(())
}
