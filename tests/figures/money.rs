//! Estimates.

use panside_tests::python::ask;
use panside_trade::estimate::{Estimate, Line, MayTurnUp};
use panside_trade::money::Currency;
use serde::Deserialize;
use serde_json::json;

use crate::Seen;
use crate::chance::Chance;

#[derive(Deserialize)]
struct Answer {
    lines: Vec<String>,
    sum: String,
    limit: String,
}

/// A number of hundredths below so many, written with both places.
fn written(chance: &mut Chance, most: u64) -> String {
    let hundredths = chance.next() % most;
    format!("{}.{:02}", hundredths / 100, hundredths % 100)
}

#[test]
fn lines_sums_and_limits_agree_with_pythons_decimal() {
    let mut chance = Chance(12);
    let estimates: Vec<(Vec<[String; 2]>, Vec<String>)> = (0..300)
        .map(|_| {
            let lines = (0..=chance.one_of(40))
                .map(|_| [written(&mut chance, 20_000), written(&mut chance, 1_000_000)])
                .collect();
            let may_turn_up = (0..chance.one_of(4)).map(|_| written(&mut chance, 500_000)).collect();
            (lines, may_turn_up)
        })
        .collect();
    let question: Vec<_> =
        estimates.iter().map(|(lines, may)| json!({"lines": lines, "may_turn_up": may})).collect();
    let answers: Vec<Answer> = ask("figures_money.py", &question).unwrap();

    let mut seen = Seen::of("estimate: lines, sum and limit", "Python 3.11, decimal");
    let mut compare = |found: String, expected: &String| seen.differ(f64::from(found != *expected));
    for ((lines, may_turn_up), expected) in estimates.iter().zip(&answers) {
        let line = |[quantity, price]: &[String; 2]| {
            Line::new("part", quantity.parse().unwrap(), Some(price.parse().unwrap())).unwrap()
        };
        let may = |up_to: &String| MayTurnUp { what: "nut".into(), up_to: up_to.parse().unwrap() };
        let parts = lines.iter().map(line).collect();
        let found =
            Estimate::of(Currency::Usd, parts, Vec::new(), may_turn_up.iter().map(may).collect()).unwrap();
        for (line, expected) in found.parts.iter().zip(&expected.lines) {
            compare(line.comes_to.unwrap().to_string(), expected);
        }
        compare(found.sum.to_string(), &expected.sum);
        compare(found.limit.to_string(), &expected.limit);
    }
    seen.tell(0.0);
}
