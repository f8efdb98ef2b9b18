//! What a job can be started with, as a screen offers it.

use panside_job::Specs;
use panside_job::sheet::check;
use panside_job::start::{Question, questions};
use panside_journal::Hash;
use panside_procedure::Procedure;
use panside_procedure::format::{Checklist, Texts};
use panside_procedure::load::Fit;
use panside_procedure::proof::Ask;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::prove::CHECKLIST;
use crate::{Bay, BayError};

/// The bytes of a checklist with those of its spec sheets.
#[derive(Debug, Clone, Copy)]
pub struct Shelf<'a> {
    /// Checklists.
    pub checklists: &'a [&'a [u8]],
    /// Spec sheets.
    pub sheets: &'a [&'a [u8]],
    /// Texts of checklists in other languages.
    pub texts: &'a [&'a [u8]],
    /// Parts that a checklist may use.
    pub parts: &'a [&'a [u8]],
}

/// A checklist as it is offered.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct ChecklistOffer {
    /// Names it: revisions have the same id, but not the same hash.
    pub hash: Hash,
    /// Its id.
    pub id: String,
    /// What the job is.
    pub title: String,
    /// Its revision.
    pub revision: u32,
    /// Invented content.
    pub demo: bool,
    /// Number of its steps.
    pub steps: usize,
    /// A proof of it is kept on this tablet for the vehicle of at least one of the sheets.
    pub proved: bool,
    /// What is asked about the vehicle as it comes in.
    pub questions: Vec<Question>,
    /// The spec sheets that fit it.
    pub sheets: Vec<SheetOffer>,
}

/// A spec sheet as it is offered.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct SheetOffer {
    /// Its id.
    pub id: String,
    /// Which vehicles it is for.
    pub title: String,
    /// Its revision.
    pub revision: u32,
    /// Invented content.
    pub demo: bool,
    /// A proof of the checklist for its vehicle is kept on this tablet.
    pub proved: bool,
    /// What the shop has to have a value for before a job can be started with it, as people read it.
    pub shop_lacks: Vec<String>,
}

impl Bay {
    /// What a job can be started with: the checklists of the shelf, then those that the shop has adopted; the sheets of
    /// the shop in their newest revision; and whether what is asked of its proof is kept. Behind a checklist
    /// of the shelf that is not proved stands the last of its revisions that is, if this tablet ever had one.
    ///
    /// # Errors
    /// [`BayError::Checklist`], [`BayError::Sheet`] for one that does not load; [`BayError::Store`] with what the
    /// disk said.
    pub fn offers(&self, shelf: Shelf<'_>, ask: Ask) -> Result<Vec<ChecklistOffer>, BayError> {
        let sheets = self.all_specs(shelf)?;
        let mut offers = Vec::new();
        for bytes in shelf.checklists {
            let offer = self.offer(bytes, &sheets, ask)?;
            let earlier =
                if offer.proved { None } else { self.last_proved(&offer.id, &offer.hash, &sheets, ask)? };
            offers.push(offer);
            offers.extend(earlier);
        }
        for own in self.own_checklists(shelf)?.checklists.iter().filter(|own| own.adopted) {
            offers.push(self.offer_of(own.hash, &own.procedure, &sheets, ask)?);
        }
        Ok(offers)
    }

    /// The values of every sheet, of the shop and of the shelf.
    pub(crate) fn all_specs(&self, shelf: Shelf<'_>) -> Result<Vec<Specs>, BayError> {
        let mut sheets = Vec::new();
        for (sheet, built_in) in self.found_sheets(shelf)?.sheets {
            match self.specs(&sheet) {
                Ok(specs) => sheets.push(specs),
                // A mistake of the program; one of the shop's is told in the shop setup and keeps no other from being offered.
                Err(error) if built_in => return Err(error),
                Err(_) => {}
            }
        }
        Ok(sheets)
    }

    /// The highest revision of a checklist, but for one, whose proof is kept.
    fn last_proved(
        &self,
        id: &str,
        but: &Hash,
        sheets: &[Specs],
        ask: Ask,
    ) -> Result<Option<ChecklistOffer>, BayError> {
        let mut last: Option<ChecklistOffer> = None;
        for hash in self.store.documents(CHECKLIST)? {
            if hash == *but {
                continue;
            }
            let kept = self.store.document(&hash)?.bytes;
            if named(&kept).as_deref() != Some(id) {
                continue;
            }
            let offer = self.offer(&kept, sheets, ask)?;
            if offer.proved && last.as_ref().is_none_or(|last| last.revision < offer.revision) {
                last = Some(offer);
            }
        }
        Ok(last)
    }

    /// The bytes of a checklist that was offered.
    ///
    /// # Errors
    /// [`BayError::Store`] when there is none, and with what the disk said.
    pub fn offered(&self, shelf: Shelf<'_>, hash: &Hash) -> Result<Vec<u8>, BayError> {
        if let Some(bytes) = shelf.checklists.iter().find(|bytes| Hash::of(bytes) == *hash) {
            return Ok(bytes.to_vec());
        }
        Ok(self.store.document(hash)?.bytes)
    }

    fn offer(&self, bytes: &[u8], sheets: &[Specs], ask: Ask) -> Result<ChecklistOffer, BayError> {
        let procedure = Procedure::load(bytes).map_err(BayError::Checklist)?;
        self.offer_of(Hash::of(bytes), &procedure, sheets, ask)
    }

    pub(crate) fn offer_of(
        &self,
        hash: Hash,
        procedure: &Procedure,
        sheets: &[Specs],
        ask: Ask,
    ) -> Result<ChecklistOffer, BayError> {
        let checklist = &procedure.checklist;
        let mut fitting = Vec::new();
        for specs in sheets.iter().filter(|specs| check(procedure, specs).is_empty()) {
            let sheet = &specs.sheet;
            let fit = Fit::of(procedure, sheet).map_err(BayError::SheetLacks)?;
            fitting.push(SheetOffer {
                id: sheet.id.clone(),
                title: sheet.title.clone(),
                revision: sheet.revision,
                demo: sheet.demo,
                proved: self.proof_of(&hash, &fit, ask)?.is_some(),
                shop_lacks: self.shop_lacks(procedure, sheet)?,
            });
        }
        Ok(ChecklistOffer {
            hash,
            id: checklist.id.clone(),
            title: checklist.title.clone(),
            revision: checklist.revision,
            demo: checklist.demo,
            steps: procedure.steps().count(),
            proved: fitting.iter().any(|sheet| sheet.proved),
            questions: questions(procedure),
            sheets: fitting,
        })
    }
}

impl<'a> Shelf<'a> {
    /// The bytes of a checklist by its id.
    ///
    /// # Errors
    /// [`BayError::NotOnShelf`] when there is none.
    pub fn checklist(&self, id: &str) -> Result<&'a [u8], BayError> {
        find(self.checklists, id)
    }

    /// The bytes of a spec sheet by its id.
    ///
    /// # Errors
    /// [`BayError::NotOnShelf`] when there is none.
    pub fn sheet(&self, id: &str) -> Result<&'a [u8], BayError> {
        find(self.sheets, id)
    }

    /// The bytes of a part by its name.
    pub(crate) fn part(&self, name: &str) -> Option<&'a [u8]> {
        find(self.parts, name).ok()
    }

    /// The bytes of a checklist's texts in a language; none where there are none of this revision.
    #[must_use]
    pub fn texts(&self, checklist: &Checklist, language: &str) -> Option<&'a [u8]> {
        let fit = |texts: &Texts| {
            texts.of == checklist.id && texts.revision == checklist.revision && texts.language == language
        };
        self.texts.iter().copied().find(|bytes| Texts::read(bytes).is_ok_and(|texts| fit(&texts)))
    }
}

fn find<'a>(files: &[&'a [u8]], id: &str) -> Result<&'a [u8], BayError> {
    let is = |bytes: &&&[u8]| named(bytes).as_deref() == Some(id);
    files.iter().find(is).copied().ok_or_else(|| BayError::NotOnShelf(id.to_owned()))
}

/// The id of a checklist or a sheet.
fn named(bytes: &[u8]) -> Option<String> {
    #[derive(Deserialize)]
    struct Named {
        id: String,
    }
    serde_json::from_slice::<Named>(bytes).ok().map(|named| named.id)
}
