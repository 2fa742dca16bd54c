//! Shapes brought in from pictures, drawings, solids and formulas.

use std::path::Path;
use std::process::{Command, Output};

use plumpline_core::{Outline, Project, file};

fn run(args: &str, folder: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_plumpline"))
        .args(args.split_whitespace())
        .current_dir(folder)
        .output()
        .expect("plumpline runs")
}

fn made(args: &str, folder: &Path) -> (Project, String) {
    let out = run(&format!("{args} -o made.ron"), folder);
    let said = String::from_utf8_lossy(&out.stderr).into_owned();
    assert!(out.status.success(), "{args}: {said}");
    let project = file::load(&folder.join("made.ron")).expect("it loads");
    std::fs::remove_file(folder.join("made.ron")).expect("removed");
    (project, String::from_utf8_lossy(&out.stdout).into_owned())
}

fn refused(args: &str, folder: &Path, status: i32, part: &str) {
    let out = run(&format!("{args} -o made.ron"), folder);
    let said = String::from_utf8_lossy(&out.stderr).into_owned();
    assert_eq!(out.status.code(), Some(status), "{args}: {said}");
    assert_eq!(said.lines().count(), 1, "{args}: {said}");
    assert!(said.contains(part), "{args}: {said}");
    assert!(!folder.join("made.ron").exists(), "{args} left a file");
}

fn size(outline: &Outline) -> (f64, f64) {
    let profile = outline.profile(800);
    (profile.height_mm(), 2.0 * profile.widest_mm())
}

fn about(found: (f64, f64), wanted: (f64, f64)) {
    let near = |a: f64, b: f64| (a - b).abs() < 0.01 * b;
    assert!(near(found.0, wanted.0) && near(found.1, wanted.1), "{found:?} for {wanted:?}");
}

/// A jug 200 pixels high and 120 wide, its handle on the right and a shadow beside it.
fn jug(folder: &Path, handle: bool) {
    let picture = image::RgbImage::from_fn(320, 300, |x, y| {
        let (x, y) = (f64::from(x) - 130.0, f64::from(y) - 150.0);
        let body = (x / 60.0).hypot(y / 100.0) < 1.0;
        let ring = ((x - 55.0) / 50.0).hypot(y / 45.0);
        if body || (handle && x > 0.0 && (0.7..1.0).contains(&ring)) {
            image::Rgb([150, 70, 40])
        } else {
            image::Rgb([225, 228, 220])
        }
    });
    picture.save(folder.join("jug.png")).expect("written");
}

#[test]
fn a_picture_becomes_a_project() {
    let folder = tempfile::tempdir().expect("a folder");
    jug(folder.path(), false);
    let (project, said) = made("trace jug.png --height 10cm --over over.png", folder.path());
    let piece = &project.pieces[0];
    assert_eq!(piece.name, "jug");
    about(size(&piece.outline), (100.0, 60.0));
    assert!(piece.outline.knots.len() <= 9, "{:?}", piece.outline);
    assert!(said.contains("100.0 mm high") && said.contains("knots"), "{said}");
    assert!(!said.contains("Look again") && !said.contains("cut"), "{said}");
    // The picture lies under the outline as it was traced.
    let picture = piece.picture.as_ref().expect("the picture");
    let middle = picture.place((130.0 / 320.0, 150.0 / 300.0), 300.0 / 320.0);
    assert!(middle.0.abs() < 0.5 && (middle.1 - 50.0).abs() < 0.5, "{middle:?}");
    let over = image::open(folder.path().join("over.png")).expect("a picture").into_rgb8();
    assert_eq!(over.dimensions(), (320, 300));
    assert_ne!(over.get_pixel(70, 150), &image::Rgb([225, 228, 220]), "the line is there");
}

#[test]
fn a_handle_is_told_and_cut_and_a_known_length_scales() {
    let folder = tempfile::tempdir().expect("a folder");
    jug(folder.path(), true);
    let (_, said) = made("trace jug.png --height 10cm", folder.path());
    assert!(said.contains("a part on the right") && said.contains("not cut off"), "{said}");
    assert!(said.contains("Look again"), "{said}");
    let (project, said) =
        made("trace jug.png --known 130,50,130,250=20cm --cut --name Jug", folder.path());
    about(size(&project.pieces[0].outline), (200.0, 120.0));
    assert!(said.contains(", cut off"), "{said}");
    let (project, _) = made(
        "trace jug.png --height 10cm --side left --start bottom --tolerance 0.5mm \
         --frame 40,20,300,280 --thing 130,100,130,200 --background 5,5,5,295",
        folder.path(),
    );
    about(size(&project.pieces[0].outline), (100.0, 60.0));
}

#[test]
fn profiles_come_from_tables_drawings_solids_and_formulas() {
    let folder = tempfile::tempdir().expect("a folder");
    let write = |name: &str, text: &str| {
        std::fs::write(folder.path().join(name), text).expect("written");
    };
    let gauge = "--stitches 22 --rounds 24 --per 10cm";
    write("ball.csv", "diameter_cm;height_cm\n0;0\n4,33;1\n6;3\n4,33;5\n0;6\n");
    let (project, _) = made(&format!("new --profile ball.csv {gauge}"), folder.path());
    about(size(&project.pieces[0].outline), (60.0, 60.0));

    let svg = "<svg xmlns='http://www.w3.org/2000/svg' width='90mm' viewBox='0 0 90 90'>\
               <path d='M 40 5 A 30 30 0 0 1 40 65'/></svg>";
    write("ball.svg", svg);
    let (project, _) = made(&format!("new --profile ball.svg {gauge}"), folder.path());
    about(size(&project.pieces[0].outline), (60.0, 60.0));
    let taller = format!("new --profile ball.svg --height 9cm {gauge}");
    about(size(&made(&taller, folder.path()).0.pieces[0].outline), (90.0, 90.0));

    let mut obj = String::new();
    let rings: u32 = 24;
    for i in 0..=rings {
        let turn = std::f64::consts::PI * f64::from(i) / f64::from(rings);
        for k in 0..48 {
            let round = std::f64::consts::TAU * f64::from(k) / 48.0;
            let r = 3.0 * turn.sin();
            let (x, y, z) = (r * round.cos(), r * round.sin(), 3.0 * turn.cos());
            obj += &format!("v {x} {y} {z}\n");
        }
    }
    for i in 0..rings {
        for k in 0..48 {
            let at = |i: u32, k: u32| 48 * i + k % 48 + 1;
            let (a, b, c, d) = (at(i, k), at(i, k + 1), at(i + 1, k + 1), at(i + 1, k));
            obj += &format!("f {a} {b} {c} {d}\n");
        }
    }
    write("ball.obj", &obj);
    let (project, said) =
        made(&format!("new --profile ball.obj --unit cm {gauge}"), folder.path());
    about(size(&project.pieces[0].outline), (60.0, 60.0));
    let round: f64 = said
        .strip_prefix("ball.obj: ")
        .and_then(|rest| rest.split(" % round").next()?.parse().ok())
        .unwrap_or_else(|| panic!("{said}"));
    assert!((99.0..=100.0).contains(&round), "{said}");

    let (project, _) = made("new --formula 30*sin(pi*t) --height 6cm", folder.path());
    let found = size(&project.pieces[0].outline);
    about(found, (60.0, 60.0));
    let (project, _) =
        made("new --starter dome --height 5cm --width 9cm --exponent 3", folder.path());
    about(size(&project.pieces[0].outline), (50.0, 90.0));
}

#[test]
fn what_cannot_be_brought_in_is_one_line() {
    let folder = tempfile::tempdir().expect("a folder");
    let write = |name: &str, text: &[u8]| {
        std::fs::write(folder.path().join(name), text).expect("written");
    };
    write("text.png", b"no picture");
    write("none.svg", b"<svg xmlns='http://www.w3.org/2000/svg'/>");
    write("none.stl", b"solid");
    write("same.csv", b"radius_mm,height_mm\n0,0\n\n5,5\n5,5\n0,9\n");
    let gauge = "--stitches 22 --rounds 24 --per 10cm";
    for (args, part) in [
        ("trace text.png --height 9cm", "text.png: it is no picture"),
        ("trace gone.png --height 9cm", "gone.png: there is no such file"),
        ("new --formula 30*sine(t) --height 6cm", "formula, character 4"),
    ] {
        refused(args, folder.path(), 1, part);
    }
    for (file, part) in [
        ("none.svg", "none.svg: drawing: it has no path"),
        ("none.stl", "none.stl: mesh: "),
        ("same.csv", "same.csv: line 5: the same as"),
        ("same.csv --height 9cm", "same.csv: a table says itself"),
    ] {
        refused(&format!("new --profile {file} {gauge}"), folder.path(), 1, part);
    }
    refused("trace text.png", folder.path(), 2, "--height");
    refused("trace text.png --height 9cm --known 1,2=9cm", folder.path(), 2, "known length");
    refused("new --formula t", folder.path(), 2, "--height");
    refused("new --starter ball --exponent 3", folder.path(), 1, "only a dome");
}
