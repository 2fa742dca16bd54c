//! The picture of a whole toy: its parts in their places, together or drawn apart.

use anyhow::{anyhow, ensure};
use plumpline_core::Project;
use plumpline_core::picture::relief::{Quality, ReliefView, Still};
use plumpline_core::picture::toy::ToyPicture;

use crate::work::whole_toy::WholeToy;

/// How a toy is looked at.
#[derive(Debug, Clone, Copy)]
pub(super) struct ToySight {
    /// How far it is turned about the upright, degrees.
    pub(super) turn_deg: f32,
    /// How far it is seen from above, degrees.
    pub(super) tilt_deg: f32,
    /// How far its parts are drawn apart, 0 to 1.
    pub(super) apart: f64,
    /// Width of the picture, pixels, and room around the toy.
    pub(super) width: u32,
    pub(super) margin: f32,
}

/// The still of the toy of `project`.
pub(super) fn toy_still(project: &Project, sight: &ToySight) -> anyhow::Result<Still> {
    ensure!(
        !project.toy.parts.is_empty(),
        "the project has no toy; put its pieces together in the Assembly stage"
    );
    let toy = WholeToy::of(project, sight.apart)?;
    toy.still(&view(&toy.picture, sight)).map_err(|e| anyhow!("--width: {e}"))
}

/// The view in which it is as wide as asked for, and as high as it needs.
fn view(picture: &ToyPicture, sight: &ToySight) -> ReliefView {
    let view = ReliefView {
        turn_deg: sight.turn_deg,
        tilt_deg: sight.tilt_deg,
        scale: 1.0,
        middle: picture.reach().middle,
        size: [0; 2],
        quality: Quality::Full,
    };
    let [low, high] = picture.bounds(&view);
    let half = |i: usize| high[i].max(-low[i]).max(0.5);
    let room = (sight.width as f32 - 2.0 * sight.margin).max(1.0);
    let scale = 0.5 * room / half(0);
    let tall = (2.0 * (half(1) * scale + sight.margin)).ceil().clamp(1.0, 65_535.0);
    ReliefView { scale, size: [sight.width, tall as u32], ..view }
}
