//! Cool-down and surfaces by infrared.

use panside_tests::python::ask;
use panside_trade::cooldown::fit;
use panside_trade::measure::Temperature;
use panside_trade::surface::{Emissivity, InfraredReading, surface_temperature};
use serde::Deserialize;
use serde_json::json;

use crate::Seen;
use crate::chance::Chance;

#[derive(Deserialize)]
struct Fitted {
    start: f64,
    rate: f64,
    covariance: [f64; 3],
    passes: [Option<f64>; 3],
}

#[test]
fn cool_downs_agree_with_scipys_curve_fit() {
    let mut chance = Chance(6);
    let cases: Vec<(Vec<(f64, f64)>, f64)> = (0..120)
        .map(|_| {
            let (start, rate) = (chance.between(80.0, 400.0), chance.between(0.01, 0.08));
            let rough = chance.between(0.05, 1.5);
            let readings = 3 + chance.one_of(8);
            let step = chance.between(2.0, 10.0);
            let points = (0..readings)
                .map(|index| {
                    let minutes = step * index as f64;
                    (minutes, start * (-rate * minutes).exp() + chance.between(-rough, rough))
                })
                .collect();
            (points, chance.between(15.0, 40.0))
        })
        .collect();
    let question: Vec<_> =
        cases.iter().map(|(points, limit)| json!({"points": points, "limit": limit})).collect();
    let answers: Vec<Fitted> = ask("figures_cooling.py", &question).unwrap();

    let mut curves = Seen::of("cool-down: curve", "scipy 1.17.1, curve_fit");
    let mut spreads = Seen::of("cool-down: spread of the curve", "scipy 1.17.1, curve_fit's covariance");
    let mut times =
        Seen::of("cool-down: likely, not before and earliest, in min", "scipy 1.17.1, curve_fit and brentq");
    let mut never = 0;
    for ((points, limit), expected) in cases.iter().zip(&answers) {
        let found = fit(points).unwrap();
        curves.compare(found.start, expected.start);
        curves.differ((found.rate / expected.rate - 1.0).abs());
        let (aa, ab, bb) = found.covariance;
        for (found, expected) in [aa, ab, bb].into_iter().zip(expected.covariance) {
            spreads.differ((found / expected - 1.0).abs());
        }
        for (width, expected) in [0.0, 1.0, -1.0].into_iter().zip(expected.passes) {
            match (found.below(*limit, width, 1440.0), expected) {
                (Some(found), Some(expected)) => times.differ((found - expected).abs()),
                (None, None) => never += 1,
                (found, expected) => panic!("{found:?} and {expected:?} for {points:?} at {limit}"),
            }
        }
    }
    curves.tell(1e-6);
    // scipy takes its slopes by small differences, which costs digits here.
    spreads.tell(1e-3);
    times.tell(1e-3);
    println!("  {never} ends of intervals are never reached, by both");
}

#[test]
fn surfaces_by_infrared_agree_with_scipys_integral() {
    let mut chance = Chance(7);
    let cases: Vec<[f64; 4]> = (0..200)
        .map(|_| {
            let (set, emissivity) = (chance.between(0.8, 1.0), chance.between(0.2, 1.0));
            [chance.between(20.0, 200.0), set, emissivity, chance.between(0.0, 40.0)]
        })
        .collect();
    let answers: Vec<f64> = ask("figures_surface.py", &cases).unwrap();
    let mut seen =
        Seen::of("surface by infrared, in °C", "scipy 1.17.1, quad and brentq over scipy.constants");
    for ([shows, set_to, emissivity, ambient], expected) in cases.iter().zip(&answers) {
        let reading = InfraredReading {
            shows: Temperature::from_celsius(*shows).unwrap(),
            set_to: *set_to,
            surface: Emissivity::new(*emissivity, *emissivity).unwrap(),
            ambient: Temperature::from_celsius(*ambient).unwrap(),
        };
        // A bright surface far below its surroundings has no answer on either side.
        if let Ok(found) = surface_temperature(reading) {
            seen.differ((found.likely.celsius() - expected).abs());
        }
    }
    assert!(seen.cases > 190, "{}", seen.cases);
    seen.tell(1e-5);
}
