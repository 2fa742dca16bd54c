//! The outline board in daily use: zoom, several knots, either side, the magnet, the picture.

mod bench;

use bench::{Bench, opened};
use egui::{Event, Key, Modifiers, PointerButton, Pos2, Vec2, vec2};
use egui_kittest::kittest::Queryable as _;
use plumpline_core::{Knot, Outline, plan};

fn bench<'a>() -> Bench<'a> {
    opened(1440.0, 900.0)
}

fn place(bench: &Bench<'_>, name: &str) -> Pos2 {
    bench.get_by_label(name).rect().center()
}

fn knots(bench: &Bench<'_>) -> Vec<Knot> {
    bench.state().document().piece().outline.knots.clone()
}

fn steps(bench: &Bench<'_>) -> usize {
    bench.state().document().history.undo_steps()
}

fn scale(bench: &Bench<'_>) -> f32 {
    bench.state().view().lens.expect("a lens").scale
}

fn click(bench: &mut Bench<'_>, name: &str) {
    bench.get_by_label(name).click();
    bench.run();
}

fn undo(bench: &mut Bench<'_>) {
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    bench.run();
}

/// A press or a release at `pos`, with these modifiers held from now on.
fn button(
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
fn pull(bench: &mut Bench<'_>, which: PointerButton, from: Pos2, by: Vec2, held: Modifiers) {
    bench.hover_at(from);
    bench.step();
    button(bench, from, which, true, held);
    for i in 1..=5 {
        let moved = Event::PointerMoved(from + by * (i as f32 / 5.0));
        bench.event_modifiers(moved, held);
        bench.step();
    }
}

fn drag(bench: &mut Bench<'_>, from: Pos2, by: Vec2) {
    pull(bench, PointerButton::Primary, from, by, Modifiers::NONE);
    bench.drop_at(from + by);
    bench.run();
}

fn shift_click(bench: &mut Bench<'_>, at: Pos2) {
    bench.hover_at(at);
    bench.step();
    button(bench, at, PointerButton::Primary, true, Modifiers::SHIFT);
    button(bench, at, PointerButton::Primary, false, Modifiers::SHIFT);
    bench.run();
}

fn right_click(bench: &mut Bench<'_>, at: Pos2) {
    bench.hover_at(at);
    bench.step();
    button(bench, at, PointerButton::Secondary, true, Modifiers::NONE);
    button(bench, at, PointerButton::Secondary, false, Modifiers::NONE);
    bench.run();
}

/// Long enough that the next click is no double click.
fn pause(bench: &mut Bench<'_>) {
    for _ in 0..20 {
        bench.step();
    }
}

/// Empty ground: the upper left corner of the board.
fn corner(bench: &Bench<'_>) -> Pos2 {
    bench.get_by_label("Outline board").rect().left_top() + vec2(10.0, 12.0)
}

fn wheel(bench: &mut Bench<'_>, at: Pos2, points: f32) {
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
fn the_left_side_takes_the_hand_too() {
    let mut bench = bench();
    let (was, at) = (knots(&bench)[3], place(&bench, "Knot 4, left side"));
    drag(&mut bench, at, vec2(12.0, 6.0));
    let now = knots(&bench)[3];
    assert!(now.radius_mm < was.radius_mm - 1.0, "to the right on the left is inwards");
    assert!((place(&bench, "Knot 4, left side") - at - vec2(12.0, 6.0)).length() < 1.0);
    assert_eq!(steps(&bench), 1);
}

/// A place on the line between knots 3 and 4, on the screen, right or left.
fn on_line(bench: &Bench<'_>, left: bool) -> Pos2 {
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

fn type_over(bench: &mut Bench<'_>, label: &str, field: &str, text: &str) {
    bench.get_by_label_contains(label).click();
    bench.run();
    bench.get_by_label(field).type_text(text);
    bench.run();
    bench.key_press(Key::Enter);
    bench.run();
}

#[test]
fn the_knot_in_hand_takes_typed_numbers() {
    let mut bench = bench();
    click(&mut bench, "Knot 4");
    type_over(&mut bench, "Knot 4 radius", "New knot 4 radius", "3 cm");
    assert_eq!(knots(&bench)[3].radius_mm, 30.0);
    click(&mut bench, "Tell the width");
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

/// A studio with a gourd in it, saved in `folder`.
fn gourd<'a>(folder: &std::path::Path) -> Bench<'a> {
    let knots = [(0.0, 0.0), (32.0, 30.0), (16.0, 60.0), (38.0, 95.0), (0.0, 130.0)];
    let outline = Outline { knots: knots.map(|(r, z)| Knot::new(r, z)).to_vec() };
    let gauge = plumpline_core::Gauge::default();
    let piece = plumpline_core::Piece::new("Gourd", outline, gauge);
    let path = folder.join("gourd.ron");
    plumpline_core::file::save(&plumpline_core::Project::of_piece(piece), &path)
        .expect("saved");
    from_file(&path)
}

fn from_file<'a>(path: &std::path::Path) -> Bench<'a> {
    let path = path.to_owned();
    let mut bench = egui_kittest::Harness::builder()
        .with_size(vec2(1440.0, 900.0))
        .with_max_steps(12)
        .with_step_dt(0.05)
        .build_eframe(|cc| plumpline::studio::app::Studio::new(cc, Some(path)));
    bench.run();
    bench
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

/// A file let go over the window.
#[derive(Debug)]
struct Dropped(std::path::PathBuf);

impl egui::DroppedFile for Dropped {
    fn path(&self) -> &std::path::Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        std::fs::read(&self.0).map_err(|e| e.to_string())
    }
}

/// Writes a picture and drops it on the window.
fn dropped(bench: &mut Bench<'_>, folder: &std::path::Path) -> std::path::PathBuf {
    let path = folder.join("pear.png");
    let picture = image::RgbImage::from_pixel(40, 80, image::Rgb([180, 200, 90]));
    picture.save(&path).expect("a picture");
    bench.input_mut().dropped_files.push(std::sync::Arc::new(Dropped(path.clone())));
    bench.step();
    wait(bench, |bench| bench.state().document().piece().picture.is_some());
    path
}

/// Steps until something that is done on another thread has come about.
fn wait(bench: &mut Bench<'_>, done: impl Fn(&Bench<'_>) -> bool) {
    for _ in 0..200 {
        if done(bench) {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(20));
        bench.step();
    }
    assert!(done(bench), "it never came about");
    bench.run();
}

#[test]
fn a_picture_is_dropped_moved_scaled_and_let_go() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = gourd(folder.path());
    dropped(&mut bench, folder.path());
    assert_eq!(steps(&bench), 1);
    wait(&mut bench, |bench| bench.query_by_label("Known length, end 1").is_some());
    let picture =
        |bench: &Bench<'_>| bench.state().document().piece().picture.clone().expect("one");
    let first = picture(&bench);
    assert!((first.width_mm - 65.0).abs() < 1.5, "as high as the outline: {first:?}");
    // The hand moves the picture, not the knots.
    let (was, at) = (knots(&bench), corner(&bench) + vec2(150.0, 150.0));
    drag(&mut bench, at, vec2(22.0, -11.0));
    let moved = picture(&bench);
    let points = f64::from(scale(&bench));
    assert!((moved.across_mm - first.across_mm - 22.0 / points).abs() < 0.1);
    assert!((moved.along_mm - first.along_mm + 11.0 / points).abs() < 0.1);
    assert_eq!((knots(&bench), steps(&bench)), (was, 2));
    let end = place(&bench, "Known length, end 1");
    drag(&mut bench, end, vec2(0.0, 40.0));
    assert_eq!(steps(&bench), 3);
    let length = picture(&bench).ruler_mm(2.0);
    assert!(length < moved.ruler_mm(2.0) - 5.0);
    type_over(&mut bench, "Known length 9", "New known length", "8 cm");
    assert!((picture(&bench).ruler_mm(2.0) - 80.0).abs() < 1e-6);
    assert_eq!(steps(&bench), 4);
    click(&mut bench, "Lock the picture");
    let locked = picture(&bench);
    drag(&mut bench, at, vec2(30.0, 30.0));
    assert_eq!(picture(&bench), locked);
    click(&mut bench, "Hide the picture");
    assert!(picture(&bench).hidden);
    click(&mut bench, "Remove the picture");
    assert!(bench.state().document().piece().picture.is_none());
    undo(&mut bench);
    assert!(picture(&bench).hidden);
    assert_eq!(bench.run(), 1, "and then nothing is drawn");
}

#[test]
fn a_missing_picture_is_one_line_and_nothing_is_lost() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = gourd(folder.path());
    let path = dropped(&mut bench, folder.path());
    let project = bench.state().document().project().clone();
    let file = folder.path().join("traced.ron");
    plumpline_core::file::save(&project, &file).expect("saved");
    std::fs::remove_file(&path).expect("removed");
    let mut bench = from_file(&file);
    wait(&mut bench, |bench| bench.state().picture().error().is_some());
    let error = bench.state().picture().error().expect("a line").to_owned();
    assert!(error.contains("pear.png") && error.lines().count() == 1, "{error}");
    assert_eq!(bench.state().document().project(), &project);
    assert!(!bench.state().document().is_changed());
    assert!(bench.state().plan().is_some());
}

#[test]
fn what_is_no_picture_changes_nothing() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = bench();
    let path = folder.path().join("pear.png");
    std::fs::write(&path, "not a picture").expect("written");
    bench.input_mut().dropped_files.push(std::sync::Arc::new(Dropped(path)));
    bench.step();
    wait(&mut bench, |bench| bench.state().view().notice.is_some());
    let notice = bench.state().view().notice.clone().expect("a line");
    assert!(notice.wrong && notice.text.contains("pear.png"), "{}", notice.text);
    assert!(bench.state().document().piece().picture.is_none());
    assert_eq!(steps(&bench), 0);
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
        "Tell the width",
    ] {
        let size = bench.get_by_label(name).rect().size();
        assert!(size.x >= 23.9 && size.y >= 23.9, "{name}: {size:?}");
    }
}

#[test]
fn a_zoomed_board_at_rest_asks_for_no_more_frames() {
    let mut bench = bench();
    click(&mut bench, "Zoom in");
    bench.run();
    assert_eq!(bench.run(), 1);
}
