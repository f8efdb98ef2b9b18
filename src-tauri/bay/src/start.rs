//! Starting a job: checklist and sheet are pinned by hash, the vehicle is taken in as it comes.

use std::collections::BTreeMap;

use panside_job::event::PinnedTexts;
use panside_job::start::{Intake, start};
use panside_job::{Actor, size};
use panside_journal::{Hash, Head, JobId, Origin, RequestId};
use panside_procedure::Procedure;
use panside_procedure::format::Texts;
use panside_procedure::load::{self, Fit};

use crate::prove::{Ask, CHECKLIST, Proved};
use crate::sheets::SHEET;
use crate::texts::TEXTS;
use crate::{Bay, BayError};

/// What a job is started with, beside its checklist.
#[derive(Debug, Clone)]
pub struct NewJob<'a> {
    /// The spec sheet's bytes.
    pub sheet: &'a [u8],
    /// The bytes of the checklist's texts in another language; none where it is walked in its own words.
    pub texts: Option<&'a [u8]>,
    /// Number of the repair order.
    pub repair_order: &'a str,
    /// What the job is called in the list.
    pub label: &'a str,
    /// How the vehicle comes in, where that is not the first value.
    pub conditions: BTreeMap<String, String>,
    /// Minutes that the shop's wall clock is ahead of UTC.
    pub utc_offset_min: i32,
}

impl Bay {
    /// Starts a job.
    ///
    /// # Errors
    /// [`BayError::Sheet`] and [`BayError::SheetLacks`] for the spec sheet, [`BayError::ShopLacks`] for what it leaves to
    /// the shop; [`BayError::Texts`] for the texts;
    /// [`BayError::Refused`] when the vehicle may
    /// not come in like that or who starts is not of the shop; [`BayError::Store`] with what the disk said.
    pub fn start(
        &mut self,
        checklist: &Proved,
        new: &NewJob<'_>,
        actor: &Actor,
        request: RequestId,
    ) -> Result<JobId, BayError> {
        size::check(actor)?;
        let sheet = load::sheet(new.sheet).map_err(BayError::Sheet)?;
        if Fit::of(&checklist.procedure, &sheet).map_err(BayError::SheetLacks)? != *checklist.procedure.fit()
        {
            return Err(BayError::NotProvedYet);
        }
        let specs = self.specs(&sheet)?;
        let lacks = panside_job::sheet::check(&checklist.procedure, &specs);
        if !lacks.is_empty() {
            return Err(BayError::SheetLacks(lacks.into_iter().map(|lack| lack.message).collect()));
        }
        // A translation is one of the whole checklist, also of what only other vehicles have.
        let texts = new.texts.map(|bytes| {
            let whole = Procedure::load(&checklist.bytes).map_err(BayError::Checklist)?;
            Texts::checked(&whole.checklist, bytes).map_err(BayError::Texts)
        });
        let texts = texts.transpose()?;
        let mut intake = Intake {
            checklist_hash: Hash::of(&checklist.bytes),
            sheet_hash: Hash::of(new.sheet),
            texts: texts
                .zip(new.texts)
                .map(|(texts, bytes)| PinnedTexts { language: texts.language, hash: Hash::of(bytes) }),
            conditions: new.conditions.clone(),
            repair_order: new.repair_order.to_owned(),
            label: new.label.to_owned(),
            utc_offset_min: new.utc_offset_min,
        };
        // The job has the command's own id: the same command sent twice starts one job.
        let job = JobId(request.0);
        let asked = panside_journal::Request { id: request, hash: Hash::of(&serde_json::to_vec(&intake)?) };
        if self.store.answered(job, &asked)?.is_some() {
            return Ok(job);
        }
        let whole = self.with_shop_values(&checklist.procedure, &sheet, new.utc_offset_min)?;
        let (specs, text) = match whole {
            Some(sheet) => (self.specs(&sheet)?, serde_json::to_vec_pretty(&sheet)?),
            None => (specs, new.sheet.to_vec()),
        };
        // A second try is known by the sheet that was chosen, whatever the shop has changed meanwhile.
        intake.sheet_hash = Hash::of(&text);
        let by = self.people()?.roster().acting(*actor);
        let started =
            by.and_then(|by| start(&checklist.procedure, &specs, &intake, by)).map_err(BayError::from)?;
        // Pinned before the event that names them.
        self.store.put_document(CHECKLIST, &checklist.bytes)?;
        self.store.put_document(SHEET, &text)?;
        if let Some(texts) = new.texts {
            self.store.put_document(TEXTS, texts)?;
        }
        let origin = Origin { request: asked, who: actor.id, stamp: self.clock.now() };
        self.append(job, Head::NONE, &origin, &[started])?;
        Ok(job)
    }

    /// Starts a job with a checklist whose proof, of what is asked, is kept.
    ///
    /// # Errors
    /// [`BayError::NotProvedYet`] when no proof is kept; else those of [`Bay::start`].
    pub fn start_proved(
        &mut self,
        checklist: &[u8],
        ask: Ask,
        new: &NewJob<'_>,
        actor: &Actor,
        request: RequestId,
    ) -> Result<JobId, BayError> {
        let proved = self.proved(checklist, new.sheet, ask)?.ok_or(BayError::NotProvedYet)?;
        self.start(&proved, new, actor, request)
    }
}
