//! `jobs` and `record`.

use std::path::Path;

use panside_bay::Bay;
use panside_bay::clock::SystemClock;

use crate::args::{JobsArgs, RecordArgs};
use crate::exit::{Exit, Failure};
use crate::out::{self, say};

/// Lists the jobs of a store.
pub fn jobs(args: &JobsArgs) -> Result<Exit, Failure> {
    let jobs = open(&args.store)?.jobs()?;
    if args.json {
        say!("{}", serde_json::to_string_pretty(&jobs)?);
        return Ok(Exit::Done);
    }
    for job in &jobs {
        let demo = if job.demo { "  demo" } else { "" };
        let state = if job.ended { "ended" } else { "open" };
        say!("{}  {:<12} {:>5} events  {state}{demo}  {}", job.job, job.repair_order, job.events, job.label);
    }
    Ok(Exit::Done)
}

/// Prints the record of a job.
pub fn record(args: &RecordArgs) -> Result<Exit, Failure> {
    let job = args.job.parse().map_err(|_| {
        let message = format!("\"{}\" is no job id; `panside-cli jobs` lists them.", args.job);
        Failure::new(Exit::Usage, message)
    })?;
    let document = open(&args.store)?.record(job)?;
    if args.json {
        say!("{}", String::from_utf8_lossy(&document.to_json()?));
    } else {
        out::print(format_args!("{}", document.to_text()));
    }
    Ok(Exit::Done)
}

fn open(dir: &Path) -> Result<Bay, Failure> {
    Ok(Bay::open_read_only(dir, Box::new(SystemClock::new()))?)
}
