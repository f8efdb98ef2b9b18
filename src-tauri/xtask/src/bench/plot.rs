//! How a search grows, drawn: two panels with logarithmic axes, one line for each kind of runs.

use std::fmt::Write as _;

/// A line of the plot.
pub struct Line {
    /// What it is.
    pub name: String,
    /// Steps of the checklist, and the value there.
    pub points: Vec<(f64, f64)>,
}

/// A panel: what its upright axis shows, and its lines.
pub struct Panel<'a> {
    /// The axis, with its unit.
    pub axis: &'a str,
    /// The lines.
    pub lines: &'a [Line],
}

const WIDTH: f64 = 460.0;
const HEIGHT: f64 = 340.0;
/// Kept free around a panel's frame: left, top, right, bottom.
const MARGIN: (f64, f64, f64, f64) = (76.0, 24.0, 24.0, 52.0);
/// Steps that are marked.
const STEPS: [f64; 4] = [20.0, 40.0, 80.0, 160.0];
/// Strokes that tell lines apart.
const DASHES: [&str; 3] = ["none", "7 4", "2 3"];

/// The plot as SVG.
pub fn svg(panels: &[Panel<'_>]) -> String {
    let width = WIDTH * panels.len() as f64;
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {HEIGHT}\" font-family=\"sans-serif\" \
         font-size=\"13\" fill=\"#1d1d1b\">\n<rect width=\"{width}\" height=\"{HEIGHT}\" fill=\"#faf7ef\"/>\n"
    );
    for (at, panel) in panels.iter().enumerate() {
        // Writing into a String can't fail.
        let _ = writeln!(text, "<g transform=\"translate({} 0)\">", WIDTH * at as f64);
        draw(panel, &mut text);
        text += "</g>\n";
    }
    text + "</svg>\n"
}

/// A logarithmic axis: the powers of ten it goes from and to, and where they lie on the paper.
struct Axis {
    low: f64,
    high: f64,
    from: f64,
    to: f64,
}

impl Axis {
    fn new(values: impl Iterator<Item = f64> + Clone, from: f64, to: f64) -> Axis {
        let low = values.clone().fold(f64::INFINITY, f64::min).log10().floor();
        let high = values.fold(f64::NEG_INFINITY, f64::max).log10().ceil();
        Axis { low, high: high.max(low + 1.0), from, to }
    }

    /// An axis that shows just these values, with a little room at both ends.
    fn around(values: [f64; 4], from: f64, to: f64) -> Axis {
        let [first, .., last] = values;
        Axis { low: first.log10() - 0.1, high: last.log10() + 0.1, from, to }
    }

    fn at(&self, value: f64) -> f64 {
        self.from + (value.log10() - self.low) / (self.high - self.low) * (self.to - self.from)
    }

    fn tens(&self) -> impl Iterator<Item = i32> {
        self.low as i32..=self.high as i32
    }
}

fn draw(panel: &Panel<'_>, text: &mut String) {
    let (left, top, right, bottom) = MARGIN;
    let (floor, end) = (HEIGHT - bottom, WIDTH - right);
    let points = panel.lines.iter().flat_map(|line| line.points.iter().copied());
    let across = Axis::around(STEPS, left, end);
    let up = Axis::new(points.map(|(_, value)| value), floor, top);
    for power in up.tens() {
        let y = up.at(10f64.powi(power));
        let _ = writeln!(
            text,
            "<path d=\"M{left} {y:.1}H{end}\" stroke=\"#1d1d1b\" stroke-width=\"0.4\"/>\
             <text x=\"{}\" y=\"{:.1}\" text-anchor=\"end\">10<tspan dy=\"-5\" font-size=\"10\">{power}</tspan></text>",
            left - 8.0,
            y + 4.0
        );
    }
    for value in STEPS {
        let x = across.at(value);
        let _ = writeln!(
            text,
            "<path d=\"M{x:.1} {floor}v6\" stroke=\"#1d1d1b\"/>\
             <text x=\"{x:.1}\" y=\"{}\" text-anchor=\"middle\">{value}</text>",
            floor + 20.0
        );
    }
    let _ = writeln!(
        text,
        "<text x=\"{}\" y=\"{}\" text-anchor=\"middle\">steps of the checklist</text>\
         <text x=\"{left}\" y=\"16\">{}</text>",
        (left + end) / 2.0,
        floor + 40.0,
        panel.axis
    );
    for (line, dash) in panel.lines.iter().zip(DASHES.iter().cycle()) {
        let path: Vec<String> = line
            .points
            .iter()
            .map(|&(steps, value)| format!("{:.1} {:.1}", across.at(steps), up.at(value)))
            .collect();
        let _ = writeln!(
            text,
            "<path d=\"M{}\" fill=\"none\" stroke=\"#0b5563\" stroke-width=\"2\" stroke-dasharray=\"{dash}\"/>",
            path.join("L")
        );
        if let Some(&(steps, value)) = line.points.last() {
            let (x, y) = (across.at(steps) - 6.0, up.at(value) - 8.0);
            let _ =
                writeln!(text, "<text x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"end\">{}</text>", line.name);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ten_times_as_much_is_the_same_way_up_wherever_it_begins() {
        let axis = Axis::new([1.0, 1000.0].into_iter(), 300.0, 0.0);
        assert_eq!([1.0, 10.0, 100.0, 1000.0].map(|value| axis.at(value)), [300.0, 200.0, 100.0, 0.0]);
    }

    #[test]
    fn a_plot_names_its_axes_and_its_lines() {
        let lines = [Line { name: "plain runs".into(), points: vec![(20.0, 300.0), (160.0, 2400.0)] }];
        let text = svg(&[Panel { axis: "states", lines: &lines }]);
        for word in ["steps of the checklist", ">states<", ">plain runs<", ">160<", "</svg>"] {
            assert!(text.contains(word), "{word}: {text}");
        }
    }
}
