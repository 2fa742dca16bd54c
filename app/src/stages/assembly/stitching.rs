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

/// Places of buttons side by side, in a further row where one is full.
struct ButtonPlaces {
    row: Rect,
    x: f32,
}

impl ButtonPlaces {
    fn new(ui: &mut Ui) -> Self {
        let (row, _) = ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::hover());
        Self { row, x: row.left() }
    }

    /// The place of the next button, which shows `words`.
    fn next(&mut self, ui: &mut Ui, words: &str) -> Rect {
        let width = controls::words_width(ui, words);
        if self.x + width > self.row.right() + 0.5 {
            *self = Self::new(ui);
        }
        let size = vec2(width, 26.0);
        let place = Rect::from_min_size(pos2(self.x, self.row.top() + 2.0), size);
        self.x = place.right() + 4.0;
        place
    }
}

/// Whether stitches are painted, or what is embroidered on them.
pub(super) fn choice(ui: &mut Ui, next: &mut ToyView) {
    let all = [None].into_iter().chain(EmbroideryStitch::ALL.map(Some));
    let mut places = ButtonPlaces::new(ui);
    for needle in all {
        let words = word(needle);
        let place = places.next(ui, words);
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
        let (rounds, stitches) = ground.stepped(ui);
        let (round, stitch) = (i64::from(spot.round), i64::from(spot.from));
        spot = whole(solid, round + rounds, stitch + stitches);
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
    let count = |round| CountedBy::Gap.stitches(solid, round).round() as u32;
    PaintSpot::around(round, stitch, CountedBy::Gap.most(solid), count)
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
    ui.add_space(1.0);
    let mut places = ButtonPlaces::new(ui);
    for (which, (words, can)) in words.into_iter().enumerate() {
        let place = places.next(ui, words);
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
            embroider(here, actions, |lines| lines[number].mirrored = !line.mirrored);
        }
        let face = ButtonFace::Words(say!("attach-remove"));
        if controls::button(ui, last, face, &remove, true).clicked() {
            next.line = None;
            embroider(here, actions, |lines| {
                lines.remove(number);
            });
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
    let lines = &here.toy.embroidery;
    let going = next.line.filter(|&line| {
        lines.get(line).is_some_and(|l| {
            (l.part, l.stitch, l.yarn) == (index, stitch, yarn) && l.places.len() < MOST_PLACES
        })
    });
    if going.is_none() && lines.len() >= MOST_LINES {
        return;
    }
    next.line = Some(going.unwrap_or(lines.len()));
    embroider(here, actions, |lines| match going {
        Some(line) => lines[line].places.push(place),
        None => {
            let (name, places) = (String::new(), vec![place]);
            lines.push(Embroidery { name, part: index, stitch, yarn, places, mirrored: false });
        }
    });
}

/// Makes `change` to what is embroidered.
fn embroider(
    here: &ToyBench<'_>,
    actions: &mut Actions,
    change: impl FnOnce(&mut Vec<Embroidery>),
) {
    let mut lines = here.toy.embroidery.clone();
    change(&mut lines);
    actions.edit(Edit::Toy(ToyEdit::Embroider(lines)));
}

/// The last place of the line that goes on is taken off; with its only one the line goes.
fn take_last(here: &ToyBench<'_>, next: &mut ToyView, actions: &mut Actions) {
    let Some(line) = next.line else { return };
    let Some(own) = here.toy.embroidery.get(line) else { return };
    let goes = own.places.len() <= 1;
    if goes {
        next.line = None;
    }
    embroider(here, actions, |lines| {
        if goes {
            lines.remove(line);
        } else {
            lines[line].places.pop();
        }
    });
}
