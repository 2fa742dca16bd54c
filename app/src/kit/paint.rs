//! Shapes that more than one view draws.

use egui::{
    Align2, Color32, FontId, Painter, Pos2, Rect, Response, Shape, Stroke, StrokeKind,
    TextureHandle, Vec2, pos2, vec2,
};

use super::tokens::{PANEL_RADIUS, Tokens};
use super::type_faces;

/// Corners of rows that can be hit.
const ROW_RADIUS: f32 = 6.0;

/// A sheet of paper with its lower lip.
pub fn panel(painter: &Painter, rect: Rect, t: &Tokens) {
    lip(painter, rect, PANEL_RADIUS, t.edge_deep, 3.0);
    painter.rect(rect, PANEL_RADIUS, t.panel, Stroke::new(1.0, t.edge), StrokeKind::Inside);
}

/// The solid lower lip of a raised thing: the only shadow there is.
pub fn lip(painter: &Painter, rect: Rect, radius: f32, colour: Color32, depth: f32) {
    if depth > 0.0 {
        painter.rect_filled(rect.translate(vec2(0.0, depth)), radius, colour);
    }
}

/// A sunk card.
pub fn well(painter: &Painter, rect: Rect, t: &Tokens) {
    painter.rect(rect, 8.0, t.well, Stroke::new(1.0, t.edge), StrokeKind::Inside);
}

/// The title of a panel, with a hint after it; returns where the hint ends.
pub fn title(painter: &Painter, at: Pos2, title: &str, hint: &str, t: &Tokens) -> f32 {
    let name = text(painter, at, Align2::LEFT_CENTER, title, drafting_title(), t.ink);
    if hint.is_empty() {
        return name.right();
    }
    let hint_at = egui::pos2(name.right() + 14.0, at.y + 1.0);
    let small = type_faces::regular(type_faces::SMALL);
    text(painter, hint_at, Align2::LEFT_CENTER, hint, small, t.soft_ink).right()
}

fn drafting_title() -> FontId {
    type_faces::drafting(type_faces::TITLE)
}

/// Text; returns its rectangle.
pub fn text(
    painter: &Painter,
    at: Pos2,
    anchor: Align2,
    text: &str,
    font: FontId,
    colour: Color32,
) -> Rect {
    painter.text(at, anchor, text, font, colour)
}

/// Text cut off with “…” where it would pass `width`; returns its rectangle and whether it
/// was cut.
pub fn clipped_text(
    painter: &Painter,
    at: Pos2,
    words: &str,
    font: FontId,
    colour: Color32,
    width: f32,
) -> (Rect, bool) {
    let mut job = egui::text::LayoutJob::simple_singleline(words.to_owned(), font, colour);
    job.wrap = egui::text::TextWrapping::truncate_at_width(width.max(8.0));
    let galley = painter.layout_job(job);
    let rect = Align2::LEFT_CENTER.anchor_size(at, galley.size());
    let cut = galley.elided;
    painter.galley(rect.min, galley, colour);
    (rect, cut)
}

/// A yarn's bead: its colour with its letter.
pub fn bead(painter: &Painter, at: Pos2, letter: &str, colour: [u8; 3], t: &Tokens) {
    let edge = Stroke::new(1.0, t.yarn_edge(colour));
    painter.circle(at, 7.5, Tokens::yarn(colour), edge);
    let font = type_faces::bold(type_faces::SMALL);
    painter.text(at, Align2::CENTER_CENTER, letter, font, Tokens::on_yarn(colour));
}

/// Slanted lines across a convex polygon.
pub fn hatch(painter: &Painter, polygon: &[Pos2], spacing: f32, stroke: Stroke) {
    let along = |p: Pos2| p.x + p.y;
    let (low, high) = polygon
        .iter()
        .map(|&p| along(p))
        .fold((f32::INFINITY, f32::NEG_INFINITY), |(l, h), v| (l.min(v), h.max(v)));
    let mut level = (low / spacing).ceil() * spacing;
    while level < high {
        if let Some(ends) = cut(polygon, |p| along(p) - level) {
            painter.line_segment(ends, stroke);
        }
        level += spacing;
    }
}

/// The two places where a line (`side` is zero on it) crosses a convex polygon's rim.
fn cut(polygon: &[Pos2], side: impl Fn(Pos2) -> f32) -> Option<[Pos2; 2]> {
    let mut found: Option<Pos2> = None;
    for (i, &a) in polygon.iter().enumerate() {
        let b = polygon[(i + 1) % polygon.len()];
        let (sa, sb) = (side(a), side(b));
        if (sa < 0.0) != (sb < 0.0) {
            let p = a + (b - a) * (sa / (sa - sb));
            match found {
                None => found = Some(p),
                Some(first) => return Some([first, p]),
            }
        }
    }
    None
}

/// The whole of a texture.
pub fn texture(painter: &Painter, texture: &TextureHandle, place: Rect) {
    let whole = Rect::from_min_max(Pos2::ZERO, pos2(1.0, 1.0));
    painter.image(texture.id(), place, whole, Color32::WHITE);
}

/// A pill with text in it, its left middle at `at`; returns its rectangle.
pub fn pill(painter: &Painter, at: Pos2, words: &str, t: &Tokens) -> Rect {
    let font = type_faces::bold(type_faces::SMALL);
    let galley = painter.layout_no_wrap(words.to_owned(), font, t.on_highlight);
    let size = galley.size() + vec2(12.0, 4.0);
    let rect = Align2::LEFT_CENTER.anchor_size(at, size);
    let edge = Stroke::new(1.4, t.highlight_edge);
    painter.rect(rect, 5.0, t.highlight, edge, StrokeKind::Inside);
    painter.galley(rect.min + vec2(6.0, 2.0), galley, t.on_highlight);
    rect
}

/// The mark of rounds in which nothing is shaped: a line between two ends, upright at `x`.
pub fn plain_run(painter: &Painter, x: f32, span: std::ops::RangeInclusive<f32>, t: &Tokens) {
    let pen = Stroke::new(1.6, t.outline);
    for y in [*span.start(), *span.end()] {
        painter.hline(x - 2.5..=x + 2.5, y, pen);
    }
    painter.vline(x, span, pen);
}

/// The ground of a row that can be hit: a frame where it is `on`, else a wash under the
/// pointer; and the ring of the keyboard.
pub fn row(painter: &Painter, rect: Rect, response: &Response, on: bool, t: &Tokens) {
    if on {
        let edge = Stroke::new(1.4, t.highlight_edge);
        painter.rect(rect, ROW_RADIUS, t.wash, edge, StrokeKind::Inside);
    } else if response.hovered() {
        painter.rect_filled(rect, ROW_RADIUS, t.well);
    }
    if response.has_focus() {
        focus_ring(painter, rect.shrink(3.0), ROW_RADIUS - 2.0, t);
    }
}

/// The ring that shows where the keyboard is: dashed and off the thing, so that it is never
/// taken for the plain edge and the wash of what is chosen.
pub fn focus_ring(painter: &Painter, rect: Rect, radius: f32, t: &Tokens) {
    let ring = rect.expand(3.0);
    let radius = (radius + 3.0).min(0.5 * ring.size().min_elem());
    let corner = |middle: Pos2, from: f32| {
        (0..=6).map(move |i| {
            let angle = (from + 15.0 * i as f32).to_radians();
            middle + radius * vec2(angle.cos(), angle.sin())
        })
    };
    let inner = ring.shrink(radius);
    let mut way: Vec<Pos2> = corner(inner.right_bottom(), 0.0)
        .chain(corner(inner.left_bottom(), 90.0))
        .chain(corner(inner.left_top(), 180.0))
        .chain(corner(inner.right_top(), 270.0))
        .collect();
    way.extend(way.first().copied());
    painter.add(Shape::line(way.clone(), Stroke::new(3.6, t.panel)));
    painter.extend(Shape::dashed_line(&way, Stroke::new(2.0, t.outline), 5.0, 3.0));
}

/// The thread that ties the selected round through the views.
pub fn thread(painter: &Painter, points: Vec<Pos2>, t: &Tokens) {
    painter.add(Shape::line(points.clone(), Stroke::new(3.8, t.highlight_edge)));
    painter.add(Shape::line(points, Stroke::new(2.0, t.highlight)));
}

/// Text turned a quarter to the left, centred at `at`; returns the space it takes.
pub fn upright_text(
    painter: &Painter,
    at: Pos2,
    words: &str,
    font: FontId,
    colour: Color32,
    ground: Color32,
) -> Rect {
    let galley = painter.layout_no_wrap(words.to_owned(), font, colour);
    let size = galley.size();
    let rect = Rect::from_center_size(at, vec2(size.y, size.x));
    painter.rect_filled(rect.expand2(vec2(0.0, 5.0)), 0.0, ground);
    let corner = at + Vec2::new(-0.5 * size.y, 0.5 * size.x);
    let shape = egui::epaint::TextShape::new(corner, galley, colour);
    painter.add(shape.with_angle(-std::f32::consts::FRAC_PI_2));
    rect
}
