//! A scene: convex polygons back to front, the words on them, and what lies under a point.

use super::Rgb;

/// One convex polygon of a scene.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Polygon {
    first: u32,
    corners: u32,
    /// Its colour.
    pub colour: Rgb,
    /// How near the eye the stitch it belongs to is, mm towards the eye.
    pub depth: f32,
    /// The round it belongs to, counted from 1; none for stuffing.
    pub round: Option<u32>,
    /// The stitch of that round, counted from 1 in working order; none where the polygon is
    /// not one stitch's.
    pub stitch: Option<u32>,
    /// Whether its edge is to be softened.
    pub rim: Rim,
}

/// Whether the edge of a polygon can be told from what lies around it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rim {
    /// It can: whoever paints it softens it.
    Seen,
    /// It lies on others of nearly its colour, or under them: a plain edge does.
    Lost,
}

/// Words on a scene, centred at a place.
#[derive(Debug, Clone, PartialEq)]
pub struct Writing {
    /// The words.
    pub text: String,
    /// Middle of the words, pixels.
    pub at: [f32; 2],
    /// Height of the type, pixels.
    pub height: f32,
    /// Colour of the words.
    pub colour: Rgb,
    /// Whether they run upwards.
    pub upright: bool,
}

/// A round and, where one can be told, a stitch of it; both counted from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Picked {
    /// The round.
    pub round: u32,
    /// The stitch, in working order.
    pub stitch: Option<u32>,
}

/// Polygons back to front, in pixels from the middle of the piece, y down.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Scene {
    points: Vec<[f32; 2]>,
    polygons: Vec<Polygon>,
    /// Words, over all polygons.
    pub writing: Vec<Writing>,
}

impl Scene {
    /// Takes everything away; its memory stays, for the next picture.
    pub(super) fn clear(&mut self) {
        self.points.clear();
        self.polygons.clear();
        self.writing.clear();
    }

    /// Adds a polygon in front of all others. Its corners must be convex.
    pub(super) fn push(&mut self, paint: Paint, corners: impl IntoIterator<Item = [f32; 2]>) {
        let first = self.points.len() as u32;
        self.points.extend(corners);
        self.polygons.push(Polygon {
            first,
            corners: self.points.len() as u32 - first,
            colour: paint.colour,
            depth: paint.depth,
            round: paint.round,
            stitch: paint.stitch,
            rim: paint.rim,
        });
    }

    /// The polygons, back to front.
    pub fn polygons(&self) -> &[Polygon] {
        &self.polygons
    }

    /// Corners of a polygon of this scene.
    pub fn corners(&self, polygon: &Polygon) -> &[[f32; 2]] {
        &self.points[polygon.first as usize..(polygon.first + polygon.corners) as usize]
    }

    /// The smallest upright rectangle around all polygons and half a line round the middle
    /// of all words, least corner first; a point at the origin when there are none.
    pub fn bounds(&self) -> [[f32; 2]; 2] {
        let nothing = [[f32::INFINITY; 2], [f32::NEG_INFINITY; 2]];
        let words = self
            .writing
            .iter()
            .flat_map(|w| [-0.5, 0.5].map(|side| w.at.map(|place| place + side * w.height)));
        let places = self.points.iter().copied().chain(words);
        let [low, high] = places.fold(nothing, |[low, high], p| {
            [[low[0].min(p[0]), low[1].min(p[1])], [high[0].max(p[0]), high[1].max(p[1])]]
        });
        if low[0] <= high[0] { [low, high] } else { [[0.0; 2]; 2] }
    }

    /// The round and stitch seen at a point, pixels from the middle of the piece.
    pub fn pick(&self, at: [f32; 2]) -> Option<Picked> {
        let seen = self.polygons.iter().rev().find(|p| holds(self.corners(p), at))?;
        Some(Picked { round: seen.round?, stitch: seen.stitch })
    }
}

/// What a polygon is drawn in and belongs to.
#[derive(Debug, Clone, Copy)]
pub(super) struct Paint {
    pub(super) colour: Rgb,
    pub(super) depth: f32,
    pub(super) round: Option<u32>,
    pub(super) stitch: Option<u32>,
    pub(super) rim: Rim,
}

/// Whether a convex polygon, whichever way round, holds a point.
fn holds(corners: &[[f32; 2]], at: [f32; 2]) -> bool {
    let (mut left, mut right) = (false, false);
    let mut from = match corners.last() {
        Some(&last) => last,
        None => return false,
    };
    for &to in corners {
        let side =
            (to[0] - from[0]) * (at[1] - from[1]) - (to[1] - from[1]) * (at[0] - from[0]);
        left |= side > 0.0;
        right |= side < 0.0;
        if left && right {
            return false;
        }
        from = to;
    }
    // A polygon seen edge-on holds nothing.
    left || right
}
