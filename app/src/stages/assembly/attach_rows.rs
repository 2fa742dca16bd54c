//! Rows that the cards of several kinds of attachment share.

use egui::{Rect, Ui};
use plumpline_core::project::toy::attachment::Knots;

use super::cells::NumberCell;
use crate::fields::form;

/// A number of millimetres: its caption, name and reason, and least, greatest and step.
pub(super) fn millimetres<'a>(
    (caption, name, why): (&'a str, &'a str, &'a str),
    value: f64,
    (low, high, step): (f64, f64, f64),
) -> NumberCell<'a> {
    NumberCell { caption, name, why, value, span: (low, high, step), decimals: 1, unit: " mm" }
}

/// The right half of a row.
pub(super) fn half(row: Rect) -> Rect {
    let left = row.left().max(row.right() - 180.0);
    Rect::from_x_y_ranges(left..=row.right(), row.center().y - 13.0..=row.center().y + 13.0)
}

/// On which side of the fabric knots are.
pub(super) fn knots(ui: &mut Ui, knots: &mut Knots) {
    let why = say!("attach-on-which-side-of-the-fabric-they-are");
    let rect = form::row(ui, say!("attach-knots"), why);
    let words = [say!("attach-inside"), say!("attach-outside")];
    let now = usize::from(*knots == Knots::Outside);
    if let Some(new) = form::pick(ui, rect, say!("attach-knots"), &words, now) {
        *knots = [Knots::Inside, Knots::Outside][new];
    }
}
