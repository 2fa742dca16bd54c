//! A number on the board that a click turns into a field. Enter takes what is typed, Esc
//! leaves it.

use egui::{
    CursorIcon, Painter, Pos2, Rect, Role, Sense, TextEdit, Ui, Vec2, WidgetInfo, vec2,
};

use super::ground::{self, Ground};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::measure::BoardDimension;
use crate::kit::{paint, type_faces};
use crate::view::Typing;
use crate::view::look::Look;

/// A number that can be typed over.
pub(super) struct TypedNumber<'a> {
    /// What it measures.
    pub(super) dimension: BoardDimension,
    /// Its name: `Height`, `Knot 3 radius`.
    pub(super) name: &'a str,
    /// The number as it is shown, its unit last.
    pub(super) text: &'a str,
    /// Where it stands.
    pub(super) at: Pos2,
    /// The space it can be hit in.
    pub(super) size: Vec2,
    /// What it tells, for the tooltip.
    pub(super) hint: &'a str,
}

/// Shows the field while the number is being typed, else what `draw` draws (told whether the
/// hand is on it).
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    entry: &TypedNumber<'_>,
    actions: &mut Actions,
    draw: impl FnOnce(&Painter, bool) -> Rect,
) {
    if let Some(typing) = &bench.view.typing
        && typing.dimension == entry.dimension
    {
        return field(ui, bench, ground, entry, typing, actions);
    }
    let painter = ui.painter_at(ground.rect);
    let hit = Rect::from_center_size(entry.at, entry.size);
    let response = ui.interact(hit, ui.scope_id().with(entry.name), Sense::click());
    let label = format!("{} {}", entry.name, entry.text);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &label));
    let rect = draw(&painter, response.hovered());
    if response.has_focus() {
        paint::focus_ring(&painter, rect.expand(2.0), 4.0, bench.t);
    }
    let response =
        response.on_hover_cursor(CursorIcon::Text).on_hover_text(entry.hint.to_owned());
    if response.clicked() {
        // Of an oval's two numbers the width is the one that is typed.
        let text = entry.text.split(' ').next().unwrap_or_default().to_owned();
        let dimension = entry.dimension;
        let was = text.clone();
        actions.look(Look::Type(Some(Typing {
            dimension,
            text,
            was,
            unit: bench.unit().unit,
            fresh: true,
        })));
    }
}

fn field(
    ui: &mut Ui,
    bench: &Bench<'_>,
    ground: &Ground,
    entry: &TypedNumber<'_>,
    typing: &Typing,
    actions: &mut Actions,
) {
    let size = vec2(92.0, 28.0);
    let room = ground.rect.shrink2(vec2(0.5 * size.x + 4.0, 0.5 * size.y + 4.0));
    let at = ground::kept(room, entry.at);
    let rect = Rect::from_center_size(at, size);
    let painter = ui.painter_at(ground.rect);
    painter.rect_filled(rect.expand(3.0), 6.0, bench.t.panel);
    let mut text = typing.text.clone();
    let edit = TextEdit::singleline(&mut text)
        .font(type_faces::semibold(type_faces::BODY))
        .align(egui::Align2::CENTER_CENTER);
    let output = ui.put(rect, edit);
    let name = say!("board-new-value", what = entry.name);
    output.widget_info(|| WidgetInfo::labeled(Role::TextInput, true, &name));
    if typing.fresh {
        output.request_focus();
        select_all(ui, output.id, &text);
    }
    if output.lost_focus() {
        actions.look(Look::Type(None));
        if !ui.input(|i| i.key_pressed(egui::Key::Escape)) {
            take(bench, &Typing { text, ..typing.clone() }, actions);
        }
    } else if output.changed() || typing.fresh {
        let typing = Typing { text, fresh: false, ..typing.clone() };
        actions.look(Look::Type(Some(typing)));
    }
}

/// Takes what was typed.
fn take(bench: &Bench<'_>, typing: &Typing, actions: &mut Actions) {
    let mm = match typing.entered() {
        Some(Ok(mm)) => mm,
        Some(Err(error)) => return actions.look(Look::Warn(format!("{error}."))),
        None => return,
    };
    let dimension = typing.dimension;
    if dimension != BoardDimension::Ruler {
        return actions.edit(Edit::Resize(dimension, mm));
    }
    let picture = bench.document.piece().picture.as_ref();
    let Some((picture, aspect)) = picture.zip(bench.picture.aspect()) else { return };
    match picture.with_ruler(mm, aspect) {
        Some(scaled) => actions.edit(Edit::Picture(Some(scaled))),
        None => {
            actions.look(Look::Warn(say!("board-the-known-length-has-no-size-pull-its").into()))
        }
    }
}

fn select_all(ui: &Ui, id: egui::Id, text: &str) {
    use egui::text::{CCursor, CCursorRange};
    let mut state = egui::text_edit::TextEditState::load(ui.ctx(), id).unwrap_or_default();
    let end = CCursor::new(text.chars().count());
    let range = CCursorRange::two(CCursor::new(0), end);
    state.cursor.set_char_range(Some(range));
    state.store(ui.ctx(), id);
}
