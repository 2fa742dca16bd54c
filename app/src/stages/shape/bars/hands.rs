//! The hand on the bars: rounds pointed at and taken, ends of bars dragged.

use egui::{Rect, Role, ScrollArea, Sense, Ui, UiBuilder, WidgetInfo, pos2, vec2};
use plumpline_core::{Plan, Yarn};

use super::round_card;
use super::rows::{Rows, marks_width};
use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::bench::command::Command;
use crate::document::edit::Edit;
use crate::fields::yarn_card;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::paint;
use crate::kit::tokens::HIT;
use crate::view::ids;
use crate::view::look::Look;

/// Height of the heading over the rows.
pub(super) const HEADING: f32 = 44.0;

/// What the hand is on.
#[derive(Debug, Clone)]
pub struct BarsHand {
    /// Where the rows are.
    pub rows: Rows,
    /// The round pointed at.
    pub round: Option<u32>,
    /// The round whose bar's end is pointed at.
    pub end: Option<u32>,
    /// Whether the bars have the keyboard.
    pub focused: bool,
}

/// Reads the hand. `None` where there is nothing to show.
pub fn hands(
    ui: &mut Ui,
    bench: &Bench<'_>,
    rect: Rect,
    actions: &mut Actions,
) -> Option<BarsHand> {
    let plan = bench.plan?;
    let view = Rect::from_min_max(pos2(rect.left(), rect.top() + HEADING), rect.max);
    let frozen = bench.view.dragged_bar.map(|(_, stitch)| stitch);
    let still = Rows::new(view, plan, frozen, ui.ctx().zoom_factor(), marks_width(bench, plan));
    let mut round = None;
    let mut end = None;
    let mut focused = false;
    let mut child = ui.new_child(UiBuilder::new().max_rect(view).id_salt("bars"));
    controls::scroll_colours(&mut child);
    let area =
        ScrollArea::vertical().auto_shrink(false).show_viewport(&mut child, |ui, seen| {
            ui.set_height(still.height());
            let rows = still.clone().scrolled(seen.top());
            let ground = ui.interact(view, ids::bars_id(), Sense::click());
            ground.widget_info(|| {
                WidgetInfo::labeled(Role::Canvas, true, say!("bars-round-bars"))
            });
            ids::keep_rounds(ui, &ground);
            focused = ground.has_focus();
            if ground.clicked() {
                ground.request_focus();
                actions.look(Look::Select(None));
            }
            for number in rows.in_sight() {
                let (on_row, on_end) = row(ui, bench, plan, &rows, number, &ground, actions);
                round = if on_row { Some(number) } else { round };
                end = if on_end { Some(number) } else { end };
            }
            if let Some(number) = bench.view.show_round {
                let margin = rows.row(number).expand2(vec2(0.0, rows.pitch));
                ui.scroll_to_rect_animation(margin, None, egui::style::ScrollAnimation::none());
            }
        });
    let rows = still.scrolled(area.state.clamped_offset().y);
    round = round.or(end);
    if bench.view.dragged_bar.is_some() {
        round = None;
    }
    round_buttons(ui, bench, rect, actions);
    Some(BarsHand { rows, round, end, focused })
}

/// One row: returns whether the hand is on it, and whether on its bar's end.
fn row(
    ui: &Ui,
    bench: &Bench<'_>,
    plan: &Plan,
    rows: &Rows,
    number: u32,
    ground: &egui::Response,
    actions: &mut Actions,
) -> (bool, bool) {
    let Some(round) = plan.rounds.get(number as usize - 1) else { return (false, false) };
    let id = ids::bars_id().with(("round", number));
    let on_row = ui.interact(rows.row(number), id, Sense::CLICK);
    on_row.widget_info(|| {
        let words = bench.text_of(number);
        // What a bead, a pin and a box say to the eye.
        let yarn = Yarn::letter(bench.document.piece().yarn_of_round(number));
        let text = match bench.pin_of(number) {
            Some(_) => say!(
                "bars-round-pinned",
                round = number,
                words = words,
                count = round.count,
                yarn = yarn,
            ),
            None => {
                say!(
                    "bars-round",
                    round = number,
                    words = words,
                    count = round.count,
                    yarn = yarn
                )
            }
        };
        WidgetInfo::labeled(Role::Row, true, text)
    });
    let words = bench.text_of(number);
    let on_row = if on_row.hovered() && super::is_cut(ui.painter(), rows, words) {
        on_row.on_hover_text(words)
    } else {
        on_row
    };
    let bar = rows.bar(number, round.count);
    let grip = Rect::from_x_y_ranges(
        bar.right() - 7.0..=bar.right() - 7.0 + HIT,
        rows.row(number).y_range(),
    );
    let end = ui.interact(grip, id.with("end"), Sense::CLICK | Sense::DRAG);
    end.widget_info(|| {
        WidgetInfo::labeled(
            Role::Slider,
            true,
            say!("bars-end-of-round-number", number = number),
        )
    });
    if end.hovered() || end.dragged() {
        ui.set_cursor_icon(egui::CursorIcon::ResizeHorizontal);
    }
    drag_end(ui, bench, rows, number, round.count, &end, actions);
    // A click on the end is one on the row.
    let whole = on_row.clone() | end.clone();
    if whole.clicked() {
        ground.request_focus();
        let again = bench.view.selected == Some(number);
        actions.look(Look::Select((!again).then_some(number)));
    }
    if whole.secondary_clicked() {
        actions.look(Look::Select(Some(number)));
    }
    round_card::on_row(ui, &whole, bench, number, actions);
    (on_row.hovered(), end.hovered() || end.dragged())
}

/// Bars are centred, so both ends move: an end drawn out by half a stitch is a stitch more.
fn drag_end(
    ui: &Ui,
    bench: &Bench<'_>,
    rows: &Rows,
    number: u32,
    count: u32,
    end: &egui::Response,
    actions: &mut Actions,
) {
    if end.drag_started_by(egui::PointerButton::Primary) {
        let was_pinned = bench.pin_of(number).is_some();
        ui.data_mut(|d| d.insert_temp(end.id, (count, was_pinned)));
        actions.push(Action::Begin);
        actions.look(Look::Select(Some(number)));
        actions.look(Look::DragBar(Some((number, rows.stitch))));
    }
    let from: Option<(u32, bool)> = ui.data(|d| d.get_temp(end.id));
    let ours = end.dragged_by(egui::PointerButton::Primary);
    if let (true, Some((from, was_pinned)), Some(moved)) = (ours, from, end.total_drag_delta())
    {
        let more = (2.0 * moved.x / rows.stitch).round() as i64;
        let wanted = (i64::from(from) + more).max(3) as u32;
        let held = bench.pin_of(number);
        // A press that has not moved yet pins nothing, nor does one that is back where it began.
        if wanted == from && !was_pinned {
            if held.is_some() {
                actions.edit(Edit::Unpin(number));
            }
        } else if wanted != held.unwrap_or(from) {
            actions.edit(Edit::Pin { round: number, count: wanted });
        }
    }
    if end.drag_stopped() && bench.view.dragged_bar.is_some_and(|(r, _)| r == number) {
        actions.push(Action::Commit);
        actions.look(Look::DragBar(None));
    }
}

/// Width of a button over the counts, and from one to the next.
const BUTTON: f32 = 28.0;
const STEP: f32 = 34.0;

/// Where the buttons over the counts begin.
pub(super) fn buttons_left(bench: &Bench<'_>, rect: Rect) -> f32 {
    let count = if bench.view.selected.is_some() { 7.0 } else { 2.0 };
    rect.right() - 12.0 - STEP * count
}

/// To the round before and after, and what can be done with the selected round, as buttons
/// over the counts.
fn round_buttons(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let mut right = rect.right() - 12.0;
    let mut spot = || {
        let min = pos2(right - BUTTON, rect.top() + 8.0);
        right -= STEP;
        Rect::from_min_size(min, vec2(BUTTON, 26.0))
    };
    let mut of_command = |place: Rect, command: Command, icon: Icon, on: Option<bool>| {
        let (face, enabled) = (ButtonFace::Icon(icon), command.enabled(bench));
        let button = controls::toggle(ui, place, face, command.text(), enabled, on);
        if button.on_hover_text(bench.hint(command)).clicked() {
            actions.command(command);
        }
    };
    if let Some(round) = bench.view.selected {
        let pinned = bench.pin_of(round).is_some();
        of_command(spot(), Command::MoreStitches, Icon::More, None);
        of_command(spot(), Command::FewerStitches, Icon::Less, None);
        of_command(spot(), Command::TogglePin, Icon::Pin, Some(pinned));
    }
    let for_round = bench.view.selected.map(|round| (round, spot(), spot()));
    of_command(spot(), Command::NextRound, Icon::Down, None);
    of_command(spot(), Command::PreviousRound, Icon::Up, None);
    let Some((round, yarn_place, more_place)) = for_round else { return };
    let button =
        controls::button(ui, yarn_place, ButtonFace::Words(""), say!("bars-change-yarn"), true);
    let yarn = bench.document.piece().yarn_of_round(round);
    let letter = Yarn::letter(yarn);
    paint::bead(ui.painter(), yarn_place.center(), &letter, bench.yarn_of(yarn), bench.t);
    yarn_card::choose(&button, bench, round, actions);
    button.on_hover_text(say!("bars-change-yarn-from-this-round-on"));
    let name = say!("bars-choices-for-this-round");
    let button = controls::button(ui, more_place, ButtonFace::Icon(Icon::Row), name, true);
    round_card::below(ui, &button, bench, round, actions);
    button.on_hover_text(say!("bars-stitch-loop-shaping-and-yarn-from-this"));
}
