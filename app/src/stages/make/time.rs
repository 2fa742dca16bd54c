//! Time worked and time left, at the right of the stage's head.

use std::time::Duration;

use egui::{Align2, Rect, Response, Role, Sense, Ui, WidgetInfo, pos2, vec2};
use plumpline_core::making::{Stand, pace};

use crate::bench::Bench;
use crate::kit::type_faces;

/// Draws both; returns where they begin.
pub(super) fn show(ui: &Ui, bench: &Bench<'_>, rect: Rect) -> f32 {
    let project = bench.document.project();
    let under = bench.making.under();
    let Some(outlook) = bench.making.outlook(project, under) else { return rect.right() };
    let stand = bench.making.stand(project, under);
    let now = ui.input(|i| i.time);
    let since = bench.making.since_step(now);
    // What will count as work once the next stitch is made; no more than that is shown.
    let most = pace::counted_at_most(1, &bench.document.piece().habits);
    let at_work = stand != Some(Stand::Made);
    let running = if at_work { since.min(most) } else { 0.0 };
    let seconds = outlook.seconds + running;
    let paused = at_work && since >= most;
    if at_work && !paused {
        // The minute turns without anybody touching anything.
        let turn = (60.0 - seconds % 60.0).min(most - since).max(0.2);
        ui.ctx().request_repaint_after(Duration::from_secs_f64(turn + 0.05));
    }
    let pace = say!("make-pace-st-a-minute", pace = format!("{:.0}", outlook.per_minute));
    let (left, how) = match at_work {
        true => (about(outlook.seconds_left), say!("make-left")),
        false => (clock(0.0), say!("make-left")),
    };
    let whose = if outlook.own { say!("make-your-pace") } else { say!("make-usual-pace") };
    let x = column(
        ui,
        bench,
        rect,
        rect.right(),
        (&left, how, &say!("make-whose-pace", whose = whose, pace = pace)),
    );
    let (state, note) = match paused {
        true => (say!("make-paused"), say!("make-only-five-minutes-of-a-pause-count-the")),
        false => (say!("make-worked"), say!("make-time-between-two-steps-counts-five")),
    };
    column(ui, bench, rect, x - 24.0, (&clock(seconds), state, note))
}

/// A figure with its word under it, its right end at `right`; returns its left end.
fn column(
    ui: &Ui,
    bench: &Bench<'_>,
    rect: Rect,
    right: f32,
    (figure, word, note): (&str, &str, &str),
) -> f32 {
    let (t, painter) = (bench.t, ui.painter());
    let big = type_faces::bold(type_faces::BIG);
    let at = pos2(right, rect.top() + 16.0);
    let figure_at = painter.text(at, Align2::RIGHT_CENTER, figure, big, t.ink);
    let small = type_faces::regular(type_faces::SMALL);
    let under = pos2(right, rect.top() + 39.0);
    let word_at = painter.text(under, Align2::RIGHT_CENTER, word, small, t.soft_ink);
    let place = figure_at.union(word_at).expand2(vec2(4.0, 2.0));
    let hover: Response =
        ui.interact(place, ui.scope_id().with(("time", word)), Sense::hover());
    hover.widget_info(|| WidgetInfo::labeled(Role::Label, true, format!("{figure} {word}")));
    hover.on_hover_text(note);
    place.left()
}

/// `0 h 42`.
pub(super) fn clock(seconds: f64) -> String {
    let minutes = (seconds / 60.0).floor() as u64;
    format!("{} h {:02}", minutes / 60, minutes % 60)
}

/// A time that is estimated: `about 1 h 10`, in fives of minutes beyond a quarter of an hour.
pub(super) fn about(seconds: f64) -> String {
    let minutes = (seconds / 60.0).ceil();
    let rounded = if minutes > 15.0 { (minutes / 5.0).round() * 5.0 } else { minutes };
    say!("make-about-time", time = clock(60.0 * rounded))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_in_words() {
        assert_eq!(clock(59.0), "0 h 00");
        assert_eq!(clock(3600.0 * 2.0 + 61.0), "2 h 01");
        assert_eq!(about(61.0), "about 0 h 02");
        assert_eq!(about(63.0 * 60.0), "about 1 h 05");
    }
}
