//! The picture with what was traced on it, and the marks that were drawn.

use egui::{Color32, Painter, Pos2, Rect, Stroke, StrokeKind, Vec2, pos2, vec2};
use plumpline_trace::TraceReport;

use crate::bench::Bench;
use crate::kit::tokens::TAG_RADIUS;
use crate::kit::{Tokens, type_faces};
use crate::view::tracing::TraceView;

/// How the pixels of the whole picture fall on the card.
pub(super) struct PhotoGround {
    /// Where all of it is.
    pub(super) rect: Rect,
    /// Points a pixel.
    pub(super) scale: f32,
}

impl PhotoGround {
    /// A picture of so many pixels, as large as it fits `room`.
    pub(super) fn fitted(room: Rect, (wide, high): (u32, u32)) -> Self {
        let size = Vec2::new(wide.max(1) as f32, high.max(1) as f32);
        let scale = (room.width() / size.x).min(room.height() / size.y);
        Self { rect: Rect::from_center_size(room.center(), size * scale), scale }
    }

    pub(super) fn at(&self, (x, y): (f64, f64)) -> Pos2 {
        self.rect.min + vec2(x as f32, y as f32) * self.scale
    }

    pub(super) fn pixel(&self, pos: Pos2) -> (f64, f64) {
        let at = (self.rect.clamp(pos) - self.rect.min) / self.scale;
        (f64::from(at.x), f64::from(at.y))
    }

    /// The longer side, pixels.
    pub(super) fn longer(&self) -> f64 {
        f64::from(self.rect.size().max_elem() / self.scale)
    }
}

/// Draws the picture as far as it is read, what was traced on it, and the marks.
pub(super) fn show(painter: &Painter, bench: &Bench<'_>, shown: &PhotoGround, now: &TraceView) {
    if let Some(texture) = bench.picture.texture() {
        let whole = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
        painter.image(texture.id(), shown.rect, whole, Color32::WHITE);
    }
    if let Some(Ok(traced)) = bench.outlining.found() {
        line(painter, bench.t, shown, &traced.trace.report);
    }
    marks(painter, bench.t, shown, now);
}

/// The traced line and all that tells about it.
fn line(painter: &Painter, t: &Tokens, shown: &PhotoGround, report: &TraceReport) {
    let path = |points: &[(f64, f64)]| points.iter().map(|&p| shown.at(p)).collect::<Vec<_>>();
    dashed(painter, t, &report.axis.map(|end| shown.at(end)), 1.2);
    for edge in &report.edges {
        painter.line(path(edge), Stroke::new(1.0, t.highlight_edge));
    }
    for side in &report.line {
        // Light under dark is seen on any picture.
        painter.line(path(side), Stroke::new(4.0, t.panel.gamma_multiply(0.8)));
        painter.line(path(side), Stroke::new(2.0, t.outline));
    }
    for &knot in &report.knots {
        painter.circle(shown.at(knot), 4.0, t.panel, Stroke::new(1.6, t.outline));
    }
    for (i, part) in report.odd.iter().enumerate() {
        let frame = Rect::from_two_pos(shown.at(part.frame[0]), shown.at(part.frame[1]));
        let frame = frame.expand(4.0);
        let clear = Color32::TRANSPARENT;
        let edge = Stroke::new(2.0, t.warning);
        painter.rect(frame, 3.0, clear, edge, StrokeKind::Outside);
        let words = if report.cut {
            say!("trace-number-cut-off", number = i + 1)
        } else {
            (i + 1).to_string()
        };
        tag(painter, t, frame.right_top(), words);
    }
}

/// A line that is seen on any picture, in dashes.
fn dashed(painter: &Painter, t: &Tokens, points: &[Pos2], width: f32) {
    let beneath = Stroke::new(width + 1.8, t.panel.gamma_multiply(0.8));
    painter.line(points.to_vec(), beneath);
    painter.extend(egui::Shape::dashed_line(points, Stroke::new(width, t.outline), 7.0, 5.0));
}

/// Words on a plate whose upper left corner is `at`, as far as that is in sight.
fn tag(painter: &Painter, t: &Tokens, at: Pos2, words: String) {
    let font = type_faces::bold(type_faces::BODY);
    let galley = painter.layout_no_wrap(words, font, t.ink);
    let size = galley.size() + vec2(10.0, 4.0);
    let clip = painter.clip_rect().shrink(2.0);
    let corner = at.clamp(clip.min, (clip.max - size).max(clip.min));
    let plate = Rect::from_min_size(corner, size);
    let edge = Stroke::new(1.5, t.warning);
    painter.rect(plate, TAG_RADIUS, t.warn_wash, edge, StrokeKind::Inside);
    painter.galley(plate.min + vec2(5.0, 2.0), galley, t.ink);
}

/// The rectangle and the strokes.
fn marks(painter: &Painter, t: &Tokens, shown: &PhotoGround, view: &TraceView) {
    if let Some([a, b]) = view.frame {
        let frame = Rect::from_two_pos(shown.at(a), shown.at(b));
        let corners = [
            frame.left_top(),
            frame.right_top(),
            frame.right_bottom(),
            frame.left_bottom(),
            frame.left_top(),
        ];
        dashed(painter, t, &corners, 1.8);
    }
    for stroke in &view.strokes {
        let wide = (2.0 * stroke.radius as f32 * shown.scale).max(3.0);
        let colour = if stroke.thing { t.increase } else { t.decrease };
        let drawn = Stroke::new(wide, colour.gamma_multiply(0.75));
        let points: Vec<Pos2> = stroke.points.iter().map(|&p| shown.at(p)).collect();
        match points.as_slice() {
            &[dot] => {
                painter.circle_filled(dot, 0.5 * wide, drawn.color);
            }
            // No sign is a colour alone: what is on the thing is whole, what is beside it
            // dashed.
            _ if stroke.thing => {
                painter.line(points, drawn);
            }
            _ => painter.extend(egui::Shape::dashed_line(&points, drawn, 10.0, 6.0)),
        }
    }
}
