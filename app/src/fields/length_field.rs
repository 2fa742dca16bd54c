//! Fields for lengths: shown in the person's unit, typed in any.

use std::ops::RangeInclusive;

use egui::{DragValue, Rect, Ui};
use plumpline_core::{Units, length};

use super::form;
use crate::bench::action::Actions;

/// A length that can be dragged or typed, filling `rect`. Returns a new one, mm; a field that
/// was only walked through gives none, for the number in it is a rounded one.
pub(crate) fn show(
    ui: &mut Ui,
    rect: Rect,
    name: &str,
    (mm, unit): (f64, Units),
    range: RangeInclusive<f64>,
    actions: &mut Actions,
) -> Option<f64> {
    show_or(ui, rect, name, (mm, unit), range, None, actions)
}

/// The same; nought is shown, and typed, as the word `nought`.
pub(crate) fn show_or(
    ui: &mut Ui,
    rect: Rect,
    name: &str,
    (mm, unit): (f64, Units),
    range: RangeInclusive<f64>,
    nought: Option<&'static str>,
    actions: &mut Actions,
) -> Option<f64> {
    let mut now = mm;
    let drag = DragValue::new(&mut now)
        .range(range)
        .speed(0.3 * unit.grid_mm())
        .custom_formatter(move |mm, _| match nought {
            Some(word) if mm <= 0.0 => word.to_owned(),
            _ => unit.short_text(mm),
        })
        .custom_parser(move |text| match nought {
            Some(word) if text.trim() == word => Some(0.0),
            Some(_) => length::parse_place(text, unit.unit).ok(),
            None => length::parse(text, unit.unit).ok(),
        });
    let changed = form::field(ui, rect, name, drag, actions).changed();
    (changed && unit.short_number(now) != unit.short_number(mm)).then_some(now)
}
