//! What a job can be started with, as a screen offers it.

use panside_job::Specs;
use panside_job::sheet::check;
use panside_job::start::{Question, questions};
use panside_procedure::Procedure;
use panside_procedure::proof::Ask;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::{Bay, BayError};

/// The bytes of a checklist with those of its spec sheets.
#[derive(Debug, Clone, Copy)]
pub struct Shelf<'a> {
    /// Checklists.
    pub checklists: &'a [&'a [u8]],
    /// Spec sheets.
    pub sheets: &'a [&'a [u8]],
}

/// A checklist as it is offered.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct ChecklistOffer {
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
    /// A proof of it is kept on this tablet.
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
}

impl Bay {
    /// What a job can be started with, the sheets of the shop in their newest revision, and whether what is asked of its proof is kept.
    ///
    /// # Errors
    /// [`BayError::Checklist`], [`BayError::Sheet`] for one that does not load; [`BayError::Store`] with what the
    /// disk said.
    pub fn offers(&self, shelf: Shelf<'_>, ask: Ask) -> Result<Vec<ChecklistOffer>, BayError> {
        let found = self.found_sheets(shelf)?;
        let mut sheets = Vec::new();
        for (sheet, built_in) in found.sheets {
            match self.specs(&sheet) {
                Ok(specs) => sheets.push(specs),
                // A mistake of the program; one of the shop's is told in the kit and keeps no other from being offered.
                Err(error) if built_in => return Err(error),
                Err(_) => {}
            }
        }
        shelf.checklists.iter().map(|bytes| self.offer(bytes, &sheets, ask)).collect()
    }

    fn offer(&self, bytes: &[u8], sheets: &[Specs], ask: Ask) -> Result<ChecklistOffer, BayError> {
        let procedure = Procedure::load(bytes).map_err(BayError::Checklist)?;
        let fitting = sheets.iter().filter(|specs| check(&procedure, specs).is_empty());
        let fitting = fitting.map(|Specs { sheet, .. }| SheetOffer {
            id: sheet.id.clone(),
            title: sheet.title.clone(),
            revision: sheet.revision,
            demo: sheet.demo,
        });
        let fitting = fitting.collect();
        let checklist = &procedure.checklist;
        Ok(ChecklistOffer {
            id: checklist.id.clone(),
            title: checklist.title.clone(),
            revision: checklist.revision,
            demo: checklist.demo,
            steps: procedure.steps().count(),
            proved: self.proof_of(bytes, ask)?.is_some(),
            questions: questions(&procedure),
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
}

fn find<'a>(files: &[&'a [u8]], id: &str) -> Result<&'a [u8], BayError> {
    #[derive(Deserialize)]
    struct Named {
        id: String,
    }
    let is = |bytes: &&&[u8]| serde_json::from_slice::<Named>(bytes).is_ok_and(|named| named.id == id);
    files.iter().find(is).copied().ok_or_else(|| BayError::NotOnShelf(id.to_owned()))
}
