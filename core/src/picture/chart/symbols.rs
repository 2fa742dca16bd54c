//! The trade's symbols as strokes.

use super::parts::{SLOT_MM, SingleSymbol};
use crate::picture::Rgb;
use crate::picture::drawing::{Drawing, Pen};
use crate::piece::cloth::{Kind, Loop};
use crate::plan::placement::Stitch;

/// Ink of charts.
pub(super) const INK: Rgb = [38, 36, 33];
/// Inks of increases and decreases; their form tells them apart without colour.
pub(super) const INCREASE: Rgb = [62, 88, 20];
pub(super) const DECREASE: Rgb = [112, 48, 130];

/// Height of a symbol, mm.
pub(super) const HEIGHT: f32 = 1.9;
/// Width of its strokes, mm.
pub(super) const STROKE: f32 = 0.27;

/// From a symbol's own frame, x along the round and y up away from the round before it, mm,
/// to the paper.
pub(super) trait SymbolFrame: Fn(f32, f32) -> [f32; 2] {}
impl<F: Fn(f32, f32) -> [f32; 2]> SymbolFrame for F {}

/// The ink of a stitch.
pub(super) fn ink(stitch: Stitch) -> Rgb {
    match stitch {
        Stitch::Plain => INK,
        Stitch::Increase => INCREASE,
        Stitch::Decrease => DECREASE,
    }
}

/// Draws one stitch whose middle is the origin of `frame`. `apart` is the distance of two
/// stitches of its round there, mm; `foot` how far below its middle the round before lies.
pub(super) fn draw(
    drawing: &mut Drawing,
    frame: &impl SymbolFrame,
    stitch: Stitch,
    (kind, single): (Kind, SingleSymbol),
    apart: f32,
    foot: f32,
) {
    let pen =
        Pen::new(ink(stitch), if stitch == Stitch::Plain { STROKE } else { 1.3 * STROKE });
    let h = 0.5 * HEIGHT;
    let mut line = |from: (f32, f32), to: (f32, f32)| {
        drawing.line([frame(from.0, from.1), frame(to.0, to.1)], pen);
    };
    match (stitch, kind) {
        (Stitch::Plain, Kind::Single) => {
            // Upright on paper wherever it stands: a × turned half-way would read as a +.
            let [x, y] = frame(0.0, 0.0);
            let reach = 0.72 * h;
            let strokes = match single {
                SingleSymbol::Cross => [[reach, reach], [reach, -reach]],
                SingleSymbol::Plus => [[1.2 * reach, 0.0], [0.0, 1.2 * reach]],
            };
            for [dx, dy] in strokes {
                drawing.line([[x - dx, y - dy], [x + dx, y + dy]], pen);
            }
        }
        (Stitch::Plain, _) => tall((0.0, -h), (0.0, h), kind, &mut line),
        (Stitch::Increase, Kind::Single) => {
            let half = (0.5 * apart).clamp(0.35 * HEIGHT, 0.62 * HEIGHT);
            line((0.0, -foot.min(1.25 * h)), (half, h));
            line((0.0, -foot.min(1.25 * h)), (-half, h));
        }
        (Stitch::Decrease, Kind::Single) => {
            let half = (0.62 * apart).clamp(0.35 * HEIGHT, 0.62 * HEIGHT);
            line((0.0, h), (half, -foot.min(1.25 * h)));
            line((0.0, h), (-half, -foot.min(1.25 * h)));
        }
        (Stitch::Increase, _) => {
            let half = (0.5 * apart).clamp(0.4 * HEIGHT, 0.62 * HEIGHT);
            tall((0.0, -1.2 * h), (half, h), kind, &mut line);
            tall((0.0, -1.2 * h), (-half, h), kind, &mut line);
        }
        (Stitch::Decrease, _) => {
            let half = (0.5 * apart).clamp(0.4 * HEIGHT, 0.62 * HEIGHT);
            tall((half, -1.2 * h), (0.0, h), kind, &mut line);
            tall((-half, -1.2 * h), (0.0, h), kind, &mut line);
        }
    }
}

/// A T from its foot to its head, with one slanted stroke for double crochet.
fn tall(
    foot: (f32, f32),
    head: (f32, f32),
    kind: Kind,
    line: &mut impl FnMut((f32, f32), (f32, f32)),
) {
    let bar = 0.26 * HEIGHT;
    line(foot, head);
    line((head.0 - bar, head.1), (head.0 + bar, head.1));
    if kind == Kind::Double {
        let (x, y) = (0.5 * (foot.0 + head.0), 0.5 * (foot.1 + head.1));
        let (a, b) = (0.16 * HEIGHT, 0.11 * HEIGHT);
        line((x - a, y - b), (x + a, y + b));
    }
}

/// The line under a stitch worked into one loop.
pub(super) fn underline(
    drawing: &mut Drawing,
    frame: &impl SymbolFrame,
    only: Loop,
    apart: f32,
) {
    let half = (0.36 * apart).clamp(0.5, 0.9);
    let y = -0.66 * HEIGHT;
    let pen = Pen::new(INK, 0.75 * STROKE);
    let pen = if only == Loop::Front { pen.dashed(0.35) } else { pen };
    drawing.line([frame(-half, y), frame(half, y)], pen);
}

/// A chain: an open oval that lies along `turn_deg` on paper.
pub(super) fn chain(drawing: &mut Drawing, at: [f32; 2], turn_deg: f32) {
    let (middle, radii) = (at, [0.52 * HEIGHT, 0.27 * HEIGHT]);
    let pen = Some(Pen::new(INK, STROKE));
    drawing.shapes.push(crate::picture::drawing::Shape::Oval {
        middle,
        radii,
        turn_deg,
        fill: None,
        pen,
    });
}

/// A slip stitch: a filled dot.
pub(super) fn slip(drawing: &mut Drawing, at: [f32; 2]) {
    drawing.circle(at, 0.26 * HEIGHT, Some(INK), None);
}

/// A magic ring.
pub(super) fn ring(drawing: &mut Drawing, at: [f32; 2]) {
    drawing.circle(at, 0.34 * HEIGHT, None, Some(Pen::new(INK, STROKE)));
}

fn upright(x: f32, y: f32) -> [f32; 2] {
    [x, -y]
}

/// Every sample stands in a square of this half side, mm, so that a key lines up.
const HALF_SAMPLE: f32 = 1.9;

fn square() -> Drawing {
    let mut drawing = Drawing::default();
    let (a, b) = (-HALF_SAMPLE, HALF_SAMPLE);
    drawing.area([[a, a], [b, a], [b, b], [a, b]], None, None);
    drawing
}

pub(super) fn sample(stitch: Stitch, kind: Kind, single: SingleSymbol) -> Drawing {
    let mut drawing = square();
    draw(&mut drawing, &upright, stitch, (kind, single), SLOT_MM, 0.6 * HEIGHT);
    drawing
}

pub(super) fn sample_underline(drawing: &mut Drawing, only: Loop) {
    underline(drawing, &upright, only, SLOT_MM);
}

pub(super) fn sample_chain() -> Drawing {
    let mut drawing = square();
    chain(&mut drawing, [0.0; 2], 0.0);
    drawing
}

pub(super) fn sample_slip() -> Drawing {
    let mut drawing = square();
    slip(&mut drawing, [0.0; 2]);
    drawing
}

pub(super) fn sample_ring() -> Drawing {
    let mut drawing = square();
    ring(&mut drawing, [0.0; 2]);
    drawing
}
