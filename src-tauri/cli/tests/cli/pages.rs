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
    assert!(walked.contains("Bay record, repair order") && walked.contains("demo values, not for a vehicle"));
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
