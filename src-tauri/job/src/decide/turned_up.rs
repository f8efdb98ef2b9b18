//! Commands about what turns up outside of the checklist.
//!
//! That something was found, or that a piece is off, is a fact: it is taken down in any state of the job. An open question
//! and an open finding only forbid (that a step is done, that the job is finished), so that what was proved of the rules
//! still holds; a piece that is off is known to the Machine, which the proof shares.

use panside_journal::Stamp;
use panside_procedure::Shown;
use panside_procedure::format::{Ask, entry};
use panside_procedure::machine::StepIx;

use super::draft::{Draft, reason};
use crate::command::Refusal;
use crate::entry::{self as entries, Classified, Context, answered, named};
use crate::event::{
    Answered, Asked, DealtWith, Event, Found, PieceBack, PieceGone, PieceOff, TakenBack, WentOn,
};
use crate::job::Job;
use crate::message::*;
use crate::turned_up::{MOST_PIECES, Piece, Standing, Supplement, brought_by};
use crate::value::{Accounted, Authorized, EntryValue, EstimateLines, Urgency};

impl Draft<'_> {
    pub fn found(
        &mut self,
        text: &str,
        at: Option<&str>,
        urgency: Urgency,
        photos: &[EntryValue],
    ) -> Result<(), Refusal> {
        self.goes_on_still()?;
        let found = Found { text: said(text)?, at: filled(at), urgency, photos: self.photos(photos)? };
        self.events.push(found.into());
        Ok(())
    }

    pub fn dealt_with(&mut self, found: u64, text: &str) -> Result<(), Refusal> {
        self.goes_on_still()?;
        let finding = brought_by(&self.job.turned_up.found, found);
        let finding = finding.ok_or_else(|| Refusal::from(refused_no_such("found", found.to_string())))?;
        if finding.taken_back.is_some() {
            return Err(refused_taken_back(&finding.found.text).into());
        }
        if finding.dealt_with.is_some() {
            return Err(refused_dealt_with(&finding.found.text).into());
        }
        self.events.push(DealtWith { found, text: said(text)? }.into());
        Ok(())
    }

    pub fn ask_customer(
        &mut self,
        id: &str,
        text: &str,
        found: Option<u64>,
        lines: &EstimateLines,
    ) -> Result<(), Refusal> {
        self.goes_on_still()?;
        let (step, _) = self.step(id)?;
        self.can_wait(step)?;
        let text = said(text)?;
        if let Some(found) = found
            && brought_by(&self.job.turned_up.found, found).is_none_or(|one| one.taken_back.is_some())
        {
            return Err(refused_no_such("found", found.to_string()).into());
        }
        let judged = self.estimated(lines)?;
        let (EntryValue::Estimate(lines), Some(worked_out)) = (judged.value, judged.worked_out) else {
            return Err(estimate_empty().into());
        };
        self.events.push(Asked { step: id.to_owned(), text, found, lines, worked_out }.into());
        Ok(())
    }

    pub fn answer(&mut self, asked: u64, answer: &Authorized) -> Result<(), Refusal> {
        self.goes_on_still()?;
        let supplement = self.supplement(asked)?;
        let judged = self.answered(supplement, answer)?;
        let (EntryValue::Authorization(answer), Some(worked_out)) = (judged.value, judged.worked_out) else {
            return Err(authorization_pending().into());
        };
        self.events.push(Answered { asked, answer, worked_out }.into());
        Ok(())
    }

    pub fn go_on_without(&mut self, asked: u64, why: &str) -> Result<(), Refusal> {
        self.goes_on_still()?;
        let supplement = self.supplement(asked)?;
        if !matches!(supplement.standing(), Standing::Declined | Standing::Below) {
            return Err(refused_not_declined(&supplement.asked.text).into());
        }
        self.events.push(WentOn { asked, reason: reason(why)? }.into());
        Ok(())
    }

    pub fn piece_off(
        &mut self,
        name: &str,
        count: u8,
        at: Option<&str>,
        photos: &[EntryValue],
    ) -> Result<(), Refusal> {
        self.goes_on_still()?;
        if !(1..=MOST_PIECES).contains(&count) {
            return Err(refused_piece_count(i64::from(count), i64::from(MOST_PIECES)).into());
        }
        let piece = PieceOff { name: said(name)?, count, at: filled(at), photos: self.photos(photos)? };
        self.events.push(piece.into());
        Ok(())
    }

    pub fn piece_back(&mut self, piece: u64, count: u8, torque: Option<&str>) -> Result<(), Refusal> {
        self.piece(piece, count)?;
        self.events.push(PieceBack { piece, count, torque: filled(torque) }.into());
        Ok(())
    }

    pub fn piece_gone(&mut self, piece: u64, count: u8, accounted: &Accounted) -> Result<(), Refusal> {
        self.piece(piece, count)?;
        let (accounted, _) = named(accounted, self.names)?;
        self.events.push(PieceGone { piece, count, accounted }.into());
        Ok(())
    }

    /// A finding, a question or a piece was entered by mistake.
    pub fn take_back(&mut self, of: u64, why: &str) -> Result<(), Refusal> {
        self.goes_on_still()?;
        let all = &self.job.turned_up;
        let found = brought_by(&all.found, of).map(|one| (&one.found.text, &one.taken_back));
        let asked = brought_by(&all.asked, of).map(|one| (&one.asked.text, &one.taken_back));
        let piece = brought_by(&all.pieces, of).map(|one| (&one.piece.name, &one.taken_back));
        match found.or(asked).or(piece) {
            None => Err(refused_no_such("found", of.to_string()).into()),
            Some((what, Some(_))) => Err(refused_taken_back(what).into()),
            Some(_) => {
                self.events.push(TakenBack { of, reason: reason(why)? }.into());
                Ok(())
            }
        }
    }

    /// Judges the lines of a supplement as those of an estimate.
    pub(crate) fn estimated(&self, lines: &EstimateLines) -> Result<Classified, Refusal> {
        let judged =
            self.judged(&Ask::Estimate(entry::Estimate::default()), EntryValue::Estimate(lines.clone()))?;
        // What is agreed to is added up, so it is in one currency.
        if let Some(entries::WorkedOut::Estimate(estimate)) = &judged.worked_out
            && let Some(first) = first_currency(self.job)
            && first != estimate.currency
        {
            return Err(asked_currency(estimate.currency.code(), first.code()).into());
        }
        Ok(judged)
    }

    /// Judges an answer against what was asked.
    pub(crate) fn answered(&self, asked: &Supplement, answer: &Authorized) -> Result<Classified, Refusal> {
        answered(asked.estimate(), answer, &self.context(self.now))
    }

    pub(crate) fn supplement(&self, asked: u64) -> Result<&Supplement, Refusal> {
        let found = brought_by(&self.job.turned_up.asked, asked);
        let found = found.ok_or_else(|| Refusal::from(refused_no_such("question", asked.to_string())))?;
        if found.taken_back.is_some() {
            return Err(refused_taken_back(&found.asked.text).into());
        }
        Ok(found)
    }

    /// Sees that so many pieces are off.
    fn piece(&self, piece: u64, count: u8) -> Result<&Piece, Refusal> {
        self.goes_on_still()?;
        let found = brought_by(&self.job.turned_up.pieces, piece);
        let found = found.ok_or_else(|| Refusal::from(refused_no_such("piece", piece.to_string())))?;
        if count == 0 || count > found.off() {
            return Err(refused_pieces_off(&found.piece.name, i64::from(found.off())).into());
        }
        Ok(found)
    }

    /// A step can only wait for an answer while there is something left to do at it.
    fn can_wait(&self, step: StepIx) -> Result<(), Refusal> {
        let procedure = &self.job.procedure;
        let title = &procedure.step(step).title;
        match procedure.machine.shown(&self.state, step) {
            Shown::Waiting | Shown::Open | Shown::InProgress => Ok(()),
            Shown::Undecided => Err(refused_undecided(title).into()),
            Shown::NotInThisJob | Shown::Missed => Err(refused_not_in_job(title).into()),
            Shown::Voided => Err(refused_voided(title).into()),
            Shown::Skipped => Err(refused_skipped(title).into()),
            Shown::Done | Shown::Lapsed => Err(refused_worked(title).into()),
        }
    }

    fn photos(&self, photos: &[EntryValue]) -> Result<Vec<EntryValue>, Refusal> {
        let ask = Ask::Photo(entry::Photo::default());
        photos.iter().map(|photo| Ok(self.judged(&ask, photo.clone())?.value)).collect()
    }

    fn judged(&self, ask: &Ask, value: EntryValue) -> Result<Classified, Refusal> {
        entries::classify(ask, &self.job.specs, &value, &self.context(self.now))
    }

    pub(crate) fn context<'c>(&'c self, at: &'c Stamp) -> Context<'c> {
        Context {
            checklist: &self.job.procedure.checklist,
            begun: None,
            at,
            utc_offset_min: self.job.utc_offset_min(),
            names: self.names,
            step: "",
            entry: "",
            past: None,
        }
    }
}

/// Why a step can't be done for what the customer was asked; a restriction beside the rules.
pub(crate) fn waits_for_answer(job: &Job, step: StepIx) -> Result<(), Refusal> {
    let text = job.procedure.step(step);
    let open: Vec<Message> = job.turned_up.holding_up(&text.id).map(unanswered).collect();
    if open.is_empty() { Ok(()) } else { Err(Refusal { message: refused_asked(&text.title), unmet: open }) }
}

/// What is left of what turned up, and keeps the job from being finished.
pub(crate) fn left_open(job: &Job) -> Vec<Message> {
    let all = &job.turned_up;
    let asked = all.asked.iter().filter(|one| one.standing().holds_up()).map(unanswered);
    let now = all.found.iter().filter(|one| {
        one.found.urgency == Urgency::Now && one.dealt_with.is_none() && one.taken_back.is_none()
    });
    asked.chain(now.map(|one| unmet_found(&one.found.text))).collect()
}

fn unanswered(one: &Supplement) -> Message {
    unmet_asked(&one.asked.text, one.standing().word())
}

/// The currency of what was agreed to so far, else of what was asked so far.
fn first_currency(job: &Job) -> Option<panside_trade::money::Currency> {
    job.happened.iter().find_map(|happened| match &happened.event {
        Event::Entered(entered) => match &entered.worked_out {
            Some(entries::WorkedOut::Authorization(judged)) => judged.currency,
            Some(entries::WorkedOut::Estimate(estimate)) => Some(estimate.currency),
            _ => None,
        },
        Event::Asked(asked) => match &asked.worked_out {
            entries::WorkedOut::Estimate(estimate) => Some(estimate.currency),
            _ => None,
        },
        _ => None,
    })
}

/// What was typed, without spaces around it; never empty.
fn said(text: &str) -> Result<String, Refusal> {
    match text.trim() {
        "" => Err(refused_nothing_said().into()),
        text => Ok(text.to_owned()),
    }
}

/// What was typed in a field that may stay empty.
fn filled(text: Option<&str>) -> Option<String> {
    text.map(str::trim).filter(|text| !text.is_empty()).map(str::to_owned)
}
