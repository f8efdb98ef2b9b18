//! The core's figures on a page. Every place and word is the core's; here they only become lines and letters.

use panside_job::figures::{Drawing, Figure};

use super::flow::Flow;
use super::sheet::Place;
use super::{bolts, plot};
use crate::messages;

/// Which readings have words beside them.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Said {
    All,
    OfWhatCounts,
}

/// The width and height that a figure takes at most.
pub(super) fn size(figure: &Figure, room: (f32, f32)) -> (f32, f32) {
    match &figure.drawing {
        Drawing::Plot(_) => room,
        Drawing::Bolts(map) => bolts::size(map, room),
    }
}

/// Draws a figure in a place of the page that is being written.
pub(super) fn draw(flow: &mut Flow<'_>, figure: &Figure, place: Place, said: Said) {
    let alt: Vec<String> = figure.says.iter().map(|says| says.said()).collect();
    let alt = flow.say.says(&messages::figure_alt(figure.title.said(), alt.join(" ")));
    let owner = flow.figure(alt, place);
    match &figure.drawing {
        Drawing::Plot(drawn) => plot::draw(flow, owner, drawn, place, said),
        Drawing::Bolts(map) => bolts::draw(flow, owner, map, place),
    }
}
