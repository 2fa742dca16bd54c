//! The small window beside a film or a call: the round under the hook, the stitch that is
//! next, and the steps, in as little room as can be read.

use egui::{Align2, Rect, Sense, Stroke, StrokeKind, Ui, UiBuilder, Vec2, pos2, vec2};
use plumpline_core::making::Progress;

use super::hook::Hook;
use super::{steps, stop};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::MakeCommand;
use crate::kit::tokens::CARD_RADIUS;
use crate::kit::{paint, type_faces};
use crate::work::making::copy_name;

/// Its size at first, points.
pub const SIZE: Vec2 = vec2(340.0, 190.0);
/// Its least size, points.
pub const LEAST: Vec2 = vec2(260.0, 150.0);
/// Room around all of it.
const EDGE: f32 = 10.0;
/// Height of the buttons.
const STEPS: f32 = 48.0;

/// Draws it over the whole of `ui`.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let t = bench.t;
    let size = ui.available_size().max(LEAST - Vec2::splat(2.0 * EDGE));
    let (whole, _) = ui.allocate_exact_size(size, Sense::hover());
    ui.painter().rect_filled(ui.max_rect().expand(20.0), 0.0, t.panel);
    let mut child =
        ui.new_child(UiBuilder::new().max_rect(whole.shrink(EDGE)).id_salt("small window"));
    let ui = &mut child;
    let rect = ui.max_rect();
    let (under, project) = (bench.making.under(), bench.document.project());
    let Some(of) = project.piece(under.piece) else { return };
    let name = copy_name(of, under.copy);
    let say = |words: &str| {
        let font = type_faces::regular(type_faces::TITLE);
        let galley = ui.painter().layout(words.to_owned(), font, t.ink, rect.width());
        ui.painter().galley(rect.min, galley, t.ink);
    };
    let course = match bench.making.course(under.piece) {
        None => return say(say!("making-small-planning")),
        Some(Err(why)) => return say(why),
        Some(Ok(course)) => course,
    };
    let fresh = Progress::new(under.piece, under.copy).at_size(bench.making.size());
    let progress = bench.making.begun(project, under).unwrap_or(&fresh);
    let stand = progress.stand(course);
    let hook = Hook { bench, piece: of, name: &name, course, progress, stand, scale: 0.6 };
    let (upper, lower) = rect.split_top_bottom_at_y(rect.bottom() - STEPS);
    match hook.round() {
        Some(_) => round(ui, &hook, upper),
        None => {
            let lines = stop::words(&hook, stand).join("\n");
            let font = type_faces::semibold(type_faces::TITLE);
            let galley = ui.painter().layout(lines, font, t.ink, upper.width());
            ui.painter().galley(upper.min, galley, t.ink);
        }
    }
    buttons(ui, &hook, lower, actions);
}

/// The number of the round, its words, the stitch that is next and how many are made.
fn round(ui: &Ui, hook: &Hook<'_>, rect: Rect) {
    let Some((number, done, round)) = hook.round() else { return };
    let (t, painter) = (hook.bench.t, ui.painter());
    let at = rect.left_top() + vec2(0.0, 15.0);
    let big = type_faces::bold(type_faces::BIG);
    let figure = painter.text(at, Align2::LEFT_CENTER, number, big.clone(), t.ink);
    let of = say!("making-small-of", last = hook.course.last_round(), name = hook.name);
    let small = type_faces::regular(type_faces::SMALL);
    let aside = pos2(figure.right() + 8.0, at.y + 3.0);
    let made = say!("making-small-made", done = round.made(done), count = round.count);
    let end = pos2(rect.right(), at.y);
    let made = painter.text(end, Align2::RIGHT_CENTER, made, type_faces::bold(18.0), t.ink);
    let room = made.left() - aside.x - 8.0;
    paint::clipped_text(painter, aside, &of, small, t.soft_ink, room);
    let foot = rect.bottom() - 22.0;
    if let Some((stitch, times, then)) = round.ahead(done) {
        let word = painter.layout_no_wrap(round.word(stitch).into(), big, t.on_highlight);
        let size = word.size() + vec2(20.0, 2.0);
        let pill = Rect::from_min_size(pos2(rect.left(), foot - 0.5 * size.y), size);
        let edge = Stroke::new(1.6, t.highlight_edge);
        painter.rect(pill, CARD_RADIUS, t.highlight, edge, StrokeKind::Inside);
        painter.galley(pill.min + vec2(10.0, 1.0), word, t.on_highlight);
        let again = (times > 1).then(|| say!("making-small-to-go", n = times));
        let then = then.map(|stitch| say!("making-small-then", stitch = round.word(stitch)));
        let words: Vec<String> = again.into_iter().chain(then).collect();
        let font = type_faces::regular(type_faces::TITLE);
        let at = pos2(pill.right() + 8.0, foot);
        let room = rect.right() - at.x;
        paint::clipped_text(painter, at, &words.join(", "), font, t.ink, room);
    }
    // The words of the round have what is left between the two.
    let top = rect.top() + 34.0;
    let field = Rect::from_min_max(pos2(rect.left(), top), pos2(rect.right(), foot - 18.0));
    let mut size = 18.0;
    loop {
        let font = type_faces::semibold(size);
        let galley = painter.layout(round.text.clone(), font, t.ink, field.width());
        if galley.size().y <= field.height() || size <= type_faces::SMALL {
            painter.with_clip_rect(field.expand(2.0)).galley(field.min, galley, t.ink);
            return;
        }
        size -= 1.0;
    }
}

/// Back, one stitch and the round; where something is to be done, that it is.
fn buttons(ui: &Ui, hook: &Hook<'_>, rect: Rect, actions: &mut Actions) {
    let working = hook.round().is_some();
    let list: &[(MakeCommand, f32)] = if working {
        &[(MakeCommand::Back, 1.0), (MakeCommand::Stitch, 2.0), (MakeCommand::Round, 1.2)]
    } else {
        &[(MakeCommand::Back, 1.0), (MakeCommand::Done, 3.2)]
    };
    let gap = 8.0;
    let all: f32 = list.iter().map(|(_, share)| share).sum();
    let unit = (rect.width() - gap * (list.len() - 1) as f32) / all;
    let mut x = rect.left();
    for (command, share) in list {
        let size = vec2(share * unit, rect.height());
        let place = Rect::from_min_size(pos2(x, rect.top()), size);
        x = place.right() + gap;
        steps::big(ui, hook, place, *command, actions);
    }
}
