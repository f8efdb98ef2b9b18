//! Whether the symptom may be judged yet. A level that is off makes a sound transmission misbehave, so diagnosis stays
//! closed until the level is in its band and the symptom was tried again (common practice).

use panside_messages::Message;
use serde::{Deserialize, Serialize};

use crate::FigureError;
use crate::level::LevelClass;
use crate::message::working::*;
use crate::moment::{Moment, check_order};
use crate::source;
use crate::text::figure;
use crate::working::{Worked, Working};

/// What a try of the concern showed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Symptom {
    /// It misbehaves as the concern says.
    Shows,
    /// It does not misbehave.
    Gone,
}

/// Why diagnosis stays closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Closed {
    /// No level was read.
    LevelNotRead,
    /// The level is too low.
    LevelBelow,
    /// The level is too high.
    LevelAbove,
    /// The level is unclear.
    LevelUnclear,
    /// The level is in its band, but the symptom was not tried since.
    NotTriedAgain,
}

impl Closed {
    /// Why, as a sentence that says what to do.
    fn message(self) -> Message {
        match self {
            Closed::LevelNotRead => working_diagnosis_not_read(),
            Closed::LevelBelow => working_diagnosis_below(),
            Closed::LevelAbove => working_diagnosis_above(),
            Closed::LevelUnclear => working_diagnosis_unclear(),
            Closed::NotTriedAgain => working_diagnosis_not_tried(),
        }
    }
}

/// Whether the symptom may be judged, and how that came about.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DiagnosisGate {
    /// Every level, in its order of time.
    pub levels: Vec<(Moment, LevelClass)>,
    /// Every try of the symptom, in its order of time.
    pub tries: Vec<(Moment, Symptom)>,
    /// Why diagnosis stays closed; nothing if it is open.
    pub closed: Option<Closed>,
    /// What the last try since the level is in its band showed; nothing while closed.
    pub symptom: Option<Symptom>,
}

/// Looks whether the symptom may be judged. The last level counts; a try counts if it is not older than that level.
///
/// # Errors
/// [`FigureError::ClockWentBack`] if the times of levels or of tries go back.
pub fn diagnosis_gate(
    levels: &[(Moment, LevelClass)],
    tries: &[(Moment, Symptom)],
) -> Result<DiagnosisGate, FigureError> {
    check_order(levels.iter().map(|(at, _)| *at), None)?;
    check_order(tries.iter().map(|(at, _)| *at), None)?;
    let (closed, symptom) = match levels.last() {
        None => (Some(Closed::LevelNotRead), None),
        Some((_, LevelClass::Below)) => (Some(Closed::LevelBelow), None),
        Some((_, LevelClass::Above)) => (Some(Closed::LevelAbove), None),
        Some((_, LevelClass::Unclear)) => (Some(Closed::LevelUnclear), None),
        Some((read_at, LevelClass::In)) => match tries.last() {
            Some((tried_at, symptom)) if tried_at >= read_at => (None, Some(*symptom)),
            _ => (Some(Closed::NotTriedAgain), None),
        },
    };
    Ok(DiagnosisGate { levels: levels.to_vec(), tries: tries.to_vec(), closed, symptom })
}

impl Worked for DiagnosisGate {
    fn working(&self) -> Working {
        let moments = self.levels.iter().map(|(at, _)| *at).chain(self.tries.iter().map(|(at, _)| *at));
        let first = moments.min().unwrap_or(Moment::from_ms(0));
        let after = |at: Moment| working_after(figure(at.minutes_since(first)));
        let mut working = Working::of(working_diagnosis());
        for (at, class) in &self.levels {
            working = working.given(after(*at), working_diagnosis_level(class.message()));
        }
        for (at, symptom) in &self.tries {
            let showed = match symptom {
                Symptom::Shows => working_diagnosis_shows(),
                Symptom::Gone => working_diagnosis_gone(),
            };
            working = working.given(after(*at), showed);
        }
        let answer = match (self.closed, self.symptom) {
            (Some(closed), _) => closed.message(),
            (None, Some(Symptom::Gone)) => working_diagnosis_was_level(),
            (None, _) => working_diagnosis_open(),
        };
        working.answer(answer).sources([source::level_first()])
    }
}
