//! What is to be known at this round besides its stitches: how the piece begins, another
//! yarn, a note made on another copy, a plan that has changed.

use egui::{Rect, Stroke, StrokeKind, Ui, pos2, vec2};
use plumpline_core::Yarn;
use plumpline_core::making::Progress;

use super::hook::{ASIDE, Hook};
use crate::bench::action::Actions;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::tokens::CARD_RADIUS;
use crate::kit::{icons, paint, type_faces};
use crate::view::ids::note_id;
use crate::work::making::{Make, copy_name};

/// Steps before the end of a round at which a change of yarn presses.
const SOON: u32 = 6;

/// How loud a banner is.
#[derive(Clone, Copy, PartialEq)]
enum Tone {
    /// Good to know.
    Quiet,
    /// To be done now.
    Now,
    /// Something does not fit.
    Warning,
}

/// What stands before the words.
#[derive(Clone, Copy)]
enum Sign {
    Bead(usize),
    Ring,
    Note,
    Warning,
}

/// That the work parts from the plan, and what can be done about it, at the top of `rect`;
/// returns where it ends.
fn parted(ui: &Ui, hook: &Hook<'_>, rect: Rect, actions: &mut Actions) -> f32 {
    let Some(parted) = hook.progress.parted(hook.course) else { return rect.top() };
    let back = parted.first_round(hook.course);
    let rip =
        (back < hook.progress.round).then(|| say!("make-back-to-round-back", back = back));
    let keep = say!("make-keep-my-place");
    let width = |words: &str| controls::words_width(ui, words);
    let room = width(keep) + 12.0 + rip.as_deref().map_or(0.0, |w| width(w) + 8.0);
    let what = (Tone::Warning, Sign::Warning);
    let place = banner(ui, hook, rect, &parted.text(), what, room);
    let slot = |right: f32, words: &str| {
        let size = vec2(width(words), 28.0);
        let at = pos2(right - size.x, place.center().y - 0.5 * size.y);
        Rect::from_min_size(at, size)
    };
    let at = slot(place.right() - 8.0, keep);
    let button = controls::button(ui, at, ButtonFace::Words(keep), keep, true);
    if button.on_hover_text(say!("make-keep-what-is-worked-as-it-is")).clicked() {
        actions.make(Make::Accept);
    }
    if let Some(words) = rip {
        let at = slot(at.left() - 8.0, &words);
        let button = controls::button(ui, at, ButtonFace::Words(&words), &words, true);
        if button.on_hover_text(say!("make-rip-back-to-where-it-differs-from-the")).clicked() {
            actions.make(Make::GoTo(back));
        }
    }
    place.bottom() + 8.0
}

/// Draws them at the top of `rect`; returns where they end.
pub(super) fn show(ui: &Ui, hook: &Hook<'_>, rect: Rect, actions: &mut Actions) -> f32 {
    let mut y = parted(ui, hook, rect, actions);
    let mut put = |words: &str, tone: Tone, sign: Sign| {
        let place = banner(ui, hook, rect.with_min_y(y), words, (tone, sign), 0.0);
        y = place.bottom() + 8.0;
    };
    let Some((number, done, round)) = hook.round() else { return y };
    if number == 1 && done == 0 {
        let opening = hook.course.opening.join(" ");
        put(&opening, Tone::Quiet, Sign::Ring);
        if hook.has_yarns() {
            let words = say!("make-begin-with-yarn-yarn", yarn = hook.yarn_name(round.yarn));
            put(&words, Tone::Now, Sign::Bead(round.yarn));
        }
    }
    if let Some(yarn) = hook.course.yarn_change(number).filter(|_| done == 0) {
        let words = say!("make-from-here-on-in-yarn-yarn", yarn = hook.yarn_name(yarn));
        put(&words, Tone::Now, Sign::Bead(yarn));
    }
    if let Some(&(_, yarn)) = round.changes.iter().find(|(at, _)| *at == done) {
        let words = say!("make-from-this-stitch-on-in-yarn", yarn = hook.yarn_name(yarn));
        put(&words, Tone::Now, Sign::Bead(yarn));
    }
    if let Some(&(at, yarn)) = round.changes.iter().find(|(at, _)| *at > done) {
        let name = hook.yarn_name(yarn);
        let (words, tone) = match at - done {
            1 => (say!("make-finish-this-stitch-with-yarn", yarn = name), Tone::Now),
            left => (say!("make-in-stitches-yarn", left = left, yarn = name), Tone::Quiet),
        };
        put(&words, tone, Sign::Bead(yarn));
    }
    if let Some(yarn) = hook.course.yarn_change(number + 1) {
        let words =
            say!("make-change-to-yarn-yarn-in-the-last-stitch", yarn = hook.yarn_name(yarn));
        let soon = round.steps() - done <= SOON;
        put(&words, if soon { Tone::Now } else { Tone::Quiet }, Sign::Bead(yarn));
    }
    // In full: its field may be too short for it.
    let writes = ui.memory(|m| m.has_focus(note_id()));
    if let Some(note) = hook.progress.notes.get(&number).filter(|_| !writes) {
        put(note, Tone::Now, Sign::Note);
    }
    // What was noted on one ear holds for the other; at another size the round is another.
    let (making, mine) = (&hook.bench.document.project().making, hook.progress);
    let is_other =
        |p: &&Progress| (p.piece, &p.size) == (mine.piece, &mine.size) && p.copy != mine.copy;
    for other in making.at.iter().filter(is_other) {
        if let Some(note) = other.notes.get(&number) {
            let words = format!("{}: {note}", copy_name(hook.piece, other.copy));
            put(&words, Tone::Quiet, Sign::Note);
        }
    }
    y
}

/// One banner at the top of `rect`, `room` left free at its right; returns its place.
fn banner(
    ui: &Ui,
    hook: &Hook<'_>,
    rect: Rect,
    words: &str,
    (tone, sign): (Tone, Sign),
    room: f32,
) -> Rect {
    let (t, painter) = (hook.bench.t, ui.painter());
    let size = match tone {
        Tone::Now => hook.size(ASIDE + 2.0),
        _ => hook.size(ASIDE - 2.0),
    };
    let font = match tone {
        Tone::Now => type_faces::bold(size),
        _ => type_faces::regular(size),
    };
    let (fill, edge, ink) = match tone {
        Tone::Quiet => (t.well, Stroke::new(1.0, t.edge), t.ink),
        Tone::Now => (t.wash, Stroke::new(1.4, t.highlight_edge), t.ink),
        Tone::Warning => (t.warn_wash, Stroke::new(1.4, t.warning), t.ink),
    };
    let galley = painter.layout(words.to_owned(), font, ink, rect.width() - 56.0 - room);
    let place = rect.with_max_y(rect.top() + (galley.size().y + 12.0).max(32.0));
    painter.rect(place, CARD_RADIUS, fill, edge, StrokeKind::Inside);
    let at = pos2(place.left() + 22.0, place.center().y);
    match sign {
        Sign::Bead(yarn) => {
            paint::bead(painter, at, &Yarn::letter(yarn), hook.bench.yarn_of(yarn), t);
        }
        Sign::Ring => {
            painter.circle_stroke(at, 6.0, Stroke::new(1.6, t.soft_ink));
        }
        Sign::Note => icons::tied_thread(painter, at - vec2(0.0, 2.0), t.soft_ink),
        Sign::Warning => icons::warning(painter, at, 16.0, t.warning),
    }
    let top = place.center().y - 0.5 * galley.size().y;
    painter.galley(pos2(place.left() + 42.0, top), galley, ink);
    // Painted words are read out too.
    let id = ui.scope_id().with(("banner", words));
    let response = ui.interact(place, id, egui::Sense::hover());
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, words));
    place
}
