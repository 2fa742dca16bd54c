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
use crate::kit::words::Language;
use crate::view::look::Look;
use crate::view::prefs::Prefs;

fn head() -> Head {
    Head { title: say!("settings-title"), hint: say!("settings-hint"), width: 440.0 }
}

/// Draws the card over the window.
pub fn show(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    let mut changed = Actions::default();
    let closed = over::show(ctx, head(), |_| {}, |ui| body(ui, bench, &mut changed));
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
    form::heading(ui, say!("settings-look"));
    language(ui, &mut now);
    theme(ui, &mut now);
    text_size(ui, bench, &mut now);
    let why = say!("settings-cards-menus-and-lists-come-and-go-at");
    if let Some(still) = form::tick(ui, say!("settings-reduce-motion"), why, now.still) {
        now.still = still;
    }
    form::heading(ui, say!("settings-units-and-terms"));
    unit(ui, &mut now);
    terms(ui, bench, actions);
    form::heading(ui, say!("settings-hands"));
    let why = say!("settings-on-the-right-for-a-left-hand-so-that");
    let rect = form::row(ui, say!("settings-side-of-the-board"), why);
    let side = usize::from(now.mirrored);
    if let Some(i) = form::pick(
        ui,
        rect,
        say!("settings-side-of-the-board"),
        &[say!("settings-left"), say!("settings-right")],
        side,
    ) {
        now.mirrored = i == 1;
    }
    let why = say!("settings-letters-digits-and-signs-are-shortcuts");
    if let Some(on) = form::tick(ui, say!("settings-single-keys"), why, now.single_keys) {
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

/// Each under the name that its own speakers read.
fn language(ui: &mut Ui, now: &mut Prefs) {
    let rect = form::row(ui, say!("settings-language"), say!("settings-language-why"));
    let on = Language::ALL.iter().position(|&l| l == now.language).unwrap_or(0);
    let words = Language::ALL.map(Language::own_name);
    if let Some(i) = form::pick(ui, rect, say!("settings-language"), &words, on) {
        now.language = Language::ALL[i];
    }
}

fn theme(ui: &mut Ui, now: &mut Prefs) {
    use egui::ThemePreference::{Dark, Light, System};
    let all = [Light, Dark, System];
    let why = say!("settings-light-like-drafting-paper-dark-like-a");
    let rect = form::row(ui, say!("settings-theme"), why);
    let on = all.iter().position(|&t| t == now.theme).unwrap_or(2);
    if let Some(i) = form::pick(
        ui,
        rect,
        say!("settings-theme"),
        &[say!("settings-light"), say!("settings-dark"), say!("settings-as-the-system")],
        on,
    ) {
        now.theme = all[i];
    }
}

/// Smaller, the size there is (a click brings back the usual one), larger.
fn text_size(ui: &mut Ui, bench: &Bench<'_>, now: &mut Prefs) {
    let rect =
        form::row(ui, say!("settings-text-size"), say!("settings-of-everything-on-screen"));
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
    let why = say!("settings-of-every-length-on-screen-you-can-type");
    let rect = form::row(ui, say!("settings-lengths"), why);
    let on = Unit::ALL.iter().position(|&u| u == now.unit).unwrap_or(0);
    if let Some(i) = form::pick(
        ui,
        rect,
        say!("settings-lengths-in"),
        &[say!("settings-cm"), say!("settings-mm"), say!("settings-inches")],
        on,
    ) {
        now.unit = Unit::ALL[i];
    }
}

/// Whose terms this project's pattern is written in: a step that undo knows, as on the sheet.
fn terms(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let codes = ["en-us", "en-uk"];
    let wording = &bench.document.project().wording;
    let why = say!("settings-of-this-pattern-other-languages-and");
    let rect = form::row(ui, say!("settings-crochet-terms"), why);
    let on = codes.iter().position(|&c| c == wording.lexicon).unwrap_or(codes.len());
    if let Some(i) = form::pick(
        ui,
        rect,
        say!("settings-crochet-terms"),
        &[say!("settings-us"), say!("settings-uk")],
        on,
    ) {
        let choice = WordingChoice { lexicon: codes[i].into(), ..wording.clone() };
        actions.edit(Edit::Wording(choice));
    }
}
