//! Figures of the plane: the hull of points, the circle around them.

/// A place in a plane, mm.
pub type V2 = [f64; 2];

/// The corners of the convex hull of `points`, counter-clockwise, without those on its sides
/// (Andrew's monotone chain).
pub fn hull(points: &[V2]) -> Vec<V2> {
    let mut sorted: Vec<V2> = points.to_vec();
    sorted.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    sorted.dedup();
    if sorted.len() < 3 {
        return sorted;
    }
    let mut chain: Vec<V2> = Vec::new();
    for half in 0..2 {
        let begun = chain.len();
        for &point in &sorted {
            while chain.len() >= begun + 2
                && turn(chain[chain.len() - 2], chain[chain.len() - 1], point) <= 0.0
            {
                chain.pop();
            }
            chain.push(point);
        }
        chain.pop();
        if half == 0 {
            sorted.reverse();
        }
    }
    chain
}

/// Twice the area of the triangle, positive where it turns to the left.
fn turn(a: V2, b: V2, c: V2) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/// Distance of `point` from the nearest side of a hull, negative outside it, and the outward
/// direction of that side; none of a hull without area.
pub fn margin(hull: &[V2], point: V2) -> Option<(f64, V2)> {
    if hull.len() < 3 {
        return None;
    }
    let next = hull.iter().cycle().skip(1);
    let sides = hull.iter().zip(next).map(|(&a, &b)| {
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        let long = dx.hypot(dy).max(1e-12);
        let out = [dy / long, -dx / long];
        (turn(a, b, point) / long, out)
    });
    sides.min_by(|a, b| a.0.total_cmp(&b.0))
}

/// Least width of a hull over all directions, mm; 0 of one without area.
pub fn width(hull: &[V2]) -> f64 {
    if hull.len() < 3 {
        return 0.0;
    }
    let next = hull.iter().cycle().skip(1);
    let across = hull.iter().zip(next).map(|(&a, &b)| {
        let long = (b[0] - a[0]).hypot(b[1] - a[1]).max(1e-12);
        hull.iter().map(|&c| turn(a, b, c) / long).fold(0.0, f64::max)
    });
    across.fold(f64::INFINITY, f64::min)
}

/// Radius of the smallest circle around `points` (Welzl's way, without chance: every point
/// outside is tried against those before it).
pub fn circle_around(points: &[V2]) -> f64 {
    let points = hull(points);
    let mut circle = (points.first().copied().unwrap_or([0.0; 2]), 0.0);
    for i in 1..points.len() {
        if outside(circle, points[i]) {
            circle = (points[i], 0.0);
            for j in 0..i {
                if outside(circle, points[j]) {
                    circle = through_two(points[i], points[j]);
                    for &third in &points[..j] {
                        if outside(circle, third) {
                            circle =
                                through_three(points[i], points[j], third).unwrap_or(circle);
                        }
                    }
                }
            }
        }
    }
    circle.1
}

type Circle = (V2, f64);

fn outside((centre, radius): Circle, point: V2) -> bool {
    far(centre, point) > radius * (1.0 + 1e-12) + 1e-12
}

fn far(a: V2, b: V2) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

fn through_two(a: V2, b: V2) -> Circle {
    let middle = [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])];
    (middle, far(middle, a))
}

fn through_three(a: V2, b: V2, c: V2) -> Option<Circle> {
    let (bx, by) = (b[0] - a[0], b[1] - a[1]);
    let (cx, cy) = (c[0] - a[0], c[1] - a[1]);
    let twice = 2.0 * (bx * cy - by * cx);
    if twice.abs() < 1e-12 {
        return None;
    }
    let (bb, cc) = (bx * bx + by * by, cx * cx + cy * cy);
    let x = (cy * bb - by * cc) / twice;
    let y = (bx * cc - cx * bb) / twice;
    Some(([a[0] + x, a[1] + y], x.hypot(y)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_square_has_its_hull_margin_width_and_circle() {
        let square = [[0.0, 0.0], [2.0, 0.0], [2.0, 2.0], [0.0, 2.0], [1.0, 1.0], [1.0, 0.0]];
        let corners = hull(&square);
        assert_eq!(corners.len(), 4);
        let (inside, out) = margin(&corners, [1.75, 1.0]).expect("it has area");
        assert!((inside - 0.25).abs() < 1e-12 && out == [1.0, 0.0], "{inside} {out:?}");
        assert!((margin(&corners, [1.0, -0.5]).expect("it has area").0 + 0.5).abs() < 1e-12);
        assert!((width(&corners) - 2.0).abs() < 1e-12);
        assert!((circle_around(&square) - 2.0_f64.sqrt()).abs() < 1e-12);
        assert_eq!(margin(&hull(&[[0.0, 0.0], [1.0, 1.0], [2.0, 2.0]]), [1.0, 1.0]), None);
        assert!((circle_around(&[[0.0, 0.0], [1.0, 0.0], [3.0, 0.0]]) - 1.5).abs() < 1e-12);
    }
}
