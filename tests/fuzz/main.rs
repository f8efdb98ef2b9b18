//! Bad input made by chance, for a bounded time: does anything panic, run away, or mean something else than it says?
//!
//! A case is made from the seed and its number alone, so that a finding comes back with `--seed S --case N`. What a
//! case gives is kept in `target/fuzz` when it is a finding. Started by `cargo xtask fuzz`.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "the edge: files are read, time is measured"
)]

mod chance;
mod corpus;
mod files;
mod mutate;
mod predicates;
mod watch;

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use std::process::ExitCode;
use std::time::{Duration, Instant};

use chance::Chance;
use corpus::Corpus;
use watch::Watch;

/// What came of a case.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Came {
    /// It was taken, and looked into further.
    Taken,
    /// It was refused with a sentence.
    Refused,
}

/// What is tried.
struct Target {
    name: &'static str,
    /// The files of a case.
    make: fn(&mut Chance, &Corpus) -> Input,
    /// Tries them; an error is a finding.
    run: fn(&Input, &Corpus) -> Result<Came, String>,
}

/// The files of a case, each with its name; the first is the one that is read.
pub struct Input {
    /// Name and bytes.
    pub files: Vec<(String, Vec<u8>)>,
    /// A number for chances that are taken while it runs.
    pub seed: u64,
}

const TARGETS: [Target; 4] = [
    Target { name: "checklist", make: files::checklist, run: files::load },
    Target { name: "parts", make: files::with_parts, run: files::join },
    Target { name: "sheet", make: files::sheet, run: files::load_sheet },
    Target { name: "predicate", make: predicates::make, run: predicates::run },
];

/// Cases of a target of which some must be taken.
const ENOUGH: u64 = 200;

/// What is asked for.
struct Asked {
    seconds: u64,
    /// So many cases instead, however long they take.
    cases: Option<u64>,
    seed: u64,
    case: Option<u64>,
}

fn main() -> ExitCode {
    let asked = match asked(&std::env::args().skip(1).collect::<Vec<_>>()) {
        Ok(asked) => asked,
        Err(wrong) => {
            eprintln!("{wrong}\nfuzz [--seconds N | --cases N] [--seed S] [--case N]");
            return ExitCode::from(64);
        }
    };
    println!("seed {}", asked.seed);
    let corpus = Corpus::read(Path::new(env!("CARGO_MANIFEST_DIR")));
    let watch = Watch::begin(asked.seed);
    let began = Instant::now();
    let mut tally = [[0_u64; 2]; TARGETS.len()];
    let mut findings = 0;
    let all = 0..asked.cases.unwrap_or(u64::MAX);
    let by_time = asked.case.or(asked.cases).is_none();
    for case in asked.case.map_or(all, |case| case..case + 1) {
        if by_time && began.elapsed() > Duration::from_secs(asked.seconds) {
            break;
        }
        watch.now(case);
        match one(asked.seed, case, &corpus) {
            Ok((target, came)) => tally[target][usize::from(came == Came::Refused)] += 1,
            Err(what) => {
                findings += 1;
                keep(asked.seed, case, &corpus, &what);
            }
        }
        if findings == 10 {
            break;
        }
    }
    watch.end();
    for (target, [taken, refused]) in TARGETS.iter().zip(tally) {
        println!("{:<10} {taken} taken, {refused} refused", target.name);
    }
    println!("{findings} findings in {:.1} s", began.elapsed().as_secs_f64());
    // Where everything is refused at the first look, nothing is tried.
    let idle = tally.iter().any(|[taken, refused]| taken + refused >= ENOUGH && *taken == 0);
    if idle {
        println!("of one of these nothing was taken: its cases are too wild to find anything");
    }
    if findings == 0 && !idle { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

fn asked(words: &[String]) -> Result<Asked, String> {
    let clock = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH);
    let seed = clock.map_or(1, |since| since.as_secs());
    let mut asked = Asked { seconds: 60, cases: None, seed, case: None };
    for pair in words.chunks(2) {
        let [name, value] = pair else { return Err(format!("{} needs a number", pair[0])) };
        let number: u64 = value.parse().map_err(|_| format!("{value} is no number"))?;
        match name.as_str() {
            "--seconds" => asked.seconds = number,
            "--cases" => asked.cases = Some(number),
            "--seed" => asked.seed = number,
            "--case" => asked.case = Some(number),
            _ => return Err(format!("{name} is not known")),
        }
    }
    Ok(asked)
}

/// The target of a case and its input.
fn made(seed: u64, case: u64, corpus: &Corpus) -> (usize, Input) {
    let target = (case % TARGETS.len() as u64) as usize;
    (target, (TARGETS[target].make)(&mut Chance::of(seed, case), corpus))
}

fn one(seed: u64, case: u64, corpus: &Corpus) -> Result<(usize, Came), String> {
    let (target, input) = made(seed, case, corpus);
    let ran = catch_unwind(AssertUnwindSafe(|| (TARGETS[target].run)(&input, corpus)));
    let came = ran.map_err(|panic| {
        let text = panic.downcast_ref::<String>().map(String::as_str);
        format!("it panics: {}", text.or(panic.downcast_ref::<&str>().copied()).unwrap_or("?"))
    })??;
    Ok((target, came))
}

/// Tells a finding and keeps its files.
fn keep(seed: u64, case: u64, corpus: &Corpus, what: &str) {
    let (target, input) = made(seed, case, corpus);
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../target/fuzz").join(format!("{seed}-{case}"));
    println!("FINDING, {}, --seed {seed} --case {case}: {what}", TARGETS[target].name);
    let write = |name: &str, bytes: &[u8]| {
        let path = folder.join(name);
        std::fs::create_dir_all(path.parent().unwrap_or(&folder))?;
        std::fs::write(path, bytes)
    };
    for (name, bytes) in &input.files {
        match write(name, bytes) {
            Ok(()) => println!("  kept in {}", folder.join(name).display()),
            Err(error) => println!("  {name} cannot be kept: {error}"),
        }
    }
}
