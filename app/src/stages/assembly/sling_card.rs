//! Cords from two or three places that meet above, in hand: where each is held, how long they
//! are, and how the toy then hangs.

use egui::Ui;
use plumpline_core::project::toy::LEGS;
use plumpline_core::project::toy::attachment::{Sling, SlingHold, SlingLengths};
use plumpline_core::toy::held::SlingFigures;
use plumpline_core::toy::solid::Solid;

use super::attach_rows::{after_round, from_front, knots, millimetres, thickness, which_part};
use super::cells::CellGrid;
use super::here::ToyBench;
use super::part_card::check;
use super::placing;
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
    let span = (0.0, 3000.0, 5.0);
    millimetres(ui, &mut grid, words, &mut sling.above_mm, span, actions);
    let name = say!("attach-thickness-of-the-cord");
    thickness(ui, &mut grid, name, &mut sling.thickness_mm, actions);
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
    let name = say!("attach-cord-number", number = index + 1);
    let body = here.toy.body_of(leg.part);
    let words = (name.as_str(), say!("attach-which-part"), name.as_str());
    which_part(ui, here, words, &mut leg.part, |i, part| {
        part.piece().is_some() && here.toy.body_of(i) == body
    });
    let Some(solid) = here.made.and_then(|made| made.solid(leg.part)) else { return };
    let mut grid = CellGrid::new();
    let said = say!("attach-name-round", name = name);
    let round = solid.round_at(leg.at.along).round().max(1.0);
    if let Some(round) = after_round(ui, &mut grid, &said, (round, solid), actions) {
        leg.at.along = Solid::share_at(solid, round);
    }
    let said = say!("attach-name-turn", name = name);
    from_front(ui, &mut grid, &said, &mut leg.at.around, actions);
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
