//! What a job does not know about itself: its id, its journal's head, the proof, the captions of its photos.

use std::collections::BTreeMap;

use panside_journal::{Hash, JobId, Stamp};
use panside_messages::Message;
use serde::{Deserialize, Serialize};

use crate::error::RecordError;
use crate::messages;
use crate::speak::Say;

/// What a record needs besides the job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecordInputs {
    /// The job's id.
    pub job: JobId,
    /// The hash of the job's newest event.
    pub head: Hash,
    /// How many events the job's chain has.
    pub events: u64,
    /// When the record is made, by both clocks. A step still in progress is timed up to here.
    pub generated: Stamp,
    /// The proof of the checklist, where one is kept.
    pub proof: Option<ProofSummary>,
    /// What was found wrong with the data that the record is made from, as sentences.
    pub damaged: Vec<String>,
    /// Captions of photos, by hash (64 lower-case hex digits).
    pub captions: BTreeMap<String, String>,
}

/// A proof in short.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ProofSummary {
    /// What it came to.
    pub verdict: ProofVerdict,
    /// The engine that proved.
    pub engine: String,
    /// States found, all searches added up; a state that two searches found counts twice.
    pub states: u64,
    /// Hash of the checklist that was proved.
    pub checklist: Hash,
    /// What the proof takes for granted.
    pub assumed: Vec<Message>,
    /// What it does not claim.
    pub not_claimed: Vec<Message>,
}

/// What a proof came to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ProofVerdict {
    /// Every property asked for holds.
    Proved,
    /// At least one does not.
    Refuted,
    /// The search did not come to its end.
    NotDecided,
}

/// The members of a kept proof that a record shows; `panside_procedure::proof::Proof` writes them and more.
#[derive(Deserialize)]
struct Kept {
    verdict: ProofVerdict,
    engine: String,
    searches: Vec<KeptSearch>,
    assumed: Vec<KeptLimit>,
    not_claimed: Vec<KeptLimit>,
}

/// What a proof takes for granted or does not claim.
#[derive(Deserialize)]
#[serde(untagged)]
enum KeptLimit {
    Message(Message),
    /// As proofs of `panside-proof/2` and before have it: a sentence.
    Text(String),
}

impl From<KeptLimit> for Message {
    fn from(limit: KeptLimit) -> Message {
        match limit {
            KeptLimit::Message(message) => message,
            KeptLimit::Text(text) => messages::proof_limit(text),
        }
    }
}

#[derive(Deserialize)]
struct KeptSearch {
    states: KeptStates,
}

#[derive(Deserialize)]
struct KeptStates {
    found: u64,
}

impl ProofSummary {
    /// With its sentences put in.
    pub(crate) fn said(&self, say: &Say<'_>) -> ProofSummary {
        let said = |limit: &Message| Message { text: say.within(limit), ..limit.clone() };
        let [assumed, not_claimed] =
            [&self.assumed, &self.not_claimed].map(|limits| limits.iter().map(said).collect());
        ProofSummary { assumed, not_claimed, ..self.clone() }
    }

    /// Reads a proof that is kept as the JSON of `panside_procedure::proof::Proof`, for the checklist with this hash.
    ///
    /// # Errors
    /// [`RecordError::Proof`] for a text that is no such proof.
    pub fn read(json: &str, checklist: Hash) -> Result<ProofSummary, RecordError> {
        let kept: Kept = serde_json::from_str(json)
            .map_err(|source| RecordError::Proof { checklist: checklist.to_string(), source })?;
        Ok(ProofSummary {
            verdict: kept.verdict,
            engine: kept.engine,
            states: kept.searches.iter().map(|search| search.states.found).sum(),
            checklist,
            assumed: kept.assumed.into_iter().map(Message::from).collect(),
            not_claimed: kept.not_claimed.into_iter().map(Message::from).collect(),
        })
    }
}
