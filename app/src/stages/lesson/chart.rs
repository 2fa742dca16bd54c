//! The panel under the sum: what each round gains, or the angle it misses.

use egui::{Align2, Rect, Ui, pos2, vec2};

use super::here::LessonBench;
use super::{gains, plot};
use crate::bench::action::Actions;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::tokens::PAD;
use crate::kit::{paint, type_faces};
use crate::view::lesson::{LessonChart, LessonView};

/// Draws the panel.
pub(super) fn show(
    ui: &mut Ui,
    here: &LessonBench<'_>,
    panel: Rect,
    next: &mut LessonView,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    let mut right = panel.right() - 12.0;
    for chart in LessonChart::ALL.into_iter().rev() {
        let wide = controls::words_width(ui, chart.text()) - 4.0;
        let rect = Rect::from_min_max(
            pos2(right - wide, panel.top() + 9.0),
            pos2(right, panel.top() + 35.0),
        );
        let name = say!("lesson-chart", what = chart.text());
        let on = here.view.chart == chart;
        let face = ButtonFace::Words(chart.text());
        if controls::toggle(ui, rect, face, &name, true, Some(on)).clicked() {
            next.chart = chart;
        }
        right = rect.left() - 6.0;
    }
    // The choice tells of itself what the chart shows, and comes first where room is short.
    let head = panel.left_top() + vec2(PAD, 22.0);
    let font = type_faces::drafting(type_faces::TITLE);
    let words = say!("lesson-each-round").to_owned();
    let wide = ui.painter().layout_no_wrap(words, font, t.ink).size().x;
    if head.x + wide <= right {
        paint::title(ui.painter(), head, say!("lesson-each-round"), "", t);
    }
    let inner = Rect::from_min_max(panel.min + vec2(12.0, 46.0), panel.max - vec2(12.0, 10.0));
    let Some(bent) = &here.bent else { return };
    if bent.gains.is_empty() {
        let font = type_faces::regular(type_faces::BODY);
        ui.painter().text(
            inner.min,
            Align2::LEFT_TOP,
            say!("lesson-no-rounds-yet"),
            font,
            t.soft_ink,
        );
        return;
    }
    match here.view.chart {
        LessonChart::Gains => gains::show(ui, here, bent, inner, next, actions),
        // What the rounds gain would answer the question.
        LessonChart::Angles if !here.is_open() => {
            let words = say!("lesson-the-angles-are-shown-after-your");
            let font = type_faces::regular(type_faces::BODY);
            let galley = ui.painter().layout(words.to_owned(), font, t.soft_ink, inner.width());
            ui.painter().galley(inner.min + vec2(4.0, 4.0), galley, t.soft_ink);
        }
        LessonChart::Angles => plot::show(ui, here, bent, inner, next, actions),
    }
}
