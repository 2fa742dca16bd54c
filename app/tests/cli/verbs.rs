//! The command line as scripts use it.

use std::path::Path;
use std::process::{Command, Output};

use plumpline_core::file;

fn run(args: &[&str], folder: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_plumpline"))
        .args(args)
        .current_dir(folder)
        .output()
        .expect("plumpline runs")
}

fn stderr(out: &Output) -> String {
    String::from_utf8_lossy(&out.stderr).trim_end().to_owned()
}

/// A bell-shaped profile with an open foot, as a person would measure it.
const BELL: &str = "radius_mm,height_mm\n0,0\n12,2\n22,8\n28,18\n31,30\n34,42\n40,52\n";

fn bell(folder: &Path) -> Output {
    std::fs::write(folder.join("bell.csv"), BELL).expect("writes");
    let args = "new --profile bell.csv --stitches 22 --rounds 24 --per 10cm --firmness firm \
                --simplicity 0 -o bell.ron";
    run(&args.split_whitespace().collect::<Vec<_>>(), folder)
}

#[test]
fn a_profile_becomes_a_project_rounds_and_sheets() {
    let folder = tempfile::tempdir().expect("a folder");
    let made = bell(folder.path());
    assert!(made.status.success(), "{}", stderr(&made));
    let project = file::load(&folder.path().join("bell.ron")).expect("it loads");
    assert_eq!((project.pieces[0].simplicity, project.pieces[0].firmness.0), (Some(0.0), 0.08));

    let out = run(&["rounds", "--json", "bell.ron"], folder.path());
    let report: serde_json::Value = serde_json::from_slice(&out.stdout).expect("JSON");
    let piece = &report["pieces"][0];
    assert_eq!(piece["piece"], "bell");
    assert!(
        (piece["gauge"]["stitch_width_mm"].as_f64().expect("mm") - 100.0 / 22.0).abs() < 1e-9
    );
    let rounds = piece["rounds"].as_array().expect("rounds");
    let nodes = piece["forecast_mm"].as_array().expect("nodes");
    assert_eq!(nodes.len(), rounds.len() + 1);
    let mut below = 0;
    for round in rounds {
        let stitches = round["stitches"].as_array().expect("stitches");
        let taken: u64 = stitches.iter().map(|s| if s == "dec" { 2 } else { 1 }).sum();
        let left: u64 = stitches.iter().map(|s| if s == "inc" { 2 } else { 1 }).sum();
        assert!(
            below == 0 || taken == below,
            "round {} takes {taken} of {below}",
            round["round"]
        );
        assert_eq!(Some(left), round["count"].as_u64());
        below = left;
    }
    assert!(piece["fit"]["rms_stitches"].as_f64().expect("a fit") < 0.2);
    assert_eq!(piece["yarn"][0]["estimate"], true);

    for name in ["bell.txt", "bell.md"] {
        let out = run(&["sheet", "bell.ron", "-o", name], folder.path());
        assert!(out.status.success(), "{}", stderr(&out));
        let page = std::fs::read_to_string(folder.path().join(name)).expect("it was written");
        for round in rounds {
            let text = round["text"].as_str().expect("words");
            let flowed = page.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(flowed.contains(text), "{name} lacks “{text}”");
        }
        assert!(page.contains("30 cm (12 in) tail for sewing"), "{name} lacks its ending");
    }
    let page = std::fs::read_to_string(folder.path().join("bell.txt")).expect("it is there");
    assert!(page.lines().all(|line| line.chars().count() <= 78), "a line is too wide");
}

#[test]
fn trouble_is_one_line_and_an_exit_status() {
    let folder = tempfile::tempdir().expect("a folder");
    let cut = "radius_mm,height_mm\n0,0\n5;5\n";
    std::fs::write(folder.path().join("cut.csv"), cut).expect("writes");
    std::fs::write(folder.path().join("old.ron"), "(format_version: 9)").expect("writes");
    let new = ["new", "--stitches", "22", "--rounds", "24", "--per", "10cm", "-o", "x.ron"];
    let with = |csv: &'static str| [&new[..], &["--profile", csv]].concat();
    for (args, status, says) in [
        (vec!["rounds", "none.ron"], 1, "none.ron: there is no such file"),
        (vec!["rounds", "old.ron"], 1, "old.ron, line 1, format_version: version 9"),
        (with("cut.csv"), 1, "cut.csv: line 3"),
        (with("none.csv"), 1, "none.csv"),
        (vec!["sheet", "old.ron", "-o", "x.odt"], 1, "x.odt: the ending is not known"),
        (vec!["rounds"], 2, "<PROJECT>"),
        (vec!["new", "--per", "9 ells"], 2, "ells"),
    ] {
        let out = run(&args, folder.path());
        let line = stderr(&out);
        assert_eq!(out.status.code(), Some(status), "{args:?}: {line}");
        assert!(line.contains(says), "{args:?}: {line}");
        assert_eq!(line.lines().count(), 1, "{line}");
        assert!(!folder.path().join("x.ron").exists(), "{args:?} left a file");
    }
}

/// An invented bead: round 3 takes all it should and states another count.
const BEAD: &str = "Bead\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc x 6 (12)\n\
    Rnd 3: (sc 1, inc) x 6 (19)\nRnds 4-6: sc in each st around (18)\nStuff now.\n\
    Rnd 7: (sc 1, dec) x 6 (12)\nRnd 8: dec x 6 (6)\nFasten off.\n";

#[test]
fn a_pattern_is_proofread_for_people_and_for_programs() {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("bead.txt"), BEAD).expect("writes");
    let out = run(&["proofread", "bead.txt"], folder.path());
    assert_eq!(out.status.code(), Some(3), "{}", stderr(&out));
    let text = String::from_utf8_lossy(&out.stdout).into_owned();
    assert!(text.contains("bead.txt:4:25: Rnd 3 comes to 18 stitches, not to 19."), "{text}");
    let lines: Vec<&str> = text.lines().collect();
    let marks = lines.iter().position(|l| l.trim() == "^^").expect("the place is marked");
    let column = lines[marks].find('^').expect("marks");
    assert_eq!(&lines[marks - 1][column..column + 2], "19");
    assert!(text.contains("US terms") && text.contains("“sc” in line 2"), "{text}");

    let out = run(&["proofread", "--json", "bead.txt"], folder.path());
    assert_eq!(out.status.code(), Some(3));
    let report: serde_json::Value = serde_json::from_slice(&out.stdout).expect("JSON");
    let finding = &report["findings"][0];
    assert_eq!(report["findings"].as_array().map(Vec::len), Some(1));
    assert_eq!((&finding["kind"], &finding["round"]), (&"count".into(), &3.into()));
    assert_eq!((&finding["line"], &finding["column"]), (&4.into(), &25.into()));
    assert_eq!(finding["length"], 2);
    assert_eq!(report["terms"]["code"], "en-us");

    std::fs::write(folder.path().join("good.txt"), BEAD.replace("19", "18")).expect("writes");
    let out = run(&["proofread", "good.txt"], folder.path());
    assert_eq!(out.status.code(), Some(0), "{}", String::from_utf8_lossy(&out.stdout));
    for (args, status) in [(["none.txt", "--json"], 1), (["good.txt", "--terms=x"], 2)] {
        let out = run(&["proofread", args[0], args[1]], folder.path());
        assert_eq!(out.status.code(), Some(status), "{args:?}");
        assert_eq!(stderr(&out).lines().count(), 1, "{}", stderr(&out));
    }
}

#[test]
fn a_pattern_becomes_a_project_with_its_counts() {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("bead.txt"), BEAD.replace("19", "18")).expect("writes");
    let args = "new --from-pattern bead.txt --stitches 22 --rounds 24 --per 10cm -o bead.ron";
    let out = run(&args.split_whitespace().collect::<Vec<_>>(), folder.path());
    assert!(out.status.success(), "{}", stderr(&out));
    let project = file::load(&folder.path().join("bead.ron")).expect("it loads");
    assert_eq!(project.pieces[0].name, "Bead");
    let plan = plumpline_core::plan(&project.pieces[0]).expect("a plan");
    assert_eq!(plan.counts(), [6, 12, 18, 18, 18, 18, 12, 6]);

    std::fs::write(folder.path().join("none.txt"), "A shopping list.\n").expect("writes");
    let args = "new --from-pattern none.txt --stitches 22 --rounds 24 --per 10cm -o x.ron";
    let out = run(&args.split_whitespace().collect::<Vec<_>>(), folder.path());
    assert_eq!(out.status.code(), Some(1));
    assert!(stderr(&out).contains("no rounds were found"), "{}", stderr(&out));
}

#[test]
fn a_piece_is_drawn_as_svg_and_png() {
    let folder = tempfile::tempdir().expect("a folder");
    assert!(bell(folder.path()).status.success());
    for view in ["body", "outline"] {
        let draw = |name: &str, more: &[&str]| {
            let args = ["picture", "bell.ron", "--view", view, "--width", "300", "-o", name];
            let out = run(&[&args[..], more].concat(), folder.path());
            assert!(out.status.success(), "{}", stderr(&out));
            std::fs::read(folder.path().join(name)).expect("it was written")
        };
        let text = String::from_utf8(draw("bell.svg", &[])).expect("SVG is text");
        assert!(text.contains("<title id=\"title\">bell: "), "it has a title");
        assert!(text.contains("width=\"300\""), "it is as wide as asked");
        let drawn = match view {
            "body" => text.contains("<image ") && text.contains("<path class=\"outline\""),
            _ => text.matches("<path ").count() > 20,
        };
        assert!(drawn, "{view}");
        let png = draw("bell.png", &["--background", "white"]);
        assert_eq!(png[..8], *b"\x89PNG\r\n\x1a\n");
        assert_eq!(png[16..20], 300_u32.to_be_bytes(), "width in the header");
        assert!(png.len() > 3000, "{view}: it is not empty");
    }
    let turned = |turn: &str| {
        let args = ["picture", "bell.ron", "--view", "body", "-o", "b.svg", "--turn", turn];
        assert!(run(&args, folder.path()).status.success());
        std::fs::read(folder.path().join("b.svg")).expect("it was written")
    };
    assert_ne!(turned("0"), turned("-45"));
    let with =
        |more: &[&'static str]| [&["picture", "bell.ron", "--view", "body"][..], more].concat();
    for (args, status, says) in [
        (with(&["-o", "x.gif"]), 1, "x.gif: the ending is not known"),
        (with(&["-o", "x.png", "--width", "9"]), 1, "--width: 9 is out of range"),
        (with(&["-o", "x.png", "--tilt", "95"]), 1, "--tilt: 95 is out of range"),
        (with(&["-o", "x.png", "--turn", "NaN"]), 1, "--turn: NaN is out of range"),
        (with(&["-o", "x.png", "--piece", "cap"]), 1, "there is no piece “cap”"),
        (vec!["picture", "bell.ron", "-o", "x.png"], 2, "--view"),
    ] {
        let out = run(&args, folder.path());
        let line = stderr(&out);
        assert_eq!(out.status.code(), Some(status), "{args:?}: {line}");
        assert!(line.contains(says), "{args:?}: {line}");
        assert_eq!(line.lines().count(), 1, "{line}");
        assert!(!folder.path().join("x.png").exists(), "{args:?} left a file");
    }
}

#[test]
fn a_whole_toy_is_drawn_together_and_apart() {
    let folder = tempfile::tempdir().expect("a folder");
    let toy = include_str!("../../../sample-projects/moor-cob.ron");
    std::fs::write(folder.path().join("cob.ron"), toy).expect("written");
    let draw = |name: &str, more: &[&str]| {
        let args = ["picture", "cob.ron", "--view", "toy", "--width", "240", "-o", name];
        let out = run(&[&args[..], more].concat(), folder.path());
        assert!(out.status.success(), "{}", stderr(&out));
        std::fs::read(folder.path().join(name)).expect("it was written")
    };
    let together = draw("together.png", &[]);
    assert_eq!(together[16..20], 240_u32.to_be_bytes(), "as wide as asked");
    assert_ne!(together, draw("apart.png", &["--apart", "1"]));
    assert_ne!(together, draw("side.png", &["--turn", "90"]));
    let text = String::from_utf8(draw("toy.svg", &[])).expect("SVG is text");
    assert!(text.contains("the whole toy</title>") && text.contains("<image "));
    assert!(bell(folder.path()).status.success());
    let args = ["picture", "bell.ron", "--view", "toy", "-o", "x.png"];
    let out = run(&args, folder.path());
    assert_eq!(out.status.code(), Some(1));
    assert!(stderr(&out).contains("the project has no toy"), "{}", stderr(&out));
    let args = ["picture", "cob.ron", "--view", "toy", "-o", "x.png", "--apart", "2"];
    assert!(stderr(&run(&args, folder.path())).contains("--apart: 2 is out of range"));
}

#[test]
fn a_starter_becomes_a_project() {
    let folder = tempfile::tempdir().expect("a folder");
    let new = |args: &str| {
        let all = format!("new --starter {args} -o made.ron");
        run(&all.split_whitespace().collect::<Vec<_>>(), folder.path())
    };
    let made = new("ball --height 90mm --width 8cm --stitches 20 --rounds 22 --per 10cm");
    assert!(made.status.success(), "{}", stderr(&made));
    let project = file::load(&folder.path().join("made.ron")).expect("it loads");
    let piece = &project.pieces[0];
    let profile = piece.outline.profile(2000);
    assert!((profile.height_mm() - 90.0).abs() < 0.1);
    assert!((2.0 * profile.widest_mm() - 80.0).abs() < 0.1);
    assert_eq!((piece.name.as_str(), piece.gauge.stitches), ("Ball", 20.0));
    assert!(new("float --neck 25mm").status.success());
    assert!(new("bean --length 120mm --name Pod").status.success());
    for (args, status, part) in [
        ("cube", 2, "choose one of ball"),
        ("ball --height 900mm --width 20mm", 1, "ball, height: 900 mm"),
        ("egg --neck 20mm", 1, "leave it out"),
        ("ball --stitches 20", 2, "--rounds"),
        ("ball --profile x.csv", 2, "cannot be used with"),
    ] {
        let out = new(args);
        assert_eq!(out.status.code(), Some(status), "{args}: {}", stderr(&out));
        let said = stderr(&out);
        assert!(said.contains(part) && said.lines().count() == 1, "{args}: {said}");
    }
}

#[test]
fn a_sheet_is_a_pdf_a_page_or_a_web_page() {
    let folder = tempfile::tempdir().expect("a folder");
    assert!(bell(folder.path()).status.success());
    let made = |name: &str, more: &[&str]| {
        let out = run(&[&["sheet", "bell.ron", "-o", name][..], more].concat(), folder.path());
        assert!(out.status.success(), "{}", stderr(&out));
        std::fs::read(folder.path().join(name)).expect("it was written")
    };
    assert!(made("bell.pdf", &[]).starts_with(b"%PDF-"));
    assert_ne!(made("wide.pdf", &["--paper", "letter", "--columns", "2"]), made("a4.pdf", &[]));
    let page = made("bell.png", &["--page", "2"]);
    assert_eq!(page[..8], *b"\x89PNG\r\n\x1a\n");
    // A4 at 200 pixels an inch.
    assert_eq!(page[16..20], 1654_u32.to_be_bytes());
    let html = String::from_utf8(made("bell.html", &["--chart", "plus"])).expect("text");
    assert!(html.starts_with("<!DOCTYPE html>") && html.contains("<svg"));
    for outside in ["src=", "http://", "https://"] {
        let all = html.matches(outside).count();
        let names = html.matches("xmlns=\"http://www.w3.org/2000/svg\"").count();
        assert_eq!(all - if outside == "http://" { names } else { 0 }, 0, "{outside}");
    }
    for (args, says) in [
        (["-o", "x.png", "--page", "99"], "--page: there is no page 99"),
        (["-o", "x.png", "--page", "0"], "--page: pages are counted from 1"),
        (["-o", "x.pdf", "--columns", "3"], "--columns: 3 is out of range"),
    ] {
        let out = run(&[&["sheet", "bell.ron"][..], &args].concat(), folder.path());
        let line = stderr(&out);
        assert_eq!(out.status.code(), Some(1), "{line}");
        assert!(line.contains(says) && line.lines().count() == 1, "{line}");
    }
    assert!(!folder.path().join("x.png").exists() && !folder.path().join("x.pdf").exists());
}

#[test]
fn a_chart_is_drawn_with_either_symbol() {
    let folder = tempfile::tempdir().expect("a folder");
    assert!(bell(folder.path()).status.success());
    let drawn = |name: &str, symbol: &str| {
        let args = ["picture", "bell.ron", "--view", "chart", "--chart", symbol, "-o", name];
        let out = run(&args, folder.path());
        assert!(out.status.success(), "{}", stderr(&out));
        std::fs::read(folder.path().join(name)).expect("it was written")
    };
    let (cross, plus) = (drawn("cross.svg", "cross"), drawn("plus.svg", "plus"));
    assert_ne!(cross, plus);
    let text = String::from_utf8(cross).expect("SVG is text");
    assert!(text.contains("round chart") && text.contains("width=\"1200\""));
    assert!(drawn("cross.png", "cross").starts_with(b"\x89PNG"));
}

#[test]
fn a_lesson_is_handed_out_in_the_stitches_of_whoever_gives_it() {
    let folder = tempfile::tempdir().expect("a folder");
    let words = |args: &[&str]| {
        let out = run(args, folder.path());
        assert!(out.status.success(), "{}", stderr(&out));
        let text = Command::new("pdftotext")
            .args(["-layout", "lesson.pdf", "-"])
            .current_dir(folder.path())
            .output()
            .expect("pdftotext is installed");
        String::from_utf8_lossy(&text.stdout).into_owned()
    };
    let gauge = ["lesson", "--gauge", "22x22/10cm", "-o", "lesson.pdf"];
    let all = words(&gauge);
    assert!(all.contains("step 1 of 8") && all.contains("step 8 of 8"), "{all}");
    assert!(all.contains("For the teacher"));
    let handout = words(&[&gauge[..], &["--step", "3", "--handouts"]].concat());
    assert!(handout.contains("step 3 of 8") && !handout.contains("step 1 of 8"), "{handout}");
    assert!(!handout.contains("For the teacher"));
    // Taller stitches need more of them to lie flat.
    let tall =
        ["lesson", "--gauge", "22x18/10cm", "--step", "3", "--handouts", "-o", "lesson.pdf"];
    assert_ne!(words(&tall), handout);
    let out = run(&[&gauge[..], &["--step", "9"]].concat(), folder.path());
    assert_eq!(stderr(&out), "plumpline: --step: 9 is out of range; give 1 to 8");
}

#[test]
fn a_pattern_is_said_sold_compared_and_tested() {
    let folder = tempfile::tempdir().expect("a folder");
    assert!(bell(folder.path()).status.success());
    let read = |name: &str| {
        std::fs::read_to_string(folder.path().join(name)).expect("the file is there")
    };
    for (name, more, begins) in [
        ("script.txt", &["--spoken"][..], "bell\n"),
        ("said.srt", &[], "1\n00:00:00,000 --> "),
        ("worked.vtt", &["--spoken", "--pace", "worked"], "WEBVTT\n\n1\n00:00:00.000 --> "),
        ("shop.md", &["--blurb", "--terms", "de"], "# bell\n"),
    ] {
        let out = run(&[&["sheet", "bell.ron", "-o", name][..], more].concat(), folder.path());
        assert!(out.status.success(), "{name}: {}", stderr(&out));
        assert!(read(name).starts_with(begins), "{name}: {}", read(name));
    }
    for args in [&["--spoken", "-o", "x.pdf"][..], &["--blurb", "-o", "x.html"]] {
        let out = run(&[&["sheet", "bell.ron"][..], args].concat(), folder.path());
        assert_eq!(out.status.code(), Some(1), "{}", stderr(&out));
        assert_eq!(stderr(&out).lines().count(), 1);
    }
    let out = run(&["compare", "bell.ron", "bell.ron"], folder.path());
    let text = String::from_utf8_lossy(&out.stdout).into_owned();
    assert!(out.status.success() && text.contains("Nothing that a maker reads"), "{text}");
    let out = run(&["testers", "bell.ron", "-o", "form.md"], folder.path());
    assert!(out.status.success() && read("form.md").starts_with("# For testers"));
    let table = "tester,stitches_per_10cm,height_mm\nAda,21,52\nBo,23,49\n";
    std::fs::write(folder.path().join("back.csv"), table).expect("writes");
    let args = ["testers", "bell.ron", "back.csv", "--book", "book.ron"];
    let out = run(&args, folder.path());
    let text = String::from_utf8_lossy(&out.stdout).into_owned();
    assert!(out.status.success() && text.contains("Testers got 4.9–5.2 cm (2)"), "{text}");
    assert!(read("book.ron").contains("Ada") && read("book.ron").contains("Bo"));
    let out = run(&["testers", "bell.ron", "back.csv", "-o", "spread.svg"], folder.path());
    assert!(out.status.success() && read("spread.svg").contains("<svg"), "{}", stderr(&out));
}
