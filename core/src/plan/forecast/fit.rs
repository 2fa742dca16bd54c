//! Fit: how far a forecast is from the outline it was meant to take.
//!
//! 400 points evenly spaced along each curve, the distance of each to the other curve, at
//! the best common shift along the axis (a piece may sit anywhere on its axis). The RMS is
//! the larger of the two curves' RMS, the maximum the larger of the two maxima.

use serde::Serialize;

use crate::piece::outline::Rz;

/// Points on each curve at which the distance to the other is measured.
const POINTS: usize = 400;

/// How far along a line a nearer foot is looked for, in distances to it, squared: twice the
/// distance by the triangle's inequality, half as much again along a curve.
const WINDOW_SQ: f64 = 9.0;

/// Distance between forecast and outline, in widths of a single crochet stitch.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Fit {
    /// Root mean square distance, stitch widths.
    pub rms_stitches: f64,
    /// Greatest distance, stitch widths.
    pub max_stitches: f64,
    /// What to add to the forecast's z to lay it on the outline, mm.
    #[serde(skip)]
    pub shift_mm: f64,
}

/// A polyline made ready to be measured against.
#[derive(Debug, Clone)]
pub struct Trail {
    line: Vec<Rz>,
    even: Vec<Rz>,
    segments: Vec<Segment>,
}

impl Trail {
    /// The polyline through `line` and 400 places evenly spaced along it.
    pub fn new(line: Vec<Rz>) -> Self {
        let even = resample(&line, POINTS);
        let segments = line.windows(2).map(|ends| Segment::new(ends[0], ends[1])).collect();
        Self { line, even, segments }
    }

    pub(crate) fn middle(&self) -> f64 {
        middle(&self.line)
    }
}

/// Half-way between the lowest and the highest place of a line, mm.
pub(crate) fn middle(line: &[Rz]) -> f64 {
    let (low, high) = line
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), p| (p.z.min(l), p.z.max(h)));
    0.5 * (low + high)
}

/// The fit of a forecast (its nodes) to the outline, in widths of `stitch_width_mm`.
pub fn measure(nodes: &[Rz], outline: &Trail, stitch_width_mm: f64) -> Fit {
    measure_from(nodes, outline, stitch_width_mm, outline.middle() - middle(nodes))
}

/// Above this many stitches a curve may lie well on another in more than one way.
const AMBIGUOUS_STITCHES: f64 = 0.1;

/// As [`measure`], from a shift that is nearly right already; where that leaves curves far
/// apart, from their middles too.
pub(crate) fn measure_near(
    nodes: &[Rz],
    outline: &Trail,
    stitch_width_mm: f64,
    shift: f64,
) -> Fit {
    let near = measure_from(nodes, outline, stitch_width_mm, shift);
    if near.rms_stitches <= AMBIGUOUS_STITCHES {
        return near;
    }
    let apart = measure(nodes, outline, stitch_width_mm);
    if apart.rms_stitches < near.rms_stitches { apart } else { near }
}

fn measure_from(nodes: &[Rz], outline: &Trail, stitch_width_mm: f64, mut shift: f64) -> Fit {
    let forecast = Trail::new(nodes.to_vec());
    let at = |shift: f64| {
        (Sums::of(&forecast.even, outline, shift), Sums::of(&outline.even, &forecast, -shift))
    };
    let mut sums = at(shift);
    // Gauss–Newton on the shift; the feet move little, so a few steps settle it.
    let negligible = 1e-4 * stitch_width_mm;
    'settling: for _ in 0..8 {
        let pull = sums.0.gap_z - sums.1.gap_z;
        let weight = sums.0.normal_z_sq + sums.1.normal_z_sq;
        let mut step = if weight > 0.0 { -pull / weight } else { 0.0 };
        loop {
            if step.abs() < negligible {
                break 'settling;
            }
            let next = at(shift + step);
            if next.0.square + next.1.square <= sums.0.square + sums.1.square {
                (shift, sums) = (shift + step, next);
                break;
            }
            step *= 0.5;
        }
    }
    let (there, back) = sums;
    let rms = there.square.max(back.square) / POINTS as f64;
    Fit {
        rms_stitches: rms.sqrt() / stitch_width_mm,
        max_stitches: there.greatest.max(back.greatest) / stitch_width_mm,
        shift_mm: shift,
    }
}

/// Mean square distance of the outline's points to a forecast (its nodes) laid on it by `shift`,
/// in squared widths of `stitch_width_mm`: large where the forecast ends short of the outline.
pub(crate) fn square_from_outline(
    nodes: &[Rz],
    outline: &Trail,
    stitch_width_mm: f64,
    shift: f64,
) -> f64 {
    let segments = nodes.windows(2).map(|ends| Segment::new(ends[0], ends[1])).collect();
    let forecast = Trail { line: Vec::new(), even: Vec::new(), segments };
    let sums = Sums::of(&outline.even, &forecast, -shift);
    sums.square / (POINTS as f64 * stitch_width_mm * stitch_width_mm)
}

/// Signed distance of each forecast node to the outline at the fit's shift, mm: positive
/// where the forecast lies outside. For pictures and misfit zones.
pub fn node_offsets(nodes: &[Rz], outline: &Trail, shift_mm: f64) -> Vec<f64> {
    let mut seeker = Seeker::new(outline);
    nodes
        .iter()
        .map(|n| {
            let p = Rz::new(n.r, n.z + shift_mm);
            seeker.nearest(p).out
        })
        .collect()
}

/// Sums over the points of one curve of their distances to the other.
#[derive(Debug, Clone, Copy, Default)]
struct Sums {
    square: f64,
    greatest: f64,
    /// Σ (point − foot) along the axis: half the slope of `square` by the shift.
    gap_z: f64,
    /// Σ of the squared axial part of the normals: half its curvature.
    normal_z_sq: f64,
}

impl Sums {
    fn of(points: &[Rz], trail: &Trail, shift: f64) -> Self {
        let mut seeker = Seeker::new(trail);
        let mut sums = Self::default();
        for p in points {
            let p = Rz::new(p.r, p.z + shift);
            let foot = seeker.nearest(p);
            sums.square += foot.distance * foot.distance;
            sums.greatest = sums.greatest.max(foot.distance);
            sums.gap_z += p.z - foot.at.z;
            sums.normal_z_sq += if foot.end { 1.0 } else { foot.normal.z * foot.normal.z };
        }
        sums
    }
}

/// The nearest place on a polyline.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Foot {
    pub(crate) at: Rz,
    pub(crate) distance: f64,
    /// Unit normal of the line there, pointing away from the body.
    pub(crate) normal: Rz,
    /// Distance with a sign: positive on the normal's side.
    pub(crate) out: f64,
    /// Whether it is an end of the line.
    pub(crate) end: bool,
}

/// Finds nearest places for points that run along a polyline in its own order.
///
/// Both curves run from start to finish, so the foot moves on with the point: looking a few
/// segments ahead and one back from the last foot finds it in constant time, also around a
/// lip, where a search of the whole line could jump across.
pub(crate) struct Seeker<'a> {
    segments: &'a [Segment],
    /// Where the search begins: the segment of the last foot.
    pub(crate) segment: usize,
}

impl<'a> Seeker<'a> {
    pub(crate) fn new(trail: &'a Trail) -> Self {
        Self { segments: &trail.segments, segment: 0 }
    }

    pub(crate) fn nearest(&mut self, p: Rz) -> Foot {
        let last = self.segments.len() - 1;
        let start = self.segment.min(last);
        let (mut best, mut least) = (start, self.segments[start].distance_sq(p).0);
        // A nearer foot lies within twice the distance of this one as the crow flies, and
        // not much further along the line unless it folds.
        let mut along = 0.0;
        for ahead in start + 1..=last {
            let segment = &self.segments[ahead];
            let d = segment.distance_sq(p).0;
            if d < least {
                (least, best, along) = (d, ahead, 0.0);
            } else {
                along += segment.length;
                if along * along > WINDOW_SQ * least {
                    break;
                }
            }
        }
        along = 0.0;
        for back in (0..start).rev() {
            let segment = &self.segments[back];
            let d = segment.distance_sq(p).0;
            if d < least {
                (least, best, along) = (d, back, 0.0);
            } else {
                along += segment.length;
                if along * along > WINDOW_SQ * least {
                    break;
                }
            }
        }
        self.segment = best;
        self.foot(best, p)
    }

    fn foot(&self, index: usize, p: Rz) -> Foot {
        let segment = &self.segments[index];
        let (distance_sq, along) = segment.distance_sq(p);
        let (dr, dz) = (segment.along.r, segment.along.z);
        let at = Rz::new(segment.from.r + along * dr, segment.from.z + along * dz);
        let length = segment.length.max(1e-9);
        let normal = Rz::new(dz / length, -dr / length);
        let out = (p.r - at.r) * normal.r + (p.z - at.z) * normal.z;
        let distance = distance_sq.sqrt();
        let out = if out < 0.0 { -distance } else { distance };
        // Beyond an end of the line the distance is to that end.
        let end =
            (index == 0 && along <= 0.0) || (index + 1 == self.segments.len() && along >= 1.0);
        let normal = if end && distance > 1e-9 {
            Rz::new((p.r - at.r) / out, (p.z - at.z) / out)
        } else {
            normal
        };
        Foot { at, distance, normal, out, end }
    }
}

/// A piece of a polyline, with what every distance to it needs.
#[derive(Debug, Clone, Copy)]
struct Segment {
    from: Rz,
    /// From its start to its end.
    along: Rz,
    length: f64,
    per_length_sq: f64,
}

impl Segment {
    fn new(a: Rz, b: Rz) -> Self {
        let along = Rz::new(b.r - a.r, b.z - a.z);
        let length_sq = along.r * along.r + along.z * along.z;
        let per_length_sq = 1.0 / length_sq.max(1e-18);
        Self { from: a, along, length: length_sq.sqrt(), per_length_sq }
    }

    /// Squared distance of `p`, and where along the segment its foot is, 0 to 1.
    fn distance_sq(&self, p: Rz) -> (f64, f64) {
        let (r, z) = (p.r - self.from.r, p.z - self.from.z);
        let (dr, dz) = (self.along.r, self.along.z);
        let along = ((r * dr + z * dz) * self.per_length_sq).clamp(0.0, 1.0);
        let (er, ez) = (r - along * dr, z - along * dz);
        (er * er + ez * ez, along)
    }
}

/// `count` places evenly spaced by length along a polyline, ends included.
fn resample(line: &[Rz], count: usize) -> Vec<Rz> {
    let length: f64 = line.windows(2).map(|p| p[0].distance(p[1])).sum();
    let mut even = Vec::with_capacity(count);
    let (mut segment, mut before) = (0, 0.0);
    let mut here = line[0].distance(line[1]);
    for i in 0..count {
        let s = length * i as f64 / (count - 1) as f64;
        while before + here < s && segment + 2 < line.len() {
            before += here;
            segment += 1;
            here = line[segment].distance(line[segment + 1]);
        }
        let along = if here > 0.0 { ((s - before) / here).min(1.0) } else { 0.0 };
        let (a, b) = (line[segment], line[segment + 1]);
        even.push(Rz::new(a.r + along * (b.r - a.r), a.z + along * (b.z - a.z)));
    }
    even
}

#[cfg(test)]
mod tests {
    use super::*;

    fn circle(radius: f64, n: u32) -> Vec<Rz> {
        (0..=n)
            .map(|i| {
                let t = std::f64::consts::PI * f64::from(i) / f64::from(n);
                Rz::new(radius * t.sin(), 100.0 - radius * t.cos())
            })
            .collect()
    }

    #[test]
    fn two_balls_differ_by_their_radii_wherever_they_lie() {
        let outline = Trail::new(circle(40.0, 800));
        let fit = measure(
            &circle(41.0, 800).iter().map(|p| Rz::new(p.r, p.z - 63.0)).collect::<Vec<_>>(),
            &outline,
            2.0,
        );
        assert!((fit.rms_stitches - 0.5).abs() < 1e-3, "{fit:?}");
        assert!((fit.max_stitches - 0.5).abs() < 1e-3, "{fit:?}");
        assert!((fit.shift_mm - 63.0).abs() < 1e-3, "{fit:?}");
    }

    #[test]
    fn the_local_search_agrees_with_a_search_of_the_whole_line() {
        let outline = circle(40.0, 300);
        let trail = Trail::new(outline.clone());
        let mut seeker = Seeker::new(&trail);
        for p in circle(43.0, 77) {
            let everywhere = outline
                .windows(2)
                .map(|s| Segment::new(s[0], s[1]).distance_sq(p).0.sqrt())
                .fold(f64::INFINITY, f64::min);
            assert!((seeker.nearest(p).distance - everywhere).abs() < 1e-9);
        }
    }

    #[test]
    fn outside_counts_as_positive() {
        let outline = Trail::new(circle(40.0, 800));
        let offsets = node_offsets(&circle(41.0, 20), &outline, 0.0);
        assert!(offsets.iter().all(|d| (d - 1.0).abs() < 0.01), "{offsets:?}");
    }
}
