//! The part in hand: where it sits, by which edge, whether it fits, and what stands of it on the
//! sheet.

use egui::{Align2, Rect, Role, Sense, Ui, WidgetInfo, pos2, vec2};
use plumpline_core::project::toy::MOST_AROUND;
use plumpline_core::project::toy::part::{
    Copies, EdgeHow, HeldBy, Part, PartEdge, PartEnd, PartForm, Seat, Thing,
};
use plumpline_core::toy::steps::misfit_text;

use super::cells::{CellGrid, NumberCell, list};
use super::here::ToyBench;
use super::placing::counted_by;
use super::{body_rows, map, small_rows, surface, told};
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::toy::{PartTrait, ToyEdit};
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::{icons, paint, type_faces};
use crate::view::toy::ToyView;

/// Furthest a part is sunk in or stands off by this card, mm.
const DEEPEST_MM: f64 = 300.0;

/// Draws the card of part `index`.
pub(super) fn show(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    index: usize,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    let Some(part) = here.part(index) else { return };
    if let Some(seat) = part.on {
        carried(ui, here, index, part, seat, actions);
    }
    checks(ui, here, index, part, actions);
    map::show(ui, here, index, next, actions);
    sentence(ui, here, index);
    surface::show(ui, here, index, next, actions);
    if let Thing::Small(small) = &part.what {
        small_rows::show(ui, here, index, small, actions);
    }
    held(ui, here, index, part, actions);
    if part.piece().is_some() {
        body_rows::show(ui, here, index, part, actions);
    }
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 34.0), Sense::hover());
    let words = say!("part-remove");
    let size = vec2(controls::words_width(ui, words), 26.0);
    let place = Rect::from_min_size(pos2(rect.right() - size.x, rect.top() + 4.0), size);
    let name = say!("part-remove-part", part = here.called(index));
    let button = controls::button(ui, place, ButtonFace::Words(words), &name, true);
    if button.on_hover_text(say!("part-with-what-it-carries-del")).clicked() {
        actions.edit(Edit::Toy(ToyEdit::Remove { index, called: here.called(index) }));
    }
}

/// What it sits on and where.
fn carried(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    index: usize,
    part: &Part,
    seat: Seat,
    actions: &mut Actions,
) {
    let rect = form::row(ui, say!("part-sits-on"), say!("part-what-carries-it"));
    let carriers: Vec<usize> =
        (0..here.toy.parts.len()).filter(|&on| here.toy.can_carry(on, index)).collect();
    let names: Vec<String> =
        carriers.iter().map(|&on| told::capital(&here.called(on))).collect();
    let words: Vec<&str> = names.iter().map(String::as_str).collect();
    let now = carriers.iter().position(|&on| on == seat.part).unwrap_or(0);
    let place = wide(rect);
    if let Some(new) = list(ui, place, say!("part-sits-on"), (&words, now)) {
        let on = carriers[new];
        here.reseat(index, PartTrait::Carrier, actions, |seat| seat.part = on);
    }
    if let Some(piece) = part.piece().and_then(|id| here.project.piece(id)) {
        let edges =
            edges(piece.outline.starts_closed(), piece.outline.finishes_closed(), seat.by);
        let words: Vec<&str> = edges.iter().map(|&edge| told::edge_words(edge)).collect();
        let now = edges.iter().position(|&edge| edge == seat.by).unwrap_or(0);
        let rect =
            form::row(ui, say!("part-by"), say!("part-the-edge-it-is-put-on-by-and-how"));
        if let Some(new) = list(ui, wide(rect), say!("part-attached-by"), (&words, now)) {
            let by = edges[new];
            here.reseat(index, PartTrait::Edge, actions, |seat| seat.by = by);
        }
    }
    numbers(ui, here, index, part, seat, actions);
}

/// The room of a list in a row.
fn wide(row: Rect) -> Rect {
    let left = row.left().max(row.right() - 210.0);
    Rect::from_x_y_ranges(left..=row.right(), row.center().y - 13.0..=row.center().y + 13.0)
}

/// The edges a piece can be put on by, and the one it is put on by now.
fn edges(starts_closed: bool, finishes_closed: bool, now: PartEdge) -> Vec<PartEdge> {
    let mut edges = Vec::new();
    for (end, closed) in [(PartEnd::Last, finishes_closed), (PartEnd::Start, starts_closed)] {
        for how in [EdgeHow::Open, EdgeHow::Flat, EdgeHow::Closed] {
            if !closed || how == EdgeHow::Closed {
                edges.push(PartEdge { end, how });
            }
        }
    }
    if !edges.contains(&now) {
        edges.push(now);
    }
    edges
}

fn numbers(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    index: usize,
    part: &Part,
    seat: Seat,
    actions: &mut Actions,
) {
    let mut grid = CellGrid::new();
    let by = counted_by(part);
    if let Some(solid) = here.made.and_then(|made| made.solid(seat.part)) {
        let counted = by.count(solid, seat.at);
        let most = f64::from(by.most(solid));
        let after = part.piece().is_none();
        let round = NumberCell {
            caption: if after { say!("part-after-round") } else { say!("part-round") },
            name: say!("part-round-of-its-place"),
            why: say!("part-the-round-of-what-carries-it-where-its"),
            value: f64::from(counted.round),
            span: (1.0, most, 1.0),
            decimals: 0,
            unit: "",
        };
        if let Some(round) = grid.number(ui, &round, actions) {
            let at = by.on_round(solid, seat.at, round as u32);
            here.reseat(index, PartTrait::Place, actions, |seat| seat.at = at);
        }
        let half = (0.5 * by.stitches(solid, counted.round)).floor();
        let stitch = NumberCell {
            caption: say!("part-stitches-from-front"),
            name: say!("part-stitches-of-its-place-from-the-front"),
            why: say!("part-counted-the-way-the-rounds-run"),
            value: f64::from(counted.stitch),
            span: (-half, half, 1.0),
            decimals: 0,
            unit: "",
        };
        if let Some(stitch) = grid.number(ui, &stitch, actions) {
            let at = by.on_stitch(solid, seat.at, stitch as i32);
            here.reseat(index, PartTrait::Place, actions, |seat| seat.at = at);
        }
    }
    let degrees = |caption, name, why, value: f64, most: f64| NumberCell {
        caption,
        name,
        why,
        value,
        span: (-most, most, 5.0),
        decimals: 0,
        unit: "°",
    };
    let why = say!("part-around-the-line-upright-on-the-fabric");
    let turn =
        degrees(say!("part-turn"), say!("part-turn-of-the-part"), why, seat.turn_deg, 360.0);
    if let Some(deg) = grid.number(ui, &turn, actions) {
        here.reseat(index, PartTrait::Turn, actions, |seat| seat.turn_deg = deg);
    }
    let why = say!("part-leaning-from-that-line-toward-its-own");
    let tilt =
        degrees(say!("part-tilt"), say!("part-tilt-of-the-part"), why, seat.tilt_deg, 90.0);
    if let Some(deg) = grid.number(ui, &tilt, actions) {
        here.reseat(index, PartTrait::Tilt, actions, |seat| seat.tilt_deg = deg);
    }
    let sunk = NumberCell {
        caption: say!("part-sunk-in"),
        name: say!("part-how-deep-it-is-sunk-in"),
        why: say!("part-pushed-into-what-carries-it-along-its"),
        value: seat.sunk_mm,
        span: (-DEEPEST_MM, DEEPEST_MM, 1.0),
        decimals: 1,
        unit: " mm",
    };
    if let Some(mm) = grid.number(ui, &sunk, actions) {
        here.reseat(index, PartTrait::Sunk, actions, |seat| seat.sunk_mm = mm);
    }
    let now = match part.copies {
        Copies::One => 0,
        Copies::Mirrored => 1,
        Copies::Around(_) => 2,
    };
    let options = [say!("part-one"), say!("part-mirrored"), say!("part-around")];
    if let Some(new) =
        grid.choice(ui, say!("part-copies"), say!("part-copies-of-the-part"), (&options, now))
    {
        let copies = [Copies::One, Copies::Mirrored, Copies::Around(4)][new];
        here.change(index, PartTrait::Copies, actions, |part| part.copies = copies);
    }
    if part.copies != Copies::One {
        let words = say!("part-each-its-own-place");
        let button = form::wide(ui, form::ROW, words, true, false);
        let why = say!("part-left-and-right-or-each-one-around");
        if button.on_hover_text(why).clicked() {
            let called = here.called(index);
            actions.edit(Edit::Toy(ToyEdit::Separate { index, called }));
        }
    }
    if let Copies::Around(n) = part.copies {
        let number = NumberCell {
            caption: say!("part-how-many"),
            name: say!("part-copies-around"),
            why: say!("part-evenly-around-from-its-place"),
            value: f64::from(n),
            span: (2.0, f64::from(MOST_AROUND), 1.0),
            decimals: 0,
            unit: "",
        };
        if let Some(n) = grid.number(ui, &number, actions) {
            let copies = Copies::Around(n as u32);
            here.change(index, PartTrait::Copies, actions, |part| part.copies = copies);
        }
    }
}

/// What holds it.
fn held(ui: &mut Ui, here: &ToyBench<'_>, index: usize, part: &Part, actions: &mut Actions) {
    if part.on.is_none() {
        return;
    }
    let embroidered = matches!(&part.what, Thing::Small(small)
        if matches!(small.form, PartForm::Eye(b) | PartForm::Nose(b) if b.embroidered));
    if embroidered {
        return;
    }
    let all = [HeldBy::Sewn, HeldBy::Washer, HeldBy::Thread, HeldBy::Glued];
    let words = [
        say!("part-sewn-on"),
        say!("part-a-washer-inside"),
        say!("part-a-thread-it-turns-on"),
        say!("part-glue"),
    ];
    let now = all.iter().position(|&held| held == part.held_by).unwrap_or(0);
    let rect =
        form::row(ui, say!("part-held-by"), say!("part-what-holds-it-glue-alone-does-not"));
    if let Some(new) = list(ui, wide(rect), say!("part-held-by"), (&words, now)) {
        let held_by = all[new];
        here.change(index, PartTrait::HeldBy, actions, |part| part.held_by = held_by);
    }
}

/// Whether it fits, and if not what would.
fn checks(ui: &mut Ui, here: &ToyBench<'_>, index: usize, part: &Part, actions: &mut Actions) {
    let Some(made) = here.made else { return };
    let Some(figures) = made.part(index).filter(|_| part.on.is_some()) else { return };
    ui.add_space(2.0);
    if let Some(words) = misfit_text(&made.project, &made.assembled, index) {
        check(ui, here, &words, false);
        if let Some(mm) = figures.misfit.and_then(|misfit| misfit.sink_mm) {
            let mm = (2.0 * mm).ceil() / 2.0;
            let words = say!("part-push-it-in-mm-mm-further", mm = mm);
            if form::wide(ui, form::ROW, &words, true, false).clicked() {
                here.reseat(index, PartTrait::Sunk, actions, |seat| seat.sunk_mm += mm);
            }
        }
    } else if let Some(words) = told::fits(part, figures) {
        check(ui, here, &words, true);
        if let Some(words) = told::apart(figures) {
            check(ui, here, &words, true);
        }
    }
    for caution in made.cautions.iter().filter(|c| c.part == Some(index) && c.refused) {
        check(ui, here, &caution.text, false);
    }
}

/// A line with a tick, or a triangle.
pub(super) fn check(ui: &mut Ui, here: &ToyBench<'_>, words: &str, good: bool) {
    let t = here.bench.t;
    let font = type_faces::regular(type_faces::BODY);
    let ink = if good { t.ink } else { t.warning };
    let galley = ui.painter().layout(words.into(), font, ink, ui.available_width() - 24.0);
    let size = vec2(ui.available_width(), galley.size().y + 3.0);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, words));
    let at = rect.left_top() + vec2(7.0, 9.0);
    if good {
        icons::check(ui.painter(), at, t.increase);
    } else {
        icons::warning(ui.painter(), at, 14.0, t.warning);
    }
    ui.painter().galley(rect.min + vec2(24.0, 0.0), galley, ink);
}

/// What the sheet says of it.
fn sentence(ui: &mut Ui, here: &ToyBench<'_>, index: usize) {
    let Some(made) = here.made else { return };
    let of_part = |step: &&plumpline_core::toy::AssemblyStep| {
        // What sits on another names both; embroidery names what it is on alone.
        step.parts.len() > 1 && step.parts[0] == index && step.attachment.is_none()
    };
    let Some(step) = made.steps.iter().find(of_part) else { return };
    let t = here.bench.t;
    let width = ui.available_width();
    let font = type_faces::regular(type_faces::BODY);
    let galley = ui.painter().layout(step.text.clone(), font, t.ink, width - 24.0);
    let size = vec2(width, galley.size().y + 34.0);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &step.text));
    let well = rect.shrink2(vec2(0.0, 3.0));
    paint::well(ui.painter(), well, t);
    let small = type_faces::regular(type_faces::SMALL);
    let at = well.left_top() + vec2(12.0, 7.0);
    ui.painter().text(at, Align2::LEFT_TOP, say!("part-on-the-sheet"), small, t.soft_ink);
    ui.painter().galley(at + vec2(0.0, 15.0), galley, t.ink);
}
