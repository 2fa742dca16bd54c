//! Cloth in space: stitches wherever their corners lie, with the relief of their yarn.
//!
//! A surface of revolution has a closed form that a ray can meet; a ruffle has none. So here
//! each patch of cloth falls on the picture as triangles, the nearest one wins, and only what
//! is seen is lit.

use super::look::{REACH, TileShape};
use super::shade::{Dyes, Lit, ShadeGround};
use super::space::{V3, add, chance, cross, dot, scaled, sub, turned, unit};
use super::still::{MOST_PIXELS, Still};
use super::tile::{Tile, tile};
use super::view::{Quality, ReliefView, Seen};
use crate::error::{Error, Result};
use crate::picture::Rgb;
use crate::piece::YarnFace;
use crate::piece::cloth::Kind;
use crate::plan::placement::Stitch;

/// Samples a pixel has each way where care is taken.
const FINE: usize = 3;
/// How much one stitch is higher than another, and otherwise tinted: hands are never even.
const UNEVEN: (f32, f32) = (0.07, 0.03);
/// How wide a sample may be, in stitches, before they are one tone.
const MELTS: f32 = 0.8;
/// Light that comes to the side of the cloth that is turned away when worked.
const WITHIN: f32 = 0.86;

/// What a patch of cloth is worked in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DrapeStitch {
    /// Stitches of a kind.
    Worked(Kind),
    /// Loops gathered by a thread.
    Drawn,
}

/// A patch of cloth between two stitches of a round that stand side by side: the right half of
/// one and the left half of the next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DrapeCell {
    /// Indices of its corners: lower left, lower right, upper right, upper left, so that they
    /// go counter-clockwise seen from outside. Two may be one place.
    pub corners: [u32; 4],
    /// What it is worked in.
    pub of: DrapeStitch,
    /// Its round, counted from 1.
    pub round: u32,
    /// The stitches whose halves it is, left and right, counted from 1.
    pub stitches: [u32; 2],
    /// Its yarn.
    pub yarn: usize,
}

/// Cloth as it lies in space, ready to be seen.
#[derive(Debug, Clone)]
pub struct Drape<'a> {
    places: Vec<V3>,
    /// Unit normals of the outside at the places.
    normals: Vec<V3>,
    cells: &'a [DrapeCell],
    stitch_mm: f32,
    /// What yarns look like, by number.
    faces: &'a [YarnFace],
}

/// A corner of a triangle in the picture.
#[derive(Debug, Clone, Copy)]
struct DrapeCorner {
    /// Samples from the left and from the top, and mm towards the eye.
    at: V3,
    /// Unit normal in the eye's frame.
    normal: V3,
    /// Place in the stitch.
    a: f32,
    b: f32,
}

/// Half a patch's triangle, and whose it is.
#[derive(Debug, Clone, Copy)]
struct DrapeTriangle {
    corners: [DrapeCorner; 3],
    cell: u32,
    right: bool,
}

/// What lies nearest at a sample.
#[derive(Debug, Clone, Copy)]
struct Nearest {
    near: f32,
    triangle: u32,
    /// Shares of the second and the third corner.
    shares: [f32; 2],
}

const NOTHING: Nearest =
    Nearest { near: f32::NEG_INFINITY, triangle: u32::MAX, shares: [0.0; 2] };

impl<'a> Drape<'a> {
    /// Cloth of `cells` whose corners lie at `places`, mm; its stitches are `stitch_mm` wide.
    /// Corners that there are not are left out.
    pub fn new(places: Vec<V3>, cells: &'a [DrapeCell], stitch_mm: f32) -> Self {
        let mut normals = vec![[0.0; 3]; places.len()];
        for cell in cells {
            let [a, b, c, d] = cell.corners.map(|i| place_of(&places, i));
            // Twice the area of the patch, square to it: large patches count for more.
            let square = cross(sub(c, a), sub(d, b));
            let mut seen = [u32::MAX; 4];
            for (slot, corner) in cell.corners.into_iter().enumerate() {
                if seen.contains(&corner) {
                    continue;
                }
                seen[slot] = corner;
                if let Some(normal) = normals.get_mut(corner as usize) {
                    *normal = add(*normal, square);
                }
            }
        }
        let normals = normals.into_iter().map(unit).collect();
        Self { places, normals, cells, stitch_mm, faces: &[] }
    }

    /// The same in yarns that look so, by their number; those that are not told of are smooth.
    #[must_use]
    pub fn in_yarns(self, faces: &'a [YarnFace]) -> Self {
        Self { faces, ..self }
    }

    /// The smallest upright rectangle around it as seen turned and tilted so, mm from
    /// `middle`: x right, y down, least corner first.
    pub fn bounds(&self, turn_deg: f32, tilt_deg: f32, middle: V3) -> [[f32; 2]; 2] {
        let eye = ReliefView {
            turn_deg,
            tilt_deg,
            scale: 1.0,
            middle,
            size: [1; 2],
            quality: Quality::Draft,
        }
        .eye();
        let (mut low, mut high) = ([f32::INFINITY; 2], [f32::NEG_INFINITY; 2]);
        for place in &self.places {
            let at = turned(&eye, sub(*place, middle));
            for i in 0..2 {
                low[i] = low[i].min(at[i]);
                high[i] = high[i].max(at[i]);
            }
        }
        if low[0] <= high[0] { [low, high] } else { [[0.0; 2]; 2] }
    }

    /// A still of it as `view` sees it; colours by yarn, `lit` a round in another colour.
    ///
    /// # Errors
    /// For a picture of more than [`MOST_PIXELS`].
    pub fn still(
        &self,
        view: &ReliefView,
        colours: &[Rgb],
        lit: Option<(u32, Rgb)>,
    ) -> Result<Still> {
        let fine = if view.quality == Quality::Full { FINE } else { 1 };
        let [wide, tall] = view.size.map(|s| s as usize * fine);
        if (wide * tall) as u64 > MOST_PIXELS {
            return Err(Error::new(
                "picture",
                format!("it would have {} × {} pixels", view.size[0], view.size[1]),
                "make it smaller",
            ));
        }
        let triangles = self.triangles(view, fine as f32);
        let mut nearest = vec![NOTHING; wide * tall];
        for (i, triangle) in triangles.iter().enumerate() {
            fill(triangle, i as u32, [wide, tall], &mut nearest);
        }
        let lights = Lights {
            drape: self,
            triangles: &triangles,
            dyes: Dyes::new(colours, lit),
            per_mm: view.scale * fine as f32,
        };
        let mut still = Still {
            size: view.size,
            pixels: Vec::with_capacity(nearest.len() / (fine * fine)),
            map: Vec::with_capacity(nearest.len() / (fine * fine)),
        };
        for y in 0..view.size[1] as usize {
            for x in 0..view.size[0] as usize {
                let samples = (0..fine * fine)
                    .map(|i| &nearest[(y * fine + i / fine) * wide + x * fine + i % fine]);
                let (pixel, seen) = lights.pixel(samples, fine * fine);
                still.pixels.push(pixel);
                still.map.push(seen);
            }
        }
        Ok(still)
    }

    /// Its triangles in the picture.
    fn triangles(&self, view: &ReliefView, fine: f32) -> Vec<DrapeTriangle> {
        let eye = view.eye();
        let mut triangles = Vec::with_capacity(4 * self.cells.len());
        for (index, cell) in self.cells.iter().enumerate() {
            let at = cell.corners.map(|i| {
                let [x, y, near] = view.project(place_of(&self.places, i));
                [x * fine, y * fine, near]
            });
            let normal = cell.corners.map(|i| turned(&eye, place_of(&self.normals, i)));
            let corner =
                |i: usize, a: f32, b: f32| DrapeCorner { at: at[i], normal: normal[i], a, b };
            let middle = |i: usize, j: usize, a: f32, b: f32| DrapeCorner {
                at: scaled(add(at[i], at[j]), 0.5),
                normal: unit(add(normal[i], normal[j])),
                a,
                b,
            };
            for right in [false, true] {
                let [p, q, r, s] = if right {
                    [
                        middle(0, 1, -0.5, 0.0),
                        corner(1, 0.0, 0.0),
                        corner(2, 0.0, 1.0),
                        middle(3, 2, -0.5, 1.0),
                    ]
                } else {
                    [
                        corner(0, 0.0, 0.0),
                        middle(0, 1, 0.5, 0.0),
                        middle(3, 2, 0.5, 1.0),
                        corner(3, 0.0, 1.0),
                    ]
                };
                let cell = index as u32;
                triangles.push(DrapeTriangle { corners: [p, q, r], cell, right });
                triangles.push(DrapeTriangle { corners: [p, r, s], cell, right });
            }
        }
        triangles
    }
}

/// Puts a triangle where it is nearer than what lies there.
fn fill(triangle: &DrapeTriangle, index: u32, [wide, tall]: [usize; 2], out: &mut [Nearest]) {
    let [p, q, r] = triangle.corners.map(|corner| corner.at);
    let double = (q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1]);
    if double.abs() < 1e-9 || !double.is_finite() {
        return;
    }
    let range = |i: usize, most: usize| {
        let low = p[i].min(q[i]).min(r[i]) - 0.5;
        let high = p[i].max(q[i]).max(r[i]) - 0.5;
        let first = low.ceil().clamp(0.0, most as f32) as usize;
        let end = (high.floor() + 1.0).clamp(0.0, most as f32) as usize;
        first..end
    };
    let columns = range(0, wide);
    for y in range(1, tall) {
        let dy = y as f32 + 0.5 - p[1];
        for x in columns.clone() {
            let dx = x as f32 + 0.5 - p[0];
            let second = (dx * (r[1] - p[1]) - (r[0] - p[0]) * dy) / double;
            let third = ((q[0] - p[0]) * dy - dx * (q[1] - p[1])) / double;
            // A little over its edges, so that no ground shows between two.
            if second < -1e-4 || third < -1e-4 || second + third > 1.0 + 1e-4 {
                continue;
            }
            let near = p[2] + (q[2] - p[2]) * second + (r[2] - p[2]) * third;
            let there = &mut out[y * wide + x];
            if near > there.near {
                *there = Nearest { near, triangle: index, shares: [second, third] };
            }
        }
    }
}

/// What lights the picture.
struct Lights<'a> {
    drape: &'a Drape<'a>,
    triangles: &'a [DrapeTriangle],
    dyes: Dyes,
    /// Samples a mm.
    per_mm: f32,
}

impl Lights<'_> {
    /// A pixel of so many samples, and what is seen there.
    fn pixel<'n>(
        &self,
        samples: impl Iterator<Item = &'n Nearest>,
        many: usize,
    ) -> ([u8; 4], Seen) {
        let (mut sum, mut covered, mut seen) = ([0.0_f32; 3], 0_usize, Seen::default());
        for sample in samples {
            let Some(triangle) = self.triangles.get(sample.triangle as usize) else { continue };
            let (colour, there) = self.sample(triangle, sample.shares);
            sum = [0, 1, 2].map(|c| sum[c] + colour[c]);
            if covered == 0 {
                seen = there;
            }
            covered += 1;
        }
        let [r, g, b] = sum.map(|c| (c / many as f32).round().clamp(0.0, 255.0) as u8);
        let alpha = (255 * covered / many) as u8;
        // Premultiplied: no channel is more than what covers it.
        ([r.min(alpha), g.min(alpha), b.min(alpha), alpha], seen)
    }

    fn sample(&self, triangle: &DrapeTriangle, [second, third]: [f32; 2]) -> ([f32; 3], Seen) {
        let [p, q, r] = &triangle.corners;
        let first = 1.0 - second - third;
        let blend =
            |of: fn(&DrapeCorner) -> f32| first * of(p) + second * of(q) + third * of(r);
        let (a, b) = (blend(|c| c.a), blend(|c| c.b));
        let smooth = unit(
            [0, 1, 2].map(|i| first * p.normal[i] + second * q.normal[i] + third * r.normal[i]),
        );
        let cell = &self.drape.cells[triangle.cell as usize];
        let outside = smooth[2] >= 0.0;
        let smooth = if outside { smooth } else { scaled(smooth, -1.0) };
        let stitch = cell.stitches[usize::from(triangle.right)];
        let shape = match cell.of {
            DrapeStitch::Drawn => TileShape::DRAWN,
            DrapeStitch::Worked(_) if !outside => TileShape::WITHIN,
            DrapeStitch::Worked(kind) => TileShape::of(kind, Stitch::Plain, 1),
        };
        let face = self.drape.faces.get(cell.yarn).copied().unwrap_or_default();
        let own = 1.0 / (self.per_mm * self.drape.stitch_mm);
        let [_, across, up, groove] = uppermost(tile(shape, face), own, a, b);
        let by = self.drape.stitch_mm * (1.0 + UNEVEN.0 * chance(cell.round, stitch));
        // How the place moves with a step across the stitch, and up it, in the eye's frame.
        let (per_a, per_b) = steps(&triangle.corners, self.per_mm);
        let tilt = add(gradient(per_a, by * across), gradient(per_b, by * up));
        let normal = unit(sub(smooth, tilt));
        let lit = Lit {
            normal,
            smooth,
            groove,
            open: if outside { 1.0 } else { WITHIN },
            tint: 1.0 + UNEVEN.1 * chance(stitch + 7, cell.round + 31),
            ground: ShadeGround::Yarn { round: cell.round, yarn: cell.yarn, face },
        };
        let count = |n: u32| n.min(u32::from(u16::MAX)) as u16;
        let seen = Seen { part: 1, round: count(cell.round), stitch: count(stitch) };
        (self.dyes.colour(&lit), seen)
    }
}

/// The relief at a place of a stitch, whichever of it and those above and below lies
/// uppermost; `wide` is how many stitches a sample is wide.
fn uppermost(tile: &Tile, wide: f32, a: f32, b: f32) -> [f32; 4] {
    if wide > MELTS {
        return tile.mean;
    }
    let level = Tile::level_for(wide);
    let mut best = tile.sample(level, a, b);
    for beyond in [b - 1.0, b + 1.0] {
        if (-REACH..1.0 + REACH).contains(&beyond) {
            let other = tile.sample(level, a, beyond);
            if other[0] > best[0] {
                best = other;
            }
        }
    }
    best
}

/// How far the place moves, mm in the eye's frame, with a whole step across its stitch and up
/// it.
fn steps(corners: &[DrapeCorner; 3], per_mm: f32) -> (V3, V3) {
    let [p, q, r] = corners;
    let mm = |c: &DrapeCorner| [c.at[0] / per_mm, c.at[1] / per_mm, c.at[2]];
    let (u, v) = (sub(mm(q), mm(p)), sub(mm(r), mm(p)));
    let (ua, ub) = (q.a - p.a, q.b - p.b);
    let (va, vb) = (r.a - p.a, r.b - p.b);
    let double = ua * vb - va * ub;
    if double.abs() < 1e-9 {
        return ([0.0; 3], [0.0; 3]);
    }
    let per_a = scaled(sub(scaled(u, vb), scaled(v, ub)), 1.0 / double);
    let per_b = scaled(sub(scaled(v, ua), scaled(u, va)), 1.0 / double);
    (per_a, per_b)
}

/// The slope of a height that grows by `grows` with each step of `step`; a step of next to
/// nothing would be steeper than yarn can be.
fn gradient(step: V3, grows: f32) -> V3 {
    let long = dot(step, step);
    if long < 1e-6 { [0.0; 3] } else { scaled(step, grows / long) }
}

fn place_of(places: &[V3], index: u32) -> V3 {
    places.get(index as usize).copied().unwrap_or([0.0; 3])
}
