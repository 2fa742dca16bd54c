//! Changes of an outline as a whole: several knots moved or removed, all of it scaled. Pure:
//! a drag works each frame out from the outline as it was when the drag began, so that it
//! may cross a limit and come back unharmed.

use plumpline_core::outline::{LARGEST_MM, POLE_MM, Rz};
use plumpline_core::{Knot, Outline};

/// Knots other than poles stay this far from the axis, mm.
pub(crate) const OFF_AXIS_MM: f64 = 0.5;
/// Fewest knots an outline keeps when knots are removed.
const FEWEST: usize = 3;
/// Least and greatest factor of one scaling.
const FACTORS: (f64, f64) = (0.05, 20.0);
/// Pieces a span of the curve is sampled in.
const PIECES: usize = 24;

/// Whole micrometres, which keep files short.
pub(crate) fn whole(mm: f64) -> f64 {
    (mm * 1000.0).round() / 1000.0
}

/// The curve, span by span, mm.
pub(crate) fn spans(outline: &Outline) -> Vec<Vec<Rz>> {
    let curve = outline.beziers();
    let sampled = curve.iter().map(|b| {
        (0..=PIECES)
            .map(|i| {
                let t = i as f64 / PIECES as f64;
                let s = 1.0 - t;
                let w = [s * s * s, 3.0 * s * s * t, 3.0 * s * t * t, t * t * t];
                let x = w[0] * b.p0.x + w[1] * b.p1.x + w[2] * b.p2.x + w[3] * b.p3.x;
                let y = w[0] * b.p0.y + w[1] * b.p1.y + w[2] * b.p2.y + w[3] * b.p3.y;
                Rz::new(x, y)
            })
            .collect()
    });
    sampled.collect()
}

/// How far the curve of an outline reaches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Reach {
    /// Widest radius, mm.
    pub(crate) radius: f64,
    /// Least height, mm.
    pub(crate) low: f64,
    /// Greatest height, mm.
    pub(crate) high: f64,
}

impl Reach {
    /// The reach of an outline.
    pub(crate) fn of(outline: &Outline) -> Self {
        let none = Self { radius: 0.0, low: f64::INFINITY, high: f64::NEG_INFINITY };
        spans(outline).iter().flatten().fold(none, |reach, at| Self {
            radius: reach.radius.max(at.r),
            low: reach.low.min(at.z),
            high: reach.high.max(at.z),
        })
    }

    /// Height, mm.
    pub(crate) fn height(&self) -> f64 {
        self.high - self.low
    }

    /// Width, mm.
    pub(crate) fn width(&self) -> f64 {
        2.0 * self.radius
    }
}

/// `outline` with these knots moved by `by`, mm. Poles stay on the axis and inner knots off
/// it; an open end that comes to the axis is closed there.
pub(crate) fn moved(outline: &Outline, knots: &[usize], by: Rz) -> Outline {
    let mut outline = outline.clone();
    let last = outline.knots.len().saturating_sub(1);
    for &index in knots {
        let Some(knot) = outline.knots.get_mut(index) else { continue };
        let end = index == 0 || index == last;
        *knot = placed(*knot, Rz::new(knot.radius_mm + by.r, knot.height_mm + by.z), end);
    }
    outline
}

/// `outline` with its first or last knot, a pole, drawn off the axis by `radius_mm`: an open end.
pub(crate) fn opened(outline: &Outline, index: usize, radius_mm: f64) -> Outline {
    let mut outline = outline.clone();
    if let Some(knot) = outline.knots.get_mut(index).filter(|knot| knot.is_pole()) {
        knot.radius_mm = whole(radius_mm.clamp(OFF_AXIS_MM, LARGEST_MM));
    }
    outline
}

/// The knot at another place; `end` is whether it is the first or the last.
fn placed(knot: Knot, at: Rz, end: bool) -> Knot {
    let height_mm = whole(at.z.clamp(-LARGEST_MM, LARGEST_MM));
    if knot.is_pole() {
        return Knot { height_mm, ..knot };
    }
    if end && at.r <= POLE_MM {
        // Nothing holds a pole.
        return Knot { radius_mm: 0.0, height_mm, hold: None, ..knot };
    }
    Knot { radius_mm: whole(at.r.clamp(OFF_AXIS_MM, LARGEST_MM)), height_mm, ..knot }
}

/// `outline` without those of these knots that are no ends. Three knots stay at least: the
/// widest of those that were to go.
pub(crate) fn without(outline: &Outline, knots: &[usize]) -> Outline {
    let last = outline.knots.len().saturating_sub(1);
    let mut going: Vec<usize> = knots.iter().copied().filter(|&k| k > 0 && k < last).collect();
    let radius = |k: &usize| outline.knots[*k].radius_mm;
    going.sort_by(|a, b| radius(a).total_cmp(&radius(b)));
    going.dedup();
    going.truncate(outline.knots.len().saturating_sub(FEWEST));
    let stays = |i: &usize| !going.contains(i);
    let kept = (0..outline.knots.len()).filter(stays).map(|i| outline.knots[i]);
    Outline { knots: kept.collect() }
}

/// `outline` with these knots corners, or smooth.
pub(crate) fn cornered(outline: &Outline, knots: &[usize], corner: bool) -> Outline {
    let mut outline = outline.clone();
    for &index in knots {
        if let Some(knot) = outline.knots.get_mut(index) {
            knot.corner = corner;
        }
    }
    outline
}

/// `outline` with radii times `across` and heights, counted from its foot, times `along`:
/// the foot (the greatest height) stays where it is.
pub(crate) fn scaled_on_foot(outline: &Outline, across: f64, along: f64) -> Outline {
    let [across, along] = [across, along].map(|f| f.clamp(FACTORS.0, FACTORS.1));
    let foot = outline.knots.iter().fold(f64::NEG_INFINITY, |foot, k| k.height_mm.max(foot));
    let last = outline.knots.len().saturating_sub(1);
    let knots = outline.knots.iter().enumerate().map(|(i, knot)| {
        let r = (knot.radius_mm * across).max(OFF_AXIS_MM);
        placed(*knot, Rz::new(r, foot + (knot.height_mm - foot) * along), i == 0 || i == last)
    });
    Outline { knots: knots.collect() }
}

/// Index of the narrowest inner place of a side: the least radius from which the side comes
/// out again both ways by more than `depth`, mm.
pub(crate) fn neck(side: &[Rz], depth: f64) -> Option<usize> {
    let widest_up_to = |places: &mut dyn Iterator<Item = &Rz>| -> Vec<f64> {
        let mut widest = 0.0_f64;
        places
            .map(|p| {
                widest = widest.max(p.r);
                widest
            })
            .collect()
    };
    let before = widest_up_to(&mut side.iter());
    let mut after = widest_up_to(&mut side.iter().rev());
    after.reverse();
    (0..side.len())
        .filter(|&k| before[k].min(after[k]) - side[k].r > depth)
        .min_by(|&a, &b| side[a].r.total_cmp(&side[b].r))
}

#[cfg(test)]
mod tests {
    use super::*;
    use plumpline_core::Hold;

    /// Two bulges with a waist between them, closed above and open below.
    fn gourd() -> Outline {
        Outline {
            knots: vec![
                Knot::new(0.0, 0.0),
                Knot::new(30.0, 25.0),
                Knot::new(12.0, 50.0),
                Knot::new(36.0, 80.0),
                Knot { hold: Some(Hold::Sewn), ..Knot::new(10.0, 110.0) },
            ],
        }
    }

    #[test]
    fn several_knots_move_as_one_and_keep_to_the_axis() {
        let now = moved(&gourd(), &[0, 1], Rz::new(4.0, -3.0));
        assert_eq!(now.knots[0].place(), Rz::new(0.0, -3.0), "a pole stays on the axis");
        assert_eq!(now.knots[1].place(), Rz::new(34.0, 22.0));
        assert_eq!(now.knots[2], gourd().knots[2]);
        let now = moved(&gourd(), &[2], Rz::new(-50.0, 0.0));
        assert_eq!(now.knots[2].radius_mm, OFF_AXIS_MM);
        assert_eq!(moved(&gourd(), &[77], Rz::new(1.0, 1.0)), gourd());
    }

    #[test]
    fn an_open_end_closes_on_the_axis() {
        let now = moved(&gourd(), &[4], Rz::new(-10.0, 0.0));
        assert!(now.finishes_closed());
        assert_eq!(now.knots[4].hold, None);
        assert!(!moved(&gourd(), &[4], Rz::new(-9.0, 0.0)).finishes_closed());
    }

    #[test]
    fn ends_and_the_last_inner_knot_are_never_removed() {
        let now = without(&gourd(), &[0, 2, 4]);
        assert_eq!(now.knots.len(), 4);
        let now = without(&gourd(), &[0, 1, 2, 3, 4]);
        assert_eq!(now.knots.len(), 3);
        assert_eq!(now.knots[1], gourd().knots[3], "the widest stays");
    }

    #[test]
    fn scaling_leaves_foot_and_axis_where_they_are() {
        let now = scaled_on_foot(&gourd(), 1.0, 0.5);
        assert_eq!(now.knots[4].place(), gourd().knots[4].place());
        assert_eq!(now.knots[0].place(), Rz::new(0.0, 55.0));
        let now = scaled_on_foot(&gourd(), 2.0, 1.0);
        assert_eq!(now.knots[3].place(), Rz::new(72.0, 80.0));
        assert!(now.knots[0].is_pole());
        let (was, is) = (Reach::of(&gourd()), Reach::of(&now));
        // The curve between the knots turns a little otherwise in other proportions.
        assert!((is.width() / was.width() - 2.0).abs() < 0.02, "{was:?} {is:?}");
        assert!((is.height() - was.height()).abs() < 0.5);
    }

    #[test]
    fn the_neck_is_the_narrowest_place_between_two_wide_ones() {
        let side: Vec<Rz> = gourd().profile(100).places();
        let at = side[neck(&side, 2.0).expect("a neck")];
        assert!((at.z - 50.0).abs() < 3.0, "{at:?}");
        let ball: Vec<Rz> = (0..=20)
            .map(|i| f64::from(i) / 20.0 * std::f64::consts::PI)
            .map(|a| Rz::new(30.0 * a.sin(), 30.0 - 30.0 * a.cos()))
            .collect();
        assert_eq!(neck(&ball, 0.5), None);
        assert_eq!(neck(&[], 0.5), None);
    }
}
