//! Axes: where they begin and end, and their full steps.
//!
//! The steps are checked against what numpy prints for the same count of equal parts: `numpy.linspace(from, to, n)`.
//! That steps of 1, 2 and 5 times a power of ten are easily read is common practice in drawing graphs.

use panside_trade::scale::Scale;

use crate::same;

fn over(values: &[f64], steps: f64) -> Scale {
    let Some(scale) = Scale::over(values.iter().copied(), steps) else { panic!("{values:?} have no axis") };
    scale
}

#[test]
fn an_axis_begins_and_ends_at_full_steps_around_what_is_drawn() {
    let axis = over(&[40.0, 58.0, 70.0], 6.0);
    assert_eq!((axis.from(), axis.to(), axis.ticks().len()), (40.0, 70.0, 7));
    let fine = over(&[0.1, 0.4], 6.0);
    assert_eq!((fine.label(fine.from()), fine.label(fine.to())), ("0.10".to_owned(), "0.40".to_owned()));
}

#[test]
fn steps_are_equal_parts_as_numpy_has_them() {
    // numpy.linspace(0, 40, 5) and numpy.linspace(-20, 10, 7), by definition of equal parts.
    for (values, steps, expected) in [
        ([3.0, 37.0], 5.0, vec![0.0, 10.0, 20.0, 30.0, 40.0]),
        ([-18.0, 6.0], 6.0, vec![-20.0, -15.0, -10.0, -5.0, 0.0, 5.0, 10.0]),
    ] {
        let ticks = over(&values, steps).ticks();
        assert_eq!(ticks.len(), expected.len());
        assert!(ticks.iter().zip(expected).all(|(tick, wanted)| same(*tick, wanted)), "{ticks:?}");
    }
}

#[test]
fn a_value_lies_between_the_ends_by_its_share() {
    let axis = over(&[40.0, 70.0], 6.0);
    assert!(same(axis.share(55.0), 0.5) && same(axis.share(40.0), 0.0) && same(axis.share(70.0), 1.0));
}

#[test]
fn one_value_alone_has_an_axis_around_it_and_none_has_none() {
    let axis = over(&[58.0], 6.0);
    assert!(axis.from() <= 58.0 && axis.to() > axis.from());
    assert_eq!(Scale::over([], 6.0), None);
    assert_eq!(Scale::over([1.0, f64::NAN], 6.0), None);
    assert_eq!(Scale::over([f64::INFINITY], 6.0), None);
    assert_eq!(Scale::over([1e300], 6.0), None, "a step is lost in a number that large");
}
