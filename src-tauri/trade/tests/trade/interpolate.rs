//! Tables against numpy 2.4.6, scipy 1.17.1 and a published worked example.

use panside_trade::TradeError;
use panside_trade::interpolate::interpolate;
use proptest::prelude::*;

use crate::{Outcome, same};

/// The example table of numpy.interp.
const TABLE: [(f64, f64); 3] = [(1.0, 3.0), (2.0, 2.0), (3.0, 0.0)];

#[test]
fn straight_lines_agree_with_numpy() -> Outcome {
    // Values printed by numpy 2.4.6, numpy.interp.
    for (x, expected) in [(1.0, 3.0), (1.5, 2.5), (2.72, 0.56)] {
        assert!(same(interpolate(&TABLE, x)?, expected), "{x}");
    }
    Ok(())
}

#[test]
fn a_table_is_never_read_beyond_its_ends() {
    // numpy.interp clamps what lies outside; scipy 1.17.1 refuses ("One of the requested xi is out of bounds").
    for value in [0.0, 4.0, 1.0 - 1e-12, 3.0 + 1e-12, f64::INFINITY] {
        let refused = Err(TradeError::OutsideTable { value, from: 1.0, to: 3.0 });
        assert_eq!(interpolate(&TABLE, value), refused);
    }
    assert!(matches!(interpolate(&TABLE, f64::NAN), Err(TradeError::OutsideTable { .. })));
}

#[test]
fn three_straight_lines_give_the_published_bilinear_example() -> Outcome {
    // Worked example read in a copy of Wikipedia's page on bilinear interpolation: 150.5, 128.5, then 146.1.
    let row_20 = interpolate(&[(14.0, 91.0), (15.0, 210.0)], 14.5)?;
    let row_21 = interpolate(&[(14.0, 162.0), (15.0, 95.0)], 14.5)?;
    assert_eq!((row_20, row_21), (150.5, 128.5));
    assert!(same(interpolate(&[(20.0, row_20), (21.0, row_21)], 20.2)?, 146.1));
    Ok(())
}

#[test]
fn a_table_that_can_not_be_read_is_refused() {
    let refused = |points: &[(f64, f64)]| interpolate(points, 1.0).unwrap_err();
    assert_eq!(refused(&[]), TradeError::TableTooShort { points: 0 });
    assert_eq!(refused(&[(1.0, 2.0)]), TradeError::TableTooShort { points: 1 });
    assert_eq!(refused(&[(1.0, 2.0), (1.0, 3.0)]), TradeError::TableNotRising { previous: 1.0, next: 1.0 });
    assert_eq!(
        refused(&[(1.0, 2.0), (3.0, 3.0), (2.0, 4.0)]),
        TradeError::TableNotRising { previous: 3.0, next: 2.0 }
    );
    for bad in [f64::NAN, f64::INFINITY, f64::MAX] {
        assert_eq!(refused(&[(1.0, 2.0), (2.0, bad)]), TradeError::TableNotFinite { position: 2 });
        assert_eq!(refused(&[(bad, 2.0), (2.0, 2.0)]), TradeError::TableNotFinite { position: 1 });
    }
}

prop_compose! {
    /// A table with rising x, and an x inside it.
    fn table_and_place()(
        start in -1e3..1e3_f64,
        rows in prop::collection::vec((1e-3..1e2_f64, -1e6..1e6_f64), 2..8),
        part in 0.0..=1.0_f64,
    ) -> (Vec<(f64, f64)>, f64) {
        let mut x = start;
        let table: Vec<_> = rows.into_iter().map(|(step, y)| { x += step; (x, y) }).collect();
        let (first, last) = (table[0].0, table[table.len() - 1].0);
        let place = (first + (last - first) * part).clamp(first, last);
        (table, place)
    }
}

proptest! {
    #[test]
    fn a_value_never_leaves_the_range_of_its_neighbours((table, x) in table_and_place()) {
        let y = interpolate(&table, x).unwrap();
        let right = table.iter().position(|point| point.0 >= x).unwrap().max(1);
        let (a, b) = (table[right - 1].1, table[right].1);
        prop_assert!(a.min(b) <= y && y <= a.max(b), "{y} between {a} and {b}");
    }

    #[test]
    fn a_point_of_the_table_comes_back_exactly((table, _) in table_and_place()) {
        for (x, y) in &table {
            prop_assert_eq!(interpolate(&table, *x), Ok(*y));
        }
    }

    #[test]
    fn a_flat_table_is_flat_everywhere((table, x) in table_and_place(), y in -1e6..1e6_f64) {
        let flat: Vec<_> = table.iter().map(|point| (point.0, y)).collect();
        prop_assert_eq!(interpolate(&flat, x), Ok(y));
    }
}
