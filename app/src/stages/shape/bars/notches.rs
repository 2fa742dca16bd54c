//! Notches: where a round increases (up) or decreases (down), at the stitch itself and
//! wholly outside the bar, so that they stand on paper whatever the yarn.

use egui::{Align2, Painter, Stroke, pos2, vec2};
use plumpline_core::Plan;
use plumpline_core::placement::{Placement, Stitch};

use super::rows::Rows;
use crate::bench::Bench;
use crate::kit::icons::{self, Way};
use crate::kit::type_faces;

/// Notches nearer to one another than this become one comb with their number, points.
const NEAREST: f32 = 9.0;

/// Where the shaping stitches of a round are, in stitches of that round from its first; and
/// whether they are increases.
fn places(placement: &Placement) -> (Vec<f32>, bool) {
    let mut at = 0;
    let mut widens = true;
    let mut places = Vec::new();
    for stitch in placement.stitches() {
        let made = stitch.produces();
        if stitch != Stitch::Plain {
            // An increase is two cells; its notch stands between them.
            places.push(at as f32 + 0.5 * made as f32);
            widens = stitch == Stitch::Increase;
        }
        at += made;
    }
    (places, widens)
}

/// Draws the notches of one round.
pub(super) fn paint(
    painter: &Painter,
    bench: &Bench<'_>,
    plan: &Plan,
    rows: &Rows,
    number: u32,
) {
    let Some(round) = plan.rounds.get(number as usize - 1) else { return };
    let (places, widens) = places(&round.placement);
    let (Some(first), Some(last)) = (places.first(), places.last()) else { return };
    let t = bench.t;
    let bar = rows.bar(number, round.count);
    let (way, colour, base) = if widens {
        (Way::Up, t.increase, bar.top() - 0.5)
    } else {
        (Way::Down, t.decrease, bar.bottom() + 0.5)
    };
    let x = |place: f32| bar.left() + place * rows.stitch;
    let room = rows.pitch - rows.bar_height();
    let size = vec2((1.1 * room).min(8.0), (room - 1.0).min(7.0));
    let nearest = places.windows(2).map(|p| p[1] - p[0]).fold(f32::INFINITY, f32::min);
    if nearest * rows.stitch >= NEAREST {
        for &place in &places {
            icons::notch(painter, pos2(x(place), base), way, size, colour);
        }
        return;
    }
    // The comb: a back along the bar, a tooth for every stitch that can be told apart.
    let tooth = if widens { -0.7 * size.y } else { 0.7 * size.y };
    let (from, to) = (x(*first) - 1.5, x(*last) + 1.5);
    let back = base + if widens { -1.0 } else { 1.0 };
    painter.hline(from..=to, back, Stroke::new(2.0, colour));
    let mut drawn = f32::NEG_INFINITY;
    for &place in &places {
        if x(place) - drawn >= 3.0 {
            let ends = [pos2(x(place), back), pos2(x(place), back + tooth)];
            painter.line_segment(ends, Stroke::new(1.6, colour));
            drawn = x(place);
        }
    }
    let sign = if widens { '+' } else { '−' };
    let at = pos2(bar.right() + 4.0, bar.center().y);
    let font = type_faces::bold(type_faces::SMALL);
    let words = format!("{sign}{}", places.len());
    painter.text(at, Align2::LEFT_CENTER, words, font, colour);
}

#[cfg(test)]
mod tests {
    use super::*;
    use plumpline_core::Spread;
    use plumpline_core::placement::Placer;

    #[test]
    fn a_notch_stands_at_its_stitch() {
        let mut placer = Placer::new(Spread::Turned, 0.0);
        let (at, widens) = places(&placer.place(12, 18));
        assert_eq!(at, [2.0, 5.0, 8.0, 11.0, 14.0, 17.0]);
        assert!(widens);
        let (at, widens) = places(&placer.place(18, 12));
        assert_eq!(at.len(), 6);
        assert!(!widens);
    }
}
