//! What has the place of the stitches where there are none: the stuffing, the close, and the
//! end of a piece or of all of them.

use egui::{Rect, Stroke, StrokeKind, Ui, pos2, vec2};
use plumpline_core::Bounds;
use plumpline_core::making::{Stand, Stop};
use plumpline_core::wording::InsideLine;

use super::hook::{ASIDE, Hook, NEXT, WORDS};
use super::steps::big_as;
use super::time;
use crate::bench::action::Actions;
use crate::bench::command::MakeCommand;
use crate::kit::tokens::PANEL_RADIUS;
use crate::kit::words::decimal;
use crate::kit::{icons, type_faces};
use crate::work::making::{copy_name, size_words, to_sew};

/// What a stop or the end says, the first line large.
pub(super) fn words(hook: &Hook<'_>, stand: Stand) -> Vec<String> {
    match stand {
        Stand::Stop(Stop::Stuff) => {
            let Bounds { low, high } = hook.course.stuffing_g;
            let amount = |g: f64| if g < 9.95 { decimal(g, 1) } else { format!("{g:.0}") };
            let grams = say!(
                "make-about-low-high-g-of-stuffing-round",
                low = amount(low),
                high = amount(high),
                round = hook.course.stuff_after.unwrap_or_default()
            );
            vec![hook.course.stuff_text.clone(), grams]
        }
        Stand::Stop(Stop::Inside(index)) => {
            let line = hook.course.inside.get(index as usize);
            let worked = |line: &InsideLine| say!("make-round-is-worked", round = line.after);
            line.map_or_else(Vec::new, |line| vec![line.text.clone(), worked(line)])
        }
        Stand::Stop(Stop::Close) => {
            let rounds = hook.course.last_round();
            let mut lines = vec![say!("make-all-rounds-rounds-are-worked", rounds = rounds)];
            lines.extend(hook.course.closing.iter().cloned());
            lines
        }
        Stand::Made => made(hook),
        Stand::Stitch { .. } => Vec::new(),
    }
}

/// What is said of a piece that is made, and of the project.
fn made(hook: &Hook<'_>) -> Vec<String> {
    let (making, project) = (hook.bench.making, hook.bench.document.project());
    let whole = making.whole(project);
    let all = whole.made == whole.copies;
    let what = if all && whole.copies > 1 { say!("make-everything") } else { hook.name };
    let title = match making.size() {
        None => say!("make-what-is-finished", what = what),
        size => say!("make-what-is-finished-in-size", what = what, size = size_words(size)),
    };
    // What was made elsewhere and only ticked off here took no time here.
    let timed = |what: String, seconds: f64| {
        (seconds >= 60.0)
            .then(|| say!("make-what-took-time", what = what, time = time::clock(seconds)))
    };
    let mut lines = vec![title];
    lines.extend(timed(hook.name.to_owned(), hook.progress.seconds));
    if all {
        if whole.copies > 1 {
            lines.extend(timed(say!("make-all-copies", copies = whole.copies), whole.seconds));
        }
        lines.extend(to_sew(project, making));
    } else {
        let left = time::about(whole.seconds_left);
        lines.push(say!(
            "make-made-of-copies-finished-left-left",
            made = whole.made,
            copies = whole.copies,
            left = left
        ));
    }
    lines
}

/// Draws the stop or the end in `rect`.
pub(super) fn show(ui: &Ui, hook: &Hook<'_>, rect: Rect, actions: &mut Actions) {
    let t = hook.bench.t;
    let painter = ui.painter();
    let is_stop = matches!(hook.stand, Stand::Stop(_));
    let (fill, edge) = match is_stop {
        true => (t.wash, Stroke::new(2.0, t.highlight_edge)),
        false => (t.well, Stroke::new(1.0, t.edge)),
    };
    let card = rect.with_max_y(rect.bottom() - 8.0);
    painter.rect(card, PANEL_RADIUS, fill, edge, StrokeKind::Inside);
    let lines = words(hook, hook.stand);
    let width = card.width() - 64.0;
    let galleys: Vec<_> = (0..)
        .zip(lines)
        .map(|(i, line)| {
            let (font, ink) = match i {
                0 => (type_faces::bold(hook.size(WORDS)), t.ink),
                _ => (type_faces::regular(hook.size(ASIDE + 4.0)), t.ink),
            };
            let mut job = egui::text::LayoutJob::simple(line, font, ink, width);
            job.halign = egui::Align::Center;
            painter.layout_job(job)
        })
        .collect();
    let sign = hook.size(2.0 * NEXT);
    let button = action(hook);
    let button_height = if button.is_some() { hook.size(64.0).max(52.0) + 16.0 } else { 0.0 };
    let text: f32 = galleys.iter().map(|g| g.size().y + 8.0).sum();
    let mut y = (card.center().y - 0.5 * (sign + text + button_height)).max(card.top() + 8.0);
    let at = pos2(card.center().x, y + 0.5 * sign);
    match hook.stand {
        Stand::Stop(Stop::Stuff) => tufts(ui, hook, at, 0.5 * sign),
        Stand::Stop(Stop::Inside(_)) => disc(ui, hook, at, 0.5 * sign),
        Stand::Stop(Stop::Close) => icons::tied_thread(painter, at, t.outline),
        _ => {
            painter.circle(at, 0.3 * sign, t.panel, Stroke::new(2.0, t.increase));
            icons::check(painter, at, t.increase);
        }
    }
    y += sign;
    for galley in galleys {
        let height = galley.size().y;
        painter.galley(pos2(card.center().x, y), galley, t.ink);
        y += height + 8.0;
    }
    if let Some((command, words)) = button {
        let size = vec2((0.4 * card.width()).clamp(220.0, 420.0), button_height - 16.0);
        let y = (y + 8.0).min(card.bottom() - size.y - 12.0);
        let place = Rect::from_min_size(pos2(card.center().x - 0.5 * size.x, y), size);
        big_as(ui, hook, place, (command, &words), actions);
    }
}

/// What leads on from here.
fn action(hook: &Hook<'_>) -> Option<(MakeCommand, String)> {
    let (making, project) = (hook.bench.making, hook.bench.document.project());
    match hook.stand {
        Stand::Stop(Stop::Inside(_)) => Some((MakeCommand::Done, say!("make-it-is-in").into())),
        Stand::Stop(Stop::Stuff) => {
            Some((MakeCommand::Done, say!("make-the-stuffing-is-in").into()))
        }
        Stand::Stop(Stop::Close) => {
            Some((MakeCommand::Done, say!("make-it-is-fastened-off").into()))
        }
        _ => {
            let whole = making.whole(project);
            if whole.made == whole.copies {
                return None;
            }
            let other = making.other(project);
            let name = copy_name(project.piece(other.piece)?, other.copy);
            Some((MakeCommand::Other, say!("make-on-to-name", name = name)))
        }
    }
}

/// Card seen from the side, in its cloth.
fn disc(ui: &Ui, hook: &Hook<'_>, at: egui::Pos2, size: f32) {
    let t = hook.bench.t;
    let oval = |radius: egui::Vec2, fill| {
        let stroke = Stroke::new(1.8, t.soft_ink);
        let shape = egui::epaint::EllipseShape { center: at, radius, fill, stroke, angle: 0.0 };
        ui.painter().add(shape);
    };
    oval(size * vec2(1.25, 0.5), t.panel);
    oval(size * vec2(0.95, 0.34), t.well);
}

/// Three tufts of stuffing, large.
fn tufts(ui: &Ui, hook: &Hook<'_>, at: egui::Pos2, size: f32) {
    let t = hook.bench.t;
    for (x, y, r) in [(-0.75, 0.12, 0.55), (0.75, 0.12, 0.55), (0.0, -0.08, 0.66)] {
        let centre = at + size * vec2(x, y);
        ui.painter().circle(centre, size * r, t.panel, Stroke::new(1.6, t.soft_ink));
    }
}
