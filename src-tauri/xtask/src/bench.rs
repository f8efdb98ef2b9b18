//! `cargo xtask bench`: how fast the proof's search is and how it grows. Printed for people, held against nothing: times
//! on a shared machine are no test.
//!
//! An engine is a row's maker: another one that searches the same checklists joins [`ENGINES`] and gets its rows.

mod plot;
mod synthetic;

use std::path::Path;
use std::time::Instant;

use serde_json::Value;

use crate::cli;
use crate::failure::Failure;
use crate::folder;
use crate::test::checklists;

/// How a search went.
struct Row {
    states: u64,
    transitions: u64,
    bytes: u64,
    seconds: f64,
    complete: bool,
}

/// Something that searches a checklist through and counts.
struct Engine {
    name: &'static str,
    search: fn(&Path, &Path, Runs) -> Result<Row, Failure>,
}

/// Which runs are searched.
#[derive(Clone, Copy)]
struct Runs {
    name: &'static str,
    options: &'static [&'static str],
}

/// What is taken for one although it could be kept apart, as `prove --apart` names it.
const APART: [Runs; 3] = [
    Runs { name: "strike, lapsed apart", options: &["--no-observe", "--apart", "lapsed"] },
    Runs { name: "strike, people apart", options: &["--no-observe", "--apart", "people"] },
    Runs { name: "strike, stopped apart", options: &["--no-observe", "--apart", "stopped"] },
];

const ENGINES: [Engine; 1] = [Engine { name: "panside", search: ours }];

const PLAIN: Runs = Runs { name: "plain", options: &["--no-strike", "--no-observe"] };
const STRIKE: Runs = Runs { name: "strike", options: &["--no-observe"] };
const WHOLE: Runs = Runs { name: "both", options: &[] };

/// States after which one of our searches stops.
const MOST_STATES: &str = "50000000";

/// Steps of the synthetic checklists.
const STEPS: [usize; 4] = [20, 40, 80, 160];

/// The shipped checklist with the most steps.
const LONGEST: &str = "checklists/pan-and-solenoid.checklist.json";

/// Where the plot is written.
const PLOT: &str = "target/bench/growth.svg";

/// Searches the shipped checklists and the synthetic ones, prints a table and draws how the search grows.
///
/// # Errors
/// When the program does not build, or an answer can't be read.
pub fn bench(root: &Path) -> Result<(), Failure> {
    cli::build(root)?;
    println!(
        "engine   checklist                        runs                   states      transitions  seconds  \
         states/s   bytes/state"
    );
    for shipped in checklists(root)? {
        for runs in [PLAIN, STRIKE, WHOLE] {
            row(root, &shipped, &name_of(&shipped), runs)?;
        }
    }
    let made = std::env::temp_dir().join(format!("panside-bench-{}", std::process::id()));
    folder::create(&made)?;
    let longest = root.join(LONGEST);
    for apart in APART {
        row(root, &longest, &name_of(&longest), apart)?;
    }
    let free = made.join("without-barriers.checklist.json");
    folder::write(&free, without_barriers(root, &longest)?.to_string().as_bytes())?;
    row(root, &free, "the same without barriers", STRIKE)?;
    let mut growth = Growth::new(&[PLAIN, WHOLE]);
    for steps in STEPS {
        let file = made.join(format!("synthetic-{steps}.checklist.json"));
        folder::write(&file, synthetic::checklist(steps).to_string().as_bytes())?;
        for runs in [PLAIN, WHOLE] {
            let ours = row(root, &file, &format!("synthetic, {steps} steps"), runs)?;
            growth.take_in(runs, steps, &ours);
        }
    }
    folder::remove(&made)?;
    growth.draw(&root.join(PLOT))
}

/// The name of a checklist's file without its ending.
fn name_of(file: &Path) -> String {
    let name = file.file_name().unwrap_or_default().to_string_lossy();
    name.trim_end_matches(".checklist.json").to_owned()
}

/// A checklist in which every phase is open from the beginning: only what steps need keeps their order.
fn without_barriers(root: &Path, file: &Path) -> Result<Value, Failure> {
    let joined = cli::answer(root, &["join", &file.to_string_lossy()])?;
    let unread = |error| Failure::Check(format!("{} can't be joined: {error}", file.display()));
    let mut checklist: Value = serde_json::from_str(&joined).map_err(unread)?;
    let mut earlier: Vec<Value> = Vec::new();
    for phase in checklist["phases"].as_array_mut().into_iter().flatten() {
        phase["beside"] = Value::from(earlier.clone());
        earlier.push(phase["id"].clone());
    }
    Ok(checklist)
}

/// How states and time grow with the steps.
struct Growth {
    states: Vec<plot::Line>,
    seconds: Vec<plot::Line>,
}

impl Growth {
    fn new(kinds: &[Runs]) -> Growth {
        let lines = || {
            let line = |runs: &Runs| plot::Line { name: format!("{} runs", runs.name), points: Vec::new() };
            kinds.iter().map(line).collect()
        };
        Growth { states: lines(), seconds: lines() }
    }

    /// Takes in a search that came to its end.
    fn take_in(&mut self, runs: Runs, steps: usize, row: &Row) {
        let name = format!("{} runs", runs.name);
        for (lines, value) in [(&mut self.states, row.states as f64), (&mut self.seconds, row.seconds)] {
            if row.complete && value > 0.0 {
                let line = lines.iter_mut().filter(|line| line.name == name);
                line.for_each(|line| line.points.push((steps as f64, value)));
            }
        }
    }

    fn draw(&self, file: &Path) -> Result<(), Failure> {
        let panels = [
            plot::Panel { axis: "states", lines: &self.states },
            plot::Panel { axis: "seconds, the whole program", lines: &self.seconds },
        ];
        folder::write(file, plot::svg(&panels).as_bytes())?;
        println!("how it grows is drawn in {}", file.display());
        Ok(())
    }
}

/// Searches by every engine and prints a line each; answers our own.
fn row(root: &Path, file: &Path, name: &str, runs: Runs) -> Result<Row, Failure> {
    let mut rows = Vec::new();
    for engine in &ENGINES {
        let row = (engine.search)(root, file, runs)?;
        println!(
            "{:<8} {name:<32} {:<22} {:<11} {:<12} {:<8.2} {:<10.0} {:.1}{}",
            engine.name,
            runs.name,
            row.states,
            row.transitions,
            row.seconds,
            row.states as f64 / row.seconds.max(0.001),
            row.bytes as f64 / row.states.max(1) as f64,
            if row.complete { "" } else { "  (not searched to the end)" },
        );
        rows.push(row);
    }
    Ok(rows.swap_remove(0))
}

/// Our own search. The time is that of the whole program, the properties judged.
fn ours(root: &Path, file: &Path, runs: Runs) -> Result<Row, Failure> {
    let path = file.to_string_lossy();
    let mut arguments = vec!["prove", &path, "--json", "--states", MOST_STATES];
    arguments.extend(runs.options);
    let began = Instant::now();
    let said = cli::answer(root, &arguments)?;
    let seconds = began.elapsed().as_secs_f64();
    let proof: Value = serde_json::from_str(&said)
        .map_err(|error| Failure::Check(format!("the proof's answer on {path} can't be read: {error}")))?;
    let searches = proof["searches"].as_array().cloned().unwrap_or_default();
    let sum = |of: fn(&Value) -> Option<u64>| searches.iter().filter_map(of).sum();
    Ok(Row {
        states: sum(|search| search["states"]["found"].as_u64()),
        transitions: sum(|search| search["transitions"].as_u64()),
        bytes: sum(|search| search["states"]["bytes"].as_u64()),
        seconds,
        complete: searches.iter().all(|search| search["complete"] == true),
    })
}
