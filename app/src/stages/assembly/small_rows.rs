//! What a small thing is: its size, whether it is embroidered, what it weighs.

use egui::{TextEdit, Ui};
use plumpline_core::LONGEST_NAME;
use plumpline_core::project::toy::part::{Button, HeldBy, Part, PartForm, Small, Thing};

use super::cells::{CellGrid, NumberCell};
use super::here::ToyBench;
use super::menus;
use crate::bench::action::Actions;
use crate::document::toy::PartTrait;
use crate::fields::form;

/// Draws its rows.
pub(super) fn show(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    index: usize,
    small: &Small,
    actions: &mut Actions,
) {
    let mut new = small.clone();
    let rect =
        form::row(ui, say!("small-name"), say!("small-what-the-sheet-calls-it-left-empty-for"));
    let field = form::place(rect, 0.0, (rect.width()).min(170.0));
    let usual = here.part(index).map(menus::small_word).unwrap_or_default();
    let edit = TextEdit::singleline(&mut new.name)
        .char_limit(LONGEST_NAME)
        .hint_text(usual)
        .desired_width(field.width());
    ui.put(field, edit).accessible_name(say!("small-name-of-the-small-thing"));
    match small.form {
        PartForm::Eye(button) => {
            if let Some(button) = of_button(ui, button, actions) {
                new.form = PartForm::Eye(button);
            }
        }
        PartForm::Nose(button) => {
            if let Some(button) = of_button(ui, button, actions) {
                new.form = PartForm::Nose(button);
            }
        }
        PartForm::Block(wide, deep, long) => {
            let mut grid = CellGrid::new();
            let mut size = [wide, deep, long];
            let words = [
                (say!("small-across"), say!("small-across-it")),
                (say!("small-deep"), say!("small-how-deep-it-is")),
                (say!("small-long"), say!("small-how-long-it-is")),
            ];
            for (i, (caption, name)) in words.into_iter().enumerate() {
                let why = say!("small-long-is-away-from-what-carries-it");
                if let Some(mm) =
                    length(ui, &mut grid, (caption, name, why), (size[i], 0.1), actions)
                {
                    size[i] = mm;
                    new.form = PartForm::Block(size[0], size[1], size[2]);
                }
            }
            weight(ui, &mut grid, &mut new, actions);
        }
    }
    if new != *small {
        let washer = matches!(new.form, PartForm::Eye(b) | PartForm::Nose(b) if !b.embroidered);
        let was = matches!(small.form, PartForm::Eye(b) | PartForm::Nose(b) if b.embroidered);
        here.change(index, PartTrait::Size, actions, |part: &mut Part| {
            part.what = Thing::Small(new);
            // One that is bought comes with its washer.
            if washer && was {
                part.held_by = HeldBy::Washer;
            } else if !washer && !was && part.held_by == HeldBy::Washer {
                part.held_by = HeldBy::Sewn;
            }
        });
    }
}

fn of_button(ui: &mut Ui, button: Button, actions: &mut Actions) -> Option<Button> {
    let mut new = button;
    let why = say!("small-embroidered-in-yarn-otherwise-it-has-a");
    if let Some(on) = form::tick(ui, say!("small-embroidered"), why, button.embroidered) {
        new.embroidered = on;
    }
    let mut grid = CellGrid::new();
    let words =
        (say!("small-across"), say!("small-how-wide-it-is"), say!("small-its-diameter"));
    if let Some(mm) = length(ui, &mut grid, words, (button.diameter_mm, 0.5), actions) {
        new.diameter_mm = mm;
    }
    (new != button).then_some(new)
}

fn length(
    ui: &mut Ui,
    grid: &mut CellGrid,
    (caption, name, why): (&str, &str, &str),
    (value, least): (f64, f64),
    actions: &mut Actions,
) -> Option<f64> {
    let span = (least, 200.0, 1.0);
    grid.number(
        ui,
        &NumberCell { caption, name, why, value, span, decimals: 1, unit: " mm" },
        actions,
    )
}

fn weight(ui: &mut Ui, grid: &mut CellGrid, new: &mut Small, actions: &mut Actions) {
    let cell = NumberCell {
        caption: say!("small-weighs"),
        name: say!("small-what-it-weighs"),
        why: say!("small-0-is-not-known-then-it-is-guessed-from"),
        value: new.grams.unwrap_or(0.0),
        span: (0.0, 5000.0, 1.0),
        decimals: 1,
        unit: " g",
    };
    if let Some(grams) = grid.number(ui, &cell, actions) {
        new.grams = (grams > 0.0).then_some(grams);
    }
}
