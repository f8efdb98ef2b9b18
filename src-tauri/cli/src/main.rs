//! Panside without a window: walk a job from a script, prove a checklist, look after a store, print a record, work out a
//! number of the trade.
//!
//! Exit codes: 0 done · 1 refused, refuted or something found wrong · 2 not decided · 3 a file does not load ·
//! 4 the disk or the store · 64 wrong usage.
#![allow(clippy::disallowed_methods, reason = "the edge: files are read and written here")]

mod args;
mod checklist;
mod exit;
mod figure;
mod message;
mod new_checklist;
mod out;
mod own;
mod plan;
mod prove;
mod record;
mod said;
mod schema;
mod script;
mod setup;
mod store;
mod texts;
mod walk;
mod way_back;
mod when;

use std::process::ExitCode;

use args::{Cli, Command};
use clap::Parser;
use exit::{Exit, Failure};
use panside_messages::Speaker;

fn main() -> ExitCode {
    let cli = match Cli::try_parse() {
        Ok(cli) => cli,
        Err(error) => {
            // What was typed wrongly is quoted, and help can be sent to a full disk like anything else.
            let text = error.render().to_string();
            if error.use_stderr() {
                out::warn(text.trim_end());
                return Exit::Usage.into();
            }
            out::print(format_args!("{text}"));
            return end(Ok(Exit::Done), Speaker::english());
        }
    };
    let speaker = Speaker::of(cli.language);
    let result = match cli.command {
        Command::Walk(args) => walk::walk(&args, speaker),
        Command::Prove(args) => prove::prove(&args, speaker),
        Command::Plan(args) => plan::plan(&args, speaker),
        Command::Join(args) => checklist::join(&args),
        Command::Texts(args) => texts::texts(&args, speaker),
        Command::NewChecklist(args) => new_checklist::write(&args, speaker),
        Command::Store(args) => store::store(&args, speaker),
        Command::Jobs(args) => record::jobs(&args, speaker),
        Command::Record(args) => record::record(&args, speaker),
        Command::Schema(args) => schema::schema(&args),
        Command::Figure(args) => figure::figure(&args, speaker),
    };
    end(result, speaker)
}

/// Says why it failed, if it did, and whether all was printed.
fn end(result: Result<Exit, Failure>, speaker: &Speaker) -> ExitCode {
    let said = |failure: Failure| {
        out::warn(&speaker.say(&failure.message));
        failure.exit
    };
    let exit = result.unwrap_or_else(said);
    out::finish().map_or_else(said, |()| exit).into()
}
