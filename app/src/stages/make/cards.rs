//! A card for every copy of every piece at the size under the hook: how far each is, and which
//! one is under the hook.

use egui::{
    Rect, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, UiBuilder, WidgetInfo, vec2,
};
use plumpline_core::making::{Stand, Stop};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::{Command, MakeCommand};
use crate::kit::tokens::CARD_RADIUS;
use crate::kit::{icons, paint, type_faces};
use crate::work::making::{Make, PieceCopy, copy_name};

/// Width of a card.
const WIDTH: f32 = 148.0;
/// Height of a card.
const HEIGHT: f32 = 46.0;
/// Between cards.
const GAP: f32 = 8.0;

/// Draws the cards from the left of `rect`.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let copies = || {
        let pieces =
            bench.document.project().pieces.iter().map(|piece| (piece.id, piece.copies));
        pieces.flat_map(|(piece, n)| (1..=n).map(move |copy| PieceCopy { piece, copy }))
    };
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect).id_salt("copies"));
    child.spacing_mut().scroll = egui::style::ScrollStyle::thin();
    ScrollArea::horizontal().auto_shrink([false, true]).show_viewport(
        &mut child,
        |ui, seen| {
            let all = copies().count() as f32;
            ui.set_width(all * (WIDTH + GAP) - GAP);
            ui.set_height(HEIGHT + 4.0);
            let corner = ui.min_rect().min;
            for (at, copy) in copies().enumerate() {
                let left = at as f32 * (WIDTH + GAP);
                let mine = bench.making.under() == copy;
                let in_sight = left + WIDTH >= seen.left() && left <= seen.right();
                if !in_sight && !mine {
                    continue; // Hundreds may be out of sight.
                }
                let place = Rect::from_min_size(corner + vec2(left, 0.0), vec2(WIDTH, HEIGHT));
                card(ui, bench, place, copy, actions);
            }
        },
    );
}

fn card(ui: &Ui, bench: &Bench<'_>, rect: Rect, of: PieceCopy, actions: &mut Actions) {
    let (t, project) = (bench.t, bench.document.project());
    let Some(piece) = project.piece(of.piece) else { return };
    let mine = bench.making.under() == of;
    let name = copy_name(piece, of.copy);
    let stand = bench.making.stand(project, of);
    let (state, share) = how_far(bench, of, stand);
    let id = ui.scope_id().with(("copy", of.piece, of.copy));
    let response = ui.interact(rect, id, Sense::click());
    let spoken = format!("{name}, {state}");
    response.widget_info(|| WidgetInfo::selected(Role::Tab, true, mine, &spoken));
    let painter = ui.painter();
    let (fill, edge, width) = match (mine, response.hovered()) {
        (true, _) => (t.wash, t.outline, 1.5),
        (false, true) => (t.well, t.outline, 1.0),
        (false, false) => (t.panel, t.control_edge, 1.0),
    };
    paint::lip(painter, rect, CARD_RADIUS, t.edge_deep, if mine { 0.0 } else { 2.0 });
    painter.rect(rect, CARD_RADIUS, fill, Stroke::new(width, edge), StrokeKind::Inside);
    let room = rect.width() - 20.0 - if share >= 1.0 { 20.0 } else { 0.0 };
    let at = rect.left_top() + vec2(10.0, 14.0);
    let font = type_faces::semibold(type_faces::BODY);
    paint::clipped_text(painter, at, &name, font, t.ink, room);
    let font = type_faces::regular(type_faces::SMALL);
    let under = rect.left_top() + vec2(10.0, 29.0);
    paint::clipped_text(painter, under, &state, font, t.soft_ink, room);
    if stand == Some(Stand::Made) {
        icons::check(painter, rect.right_center() + vec2(-16.0, -4.0), t.increase);
    }
    // How far it is, as a thread along the foot.
    let thread = rect.x_range().shrink(10.0);
    let y = rect.bottom() - 7.0;
    painter.hline(thread, y, Stroke::new(1.0, t.edge));
    if share > 0.0 {
        let to = egui::lerp(thread.min..=thread.max, share);
        painter.hline(thread.min..=to, y, Stroke::new(2.5, t.outline));
    }
    if response.has_focus() {
        paint::focus_ring(painter, rect, CARD_RADIUS, t);
    }
    let key = bench.key_text(Command::Make(MakeCommand::Other)).unwrap_or_default();
    if response
        .on_hover_text(say!("make-work-on-name-key-goes-to-the-next", name = name, key = key))
        .clicked()
    {
        actions.make(Make::Take(of));
    }
}

/// How far a copy is, in words and as a share of it.
fn how_far(bench: &Bench<'_>, of: PieceCopy, stand: Option<Stand>) -> (String, f32) {
    let course = match bench.making.course(of.piece) {
        None => return ("…".into(), 0.0),
        Some(Err(_)) => return (say!("make-has-no-plan").into(), 0.0),
        Some(Ok(course)) => course,
    };
    let begun = bench.making.begun(bench.document.project(), of);
    let words = match stand {
        None => return (say!("make-has-no-plan").into(), 0.0),
        Some(Stand::Made) => say!("make-finished").into(),
        Some(Stand::Stop(Stop::Inside(_))) => say!("make-something-to-lay-in").into(),
        Some(Stand::Stop(Stop::Stuff)) => say!("make-to-be-stuffed").into(),
        Some(Stand::Stop(Stop::Close)) => say!("make-to-be-closed").into(),
        Some(Stand::Stitch { .. }) if begun.is_none() => say!("make-not-started").into(),
        Some(Stand::Stitch { round, .. }) => {
            say!("make-round-round-of-last", round = round, last = course.last_round())
        }
    };
    let share = begun.map_or(0.0, |progress| {
        let (done, all) = progress.share(course);
        done as f32 / all.max(1) as f32
    });
    (words, share)
}
