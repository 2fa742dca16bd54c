//! The profile of a part as a closed curve of short straight pieces, and the distance of a
//! place from it.
//!
//! Forecast nodes are joined smoothly. An open end turns over its rim and goes on down the
//! inside of the cloth to the stuffing, so that what the curve encloses is all that is solid.

use super::profile::{PIECES, ProfileSegment, ProfileStretch, ahead, lay, long, minus, unit};
use super::space::mix;
use crate::piece::outline::Rz;

/// A place against the profile.
#[derive(Debug, Clone, Copy)]
pub(super) struct NearCurve {
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
    segments: Vec<ProfileSegment>,
    grid: DistanceGrid,
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
struct DistanceGrid {
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
    /// How far its border is from the profile, at least.
    margin: f32,
}

impl Curve {
    /// The curve of `forecast`, whose nodes are the edges of rounds and perhaps a pole, in
    /// cloth `thick` mm thick.
    pub(super) fn new(forecast: &[Rz], thick: f32) -> Self {
        let segments = lay(forecast, thick);
        let places = || segments.iter().flat_map(|s| [s.from.at, s.to.at]);
        let widest = places().fold(0.0_f32, |most, p| most.max(p[0]));
        let low = places().fold(f32::INFINITY, |least, p| least.min(p[1]));
        let high = places().fold(f32::NEG_INFINITY, |most, p| most.max(p[1]));
        let grid = DistanceGrid::new(&segments, thick, (widest, low, high));
        Self { segments, grid, widest, low, high }
    }

    pub(super) fn segment(&self, index: u16) -> &ProfileSegment {
        &self.segments[index as usize]
    }

    /// (r, z) of all its corners.
    pub(super) fn corners(&self) -> impl Iterator<Item = [f32; 2]> + '_ {
        self.segments.iter().flat_map(|s| [s.from.at, s.to.at])
    }

    /// The place (r, z) against the profile. Farther off than a few mm, only a distance that
    /// is surely not too great is told.
    pub(super) fn near(&self, r: f32, z: f32) -> NearCurve {
        let grid = &self.grid;
        let (x, y) = (r * grid.per_mm, (z - grid.low) * grid.per_mm);
        let (column, row) = (x.max(0.0) as usize, y.max(0.0) as usize);
        let (column, row) = (column.min(grid.wide - 1), row.min(grid.tall - 1));
        let Hint { far, segment, other } = grid.cells[row * grid.wide + column];
        let (dx, dy) = (x - (column as f32 + 0.5), y - (row as f32 + 0.5));
        let off = (dx * dx + dy * dy).sqrt() * grid.size;
        if far.abs() - off > grid.near {
            let far = if far > 0.0 { far - off } else { far + off };
            return NearCurve { far, segment: None, along: 0.0, way: [0.0, 1.0] };
        }
        // Beyond the grid its border tells too little, but the way back to it is known.
        let beyond = [(x - grid.wide as f32).max(0.0), (-y).max(y - grid.tall as f32).max(0.0)];
        if beyond[0] + beyond[1] > 0.0 {
            let far = long(beyond) * grid.size + grid.margin;
            return NearCurve { far, segment: None, along: 0.0, way: [0.0, 1.0] };
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
    pub(super) fn within(&self, r: f32, z: f32) -> NearCurve {
        let is_outside = |s: u16| self.segments[s as usize].stretch == ProfileStretch::Outside;
        let best = nearest(&self.segments, [r, z], |i| is_outside(i as u16));
        let near = self.nearest_from(best.1, [r, z]);
        // Beside a rim the nearest of the outside is its end.
        let along = match near.segment.filter(|&s| is_outside(s)) {
            Some(_) => near.along,
            None => {
                let (a, b) = self.segments[best.1].along;
                0.5 * (a + b)
            }
        };
        NearCurve { far: -best.0, along, ..near }
    }

    /// Walks from segment `i` to the one beside the place.
    fn nearest_from(&self, mut i: usize, at: [f32; 2]) -> NearCurve {
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
        NearCurve {
            // Outside lies to the right of the way.
            far: (at[0] - foot[0]) * way[1] - (at[1] - foot[1]) * way[0],
            segment: Some(i as u16),
            along: mix(segment.along.0, segment.along.1, part),
            way,
        }
    }

    /// The place (r, z) and the way at `along` rounds from the start, on the outside.
    pub(super) fn at(&self, along: f32) -> ([f32; 2], [f32; 2]) {
        let outside = || self.segments.iter().filter(|s| s.stretch == ProfileStretch::Outside);
        let found = outside().find(|s| along <= s.along.1).or_else(|| outside().next_back());
        let Some(segment) = found else { return ([0.0; 2], [0.0, 1.0]) };
        let (a, b) = segment.along;
        let part = ((along - a) / (b - a).max(1e-6)).clamp(0.0, 1.0);
        let mixed = |a: [f32; 2], b: [f32; 2]| [mix(a[0], b[0], part), mix(a[1], b[1], part)];
        (mixed(segment.from.at, segment.to.at), unit(mixed(segment.from.way, segment.to.way)))
    }
}

impl DistanceGrid {
    /// Most cells on either side.
    const MOST: f32 = 64.0;

    fn new(
        segments: &[ProfileSegment],
        thick: f32,
        (widest, low, high): (f32, f32, f32),
    ) -> Self {
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
        Self { cells, wide, tall, size, per_mm: 1.0 / size, low, near: thick, margin }
    }
}

impl Hint {
    /// Of a cell of side `size` about a place.
    fn at(segments: &[ProfileSegment], at: [f32; 2], size: f32) -> Self {
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
fn nearest(
    segments: &[ProfileSegment],
    at: [f32; 2],
    counts: impl Fn(usize) -> bool,
) -> (f32, usize) {
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
    let beside = about.saturating_sub(PIECES)..(about + PIECES).min(segments.len());
    for (i, segment) in beside.clone().zip(&segments[beside]) {
        let far = segment.far_sq(at);
        if far < best.0 && counts(i) {
            best = (far, i);
        }
    }
    (best.0.sqrt(), best.1)
}
