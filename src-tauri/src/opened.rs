//! What the window finds when it opens.

use panside_bay::clock::utc_offset_min;
use panside_bay::pins::PinHolder;
use panside_bay::setup::Setup;
use panside_bay::{Bay, BayError};
use serde::Serialize;
use ts_rs::TS;

use crate::desk::Desk;
use crate::trouble::Trouble;

/// Under which key the page keeps where it was.
const WINDOW: &str = "window";

/// What was found wrong with the store.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Found {
    /// As sentences.
    pub said: Vec<String>,
    /// Going on from what is there would put right what keeps it from taking entries.
    pub go_on: bool,
    /// The store takes no entries, because it is damaged or has lost something.
    pub troubled: bool,
}

impl Found {
    /// What is wrong now.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said.
    pub fn of(bay: &Bay) -> Result<Found, BayError> {
        let said = bay.troubles().into_iter().chain(bay.backup_trouble()?).collect();
        Ok(Found { said, go_on: bay.can_go_on(), troubled: bay.is_troubled() })
    }
}

/// The state of the tablet when the window opens.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Opened {
    /// What was found wrong with the store.
    pub troubles: Found,
    /// People and tools.
    pub setup: Setup,
    /// Who has a PIN.
    pub pins: Vec<PinHolder>,
    /// Where the window was, as the page wrote it under `window`.
    pub window: Option<String>,
    /// Time can be let pass: this is for looking at a demo job.
    pub demo_clock: bool,
}

/// Looks.
///
/// # Errors
/// When the store is not open or cannot be read.
pub async fn look(desk: &Desk) -> Result<Opened, Trouble> {
    let demo_clock = desk.has_demo_clock();
    desk.with(move |bay| {
        Ok(Opened {
            troubles: Found::of(bay)?,
            setup: bay.setup()?,
            pins: bay.pin_holders(utc_offset_min())?,
            window: bay.setting(WINDOW)?,
            demo_clock,
        })
    })
    .await
}
