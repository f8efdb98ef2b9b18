//! The command line. Its help is in English: clap prints it before it is known which language is asked for.

mod store;

use std::path::PathBuf;

use clap::builder::{PossibleValuesParser, TypedValueParser};
use clap::{Args, Parser, Subcommand, ValueEnum};
use panside_bay::enter::JobId;
use panside_messages::{Language, Speaker};
use panside_procedure::proof::Apart;
pub use store::{StoreArgs, StoreCommand};

use crate::texts::TextsArgs;

const EXITS: &str = "Exit codes:
  0   done, proved, in order
  1   refused, refuted, or something was found wrong
  2   not decided: a proof did not come to its end
  3   a file does not load
  4   the disk or the store
  64  wrong usage";

/// Panside without a window.
#[derive(Debug, Parser)]
#[command(name = "panside-cli", version, after_help = EXITS, after_long_help = EXITS)]
pub struct Cli {
    /// The language of what is printed, by its tag.
    #[arg(long, global = true, value_name = "CODE", env = "PANSIDE_LANGUAGE", default_value = "en")]
    #[arg(value_parser = language())]
    pub language: Language,
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// Reads a language's tag.
fn language() -> impl TypedValueParser<Value = Language> {
    let tags = PossibleValuesParser::new(Language::ALL.map(Language::tag));
    tags.try_map(|tag| Language::of(&tag).ok_or(tag))
}

/// What the program can do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Walk a job from a script, line by line, through the same rules and the same store as a technician
    ///
    /// Each line of the script is one command: begin a step, enter a value, move the vehicle, sign. It is printed as it
    /// happens. A command that the rules refuse ends the walk with its reason and exit code 1, unless the line says
    /// that it expects just that refusal ("refused": "refused-needs").
    ///
    /// Example: panside-cli walk checklists/demo/demo.walk.json --store /tmp/bay --record /tmp/record.pdf
    Walk(WalkArgs),
    /// Prove that no allowed order of steps of a checklist reaches a danger
    ///
    /// Every state that steps, vehicle actions, outcomes, ageing, skipping, one void and one observation can reach is
    /// tried with the very function that runs a live job. What refutes the checklist is shown as the shortest order
    /// of steps that leads there.
    ///
    /// Example: panside-cli prove checklists/pan-and-solenoid.checklist.json
    Prove(ProveArgs),
    /// Print a checklist with the parts it uses in their places, as it is loaded, proved and kept
    ///
    /// Example: panside-cli join checklists/pan-and-solenoid.checklist.json
    Join(JoinArgs),
    /// Write a small checklist that loads and is proved, to be changed into your own
    ///
    /// A file that is there already is never written over. checklists/README.md goes on from here.
    ///
    /// Example: panside-cli new-checklist wheel-bolts.checklist.json --title "Wheel bolts after 50 km"
    NewChecklist(NewChecklistArgs),
    /// Print what people read of a checklist, to be translated, or say what is wrong with a translation
    ///
    /// A translation stands beside the checklist as texts/ID.LANGUAGE.texts.json. checklists/README.md says how.
    ///
    /// Example: panside-cli texts checklists/level-check.checklist.json --language es --out checklists/texts/level-check.es.texts.json
    Texts(TextsArgs),
    /// Plan the order with the least expected time
    ///
    /// From the beginning of a checklist, or from where a job of a store stands. Counted are the minutes of steps and
    /// vehicle actions, walking between zones, and what cools, drains or is watched; whatever can be done meanwhile is. An order
    /// is called exact only when no other takes less; else how far it can be from the best. Exit code 2: it may not be
    /// the best. For more people than the checklist lets be in steps at a time it is a plan only.
    ///
    /// Example: panside-cli plan checklists/pan-and-solenoid.checklist.json --people 2
    Plan(PlanArgs),
    /// Check a store, back it up, restore it, or save what holds of it
    Store(StoreArgs),
    /// List the jobs of a store
    Jobs(JobsArgs),
    /// Print the record of a job, as text or as JSON, or write it to a file, as pages too
    ///
    /// The pages (.pdf) are for keeping and handing on: PDF/A-3a and PDF/UA-1, with the photos in it and the JSON
    /// attached. A photo whose file is not there is named in its place.
    ///
    /// Example: panside-cli record 082ac683-405a-8440-abf4-c814cfd35072 --store /tmp/bay --out /tmp/record.pdf
    Record(RecordArgs),
    /// Write the JSON Schemas of checklists, parts, texts, sheets and walk scripts
    Schema(SchemaArgs),
    /// Work out one number of the trade, with its steps and its source
    ///
    /// Without a name every figure is listed with its keys.
    ///
    /// Example: panside-cli figure adapter torque=30lbf.ft tool=12in adapter=6in
    #[command(after_help = crate::figure::list(Speaker::english()))]
    Figure(FigureArgs),
}

/// `walk`.
#[derive(Debug, Args)]
pub struct WalkArgs {
    /// The script.
    pub script: PathBuf,
    /// The folder of the store; it is made if there is none.
    #[arg(long)]
    pub store: PathBuf,
    /// Where the record goes; the file's ending says in which form: .json, .txt or .pdf.
    #[arg(long)]
    pub record: Option<PathBuf>,
    #[command(flatten)]
    pub print: PrintArgs,
    /// The photo file for every photo that the script takes.
    #[arg(long)]
    pub photo: Option<PathBuf>,
    /// Print each line as JSON.
    #[arg(long)]
    pub json: bool,
    /// Prove only plain runs before starting: quicker, and the record says so.
    #[arg(long)]
    pub plain_proof: bool,
    /// Print no record at the end.
    #[arg(long)]
    pub no_text: bool,
    /// Walk only so many lines of the script; 0 starts the job and no more.
    #[arg(long)]
    pub lines: Option<usize>,
    /// Let the last line that is walked happen at this time instead of at the script's own: `now`, so that a window can
    /// go on from there, or a time like 2026-03-02T08:00:00Z. The calibration of the torque tools moves along with the
    /// day.
    #[arg(long, value_name = "TIME")]
    pub until: Option<String>,
    /// Walk on although something was found wrong with the store; what stops it from taking entries still does.
    #[arg(long)]
    pub even_so: bool,
    /// A folder for the page that a screen would show after the start and after each line, and for that of the
    /// record, as JSON.
    #[arg(long)]
    pub pages: Option<PathBuf>,
}

/// `prove`.
#[derive(Debug, Args)]
pub struct ProveArgs {
    /// The checklist.
    pub file: PathBuf,
    /// A spec sheet: it must have all that the checklist needs, and the proof is made for its vehicle. May be given more
    /// than once: it is then made for each, and everything must be used on at least one of them. Without, the proof is
    /// made for every vehicle that a sheet could have.
    #[arg(long)]
    pub sheet: Vec<PathBuf>,
    /// Leave out runs with a void.
    #[arg(long)]
    pub no_void: bool,
    /// Leave out runs with an observation.
    #[arg(long)]
    pub no_observe: bool,
    /// The most memory for the states, in MiB.
    #[arg(long, default_value_t = 2048)]
    pub mem: usize,
    /// The most states that one search may find; a tablet stops at 5000000.
    #[arg(long)]
    pub states: Option<usize>,
    /// Keep apart what no rule can tell apart, to see what taking it for one saves. May be given more than once.
    #[arg(long, value_enum)]
    pub apart: Vec<KeptApart>,
    /// Print the whole answer as JSON.
    #[arg(long)]
    pub json: bool,
}

/// What `prove --apart` names.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum KeptApart {
    /// Sign-offs that lapsed, from those never given
    Lapsed,
    /// Which of several people is in which step
    People,
    /// One stopped job from another
    Stopped,
}

impl ProveArgs {
    /// What the search keeps apart.
    pub fn apart(&self) -> Apart {
        let has = |kept| self.apart.contains(&kept);
        Apart {
            lapsed: has(KeptApart::Lapsed),
            people: has(KeptApart::People),
            stopped: has(KeptApart::Stopped),
        }
    }
}

/// `join`.
#[derive(Debug, Args)]
pub struct JoinArgs {
    /// The checklist.
    pub file: PathBuf,
}

/// `new-checklist`.
#[derive(Debug, Args)]
pub struct NewChecklistArgs {
    /// The file, NAME.checklist.json; the name becomes the checklist's id.
    pub file: PathBuf,
    /// What the job is, as a technician would say it. Absent: the name.
    #[arg(long)]
    pub title: Option<String>,
}

/// `plan`.
#[derive(Debug, Args)]
pub struct PlanArgs {
    /// The checklist.
    #[arg(required_unless_present = "store", conflicts_with = "store")]
    pub file: Option<PathBuf>,
    /// The folder of a store whose job is planned.
    #[arg(long, requires = "job")]
    pub store: Option<PathBuf>,
    /// The job in that store.
    #[arg(long, requires = "store")]
    pub job: Option<JobId>,
    /// How many people work, 1 or 2. Absent: one; for a job of a store those of its checklist.
    #[arg(long)]
    pub people: Option<u8>,
    /// Plan from what can be read of a store that is damaged or has lost something.
    #[arg(long, requires = "store")]
    pub even_so: bool,
    /// Only a good order, at once.
    #[arg(long)]
    pub quick: bool,
    /// Print the whole answer as JSON.
    #[arg(long)]
    pub json: bool,
}

/// `jobs`.
#[derive(Debug, Args)]
pub struct JobsArgs {
    /// The folder of the store.
    #[arg(long)]
    pub store: PathBuf,
    /// Print the list as JSON.
    #[arg(long)]
    pub json: bool,
    /// Print what can be read of a store that is damaged or has lost something.
    #[arg(long)]
    pub even_so: bool,
}

/// What is printed of a record, and on what.
#[derive(Debug, Args)]
pub struct PrintArgs {
    /// Who reads it: the service writer, with the file, or the customer.
    #[arg(long = "for", value_enum, default_value_t = Reader::Writer, value_name = "READER")]
    pub reader: Reader,
    /// With every reading, vehicle action, caution and working-out.
    #[arg(long)]
    pub everything: bool,
    /// The paper of the pages.
    #[arg(long, value_enum, default_value_t = Sheet::Letter)]
    pub paper: Sheet,
}

/// Who reads a record.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Reader {
    /// The service writer.
    Writer,
    /// The customer.
    Customer,
}

/// A size of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Sheet {
    /// US Letter.
    Letter,
    /// ISO A4.
    A4,
}

/// `record`.
#[derive(Debug, Args)]
pub struct RecordArgs {
    /// The job's id, as `jobs` lists it.
    pub job: String,
    /// The folder of the store.
    #[arg(long)]
    pub store: PathBuf,
    /// Print JSON instead of text.
    #[arg(long, conflicts_with = "out")]
    pub json: bool,
    /// Write it to this file instead; its ending says in which form: .json, .txt or .pdf.
    #[arg(long)]
    pub out: Option<PathBuf>,
    #[command(flatten)]
    pub print: PrintArgs,
    /// Write parts.csv, labor.csv and measurements.csv into this folder, for pasting into other programs.
    #[arg(long, value_name = "FOLDER")]
    pub csv: Option<PathBuf>,
    /// Make it from what can be read of a store that is damaged or has lost something; the record says so.
    #[arg(long)]
    pub even_so: bool,
}

/// `schema`.
#[derive(Debug, Args)]
pub struct SchemaArgs {
    /// The folder they go to.
    #[arg(long)]
    pub out: PathBuf,
}

/// `figure`.
#[derive(Debug, Args)]
pub struct FigureArgs {
    /// Which figure.
    pub name: Option<String>,
    /// What goes in, as key=value with the unit behind the number.
    #[arg(value_name = "KEY=VALUE")]
    pub values: Vec<String>,
    /// A spec sheet, for the chart, the limits and the torque that stand on it.
    #[arg(long)]
    pub sheet: Option<PathBuf>,
    /// Print the working as JSON.
    #[arg(long)]
    pub json: bool,
}
