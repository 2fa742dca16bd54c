//! The pieces on the top strip: a chip for each, and what can be done with the selected one.

use egui::{Popup, Rect, Response, TextEdit, Ui, pos2, vec2};
use plumpline_core::Piece;
use plumpline_core::piece::MOST_COPIES;
use plumpline_core::starter::Starter;

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::document::edit::Edit;
use crate::document::pieces::{ListWay, MOST_PIECES, PieceEdit};
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::letters;
use crate::kit::words::terms;
use crate::view::Stage;
use crate::view::look::Look;

/// Height of a chip.
const CHIP: f32 = 30.0;
/// Between chips.
const GAP: f32 = 6.0;
/// Width of the card.
const WIDTH: f32 = 284.0;

/// The chips from `left` to at most `limit`.
pub(super) fn show(
    ui: &Ui,
    bench: &Bench<'_>,
    strip: Rect,
    (left, limit): (f32, f32),
    actions: &mut Actions,
) {
    let pieces = &bench.document.project().pieces;
    let now = bench.document.place();
    let slot = |x: f32, width: f32| {
        Rect::from_min_size(pos2(x, strip.center().y - 0.5 * CHIP), vec2(width, CHIP))
    };
    let words: Vec<String> = pieces.iter().map(chip_words).collect();
    let width = |i: usize| {
        let room = if i == now { 34.0 } else { 22.0 };
        (controls::words_width(ui, &words[i]) - 22.0 + room).clamp(44.0, 150.0)
    };
    let shown = |i: &usize| *i == now || !bench.view.hidden.contains(&pieces[*i].id);
    let all: f32 = (0..pieces.len()).filter(shown).map(|i| width(i) + GAP).sum();
    // Where not all fit, the selected one stands for all; its card lists them.
    // In the Make stage every piece has a card already.
    let alone = left + all - GAP > limit || bench.view.stage == Stage::Make;
    let mut x = left;
    let lists = alone && pieces.len() > 1
        || pieces.iter().any(|piece| bench.view.hidden.contains(&piece.id));
    for i in (0..pieces.len()).filter(shown).filter(|&i| !alone || i == now) {
        let room = if alone { width(i).min(limit - left) } else { width(i) };
        let rect = slot(x, room);
        x += room + GAP;
        if i == now {
            let on = (pieces.len() > 1 && !alone).then_some(true);
            let face = ButtonFace::WordsThen(&words[i], Icon::Down);
            let name = say!("pieces-piece-selected", piece = called(pieces, i));
            let id = ui.scope_id().with("selected piece");
            let chip = controls::toggle_known(ui, rect, face, (&name, id), on);
            card(ui, &chip, bench, lists, actions);
            chip.on_hover_text(say!("pieces-rename-copy-or-remove-this-piece-or"));
        } else {
            let name = called(pieces, i);
            let face = ButtonFace::Words(&words[i]);
            if controls::toggle(ui, rect, face, &name, true, Some(false)).clicked() {
                actions.look(Look::Piece(pieces[i].id));
            }
        }
    }
}

/// What assistive tools call a piece: `Piece Ear`, and where several have one name
/// `Piece Ear, 2 of 3`, for each must be known by its own.
fn called(pieces: &[Piece], i: usize) -> String {
    let name = &pieces[i].name;
    match pieces.iter().filter(|p| p.name == *name).count() {
        1 => say!("pieces-named", name = name),
        _ => say!(
            "pieces-piece-name-place-of-many",
            name = name,
            place = i + 1,
            many = pieces.len()
        ),
    }
}

/// `Ear ×2`.
fn chip_words(piece: &Piece) -> String {
    match piece.copies {
        1 => piece.name.clone(),
        n => format!("{} ×{n}", piece.name),
    }
}

/// What can be done with the selected piece; `lists` all pieces where their chips do not fit.
fn card(ui: &Ui, on: &Response, bench: &Bench<'_>, lists: bool, actions: &mut Actions) {
    Popup::menu(on)
        .close_behavior(egui::PopupCloseBehavior::CloseOnClickOutside)
        .frame(form::frame(ui))
        .width(WIDTH)
        .show(|ui| {
            ui.set_width(WIDTH);
            // A menu's own style hides the edges of fields.
            ui.reset_style();
            ui.spacing_mut().item_spacing.y = 4.0;
            if lists {
                list(ui, bench, actions);
            }
            form::heading(ui, say!("pieces-piece"));
            let mut name = bench.document.piece().name.clone();
            let field =
                TextEdit::singleline(&mut name).desired_width(f32::INFINITY).char_limit(60);
            if ui.add(field).accessible_name(say!("pieces-name-of-the-piece")).changed() {
                actions.edit(Edit::Piece(PieceEdit::Name(name)));
            }
            let why = say!("pieces-how-many-are-made-of-it-yarn-stuffing");
            let rect = form::row(ui, say!("pieces-how-many"), why);
            let span = form::Counted { ends: (1, MOST_COPIES), none: None };
            let copies = Some(bench.document.piece().copies);
            if let Some(Some(n)) =
                form::stepper(ui, rect, say!("pieces-how-many"), copies, span, actions)
            {
                actions.edit(Edit::Piece(PieceEdit::Copies(n)));
            }
            let count = bench.document.project().pieces.len();
            let (place, more) = (bench.document.place(), count < MOST_PIECES);
            for row in [
                [
                    (say!("pieces-duplicate"), PieceEdit::Duplicate, more),
                    (say!("pieces-remove"), PieceEdit::Remove, count > 1),
                ],
                [
                    (say!("pieces-earlier"), PieceEdit::Move(ListWay::Earlier), place > 0),
                    (say!("pieces-later"), PieceEdit::Move(ListWay::Later), place + 1 < count),
                ],
            ] {
                buttons(
                    ui,
                    row.map(|(words, edit, on)| (words, words.to_owned(), edit, on)),
                    actions,
                );
            }
            hide(ui, bench, actions);
            form::heading(ui, say!("pieces-add-a-piece"));
            for row in Starter::ALL.chunks(4) {
                let one = |&starter: &Starter| {
                    let name = terms::add(starter).to_owned();
                    (terms::starter(starter), name, PieceEdit::Add(starter), more)
                };
                buttons(ui, row.iter().map(one), actions);
            }
        });
}

/// Takes the piece off the strip, and the way to all that a piece can begin from.
fn hide(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let size = vec2(ui.available_width(), 28.0);
    let (place, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    let (left, right) = place.split_left_right_at_x(place.center().x);
    let left = left.with_max_x(left.right() - 0.5 * GAP);
    let right = right.with_min_x(right.left() + 0.5 * GAP);
    let id = bench.document.piece_id();
    let pieces = &bench.document.project().pieces;
    let hidden = bench.view.hidden.contains(&id);
    let others = pieces.iter().filter(|p| p.id != id && !bench.view.hidden.contains(&p.id));
    let words = if hidden { say!("pieces-show") } else { say!("pieces-hide") };
    let enabled = hidden || others.clone().next().is_some();
    let button = controls::button(ui, left, ButtonFace::Words(words), words, enabled);
    let hint = say!("pieces-hide-does");
    if button.on_hover_text(hint).clicked() {
        actions.look(Look::Hide(id, !hidden));
        if let Some(next) = others.clone().next().filter(|_| !hidden) {
            actions.look(Look::Piece(next.id));
        }
        ui.close();
    }
    let words = say!("pieces-gallery");
    let face = ButtonFace::Words(words);
    let button = controls::button(ui, right, face, say!("pieces-gallery-name"), true);
    let hint = say!("pieces-gallery-does");
    if button.on_hover_text(hint).clicked() {
        actions.command(Command::New);
        ui.close();
    }
}

/// A row of buttons: their words, names and what they do, and whether they can be pressed.
fn buttons<'a>(
    ui: &mut Ui,
    row: impl IntoIterator<Item = (&'a str, String, PieceEdit, bool)>,
    actions: &mut Actions,
) {
    let row: Vec<_> = row.into_iter().collect();
    let size = vec2(ui.available_width(), 28.0);
    let (place, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    let many = row.len() as f32;
    let each = (size.x - GAP * (many - 1.0)) / many;
    for (i, (words, name, edit, enabled)) in row.into_iter().enumerate() {
        let left = place.left() + i as f32 * (each + GAP);
        let rect = Rect::from_min_size(pos2(left, place.top()), vec2(each, size.y));
        if controls::button(ui, rect, ButtonFace::Words(words), &name, enabled).clicked() {
            // It can be moved on without the card; another piece has a card of its own.
            let closes = !matches!(edit, PieceEdit::Move(_));
            actions.edit(Edit::Piece(edit));
            if closes {
                ui.close();
            }
        }
    }
}

fn list(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    form::heading(ui, say!("pieces-pieces"));
    // Twelve pieces without scrolling, where the window has the room.
    egui::ScrollArea::vertical().max_height(340.0).show(ui, |ui| {
        for piece in &bench.document.project().pieces {
            let on = piece.id == bench.document.piece_id();
            let hidden = bench.view.hidden.contains(&piece.id);
            let words = match hidden {
                true => say!("pieces-hidden", piece = chip_words(piece)),
                false => chip_words(piece),
            };
            let line = ui.selectable_label(on, &words);
            letters::line(&line, &words);
            if line.clicked() && !on {
                actions.look(Look::Piece(piece.id));
                actions.look(Look::Hide(piece.id, false));
                ui.close();
            }
        }
        controls::follow_focus(ui);
    });
}
