//! Student's t for 95 %, so that few readings are not trusted like many.

use std::f64::consts::{FRAC_PI_2, PI};

/// The bound that Student's t with so many degrees of freedom keeps, to both sides, with 95 %. With no freedom
/// nothing is known, and it is infinite.
///
/// The probability between −t and t is a finite sum of cosines for whole degrees of freedom (Abramowitz and Stegun,
/// 26.7.3 and 26.7.4, from memory); the angle is halved in on, 60 times.
pub fn t_95(freedom: usize) -> f64 {
    if freedom == 0 {
        return f64::INFINITY;
    }
    // Beyond this many the bound no longer moves in what anybody reads, and the sum grows long.
    let freedom = freedom.min(10_000);
    let (mut low, mut high) = (0.0, FRAC_PI_2);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if between(freedom, middle) < 0.95 { low = middle } else { high = middle }
    }
    ((low + high) / 2.0).tan() * (freedom as f64).sqrt()
}

/// The probability between −t and t, for the angle whose tangent is t / √freedom.
fn between(freedom: usize, angle: f64) -> f64 {
    let (sine, cosine) = angle.sin_cos();
    let odd = freedom % 2 == 1;
    // The terms: cos θ (1 + 2/3 cos² θ + …) for odd, 1 + 1/2 cos² θ + … for even.
    let terms = if odd { (freedom - 1) / 2 } else { freedom / 2 };
    let mut term = if odd { cosine } else { 1.0 };
    let mut sum = 0.0;
    for index in 1..=terms {
        sum += term;
        let numerator = if odd { 2 * index } else { 2 * index - 1 };
        term *= cosine * cosine * numerator as f64 / (numerator + 1) as f64;
    }
    if odd { 2.0 / PI * (angle + sine * sum) } else { sine * sum }
}
