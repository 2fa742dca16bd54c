//! The profile of a part as a closed curve of short straight pieces, and the distance of a
//! place from it.
//!
//! Forecast nodes are joined smoothly. An open end turns over its rim and goes on down the
//! inside of the cloth to the stuffing, so that what the curve encloses is all that is solid.

use std::f32::consts::PI;

use super::space::mix;
use crate::piece::outline::Rz;

/// Pieces that a round is drawn in.
pub(super) const PIECES: usize = 4;
/// Pieces of a rim, half round.
const RIM_PIECES: usize = 8;
/// How far the loops of a rim stand out beyond the cloth, in thicknesses.
const RIM_HEIGHT: f32 = 0.38;
/// How deep the stuffing lies in an opening, in radii of it. By eye: as far as fingers pack it.
const STUFFED_DEPTH: f32 = 0.75;
/// How far the stuffing swells in the middle, in radii.
const DOME: f32 = 0.2;
/// Pieces of the stuffing from cloth to axis.
const DOME_PIECES: usize = 4;

/// What a stretch of the profile is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stretch {
    /// The rounds, seen from outside, and the loops that a thread draws shut.
    Outside,
    /// The loops of an open edge; whether at the start.
    Rim {
        /// Whether at the start.
        start: bool,
    },
    /// The cloth seen from within.
    Within,
    /// Stuffing in an opening.
    Stuffing,
}

/// A corner of the profile.
#[derive(Debug, Clone, Copy)]
struct Corner {
    at: [f32; 2],
    /// Unit vector along the profile, in working order.
    way: [f32; 2],
}

/// One straight piece, with all that a look-up needs.
#[derive(Debug, Clone, Copy)]
pub(super) struct Segment {
    from: Corner,
    to: Corner,
    along: (f32, f32),
    pub(super) stretch: Stretch,
    /// Rounds a millimetre; negative where the profile runs back inside the cloth.
    pub(super) per_mm: f32,
    /// How the profile turns away from its tangent, a mm; negative in a hollow.
    pub(super) bend: f32,
    first: bool,
    last: bool,
}

/// A place against the profile.
#[derive(Debug, Clone, Copy)]
pub(super) struct Near {
    /// Distance, mm: positive outside.
    pub(super) far: f32,
    /// The segment it is nearest to, where it is near at all.
    pub(super) segment: Option<u16>,
    /// Rounds from the start there, or how much of a rim.
    pub(super) along: f32,
    /// Unit vector along the profile there.
    pub(super) way: [f32; 2],
}

/// The profile, ready to be asked.
#[derive(Debug, Clone)]
pub(super) struct Curve {
    segments: Vec<Segment>,
    grid: Grid,
    /// Greatest radius, mm.
    pub(super) widest: f32,
    /// Least z, mm.
    pub(super) low: f32,
    /// Greatest z, mm.
    pub(super) high: f32,
}

/// What a cell of the (r, z) plane knows: how far its middle is from the profile, which segment
/// is nearest to that, and which one of another fold may be nearest elsewhere in the cell.
#[derive(Debug, Clone, Copy)]
struct Hint {
    far: f32,
    segment: u16,
    other: Option<u16>,
}

/// Square cells of the (r, z) plane.
#[derive(Debug, Clone)]
struct Grid {
    cells: Vec<Hint>,
    wide: usize,
    tall: usize,
    /// Side of a cell, mm, and cells a millimetre.
    size: f32,
    per_mm: f32,
    /// z of the least corner.
    low: f32,
    /// Places surely farther off than this are not told exactly.
    near: f32,
}

impl Curve {
    /// The curve of `forecast`, whose nodes are the edges of rounds and perhaps a pole, in
    /// cloth `thick` mm thick.
    pub(super) fn new(forecast: &[Rz], thick: f32) -> Self {
        let mut nodes: Vec<[f32; 2]> =
            forecast.iter().map(|n| [finite(n.r).max(0.0), finite(n.z)]).collect();
        // No plan has fewer than two rounds; a curve of none would have nothing to be near.
        while nodes.len() < 2 {
            nodes.push([1.0, nodes.len() as f32]);
        }
        let segments = lay(nodes, thick);
        let places = || segments.iter().flat_map(|s| [s.from.at, s.to.at]);
        let widest = places().fold(0.0_f32, |most, p| most.max(p[0]));
        let low = places().fold(f32::INFINITY, |least, p| least.min(p[1]));
        let high = places().fold(f32::NEG_INFINITY, |most, p| most.max(p[1]));
        let grid = Grid::new(&segments, thick, (widest, low, high));
        Self { segments, grid, widest, low, high }
    }

    pub(super) fn segment(&self, index: u16) -> &Segment {
        &self.segments[index as usize]
    }

    /// The place (r, z) against the profile. Farther off than a few mm, only a distance that
    /// is surely not too great is told.
    pub(super) fn near(&self, r: f32, z: f32) -> Near {
        let grid = &self.grid;
        let (x, y) = (r * grid.per_mm, (z - grid.low) * grid.per_mm);
        let (column, row) = (x.max(0.0) as usize, y.max(0.0) as usize);
        let (column, row) = (column.min(grid.wide - 1), row.min(grid.tall - 1));
        let Hint { far, segment, other } = grid.cells[row * grid.wide + column];
        let (dx, dy) = (x - (column as f32 + 0.5), y - (row as f32 + 0.5));
        let off = (dx * dx + dy * dy).sqrt() * grid.size;
        if far.abs() - off > grid.near {
            let far = if far > 0.0 { far - off } else { far + off };
            return Near { far, segment: None, along: 0.0, way: [0.0, 1.0] };
        }
        // Beyond the grid its border tells too little, but the way back to it is known.
        let beyond = [(x - grid.wide as f32).max(0.0), (-y).max(y - grid.tall as f32).max(0.0)];
        if beyond[0] + beyond[1] > 0.0 {
            let far = long(beyond) * grid.size + 0.25 * grid.near;
            return Near { far, segment: None, along: 0.0, way: [0.0, 1.0] };
        }
        let near = self.nearest_from(segment as usize, [r, z]);
        match other {
            None => near,
            Some(other) => {
                let other = self.nearest_from(other as usize, [r, z]);
                if other.far.abs() < near.far.abs() { other } else { near }
            }
        }
    }

    /// The place against the outside alone, exact from however far.
    pub(super) fn within(&self, r: f32, z: f32) -> Near {
        let mut best = (f32::INFINITY, 0);
        for (i, segment) in self.segments.iter().enumerate() {
            if segment.stretch == Stretch::Outside {
                let far = segment.far_sq([r, z]);
                if far < best.0 {
                    best = (far, i);
                }
            }
        }
        let near = self.nearest_from(best.1, [r, z]);
        Near { far: -best.0.sqrt(), ..near }
    }

    /// Walks from segment `i` to the one beside the place.
    fn nearest_from(&self, mut i: usize, at: [f32; 2]) -> Near {
        const FARTHEST: i32 = 3 * PIECES as i32;
        let mut came = 0_i32;
        let (mut before, mut after);
        loop {
            let segment = &self.segments[i];
            before = ahead(&segment.from, at);
            after = -ahead(&segment.to, at);
            if before < 0.0 && !segment.first && (-FARTHEST..=0).contains(&came) {
                i -= 1;
                came -= 1;
            } else if after < 0.0 && !segment.last && (0..=FARTHEST).contains(&came) {
                i += 1;
                came += 1;
            } else {
                break;
            }
        }
        let segment = &self.segments[i];
        let whole = before + after;
        let part = if whole > 1e-9 { (before / whole).clamp(0.0, 1.0) } else { 0.5 };
        let mixed = |a: [f32; 2], b: [f32; 2]| [mix(a[0], b[0], part), mix(a[1], b[1], part)];
        let foot = mixed(segment.from.at, segment.to.at);
        let way = unit(mixed(segment.from.way, segment.to.way));
        Near {
            // Outside lies to the right of the way.
            far: (at[0] - foot[0]) * way[1] - (at[1] - foot[1]) * way[0],
            segment: Some(i as u16),
            along: mix(segment.along.0, segment.along.1, part),
            way,
        }
    }

    /// The place (r, z) and the way at `along` rounds from the start, on the outside.
    pub(super) fn at(&self, along: f32) -> ([f32; 2], [f32; 2]) {
        let outside = || self.segments.iter().filter(|s| s.stretch == Stretch::Outside);
        let found = outside().find(|s| along <= s.along.1).or_else(|| outside().next_back());
        let Some(segment) = found else { return ([0.0; 2], [0.0, 1.0]) };
        let (a, b) = segment.along;
        let part = ((along - a) / (b - a).max(1e-6)).clamp(0.0, 1.0);
        let mixed = |a: [f32; 2], b: [f32; 2]| [mix(a[0], b[0], part), mix(a[1], b[1], part)];
        (mixed(segment.from.at, segment.to.at), unit(mixed(segment.from.way, segment.to.way)))
    }
}

fn finite(value: f64) -> f32 {
    if value.is_finite() { value.clamp(-1e5, 1e5) as f32 } else { 0.0 }
}

fn long(a: [f32; 2]) -> f32 {
    (a[0] * a[0] + a[1] * a[1]).sqrt()
}

fn minus(a: [f32; 2], b: [f32; 2]) -> [f32; 2] {
    [a[0] - b[0], a[1] - b[1]]
}

/// `a` at length 1; upwards if it has no length.
fn unit(a: [f32; 2]) -> [f32; 2] {
    let length = long(a);
    if length > 1e-9 { [a[0] / length, a[1] / length] } else { [0.0, 1.0] }
}

/// How far `at` lies ahead of a corner.
fn ahead(corner: &Corner, at: [f32; 2]) -> f32 {
    (at[0] - corner.at[0]) * corner.way[0] + (at[1] - corner.at[1]) * corner.way[1]
}

/// The whole curve from axis to axis, or from stuffing to stuffing.
fn lay(mut nodes: Vec<[f32; 2]>, thick: f32) -> Vec<Segment> {
    let last = nodes.len() - 1;
    let open = [nodes[0][0] > 1e-3, nodes[last][0] > 1e-3];
    // The loops of a rim stand above the cloth, which ends so much sooner.
    for (is_open, end, beside) in [(open[0], 0, 1), (open[1], last, last - 1)] {
        if is_open {
            let chord = minus(nodes[end], nodes[beside]);
            let far = (RIM_HEIGHT * thick).min(0.5 * long(chord));
            let way = unit(chord);
            nodes[end] =
                [(nodes[end][0] - far * way[0]).max(0.05), nodes[end][1] - far * way[1]];
        }
    }
    let corners = smoothed(&nodes);
    let outside: Vec<Segment> = corners
        .windows(2)
        .zip(0..)
        .map(|(pair, k)| {
            let along = |k: i32| k as f32 / PIECES as f32;
            Segment::new(pair[0], pair[1], (along(k), along(k + 1)), Stretch::Outside)
        })
        .collect();
    let mut all = Vec::with_capacity(outside.len() + 64);
    if open[0] {
        // A start is an end seen in a mirror.
        let seen: Vec<Segment> = outside.iter().rev().map(Segment::mirrored).collect();
        all.extend(ending(&seen, thick).iter().rev().map(Segment::mirrored));
    }
    all.extend_from_slice(&outside);
    if open[1] {
        all.extend(ending(&outside, thick));
    }
    if let Some(first) = all.first_mut() {
        first.first = true;
    }
    if let Some(last) = all.last_mut() {
        last.last = true;
    }
    all
}

/// From the end of `outside` over the rim, down the inside of the cloth and over the stuffing
/// to the axis.
fn ending(outside: &[Segment], thick: f32) -> Vec<Segment> {
    let edge = outside.len() - 1;
    let corner = outside[edge].to;
    let (way, out) = (corner.way, [corner.way[1], -corner.way[0]]);
    let mut row = Vec::new();
    let mut from = corner;
    for i in 1..=RIM_PIECES {
        let part = |i: usize| i as f32 / RIM_PIECES as f32;
        let (sin, cos) = (PI * part(i)).sin_cos();
        let (up, over) = (RIM_HEIGHT * thick * sin, 0.5 * thick * (cos - 1.0));
        let at = [0, 1].map(|j| corner.at[j] + up * way[j] + over * out[j]);
        let turned = unit([0, 1].map(|j| RIM_HEIGHT * cos * way[j] - 0.5 * sin * out[j]));
        let to = Corner { at: [at[0].max(0.02), at[1]], way: turned };
        let along = (part(i - 1), part(i));
        row.push(Segment::new(from, to, along, Stretch::Rim { start: false }));
        from = to;
    }
    let deep = (STUFFED_DEPTH * corner.at[0]).max(1.5 * thick);
    let mut gone = 0.0;
    for segment in outside[outside.len() / 2..].iter().rev() {
        let c = segment.from;
        let at = [c.at[0] - thick * c.way[1], c.at[1] + thick * c.way[0]];
        // Where the cloth is too narrow it has no inside to be seen.
        if at[0] < 0.3 * thick || gone > deep {
            break;
        }
        gone += long(minus(c.at, segment.to.at));
        let to = Corner { at, way: c.way.map(|w| -w) };
        let along = (segment.along.1, segment.along.0);
        row.push(Segment::new(from, to, along, Stretch::Within));
        from = to;
    }
    let (wide, floor) = (from.at[0].max(1e-3), from.at[1]);
    // Only an end that faces away from the rest shows stuffing as a dome.
    let dome = if way[1] > 0.2 { DOME * wide } else { 0.0 };
    for i in 1..=DOME_PIECES {
        let part = 1.0 - i as f32 / DOME_PIECES as f32;
        let at = [wide * part, floor + dome * (1.0 - part * part)];
        let to = Corner { at, way: unit([-wide, 2.0 * dome * part]) };
        row.push(Segment::new(from, to, (0.0, 0.0), Stretch::Stuffing));
        from = to;
    }
    row
}

impl Segment {
    fn new(from: Corner, to: Corner, along: (f32, f32), stretch: Stretch) -> Self {
        let length = long(minus(to.at, from.at)).max(1e-4);
        let bend = (from.way[0] * to.way[1] - from.way[1] * to.way[0]) / length;
        let per_mm = (along.1 - along.0) / length;
        Self { from, to, along, stretch, per_mm, bend, first: false, last: false }
    }

    /// As a mirror in the plane z = 0 shows it, run the other way.
    fn mirrored(&self) -> Self {
        let corner = |c: Corner| Corner { at: [c.at[0], -c.at[1]], way: [-c.way[0], c.way[1]] };
        let stretch = match self.stretch {
            Stretch::Rim { start } => Stretch::Rim { start: !start },
            other => other,
        };
        Self {
            from: corner(self.to),
            to: corner(self.from),
            along: (self.along.1, self.along.0),
            per_mm: -self.per_mm,
            stretch,
            ..*self
        }
    }
}

/// A curve through `nodes`, [`PIECES`] from one to the next: cubic in the round number, with
/// the tangents that the chords on either side suggest, square to the axis where it meets it.
fn smoothed(nodes: &[[f32; 2]]) -> Vec<Corner> {
    let last = nodes.len() - 1;
    let chord = |k: usize| minus(nodes[k + 1], nodes[k]);
    let way = |k: usize| -> [f32; 2] {
        let before = (k > 0).then(|| chord(k - 1));
        let after = (k < last).then(|| chord(k));
        match (before, after) {
            (None, _) if nodes[k][0] <= 1e-3 => [1.0, 0.0],
            (_, None) if nodes[k][0] <= 1e-3 => [-1.0, 0.0],
            // Each chord counts by the length of the other: the circle through all three.
            (Some(a), Some(b)) => {
                let (la, lb) = (long(a).max(1e-6), long(b).max(1e-6));
                unit([0, 1].map(|j| a[j] / la * lb + b[j] / lb * la))
            }
            (Some(c), None) | (None, Some(c)) => unit(c),
            (None, None) => [0.0, 1.0],
        }
    };
    let mut corners = Vec::with_capacity(last * PIECES + 1);
    for k in 0..last {
        let (p, q, length) = (nodes[k], nodes[k + 1], long(chord(k)));
        let (s, t) = (way(k).map(|w| w * length), way(k + 1).map(|w| w * length));
        for i in 0..PIECES + usize::from(k + 1 == last) {
            let u = i as f32 / PIECES as f32;
            let (u2, u3) = (u * u, u * u * u);
            let on =
                [2.0 * u3 - 3.0 * u2 + 1.0, u3 - 2.0 * u2 + u, 3.0 * u2 - 2.0 * u3, u3 - u2];
            let d =
                [6.0 * (u2 - u), 3.0 * u2 - 4.0 * u + 1.0, 6.0 * (u - u2), 3.0 * u2 - 2.0 * u];
            let sum = |w: [f32; 4]| {
                [0, 1].map(|j| w[0] * p[j] + w[1] * s[j] + w[2] * q[j] + w[3] * t[j])
            };
            let at = sum(on);
            corners.push(Corner { at: [at[0].max(0.0), at[1]], way: unit(sum(d)) });
        }
    }
    corners
}

impl Grid {
    /// Most cells on either side.
    const MOST: f32 = 64.0;

    fn new(segments: &[Segment], thick: f32, (widest, low, high): (f32, f32, f32)) -> Self {
        let margin = 1.5 * thick;
        let extent = (widest + margin).max(high - low + 2.0 * margin);
        let size = (0.7 * thick).max(extent / Self::MOST).max(1e-3);
        let low = low - margin;
        let wide = ((widest + margin) / size).ceil() as usize + 1;
        let tall = ((high + margin - low) / size).ceil() as usize + 1;
        let mut cells = Vec::with_capacity(wide * tall);
        for row in 0..tall {
            for column in 0..wide {
                let at = [(column as f32 + 0.5) * size, low + (row as f32 + 0.5) * size];
                cells.push(Hint::at(segments, at, size));
            }
        }
        Self { cells, wide, tall, size, per_mm: 1.0 / size, low, near: thick }
    }
}

impl Segment {
    /// Square of the distance of a place.
    fn far_sq(&self, at: [f32; 2]) -> f32 {
        let (chord, from) = (minus(self.to.at, self.from.at), minus(at, self.from.at));
        let square = (chord[0] * chord[0] + chord[1] * chord[1]).max(1e-12);
        let part = ((from[0] * chord[0] + from[1] * chord[1]) / square).clamp(0.0, 1.0);
        let off = [from[0] - part * chord[0], from[1] - part * chord[1]];
        off[0] * off[0] + off[1] * off[1]
    }

    /// Whether a place lies outside of it.
    fn is_outside(&self, at: [f32; 2]) -> bool {
        let middle = [0, 1].map(|j| 0.5 * (self.from.at[j] + self.to.at[j]));
        let way = [0, 1].map(|j| self.from.way[j] + self.to.way[j]);
        (at[0] - middle[0]) * way[1] - (at[1] - middle[1]) * way[0] >= 0.0
    }
}

impl Hint {
    /// Of a cell of side `size` about a place.
    fn at(segments: &[Segment], at: [f32; 2], size: f32) -> Self {
        /// Segments of one fold.
        const FOLD: usize = 3 * PIECES;
        let (far, best) = nearest(segments, at, |_| true);
        // From the middle to a corner both distances change by half a diagonal.
        let (beyond, other) = nearest(segments, at, |i| i.abs_diff(best) > FOLD);
        let other = (beyond < far + 1.4143 * size).then_some(other as u16);
        let far = if segments[best].is_outside(at) { far } else { -far };
        Self { far, segment: best as u16, other }
    }
}

/// Distance of a place from the nearest of the segments that `counts`, and which it is; far
/// beyond all if none does.
fn nearest(segments: &[Segment], at: [f32; 2], counts: impl Fn(usize) -> bool) -> (f32, usize) {
    // Segments are short: the nearest is beside the nearest of every few corners.
    let square = |at: [f32; 2]| at[0] * at[0] + at[1] * at[1];
    let mut rough = (f32::INFINITY, None);
    for i in (0..segments.len()).step_by(PIECES / 2) {
        let far = square(minus(at, segments[i].from.at));
        if far < rough.0 && counts(i) {
            rough = (far, Some(i));
        }
    }
    let Some(about) = rough.1 else { return (f32::INFINITY, 0) };
    let mut best = (f32::INFINITY, about);
    for i in about.saturating_sub(PIECES)..(about + PIECES).min(segments.len()) {
        let far = segments[i].far_sq(at);
        if far < best.0 && counts(i) {
            best = (far, i);
        }
    }
    (best.0.sqrt(), best.1)
}
