//! Straight lines between the points of a table, and nothing beyond its ends.

use crate::TradeError;

/// The value of a table of (x, y) points at `x`, on the straight line between its two neighbours.
///
/// At a point the answer is exactly that point's y, and between two points it never leaves the range of their y.
///
/// # Errors
/// [`TradeError::TableTooShort`], [`TradeError::TableNotFinite`] and [`TradeError::TableNotRising`] for a table that
/// can't be read; [`TradeError::OutsideTable`] for an `x` before its first or after its last point, or not a number.
pub fn interpolate(points: &[(f64, f64)], x: f64) -> Result<f64, TradeError> {
    let (from, to) = check(points)?;
    let segment = points.windows(2).find_map(|pair| match *pair {
        [left, right] if (left.0..=right.0).contains(&x) => Some((left, right)),
        _ => None,
    });
    let ((x0, y0), (x1, y1)) = segment.ok_or(TradeError::OutsideTable { value: x, from, to })?;
    let part = (x - x0) / (x1 - x0);
    // Reckoned from the nearer end, so that both ends come out exactly.
    Ok(if part < 0.5 { y0 + (y1 - y0) * part } else { y1 - (y1 - y0) * (1.0 - part) })
}

/// Looks whether a table can be read, and gives the x of its first and of its last point.
///
/// # Errors
/// As [`interpolate`], but for `x`.
pub(crate) fn check(points: &[(f64, f64)]) -> Result<(f64, f64), TradeError> {
    // Up to half of the largest number, so that no difference of two runs over.
    let fits = |value: f64| value.abs() <= f64::MAX / 2.0;
    if let Some(index) = points.iter().position(|(x, y)| !fits(*x) || !fits(*y)) {
        return Err(TradeError::TableNotFinite { position: index + 1 });
    }
    for pair in points.windows(2) {
        if let [(previous, _), (next, _)] = *pair
            && next <= previous
        {
            return Err(TradeError::TableNotRising { previous, next });
        }
    }
    match points {
        [first, .., last] => Ok((first.0, last.0)),
        _ => Err(TradeError::TableTooShort { points: points.len() }),
    }
}
