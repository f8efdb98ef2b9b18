//! Whether a torque makes sense for a bolt: what its thread and grade can hold against what the torque would pull.
//! This catches a wrong unit or a wrong line of the sheet. It never replaces the sheet's torque.

use std::str::FromStr;

use serde::{Deserialize, Serialize};

use crate::FigureError;
use crate::measure::{Force, Length, Torque};
use crate::message::working::*;
use crate::number::parse_number;
use crate::source;
use crate::text::figure;
use crate::working::{Worked, Working};

/// Nut factors from slippery to dry (Shigley, table 8-15: anti-seize 0.12, not plated 0.30), and the usual one.
pub const NUT_FACTORS: (f64, f64) = (0.12, 0.30);
const USUAL_NUT_FACTOR: f64 = 0.2;

/// Threads for which the grades' values stand here, in mm.
const DIAMETERS: (f64, f64) = (3.0, 16.0);

/// Coarse pitches by diameter, in mm (ISO 261, from memory).
const COARSE: [(f64, f64); 12] = [
    (3.0, 0.5),
    (3.5, 0.6),
    (4.0, 0.7),
    (5.0, 0.8),
    (6.0, 1.0),
    (7.0, 1.0),
    (8.0, 1.25),
    (9.0, 1.25),
    (10.0, 1.5),
    (12.0, 1.75),
    (14.0, 2.0),
    (16.0, 2.0),
];

/// A metric thread.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Unchecked")]
pub struct Thread {
    diameter: Length,
    pitch: Length,
}

/// A thread as it stands in JSON, before it is checked.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Unchecked {
    diameter: Length,
    pitch: Length,
}

impl TryFrom<Unchecked> for Thread {
    type Error = FigureError;

    fn try_from(thread: Unchecked) -> Result<Thread, FigureError> {
        Thread::new(thread.diameter, thread.pitch)
    }
}

impl Thread {
    /// A thread of a nominal diameter from 3 to 16 mm and a pitch above 0 and below a quarter of the diameter.
    ///
    /// # Errors
    /// [`FigureError::ThreadRange`].
    pub fn new(diameter: Length, pitch: Length) -> Result<Thread, FigureError> {
        let (d, p) = (diameter.millimetres(), pitch.millimetres());
        if (DIAMETERS.0..=DIAMETERS.1).contains(&d) && p > 0.0 && p < d / 4.0 {
            Ok(Thread { diameter, pitch })
        } else {
            Err(FigureError::ThreadRange { diameter, pitch })
        }
    }

    /// Nominal diameter.
    pub fn diameter(self) -> Length {
        self.diameter
    }

    /// Pitch.
    pub fn pitch(self) -> Length {
        self.pitch
    }

    /// Stress area in mm²: π/4 (d − 0.9382 P)² (ISO 898-1).
    pub fn stress_area(self) -> f64 {
        let core = self.diameter.millimetres() - 0.9382 * self.pitch.millimetres();
        std::f64::consts::FRAC_PI_4 * core * core
    }
}

impl FromStr for Thread {
    type Err = FigureError;

    /// Reads a thread as it is written: `M6` with its coarse pitch, `M8x1` or `M10×1,25` with its own.
    ///
    /// # Errors
    /// [`FigureError::ThreadForm`] for anything else and for a diameter without coarse pitch; as [`Thread::new`].
    fn from_str(text: &str) -> Result<Thread, FigureError> {
        let plain = text.trim();
        let malformed = || FigureError::ThreadForm { text: plain.to_owned() };
        let sizes = plain.strip_prefix(['M', 'm']).ok_or_else(malformed)?;
        let (diameter, pitch) = match sizes.split_once(['x', 'X', '×']) {
            Some((diameter, pitch)) => (parse_number(diameter), parse_number(pitch)),
            None => {
                let diameter = parse_number(sizes);
                let coarse =
                    COARSE.iter().find(|row| diameter.as_ref() == Ok(&row.0)).ok_or_else(malformed)?;
                (diameter, Ok(coarse.1))
            }
        };
        let length =
            |number: Result<f64, _>| number.and_then(Length::from_millimetres).map_err(|_| malformed());
        Thread::new(length(diameter)?, length(pitch)?)
    }
}

impl std::fmt::Display for Thread {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "M{}×{}", figure(self.diameter.millimetres()), figure(self.pitch.millimetres()))
    }
}

/// A property class of steel bolts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Grade {
    /// 8.8
    #[serde(rename = "8.8")]
    G8_8,
    /// 10.9
    #[serde(rename = "10.9")]
    G10_9,
    /// 12.9
    #[serde(rename = "12.9")]
    G12_9,
}

impl Grade {
    const ALL: [(Grade, &'static str, f64); 3] =
        [(Grade::G8_8, "8.8", 580.0), (Grade::G10_9, "10.9", 830.0), (Grade::G12_9, "12.9", 970.0)];

    fn row(self) -> (Grade, &'static str, f64) {
        let [first, second, third] = Grade::ALL;
        match self {
            Grade::G8_8 => first,
            Grade::G10_9 => second,
            Grade::G12_9 => third,
        }
    }

    /// Proof stress in N/mm², for threads up to 16 mm (ISO 898-1, second-hand; that of 8.8 from memory).
    pub fn proof_stress(self) -> f64 {
        self.row().2
    }
}

impl std::fmt::Display for Grade {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.row().1)
    }
}

impl FromStr for Grade {
    type Err = FigureError;

    /// Reads a grade as it stands on the head: `8.8`, `10.9` or `12.9`.
    ///
    /// # Errors
    /// [`FigureError::GradeForm`] for anything else.
    fn from_str(text: &str) -> Result<Grade, FigureError> {
        let plain = text.trim().replace(',', ".");
        let found = Grade::ALL.iter().find(|row| row.1 == plain);
        found.map(|row| row.0).ok_or_else(|| FigureError::GradeForm { text: text.trim().to_owned() })
    }
}

/// Whether a torque makes sense for a bolt.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BoltClass {
    /// At the usual friction the bolt stays within its proof load.
    Plausible,
    /// Within its proof load only if the thread is dry: look at the sheet again.
    High,
    /// Beyond its proof load even with a dry thread: wrong unit, wrong line or wrong bolt.
    Impossible,
}

/// A torque looked at against its bolt, and how that came about.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct BoltSense {
    /// The torque.
    pub torque: Torque,
    /// The thread.
    pub thread: Thread,
    /// The grade.
    pub grade: Grade,
    /// What the bolt holds: stress area × proof stress.
    pub proof_load: Force,
    /// Pull along the bolt at the usual nut factor 0.2.
    pub usual: Force,
    /// The least pull, with a dry thread (0.30).
    pub least: Force,
    /// The most pull, with a slippery one (0.12).
    pub most: Force,
    /// Whether it makes sense.
    pub class: BoltClass,
}

/// Looks whether a torque makes sense for a bolt, by T = K F d.
///
/// # Errors
/// [`crate::TradeError::TargetNotPositive`] for a torque of 0 or less.
pub fn bolt_sense(torque: Torque, thread: Thread, grade: Grade) -> Result<BoltSense, FigureError> {
    let newton_metres = torque.newton_metres();
    if newton_metres <= 0.0 {
        return Err(crate::TradeError::TargetNotPositive { newton_metres }.into());
    }
    // N·m over mm is kN.
    let pull =
        |factor: f64| Force::from_kilonewtons(newton_metres / (factor * thread.diameter.millimetres()));
    let (usual, least, most) = (pull(USUAL_NUT_FACTOR)?, pull(NUT_FACTORS.1)?, pull(NUT_FACTORS.0)?);
    let proof_load = Force::from_kilonewtons(thread.stress_area() * grade.proof_stress() / 1000.0)?;
    let class = if least > proof_load {
        BoltClass::Impossible
    } else if usual > proof_load {
        BoltClass::High
    } else {
        BoltClass::Plausible
    };
    Ok(BoltSense { torque, thread, grade, proof_load, usual, least, most, class })
}

impl Worked for BoltSense {
    fn working(&self) -> Working {
        let share = self.usual.kilonewtons() / self.proof_load.kilonewtons() * 100.0;
        let area = format!("{} mm²", figure(self.thread.stress_area()));
        let d = self.thread.diameter;
        let core = format!("π/4 × ({d} − 0.9382 × {})²", self.thread.pitch);
        let proof = format!("{area} × {} N/mm²", figure(self.grade.proof_stress()));
        let working = Working::of(working_bolt())
            .given(working_torque(), self.torque)
            .given(working_bolt_given(), format!("{} {}", self.thread, self.grade))
            .step(working_bolt_area(), core, area)
            .step(working_bolt_proof_load(), proof, self.proof_load)
            .step(working_bolt_usual(), format!("{} / (0.2 × {d})", self.torque), self.usual)
            .step(
                working_bolt_friction(),
                working_range("K 0.30", "0.12"),
                working_range(self.least, self.most),
            );
        let percent = figure(share.round());
        let answer = match self.class {
            BoltClass::Plausible => working_bolt_plausible(percent),
            BoltClass::High => working_bolt_high(percent),
            BoltClass::Impossible => working_bolt_impossible(percent),
        };
        working.answer(answer).sources([source::proof_loads(), source::nut_factor(), source::coarse_pitch()])
    }
}
