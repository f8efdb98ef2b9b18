//! `store check` and `store rebuild`; the ways back are in [`crate::way_back`].

use panside_bay::Bay;
use panside_bay::clock::SystemClock;

use crate::args::{StoreArgs, StoreCommand};
use crate::exit::{Exit, Failure};
use crate::out::{self, say, spoken};
use crate::way_back;

/// Looks after a store.
pub fn store(args: &StoreArgs) -> Result<Exit, Failure> {
    match &args.command {
        StoreCommand::Check { dir, json } => {
            let bay = Bay::open_read_only(dir, Box::new(SystemClock::new()))?;
            let report = bay.check()?;
            let troubles: Vec<String> =
                report.troubles.iter().map(|trouble| spoken(&trouble.message())).collect();
            if *json {
                let answer = serde_json::json!({
                    "events": report.events,
                    "photos": report.photos,
                    "documents": report.documents,
                    "head": { "seq": report.head.seq, "hash": report.head.hash.to_string() },
                    "troubles": troubles,
                });
                out::json(&answer)?;
            } else {
                say!(
                    "{} events, {} photos and {} documents hold.",
                    report.events,
                    report.photos,
                    report.documents
                );
                say!("Newest event: {} ({})", report.head.seq, report.head.hash);
                troubles.iter().for_each(|trouble| say!("TROUBLE: {trouble}"));
            }
            Ok(if troubles.is_empty() { Exit::Done } else { Exit::Refused })
        }
        StoreCommand::Rebuild { dir } => {
            let mut bay = way_back::open(dir)?;
            let swept = bay.sweep()?;
            let jobs = bay.jobs()?.len();
            bay.close()?;
            say!("The list of {jobs} jobs is made anew from the journal.");
            if swept.files > 0 {
                say!("{} photo files that no entry names are taken away.", swept.files);
            }
            Ok(Exit::Done)
        }
        StoreCommand::Backup { dir, to, keep, every } => way_back::back_up(dir, to, *keep, *every),
        StoreCommand::Backups { folder } => way_back::list(folder),
        StoreCommand::Restore { backup, into, why } => way_back::restore(backup, into, why),
        StoreCommand::GoOn { dir, why } => way_back::go_on(dir, why),
        StoreCommand::Salvage { dir, into } => way_back::salvage(dir, into),
    }
}
