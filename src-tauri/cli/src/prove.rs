//! `prove`.
//!
//! Exit codes: 0 proved, 1 refuted, 2 not decided (memory, states or cancelled), 3 does not load.

use std::io::{IsTerminal, Write};
use std::ops::ControlFlow;
use std::path::Path;
use std::time::Instant;

use panside_messages::{Arg, Message, Speaker};
use panside_procedure::Procedure;
use panside_procedure::load::{self, Fit};
use panside_procedure::proof::{self, Answer, Ask, Looking, Progress, Proof, SearchReport, Stopped, Verdict};

use crate::args::ProveArgs;
use crate::checklist;
use crate::exit::{Exit, Failure, read_document};
use crate::message::*;
use crate::out::{self, row, say};

/// Proves a checklist and prints the answer.
pub fn prove(args: &ProveArgs, speaker: &'static Speaker) -> Result<Exit, Failure> {
    let (_, procedure) = checklist::load(&args.file)?;
    let vehicles = args.sheet.iter().map(|path| fitted(&procedure, path)).collect::<Result<Vec<_>, _>>()?;
    let ask = Ask {
        void: !args.no_void,
        observe: !args.no_observe,
        memory: args.mem << 20,
        states: args.states.unwrap_or(usize::MAX),
        apart: args.apart(),
    };
    let mut meter = Meter::new(speaker);
    let show = &mut |progress| meter.show(progress);
    let mut proof = match &vehicles[..] {
        [] => proof::prove_for(&procedure, &every_vehicle(&procedure)?, ask, show),
        [one] => proof::prove(one, ask, show),
        several => proof::prove_for(&procedure, several, ask, show),
    };
    meter.end();
    if proof.verdict == Verdict::Refuted {
        proof::suggest(&procedure, &mut proof);
    }
    proof.fill(speaker);
    if args.json {
        let mut answer = serde_json::to_value(&proof)?;
        answer["search_seconds"] = meter.searched.last().copied().into();
        out::json(&answer)?;
    } else {
        print(&proof, speaker);
    }
    Ok(match proof.verdict {
        Verdict::Proved => Exit::Done,
        Verdict::Refuted => Exit::Refused,
        Verdict::NotDecided => Exit::NotDecided,
    })
}

/// The checklist for every vehicle that a sheet could have; as it is, where no rule hangs on the vehicle.
fn every_vehicle(procedure: &Procedure) -> Result<Vec<Procedure>, Failure> {
    let lacks = |lacks| Failure::new(Exit::DoesNotLoad, cli_sheet_lacks(Arg::lines(lacks)));
    Fit::all(procedure).into_iter().map(|fit| procedure.fitted_to(fit).map_err(lacks)).collect()
}

/// The checklist for the vehicle of a spec sheet.
fn fitted(procedure: &Procedure, path: &Path) -> Result<Procedure, Failure> {
    let sheet =
        load::sheet(&read_document(path)?).map_err(|problems| Failure::does_not_load(path, &problems))?;
    let lacks = |lacks| Failure::new(Exit::DoesNotLoad, cli_sheet_lacks(Arg::lines(lacks)));
    match load::lacking(procedure, &sheet) {
        none if none.is_empty() => procedure.fitted(&sheet).map_err(lacks),
        missing => Err(lacks(missing)),
    }
}

/// Shows how far a proof is, on a line of its own where there is a screen, else now and then.
pub struct Meter {
    speaker: &'static Speaker,
    began: Instant,
    shown: Instant,
    open_line: bool,
    /// How far each search is.
    searches: Vec<Progress>,
    /// Seconds after which each search had found its states; what came after was judging them.
    searched: Vec<f64>,
}

impl Meter {
    pub fn new(speaker: &'static Speaker) -> Meter {
        let now = Instant::now();
        let (searches, searched) = (Vec::new(), Vec::new());
        Meter { speaker, began: now, shown: now, open_line: false, searches, searched }
    }

    /// Takes in how far a search is, and lets it go on.
    pub fn show(&mut self, progress: Progress) -> ControlFlow<()> {
        let known = self.searches.iter_mut().find(|known| known.search == progress.search);
        let was_searching = known.as_ref().is_none_or(|known| known.doing == Looking::Searching);
        if was_searching && progress.doing != Looking::Searching {
            self.searched.push(self.began.elapsed().as_secs_f64());
        }
        match known {
            Some(known) => *known = progress,
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
        let states: usize = self.searches.iter().map(|search| search.states).sum();
        let rate = states as f64 / seconds.max(0.001);
        let all = cli_proof_meter(format!("{seconds:5.1}"), states, format!("{rate:.0}"));
        let each = self.searches.iter().map(|search| {
            self.speaker.within(&cli_proof_meter_search(search.message(), search.states, search.waiting))
        });
        let each: Vec<String> = each.collect();
        format!("{}  {}", self.speaker.within(&all), each.join(" | "))
    }

    pub fn end(&mut self) {
        if self.open_line {
            eprintln!();
            self.open_line = false;
        }
    }
}

/// Prints the answer. The messages in it have their sentences already.
fn print(proof: &Proof, speaker: &Speaker) {
    let within = |message: &Message| speaker.within(message);
    let engine = proof.engine.as_str();
    say(speaker, &cli_proof_of(&proof.checklist, proof.revision, engine));
    for search in &proof.searches {
        row(format_args!("  {}", within(&searched(search))));
    }
    row(format_args!(""));
    claims(proof, speaker);
    for finding in &proof.findings {
        row(format_args!("\n{}\n  {}", speaker.say(&finding.property.claim()), finding.what.said()));
        row(format_args!("  {}", within(&cli_proof_at(finding.place.message()))));
        for (at, action) in finding.run.iter().enumerate() {
            row(format_args!("  {:>4}. {}", at + 1, action.said()));
        }
        if let Some(fix) = &finding.fix {
            row(format_args!("  {}", within(&cli_proof_close(fix.clone()))));
        }
    }
    for remark in &proof.remarks {
        row(format_args!("\n{}", within(&cli_proof_odd(remark.what.clone()))));
        row(format_args!("  {}", within(&cli_proof_at(remark.place.message()))));
    }
    finish_table(proof, speaker);
    list(&cli_proof_assumed(), &proof.assumed, speaker);
    list(&cli_proof_not_claimed(), &proof.not_claimed, speaker);
    let states: usize = proof.searches.iter().map(|search| search.states.found).sum();
    row(format_args!(""));
    say(
        speaker,
        &match proof.verdict {
            Verdict::Proved => cli_proved(states),
            Verdict::Refuted => cli_refuted(proof.findings.len()),
            Verdict::NotDecided => cli_not_decided(states),
        },
    );
}

/// How large a search was, and why it ended before its end.
fn searched(search: &SearchReport) -> Message {
    let (states, memory) = (search.states.found, search.states.bytes >> 20);
    let said = cli_proof_search(search.runs.message(), states, search.transitions, search.depth, memory);
    match search.stopped {
        None => said,
        Some(Stopped::Memory) => cli_proof_memory(said),
        Some(Stopped::States) => cli_proof_states(said),
        Some(Stopped::Cancelled) => cli_proof_cancelled(said),
    }
}

/// What is claimed, each behind whether it holds.
fn claims(proof: &Proof, speaker: &Speaker) {
    let words = [cli_proof_holds(), cli_proof_fails(), cli_proof_open()].map(|word| speaker.within(&word));
    let wide = words.iter().map(|word| word.chars().count()).max().unwrap_or_default();
    let [holds, fails, open] = &words;
    for (property, answer) in &proof.properties {
        let word = match answer {
            Answer::Holds => holds,
            Answer::Fails => fails,
            Answer::NotDecided => open,
        };
        row(format_args!("  {word:<wide$}  {}", speaker.say(&property.claim())));
    }
}

fn list(heading: &Message, messages: &[Message], speaker: &Speaker) {
    row(format_args!("\n{}", speaker.say(heading)));
    messages.iter().for_each(|message| row(format_args!("  {}", speaker.within(message))));
}

fn finish_table(proof: &Proof, speaker: &Speaker) {
    if proof.finish_after_observing.is_empty() {
        return;
    }
    row(format_args!("\n{}", speaker.say(&cli_proof_finish())));
    for one in &proof.finish_after_observing {
        let can = match (one.can, one.cannot) {
            (_, 0) => cli_proof_always(),
            (0, _) => cli_proof_never(),
            (can, cannot) => cli_proof_sometimes(can, can + cannot),
        };
        let said = cli_proof_finish_row(&one.condition, &one.value, can);
        row(format_args!("  {}", speaker.within(&said)));
    }
}
