//! `store check` and `store rebuild`; the shop's own checklists are in [`crate::own`], the ways back are in [`crate::way_back`].

use std::path::Path;

use panside_bay::Bay;
use panside_messages::Speaker;

use crate::args::{StoreArgs, StoreCommand};
use crate::exit::{Exit, Failure};
use crate::message::*;
use crate::out::{self, say};
use crate::own;
use crate::record;
use crate::way_back;

/// Looks after a store.
pub fn store(args: &StoreArgs, speaker: &'static Speaker) -> Result<Exit, Failure> {
    match &args.command {
        StoreCommand::Check { dir, json } => check(dir, *json, speaker),
        StoreCommand::Rebuild { dir } => rebuild(dir, speaker),
        StoreCommand::Adopt { dir, file, who, sheet } => own::adopt(dir, file, who, sheet, speaker),
        StoreCommand::Checklists { dir, json } => own::list(dir, *json, speaker),
        StoreCommand::Checklist { dir, id, out } => own::export(dir, id, out, speaker),
        StoreCommand::Backup { dir, to, keep, every } => way_back::back_up(dir, to, *keep, *every, speaker),
        StoreCommand::Backups { folder } => way_back::list(folder, speaker),
        StoreCommand::Restore { backup, into, why } => way_back::restore(backup, into, why.clone(), speaker),
        StoreCommand::GoOn { dir, why } => way_back::go_on(dir, why, speaker),
        StoreCommand::Salvage { dir, into } => way_back::salvage(dir, into, speaker),
    }
}

fn check(dir: &Path, json: bool, speaker: &'static Speaker) -> Result<Exit, Failure> {
    let bay: Bay = record::open(dir, speaker)?;
    let report = bay.check()?;
    let troubles: Vec<_> = report.troubles.iter().map(|trouble| trouble.message()).collect();
    if json {
        let answer = serde_json::json!({
            "events": report.events,
            "photos": report.photos,
            "documents": report.documents,
            "head": { "seq": report.head.seq, "hash": report.head.hash.to_string() },
            "troubles": troubles.iter().map(|trouble| speaker.say(trouble)).collect::<Vec<_>>(),
        });
        out::json(&answer)?;
    } else {
        say(speaker, &cli_store_holds(report.events, report.photos, report.documents));
        say(speaker, &cli_store_newest(report.head.seq, report.head.hash.to_string()));
        troubles.iter().for_each(|trouble| say(speaker, &cli_trouble(trouble.clone())));
    }
    Ok(if troubles.is_empty() { Exit::Done } else { Exit::Refused })
}

fn rebuild(dir: &Path, speaker: &'static Speaker) -> Result<Exit, Failure> {
    let mut bay = way_back::open(dir, speaker)?;
    let swept = bay.sweep()?;
    let jobs = bay.jobs()?.len();
    bay.close()?;
    say(speaker, &cli_store_rebuilt(jobs));
    if swept.files > 0 {
        say(speaker, &cli_store_swept(swept.files));
    }
    Ok(Exit::Done)
}
