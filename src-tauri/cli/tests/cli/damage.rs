//! A damaged store on the command line: what is printed is the truth, or the trouble is said and the exit code tells.

use std::path::Path;

use serde_json::Value;

use crate::support::{Desk, Said, cli, script};

/// A store with one finished job, and what the commands print of it while it is whole.
struct Truth {
    desk: Desk,
    job: String,
    printed: Vec<Value>,
}

impl Truth {
    fn new() -> Truth {
        let desk = Desk::new();
        assert_eq!(desk.walk(&script("level-check")).code, 0);
        let jobs: Value =
            serde_json::from_str(&cli(&["jobs", "--json", "--store", &text(&desk.path("bay"))]).out).unwrap();
        let job = jobs[0]["job"].as_str().unwrap().to_owned();
        let printed = read(&desk.path("bay"), &job, &[]).iter().map(values).collect();
        Truth { desk, job, printed }
    }

    /// A copy of the store, to be damaged.
    fn copy(&self) -> Desk {
        let copied = Desk::new();
        let to = copied.path("bay");
        std::fs::create_dir(&to).unwrap();
        for name in ["journal.db", "journal.head"] {
            std::fs::copy(self.desk.path("bay").join(name), to.join(name)).unwrap();
        }
        copied
    }
}

fn text(path: &Path) -> String {
    path.to_string_lossy().into_owned()
}

/// Every command that shows what is in a store.
fn read(store: &Path, job: &str, more: &[&str]) -> Vec<Said> {
    let store = text(store);
    let commands: [&[&str]; 3] = [
        &["jobs", "--json", "--store", &store],
        &["record", job, "--json", "--store", &store],
        &["plan", "--quick", "--json", "--store", &store, "--job", job],
    ];
    commands.iter().map(|command| cli(&[*command, more].concat())).collect()
}

/// What was printed, without the moment at which it was.
fn values(said: &Said) -> Value {
    let mut value: Value = serde_json::from_str(&said.out).unwrap_or_default();
    if let Some(members) = value.as_object_mut() {
        members.retain(|name, _| !name.starts_with("generated"));
    }
    value
}

#[test]
fn a_bit_flipped_anywhere_never_shortens_what_a_command_prints_unsaid() {
    let truth = Truth::new();
    let whole = std::fs::read(truth.desk.path("bay/journal.db")).unwrap();
    let mut said_so = 0;
    for flip in 0..24_usize {
        let copied = truth.copy();
        let mut bytes = whole.clone();
        // Spread over the file by a prime stride, so that pages of tables and of indexes are met.
        let bit = flip * 1_299_709 % (bytes.len() * 8);
        bytes[bit / 8] ^= 1 << (bit % 8);
        std::fs::write(copied.path("bay/journal.db"), bytes).unwrap();
        for (said, whole) in read(&copied.path("bay"), &truth.job, &[]).iter().zip(&truth.printed) {
            match said.code {
                4 => {
                    assert!(said.out.is_empty(), "bit {bit}: printed beside a trouble: {}", said.out);
                    assert!(!said.err.trim().is_empty(), "bit {bit}: nothing is said");
                    said_so += 1;
                }
                _ => assert_eq!(&values(said), whole, "bit {bit}, exit {}: {}", said.code, said.err),
            }
        }
    }
    // Most of so small a store is the text of its checklist and the proof of it.
    assert!(said_so > 3, "only {said_so} of 72 said something");
}

#[test]
fn a_lost_head_file_is_said_by_every_command_and_on_the_record() {
    let truth = Truth::new();
    let copied = truth.copy();
    std::fs::remove_file(copied.path("bay/journal.head")).unwrap();
    for said in read(&copied.path("bay"), &truth.job, &[]) {
        said.refuses(4, "TROUBLE: The head file is missing");
        assert!(said.out.is_empty(), "{}", said.out);
        assert!(said.err.contains("--even-so"), "{}", said.err);
    }
    let anyhow = read(&copied.path("bay"), &truth.job, &["--even-so"]);
    for said in &anyhow {
        assert_ne!(said.code, 4, "{}", said.err);
        assert!(said.err.contains("TROUBLE: The head file is missing"), "{}", said.err);
    }
    let record = values(&anyhow[1]);
    assert!(record["damaged"][0].as_str().unwrap().contains("head file is missing"), "{record}");
    let bay = text(&copied.path("bay"));
    let printed = cli(&["record", &truth.job, "--store", &bay, "--even-so"]).out;
    assert!(printed.contains("made from damaged data") && printed.contains("Damaged data: "), "{printed}");
}

#[test]
fn a_store_cut_back_to_an_earlier_state_is_said_although_its_chain_holds() {
    let truth = Truth::new();
    let earlier = Desk::new();
    let lines = ["--plain-proof", "--no-text", "--lines", "3"];
    let (script, bay, photo) =
        (text(&script("level-check")), text(&earlier.path("bay")), text(&earlier.photo()));
    let walked = cli(&[&["walk", &script, "--store", &bay, "--photo", &photo], lines.as_slice()].concat());
    assert_eq!(walked.code, 0, "{}", walked.err);
    // The head file of the whole walk beside the database of its beginning: another store's, or this one set back.
    std::fs::copy(truth.desk.path("bay/journal.head"), earlier.path("bay/journal.head")).unwrap();
    for said in read(&earlier.path("bay"), &truth.job, &[]) {
        said.refuses(4, "TROUBLE: ");
        assert!(said.out.is_empty(), "{}", said.out);
    }
}
