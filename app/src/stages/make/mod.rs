//! The Make stage: the round under the hook, large enough to be read across a table, with one
//! key or button a stitch, a repeat or a round.
//!
//! From the top: the [`size`] under the hook where there are sizes, [`cards`] of all pieces and
//! copies and the time ([`time`]); the number and words of the round ([`head`]); what else is
//! to be known there ([`banners`]); its stitches, unrolled ([`cells`]), or the stop or end that
//! has their place ([`stop`]); what is next and the steps ([`steps`]). At the left the whole
//! piece as a stack of bars ([`stack`]).

mod banners;
mod cards;
mod cells;
mod head;
mod hook;
mod size;
pub mod small;
mod stack;
mod steps;
mod stop;
mod time;

use egui::{Align2, Rect, Role, Sense, Ui, WidgetInfo, pos2, vec2};
use plumpline_core::making::Progress;

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::{Command, MakeCommand};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::tokens::PAD;
use crate::kit::{icons, paint, type_faces};
use crate::view::ids::make_id;
use crate::work::making::{copy_name, size_words};
use hook::Hook;

/// The panel's size at which type has its full size, points.
const FULL: egui::Vec2 = vec2(1416.0, 800.0);
/// Room above and below all of it.
const FOOT: f32 = 12.0;

/// How large all is drawn where the stage is `rect`.
fn scale(rect: Rect) -> f32 {
    (rect.size() / FULL).min_elem().clamp(0.6, 1.8)
}

/// The part of the stage `rect` above the line and the buttons of the steps.
pub fn above_the_steps(rect: Rect) -> Rect {
    rect.with_max_y(rect.bottom() - FOOT - steps::height(scale(rect)))
}

/// Draws the stage in `rect`.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let scale = scale(rect);
    let inner = rect.shrink2(vec2(PAD, FOOT));
    let (top, below) = inner.split_top_bottom_at_y(inner.top() + 52.0);
    let under = bench.making.under();
    let project = bench.document.project();
    let Some(of) = project.piece(under.piece) else { return };
    let name = copy_name(of, under.copy);
    let times = time::show(ui, bench, top);
    let top = top.with_max_x(small_button(ui, bench, top, times - 16.0, actions) - 12.0);
    let width = (168.0 * scale).clamp(120.0, 220.0);
    let gap = 20.0 * scale.max(0.8);
    let copies = size::show(ui, bench, (top, top.left() + width + gap), actions);
    cards::show(ui, bench, top.with_min_x(copies), actions);
    let below = below.with_min_y(below.top() + 12.0);
    let course = match bench.making.course(under.piece) {
        None => return planning(ui, bench, below),
        Some(Err(why)) => return error(ui, bench, below, (&name, why), actions),
        Some(Ok(course)) => course,
    };
    let fresh = Progress::new(under.piece, under.copy).at_size(bench.making.size());
    let progress = bench.making.begun(project, under).unwrap_or(&fresh);
    let stand = progress.stand(course);
    let hook = Hook { bench, piece: of, name: &name, course, progress, stand, scale };
    let (left, right) = below.split_left_right_at_x(below.left() + width);
    stack::show(ui, &hook, left, actions);
    let right = right.with_min_x(right.left() + gap);
    announce(ui, &hook, right);
    let (upper, lower) = right.split_top_bottom_at_y(right.bottom() - steps::height(scale));
    steps::show(ui, &hook, lower, actions);
    let mut y = head::show(ui, &hook, upper, actions);
    y = banners::show(ui, &hook, upper.with_min_y(y), actions);
    let field = upper.with_min_y(y + 8.0);
    match hook.round() {
        Some(_) => cells::show(ui, &hook, field),
        // There is no next stitch to tell of.
        None => {
            let field = field.with_max_y(field.bottom() + steps::line_height(scale) - 8.0);
            stop::show(ui, &hook, field, actions);
        }
    }
}

/// The button that opens the small window, its right end at `right`; returns its left end.
fn small_button(
    ui: &Ui,
    bench: &Bench<'_>,
    top: Rect,
    right: f32,
    actions: &mut Actions,
) -> f32 {
    let command = Command::Make(MakeCommand::Small);
    let place = Rect::from_min_size(pos2(right - 32.0, top.top() + 6.0), vec2(32.0, 32.0));
    let on = Some(bench.making.small);
    let face = ButtonFace::Icon(Icon::Apart);
    let button = controls::toggle(ui, place, face, command.text(), true, on);
    if button.on_hover_text(bench.hint(command)).clicked() {
        actions.command(command);
    }
    place.left()
}

/// What assistive tools are told, anew at every step.
fn announce(ui: &Ui, hook: &Hook<'_>, rect: Rect) {
    let words = match (hook.stand, hook.round()) {
        (_, Some((number, done, round))) => {
            let word = round.stitches.get(done as usize).map_or("", |&s| round.word(s));
            let at = round.made(done) + 1;
            say!(
                "make-round-number-stitch-at-of-count-word",
                number = number,
                at = at,
                count = round.count,
                word = word
            )
        }
        (stand, _) => {
            let lines = stop::words(hook, stand);
            let ended = lines.iter().map(|line| format!("{}.", line.trim_end_matches('.')));
            ended.collect::<Vec<_>>().join(" ")
        }
    };
    let response = ui.interact(rect, make_id(), Sense::focusable_noninteractive());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &words));
    // Read out as it changes, without taking the keyboard.
    ui.ctx().accesskit_node_builder(make_id(), |node| {
        node.set_live(egui::accesskit::Live::Polite);
    });
    if response.has_focus() {
        paint::focus_ring(ui.painter(), rect.shrink(2.0), 8.0, hook.bench.t);
    }
}

/// A size is being planned: nothing can be worked until it is.
fn planning(ui: &Ui, bench: &Bench<'_>, rect: Rect) {
    let words = say!("make-preparing-size", size = size_words(bench.making.size()));
    let at = rect.center() - vec2(0.0, 40.0);
    let font = type_faces::semibold(type_faces::BIG);
    let said = ui.painter().text(at, Align2::CENTER_CENTER, &words, font, bench.t.soft_ink);
    let response = ui.interact(said, make_id(), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &words));
    ui.ctx().accesskit_node_builder(make_id(), |node| {
        node.set_live(egui::accesskit::Live::Polite);
    });
}

/// A piece that has no plan cannot be made.
fn error(
    ui: &Ui,
    bench: &Bench<'_>,
    rect: Rect,
    (name, why): (&str, &str),
    actions: &mut Actions,
) {
    let (t, painter) = (bench.t, ui.painter());
    let at = rect.center() - vec2(0.0, 40.0);
    icons::warning(painter, at - vec2(0.0, 36.0), 28.0, t.warning);
    let title = type_faces::semibold(type_faces::BIG);
    let size = bench.making.size();
    // Where one piece of a size has no plan, none has.
    let words = match size {
        None => say!("make-name-cannot-be-made-as-it-is", name = name),
        Some(_) => say!("make-nothing-can-be-made-in-size", size = size_words(size)),
    };
    painter.text(at, Align2::CENTER_CENTER, words, title, t.ink);
    let font = type_faces::regular(type_faces::TITLE);
    let galley = painter.layout(why.to_owned(), font, t.soft_ink, rect.width().min(640.0));
    let below = pos2(at.x - 0.5 * galley.size().x, at.y + 24.0);
    let bottom = below.y + galley.size().y;
    painter.galley(below, galley, t.soft_ink);
    let (words, command) = match size {
        None => (say!("make-shape-it"), Command::ShowShape),
        Some(_) => (say!("make-see-the-sizes"), Command::ShowSizes),
    };
    let size = vec2(controls::words_width(ui, words) + 20.0, 34.0);
    let place = Rect::from_center_size(pos2(at.x, bottom + 32.0), size);
    if controls::button(ui, place, ButtonFace::Words(words), words, true).clicked() {
        actions.command(command);
    }
}
