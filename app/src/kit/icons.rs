//! Icons, drawn: the faces have no arrows, and a line looks the same at any scale.

use egui::{Color32, Painter, Pos2, Rect, Shape, Stroke, Vec2, pos2, vec2};

/// A picture a button can carry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Icon {
    /// Turn back.
    Undo,
    /// Turn forward again.
    Redo,
    /// Sun: change to the light theme.
    Sun,
    /// Moon: change to the dark theme.
    Moon,
    /// Minus.
    Less,
    /// Plus.
    More,
    /// A small triangle that opens something below.
    Down,
    /// A small triangle upwards.
    Up,
    /// A small triangle to the right: what lies within.
    Right,
    /// Cross: close.
    Close,
    /// Dressmaker's pin.
    Pin,
    /// Three stitches of a row: more to choose.
    Row,
    /// A horseshoe magnet.
    Magnet,
    /// A framed picture.
    Picture,
    /// Four corners about a dot: all in view.
    Fit,
    /// A disc, half of it filled.
    Fill,
    /// A small window before a large one.
    Apart,
    /// A screen on its stand: show it to a class.
    Screen,
    /// Two rails, each with its knob: what can be set.
    Settings,
    /// A letter A with a plus.
    Larger,
    /// The same with a minus.
    Smaller,
}

impl Icon {
    /// Draws the icon about `at` in a square of 14 points.
    pub fn paint(self, painter: &Painter, at: Pos2, colour: Color32) {
        let pen = Stroke::new(1.6, colour);
        match self {
            Self::Undo => turn_back(painter, at, pen, 1.0),
            Self::Redo => turn_back(painter, at, pen, -1.0),
            Self::Sun => sun(painter, at, pen),
            Self::Moon => moon(painter, at, pen),
            Self::Less => {
                painter.hline(at.x - 4.0..=at.x + 4.0, at.y, pen);
            }
            Self::More => {
                painter.hline(at.x - 4.0..=at.x + 4.0, at.y, pen);
                painter.vline(at.x, at.y - 4.0..=at.y + 4.0, pen);
            }
            Self::Up => triangle(painter, at, vec2(0.0, -3.0), 4.0, colour),
            Self::Right => triangle(painter, at, vec2(3.0, 0.0), 4.0, colour),
            Self::Down => triangle(painter, at, vec2(0.0, 3.0), 4.0, colour),
            Self::Close => {
                let d = vec2(3.5, 3.5);
                painter.line_segment([at - d, at + d], pen);
                painter.line_segment([at + vec2(3.5, -3.5), at + vec2(-3.5, 3.5)], pen);
            }
            Self::Pin => {
                painter.line_segment([at + vec2(-2.0, 2.0), at + vec2(6.0, -6.0)], pen);
                painter.circle_filled(at + vec2(-4.0, 4.0), 3.0, colour);
            }
            Self::Magnet => magnet(painter, at, pen),
            Self::Fill => {
                painter.circle_stroke(at, 5.5, pen);
                let half = (0..=12).map(|i| {
                    let angle = std::f32::consts::PI * i as f32 / 12.0;
                    at + 5.5 * vec2(angle.cos(), angle.sin())
                });
                painter.add(Shape::convex_polygon(half.collect(), colour, Stroke::NONE));
            }
            Self::Apart => {
                let large = Rect::from_center_size(at - vec2(1.5, 1.5), vec2(11.0, 9.0));
                painter.rect_stroke(large, 1.0, pen, egui::StrokeKind::Middle);
                let small = Rect::from_center_size(at + vec2(3.5, 3.5), vec2(7.0, 6.0));
                painter.rect_filled(small, 1.0, colour);
            }
            Self::Screen => {
                let screen = Rect::from_center_size(at - vec2(0.0, 1.5), vec2(13.0, 9.0));
                painter.rect_stroke(screen, 1.0, pen, egui::StrokeKind::Middle);
                painter.vline(at.x, at.y + 3.0..=at.y + 6.0, pen);
                painter.hline(at.x - 3.5..=at.x + 3.5, at.y + 6.0, pen);
            }
            Self::Settings => {
                for (y, knob) in [(-3.5, 2.5), (3.5, -2.5)] {
                    painter.hline(at.x - 6.5..=at.x + 6.5, at.y + y, pen);
                    painter.circle_filled(at + vec2(knob, y), 3.0, colour);
                }
            }
            Self::Larger | Self::Smaller => {
                let letter = [vec2(-6.5, 5.0), vec2(-2.5, -5.0), vec2(1.5, 5.0)];
                painter.add(Shape::line(letter.map(|d| at + d).to_vec(), pen));
                painter.hline(at.x - 4.8..=at.x - 0.2, at.y + 1.6, pen);
                let sign = at + vec2(5.0, -2.5);
                painter.hline(sign.x - 2.8..=sign.x + 2.8, sign.y, pen);
                if self == Self::Larger {
                    painter.vline(sign.x, sign.y - 2.8..=sign.y + 2.8, pen);
                }
            }
            Self::Picture => {
                let frame = Rect::from_center_size(at, vec2(13.0, 11.0));
                painter.rect_stroke(frame, 1.5, pen, egui::StrokeKind::Middle);
                let hills = [(-6.0, 4.0), (-2.0, -0.5), (1.0, 2.5), (3.0, 0.5), (6.0, 4.0)];
                let hills = hills.map(|(x, y)| at + vec2(x, y));
                painter.add(Shape::line(hills.to_vec(), Stroke::new(1.3, colour)));
                painter.circle_filled(at + vec2(3.0, -2.4), 1.3, colour);
            }
            Self::Fit => {
                for (x, y) in [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)] {
                    let corner = at + vec2(5.5 * x, 5.5 * y);
                    let ends = [vec2(-3.5 * x, 0.0), vec2(0.0, 0.0), vec2(0.0, -3.5 * y)];
                    painter.add(Shape::line(ends.map(|d| corner + d).to_vec(), pen));
                }
                painter.circle_filled(at, 1.6, colour);
            }
            Self::Row => {
                for x in [-5.0, 0.0, 5.0] {
                    let foot = at + vec2(x, 3.0);
                    let arms = [foot + vec2(-1.8, -6.0), foot, foot + vec2(1.8, -6.0)];
                    painter.add(Shape::line(arms.to_vec(), pen));
                }
            }
        }
    }
}

/// A hooked arrow; `way` 1 turns back, −1 forward.
fn turn_back(painter: &Painter, at: Pos2, pen: Stroke, way: f32) {
    let arc: Vec<Pos2> = (0..=16)
        .map(|i| {
            let a = std::f32::consts::PI * (-0.5 + i as f32 / 16.0);
            at + vec2(way * (1.0 + 4.5 * a.cos()), 4.0 * a.sin() + 0.5)
        })
        .collect();
    let (top, bottom) = (arc[0], arc[arc.len() - 1]);
    painter.add(Shape::line(arc, pen));
    painter.line_segment([top, top + vec2(-6.0 * way, 0.0)], pen);
    painter.line_segment([bottom, bottom + vec2(-5.0 * way, 0.0)], pen);
    triangle(painter, top + vec2(-6.0 * way, 0.0), vec2(-4.0 * way, 0.0), 3.6, pen.color);
}

/// A horseshoe, its poles upwards.
fn magnet(painter: &Painter, at: Pos2, pen: Stroke) {
    let bow = |radius: f32| -> Vec<Pos2> {
        let arc = (0..=10).map(|i| {
            let a = std::f32::consts::PI * i as f32 / 10.0;
            at + vec2(radius * a.cos(), 0.5 + radius * a.sin())
        });
        let [right, left] = [radius, -radius].map(|x| at + vec2(x, -6.0));
        std::iter::once(right).chain(arc).chain([left]).collect()
    };
    painter.add(Shape::line(bow(5.8), pen));
    painter.add(Shape::line(bow(2.4), pen));
    for x in [-4.1, 4.1] {
        for y in [-6.0, -2.6] {
            painter.hline(at.x + x - 1.7..=at.x + x + 1.7, at.y + y, pen);
        }
    }
}

fn sun(painter: &Painter, at: Pos2, pen: Stroke) {
    painter.circle_stroke(at, 3.2, pen);
    for i in 0..8 {
        let d = Vec2::angled(std::f32::consts::TAU * i as f32 / 8.0);
        painter.line_segment([at + 5.4 * d, at + 7.4 * d], pen);
    }
}

fn moon(painter: &Painter, at: Pos2, pen: Stroke) {
    let arc = |centre: Pos2, radius: f32, from: f32, to: f32| {
        (0..=14).map(move |i| {
            let a = from + (to - from) * i as f32 / 14.0;
            centre + radius * vec2(a.cos(), a.sin())
        })
    };
    let outer = arc(at, 6.0, -0.9, -0.9 - 4.6);
    let inner = arc(at + vec2(3.1, -2.0), 4.9, -5.5 + 0.62, -1.55);
    let points: Vec<Pos2> = outer.chain(inner).collect();
    painter.add(Shape::closed_line(points, pen));
}

/// A triangle with its base about `base` and its tip at `base + tip`.
pub fn triangle(painter: &Painter, base: Pos2, tip: Vec2, half: f32, colour: Color32) {
    let side = half * tip.normalized().rot90();
    painter.add(Shape::convex_polygon(
        vec![base - side, base + tip, base + side],
        colour,
        Stroke::NONE,
    ));
}

/// The warning triangle with its mark, about `at`.
pub fn warning(painter: &Painter, at: Pos2, size: f32, colour: Color32) {
    let (w, h) = (0.58 * size, 0.5 * size);
    let corners = vec![at + vec2(0.0, -h), at + vec2(w, h), at + vec2(-w, h)];
    painter.add(Shape::closed_line(corners, Stroke::new(1.5, colour)));
    painter.line_segment(
        [at + vec2(0.0, -0.12 * size), at + vec2(0.0, 0.16 * size)],
        Stroke::new(1.5, colour),
    );
    painter.circle_filled(at + vec2(0.0, 0.33 * size), 0.9, colour);
}

/// The mark of the house: a wound bob hanging on its line from the top edge.
pub fn bob(painter: &Painter, at: Pos2, line_from: f32, yarn: Color32, edge: Color32) {
    painter.vline(at.x, line_from..=at.y - 13.0, Stroke::new(1.5, edge));
    let half: [(f32, f32); 9] = [
        (3.2, -13.0),
        (8.6, -10.6),
        (12.0, -6.2),
        (12.9, -1.4),
        (11.8, 3.4),
        (9.0, 8.0),
        (5.6, 12.0),
        (2.6, 15.0),
        (0.0, 17.4),
    ];
    let right = half.iter().map(|&(x, y)| at + vec2(x, y));
    let left = half.iter().rev().skip(1).map(|&(x, y)| at + vec2(-x, y));
    let points: Vec<Pos2> = right.chain(left).collect();
    painter.add(Shape::convex_polygon(points, yarn, Stroke::new(1.2, edge)));
    for (y, w) in [(-7.5, 10.0), (-2.0, 11.8), (3.5, 10.8), (8.5, 7.6)] {
        let bend = [
            at + vec2(-w, y - 1.0),
            at + vec2(-0.4 * w, y + 1.2),
            at + vec2(0.4 * w, y + 1.2),
            at + vec2(w, y - 1.0),
        ];
        painter.add(Shape::line(bend.to_vec(), Stroke::new(1.0, edge)));
    }
}

/// Three tufts of stuffing about `at`.
pub fn tufts(painter: &Painter, at: Pos2, fill: Color32, edge: Color32) {
    for (x, y, r) in [(-5.5, 1.0, 4.0), (5.5, 1.0, 4.0), (0.0, -0.5, 4.8)] {
        painter.circle(at + vec2(x, y), r, fill, Stroke::new(1.0, edge));
    }
}

/// A dressmaker's pin lying on its side: head at `from`, point at `to`.
pub fn lying_pin(painter: &Painter, from: Pos2, to: Pos2, ink: Color32, glint: Color32) {
    painter.line_segment([from, to], Stroke::new(1.6, ink));
    painter.circle_filled(from, 4.4, ink);
    painter.circle_filled(from + vec2(-1.2, -1.3), 1.2, glint);
}

/// A thread tied in a bow about `at`.
pub fn tied_thread(painter: &Painter, at: Pos2, colour: Color32) {
    let pen = Stroke::new(1.5, colour);
    for way in [-1.0, 1.0] {
        let loop_: Vec<Pos2> = (0..=14)
            .map(|i| {
                let a = std::f32::consts::TAU * i as f32 / 14.0;
                at + vec2(way * 3.6 * (1.0 - a.cos()), -2.8 * a.sin() - 0.9 * (1.0 - a.cos()))
            })
            .collect();
        painter.add(Shape::line(loop_, pen));
        painter.line_segment([at, at + vec2(way * 4.2, 6.0)], pen);
    }
    painter.circle_filled(at, 1.9, colour);
}

/// A seam about `at`: stitches across the line where two pieces meet.
pub fn seam(painter: &Painter, at: Pos2, colour: Color32) {
    painter.hline(at.x - 7.5..=at.x + 7.5, at.y, Stroke::new(1.2, colour));
    for x in [-4.6, 0.0, 4.6] {
        let lean = vec2(1.6, -4.4);
        let middle = at + vec2(x, 0.0);
        painter.line_segment([middle - lean, middle + lean], Stroke::new(1.7, colour));
    }
}

/// A check mark about `at`.
pub fn check(painter: &Painter, at: Pos2, colour: Color32) {
    let points = vec![at + vec2(-4.5, 0.0), at + vec2(-1.2, 3.6), at + vec2(5.0, -4.0)];
    painter.add(Shape::line(points, Stroke::new(1.8, colour)));
}

/// A swatch of plain stitches filling `rect`.
pub fn swatch(painter: &Painter, rect: Rect, across: usize, up: usize, colours: [Color32; 2]) {
    let [yarn, strand] = colours;
    painter.rect(rect, 3.0, yarn, Stroke::new(1.0, strand), egui::StrokeKind::Inside);
    let cell = vec2(rect.width() / across as f32, rect.height() / up as f32);
    for row in 0..up {
        for column in 0..across {
            let foot =
                rect.min + vec2((column as f32 + 0.5) * cell.x, (row as f32 + 0.86) * cell.y);
            let arm = vec2(0.36 * cell.x, -0.7 * cell.y);
            let points = vec![foot + vec2(-arm.x, arm.y), foot, foot + arm];
            painter.add(Shape::line(points, Stroke::new(1.4, strand)));
        }
    }
}

/// Where a triangle of a notch points.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// Up: an increase.
    Up,
    /// Down: a decrease.
    Down,
}

/// A notch whose tip points `way`, its base centred at `base`.
pub fn notch(painter: &Painter, base: Pos2, way: Way, size: Vec2, colour: Color32) {
    let tip = if way == Way::Up { -size.y } else { size.y };
    painter.add(Shape::convex_polygon(
        vec![
            pos2(base.x - 0.5 * size.x, base.y),
            pos2(base.x, base.y + tip),
            pos2(base.x + 0.5 * size.x, base.y),
        ],
        colour,
        Stroke::NONE,
    ));
}
