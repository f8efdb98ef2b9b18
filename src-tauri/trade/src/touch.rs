//! How hot a surface may be to be touched, by how long and with which gloves.
//!
//! Every surface is judged as bare metal: it burns soonest, and no limit of another material could be sourced.

use serde::{Deserialize, Serialize};

use crate::FigureError;
use crate::measure::{Duration, Temperature};
use crate::message::working::*;
use crate::source;
use crate::working::{Worked, Working};

/// Seconds of contact and the highest temperature for them, bare metal, in °C. Between two rows the longer one counts.
const BARE_METAL: [(f64, f64); 5] =
    [(1.0, 65.0), (10.0, 55.0), (60.0, 51.0), (600.0, 48.0), (28_800.0, 43.0)];

/// Longest contact for which a glove's level stands, in seconds.
const GLOVE_SECONDS: f64 = 15.0;

/// Contact temperatures of EN 407 by level, in °C.
const GLOVE_LEVELS: [f64; 4] = [100.0, 250.0, 350.0, 500.0];

/// What is on the hands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Gloves {
    /// Nothing, or gloves without a level against contact heat.
    None,
    /// The level against contact heat that is printed on them (EN 407), 1 to 4.
    ContactHeat(u8),
}

/// A touch limit, and what it was found for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct TouchLimit {
    /// How long the surface is touched.
    pub contact: Duration,
    /// What is on the hands.
    pub gloves: Gloves,
    /// The highest temperature.
    pub limit: Temperature,
}

/// Finds the touch limit: for bare hands the table's row for that contact or the next longer one, for more than
/// 8 hours that of 8 hours; gloves raise it up to 15 seconds of contact only.
///
/// # Errors
/// [`FigureError::NoContact`] for no time at all, [`FigureError::GloveLevel`] for another level than 1 to 4.
pub fn touch_limit(contact: Duration, gloves: Gloves) -> Result<TouchLimit, FigureError> {
    let seconds = contact.seconds();
    if seconds <= 0.0 {
        return Err(FigureError::NoContact);
    }
    let row = BARE_METAL.iter().find(|row| seconds <= row.0 * (1.0 + 1e-9));
    let bare = row.or(BARE_METAL.last()).map_or(43.0, |row| row.1);
    let celsius = match gloves {
        Gloves::None => bare,
        Gloves::ContactHeat(level) => {
            let index = usize::from(level).checked_sub(1);
            let holds = index.and_then(|index| GLOVE_LEVELS.get(index));
            let holds = *holds.ok_or(FigureError::GloveLevel { level })?;
            if seconds <= GLOVE_SECONDS { holds } else { bare }
        }
    };
    Ok(TouchLimit { contact, gloves, limit: Temperature::from_celsius(celsius)? })
}

impl Worked for TouchLimit {
    fn working(&self) -> Working {
        let seconds = self.contact.seconds();
        let contact = if seconds < 60.0 {
            format!("{} s", crate::text::figure(seconds))
        } else {
            self.contact.to_string()
        };
        let (gloves, source) = match self.gloves {
            Gloves::None => (working_touch_bare(), source::touch()),
            Gloves::ContactHeat(level) if seconds <= GLOVE_SECONDS => {
                (working_touch_level(level.to_string()), source::gloves())
            }
            Gloves::ContactHeat(level) => (working_touch_level_short(level.to_string()), source::touch()),
        };
        Working::of(working_touch_limit())
            .given(working_touch_contact(), &contact)
            .given(working_touch_gloves(), gloves)
            .given(working_touch_surface(), working_touch_metal())
            .answer(working_touch_at_most(self.limit, contact))
            .sources([source])
    }
}
