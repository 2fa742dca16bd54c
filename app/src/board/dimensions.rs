//! Height and width of the forecast, as a draftsman sets them; a click types a new one.

use egui::{Align2, Painter, Pos2, Rect, Role, Sense, Stroke, TextEdit, Ui, WidgetInfo};
use egui::{pos2, vec2};
use plumpline_core::Plan;

use super::ground::Ground;
use crate::length::parse_mm;
use crate::studio::action::{Actions, Edit, Look};
use crate::studio::bench::Bench;
use crate::studio::view::{Dimension, Typing};
use crate::ui_kit::{Tokens, paint, type_faces};

/// Where the two dimensions stand.
struct Places {
    /// Ends of the width, left and right.
    width: [Pos2; 2],
    /// Ends of the height, top and bottom.
    height: [Pos2; 2],
    /// Where the body is widest, and its ends, on its left side.
    widest_y: f32,
}

impl Places {
    fn of(plan: &Plan, ground: &Ground) -> Self {
        let mut widest = (0.0, 0.0);
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for node in &plan.forecast {
            let z = node.z + plan.shift_mm;
            if node.r > widest.0 {
                widest = (node.r, z);
            }
            (low, high) = (low.min(z), high.max(z));
        }
        let half = widest.0 as f32 * ground.scale();
        let (top, bottom) = (ground.y(low), ground.y(high));
        let y = (top - 26.0).max(ground.rect.top() + 16.0);
        let x = (ground.axis_x - half - 22.0).max(ground.rect.left() + 14.0);
        Self {
            width: [pos2(ground.axis_x - half, y), pos2(ground.axis_x + half, y)],
            height: [pos2(x, top), pos2(x, bottom)],
            widest_y: ground.y(widest.1),
        }
    }
}

/// A slanted drafting tick.
fn tick(painter: &Painter, at: Pos2, t: &Tokens) {
    let d = vec2(4.5, -4.5);
    painter.line_segment([at - d, at + d], Stroke::new(1.6, t.outline));
}

fn lines(painter: &Painter, t: &Tokens, ground: &Ground, places: &Places) {
    let thin = Stroke::new(0.8, t.soft_ink);
    let pen = Stroke::new(1.0, t.outline);
    for end in places.width {
        painter.vline(end.x, end.y - 6.0..=places.widest_y, thin);
    }
    for end in places.height {
        painter.hline(end.x - 6.0..=ground.axis_x - 12.0, end.y, thin);
    }
    painter.line_segment(places.width, pen);
    painter.line_segment(places.height, pen);
    for end in places.width.into_iter().chain(places.height) {
        tick(painter, end, t);
    }
}

fn texts(plan: &Plan) -> [(Dimension, String); 2] {
    [
        (Dimension::Height, format!("{:.1} mm", plan.size_mm.0)),
        (
            Dimension::Width,
            match plan.depth_mm {
                Some(deep) => format!("{:.1} × {deep:.1} mm", plan.size_mm.1),
                None => format!("{:.1} mm", plan.size_mm.1),
            },
        ),
    ]
}

/// Where the numbers of both dimensions stand.
fn numbers(plan: &Plan, ground: &Ground) -> [Rect; 2] {
    let places = Places::of(plan, ground);
    [
        Rect::from_center_size(middle(places.width), vec2(width_of(plan), 24.0)),
        Rect::from_center_size(middle(places.height), vec2(24.0, 84.0)),
    ]
}

/// What of the dimensions may not be covered: numbers and ticks.
pub(super) fn marks(plan: &Plan, ground: &Ground) -> Vec<Rect> {
    let places = Places::of(plan, ground);
    let ticks = places.width.into_iter().chain(places.height);
    let ticks = ticks.map(|end| Rect::from_center_size(end, vec2(14.0, 14.0)));
    numbers(plan, ground).into_iter().chain(ticks).collect()
}

/// Room the number of the width takes.
fn width_of(plan: &Plan) -> f32 {
    if plan.depth_mm.is_some() { 140.0 } else { 84.0 }
}

/// Says of an oval which number is which, above them.
fn oval(painter: &Painter, t: &Tokens, plan: &Plan, places: &Places) {
    if plan.depth_mm.is_some() {
        let at = middle(places.width) - vec2(0.0, 17.0);
        let font = type_faces::regular(type_faces::SMALL);
        let words = "oval, width × depth".to_owned();
        let galley = painter.layout_no_wrap(words, font, t.soft_ink);
        let rect = Align2::CENTER_CENTER.anchor_size(at, galley.size());
        painter.rect_filled(rect.expand2(vec2(4.0, 0.0)), 0.0, t.panel);
        painter.galley(rect.min, galley, t.soft_ink);
    }
}

fn middle(ends: [Pos2; 2]) -> Pos2 {
    ends[0] + 0.5 * (ends[1] - ends[0])
}

/// Draws one dimension's words; returns the space they take.
fn words(
    painter: &Painter,
    t: &Tokens,
    places: &Places,
    dimension: Dimension,
    text: &str,
    hovered: bool,
) -> Rect {
    let font = type_faces::semibold(type_faces::TITLE - 2.0);
    let ground = if hovered { t.wash } else { t.panel };
    match dimension {
        Dimension::Height => {
            let at = middle(places.height);
            paint::upright_text(painter, at, text, font, t.outline, ground)
        }
        Dimension::Width => {
            let galley = painter.layout_no_wrap(text.to_owned(), font, t.outline);
            // Off the plumb line's own dashes, the number stays in the middle.
            let rect = Align2::CENTER_CENTER.anchor_size(middle(places.width), galley.size());
            painter.rect_filled(rect.expand2(vec2(6.0, 0.0)), 0.0, ground);
            painter.galley(rect.min, galley, t.outline);
            rect
        }
    }
}

/// Draws the dimensions while something is dragged: they follow, but take no clicks.
pub(super) fn paint_still(painter: &Painter, bench: &Bench<'_>, plan: &Plan, ground: &Ground) {
    let places = Places::of(plan, ground);
    lines(painter, bench.t, ground, &places);
    oval(painter, bench.t, plan, &places);
    for (dimension, text) in texts(plan) {
        words(painter, bench.t, &places, dimension, &text, false);
    }
}

/// Draws the dimensions and takes what is typed over them.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench<'_>,
    plan: &Plan,
    ground: &Ground,
    actions: &mut Actions,
) {
    let painter = ui.painter_at(ground.rect);
    let places = Places::of(plan, ground);
    lines(&painter, bench.t, ground, &places);
    oval(&painter, bench.t, plan, &places);
    for (dimension, text) in texts(plan) {
        let at = match dimension {
            Dimension::Height => middle(places.height),
            Dimension::Width => middle(places.width),
        };
        match &bench.view.typing {
            Some(typing) if typing.dimension == dimension => {
                field(ui, bench, ground, at, typing, actions);
            }
            _ => label(ui, &painter, bench, &places, dimension, &text, actions),
        }
    }
}

fn label(
    ui: &Ui,
    painter: &Painter,
    bench: &Bench<'_>,
    places: &Places,
    dimension: Dimension,
    text: &str,
    actions: &mut Actions,
) {
    let (name, at, size) = match dimension {
        Dimension::Height => ("Height", middle(places.height), vec2(26.0, 76.0)),
        Dimension::Width => (
            "Width",
            middle(places.width),
            vec2(if text.contains('×') { 136.0 } else { 76.0 }, 26.0),
        ),
    };
    let hit = Rect::from_center_size(at, size);
    let response = ui.interact(hit, ui.scope_id().with(name), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("{name} {text}")));
    let rect = words(painter, bench.t, places, dimension, text, response.hovered());
    if response.has_focus() {
        paint::focus_ring(painter, rect.expand(2.0), 4.0, bench.t);
    }
    let response = response
        .on_hover_cursor(egui::CursorIcon::Text)
        .on_hover_text(format!("{name} of the forecast; click to type another"));
    if response.clicked() {
        // Of an oval's two numbers the width is the one that is typed.
        let number = text.split(' ').next().unwrap_or_default();
        let text = number.to_owned();
        actions.look(Look::Type(Some(Typing { dimension, text, fresh: true })));
    }
}

/// The field a dimension is typed in. Enter takes it, Esc leaves it.
fn field(
    ui: &mut Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    at: Pos2,
    typing: &Typing,
    actions: &mut Actions,
) {
    let size = vec2(92.0, 28.0);
    let left = at.x.max(ground.rect.left() + 0.5 * size.x + 4.0);
    let rect = Rect::from_center_size(pos2(left, at.y), size);
    let painter = ui.painter_at(ground.rect);
    painter.rect_filled(rect.expand(3.0), 6.0, bench.t.panel);
    let mut text = typing.text.clone();
    let edit = TextEdit::singleline(&mut text)
        .font(type_faces::semibold(type_faces::BODY))
        .align(egui::Align2::CENTER_CENTER);
    let output = ui.put(rect, edit);
    let name = match typing.dimension {
        Dimension::Height => "New height",
        Dimension::Width => "New width",
    };
    output.widget_info(|| WidgetInfo::labeled(Role::TextInput, true, name));
    if typing.fresh {
        output.request_focus();
        select_all(ui, output.id, &text);
    }
    if output.lost_focus() {
        if !ui.input(|i| i.key_pressed(egui::Key::Escape))
            && let Ok(mm) = parse_mm(&text)
        {
            actions.edit(Edit::Resize(typing.dimension, mm));
        }
        actions.look(Look::Type(None));
    } else if output.changed() || typing.fresh {
        let typing = Typing { text, fresh: false, ..typing.clone() };
        actions.look(Look::Type(Some(typing)));
    }
}

fn select_all(ui: &Ui, id: egui::Id, text: &str) {
    use egui::text::{CCursor, CCursorRange};
    let mut state = egui::text_edit::TextEditState::load(ui.ctx(), id).unwrap_or_default();
    let end = CCursor::new(text.chars().count());
    let range = CCursorRange::two(CCursor::new(0), end);
    state.cursor.set_char_range(Some(range));
    state.store(ui.ctx(), id);
}
