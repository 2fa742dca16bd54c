//! The fit by brute force: every point against every segment, every shift along the axis.

use plumpline_core::Rz;

/// Points on each curve, as the program's own measure has.
const POINTS: usize = 400;

/// RMS distance of two polylines, the larger of both ways, at the common shift along the axis
/// that makes the sum of both least; and that shift. In the unit of the polylines.
pub fn brute_rms(nodes: &[Rz], outline: &[Rz]) -> (f64, f64) {
    let (ours, theirs) = (even(nodes), even(outline));
    let squares = |by: f64| {
        let there = ours.iter().map(|p| nearest_sq(Rz::new(p.r, p.z + by), outline));
        let back = theirs.iter().map(|p| nearest_sq(Rz::new(p.r, p.z - by), nodes));
        (there.sum::<f64>(), back.sum::<f64>())
    };
    let sum = |by: f64| squares(by).0 + squares(by).1;
    let (low, high) = extent(outline);
    let (from, to) = extent(nodes);
    let middle = 0.5 * (low + high - from - to);
    // A scan over half the height either way, then ever finer about the best.
    let (mut best, mut step) = (middle, (high - low) / 24.0);
    let mut wide = 12;
    while step > 1e-5 * (high - low) {
        let tries = (-wide..=wide).map(|i| best + f64::from(i) * step);
        best = tries
            .map(|by| (sum(by), by))
            .min_by(|a, b| a.0.total_cmp(&b.0))
            .map_or(best, |found| found.1);
        (step, wide) = (step / 3.0, 3);
    }
    let (there, back) = squares(best);
    ((there.max(back) / POINTS as f64).sqrt(), best)
}

fn extent(line: &[Rz]) -> (f64, f64) {
    line.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), p| (p.z.min(l), p.z.max(h)))
}

/// Points evenly spaced by length, ends included.
fn even(line: &[Rz]) -> Vec<Rz> {
    let mut at = vec![0.0];
    for pair in line.windows(2) {
        at.push(at[at.len() - 1] + pair[0].distance(pair[1]));
    }
    let length = at[at.len() - 1];
    (0..POINTS)
        .map(|i| {
            let s = length * i as f64 / (POINTS - 1) as f64;
            let k = at.partition_point(|&a| a < s).clamp(1, line.len() - 1);
            let u = ((s - at[k - 1]) / (at[k] - at[k - 1]).max(1e-12)).clamp(0.0, 1.0);
            let (a, b) = (line[k - 1], line[k]);
            Rz::new(a.r + u * (b.r - a.r), a.z + u * (b.z - a.z))
        })
        .collect()
}

fn nearest_sq(p: Rz, line: &[Rz]) -> f64 {
    let to = |pair: &[Rz]| {
        let (a, b) = (pair[0], pair[1]);
        let (dr, dz) = (b.r - a.r, b.z - a.z);
        let length_sq = (dr * dr + dz * dz).max(1e-18);
        let u = (((p.r - a.r) * dr + (p.z - a.z) * dz) / length_sq).clamp(0.0, 1.0);
        let (er, ez) = (p.r - a.r - u * dr, p.z - a.z - u * dz);
        er * er + ez * ez
    };
    line.windows(2).map(to).fold(f64::INFINITY, f64::min)
}
