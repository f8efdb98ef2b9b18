//! Places for words in a drawing, so that they cover neither each other nor what they belong to.

use super::sheet::Place;

/// Words that want a place beside a point.
#[derive(Clone, Copy)]
pub(super) struct Label {
    /// The point.
    pub at: (f32, f32),
    /// Their width and height.
    pub size: (f32, f32),
}

/// What is around the words.
pub(super) struct Around {
    /// What they never cover.
    pub crosses: Vec<Place>,
    /// What they cover only where there is no other room.
    pub edges: Vec<Place>,
    /// What they stay in.
    pub inside: Place,
}

/// Gap between a point and its words.
const GAP: f32 = 6.0;
/// How far words go up or down to find room.
const RINGS: i16 = 7;

/// The top left corner for each, in the order given; nothing where there is no room.
pub(super) fn place(labels: &[Label], around: &Around) -> Vec<Option<(f32, f32)>> {
    let mut taken = around.crosses.clone();
    let mut places = Vec::new();
    for label in labels {
        let of = |(x, y): (f32, f32)| (x, y, label.size.0, label.size.1);
        let is_free = |at: &(f32, f32)| {
            holds(around.inside, of(*at)) && !taken.iter().any(|other| meet(*other, of(*at)))
        };
        let is_clear = |at: &(f32, f32)| !around.edges.iter().any(|edge| meet(*edge, of(*at)));
        let found = candidates(label).find(|at| is_free(at) && is_clear(at));
        let found = found.or_else(|| candidates(label).find(is_free));
        taken.extend(found.map(of));
        places.push(found);
    }
    places
}

/// A line from a point to its words, where they do not stand right beside it.
pub(super) fn leader(label: &Label, (x, y): (f32, f32)) -> Option<[(f32, f32); 2]> {
    let middle = y + label.size.1 / 2.0;
    let end = if x > label.at.0 { x - 1.5 } else { x + label.size.0 + 1.5 };
    ((middle - label.at.1).abs() > label.size.1).then_some([label.at, (end, middle)])
}

/// Right of the point, left of it, then the same higher and lower.
fn candidates(label: &Label) -> impl Iterator<Item = (f32, f32)> {
    let ((x, y), (width, height)) = (label.at, label.size);
    let rows = (0..RINGS).flat_map(|ring| if ring == 0 { vec![0] } else { vec![ring, -ring] });
    rows.flat_map(move |row| {
        let top = y - height / 2.0 + f32::from(row) * height * 0.6;
        [(x + GAP, top), (x - GAP - width, top)]
    })
}

fn holds(outer: Place, inner: Place) -> bool {
    inner.0 >= outer.0
        && inner.1 >= outer.1
        && inner.0 + inner.2 <= outer.0 + outer.2
        && inner.1 + inner.3 <= outer.1 + outer.3
}

fn meet(one: Place, other: Place) -> bool {
    one.0 < other.0 + other.2
        && other.0 < one.0 + one.2
        && one.1 < other.1 + other.3
        && other.1 < one.1 + one.3
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_at_one_point_do_not_cover_each_other_and_stay_inside() {
        let label = Label { at: (50.0, 50.0), size: (30.0, 9.0) };
        let inside = (0.0, 0.0, 100.0, 100.0);
        let around =
            Around { crosses: vec![(46.0, 46.0, 8.0, 8.0)], edges: vec![(60.0, 50.0, 9.0, 1.0)], inside };
        let places = place(&[label; 4], &around);
        let found: Vec<_> = places.iter().flatten().map(|(x, y)| (*x, *y, 30.0, 9.0)).collect();
        assert_eq!(found.len(), 4);
        for (at, one) in found.iter().enumerate() {
            assert!(holds(inside, *one));
            assert!(!meet(around.edges[0], *one), "there was room beside the edge");
            assert!(found.iter().skip(at + 1).all(|other| !meet(*one, *other)));
        }
        let narrow = Around { crosses: Vec::new(), edges: Vec::new(), inside: (0.0, 0.0, 20.0, 20.0) };
        assert_eq!(place(&[label], &narrow), [None]);
    }
}
