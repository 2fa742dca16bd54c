//! A starter as a tile: its picture, drawn from its own profile, over its name.

use egui::{
    Align2, Mesh, Painter, Pos2, Rect, Response, Role, Sense, Shape, Stroke, StrokeKind, Ui,
};
use egui::{Vec2, WidgetInfo, pos2, vec2};
use plumpline_core::outline::Rz;
use plumpline_core::starter::Starter;

use crate::kit::tokens::{CARD_RADIUS, mix};
use crate::kit::{Tokens, paint, type_faces};

/// Size of a tile.
pub(super) const SIZE: Vec2 = vec2(106.0, 112.0);
/// Places of the profile that are drawn.
const PLACES: usize = 48;

/// What a tile draws: the side profile at the starter's usual size, seen the long way.
#[derive(Debug)]
pub(super) struct TilePicture {
    places: Vec<Rz>,
    height_mm: f64,
    half_mm: f64,
}

impl TilePicture {
    pub(super) fn of(starter: Starter) -> Self {
        let shape = starter.shape(&starter.usual());
        let (places, straight) = shape.map_or((Vec::new(), 0.0), |(outline, straight)| {
            (outline.profile(PLACES).places(), straight)
        });
        let places: Vec<Rz> =
            places.into_iter().map(|p| Rz::new(p.r + 0.5 * straight, p.z)).collect();
        let most = |of: fn(&Rz) -> f64| places.iter().map(of).fold(1.0, f64::max);
        let height_mm = most(|p| p.z);
        // A dish is worked from its middle, but known by how it stands.
        let stands = |p: &Rz| if starter == Starter::Dish { height_mm - p.z } else { p.z };
        let half_mm = most(|p| p.r);
        let places = places.iter().map(|p| Rz::new(p.r, stands(p))).collect();
        Self { height_mm, half_mm, places }
    }

    fn paint(&self, painter: &Painter, t: &Tokens, rect: Rect) {
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
    }
}

/// Draws a tile; `on` says whether it is the one chosen.
pub(super) fn show(
    ui: &Ui,
    t: &Tokens,
    rect: Rect,
    starter: Starter,
    picture: &TilePicture,
    on: bool,
) -> Response {
    let response = ui.interact(rect, ui.scope_id().with(starter.name()), Sense::click());
    response.widget_info(|| {
        WidgetInfo::selected(Role::RadioButton, true, on, format!("Starter {}", starter.name()))
    });
    let painter = ui.painter();
    let (fill, edge) = match (on, response.hovered()) {
        (true, _) => (t.wash, Stroke::new(1.6, t.highlight_edge)),
        (false, true) => (t.well, Stroke::new(1.3, t.outline)),
        (false, false) => (t.panel, Stroke::new(1.0, t.control_edge)),
    };
    painter.rect(rect, CARD_RADIUS, fill, edge, StrokeKind::Inside);
    let picture_rect =
        Rect::from_min_max(rect.min + vec2(16.0, 12.0), rect.max - vec2(16.0, 32.0));
    picture.paint(painter, t, picture_rect);
    let font = if on { type_faces::semibold } else { type_faces::regular };
    let at = rect.center_bottom() - vec2(0.0, 14.0);
    let font = font(type_faces::BODY);
    painter.text(at, Align2::CENTER_CENTER, starter.name(), font, t.ink);
    if response.has_focus() {
        paint::focus_ring(painter, rect, CARD_RADIUS, t);
    }
    response
}
