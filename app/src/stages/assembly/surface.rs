//! The surface of a crocheted part: its stitches unrolled, each where it lies seen from outside,
//! to be painted in yarns; and on them the prints of what it carries.

use egui::{Key, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use plumpline_core::plan::colours::{colour_runs, stitch_yarns};
use plumpline_core::toy::lean::Meridian;
use plumpline_core::toy::solid::OnCloth;
use plumpline_core::{Piece, Plan, Yarn};

use super::cells::{CellGrid, NumberCell};
use super::here::ToyBench;
use super::map::{MapGround, NUMBERS};
use super::{prints, stitching};
use crate::bench::action::{Action, Actions};
use crate::document::edit::Edit;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::tokens::Tokens;
use crate::kit::{paint, type_faces};
use crate::view::ids;
use crate::view::toy::{Brush, PaintSpot, ToyView};

/// Height of the stitches, and of the row of yarns over them.
const CLOTH: f32 = 214.0;
const YARNS: f32 = 30.0;

/// The stitches of a part and how they fall on the panel.
struct Surface<'a> {
    piece: &'a Piece,
    plan: &'a Plan,
    ground: MapGround<'a>,
    front: Meridian,
}

impl Surface<'_> {
    fn count(&self, round: u32) -> u32 {
        self.plan.rounds.get((round as usize).wrapping_sub(1)).map_or(0, |r| r.count)
    }

    /// The place of stitch `stitch` of `round`, both counted from 1.
    fn cell(&self, round: u32, stitch: u32) -> Rect {
        let middle = f64::from(stitch) - 0.5;
        let turn = self.front.turn(self.ground.solid, round, middle);
        let at = self.ground.at(OnCloth { round: f64::from(round) - 0.5, turn });
        let row = self.ground.row_rect(round, 1);
        Rect::from_center_size(at, vec2(self.ground.cell, row.height()))
    }

    /// The stitch at a place of the panel.
    fn under(&self, at: egui::Pos2) -> Option<(u32, u32)> {
        let on = self.ground.under(at);
        let round = (on.round.ceil() as u32).clamp(1, self.plan.rounds.len() as u32);
        let count = self.count(round);
        let stitch = self.front.stitch(self.ground.solid, round, on.turn).floor() as u32 + 1;
        (count > 0).then(|| (round, stitch.clamp(1, count)))
    }

    /// The yarn of each stitch of `round`.
    fn yarns(&self, round: u32) -> Vec<usize> {
        let own = self.piece.yarn_of_round(round);
        let Some(planned) = self.plan.rounds.get(round as usize - 1) else { return Vec::new() };
        // Of the piece as it is painted now: the plan may be a frame older.
        let runs = colour_runs(self.piece, round, &planned.placement);
        stitch_yarns(&planned.placement, &runs, own).collect()
    }
}

/// Draws the surface of part `index`, where it is crocheted.
pub(super) fn show(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    index: usize,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    let Some(id) = here.part(index).and_then(|part| part.piece()) else { return };
    let (Some(piece), Some(made)) = (here.project.piece(id), here.made) else { return };
    let (Some(plan), Some(solid)) = (made.plans.get(&id), made.solid(index)) else { return };
    let Some(front) = made.part(index).and_then(|figures| figures.front) else { return };
    let name = say!("surface-of", part = here.called(index));
    let (head, _) = ui.allocate_exact_size(vec2(ui.available_width(), 30.0), Sense::hover());
    paint::title(ui.painter(), head.left_center() + vec2(0.0, 2.0), &name, "", t);
    stitching::choice(ui, next);
    yarns(ui, here, next);
    let size = vec2(ui.available_width(), CLOTH);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let canvas = ui.interact(rect, ids::surface_id(), Sense::click_and_drag());
    let spot = next.spot.filter(|spot| spot.round <= plan.rounds.len() as u32);
    canvas.widget_info(|| {
        let said = spot.map_or_else(
            || name.clone(),
            |s| say!("surface-chosen", name = name, round = s.round, from = s.from, to = s.to),
        );
        WidgetInfo::labeled(Role::Canvas, true, said)
    });
    let widest = plan.rounds.iter().map(|round| round.count).max().unwrap_or(1).max(1);
    let inner = rect.with_min_x(rect.left() + NUMBERS).shrink2(vec2(2.0, 4.0));
    let ground = MapGround::new(made, index, solid, inner, (widest, plan.rounds.len()));
    let surface = Surface { piece, plan, ground, front };
    cloth(ui, here, &surface, rect, spot);
    for part in 0..here.toy.parts.len() {
        if here.part(part).and_then(|p| p.on).map(|on| on.part) == Some(index) {
            let fill = t.panel.gamma_multiply(0.28);
            prints::paint(ui.painter(), here, &surface.ground, part, fill);
        }
    }
    stitching::paint(ui.painter(), here, &surface.ground, (index, solid), next);
    if next.needle.is_some() {
        stitching::show(ui, here, &surface.ground, &canvas, (index, solid), next, actions);
    } else {
        hands(ui, here, &surface, &canvas, next, actions);
        numbers(ui, here, &surface, next, actions);
    }
    if canvas.has_focus() {
        paint::focus_ring(ui.painter(), rect.shrink(2.0), 6.0, t);
    }
}

/// The yarns to paint with, a button each, and one that takes paint off.
fn yarns(ui: &mut Ui, here: &ToyBench<'_>, next: &mut ToyView) {
    let size = vec2(ui.available_width(), YARNS);
    let (row, _) = ui.allocate_exact_size(size, Sense::hover());
    let (known, stitching) = (here.project.yarns.len(), next.needle.is_some());
    let mut x = row.left();
    let mut put = |words: &str, name: &str, why: &str, brush: Brush| {
        let width = controls::words_width(ui, words).max(28.0);
        let place = Rect::from_min_size(pos2(x, row.top() + 2.0), vec2(width, 26.0));
        if place.right() > row.right() + 0.5 {
            return;
        }
        x = place.right() + 4.0;
        let on = next.brush == brush;
        let face = ButtonFace::Words(words);
        let button = controls::toggle(ui, place, face, name, true, Some(on));
        if let Brush::Yarn(yarn) = brush
            && yarn < known
        {
            let under = Rect::from_min_max(
                pos2(place.left() + 6.0, place.bottom() - 6.5),
                pos2(place.right() - 6.0, place.bottom() - 3.5),
            );
            let colour = Tokens::yarn(here.bench.yarn_of(yarn));
            ui.painter().rect_filled(under, 1.5, colour);
        }
        if button.on_hover_text(why).clicked() {
            next.brush = brush;
        }
    };
    let why = say!("surface-back-to-the-yarn-of-the-round");
    if next.needle.is_none() {
        put(say!("surface-off"), say!("surface-take-paint-off"), why, Brush::Off);
    }
    for (yarn, of) in here.project.yarns.iter().enumerate() {
        let letter = Yarn::letter(yarn);
        let name = if stitching {
            say!("surface-embroider-in", letter = letter)
        } else {
            say!("surface-paint-in", letter = letter)
        };
        put(&letter, &name, &of.name, Brush::Yarn(yarn));
    }
    let (words, why) = (say!("surface-new-yarn"), say!("surface-comes-with-the-first-stitch"));
    put(words, say!("surface-paint-in-a-new-yarn"), why, Brush::Yarn(known));
}

/// The stitches, what is chosen of them, and the front.
fn cloth(ui: &Ui, here: &ToyBench<'_>, s: &Surface<'_>, rect: Rect, spot: Option<PaintSpot>) {
    let (t, painter) = (here.bench.t, ui.painter().with_clip_rect(rect));
    let last = s.plan.rounds.len() as u32;
    for round in 1..=last {
        for (stitch, yarn) in (1..).zip(s.yarns(round)) {
            let colour = here.bench.yarn_of(yarn);
            let cell = s.cell(round, stitch);
            painter.rect_filled(cell.expand(0.3), 0.0, Tokens::yarn(colour));
            if s.ground.cell >= 4.0 {
                let pen = Stroke::new(0.7, t.cell_edge(colour));
                painter.rect_stroke(cell, 0.0, pen, StrokeKind::Inside);
            }
            // No yarn is told by its colour alone.
            if s.ground.cell >= 9.0 && yarn != s.piece.yarn_of_round(round) {
                let font = type_faces::bold(type_faces::SMALL.min(cell.height()));
                let ink = Tokens::on_yarn(colour);
                let middle = egui::Align2::CENTER_CENTER;
                painter.text(cell.center(), middle, Yarn::letter(yarn), font, ink);
            }
        }
    }
    let small = type_faces::bold(type_faces::SMALL);
    let mut rows: Vec<u32> = (1..=last).filter(|round| *round == 1 || round % 5 == 0).collect();
    rows.extend(spot.map(|spot| spot.round));
    rows.dedup();
    let mut free = f32::NEG_INFINITY;
    let mut at: Vec<(f32, u32)> =
        rows.into_iter().map(|r| (s.ground.row_rect(r, 1).center().y, r)).collect();
    at.sort_by(|a, b| a.0.total_cmp(&b.0));
    for (y, round) in at {
        if y < free {
            continue;
        }
        free = y + 12.0;
        let ink =
            if spot.is_some_and(|s| s.round == round) { t.highlight_ink } else { t.soft_ink };
        let place = pos2(rect.left() + 4.0, y.clamp(rect.top() + 7.0, rect.bottom() - 7.0));
        painter.text(place, egui::Align2::LEFT_CENTER, round.to_string(), small.clone(), ink);
    }
    if let Some(spot) = spot {
        for stitch in spot.from..=spot.to.min(s.count(spot.round)) {
            let edge = Stroke::new(1.8, t.highlight_edge);
            painter.rect_stroke(s.cell(spot.round, stitch), 0.0, edge, StrokeKind::Outside);
        }
    }
    let x = s.ground.at(OnCloth { round: 0.5, turn: 0.0 }).x;
    let line = [pos2(x, rect.top()), pos2(x, rect.bottom())];
    painter.extend(egui::Shape::dashed_line(&line, Stroke::new(1.4, t.panel), 4.0, 3.0));
}

/// Paints where the hand is drawn over stitches; arrows choose one and Space paints it.
fn hands(
    ui: &Ui,
    here: &ToyBench<'_>,
    s: &Surface<'_>,
    canvas: &egui::Response,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    ids::keep_arrows(ui, canvas);
    let at = canvas.interact_pointer_pos().and_then(|at| s.under(at));
    if canvas.drag_started() {
        actions.push(Action::Begin);
        next.spot = None;
    }
    if canvas.clicked() {
        canvas.request_focus();
    }
    if let Some((round, stitch)) = at.filter(|_| canvas.dragged() || canvas.clicked()) {
        // A quick hand passes stitches between two frames.
        let near = next.spot.filter(|spot| canvas.dragged() && spot.round == round);
        let (from, to) = near.map_or((stitch, stitch), |spot| {
            let before = if stitch < spot.from { spot.from } else { spot.to };
            let far = before.abs_diff(stitch) > s.count(round) / 2;
            if far { (stitch, stitch) } else { (stitch.min(before), stitch.max(before)) }
        });
        let spot = PaintSpot { round, from: stitch, to: stitch };
        if next.spot != Some(spot) || canvas.clicked() {
            put(here, s, PaintSpot { round, from, to }, next.brush, actions);
        }
        next.spot = Some(spot);
    }
    if canvas.drag_stopped() {
        actions.push(Action::Commit);
    }
    if !canvas.has_focus() {
        return;
    }
    let spot = next.spot.unwrap_or(PaintSpot::FIRST);
    let (rounds, stitches) = s.ground.stepped(ui);
    if (rounds, stitches) != (0, 0) {
        let (round, stitch) = (i64::from(spot.round), i64::from(spot.from));
        let last = s.plan.rounds.len() as u32;
        let new = PaintSpot::around(round + rounds, stitch + stitches, last, |r| s.count(r));
        next.spot = Some(new);
    }
    if ui.input(|i| i.key_pressed(Key::Space)) {
        put(here, s, next.spot.unwrap_or(spot), next.brush, actions);
    }
}

/// The stitches by number, and a button that paints them.
fn numbers(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    s: &Surface<'_>,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    let mut spot = next.spot.unwrap_or(PaintSpot::FIRST);
    let mut grid = CellGrid::new();
    let rounds = s.plan.rounds.len() as f64;
    let mut changed = false;
    for (caption, name, which) in [
        (say!("surface-round"), say!("surface-round-to-paint"), 0),
        (say!("surface-from"), say!("surface-first-stitch-to-paint"), 1),
        (say!("surface-to"), say!("surface-last-stitch-to-paint"), 2),
    ] {
        let count = f64::from(s.count(spot.round).max(1));
        let (value, most) = match which {
            0 => (spot.round, rounds),
            1 => (spot.from, count),
            _ => (spot.to, count),
        };
        let cell = NumberCell {
            caption,
            name,
            why: say!("surface-counted-as-rounds-are-worked"),
            value: f64::from(value).min(most),
            span: (if which == 0 { 2.0 } else { 1.0 }, most.max(2.0), 1.0),
            decimals: 0,
            unit: "",
        };
        if let Some(new) = grid.number(ui, &cell, actions) {
            changed = true;
            let new = new as u32;
            match which {
                0 => spot.round = new,
                1 => (spot.from, spot.to) = (new, spot.to.max(new)),
                _ => (spot.from, spot.to) = (spot.from.min(new), new),
            }
        }
    }
    if changed {
        next.spot = Some(spot);
    }
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 34.0), Sense::hover());
    let words = match next.brush {
        Brush::Off => say!("surface-take-paint-off-these").to_owned(),
        Brush::Yarn(yarn) => say!("surface-paint-these-in", letter = Yarn::letter(yarn)),
    };
    let size = vec2(controls::words_width(ui, &words), 26.0);
    let place = Rect::from_min_size(pos2(rect.left(), rect.top() + 4.0), size);
    if controls::button(ui, place, ButtonFace::Words(&words), &words, spot.round > 1).clicked()
    {
        put(here, s, spot, next.brush, actions);
        next.spot = Some(spot);
    }
}

/// Asks for paint on stitches, or for it to be taken off.
fn put(
    here: &ToyBench<'_>,
    s: &Surface<'_>,
    spot: PaintSpot,
    brush: Brush,
    actions: &mut Actions,
) {
    let count = s.count(spot.round);
    if spot.round < 2 || count == 0 {
        return;
    }
    let own = s.piece.yarn_of_round(spot.round);
    let yarn = match brush {
        Brush::Off => None,
        // The yarn of the round is what is under all paint.
        Brush::Yarn(yarn) => Some(yarn).filter(|&yarn| yarn != own),
    };
    let stitches = (spot.from, spot.to.min(count));
    let new = yarn.filter(|&yarn| yarn >= here.project.yarns.len()).is_some();
    let yarn = if new { Some(here.project.yarns.len()) } else { yarn };
    actions.edit(Edit::Paint { piece: s.piece.id, round: spot.round, count, stitches, yarn });
}
