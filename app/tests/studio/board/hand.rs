//! What a hand does on the board, for these tests.

use egui::{Event, Key, Modifiers, PointerButton, Pos2, Vec2, vec2};
use egui_kittest::kittest::Queryable as _;
use plumpline_core::{Knot, Outline};

pub(crate) use crate::hand::{click, undo};

pub(crate) use crate::bench::{Bench, opened};

pub(crate) fn bench<'a>() -> Bench<'a> {
    opened(1440.0, 900.0)
}

pub(crate) fn place(bench: &Bench<'_>, name: &str) -> Pos2 {
    bench.get_by_label(name).rect().center()
}

pub(crate) fn knots(bench: &Bench<'_>) -> Vec<Knot> {
    bench.state().document().piece().outline.knots.clone()
}

pub(crate) fn steps(bench: &Bench<'_>) -> usize {
    bench.state().document().history.undo_steps()
}

pub(crate) fn scale(bench: &Bench<'_>) -> f32 {
    bench.state().view().lens.expect("a lens").scale
}

/// A press or a release at `pos`, with these modifiers held from now on.
pub(crate) fn button(
    bench: &mut Bench<'_>,
    pos: Pos2,
    button: PointerButton,
    down: bool,
    held: Modifiers,
) {
    let event = Event::PointerButton { pos, button, pressed: down, modifiers: held };
    bench.event_modifiers(event, held);
    bench.step();
}

/// Presses at `from` and moves by `by`, without letting go.
pub(crate) fn pull(
    bench: &mut Bench<'_>,
    which: PointerButton,
    from: Pos2,
    by: Vec2,
    held: Modifiers,
) {
    bench.hover_at(from);
    bench.step();
    button(bench, from, which, true, held);
    for i in 1..=5 {
        let moved = Event::PointerMoved(from + by * (i as f32 / 5.0));
        bench.event_modifiers(moved, held);
        bench.step();
    }
}

pub(crate) fn drag(bench: &mut Bench<'_>, from: Pos2, by: Vec2) {
    pull(bench, PointerButton::Primary, from, by, Modifiers::NONE);
    bench.drop_at(from + by);
    bench.run();
}

pub(crate) fn shift_click(bench: &mut Bench<'_>, at: Pos2) {
    bench.hover_at(at);
    bench.step();
    button(bench, at, PointerButton::Primary, true, Modifiers::SHIFT);
    button(bench, at, PointerButton::Primary, false, Modifiers::SHIFT);
    bench.run();
}

pub(crate) fn right_click(bench: &mut Bench<'_>, at: Pos2) {
    bench.hover_at(at);
    bench.step();
    button(bench, at, PointerButton::Secondary, true, Modifiers::NONE);
    button(bench, at, PointerButton::Secondary, false, Modifiers::NONE);
    bench.run();
}

/// Long enough that the next click is no double click.
pub(crate) fn pause(bench: &mut Bench<'_>) {
    for _ in 0..20 {
        bench.step();
    }
}

/// Empty ground: the upper left corner of the board.
pub(crate) fn corner(bench: &Bench<'_>) -> Pos2 {
    bench.get_by_label("Outline board").rect().left_top() + vec2(10.0, 12.0)
}

pub(crate) fn wheel(bench: &mut Bench<'_>, at: Pos2, points: f32) {
    bench.hover_at(at);
    bench.step();
    bench.event(Event::MouseWheel {
        unit: egui::MouseWheelUnit::Point,
        source: egui::MouseWheelSource::Wheel,
        delta: vec2(0.0, points),
        phase: egui::TouchPhase::Move,
        modifiers: Modifiers::NONE,
    });
    for _ in 0..30 {
        bench.step();
    }
}

/// A place on the line between knots 3 and 4, on the screen, right or left.
pub(crate) fn on_line(bench: &Bench<'_>, left: bool) -> Pos2 {
    let curve = bench.state().document().piece().outline.beziers()[2];
    let middle = |a: [f64; 4]| (a[0] + 3.0 * a[1] + 3.0 * a[2] + a[3]) / 8.0;
    let r = middle([curve.p0.x, curve.p1.x, curve.p2.x, curve.p3.x]);
    let z = middle([curve.p0.y, curve.p1.y, curve.p2.y, curve.p3.y]);
    let knot = knots(bench)[2];
    let at = place(bench, if left { "Knot 3, left side" } else { "Knot 3" });
    let points = f64::from(scale(bench));
    let away = if left { -1.0 } else { 1.0 } * (r - knot.radius_mm);
    at + vec2((away * points) as f32, ((z - knot.height_mm) * points) as f32)
}

pub(crate) fn type_over(bench: &mut Bench<'_>, label: &str, field: &str, text: &str) {
    bench.get_by_label_contains(label).click();
    bench.run();
    bench.get_by_label(field).type_text(text);
    bench.run();
    bench.key_press(Key::Enter);
    bench.run();
}

/// A studio with a gourd in it, saved in `folder`.
pub(crate) fn gourd<'a>(folder: &std::path::Path) -> Bench<'a> {
    let knots = [(0.0, 0.0), (32.0, 30.0), (16.0, 60.0), (38.0, 95.0), (0.0, 130.0)];
    let outline = Outline { knots: knots.map(|(r, z)| Knot::new(r, z)).to_vec() };
    let gauge = plumpline_core::Gauge::default();
    let piece = plumpline_core::Piece::new("Gourd", outline, gauge);
    let path = folder.join("gourd.ron");
    plumpline_core::file::save(&plumpline_core::Project::of_piece(piece), &path)
        .expect("saved");
    from_file(&path)
}

pub(crate) fn from_file<'a>(path: &std::path::Path) -> Bench<'a> {
    let path = path.to_owned();
    let mut bench = egui_kittest::Harness::builder()
        .with_size(vec2(1440.0, 900.0))
        .with_max_steps(60)
        .with_step_dt(0.05)
        .build_eframe(|cc| plumpline::window::Studio::new(cc, Some(path)));
    bench.run();
    bench
}
