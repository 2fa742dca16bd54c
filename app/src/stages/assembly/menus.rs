//! What can be added: a piece, something small, a cord, a loop, a wire.

use egui::{Popup, Rect, Ui, pos2, vec2};

use super::here::ToyBench;
use super::placing::{self, AttachKind, SmallKind};
use super::told;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::toy::ToyEdit;
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::letters;
use plumpline_core::project::toy::part::{Part, PartForm, Thing};

/// Height of a button, and from one to the next.
const BUTTON: f32 = 28.0;
const STEP: f32 = 34.0;

/// Draws the buttons at the foot of `panel`; returns where they begin.
pub(super) fn show(ui: &Ui, here: &ToyBench<'_>, panel: Rect, actions: &mut Actions) -> f32 {
    let words = [say!("toy-add-a-part"), say!("toy-cord-or-wire")];
    let wide = words.map(|words| controls::words_width(ui, words) + 16.0);
    let room = panel.x_range().shrink(12.0);
    let beside = wide[0] + wide[1] + 8.0 <= room.span();
    let bottom = panel.bottom() - 10.0;
    let top = if beside { bottom - BUTTON } else { bottom - BUTTON - STEP };
    let place = |i: usize| {
        if beside {
            let half = 0.5 * (room.span() - 8.0);
            let left = room.min + i as f32 * (half + 8.0);
            Rect::from_min_size(pos2(left, top), vec2(half, BUTTON))
        } else {
            let y = top + i as f32 * STEP;
            Rect::from_min_size(pos2(room.min, y), vec2(room.span(), BUTTON))
        }
    };
    let button = |i: usize| {
        let face = ButtonFace::WordsThen(words[i], Icon::Down);
        controls::button(ui, place(i), face, words[i], true)
    };
    let add = button(0);
    Popup::menu(&add).show(|ui| {
        ui.set_width(200.0);
        parts(ui, here, actions);
    });
    add.on_hover_text(say!("toy-a-piece-eyes-a-nose-on-what-is"));
    let hold = button(1);
    Popup::menu(&hold).show(|ui| {
        ui.set_width(200.0);
        for kind in AttachKind::ALL {
            let asked = placing::attachment(here, kind);
            let item = egui::Button::new(kind.text()).frame_when_inactive(false);
            let item = ui.add_enabled(asked.is_some(), item);
            letters::line(&item, kind.text());
            if item.clicked()
                && let Some(attachment) = asked
            {
                actions.edit(Edit::Toy(ToyEdit::Attach(attachment)));
            }
        }
    });
    hold.on_hover_text(say!("toy-what-the-toy-hangs-by-what-joins-two"));
    top
}

fn parts(ui: &mut Ui, here: &ToyBench<'_>, actions: &mut Actions) {
    let on = placing::carrier(here).map(|on| here.called(on)).unwrap_or_default();
    form::heading(ui, &say!("toy-on-on", on = on));
    let mut add = |part: Part, called: String| {
        actions.edit(Edit::Toy(ToyEdit::Add { part: Box::new(part), called }));
    };
    for piece in &here.project.pieces {
        let words = match piece.copies {
            1 => piece.name.clone(),
            n => format!("{} × {n}", piece.name),
        };
        let item = ui.add(egui::Button::new(words.as_str()).frame_when_inactive(false));
        letters::line(&item, &words);
        if item.clicked()
            && let Some(part) = placing::piece(here, piece.id)
        {
            add(part, piece.name.clone());
        }
    }
    ui.separator();
    for kind in SmallKind::ALL {
        let item = ui.add(egui::Button::new(kind.text()).frame_when_inactive(false));
        letters::line(&item, kind.text());
        if item.clicked()
            && let Some(part) = placing::small(here, kind)
        {
            add(part, kind.text().to_lowercase());
        }
    }
    form::heading(ui, say!("toy-by-itself"));
    for piece in &here.project.pieces {
        let words = say!("toy-piece-as-another-body", piece = piece.name);
        let item = ui.add(egui::Button::new(words.as_str()).frame_when_inactive(false));
        if letters::noted(item, &words).clicked() {
            add(Part::body(piece.id), piece.name.clone());
        }
    }
}

/// What a small thing is, in a word with a capital.
pub(super) fn small_word(part: &Part) -> String {
    match &part.what {
        Thing::Small(small) => told::capital(match small.form {
            PartForm::Eye(_) => say!("toy-eye"),
            PartForm::Nose(_) => say!("toy-nose"),
            PartForm::Block(..) => say!("toy-small-thing"),
        }),
        Thing::Piece(_) => String::new(),
    }
}
