//! Figures: size, rounds, stitches, stuffing, time, yarn, fit.

use egui::{Align2, Painter, Rect, Sense, Stroke, StrokeKind, Ui, pos2, vec2};
use plumpline_core::Bounds;
use plumpline_core::forecast::fit::Fit;
use plumpline_core::length::grouped;
use plumpline_core::{Plan, Units};

use super::yarn_rows::{self, YARN};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::kit::tokens::PAD;
use crate::kit::words::decimal;
use crate::kit::words::terms;
use crate::kit::{icons, paint, type_faces};

/// Height of the title.
const TITLE: f32 = 26.0;

/// Height the column of figures takes with so many yarns, of `available`.
pub(crate) fn height(yarns: usize, available: f32) -> f32 {
    (TITLE + values_height(yarns)).min(0.62 * available)
}

/// Height the figures take below their title.
pub(crate) fn values_height(yarns: usize) -> f32 {
    208.0 + YARN * yarns.max(1) as f32
}

/// The four values, in words.
pub(super) struct Values {
    pub(super) size: String,
    measures: [&'static str; 2],
    pub(super) rounds: String,
    pub(super) stitches: String,
    pub(super) stuffing: String,
    pub(super) time: String,
}

impl Values {
    pub(super) fn of(plan: &Plan, unit: Units) -> Self {
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
            stitches: grouped(u64::from(estimate.stitches)),
            stuffing: unit.mass_range(low, high),
            time: time(estimate.minutes),
        }
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
    yarn_rows::show(ui, bench, plan, place, actions);
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

/// What the two numbers of the fit mean.
fn fit_in_words(fit: Fit, likely: f64) -> String {
    say!(
        "measured-fit",
        mean = decimal(fit.rms_stitches, 2),
        most = decimal(fit.max_stitches, 2),
        likely = decimal(likely, 2),
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
        say!("measured-likely-st", likely = decimal(likely, 2)),
        type_faces::bold(type_faces::BODY),
        t.ink,
    );
    let words = match place.width() > 290.0 {
        true => {
            say!("measured-as-written-fit-by-hand-likely", fit = decimal(fit.rms_stitches, 2))
        }
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_read_as_people_write_them() {
        assert_eq!(time(104.0), "1 h 45");
        assert_eq!(time(2.0), "5 min");
    }
}
