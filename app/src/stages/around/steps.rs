//! The list of steps behind the undo button: click one to go back, or forward, to it.

use egui::{Align2, Popup, Rect, Role, ScrollArea, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};

use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::{paint, type_faces};

/// Width of the button.
pub(super) const WIDTH: f32 = 24.0;
/// Height of a line.
const LINE: f32 = 26.0;

/// The button and, while it is open, the list.
pub(super) fn button(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let history = &bench.document.history;
    let any = history.can_undo() || history.can_redo();
    let enabled = any && !history.in_gesture();
    let button =
        controls::button(ui, rect, ButtonFace::Icon(Icon::Down), say!("steps-steps"), enabled);
    Popup::menu(&button).show(|ui| {
        ui.set_width(250.0);
        form::heading(ui, say!("steps-steps"));
        ScrollArea::vertical().max_height(380.0).show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = 0.0;
            list(ui, bench, actions);
            controls::follow_focus(ui);
        });
    });
    button.on_hover_text(if any {
        say!("steps-all-steps-go-back-to-any")
    } else {
        say!("steps-no-steps-yet")
    });
}

/// Newest on top, beads on a thread: dark down to where the project stands now.
fn list(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let history = &bench.document.history;
    let names: Vec<&str> =
        std::iter::once(say!("steps-as-it-was-opened")).chain(history.names()).collect();
    let now = history.undo_steps();
    let last = names.len() - 1;
    for (step, name) in names.into_iter().enumerate().rev() {
        // The oldest steps are forgotten, so the first line may not be the opening.
        let name = if step == 0 && last >= 100 { say!("steps-earlier-steps") } else { name };
        if line(ui, bench, step, name, (now, last)) && step != now {
            actions.push(Action::GoToStep(step));
        }
    }
}

fn line(
    ui: &mut Ui,
    bench: &Bench<'_>,
    step: usize,
    name: &str,
    (now, last): (usize, usize),
) -> bool {
    let t = bench.t;
    let (rect, response) =
        ui.allocate_exact_size(vec2(ui.available_width(), LINE), Sense::click());
    let on = step == now;
    let label = say!("steps-step-step-name", step = step, name = name);
    response.widget_info(|| WidgetInfo::selected(Role::MenuItem, true, on, &label));
    let painter = ui.painter();
    paint::row(painter, rect, &response, false, t);
    let at = rect.left_center() + vec2(12.0, 0.0);
    let thread = |from: f32, to: f32, passed: bool| {
        let pen =
            if passed { Stroke::new(2.0, t.outline) } else { Stroke::new(1.3, t.control_edge) };
        painter.vline(at.x, from..=to, pen);
    };
    if step < last {
        thread(rect.top(), at.y, step < now);
    }
    if step > 0 {
        thread(at.y, rect.bottom(), step <= now);
    }
    if on {
        painter.circle(at, 5.5, t.highlight, Stroke::new(1.5, t.highlight_edge));
    } else {
        painter.circle(at, 4.0, t.panel, Stroke::new(1.5, t.control_edge));
    }
    let ink = if step <= now { t.ink } else { t.soft_ink };
    let font = if on { type_faces::semibold } else { type_faces::regular };
    let words = pos2(at.x + 16.0, at.y);
    let font = font(type_faces::BODY);
    let room = rect.right() - words.x - 50.0;
    paint::clipped_text(painter, words, name, font, ink, room);
    let aside = if on {
        say!("steps-now")
    } else if step > now {
        say!("steps-undone")
    } else {
        ""
    };
    let small = type_faces::regular(type_faces::SMALL);
    let end = rect.right_center() - vec2(6.0, 0.0);
    painter.text(end, Align2::RIGHT_CENTER, aside, small, t.soft_ink);
    response.clicked()
}
