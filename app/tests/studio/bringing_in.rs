//! Shapes brought in: from a photograph, a formula, a table, a drawing and a solid, each looked
//! at before it is taken.

use std::path::Path;

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use plumpline::view::Over;
use plumpline_trace::TracedSide;

use crate::bench::{Bench, opened};
use crate::board::picture::{dropped_of_size, let_go_over_the_window, traced};
use crate::hand::{click, go_and_click, press, undo};
use crate::wait::{until, until_at_rest};

fn ctrl(bench: &mut Bench<'_>, key: Key) {
    bench.key_press_modifiers(Modifiers::COMMAND, key);
    bench.run();
}

/// Types over what stands in the field called `name`.
fn type_in(bench: &mut Bench<'_>, name: &str, text: &str) {
    bench.get_by_label(name).focus();
    bench.run();
    click(bench, name);
    ctrl(bench, Key::A);
    bench.event(egui::Event::Text(text.into()));
    bench.run();
}

fn size(bench: &Bench<'_>) -> (f64, f64) {
    let profile = bench.state().document().piece().outline.profile(800);
    (profile.height_mm(), 2.0 * profile.widest_mm())
}

fn about(found: (f64, f64), wanted: (f64, f64)) {
    let near = |a: f64, b: f64| (a - b).abs() < 0.015 * b;
    assert!(near(found.0, wanted.0) && near(found.1, wanted.1), "{found:?} for {wanted:?}");
}

/// A jug 200 pixels high and 120 wide with a handle on its right.
fn jug(x: u32, y: u32) -> [u8; 3] {
    let (x, y) = (f64::from(x) - 130.0, f64::from(y) - 150.0);
    let body = (x / 60.0).hypot(y / 100.0) < 1.0;
    let ring = ((x - 55.0) / 50.0).hypot(y / 45.0);
    let handle = x > 0.0 && (0.7..1.0).contains(&ring);
    if body || handle { [150, 70, 40] } else { [225, 228, 220] }
}

#[test]
fn a_photograph_is_traced_its_handle_cut_off_taken_and_taken_back() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = opened(1440.0, 900.0);
    dropped_of_size(&mut bench, folder.path(), (320, 300), jug);
    let before = bench.state().document().project().clone();
    traced(&mut bench);
    let told = |bench: &Bench<'_>, part: &str| bench.query_by_label_contains(part).is_some();
    assert!(told(&bench, "1: a part on the right stands out by"));
    assert!(
        told(&bench, "not cut off") && told(&bench, "Look again: a part of it is not turned")
    );
    click(&mut bench, "Cut off what is not round");
    until(&mut bench, "it was never cut", |bench| {
        let found = bench.state().outlining().found().and_then(Result::ok);
        found.is_some_and(|found| found.trace.report.cut)
    });
    bench.run();
    assert!(told(&bench, ", cut off") && !told(&bench, "Look again"));
    type_in(&mut bench, "Height", "10 cm");
    press(&mut bench, Key::Enter);
    until(&mut bench, "the height was never taken", |bench| {
        let found = bench.state().outlining().found().and_then(Result::ok);
        found.is_some_and(|found| (found.trace.report.height_mm - 100.0).abs() < 0.01)
    });
    bench.run();
    assert_eq!(bench.state().document().project(), &before, "nothing is taken unasked");
    click(&mut bench, "Use the outline");
    about(size(&bench), (100.0, 60.0));
    assert!(bench.state().view().over.is_none());
    undo(&mut bench);
    assert_eq!(bench.state().document().project(), &before, "it was one step");
    until_at_rest(&mut bench);
}

/// Many colours everywhere, an egg 160 pixels high and 96 wide of another few in the middle.
fn busy(x: u32, y: u32) -> [u8; 3] {
    let n = (((x * 7919 + y * 104_729) ^ (x * y)) % 40) as u8;
    let (u, v) = ((f64::from(x) - 96.0) / 48.0, (f64::from(y) - 128.0) / 80.0);
    if u.hypot(v) < 1.0 {
        return [200 + n / 2, 90 + n, 40];
    }
    let tile = (x / 24 + y / 24) % 3;
    [[30 + n, 60, 120 + n], [90, 140 + n, 90], [60, 60 + n, 60]][tile as usize]
}

#[test]
fn a_busy_background_is_marked_by_the_keyboard_alone() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = opened(1440.0, 900.0);
    dropped_of_size(&mut bench, folder.path(), (192, 256), busy);
    traced(&mut bench);
    let why = bench.state().outlining().found().and_then(Result::err).expect("not plain");
    assert!(why.contains("draw a rectangle"), "{why}");
    bench.get_by_label("The picture with the traced line").focus();
    bench.run();
    assert!(bench.query_by_label_contains("Space begins a mark").is_some(), "keys are told");
    let walk = |bench: &mut Bench<'_>, key: Key, times: u32| {
        for _ in 0..times {
            bench.key_press_modifiers(Modifiers::SHIFT, key);
            bench.step();
        }
    };
    // The first corner is given up again by Esc, which leaves the card where it is.
    press(&mut bench, Key::Space);
    walk(&mut bench, Key::ArrowLeft, 2);
    assert!(bench.state().view().tracing.frame.is_some());
    press(&mut bench, Key::Escape);
    assert!(bench.state().view().tracing.frame.is_none());
    assert_eq!(bench.state().view().over, Some(Over::Trace));
    walk(&mut bench, Key::ArrowLeft, 3);
    walk(&mut bench, Key::ArrowUp, 7);
    press(&mut bench, Key::Space);
    walk(&mut bench, Key::ArrowRight, 10);
    walk(&mut bench, Key::ArrowDown, 14);
    press(&mut bench, Key::Space);
    until(&mut bench, "nothing was traced", |bench| {
        bench.state().outlining().found().is_some_and(|found| found.is_ok())
    });
    bench.run();
    let found = bench.state().outlining().found().and_then(Result::ok).expect("traced");
    let report = &found.trace.report;
    let slim = report.width_mm / report.height_mm;
    assert!((slim - 0.6).abs() < 0.03, "{slim}");
    // Strokes too; Backspace takes the last one back, and then the rectangle.
    click(&mut bench, "Draw: beside it");
    bench.get_by_label("The picture with the traced line").focus();
    bench.run();
    press(&mut bench, Key::Space);
    walk(&mut bench, Key::ArrowLeft, 2);
    press(&mut bench, Key::Space);
    let strokes = |bench: &Bench<'_>| bench.state().view().tracing.strokes.clone();
    assert_eq!(strokes(&bench).len(), 1);
    assert!(!strokes(&bench)[0].thing && strokes(&bench)[0].points.len() == 3);
    press(&mut bench, Key::Backspace);
    assert!(strokes(&bench).is_empty() && bench.state().view().tracing.frame.is_some());
    press(&mut bench, Key::Backspace);
    assert!(!bench.state().view().tracing.is_marked());
    until_at_rest(&mut bench);
}

#[test]
fn work_can_be_stopped_and_begun_again() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = opened(1440.0, 900.0);
    dropped_of_size(&mut bench, folder.path(), (320, 300), jug);
    traced(&mut bench);
    // Another wish is under way in the frame after it is made, and stays stopped once it is.
    bench.get_by_label("Side: left").click();
    until(&mut bench, "it was never under way", |bench| {
        bench.query_by_label("Stop").is_some()
            || bench.state().view().tracing.side != TracedSide::Mean
    });
    if bench.query_by_label("Stop").is_some() {
        click(&mut bench, "Stop");
    }
    if bench.state().view().tracing.stopped {
        assert!(bench.state().outlining().share().is_none(), "nothing is under way");
        assert!(bench.query_by_label("Stopped").is_some());
        click(&mut bench, "Trace again");
    }
    until(&mut bench, "the left side was never traced", |bench| {
        bench.state().outlining().share().is_none() && !bench.state().view().tracing.stopped
    });
    bench.run();
    assert!(bench.state().outlining().found().is_some_and(|found| found.is_ok()));
    until_at_rest(&mut bench);
}

#[test]
fn a_formula_typed_wrong_is_told_at_its_place_and_mended_it_is_a_piece() {
    let mut bench = opened(1440.0, 900.0);
    ctrl(&mut bench, Key::N);
    click(&mut bench, "From a formula");
    type_in(&mut bench, "Formula of the radius", "30*sine(pi*t)");
    let line = "formula, character 4: “sine” is not known";
    assert!(bench.query_by_label_contains(line).is_some());
    ctrl(&mut bench, Key::Enter);
    assert_eq!(bench.state().document().piece().name, "Float", "nothing is made of it");
    // It can be read, but has no radius everywhere.
    type_in(&mut bench, "Formula of the radius", "40-z");
    assert!(bench.query_by_label_contains("formula, at z = 40.0 mm: ").is_some());
    type_in(&mut bench, "Formula of the radius", "30*sin(pi*t)");
    assert!(bench.query_by_label_contains("formula, ").is_none());
    assert!(bench.query_by_label_contains(" rounds of ").is_some());
    type_in(&mut bench, "Height", "6 cm");
    press(&mut bench, Key::Enter);
    click(&mut bench, "Create");
    assert_eq!(bench.state().document().piece().name, "Formula");
    about(size(&bench), (60.0, 60.0));
    assert!(bench.state().plan().is_some() && !bench.state().document().is_changed());
}

#[test]
fn a_dome_of_another_exponent_is_a_superellipse() {
    let mut bench = opened(1440.0, 900.0);
    let made = |bench: &mut Bench<'_>, exponent: Option<&str>| {
        ctrl(bench, Key::N);
        click(bench, "Starter Dome");
        if let Some(exponent) = exponent {
            type_in(bench, "Exponent", exponent);
            press(bench, Key::Enter);
        }
        click(bench, "Create");
        about(size(bench), (50.0, 90.0));
        let outline = &bench.state().document().piece().outline;
        let stations = outline.profile(800).stations;
        let near = |z: f64| (z - 25.0).abs();
        let half = stations.iter().min_by(|a, b| near(a.at.z).total_cmp(&near(b.at.z)));
        half.expect("a station").at.r
    };
    let usual = made(&mut bench, None);
    let boxy = made(&mut bench, Some("4"));
    // Half way up, (r / 45)^n = 1 − (1 / 2)^n.
    assert!((usual - 45.0 * 0.75_f64.sqrt()).abs() < 1.0, "{usual}");
    assert!((boxy - 45.0 * (15.0_f64 / 16.0).powf(0.25)).abs() < 0.5, "{boxy}");
}

fn written(folder: &Path, name: &str, bytes: &[u8]) -> std::path::PathBuf {
    let path = folder.join(name);
    std::fs::write(&path, bytes).expect("written");
    path
}

/// Drops a file on the window and waits until the card knows what is in it.
fn looked_at(bench: &mut Bench<'_>, path: &Path, part: &str) {
    let_go_over_the_window(bench, path);
    until(bench, part, |bench| bench.query_by_label_contains(part).is_some());
    bench.run();
}

/// A spindle of 12 sides as a mesh whose unit is 1 cm: 6 cm high, 4 wide.
fn spindle() -> Vec<u8> {
    let at = |k: u32, z: f32| {
        let turn = std::f32::consts::TAU * k as f32 / 12.0;
        [2.0 * turn.cos(), 2.0 * turn.sin(), z]
    };
    let mut triangles = Vec::new();
    for k in 0..12 {
        for pole in [0.0_f32, 6.0] {
            triangles.push([at(k, 3.0), at(k + 1, 3.0), [0.0, 0.0, pole]]);
        }
    }
    let mut bytes = vec![0; 80];
    bytes.extend((triangles.len() as u32).to_le_bytes());
    for triangle in triangles {
        bytes.extend([0; 12]);
        for v in triangle.iter().flatten() {
            bytes.extend(v.to_le_bytes());
        }
        bytes.extend([0; 2]);
    }
    bytes
}

#[test]
fn tables_drawings_and_solids_are_looked_at_on_the_start_card() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = opened(1440.0, 900.0);
    let table = b"diameter_cm;height_cm\n0;0\n4,33;1\n6;3\n4,33;5\n0;6\n";
    let path = written(folder.path(), "acorn.csv", table);
    looked_at(&mut bench, &path, "5 knots");
    assert_eq!(bench.state().document().piece().name, "Float", "nothing is taken unasked");
    click(&mut bench, "Create");
    assert_eq!(bench.state().document().piece().name, "acorn");
    about(size(&bench), (60.0, 60.0));

    let svg = b"<svg xmlns='http://www.w3.org/2000/svg' width='90mm' viewBox='0 0 90 90'>\
                <path d='M 40 5 A 30 30 0 0 1 40 65'/></svg>";
    let path = written(folder.path(), "bead.svg", svg);
    looked_at(&mut bench, &path, "the line lies within");
    type_in(&mut bench, "Height", "9 cm");
    press(&mut bench, Key::Enter);
    click(&mut bench, "Create");
    until(&mut bench, "no bead", |bench| bench.state().document().piece().name == "bead");

    let path = written(folder.path(), "spindle.stl", &spindle());
    looked_at(&mut bench, &path, "% round about its axis");
    go_and_click(&mut bench, "One unit is: cm");
    until(&mut bench, "it never grew", |bench| {
        bench.query_by_label_contains("least at").is_some()
            && bench.query_by_label_contains("rounds of").is_some()
    });
    until_at_rest(&mut bench);
    click(&mut bench, "Create");
    assert_eq!(bench.state().document().piece().name, "spindle");
    let (high, wide) = size(&bench);
    assert!((high - 60.0).abs() < 0.5 && (wide - 39.0).abs() < 1.0, "{high}, {wide}");
}

#[test]
fn what_is_no_shape_is_one_line_on_the_card_and_makes_nothing() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = opened(1440.0, 900.0);
    for (name, bytes, part) in [
        ("same.csv", &b"radius_mm,height_mm\n0,0\n\n5,5\n5,5\n0,9\n"[..], "line 5: the same"),
        ("none.svg", b"<svg xmlns='http://www.w3.org/2000/svg'/>", "it has no path"),
        ("none.stl", b"solid", "mesh: "),
        ("none.png", b"no picture", "none.png: it is no picture"),
    ] {
        let path = written(folder.path(), name, bytes);
        looked_at(&mut bench, &path, part);
        until_at_rest(&mut bench);
        ctrl(&mut bench, Key::Enter);
        assert_eq!(bench.state().document().piece().name, "Float", "{name}");
    }
    press(&mut bench, Key::Escape);
    assert!(bench.query_by_label("Create").is_none());
    until_at_rest(&mut bench);
}

#[test]
fn a_picture_on_the_start_card_is_traced_next() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = opened(1440.0, 900.0);
    ctrl(&mut bench, Key::N);
    let path = folder.path().join("jug.png");
    image::RgbImage::from_fn(320, 300, |x, y| image::Rgb(jug(x, y)))
        .save(&path)
        .expect("saved");
    looked_at(&mut bench, &path, "320 × 300 pixels");
    click(&mut bench, "Create");
    assert_eq!(bench.state().view().over, Some(Over::Trace));
    until(&mut bench, "nothing was traced", |b| b.state().outlining().found().is_some());
    bench.run();
    click(&mut bench, "Use the outline");
    let piece = bench.state().document().piece();
    assert_eq!(piece.name, "jug");
    assert!(piece.picture.as_ref().is_some_and(|picture| !picture.hidden));
    until_at_rest(&mut bench);
}
