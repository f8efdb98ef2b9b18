//! The fields in which a value is typed: blank, or with what a kept value says.

use panside_procedure::format::sheet::{
    Chart, ChartPoint, NamedCoil, Pattern, Position, Torque, Value, ValueKind,
};
use panside_trade::units::Unit;

use super::needs::Need;
use super::typed::{Typed, TypedAngle, TypedCoil, TypedPoint, TypedPosition};

pub(super) fn blank(need: &Need) -> Typed {
    let text = String::new;
    let unit = need.unit.map_or_else(text, |unit| unit.symbol().to_owned());
    match need.kind {
        ValueKind::Measure => Typed::Measure { value: text(), unit },
        ValueKind::Range => Typed::Range { min: text(), max: text(), unit },
        ValueKind::Chart => Typed::Chart {
            temperature_unit: "°C".to_owned(),
            length_unit: "mm".to_owned(),
            points: vec![TypedPoint::default(); 2],
            agreement: text(),
        },
        ValueKind::Torque => Typed::Torque {
            fasteners: text(),
            stages: vec![text()],
            unit: "N·m".to_owned(),
            tolerance_percent: text(),
            positions: Vec::new(),
            pattern: Pattern::default(),
            angle: None,
        },
        ValueKind::Coils => {
            Typed::Coils { unit: Unit::Ohm.symbol().to_owned(), coils: vec![TypedCoil::default()] }
        }
        ValueKind::Count => Typed::Count(text()),
        ValueKind::Fact => Typed::Fact(text()),
        ValueKind::Text => Typed::Text(text()),
    }
}

pub(super) fn typed(value: &Value) -> Typed {
    match value {
        Value::Measure(measure) => {
            Typed::Measure { value: measure.value.to_string(), unit: measure.unit.clone() }
        }
        Value::Range(range) => {
            Typed::Range { min: range.min.to_string(), max: range.max.to_string(), unit: range.unit.clone() }
        }
        Value::Chart(is) => chart(is),
        Value::Torque(is) => torque(is),
        Value::Coils(list) => {
            Typed::Coils { unit: list.unit.clone(), coils: list.coils.iter().map(coil).collect() }
        }
        Value::Count(count) => Typed::Count(count.to_string()),
        Value::Fact(word) => Typed::Fact(word.clone()),
        Value::Text(text) => Typed::Text(text.clone()),
    }
}

fn coil(coil: &NamedCoil) -> TypedCoil {
    TypedCoil {
        name: coil.name.clone(),
        terminals: coil.terminals.clone().unwrap_or_default(),
        min: coil.min.to_string(),
        max: coil.max.to_string(),
    }
}

fn chart(chart: &Chart) -> Typed {
    let point = |point: &ChartPoint| TypedPoint {
        at: point.at.to_string(),
        low: point.low.to_string(),
        high: point.high.to_string(),
    };
    Typed::Chart {
        temperature_unit: chart.temperature_unit.clone(),
        length_unit: chart.length_unit.clone(),
        points: chart.points.iter().map(point).collect(),
        agreement: chart.agreement.map(|agreement| agreement.to_string()).unwrap_or_default(),
    }
}

fn torque(torque: &Torque) -> Typed {
    let position = |position: &Position| TypedPosition {
        x: position.x.to_string(),
        y: position.y.to_string(),
        note: position.note.clone().unwrap_or_default(),
    };
    Typed::Torque {
        fasteners: torque.fasteners.to_string(),
        stages: torque.stages.iter().map(f64::to_string).collect(),
        unit: torque.unit.clone(),
        tolerance_percent: torque.tolerance_percent.to_string(),
        positions: torque.positions.iter().map(position).collect(),
        pattern: torque.pattern,
        angle: torque.angle.map(|angle| TypedAngle {
            degrees: angle.degrees.to_string(),
            tolerance: angle.tolerance.to_string(),
        }),
    }
}
