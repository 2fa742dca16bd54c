//! Fields in columns: a caption over a number between minus and plus.

use egui::{DragValue, Popup, Rect, Ui, pos2, vec2};

use crate::bench::action::Actions;
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::tokens::Tokens;
use crate::kit::{letters, paint, type_faces};

/// Height of a cell, and least width of one.
const CELL: f32 = 46.0;
const LEAST: f32 = 98.0;
/// Between columns.
const BETWEEN: f32 = 8.0;
/// Side of a button.
const BUTTON: f32 = 24.0;

/// A number in a cell.
pub(super) struct NumberCell<'a> {
    /// The words over it.
    pub(super) caption: &'a str,
    /// What assistive tools call it.
    pub(super) name: &'a str,
    /// Why, on hover.
    pub(super) why: &'a str,
    pub(super) value: f64,
    /// Least, greatest, and what a press of a button adds.
    pub(super) span: (f64, f64, f64),
    pub(super) decimals: usize,
    pub(super) unit: &'a str,
}

/// Cells one after another, as many in a line as fit.
pub(super) struct CellGrid {
    line: Rect,
    columns: usize,
    next: usize,
}

impl CellGrid {
    pub(super) fn new() -> Self {
        Self { line: Rect::NOTHING, columns: 1, next: 0 }
    }

    /// The place of the next cell.
    fn cell(&mut self, ui: &mut Ui) -> Rect {
        if self.next == 0 {
            let width = ui.available_width();
            self.columns = (((width + BETWEEN) / (LEAST + BETWEEN)) as usize).clamp(1, 3);
            let size = vec2(width, CELL);
            self.line = ui.allocate_exact_size(size, egui::Sense::hover()).0;
        }
        let columns = self.columns as f32;
        let wide = (self.line.width() - BETWEEN * (columns - 1.0)) / columns;
        let left = self.line.left() + self.next as f32 * (wide + BETWEEN);
        self.next = (self.next + 1) % self.columns;
        Rect::from_min_size(pos2(left, self.line.top()), vec2(wide, CELL))
    }

    /// A number; returns another that was asked for.
    pub(super) fn number(
        &mut self,
        ui: &mut Ui,
        cell: &NumberCell<'_>,
        actions: &mut Actions,
    ) -> Option<f64> {
        let rect = self.cell(ui);
        let inner = caption(ui, rect, cell.caption);
        let (low, high, step) = cell.span;
        let middle = inner.center().y;
        let place = |left: f32, width: f32| {
            Rect::from_min_size(pos2(left, middle - 12.5), vec2(width, 25.0))
        };
        let less = place(inner.left(), BUTTON);
        let more = place(inner.right() - BUTTON, BUTTON);
        let field = place(less.right() + 3.0, more.left() - less.right() - 6.0);
        let mut new = None;
        let word = say!("part-name-less", name = cell.name);
        let can = cell.value > low;
        if controls::button(ui, less, ButtonFace::Icon(Icon::Less), &word, can).clicked() {
            new = Some((cell.value - step).max(low));
        }
        let word = say!("part-name-more", name = cell.name);
        let can = cell.value < high;
        if controls::button(ui, more, ButtonFace::Icon(Icon::More), &word, can).clicked() {
            new = Some((cell.value + step).min(high));
        }
        let (decimals, unit) = (cell.decimals, cell.unit.to_owned());
        let sign = unit.clone();
        let mut shown = cell.value;
        let drag = DragValue::new(&mut shown)
            .range(low..=high)
            .speed(0.1 * step)
            .max_decimals(decimals)
            .custom_formatter(move |value, _| {
                let text = format!("{value:.decimals$}");
                let text = if decimals > 0 {
                    text.trim_end_matches('0').trim_end_matches('.').to_owned()
                } else {
                    text
                };
                let text = if text == "-0" { "0".into() } else { text.replace('-', "−") };
                format!("{text}{unit}")
            })
            .custom_parser(move |text| {
                let text = text.replace('−', "-");
                text.trim().trim_end_matches(sign.trim()).trim().parse().ok()
            });
        let response = form::field(ui, field, cell.name, drag, actions);
        let grid = 10_f64.powi(decimals as i32);
        if response.changed() {
            let whole = (shown * grid).round() / grid;
            if (whole - cell.value).abs() > 1e-9 {
                new = Some(whole);
            }
        }
        response.on_hover_text(cell.why);
        new
    }

    /// A list to choose from; returns another choice.
    pub(super) fn choice(
        &mut self,
        ui: &mut Ui,
        words: &str,
        name: &str,
        (options, now): (&[&str], usize),
    ) -> Option<usize> {
        let rect = self.cell(ui);
        let inner = caption(ui, rect, words);
        let place = Rect::from_center_size(inner.center(), vec2(inner.width(), 25.0));
        list(ui, place, name, (options, now))
    }
}

/// The words over a field; returns the place below them.
fn caption(ui: &Ui, rect: Rect, words: &str) -> Rect {
    let t = Tokens::now(ui.ctx());
    let font = type_faces::regular(type_faces::SMALL);
    let at = rect.left_top() + vec2(1.0, 9.0);
    paint::clipped_text(ui.painter(), at, words, font, t.soft_ink, rect.width());
    rect.with_min_y(rect.top() + 17.0)
}

/// A button that opens a list at `rect`; returns another choice.
pub(super) fn list(
    ui: &Ui,
    rect: Rect,
    name: &str,
    (options, now): (&[&str], usize),
) -> Option<usize> {
    let words = options.get(now).copied().unwrap_or("–");
    let full = format!("{name}: {words}");
    let face = ButtonFace::WordsThen(words, Icon::Down);
    let button = controls::button(ui, rect, face, &full, true);
    let mut new = None;
    Popup::menu(&button).show(|ui| {
        ui.set_min_width(rect.width().max(150.0));
        for (i, option) in options.iter().enumerate() {
            let item = ui.selectable_label(i == now, *option);
            if letters::noted(item, option).clicked() {
                new = Some(i);
            }
        }
    });
    new.filter(|&i| i != now)
}
