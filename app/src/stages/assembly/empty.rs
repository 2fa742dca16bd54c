//! Nothing is put together yet: what can be, and how to begin.

use egui::{Align2, Rect, Role, Sense, Ui, WidgetInfo, pos2, vec2};
use plumpline_core::project::toy::part::Part;

use super::here::ToyBench;
use super::layout::AssemblyLayout;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::toy::ToyEdit;
use crate::kit::tokens::PAD;
use crate::kit::{controls, paint, type_faces};

/// Draws the stage without a toy.
pub(super) fn show(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    layout: &AssemblyLayout,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    let head = |panel: Rect| panel.left_top() + vec2(PAD, 22.0);
    for (panel, title) in [
        (layout.parts, say!("toy-parts")),
        (layout.picture, say!("stage-assembly")),
        (layout.side, say!("toy-selected")),
        (layout.steps, say!("toy-steps")),
        (layout.figures, say!("toy-measurements")),
    ] {
        paint::title(ui.painter(), head(panel), title, "", t);
    }
    for (panel, words) in [
        (layout.parts, say!("toy-no-part-is-in-its-place-yet")),
        (layout.side, say!("toy-where-a-part-sits-and-whether-it-fits")),
        (layout.steps, say!("toy-what-is-done-first-what-next")),
        (layout.figures, say!("toy-what-it-weighs-whether-it-stands")),
    ] {
        let font = type_faces::regular(type_faces::BODY);
        let galley =
            ui.painter().layout(words.into(), font, t.soft_ink, panel.width() - 2.0 * PAD);
        ui.painter().galley(panel.left_top() + vec2(PAD, 50.0), galley, t.soft_ink);
    }
    begin(ui, here, layout.field(), actions);
}

fn begin(ui: &mut Ui, here: &ToyBench<'_>, field: Rect, actions: &mut Actions) {
    let t = here.bench.t;
    let Some(first) = here.project.pieces.first() else { return };
    let others = here.project.pieces.len() - 1;
    let words = match others {
        0 => say!("toy-piece-becomes-the-body-eyes-a-nose-a", piece = first.name),
        1 => say!("toy-piece-becomes-the-body-the-other-piece", piece = first.name),
        n => say!("toy-piece-becomes-the-body-the-other-n", piece = first.name, n = n),
    };
    let width = (field.width() - 48.0).min(380.0);
    let font = type_faces::regular(type_faces::BODY);
    let galley = ui.painter().layout(words.clone(), font, t.soft_ink, width);
    let middle = field.center() - vec2(0.0, 20.0);
    let place = Align2::CENTER_BOTTOM.anchor_size(middle, galley.size());
    let read = ui.interact(place, ui.scope_id().with("how it begins"), Sense::hover());
    read.widget_info(|| WidgetInfo::labeled(Role::Label, true, &words));
    ui.painter().galley(place.min, galley, t.soft_ink);
    let words = say!("toy-put-the-pieces-together");
    let size = vec2(controls::words_width(ui, words) + 18.0, 32.0);
    let button = Rect::from_center_size(pos2(middle.x, middle.y + 36.0), size);
    if controls::primary(ui, button, words, words, true).clicked() {
        let part = Box::new(Part::body(first.id));
        let called = first.name.clone();
        actions.edit(Edit::Toy(ToyEdit::Add { part, called }));
    }
}
