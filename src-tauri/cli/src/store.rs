//! `store check` and `store rebuild`.

use panside_bay::Bay;
use panside_bay::clock::SystemClock;

use crate::args::{StoreArgs, StoreCommand};
use crate::exit::{Exit, Failure};

/// Looks after a store.
pub fn store(args: &StoreArgs) -> Result<Exit, Failure> {
    match &args.command {
        StoreCommand::Check { dir, json } => {
            let bay = Bay::open_read_only(dir, Box::new(SystemClock::new()))?;
            let report = bay.check()?;
            let troubles: Vec<String> = report.troubles.iter().map(ToString::to_string).collect();
            if *json {
                let answer = serde_json::json!({
                    "events": report.events,
                    "photos": report.photos,
                    "documents": report.documents,
                    "head": { "seq": report.head.seq, "hash": report.head.hash.to_string() },
                    "troubles": troubles,
                });
                println!("{}", serde_json::to_string_pretty(&answer)?);
            } else {
                println!(
                    "{} events, {} photos and {} documents hold.",
                    report.events, report.photos, report.documents
                );
                println!("Newest event: {} ({})", report.head.seq, report.head.hash);
                troubles.iter().for_each(|trouble| println!("TROUBLE: {trouble}"));
            }
            Ok(if troubles.is_empty() { Exit::Done } else { Exit::Refused })
        }
        StoreCommand::Rebuild { dir } => {
            let mut bay = Bay::open(dir, Box::new(SystemClock::new()))?;
            bay.rebuild()?;
            let jobs = bay.jobs()?.len();
            bay.close()?;
            println!("The list of {jobs} jobs is made anew from the journal.");
            Ok(Exit::Done)
        }
    }
}
