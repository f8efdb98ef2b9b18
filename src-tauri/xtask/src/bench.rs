//! `cargo xtask bench`: how fast the proof's search is and how it grows, and what a plan takes. Printed for people: times on
//! a shared machine are no test.
//!
//! An engine is a row's maker: another one that searches the same checklists joins [`ENGINES`] and gets its rows.

mod plan;
mod plot;
mod spin;
mod store;
mod synthetic;

use std::path::Path;
use std::time::Instant;

use serde_json::Value;

use crate::cli;
use crate::failure::Failure;
use crate::folder;
use crate::packages;
use crate::test::checklists;

/// How a search went.
struct Row {
    states: u64,
    transitions: u64,
    bytes: u64,
    /// Seconds in which the states were found.
    search_seconds: f64,
    /// Seconds of the whole program.
    seconds: f64,
    complete: bool,
}

impl Row {
    fn per_second(&self) -> f64 {
        self.states as f64 / self.search_seconds.max(0.001)
    }
}

/// Something that searches a checklist through and counts.
struct Engine {
    name: &'static str,
    /// Nothing where it does not know such runs.
    search: fn(&Path, &Path, Runs) -> Result<Option<Row>, Failure>,
}

/// Which runs are searched.
#[derive(Clone, Copy)]
struct Runs {
    name: &'static str,
    options: &'static [&'static str],
    /// What the model for SPIN calls them.
    model: Option<&'static str>,
}

/// What is taken for one although it could be kept apart, as `prove --apart` names it.
const APART: [Runs; 3] = [
    Runs { name: "void, lapsed apart", options: &["--no-observe", "--apart", "lapsed"], model: None },
    Runs { name: "void, people apart", options: &["--no-observe", "--apart", "people"], model: None },
    Runs { name: "void, stopped apart", options: &["--no-observe", "--apart", "stopped"], model: None },
];

const OURS: Engine = Engine { name: "panside", search: ours };

/// Other engines that search the same in the same run.
const PEERS: [Engine; 2] = [
    Engine { name: "spin dfs", search: spin::depth_first },
    Engine { name: "spin -c", search: spin::collapsed },
];

const PLAIN: Runs = Runs { name: "plain", options: &["--no-void", "--no-observe"], model: Some("plain") };
const VOID: Runs = Runs { name: "void", options: &["--no-observe"], model: Some("void") };
const WHOLE: Runs = Runs { name: "both", options: &[], model: None };

/// States after which one of our searches stops.
const MOST_STATES: &str = "50000000";

/// Steps of the synthetic checklists.
const STEPS: [usize; 4] = [20, 40, 80, 160];

/// The shipped checklist that is searched in several ways and by several engines.
const COMPARED: &str = "checklists/pan-and-solenoid.checklist.json";

/// Where the plot is written.
const PLOT: &str = "target/bench/growth.svg";

/// Plans and searches the shipped checklists, searches synthetic ones, prints tables and draws how the search grows.
///
/// # Errors
/// When the program does not build, or an answer can't be read.
pub fn bench(root: &Path) -> Result<(), Failure> {
    packages::debian(root, packages::BENCH)?;
    cli::build(root)?;
    plan::rows(root, &checklists(root)?)?;
    store::rows(root)?;
    cli::build_promela(root)?;
    println!(
        "engine   checklist                        runs                   states      transitions  search s  \
         states/s   bytes/state  whole s"
    );
    for shipped in checklists(root)? {
        for runs in [PLAIN, VOID, WHOLE] {
            row(root, &shipped, &name_of(&shipped), runs)?;
        }
    }
    for runs in [PLAIN, VOID] {
        compared(root, &root.join(COMPARED), &name_of(Path::new(COMPARED)), runs)?;
    }
    let made = std::env::temp_dir().join(format!("panside-bench-{}", std::process::id()));
    folder::create(&made)?;
    let compared_file = root.join(COMPARED);
    for apart in APART {
        row(root, &compared_file, &name_of(&compared_file), apart)?;
    }
    let free = made.join("without-barriers.checklist.json");
    folder::write(&free, without_barriers(root, &compared_file)?.to_string().as_bytes())?;
    row(root, &free, "the same without barriers", PLAIN)?;
    let mut growth = Growth::new(&[PLAIN, WHOLE]);
    for steps in STEPS {
        let file = made.join(format!("synthetic-{steps}.checklist.json"));
        folder::write(&file, synthetic::checklist(steps).to_string().as_bytes())?;
        for runs in [PLAIN, WHOLE] {
            let name = format!("synthetic, {steps} steps");
            let with_peers = runs.model.is_some() && steps <= 80;
            let ours = if with_peers { compared } else { row }(root, &file, &name, runs)?;
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

/// Searches by our own engine and prints a line.
fn row(root: &Path, file: &Path, name: &str, runs: Runs) -> Result<Row, Failure> {
    let ours = search(&OURS, root, file, name, runs)?;
    ours.ok_or_else(|| Failure::Check(format!("{name} was not searched")))
}

/// Searches by our own engine and its peers, prints a line each, and how we compare with the fastest of them.
fn compared(root: &Path, file: &Path, name: &str, runs: Runs) -> Result<Row, Failure> {
    let ours = row(root, file, name, runs)?;
    let mut fastest: f64 = 0.0;
    for peer in &PEERS {
        if let Some(theirs) = search(peer, root, file, name, runs)? {
            fastest = fastest.max(theirs.per_second());
        }
    }
    println!(
        "{:<8} {name:<32} {:<22} {:.1} times the fastest peer's states/s",
        "",
        runs.name,
        ours.per_second() / fastest
    );
    Ok(ours)
}

fn search(engine: &Engine, root: &Path, file: &Path, name: &str, runs: Runs) -> Result<Option<Row>, Failure> {
    let found = (engine.search)(root, file, runs)?;
    if let Some(row) = &found {
        println!(
            "{:<8} {name:<32} {:<22} {:<11} {:<12} {:<9.2} {:<10.0} {:<12.1} {:.2}{}",
            engine.name,
            runs.name,
            row.states,
            row.transitions,
            row.search_seconds,
            row.per_second(),
            row.bytes as f64 / row.states.max(1) as f64,
            row.seconds,
            if row.complete { "" } else { "  (not searched to the end)" },
        );
    }
    Ok(found)
}

/// Our own search. Like other engines' it is timed without reading the checklist's file and without what comes after: judging
/// whether every job can finish and stop.
fn ours(root: &Path, file: &Path, runs: Runs) -> Result<Option<Row>, Failure> {
    let path = file.to_string_lossy();
    let mut arguments = vec!["prove", &path, "--json", "--states", MOST_STATES];
    arguments.extend(runs.options);
    if file.starts_with(root.join("checklists")) {
        arguments.extend(["--sheet", "checklists/sheets/demo-six-speed.sheet.json"]);
    }
    let began = Instant::now();
    let said = cli::answer(root, &arguments)?;
    let seconds = began.elapsed().as_secs_f64();
    let proof: Value = serde_json::from_str(&said)
        .map_err(|error| Failure::Check(format!("the proof's answer on {path} can't be read: {error}")))?;
    let searches = proof["searches"].as_array().cloned().unwrap_or_default();
    let sum = |of: fn(&Value) -> Option<u64>| searches.iter().filter_map(of).sum();
    Ok(Some(Row {
        states: sum(|search| search["states"]["found"].as_u64()),
        transitions: sum(|search| search["transitions"].as_u64()),
        bytes: sum(|search| search["states"]["bytes"].as_u64()),
        search_seconds: proof["search_seconds"].as_f64().unwrap_or(seconds),
        seconds,
        complete: searches.iter().all(|search| search["complete"] == true),
    }))
}
