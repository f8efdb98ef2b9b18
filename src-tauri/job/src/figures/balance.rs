//! What came out and what went in, as two columns at 15 °C.

use panside_procedure::format::Ask;
use panside_trade::balance::{Balance, BalanceClass};
use panside_trade::measure::{Measure, Volume};

use super::plot::{Column, Frame, Line, LineStyle, Plot, Point, Spot};
use super::{Drawing, FULL, Figure, FigureKind, Taken};
use crate::entry::WorkedOut;
use crate::job::Job;
use crate::message::{
    Message, figure_balance_added, figure_balance_drained, figure_balance_state, figure_balance_sums,
    figure_balance_title,
};

/// Where the columns stand, in parts of the width.
const OUT: (i32, i32) = (1_500, 4_000);
const IN: (i32, i32) = (6_000, 8_500);

/// A figure for each balance that was drawn, with its event.
pub(super) fn figures(_: &Job, taken: &[Taken<'_>]) -> Vec<(u64, Figure)> {
    let drawn = taken.iter().filter(|found| found.counts).filter_map(|found| {
        let Ask::Balance(_) = &found.entry.ask else { return None };
        let Some(WorkedOut::Balance(result)) = &found.value.worked_out else { return None };
        let id = format!("{}/{}", found.step.id, found.entry.id);
        let labels = [found.step.title.as_str(), found.entry.label.as_str()];
        Some((found.value.mark.seq, draw((id, labels), result.balance.as_ref()?)?))
    });
    drawn.collect()
}

/// The figure of a balance.
pub(super) fn draw((id, labels): (String, [&str; 2]), drawn: &Balance) -> Option<Figure> {
    let [step, label] = labels;
    Some(Figure {
        id,
        kind: FigureKind::Balance,
        title: figure_balance_title(step, label),
        says: says(drawn),
        drawing: Drawing::Plot(Box::new(plot(drawn)?)),
    })
}

fn plot(drawn: &Balance) -> Option<Plot> {
    let (out, into, sure) = (drawn.drained_at_15, drawn.added_at_15, drawn.uncertainty.expanded);
    let least = (into - sure).max(0.0);
    let frame = Frame::around([0.0, 1.0], [0.0, out, into + sure, least])?;
    let mut plot = frame.plot("", "L");
    plot.across.ticks.clear();
    plot.columns = vec![
        Column { from: OUT.0, to: OUT.1, height: frame.y(out), name: figure_balance_drained() },
        Column { from: IN.0, to: IN.1, height: frame.y(into), name: figure_balance_added() },
    ];
    // What came out is carried over: where it passes between the ends of the uncertainty, the balance closes.
    let over = |x| Spot { x, y: frame.y(out) };
    plot.lines.push(Line { style: LineStyle::Curve, through: vec![over(OUT.0), over(FULL)] });
    let at = Spot { x: (IN.0 + IN.1) / 2, y: frame.y(into) };
    plot.points.push(Point { at, between: Some((frame.y(least), frame.y(into + sure))), counts: true });
    Some(plot)
}

fn says(drawn: &Balance) -> Vec<Message> {
    let litres = |value: f64| {
        Volume::from_litres(value.abs())
            .map(Measure::from)
            .map(|measure| measure.to_string())
            .unwrap_or_default()
    };
    let class = match drawn.class {
        BalanceClass::Balanced => "balanced",
        BalanceClass::MoreIn => "more_in",
        BalanceClass::LessIn => "less_in",
    };
    vec![
        figure_balance_sums(litres(drawn.drained_at_15), litres(drawn.added_at_15)),
        figure_balance_state(class, litres(drawn.difference), litres(drawn.uncertainty.expanded)),
    ]
}

#[cfg(test)]
mod tests {
    use panside_trade::balance::{Amount, Fluid, balance};
    use panside_trade::measure::{Density, Temperature, TemperatureDifference};

    use super::*;

    fn drawn(out: f64, into: f64) -> (Balance, Plot) {
        let litres = |value| Volume::from_litres(value).unwrap();
        let amount = |volume| Amount {
            volume: litres(volume),
            off_by: litres(0.05),
            temperature: Temperature::from_celsius(15.0).unwrap(),
            temperature_off_by: TemperatureDifference::from_kelvins(0.0).unwrap(),
        };
        let density = |value| Density::from_kilograms_per_cubic_metre(value).unwrap();
        let fluid = Fluid {
            drained: vec![amount(out)],
            added: vec![amount(into)],
            density: density(850.0),
            density_off_by: density(5.0),
            unseen: litres(0.1),
            capacity: None,
        };
        let drawn = balance(fluid).unwrap();
        let plot = plot(&drawn).unwrap();
        (drawn, plot)
    }

    #[test]
    fn what_came_out_passes_between_the_ends_where_the_balance_closes_and_beside_them_where_not() {
        for (out, into) in [(3.6, 3.65), (3.6, 4.2), (3.6, 3.1)] {
            let (drawn, plot) = drawn(out, into);
            let (least, most) = plot.points[0].between.unwrap();
            let passes = (least..=most).contains(&plot.lines[0].through[0].y);
            assert_eq!(passes, drawn.class == BalanceClass::Balanced, "{out} L out, {into} L in");
            assert_eq!(plot.columns[0].height, plot.lines[0].through[0].y);
        }
    }
}
