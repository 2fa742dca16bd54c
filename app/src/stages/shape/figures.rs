//! Figures: size, rounds, stitches, stuffing, time, yarn, fit.

use egui::{Align2, Painter, Rect, Sense, Stroke, StrokeKind, Ui, pos2, vec2};
use plumpline_core::Bounds;
use plumpline_core::forecast::fit::Fit;
use plumpline_core::{Plan, Unit, Yarn};

use super::card;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::fields::yarn_card;
use crate::kit::tokens::PAD;
use crate::kit::words::terms;
use crate::kit::{Tokens, icons, paint, type_faces};

/// Height of the title.
const TITLE: f32 = 26.0;
/// Height of one yarn's row.
const YARN: f32 = 25.0;
/// Height of what is said below the yarns.
const NOTE: f32 = 16.0;

/// Height the column of figures takes with so many yarns, of `available`.
pub(crate) fn height(yarns: usize, available: f32) -> f32 {
    (TITLE + values_height(yarns)).min(0.62 * available)
}

/// Height the figures take below their title.
pub(crate) fn values_height(yarns: usize) -> f32 {
    208.0 + YARN * yarns.max(1) as f32
}

/// The four values, in words.
struct Values {
    size: String,
    measures: [&'static str; 2],
    rounds: String,
    stitches: String,
    stuffing: String,
    time: String,
}

impl Values {
    fn of(plan: &Plan, unit: Unit) -> Self {
        let estimate = &plan.estimate;
        let Bounds { low, high } = estimate.stuffing_g;
        Self {
            size: match plan.depth_mm {
                // An oval has three measures; rough ones keep them on one line.
                Some(deep) => [plan.size_mm.height, plan.size_mm.width, deep]
                    .map(|mm| unit.rough_number(mm))
                    .join(" × "),
                None => [plan.size_mm.height, plan.size_mm.width]
                    .map(|mm| unit.number(mm))
                    .join(" × "),
            },
            measures: if plan.depth_mm.is_some() {
                [say!("measured-high-wide-deep"), say!("measured-h-w-d")]
            } else {
                [say!("measured-high-wide"), say!("measured-h-w")]
            },
            rounds: plan.rounds.len().to_string(),
            stitches: grouped(estimate.stitches),
            stuffing: unit.mass_range(low, high),
            time: time(estimate.minutes),
        }
    }
}

/// A whole number in groups of three: `1 203`.
fn grouped(number: u32) -> String {
    if number >= 1000 {
        format!("{} {:03}", grouped(number / 1000), number % 1000)
    } else {
        number.to_string()
    }
}

/// Minutes in words: `1 h 45`, `40 min`.
fn time(minutes: f64) -> String {
    let five = (minutes / 5.0).round().max(1.0) as u32 * 5;
    if five < 60 {
        say!("measured-minutes", n = five)
    } else {
        format!("{} h {:02}", five / 60, five % 60)
    }
}

/// The figures as a column.
pub(crate) fn column(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let t = bench.t;
    let painter = ui.painter_at(rect);
    let inner = rect.shrink(PAD);
    paint::title(
        &painter,
        inner.left_top() + vec2(0.0, 6.0),
        say!("measured-measurements"),
        "",
        t,
    );
    let firmness =
        say!("measured-stuffed", how = terms::firmness(bench.document.piece().firmness));
    let top = inner.right_top() + vec2(0.0, 6.0);
    let small = type_faces::regular(type_faces::SMALL);
    painter.text(top, Align2::RIGHT_CENTER, firmness, small, t.soft_ink);
    values(ui, bench, rect.with_min_y(rect.top() + TITLE), actions);
}

/// The figures below their title.
pub(crate) fn values(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let t = bench.t;
    let painter = ui.painter_at(rect);
    let inner =
        Rect::from_min_max(pos2(rect.left() + PAD, rect.top()), rect.max - vec2(PAD, PAD));
    let small = || type_faces::regular(type_faces::SMALL);
    let Some(plan) = bench.plan else {
        let at = inner.left_top() + vec2(0.0, 30.0);
        painter.text(at, Align2::LEFT_CENTER, "–", type_faces::bold(type_faces::BIG), t.ink);
        return;
    };
    let values = Values::of(plan, bench.unit());
    let at = inner.left_top() + vec2(0.0, 28.0);
    let big = painter.text(
        at,
        Align2::LEFT_CENTER,
        values.size,
        type_faces::bold(type_faces::BIG),
        t.ink,
    );
    let unit = pos2(big.right() + 5.0, at.y + 4.0);
    painter.text(
        unit,
        Align2::LEFT_CENTER,
        bench.unit().symbol(),
        type_faces::regular(type_faces::BODY),
        t.soft_ink,
    );
    let hint = pos2(inner.right(), at.y + 4.0);
    let free = hint.x - unit.x - 26.0;
    let [long, short] = values.measures;
    let room = |words: &str| {
        painter.layout_no_wrap(words.into(), small(), t.soft_ink).size().x <= free
    };
    if let Some(words) = [long, short].into_iter().find(|words| room(words)) {
        painter.text(hint, Align2::RIGHT_CENTER, words, small(), t.soft_ink);
    }
    let mut y = rule(&painter, bench, inner, at.y + 20.0);
    let four = [
        (say!("measured-rounds"), values.rounds, ""),
        (say!("measured-stitches"), values.stitches, ""),
        (say!("measured-stuffing"), values.stuffing, bench.unit().mass_symbol()),
        (say!("measured-time"), values.time, ""),
    ];
    for (i, (label, value, unit)) in four.into_iter().enumerate() {
        let share = [0.0, 0.2, 0.46, 0.76][i];
        let x = inner.left() + share * inner.width();
        painter.text(pos2(x, y + 8.0), Align2::LEFT_CENTER, label, small(), t.soft_ink);
        let value_at = pos2(x, y + 26.0);
        let bold = type_faces::bold(type_faces::TITLE);
        let value = painter.text(value_at, Align2::LEFT_CENTER, value, bold, t.ink);
        let unit_at = pos2(value.right() + 3.0, value_at.y + 1.0);
        painter.text(unit_at, Align2::LEFT_CENTER, unit, small(), t.soft_ink);
    }
    y = rule(&painter, bench, inner, y + 42.0);
    // In a tall card the fit stays with the figures it belongs to.
    let yarns_low = y + YARN * plan.estimate.yarn.len().max(1) as f32 + 100.0;
    let fit_top = (inner.bottom() - 48.0).min(yarns_low);
    let place = Rect::from_min_max(pos2(inner.left(), y), pos2(inner.right(), fit_top - 6.0));
    yarns(ui, bench, plan, place, actions);
    fit(&painter, bench, plan, inner.with_min_y(fit_top));
    if let Some(fit) = plan.fit {
        let over =
            ui.interact(inner.with_min_y(fit_top), ui.scope_id().with("fit"), Sense::hover());
        over.on_hover_text(fit_in_words(fit, plan.likely_rms_stitches));
    }
}

fn rule(painter: &Painter, bench: &Bench<'_>, inner: Rect, y: f32) -> f32 {
    painter.hline(inner.x_range(), y, Stroke::new(1.0, bench.t.edge));
    y + 6.0
}

/// A row a yarn: bead, name, a skein as long as its metres, metres and grams. A click opens
/// the yarn's card.
fn yarns(ui: &Ui, bench: &Bench<'_>, plan: &Plan, place: Rect, actions: &mut Actions) {
    let t = bench.t;
    let painter = &ui.painter_at(place.expand(PAD));
    let most = plan.estimate.yarn.iter().map(|y| y.metres).fold(1e-9, f64::max);
    let rows = |height: f32| (height / YARN).floor().max(0.0) as usize;
    let used = &plan.estimate.yarn;
    let with_note = rows(place.height() - NOTE);
    // Where there is room for one row, that is a yarn rather than what is said of all.
    let shown = match used.len() > with_note {
        true => with_note.saturating_sub(1).max(rows(place.height()).min(1)),
        false => used.len(),
    };
    let body = || type_faces::regular(type_faces::BODY);
    for (i, one) in used.iter().take(shown).enumerate() {
        let Some(yarn) = bench.document.project().yarns.get(one.yarn) else { continue };
        let y = place.top() + YARN * (i as f32 + 0.5);
        let row = Rect::from_x_y_ranges(place.x_range().expand(6.0), y - 12.5..=y + 12.5);
        yarn_button(ui, bench, row, one.yarn, yarn, actions);
        let bead = pos2(place.left() + 8.0, y);
        paint::bead(painter, bead, &Yarn::letter(one.yarn), yarn.colour, t);
        let name = pos2(place.left() + 24.0, y);
        let name_width = 0.29 * place.width();
        paint::clipped_text(painter, name, &yarn.name, body(), t.ink, name_width);
        let grams = bench.unit().mass_text(yarn.grams(one.metres));
        let right = pos2(place.right(), y);
        painter.text(right, Align2::RIGHT_CENTER, grams, body(), t.soft_ink);
        let metres = pos2(place.right() - 52.0, y);
        let text = bench.unit().yarn_text(one.metres);
        painter.text(metres, Align2::RIGHT_CENTER, text, body(), t.ink);
        let from = name.x + name_width + 6.0;
        let room = (place.right() - 112.0 - from).max(10.0);
        let length = (f64::from(room) * one.metres / most).max(8.0) as f32;
        let skein = Rect::from_min_size(pos2(from, y - 4.5), vec2(length, 9.0));
        draw_skein(painter, skein, yarn.colour, t);
    }
    let note = if shown < used.len() {
        say!("measured-and-more-more-yarn-is-estimated-20", more = used.len() - shown)
    } else {
        say!("measured-estimated-yarn-20-stuffing-and-time-by").to_owned()
    };
    let y = place.top() + YARN * shown as f32 + 9.0;
    if y + 0.5 * NOTE > place.bottom() + PAD {
        return;
    }
    let font = type_faces::regular(type_faces::SMALL);
    painter.text(pos2(place.left(), y), Align2::LEFT_CENTER, note, font, t.soft_ink);
}

/// What of a yarn's row is pressed to open its card.
fn yarn_button(
    ui: &Ui,
    bench: &Bench<'_>,
    row: Rect,
    index: usize,
    yarn: &Yarn,
    actions: &mut Actions,
) {
    let t = bench.t;
    let response = ui.interact(row, ui.scope_id().with(("yarn", index)), Sense::click());
    let name =
        say!("measured-yarn-letter-name", letter = Yarn::letter(index), name = yarn.name);
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &name));
    if response.hovered() {
        ui.painter().rect_filled(row, 6.0, t.well);
    }
    if response.has_focus() {
        paint::focus_ring(ui.painter(), row.shrink(2.0), 6.0, t);
    }
    yarn_card::card(&response, bench, index, actions);
    response.on_hover_text(say!("measured-change-its-name-color-or-length"));
}

fn draw_skein(painter: &Painter, rect: Rect, colour: [u8; 3], t: &Tokens) {
    let edge = t.yarn_edge(colour);
    painter.rect(rect, 4.0, Tokens::yarn(colour), Stroke::new(1.0, edge), StrokeKind::Inside);
    let mut x = rect.left() + 7.0;
    while x < rect.right() - 5.0 {
        let strand = [pos2(x - 2.0, rect.bottom() - 2.0), pos2(x + 2.0, rect.top() + 2.0)];
        painter.line_segment(strand, Stroke::new(1.0, edge));
        x += 6.0;
    }
}

/// What the two numbers of the fit mean.
fn fit_in_words(fit: Fit, likely: f64) -> String {
    say!(
        "measured-fit",
        mean = format!("{:.2}", fit.rms_stitches),
        most = format!("{:.2}", fit.max_stitches),
        likely = format!("{likely:.2}"),
    )
}

/// The fit on a scale from 0 to 1 stitch; snug is up to a quarter.
fn fit(painter: &Painter, bench: &Bench<'_>, plan: &Plan, place: Rect) {
    let t = bench.t;
    rule(painter, bench, place, place.top() - 4.0);
    let Some(fit) = plan.fit else { return };
    let small = || type_faces::regular(type_faces::SMALL);
    let head = place.left_top() + vec2(0.0, 8.0);
    let semibold = type_faces::semibold(type_faces::BODY);
    painter.text(head, Align2::LEFT_CENTER, say!("measured-fit-to-outline"), semibold, t.ink);
    let likely = plan.likely_rms_stitches;
    let value = painter.text(
        pos2(place.right(), head.y),
        Align2::RIGHT_CENTER,
        say!("measured-likely-st", likely = format!("{:.2}", likely)),
        type_faces::bold(type_faces::BODY),
        t.ink,
    );
    let words = match place.width() > 290.0 {
        true => say!(
            "measured-as-written-fit-by-hand-likely",
            fit = format!("{:.2}", fit.rms_stitches)
        ),
        false => say!("measured-by-hand-likely").into(),
    };
    let at = pos2(value.left() - 6.0, head.y);
    painter.text(at, Align2::RIGHT_CENTER, words, small(), t.soft_ink);
    let track =
        Rect::from_min_size(pos2(place.left(), place.top() + 22.0), vec2(place.width(), 8.0));
    painter.rect(track, 4.0, t.well, Stroke::new(1.0, t.edge), StrokeKind::Inside);
    let snug = track.with_max_x(track.left() + 0.25 * track.width());
    let moss = crate::kit::tokens::mix(t.well, t.increase, 0.4);
    painter.rect_filled(snug, 4.0, moss);
    for quarter in 1..4 {
        let x = track.left() + track.width() * quarter as f32 / 4.0;
        painter.vline(x, track.top()..=track.bottom() + 3.0, Stroke::new(1.0, t.soft_ink));
    }
    let x = |stitches: f64| track.left() + track.width() * (stitches as f32).clamp(0.0, 1.0);
    let written = pos2(x(fit.rms_stitches), track.center().y);
    painter.circle(written, 3.0, t.panel, Stroke::new(1.3, t.outline));
    let at = pos2(x(likely), track.top() - 3.0);
    icons::triangle(painter, at, vec2(0.0, 8.0), 5.0, t.outline);
    let labels = [
        (0.0, "0"),
        (0.25, say!("measured-snug")),
        (0.5, "½"),
        (1.0, say!("measured-1-st-loose")),
    ];
    for (share, words) in labels {
        let anchor = match share {
            0.0 => Align2::LEFT_CENTER,
            1.0 => Align2::RIGHT_CENTER,
            _ => Align2::CENTER_CENTER,
        };
        let at = pos2(track.left() + share * track.width(), track.bottom() + 10.0);
        painter.text(at, anchor, words, small(), t.soft_ink);
    }
}

/// The figures folded into one line, with the card behind a button at its end; returns
/// whether the answers to choose from are in sight.
pub(crate) fn line(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) -> bool {
    let t = bench.t;
    let painter = ui.painter_at(rect);
    let y = rect.center().y;
    let mut x = rect.left() + PAD;
    let (end, sees_answers) = card::button(ui, bench, rect, actions);
    let end = end - 16.0;
    let Some(plan) = bench.plan else {
        let title = type_faces::bold(type_faces::TITLE);
        painter.text(pos2(x, y), Align2::LEFT_CENTER, "–", title, t.ink);
        return sees_answers;
    };
    let values = Values::of(plan, bench.unit());
    let fit = plan.fit.map_or("–".into(), |_| format!("{:.2}", plan.likely_rms_stitches));
    let symbol = bench.unit().symbol();
    let size_unit = match plan.depth_mm {
        Some(_) => symbol.to_owned(),
        None => say!("measured-unit-high-wide", symbol = symbol),
    };
    let stuffing = say!("measured-unit-stuffing", unit = bench.unit().mass_symbol());
    let items = [
        (values.size, size_unit.as_str()),
        (values.rounds, say!("measured-word-rounds")),
        (values.stitches, say!("measured-st")),
        (values.stuffing, stuffing.as_str()),
        (values.time, say!("measured-to-make")),
        (fit, say!("measured-st-off")),
    ];
    let small = || type_faces::regular(type_faces::SMALL);
    for (value, unit) in items {
        let title = type_faces::bold(type_faces::TITLE);
        let value = painter.text(pos2(x, y), Align2::LEFT_CENTER, value, title, t.ink);
        let at = pos2(value.right() + 4.0, y + 1.0);
        let unit = painter.text(at, Align2::LEFT_CENTER, unit, small(), t.soft_ink);
        x = unit.right() + 18.0;
    }
    for one in &plan.estimate.yarn {
        let Some(yarn) = bench.document.project().yarns.get(one.yarn) else { continue };
        if x + 70.0 > end {
            break;
        }
        let hit = Rect::from_center_size(pos2(x + 32.0, y), vec2(76.0, 28.0));
        yarn_button(ui, bench, hit, one.yarn, yarn, actions);
        paint::bead(&painter, pos2(x + 8.0, y), &Yarn::letter(one.yarn), yarn.colour, t);
        let text = bench.unit().yarn_text(one.metres);
        let body = type_faces::regular(type_faces::BODY);
        let text = painter.text(pos2(x + 20.0, y), Align2::LEFT_CENTER, text, body, t.ink);
        x = text.right() + 14.0;
    }
    sees_answers
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_read_as_people_write_them() {
        assert_eq!(grouped(1203), "1 203");
        assert_eq!(grouped(62), "62");
        assert_eq!(grouped(1_000_042), "1 000 042");
        assert_eq!(time(104.0), "1 h 45");
        assert_eq!(time(2.0), "5 min");
    }
}
