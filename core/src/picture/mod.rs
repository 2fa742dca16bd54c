//! The picture: a piece as shaded polygons, back to front, that screen, image and sheet share.
//!
//! [`Body`] is the stuffed piece in 3-D, stitch by stitch, worked out once for a plan;
//! [`Body::scene`] looks at it from one side and gives a [`Scene`]; [`svg`] writes a scene
//! as text. [`outline`] draws the flat profile with its measures in the same way.
//!
//! [`chart`] draws rounds in the trade's symbols and [`schematic`] the body's measures, as a
//! [`Drawing`] in millimetres on paper.
//!
//! In the body's own frame Z runs along the axis in working order and rounds begin at −Y. A
//! [`Look`] turns it about that axis and tilts it; in a scene x runs right and y down, in
//! pixels from the middle of the piece.

mod body;
pub mod chart;
mod cut;
pub mod drawing;
mod leaf;
mod light;
mod order;
pub mod outline;
pub mod relief;
mod scene;
pub mod schematic;
mod seams;
mod stitches;
mod surface;
pub mod svg;
mod vector;
mod view;

pub use body::{Body, MOST_STITCHES};
pub use drawing::Drawing;
pub use scene::{Picked, Polygon, Rim, Scene, Writing};

/// An sRGB colour.
pub type Rgb = [u8; 3];

/// From where a body is looked at, and what is shown of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Look {
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

impl Default for Look {
    /// A little from above and from one side, whole.
    fn default() -> Self {
        Self { turn_deg: 30.0, tilt_deg: 14.0, scale: 4.0, cutaway: false, lit: None }
    }
}
