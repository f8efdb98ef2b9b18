//! Reading records out of the pages of a database that SQLite can no longer read, without its trees: every place of
//! every page is tried as the start of a record of the looked-for form (SQLite file format, sections 1.6, 2.1, 2.3 and
//! 4.1). What is found this way is believed only where a hash says so, so that a wrong guess costs a moment and no more.
//!
//! The frames of the write-ahead log are pages too. They are all read, also those that SQLite leaves out because of a
//! flipped bit somewhere before them.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{Read, Seek, SeekFrom};
use std::path::Path;

use crate::error::file;
use crate::{Doing, StoreError, load};

/// SQLite's page size since 3.12; [`crate::load::make`] leaves it so.
const PAGE: usize = 4096;
const LOG_HEADER: u64 = 32;
const FRAME_HEADER: usize = 24;
/// No record of a store is larger: photos are files.
const LARGEST: usize = 64 << 20;
const READING: Doing = Doing::ReadingPages;

/// What may stand in a column.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Form {
    Null,
    Number,
    Text,
    Blob,
    /// A blob of so many bytes.
    Bytes(u64),
}

/// In which kind of tree a record stands: it says how much of a long one stands on its first page.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Tree {
    Table,
    Index,
}

/// One column of a record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Column {
    Number(i64),
    Bytes(Vec<u8>),
}

impl Column {
    pub(crate) fn number(&self) -> Option<i64> {
        match self {
            Column::Number(number) => Some(*number),
            Column::Bytes(_) => None,
        }
    }

    pub(crate) fn bytes(&self) -> Option<&[u8]> {
        match self {
            Column::Bytes(bytes) => Some(bytes),
            Column::Number(_) => None,
        }
    }
}

/// The pages of a database and of its log.
pub(crate) struct Pages {
    database: Option<File>,
    log: Option<File>,
    /// How many pages the database has, and where the frames of the log begin.
    pages: u64,
    frames: Vec<u64>,
    /// Where the newest frame of a page is.
    newest: BTreeMap<u32, u64>,
}

impl Pages {
    /// Opens the files of the store in `dir`, whichever are there.
    pub(crate) fn open(dir: &Path) -> Result<Pages, StoreError> {
        let path = load::database(dir);
        let mut log_path = path.clone().into_os_string();
        log_path.push("-wal");
        let (database, length) = open(&path)?;
        let (mut log, log_length) = open(Path::new(&log_path))?;
        let frame = (FRAME_HEADER + PAGE) as u64;
        let frames: Vec<u64> = (0..log_length.saturating_sub(LOG_HEADER).div_ceil(frame))
            .map(|number| LOG_HEADER + number * frame)
            .collect();
        let mut newest = BTreeMap::new();
        for at in &frames {
            if let Some(number) = log.as_mut().and_then(|log| read(log, *at, 4)).and_then(|b| be_u32(&b)) {
                newest.insert(number, at + FRAME_HEADER as u64);
            }
        }
        Ok(Pages { database, log, pages: length.div_ceil(PAGE as u64), frames, newest })
    }

    /// Calls `take` with each record of a form, from the log and from the database, the same one as often as it stands
    /// somewhere. `take` answers whether it believes it.
    pub(crate) fn each(&mut self, tree: Tree, forms: &[Form], take: &mut dyn FnMut(&[Column]) -> bool) {
        for number in 0..self.pages {
            let page = self.database.as_mut().and_then(|file| read(file, number * PAGE as u64, PAGE));
            self.page(&page.unwrap_or_default(), tree, forms, take);
        }
        for at in self.frames.clone() {
            let at = at + FRAME_HEADER as u64;
            let page = self.log.as_mut().and_then(|log| read(log, at, PAGE));
            self.page(&page.unwrap_or_default(), tree, forms, take);
        }
    }

    fn page(&mut self, page: &[u8], tree: Tree, forms: &[Form], take: &mut dyn FnMut(&[Column]) -> bool) {
        for start in 0..page.len() {
            let Some(head) = Head::read(&page[start..], forms) else { continue };
            // A long record goes on in pages of which the log may have a newer one.
            for with_log in [true, false] {
                let record = self.whole(&page[start..], head.length, tree, with_log);
                let whole = record.as_ref().and_then(|record| head.columns(record));
                let short = head.length <= local(head.length, tree);
                if whole.is_some_and(|columns| take(&columns)) || short {
                    break;
                }
            }
        }
    }

    /// All bytes of a record whose first ones are given.
    fn whole(&mut self, from: &[u8], length: usize, tree: Tree, with_log: bool) -> Option<Vec<u8>> {
        let first = local(length, tree);
        let mut record = from.get(..first)?.to_vec();
        let mut next = if first < length { be_u32(from.get(first..)?)? } else { 0 };
        while record.len() < length {
            let page = self.numbered(next, with_log)?;
            next = be_u32(&page)?;
            let wanted = (length - record.len()).min(PAGE - 4);
            record.extend_from_slice(page.get(4..4 + wanted)?);
        }
        Some(record)
    }

    fn numbered(&mut self, number: u32, with_log: bool) -> Option<Vec<u8>> {
        match self.newest.get(&number) {
            Some(at) if with_log => read(self.log.as_mut()?, *at, PAGE),
            _ => read(self.database.as_mut()?, u64::from(number.checked_sub(1)?) * PAGE as u64, PAGE),
        }
    }
}

fn open(path: &Path) -> Result<(Option<File>, u64), StoreError> {
    match File::open(path) {
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => Ok((None, 0)),
        opened => {
            let opened = opened.map_err(file(READING, path))?;
            let length = opened.metadata().map_err(file(READING, path))?.len();
            Ok((Some(opened), length))
        }
    }
}

/// As many bytes as are there of those asked for; nothing where the disk can't read them.
fn read(file: &mut File, at: u64, length: usize) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(length);
    file.seek(SeekFrom::Start(at)).ok()?;
    file.take(length as u64).read_to_end(&mut bytes).ok()?;
    Some(bytes)
}

fn be_u32(bytes: &[u8]) -> Option<u32> {
    Some(u32::from_be_bytes(bytes.get(..4)?.try_into().ok()?))
}

/// How many bytes of a record stand on its first page.
fn local(length: usize, tree: Tree) -> usize {
    let most = match tree {
        Tree::Table => PAGE - 35,
        Tree::Index => (PAGE - 12) * 64 / 255 - 23,
    };
    if length <= most {
        return length;
    }
    let least = (PAGE - 12) * 32 / 255 - 23;
    let surplus = least + (length - least) % (PAGE - 4);
    if surplus <= most { surplus } else { least }
}

/// A variable-length number and how many bytes it takes.
fn varint(bytes: &[u8]) -> Option<(u64, usize)> {
    let mut value = 0;
    for (at, byte) in bytes.iter().take(9).enumerate() {
        if at == 8 {
            return Some((value << 8 | u64::from(*byte), 9));
        }
        value = value << 7 | u64::from(byte & 0x7f);
        if byte & 0x80 == 0 {
            return Some((value, at + 1));
        }
    }
    None
}

/// The beginning of a record, which says what stands in it.
struct Head {
    /// How long the beginning is, and the whole record.
    header: usize,
    length: usize,
    serials: Vec<u64>,
}

impl Head {
    /// The beginning of a record of a form, if one is here. Columns that a later version added may follow.
    fn read(bytes: &[u8], forms: &[Form]) -> Option<Head> {
        let (header, mut at) = varint(bytes)?;
        let header = usize::try_from(header).ok()?;
        if header <= forms.len() || header > bytes.len() || header > 127 {
            return None;
        }
        let mut serials = Vec::new();
        let mut length = header as u64;
        while at < header {
            let (serial, taken) = varint(&bytes[at..header])?;
            if forms.get(serials.len()).is_some_and(|form| !form.fits(serial)) {
                return None;
            }
            length = length.saturating_add(size(serial));
            serials.push(serial);
            at += taken;
        }
        let length = usize::try_from(length).ok().filter(|length| *length <= LARGEST)?;
        (serials.len() >= forms.len()).then_some(Head { header, length, serials })
    }

    fn columns(&self, record: &[u8]) -> Option<Vec<Column>> {
        let mut at = self.header;
        let mut columns = Vec::new();
        for serial in &self.serials {
            let taken = usize::try_from(size(*serial)).ok()?;
            let bytes = record.get(at..at + taken)?;
            columns.push(match serial {
                0 | 8 => Column::Number(0),
                9 => Column::Number(1),
                1..=6 => Column::Number(signed(bytes)),
                _ => Column::Bytes(bytes.to_vec()),
            });
            at += taken;
        }
        Some(columns)
    }
}

impl Form {
    fn fits(self, serial: u64) -> bool {
        match self {
            Form::Null => serial == 0,
            Form::Number => matches!(serial, 1..=6 | 8 | 9),
            Form::Text => serial >= 13 && serial % 2 == 1,
            Form::Blob => serial >= 12 && serial.is_multiple_of(2),
            Form::Bytes(length) => serial == 12 + 2 * length,
        }
    }
}

/// How many bytes a column of a serial type takes.
fn size(serial: u64) -> u64 {
    match serial {
        0 | 8 | 9 => 0,
        1..=4 => serial,
        5 => 6,
        6 | 7 => 8,
        _ => serial.saturating_sub(12) / 2,
    }
}

fn signed(bytes: &[u8]) -> i64 {
    let first = if bytes.first().is_some_and(|byte| byte & 0x80 != 0) { -1 } else { 0 };
    bytes.iter().fold(first, |number, byte| number << 8 | i64::from(*byte))
}
