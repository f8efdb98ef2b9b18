//! An adapter that reaches past the square drive changes what arrives at the bolt: the tool is set lower, or higher
//! where the adapter points back.

use serde::{Deserialize, Serialize};

use crate::FigureError;
use crate::measure::{Angle, Length, Measure, Torque};
use crate::message::working::*;
use crate::source;
use crate::text::figure_to;
use crate::units::Unit;
use crate::working::{Worked, Working};

/// How a tool reaches the bolt.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Reach {
    /// The tool's own length, from the middle of the grip to the square drive; above 0.
    pub tool: Length,
    /// The adapter's length, from the square drive to the bolt; 0 or more.
    pub adapter: Length,
    /// The angle between adapter and tool: 0° straight on, 90° square to it (nothing changes), 180° back over the grip.
    pub angle: Angle,
}

/// The setting for a torque with an adapter, and how it came about.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct AdapterSetting {
    /// The torque that is wanted at the bolt, in the unit it was given in.
    pub wanted: Measure,
    /// How the tool reaches the bolt.
    pub reach: Reach,
    /// Setting for each torque at the bolt: L / (L + E cos angle).
    pub factor: f64,
    /// What to set, in the unit that was given.
    pub setting: Measure,
}

impl Reach {
    /// Setting for each torque at the bolt: L / (L + E cos angle).
    ///
    /// # Errors
    /// [`FigureError::ToolLength`] unless the tool is longer than 0, [`FigureError::AdapterLength`] for a negative
    /// adapter, [`FigureError::AdapterAngle`] beyond 180° to either side, and [`FigureError::AdapterReach`] if the
    /// bolt would lie at or behind the grip.
    pub fn factor(self) -> Result<f64, FigureError> {
        let (tool, adapter, angle) =
            (self.tool.millimetres(), self.adapter.millimetres(), self.angle.degrees());
        if tool <= 0.0 {
            return Err(FigureError::ToolLength { length: self.tool });
        }
        if adapter < 0.0 {
            return Err(FigureError::AdapterLength { length: self.adapter });
        }
        if angle.abs() > 180.0 {
            return Err(FigureError::AdapterAngle { angle: self.angle });
        }
        // Square is common, and its cosine is not quite 0 in binary.
        let along = if angle.abs() == 90.0 { 0.0 } else { angle.to_radians().cos() };
        let reach = tool + adapter * along;
        // A hand's width: nearer to the grip the place of the hand decides, not the reckoning.
        if reach < tool / 10.0 {
            return Err(FigureError::AdapterReach);
        }
        Ok(tool / reach)
    }
}

/// What to set on a tool with an adapter so that the wanted torque arrives at the bolt.
///
/// # Errors
/// As [`Reach::factor`], and [`crate::TradeError::QuantityDiffers`] if what is wanted is no torque.
pub fn setting_with_adapter(wanted: Measure, reach: Reach) -> Result<AdapterSetting, FigureError> {
    Torque::try_from(wanted)?;
    let factor = reach.factor()?;
    let setting = Measure::new(wanted.value() * factor, wanted.unit())?;
    Ok(AdapterSetting { wanted, reach, factor, setting })
}

/// What arrives at the bolt when a tool with an adapter clicks.
///
/// # Errors
/// As [`setting_with_adapter`].
pub fn torque_through_adapter(setting: Measure, reach: Reach) -> Result<Measure, FigureError> {
    Torque::try_from(setting)?;
    Ok(Measure::new(setting.value() / reach.factor()?, setting.unit())?)
}

impl Worked for AdapterSetting {
    fn working(&self) -> Working {
        let reach = self.reach;
        let parts = format!("{tool} / ({tool} + {} × cos {})", reach.adapter, reach.angle, tool = reach.tool);
        let factor = figure_to(self.factor, 5);
        let newton_metres = self.setting.to(Unit::NewtonMetre).unwrap_or(self.setting);
        Working::of(working_adapter())
            .given(working_adapter_wanted(), self.wanted)
            .given(working_tool(), reach.tool)
            .given(working_adapter_given(), working_at(reach.adapter, reach.angle))
            .step(working_factor(), parts, &factor)
            .step(working_setting(), format!("{} × {factor}", self.wanted), self.setting)
            .answer(working_adapter_set(self.setting, newton_metres, self.wanted))
            .sources([source::adapter()])
    }
}
