//! A tape drawn tight around a stuffed piece.

use crate::piece::outline::Rz;

/// Length of a tape around a piece of this profile over both of its ends, mm. It lies on
/// the cloth where that bulges and runs straight over a neck, a hollow or an open end: the
/// perimeter of the convex hull of the section through the axis.
pub(super) fn over_both_ends_mm(nodes: &[Rz]) -> f64 {
    let mut places: Vec<(f64, f64)> =
        nodes.iter().flat_map(|n| [(n.z, n.r), (n.z, -n.r)]).collect();
    places.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let one_side = half_hull(places.iter().copied());
    let other_side = half_hull(places.iter().rev().copied());
    let length = |hull: &[(f64, f64)]| -> f64 {
        hull.windows(2).map(|p| (p[1].0 - p[0].0).hypot(p[1].1 - p[0].1)).sum()
    };
    length(&one_side) + length(&other_side)
}

/// The corners of one side of the hull of places in order, by Andrew's monotone chain
/// (Information Processing Letters 9, 1979).
fn half_hull(places: impl Iterator<Item = (f64, f64)>) -> Vec<(f64, f64)> {
    let mut hull: Vec<(f64, f64)> = Vec::new();
    for c in places {
        while let [.., a, b] = hull[..]
            && (b.0 - a.0) * (c.1 - a.1) <= (b.1 - a.1) * (c.0 - a.0)
        {
            hull.pop();
        }
        hull.push(c);
    }
    hull
}

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use super::*;

    #[test]
    fn a_tape_lies_on_a_ball_and_runs_straight_over_a_neck() {
        let ball: Vec<Rz> = (0..=180)
            .map(|deg| f64::from(deg).to_radians().sin_cos())
            .map(|(sin, cos)| Rz::new(30.0 * sin, 30.0 * (1.0 - cos)))
            .collect();
        assert!((over_both_ends_mm(&ball) / (PI * 60.0) - 1.0).abs() < 1e-4);
        // A cylinder of 20 by 40, and the same drawn in at its middle.
        let can = [(0.0, 0.0), (10.0, 0.0), (10.0, 20.0), (10.0, 40.0), (0.0, 40.0)];
        for waist in [10.0, 3.0] {
            let mut nodes = can.map(|(r, z)| Rz::new(r, z));
            nodes[2].r = waist;
            assert!((over_both_ends_mm(&nodes) - 120.0).abs() < 1e-9);
        }
    }
}
