//! Where the fasteners of a torque sit, and the order in which they are tightened.

use panside_procedure::format::sheet::{Pattern, Position, Torque};
use panside_trade::measure::Length;
use panside_trade::order::{self, Bolt, BoltOrder, bolt_order};

use crate::message::{Message, sheet_positions};

/// The fasteners of a torque whose places the sheet gives.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Bolts {
    /// Their order, by ids that count the sheet's positions from 1.
    pub order: BoltOrder,
    /// What is different about each, by its place on the sheet.
    notes: Vec<Option<String>>,
}

impl Bolts {
    /// Reads the positions of a torque; nothing where it has none.
    ///
    /// # Errors
    /// What is wrong with them: not as many as fasteners, two in one place, a number that no length has.
    pub fn of(torque: &Torque) -> Result<Option<Bolts>, Message> {
        let positions = &torque.positions;
        if positions.is_empty() {
            return Ok(None);
        }
        if u32::try_from(positions.len()) != Ok(torque.fasteners) {
            return Err(sheet_positions(positions.len(), i64::from(torque.fasteners)));
        }
        let bolts = positions.iter().enumerate().map(bolt).collect::<Result<Vec<_>, _>>()?;
        let order = bolt_order(&bolts, pattern(torque.pattern)).map_err(|error| error.message())?;
        let notes = positions.iter().map(|position| position.note.clone()).collect();
        Ok(Some(Bolts { order, notes }))
    }

    /// The fasteners in their order, each with what is different about it.
    pub fn in_order(&self) -> impl Iterator<Item = (&Bolt, Option<&String>)> {
        self.order.order.iter().filter_map(|id| {
            let place = self.order.bolts.iter().position(|bolt| bolt.id == *id)?;
            Some((self.order.bolts.get(place)?, self.notes.get(place)?.as_ref()))
        })
    }
}

fn bolt((place, position): (usize, &Position)) -> Result<Bolt, Message> {
    let length = |value| Length::from_millimetres(value).map_err(|error| error.message());
    Ok(Bolt { id: (place + 1).to_string(), x: length(position.x)?, y: length(position.y)? })
}

fn pattern(pattern: Pattern) -> order::Pattern {
    match pattern {
        Pattern::Crosswise => order::Pattern::Crosswise,
        Pattern::Star => order::Pattern::Star,
        Pattern::Spiral => order::Pattern::Spiral,
    }
}

#[cfg(test)]
mod tests {
    use panside_trade::FigureError;

    use super::*;

    fn torque(fasteners: u32, positions: &[(f64, f64)]) -> Torque {
        let positions = positions.iter().map(|&(x, y)| Position { x, y, note: None }).collect();
        Torque {
            fasteners,
            stages: vec![9.0],
            unit: "N·m".into(),
            tolerance_percent: 10.0,
            angle: None,
            positions,
            pattern: Pattern::Crosswise,
        }
    }

    #[test]
    fn a_map_needs_a_place_for_every_fastener_and_none_twice() {
        assert_eq!(Bolts::of(&torque(4, &[])), Ok(None), "a sheet need not have a map");
        assert_eq!(
            Bolts::of(&torque(4, &[(0.0, 0.0), (9.0, 0.0)])).unwrap_err(),
            sheet_positions(2_usize, 4_i64)
        );
        let twice = torque(3, &[(0.0, 0.0), (9.0, 0.0), (0.0, 0.0)]);
        let place = FigureError::BoltsInOnePlace { first: "1".into(), second: "3".into() };
        assert_eq!(Bolts::of(&twice).unwrap_err(), place.message());
    }

    #[test]
    fn fasteners_go_from_the_middle_out_each_followed_by_the_one_opposite() {
        let row = torque(4, &[(-90.0, 0.0), (-30.0, 0.0), (30.0, 0.0), (90.0, 0.0)]);
        let bolts = Bolts::of(&row).unwrap().unwrap();
        let ids: Vec<&str> = bolts.in_order().map(|(bolt, _)| bolt.id.as_str()).collect();
        assert_eq!(ids, ["2", "3", "1", "4"]);
    }
}
