//! Knots: either side, several, the magnet, the line.

use egui::{Key, Modifiers, PointerButton, vec2};
use plumpline_core::Knot;

use super::hand::*;

#[test]
fn the_left_side_takes_the_hand_too() {
    let mut bench = bench();
    let (was, at) = (knots(&bench)[3], place(&bench, "Knot 4, left side"));
    drag(&mut bench, at, vec2(12.0, 6.0));
    let now = knots(&bench)[3];
    assert!(now.radius_mm < was.radius_mm - 1.0, "to the right on the left is inwards");
    assert!((place(&bench, "Knot 4, left side") - at - vec2(12.0, 6.0)).length() < 1.0);
    assert_eq!(steps(&bench), 1);
}

#[test]
fn a_drag_of_the_line_brings_a_knot_on_either_side() {
    for left in [false, true] {
        let mut bench = bench();
        let (was, at) = (knots(&bench), on_line(&bench, left));
        let out = if left { -14.0 } else { 14.0 };
        drag(&mut bench, at, vec2(out, 3.0));
        let now = knots(&bench);
        assert_eq!(now.len(), was.len() + 1, "left: {left}");
        assert!(now[3].radius_mm > was[2].radius_mm.min(was[3].radius_mm) + 1.0);
        assert_eq!(bench.state().view().knot, Some(3));
        assert_eq!(steps(&bench), 1);
        undo(&mut bench);
        assert_eq!(knots(&bench), was);
    }
}

#[test]
fn the_magnet_draws_a_knot_to_the_height_of_another_and_alt_lets_it_be() {
    let mut bench = bench();
    bench.key_press(Key::M);
    bench.run();
    assert!(bench.state().view().board.magnet);
    let other = knots(&bench)[2];
    let way = |bench: &Bench<'_>| {
        let from = place(bench, "Knot 4");
        (from, vec2(-30.3, place(bench, "Knot 3").y - from.y + 4.0))
    };
    let (from, to) = way(&bench);
    drag(&mut bench, from, to);
    let now = knots(&bench)[3];
    assert_eq!(now.height_mm, other.height_mm);
    undo(&mut bench);
    let (from, to) = way(&bench);
    pull(&mut bench, PointerButton::Primary, from, to, Modifiers::ALT);
    button(&mut bench, from + to, PointerButton::Primary, false, Modifiers::ALT);
    bench.run();
    let free = knots(&bench)[3];
    let off = f64::from(4.0 / scale(&bench));
    assert!((free.height_mm - other.height_mm - off).abs() < 0.2, "{free:?}");
}

#[test]
fn the_magnet_draws_to_whole_millimetres() {
    let mut bench = bench();
    click(&mut bench, "Magnet");
    let at = place(&bench, "Knot 4");
    drag(&mut bench, at, vec2(-33.0, 15.5));
    let now = knots(&bench)[3];
    let others = knots(&bench);
    let same = |f: fn(&Knot) -> f64| others.iter().filter(|k| f(k) == f(&now)).count() > 1;
    assert!(now.radius_mm.fract() == 0.0 || same(|k| k.radius_mm), "{now:?}");
    assert!(now.height_mm.fract() == 0.0 || same(|k| k.height_mm), "{now:?}");
}

#[test]
fn shift_click_takes_several_and_they_move_as_one() {
    let mut bench = bench();
    let before = knots(&bench);
    click(&mut bench, "Knot 3");
    let second = place(&bench, "Knot 5");
    shift_click(&mut bench, second);
    let mut held = bench.state().view().knots();
    held.sort_unstable();
    assert_eq!(held, [2, 4]);
    let at = place(&bench, "Knot 3");
    drag(&mut bench, at, vec2(8.0, -6.0));
    let now = knots(&bench);
    let moved = |k: usize| {
        (now[k].radius_mm - before[k].radius_mm, now[k].height_mm - before[k].height_mm)
    };
    assert!(moved(2).0 > 1.0 && (moved(2).0 - moved(4).0).abs() < 1e-6);
    assert!(moved(2).1 < -1.0 && (moved(2).1 - moved(4).1).abs() < 1e-6);
    assert_eq!(now[3], before[3]);
    assert_eq!(steps(&bench), 1);
    bench.key_press(Key::ArrowDown);
    bench.run();
    assert_eq!(steps(&bench), 2);
    assert!((knots(&bench)[4].height_mm - now[4].height_mm - 0.5).abs() < 1e-9);
    bench.key_press(Key::Delete);
    bench.run();
    assert_eq!(knots(&bench).len(), before.len() - 2);
    assert_eq!(steps(&bench), 3);
    for _ in 0..3 {
        undo(&mut bench);
    }
    assert_eq!(knots(&bench), before);
}

#[test]
fn shift_click_lets_a_knot_go_again() {
    let mut bench = bench();
    click(&mut bench, "Knot 3");
    let at = place(&bench, "Knot 5");
    shift_click(&mut bench, at);
    pause(&mut bench);
    shift_click(&mut bench, at);
    assert_eq!(bench.state().view().knots(), [2]);
}

#[test]
fn a_frame_on_empty_ground_takes_the_knots_in_it() {
    let mut bench = bench();
    let from = corner(&bench);
    let to = place(&bench, "Knot 4") + vec2(16.0, 14.0);
    drag(&mut bench, from, to - from);
    let mut held = bench.state().view().knots();
    held.sort_unstable();
    let heights = knots(&bench);
    let inside: Vec<usize> = (0..heights.len())
        .filter(|&k| heights[k].height_mm <= heights[3].height_mm + 2.0)
        .collect();
    assert_eq!(held, inside);
    assert!(held.len() > 2);
    assert_eq!(steps(&bench), 0);
    assert!(!bench.state().view().board.band);
}

#[test]
fn the_outline_before_the_drag_stays_in_sight_while_it_lasts() {
    let mut bench = bench();
    let before = bench.state().document().piece().outline.clone();
    let at = place(&bench, "Knot 4");
    pull(&mut bench, PointerButton::Primary, at, vec2(-18.0, 4.0), Modifiers::NONE);
    let drag = bench.state().view().board.drag.clone().expect("a drag");
    assert_eq!(drag.ghost(), Some(&before));
    assert_ne!(bench.state().document().piece().outline, before);
    bench.drop_at(at + vec2(-18.0, 4.0));
    bench.run();
    assert!(bench.state().view().board.drag.is_none());
}
