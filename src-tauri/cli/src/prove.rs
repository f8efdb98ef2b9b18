//! `prove`.
//!
//! Exit codes: 0 proved, 1 refuted, 2 not decided (memory, states or cancelled), 3 does not load.

use std::io::{IsTerminal, Write};
use std::ops::ControlFlow;
use std::time::Instant;

use panside_messages::{Message, Speaker};
use panside_procedure::load;
use panside_procedure::proof::{self, Answer, Ask, Looking, Progress, Proof, Stopped, Verdict};

use crate::args::ProveArgs;
use crate::checklist;
use crate::exit::{Exit, Failure, read_document};
use crate::out::{self, say, spoken};

/// Proves a checklist and prints the answer.
pub fn prove(args: &ProveArgs) -> Result<Exit, Failure> {
    let (_, procedure) = checklist::load(&args.file)?;
    if let Some(path) = &args.sheet {
        let sheet =
            load::sheet(&read_document(path)?).map_err(|problems| Failure::does_not_load(path, &problems))?;
        let lacks = load::lacking(&procedure, &sheet);
        if !lacks.is_empty() {
            let lacks: Vec<String> = lacks.iter().map(within).collect();
            return Err(Failure::new(Exit::DoesNotLoad, lacks.join("\n")));
        }
    }
    let ask = Ask {
        void: !args.no_void,
        observe: !args.no_observe,
        memory: args.mem << 20,
        states: args.states.unwrap_or(usize::MAX),
        apart: args.apart(),
    };
    let mut meter = Meter::new();
    let mut proof = proof::prove(&procedure, ask, &mut |progress| meter.show(progress));
    meter.end();
    if proof.verdict == Verdict::Refuted {
        proof::suggest(&procedure, &mut proof);
    }
    proof.fill(Speaker::english());
    if args.json {
        let mut told = serde_json::to_value(&proof)?;
        told["search_seconds"] = meter.searched.last().copied().into();
        out::json(&told)?;
    } else {
        print(&proof);
    }
    Ok(match proof.verdict {
        Verdict::Proved => Exit::Done,
        Verdict::Refuted => Exit::Refused,
        Verdict::NotDecided => Exit::NotDecided,
    })
}

/// Shows how far a proof is, on a line of its own where there is a screen, else now and then.
pub struct Meter {
    began: Instant,
    shown: Instant,
    open_line: bool,
    /// How far each search is.
    searches: Vec<Progress>,
    /// Seconds after which each search had found its states; what came after was judging them.
    searched: Vec<f64>,
}

impl Meter {
    pub fn new() -> Meter {
        let now = Instant::now();
        Meter { began: now, shown: now, open_line: false, searches: Vec::new(), searched: Vec::new() }
    }

    /// Takes in how far a search is, and lets it go on.
    pub fn show(&mut self, progress: Progress) -> ControlFlow<()> {
        let told = self.searches.iter_mut().find(|told| told.search == progress.search);
        let was_searching = told.as_ref().is_none_or(|told| told.doing == Looking::Searching);
        if was_searching && progress.doing != Looking::Searching {
            self.searched.push(self.began.elapsed().as_secs_f64());
        }
        match told {
            Some(told) => *told = progress,
            None => self.searches.push(progress),
        }
        let screen = std::io::stderr().is_terminal();
        if self.shown.elapsed().as_millis() >= if screen { 200 } else { 5_000 } {
            self.shown = Instant::now();
            let line = self.line();
            if screen {
                // A meter that cannot be shown is not worth ending a proof for.
                let _ = write!(std::io::stderr(), "\r\x1b[K{line}");
                self.open_line = true;
            } else {
                eprintln!("{line}");
            }
        }
        ControlFlow::Continue(())
    }

    fn line(&self) -> String {
        let seconds = self.began.elapsed().as_secs_f64();
        let states: usize = self.searches.iter().map(|told| told.states).sum();
        let rate = states as f64 / seconds.max(0.001);
        let each = self.searches.iter().map(|told| {
            format!("{}, {} states, {} waiting", spoken(&told.message()), told.states, told.waiting)
        });
        let each: Vec<String> = each.collect();
        format!("{seconds:5.1} s  {states} states ({rate:.0}/s)  {}", each.join(" | "))
    }

    pub fn end(&mut self) {
        if self.open_line {
            eprintln!();
            self.open_line = false;
        }
    }
}

/// A message as it stands within what is printed: names of the checklist stay as they are written.
fn within(message: &Message) -> String {
    Speaker::english().within(message)
}

fn listed(messages: &[Message]) -> String {
    messages.iter().map(Message::said).collect::<Vec<_>>().join("; ")
}

fn print(proof: &Proof) {
    say!("Checklist {}, revision {} ({})", proof.checklist, proof.revision, proof.engine);
    for search in &proof.searches {
        say!(
            "  {}: {} states, {} transitions, depth {}, {} MiB{}",
            within(&search.runs.message()),
            search.states.found,
            search.transitions,
            search.depth,
            search.states.bytes >> 20,
            search.stopped.map_or("", ended_early)
        );
    }
    say!("");
    for (property, answer) in &proof.properties {
        let said = match answer {
            Answer::Holds => "holds      ",
            Answer::Fails => "FAILS      ",
            Answer::NotDecided => "not decided",
        };
        say!("  {said}  {}", spoken(&property.claim()));
    }
    for finding in &proof.findings {
        say!("\n{}\n  {}", spoken(&finding.property.claim()), finding.what.said());
        say!("  at {}", within(&finding.place.message()));
        for (at, action) in finding.run.iter().enumerate() {
            say!("  {:>4}. {}", at + 1, action.said());
        }
        if let Some(fix) = &finding.fix {
            say!("  To close it: {}.", fix.said());
        }
    }
    for remark in &proof.remarks {
        say!(
            "\nOdd, though it refutes nothing: {}\n  at {}",
            remark.what.said(),
            within(&remark.place.message())
        );
    }
    finish_table(proof);
    say!("\nAssumed: {}.", listed(&proof.assumed));
    say!("Not claimed: {}.", listed(&proof.not_claimed));
    let states: usize = proof.searches.iter().map(|search| search.states.found).sum();
    match proof.verdict {
        Verdict::Proved => say!("\nProved over {states} states."),
        Verdict::Refuted => say!("\nRefuted: {} findings.", proof.findings.len()),
        Verdict::NotDecided => {
            say!(
                "\nNot decided: ran to {states} states. It counts as not proved; --mem and --states give a search more room."
            );
        }
    }
}

fn ended_early(stopped: Stopped) -> &'static str {
    match stopped {
        Stopped::Memory => " - memory cap reached, not searched to the end",
        Stopped::States => " - states cap reached, not searched to the end",
        Stopped::Cancelled => " - ended before its end",
    }
}

fn finish_table(proof: &Proof) {
    if proof.finish_after_observing.is_empty() {
        return;
    }
    say!("\nAfter one observation, can the job still finish?");
    for row in &proof.finish_after_observing {
        let said = match (row.can, row.cannot) {
            (_, 0) => "always".to_owned(),
            (0, _) => "never: stop and call".to_owned(),
            (can, cannot) => format!("in {can} of {} places, else stop and call", can + cannot),
        };
        say!("  {} = {}: {said}", row.condition, row.value);
    }
}
