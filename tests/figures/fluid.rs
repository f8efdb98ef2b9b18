//! Level, rise for each litre, Student's t, expansion and balance.

use panside_tests::python::ask;
use panside_trade::balance::{Amount, Fluid, balance};
use panside_trade::expansion::volume_factor;
use panside_trade::gain::{Addition, learn_gain};
use panside_trade::level::{LevelChart, LevelPoint};
use panside_trade::measure::{Density, Length, Temperature, TemperatureDifference, Volume};
use panside_trade::student::t_95;
use serde::Deserialize;
use serde_json::json;

use crate::Seen;
use crate::chance::Chance;

fn mm(value: f64) -> Length {
    Length::from_millimetres(value).unwrap()
}

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value).unwrap()
}

fn litres(value: f64) -> Volume {
    Volume::from_litres(value).unwrap()
}

fn density(value: f64) -> Density {
    Density::from_kilograms_per_cubic_metre(value).unwrap()
}

#[derive(Deserialize)]
struct LevelAnswer {
    bands: Vec<[f64; 2]>,
    gains: Vec<[f64; 3]>,
    students: Vec<f64>,
}

#[test]
fn bands_rises_and_students_t_agree_with_numpy_and_scipy() {
    let rows =
        [[20.0, 12.0, 20.0], [40.0, 16.0, 25.0], [60.0, 21.0, 31.0], [80.0, 28.0, 39.0], [100.0, 36.0, 48.0]];
    let mut chance = Chance(1);
    let at: Vec<f64> = (0..500).map(|_| chance.between(20.0, 100.0)).chain([20.0, 60.0, 100.0]).collect();
    let additions: Vec<Vec<[f64; 2]>> = (0..100)
        .map(|_| {
            let count = 2 + chance.one_of(6);
            let gain = chance.between(5.0, 40.0);
            (0..count)
                .map(|_| {
                    let volume = chance.between(0.1, 1.0);
                    [volume, gain * volume + chance.between(-1.0, 1.0)]
                })
                .collect()
        })
        .collect();
    let freedoms: Vec<usize> = (1..=60).chain([100, 250, 999, 1000, 9999]).collect();
    let question = json!({"rows": rows, "at": at, "additions": additions, "freedoms": freedoms});
    let answer: LevelAnswer = ask("figures_level.py", &question).unwrap();

    let point =
        |[at, low, high]: [f64; 3]| LevelPoint { temperature: celsius(at), low: mm(low), high: mm(high) };
    let chart = LevelChart::new(rows.map(point).to_vec()).unwrap();
    let mut bands = Seen::of("fluid level: band", "numpy 2.4.6, interp");
    for (at, [low, high]) in at.iter().zip(&answer.bands) {
        let band = chart.band_at(celsius(*at)).unwrap();
        bands.compare(band.low.millimetres(), *low);
        bands.compare(band.high.millimetres(), *high);
    }
    bands.tell(1e-13);

    let mut gains = Seen::of(
        "rise for each litre, with its 95 % interval",
        "numpy 2.4.6, lstsq; scipy 1.17.1, curve_fit",
    );
    for (additions, [gain, error, off_by]) in additions.iter().zip(&answer.gains) {
        let addition = |[volume, rise]: &[f64; 2]| Addition {
            volume: litres(*volume),
            before: mm(0.0),
            after: mm(*rise),
        };
        let learnt = learn_gain(&additions.iter().map(addition).collect::<Vec<_>>()).unwrap();
        gains.compare(learnt.gain.mm_per_litre(), *gain);
        gains.compare(learnt.standard_error.unwrap(), *error);
        gains.compare(learnt.gain.off_by().unwrap(), *off_by);
    }
    // scipy takes its slopes by small differences, which costs digits in the error.
    gains.tell(1e-6);

    let mut students = Seen::of("Student's t, 95 %", "scipy 1.17.1, stats.t");
    for (freedom, expected) in freedoms.iter().zip(&answer.students) {
        students.compare(t_95(*freedom), *expected);
    }
    students.tell(1e-9);
}

#[derive(Deserialize)]
struct BalanceAnswer {
    factors: Vec<f64>,
    balances: Vec<[f64; 2]>,
}

#[test]
fn the_balance_and_its_uncertainty_agree_with_a_million_draws_of_numpy() {
    let mut chance = Chance(2);
    let factors: Vec<[f64; 2]> =
        (0..500).map(|_| [chance.between(801.0, 1163.0), chance.between(-40.0, 95.0)]).collect();
    let side = |chance: &mut Chance| -> Vec<[f64; 4]> {
        (0..=chance.one_of(3))
            .map(|_| {
                let (volume, at) = (chance.between(0.3, 6.0), chance.between(5.0, 90.0));
                [volume, chance.between(0.0, 0.1), at, chance.between(0.0, 4.0)]
            })
            .collect()
    };
    let cases: Vec<_> = (0..12)
        .map(|_| {
            let (drained, added) = (side(&mut chance), side(&mut chance));
            (
                drained,
                added,
                chance.between(830.0, 880.0),
                chance.between(0.0, 20.0),
                chance.between(0.02, 0.2),
            )
        })
        .collect();
    let asked: Vec<_> = cases
        .iter()
        .map(|(drained, added, density, off_by, unseen)| {
            json!({"drained": drained, "added": added, "density": density, "density_off_by": off_by, "unseen": unseen})
        })
        .collect();
    let question = json!({"factors": factors, "balances": asked});
    let answer: BalanceAnswer = ask("figures_balance.py", &question).unwrap();

    let mut seen = Seen::of("volume at 15 °C: factor", "numpy 2.4.6, the formula of table 54D");
    for ([rho, at], expected) in factors.iter().zip(&answer.factors) {
        seen.compare(volume_factor(celsius(*at), density(*rho)).unwrap().factor, *expected);
    }
    seen.tell(1e-14);

    let mut differences = Seen::of("fluid balance: difference in L", "numpy 2.4.6, 10⁶ draws (JCGM 101)");
    let mut widths =
        Seen::of("fluid balance: its uncertainty, in parts of it", "numpy 2.4.6, 10⁶ draws (JCGM 101)");
    for ((drained, added, rho, off_by, unseen), [mean, width]) in cases.iter().zip(&answer.balances) {
        let amount = |[volume, off_by, at, at_off_by]: &[f64; 4]| Amount {
            volume: litres(*volume),
            off_by: litres(*off_by),
            temperature: celsius(*at),
            temperature_off_by: TemperatureDifference::from_kelvins(*at_off_by).unwrap(),
        };
        let found = balance(Fluid {
            drained: drained.iter().map(amount).collect(),
            added: added.iter().map(amount).collect(),
            density: density(*rho),
            density_off_by: density(*off_by),
            unseen: litres(*unseen),
            capacity: None,
        })
        .unwrap();
        differences.differ((found.difference - mean).abs());
        widths.differ((found.uncertainty.expanded / width - 1.0).abs());
    }
    // The mean of 10⁶ draws of some 0.1 L is known to 10⁻⁴ L, its width to 10⁻³ of it.
    differences.tell(1e-3);
    widths.tell(5e-3);
}
