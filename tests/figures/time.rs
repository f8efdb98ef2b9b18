//! Labour.

use panside_tests::python::ask;
use panside_trade::labour::{Clocked, Spent, labour, tenths};
use panside_trade::moment::Moment;
use serde::Deserialize;
use serde_json::json;

use crate::Seen;
use crate::chance::Chance;

#[derive(Deserialize)]
struct LabourAnswer {
    tenths: Vec<i64>,
    sums: Vec<i64>,
}

#[test]
fn tenths_and_sums_agree_with_pythons_decimal_and_datetime() {
    let mut chance = Chance(8);
    let span = |chance: &mut Chance, most: u64| i64::try_from(chance.next() % most).unwrap();
    // Every half tenth, where rounding turns, and others by chance.
    let ms: Vec<i64> = (0..200)
        .flat_map(|tenth| [tenth * 360_000 + 179_999, tenth * 360_000 + 180_000])
        .chain((0..1000).map(|_| span(&mut chance, 100_000_000)))
        .collect();
    let parts: Vec<Vec<i64>> =
        (0..200).map(|_| (0..=chance.one_of(9)).map(|_| span(&mut chance, 5_000_000)).collect()).collect();
    let answer: LabourAnswer = ask("figures_labour.py", &json!({"ms": ms, "parts": parts})).unwrap();

    let mut seen = Seen::of("labour: tenths of an hour", "Python 3.11, decimal");
    for (ms, expected) in ms.iter().zip(&answer.tenths) {
        seen.compare(tenths(*ms) as f64, *expected as f64);
    }
    seen.tell(0.0);

    let mut seen = Seen::of("labour: time on the clock, in ms", "Python 3.11, datetime");
    for (parts, expected) in parts.iter().zip(&answer.sums) {
        let mut now = 0;
        let mut events = Vec::new();
        for part in parts {
            events.push((Moment::from_ms(now), Clocked::On { phase: "pan".into(), spent: Spent::Work }));
            now += part;
            events.push((Moment::from_ms(now), Clocked::Off));
            now += 1000;
        }
        let found = labour(events, Moment::from_ms(now), None).unwrap();
        seen.compare(found.work_ms as f64, *expected as f64);
    }
    seen.tell(0.0);
}
