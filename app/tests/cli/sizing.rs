//! Sizes, companions and calibration from the command line.

use std::path::Path;
use std::process::{Command, Output};

use plumpline_core::{Extent, Project, file, plan};

fn run(args: &str, folder: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_plumpline"))
        .args(args.split_whitespace())
        .current_dir(folder)
        .output()
        .expect("plumpline runs")
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).trim_end().to_owned()
}

/// A folder with the acorn and the pebble in it.
fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let samples = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    for name in ["acorn.ron", "pebble.ron"] {
        std::fs::copy(samples.join(name), folder.path().join(name)).expect("it copies");
    }
    folder
}

fn load(folder: &Path, name: &str) -> Project {
    file::load(&folder.join(name)).expect("it loads")
}

fn json(args: &str, folder: &Path) -> serde_json::Value {
    let out = run(args, folder);
    assert!(out.status.success(), "{args}: {}", text(&out.stderr));
    serde_json::from_slice(&out.stdout).expect("JSON")
}

#[test]
fn a_project_is_resized_by_height_width_factor_or_gauge() {
    let folder = folder();
    let at = folder.path();
    let size = |file: &str| plan(&load(at, file).pieces[0]).expect("it plans").size_mm;
    let base = size("pebble.ron");
    for (by, wanted) in [
        ("--height 12cm", (120.0, None)),
        ("--width 8cm", (80.0 * base.height / base.width, Some(80.0))),
        ("--gauge 20x22/10cm", (base.height, None)),
        ("--height 4in --family --keep-features", (101.6, None)),
    ] {
        let out = run(&format!("resize pebble.ron {by} -o new.ron"), at);
        assert!(out.status.success(), "{by}: {}", text(&out.stderr));
        assert!(text(&out.stdout).starts_with("Pebble: "), "{by}: {}", text(&out.stdout));
        let got = size("new.ron");
        match wanted {
            (_, Some(width)) => assert!((got.width - width).abs() < 2.1, "{by}: {got:?}"),
            (height, None) => assert!((got.height - height).abs() < 2.1, "{by}: {got:?}"),
        }
    }
    // A factor is of height and width on average: whole rounds and stitches share it out.
    let out = run("resize pebble.ron --factor 1.5 -o new.ron", at);
    assert!(out.status.success(), "{}", text(&out.stderr));
    let across = |size: Extent| (size.height * size.width).sqrt();
    let (made, drawn) = (across(size("new.ron")), across(base));
    assert!((made - 1.5 * drawn).abs() < 1.2, "{made} of {drawn}");
    let kept = run("resize pebble.ron --gauge 20x22/10cm --keep rounds -o new.ron", at);
    assert!(kept.status.success(), "{}", text(&kept.stderr));
    let counts = |file: &str| plan(&load(at, file).pieces[0]).expect("it plans").counts();
    assert_eq!(counts("new.ron"), counts("pebble.ron"));
}

#[test]
fn a_cap_meets_a_nut_and_the_whole_acorn_grows_in_step() {
    let folder = folder();
    let at = folder.path();
    let out = run("resize acorn.ron --piece Cap --meet Nut:14 -o met.ron", at);
    assert!(out.status.success(), "{}", text(&out.stderr));
    let report = json("rounds met.ron --json", at);
    let met: Vec<&serde_json::Value> = report["seams"]
        .as_array()
        .expect("seams")
        .iter()
        .filter(|s| s["a"]["round"] == 14)
        .collect();
    assert_eq!(met.len(), 1, "{report}");
    assert_eq!((&met[0]["met"], &met[0]["off_stitches"]), (&true.into(), &0.0.into()));
    assert_eq!(met[0]["a"]["stitches"], met[0]["b"]["stitches"]);
    let out =
        run("resize acorn.ron --piece Cap --meet Nut:14 --clearance 4.5mm -o loose.ron", at);
    assert!(out.status.success(), "{}", text(&out.stderr));
    let report = json("rounds loose.ron --json", at);
    let seams = report["seams"].as_array().expect("seams");
    let loose = seams.iter().find(|s| s["a"]["round"] == 14).expect("the seam");
    let room = loose["room_mm"].as_f64().expect("mm");
    assert!((room - 4.5).abs() < 0.75, "{room}");
    let out = run("resize acorn.ron --height 15cm -o big.ron", at);
    assert!(out.status.success(), "{}", text(&out.stderr));
    let report = json("rounds big.ron --json", at);
    for seam in report["seams"].as_array().expect("seams") {
        assert_eq!(seam["met"], true, "{seam}");
    }
}

#[test]
fn rounds_come_at_one_size_or_at_all() {
    let folder = folder();
    let at = folder.path();
    let drawn = json("rounds pebble.ron --json", at);
    assert!(drawn["pieces"][0].get("size").is_none() && drawn.get("seams").is_none());
    let all = json("rounds pebble.ron --all-sizes --json", at);
    let piece = &all["pieces"][0];
    assert_eq!(
        piece["rounds"], drawn["pieces"][0]["rounds"],
        "the piece as drawn is there too"
    );
    let sizes = piece["sizes"].as_array().expect("sizes");
    assert_eq!(sizes.len(), 3);
    for size in sizes {
        let name = size["size"].as_str().expect("a name");
        let one = json(&format!("rounds pebble.ron --size {name} --json"), at);
        assert_eq!(&one["pieces"][0], size, "{name}");
        assert!(size["minutes"].as_f64().expect("minutes") > 1.0);
    }
    assert!(piece["written"].as_str().expect("words").starts_with("Pebble: S (M, L)"));
    let plain = text(&run("rounds pebble.ron --all-sizes", at).stdout);
    for part in ["Pebble, as drawn:", "Pebble, S:", "Pebble, L:", "Pebble: S (M, L)", " ("] {
        assert!(plain.contains(part), "{part} is not in\n{plain}");
    }
}

#[test]
fn a_sample_teaches_the_program() {
    let folder = folder();
    let at = folder.path();
    let args = "calibrate pebble.ron --stitches 20=84mm --rounds 20=78mm --around 262mm \
                --height 64mm --yarn 50,38 --unravelled 10=2.3m -o mine.ron --book book.ron \
                --of Slate";
    let out = run(args, at);
    assert!(out.status.success(), "{}", text(&out.stderr));
    let said = text(&out.stdout);
    assert!(said.contains("stitch width: ") && said.contains("forecast before"), "{said}");
    let (old, new) = (load(at, "pebble.ron"), load(at, "mine.ron"));
    assert!(new.pieces[0].gauge.stitch_width_mm() > old.pieces[0].gauge.stitch_width_mm());
    assert!(run(args, at).status.success(), "the book is read again");
    let book = std::fs::read_to_string(at.join("book.ron")).expect("it was written");
    assert_eq!(book.matches("Slate").count(), 1, "{book}");
    let day = book.split("date: \"").nth(1).and_then(|rest| rest.split('"').next());
    let parts: Vec<&str> = day.expect("a day").split('-').collect();
    assert_eq!(parts.iter().map(|part| part.len()).collect::<Vec<_>>(), [4, 2, 2], "{book}");
}

#[test]
fn two_pieces_of_a_sample_are_told_apart_by_name() {
    let folder = folder();
    let at = folder.path();
    let args = "calibrate acorn.ron --stitches 34=158mm --rounds 46=195mm --around 168mm \
                --height 77mm --over-ends 206mm --height Cap:45.5mm --around Cap:198mm \
                -o mine.ron";
    let out = run(args, at);
    assert!(out.status.success(), "{}", text(&out.stderr));
    let said = text(&out.stdout);
    assert!(said.contains("Nut, around over both ends: 206.0 mm measured"), "{said}");
    assert!(said.contains("Cap, height: 45.5 mm measured"), "{said}");
    let (old, new) = (load(at, "acorn.ron"), load(at, "mine.ron"));
    let ratio = |i: usize| new.pieces[i].firmness.0 / old.pieces[i].firmness.0;
    assert!((ratio(0) / ratio(1) - 1.0).abs() < 1e-6, "each keeps its own firmness");
}

#[test]
fn bad_sizes_are_one_line_and_an_exit_status() {
    let folder = folder();
    let at = folder.path();
    for (args, status, part) in [
        ("resize pebble.ron -o x.ron", 2, "--height"),
        ("resize pebble.ron --height 12cm --width 3cm -o x.ron", 2, "cannot be used with"),
        ("resize pebble.ron --height 9ells -o x.ron", 2, "ells"),
        ("resize pebble.ron --gauge 26/10cm -o x.ron", 2, "26x30/10cm"),
        ("resize pebble.ron --keep rounds --height 3cm -o x.ron", 2, "cannot be used with"),
        ("resize pebble.ron --factor -1 -o x.ron", 2, "-1"),
        ("resize pebble.ron --factor 0 -o x.ron", 1, "factor"),
        ("resize none.ron --height 9cm -o x.ron", 1, "none.ron"),
        ("resize acorn.ron --piece Twig --height 9cm -o x.ron", 1, "no piece “Twig”"),
        ("resize acorn.ron --piece Cap --meet Nut -o x.ron", 1, "PIECE:ROUND"),
        ("resize acorn.ron --piece Cap --meet Nut:999 -o x.ron", 1, "no Rnd 999"),
        ("resize acorn.ron --piece Nut --meet Cap:9 -o x.ron", 1, "no open edge"),
        ("resize acorn.ron --piece Cap --meet Cap:9 -o x.ron", 1, "one piece"),
        ("rounds pebble.ron --size XXL", 1, "the sizes are S, M, L"),
        ("rounds pebble.ron --size S --all-sizes", 2, "cannot be used with"),
        ("calibrate pebble.ron", 1, "nothing was measured"),
        ("calibrate pebble.ron --stitches 20", 2, "20=91mm"),
        ("calibrate acorn.ron --height Twig:45mm", 1, "no piece “Twig”"),
        ("calibrate acorn.ron --height Cap:ell", 2, "ell"),
        ("calibrate pebble.ron --height 3cm --book b.ron", 2, "--of"),
    ] {
        let out = run(args, at);
        let line = text(&out.stderr);
        assert_eq!(out.status.code(), Some(status), "{args}: {line}");
        assert!(line.contains(part) && line.lines().count() == 1, "{args}: {line}");
        assert!(!at.join("x.ron").exists(), "{args} left a file");
    }
}
