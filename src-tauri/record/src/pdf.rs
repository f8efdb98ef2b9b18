//! The record as pages: first what a service writer needs in a minute, then everything else.
//!
//! [`Document::to_pdf`] writes PDF/A-3a that is PDF/UA-1 too, with the record's JSON attached. Equal input gives equal
//! bytes: fonts are compiled in, the date is the record's own, and nothing of the machine is asked.
//!
//! - `ink`, `letters`, `printable`: type and colours, words into lines, what can be printed
//! - `sheet`, `flow`, `table`: shapes and structure, words down the pages, tables
//! - `first`, `rest`: page one, and everything else
//! - `clock`, `day`, `figure`, `plot`, `bolts`, `labels`, `photos`: what is drawn
//! - `write`: into bytes

mod bolts;
mod clock;
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
use panside_messages::Arg;

use crate::document::Document;
use crate::error::RecordError;
use crate::message::record_font;
use crate::say;
use flow::Flow;
use ink::{BOTTOM, Ink, LEFT, Look, PAGE, RIGHT, WIDTH};
use letters::Letters;
use sheet::{Owner, Piece, Shape, line};

/// Between the words at both ends of a line.
const BETWEEN_ENDS: f32 = 16.0;

/// What the pages need besides the document.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PdfInputs {
    /// The photos by hash, as the document names them. One that is not here is told as not given.
    pub photos: BTreeMap<String, PdfPhoto>,
}

/// A photo for the pages.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PdfPhoto {
    /// A JPEG of the upright picture: it is shown as it is stored, whatever orientation the file names. Its bytes go
    /// into the PDF as they are.
    Jpeg(Vec<u8>),
    /// It cannot be shown.
    Lacking {
        /// Why, as a sentence goes on after a colon, without a full stop.
        why: String,
    },
}

/// Which form of PDF is written.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Form {
    /// PDF/A-3a and PDF/UA-1, with outline and attachment.
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
    pub fn to_pdf(&self, inputs: &PdfInputs) -> Result<Vec<u8>, RecordError> {
        self.pages(inputs, Form::Archive)
    }

    /// The same pages as PDF/A-1b, without outline and attachment: for checking by a validator that knows no newer
    /// form.
    ///
    /// # Errors
    /// As [`Document::to_pdf`].
    pub fn to_pdf_a1b(&self, inputs: &PdfInputs) -> Result<Vec<u8>, RecordError> {
        self.pages(inputs, Form::Twin)
    }

    fn pages(&self, inputs: &PdfInputs, form: Form) -> Result<Vec<u8>, RecordError> {
        let failed = |why: Arg| RecordError::Pdf { repair_order: self.vehicle.repair_order.clone(), why };
        let letters = Letters::new().ok_or_else(|| failed(record_font().into()))?;
        let mut flow = Flow::new(letters);
        let (images, lacking) = photos::read(inputs);
        first::write(&mut flow, self);
        rest::write(&mut flow, self, &rest::Pictures { images: &images, lacking: &lacking });
        heads_and_feet(&mut flow, self);
        let about = write::About {
            title: format!("Bay record, repair order {}", say::order(self)),
            subject: self.title.clone(),
            people: self.people.clone(),
            made: made(&self.generated_utc),
            id: format!("{} {}", self.job, self.journal.head),
            json: self.to_json()?,
        };
        write::write(flow, &images, about, form).map_err(|why| failed(why.into()))
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

/// The running head from page two on, and the foot of every page.
fn heads_and_feet(flow: &mut Flow, document: &Document) {
    let count = flow.pages.len();
    let mark = document.mark();
    let name = format!("Bay record, repair order {}", say::order(document));
    for page in 0..count {
        let mut pieces = Vec::new();
        if page > 0 {
            let y = 34.0;
            pieces.extend(ends(flow, Owner::Head, &name, &mark, Look::NOTE, y));
            let rule = line(&[(LEFT, y + 15.0), (RIGHT, y + 15.0)]);
            pieces.extend(rule.map(|path| Piece {
                owner: Owner::Head,
                shape: Shape::Drawn { path, fill: None, stroke: Some((Ink::Hair, 0.6)) },
            }));
        }
        let head = format!("Head of the journal {}", document.journal.head);
        let number = format!("page {} of {count}", page + 1);
        pieces.extend(ends(flow, Owner::Foot, &head, &number, Look::FOOT, BOTTOM + 12.0));
        flow.pages[page].extend(pieces);
    }
    debug_assert!(BOTTOM + 30.0 < PAGE.1, "the foot is on the page");
}

/// A line with words at both ends of the page: those on the right whole, those on the left as far as they go.
fn ends(flow: &mut Flow, owner: Owner, left: &str, right: &str, look: Look, top: f32) -> Vec<Piece> {
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
