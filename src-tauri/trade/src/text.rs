//! Figures as people read them.

/// A number to four significant figures, without idle zeros behind the decimal point; whole digits are never cut off.
pub fn figure(value: f64) -> String {
    figure_to(value, 4)
}

/// A number to so many significant figures, at most 9 of them behind the decimal point.
pub fn figure_to(value: f64, figures: i32) -> String {
    if value == 0.0 || !value.is_finite() {
        return "0".to_owned();
    }
    let before_point = value.abs().log10().floor() as i32 + 1;
    let decimals = usize::try_from(figures - before_point).unwrap_or(0).min(9);
    let text = format!("{value:.decimals$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_keeps_four_places_and_no_idle_zeros() {
        let cases = [(48.0, "48"), (5.6, "5.6"), (118.4, "118.4"), (0.378_541, "0.3785"), (-0.05, "-0.05")];
        for (value, text) in cases {
            assert_eq!(figure(value), text);
        }
        assert_eq!(figure(184_312.0), "184312", "whole digits are never cut off");
        assert_eq!(figure(9.999_96), "10", "rounding up brings no idle zeros");
        assert_eq!(figure(-1e-12), "0", "what rounds to nothing has no sign");
        assert_eq!(figure_to(0.982_746_4, 5), "0.98275");
    }
}
