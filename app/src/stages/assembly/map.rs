//! The map of what carries the part in hand: its rounds unrolled, the front in the middle, and
//! on it the prints of all it carries.

use egui::{
    Align2, Key, Pos2, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2,
};
use plumpline_core::project::toy::part::{PartForm, Thing};
use plumpline_core::toy::solid::{OnCloth, Solid};

use super::here::ToyBench;
use super::{drag, prints};
use crate::bench::action::Actions;
use crate::kit::tokens::Tokens;
use crate::kit::{paint, type_faces};
use crate::view::ids;
use crate::view::toy::{PartDrag, ToyPick, ToyView};
use crate::work::toy::ToyMade;

/// Height of the map with its words.
pub(super) const HEIGHT: f32 = 232.0;
/// Room for the numbers of rounds.
pub(super) const NUMBERS: f32 = 26.0;
/// What eyes and noses are shown as.
const BLACK: [u8; 3] = [34, 31, 31];
/// How near a print the hand takes hold of it, points.
const NEAR: f32 = 14.0;

/// How rounds and turns fall on the map.
pub(super) struct MapGround<'a> {
    pub(super) solid: &'a Solid,
    rect: Rect,
    /// Width of a stitch, height of a round, points.
    pub(super) cell: f32,
    row: f32,
    /// Whether later rounds lie higher, and further stitches right.
    up: bool,
    right: bool,
}

impl<'a> MapGround<'a> {
    /// The rounds of part `index` in `rect`: `widest` stitches in the widest, so many rounds.
    pub(super) fn new(
        made: &ToyMade,
        index: usize,
        solid: &'a Solid,
        rect: Rect,
        (widest, rounds): (u32, usize),
    ) -> Self {
        Self {
            solid,
            rect,
            cell: rect.width() / widest.max(1) as f32,
            row: rect.height() / rounds.max(1) as f32,
            up: made.grows_up(index),
            right: made.runs_right(index),
        }
    }

    /// By how many rounds and stitches the arrow keys that are pressed go on.
    pub(super) fn stepped(&self, ui: &Ui) -> (i64, i64) {
        let pressed = |key| i64::from(ui.input(|i| i.key_pressed(key)));
        let by = |more, fewer, forwards: bool| {
            let steps = pressed(more) - pressed(fewer);
            if forwards { steps } else { -steps }
        };
        (
            by(Key::ArrowUp, Key::ArrowDown, self.up),
            by(Key::ArrowRight, Key::ArrowLeft, self.right),
        )
    }

    /// Where a place of the cloth is on the map.
    pub(super) fn at(&self, on: OnCloth) -> Pos2 {
        let turn = on.turn - on.turn.round();
        let across = (turn * self.solid.stitches(on.round)) as f32 * self.cell;
        let x = self.rect.center().x + if self.right { across } else { -across };
        let down = on.round as f32 * self.row;
        let y = if self.up { self.rect.bottom() - down } else { self.rect.top() + down };
        pos2(x, y)
    }

    /// The place of the cloth at a place of the map.
    pub(super) fn under(&self, at: Pos2) -> OnCloth {
        let rounds = self.solid.rounds() as f32;
        let down = if self.up { self.rect.bottom() - at.y } else { at.y - self.rect.top() };
        let round = f64::from((down / self.row).clamp(0.0, rounds));
        let across = (at.x - self.rect.center().x) / self.cell;
        let across = f64::from(if self.right { across } else { -across });
        let turn = (across / self.solid.stitches(round).max(1.0)).clamp(-0.5, 0.5);
        OnCloth { round, turn }
    }

    pub(super) fn row_rect(&self, round: u32, count: u32) -> Rect {
        let k = f64::from(round);
        let a = self.at(OnCloth { round: k - 1.0, turn: 0.0 }).y;
        let b = self.at(OnCloth { round: k, turn: 0.0 }).y;
        let half = 0.5 * count as f32 * self.cell;
        let x = self.rect.center().x;
        Rect::from_x_y_ranges(x - half..=x + half, a.min(b)..=a.max(b))
    }
}

/// Draws the map of what carries part `index`.
pub(super) fn show(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    index: usize,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    let Some(seat) = here.part(index).and_then(|part| part.on) else { return };
    let Some(made) = here.made else { return };
    let Some(solid) = made.solid(seat.part) else { return };
    let name = say!("toy-map-of-part", part = here.called(seat.part));
    let (head, _) = ui.allocate_exact_size(vec2(ui.available_width(), 30.0), Sense::hover());
    let at = head.left_center() + vec2(0.0, 2.0);
    let hint = say!("toy-from-outside-front-in-the-middle");
    let hint = if head.width() < 300.0 { say!("toy-front-in-the-middle") } else { hint };
    paint::title(ui.painter(), at, &name, "", t);
    let small = type_faces::regular(type_faces::SMALL);
    let painter = ui.painter();
    painter.text(
        head.right_center() + vec2(0.0, 3.0),
        Align2::RIGHT_CENTER,
        hint,
        small,
        t.soft_ink,
    );
    let size = vec2(ui.available_width(), HEIGHT - 50.0);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let canvas = ui.interact(rect, ids::map_id(), Sense::click_and_drag());
    canvas.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, &name));
    let plan = here.part(seat.part).and_then(|part| made.plans.get(&part.piece()?));
    let Some(plan) = plan else { return };
    let widest = plan.rounds.iter().map(|round| round.count).max().unwrap_or(1).max(1);
    let inner = rect.with_min_x(rect.left() + NUMBERS).shrink2(vec2(2.0, 4.0));
    let ground = MapGround::new(made, seat.part, solid, inner, (widest, plan.rounds.len()));
    rounds(ui, here, &ground, index, rect);
    let mut near: Option<(f32, usize, usize, Pos2)> = None;
    let pointer = canvas.hover_pos().or(canvas.interact_pointer_pos());
    let others = (0..here.toy.parts.len()).filter(|&i| i != index).chain([index]);
    for other in others {
        if here.part(other).and_then(|part| part.on).map(|on| on.part) != Some(seat.part) {
            continue;
        }
        let dark = here.part(other).is_some_and(|part| match &part.what {
            Thing::Small(small) => !matches!(small.form, PartForm::Block(..)),
            Thing::Piece(_) => false,
        });
        let fill = match other == index {
            true => t.highlight,
            false if dark => Tokens::yarn(BLACK),
            false => t.panel,
        };
        let middles = prints::paint(ui.painter(), here, &ground, other, fill);
        for (copy, &middle) in middles.iter().enumerate() {
            let far = pointer.map_or(f32::INFINITY, |at| at.distance(middle));
            if far <= near.map_or(NEAR, |(far, ..)| far) {
                near = Some((far, other, copy, middle));
            }
        }
    }
    hands(ui, here, &canvas, &ground, near, next, actions);
    let keys = say!("toy-arrow-keys-left-and-right-a-stitch-up");
    let font = type_faces::regular(type_faces::SMALL);
    let galley = ui.painter().layout(keys.into(), font, t.soft_ink, ui.available_width());
    let (words, _) = ui.allocate_exact_size(galley.size(), Sense::hover());
    ui.painter().galley(words.min, galley, t.soft_ink);
    if canvas.has_focus() {
        paint::focus_ring(ui.painter(), rect.shrink(2.0), 6.0, t);
    }
}

fn hands(
    ui: &Ui,
    here: &ToyBench<'_>,
    canvas: &egui::Response,
    ground: &MapGround<'_>,
    near: Option<(f32, usize, usize, Pos2)>,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    ids::keep_arrows(ui, canvas);
    // Of several copies of what carries it the map is of the first.
    let pose = |part: usize, copy: usize| {
        let poses = &here.made?.assembled.poses;
        poses.iter().position(|pose| pose.part == part && pose.copy as usize == copy)
    };
    if canvas.drag_started()
        && let Some(at) = ui.input(|i| i.pointer.press_origin())
        && let Some((_, part, copy, middle)) = near
        && let Some(pose) = pose(part, copy)
    {
        next.taken = Some(ToyPick::Part(part));
        drag::begin(next, PartDrag { part, pose, off: middle - at }, actions);
    }
    if let Some(held) = next.drag.filter(|_| canvas.dragged())
        && let Some(at) = canvas.interact_pointer_pos()
    {
        // The prints of mirrored carriers lie as on the first of them.
        let on = ground.under(at + held.off);
        drag::put(here, held.part, held.pose, on, actions);
        ui.set_cursor_icon(egui::CursorIcon::Grabbing);
    } else if near.is_some() {
        ui.set_cursor_icon(egui::CursorIcon::Grab);
    }
    if next.drag.is_some() && canvas.drag_stopped() {
        drag::end(next, actions);
    }
    if let Some((_, part, ..)) = near.filter(|_| canvas.hovered()) {
        next.hovered = Some(part);
    }
    if canvas.clicked() {
        canvas.request_focus();
        if let Some((_, part, ..)) = near {
            next.taken = Some(ToyPick::Part(part));
        }
    }
}

/// The rounds as bars of stitches, those that the part in hand covers on a band, and the front.
fn rounds(ui: &Ui, here: &ToyBench<'_>, ground: &MapGround<'_>, index: usize, rect: Rect) {
    let (t, painter) = (here.bench.t, ui.painter());
    let small = type_faces::bold(type_faces::SMALL);
    let Some(made) = here.made else { return };
    let Some(carrier) = here.part(index).and_then(|part| part.on) else { return };
    let Some(id) = here.part(carrier.part).and_then(|part| part.piece()) else { return };
    let (Some(piece), Some(plan)) = (here.project.piece(id), made.plans.get(&id)) else {
        return;
    };
    let count = |round: u32| plan.rounds.get(round as usize - 1).map_or(0, |r| r.count);
    let last = plan.rounds.len() as u32;
    let covered = made.part(index).and_then(|figures| {
        let span = figures.span.as_ref().map(|span| span.rounds);
        let point = figures.point.as_ref().map(|point| (point.round, point.round + 1));
        let (a, b) = span.or(point)?;
        Some((a.min(b).clamp(1, last), a.max(b).clamp(1, last)))
    });
    if let Some((first, end)) = covered {
        let band = ground.row_rect(first, 1).union(ground.row_rect(end, 1));
        let band = Rect::from_x_y_ranges(rect.x_range(), band.y_range());
        let edge = Stroke::new(1.2, t.highlight_edge);
        painter.rect(band, 4.0, t.wash, edge, StrokeKind::Inside);
    }
    for round in 1..=last {
        let count = count(round);
        let bar = ground.row_rect(round, count).shrink2(vec2(0.0, 0.04 * ground.row));
        let yarn = here.bench.yarn_of(piece.yarn_of_round(round));
        painter.rect_filled(bar, 1.5, Tokens::yarn(yarn));
        let pen = Stroke::new(0.8, t.cell_edge(yarn));
        if ground.cell >= 2.6 {
            for i in 1..count {
                painter.vline(bar.left() + i as f32 * ground.cell, bar.y_range(), pen);
            }
        }
        painter.rect_stroke(bar, 1.5, pen, StrokeKind::Inside);
    }
    let front = Stroke::new(1.4, t.panel);
    let x = ground.rect.center().x;
    painter.extend(egui::Shape::dashed_line(
        &[pos2(x, rect.top()), pos2(x, rect.bottom())],
        front,
        4.0,
        3.0,
    ));
    let ends = covered.map_or(vec![1, last], |(a, b)| vec![1, a, b, last]);
    let mut free = f32::NEG_INFINITY;
    let mut rows: Vec<(f32, u32)> =
        ends.into_iter().map(|round| (ground.row_rect(round, 1).center().y, round)).collect();
    rows.sort_by(|a, b| a.0.total_cmp(&b.0));
    rows.dedup();
    for (y, round) in rows {
        let y = y.clamp(rect.top() + 7.0, rect.bottom() - 7.0);
        if y < free {
            continue;
        }
        free = y + 12.0;
        let on = covered.is_some_and(|(a, b)| (a..=b).contains(&round));
        let ink = if on { t.highlight_ink } else { t.soft_ink };
        let at = pos2(rect.left() + 4.0, y);
        painter.text(at, Align2::LEFT_CENTER, round.to_string(), small.clone(), ink);
    }
}
