//! The only two notes that stay with a photo: how it was held and when it was taken.
//!
//! Reading is forgiving, since a camera's odd EXIF block is no reason to lose a photo: what can't be read
//! counts as absent. Writing starts from nothing, so that no position, serial number, owner's name or
//! maker's note can slip through. Tags and values: CIPA DC-008 (EXIF).

use std::io::Cursor;

use exif::experimental::Writer;
use exif::{DateTime, Field, In, Reader, Tag, Value};

use crate::PhotoError;

/// Orientation and date of a photo.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct Notes {
    /// EXIF orientation, 1 to 8; `None` if the file doesn't say it.
    pub(crate) orientation: Option<u8>,
    /// EXIF DateTimeOriginal, `YYYY:MM:DD HH:MM:SS`; `None` if absent, blank or malformed.
    pub(crate) taken: Option<String>,
}

impl Notes {
    /// Reads the notes out of an EXIF block.
    pub(crate) fn read(exif: Option<Vec<u8>>) -> Notes {
        let mut reader = Reader::new();
        reader.continue_on_error(true);
        let read = |exif| reader.read_raw(exif).or_else(|error| error.distill_partial_result(|_| ())).ok();
        let Some(exif) = exif.and_then(read) else {
            return Notes::default();
        };
        let orientation = exif.get_field(Tag::Orientation, In::PRIMARY).and_then(|f| f.value.get_uint(0));
        let taken = exif.get_field(Tag::DateTimeOriginal, In::PRIMARY).and_then(|f| match &f.value {
            Value::Ascii(lines) => lines.first().and_then(|line| date_text(line)),
            _ => None,
        });
        Notes { orientation: orientation.and_then(valid_orientation), taken }
    }

    /// An EXIF block with these notes and nothing else; `None` if there is nothing to say.
    ///
    /// # Errors
    /// [`PhotoError::Preparing`] if the writer refuses, which it has no reason to.
    pub(crate) fn write(&self) -> Result<Option<Vec<u8>>, PhotoError> {
        let mut fields = Vec::new();
        if let Some(orientation) = self.orientation {
            fields.push((Tag::Orientation, Value::Short(vec![orientation.into()])));
        }
        if let Some(taken) = &self.taken {
            fields.push((Tag::DateTimeOriginal, Value::Ascii(vec![taken.clone().into_bytes()])));
        }
        if fields.is_empty() {
            return Ok(None);
        }
        let fields: Vec<Field> =
            fields.into_iter().map(|(tag, value)| Field { tag, ifd_num: In::PRIMARY, value }).collect();
        let mut writer = Writer::new();
        fields.iter().for_each(|field| writer.push_field(field));
        let mut block = Cursor::new(Vec::new());
        writer.write(&mut block, false).map_err(PhotoError::preparing)?;
        Ok(Some(block.into_inner()))
    }
}

fn valid_orientation(value: u32) -> Option<u8> {
    u8::try_from(value).ok().filter(|value| (1..=8).contains(value))
}

/// The text of a date, if it is one; so no other text can hide in this field.
fn date_text(line: &[u8]) -> Option<String> {
    let line = line.get(..19)?;
    DateTime::from_ascii(line).ok()?;
    String::from_utf8(line.to_vec()).ok()
}
