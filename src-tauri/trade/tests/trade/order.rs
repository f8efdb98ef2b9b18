//! Bolt orders against patterns that are known, and what holds for any layout.

use panside_trade::measure::Length;
use panside_trade::order::{Bolt, BoltOrder, Pattern, bolt_order};
use panside_trade::{FigureError, Worked as _};
use proptest::prelude::*;

use crate::Worked;

fn bolts(places: &[(f64, f64)]) -> Vec<Bolt> {
    let bolt = |(index, (x, y)): (usize, &(f64, f64))| Bolt {
        id: (index + 1).to_string(),
        x: Length::from_millimetres(*x).unwrap(),
        y: Length::from_millimetres(*y).unwrap(),
    };
    places.iter().enumerate().map(bolt).collect()
}

/// A ring of so many bolts, numbered clockwise from the top.
fn ring(count: u32) -> Vec<(f64, f64)> {
    let at = |index: u32| std::f64::consts::TAU * f64::from(index) / f64::from(count);
    (0..count).map(|index| (100.0 * at(index).sin(), 100.0 * at(index).cos())).collect()
}

fn order(places: &[(f64, f64)], pattern: Pattern) -> String {
    bolt_order(&bolts(places), pattern).unwrap().order.join("-")
}

#[test]
fn rings_are_tightened_in_the_known_star() {
    // The older pattern of ASME PCC-1, table of flange sequences, from memory. For 4, 8 and 16 scipy's van der Corput
    // sequence says the same (tests/figures).
    let known = [
        (4, "1-3-2-4"),
        (8, "1-5-3-7-2-6-4-8"),
        (12, "1-7-4-10-2-8-5-11-3-9-6-12"),
        (16, "1-9-5-13-3-11-7-15-2-10-6-14-4-12-8-16"),
        (20, "1-11-6-16-3-13-8-18-5-15-10-20-2-12-7-17-4-14-9-19"),
        // The five-pointed star of wheel bolts.
        (5, "1-3-5-2-4"),
        // Straight across, then diagonal, as wheel guides describe it.
        (6, "1-4-2-5-3-6"),
    ];
    for (count, expected) in known {
        assert_eq!(order(&ring(count), Pattern::Star), expected, "{count} bolts");
    }
}

#[test]
fn a_pan_is_tightened_from_the_middle_out_with_its_opposite_next() {
    // Two rows of five: 1 to 5 above from the left, 6 to 10 below.
    let row = |y: f64| [-200.0, -100.0, 0.0, 100.0, 200.0].map(|x| (x, y));
    let places = [row(80.0), row(-80.0)].concat();
    assert_eq!(order(&places, Pattern::Crosswise), "3-8-2-9-4-7-1-10-5-6");
}

#[test]
fn a_plate_is_tightened_in_a_spiral_from_its_middle_bolt() {
    let mut places = vec![(0.0, 0.0)];
    places.extend(ring(4).iter().map(|(x, y)| (x * 0.5, y * 0.5)));
    places.extend(ring(4));
    // The middle, then the inner four clockwise, then the outer four clockwise onward from where it stands.
    assert_eq!(order(&places, Pattern::Spiral), "1-2-3-4-5-9-6-7-8");
}

#[test]
fn one_bolt_two_bolts_and_bolts_in_a_row_have_an_order_too() {
    for pattern in [Pattern::Star, Pattern::Crosswise, Pattern::Spiral] {
        assert_eq!(order(&[(5.0, 5.0)], pattern), "1");
        assert_eq!(order(&[(0.0, 1.0), (0.0, -1.0)], pattern), "1-2");
    }
    assert_eq!(
        order(&[(-2.0, 0.0), (-1.0, 0.0), (0.0, 0.0), (1.0, 0.0), (2.0, 0.0)], Pattern::Crosswise),
        "3-2-4-1-5"
    );
}

#[test]
fn the_next_bolt_is_told_whatever_was_done_out_of_order() -> Worked {
    let found = bolt_order(&bolts(&ring(8)), Pattern::Star)?;
    let next = |done: &[&str]| {
        let done: Vec<String> = done.iter().map(|id| (*id).to_owned()).collect();
        found.next(&done).map(|id| id.map(str::to_owned))
    };
    assert_eq!(next(&[])?.as_deref(), Some("1"));
    assert_eq!(next(&["1", "5"])?.as_deref(), Some("3"));
    assert_eq!(next(&["5", "3"])?.as_deref(), Some("1"), "what was left out comes first");
    assert_eq!(next(&["1", "2", "3", "4", "5", "6", "7", "8"])?, None);
    assert_eq!(next(&["9"]), Err(FigureError::BoltUnknown { id: "9".into() }));
    Ok(())
}

#[test]
fn layouts_that_make_no_sense_are_refused() {
    assert_eq!(bolt_order(&[], Pattern::Star), Err(FigureError::NoBolts));
    let mut twice = bolts(&ring(4));
    twice[2].id = "1".into();
    assert_eq!(bolt_order(&twice, Pattern::Star), Err(FigureError::BoltTwice { id: "1".into() }));
    let one_place = bolts(&[(1.0, 1.0), (1.0, 1.0)]);
    let refused = Err(FigureError::BoltsInOnePlace { first: "1".into(), second: "2".into() });
    assert_eq!(bolt_order(&one_place, Pattern::Crosswise), refused);
}

#[test]
fn an_order_says_what_it_was_made_from_and_reads_back() -> Worked {
    let found = bolt_order(&bolts(&ring(4)), Pattern::Star)?;
    assert!(found.working().to_string().contains("1, 3, 2, 4"));
    let json = serde_json::to_string(&found).unwrap();
    assert_eq!(serde_json::from_str::<BoltOrder>(&json).unwrap(), found);
    Ok(())
}

/// Places that are never nearly equally far from the middle, so that no tie turns with the drawing.
fn places() -> impl Strategy<Value = Vec<(f64, f64)>> {
    prop::collection::vec((-300.0..300.0_f64, -150.0..150.0_f64), 3..20)
}

proptest! {
    #[test]
    fn every_bolt_comes_once(places in places(), pattern in prop::sample::select(vec![Pattern::Star, Pattern::Crosswise, Pattern::Spiral])) {
        let found = bolt_order(&bolts(&places), pattern).unwrap();
        let mut ids = found.order.clone();
        ids.sort_unstable();
        let mut all: Vec<String> = (1..=places.len()).map(|id| id.to_string()).collect();
        all.sort_unstable();
        prop_assert_eq!(ids, all);
    }

    #[test]
    fn shifting_and_scaling_the_drawing_changes_nothing(
        places in places(),
        shift in (-500.0..500.0_f64, -500.0..500.0_f64),
        scale in 0.1..25.4_f64,
        pattern in prop::sample::select(vec![Pattern::Star, Pattern::Crosswise, Pattern::Spiral]),
    ) {
        let moved: Vec<_> = places.iter().map(|(x, y)| (x * scale + shift.0, y * scale + shift.1)).collect();
        prop_assert_eq!(order(&places, pattern), order(&moved, pattern));
    }

    #[test]
    fn turning_the_drawing_changes_nothing_from_the_middle_out(places in places(), angle in 0.1..6.0_f64) {
        let (sine, cosine) = angle.sin_cos();
        let turned: Vec<_> = places.iter().map(|(x, y)| (x * cosine - y * sine, x * sine + y * cosine)).collect();
        prop_assert_eq!(order(&places, Pattern::Crosswise), order(&turned, Pattern::Crosswise));
    }

    #[test]
    fn in_a_star_two_neighbours_never_follow(count in 5..40_u32) {
        let text = order(&ring(count), Pattern::Star);
        let ids: Vec<i64> = text.split('-').map(|id| id.parse().unwrap()).collect();
        let total = i64::from(count);
        for pair in ids.windows(2) {
            let apart = (pair[0] - pair[1]).rem_euclid(total);
            prop_assert!(apart != 1 && apart != total - 1, "{count}: {text}");
        }
    }

    #[test]
    fn a_spiral_never_comes_back_towards_the_middle(places in places()) {
        let found = bolt_order(&bolts(&places), Pattern::Spiral).unwrap();
        let count = places.len() as f64;
        let middle = places.iter().fold((0.0, 0.0), |sum, place| (sum.0 + place.0 / count, sum.1 + place.1 / count));
        let far = |id: &String| {
            let place = places[id.parse::<usize>().unwrap() - 1];
            (place.0 - middle.0).hypot(place.1 - middle.1)
        };
        prop_assert!(found.order.windows(2).all(|pair| far(&pair[0]) <= far(&pair[1]) + 1e-2));
    }
}
