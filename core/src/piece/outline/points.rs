//! From measured or drawn points to the fewest knots whose curve keeps to them.

use super::{Knot, Outline, POLE_MM, Rz, spline};
use crate::error::{Error, Result};
use kurbo::{CubicBez, ParamCurve as _};

/// A turn sharper than this between two chords is meant as a corner: 30°.
const CORNER_COS: f64 = 0.866_025_403_784_438_6;

impl Outline {
    /// The outline with few knots that keeps within `tolerance_mm` of every one of `points`
    /// (working order; a first or last radius ≤ 0.01 mm is a pole).
    ///
    /// Knots are taken from the points: first the ends and corners, then the point furthest
    /// off until none is further than the tolerance, then every knot that proves needless is
    /// dropped again. Turns above 30° stay corners.
    ///
    /// # Errors
    /// Names the point (counted from 1) that is not a number, beyond range, on the axis in
    /// the middle, or on top of its neighbour; and whatever [`Outline::validate`] refuses.
    pub fn through_points(points: &[Rz], tolerance_mm: f64) -> Result<Self> {
        check(points)?;
        let knot = |i: usize| {
            let p = points[i];
            let r = if p.r <= POLE_MM { 0.0 } else { p.r };
            Knot { corner: is_corner(points, i), ..Knot::new(r, p.z) }
        };
        let last = points.len() - 1;
        let mut chosen: Vec<usize> =
            (0..=last).filter(|&i| i == 0 || i == last || knot(i).corner).collect();
        let build = |chosen: &[usize]| chosen.iter().map(|&i| knot(i)).collect::<Vec<_>>();
        loop {
            let knots = build(&chosen);
            let (at, off) = furthest(points, &chosen, &spline::curve(&knots));
            if off <= tolerance_mm || chosen.contains(&at) || chosen.len() > 399 {
                break;
            }
            let place = chosen.partition_point(|&i| i < at);
            chosen.insert(place, at);
        }
        let mut i = 1;
        while i + 1 < chosen.len() {
            let mut fewer = chosen.clone();
            let gone = fewer.remove(i);
            let keeps = !knot(gone).corner
                && furthest(points, &fewer, &spline::curve(&build(&fewer))).1 <= tolerance_mm;
            if keeps {
                chosen = fewer;
            } else {
                i += 1;
            }
        }
        Self::new(build(&chosen))
    }
}

fn check(points: &[Rz]) -> Result<()> {
    if points.len() < 2 {
        return Err(Error::new("points", "fewer than two", "give the profile from end to end"));
    }
    if points.len() > 20_000 {
        return Err(Error::new("points", "more than 20000", "thin them out"));
    }
    for (i, p) in points.iter().enumerate() {
        let at = || format!("point {}", i + 1);
        if !(p.r.is_finite() && p.z.is_finite()) || p.r < 0.0 {
            return Err(Error::new(
                at(),
                "a radius or height that cannot be",
                "give mm, radius ≥ 0",
            ));
        }
        if p.r > super::LARGEST_MM || p.z.abs() > super::LARGEST_MM {
            return Err(Error::new(at(), "more than 3 m away", "give radius and height in mm"));
        }
        if i > 0 && p.distance(points[i - 1]) < 1e-6 {
            return Err(Error::new(at(), "the same as the point before it", "leave it out"));
        }
        if i > 0 && i + 1 < points.len() && p.r <= POLE_MM {
            return Err(Error::new(at(), "on the axis in the middle", "end the piece there"));
        }
    }
    Ok(())
}

/// Whether the profile turns by more than 30° at a point; at a pole, whether it comes in
/// more than 30° off square.
fn is_corner(points: &[Rz], i: usize) -> bool {
    let toward = |a: Rz, b: Rz| {
        let d = a.distance(b);
        ((b.r - a.r) / d, (b.z - a.z) / d)
    };
    let last = points.len() - 1;
    if i == 0 || i == last {
        let neighbour = if i == 0 { points[1] } else { points[last - 1] };
        let (out, _) = toward(points[i], neighbour);
        return points[i].r <= POLE_MM && out < CORNER_COS;
    }
    let (ar, az) = toward(points[i - 1], points[i]);
    let (br, bz) = toward(points[i], points[i + 1]);
    ar * br + az * bz < CORNER_COS
}

/// The point furthest from the curve and its distance, each point measured against the span
/// its neighbours in `chosen` bound.
fn furthest(points: &[Rz], chosen: &[usize], curve: &[CubicBez]) -> (usize, f64) {
    let mut worst = (0, 0.0);
    for (span, bezier) in chosen.windows(2).zip(curve) {
        let steps = 8 * (span[1] - span[0]).clamp(4, 64);
        let trail: Vec<Rz> = (0..=steps)
            .map(|i| bezier.eval(i as f64 / steps as f64))
            .map(|p| Rz::new(p.x, p.y))
            .collect();
        for (i, &p) in points.iter().enumerate().take(span[1]).skip(span[0] + 1) {
            let off = trail
                .windows(2)
                .map(|pair| p.distance_to_segment(pair[0], pair[1]))
                .fold(f64::INFINITY, f64::min);
            if off > worst.1 {
                worst = (i, off);
            }
        }
    }
    worst
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drop_shape(n: u32) -> Vec<Rz> {
        (0..=n)
            .map(|i| {
                let t = std::f64::consts::PI * f64::from(i) / f64::from(n);
                let r = 40.5 * t.sin() * (1.0 + 0.35 * t.cos());
                Rz::new(if i == 0 || i == n { 0.0 } else { r }, 58.0 * (1.0 - t.cos()))
            })
            .collect()
    }

    #[test]
    fn few_knots_keep_to_many_points() {
        let points = drop_shape(300);
        let outline = Outline::through_points(&points, 0.092).expect("a drop is an outline");
        assert!(outline.knots.len() <= 16, "{} knots", outline.knots.len());
        let trail = outline.profile(2000).places();
        for p in points {
            let off = trail
                .windows(2)
                .map(|pair| p.distance_to_segment(pair[0], pair[1]))
                .fold(f64::INFINITY, f64::min);
            assert!(off <= 0.0925, "{p:?} is {off} mm off");
        }
    }

    #[test]
    fn a_sharp_turn_stays_a_corner() {
        let points =
            [Rz::new(0.0, 0.0), Rz::new(10.0, 0.0), Rz::new(20.0, 0.0), Rz::new(20.0, 15.0)];
        let outline = Outline::through_points(&points, 0.05).expect("a dish");
        assert_eq!(outline.knots.iter().filter(|k| k.corner).count(), 1);
    }
}
