//! What is typed on a spec sheet, judged: a value of the format, or what is wrong with it, field by field.

use panside_procedure::format::Asked;
use panside_procedure::format::sheet::{
    AngleStage, Chart, ChartPoint, Coils, Measure, NamedCoil, Position, Range, Torque, Value,
};
use panside_trade::TradeError;
use panside_trade::message::chart_marks;
use panside_trade::number::parse_number;
use panside_trade::units::Unit;

use panside_procedure::load::MOST_PIECES;

use super::needs::{Need, fits};
use super::typed::{Typed, TypedCoil, TypedPoint, TypedPosition, TypedValue};
use crate::field::FieldProblem;
use crate::message::{
    Arg, Message, figure, sheet_coil_no_name, sheet_coil_range, sheet_coil_twice, sheet_count,
    sheet_fasteners, sheet_no_number, sheet_no_source, sheet_no_text, sheet_no_word, sheet_range,
    sheet_twice, sheet_word,
};

/// Reads a value as it is typed. Its fields are `value`, `min`, `max`, `unit`, `agreement`, `fasteners`,
/// `tolerance_percent`, `source`, and by number `stages/0`, `points/0/at`, `positions/0/x`, `coils/0/min`.
///
/// # Errors
/// All that is wrong with it, field by field.
pub fn read(typed: &TypedValue, need: Option<&Need>) -> Result<Value, Vec<FieldProblem>> {
    let mut pass = Pass::default();
    let value = pass.value(&typed.is, need);
    if pass.problems.is_empty()
        && let Err(message) = super::read(&value)
    {
        pass.tell("", message);
    }
    if typed.source.trim().is_empty() {
        pass.tell("source", sheet_no_source());
    }
    if pass.problems.is_empty() { Ok(value) } else { Err(pass.problems) }
}

/// Whether nothing is typed of a value that a sheet need not have.
pub(super) fn is_left_out(typed: &TypedValue, need: Option<&Need>) -> bool {
    typed.is.is_blank() && need.is_none_or(|need| need.asked != Asked::Needed)
}

#[derive(Default)]
struct Pass {
    problems: Vec<FieldProblem>,
}

impl Pass {
    fn tell(&mut self, field: impl Into<String>, message: Message) {
        self.problems.push(FieldProblem { field: field.into(), message });
    }

    /// The value as far as it can be read; what stands for the rest is told as a problem.
    fn value(&mut self, typed: &Typed, need: Option<&Need>) -> Value {
        match typed {
            Typed::Measure { value, unit } => {
                let value = self.number("value", value).unwrap_or_default();
                Value::Measure(Measure { value, unit: self.unit(unit, need) })
            }
            Typed::Range { min, max, unit } => {
                let (min, max) = (self.number("min", min), self.number("max", max));
                if let (Some(min), Some(max)) = (min, max)
                    && min > max
                {
                    self.tell("min", sheet_range(figure(min), figure(max)));
                }
                let (min, max) = (min.unwrap_or_default(), max.unwrap_or_default());
                Value::Range(Range { min, max, unit: self.unit(unit, need) })
            }
            Typed::Chart { temperature_unit, length_unit, points, agreement } => Value::Chart(Chart {
                points: self.points(points, temperature_unit, length_unit),
                agreement: Some(agreement)
                    .filter(|text| !text.trim().is_empty())
                    .and_then(|text| self.number("agreement", text)),
                temperature_unit: temperature_unit.trim().to_owned(),
                length_unit: length_unit.trim().to_owned(),
            }),
            Typed::Torque { fasteners, stages, unit, tolerance_percent, angle, positions, pattern } => {
                Value::Torque(Torque {
                    fasteners: self.fasteners(fasteners),
                    stages: self.stages(stages),
                    unit: unit.trim().to_owned(),
                    tolerance_percent: self
                        .number("tolerance_percent", tolerance_percent)
                        .unwrap_or_default(),
                    angle: angle.as_ref().map(|angle| AngleStage {
                        degrees: self.number("angle/degrees", &angle.degrees).unwrap_or_default(),
                        tolerance: self.number("angle/tolerance", &angle.tolerance).unwrap_or_default(),
                    }),
                    positions: self.positions(positions),
                    pattern: *pattern,
                })
            }
            Typed::Coils { unit, coils } => {
                Value::Coils(Coils { coils: self.coils(coils), unit: self.unit(unit, need) })
            }
            Typed::Count(text) => Value::Count(self.count(text, need)),
            Typed::Fact(word) => Value::Fact(self.word(word, need)),
            Typed::Text(text) => {
                if text.trim().is_empty() {
                    self.tell("value", sheet_no_text());
                }
                Value::Text(text.trim().to_owned())
            }
        }
    }

    fn number(&mut self, field: impl Into<String>, text: &str) -> Option<f64> {
        if text.trim().is_empty() {
            self.tell(field, sheet_no_number());
            return None;
        }
        parse_number(text).map_err(|error| self.tell(field, error.message())).ok()
    }

    /// The unit as typed. One that is not known is told when the value is read as a whole.
    fn unit(&mut self, text: &str, need: Option<&Need>) -> String {
        if let (Some(wanted), Ok(found)) = (need.and_then(|need| need.unit), text.parse::<Unit>())
            && !fits(wanted, found)
        {
            let (is, asked) = (found.quantity(), wanted.quantity());
            let differs = TradeError::QuantityDiffers { unit: found, found: is, wanted: asked };
            self.tell("unit", differs.message());
        }
        text.trim().to_owned()
    }

    /// The points by rising temperature.
    fn points(&mut self, typed: &[TypedPoint], temperature_unit: &str, length_unit: &str) -> Vec<ChartPoint> {
        let mut points: Vec<ChartPoint> = Vec::new();
        for (row, point) in typed.iter().enumerate() {
            let [at, low, high] = [("at", &point.at), ("low", &point.low), ("high", &point.high)]
                .map(|(name, text)| self.number(format!("points/{row}/{name}"), text));
            if let Some(at) = at
                && points.iter().any(|before| before.at == at)
            {
                self.tell(
                    format!("points/{row}/at"),
                    sheet_twice(format!("{} {temperature_unit}", figure(at))),
                );
            }
            if let (Some(at), Some(low), Some(high)) = (at, low, high)
                && (low < 0.0 || low >= high)
            {
                let with = |value, unit: &str| format!("{} {unit}", figure(value));
                let marks =
                    chart_marks(with(at, temperature_unit), with(low, length_unit), with(high, length_unit));
                self.tell(format!("points/{row}/low"), marks);
            }
            // A point of which only the temperature is there still tells that it stands twice.
            if let Some(at) = at {
                points.push(ChartPoint { at, low: low.unwrap_or_default(), high: high.unwrap_or_default() });
            }
        }
        points.sort_by(|one, other| one.at.total_cmp(&other.at));
        points
    }

    fn coils(&mut self, typed: &[TypedCoil]) -> Vec<NamedCoil> {
        let mut coils: Vec<NamedCoil> = Vec::new();
        for (row, coil) in typed.iter().enumerate() {
            let name = coil.name.trim();
            if name.is_empty() {
                self.tell(format!("coils/{row}/name"), sheet_coil_no_name());
            } else if coils.iter().any(|before| before.name == name) {
                self.tell(format!("coils/{row}/name"), sheet_coil_twice(name));
            }
            let [min, max] = [("min", &coil.min), ("max", &coil.max)]
                .map(|(field, text)| self.number(format!("coils/{row}/{field}"), text));
            if let (Some(min), Some(max)) = (min, max)
                && (min > max || min <= 0.0)
            {
                self.tell(format!("coils/{row}/min"), sheet_coil_range(name, figure(min), figure(max)));
            }
            let terminals = coil.terminals.trim();
            coils.push(NamedCoil {
                name: name.to_owned(),
                terminals: (!terminals.is_empty()).then(|| terminals.to_owned()),
                min: min.unwrap_or_default(),
                max: max.unwrap_or_default(),
            });
        }
        coils
    }

    fn stages(&mut self, typed: &[String]) -> Vec<f64> {
        let stages = typed.iter().enumerate();
        stages.filter_map(|(at, stage)| self.number(format!("stages/{at}"), stage)).collect()
    }

    fn positions(&mut self, typed: &[TypedPosition]) -> Vec<Position> {
        let read = |(at, position): (usize, &TypedPosition)| {
            let [x, y] = [("x", &position.x), ("y", &position.y)]
                .map(|(name, text)| self.number(format!("positions/{at}/{name}"), text));
            let note = position.note.trim();
            Some(Position { x: x?, y: y?, note: (!note.is_empty()).then(|| note.to_owned()) })
        };
        typed.iter().enumerate().filter_map(read).collect()
    }

    fn fasteners(&mut self, text: &str) -> u32 {
        let text = text.trim();
        match text.parse() {
            Ok(count) if count > 0 => count,
            _ => {
                let message = if text.is_empty() { sheet_no_number() } else { sheet_fasteners(text) };
                self.tell("fasteners", message);
                0
            }
        }
    }

    fn count(&mut self, text: &str, need: Option<&Need>) -> u8 {
        let text = text.trim();
        let least = need.map_or(0, |need| need.least);
        match text.parse() {
            Ok(count) if (least..=MOST_PIECES).contains(&count) => return count,
            _ if text.is_empty() => self.tell("value", sheet_no_number()),
            _ => self.tell("value", sheet_count(text, u32::from(least), u32::from(MOST_PIECES))),
        }
        0
    }

    fn word(&mut self, word: &str, need: Option<&Need>) -> String {
        let word = word.trim();
        let choices = need.map(|need| need.choices.as_slice()).unwrap_or_default();
        let known = Arg::AnyOf(choices.iter().map(|choice| choice.label.clone()).collect());
        match (word, choices) {
            ("", []) => self.tell("value", sheet_no_text()),
            ("", _) => self.tell("value", sheet_no_word(known)),
            (_, []) => {}
            _ if choices.iter().any(|choice| choice.id == word) => {}
            _ => self.tell("value", sheet_word(word, known)),
        }
        word.to_owned()
    }
}
