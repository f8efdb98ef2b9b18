//! Checklists of the shop: taken in from a file, proved, adopted by a person, and from then on offered beside those that the
//! program carries. A job keeps the text it was started with, whatever becomes of the checklist.

use std::cell::Cell;
use std::collections::{BTreeMap, BTreeSet};
use std::ops::ControlFlow;

use panside_job::Specs;
use panside_job::event::Pinned;
use panside_job::sheet::needs;
use panside_journal::{Hash, PersonId};
use panside_procedure::load::Fit;
use panside_procedure::proof::{Ask, Progress};
use panside_procedure::{Procedure, parts};
use panside_shop::{ShopCommand, Thing};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::prove::{CHECKLIST, hangs_on_vehicle, search_without_sheet};
use crate::setup::one_of_the_shop;
use crate::sheets::{LONGEST_ID, names_file};
use crate::shelf::{ChecklistOffer, Shelf};
use crate::{Bay, BayError};

/// Under which key of the tablet stands what was taken in and is not adopted yet.
const TAKEN_IN: &str = "checklists_taken_in";

/// What was taken in and is not adopted yet: by the checklist's id the hash of its text.
type TakenIn = BTreeMap<String, Hash>;

/// The checklists there are.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct ChecklistList {
    /// Those of the program, then those of the shop.
    pub checklists: Vec<ChecklistLine>,
    /// Checklists of the shop that can't be used, as sentences.
    pub unreadable: Vec<String>,
}

/// A revision of a checklist as the shop setup lists it.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct ChecklistLine {
    /// What a job with it would be, and the spec sheets that fit it.
    pub offer: ChecklistOffer,
    /// The program carries it.
    pub built_in: bool,
    /// The shop has adopted it; another one of the shop is only taken in.
    pub adopted: bool,
    /// It is proved for the vehicle of at least one sheet, or for every vehicle where it hangs on none.
    pub proved: bool,
    /// For which spec sheets a proof is still to be made, by id: one for all that say the same of what the proof hangs on.
    /// None stands for every vehicle, where no sheet fits and it hangs on no vehicle.
    pub to_prove: Vec<Option<String>>,
    /// What it asks of a spec sheet, as people read it.
    pub needs: Vec<String>,
    /// The newest events about it that this shows; adopting it names them.
    pub seen: BTreeSet<Hash>,
}

/// The shop's checklists that load.
pub(crate) struct Own {
    pub checklists: Vec<OwnChecklist>,
    pub unreadable: Vec<String>,
}

/// A checklist of the shop.
pub(crate) struct OwnChecklist {
    pub hash: Hash,
    pub procedure: Procedure,
    pub adopted: bool,
}

impl Bay {
    /// The checklists of the shelf and those of the shop: what it has adopted, and what is taken in and not adopted yet.
    ///
    /// # Errors
    /// [`BayError::Checklist`], [`BayError::Sheet`] for what the shelf has and does not load; [`BayError::Store`] with
    /// what the disk said.
    pub fn checklists(&self, shelf: Shelf<'_>, ask: Ask) -> Result<ChecklistList, BayError> {
        let sheets = self.all_specs(shelf)?;
        let mut lines = Vec::new();
        for bytes in shelf.checklists {
            let procedure = Procedure::load(bytes).map_err(BayError::Checklist)?;
            let line = self.checklist_line(Hash::of(bytes), &procedure, &sheets, ask)?;
            lines.push(ChecklistLine { built_in: true, ..line });
        }
        let own = self.own_checklists(shelf)?;
        for one in own.checklists {
            let line = self.checklist_line(one.hash, &one.procedure, &sheets, ask)?;
            lines.push(ChecklistLine { adopted: one.adopted, ..line });
        }
        Ok(ChecklistList { checklists: lines, unreadable: own.unreadable })
    }

    /// Takes in a checklist from the bytes of its file, to be proved and adopted, and answers the hash of its text. It may
    /// use parts of the shelf; what is kept is the whole. One that was taken in before under the same id and is not
    /// adopted is replaced.
    ///
    /// # Errors
    /// [`BayError::Checklist`] with everything that is wrong in the file, [`BayError::ChecklistParts`],
    /// [`BayError::ChecklistId`]; [`BayError::ChecklistBuiltIn`] for an id of the shelf; [`BayError::Store`] with what the
    /// disk said.
    pub fn take_in_checklist(&mut self, shelf: Shelf<'_>, bytes: &[u8]) -> Result<Hash, BayError> {
        let lacks_part = Cell::new(false);
        let part = |name: &str| {
            let found = shelf.part(name).map(<[u8]>::to_vec);
            lacks_part.set(lacks_part.get() || found.is_none());
            found
        };
        let joined = parts::join(bytes, &part).map_err(|problems| match lacks_part.get() {
            true => BayError::ChecklistParts(problems),
            false => BayError::Checklist(problems),
        })?;
        let id = joined.load().map_err(BayError::Checklist)?.checklist.id;
        if !names_file(&id) {
            return Err(BayError::ChecklistId(id.chars().take(LONGEST_ID).collect()));
        }
        if shelf.checklist(&id).is_ok() {
            return Err(BayError::ChecklistBuiltIn(id));
        }
        let hash = self.store.put_document(CHECKLIST, joined.text.as_bytes())?;
        let mut taken_in = self.taken_in()?;
        taken_in.insert(id, hash);
        self.put_taken_in(&taken_in)?;
        Ok(hash)
    }

    /// Makes every proof that a checklist still needs before it is adopted, one after the other. A window makes them one by
    /// one with [`crate::prove::search`] instead.
    ///
    /// # Errors
    /// [`BayError::NeedsSheet`]; those of [`Bay::prove`] for the first that fails; [`BayError::NotOnShelf`] when there is no
    /// such checklist.
    pub fn prove_checklist(
        &mut self,
        shelf: Shelf<'_>,
        checklist: &Hash,
        ask: Ask,
        progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<(), BayError> {
        let line = self.checklist(shelf, checklist, ask)?;
        if !line.proved && line.to_prove.is_empty() {
            return Err(BayError::NeedsSheet { id: line.offer.id });
        }
        let bytes = self.offered(shelf, checklist)?;
        for sheet in line.to_prove {
            match sheet {
                Some(id) => self.prove(&bytes, &self.sheet_text(shelf, &id)?, ask, progress)?,
                None => self.keep_proof(search_without_sheet(&bytes, ask, progress)?)?,
            };
        }
        Ok(())
    }

    /// Has jobs started with a checklist that was taken in from now on; `who` of the shop says so.
    ///
    /// # Errors
    /// [`BayError::AdoptNotProved`]; [`BayError::ChecklistBuiltIn`] for one of the program; [`BayError::Shop`] for somebody
    /// who is not of the shop, when the checklist was changed since `seen`, or when another text is its revision;
    /// [`BayError::NotOnShelf`] when there is none; [`BayError::Store`] with what the disk said.
    pub fn adopt_checklist(
        &mut self,
        shelf: Shelf<'_>,
        (checklist, seen): (&Hash, BTreeSet<Hash>),
        ask: Ask,
        who: Option<PersonId>,
    ) -> Result<(), BayError> {
        let ChecklistLine { offer, built_in, proved, .. } = self.checklist(shelf, checklist, ask)?;
        let who = one_of_the_shop(who)?;
        if built_in {
            return Err(BayError::ChecklistBuiltIn(offer.id));
        }
        if !proved {
            return Err(BayError::AdoptNotProved(offer.id));
        }
        let pinned = Pinned { id: offer.id.clone(), revision: offer.revision, hash: *checklist };
        self.change_shop(who, &ShopCommand::AdoptChecklist { checklist: pinned, seen }, &[])?;
        self.drop_checklist(&offer.id)
    }

    /// Forgets that a checklist was taken in. One that is adopted stays.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said.
    pub fn drop_checklist(&mut self, id: &str) -> Result<(), BayError> {
        let mut taken_in = self.taken_in()?;
        if taken_in.remove(id).is_some() {
            self.put_taken_in(&taken_in)?;
        }
        Ok(())
    }

    /// Writes a checklist into the store's folder `checklists`, byte for byte as it is proved, and answers the file's path.
    ///
    /// # Errors
    /// [`BayError::Checklist`] for what is none, [`BayError::Store`] with what the disk said.
    pub fn export_checklist(&self, shelf: Shelf<'_>, checklist: &Hash) -> Result<String, BayError> {
        let text = self.offered(shelf, checklist)?;
        let procedure = Procedure::load(&text).map_err(BayError::Checklist)?;
        let (id, revision) = (&procedure.checklist.id, procedure.checklist.revision);
        let path = self.store.put_checklist_file(&format!("{id}-{revision}.checklist.json"), &text)?;
        Ok(path.to_string_lossy().into_owned())
    }

    /// The shop's checklists: of each id what is adopted, then what is taken in.
    pub(crate) fn own_checklists(&self, shelf: Shelf<'_>) -> Result<Own, BayError> {
        let shop = self.shop()?;
        let adopted = shop.checklists();
        let adopted: TakenIn =
            adopted.iter().map(|(id, one)| ((*id).to_owned(), one.checklist.hash)).collect();
        let mut taken_in = self.taken_in()?;
        taken_in.retain(|id, hash| adopted.get(id) != Some(hash));
        let both = adopted.iter().map(|(id, hash)| (id, hash, true));
        let both = both.chain(taken_in.iter().map(|(id, hash)| (id, hash, false)));
        let mut own = Own { checklists: Vec::new(), unreadable: Vec::new() };
        for (id, hash, adopted) in both {
            match self.own_checklist(shelf, id, hash) {
                Ok(procedure) => own.checklists.push(OwnChecklist { hash: *hash, procedure, adopted }),
                Err(error) => own.unreadable.push(format!("{id}: {}", self.speaker.say(&error.message()))),
            }
        }
        let order = |one: &OwnChecklist| (one.procedure.checklist.title.clone(), !one.adopted);
        own.checklists.sort_by_key(order);
        Ok(own)
    }

    /// A later version of the program may carry an id that the shop has: what is proved there counts.
    fn own_checklist(&self, shelf: Shelf<'_>, id: &str, hash: &Hash) -> Result<Procedure, BayError> {
        if shelf.checklist(id).is_ok() {
            return Err(BayError::ChecklistBuiltIn(id.to_owned()));
        }
        Procedure::load(&self.pinned(hash, CHECKLIST)?).map_err(BayError::Checklist)
    }

    /// One of the checklists there are, by the hash of its text.
    ///
    /// # Errors
    /// [`BayError::NotOnShelf`] when there is none; else as [`Bay::checklists`].
    pub fn checklist(&self, shelf: Shelf<'_>, checklist: &Hash, ask: Ask) -> Result<ChecklistLine, BayError> {
        let list = self.checklists(shelf, ask)?.checklists;
        let found = list.into_iter().find(|line| line.offer.hash == *checklist);
        found.ok_or_else(|| BayError::NotOnShelf(checklist.to_string()))
    }

    fn checklist_line(
        &self,
        hash: Hash,
        procedure: &Procedure,
        sheets: &[Specs],
        ask: Ask,
    ) -> Result<ChecklistLine, BayError> {
        let offer = self.offer_of(hash, procedure, sheets, ask)?;
        let on_any = !hangs_on_vehicle(procedure);
        let proved = offer.proved || on_any && self.proof_of(&hash, &Fit::default(), ask)?.is_some();
        let to_prove = match offer.sheets.is_empty() && on_any && !proved {
            true => vec![None],
            false => to_prove(procedure, &offer, sheets),
        };
        let checklist = &procedure.checklist;
        let needs = needs(procedure, &|_| None).into_keys();
        Ok(ChecklistLine {
            proved,
            to_prove,
            needs: needs.map(|key| checklist.sheet_label(&key).to_owned()).collect(),
            seen: self.heads_of(&Thing::Checklist(checklist.id.clone()))?,
            offer,
            built_in: false,
            adopted: false,
        })
    }

    fn taken_in(&self) -> Result<TakenIn, BayError> {
        let text = self.store.setting(TAKEN_IN)?;
        Ok(text.map_or_else(|| Ok(TakenIn::new()), |text| serde_json::from_str(&text))?)
    }

    fn put_taken_in(&mut self, taken_in: &TakenIn) -> Result<(), BayError> {
        Ok(self.store.put_setting(TAKEN_IN, &serde_json::to_string(taken_in)?)?)
    }
}

/// One sheet of each kind of vehicle for which there is no proof.
fn to_prove(procedure: &Procedure, offer: &ChecklistOffer, sheets: &[Specs]) -> Vec<Option<String>> {
    let (mut fits, mut ids) = (Vec::new(), Vec::new());
    for open in offer.sheets.iter().filter(|sheet| !sheet.proved) {
        let specs = sheets.iter().find(|specs| specs.sheet.id == open.id);
        let fit = specs.and_then(|specs| Fit::of(procedure, &specs.sheet).ok());
        if !fits.contains(&fit) {
            fits.push(fit);
            ids.push(Some(open.id.clone()));
        }
    }
    ids
}
