//! The small-parts cylinder: whether a thing fits into it in any orientation.
//!
//! 16 CFR 1501.4: no toy for a child under 3, nor a part that comes off it, may fit entirely in
//! a cylinder 1.25 in wide and 2.25 in deep, uncompressed, in any orientation (inches govern).
//! The gauge that laboratories use has a slanted floor, so it holds less than the whole
//! cylinder here: what does not fit here does not fit there, and what fits here is called a
//! small part though a few such things would stand out of the gauge. That is the safe side.

use super::flat::circle_around;
use crate::piece::outline::Rz;
use crate::toy::vector::{V3, cross, dot, plus, scaled, unit};

/// Width of the cylinder, mm: 1.25 in.
pub const WIDE_MM: f64 = 1.25 * 25.4;

/// Its greatest depth, mm: 2.25 in.
pub const DEEP_MM: f64 = 2.25 * 25.4;

/// Hole that no small ball may pass under its own weight, mm: 1.75 in (16 CFR 1500.19).
pub const BALL_MM: f64 = 1.75 * 25.4;

/// What a search may miss: so much too large still counts as fitting.
const TIGHT: f64 = 1e-6;

/// What a step has to gain to be taken at its length.
const GAIN: f64 = 1e-10;

/// Directions tried before the best are bettered.
const DIRECTIONS: usize = 300;

/// How large a body turned about its axis is against the cylinder at best: 1 or less fits. Its
/// profile is convex or not; its hull is what is tried.
///
/// Only the angle between its axis and the cylinder's counts, so this is a search in one
/// number and exact to a millionth.
pub fn turned_against(profile: &[Rz]) -> f64 {
    let at = |angle: f64, rounds: u32| {
        let (sin, cos) = angle.sin_cos();
        let reach = |side: f64| {
            let ends = profile.iter().map(|p| side * p.z * cos + p.r * sin.abs());
            ends.fold(f64::NEG_INFINITY, f64::max)
        };
        let long = reach(1.0) + reach(-1.0);
        (long / DEEP_MM).max(2.0 * shadow(profile, sin, cos, rounds) / WIDE_MM)
    };
    // Looked over roughly, then gone down into beside the best few.
    let step = std::f64::consts::FRAC_PI_2 / f64::from(ANGLES);
    let rough = (0..=ANGLES).map(|i| (at(step * f64::from(i), 12), step * f64::from(i)));
    let mut rough: Vec<(f64, f64)> = rough.collect();
    rough.sort_by(|a, b| a.0.total_cmp(&b.0));
    let fine = |&(_, angle): &(f64, f64)| {
        least(angle - step, angle + step, 36, &|a| at(a, 36)).min(at(angle, 36))
    };
    rough.iter().take(3).map(fine).fold(f64::INFINITY, f64::min)
}

/// Angles that are looked over first.
const ANGLES: u32 = 48;

/// Radius of the smallest circle around what is seen of a turned body from an angle to its
/// axis. Each ring is seen as an ellipse; the circle's centre lies on the axis as it is seen.
fn shadow(profile: &[Rz], sin: f64, cos: f64, rounds: u32) -> f64 {
    let from = |centre: f64| {
        let far = profile.iter().map(|p| {
            let (off, wide, high) = ((p.z * sin - centre).abs(), p.r, p.r * cos.abs());
            // Farthest place of an ellipse from a place on its short axis.
            let gap = wide * wide - high * high;
            let q = if gap > 1e-15 { (off * high / gap).min(1.0) } else { 1.0 };
            let (along, aside) = (off + high * q, wide * (1.0 - q * q).max(0.0).sqrt());
            along.hypot(aside)
        });
        far.fold(0.0, f64::max)
    };
    let ends = profile.iter().map(|p| p.z * sin);
    let (low, high) =
        ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), z| (l.min(z), h.max(z)));
    least(low, high, rounds, &from)
}

/// The least value of a function with one valley between two places (golden section), its
/// ends among them.
fn least(from: f64, to: f64, rounds: u32, value: &impl Fn(f64) -> f64) -> f64 {
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    let (mut low, mut high) = (from, to);
    let (mut a, mut b) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
    let (mut at_a, mut at_b) = (value(a), value(b));
    for _ in 0..rounds {
        if at_a <= at_b {
            (high, b, at_b) = (b, a, at_a);
            a = high - GOLDEN * (high - low);
            at_a = value(a);
        } else {
            (low, a, at_a) = (a, b, at_b);
            b = low + GOLDEN * (high - low);
            at_b = value(b);
        }
    }
    at_a.min(at_b).min(value(from)).min(value(to))
}

/// How large the convex hull of `points` is against the cylinder at best: 1 or less fits.
///
/// The orientation is sought from many directions and from every pair of points and bettered
/// from the best of them.
pub fn hull_against(points: &[V3]) -> f64 {
    let at = |axis: V3| {
        let aside = if axis[0].abs() < 0.6 { [1.0, 0.0, 0.0] } else { [0.0, 1.0, 0.0] };
        let u = unit(cross(axis, aside));
        let v = cross(axis, u);
        let along = points.iter().map(|&p| dot(p, axis));
        let (low, high) =
            along.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), z| (l.min(z), h.max(z)));
        let seen: Vec<[f64; 2]> = points.iter().map(|&p| [dot(p, u), dot(p, v)]).collect();
        ((high - low) / DEEP_MM).max(2.0 * circle_around(&seen) / WIDE_MM)
    };
    let mut tried: Vec<(f64, V3)> =
        directions().chain(along_edges(points)).map(|d| (at(d), d)).collect();
    tried.sort_by(|a, b| a.0.total_cmp(&b.0));
    let better = tried.iter().take(5).map(|&(value, axis)| bettered(value, axis, &at));
    better.fold(f64::INFINITY, f64::min)
}

/// Steps of a search, at most: along a valley that is nearly level each gains next to nothing,
/// and there would be no end.
const MOST_STEPS: usize = 200;

/// Goes downhill from `axis` in ever smaller steps.
fn bettered(mut value: f64, mut axis: V3, at: &impl Fn(V3) -> f64) -> f64 {
    let mut step = 0.1;
    for _ in 0..MOST_STEPS {
        if step < 1e-8 {
            break;
        }
        let aside = if axis[0].abs() < 0.6 { [1.0, 0.0, 0.0] } else { [0.0, 1.0, 0.0] };
        let u = unit(cross(axis, aside));
        let v = cross(axis, u);
        let ways = (0..8).map(|i| {
            let (sin, cos) = (std::f64::consts::FRAC_PI_4 * f64::from(i)).sin_cos();
            unit(plus(axis, plus(scaled(u, cos), v, sin), step))
        });
        let next = ways.map(|d| (at(d), d)).min_by(|a, b| a.0.total_cmp(&b.0));
        match next {
            Some((less, way)) if less < value - GAIN => (value, axis) = (less, way),
            _ => step *= 0.5,
        }
    }
    value
}

/// Directions spread evenly over half a ball.
fn directions() -> impl Iterator<Item = V3> {
    (0..DIRECTIONS).map(|i| {
        let z = (i as f64 + 0.5) / DIRECTIONS as f64;
        let angle = 2.399_963_229_728_653 * i as f64;
        let out = (1.0 - z * z).sqrt();
        [out * angle.cos(), out * angle.sin(), z]
    })
}

/// Directions of the axes and of the edges between a few points: where boxes and rods fit.
fn along_edges(points: &[V3]) -> impl Iterator<Item = V3> {
    let few = &points[..points.len().min(12)];
    let pairs = few
        .iter()
        .enumerate()
        .flat_map(move |(i, &a)| few[i + 1..].iter().map(move |&b| unit(plus(b, a, -1.0))));
    let axes = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];
    axes.into_iter().chain(pairs.filter(|d| dot(*d, *d) > 0.5))
}

/// Whether something that is `against` times as large as the cylinder allows fits into it.
pub fn fits(against: f64) -> bool {
    against <= 1.0 + TIGHT
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ball(diameter: f64) -> Vec<Rz> {
        let r = 0.5 * diameter;
        (0..=40)
            .map(|i| {
                let (sin, cos) = (std::f64::consts::PI * f64::from(i) / 40.0).sin_cos();
                Rz::new(r * sin, -r * cos)
            })
            .collect()
    }

    fn drum(diameter: f64, long: f64) -> [Rz; 2] {
        [Rz::new(0.5 * diameter, 0.0), Rz::new(0.5 * diameter, long)]
    }

    fn block(a: f64, b: f64, c: f64) -> Vec<V3> {
        (0..8)
            .map(|i| {
                let side = |bit: u32, long: f64| if i >> bit & 1 == 1 { long } else { 0.0 };
                [side(0, a), side(1, b), side(2, c)]
            })
            .collect()
    }

    fn fits_turned(profile: &[Rz]) -> bool {
        fits(turned_against(profile))
    }

    #[test]
    fn a_ball_fits_up_to_the_width_of_the_cylinder() {
        assert!(fits_turned(&ball(WIDE_MM)) && fits_turned(&ball(0.999 * WIDE_MM)));
        assert!(!fits_turned(&ball(1.00001 * WIDE_MM)));
    }

    #[test]
    fn a_drum_fits_up_to_the_cylinder_itself() {
        assert!(fits_turned(&drum(WIDE_MM, DEEP_MM)));
        assert!(!fits_turned(&drum(1.00001 * WIDE_MM, DEEP_MM)));
        assert!(!fits_turned(&drum(WIDE_MM, 1.00001 * DEEP_MM)));
        // A flat disc as wide as the cylinder is deep does not fit lying or standing, one as
        // thin as paper and no wider than the cylinder's own middle rectangle's side does.
        assert!(!fits_turned(&drum(DEEP_MM, 1.0)));
        assert!(fits_turned(&drum(WIDE_MM, 0.01)));
    }

    #[test]
    fn a_rod_fits_up_to_the_diagonal() {
        let diagonal = WIDE_MM.hypot(DEEP_MM);
        let rod = |long: f64| [[0.0, 0.0, 0.0], [0.0, 0.0, long]];
        assert!(fits(hull_against(&rod(diagonal))), "{}", hull_against(&rod(diagonal)));
        assert!(!fits(hull_against(&rod(1.0001 * diagonal))));
        assert!(fits_turned(&[Rz::new(0.0, 0.0), Rz::new(0.0, diagonal)]));
        assert!(!fits_turned(&[Rz::new(0.0, 0.0), Rz::new(0.0, 1.0001 * diagonal)]));
    }

    #[test]
    fn a_square_bar_fits_up_to_its_own_diagonal() {
        let side = WIDE_MM / 2.0_f64.sqrt();
        assert!(fits(hull_against(&block(side, side, DEEP_MM))));
        assert!(fits(hull_against(&block(DEEP_MM, side, side))));
        assert!(!fits(hull_against(&block(1.0001 * side, side, DEEP_MM))));
        assert!(!fits(hull_against(&block(side, side, 1.0001 * DEEP_MM))));
    }

    #[test]
    fn both_ways_of_asking_agree() {
        let profile = [Rz::new(3.0, 0.0), Rz::new(14.0, 20.0), Rz::new(6.0, 50.0)];
        let points: Vec<V3> = profile
            .iter()
            .flat_map(|p| {
                (0..90).map(move |i| {
                    let (sin, cos) = (std::f64::consts::TAU * f64::from(i) / 90.0).sin_cos();
                    [p.r * cos, p.r * sin, p.z]
                })
            })
            .collect();
        let (one, other) = (turned_against(&profile), hull_against(&points));
        assert!((one - other).abs() < 2e-3, "{one} {other}");
    }
}
