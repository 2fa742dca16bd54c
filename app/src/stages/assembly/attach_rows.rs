//! Rows that the cards of several kinds of attachment share.

use egui::{Rect, Ui};
use plumpline_core::project::toy::attachment::Knots;
use plumpline_core::project::toy::part::Part;
use plumpline_core::toy::solid::Solid;

use super::cells::{CellGrid, NumberCell, list};
use super::here::ToyBench;
use super::told;
use crate::bench::action::Actions;
use crate::fields::form;

/// A number of millimetres: its caption, name and reason, and least, greatest and step.
pub(super) fn millimetres(
    ui: &mut Ui,
    grid: &mut CellGrid,
    (caption, name, why): (&str, &str, &str),
    mm: &mut f64,
    span: (f64, f64, f64),
    actions: &mut Actions,
) {
    let cell = NumberCell { caption, name, why, value: *mm, span, decimals: 1, unit: " mm" };
    if let Some(new) = grid.number(ui, &cell, actions) {
        *mm = new;
    }
}

/// How thick a cord or thread is.
pub(super) fn thickness(
    ui: &mut Ui,
    grid: &mut CellGrid,
    name: &str,
    mm: &mut f64,
    actions: &mut Actions,
) {
    let words = (say!("attach-thick"), name, say!("attach-how-thick-it-is"));
    millimetres(ui, grid, words, mm, (0.1, 50.0, 0.5), actions);
}

/// How far around a part from its front, in degrees of a turn.
pub(super) fn from_front(
    ui: &mut Ui,
    grid: &mut CellGrid,
    name: &str,
    around: &mut f64,
    actions: &mut Actions,
) {
    let cell = NumberCell {
        caption: say!("attach-from-front"),
        name,
        why: say!("attach-how-far-around-from-the-front-the-way"),
        value: (360.0 * *around).round(),
        span: (-180.0, 180.0, 5.0),
        decimals: 0,
        unit: "°",
    };
    if let Some(deg) = grid.number(ui, &cell, actions) {
        *around = deg / 360.0;
    }
}

/// The round of `solid` after which something is held; tells a new one.
pub(super) fn after_round(
    ui: &mut Ui,
    grid: &mut CellGrid,
    name: &str,
    (round, solid): (f64, &Solid),
    actions: &mut Actions,
) -> Option<f64> {
    let cell = NumberCell {
        caption: say!("attach-after-round"),
        name,
        why: say!("attach-the-round-after-which-it-is-held"),
        value: round,
        span: (1.0, solid.rounds().max(1) as f64, 1.0),
        decimals: 0,
        unit: "",
    };
    grid.number(ui, &cell, actions)
}

/// Which of the parts that `may` be chosen: the words of its row, why, and the name of its list.
pub(super) fn which_part(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    (words, why, name): (&str, &str, &str),
    chosen: &mut usize,
    may: impl Fn(usize, &Part) -> bool,
) {
    let all = here.toy.parts.iter().enumerate();
    let parts: Vec<usize> = all.filter(|(i, part)| may(*i, part)).map(|(i, _)| i).collect();
    let names: Vec<String> = parts.iter().map(|&i| told::capital(&here.called(i))).collect();
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    let now = parts.iter().position(|i| i == chosen).unwrap_or(0);
    let rect = form::row(ui, words, why);
    if let Some(new) = list(ui, half(rect), name, (&names, now)) {
        *chosen = parts[new];
    }
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
