//! The magnet: a dragged knot takes the axis, the radius or the height of another knot, or
//! whole millimetres (sixteenths of an inch), whichever is near.

use egui::{Painter, Stroke};
use plumpline_core::outline::Rz;

use super::ground::Ground;
use crate::kit::Tokens;

/// How near a place has to be to draw a knot to it, points.
pub(super) const PULL: f32 = 6.0;

/// What a knot has snapped to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Guide {
    /// The axis, or the radius of the knot at this place.
    Radius(Rz),
    /// The height of the knot at this place.
    Height(Rz),
    /// A whole step of the grid in radius, at this place.
    WholeRadius(Rz),
    /// A whole step of the grid in height, at this place.
    WholeHeight(Rz),
}

/// Where a knot that is wanted at `wanted` goes among `others`, given that places within
/// `pull` mm draw it, and every `grid_mm` is such a place; and what it has snapped to. `closes` is whether it may go to the axis.
pub(super) fn snapped(
    wanted: Rz,
    others: &[Rz],
    (pull, grid_mm): (f64, f64),
    closes: bool,
) -> (Rz, Vec<Guide>) {
    let axis = closes.then_some(Rz::new(0.0, wanted.z));
    let radii = axis.iter().chain(others.iter().filter(|p| p.r > 0.0));
    let radius = nearest(radii, |p| p.r, wanted.r, pull);
    let height = nearest(others.iter(), |p| p.z, wanted.z, pull);
    let mut guides = Vec::new();
    let whole = |mm: f64| {
        let whole = (mm / grid_mm).round() * grid_mm;
        Some(whole).filter(|whole| (whole - mm).abs() <= pull)
    };
    let (whole_r, whole_z) = (whole(wanted.r), whole(wanted.z));
    let r = radius.map(|p| p.r).or(whole_r).unwrap_or(wanted.r);
    let z = height.map(|p| p.z).or(whole_z).unwrap_or(wanted.z);
    let at = Rz::new(r, z);
    match radius {
        Some(other) => guides.push(Guide::Radius(other)),
        None if whole_r.is_some() => guides.push(Guide::WholeRadius(at)),
        None => {}
    }
    match height {
        Some(other) => guides.push(Guide::Height(other)),
        None if whole_z.is_some() => guides.push(Guide::WholeHeight(at)),
        None => {}
    }
    (at, guides)
}

fn nearest<'a>(
    places: impl Iterator<Item = &'a Rz>,
    of: impl Fn(&Rz) -> f64,
    wanted: f64,
    pull: f64,
) -> Option<Rz> {
    let off = |p: &Rz| (of(p) - wanted).abs();
    places.filter(|p| off(p) <= pull).min_by(|a, b| off(a).total_cmp(&off(b))).copied()
}

/// Draws what was snapped to: a thin line through the other knot, a short one at a whole mm.
pub(super) fn paint(painter: &Painter, t: &Tokens, ground: &Ground, guides: &[Guide]) {
    let pen = Stroke::new(1.0, t.highlight_edge);
    for guide in guides {
        match *guide {
            Guide::Radius(other) => {
                painter.vline(ground.at(other).x, ground.rect.y_range(), pen);
                painter.vline(ground.mirrored(other).x, ground.rect.y_range(), pen);
            }
            Guide::Height(other) => {
                painter.hline(ground.rect.x_range(), ground.y(other.z), pen);
            }
            Guide::WholeRadius(at) => {
                let at = ground.at(at);
                painter.vline(at.x, at.y - 22.0..=at.y + 22.0, pen);
            }
            Guide::WholeHeight(at) => {
                let at = ground.at(at);
                painter.hline(at.x - 22.0..=at.x + 22.0, at.y, pen);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const OTHERS: [Rz; 3] = [Rz::new(0.0, 0.0), Rz::new(30.25, 20.0), Rz::new(18.0, 55.4)];

    #[test]
    fn heights_and_radii_of_other_knots_draw_the_nearest_first() {
        let (at, guides) = snapped(Rz::new(30.9, 55.0), &OTHERS, (1.2, 1.0), false);
        assert_eq!(at, Rz::new(30.25, 55.4));
        assert_eq!(guides, [Guide::Radius(OTHERS[1]), Guide::Height(OTHERS[2])]);
    }

    #[test]
    fn elsewhere_whole_millimetres_draw() {
        let (at, guides) = snapped(Rz::new(24.3, 40.8), &OTHERS, (1.2, 1.0), false);
        assert_eq!(at, Rz::new(24.0, 41.0));
        assert_eq!(guides, [Guide::WholeRadius(at), Guide::WholeHeight(at)]);
        let far = Rz::new(24.3, 40.8);
        assert_eq!(
            snapped(far, &OTHERS, (0.1, 1.0), false),
            (far, Vec::new()),
            "zoomed in far"
        );
    }

    #[test]
    fn under_inches_sixteenths_draw() {
        let sixteenth = plumpline_core::Unit::Inch.grid_mm();
        let (at, _) = snapped(Rz::new(25.9, 49.4), &[], (0.6, sixteenth), false);
        assert!((at.r - 25.4).abs() < 1e-9, "an inch: {}", at.r);
        assert!((at.z / sixteenth - (at.z / sixteenth).round()).abs() < 1e-9);
    }

    #[test]
    fn only_ends_go_to_the_axis() {
        assert_eq!(snapped(Rz::new(0.8, 70.0), &[], (1.2, 1.0), true).0.r, 0.0);
        let (at, guides) = snapped(Rz::new(0.8, 70.5), &OTHERS, (0.4, 1.0), false);
        assert_eq!(at.r, 1.0);
        assert_eq!(guides, [Guide::WholeRadius(at)]);
    }
}
