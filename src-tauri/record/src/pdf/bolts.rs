//! Fasteners in their places with their numbers, and a notch for each stage that was clicked.

use panside_job::figures::{BoltMap, FULL};

use super::flow::Flow;
use super::ink::{Ink, Look};
use super::sheet::{Owner, Place, area, line, rect};

/// From the middle of a fastener to its corners.
const RADIUS: f32 = 8.5;
/// Around the outermost fasteners: the cover's edge, and room for words.
const EDGE: f32 = 16.0;
/// The widest map.
const WIDEST: f32 = 300.0;

/// The width and height of a map in this room, its sides in their true proportion.
pub(super) fn size(map: &BoltMap, (width, height): (f32, f32)) -> (f32, f32) {
    let by_width = width.min(WIDEST) - 2.0 * EDGE;
    let share = map.height as f32 / FULL as f32;
    let inner = if share * by_width > height - 2.0 * EDGE { (height - 2.0 * EDGE) / share } else { by_width };
    (inner + 2.0 * EDGE, inner * share + 2.0 * EDGE)
}

/// Draws a map in a place of the page that is being written.
pub(super) fn draw(flow: &mut Flow<'_>, owner: Owner, map: &BoltMap, (x, y, width, height): Place) {
    flow.draw(owner, rect((x + 1.0, y + 1.0, width - 2.0, height - 2.0)), None, Some((Ink::Black, 1.0)));
    let (across, up) = (width - 2.0 * EDGE, height - 2.0 * EDGE);
    let clicked = map.stages.iter().filter(|stage| stage.clicked).count();
    for bolt in &map.bolts {
        let at = (
            x + EDGE + bolt.x as f32 / FULL as f32 * across,
            y + height - EDGE - bolt.y as f32 / FULL as f32 * up,
        );
        hexagon(flow, owner, at);
        notches(flow, owner, at, clicked);
        let number = bolt.number.to_string();
        let look = Look { ink: Ink::Black, ..Look::FOOT };
        let wide = flow.letters.one(&number, look).width;
        flow.label(owner, &number, look, at.0 - wide / 2.0, at.1 + 2.5);
        if let Some(note) = &bolt.note {
            let wide = flow.letters.one(note, Look::FOOT).width;
            // Towards the middle of the cover; over the notches where that is upwards.
            let up = at.1 > y + height / 2.0;
            let baseline = if up { at.1 - RADIUS - 7.0 } else { at.1 + RADIUS + 8.0 };
            flow.label(owner, note, Look::FOOT, at.0 - wide / 2.0, baseline);
        }
    }
}

fn hexagon(flow: &mut Flow<'_>, owner: Owner, (x, y): (f32, f32)) {
    let corner = |number: u8| {
        let angle = f32::from(number) * std::f32::consts::FRAC_PI_3;
        (x + RADIUS * angle.cos(), y + RADIUS * angle.sin())
    };
    let corners: Vec<_> = (0..6).map(corner).collect();
    flow.draw(owner, area(&corners), None, Some((Ink::Black, 0.8)));
}

/// Short strokes above a fastener.
fn notches(flow: &mut Flow<'_>, owner: Owner, (x, y): (f32, f32), count: usize) {
    for number in 0..count {
        let at = x - RADIUS / 2.0 + number as f32 * 3.0;
        let stroke = [(at, y - RADIUS - 5.0), (at, y - RADIUS - 1.0)];
        flow.draw(owner, line(&stroke), None, Some((Ink::Black, 1.4)));
    }
}
