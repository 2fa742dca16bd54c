//! A shape drawn by hand beside its axis, from top to bottom or the other way.

use egui::{
    Align2, Pos2, Rect, Role, Sense, Shape, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2,
};
use plumpline_core::outline::Rz;
use plumpline_trace::line;

use super::choice::StartFault;
use crate::kit::tokens::CARD_RADIUS;
use crate::kit::{Tokens, type_faces};
use plumpline_core::Outline;
use plumpline_trace::formula::FormulaPlace;

/// Points nearer to one another than this are one, as shares of the field's height.
const APART: f32 = 0.004;
/// An end nearer to the axis than this is on it.
const CLOSES: f64 = 0.05;
/// A hand shakes by about this share of the height.
const SHAKES: f64 = 0.03;
/// How near the outline keeps to the drawn line, as a share of the height.
const NEAR: f64 = 0.01;
/// Room beside the axis and above and below, points.
const EDGE: f32 = 14.0;

/// What has been drawn: places right of the axis, as shares of the field's height.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Freehand {
    line: Vec<Pos2>,
}

impl Freehand {
    /// Whether nothing is drawn.
    pub(super) fn is_empty(&self) -> bool {
        self.line.len() < 2
    }

    /// The line as an outline so high, mm: few knots, the hand's shaking smoothed away.
    pub(super) fn outline(&self, height_mm: f64) -> Result<Outline, StartFault> {
        let fault =
            |line: &str| StartFault { line: line.to_owned(), place: FormulaPlace::Whole };
        let (first, last) = match (self.line.first(), self.line.last()) {
            (Some(first), Some(last)) if self.line.len() > 2 => (first, last),
            _ => return Err(fault(say!("start-freehand-short"))),
        };
        let [low, high] = [f32::min, f32::max]
            .map(|of| self.line.iter().map(|p| p.y).reduce(of).unwrap_or_default());
        if f64::from(high - low) < 0.1 {
            return Err(fault(say!("start-freehand-level")));
        }
        let scale = height_mm / f64::from(high - low);
        let place = |p: &Pos2| Rz::new(f64::from(p.x) * scale, f64::from(p.y - low) * scale);
        let mut places: Vec<Rz> = self.line.iter().map(place).collect();
        if first.y > last.y {
            places.reverse();
        }
        let ends = places.len() - 1;
        for end in [0, ends] {
            if places[end].r < CLOSES * height_mm {
                places[end].r = 0.0;
            }
        }
        let fitted = line::fit(&places, NEAR * height_mm, SHAKES * height_mm)
            .map_err(|error| fault(&error.to_string()))?;
        Ok(fitted.outline)
    }
}

/// The field to draw in, in `rect`.
pub(super) fn show(ui: &Ui, t: &Tokens, rect: Rect, drawn: &mut Freehand) {
    let response = ui.interact(rect, ui.scope_id().with("freehand"), Sense::drag());
    response.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, say!("start-draw-here")));
    let painter = ui.painter_at(rect);
    painter.rect(rect, CARD_RADIUS, t.well, Stroke::new(1.0, t.edge), StrokeKind::Inside);
    let axis = pos2(rect.left() + EDGE, rect.top() + EDGE);
    let high = (rect.height() - 2.0 * EDGE).max(1.0);
    let ends = [axis, pos2(axis.x, axis.y + high)];
    painter.extend(Shape::dashed_line(&ends, Stroke::new(1.2, t.soft_ink), 8.0, 4.0));
    let share = |at: Pos2| {
        let at = at.clamp(rect.min, rect.max);
        pos2(((at.x - axis.x) / high).max(0.0), (at.y - axis.y) / high)
    };
    if response.drag_started() {
        drawn.line.clear();
    }
    if response.dragged()
        && let Some(at) = response.interact_pointer_pos().map(share)
        && drawn.line.last().is_none_or(|last| last.distance(at) > APART)
    {
        drawn.line.push(at);
    }
    if drawn.is_empty() && !response.dragged() {
        let words = say!("start-draw-hint");
        let font = type_faces::regular(type_faces::SMALL);
        let galley = painter.layout(words.into(), font, t.soft_ink, rect.width() - 40.0);
        let at = rect.center() + vec2(8.0, 0.0);
        let place = Align2::CENTER_CENTER.anchor_size(at, galley.size());
        painter.galley(place.min, galley, t.soft_ink);
    }
    let line = drawn.line.iter().map(|p| axis + high * p.to_vec2()).collect();
    painter.add(Shape::line(line, Stroke::new(1.7, t.outline)));
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Half a circle drawn by a hand that shakes.
    fn half(points: usize, upwards: bool) -> Freehand {
        let mut line: Vec<Pos2> = (0..=points)
            .map(|i| {
                let angle = std::f32::consts::PI * i as f32 / points as f32;
                let shake = 0.004 * (17.0 * angle).sin();
                pos2((0.45 + shake) * angle.sin(), 0.5 - 0.45 * angle.cos())
            })
            .collect();
        if upwards {
            line.reverse();
        }
        Freehand { line }
    }

    #[test]
    fn a_drawn_half_circle_is_a_ball_of_few_knots() {
        for upwards in [false, true] {
            let outline = half(90, upwards).outline(80.0).expect("an outline");
            assert!(outline.knots.len() <= 12, "{} knots", outline.knots.len());
            assert!(outline.starts_closed());
            let places = outline.profile(200).places();
            let widest = places.iter().map(|place| place.r).fold(0.0, f64::max);
            assert!((widest - 40.0).abs() < 2.5, "{widest}");
            let last = outline.knots.last().expect("an end");
            assert!(
                last.is_pole()
                    && (last.height_mm - outline.knots[0].height_mm - 80.0).abs() < 1.0
            );
        }
    }

    #[test]
    fn a_dot_and_a_level_line_are_refused_in_a_line() {
        let level = Freehand { line: (0..20).map(|i| pos2(0.05 * i as f32, 0.5)).collect() };
        for drawn in [Freehand::default(), level] {
            let fault = drawn.outline(80.0).expect_err("refused");
            assert!(fault.line.starts_with("freehand: ") && !fault.line.contains('\n'));
        }
    }
}
