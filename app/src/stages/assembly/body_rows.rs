//! What only crocheted parts have: stuffing, a front to count from, and what of a body is up.

use egui::Ui;
use plumpline_core::project::toy::part::{BodyFront, EdgeHow, Part, Up};

use super::cells::{CellGrid, NumberCell, list};
use super::here::ToyBench;
use crate::bench::action::Actions;
use crate::document::toy::PartTrait;
use crate::fields::form;

/// Draws its rows.
pub(super) fn show(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    index: usize,
    part: &Part,
    actions: &mut Actions,
) {
    if part.on.is_none() {
        let all = [Up::Last, Up::Start, Up::Front, Up::Back];
        let words = [
            say!("part-its-end"),
            say!("part-its-start"),
            say!("part-its-front"),
            say!("part-its-back"),
        ];
        let now = all.iter().position(|&up| up == part.up).unwrap_or(0);
        let rect = form::row(
            ui,
            say!("part-up-is"),
            say!("part-what-of-it-is-up-when-the-toy-stands"),
        );
        let rect = rect.with_min_x(rect.left().max(rect.right() - 150.0));
        let rect = rect.shrink2(egui::vec2(0.0, 3.0));
        if let Some(new) = list(ui, rect, say!("part-up-is"), (&words, now)) {
            let up = all[new];
            here.change(index, PartTrait::Up, actions, |part| part.up = up);
        }
    }
    if part.on.is_none_or(|seat| seat.by.how != EdgeHow::Flat) {
        let why = say!("part-a-part-that-is-pressed-flat-never-is");
        if let Some(on) = form::tick(ui, say!("part-stuffed"), why, !part.unstuffed) {
            here.change(index, PartTrait::Stuffing, actions, |part| part.unstuffed = !on);
        }
    }
    let carries = here.toy.parts.iter().any(|p| p.on.is_some_and(|seat| seat.part == index));
    if carries || part.on.is_none() {
        front(ui, here, index, part, actions);
    }
}

/// Which stitch of it looks ahead.
fn front(ui: &mut Ui, here: &ToyBench<'_>, index: usize, part: &Part, actions: &mut Actions) {
    let Some(solid) = here.made.and_then(|made| made.solid(index)) else { return };
    let round = solid.number(solid.round_at(part.front.along));
    let all = solid.stitches(f64::from(round)).max(1.0);
    let mut grid = CellGrid::new();
    let why = say!("part-its-front-is-the-plane-through-this");
    let cell = NumberCell {
        caption: say!("part-front-at-round"),
        name: say!("part-round-of-its-front"),
        why,
        value: f64::from(round),
        span: (1.0, solid.rounds().max(1) as f64, 1.0),
        decimals: 0,
        unit: "",
    };
    if let Some(round) = grid.number(ui, &cell, actions) {
        let along = solid.share_at(round - 0.5);
        let front = BodyFront { along, ..part.front };
        here.change(index, PartTrait::Front, actions, |part| part.front = front);
    }
    let cell = NumberCell {
        caption: say!("part-after-stitch"),
        name: say!("part-stitch-of-its-front"),
        why,
        value: (part.front.around * all).round(),
        span: (0.0, all.floor(), 1.0),
        decimals: 0,
        unit: "",
    };
    if let Some(stitch) = grid.number(ui, &cell, actions) {
        let around = (stitch / all).clamp(0.0, 1.0);
        let front = BodyFront { around, ..part.front };
        here.change(index, PartTrait::Front, actions, |part| part.front = front);
    }
}
