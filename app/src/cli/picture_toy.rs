//! The picture of a whole toy: its parts in their places, together or drawn apart.

use std::collections::BTreeMap;

use anyhow::{anyhow, ensure};
use plumpline_core::picture::relief::{Quality, Relief, ReliefView, Still};
use plumpline_core::picture::toy::{ToyLight, ToyPicture};
use plumpline_core::toy::assembled_of;
use plumpline_core::{Piece, PieceId, Plan, Project, plan};

use crate::work::still::still;

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
    let planned = |piece| plan(piece).map_err(|e| anyhow!("piece “{}”, {e}", piece.name));
    let plans: Vec<Plan> = project.pieces.iter().map(planned).collect::<Result<_, _>>()?;
    let toy = assembled_of(project, &plans)?;
    let picture = ToyPicture::new(project, &toy, sight.apart);
    let pieces = project.pieces.iter().zip(&plans);
    let faces = project.faces();
    let relief = |piece: &Piece, plan| Relief::new(piece, plan).in_yarns(&faces);
    let reliefs: BTreeMap<PieceId, Relief> =
        pieces.map(|(piece, plan)| (piece.id, relief(piece, plan))).collect();
    let view = view(&picture, sight);
    let colours = project.colours();
    let light = ToyLight { colours: &colours, lit: &[], parts: &[], attachment: None };
    let (scene, _) = picture.scene(|piece| reliefs.get(&piece), &light, |_| true, &view);
    still(&scene).map_err(|e| anyhow!("--width: {e}"))
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
