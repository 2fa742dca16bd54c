//! The steps on their thread, with the piece itself after them; what hides numbers, fills the
//! window and prints.

use egui::{Align2, Popup, Rect, Role, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};

use super::here::LessonBench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::tokens::PAD;
use crate::kit::{letters, paint, type_faces};
use crate::view::lesson::LessonView;

/// Height of a button.
const BUTTON: f32 = 34.0;

/// Draws the steps in `panel`.
pub(super) fn show(
    ui: &Ui,
    here: &LessonBench<'_>,
    panel: Rect,
    next: &mut LessonView,
    actions: &mut Actions,
) {
    let y = panel.center().y - 0.5 * BUTTON;
    let mut left = panel.left() + PAD;
    for (command, words) in
        [(Command::LessonBack, say!("making-back")), (Command::LessonNext, say!("lesson-next"))]
    {
        let rect = Rect::from_min_size(pos2(left, y), vec2(74.0, BUTTON));
        let enabled = command.enabled(here.bench);
        let button = if command == Command::LessonNext && here.is_open() {
            controls::primary(ui, rect, words, command.text(), enabled)
        } else {
            controls::button(ui, rect, ButtonFace::Words(words), command.text(), enabled)
        };
        if button.on_hover_text(here.bench.hint(command)).clicked() {
            actions.command(command);
        }
        left = rect.right() + 8.0;
    }
    let right = buttons(ui, here, panel, y, actions);
    thread(ui, here, panel, (left + 18.0, right - 18.0), next);
}

/// The buttons at the right; returns where they begin.
fn buttons(ui: &Ui, here: &LessonBench<'_>, panel: Rect, y: f32, actions: &mut Actions) -> f32 {
    let mut right = panel.right() - PAD;
    let wide = controls::words_width(ui, say!("lesson-print")) + 14.0;
    let rect = Rect::from_min_size(pos2(right - wide, y), vec2(wide, BUTTON));
    let face = ButtonFace::WordsThen(say!("lesson-print"), Icon::Up);
    let button =
        controls::button(ui, rect, face, say!("lesson-print-or-save-the-lesson"), true);
    Popup::menu(&button).show(|ui| {
        ui.set_width(250.0);
        let list = [
            Command::PrintStep,
            Command::PrintLesson,
            Command::LessonProject,
            Command::SaveCourse,
            Command::OpenCourse,
        ];
        for command in list {
            let item = egui::Button::new(command.text()).frame_when_inactive(false);
            let item = ui.add_enabled(command.enabled(here.bench), item);
            letters::line(&item, command.text());
            if item.on_hover_text(command.tooltip()).clicked() {
                actions.command(command);
            }
        }
    });
    right = rect.left() - 8.0;
    let toggles = [
        (Command::Present, say!("command-present"), here.view.presents),
        (Command::HideNumbers, say!("command-hide-numbers"), here.view.hides_numbers),
    ];
    for (command, words, on) in toggles {
        let wide = controls::words_width(ui, words);
        let rect = Rect::from_min_size(pos2(right - wide, y), vec2(wide, BUTTON));
        let face = ButtonFace::Words(words);
        let button = controls::toggle(ui, rect, face, command.text(), true, Some(on));
        if button.on_hover_text(here.bench.hint(command)).clicked() {
            actions.command(command);
        }
        right = rect.left() - 8.0;
    }
    if here.bench.lesson.state().is_some_and(|state| !state.rests && !state.held) {
        let words =
            if here.view.stopped { say!("lesson-continue") } else { say!("notice-stop") };
        let wide = controls::words_width(ui, words);
        let rect = Rect::from_min_size(pos2(right - wide, y), vec2(wide, BUTTON));
        let command = Command::LessonStop;
        let face = ButtonFace::Words(words);
        if controls::button(ui, rect, face, command.text(), true)
            .on_hover_text(here.bench.hint(command))
            .clicked()
        {
            actions.command(command);
        }
        right = rect.left() - 8.0;
    }
    right
}

/// The thread with its steps, as many words under it as there is room for.
fn thread(
    ui: &Ui,
    here: &LessonBench<'_>,
    panel: Rect,
    (left, right): (f32, f32),
    next: &mut LessonView,
) {
    let t = here.bench.t;
    let steps = here.course.steps.len();
    let pitch = (right - left) / (steps + 1) as f32;
    if pitch < 14.0 {
        return;
    }
    let at = |i: usize| pos2(left + (i as f32 + 0.5) * pitch, panel.top() + 22.0);
    let painter = ui.painter();
    let (first, last) = (at(0), at(steps));
    painter.line_segment([first, last], Stroke::new(1.3, t.control_edge));
    painter.line_segment([first, at(here.view.step.min(steps))], Stroke::new(2.0, t.outline));
    for i in 0..=steps {
        let name = here
            .course
            .steps
            .get(i)
            .map_or(say!("lesson-your-piece"), |step| step.name.as_str());
        let rect = Rect::from_center_size(
            pos2(at(i).x, panel.center().y),
            vec2(pitch - 2.0, panel.height() - 12.0),
        );
        let response =
            ui.interact(rect, ui.scope_id().with(("lesson step", i)), Sense::click());
        let on = i == here.view.step;
        let said = here.view.said.contains_key(&i);
        let read = match (i < steps, said) {
            (true, true) => say!("lesson-step-step-name-predicted", step = i + 1, name = name),
            (true, false) => say!("lesson-step-step-name", step = i + 1, name = name),
            (false, _) => name.to_owned(),
        };
        response.widget_info(|| WidgetInfo::selected(Role::Tab, true, on, &read));
        let (radius, fill, edge) = match (on, said) {
            (true, _) => (7.0, t.highlight, Stroke::new(1.6, t.highlight_edge)),
            (false, true) => (5.0, t.outline, Stroke::new(1.5, t.outline)),
            (false, false) => (5.0, t.panel, Stroke::new(1.5, t.control_edge)),
        };
        painter.circle(at(i), radius, fill, edge);
        let ink = if on || response.hovered() { t.ink } else { t.soft_ink };
        let font = if on {
            type_faces::bold(type_faces::SMALL)
        } else {
            type_faces::regular(type_faces::SMALL)
        };
        let number = if i < steps { (i + 1).to_string() } else { String::new() };
        let below = at(i) + vec2(0.0, 17.0);
        painter.text(below, Align2::CENTER_CENTER, number, font.clone(), ink);
        let galley = painter.layout(name.to_owned(), font, ink, pitch - 4.0);
        let broken = galley.rows.len() > 2 || galley.size().x > pitch;
        if !broken {
            let top = if i < steps { 25.0 } else { 10.0 };
            let at = at(i) + vec2(-0.5 * galley.size().x, top);
            painter.galley(at, galley, ink);
        }
        if response.has_focus() {
            paint::focus_ring(painter, rect.shrink(2.0), 6.0, t);
        }
        if response.on_hover_text(name).clicked() {
            next.go_to(i, steps);
        }
    }
}
