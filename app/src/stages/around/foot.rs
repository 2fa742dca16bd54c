//! The strip at the foot of the window: what a crash left, or the first steps. It takes room
//! of its own, so that it hides nothing, and it never waits for an answer.

use egui::{Align2, Rect, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, UiBuilder};
use egui::{WidgetInfo, pos2, vec2};

use crate::bench::action::{Action, Actions};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::{self, Icon};
use crate::kit::tokens::{CARD_RADIUS, GAP};
use crate::kit::{Tokens, paint, type_faces};
use crate::work::home::DeskAction;
use crate::work::home::desk::FirstSteps;
use crate::work::home::recovery::{self, Left};

/// Height of the strip and the gap below it.
const HEIGHT: f32 = 58.0;
/// Width under which its words would be cut, points; then it scrolls, by a bar of this height.
const LEAST: f32 = 860.0;
const BAR: f32 = 16.0;

/// Height of the strip in a window of this width.
pub fn height(width: f32) -> f32 {
    if width < LEAST { HEIGHT + BAR } else { HEIGHT }
}

/// Draws the strip by `add` in `place`, which may be too narrow for it.
pub fn fit(ui: &mut Ui, place: Rect, add: impl FnOnce(&mut Ui, Rect)) {
    if place.width() >= LEAST {
        return add(ui, place);
    }
    let mut child = ui.new_child(UiBuilder::new().max_rect(place).id_salt("foot"));
    controls::scroll_colours(&mut child);
    ScrollArea::horizontal().auto_shrink(false).show(&mut child, |ui| {
        ui.reset_style();
        let (rect, _) = ui.allocate_exact_size(vec2(LEAST, HEIGHT), Sense::hover());
        add(ui, rect);
        controls::follow_focus(ui);
    });
}

/// Where the strip's card lies.
fn card(strip: Rect) -> Rect {
    Rect::from_min_max(pos2(strip.left() + GAP, strip.top()), strip.max - vec2(GAP, GAP))
}

/// What a crash left, and the two ways on.
pub fn offer(ui: &Ui, t: &'static Tokens, strip: Rect, left: &Left, actions: &mut Actions) {
    let card = card(strip);
    paint::lip(ui.painter(), card, CARD_RADIUS, t.edge_deep, 3.0);
    // Nothing is wrong any more: it offers something.
    let edge = Stroke::new(1.3, t.highlight_edge);
    ui.painter().rect(card, CARD_RADIUS, t.wash, edge, StrokeKind::Inside);
    let age =
        left.at.elapsed().map_or_else(|_| say!("foot-a-moment-ago").into(), recovery::ago);
    let title = &left.project.title;
    let saved = left.of.as_deref().is_some_and(std::path::Path::is_file);
    let second = if saved { say!("foot-open-the-last-saved") } else { say!("foot-discard") };
    let close = Rect::from_center_size(card.right_center() - vec2(22.0, 0.0), vec2(26.0, 26.0));
    let face = ButtonFace::Icon(Icon::Close);
    let button =
        controls::button(ui, close, face, say!("foot-offer-it-again-at-the-next-start"), true);
    if button.on_hover_text(say!("foot-put-away")).clicked() {
        actions.push(Action::Desk(DeskAction::PutOff));
    }
    let mut right = close.left() - 10.0;
    for (words, action) in
        [(second, DeskAction::LetGo), (say!("foot-recover"), DeskAction::Recover)]
    {
        let width = controls::words_width(ui, words);
        let rect =
            Rect::from_min_size(pos2(right - width, card.center().y - 15.0), vec2(width, 29.0));
        if controls::button(ui, rect, ButtonFace::Words(words), words, true).clicked() {
            actions.push(Action::Desk(action));
        }
        right = rect.left() - 8.0;
    }
    icons::bob(
        ui.painter(),
        card.left_center() + vec2(22.0, 2.0),
        card.top(),
        t.highlight,
        t.highlight_edge,
    );
    let words = if saved {
        say!("foot-crash-saved", title = title, age = age)
    } else {
        say!("foot-crash-unsaved", title = title, age = age)
    };
    let at = card.left_center() + vec2(42.0, 0.0);
    let font = type_faces::regular(type_faces::BODY);
    let galley = ui.painter().layout(words.clone(), font, t.ink, right - at.x - 8.0);
    let place = Align2::LEFT_CENTER.anchor_size(at, galley.size());
    ui.painter().galley(place.min, galley, t.ink);
    let read = ui.interact(place, ui.scope_id().with("what a crash left"), Sense::hover());
    read.widget_info(|| WidgetInfo::labeled(Role::Label, true, &words));
}

/// Three beads on a thread, ticked as they are done.
pub fn first_steps(
    ui: &Ui,
    t: &'static Tokens,
    strip: Rect,
    steps: FirstSteps,
    actions: &mut Actions,
) {
    let card = card(strip);
    let painter = ui.painter();
    paint::panel(painter, card, t);
    let font = type_faces::drafting(type_faces::TITLE);
    let at = card.left_center() + vec2(16.0, 0.0);
    let title = painter.text(at, Align2::LEFT_CENTER, say!("foot-first-steps"), font, t.ink);
    let close = Rect::from_center_size(card.right_center() - vec2(22.0, 0.0), vec2(26.0, 26.0));
    let button = controls::button(
        ui,
        close,
        ButtonFace::Icon(Icon::Close),
        say!("foot-close-first-steps"),
        true,
    );
    if button.on_hover_text(say!("foot-close-the-first-steps-for-good")).clicked() {
        actions.push(Action::Desk(DeskAction::EndSteps));
    }
    let list = steps.list();
    let next = list.iter().position(|(_, done)| !done);
    let from = title.right() + 24.0;
    let step = (close.left() - 16.0 - from) / list.len() as f32;
    let y = card.center().y;
    for (i, (words, done)) in list.into_iter().enumerate() {
        let bead = pos2(from + step * i as f32 + 9.0, y);
        let on = next == Some(i);
        let (font, ink) = if on {
            (type_faces::semibold(type_faces::BODY), t.ink)
        } else {
            (type_faces::regular(type_faces::BODY), t.soft_ink)
        };
        let (word, _) =
            paint::clipped_text(painter, bead + vec2(17.0, 0.0), words, font, ink, step - 40.0);
        if i + 1 < list.len() {
            let pen = Stroke::new(if done { 2.0 } else { 1.3 }, t.control_edge);
            painter.hline(word.right() + 10.0..=bead.x + step - 14.0, y, pen);
        }
        if on {
            painter.circle(bead, 9.0, t.highlight, Stroke::new(1.6, t.highlight_edge));
        } else {
            painter.circle(bead, 9.0, t.panel, Stroke::new(1.5, t.control_edge));
        }
        if done {
            icons::check(painter, bead, t.increase);
        } else {
            let ink = if on { t.on_highlight } else { t.soft_ink };
            let font = type_faces::bold(type_faces::SMALL);
            painter.text(bead, Align2::CENTER_CENTER, i + 1, font, ink);
        }
        let id = ui.scope_id().with(("first step", i));
        let read = ui.interact(
            word.union(Rect::from_center_size(bead, vec2(18.0, 18.0))),
            id,
            Sense::hover(),
        );
        read.widget_info(|| {
            let state = if done { say!("foot-done") } else { say!("foot-to-do") };
            WidgetInfo::labeled(
                Role::Label,
                true,
                say!(
                    "foot-first-step-number-state-words",
                    number = i + 1,
                    state = state,
                    words = words
                ),
            )
        });
    }
}
