//! One line for the person: what went wrong, which stays until dismissed, or what was done,
//! with a way back where a key did it, which leaves by itself; and what takes so long that it
//! may be stopped.

use egui::{Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};

use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::bench::command::Command;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::{self, Icon};
use crate::kit::type_faces;
use crate::view::look::Look;
use crate::work::lingering::Lingering;

/// Draws the lines across the foot of `over`, if there are any.
pub fn show(ui: &Ui, bench: &Bench<'_>, over: Rect, actions: &mut Actions) {
    let used = told(ui, bench, over, actions);
    if let Some(lingering) = bench.lingering {
        let over = over.with_max_y(used.map_or(over.bottom(), |rect| rect.top() + 6.0));
        under_way(ui, bench, over, lingering, actions);
    }
}

/// Draws what is under way, above what `over` ends at, with the way to stop it.
fn under_way(
    ui: &Ui,
    bench: &Bench<'_>,
    over: Rect,
    lingering: Lingering,
    actions: &mut Actions,
) {
    let t = bench.t;
    let words = format!("{}…", lingering.doing);
    let font = type_faces::regular(type_faces::BODY);
    let galley = ui.painter().layout_no_wrap(words.clone(), font, t.ink);
    let stop = controls::words_width(ui, say!("notice-stop"));
    let size = vec2(galley.size().x + stop + 48.0, 46.0);
    let rect = Rect::from_min_size(
        pos2(over.center().x - 0.5 * size.x, over.bottom() - 16.0 - size.y),
        size,
    );
    let edge = Stroke::new(1.4, t.control_edge);
    ui.painter().rect(rect, 8.0, t.panel, edge, StrokeKind::Inside);
    let at = pos2(rect.left() + 16.0, rect.center().y - 0.5 * galley.size().y);
    let place = Rect::from_min_size(at, galley.size());
    ui.painter().galley(at, galley, t.ink);
    let read = ui.interact(place, ui.scope_id().with("under way"), Sense::hover());
    read.widget_info(|| WidgetInfo::labeled(Role::Label, true, &words));
    let button = Rect::from_min_size(
        pos2(rect.right() - stop - 12.0, rect.center().y - 15.0),
        vec2(stop, 30.0),
    );
    if controls::button(
        ui,
        button,
        ButtonFace::Words(say!("notice-stop")),
        say!("notice-stop"),
        true,
    )
    .clicked()
    {
        actions.push(Action::Stop(lingering.work));
    }
}

/// Draws what is told; returns where.
fn told(ui: &Ui, bench: &Bench<'_>, over: Rect, actions: &mut Actions) -> Option<Rect> {
    let notice = bench.view.notice.as_ref()?;
    let t = bench.t;
    let font = type_faces::regular(type_faces::BODY);
    let most = (over.width() - 140.0).min(760.0);
    let galley = ui.painter().layout(notice.text.clone(), font, t.ink, most);
    let undo = notice.undo && Command::Undo.enabled(bench);
    let room = if undo { controls::words_width(ui, Command::Undo.text()) + 8.0 } else { 0.0 };
    let size = galley.size() + vec2(88.0 + room, 20.0);
    let rect = Rect::from_min_size(
        pos2(over.center().x - 0.5 * size.x, over.bottom() - 16.0 - size.y),
        size,
    );
    let (fill, edge) =
        if notice.wrong { (t.warn_wash, t.warning) } else { (t.panel, t.control_edge) };
    let painter = ui.painter();
    painter.rect(rect, 8.0, fill, Stroke::new(1.4, edge), StrokeKind::Inside);
    let mark = rect.left_center() + vec2(24.0, 0.0);
    if notice.wrong {
        icons::warning(painter, mark, 15.0, t.warning);
    } else {
        icons::check(painter, mark, t.increase);
    }
    painter.galley(rect.left_top() + vec2(44.0, 10.0), galley, t.ink);
    if undo {
        let right = rect.right() - 42.0;
        let place = Rect::from_x_y_ranges(
            right - room + 8.0..=right,
            rect.center().y - 13.0..=rect.center().y + 13.0,
        );
        let face = ButtonFace::Words(Command::Undo.text());
        let name = say!("notice-undo-what", what = notice.text);
        if controls::button(ui, place, face, &name, true).clicked() {
            actions.command(Command::Undo);
            actions.look(Look::Dismiss);
        }
    }
    let close = Rect::from_center_size(rect.right_center() - vec2(22.0, 0.0), vec2(26.0, 26.0));
    if controls::button(ui, close, ButtonFace::Icon(Icon::Close), say!("notice-dismiss"), true)
        .clicked()
    {
        actions.look(Look::Dismiss);
    }
    Some(rect)
}
