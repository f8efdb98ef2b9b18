//! Newton's law through readings, by least squares: start above the surroundings, and the rate.

use crate::student::t_95;

/// A fitted curve: excess over the surroundings = start × e^(−rate × t), with t in minutes from the first reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fit {
    /// Excess at t = 0, in °C.
    pub start: f64,
    /// Rate for each minute, above 0 where it cools.
    pub rate: f64,
    /// Standard deviation of what is left over, in °C.
    pub left_over: f64,
    /// Degrees of freedom: readings less two.
    pub freedom: usize,
    /// Covariance of start and rate: start, both, rate.
    pub covariance: (f64, f64, f64),
}

/// Sums over the readings for the normal equations: of the two slopes squared and together, and with what is left.
fn sums(points: &[(f64, f64)], start: f64, rate: f64) -> [f64; 6] {
    points.iter().fold([0.0; 6], |sums, (minutes, excess)| {
        let shape = (-rate * minutes).exp();
        let (by_start, by_rate) = (shape, -start * minutes * shape);
        let left = excess - start * shape;
        let parts = [
            by_start * by_start,
            by_start * by_rate,
            by_rate * by_rate,
            by_start * left,
            by_rate * left,
            left * left,
        ];
        std::array::from_fn(|index| sums[index] + parts[index])
    })
}

/// The straight line through the logarithms: where the search begins.
fn begin(points: &[(f64, f64)]) -> Option<(f64, f64)> {
    let above: Vec<(f64, f64)> =
        points.iter().filter(|(_, excess)| *excess > 0.0).map(|(at, excess)| (*at, excess.ln())).collect();
    let count = above.len() as f64;
    let mean = |axis: fn(&(f64, f64)) -> f64| above.iter().map(axis).sum::<f64>() / count;
    let (x, y) = (mean(|point| point.0), mean(|point| point.1));
    let across: f64 = above.iter().map(|point| (point.0 - x).powi(2)).sum();
    let along: f64 = above.iter().map(|point| (point.0 - x) * (point.1 - y)).sum();
    let slope = along / across;
    slope.is_finite().then(|| ((y - slope * x).exp(), -slope))
}

/// Fits the curve to readings of (minutes, °C over the surroundings), by Levenberg and Marquardt's steps: towards
/// the least sum of squares, smaller steps whenever one does not help. Nothing if there are fewer than three readings
/// or they give no curve.
pub fn fit(points: &[(f64, f64)]) -> Option<Fit> {
    let freedom = points.len().checked_sub(2).filter(|freedom| *freedom > 0)?;
    let (mut start, mut rate) = begin(points)?;
    let mut found = sums(points, start, rate);
    let mut damping = 1e-3;
    for _ in 0..200 {
        let [aa, ab, bb, ar, br, squares] = found;
        let (damped_a, damped_b) = (aa * (1.0 + damping), bb * (1.0 + damping));
        let whole = damped_a * damped_b - ab * ab;
        let (step_a, step_b) = ((ar * damped_b - br * ab) / whole, (br * damped_a - ar * ab) / whole);
        if !step_a.is_finite() || !step_b.is_finite() {
            return None;
        }
        let next = sums(points, start + step_a, rate + step_b);
        if next[5] <= squares {
            (start, rate, found) = (start + step_a, rate + step_b, next);
            damping /= 10.0;
            let moved = (step_a / start).abs().max((step_b / rate).abs());
            if moved < 1e-13 || squares == 0.0 {
                break;
            }
        } else {
            damping *= 10.0;
            // No smaller step helps: this is the lowest place.
            if damping > 1e12 {
                break;
            }
        }
    }
    let [aa, ab, bb, .., squares] = found;
    let variance = squares / freedom as f64;
    let whole = aa * bb - ab * ab;
    let covariance = (bb / whole * variance, -ab / whole * variance, aa / whole * variance);
    let all = [start, rate, covariance.0, covariance.1, covariance.2];
    all.iter().all(|value| value.is_finite()).then(|| Fit {
        start,
        rate,
        left_over: variance.sqrt(),
        freedom,
        covariance,
    })
}

impl Fit {
    /// The excess at a time.
    pub fn at(self, minutes: f64) -> f64 {
        self.start * (-self.rate * minutes).exp()
    }

    /// Half the width of the 95 % interval in which a new reading at a time lies.
    pub fn prediction(self, minutes: f64) -> f64 {
        let shape = (-self.rate * minutes).exp();
        let (by_start, by_rate) = (shape, -self.start * minutes * shape);
        let (aa, ab, bb) = self.covariance;
        let of_curve = by_start * by_start * aa + 2.0 * by_start * by_rate * ab + by_rate * by_rate * bb;
        t_95(self.freedom) * (self.left_over * self.left_over + of_curve.max(0.0)).sqrt()
    }

    /// The minutes after which the curve, `width` times the interval above it, lies at or below an excess from there
    /// on; nothing if that does not happen within `most` minutes.
    pub fn below(self, excess: f64, width: f64, most: f64) -> Option<f64> {
        let over = |minutes: f64| self.at(minutes) + width * self.prediction(minutes) > excess;
        // From the far end back to the last time that it is still over, then halved in on.
        const PARTS: u32 = 4000;
        let at = |part: u32| most * f64::from(part) / f64::from(PARTS);
        if over(most) {
            return None;
        }
        let Some(last) = (0..PARTS).rev().find(|part| over(at(*part))) else { return Some(0.0) };
        let (mut low, mut high) = (at(last), at(last + 1));
        for _ in 0..60 {
            let middle = (low + high) / 2.0;
            if over(middle) { low = middle } else { high = middle }
        }
        Some(high)
    }
}
