//! How answers of the stage are told: a sentence with its sign, figures in columns.

use egui::{Align2, Rect, Sense, Stroke, Ui, vec2};
use plumpline_core::Sentence;

use crate::bench::Bench;
use crate::kit::{icons, type_faces};

/// A sentence, its lengths in the person's unit, behind a tick if what it tells of is met.
pub(super) fn sentence(ui: &mut Ui, bench: &Bench<'_>, words: &Sentence, met: bool) {
    let t = bench.t;
    let words = words.text(bench.unit());
    let font = type_faces::regular(type_faces::BODY);
    let room = ui.available_width() - 34.0;
    let ink = if met { t.ink } else { t.warning };
    let galley = ui.painter().layout(words.clone(), font, ink, room);
    let size = vec2(ui.available_width(), galley.size().y + 8.0);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &words));
    let sign = rect.left_top() + vec2(9.0, 13.0);
    match met {
        true => icons::check(ui.painter(), sign, t.increase),
        false => icons::warning(ui.painter(), sign, 14.0, t.warning),
    }
    let at = Align2::LEFT_TOP.anchor_size(rect.left_top() + vec2(24.0, 4.0), galley.size());
    ui.painter().galley(at.min, galley, ink);
}

/// Widest row of figures, points: an eye loses its line across a whole window.
const WIDEST: f32 = 480.0;

/// Rows of figures under three headings.
pub(super) struct AnswerColumns {
    /// The headings.
    pub(super) heads: [&'static str; 3],
    /// Room for the words before a row, points.
    pub(super) words: f32,
}

impl AnswerColumns {
    /// The headings.
    pub(super) fn head(&self, ui: &mut Ui, bench: &Bench<'_>) {
        let font = type_faces::SMALL;
        self.draw(ui, bench, "", &self.heads.map(str::to_owned), (font, bench.t.soft_ink));
    }

    /// A row; what is empty is neither shown nor told.
    pub(super) fn row(&self, ui: &mut Ui, bench: &Bench<'_>, words: &str, cells: [String; 3]) {
        let ink = (type_faces::BODY, bench.t.ink);
        let response = self.draw(ui, bench, words, &cells, ink);
        let told = self.heads.iter().zip(&cells).filter(|(_, cell)| !cell.is_empty());
        let told: Vec<_> = told.map(|(head, cell)| format!("{head} {cell}")).collect();
        let said = format!("{words}: {}", told.join(", "));
        response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &said));
    }

    fn draw(
        &self,
        ui: &mut Ui,
        bench: &Bench<'_>,
        words: &str,
        cells: &[String; 3],
        (size, ink): (f32, egui::Color32),
    ) -> egui::Response {
        let room = vec2(ui.available_width().min(WIDEST), 24.0);
        let (rect, response) = ui.allocate_exact_size(room, Sense::hover());
        let soft = type_faces::regular(type_faces::SMALL);
        let (painter, t) = (ui.painter(), bench.t);
        painter.text(rect.left_center(), Align2::LEFT_CENTER, words, soft, t.soft_ink);
        let figures: Rect = rect.with_min_x(rect.left() + self.words);
        let wide = figures.width() / cells.len() as f32;
        for (i, cell) in cells.iter().enumerate() {
            let at = figures.left_center() + vec2(wide * (i + 1) as f32, 0.0);
            painter.text(at, Align2::RIGHT_CENTER, cell, type_faces::regular(size), ink);
        }
        painter.hline(rect.x_range(), rect.bottom(), Stroke::new(1.0, t.grid));
        response
    }
}
