//! Coils, adapters, bolts and their order.

use panside_tests::python::ask;
use panside_trade::bolt::{Grade, Thread, bolt_sense};
use panside_trade::coil::{CoilLimits, CoilReading, MeterError, MeterShows, judge_coil};
use panside_trade::measure::{
    Angle, Length, Measure, Resistance, Temperature, TemperatureDifference, Torque,
};
use panside_trade::order::{Bolt, Pattern, bolt_order};
use panside_trade::torque::{Reach, setting_with_adapter};
use panside_trade::units::Unit;
use serde::Deserialize;
use serde_json::json;

use crate::Seen;
use crate::chance::Chance;

#[derive(Deserialize)]
struct UnitsAnswer {
    coils: Vec<f64>,
    adapters: Vec<f64>,
    bolts: Vec<[f64; 2]>,
}

/// A torque unit here and in pint.
const TORQUES: [(Unit, &str); 4] = [
    (Unit::NewtonMetre, "newton * meter"),
    (Unit::PoundForceFoot, "force_pound * foot"),
    (Unit::PoundForceInch, "force_pound * inch"),
    (Unit::KilogramForceMetre, "force_kilogram * meter"),
];

const THREADS: [(&str, f64, f64); 5] =
    [("M6", 6.0, 1.0), ("M8", 8.0, 1.25), ("M8x1", 8.0, 1.0), ("M10", 10.0, 1.5), ("M12", 12.0, 1.75)];

const GRADES: [(Grade, f64); 3] = [(Grade::G8_8, 580.0), (Grade::G10_9, 830.0), (Grade::G12_9, 970.0)];

#[test]
fn coils_adapters_and_bolts_agree_with_pint() {
    let mut chance = Chance(3);
    let coils: Vec<[f64; 3]> = (0..300)
        .map(|_| [chance.between(0.5, 200.0), chance.between(-50.0, 200.0), chance.between(-20.0, 60.0)])
        .collect();
    let adapters: Vec<(f64, usize, f64, f64, f64)> = (0..300)
        .map(|_| {
            let (torque, unit) = (chance.between(1.0, 200.0), chance.one_of(TORQUES.len()));
            (torque, unit, chance.between(8.0, 24.0), chance.between(0.0, 6.0), chance.between(-180.0, 180.0))
        })
        .collect();
    let bolts: Vec<(f64, usize, usize, usize)> = (0..300)
        .map(|_| {
            let torque = chance.between(1.0, 100.0);
            (torque, chance.one_of(TORQUES.len()), chance.one_of(THREADS.len()), chance.one_of(GRADES.len()))
        })
        .collect();
    let asked_adapters: Vec<_> = adapters
        .iter()
        .map(|(torque, unit, tool, adapter, angle)| json!([torque, TORQUES[*unit].1, tool, adapter, angle]))
        .collect();
    let asked_bolts: Vec<_> = bolts
        .iter()
        .map(|(torque, unit, thread, grade)| {
            let (_, diameter, pitch) = THREADS[*thread];
            json!([torque, TORQUES[*unit].1, diameter, pitch, GRADES[*grade].1])
        })
        .collect();
    let question = json!({"coils": coils, "adapters": asked_adapters, "bolts": asked_bolts});
    let answer: UnitsAnswer = ask("figures_units.py", &question).unwrap();

    let mut seen = Seen::of("coil at the limits' temperature", "pint 0.25.3");
    for ([ohms, at, to], expected) in coils.iter().zip(&answer.coils) {
        seen.compare(coil(*ohms, *at, *to), *expected);
    }
    seen.tell(1e-12);

    let mut seen = Seen::of("torque: setting with an adapter", "pint 0.25.3");
    for ((torque, unit, tool, adapter, angle), expected) in adapters.iter().zip(&answer.adapters) {
        let reach = Reach {
            tool: Length::from_inches(*tool).unwrap(),
            adapter: Length::from_inches(*adapter).unwrap(),
            angle: Angle::from_degrees(*angle).unwrap(),
        };
        let wanted = Measure::new(*torque, TORQUES[*unit].0).unwrap();
        let set = setting_with_adapter(wanted, reach).unwrap().setting;
        seen.compare(Torque::try_from(set).unwrap().newton_metres(), *expected);
    }
    seen.tell(1e-12);

    let mut seen = Seen::of("torque against its bolt: proof load and pull", "pint 0.25.3");
    for ((torque, unit, thread, grade), [proof, pull]) in bolts.iter().zip(&answer.bolts) {
        let torque = Torque::try_from(Measure::new(*torque, TORQUES[*unit].0).unwrap()).unwrap();
        let thread: Thread = THREADS[*thread].0.parse().unwrap();
        let found = bolt_sense(torque, thread, GRADES[*grade].0).unwrap();
        seen.compare(found.proof_load.kilonewtons(), *proof);
        seen.compare(found.usual.kilonewtons(), *pull);
    }
    seen.tell(1e-12);
}

fn coil(ohms: f64, at: f64, to: f64) -> f64 {
    let resistance = |value: f64| Resistance::from_ohms(value).unwrap();
    let reading = CoilReading {
        shows: MeterShows::Reading(resistance(ohms)),
        leads: resistance(0.0),
        meter: MeterError { percent: 0.0, digits: resistance(0.0) },
        temperature: Temperature::from_celsius(at).unwrap(),
        temperature_off_by: TemperatureDifference::from_kelvins(0.0).unwrap(),
    };
    let limits = CoilLimits {
        lowest: resistance(5.0),
        highest: resistance(5.6),
        at: Temperature::from_celsius(to).unwrap(),
    };
    judge_coil(reading, limits).unwrap().at_reference.unwrap().ohms()
}

#[derive(Deserialize)]
struct OrderAnswer {
    stars: Vec<Vec<usize>>,
    pans: Vec<Pan>,
}

#[derive(Deserialize)]
struct Pan {
    /// The least sum of distances from opposite that any pairing has.
    least: f64,
    /// Distance of each bolt from the place opposite each other one.
    apart: Vec<Vec<f64>>,
    /// Distance from the middle.
    far: Vec<f64>,
}

fn order(places: &[(f64, f64)], pattern: Pattern) -> Vec<usize> {
    let bolts: Vec<Bolt> = places
        .iter()
        .enumerate()
        .map(|(index, (x, y))| Bolt {
            id: index.to_string(),
            x: Length::from_millimetres(*x).unwrap(),
            y: Length::from_millimetres(*y).unwrap(),
        })
        .collect();
    bolt_order(&bolts, pattern).unwrap().order.iter().map(|id| id.parse().unwrap()).collect()
}

/// A pan with so many bolts along each long side and so many along each short one, alike when turned by half.
fn pan(along: u32, across: u32, chance: &mut Chance) -> Vec<(f64, f64)> {
    let (width, height) = (chance.between(150.0, 250.0), chance.between(60.0, 140.0));
    let mut half = Vec::new();
    for index in 0..along {
        half.push((width * (2.0 * f64::from(index) / f64::from(along - 1) - 1.0), height));
    }
    for index in 0..across {
        half.push((width, height * (2.0 * f64::from(index + 1) / f64::from(across + 1) - 1.0)));
    }
    let opposite: Vec<_> = half.iter().map(|(x, y)| (-x, -y)).collect();
    half.into_iter().chain(opposite).collect()
}

#[test]
fn bolt_orders_agree_with_scipys_sequence_and_networkxs_matching() {
    let mut chance = Chance(4);
    let rings = [4_usize, 8, 16];
    let pans: Vec<Vec<(f64, f64)>> =
        (0..40).map(|index| pan(2 + index % 7, index % 4, &mut chance)).collect();
    let answer: OrderAnswer = ask("figures_order.py", &json!({"rings": rings, "pans": pans})).unwrap();

    let mut seen = Seen::of("bolt order: star of 4, 8 and 16", "scipy 1.17.1, van der Corput sequence");
    for (count, expected) in rings.iter().zip(&answer.stars) {
        let at = |index: usize| std::f64::consts::TAU * index as f64 / *count as f64;
        let ring: Vec<_> = (0..*count).map(|index| (at(index).sin(), at(index).cos())).collect();
        for (found, expected) in order(&ring, Pattern::Star).iter().zip(expected) {
            seen.compare((found + 1) as f64, *expected as f64);
        }
    }
    seen.tell(0.0);

    let mut seen = Seen::of(
        "bolt order: crosswise pairs and distances, in mm",
        "networkx 3.6.1, min_weight_matching; scipy 1.17.1, cdist",
    );
    for (places, pan) in pans.iter().zip(&answer.pans) {
        let found = order(places, Pattern::Crosswise);
        let pairs: f64 = found.chunks(2).map(|pair| pan.apart[pair[0]][pair[1]]).sum();
        seen.differ((pairs - pan.least).abs());
        // From the middle out: the first of each pair is never nearer than the first of the pair before.
        for pair in found.chunks(2).collect::<Vec<_>>().windows(2) {
            seen.differ((pan.far[pair[0][0]] - pan.far[pair[1][0]]).max(0.0));
        }
    }
    // Distances count as equal up to a millionth of the pan's size.
    seen.tell(1e-3);
}
