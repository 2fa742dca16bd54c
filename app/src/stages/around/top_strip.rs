//! The top strip: the mark, the project and how it is saved, undo, files, the stages.

use egui::{Align2, Popup, Rect, Role, Sense, Stroke, TextEdit, Ui, WidgetInfo, pos2, vec2};

use super::{pieces, recent, steps};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::document::edit::Edit;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::{self, Icon};
use crate::kit::tokens::PAD;
use crate::kit::{Tokens, letters, paint, type_faces};
use crate::view::Stage;

/// Smallest words of the stages, points.
const SMALLEST: f32 = 9.0;
/// Height of a button on the strip.
const BUTTON: f32 = 30.0;

/// Draws the strip.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, strip: Rect, actions: &mut Actions) {
    mark(ui, bench, strip);
    let mut x = title(ui, bench, strip, actions);
    x = files(ui, bench, strip, x + 16.0, actions);
    // The stages keep their places, however many pieces there are.
    let end = strip.right() - RIGHT - APART;
    let step = stage_step(strip);
    let start = end - step * beads();
    pieces::show(ui, bench, strip, (x + 12.0, start - APART), actions);
    stages(ui, bench, strip, (start, step), actions);
    right_buttons(ui, bench, strip, actions);
}

/// Between the stages and what is beside them.
const APART: f32 = 22.0;
/// Room the buttons at the right take.
const RIGHT: f32 = 4.0 * BUTTON + 40.0 + steps::WIDTH;

/// The stages, in steps from bead to bead.
fn beads() -> f32 {
    Stage::ALL.len() as f32 + 0.2
}

/// From bead to bead: as far as the strip allows, pieces beside them.
fn stage_step(strip: Rect) -> f32 {
    (0.1 * (strip.width() - 600.0)).clamp(56.0, 104.0)
}

fn mark(ui: &Ui, bench: &Bench<'_>, strip: Rect) {
    let at = pos2(strip.left() + 30.0, strip.center().y - 0.5);
    let first = bench.yarn_of(bench.document.piece().yarn_of_round(1));
    let edge = bench.t.yarn_edge(first);
    icons::bob(ui.painter(), at, strip.top(), Tokens::yarn(first), edge);
}

/// The project's name, typed in place, over how it is saved.
fn title(ui: &mut Ui, bench: &Bench<'_>, strip: Rect, actions: &mut Actions) -> f32 {
    let t = bench.t;
    let width = match strip.width() {
        ..1000.0 => 112.0,
        ..1200.0 => 150.0,
        ..1700.0 => 190.0,
        _ => 300.0,
    };
    let field =
        Rect::from_min_size(pos2(strip.left() + 50.0, strip.top() + 8.0), vec2(width, 25.0));
    let mut text = bench.document.project().title.clone();
    let id = egui::Id::unique("project name");
    let font = type_faces::bold(type_faces::TITLE);
    // At rest a name that is too long ends in dots, not in half a letter.
    let typed = ui.memory(|m| m.has_focus(id));
    let long = ui.painter().layout_no_wrap(text.clone(), font.clone(), t.ink).size().x;
    let told = !typed && long > width - 8.0;
    let edit = TextEdit::singleline(&mut text)
        .id(id)
        .font(font.clone())
        .text_color_opt(told.then_some(egui::Color32::TRANSPARENT))
        .frame(egui::Frame::NONE)
        .margin(egui::Margin::symmetric(4, 2))
        .desired_width(width)
        .char_limit(plumpline_core::LONGEST_NAME)
        .clip_text(true);
    let hint = if told { bench.document.project().title.as_str() } else { "" };
    let hint = [hint, say!("top-name-of-the-project-click-to-type")];
    let hint: Vec<&str> = hint.into_iter().filter(|line| !line.is_empty()).collect();
    let response = ui.put(field, edit).on_hover_text(hint.join("\n"));
    if told {
        let at = field.left_center() + vec2(4.0, 0.0);
        paint::clipped_text(ui.painter(), at, &text, font, t.ink, width - 8.0);
    }
    response
        .widget_info(|| WidgetInfo::labeled(Role::TextInput, true, say!("top-project-name")));
    if response.changed() {
        actions.edit(Edit::Title(text));
    }
    if response.has_focus() {
        paint::focus_ring(ui.painter(), field, 4.0, t);
    } else if response.hovered() {
        let line = Stroke::new(1.0, t.control_edge);
        ui.painter().hline(field.x_range().shrink(4.0), field.bottom(), line);
    }
    let below = pos2(field.left(), field.bottom() + 8.0);
    let state = saved_state(bench);
    let (place, _) = paint::clipped_text(
        ui.painter(),
        below,
        &state,
        type_faces::regular(type_faces::SMALL),
        t.soft_ink,
        width,
    );
    let read = ui.interact(place, ui.scope_id().with("how it is saved"), Sense::hover());
    read.widget_info(|| WidgetInfo::labeled(Role::Label, true, &state));
    field.right()
}

fn saved_state(bench: &Bench<'_>) -> String {
    let name = bench
        .document
        .path()
        .and_then(|p| p.file_name())
        .map(|n| n.to_string_lossy().into_owned());
    // A step of the making is saved by itself, sooner than anyone could read that it is not.
    let by_itself = || {
        let making = bench.view.stage == Stage::Make && bench.making.keeps();
        making && bench.document.path().is_some() && bench.document.only_making_changed()
    };
    match (name, bench.document.is_changed() && !by_itself()) {
        (Some(name), true) => say!("top-changes-not-saved-name", name = name),
        (Some(name), false) => say!("top-saved-name", name = name),
        (None, true) => say!("top-changes-not-saved").into(),
        (None, false) => say!("top-not-saved-yet").into(),
    }
}

fn slot(strip: Rect, left: f32, width: f32) -> Rect {
    Rect::from_min_size(pos2(left, strip.center().y - 0.5 * BUTTON), vec2(width, BUTTON))
}

/// The file menu; returns its right end.
fn files(ui: &Ui, bench: &Bench<'_>, strip: Rect, left: f32, actions: &mut Actions) -> f32 {
    let width = controls::words_width(ui, say!("top-file")) + 12.0;
    let rect = slot(strip, left, width);
    let button = controls::button(
        ui,
        rect,
        ButtonFace::WordsThen(say!("top-file"), Icon::Down),
        say!("top-file"),
        true,
    );
    Popup::menu(&button).show(|ui| {
        ui.set_width(if bench.desk.recent.is_empty() { 190.0 } else { 270.0 });
        for command in [Command::New, Command::Open, Command::Save, Command::SaveAs] {
            let item = egui::Button::new(command.text())
                .shortcut_text(bench.key_text(command).unwrap_or_default())
                .frame_when_inactive(false);
            let item = ui.add_enabled(command.enabled(bench), item);
            letters::line(&item, command.text());
            if item.on_hover_text(command.tooltip()).clicked() {
                actions.command(command);
            }
        }
        recent::menu(ui, bench, actions);
        ui.separator();
        let keys = Command::ShowKeys;
        let item = egui::Button::new(keys.text())
            .shortcut_text(bench.key_text(keys).unwrap_or_default())
            .frame_when_inactive(false);
        let item = ui.add(item);
        letters::line(&item, keys.text());
        if item.on_hover_text(keys.tooltip()).clicked() {
            actions.command(keys);
        }
    });
    rect.right()
}

/// Undo, redo, the theme and the settings, from the right.
fn right_buttons(ui: &Ui, bench: &Bench<'_>, strip: Rect, actions: &mut Actions) {
    let theme = if bench.t.dark { Icon::Sun } else { Icon::Moon };
    let list = [
        (Command::ShowSettings, Icon::Settings, 4.0),
        (Command::ToggleTheme, theme, 12.0),
        (Command::Redo, Icon::Redo, 4.0),
        (Command::Undo, Icon::Undo, 0.0),
    ];
    let mut right = strip.right() - PAD + 4.0;
    for (command, icon, gap) in list {
        let rect = slot(strip, right - BUTTON, BUTTON);
        let enabled = command.enabled(bench);
        let button =
            controls::button(ui, rect, ButtonFace::Icon(icon), command.text(), enabled);
        if button.on_hover_text(bench.hint(command)).clicked() {
            actions.command(command);
        }
        right = rect.left() - gap;
    }
    steps::button(ui, bench, slot(strip, right - 4.0 - steps::WIDTH, steps::WIDTH), actions);
}

/// The stages, beads on a thread: dark up to the one that is shown.
fn stages(
    ui: &Ui,
    bench: &Bench<'_>,
    strip: Rect,
    (start, step): (f32, f32),
    actions: &mut Actions,
) {
    let t = bench.t;
    let width = step * beads();
    let y = strip.top() + 41.0;
    let bead = |i: usize| pos2(start + step * (i as f32 + 0.6), y);
    let now = Stage::ALL.iter().position(|&s| s == bench.view.stage).unwrap_or(0);
    let painter = ui.painter();
    painter.hline(start..=start + width, y, Stroke::new(1.3, t.control_edge));
    painter.hline(start..=bead(now).x, y, Stroke::new(2.0, t.outline));
    // Where beads stand close, their words are smaller rather than cut.
    let wide = |stage: Stage| {
        let font = type_faces::drafting(type_faces::TITLE);
        painter.layout_no_wrap(stage.text().to_owned(), font, t.ink).size().x
    };
    let widest = Stage::ALL.map(wide).into_iter().fold(1.0, f32::max);
    let size = (type_faces::TITLE * 0.86 * step / widest).clamp(SMALLEST, type_faces::TITLE);
    for (i, stage) in Stage::ALL.into_iter().enumerate() {
        let at = bead(i);
        let rect = Rect::from_min_max(
            pos2(at.x - 0.45 * step, strip.top() + 8.0),
            pos2(at.x + 0.45 * step, strip.bottom() - 4.0),
        );
        let response = ui.interact(rect, ui.scope_id().with(("stage", i)), Sense::click());
        let on = i == now;
        response.widget_info(|| WidgetInfo::selected(Role::Tab, true, on, stage.text()));
        let command = match stage {
            Stage::Shape => Command::ShowShape,
            Stage::Assembly => Command::ShowAssembly,
            Stage::Sizes => Command::ShowSizes,
            Stage::Sheet => Command::ShowSheet,
            Stage::Lesson => Command::ShowLesson,
            Stage::Proofread => Command::ShowProofread,
            Stage::Make => Command::ShowMake,
        };
        let ink = if on || response.hovered() { t.ink } else { t.soft_ink };
        let font = type_faces::drafting(size);
        let word = pos2(at.x, strip.top() + 22.0);
        let word = painter.text(word, Align2::CENTER_CENTER, stage.text(), font, ink);
        let found = bench.proofreading.checked().is_some_and(|c| !c.findings.is_empty());
        if stage == Stage::Proofread && found {
            // Before the next word where that is near.
            let (off, sign) = if step < 86.0 { (8.0, 10.0) } else { (14.0, 13.0) };
            let at = word.right_center() + vec2(off, -1.0);
            icons::warning(painter, at, sign, t.warning);
        }
        if on {
            painter.circle(at, 6.5, t.highlight, Stroke::new(1.6, t.highlight_edge));
        } else {
            let radius = if response.hovered() { 5.5 } else { 4.5 };
            painter.circle(at, radius, t.background, Stroke::new(1.5, t.control_edge));
        }
        if response.has_focus() {
            paint::focus_ring(painter, rect.shrink(4.0), 6.0, t);
        }
        if response.on_hover_text(bench.hint(command)).clicked() {
            actions.command(command);
        }
    }
}
