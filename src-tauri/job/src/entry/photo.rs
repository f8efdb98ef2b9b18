//! A photo that is on disk, named by the hash of its bytes.

use panside_journal::Hash;
use panside_procedure::format::Checklist;
use panside_procedure::format::entry::Photo;

use super::kind::{self, Kind, measures_nothing};
use super::{Classified, Context};
use crate::command::Refusal;
use crate::message::{photo_hash, photo_size, photo_taken};
use crate::sheet::Specs;
use crate::value::EntryValue;

pub(super) fn classify(hash: &str, width: u32, height: u32) -> Result<Classified, Refusal> {
    if hash.parse::<Hash>().is_err() {
        return Err(photo_hash().into());
    }
    if width == 0 || height == 0 {
        return Err(photo_size().into());
    }
    Ok(Classified::new("taken", EntryValue::Photo { hash: hash.to_owned(), width, height }, photo_taken()))
}

impl Kind for Photo {
    fn classify(
        &self,
        _specs: &Specs,
        value: &EntryValue,
        _context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Photo { hash, width, height } => classify(hash, *width, *height),
            _ => Err(kind::other("photo", value)),
        }
    }

    measures_nothing!();

    fn in_short(&self, _value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_photo_is_known_by_a_whole_hash_and_has_pixels() {
        let hash = Hash::of(b"a photo").to_string();
        assert_eq!(classify(&hash, 2048, 1536).unwrap().class, "taken");
        for bad in [&hash[1..], &hash.to_uppercase(), ""] {
            assert_eq!(classify(bad, 2048, 1536).unwrap_err().message, photo_hash());
        }
        assert_eq!(classify(&hash, 0, 1536).unwrap_err().message, photo_size());
    }
}
