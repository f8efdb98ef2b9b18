//! `jobs` and `record`.

use std::path::Path;

use panside_bay::Bay;
use panside_bay::clean;
use panside_bay::clock::SystemClock;
use panside_bay::record::{Document, Extent, Pages, Paper};
use panside_messages::{Arg, Speaker};

use crate::args::{JobsArgs, PrintArgs, Reader, RecordArgs, Sheet};
use crate::exit::{Exit, Failure, write};
use crate::message::*;
use crate::out::{self, row, say};

/// The form that a record takes in a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// The data.
    Json,
    /// Plain text.
    Text,
    /// Pages, with the data attached and the photos in it.
    Pdf,
}

impl Form {
    /// The form that the ending of a file's name asks for.
    pub fn of(path: &Path) -> Result<Form, Failure> {
        match path.extension().and_then(|ending| ending.to_str()) {
            Some("json") => Ok(Form::Json),
            Some("txt") => Ok(Form::Text),
            Some("pdf") => Ok(Form::Pdf),
            _ => Err(Failure::new(Exit::Usage, cli_record_form(path))),
        }
    }
}

impl PrintArgs {
    pub fn pages(&self) -> Pages {
        match (self.reader, self.everything) {
            (Reader::Customer, _) => Pages::Customer,
            (Reader::Writer, true) => Pages::Record(Extent::Everything),
            (Reader::Writer, false) => Pages::Record(Extent::File),
        }
    }

    fn paper(&self) -> Paper {
        match self.paper {
            Sheet::Letter => Paper::Letter,
            Sheet::A4 => Paper::A4,
        }
    }

    /// The form of a file, refused before anything is done where a customer's copy has none such.
    pub fn form(&self, path: &Path) -> Result<Form, Failure> {
        match Form::of(path)? {
            Form::Json if self.reader == Reader::Customer => {
                Err(Failure::new(Exit::Usage, cli_record_customer()))
            }
            form => Ok(form),
        }
    }
}

/// Writes a record to a file in the form that its ending asks for.
pub fn save(bay: &Bay, document: &Document, path: &Path, print: &PrintArgs) -> Result<(), Failure> {
    let bytes = match print.form(path)? {
        Form::Json => document.to_json()?,
        Form::Text => bay.record_text(document, print.pages()).into_bytes(),
        Form::Pdf => bay.pages(document, print.pages(), print.paper())?,
    };
    write(path, &bytes)
}

/// Lists the jobs of a store.
pub fn jobs(args: &JobsArgs, speaker: &'static Speaker) -> Result<Exit, Failure> {
    let bay = open(&args.store, speaker)?;
    look(&bay, args.even_so)?;
    let jobs = bay.jobs()?;
    if args.json {
        out::json(&jobs)?;
        return Ok(Exit::Done);
    }
    for job in &jobs {
        let state = if job.ended { "ended" } else { "open" };
        let said = cli_job_row(format!("{:>5}", job.events), state);
        let said = speaker.within(&if job.demo { cli_job_demo(said) } else { said });
        let (repair_order, label) = (clean::line(&job.repair_order), clean::line(&job.label));
        row(format_args!("{}  {repair_order:<12} {said}  {label}", job.job));
    }
    Ok(Exit::Done)
}

/// Prints the record of a job, or writes it to a file.
pub fn record(args: &RecordArgs, speaker: &'static Speaker) -> Result<Exit, Failure> {
    let job = args.job.parse().map_err(|_| Failure::new(Exit::Usage, cli_no_job_id(&args.job)))?;
    // A wrong ending is said before anything is done.
    args.out.as_deref().map(|path| args.print.form(path)).transpose()?;
    let mut bay = open(&args.store, speaker)?;
    // The job is read before what was found is said: reading it may find more.
    let document = bay.record(job);
    look(&bay, args.even_so)?;
    let document = document?;
    if let Some(folder) = &args.csv {
        for file in bay.record_csv(&document) {
            write(&folder.join(file.name), file.text.as_bytes())?;
        }
        say(speaker, &cli_tables_in(folder.as_path()));
    }
    if let Some(path) = &args.out {
        save(&bay, &document, path, &args.print)?;
        say(speaker, &cli_record_in(path.as_path()));
    } else if args.csv.is_some() {
        return Ok(Exit::Done);
    } else if args.json {
        out::print_json(&String::from_utf8_lossy(&document.to_json()?));
    } else {
        out::print(format_args!("{}", bay.record_text(&document, args.print.pages())));
    }
    Ok(Exit::Done)
}

/// Says what was found wrong with a store. Nothing is printed from a store that is damaged or has lost something, unless
/// that is asked for: a shortened list looks like a whole one.
pub fn look(bay: &Bay, even_so: bool) -> Result<(), Failure> {
    let troubles = bay.troubles();
    if troubles.is_empty() {
        return Ok(());
    }
    let troubles = troubles.into_iter().map(cli_trouble);
    if even_so || !bay.is_troubled() {
        troubles.for_each(|trouble| out::warn(&bay.speaker().say(&trouble)));
        return Ok(());
    }
    Err(Failure::new(Exit::Store, cli_nothing_printed(Arg::lines(troubles))))
}

/// Opens a store for reading.
pub fn open(dir: &Path, speaker: &'static Speaker) -> Result<Bay, Failure> {
    Ok(Bay::open_read_only(dir, Box::new(SystemClock::new()))?.speaking(speaker))
}
