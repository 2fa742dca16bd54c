//! Pictures of a piece.
//!
//! [`relief`] is the stuffed piece as pixels, stitch by stitch: on screen, on sheets, in files
//! and, with others in their poses, as a whole [`toy`]. [`outline`] draws the flat profile with its
//! measures as a [`Scene`] of polygons; [`svg`] writes either as text.
//!
//! [`chart`] draws rounds in the trade's symbols and [`schematic`] the body's measures, as a
//! [`Drawing`] in millimetres on paper.
//!
//! In a piece's own frame Z runs along the axis in working order and rounds begin at −Y. A
//! [`Viewpoint`] turns it about that axis and tilts it; in a scene x runs right and y down, in
//! pixels from the middle of the piece.

pub mod chart;
mod colour;
pub mod drawing;
pub mod outline;
pub mod relief;
mod scene;
pub mod schematic;
pub mod svg;
pub mod toy;

pub use drawing::Drawing;
pub use scene::{Polygon, Scene, Writing};

/// A round and, where one can be told, a stitch of it; both counted from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Picked {
    /// The round.
    pub round: u32,
    /// The stitch, in working order.
    pub stitch: Option<u32>,
}

/// An sRGB colour.
pub type Rgb = [u8; 3];

/// From where a body is looked at, and what is shown of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Viewpoint {
    /// How far it is turned about its axis, degrees; its front moves right as this grows.
    pub turn_deg: f32,
    /// How far it is seen from its start pole's side, degrees: 0 level, 90 onto the pole.
    pub tilt_deg: f32,
    /// Pixels a millimetre.
    pub scale: f32,
    /// Whether the half that faces the viewer at turn 0 is taken away.
    pub cutaway: bool,
    /// A round shown in another colour.
    pub lit: Option<(u32, Rgb)>,
}

impl Default for Viewpoint {
    /// A little from above and from one side, whole.
    fn default() -> Self {
        Self { turn_deg: 30.0, tilt_deg: 14.0, scale: 4.0, cutaway: false, lit: None }
    }
}
