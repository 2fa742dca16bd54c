//! A scene: convex polygons back to front, and the words on them.

use super::Rgb;

/// One convex polygon of a scene.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Polygon {
    first: u32,
    corners: u32,
    /// Its colour.
    pub colour: Rgb,
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

/// Polygons back to front, in pixels from the middle of the piece, y down.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Scene {
    points: Vec<[f32; 2]>,
    polygons: Vec<Polygon>,
    /// Words, over all polygons.
    pub writing: Vec<Writing>,
}

impl Scene {
    /// Adds a polygon in front of all others. Its corners must be convex.
    pub(super) fn push(&mut self, colour: Rgb, corners: impl IntoIterator<Item = [f32; 2]>) {
        let first = self.points.len() as u32;
        self.points.extend(corners);
        let corners = self.points.len() as u32 - first;
        self.polygons.push(Polygon { first, corners, colour });
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
}
