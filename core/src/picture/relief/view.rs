//! What a scene is made of and from where it is seen.

use super::body::Relief;
use super::space::{ReliefPose, Turned, V3, add, scaled, sub, turned};
use crate::picture::Rgb;

/// A part in its place.
#[derive(Debug, Clone, Copy)]
pub struct PosedRelief<'a> {
    /// The part.
    pub relief: &'a Relief,
    /// How it stands.
    pub pose: ReliefPose,
    /// Colours by yarn; the first stands for yarns there are none of.
    pub colours: &'a [Rgb],
    /// A round, counted from 1, shown in another colour.
    pub lit: Option<(u32, Rgb)>,
    /// Whether the half of it that lies towards its own +Y is taken away.
    pub cutaway: bool,
    /// What is in it.
    pub filling: ReliefFilling,
}

/// What is in a part, and so how it lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum ReliefFilling {
    /// Stuffing, which shows in an open end.
    #[default]
    Stuffed,
    /// Nothing; it keeps its form.
    Empty,
    /// Nothing, and it is pressed along its own y axis until its two layers nearly meet.
    Pressed,
}

impl<'a> PosedRelief<'a> {
    /// A part as it lies in its own frame, whole.
    pub fn new(relief: &'a Relief, colours: &'a [Rgb]) -> Self {
        Self {
            relief,
            pose: ReliefPose::default(),
            colours,
            lit: None,
            cutaway: false,
            filling: ReliefFilling::Stuffed,
        }
    }
}

/// How much care is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quality {
    /// A ray a pixel, on cloth that has its light but not its depth: while a hand moves.
    Draft,
    /// Several rays a pixel, on the stitches themselves.
    Full,
}

/// From where a scene is looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReliefView {
    /// How far the scene is turned about its z axis, degrees; its front moves right as this
    /// grows.
    pub turn_deg: f32,
    /// How far it is seen from the side of least z, degrees: 0 level, 90 along the axis.
    pub tilt_deg: f32,
    /// Pixels a millimetre.
    pub scale: f32,
    /// The place of the scene that is in the middle of the picture, mm.
    pub middle: V3,
    /// Width and height of the picture, pixels.
    pub size: [u32; 2],
    /// How much care is taken.
    pub quality: Quality,
}

/// What is seen at a pixel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Seen {
    /// The part, counted from 1; 0 where there is none.
    pub part: u16,
    /// Its round, counted from 1; 0 where there is none, as on stuffing.
    pub round: u16,
    /// The stitch of that round, counted from 1 in working order; 0 where there is none.
    pub stitch: u16,
}

impl ReliefView {
    /// Right, down and towards the eye, in the scene's frame.
    pub(super) fn eye(&self) -> Turned {
        let (sin, cos) = self.turn_deg.to_radians().sin_cos();
        let (dip, level) = self.tilt_deg.to_radians().sin_cos();
        [[cos, sin, 0.0], [-sin * dip, cos * dip, level], [-sin * level, cos * level, -dip]]
    }

    /// The line through a place of the picture, pixels from the left and from the top: a place
    /// of the scene on it, mm, and the unit direction towards the eye.
    pub fn line(&self, x: f32, y: f32) -> (V3, V3) {
        let [right, down, towards] = self.eye();
        let [wide, tall] = self.size.map(|s| s as f32);
        let across = scaled(right, (x - 0.5 * wide) / self.scale);
        let along = scaled(down, (y - 0.5 * tall) / self.scale);
        (add(self.middle, add(across, along)), towards)
    }

    /// Where a place of the scene falls in the picture, pixels, and how near the eye it is, mm.
    pub fn project(&self, place: V3) -> V3 {
        let [x, y, z] = turned(&self.eye(), sub(place, self.middle));
        let [wide, tall] = self.size.map(|s| 0.5 * s as f32);
        [x * self.scale + wide, y * self.scale + tall, z]
    }
}
