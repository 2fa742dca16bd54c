//! The key: what the marks on the board mean.

use egui::{Align2, Painter, Rect, Stroke, StrokeKind, pos2, vec2};
use plumpline_core::Hold;

use super::board::holds;
use crate::bench::Bench;
use crate::kit::{paint, type_faces};

/// Height of one line of the key.
const LINE: f32 = 22.0;

/// A mark the key explains.
#[derive(Clone, Copy)]
enum Mark {
    Wanted,
    Forecast,
    InHand,
    Off,
    Thread,
    Seam,
    Card,
    Plain,
}

/// The marks there are, each with its words. What holds the cloth is listed where there is
/// any.
fn marks(bench: &Bench<'_>) -> Vec<(Mark, &'static str)> {
    let knots = &bench.document.piece().outline.knots;
    let held = |hold| knots.iter().any(|k| k.hold == Some(hold));
    let mut marks = vec![
        (Mark::Wanted, say!("legend-wanted")),
        (Mark::Forecast, say!("legend-forecast")),
        (Mark::InHand, say!("legend-selected-round")),
        (Mark::Off, say!("legend-off-the-outline")),
    ];
    if held(Hold::Cinched) {
        marks.push((Mark::Thread, say!("legend-closing-thread")));
    }
    if held(Hold::Sewn) {
        marks.push((Mark::Seam, say!("legend-seam")));
    }
    if knots.iter().any(|k| k.card) {
        marks.push((Mark::Card, say!("legend-card-inside")));
    }
    if !bench.document.piece().faces.is_empty() {
        marks.push((Mark::Plain, say!("legend-plain")));
    }
    marks
}

/// Draws the key at the top of `place`, if it has room.
pub(crate) fn show(painter: &Painter, bench: &Bench<'_>, place: Rect) {
    let marks = marks(bench);
    if place.height() < 26.0 + LINE * marks.len() as f32 {
        return;
    }
    paint::title(painter, place.left_top() + vec2(2.0, 10.0), say!("legend-key"), "", bench.t);
    for (i, (mark, words)) in marks.into_iter().enumerate() {
        let y = place.top() + 34.0 + LINE * i as f32;
        let spot = Rect::from_center_size(pos2(place.left() + 16.0, y), vec2(26.0, 10.0));
        draw(painter, bench, mark, spot);
        let font = type_faces::regular(type_faces::SMALL);
        let at = pos2(spot.right() + 8.0, y);
        painter.text(at, Align2::LEFT_CENTER, words, font, bench.t.soft_ink);
    }
}

fn draw(painter: &Painter, bench: &Bench<'_>, mark: Mark, spot: Rect) {
    let t = bench.t;
    match mark {
        Mark::Wanted => {
            painter.hline(spot.x_range(), spot.center().y, Stroke::new(1.7, t.outline));
            painter.circle(spot.center(), 4.2, t.panel, Stroke::new(1.5, t.outline));
        }
        Mark::Forecast => {
            let yarn = bench.yarn_of(bench.document.piece().yarn_of_round(1));
            let edge = Stroke::new(1.0, t.forecast_edge);
            painter.rect(spot, 3.0, t.body(yarn), edge, StrokeKind::Inside);
        }
        Mark::InHand => {
            let edge = Stroke::new(1.4, t.highlight_edge);
            painter.rect(spot, 3.0, t.highlight, edge, StrokeKind::Inside);
        }
        Mark::Off => {
            let corners =
                [spot.left_top(), spot.right_top(), spot.right_bottom(), spot.left_bottom()];
            paint::hatch(painter, &corners, 5.0, Stroke::new(1.0, t.warning));
            let edge = Stroke::new(1.0, t.warning);
            painter.rect_stroke(spot, 2.0, edge, StrokeKind::Inside);
        }
        Mark::Thread => holds::icon(painter, t, Hold::Cinched, spot.center()),
        Mark::Seam => holds::icon(painter, t, Hold::Sewn, spot.center()),
        Mark::Card => {
            let ends = [spot.left_center(), spot.right_center()];
            holds::card(painter, t, ends);
        }
        Mark::Plain => {
            let y = spot.center().y;
            paint::plain_run(painter, spot.center().x, y - 7.0..=y + 7.0, t);
        }
    }
}
