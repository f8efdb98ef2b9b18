//! Spec sheets of the shop: made from what a checklist asks for or as a copy, edited revision by revision, checked by a
//! second person. A job keeps the text it was started with, whatever becomes of the sheet.

mod asked;
mod files;
mod found;

use std::collections::BTreeSet;

pub(crate) use files::{LONGEST_ID, names_file};
use panside_job::Actor;
use panside_job::clock::civil_date;
use panside_job::event::Pinned;
use panside_job::sheet::{By, checked, id_of, keys, to_check, view};
pub use panside_job::sheet::{
    SheetValueView, SheetView, Taken, Typed, TypedCoil, TypedPoint, TypedSheet, TypedValue,
};
use panside_journal::{Hash, PersonId};
use panside_messages::{Arg, Message};
use panside_procedure::Procedure;
use panside_procedure::format::Sheet;
use panside_procedure::load;
use panside_shop::{ShopCommand, Thing};
use panside_store::With;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::message::{bay_sheet_field, bay_taken_from};
use crate::shelf::Shelf;
use crate::{Bay, BayError};

/// As what a sheet's text is kept.
pub(crate) const SHEET: &str = "sheet";

/// What the shop has of spec sheets.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct SheetList {
    /// Sheets that a job can be started with, by title.
    pub sheets: Vec<SheetLine>,
    /// New sheets that are typed and not kept yet.
    pub unfinished: Vec<UnfinishedSheet>,
    /// What a new one can be made for: id and title of each checklist.
    pub checklists: Vec<(String, String)>,
    /// Sheets in the store that this version can't read, as sentences.
    pub unreadable: Vec<String>,
}

/// One sheet in its newest revision.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct SheetLine {
    /// Its id.
    pub id: String,
    /// Which vehicles it is for.
    pub title: String,
    /// Its revision.
    pub revision: u32,
    /// Invented content.
    pub demo: bool,
    /// It belongs to the program and is never changed; a copy of it can be.
    pub built_in: bool,
    /// Number of its values that a second person compares with their sources.
    pub to_check: usize,
    /// How many of those a second person has compared.
    pub checked: usize,
    /// A change of it is typed and not kept yet.
    pub unfinished: bool,
    /// Titles of the checklists that it fits.
    pub fits: Vec<String>,
}

/// A new sheet that is not kept yet.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct UnfinishedSheet {
    /// The draft's name.
    pub draft: String,
    /// Its title so far.
    pub title: String,
}

/// What a sheet is typed from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SheetFrom {
    /// Blank, with the keys that a checklist asks for.
    Checklist(String),
    /// A new one that begins with the values of another.
    Copy(String),
    /// A change of a sheet of the shop.
    Edit(String),
}

/// A sheet as a screen shows it.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct SheetPage {
    /// Its values as text.
    pub typed: TypedSheet,
    /// It is being typed and not kept yet; else it is as it was kept.
    pub typing: bool,
    /// It belongs to the program.
    pub built_in: bool,
    /// Titles of the checklists that it fits; none while it is typed.
    pub fits: Vec<String>,
    /// While it is typed: what it can be made for, id and title of each checklist.
    pub checklists: Vec<(String, String)>,
    /// What stands beside the text: what is wrong, who entered what, whose check stands.
    pub view: SheetView,
}

impl Bay {
    /// The shop's sheets and those of the shelf.
    ///
    /// # Errors
    /// [`BayError::Checklist`], [`BayError::Sheet`] for what the shelf has and does not load; [`BayError::Store`]
    /// with what the disk said.
    pub fn sheets(&self, shelf: Shelf<'_>) -> Result<SheetList, BayError> {
        let procedures = self.procedures(shelf)?;
        let found = self.found_sheets(shelf)?;
        let drafts = self.store.sheet_drafts()?;
        let keys = keys(&procedures);
        let lines = found.sheets.iter().map(|(sheet, built_in)| SheetLine {
            id: sheet.id.clone(),
            title: sheet.title.clone(),
            revision: sheet.revision,
            demo: sheet.demo,
            built_in: *built_in,
            to_check: to_check(sheet, &keys).count(),
            checked: to_check(sheet, &keys).filter(|value| value.checked.is_some()).count(),
            unfinished: drafts.contains_key(&sheet.id),
            fits: self.fits(&procedures, sheet),
        });
        let new = drafts.iter().filter(|(draft, _)| is_new(draft));
        let unfinished = new.map(|(draft, text)| {
            let typed: TypedSheet = serde_json::from_str(text)?;
            Ok(UnfinishedSheet { draft: draft.clone(), title: typed.title })
        });
        Ok(SheetList {
            sheets: lines.collect(),
            unfinished: unfinished.collect::<Result<_, BayError>>()?,
            checklists: titles(&procedures),
            unreadable: found.unreadable,
        })
    }

    /// A sheet as it was kept, in its newest revision.
    ///
    /// # Errors
    /// [`BayError::NotOnShelf`] when there is none; else as [`Bay::sheets`].
    pub fn sheet(&self, shelf: Shelf<'_>, id: &str) -> Result<SheetPage, BayError> {
        let (sheet, built_in) = self.found_sheet(shelf, id)?;
        let procedures = self.procedures(shelf)?;
        let typed = self.typed_of(&sheet, &self.made_for(&procedures, &sheet))?;
        let fits = self.fits(&procedures, &sheet);
        Ok(self.sheet_page(shelf, typed, Some(&sheet), (false, built_in), fits))
    }

    /// Begins to type a sheet, or goes on with a change of it that was begun before.
    ///
    /// # Errors
    /// [`BayError::SheetBuiltIn`] for a change of a sheet of the program; else as [`Bay::sheet`].
    pub fn begin_sheet(&mut self, shelf: Shelf<'_>, from: &SheetFrom) -> Result<SheetPage, BayError> {
        let typed = match from {
            SheetFrom::Checklist(id) => {
                self.asking(shelf, id)?;
                self.new_typed(TypedSheet { checklist: id.clone(), ..TypedSheet::blank() })?
            }
            SheetFrom::Copy(id) => {
                let (sheet, _) = self.found_sheet(shelf, id)?;
                let checklist = self.made_for(&self.procedures(shelf)?, &sheet);
                let from = self.speaker.say(&bay_taken_from(sheet.title.as_str(), sheet.revision));
                self.new_typed(TypedSheet::copy_of(&sheet, &checklist, &from))?
            }
            SheetFrom::Edit(id) => {
                if self.store.sheet_drafts()?.contains_key(id) {
                    return self.typed_sheet(shelf, id);
                }
                let (sheet, built_in) = self.found_sheet(shelf, id)?;
                if built_in {
                    return Err(BayError::SheetBuiltIn(id.clone()));
                }
                self.typed_of(&sheet, &self.made_for(&self.procedures(shelf)?, &sheet))?
            }
        };
        self.type_sheet(shelf, typed)
    }

    /// A sheet as far as it is typed.
    ///
    /// # Errors
    /// [`BayError::SheetDraft`] when nothing is typed under that name; else as [`Bay::sheet`].
    pub fn typed_sheet(&self, shelf: Shelf<'_>, draft: &str) -> Result<SheetPage, BayError> {
        let typed = self.sheet_draft(draft)?;
        let typed = typed.clone().completed(&self.needs_of(shelf, &typed)?);
        self.typing_page(shelf, typed)
    }

    /// Keeps what is typed, whatever it is, and answers what is to be said about it.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said.
    pub fn type_sheet(&mut self, shelf: Shelf<'_>, typed: TypedSheet) -> Result<SheetPage, BayError> {
        let needs = self.needs_of(shelf, &typed)?;
        let typed = typed.completed(&needs);
        self.store.put_sheet_draft(&typed.draft, &serde_json::to_string(&typed)?)?;
        self.typing_page(shelf, typed)
    }

    /// Forgets what is typed of a sheet. What was kept of it stays.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said.
    pub fn drop_sheet(&mut self, draft: &str) -> Result<(), BayError> {
        Ok(self.store.clear_sheet_draft(draft)?)
    }

    /// Keeps what is typed as the sheet's next revision, entered by `actor` today, and answers the sheet's id.
    ///
    /// # Errors
    /// [`BayError::NoPerson`]; [`BayError::SheetNotKept`] with everything that is wrong; [`BayError::Shop`] when another
    /// revision was kept since this one was begun; [`BayError::Store`] with what the disk said.
    pub fn keep_sheet(
        &mut self,
        shelf: Shelf<'_>,
        draft: &str,
        actor: &Actor,
        utc_offset_min: i32,
    ) -> Result<String, BayError> {
        let typed = self.sheet_draft(draft)?;
        let needs = self.needs_of(shelf, &typed)?;
        let before = self.before(&typed)?;
        let found = self.found_sheets(shelf)?;
        let shop = self.shop()?;
        let ours = shop.sheets();
        let taken = |id: &str| ours.contains_key(id) || found.sheets.iter().any(|(sheet, _)| sheet.id == id);
        let id = typed.id.clone().unwrap_or_else(|| id_of(&typed.title, &taken));
        let day = self.day(utc_offset_min);
        let people = self.people()?;
        let by = By { id: actor.id, name: &people.person(actor.id)?.name, day: &day };
        let mut sheet =
            typed.keep(before.as_ref(), (&needs, &self.keys_of(shelf)?), &id, by).map_err(|problems| {
                let named = |(key, message): (String, Message)| match key.as_str() {
                    "" => message,
                    key => bay_sheet_field(key, Arg::Sentences(vec![message])),
                };
                BayError::SheetNotKept(problems.into_iter().map(named).collect())
            })?;
        sheet.revision = sheet.revision.max(shop.next_revision(&id));
        let text = serde_json::to_vec_pretty(&sheet)?;
        let seen = (typed.made_from, typed.seen);
        self.put_sheet((&sheet, &text), seen, actor.id, &[With::SheetTyped(draft)])?;
        Ok(id)
    }

    /// Keeps that `actor` compared the values of some keys with their sources, as the sheet's next revision.
    ///
    /// # Errors
    /// [`BayError::SheetBuiltIn`]; [`BayError::NoPerson`]; [`BayError::SheetCheck`] when the person entered a value, or it is checked
    /// already; [`BayError::PinAsked`] when they have a PIN and have not given it; [`BayError::Shop`] when another revision
    /// was kept since `seen`; [`BayError::Store`] with what the disk said.
    pub fn check_sheet(
        &mut self,
        shelf: Shelf<'_>,
        (id, seen): (&str, BTreeSet<Hash>),
        keys: &[String],
        actor: &Actor,
        utc_offset_min: i32,
    ) -> Result<(), BayError> {
        let (sheet, built_in) = self.found_sheet(shelf, id)?;
        if built_in {
            return Err(BayError::SheetBuiltIn(id.to_owned()));
        }
        let day = self.day(utc_offset_min);
        let people = self.people()?;
        let by = By { id: actor.id, name: &people.person(actor.id)?.name, day: &day };
        let pin = self.pin_of(actor.id)?;
        let made_from = self.shop()?.sheets().get(id).map(|kept| kept.sheet.hash);
        let mut next = checked(&sheet, keys, &self.keys_of(shelf)?, by, pin == Some(true))
            .map_err(BayError::SheetCheck)?;
        if pin == Some(false) {
            return Err(BayError::PinAsked { person: by.id, name: by.name.to_owned() });
        }
        next.revision = next.revision.max(self.shop()?.next_revision(id));
        let text = serde_json::to_vec_pretty(&next)?;
        self.put_sheet((&next, &text), (made_from, seen), actor.id, &[])?;
        self.given.use_up(actor.id);
        Ok(())
    }

    fn sheet_draft(&self, draft: &str) -> Result<TypedSheet, BayError> {
        let text = self.store.sheet_drafts()?.remove(draft).ok_or(BayError::SheetDraft)?;
        Ok(serde_json::from_str(&text)?)
    }

    /// The revision that is edited.
    fn before(&self, typed: &TypedSheet) -> Result<Option<Sheet>, BayError> {
        let Some(hash) = &typed.made_from else { return Ok(None) };
        load::sheet(&self.pinned(hash, SHEET)?).map(Some).map_err(BayError::Sheet)
    }

    /// A kept sheet as it is typed on: with its content, and what the shop last said of it.
    fn typed_of(&self, sheet: &Sheet, checklist: &str) -> Result<TypedSheet, BayError> {
        let made_from = self.shop()?.sheets().get(sheet.id.as_str()).map(|kept| kept.sheet.hash);
        let seen = self.heads_of(&Thing::Sheet(sheet.id.clone()))?;
        Ok(TypedSheet { made_from, seen, ..TypedSheet::of(sheet, checklist) })
    }

    /// A new sheet under a draft's name that nobody has.
    fn new_typed(&self, typed: TypedSheet) -> Result<TypedSheet, BayError> {
        let drafts = self.store.sheet_drafts()?;
        let draft = (1..).map(|number: u32| format!("{NEW}{number}")).find(|name| !drafts.contains_key(name));
        Ok(TypedSheet { draft: draft.unwrap_or_default(), ..typed })
    }

    fn typing_page(&self, shelf: Shelf<'_>, typed: TypedSheet) -> Result<SheetPage, BayError> {
        let before = self.before(&typed)?;
        Ok(self.sheet_page(shelf, typed, before.as_ref(), (true, false), Vec::new()))
    }

    fn sheet_page(
        &self,
        shelf: Shelf<'_>,
        typed: TypedSheet,
        before: Option<&Sheet>,
        (typing, built_in): (bool, bool),
        fits: Vec<String>,
    ) -> SheetPage {
        let needs = self.needs_of(shelf, &typed).unwrap_or_default();
        let procedures = self.procedures(shelf).unwrap_or_default();
        let keys = keys(&procedures);
        let mut view = view(&typed, before, &needs, &keys);
        view.each_message(&mut |message| self.speaker.fill(message));
        let checklists = if typing { titles(&procedures) } else { Vec::new() };
        SheetPage { typed, typing, built_in, fits, checklists, view }
    }

    /// Keeps a revision that `who` made of the content `made_from`, having seen these events about the sheet.
    pub(crate) fn put_sheet(
        &mut self,
        (sheet, text): (&Sheet, &[u8]),
        (made_from, seen): (Option<Hash>, BTreeSet<Hash>),
        who: PersonId,
        with: &[With<'_>],
    ) -> Result<(), BayError> {
        let pinned = Pinned { id: sheet.id.clone(), revision: sheet.revision, hash: Hash::of(text) };
        let command = ShopCommand::KeepSheet { sheet: pinned, made_from, seen };
        let Some(event) = self.decide_shop(who, &command)? else { return Ok(()) };
        // Kept before the event that names it.
        self.store.put_document(SHEET, text)?;
        self.write_shop(who, &event, with)
    }

    /// Today on the shop's calendar.
    pub(crate) fn day(&self, utc_offset_min: i32) -> String {
        civil_date(self.clock.now().wall_ms, utc_offset_min).to_string()
    }
}

/// What the name of a new sheet's draft begins with; no id does.
const NEW: char = '+';

/// Id and title of each checklist.
fn titles(procedures: &[Procedure]) -> Vec<(String, String)> {
    procedures.iter().map(|one| (one.checklist.id.clone(), one.checklist.title.clone())).collect()
}

fn is_new(draft: &str) -> bool {
    draft.starts_with(NEW)
}
