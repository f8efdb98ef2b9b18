//! The record as pages: first what a service writer needs in a minute, then the file, then the photos.
//!
//! [`Document::to_pdf`] writes PDF/A-3a that is PDF/UA-1 too, with the record's JSON attached. Equal input gives equal
//! bytes: fonts are compiled in, the date is the record's own, and nothing of the machine is asked.
//!
//! - `ink`, `letters`, `printable`: type and colours, words into lines, what can be printed
//! - `sheet`, `flow`, `table`: shapes and structure, words down the pages, tables
//! - `first`, `customer`, `rest`: page one, the customer's copy, and everything else
//! - `clock`, `day`, `figure`, `plot`, `bolts`, `labels`, `photos`: what is drawn
//! - `write`: into bytes

mod bolts;
mod clock;
mod customer;
mod day;
mod figure;
mod first;
mod flow;
mod ink;
mod labels;
mod letters;
mod photos;
mod plot;
mod printable;
mod rest;
mod sheet;
mod table;
mod write;

use std::collections::BTreeMap;

use chrono::{DateTime, Datelike, Timelike, Utc};
use panside_messages::{Arg, Message, Speaker};

use crate::document::Document;
use crate::error::RecordError;
use crate::messages;
use crate::say::{self, Extent};
use crate::speak::Say;
use flow::Flow;
use ink::{BOTTOM, Ink, LEFT, Look, RIGHT, WIDTH};
use letters::Letters;
use photos::Pictures;
use sheet::{Owner, Piece, Shape, line};

/// Between the words at both ends of a line.
const BETWEEN_ENDS: f32 = 16.0;

/// What the pages need besides the document.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PdfInputs {
    /// The photos by hash, as the document names them. One that is not here is told as not given.
    pub photos: BTreeMap<String, PdfPhoto>,
    /// The paper that they are printed on.
    pub paper: Paper,
    /// How much of the record they say.
    pub extent: Extent,
}

/// A size of paper.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Paper {
    /// US Letter.
    #[default]
    Letter,
    /// ISO A4.
    A4,
}

/// A photo for the pages.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PdfPhoto {
    /// A JPEG of the upright picture: it is shown as it is stored, whatever orientation the file names. Its bytes go
    /// into the PDF as they are.
    Jpeg(Vec<u8>),
    /// It cannot be shown.
    Lacking(Lacks),
}

/// Why a photo cannot be shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Lacks {
    /// Nobody gave it.
    NotGiven,
    /// What the entry names it by is no hash.
    NoHash,
    /// Its file is not in the store.
    NotInStore,
    /// Its file is not the one that was taken in.
    Altered,
    /// Its file is damaged; with what was found.
    Damaged(Message),
    /// Its file cannot be read; with what was found, or what the PDF writer said.
    Unreadable(Arg),
    /// Its colors are for a printing press.
    PressColors,
}

impl Lacks {
    fn says(&self) -> Message {
        match self {
            Lacks::NotGiven => messages::photo_not_given(),
            Lacks::NoHash => messages::photo_no_hash(),
            Lacks::NotInStore => messages::photo_not_in_store(),
            Lacks::Altered => messages::photo_altered(),
            Lacks::Damaged(found) => messages::photo_damaged(found.clone()),
            Lacks::Unreadable(found) => messages::photo_unreadable(found.clone()),
            Lacks::PressColors => messages::photo_press_colors(),
        }
    }
}

/// Which form of PDF is written.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Form {
    /// PDF/A-3a and PDF/UA-1, with outline, and with the data attached where there is any.
    Archive,
    /// PDF/A-1b, without outline and attachment.
    Twin,
}

impl Document {
    /// The document as pages: PDF/A-3a and PDF/UA-1 with the JSON of [`Document::to_json`] attached as `record.json`.
    ///
    /// # Errors
    /// [`RecordError::Unwritable`] as for the JSON; [`RecordError::Pdf`] when the PDF writer finds that what it would
    /// write is no such file.
    pub fn to_pdf(&self, speaker: &Speaker, inputs: &PdfInputs) -> Result<Vec<u8>, RecordError> {
        self.pages(speaker, inputs, Form::Archive)
    }

    /// The same pages as PDF/A-1b, without outline and attachment: for checking by a validator that knows no newer
    /// form.
    ///
    /// # Errors
    /// As [`Document::to_pdf`].
    pub fn to_pdf_a1b(&self, speaker: &Speaker, inputs: &PdfInputs) -> Result<Vec<u8>, RecordError> {
        self.pages(speaker, inputs, Form::Twin)
    }

    /// The customer's copy: one page in plain words and one of the first page's photos, without the data.
    ///
    /// # Errors
    /// As [`Document::to_pdf`].
    pub fn to_customer_pdf(&self, speaker: &Speaker, inputs: &PdfInputs) -> Result<Vec<u8>, RecordError> {
        let say = &Say::by(speaker);
        let mut flow = self.flow(say)?;
        let copy = say::customer(self, say);
        let pictures = Pictures::read(inputs);
        customer::write(&mut flow, self, &copy, &pictures, say);
        let end = Ends { name: copy.name.clone(), mark: self.mark(), foot: None };
        heads_and_feet(&mut flow, &end, say);
        self.written(flow, &pictures, (copy.name, None), (say, inputs.paper, Form::Archive))
    }

    fn pages(&self, speaker: &Speaker, inputs: &PdfInputs, form: Form) -> Result<Vec<u8>, RecordError> {
        let say = &Say::by(speaker);
        let mut flow = self.flow(say)?;
        let pictures = Pictures::read(inputs);
        let first = say::first(self, say);
        let name = first.name.clone();
        first::write(&mut flow, self, first, &pictures, say);
        rest::write(&mut flow, self, &pictures, (say, inputs.extent));
        let head = say.says(&messages::head_of_journal(self.journal.head.to_string()));
        heads_and_feet(&mut flow, &Ends { name: name.clone(), mark: self.mark(), foot: Some(head) }, say);
        let json = self.to_json()?;
        self.written(flow, &pictures, (name, Some(json)), (say, inputs.paper, form))
    }

    fn flow<'a>(&self, say: &'a Say<'a>) -> Result<Flow<'a>, RecordError> {
        let letters = Letters::new().ok_or_else(|| self.failed(messages::font_unreadable()))?;
        Ok(Flow::new(letters, say))
    }

    fn written(
        &self,
        flow: Flow<'_>,
        pictures: &Pictures<'_>,
        (title, json): (String, Option<Vec<u8>>),
        (say, paper, form): (&Say<'_>, Paper, Form),
    ) -> Result<Vec<u8>, RecordError> {
        let about = write::About {
            title,
            subject: self.title.clone(),
            people: self.people.clone(),
            made: made(&self.generated_utc),
            id: [self.job.as_str(), &self.journal.head.to_string()].join(" "),
            language: say.tag(),
            json,
            attached: say.says(&messages::attachment_about()),
        };
        write::write(flow, &pictures.images, about, (paper, form)).map_err(|why| self.failed(why))
    }

    fn failed(&self, why: impl Into<Arg>) -> RecordError {
        RecordError::Pdf { repair_order: self.vehicle.repair_order.clone(), why: why.into() }
    }
}

/// The date that the record was made. A PDF must have one; where no calendar holds the time, it is the beginning of 1970.
fn made(utc: &str) -> krilla::metadata::DateTime {
    let made: DateTime<Utc> = DateTime::parse_from_rfc3339(utc).map(Into::into).unwrap_or_default();
    let byte = |number: u32| u8::try_from(number).unwrap_or_default();
    krilla::metadata::DateTime::new(u16::try_from(made.year()).unwrap_or(1970))
        .month(byte(made.month()))
        .day(byte(made.day()))
        .hour(byte(made.hour()))
        .minute(byte(made.minute()))
        .second(byte(made.second()))
        .utc_offset_hour(0)
        .utc_offset_minute(0)
}

/// What is repeated on pages.
struct Ends {
    /// In the head, from page two on.
    name: String,
    mark: String,
    /// In the foot, from page two on.
    foot: Option<String>,
}

/// The running head from page two on, and the foot of every page.
fn heads_and_feet(flow: &mut Flow<'_>, said: &Ends, say: &Say<'_>) {
    let count = flow.pages.len();
    for page in 0..count {
        let mut pieces = Vec::new();
        if page > 0 {
            let y = 34.0;
            pieces.extend(ends(flow, Owner::Head, &said.name, &said.mark, Look::NOTE, y));
            let rule = line(&[(LEFT, y + 15.0), (RIGHT, y + 15.0)]);
            pieces.extend(rule.map(|path| Piece {
                owner: Owner::Head,
                shape: Shape::Drawn { path, fill: None, stroke: Some((Ink::Hair, 0.6)) },
            }));
        }
        let foot = said.foot.as_deref().filter(|_| page > 0).unwrap_or_default();
        let number = say.says(&messages::page_number((page + 1).to_string(), count.to_string()));
        pieces.extend(ends(flow, Owner::Foot, foot, &number, Look::FOOT, BOTTOM + 12.0));
        flow.pages[page].extend(pieces);
    }
}

/// A line with words at both ends of the page: those on the right whole, those on the left as far as they go.
fn ends(flow: &mut Flow<'_>, owner: Owner, left: &str, right: &str, look: Look, top: f32) -> Vec<Piece> {
    let right = flow.letters.one(right, look);
    let room = WIDTH - right.width - BETWEEN_ENDS;
    let left = flow.letters.set(left, look, room).into_iter().next().unwrap_or_default();
    let words = [(LEFT, left), (RIGHT - right.width, right)];
    let piece = |(x, line): (f32, letters::Line)| Piece {
        owner,
        shape: Shape::Words { x, baseline: top + line.ascent, line },
    };
    words.into_iter().map(piece).collect()
}
