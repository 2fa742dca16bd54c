//! Embroidery on the surface of a part: lines and knots, place by place.

use egui::{Key, Painter, Rect, Sense, Shape, Stroke, Ui, pos2, vec2};
use plumpline_core::Yarn;
use plumpline_core::project::toy::embroidery::{
    Embroidery, EmbroideryStitch, MOST_LINES, MOST_PLACES,
};
use plumpline_core::project::toy::part::Place;
use plumpline_core::toy::counted::CountedBy;
use plumpline_core::toy::solid::{OnCloth, Solid};

use super::cells::{CellGrid, NumberCell};
use super::here::ToyBench;
use super::map::MapGround;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::toy::ToyEdit;
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::tokens::Tokens;
use crate::view::ids;
use crate::view::toy::{Brush, PaintSpot, ToyView};

/// Height of a row of buttons.
const ROW: f32 = 30.0;

fn word(needle: Option<EmbroideryStitch>) -> &'static str {
    match needle {
        None => say!("surface-paint"),
        Some(EmbroideryStitch::Back) => say!("surface-backstitch"),
        Some(EmbroideryStitch::Straight) => say!("surface-straight"),
        Some(EmbroideryStitch::FrenchKnot) => say!("surface-knots"),
    }
}

/// Whether stitches are painted, or what is embroidered on them.
pub(super) fn choice(ui: &mut Ui, next: &mut ToyView) {
    let all = [None].into_iter().chain(EmbroideryStitch::ALL.map(Some));
    let (mut row, _) = ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::hover());
    let mut x = row.left();
    for needle in all {
        let words = word(needle);
        let width = controls::words_width(ui, words);
        if x + width > row.right() + 0.5 {
            row = ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::hover()).0;
            x = row.left();
        }
        let place = Rect::from_min_size(pos2(x, row.top() + 2.0), vec2(width, 26.0));
        x = place.right() + 4.0;
        let (face, on) = (ButtonFace::Words(words), next.needle == needle);
        if controls::toggle(ui, place, face, words, true, Some(on)).clicked() && !on {
            (next.needle, next.line) = (needle, None);
        }
    }
}

/// Draws what is embroidered on part `index`; the line that goes on has its places marked.
pub(super) fn paint(
    painter: &Painter,
    here: &ToyBench<'_>,
    ground: &MapGround<'_>,
    (index, solid): (usize, &Solid),
    next: &ToyView,
) {
    let t = here.bench.t;
    for (number, line) in here.toy.embroidery.iter().enumerate() {
        if line.part != index {
            continue;
        }
        let colour = here.bench.yarn_of(line.yarn);
        let sides: &[f64] = if line.mirrored { &[1.0, -1.0] } else { &[1.0] };
        for side in sides {
            let on = |at: &Place| OnCloth {
                round: solid.round_at(at.along),
                turn: side * at.around,
            };
            let at = |place: &Place| ground.at(on(place));
            let pen = Stroke::new(2.6, Tokens::yarn(colour));
            let under = Stroke::new(4.4, t.cell_edge(colour));
            if line.stitch != EmbroideryStitch::FrenchKnot {
                for pair in line.places.windows(2) {
                    let ends = [at(&pair[0]), at(&pair[1])];
                    painter.add(Shape::line_segment(ends, under));
                    painter.add(Shape::line_segment(ends, pen));
                }
            }
            let taken = next.needle.is_some() && next.line == Some(number);
            for place in &line.places {
                let knot = line.stitch == EmbroideryStitch::FrenchKnot;
                if knot {
                    painter.circle(at(place), 3.4, pen.color, Stroke::new(1.0, under.color));
                }
                if taken {
                    painter.circle_stroke(at(place), 5.0, Stroke::new(1.6, t.highlight_edge));
                }
            }
        }
    }
}

/// What is embroidered, and by what it goes on: clicks on the stitches, keys, numbers.
pub(super) fn show(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    ground: &MapGround<'_>,
    canvas: &egui::Response,
    (index, solid): (usize, &Solid),
    next: &mut ToyView,
    actions: &mut Actions,
) {
    ids::keep_arrows(ui, canvas);
    let own = |line: usize| here.toy.embroidery.get(line).is_some_and(|l| l.part == index);
    next.line = next.line.filter(|&line| own(line));
    if canvas.clicked() {
        canvas.request_focus();
        if let Some(at) = canvas.interact_pointer_pos() {
            let on = ground.under(at);
            put(here, solid, index, on, next, actions);
        }
    }
    let mut spot = next.spot.unwrap_or(PaintSpot::FIRST);
    if canvas.has_focus() {
        let pressed = |key| ui.input(|i| i.key_pressed(key));
        let up = if ground.grows_up() { 1 } else { -1 };
        let right = if ground.runs_right() { 1 } else { -1 };
        let (mut round, mut stitch) = (i64::from(spot.round), i64::from(spot.from));
        for (key, rounds, stitches) in [
            (Key::ArrowUp, up, 0),
            (Key::ArrowDown, -up, 0),
            (Key::ArrowRight, 0, right),
            (Key::ArrowLeft, 0, -right),
        ] {
            if pressed(key) {
                (round, stitch) = (round + rounds, stitch + stitches);
            }
        }
        spot = whole(solid, round, stitch);
        if pressed(Key::Space) {
            put(here, solid, index, on_cloth(here, index, solid, spot), next, actions);
        }
        if pressed(Key::Backspace) {
            take_last(here, next, actions);
        }
    }
    numbers(ui, solid, &mut spot, actions);
    next.spot = Some(spot);
    buttons(ui, here, (index, solid), spot, next, actions);
    lines(ui, here, index, next, actions);
}

/// A place that is there: between a round and the next, after a stitch.
fn whole(solid: &Solid, round: i64, stitch: i64) -> PaintSpot {
    let round = round.clamp(1, i64::from(CountedBy::Gap.most(solid))) as u32;
    let count = CountedBy::Gap.stitches(solid, round).round().max(1.0) as i64;
    let stitch = ((stitch - 1).rem_euclid(count) + 1) as u32;
    PaintSpot { round, from: stitch, to: stitch }
}

/// The place after stitch `from` of the round, on the cloth.
fn on_cloth(here: &ToyBench<'_>, index: usize, solid: &Solid, spot: PaintSpot) -> OnCloth {
    let front = here.made.and_then(|made| made.part(index)?.front);
    let turn = front.map_or(0.0, |f| f.turn(solid, spot.round, f64::from(spot.from)));
    OnCloth { round: f64::from(spot.round), turn }
}

fn numbers(ui: &mut Ui, solid: &Solid, spot: &mut PaintSpot, actions: &mut Actions) {
    let mut grid = CellGrid::new();
    let most = f64::from(CountedBy::Gap.most(solid));
    let count = CountedBy::Gap.stitches(solid, spot.round).round().max(1.0);
    for (caption, name, value, most) in [
        (say!("attach-after-round"), say!("surface-needle-round"), spot.round, most),
        (say!("surface-after-stitch"), say!("surface-needle-stitch"), spot.from, count),
    ] {
        let cell = NumberCell {
            caption,
            name,
            why: say!("surface-where-the-needle-goes-through"),
            value: f64::from(value),
            span: (1.0, most, 1.0),
            decimals: 0,
            unit: "",
        };
        if let Some(new) = grid.number(ui, &cell, actions) {
            let new = new as i64;
            let (round, stitch) = (i64::from(spot.round), i64::from(spot.from));
            let is_round = name == say!("surface-needle-round");
            *spot = if is_round { whole(solid, new, stitch) } else { whole(solid, round, new) };
        }
    }
}

fn buttons(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    (index, solid): (usize, &Solid),
    spot: PaintSpot,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    let some = next.line.is_some();
    let words = [
        (say!("surface-add-the-place"), true),
        (say!("surface-take-last-off"), some),
        (say!("surface-another-line"), some),
    ];
    let (mut row, _) =
        ui.allocate_exact_size(vec2(ui.available_width(), ROW + 2.0), Sense::hover());
    let mut x = row.left();
    for (which, (words, can)) in words.into_iter().enumerate() {
        let width = controls::words_width(ui, words);
        if x + width > row.right() + 0.5 {
            row = ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::hover()).0;
            x = row.left();
        }
        let place = Rect::from_min_size(pos2(x, row.top() + 3.0), vec2(width, 26.0));
        x = place.right() + 4.0;
        if !controls::button(ui, place, ButtonFace::Words(words), words, can).clicked() {
            continue;
        }
        match which {
            0 => put(here, solid, index, on_cloth(here, index, solid, spot), next, actions),
            1 => take_last(here, next, actions),
            _ => next.line = None,
        }
    }
}

/// Every line on the part: taken in hand to go on, mirrored, or removed.
fn lines(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    index: usize,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    let all = &here.toy.embroidery;
    let own = all.iter().enumerate().filter(|(_, line)| line.part == index);
    for (shown, (number, line)) in (1..).zip(own) {
        let words = say!(
            "surface-line",
            number = shown,
            stitch = word(Some(line.stitch)),
            places = line.places.len(),
            letter = Yarn::letter(line.yarn)
        );
        let (row, _) = ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::hover());
        let first = row.shrink2(vec2(0.0, 2.0));
        let remove = say!("surface-remove-line", number = shown);
        let mirror = say!("surface-mirror-line", number = shown);
        let (row, _) = ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::hover());
        let wide = [say!("surface-mirrored"), say!("attach-remove")]
            .map(|words| controls::words_width(ui, words));
        let place = |right: f32, wide: f32| {
            Rect::from_min_size(pos2(right - wide, row.top() + 2.0), vec2(wide, 26.0))
        };
        let last = place(row.right(), wide[1]);
        let middle = place(last.left() - 4.0, wide[0]);
        let on = next.line == Some(number);
        let face = ButtonFace::Words(&words);
        if controls::toggle(ui, first, face, &words, true, Some(on)).clicked() {
            (next.line, next.needle) = (Some(number), Some(line.stitch));
        }
        let face = ButtonFace::Words(say!("surface-mirrored"));
        if controls::toggle(ui, middle, face, &mirror, true, Some(line.mirrored)).clicked() {
            let mut new = all.clone();
            new[number].mirrored = !line.mirrored;
            actions.edit(Edit::Toy(ToyEdit::Embroider(new)));
        }
        let face = ButtonFace::Words(say!("attach-remove"));
        if controls::button(ui, last, face, &remove, true).clicked() {
            let mut new = all.clone();
            new.remove(number);
            next.line = None;
            actions.edit(Edit::Toy(ToyEdit::Embroider(new)));
        }
    }
    if !all.iter().any(|line| line.part == index) {
        form::remark(ui, say!("surface-click-between-stitches"));
    }
}

/// Another place of the line that goes on, or the first of another line.
fn put(
    here: &ToyBench<'_>,
    solid: &Solid,
    index: usize,
    on: OnCloth,
    next: &mut ToyView,
    actions: &mut Actions,
) {
    let Some(stitch) = next.needle else { return };
    let place = CountedBy::Gap.nearest(solid, on.round, on.turn);
    let known = here.project.yarns.len();
    let yarn = match next.brush {
        Brush::Yarn(yarn) => yarn.min(known),
        Brush::Off => 0,
    };
    let mut lines = here.toy.embroidery.clone();
    let going = next.line.filter(|&line| {
        lines.get(line).is_some_and(|l| {
            (l.part, l.stitch, l.yarn) == (index, stitch, yarn) && l.places.len() < MOST_PLACES
        })
    });
    match going {
        Some(line) => lines[line].places.push(place),
        None if lines.len() < MOST_LINES => {
            next.line = Some(lines.len());
            let (name, places) = (String::new(), vec![place]);
            lines.push(Embroidery { name, part: index, stitch, yarn, places, mirrored: false });
        }
        None => return,
    }
    actions.edit(Edit::Toy(ToyEdit::Embroider(lines)));
}

/// The last place of the line that goes on is taken off; with its only one the line goes.
fn take_last(here: &ToyBench<'_>, next: &mut ToyView, actions: &mut Actions) {
    let Some(line) = next.line else { return };
    let mut lines = here.toy.embroidery.clone();
    let Some(own) = lines.get_mut(line) else { return };
    own.places.pop();
    if own.places.is_empty() {
        lines.remove(line);
        next.line = None;
    }
    actions.edit(Edit::Toy(ToyEdit::Embroider(lines)));
}
