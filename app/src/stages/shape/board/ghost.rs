//! The outline as it was before the drag: a faint broken line under the new one.

use egui::{Painter, Pos2, Shape, Stroke};
use plumpline_core::outline::Rz;

use super::ground::Ground;
use crate::bench::Bench;
use crate::document::shaping;
use crate::view::board::Drag;

/// Draws it while the outline is dragged, both sides.
pub(super) fn paint(painter: &Painter, bench: &Bench<'_>, ground: &Ground) {
    let Some(ghost) = bench.view.board.drag.as_ref().and_then(Drag::ghost) else { return };
    let places: Vec<Rz> = shaping::spans(ghost).concat();
    let pen = Stroke::new(1.2, bench.t.outline.gamma_multiply(0.45));
    let right: Vec<Pos2> = places.iter().map(|&p| ground.at(p)).collect();
    let left: Vec<Pos2> = places.iter().map(|&p| ground.mirrored(p)).collect();
    for side in [right, left] {
        painter.extend(Shape::dashed_line(&side, pen, 2.5, 4.5));
    }
}
