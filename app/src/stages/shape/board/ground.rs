//! The ground of the board: how millimetres fall on it, its grid and its plumb line.

use egui::{Painter, Pos2, Rect, Shape, Stroke, pos2, vec2};
use plumpline_core::outline::Rz;

use super::picture;
use crate::bench::Bench;
use crate::kit::{Tokens, icons};
use crate::view::Lens;

/// Room left of the body for the height, right of it for knots, and above and below it.
const MARGIN_LEFT: f32 = 40.0;
const MARGIN_RIGHT: f32 = 30.0;
const MARGIN_TOP: f32 = 60.0;
const MARGIN_BOTTOM: f32 = 46.0;

/// The board and its scale: the axis upright, the start pole at the top.
#[derive(Debug, Clone, Copy)]
pub struct Ground {
    /// The board.
    pub rect: Rect,
    /// The axis.
    pub axis_x: f32,
    lens: Lens,
    /// The scale at which the piece fits.
    fitting: f32,
}

/// From this scale on the grid shows single millimetres, points a millimetre.
const NEAR: f32 = 14.0;
/// Least scale in parts of the fitting one, and greatest, points a millimetre.
const SCALES: (f32, f32) = (0.25, 80.0);

impl Ground {
    /// The ground for the selected piece. The scale there was is kept while something is
    /// dragged, and as long as the piece still sits well on the board.
    pub fn of(bench: &Bench<'_>, rect: Rect) -> Self {
        let extent = BoardExtent::of(bench);
        let room = vec2(
            rect.width() - MARGIN_LEFT - MARGIN_RIGHT,
            rect.height() - MARGIN_TOP - MARGIN_BOTTOM,
        );
        let fitting = extent.fitting(room);
        let lens = match bench.view.lens {
            Some(lens) if bench.view.is_dragging() || lens.by_hand => lens,
            // What lies over a picture is laid there by eye: nothing may move but the hand.
            Some(lens) if picture::seen(bench).is_some() => lens,
            Some(lens) if extent.sits_well(lens, fitting, room) => lens,
            _ => fitting,
        };
        Self::new(rect, lens, fitting.scale)
    }

    fn new(rect: Rect, lens: Lens, fitting: f32) -> Self {
        let room = rect.width() - MARGIN_LEFT - MARGIN_RIGHT;
        let middle_x = rect.left() + MARGIN_LEFT + 0.5 * room;
        let axis_x = middle_x - lens.across_mm as f32 * lens.scale;
        Self { rect, axis_x, lens, fitting }
    }

    /// The ground `factor` times as large, the place under `about` kept where it is.
    pub(super) fn zoomed(&self, factor: f32, about: Pos2) -> Self {
        let least = SCALES.0 * self.fitting;
        let scale = (self.lens.scale * factor).clamp(least, SCALES.1.max(least));
        // What stays under the hand keeps its distance from the middle in points.
        let kept = 1.0 - f64::from(self.lens.scale / scale);
        let at = self.mm(about);
        let lens = Lens {
            scale,
            middle_mm: self.lens.middle_mm + kept * (at.z - self.lens.middle_mm),
            across_mm: self.lens.across_mm + kept * (at.r - self.lens.across_mm),
            by_hand: true,
        };
        Self::new(self.rect, lens, self.fitting)
    }

    /// The ground moved by so many points under the board.
    pub(super) fn panned(&self, by: egui::Vec2) -> Self {
        let scale = f64::from(self.lens.scale.max(1e-6));
        let lens = Lens {
            middle_mm: self.lens.middle_mm - f64::from(by.y) / scale,
            across_mm: self.lens.across_mm - f64::from(by.x) / scale,
            by_hand: true,
            ..self.lens
        };
        Self::new(self.rect, lens, self.fitting)
    }

    /// How millimetres fall on it.
    pub fn lens(&self) -> Lens {
        self.lens
    }

    /// Points a millimetre.
    pub fn scale(&self) -> f32 {
        self.lens.scale
    }

    fn middle_y(&self) -> f32 {
        self.rect.top() + MARGIN_TOP + 0.5 * (self.rect.height() - MARGIN_TOP - MARGIN_BOTTOM)
    }

    /// Where height `z` falls.
    pub fn y(&self, z: f64) -> f32 {
        self.middle_y() + (z - self.lens.middle_mm) as f32 * self.lens.scale
    }

    /// Where a place of the half-plane falls, right of the axis.
    pub fn at(&self, place: Rz) -> Pos2 {
        pos2(self.axis_x + place.r as f32 * self.lens.scale, self.y(place.z))
    }

    /// Its mirror image, left of the axis.
    pub fn mirrored(&self, place: Rz) -> Pos2 {
        pos2(self.axis_x - place.r as f32 * self.lens.scale, self.y(place.z))
    }

    /// The place of the half-plane at a point; negative radii left of the axis.
    pub fn mm(&self, point: Pos2) -> Rz {
        let scale = f64::from(self.lens.scale.max(1e-6));
        Rz::new(
            f64::from(point.x - self.axis_x) / scale,
            self.lens.middle_mm + f64::from(point.y - self.middle_y()) / scale,
        )
    }
}

/// `at`, or the place in `room` nearest to it; its upper left corner where there is no room.
pub(super) fn kept(room: Rect, at: Pos2) -> Pos2 {
    at.min(room.max).max(room.min)
}

/// How far the outline and the forecast reach, mm.
struct BoardExtent {
    radius: f64,
    low: f64,
    high: f64,
}

impl BoardExtent {
    fn of(bench: &Bench<'_>) -> Self {
        let mut extent = Self { radius: 1.0, low: f64::INFINITY, high: f64::NEG_INFINITY };
        for knot in &bench.document.piece().outline.knots {
            extent.reach(knot.place());
        }
        if let Some(plan) = bench.plan {
            // Kept apart from an outline that has no plan yet: that one may be anywhere.
            if bench.error.is_none() {
                for &place in &plan.outline {
                    extent.reach(place);
                }
                for node in &plan.forecast {
                    extent.reach(Rz::new(node.r, node.z + plan.shift_mm));
                }
            }
        }
        extent
    }

    fn reach(&mut self, place: Rz) {
        self.radius = self.radius.max(place.r);
        self.low = self.low.min(place.z);
        self.high = self.high.max(place.z);
    }

    fn fitting(&self, room: egui::Vec2) -> Lens {
        let across = f64::from(room.x) / (2.0 * self.radius);
        let along = f64::from(room.y) / (self.high - self.low).max(1.0);
        Lens {
            scale: across.min(along).clamp(0.02, 40.0) as f32,
            middle_mm: 0.5 * (self.low + self.high),
            across_mm: 0.0,
            by_hand: false,
        }
    }

    /// Whether the piece is wholly on the board at `lens` and not much smaller than it
    /// could be.
    fn sits_well(&self, lens: Lens, fitting: Lens, room: egui::Vec2) -> bool {
        let scale = f64::from(lens.scale);
        let reach = (self.high - lens.middle_mm).max(lens.middle_mm - self.low) * scale;
        let inside = 2.0 * self.radius * scale <= f64::from(room.x) + 8.0
            && reach <= 0.5 * f64::from(room.y) + 8.0;
        inside && lens.scale >= 0.82 * fitting.scale && lens.scale <= 1.02 * fitting.scale
    }
}

/// Draws grid and plumb line.
pub(super) fn paint(painter: &Painter, t: &Tokens, ground: &Ground) {
    let rect = ground.rect;
    let step = grid_step(ground.scale());
    let corner = ground.mm(rect.min);
    let opposite = ground.mm(rect.max);
    let lines = |from: f64, to: f64| {
        let (first, last) = ((from / step).ceil() as i64, (to / step).floor() as i64);
        first..=last
    };
    let bold = if step < 5.0 { 5 } else { 2 };
    for tenth in [false, true] {
        let stroke = Stroke::new(1.0, if tenth { t.grid2 } else { t.grid });
        for i in lines(corner.r, opposite.r).filter(|i| (i % bold == 0) == tenth) {
            let x = ground.axis_x + (i as f64 * step) as f32 * ground.scale();
            painter.vline(painter.round_to_pixel_center(x), rect.y_range(), stroke);
        }
        for i in lines(corner.z, opposite.z).filter(|i| (i % bold == 0) == tenth) {
            let y = painter.round_to_pixel_center(ground.y(i as f64 * step));
            painter.hline(rect.x_range(), y, stroke);
        }
    }
    plumb_line(painter, t, ground);
}

/// 5 mm, or coarser where that would be too fine to see; 1 mm where the board is very near.
fn grid_step(scale: f32) -> f64 {
    if scale >= NEAR {
        return 1.0;
    }
    [5.0, 10.0, 25.0, 50.0, 100.0, 250.0, 500.0]
        .into_iter()
        .find(|mm| mm * f64::from(scale) >= 7.0)
        .unwrap_or(1000.0)
}

fn plumb_line(painter: &Painter, t: &Tokens, ground: &Ground) {
    let x = ground.axis_x;
    let foot = ground.rect.bottom() - 24.0;
    let mut y = ground.rect.top() + 4.0;
    let stroke = Stroke::new(1.0, t.soft_ink);
    while y < foot {
        painter.vline(x, y..=(y + 12.0).min(foot), stroke);
        painter.vline(x, (y + 15.0).min(foot)..=(y + 17.5).min(foot), stroke);
        y += 20.5;
    }
    let bob = pos2(x, foot);
    let half = [(5.0, 1.0), (7.0, 5.0), (5.5, 10.0), (0.0, 19.0)];
    let right = half.iter().map(|&(dx, dy)| bob + vec2(dx, dy));
    let left = half.iter().rev().skip(1).map(|&(dx, dy)| bob + vec2(-dx, dy));
    painter.add(Shape::convex_polygon(right.chain(left).collect(), t.outline, Stroke::NONE));
    icons::triangle(painter, bob + vec2(0.0, 2.0), vec2(0.0, -4.0), 3.0, t.outline);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ground() -> Ground {
        let rect = Rect::from_min_size(pos2(160.0, 90.0), vec2(380.0, 610.0));
        let lens = Lens { scale: 4.0, middle_mm: 60.0, ..Lens::default() };
        Ground::new(rect, lens, 4.0)
    }

    #[test]
    fn the_place_under_the_pointer_stays_there_while_zooming() {
        let about = pos2(300.0, 222.0);
        for factor in [0.5, 1.3, 4.0, 1000.0, 0.0] {
            let near = ground().zoomed(factor, about);
            let was = ground().mm(about);
            assert!(near.at(was).distance(about) < 0.02, "{factor}: {:?}", near.at(was));
            assert!(near.scale() >= 1.0 && near.scale() <= SCALES.1, "{factor}");
            assert!(near.lens().by_hand);
        }
    }

    #[test]
    fn a_pan_moves_all_by_as_much_as_the_hand() {
        let place = Rz::new(12.0, 40.0);
        let by = vec2(31.0, -12.0);
        let moved = ground().panned(by);
        assert!((moved.at(place) - ground().at(place) - by).length() < 0.01);
        assert!((moved.mirrored(place) - ground().mirrored(place) - by).length() < 0.01);
    }

    #[test]
    fn points_and_millimetres_are_inverse() {
        let near = ground().zoomed(2.5, pos2(200.0, 600.0)).panned(vec2(9.0, 5.0));
        let place = Rz::new(-7.0, 33.0);
        assert!(near.mm(near.at(place)).distance(place) < 1e-3);
    }
}
