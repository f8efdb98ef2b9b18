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
mod kit;
mod new_checklist;
mod out;
mod plan;
mod prove;
mod record;
mod said;
mod schema;
mod script;
mod store;
mod walk;
mod way_back;

use std::process::ExitCode;

use args::{Cli, Command};
use clap::Parser;
use exit::Exit;

fn main() -> ExitCode {
    let cli = match Cli::try_parse() {
        Ok(cli) => cli,
        Err(error) => {
            let code = if error.use_stderr() { Exit::Usage } else { Exit::Done };
            // Where even this cannot be printed there is nobody to tell.
            let _ = error.print();
            return code.into();
        }
    };
    let result = match cli.command {
        Command::Walk(args) => walk::walk(&args),
        Command::Prove(args) => prove::prove(&args),
        Command::Plan(args) => plan::plan(&args),
        Command::Join(args) => checklist::join(&args),
        Command::NewChecklist(args) => new_checklist::write(&args),
        Command::Store(args) => store::store(&args),
        Command::Jobs(args) => record::jobs(&args),
        Command::Record(args) => record::record(&args),
        Command::Schema(args) => schema::schema(&args),
        Command::Figure(args) => figure::figure(&args),
    };
    match result {
        Ok(exit) => exit.into(),
        Err(failure) => {
            eprintln!("{}", failure.message);
            failure.exit.into()
        }
    }
}
