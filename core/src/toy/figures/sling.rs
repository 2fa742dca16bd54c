//! Cords from two or three places that meet in one point: how long they are, and how a rigid
//! body hangs on them.
//!
//! Seen from the body, the point where they meet may be wherever no cord is longer than it is:
//! in the meeting of balls about the holds. The body hangs lowest, and so at rest, where that
//! point is farthest from its centre of mass, which then is straight below. The farthest place
//! of such a meeting is on one cord's ball along the line from the centre, on the circle of two
//! in the plane of the centre, or where three meet: these few are compared. Cords only pull, so
//! one that is shorter there than it could be is slack.

use crate::project::toy::attachment::{Sling, SlingLengths};
use crate::toy::vector::{V3, cross, distance, dot, length, plus, sub, unit};

/// A cord is slack where it has so much to spare, mm.
const SLACK_MM: f64 = 1e-6;

/// Holds nearly in a line have no circle worth calling one: its radius is at most so many times
/// their distance from their middle.
const LARGEST_CIRCLE: f64 = 4.0;

/// How a body hangs on its cords.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct SlungAt {
    /// The point where they meet, mm, in the axes of the holds.
    pub(crate) point: V3,
    /// The share of the weight that each pulls with; 0 where it is slack.
    pub(crate) pulls: Vec<f64>,
}

/// How long the cords of `sling` are that is held at `holds`, mm, and how a body of this
/// `centre` of mass hangs on them.
pub(crate) fn hung(
    sling: &Sling,
    holds: &[V3],
    centre: V3,
    up: V3,
) -> (Vec<f64>, Option<SlungAt>) {
    let lengths = match sling.lengths {
        SlingLengths::Upright => upright_mm(holds, centre, up, sling.above_mm),
        SlingLengths::Equal => equal_mm(holds, sling.above_mm),
    };
    let slung = slung(holds, &lengths, centre);
    (lengths, slung)
}

/// Lengths of the cords from `holds` with which the point where they meet is straight above
/// `centre` when the body is upright, and `above_mm` above the highest hold.
fn upright_mm(holds: &[V3], centre: V3, up: V3, above_mm: f64) -> Vec<f64> {
    let highest = holds.iter().map(|&at| dot(at, up)).fold(f64::NEG_INFINITY, f64::max);
    let point = plus(centre, up, highest + above_mm - dot(centre, up));
    holds.iter().map(|&at| distance(at, point)).collect()
}

/// The one length with which cords from `holds` meet `above_mm` above the middle of their
/// circle.
fn equal_mm(holds: &[V3], above_mm: f64) -> Vec<f64> {
    let share = 1.0 / holds.len().max(1) as f64;
    let middle = holds.iter().fold([0.0; 3], |sum, &at| plus(sum, at, share));
    let far = holds.iter().map(|&at| distance(at, middle)).fold(0.0, f64::max);
    let radius = match *holds {
        // abc ÷ 4 areas.
        [a, b, c] => {
            let sides = distance(a, b) * distance(b, c) * distance(c, a);
            let circle = sides / (2.0 * length(cross(sub(b, a), sub(c, a)))).max(1e-12);
            if circle < LARGEST_CIRCLE * far { circle } else { far }
        }
        _ => far,
    };
    vec![radius.hypot(above_mm); holds.len()]
}

/// How a body of this `centre` of mass hangs on cords `lengths` long from `holds`; none where
/// they cannot meet.
fn slung(holds: &[V3], lengths: &[f64], centre: V3) -> Option<SlungAt> {
    let cords = || holds.iter().copied().zip(lengths.iter().copied());
    let reach = |at: V3| {
        let spare = cords().map(|(hold, mm)| mm - distance(hold, at));
        spare.fold(f64::INFINITY, f64::min)
    };
    let mut tried: Vec<V3> = Vec::new();
    for (i, (hold, mm)) in cords().enumerate() {
        tried.push(plus(hold, unit(sub(hold, centre)), mm));
        for (j, other) in cords().enumerate().skip(i + 1) {
            tried.extend(on_two((hold, mm), other, centre));
            for third in cords().skip(j + 1) {
                tried.extend(on_three([(hold, mm), other, third]));
            }
        }
    }
    let far = |at: &V3| distance(*at, centre);
    let fit = tried.into_iter().filter(|&at| reach(at) > -SLACK_MM);
    let point = fit.max_by(|a, b| far(a).total_cmp(&far(b)))?;
    let taut: Vec<bool> = cords().map(|(h, mm)| mm - distance(h, point) < SLACK_MM).collect();
    let ways: Vec<V3> = cords()
        .zip(&taut)
        .map(|((hold, _), &taut)| if taut { unit(sub(point, hold)) } else { [0.0; 3] })
        .collect();
    Some(SlungAt { point, pulls: pulls(&ways, unit(sub(point, centre))) })
}

/// The place on both balls, in the plane of `centre`, that is farther from it.
fn on_two((a, long_a): (V3, f64), (b, long_b): (V3, f64), centre: V3) -> Option<V3> {
    let (way, apart) = (unit(sub(b, a)), distance(a, b));
    if apart < 1e-9 {
        return None;
    }
    let along = (long_a * long_a - long_b * long_b + apart * apart) / (2.0 * apart);
    let aside = long_a * long_a - along * along;
    if aside < 0.0 {
        return None;
    }
    let foot = plus(a, way, along);
    let off = sub(foot, centre);
    Some(plus(foot, unit(plus(off, way, -dot(off, way))), aside.sqrt()))
}

/// The two places on three balls.
fn on_three([(a, la), (b, lb), (c, lc)]: [(V3, f64); 3]) -> Vec<V3> {
    let x = unit(sub(b, a));
    let to_c = sub(c, a);
    let i = dot(x, to_c);
    let y = unit(plus(to_c, x, -i));
    let (d, j) = (distance(a, b), dot(y, to_c));
    if d < 1e-9 || j < 1e-9 {
        return Vec::new();
    }
    let along = (la * la - lb * lb + d * d) / (2.0 * d);
    let across = (la * la - lc * lc + i * i + j * j) / (2.0 * j) - i / j * along;
    let high = la * la - along * along - across * across;
    if high < 0.0 {
        return Vec::new();
    }
    let foot = plus(plus(a, x, along), y, across);
    let z = cross(x, y);
    [1.0, -1.0].map(|side| plus(foot, z, side * high.sqrt())).to_vec()
}

/// The least pulls along `ways` that come to a pull of 1 along `up`.
fn pulls(ways: &[V3], up: V3) -> Vec<f64> {
    // (WWᵀ + ε) y = up, pulls = Wᵀ y: least squares, also where the ways lie in a plane.
    let mut rows = [[0.0; 4]; 3];
    for (i, row) in rows.iter_mut().enumerate() {
        for (j, cell) in row.iter_mut().take(3).enumerate() {
            let near = if i == j { 1e-9 } else { 0.0 };
            *cell = ways.iter().map(|w| w[i] * w[j]).sum::<f64>() + near;
        }
        row[3] = up[i];
    }
    for k in 0..3 {
        let best = (k..3).max_by(|&a, &b| rows[a][k].abs().total_cmp(&rows[b][k].abs()));
        rows.swap(k, best.unwrap_or(k));
        let pivot = rows[k].map(|cell| cell / rows[k][k]);
        rows[k] = pivot;
        for (_, row) in rows.iter_mut().enumerate().filter(|&(i, _)| i != k) {
            let by = row[k];
            for (cell, p) in row.iter_mut().zip(pivot) {
                *cell -= by * p;
            }
        }
    }
    let solved = rows.map(|row| row[3]);
    ways.iter().map(|&way| dot(way, solved).max(0.0)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const UP: V3 = [0.0, 0.0, 1.0];

    #[test]
    fn cut_for_it_a_body_hangs_upright_on_three_cords() {
        let holds = [[30.0, 0.0, 50.0], [-20.0, 25.0, 40.0], [-15.0, -30.0, 55.0]];
        let centre = [2.0, -3.0, 10.0];
        let lengths = upright_mm(&holds, centre, UP, 60.0);
        let slung = slung(&holds, &lengths, centre).expect("they meet");
        let down = unit(sub(slung.point, centre));
        assert!(distance(down, UP) < 1e-9, "{down:?}");
        // Each carries its part: upwards they come to the weight, sideways to nothing.
        let mut sum = [0.0; 3];
        for (hold, pull) in holds.iter().zip(&slung.pulls) {
            assert!(*pull > 0.05, "{:?}", slung.pulls);
            sum = plus(sum, unit(sub(slung.point, *hold)), *pull);
        }
        assert!(distance(sum, UP) < 1e-6, "{sum:?}");
    }

    #[test]
    fn on_two_equal_cords_it_leans_by_the_angle_of_its_centre() {
        // Holds 40 apart on top, the centre 5 nearer to one and 30 below: the meeting point is
        // on the plane between the holds, 30 above them.
        let holds = [[-20.0, 0.0, 0.0], [20.0, 0.0, 0.0]];
        let lengths = equal_mm(&holds, 30.0);
        let slung = slung(&holds, &lengths, [5.0, 0.0, -30.0]).expect("they meet");
        assert!(distance(slung.point, [0.0, 0.0, 30.0]) < 1e-9, "{slung:?}");
        assert!((slung.pulls[1] - slung.pulls[0]) > 0.05, "{slung:?}");
    }

    #[test]
    fn a_cord_that_would_have_to_push_is_slack() {
        let holds = [[0.0, 0.0, 0.0], [40.0, 0.0, 0.0]];
        let slung = slung(&holds, &[30.0, 60.0], [-30.0, 0.0, -10.0]).expect("they meet");
        assert_eq!(slung.pulls[1], 0.0, "{slung:?}");
        assert!((slung.pulls[0] - 1.0).abs() < 1e-6);
    }

    #[test]
    fn cords_too_short_to_meet_are_told() {
        let holds = [[0.0, 0.0, 0.0], [40.0, 0.0, 0.0]];
        assert_eq!(super::slung(&holds, &[15.0, 15.0], [20.0, 0.0, -10.0]), None);
    }
}
