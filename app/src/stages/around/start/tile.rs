//! What a piece can begin from as a tile: a picture over its name.

use egui::{
    Align2, Mesh, Painter, Pos2, Rect, Response, Role, Sense, Shape, Stroke, StrokeKind,
    TextureHandle, Ui,
};
use egui::{Vec2, WidgetInfo, pos2, vec2};
use plumpline_core::Outline;
use plumpline_core::outline::Rz;
use plumpline_core::starter::Starter;

use crate::kit::tokens::{CARD_RADIUS, TAG_RADIUS, mix};
use crate::kit::{Tokens, paint, type_faces};

/// Size of a tile.
pub(super) const SIZE: Vec2 = vec2(106.0, 112.0);
/// Size of the picture on a tile of a starter.
pub(super) const PICTURE: Vec2 = vec2(88.0, 76.0);
/// Between tiles.
pub(super) const APART: f32 = 8.0;
/// Places of the profile that are drawn.
const PLACES: usize = 48;
/// Radius of a knot.
const KNOT: f32 = 3.0;

/// A side profile as it is drawn small, seen the long way.
#[derive(Debug)]
pub(super) struct ProfilePicture {
    places: Vec<Rz>,
    knots: Vec<Rz>,
    height_mm: f64,
    half_mm: f64,
}

impl ProfilePicture {
    /// A starter at its usual size.
    pub(super) fn of_starter(starter: Starter) -> Self {
        let shape = starter.shape(&starter.usual());
        let mut picture = shape.map_or_else(
            |_| Self { places: Vec::new(), knots: Vec::new(), height_mm: 1.0, half_mm: 1.0 },
            |(outline, straight)| Self::of_outline(&outline, straight),
        );
        if starter == Starter::Dish {
            // A dish is worked from its middle, but known by how it stands.
            let height = picture.height_mm;
            picture.places.iter_mut().for_each(|p| p.z = height - p.z);
        }
        picture
    }

    /// An outline with so long a straight part, mm.
    pub(super) fn of_outline(outline: &Outline, straight_mm: f64) -> Self {
        let wider = |p: Rz| Rz::new(p.r + 0.5 * straight_mm, p.z);
        let places: Vec<Rz> = outline.profile(PLACES).places().into_iter().map(wider).collect();
        let knots: Vec<Rz> = outline.knots.iter().map(|knot| wider(knot.place())).collect();
        let ends = |of: fn(&Rz) -> f64| {
            places
                .iter()
                .map(of)
                .fold((f64::MAX, f64::MIN), |(low, high), v| (v.min(low), v.max(high)))
        };
        let (low, high) = ends(|p| p.z);
        let standing = |p: Rz| Rz::new(p.r, p.z - low);
        Self {
            height_mm: (high - low).max(1.0),
            half_mm: ends(|p| p.r).1.max(0.5),
            places: places.iter().map(|&p| standing(p)).collect(),
            knots: knots.into_iter().map(standing).collect(),
        }
    }

    /// Draws it as large as it fits `rect`; `with_knots` on its right side too.
    pub(super) fn paint(&self, painter: &Painter, t: &Tokens, rect: Rect, with_knots: bool) {
        let scale = (rect.height() / self.height_mm as f32)
            .min(0.5 * rect.width() / self.half_mm as f32);
        let top = rect.center().y - 0.5 * scale * self.height_mm as f32;
        let at = |p: &Rz, way: f32| {
            pos2(rect.center().x + way * scale * p.r as f32, top + scale * p.z as f32)
        };
        // A mesh: the feathered edge of thin polygons would stick out at the poles.
        let mut body = Mesh::default();
        for (i, place) in self.places.iter().enumerate() {
            body.colored_vertex(at(place, -1.0), t.forecast);
            body.colored_vertex(at(place, 1.0), t.forecast);
            if let Some(below) = (2 * i as u32).checked_sub(2) {
                body.add_triangle(below, below + 1, below + 2);
                body.add_triangle(below + 1, below + 2, below + 3);
            }
        }
        painter.add(body);
        let faint = Stroke::new(0.8, mix(t.forecast, t.forecast_edge, 0.6));
        for place in self.places.iter().step_by(6).skip(1).filter(|p| p.r > 2.0) {
            let (left, right) = (at(place, -1.0), at(place, 1.0));
            painter.hline(left.x..=right.x, left.y, faint);
        }
        let side = |way: f32| -> Vec<Pos2> { self.places.iter().map(|p| at(p, way)).collect() };
        let mut whole = side(1.0);
        whole.extend(side(-1.0).into_iter().rev());
        painter.add(Shape::closed_line(whole, Stroke::new(1.0, t.forecast_edge)));
        painter.add(Shape::line(side(1.0), Stroke::new(1.7, t.outline)));
        for knot in self.knots.iter().filter(|_| with_knots) {
            painter.circle(at(knot, 1.0), KNOT, t.panel, Stroke::new(1.4, t.outline));
        }
    }
}

/// Draws a picture of [`PICTURE`] size about the middle of `rect`.
pub(super) fn picture(painter: &Painter, texture: &TextureHandle, rect: Rect) {
    let place = Rect::from_center_size(rect.center(), PICTURE);
    paint::texture(painter, texture, place);
}

/// An axis and a line drawn beside it.
pub(super) fn pencil(painter: &Painter, t: &Tokens, rect: Rect) {
    let x = rect.left() + 0.2 * rect.width();
    let ends = [pos2(x, rect.top()), pos2(x, rect.bottom())];
    painter.extend(Shape::dashed_line(&ends, Stroke::new(1.2, t.soft_ink), 6.0, 4.0));
    let line = (0..=40).map(|i| {
        let share = i as f32 / 40.0;
        let out = (std::f32::consts::PI * share).sin() * (0.5 + 0.3 * (7.0 * share).sin());
        pos2(x + 0.8 * rect.width() * out, rect.top() + share * rect.height())
    });
    painter.add(Shape::line(line.collect(), Stroke::new(1.7, t.outline)));
}

/// Words in small plates, two in a row: what kinds of files are read.
pub(super) fn plates(painter: &Painter, t: &Tokens, rect: Rect, words: [&str; 4]) {
    let size = vec2(0.5 * (rect.width() - 8.0), 0.5 * (rect.height() - 8.0));
    for (i, word) in words.into_iter().enumerate() {
        let corner = vec2((i % 2) as f32, (i / 2) as f32) * (size + vec2(8.0, 8.0));
        let plate = Rect::from_min_size(rect.min + corner, size);
        let edge = Stroke::new(1.0, t.forecast_edge);
        painter.rect(plate, TAG_RADIUS, t.forecast, edge, StrokeKind::Inside);
        let font = type_faces::regular(type_faces::SMALL);
        painter.text(plate.center(), Align2::CENTER_CENTER, word, font, t.ink);
    }
}

/// Draws a tile called `name`, its picture by `picture`; `on` says whether it is the one
/// chosen.
pub(super) fn show(
    ui: &Ui,
    t: &Tokens,
    rect: Rect,
    (name, words): (&str, &str),
    on: bool,
    picture: impl FnOnce(&Painter, Rect),
) -> Response {
    let response = ui.interact(rect, ui.scope_id().with(name), Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, on, name));
    let painter = ui.painter();
    let (fill, edge) = match (on, response.hovered()) {
        (true, _) => (t.wash, Stroke::new(1.6, t.highlight_edge)),
        (false, true) => (t.well, Stroke::new(1.3, t.outline)),
        (false, false) => (t.panel, Stroke::new(1.0, t.control_edge)),
    };
    painter.rect(rect, CARD_RADIUS, fill, edge, StrokeKind::Inside);
    let inside = Rect::from_min_max(rect.min + vec2(16.0, 12.0), rect.max - vec2(16.0, 32.0));
    picture(painter, inside);
    let font = if on { type_faces::semibold } else { type_faces::regular };
    let at = rect.center_bottom() - vec2(0.0, 14.0);
    let font = font(type_faces::BODY);
    painter.text(at, Align2::CENTER_CENTER, words, font, t.ink);
    if response.has_focus() {
        paint::focus_ring(painter, rect, CARD_RADIUS, t);
    }
    response
}
