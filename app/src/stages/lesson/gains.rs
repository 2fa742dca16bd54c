//! What each round gains, a block a stitch, against the line that lies flat.

use egui::{Align2, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use plumpline_core::bend::{BendWord, FLAT_BAND};
use plumpline_core::lesson::RoundGain;
use plumpline_core::lesson::course::KnobOf;

use super::here::{Bent, LessonBench};
use super::picture::{select, step};
use crate::bench::action::Actions;
use crate::kit::tokens::mix;
use crate::kit::words::decimal;
use crate::kit::words::terms;
use crate::kit::{paint, type_faces};
use crate::view::ids;
use crate::view::lesson::LessonView;

/// Room for the words at the left, and for the numbers of rounds below.
const WORDS: f32 = 46.0;
const NUMBERS: f32 = 20.0;
/// Below so many points a stitch blocks melt into a bar.
const LEAST_BLOCK: f32 = 5.0;

/// Draws the columns; a click on one selects its round, arrows go from one to the next.
pub(super) fn show(
    ui: &Ui,
    here: &LessonBench<'_>,
    bent: &Bent,
    area: Rect,
    next: &mut LessonView,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    let field = Rect::from_min_max(
        pos2(area.left() + here.size(WORDS), area.top() + 10.0),
        area.max - vec2(0.0, here.size(NUMBERS)),
    );
    let flat = bent.gains.iter().map(|g| g.flat).fold(0.0, f64::max);
    // As high as the slider goes, so that the scale stays while it is dragged.
    let reach =
        here.knob.filter(|knob| knob.of == KnobOf::Gain).map_or(0.0, |k| f64::from(k.high));
    let most = bent.gains.iter().map(|g| f64::from(g.gained)).fold(flat, f64::max);
    let most = (most + 0.6).max(reach);
    let least = bent.gains.iter().map(|g| f64::from(g.gained)).fold(0.0, f64::min);
    let unit = field.height() / (most - least) as f32;
    let zero = field.top() + most as f32 * unit;
    let pitch = field.width() / bent.gains.len() as f32;
    let left = |i: usize| field.left() + i as f32 * pitch;
    let canvas = ui.interact(area, ids::gains_id(), Sense::click());
    let selected = here.round().filter(|&round| round as usize <= bent.gains.len());
    canvas.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, name(here, bent, selected)));
    ids::keep_arrows(ui, &canvas);
    let painter = ui.painter();
    if let Some(round) = selected {
        let x = left(round as usize - 1);
        let column = Rect::from_x_y_ranges(x..=x + pitch, area.top()..=area.bottom());
        let edge = Stroke::new(1.2, t.highlight_edge);
        painter.rect(column, 5.0, t.wash, edge, StrokeKind::Inside);
    }
    let band = Rect::from_x_y_ranges(
        field.x_range(),
        zero - (flat + FLAT_BAND) as f32 * unit..=zero - (flat - FLAT_BAND) as f32 * unit,
    );
    painter.rect_filled(band, 0.0, mix(t.panel, t.control_edge, 0.16));
    painter.hline(field.x_range(), zero, Stroke::new(1.0, t.control_edge));
    let small = type_faces::regular(here.size(type_faces::SMALL));
    let open = here.is_open();
    for (i, gain) in bent.gains.iter().enumerate() {
        let gain = RoundGain { gained: if open { gain.gained } else { 0 }, ..*gain };
        let middle = left(i) + 0.5 * pitch;
        let half = (0.38 * pitch).clamp(0.5, 11.0);
        let grows = gain.gained >= 0;
        let colour = if grows { t.increase } else { t.decrease };
        let end = zero - gain.gained as f32 * unit;
        let bar =
            Rect::from_x_y_ranges(middle - half..=middle + half, end.min(zero)..=end.max(zero));
        if unit >= LEAST_BLOCK && pitch >= LEAST_BLOCK {
            for stitch in 0..gain.gained.unsigned_abs() {
                let top = if grows {
                    zero - (stitch + 1) as f32 * unit
                } else {
                    zero + stitch as f32 * unit
                };
                let block = Rect::from_x_y_ranges(bar.x_range(), top + 1.0..=top + unit - 0.5);
                painter.rect_filled(block, 1.5, colour);
            }
        } else {
            painter.rect_filled(bar, 1.0, colour);
        }
        if open && gain.word == BendWord::Ruffle {
            wave(painter, bar.x_range(), end - 4.0, Stroke::new(1.4, colour));
        }
        let round = i as u32 + 1;
        let every = (here.size(22.0) / pitch).ceil().max(1.0) as u32;
        if selected == Some(round)
            || (round.is_multiple_of(every)
                && selected.is_none_or(|s| s.abs_diff(round) >= every))
        {
            let at = pos2(middle, field.bottom() + 0.5 * here.size(NUMBERS) + 2.0);
            let font = if selected == Some(round) {
                type_faces::bold(here.size(type_faces::SMALL))
            } else {
                small.clone()
            };
            painter.text(at, Align2::CENTER_CENTER, round.to_string(), font, t.ink);
        }
        if open && selected == Some(round) && here.tells_numbers() {
            let bold = type_faces::bold(here.size(type_faces::SMALL));
            let words = format!("{:+}", gain.gained).replace('-', "−");
            let y = (end.min(zero) - here.size(14.0)).max(area.top() + 8.0);
            painter.text(pos2(middle, y), Align2::CENTER_CENTER, words, bold, t.ink);
        }
    }
    let line = zero - flat as f32 * unit;
    for piece in egui::Shape::dashed_line(
        &[pos2(field.left(), line), pos2(field.right(), line)],
        Stroke::new(1.5, t.ink),
        7.0,
        4.0,
    ) {
        painter.add(piece);
    }
    let words = |y: f32, word: &str| {
        painter.text(pos2(area.left(), y), Align2::LEFT_CENTER, word, small.clone(), t.ink)
    };
    words(line, terms::bend(BendWord::Flat));
    if open && here.tells_numbers() {
        let at = pos2(area.left(), line + here.size(12.0));
        let number = decimal(flat, 1);
        painter.text(at, Align2::LEFT_CENTER, number, small.clone(), t.soft_ink);
    }
    if line - field.top() > here.size(18.0) {
        words(0.5 * (field.top() + line), terms::bend(BendWord::Ruffle));
    }
    if zero - line > here.size(52.0) {
        words(0.5 * (line + zero) + 8.0, terms::bend(BendWord::Cup));
    }
    if field.bottom() - zero > here.size(16.0) {
        words(0.5 * (zero + field.bottom()), terms::bend(BendWord::DrawIn));
    }
    if canvas.has_focus() {
        paint::focus_ring(painter, area.expand(2.0), 6.0, t);
        step(ui, here, bent, next, actions);
    }
    if let Some(at) = canvas.interact_pointer_pos().filter(|_| canvas.clicked()) {
        canvas.request_focus();
        let i = ((at.x - field.left()) / pitch).floor();
        let hit = (0.0..bent.gains.len() as f32).contains(&i).then(|| i as u32 + 1);
        select(here, hit.filter(|&round| selected != Some(round)), next, actions);
    }
}

fn name(here: &LessonBench<'_>, bent: &Bent, selected: Option<u32>) -> String {
    let of = selected.and_then(|round| Some((round, bent.gains.get(round as usize - 1)?)));
    match of {
        Some((round, _)) if !here.is_open() => {
            say!("lesson-increases-round-round", round = round)
        }
        Some((round, gain)) if here.tells_numbers() => {
            say!(
                "lesson-increases-round-round-gains-gained",
                round = round,
                gained = gain.gained,
                bend = terms::bend(gain.word)
            )
        }
        Some((round, gain)) => say!(
            "lesson-increases-round-round-bend",
            round = round,
            bend = terms::bend(gain.word)
        ),
        None => say!("lesson-increases-of-1-round-rounds", rounds = bent.gains.len()),
    }
}

/// The sign of an edge too long: a little wave.
fn wave(painter: &egui::Painter, x: egui::Rangef, y: f32, pen: Stroke) {
    let points = (0..=12).map(|i| {
        let share = i as f32 / 12.0;
        let rise = (share * 2.0 * std::f32::consts::TAU).sin() * 2.0;
        pos2(egui::lerp(x.min..=x.max, share), y - rise)
    });
    painter.add(egui::Shape::line(points.collect(), pen));
}
