//! A mesh cut across at many heights: how far it reaches all around.

use nalgebra::Point3;
use plumpline_core::Rz;

use super::Triangle;

/// Heights at which the mesh is cut across.
const SLICES: usize = 600;
/// Directions around the axis in which the radius is taken.
const SECTORS: usize = 48;

/// So much of a circle all around may be open at one height, directions: a seam.
const SEAM: usize = 5;

/// A mesh cut across at many heights.
pub(super) struct Slices {
    pub(super) points: Vec<Rz>,
    pub(super) height: f64,
    pub(super) widest: f64,
    pub(super) roundness: f64,
    pub(super) least_round: f64,
    /// From where to where nothing is, between its ends.
    pub(super) gap: Option<(f64, f64)>,
    /// From where to where it does not close around its axis, and that share of the height.
    pub(super) open: Option<(f64, f64, f64)>,
}

/// The mesh, its axis upright through the origin, cut across; `None` for one of no height.
pub(super) fn slices(mesh: &[Triangle]) -> Option<Slices> {
    let heights = || mesh.iter().flatten().map(|p| p.z);
    let (low, high) = (heights().fold(f64::MAX, f64::min), heights().fold(f64::MIN, f64::max));
    let height = high - low;
    let size = mesh.iter().flatten().map(|p| p.coords.norm()).fold(0.0, f64::max);
    if height.is_nan() || height <= 1e-6 * size {
        return None;
    }
    // Closer together at the ends, which are often round.
    let level =
        |k: f64| low + height * 0.5 * (1.0 - (std::f64::consts::PI * k / SLICES as f64).cos());
    let levels: Vec<f64> = (0..SLICES).map(|k| level(k as f64 + 0.5)).collect();
    let mut reach = vec![[0.0_f64; SECTORS]; SLICES];
    for triangle in mesh {
        let z = triangle.map(|p| p.z);
        let (from, to) = (z[0].min(z[1]).min(z[2]), z[0].max(z[1]).max(z[2]));
        let first = levels.partition_point(|&l| l < from);
        for (k, &at) in levels.iter().enumerate().skip(first) {
            if at > to {
                break;
            }
            if let Some((a, b)) = crossing(triangle, at) {
                widen(&mut reach[k], a, b);
            }
        }
    }
    let is_open = |sectors: &[f64; SECTORS]| {
        (SEAM + 1..SECTORS).contains(&sectors.iter().filter(|r| **r <= 0.0).count())
    };
    let open = stretches(&reach, is_open)
        .max_by(|a, b| (a.1 - a.0).cmp(&(b.1 - b.0)))
        .map(|(from, to)| (levels[from] - low, levels[to] - low))
        .map(|(from, to)| (from, to, (to - from) / height));
    let is_empty = |sectors: &[f64; SECTORS]| sectors.iter().all(|r| *r <= 0.0);
    let gap = stretches(&reach, is_empty)
        .find(|&(from, to)| from > 0 && to + 1 < SLICES && to > from)
        .map(|(from, to)| (levels[from] - low, levels[to] - low));
    let mut points = Vec::with_capacity(SLICES + 2);
    let (mut widest, mut spreads, mut worst) = (0.0_f64, 0.0, (0.0, 0.0));
    for (sectors, &z) in reach.iter().zip(&levels) {
        let mean = sectors.iter().sum::<f64>() / SECTORS as f64;
        let square = sectors.iter().map(|r| (r - mean).powi(2)).sum::<f64>();
        let spread = (square / SECTORS as f64).sqrt();
        (widest, spreads) = (widest.max(mean), spreads + spread);
        if spread > worst.0 {
            worst = (spread, z - low);
        }
        if mean > 0.0 {
            points.push(Rz::new(mean, z - low));
        }
    }
    let (first, last) = (*points.first()?, *points.last()?);
    for (end, at) in [(first, 0.0), (last, height)] {
        // Whether the surface reaches the axis at this end: it does within the end's own
        // radius, or at a flat end, at its height.
        let covered = covers_axis(mesh, low + at, 0.02 * height + 0.3 * end.r);
        let pole = Rz::new(if covered { 0.0 } else { end.r }, at);
        if at == 0.0 {
            points.insert(0, pole);
        } else {
            points.push(pole);
        }
    }
    let roundness = 1.0 - spreads / SLICES as f64 / widest.max(1e-12);
    Some(Slices { points, height, widest, roundness, least_round: worst.1, gap, open })
}

/// The stretches of cuts that all `hold`, each from its first to its last.
fn stretches<'a>(
    reach: &'a [[f64; SECTORS]],
    holds: impl Fn(&[f64; SECTORS]) -> bool + 'a,
) -> impl Iterator<Item = (usize, usize)> + 'a {
    let mut k = 0;
    std::iter::from_fn(move || {
        let from = k + reach[k..].iter().position(&holds)?;
        let long = reach[from..].iter().position(|sectors| !holds(sectors));
        k = long.map_or(reach.len(), |long| from + long);
        Some((from, k - 1))
    })
}

/// Where a triangle crosses the level `at`: the two ends of the cut, across the axis.
fn crossing(triangle: &Triangle, at: f64) -> Option<([f64; 2], [f64; 2])> {
    let mut ends = Vec::with_capacity(3);
    for i in 0..3 {
        let (a, b) = (triangle[i], triangle[(i + 1) % 3]);
        if (a.z <= at) != (b.z <= at) {
            let t = (at - a.z) / (b.z - a.z);
            ends.push([a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)]);
        }
    }
    match ends.as_slice() {
        &[a, b] => Some((a, b)),
        _ => None,
    }
}

/// Widens the reach in the directions that the straight piece from `a` to `b` passes.
fn widen(reach: &mut [f64; SECTORS], a: [f64; 2], b: [f64; 2]) {
    let turn = |p: [f64; 2]| p[1].atan2(p[0]).rem_euclid(std::f64::consts::TAU);
    let wide = std::f64::consts::TAU / SECTORS as f64;
    let (mut from, mut to) = (turn(a), turn(b));
    if from > to {
        (from, to) = (to, from);
    }
    // The shorter way round.
    if to - from > std::f64::consts::PI {
        (from, to) = (to, from + std::f64::consts::TAU);
    }
    let first = (from / wide - 0.5).ceil() as usize;
    let last = (to / wide - 0.5).floor();
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let mut k = first;
    while k as f64 <= last {
        let (sin, cos) = ((k as f64 + 0.5) * wide).sin_cos();
        // Where the ray from the axis meets the line through a and b.
        let below = cos * dy - sin * dx;
        if below.abs() > 1e-12 {
            let r = (a[0] * dy - a[1] * dx) / below;
            let slot = &mut reach[k % SECTORS];
            *slot = slot.max(r);
        }
        k += 1;
    }
}

/// Whether a triangle lies over the axis within `near` of the height `at`.
fn covers_axis(mesh: &[Triangle], at: f64, near: f64) -> bool {
    let size = mesh.iter().flatten().map(|p| p.x.hypot(p.y)).fold(0.0, f64::max);
    // Just beside the axis, where corners often meet, in three directions.
    let beside =
        [0.3_f64, 2.4, 4.5].map(|turn| (2e-3 * size * turn.cos(), 2e-3 * size * turn.sin()));
    beside.iter().any(|&(x, y)| {
        mesh.iter().any(|[a, b, c]| {
            let side = |p: &Point3<f64>, q: &Point3<f64>| {
                (q.x - p.x) * (y - p.y) - (q.y - p.y) * (x - p.x)
            };
            let (u, v, w) = (side(a, b), side(b, c), side(c, a));
            let all = u + v + w;
            let within = all != 0.0 && [u, v, w].iter().all(|s| s * all >= 0.0);
            within && ((v * a.z + w * b.z + u * c.z) / all - at).abs() <= near
        })
    })
}
