//! The scale of an axis: where it begins and ends around what is drawn, and which full steps it is divided by.

/// A value this near to a full step, in steps, is on it.
const SLACK: f64 = 1e-9;
/// Steps between two ticks, of which tenths and tens are taken too.
const NICE: [f64; 3] = [1.0, 2.0, 5.0];
/// Values that lie no further apart than this are drawn as if they did.
const LEAST_SPAN: f64 = 1e-6;

/// An axis over values: it begins and ends at full steps.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scale {
    from: f64,
    to: f64,
    step: f64,
}

impl Scale {
    /// A scale over these values with at most about so many steps: 1, 2 or 5, or tenths or tens of them. Nothing where
    /// there is no value, one that is no number, or values too large to be told apart.
    #[must_use]
    pub fn over(values: impl IntoIterator<Item = f64>, steps: f64) -> Option<Scale> {
        let mut ends: Option<(f64, f64)> = None;
        for value in values {
            if !value.is_finite() {
                return None;
            }
            let (low, high) = ends.unwrap_or((value, value));
            ends = Some((low.min(value), high.max(value)));
        }
        let (low, high) = ends?;
        let span = (high - low).max(LEAST_SPAN);
        let power = 10_f64.powf((span / steps).log10().floor());
        let nice = NICE.iter().map(|nice| nice * power).find(|step| span / step <= steps + SLACK);
        let step = nice.unwrap_or(10.0 * power);
        let (from, to) = ((low / step + SLACK).floor() * step, (high / step - SLACK).ceil() * step);
        let to = if to > from { to } else { from + step };
        (to > from).then_some(Scale { from, to, step })
    }

    /// Where it begins.
    #[must_use]
    pub fn from(self) -> f64 {
        self.from
    }

    /// Where it ends.
    #[must_use]
    pub fn to(self) -> f64 {
        self.to
    }

    /// Where a value lies between begin and end, as a share of the whole: 0 to 1 inside.
    #[must_use]
    pub fn share(self, value: f64) -> f64 {
        (value - self.from) / (self.to - self.from)
    }

    /// The full steps, from begin to end.
    #[must_use]
    pub fn ticks(self) -> Vec<f64> {
        let count = ((self.to - self.from) / self.step).round() as u32;
        (0..=count).map(|number| self.from + f64::from(number) * self.step).collect()
    }

    /// A step's number with as many decimals as the step has.
    #[must_use]
    pub fn label(self, value: f64) -> String {
        let decimals = (-self.step.log10().floor()).max(0.0) as usize;
        format!("{value:.decimals$}")
    }
}
