//! What checklists ask of a spec sheet: those of the shelf, and those of the shop.

use panside_job::sheet::{Keys, Needs, check, keys, needs};
use panside_procedure::Procedure;
use panside_procedure::format::Sheet;

use super::TypedSheet;
use crate::shelf::Shelf;
use crate::{Bay, BayError};

impl Bay {
    /// Titles of the checklists that a sheet fits.
    pub(super) fn fits(&self, procedures: &[Procedure], sheet: &Sheet) -> Vec<String> {
        let Ok(specs) = self.specs(sheet) else { return Vec::new() };
        let fitting = procedures.iter().filter(|procedure| check(procedure, &specs).is_empty());
        fitting.map(|procedure| procedure.checklist.title.clone()).collect()
    }

    /// The id of the checklist that a sheet is made for: the first that it fits, else the first there is.
    pub(super) fn made_for(&self, procedures: &[Procedure], sheet: &Sheet) -> String {
        let specs = self.specs(sheet).ok();
        let fitting = procedures
            .iter()
            .find(|procedure| specs.as_ref().is_some_and(|specs| check(procedure, specs).is_empty()));
        fitting.or(procedures.first()).map(|one| one.checklist.id.clone()).unwrap_or_default()
    }

    /// The checklists that a sheet can be made for, one of each id. Of those of the shop what is taken in goes before what
    /// is adopted: a sheet that fits it is what its proof waits for.
    pub(crate) fn procedures(&self, shelf: Shelf<'_>) -> Result<Vec<Procedure>, BayError> {
        let load = |bytes: &&[u8]| Procedure::load(bytes).map_err(BayError::Checklist);
        let mut procedures = shelf.checklists.iter().map(load).collect::<Result<Vec<_>, _>>()?;
        for own in self.own_checklists(shelf)?.checklists {
            let id = &own.procedure.checklist.id;
            match procedures.iter().position(|one| one.checklist.id == *id) {
                Some(at) if !own.adopted => procedures[at] = own.procedure,
                Some(_) => {}
                None => procedures.push(own.procedure),
            }
        }
        Ok(procedures)
    }

    /// The checklist of an id that a sheet can be made for.
    pub(super) fn asking(&self, shelf: Shelf<'_>, id: &str) -> Result<Procedure, BayError> {
        if let Ok(bytes) = shelf.checklist(id) {
            return Procedure::load(bytes).map_err(BayError::Checklist);
        }
        let found = self.procedures(shelf)?.into_iter().find(|one| one.checklist.id == id);
        found.ok_or_else(|| BayError::NotOnShelf(id.to_owned()))
    }

    /// What the checklists say of their keys.
    pub(super) fn keys_of(&self, shelf: Shelf<'_>) -> Result<Keys, BayError> {
        Ok(keys(&self.procedures(shelf)?))
    }

    /// What the checklist of a sheet asks for on its vehicle; nothing where it is here no more.
    pub(super) fn needs_of(&self, shelf: Shelf<'_>, typed: &TypedSheet) -> Result<Needs, BayError> {
        match self.asking(shelf, &typed.checklist) {
            Ok(procedure) => Ok(needs(&procedure, &|key| typed.word(key))),
            Err(BayError::NotOnShelf(_)) => Ok(Needs::new()),
            Err(error) => Err(error),
        }
    }
}
