//! The angles that rounds take away, added up: flat at nothing, a ball closed at twice a full
//! turn.

use egui::{Align2, Painter, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo};
use egui::{pos2, vec2};

use plumpline_core::bend::BendWord;

use super::here::{Bent, LessonBench};
use crate::kit::tokens::PAD;
use crate::kit::words::terms;
use crate::kit::{paint, type_faces};

/// What closes a ball, degrees.
const BALL: f64 = 720.0;

/// Draws the sum in `panel`.
pub(super) fn show(ui: &Ui, here: &LessonBench<'_>, panel: Rect) {
    let t = here.bench.t;
    let painter = ui.painter();
    paint::title(
        painter,
        panel.left_top() + vec2(PAD, 22.0),
        say!("lesson-missing-angle"),
        "",
        t,
    );
    let small = type_faces::regular(type_faces::SMALL);
    let hint = match here.round() {
        Some(round) => say!("lesson-added-up-to-rnd-round", round = round),
        None => say!("lesson-added-over-all-rounds").to_owned(),
    };
    let at = pos2(panel.right() - PAD, panel.top() + 23.0);
    painter.text(at, Align2::RIGHT_CENTER, hint, small.clone(), t.soft_ink);
    let inner = panel.shrink2(vec2(PAD, 0.0));
    let Some(bent) = &here.bent else { return };
    let y = panel.top() + 62.0;
    let bar = Rect::from_min_max(pos2(inner.left(), y + 34.0), pos2(inner.right(), y + 52.0));
    if !here.is_open() {
        let font = type_faces::regular(type_faces::BODY);
        let words = say!("lesson-added-up-after-your-prediction");
        let at = pos2(inner.left(), y);
        paint::clipped_text(painter, at, words, font, t.soft_ink, inner.width());
        draw(painter, here, bar, None);
        return;
    }
    let sum = Summed::of(bent, here.round());
    let whole = sum.rounds + sum.end;
    let told = sum.words(here.tells_numbers());
    let read = Rect::from_min_max(pos2(inner.left(), panel.top() + 40.0), panel.max);
    let read = ui.interact(read, ui.scope_id().with("missing angle"), Sense::hover());
    read.widget_info(|| WidgetInfo::labeled(Role::Label, true, &told));
    if here.tells_numbers() {
        let big = type_faces::semibold(type_faces::BIG);
        let at = pos2(inner.left(), y);
        let value = painter.text(at, Align2::LEFT_CENTER, degrees(whole), big, t.ink);
        let words = say!("lesson-of-720-which-close-a-ball");
        let at = pos2(value.right() + 10.0, y + 3.0);
        let font = type_faces::regular(type_faces::BODY);
        paint::clipped_text(painter, at, words, font, t.soft_ink, inner.right() - at.x);
    }
    draw(painter, here, bar, Some(&sum));
    let words = match (sum.end != 0.0, bent.drawn_shut) {
        (true, true) => say!("lesson-the-hatched-part-is-what-closing-the"),
        _ => {
            say!("lesson-left-of-flat-there-is-too-much-fabric")
        }
    };
    let galley = painter.layout(words.to_owned(), small, t.soft_ink, inner.width());
    let top = bar.bottom() + 42.0;
    if top + galley.size().y < panel.bottom() - 4.0 {
        painter.galley(pos2(inner.left(), top), galley, t.soft_ink);
    }
}

/// The sum, degrees: of the start and the rounds, and of a close that is gathered.
#[derive(Debug, Clone, Copy, Default)]
struct Summed {
    rounds: f64,
    end: f64,
}

impl Summed {
    fn of(bent: &Bent, round: Option<u32>) -> Self {
        let edges = &bent.sum.edges;
        let at = round.map_or(edges.len(), |round| edges.len().min(round as usize));
        let rounds = at
            .checked_sub(1)
            .and_then(|i| edges.get(i))
            .map_or(bent.sum.start_rad, |edge| edge.running_rad);
        let whole = at == edges.len() && bent.drawn_shut;
        let end = if whole { bent.sum.end_rad.to_degrees() } else { 0.0 };
        Self { rounds: rounds.to_degrees(), end }
    }

    fn words(&self, numbers: bool) -> String {
        let whole = self.rounds + self.end;
        if numbers {
            return say!("lesson-missing-of", sum = degrees(whole));
        }
        let words = match whole {
            w if w < -20.0 => say!("lesson-more-fabric-than-lies-flat"),
            w if w < 20.0 => say!("lesson-nearly-flat"),
            w if w < 700.0 => say!("lesson-on-the-way-to-a-ball"),
            _ => say!("lesson-a-closed-ball"),
        };
        say!("lesson-missing-words", words = words)
    }
}

fn degrees(value: f64) -> String {
    let whole = value.round();
    if whole < 0.0 { format!("−{:.0}°", -whole) } else { format!("{:.0}°", whole.abs()) }
}

/// Draws the bar, and `sum` in it.
fn draw(painter: &Painter, here: &LessonBench<'_>, bar: Rect, sum: Option<&Summed>) {
    let t = here.bench.t;
    let Summed { rounds, end } = sum.copied().unwrap_or_default();
    let low = (rounds.min(0.0) * 1.12).min(-150.0);
    let high = BALL.max((rounds + end) * 1.02);
    let x = |value: f64| {
        let share = ((value - low) / (high - low)).clamp(0.0, 1.0) as f32;
        egui::lerp(bar.left()..=bar.right(), share)
    };
    painter.rect(bar, 4.0, t.well, Stroke::new(1.0, t.control_edge), StrokeKind::Inside);
    let between = |a: f64, b: f64| {
        Rect::from_x_y_ranges(x(a.min(b))..=x(a.max(b)), bar.y_range()).shrink2(vec2(0.0, 1.5))
    };
    painter.rect_filled(between(0.0, rounds), 0.0, t.highlight);
    if end != 0.0 {
        let gathered = between(rounds, rounds + end);
        let corners = [
            gathered.left_top(),
            gathered.right_top(),
            gathered.right_bottom(),
            gathered.left_bottom(),
        ];
        paint::hatch(painter, &corners, 6.0, Stroke::new(1.2, t.highlight_edge));
    }
    let small = type_faces::regular(type_faces::SMALL);
    for (value, word) in [
        (0.0, terms::bend(BendWord::Flat)),
        (360.0, say!("lesson-half-a-ball")),
        (BALL, say!("lesson-closed-ball")),
    ] {
        let at = x(value);
        painter.vline(at, bar.top() - 3.0..=bar.bottom() + 4.0, Stroke::new(1.0, t.outline));
        let (anchor, place) = match value {
            BALL => (Align2::RIGHT_TOP, pos2(bar.right(), bar.bottom() + 5.0)),
            _ => (Align2::CENTER_TOP, pos2(at, bar.bottom() + 5.0)),
        };
        painter.text(place, anchor, word, small.clone(), t.soft_ink);
        if here.tells_numbers() {
            let below = place + vec2(0.0, 14.0);
            painter.text(below, anchor, degrees(value), small.clone(), t.ink);
        }
    }
    if sum.is_none() {
        return;
    }
    let at = x(rounds + end);
    let tip = pos2(at, bar.top() - 1.0);
    let mark = vec![tip, tip + vec2(-5.0, -9.0), tip + vec2(5.0, -9.0)];
    let edge = Stroke::new(1.2, t.highlight_edge);
    painter.add(egui::Shape::convex_polygon(mark, t.highlight, edge));
}
