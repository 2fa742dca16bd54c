//! Typed measures, handles of the whole outline, menus.

use egui::{Key, Modifiers, PointerButton, vec2};
use egui_kittest::kittest::Queryable as _;
use plumpline_core::{Knot, plan};

use super::hand::*;

#[test]
fn the_knot_in_hand_takes_typed_numbers() {
    let mut bench = bench();
    click(&mut bench, "Knot 4");
    type_over(&mut bench, "Knot 4 radius", "New knot 4 radius", "3 cm");
    assert_eq!(knots(&bench)[3].radius_mm, 30.0);
    click(&mut bench, "Show the width");
    type_over(&mut bench, "Knot 4 width", "New knot 4 width", "64");
    assert_eq!(knots(&bench)[3].radius_mm, 32.0);
    let height = knots(&bench)[3].height_mm.round() + 1.0;
    type_over(&mut bench, "Knot 4 height", "New knot 4 height", &height.to_string());
    assert_eq!(knots(&bench)[3].height_mm, height);
    assert_eq!(steps(&bench), 3);
    type_over(&mut bench, "Knot 4 height", "New knot 4 height", "tall");
    assert_eq!(steps(&bench), 3);
    let notice = bench.state().view().notice.clone().expect("a line");
    assert!(notice.wrong && notice.text.contains("tall"), "{}", notice.text);
}

#[test]
fn a_field_that_is_left_takes_what_was_typed_and_only_that() {
    let mut bench = bench();
    let before = knots(&bench);
    click(&mut bench, "Knot 4");
    bench.get_by_label_contains("Knot 4 radius").click();
    bench.run();
    click(&mut bench, "Knot 5");
    assert_eq!(knots(&bench), before, "a rounded number left alone changes nothing");
    assert!(bench.state().view().typing.is_none());
    bench.get_by_label_contains("Knot 5 radius").click();
    bench.run();
    bench.get_by_label("New knot 5 radius").type_text("21");
    bench.run();
    click(&mut bench, "Knot 4");
    assert_eq!(knots(&bench)[4].radius_mm, 21.0);
    assert_eq!((steps(&bench), bench.state().view().knot), (1, Some(3)));
    bench.get_by_label_contains("Height ").click();
    bench.run();
    bench.key_press(Key::Enter);
    bench.run();
    assert_eq!(steps(&bench), 1, "nor does a height");
}

#[test]
fn a_neck_is_dimensioned_and_typed_over() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = gourd(folder.path());
    type_over(&mut bench, "Neck ", "New neck", "46");
    let planned = plan(bench.state().document().piece()).expect("a plan");
    let inner =
        planned.forecast.iter().filter(|n| (45.0..75.0).contains(&(n.z + planned.shift_mm)));
    let neck = inner.map(|n| 2.0 * n.r).fold(f64::INFINITY, f64::min);
    assert!((neck - 46.0).abs() < 3.0, "{neck}");
    assert_eq!(steps(&bench), 1);
}

#[test]
fn handles_scale_the_whole_outline_in_one_step() {
    let mut bench = bench();
    let before = knots(&bench);
    let at = place(&bench, "Scale width");
    drag(&mut bench, at, vec2(20.0, 0.0));
    let now = knots(&bench);
    let factor = now[3].radius_mm / before[3].radius_mm;
    assert!(factor > 1.05);
    for (was, is) in before.iter().zip(&now) {
        assert!((is.radius_mm - factor * was.radius_mm).abs() < 0.01, "{was:?} {is:?}");
        assert_eq!(is.height_mm, was.height_mm);
    }
    assert_eq!(steps(&bench), 1);
    undo(&mut bench);
    let at = place(&bench, "Scale height");
    drag(&mut bench, at, vec2(0.0, 30.0));
    let now = knots(&bench);
    let foot = |knots: &[Knot]| knots.iter().map(|k| k.height_mm).fold(f64::MIN, f64::max);
    assert_eq!(foot(&now), foot(&before), "the foot stays");
    assert!(now[0].height_mm > before[0].height_mm + 2.0, "the top comes down");
    assert_eq!(now[3].radius_mm, before[3].radius_mm);
}

#[test]
fn a_handle_dragged_off_the_board_and_back_is_still_held() {
    let mut bench = bench();
    let at = place(&bench, "Scale width");
    pull(&mut bench, PointerButton::Primary, at, vec2(500.0, 0.0), Modifiers::NONE);
    assert!(knots(&bench)[3].radius_mm > 60.0);
    for x in [300.0, 100.0, -10.0] {
        bench.hover_at(at + vec2(x, 0.0));
        bench.step();
    }
    let by = knots(&bench)[3].radius_mm;
    bench.drop_at(at + vec2(-10.0, 0.0));
    bench.run();
    assert!(by < 40.0 && (knots(&bench)[3].radius_mm - by).abs() < 1e-9, "{by}");
    assert_eq!(steps(&bench), 1);
    assert!(bench.state().view().board.drag.is_none());
}

#[test]
fn right_clicks_offer_what_can_be_done_there() {
    let mut bench = bench();
    let at = place(&bench, "Knot 4");
    right_click(&mut bench, at);
    for words in ["Make it a corner", "Held by a seam", "Card from here to the next knot"] {
        assert!(bench.query_by_label_contains(words).is_some(), "{words}");
    }
    bench.get_by_label_contains("Make it a corner").click();
    bench.run();
    assert!(knots(&bench)[3].corner);
    bench.key_press(Key::Escape);
    bench.run();
    let at = on_line(&bench, true);
    right_click(&mut bench, at);
    let was = knots(&bench).len();
    bench.get_by_label_contains("Add a knot here").click();
    bench.run();
    assert_eq!(knots(&bench).len(), was + 1);
    let body = place(&bench, "Knot 4") - vec2(60.0, 0.0);
    bench.key_press(Key::Escape);
    bench.run();
    right_click(&mut bench, body);
    bench.get_by_label_contains("Pin round").click();
    bench.run();
    assert_eq!(bench.state().document().piece().pins.len(), 1);
    bench.key_press(Key::Escape);
    bench.run();
    click(&mut bench, "Zoom in");
    let empty = corner(&bench);
    right_click(&mut bench, empty);
    assert!(bench.query_by_label_contains("Picture…").is_some());
    assert!(bench.state().view().lens.is_some_and(|l| l.by_hand));
}
