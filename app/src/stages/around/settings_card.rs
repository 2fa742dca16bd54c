//! The settings card: what is settled once for every project.

use egui::{Context, Rect, Ui, pos2, vec2};
use plumpline_core::{Unit, WordingChoice};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::document::edit::Edit;
use crate::fields::form;
use crate::fields::over::{self, Head};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::view::look::Look;
use crate::view::prefs::Prefs;

const HEAD: Head =
    Head { title: "Settings", hint: "for every project on this desk", width: 440.0 };

/// Draws the card over the window.
pub fn show(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    let mut changed = Actions::default();
    let closed = over::show(ctx, HEAD, |_| {}, |ui| body(ui, bench, &mut changed));
    if closed {
        actions.look(Look::Over(None));
    }
    for action in changed.take() {
        actions.push(action);
    }
}

fn body(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let was = bench.view.prefs;
    let mut now = was;
    ui.spacing_mut().item_spacing.y = 2.0;
    form::heading(ui, "Look");
    theme(ui, &mut now);
    text_size(ui, bench, &mut now);
    let why = "Cards, menus and lists come and go at once";
    if let Some(still) = form::tick(ui, "Nothing moves by itself", why, now.still) {
        now.still = still;
    }
    form::heading(ui, "Measures and words");
    unit(ui, &mut now);
    terms(ui, bench, actions);
    form::heading(ui, "Hands");
    let why = "On the right for a left hand, which would else lie over what it works on";
    let rect = form::row(ui, "The board stands", why);
    let side = usize::from(now.mirrored);
    if let Some(i) = form::pick(ui, rect, "The board stands", &["left", "right"], side) {
        now.mirrored = i == 1;
    }
    let why = "Letters, digits and signs are shortcuts by themselves; off, they want Alt";
    if let Some(on) = form::tick(ui, "Single keys", why, now.single_keys) {
        now.single_keys = on;
    }
    ui.add_space(8.0);
    let words = Command::ShowKeys.text();
    let size = vec2(controls::words_width(ui, words), 28.0);
    let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    let keys = controls::button(ui, rect, ButtonFace::Words(words), words, true);
    if keys.on_hover_text(bench.hint(Command::ShowKeys)).clicked() {
        actions.command(Command::ShowKeys);
    }
    if now != was {
        actions.look(Look::Prefs(now));
    }
}

fn theme(ui: &mut Ui, now: &mut Prefs) {
    use egui::ThemePreference::{Dark, Light, System};
    let all = [Light, Dark, System];
    let why = "Drafting paper by day, a cutting mat by night";
    let rect = form::row(ui, "Theme", why);
    let on = all.iter().position(|&t| t == now.theme).unwrap_or(2);
    if let Some(i) = form::pick(ui, rect, "Theme", &["day", "night", "as the desktop"], on) {
        now.theme = all[i];
    }
}

/// Smaller, the size there is (a click brings back the usual one), larger.
fn text_size(ui: &mut Ui, bench: &Bench<'_>, now: &mut Prefs) {
    let rect = form::row(ui, "Text size", "Of words and of all that holds them");
    let y = rect.center().y;
    let place = |right: f32, width: f32| {
        Rect::from_min_size(pos2(right - width, y - 13.0), vec2(width, 26.0))
    };
    let larger = place(rect.right(), 32.0);
    let usual = place(larger.left() - 4.0, 66.0);
    let smaller = place(usual.left() - 4.0, 32.0);
    let percent = format!("{} %", now.text_percent);
    for (command, place, face) in [
        (Command::SmallerText, smaller, ButtonFace::Icon(Icon::Smaller)),
        (Command::UsualText, usual, ButtonFace::Words(&percent)),
        (Command::LargerText, larger, ButtonFace::Icon(Icon::Larger)),
    ] {
        let button = controls::button(ui, place, face, command.text(), command.enabled(bench));
        if button.on_hover_text(bench.hint(command)).clicked() {
            *now = match command {
                Command::SmallerText => now.stepped(-1),
                Command::LargerText => now.stepped(1),
                _ => now.at_usual_size(),
            };
        }
    }
}

fn unit(ui: &mut Ui, now: &mut Prefs) {
    let why = "Of every length on screen; any unit may be typed. Files hold millimetres";
    let rect = form::row(ui, "Lengths", why);
    let on = Unit::ALL.iter().position(|&u| u == now.unit).unwrap_or(0);
    if let Some(i) = form::pick(ui, rect, "Lengths in", &["cm", "mm", "inches"], on) {
        now.unit = Unit::ALL[i];
    }
}

/// Whose terms this project's pattern is written in: a step that undo knows, as on the sheet.
fn terms(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let codes = ["en-us", "en-uk"];
    let wording = &bench.document.project().wording;
    let why = "Of the pattern in hand; other languages and house styles are on the sheet";
    let rect = form::row(ui, "Crochet terms", why);
    let on = codes.iter().position(|&c| c == wording.lexicon).unwrap_or(codes.len());
    if let Some(i) = form::pick(ui, rect, "Crochet terms", &["US", "UK"], on) {
        let choice = WordingChoice { lexicon: codes[i].into(), ..wording.clone() };
        actions.edit(Edit::Wording(choice));
    }
}
