//! The body: the stuffed piece stitch by stitch, turned by hand, on its turntable.

mod table;

use egui::{PointerButton, Popup, Rect, Role, Sense, Stroke, Ui, WidgetInfo};
use egui::{Pos2, pos2, vec2};

use plumpline_core::bend::BendWord;
use plumpline_core::piece::Spread;

use super::bars;
use super::layout::ShapeLayout;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::tokens::GAP;
use crate::kit::{letters, paint, type_faces};
use crate::view::ids;
use crate::view::look::Look;
use crate::view::present::PresentView;
use crate::view::{BoardFace, Turned};

/// Where the body stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BodyPlace {
    /// In a panel of its own.
    Panel,
    /// In place of the outline.
    Board,
    /// In the window, presented.
    Window,
}

/// How much a point of scrolling zooms.
const ZOOM_A_POINT: f32 = 0.004;

/// The hand on the body; returns the round pointed at.
pub fn hands(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) -> Option<u32> {
    let body = ui.interact(rect, ids::body_id(), Sense::click_and_drag());
    body.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, say!("body-stuffed-body")));
    ids::keep_arrows(ui, &body);
    let was = bench.view.turned;
    let mut now = was;
    if body.dragged_by(PointerButton::Primary) {
        let by = body.drag_delta() / bench.body.points_per_radian();
        now = now.moved(by.x.to_degrees(), by.y.to_degrees());
        ui.set_cursor_icon(egui::CursorIcon::Grabbing);
    } else if body.hovered() {
        ui.set_cursor_icon(egui::CursorIcon::Grab);
    }
    if body.contains_pointer() {
        let (scroll, pinch) = ui.input(|i| (i.smooth_scroll_delta.y, i.zoom_delta()));
        now = now.zoomed((scroll * ZOOM_A_POINT).exp() * pinch);
        ui.input_mut(|i| i.smooth_scroll_delta = egui::Vec2::ZERO);
    }
    if body.double_clicked() {
        now = Turned { cutaway: now.cutaway, let_go: now.let_go, ..Turned::default() };
    }
    if now != was {
        actions.look(Look::Turn(now));
    }
    let at = body.hover_pos().filter(|_| !bench.view.is_dragging() && !body.dragged());
    let round = at.and_then(|at| bench.body.pick(at)).map(|picked| picked.round);
    if body.clicked() {
        body.request_focus();
        let again = bench.view.selected == round;
        actions.look(Look::Knots(Vec::new()));
        actions.look(Look::Select(round.filter(|_| !again)));
    }
    round
}

/// Cut open and whole again; larger; saved; back to where it stood.
fn buttons(ui: &Ui, bench: &Bench<'_>, rect: Rect, place: BodyPlace, actions: &mut Actions) {
    let now = bench.view.turned;
    let mut bottom = rect.bottom() - 8.0;
    let mut button = |words: &str, name: &str, on: Option<bool>| {
        let size = vec2(controls::words_width(ui, words), 26.0);
        let corner = pos2(rect.right() - 8.0, bottom);
        let place = Rect::from_min_max(corner - size, corner);
        // Clear of the lip of the one below it.
        bottom = place.top() - 8.0;
        controls::toggle(ui, place, ButtonFace::Words(words), name, true, on)
    };
    let cut = button(say!("body-cut-open"), say!("body-cut-open"), Some(now.cutaway));
    if cut.on_hover_text(say!("body-take-away-the-front-half-fabric-and")).clicked() {
        actions.look(Look::Turn(Turned { cutaway: !now.cutaway, let_go: false, ..now }));
    }
    // In a body without frills or stacked shaping nothing much would be seen.
    let shows = bench.plan.is_some_and(|plan| {
        let stacked = bench.document.piece().spread == Spread::Stacked;
        stacked || plan.bends.iter().any(|bend| bend.word == BendWord::Ruffle)
    });
    if shows || now.let_go {
        let free =
            button(say!("body-relax"), say!("body-relax-every-stitch"), Some(now.let_go));
        let hint = say!("body-let-every-stitch-find-its-place-frills");
        if free.on_hover_text(hint).clicked() {
            actions.look(Look::Turn(Turned { let_go: !now.let_go, cutaway: false, ..now }));
        }
    }
    match place {
        BodyPlace::Panel => {
            let larger = button(say!("body-larger"), say!("body-show-larger"), None);
            if larger.on_hover_text(say!("body-larger-does")).clicked() {
                actions.look(Look::Board(BoardFace::Body));
            }
        }
        BodyPlace::Board => {
            let whole = button(say!("body-whole-window"), say!("body-fill-the-window"), None);
            if whole.on_hover_text(say!("body-whole-window-does")).clicked() {
                actions.look(Look::Present(bench.view.present.alone(PresentView::Body)));
            }
        }
        BodyPlace::Window => {}
    }
    let save = button(say!("body-export"), say!("body-export-the-body-as-a-picture"), None);
    Popup::menu(&save).show(|ui| {
        ui.set_width(170.0);
        for command in [Command::SaveBody, Command::SaveTurning] {
            let item = egui::Button::new(command.text()).frame_when_inactive(false);
            let item = ui.add_enabled(command.enabled(bench), item);
            letters::line(&item, command.text());
            if item.on_hover_text(command.tooltip()).clicked() {
                actions.command(command);
            }
        }
    });
    let stands = Turned { cutaway: now.cutaway, let_go: now.let_go, ..Turned::default() };
    if now != stands {
        let back = button(say!("body-turn-back"), say!("body-turn-the-body-back"), None);
        if back.on_hover_text(say!("body-as-it-was-at-first-a-double-click-does")).clicked() {
            actions.look(Look::Turn(stands));
        }
    }
}

/// Draws the body in `rect`, and its buttons over it.
fn paint(ui: &Ui, bench: &Bench<'_>, rect: Rect, place: BodyPlace, actions: &mut Actions) {
    let painter = ui.painter_at(rect);
    if bench.plan.is_none() {
        return;
    }
    table::paint(&painter, bench, rect);
    if let Some((picture, at)) = bench.body.picture() {
        let whole = Rect::from_min_max(Pos2::ZERO, pos2(1.0, 1.0));
        painter.image(picture.id(), at, whole, egui::Color32::WHITE);
    }
    if ui.memory(|m| m.has_focus(ids::body_id())) {
        paint::focus_ring(ui.painter(), rect.shrink(3.0), 6.0, bench.t);
    }
    buttons(ui, bench, rect, place, actions);
}

/// Draws the body as a panel of its own: heading, body, the selected round.
pub fn panel(ui: &Ui, bench: &Bench<'_>, panel: Rect, place: BodyPlace, actions: &mut Actions) {
    heading(ui, bench, panel.left_top() + vec2(16.0, 20.0), panel.right() - 12.0);
    paint(ui, bench, field(panel), place, actions);
}

/// Where in a panel the body stands.
pub fn field(panel: Rect) -> Rect {
    panel.with_min_y(panel.top() + 38.0).shrink2(vec2(6.0, 0.0))
}

/// Draws the body in place of the outline board.
pub fn on_board(ui: &Ui, bench: &Bench<'_>, layout: &ShapeLayout, actions: &mut Actions) {
    let place = layout.heading;
    heading(ui, bench, place.left_top() + vec2(0.0, 20.0), place.right());
    paint(ui, bench, layout.board, BodyPlace::Board, actions);
}

fn heading(ui: &Ui, bench: &Bench<'_>, at: Pos2, right: f32) {
    let painter = ui.painter();
    paint::title(painter, at, say!("body-body"), say!("body-drag-to-turn"), bench.t);
    let shown = bench.view.current_round().filter(|_| !bench.view.present.hides());
    let Some(round) = shown else { return };
    let Some(count) = bench.count_of(round) else { return };
    let words = say!("body-rnd-round-count-st", round = round, count = count);
    let font = type_faces::bold(type_faces::SMALL);
    let width = painter.layout_no_wrap(words.clone(), font, bench.t.ink).size().x + 12.0;
    paint::pill(painter, pos2(right - width, at.y), &words, bench.t);
}

/// The switch between outline and body, where they share a place.
pub fn switch(ui: &Ui, bench: &Bench<'_>, board: Rect, actions: &mut Actions) {
    let mut left = board.left() + 8.0;
    for face in BoardFace::ALL {
        let words = face.text();
        let size = vec2(controls::words_width(ui, words), 26.0);
        let place = Rect::from_min_size(pos2(left, board.top() + 2.0), size);
        left = place.right() + 6.0;
        let on = bench.view.face == face;
        let name = face.name();
        if controls::toggle(ui, place, ButtonFace::Words(words), name, true, Some(on)).clicked()
        {
            actions.look(Look::Board(face));
        }
    }
}

/// Draws the thread of the selected round from its bar to the body.
pub fn thread(ui: &Ui, bench: &Bench<'_>, panel: Rect, bars: &bars::BarsHand) {
    let Some(round) = bench.view.current_round().filter(|&r| bars.rows.sees(r)) else { return };
    let Some(end) = bench.body.tie(round).filter(|at| field(panel).contains(*at)) else {
        return;
    };
    let painter = ui.painter();
    let y = bars.rows.y(round);
    // Where the body stands left of the bars, the way is the mirror image of the usual one.
    let way = if bench.view.prefs.mirrored {
        let over = |p: Pos2| pos2(-p.x, p.y);
        let place = Rect::from_x_y_ranges(-panel.right()..=-panel.left(), panel.y_range());
        let start = pos2(-bars.rows.left(), y);
        // It is tied to the side that faces the bars.
        let end = pos2(2.0 * field(panel).center().x - end.x, end.y);
        way(start, over(end), place).into_iter().map(over).collect()
    } else {
        way(pos2(bars.rows.right(), y), end, panel)
    };
    paint::thread(painter, way.clone(), bench.t);
    if let Some(&knot) = way.last() {
        painter.circle(knot, 3.4, bench.t.panel, Stroke::new(1.8, bench.t.highlight_edge));
    }
}

/// The thread's way from `start` to `end` in `panel`: straight over where the two are level,
/// else up between the panels, so that it crosses no words.
fn way(start: Pos2, end: Pos2, panel: Rect) -> Vec<Pos2> {
    let curve = |points: [Pos2; 4]| {
        let clear = egui::Color32::TRANSPARENT;
        egui::epaint::CubicBezierShape::from_points_stroke(points, false, clear, Stroke::NONE)
            .flatten(Some(0.2))
    };
    if start.y <= panel.bottom() {
        let bend = vec2(0.5 * (end.x - start.x), 0.0);
        return curve([start, start + bend, end - bend, end]);
    }
    let lane = panel.left() - 0.5 * GAP;
    let turn = pos2(lane, (start.y - 28.0).max(panel.bottom() - 10.0));
    let leave = pos2(lane, panel.bottom() - 10.0);
    let mut way = curve([start, pos2(lane, start.y), pos2(lane, start.y), turn]);
    let bend = vec2(0.5 * (end.x - lane), 0.0);
    way.extend(curve([leave, pos2(lane, end.y), end - bend, end]));
    way
}
