//! The key: what the marks on the board mean.

use egui::{Align2, Painter, Rect, Stroke, StrokeKind, pos2, vec2};

use crate::studio::bench::Bench;
use crate::ui_kit::{paint, type_faces};

/// Height of one line of the key.
const LINE: f32 = 22.0;

/// Draws the key at the top of `place`, if it has room.
pub fn show(painter: &Painter, bench: &Bench<'_>, place: Rect) {
    let t = bench.t;
    let words = ["wanted", "forecast", "round in hand", "off the outline"];
    if place.height() < 26.0 + LINE * words.len() as f32 {
        return;
    }
    paint::title(painter, place.left_top() + vec2(2.0, 10.0), "Key", "", t);
    let yarn = bench.yarn_of(bench.document.piece().yarn_of_round(1));
    for (i, word) in words.into_iter().enumerate() {
        let y = place.top() + 34.0 + LINE * i as f32;
        let mark = Rect::from_center_size(pos2(place.left() + 16.0, y), vec2(26.0, 10.0));
        match i {
            0 => {
                painter.hline(mark.x_range(), y, Stroke::new(1.7, t.outline));
                painter.circle(mark.center(), 4.2, t.panel, Stroke::new(1.5, t.outline));
            }
            1 => {
                let edge = Stroke::new(1.0, t.forecast_edge);
                painter.rect(mark, 3.0, t.body(yarn), edge, StrokeKind::Inside);
            }
            2 => {
                let edge = Stroke::new(1.4, t.highlight_edge);
                painter.rect(mark, 3.0, t.highlight, edge, StrokeKind::Inside);
            }
            _ => {
                let corners = [
                    mark.left_top(),
                    mark.right_top(),
                    mark.right_bottom(),
                    mark.left_bottom(),
                ];
                paint::hatch(painter, &corners, 5.0, Stroke::new(1.0, t.warning));
                let edge = Stroke::new(1.0, t.warning);
                painter.rect_stroke(mark, 2.0, edge, StrokeKind::Inside);
            }
        }
        let font = type_faces::regular(type_faces::SMALL);
        painter.text(pos2(mark.right() + 8.0, y), Align2::LEFT_CENTER, word, font, t.soft_ink);
    }
}
