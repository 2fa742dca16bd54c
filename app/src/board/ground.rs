//! The ground of the board: how millimetres fall on it, its grid and its plumb line.

use egui::{Painter, Pos2, Rect, Shape, Stroke, pos2, vec2};
use plumpline_core::outline::Rz;

use crate::studio::bench::Bench;
use crate::studio::view::Lens;
use crate::ui_kit::{Tokens, icons};

/// Room left of the body for the height, right of it for knots, and above and below it.
const MARGIN_LEFT: f32 = 40.0;
const MARGIN_RIGHT: f32 = 14.0;
const MARGIN_TOP: f32 = 50.0;
const MARGIN_BOTTOM: f32 = 46.0;

/// The board and its scale: the axis upright, the start pole at the top.
#[derive(Debug, Clone, Copy)]
pub struct Ground {
    /// The board.
    pub rect: Rect,
    /// The axis.
    pub axis_x: f32,
    lens: Lens,
}

impl Ground {
    /// The ground for the piece in hand. The scale there was is kept while something is
    /// dragged, and as long as the piece still sits well on the board.
    pub fn of(bench: &Bench<'_>, rect: Rect) -> Self {
        let extent = Extent::of(bench);
        let axis_x =
            rect.left() + MARGIN_LEFT + 0.5 * (rect.width() - MARGIN_LEFT - MARGIN_RIGHT);
        let room = vec2(
            rect.width() - MARGIN_LEFT - MARGIN_RIGHT,
            rect.height() - MARGIN_TOP - MARGIN_BOTTOM,
        );
        let fitting = extent.fitting(room);
        let lens = match bench.view.lens {
            Some(lens) if bench.view.is_dragging() => lens,
            Some(lens) if extent.sits_well(lens, fitting, room) => lens,
            _ => fitting,
        };
        Self { rect, axis_x, lens }
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

/// How far the outline and the forecast reach, mm.
struct Extent {
    radius: f64,
    low: f64,
    high: f64,
}

impl Extent {
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
    for tenth in [false, true] {
        let stroke = Stroke::new(1.0, if tenth { t.grid2 } else { t.grid });
        for i in lines(corner.r, opposite.r).filter(|i| (i % 2 == 0) == tenth) {
            let x = ground.axis_x + (i as f64 * step) as f32 * ground.scale();
            painter.vline(painter.round_to_pixel_center(x), rect.y_range(), stroke);
        }
        for i in lines(corner.z, opposite.z).filter(|i| (i % 2 == 0) == tenth) {
            let y = painter.round_to_pixel_center(ground.y(i as f64 * step));
            painter.hline(rect.x_range(), y, stroke);
        }
    }
    plumb_line(painter, t, ground);
}

/// 5 mm, or coarser where that would be too fine to see.
fn grid_step(scale: f32) -> f64 {
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
