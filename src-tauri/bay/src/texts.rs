//! The translation that a job is walked with: pinned by hash as checklist and sheet are, but not needed to go on.

use panside_job::event::PinnedTexts;
use panside_journal::JobId;
use panside_procedure::Procedure;
use panside_procedure::format::Texts;

use crate::message::bay_own_words;
use crate::{Bay, BayError};

/// Under which kind a checklist's texts in another language are kept.
pub(crate) const TEXTS: &str = "texts";

impl Bay {
    /// A checklist in the words that a job pinned. Where they can't be read it is shown in its own, and that is said: the
    /// rules are the same.
    pub(crate) fn in_its_words(
        &mut self,
        job: JobId,
        procedure: Procedure,
        pinned: Option<&PinnedTexts>,
    ) -> Procedure {
        let Some(PinnedTexts { language, hash }) = pinned else { return procedure };
        let texts = self.pinned(hash, TEXTS);
        match texts.and_then(|bytes| Texts::read(&bytes).map_err(BayError::Texts)) {
            Ok(texts) => procedure.in_words_of(&texts),
            Err(error) => {
                let said = bay_own_words(job.to_string(), language, error.message());
                if !self.mended.contains(&said) {
                    self.mended.push(said);
                }
                procedure
            }
        }
    }
}
