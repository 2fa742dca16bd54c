//! Cords from two or three places that meet above, in hand: where each is held, how long they
//! are, and how the toy then hangs.

use egui::Ui;
use plumpline_core::project::toy::LEGS;
use plumpline_core::project::toy::attachment::{Sling, SlingHold, SlingLengths};
use plumpline_core::toy::held::SlingFigures;
use plumpline_core::toy::solid::Solid;

use super::attach_rows::{half, knots, millimetres};
use super::cells::{CellGrid, NumberCell, list};
use super::here::ToyBench;
use super::part_card::check;
use super::{placing, told};
use crate::bench::action::Actions;
use crate::fields::form;

/// Draws what of it can be changed.
pub(super) fn show(ui: &mut Ui, here: &ToyBench<'_>, sling: &mut Sling, actions: &mut Actions) {
    let why = say!("attach-how-many-cords-meet-above");
    let rect = form::row(ui, say!("attach-cords"), why);
    let now = sling.legs.len().saturating_sub(LEGS.0);
    if let Some(new) = form::pick(ui, rect, say!("attach-cords"), &["2", "3"], now) {
        let on = sling.legs.first().map_or(0, |leg| leg.part);
        sling.legs = placing::sling_holds(here, on, LEGS.0 + new);
    }
    let rect =
        form::row(ui, say!("attach-lengths"), say!("attach-cut-to-hang-upright-or-equal"));
    let words = [say!("attach-for-upright"), say!("attach-all-equal")];
    let now = usize::from(sling.lengths == SlingLengths::Equal);
    if let Some(new) = form::pick(ui, rect, say!("attach-lengths"), &words, now) {
        sling.lengths = [SlingLengths::Upright, SlingLengths::Equal][new];
    }
    knots(ui, &mut sling.knots);
    let mut grid = CellGrid::new();
    let words = (
        say!("attach-above"),
        say!("attach-height-of-the-meeting-point"),
        say!("attach-how-far-above-the-cords-meet"),
    );
    let cell = millimetres(words, sling.above_mm, (0.0, 3000.0, 5.0));
    if let Some(mm) = grid.number(ui, &cell, actions) {
        sling.above_mm = mm;
    }
    let words = (
        say!("attach-thick"),
        say!("attach-thickness-of-the-cord"),
        say!("attach-how-thick-it-is"),
    );
    let cell = millimetres(words, sling.thickness_mm, (0.1, 50.0, 0.5));
    if let Some(mm) = grid.number(ui, &cell, actions) {
        sling.thickness_mm = mm;
    }
    for (index, leg) in sling.legs.iter_mut().enumerate() {
        self::leg(ui, here, index, leg, actions);
    }
}

/// Where one of them is held: on which part, after which round, how far around.
fn leg(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    index: usize,
    leg: &mut SlingHold,
    actions: &mut Actions,
) {
    let parts: Vec<usize> = (0..here.toy.parts.len())
        .filter(|&i| here.part(i).is_some_and(|part| part.piece().is_some()))
        .filter(|&i| body(here, i) == body(here, leg.part))
        .collect();
    let names: Vec<String> = parts.iter().map(|&i| told::capital(&here.called(i))).collect();
    let words: Vec<&str> = names.iter().map(String::as_str).collect();
    let now = parts.iter().position(|&i| i == leg.part).unwrap_or(0);
    let name = say!("attach-cord-number", number = index + 1);
    let rect = form::row(ui, &name, say!("attach-which-part"));
    if let Some(new) = list(ui, half(rect), &name, (&words, now)) {
        leg.part = parts[new];
    }
    let Some(solid) = here.made.and_then(|made| made.solid(leg.part)) else { return };
    let mut grid = CellGrid::new();
    let round = solid.round_at(leg.at.along);
    let said = say!("attach-name-round", name = name);
    let cell = NumberCell {
        caption: say!("attach-after-round"),
        name: &said,
        why: say!("attach-the-round-after-which-it-is-held"),
        value: round.round().max(1.0),
        span: (1.0, solid.rounds().max(1) as f64, 1.0),
        decimals: 0,
        unit: "",
    };
    if let Some(round) = grid.number(ui, &cell, actions) {
        leg.at.along = Solid::share_at(solid, round);
    }
    let said = say!("attach-name-turn", name = name);
    let cell = NumberCell {
        caption: say!("attach-from-front"),
        name: &said,
        why: say!("attach-how-far-around-from-the-front-the-way"),
        value: (360.0 * leg.at.around).round(),
        span: (-180.0, 180.0, 5.0),
        decimals: 0,
        unit: "°",
    };
    if let Some(deg) = grid.number(ui, &cell, actions) {
        leg.at.around = deg / 360.0;
    }
}

/// The body that carries a part.
fn body(here: &ToyBench<'_>, mut part: usize) -> usize {
    while let Some(seat) = here.part(part).and_then(|part| part.on) {
        part = seat.part;
    }
    part
}

/// What follows: how long each has to be, what it bears, how the toy hangs.
pub(super) fn comes_to(ui: &mut Ui, here: &ToyBench<'_>, index: usize, figures: &SlingFigures) {
    let unit = here.bench.unit();
    for (number, leg) in (1..).zip(&figures.legs) {
        let length = unit.rough_text(leg.free_mm);
        let bears = format!("{:.0}", leg.bears_g);
        let words = match leg.bears_g > 0.0 {
            true => say!("attach-leg-is", number = number, length = length, bears_g = bears),
            false => say!("attach-leg-is-slack", number = number, length = length),
        };
        check(ui, here, &words, leg.bears_g > 0.0);
    }
    let hangings = here.made.map(|made| made.assembled.hangings.as_slice()).unwrap_or_default();
    if let Some(hanging) = hangings.iter().find(|h| h.attachment == index) {
        let deg = format!("{:.1}", hanging.lean_deg);
        let length = unit.rough_text(figures.all_mm);
        let words = match hanging.lean_deg < 0.05 {
            true => say!("attach-it-hangs-upright", length = length),
            false => say!("attach-it-hangs-leaning", deg = deg, length = length),
        };
        check(ui, here, &words, hanging.lean_deg < 5.0);
    }
}
