//! A measured edge, thousands of points with the noise of its source, as an outline of few
//! knots.
//!
//! The core's own fitting takes its knots from the points, and every turn between two of them
//! for what was meant. So corners are looked for here over a length no noise spans, the edge
//! is smoothed between them, and the core is given a few hundred points of that.

use plumpline_core::outline::POLE_MM;
use plumpline_core::{Error, Outline, Result, Rz, Unit};

/// Steps the edge is divided into.
const STEPS: usize = 1200;
/// Points the core is given.
const POINTS: f64 = 200.0;
/// A turn over this share of the edge's length is one place, not a curve.
const WINDOW: f64 = 0.015;
/// A turn that is a corner, degrees: what the core calls one.
const CORNER: f64 = 33.0;
/// A turn at a pole, where the edge meets its own mirror image, that is a tip, degrees.
const TIP: f64 = 62.0;

/// An outline and how far it lies from what it was fitted to.
#[derive(Debug, Clone, PartialEq)]
pub struct FittedLine {
    /// The outline.
    pub outline: Outline,
    /// Greatest distance of a point from it, mm.
    pub furthest_mm: f64,
    /// Root mean square of all distances, mm.
    pub rms_mm: f64,
    /// How far the points stray from the smooth edge through them, root mean square, mm.
    pub rough_mm: f64,
}

impl FittedLine {
    /// How many knots it has and how near it comes, a sentence without its full stop; lengths
    /// in `unit`.
    pub fn told(&self, unit: Unit) -> String {
        let (knots, off) = (self.outline.knots.len(), fine(unit, self.furthest_mm));
        format!("{knots} knots; the line lies within {off} of what was read")
    }
}

/// A length of less than a few millimetres, to about a hundredth of one.
pub(crate) fn fine(unit: Unit, mm: f64) -> String {
    match unit {
        Unit::Inch => format!("{:.3} in", mm / unit.mm()),
        Unit::Cm | Unit::Mm => format!("{mm:.2} mm"),
    }
}

/// The outline with few knots that keeps within `tolerance_mm` of the edge through `points`
/// (working order; ends at a radius ≤ 0.01 mm are poles), smoothed over about `smooth_mm`;
/// 0 for points that have no noise.
///
/// # Errors
/// For fewer than three points, a point that cannot be, and whatever
/// [`Outline::through_points`] refuses.
pub fn fit(points: &[Rz], tolerance_mm: f64, smooth_mm: f64) -> Result<FittedLine> {
    let no_line = |what: &str| Error::new("profile", what, "give it from end to end");
    if points.len() < 3 {
        return Err(no_line("fewer than three points"));
    }
    if points.iter().any(|p| !(p.r.is_finite() && p.z.is_finite() && p.r >= 0.0)) {
        return Err(no_line("a radius or height that cannot be"));
    }
    if !(tolerance_mm > 0.0 && tolerance_mm.is_finite() && smooth_mm >= 0.0) {
        return Err(Error::new("tolerance", "it is no length", "give more than 0 mm"));
    }
    let edge = EdgeLine::through(points).ok_or_else(|| no_line("a profile of no length"))?;
    let corners = edge.corners();
    let smooth = edge.smoothed(&corners, smooth_mm);
    let few = edge.thinned(&smooth, &corners);
    let outline = Outline::through_points(&few, tolerance_mm)?;
    let places = outline.profile(STEPS).places();
    let (furthest_mm, rms_mm) = apart(points, &places);
    let (_, rough_mm) = apart(points, &smooth);
    Ok(FittedLine { outline, furthest_mm, rms_mm, rough_mm })
}

/// The edge at evenly spaced places.
struct EdgeLine {
    at: Vec<Rz>,
    step: f64,
}

impl EdgeLine {
    fn through(points: &[Rz]) -> Option<Self> {
        let mut along = vec![0.0];
        for pair in points.windows(2) {
            along.push(along[along.len() - 1] + pair[0].distance(pair[1]));
        }
        let length = along.last().copied().filter(|&l| l > 1e-6)?;
        let step = length / STEPS as f64;
        let mut i = 0;
        let mut at = Vec::with_capacity(STEPS + 1);
        for k in 0..=STEPS {
            let s = step * k as f64;
            while i + 2 < along.len() && along[i + 1] < s {
                i += 1;
            }
            let t = ((s - along[i]) / (along[i + 1] - along[i]).max(1e-12)).clamp(0.0, 1.0);
            let (a, b) = (points[i], points[i + 1]);
            at.push(Rz::new(a.r + t * (b.r - a.r), a.z + t * (b.z - a.z)));
        }
        Some(Self { at, step })
    }

    fn is_pole(&self, i: usize) -> bool {
        self.at[i].r <= POLE_MM
    }

    /// The place `k` steps from the start, on the mirror image beyond a pole.
    fn mirrored(&self, k: isize) -> Option<Rz> {
        let last = self.at.len() as isize - 1;
        if (0..=last).contains(&k) {
            return Some(self.at[k as usize]);
        }
        let (end, back) = if k < 0 { (0, -k) } else { (last, 2 * last - k) };
        if !self.is_pole(end as usize) || !(0..=last).contains(&back) {
            return None;
        }
        let p = self.at[back as usize];
        Some(Rz::new(-p.r, p.z))
    }

    /// How far the edge turns at `i`, from chord to chord over `wide` steps, degrees.
    fn turn(&self, i: usize, wide: usize) -> f64 {
        let (i, wide) = (i as isize, wide as isize);
        let (Some(a), Some(b)) = (self.mirrored(i - wide), self.mirrored(i + wide)) else {
            return 0.0;
        };
        let at = self.at[i as usize];
        let (from, to) = ((at.r - a.r, at.z - a.z), (b.r - at.r, b.z - at.z));
        let (dot, cross) = (from.0 * to.0 + from.1 * to.1, from.0 * to.1 - from.1 * to.0);
        cross.atan2(dot).to_degrees().abs()
    }

    /// Where the edge turns sharply, both ends included: a turn that stays as great over half
    /// the length is in one place, that of a curve becomes half.
    fn corners(&self) -> Vec<usize> {
        let last = self.at.len() - 1;
        let wide = (WINDOW * self.at.len() as f64) as usize;
        let turns: Vec<f64> = (0..=last).map(|i| self.turn(i, wide)).collect();
        let sharp =
            |i: usize, least: f64| turns[i] > least && self.turn(i, wide / 2) > 0.7 * turns[i];
        let mut corners = vec![0];
        for i in 1..last {
            let (from, to) = (i.saturating_sub(wide), (i + wide).min(last));
            let greatest = (from..=to).all(|j| turns[j] < turns[i] || j == i)
                || ((from..i).all(|j| turns[j] < turns[i])
                    && (i..=to).all(|j| turns[j] <= turns[i]));
            let at_a_tip = (i < wide && sharp(0, TIP)) || (i + wide > last && sharp(last, TIP));
            if greatest && sharp(i, CORNER) && !at_a_tip {
                corners.push(i);
            }
        }
        corners.push(last);
        corners
    }

    fn is_tip(&self, i: usize) -> bool {
        let wide = (WINDOW * self.at.len() as f64) as usize;
        self.is_pole(i)
            && self.turn(i, wide) > TIP
            && self.turn(i, wide / 2) > 0.7 * self.turn(i, wide)
    }

    /// The edge averaged (by a Gaussian of standard deviation `over`, mm) between its
    /// corners, which stay where they are, and smooth across its round poles.
    fn smoothed(&self, corners: &[usize], over: f64) -> Vec<Rz> {
        let sigma = over / self.step;
        if sigma < 0.3 {
            return self.at.clone();
        }
        let reach = (3.0 * sigma).ceil() as isize;
        let weights: Vec<f64> =
            (-reach..=reach).map(|k| (-0.5 * (k as f64 / sigma).powi(2)).exp()).collect();
        let total: f64 = weights.iter().sum();
        let last = self.at.len() - 1;
        let round = |i: usize| (i == 0 || i == last) && self.is_pole(i) && !self.is_tip(i);
        let mut out = self.at.clone();
        for ends in corners.windows(2) {
            let (from, to) = (ends[0] as isize, ends[1] as isize);
            let place = |k: isize| -> Rz {
                let (end, beyond) = if k < from {
                    (from, 2 * from - k)
                } else if k > to {
                    (to, 2 * to - k)
                } else {
                    return self.at[k as usize];
                };
                let back = self.at[beyond.clamp(from, to) as usize];
                if round(end as usize) {
                    return Rz::new(-back.r, back.z);
                }
                // The point image beyond a fixed end, so that the average leaves it there.
                let end = self.at[end as usize];
                Rz::new(2.0 * end.r - back.r, 2.0 * end.z - back.z)
            };
            for i in from..=to {
                let (mut r, mut z) = (0.0, 0.0);
                for (weight, k) in weights.iter().zip(-reach..) {
                    let p = place(i + k);
                    r += weight * p.r;
                    z += weight * p.z;
                }
                out[i as usize] = Rz::new(r / total, z / total);
            }
        }
        for &end in &[0, last] {
            if self.is_pole(end) {
                out[end].r = 0.0;
            }
        }
        out
    }

    /// A few hundred places of the smooth edge, its corners among them.
    fn thinned(&self, smooth: &[Rz], corners: &[usize]) -> Vec<Rz> {
        let mut few = vec![smooth[0]];
        for ends in corners.windows(2) {
            let share = (ends[1] - ends[0]) as f64 / STEPS as f64;
            let count = (share * POINTS).ceil().max(1.0) as usize;
            few.extend((1..=count).map(|k| smooth[ends[0] + (ends[1] - ends[0]) * k / count]));
        }
        few.dedup_by(|a, b| a.distance(*b) < 1e-5);
        let inner = few.len().saturating_sub(1);
        for p in few.iter_mut().take(inner).skip(1) {
            p.r = p.r.max(2.0 * POLE_MM);
        }
        few
    }
}

/// Greatest and root mean square distance of `points` from the polyline `line`, mm.
fn apart(points: &[Rz], line: &[Rz]) -> (f64, f64) {
    /// Pieces of the line that are looked at together.
    const STRETCH: usize = 24;
    // Stretches share their ends, and one whose box is further off than the nearest piece
    // that is known is passed over.
    let stretches: Vec<(&[Rz], [f64; 4])> = (0..line.len().saturating_sub(1))
        .step_by(STRETCH)
        .map(|i| &line[i..(i + STRETCH + 1).min(line.len())])
        .map(|stretch| (stretch, extent(stretch)))
        .collect();
    let (mut furthest, mut sum, mut near) = (0.0_f64, 0.0, 0);
    for &p in points {
        // The nearest is mostly where that of the point before was.
        let mut off = from_polyline(p, stretches.get(near).map_or(&[][..], |s| s.0));
        for (i, (stretch, [low_r, high_r, low_z, high_z])) in stretches.iter().enumerate() {
            let across = (low_r - p.r).max(p.r - high_r).max(0.0);
            let along = (low_z - p.z).max(p.z - high_z).max(0.0);
            if across.max(along) < off {
                let here = from_polyline(p, stretch);
                if here < off {
                    (off, near) = (here, i);
                }
            }
        }
        furthest = furthest.max(off);
        sum += off * off;
    }
    (furthest, (sum / points.len().max(1) as f64).sqrt())
}

fn from_polyline(p: Rz, line: &[Rz]) -> f64 {
    let pieces = line.windows(2);
    pieces.map(|pair| p.distance_to_segment(pair[0], pair[1])).fold(f64::INFINITY, f64::min)
}

/// Least and greatest radius, least and greatest height.
fn extent(line: &[Rz]) -> [f64; 4] {
    line.iter().fold([f64::MAX, f64::MIN, f64::MAX, f64::MIN], |[a, b, c, d], p| {
        [a.min(p.r), b.max(p.r), c.min(p.z), d.max(p.z)]
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A cone on a cylinder with a flat base: a tip, two corners, and steps like a pixel's.
    fn stepped(step: f64) -> Vec<Rz> {
        let shape = |z: f64| if z < 60.0 { 0.5 * z } else { 30.0 };
        let rows = (100.0 / step) as u32;
        let mut points = vec![Rz::new(0.0, 0.0)];
        points.extend((0..rows).map(|i| {
            let z = step * (f64::from(i) + 0.5);
            Rz::new((shape(z) / step).round() * step, z)
        }));
        points.push(Rz::new(0.0, 100.0));
        points
    }

    #[test]
    fn corners_and_tips_survive_steps_as_of_pixels() {
        let fitted = fit(&stepped(0.2), 0.3, 0.8).expect("an outline");
        let knots = &fitted.outline.knots;
        let corners: Vec<_> = knots.iter().filter(|k| k.corner).collect();
        assert!(knots.len() <= 9, "{knots:?}");
        assert!(knots[0].corner, "the tip: {knots:?}");
        assert!(corners.iter().any(|k| (k.height_mm - 100.0).abs() < 1.0), "{knots:?}");
        assert!(fitted.rms_mm < 0.2, "{fitted:?}");
    }

    #[test]
    fn a_ball_has_few_knots_and_no_corner() {
        let points: Vec<Rz> = (0..=720)
            .map(|i| {
                let turn = std::f64::consts::PI * f64::from(i) / 720.0;
                let r = if i % 720 == 0 { 0.0 } else { 40.0 * turn.sin() };
                Rz::new(r, 40.0 * (1.0 - turn.cos()))
            })
            .collect();
        let fitted = fit(&points, 0.2, 0.0).expect("a ball");
        assert!(fitted.outline.knots.len() <= 7, "{:?}", fitted.outline);
        assert!(fitted.outline.knots.iter().all(|k| !k.corner));
        assert!(fitted.furthest_mm < 0.25, "{fitted:?}");
    }

    #[test]
    fn what_is_no_profile_is_refused() {
        let same = vec![Rz::new(1.0, 1.0); 5];
        let wrong = vec![Rz::new(0.0, 0.0), Rz::new(f64::NAN, 1.0), Rz::new(0.0, 3.0)];
        for points in [vec![], same, wrong] {
            assert!(fit(&points, 0.1, 0.0).is_err());
        }
        assert!(fit(&stepped(0.2), 0.0, 0.0).is_err());
    }
}
