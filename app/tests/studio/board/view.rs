//! Zoom, pan and the keyboard.

use egui::{Key, Modifiers, PointerButton, vec2};
use egui_kittest::kittest::Queryable as _;

use super::hand::*;

#[test]
fn the_wheel_zooms_about_the_pointer_and_nought_fits_again() {
    let mut bench = bench();
    let (was, fitting) = (place(&bench, "Knot 4"), scale(&bench));
    wheel(&mut bench, was, 120.0);
    assert!(scale(&bench) > 1.2 * fitting, "{} from {fitting}", scale(&bench));
    assert!((place(&bench, "Knot 4") - was).length() < 1.0, "the knot under the pointer stays");
    assert_eq!(steps(&bench), 0, "a look is no step");
    assert!(!bench.state().document().is_changed());
    bench.key_press(Key::Num0);
    bench.run();
    assert!((scale(&bench) - fitting).abs() < 1e-3);
    assert!((place(&bench, "Knot 4") - was).length() < 0.5);
}

#[test]
fn buttons_zoom_and_two_clicks_on_empty_ground_fit() {
    let mut bench = bench();
    let fitting = scale(&bench);
    click(&mut bench, "Zoom in");
    click(&mut bench, "Zoom in");
    assert!(scale(&bench) > 1.5 * fitting);
    click(&mut bench, "Zoom out");
    assert!(scale(&bench) < 1.3 * fitting && scale(&bench) > 1.2 * fitting);
    click(&mut bench, "Fit view");
    assert!((scale(&bench) - fitting).abs() < 1e-3);
    click(&mut bench, "Zoom out");
    let empty = corner(&bench);
    bench.hover_at(empty);
    pause(&mut bench);
    for _ in 0..2 {
        bench.drag_at(empty);
        bench.drop_at(empty);
    }
    bench.run();
    assert!((scale(&bench) - fitting).abs() < 1e-3);
}

#[test]
fn the_middle_button_and_the_space_bar_pan() {
    let mut bench = bench();
    let was = place(&bench, "Knot 4");
    let by = vec2(-40.0, 25.0);
    let (from, held) = (corner(&bench) + vec2(60.0, 0.0), Modifiers::NONE);
    pull(&mut bench, PointerButton::Middle, from, by, held);
    button(&mut bench, from + by, PointerButton::Middle, false, held);
    bench.run();
    assert!((place(&bench, "Knot 4") - was - by).length() < 1.0);
    // With the space bar even a knot is only ground.
    let (before, from) = (knots(&bench), place(&bench, "Knot 4"));
    bench.hover_at(from);
    bench.key_down(Key::Space);
    bench.step();
    pull(&mut bench, PointerButton::Primary, from, vec2(-30.0, 10.0), held);
    button(&mut bench, from + vec2(-30.0, 10.0), PointerButton::Primary, false, held);
    bench.key_up(Key::Space);
    bench.run();
    assert!((place(&bench, "Knot 4") - from - vec2(-30.0, 10.0)).length() < 1.0);
    assert_eq!(knots(&bench), before);
    assert_eq!(steps(&bench), 0);
    assert!(bench.state().view().selected.is_none() && bench.state().view().knot.is_none());
}

#[test]
fn a_knot_moves_with_the_hand_while_zoomed() {
    let mut bench = bench();
    let at = place(&bench, "Knot 4");
    wheel(&mut bench, at, 200.0);
    let (was, points) = (knots(&bench)[3], scale(&bench));
    drag(&mut bench, at, vec2(-20.0, 10.0));
    let now = knots(&bench)[3];
    assert!((now.radius_mm - was.radius_mm + f64::from(20.0 / points)).abs() < 0.05);
    assert!((place(&bench, "Knot 4") - at - vec2(-20.0, 10.0)).length() < 1.0);
}

#[test]
fn tab_leaves_the_board_and_everything_on_it_can_be_hit() {
    let mut bench = bench();
    click(&mut bench, "Knot 4");
    bench.get_by_label("Outline board").focus();
    bench.run();
    bench.key_press(Key::Tab);
    bench.run();
    assert!(!bench.get_by_label("Outline board").is_focused());
    for name in [
        "Knot 4",
        "Knot 4, left side",
        "Scale width",
        "Scale height",
        "Zoom in",
        "Zoom out",
        "Fit view",
        "Magnet",
        "Picture",
        "Show the width",
    ] {
        let size = bench.get_by_label(name).rect().size();
        assert!(size.x >= 23.9 && size.y >= 23.9, "{name}: {size:?}");
    }
}

#[test]
fn a_zoomed_board_at_rest_asks_for_no_more_frames() {
    let mut bench = bench();
    click(&mut bench, "Zoom in");
    crate::wait::until_settled(&mut bench);
    assert_eq!(bench.run(), 1);
}
