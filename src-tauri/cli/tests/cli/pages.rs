//! Records written to files: the ending says in which form.

use std::path::Path;
use std::process::Command;

use serde_json::Value;

use crate::support::{Desk, Said, cli, script};

/// The words of a PDF, by poppler's `pdftotext`; the packages of `cargo xtask test` bring it.
fn words(path: &Path) -> String {
    let output = Command::new("pdftotext").arg(path).arg("-").output();
    let output =
        output.unwrap_or_else(|error| panic!("pdftotext: {error}. Run `cargo xtask test --only packages`."));
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8_lossy(&output.stdout).split_whitespace().collect::<Vec<_>>().join(" ")
}

fn record(desk: &Desk, job: &str, out: &Path) -> Said {
    let store = desk.path("bay");
    cli(&[
        "record".as_ref(),
        job.as_ref(),
        "--store".as_ref(),
        store.as_os_str(),
        "--out".as_ref(),
        out.as_os_str(),
    ])
}

/// Walks the shortest demo job to a file, and says which job it is.
fn walked(desk: &Desk, out: &Path) -> String {
    let said = cli(&[
        "walk".as_ref(),
        script("level-high").as_os_str(),
        "--store".as_ref(),
        desk.path("bay").as_os_str(),
        "--record".as_ref(),
        out.as_os_str(),
        "--photo".as_ref(),
        desk.photo().as_os_str(),
        "--plain-proof".as_ref(),
    ]);
    assert_eq!(said.code, 0, "{}\n{}", said.out, said.err);
    let jobs = cli(&["jobs".as_ref(), "--store".as_ref(), desk.path("bay").as_os_str(), "--json".as_ref()]);
    let jobs: Value = serde_json::from_str(&jobs.out).unwrap();
    jobs[0]["job"].as_str().unwrap().to_owned()
}

#[test]
fn a_walk_and_a_later_call_write_the_record_as_pages_as_data_and_as_text() {
    let desk = Desk::new();
    let job = walked(&desk, &desk.path("walked.pdf"));
    let walked = words(&desk.path("walked.pdf"));
    assert!(walked.contains("Repair order") && walked.contains("demo values, not for a vehicle"));
    for name in ["later.pdf", "later.json", "later.txt"] {
        let said = record(&desk, &job, &desk.path(name));
        assert_eq!(said.code, 0, "{name}: {}", said.err);
    }
    let later = words(&desk.path("later.pdf"));
    let text = std::fs::read_to_string(desk.path("later.txt")).unwrap();
    let json: Value = serde_json::from_slice(&std::fs::read(desk.path("later.json")).unwrap()).unwrap();
    let head = json["journal"]["head"].as_str().unwrap();
    assert!(later.contains(head) && text.contains(head) && walked.contains(head), "all of one job");
    assert!(!later.contains("The picture cannot be shown"), "its photos are in the store");
}

/// The demo job walked to the pages of its file.
fn demo(desk: &Desk, more: &[&str]) -> (std::path::PathBuf, String) {
    let (out, store) = (desk.path("demo.pdf"), desk.path("bay"));
    let (script, photo) = (script("demo"), desk.photo());
    let given = [
        "walk".as_ref(),
        script.as_os_str(),
        "--store".as_ref(),
        store.as_os_str(),
        "--record".as_ref(),
        out.as_os_str(),
        "--photo".as_ref(),
        photo.as_os_str(),
        "--plain-proof".as_ref(),
        "--no-text".as_ref(),
    ];
    let words: Vec<_> = given.into_iter().chain(more.iter().map(AsRef::as_ref)).collect();
    let said = cli(&words);
    assert_eq!(said.code, 0, "{}\n{}", said.out, said.err);
    let jobs = cli(&["jobs".as_ref(), "--store".as_ref(), store.as_os_str(), "--json".as_ref()]);
    let jobs: Value = serde_json::from_str(&jobs.out).unwrap();
    (out, jobs[0]["job"].as_str().unwrap().to_owned())
}

/// The words of each page.
fn pages(path: &Path) -> Vec<String> {
    let output = Command::new("pdftotext").args([path, Path::new("-")]).output().unwrap();
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    text.trim_end_matches('\u{c}').split('\u{c}').map(str::to_owned).collect()
}

#[test]
fn the_demo_jobs_file_is_eight_pages_at_most_beside_its_photos_and_everything_is_more() {
    let desk = Desk::new();
    let (out, job) = demo(&desk, &[]);
    let file = pages(&out);
    let photos = file.iter().position(|page| page.contains("Photos, 31")).unwrap();
    assert!(photos < 8, "the photos begin on page {} of {}", photos + 1, file.len());
    // Twelve to a page, and a last page before them that goes on with them.
    assert!(file.len() - photos <= 4, "{} pages of photos", file.len() - photos);
    let first = file[0].split_whitespace().collect::<Vec<_>>().join(" ");
    let said = [
        "DEM0PANSYDE020417",
        "640.00 USD before tax, at most 760.00 USD",
        "Filled in all 4.1 L",
        "P0455",
        "R. Ode, technician",
    ];
    for said in said {
        assert!(first.contains(said), "\"{said}\" is not on the first page: {first}");
    }
    let store = desk.path("bay");
    let everything = desk.path("everything.pdf");
    let given = ["record", &job, "--store", store.to_str().unwrap(), "--everything", "--out"];
    let said = cli(&given.into_iter().chain([everything.to_str().unwrap()]).collect::<Vec<_>>());
    assert_eq!(said.code, 0, "{}", said.err);
    let everything = pages(&everything);
    assert!(everything.len() > file.len() + 5, "{} pages", everything.len());
    assert!(everything[0].contains("Filled in all"), "the first page is the same");
}

#[test]
fn a_customers_copy_and_tables_for_pasting_are_written_on_request() {
    let desk = Desk::new();
    let job = walked(&desk, &desk.path("walked.pdf"));
    let (store, copy, tables) = (desk.path("bay"), desk.path("copy.pdf"), desk.path("tables"));
    let store = store.to_str().unwrap();
    let copied = [
        "record",
        &job,
        "--store",
        store,
        "--for",
        "customer",
        "--paper",
        "a4",
        "--out",
        copy.to_str().unwrap(),
    ];
    assert_eq!(cli(&copied).code, 0);
    assert!(words(&copy).contains("What you told us"));
    let tabled = cli(&["record", &job, "--store", store, "--csv", tables.to_str().unwrap()]);
    assert_eq!(tabled.code, 0, "{}", tabled.err);
    for name in ["parts.csv", "labor.csv", "measurements.csv"] {
        assert!(std::fs::read_to_string(tables.join(name)).unwrap().contains("\r\n"), "{name}");
    }
    let data = ["record", &job, "--store", store, "--for", "customer", "--out", "copy.json"];
    cli(&data).refuses(64, "The customer's copy has no data form");
}

#[test]
fn a_photo_that_is_gone_from_the_store_is_told_on_the_page() {
    let desk = Desk::new();
    let job = walked(&desk, &desk.path("before.pdf"));
    std::fs::remove_dir_all(desk.path("bay/photos")).unwrap();
    let said = record(&desk, &job, &desk.path("after.pdf"));
    assert_eq!(said.code, 0, "{}", said.err);
    let after = words(&desk.path("after.pdf"));
    assert!(after.contains("The picture cannot be shown: its file is not in the store"), "{after}");
}

#[test]
fn a_file_whose_ending_says_no_form_is_refused_before_anything_is_done() {
    let desk = Desk::new();
    for name in ["record.docx", "record", "record.PDF.bak"] {
        let said = cli(&[
            "walk".as_ref(),
            script("level-high").as_os_str(),
            "--store".as_ref(),
            desk.path("bay").as_os_str(),
            "--record".as_ref(),
            desk.path(name).as_os_str(),
        ]);
        said.refuses(64, "the file's ending says the form, .json, .txt or .pdf");
        assert!(!desk.path("bay").exists(), "no job was walked");
    }
    let job = "082ac683-405a-8440-abf4-c814cfd35072";
    record(&desk, job, Path::new("record.html")).refuses(64, "the file's ending says the form");
}
