//! The curve through the knots: a parametric cubic spline, cut at corner knots.
//!
//! Each stretch between corners is the natural interpolating cubic over chord length, so
//! position, direction and curvature run on through every smooth knot. A smooth pole meets
//! the axis at a right angle, with the curvature its mirror image has; other ends of a
//! stretch carry the second derivative of their neighbour on (parabolic run-out), which
//! leaves an open edge as curved as the cloth just before it.

use kurbo::{CubicBez, Point};

use super::knot::Knot;

/// How a stretch of curve ends.
#[derive(Clone, Copy, PartialEq)]
enum CurveEnd {
    /// On the axis and smooth: r is odd and z is even about it.
    Pole,
    /// Anywhere else: the second derivative of the last span stays constant.
    RunOut,
}

/// The cubic Béziers through `knots` in order; one a span. Empty for fewer than two knots.
pub(super) fn curve(knots: &[Knot]) -> Vec<CubicBez> {
    let mut beziers = Vec::with_capacity(knots.len());
    let last = knots.len().saturating_sub(1);
    let mut from = 0;
    for to in 1..knots.len() {
        if !knots[to].corner && to != last {
            continue;
        }
        let end_at = |i: usize| {
            let smooth_pole = (i == 0 || i == last) && knots[i].is_pole() && !knots[i].corner;
            if smooth_pole { CurveEnd::Pole } else { CurveEnd::RunOut }
        };
        stretch(&knots[from..=to], end_at(from), end_at(to), &mut beziers);
        from = to;
    }
    beziers
}

/// The Béziers of one stretch without corners inside, appended to `out`.
fn stretch(knots: &[Knot], start: CurveEnd, finish: CurveEnd, out: &mut Vec<CubicBez>) {
    let spans: Vec<f64> = knots
        .windows(2)
        .map(|pair| pair[0].place().distance(pair[1].place()).max(1e-9))
        .collect();
    let r: Vec<f64> =
        knots.iter().map(|k| if k.is_pole() { 0.0 } else { k.radius_mm }).collect();
    let z: Vec<f64> = knots.iter().map(|k| k.height_mm).collect();
    // At a smooth pole r is odd (no second derivative), z is even (no first derivative).
    let of = |end, odd| match (end, odd) {
        (CurveEnd::RunOut, _) => EndCondition::RunOut,
        (CurveEnd::Pole, true) => EndCondition::NoCurve,
        (CurveEnd::Pole, false) => EndCondition::NoSlope,
    };
    let r2 = second_derivatives(&spans, &r, of(start, true), of(finish, true));
    let z2 = second_derivatives(&spans, &z, of(start, false), of(finish, false));
    for (i, &span) in spans.iter().enumerate() {
        let controls = |v: &[f64], v2: &[f64]| {
            let slope = (v[i + 1] - v[i]) / span;
            let d0 = slope - span * (2.0 * v2[i] + v2[i + 1]) / 6.0;
            let d1 = slope + span * (v2[i] + 2.0 * v2[i + 1]) / 6.0;
            [v[i], v[i] + d0 * span / 3.0, v[i + 1] - d1 * span / 3.0, v[i + 1]]
        };
        let (x, y) = (controls(&r, &r2), controls(&z, &z2));
        let point = |j: usize| Point::new(x[j], y[j]);
        out.push(CubicBez::new(point(0), point(1), point(2), point(3)));
    }
}

/// End condition of one coordinate.
#[derive(Clone, Copy)]
enum EndCondition {
    NoSlope,
    NoCurve,
    RunOut,
}

/// Second derivatives at the knots of the interpolating cubic spline, by the tridiagonal
/// system of its continuity conditions (Thomas algorithm; the matrix is diagonally dominant).
fn second_derivatives(
    spans: &[f64],
    v: &[f64],
    start: EndCondition,
    finish: EndCondition,
) -> Vec<f64> {
    let n = v.len();
    let last = n - 1;
    // Rows (below, diagonal, above, right-hand side).
    let mut rows = vec![(0.0, 1.0, 0.0, 0.0); n];
    let slope = |i: usize| (v[i + 1] - v[i]) / spans[i];
    rows[0] = match start {
        EndCondition::NoCurve => (0.0, 1.0, 0.0, 0.0),
        EndCondition::RunOut => (0.0, 1.0, -1.0, 0.0),
        EndCondition::NoSlope => (0.0, spans[0] / 3.0, spans[0] / 6.0, slope(0)),
    };
    for i in 1..last {
        rows[i] = (
            spans[i - 1] / 6.0,
            (spans[i - 1] + spans[i]) / 3.0,
            spans[i] / 6.0,
            slope(i) - slope(i - 1),
        );
    }
    let end_span = spans[last - 1];
    rows[last] = match finish {
        EndCondition::NoCurve => (0.0, 1.0, 0.0, 0.0),
        EndCondition::RunOut => (-1.0, 1.0, 0.0, 0.0),
        EndCondition::NoSlope => (end_span / 6.0, end_span / 3.0, 0.0, -slope(last - 1)),
    };
    if n == 2 && matches!((start, finish), (EndCondition::RunOut, EndCondition::RunOut)) {
        return vec![0.0; 2]; // A straight line: the two run-outs say the same and no more.
    }
    for i in 1..n {
        let factor = rows[i].0 / rows[i - 1].1;
        rows[i].1 -= factor * rows[i - 1].2;
        rows[i].3 -= factor * rows[i - 1].3;
    }
    let mut second = vec![0.0; n];
    second[last] = rows[last].3 / rows[last].1;
    for i in (0..last).rev() {
        second[i] = (rows[i].3 - rows[i].2 * second[i + 1]) / rows[i].1;
    }
    second
}

#[cfg(test)]
mod tests {
    use kurbo::{ParamCurve as _, ParamCurveCurvature as _, ParamCurveDeriv as _};

    use super::*;

    fn pear() -> Vec<Knot> {
        vec![
            Knot::new(0.0, 0.0),
            Knot::new(20.0, 5.0),
            Knot::new(38.0, 40.0),
            Knot::new(22.0, 85.0),
            Knot::new(0.0, 110.0),
        ]
    }

    #[test]
    fn passes_through_its_knots_with_continuous_curvature() {
        let curve = curve(&pear());
        assert_eq!(curve.len(), 4);
        for (i, pair) in curve.windows(2).enumerate() {
            let knot = pear()[i + 1];
            assert!((pair[0].p3 - Point::new(knot.radius_mm, knot.height_mm)).hypot() < 1e-9);
            let before = pair[0].curvature(1.0);
            let after = pair[1].curvature(0.0);
            assert!((before - after).abs() < 1e-9, "knot {i}: {before} against {after}");
        }
    }

    #[test]
    fn meets_the_axis_squarely_at_a_smooth_pole() {
        let curve = curve(&pear());
        let leaves = curve[0].deriv().eval(0.0);
        let arrives = curve[3].deriv().eval(1.0);
        assert!(leaves.y.abs() < 1e-9 && leaves.x > 0.0, "{leaves:?}");
        assert!(arrives.y.abs() < 1e-9 && arrives.x < 0.0, "{arrives:?}");
    }

    #[test]
    fn two_knots_make_a_straight_line_and_a_corner_cuts_the_curve() {
        let line = curve(&[Knot::new(5.0, 0.0), Knot::new(9.0, 8.0)]);
        assert!((line[0].eval(0.5) - Point::new(7.0, 4.0)).hypot() < 1e-9);
        let bent =
            curve(&[Knot::corner(0.0, 0.0), Knot::corner(10.0, 0.0), Knot::new(10.0, 9.0)]);
        assert!(bent[0].deriv().eval(1.0).y.abs() < 1e-9);
        assert!(bent[1].deriv().eval(0.0).x.abs() < 1e-9);
    }
}
