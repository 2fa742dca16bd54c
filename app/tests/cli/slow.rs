//! Files made to be slow: each is done or refused, within half a gigabyte, and refused with the
//! limit. What each took is printed; that none has no end is asserted.

use std::fmt::Write as _;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use plumpline_core::{Project, Size, SizeBy, file};

/// Longer than any of these may take, in a build that is not optimised on a busy machine; five
/// seconds where it is and nothing else runs.
const LONGEST: Duration = Duration::from_secs(60);
/// The most memory that any of these may have in use, MB.
const MOST_MB: u64 = 500;

const SAMPLES: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../sample-projects");

/// Runs `plumpline`; returns its status and the first line of what it complained of.
fn run(args: &str, folder: &Path) -> (Option<i32>, String) {
    let said = tempfile::NamedTempFile::new().expect("a file");
    let began = Instant::now();
    let mut child = Command::new(env!("CARGO_BIN_EXE_plumpline"))
        .args(args.split_whitespace())
        .current_dir(folder)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(said.reopen().expect("a file"))
        .spawn()
        .expect("it runs");
    let status = format!("/proc/{}/status", child.id());
    let mut most = 0;
    let ended = loop {
        // The most it ever had in use, as proc(5) tells until it ends.
        let told = std::fs::read_to_string(&status).unwrap_or_default();
        let peak = told.lines().find(|line| line.starts_with("VmHWM:"));
        let peak = peak.and_then(|line| line.split_whitespace().nth(1)?.parse::<u64>().ok());
        most = most.max(peak.unwrap_or(0) / 1024);
        if let Some(ended) = child.try_wait().expect("its state") {
            break ended;
        }
        if began.elapsed() > LONGEST {
            child.kill().expect("ended");
            panic!("{args}: it does not end; {most} MB");
        }
        std::thread::sleep(Duration::from_millis(3));
    };
    let complaint = std::fs::read_to_string(said.path()).expect("text");
    let complaint = complaint.lines().next().unwrap_or_default().to_owned();
    println!("{args}: {} ms, {most} MB, {ended}: {complaint}", began.elapsed().as_millis());
    assert!(most <= MOST_MB, "{args}: {most} MB");
    (ended.code(), complaint)
}

fn done(args: &str, folder: &Path) {
    let (status, complaint) = run(args, folder);
    assert!(matches!(status, Some(0 | 3)), "{args}: {complaint}");
}

fn refused(args: &str, folder: &Path, limit: &str) {
    let (status, complaint) = run(args, folder);
    assert_eq!(status, Some(1), "{args}: {complaint}");
    assert!(complaint.contains(limit), "{args}: {complaint}");
}

fn float() -> Project {
    file::load(&Path::new(SAMPLES).join("float.ron")).expect("it loads")
}

/// The float so many times over.
fn many(pieces: u32) -> Project {
    let mut project = float();
    let piece = project.pieces[0].clone();
    project.pieces = (0..pieces)
        .map(|n| plumpline_core::Piece {
            id: plumpline_core::PieceId::new(n),
            sizes: Vec::new(),
            ..piece.clone()
        })
        .collect();
    project
}

#[test]
fn patterns_made_to_be_slow_are_proofread_or_refused() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = folder.path();
    let begins = "Rnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n";
    let filled = |line: &str, kilobytes: usize| line.repeat(1000 * kilobytes / line.len());
    let wrong = "Rnd 3: (sc 1, inc) x 6 (19)\n";
    for (name, text) in [
        ("wrong.txt", filled(wrong, 368)),
        ("wronger.txt", filled(wrong, 2000)),
        ("line.txt", format!("Rnd 3: {}(18)\n", filled("sc 1, inc, ", 512))),
        ("longer.txt", format!("Rnd 3: {}(18)\n", filled("sc 1, inc, ", 2000))),
        ("deep.txt", format!("Rnd 3: {}sc{}\n", filled("(", 200), filled(")", 200))),
        ("letters.txt", format!("Rnd 3: {}\n", filled("x", 2000))),
    ] {
        std::fs::write(at.join(name), format!("{begins}{text}")).expect("written");
        done(&format!("proofread {name}"), at);
        done(&format!("proofread {name} --json"), at);
    }
    std::fs::write(at.join("most.txt"), filled(wrong, 2200)).expect("written");
    refused("proofread most.txt", at, "2 MB");
}

#[test]
fn projects_made_to_be_slow_are_planned_and_set_or_refused() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = folder.path();
    let save = |name: &str, project: &Project| {
        file::save(project, &at.join(name)).expect("saved");
    };
    let mut project = float();
    project.pieces[0].outline = project.pieces[0].outline.scaled(4.0, 4.0);
    let pins = |wide: u32| (2..130).map(|k| (k, if k % 2 == 0 { wide } else { 6 })).collect();
    for wide in [6, 60, 20_000] {
        project.pieces[0].pins = pins(wide);
        save("pins.ron", &project);
        for verb in ["rounds pins.ron", "sheet pins.ron -o s.pdf", "sheet pins.ron -o s.html"] {
            done(verb, at);
        }
    }
    project.pieces[0].pins = [(60, 20_000)].into();
    save("pin.ron", &project);
    done("rounds pin.ron", at);
    done("sheet pin.ron -o s.pdf", at);
    // Many pieces, in many sizes.
    save("many.ron", &many(200));
    done("rounds many.ron", at);
    done("sheet many.ron -o s.txt", at);
    done("sheet many.ron -o s.html", at);
    refused("sheet many.ron -o s.pdf", at, "pages hold 100000");
    save("few.ron", &many(40));
    done("sheet few.ron -o s.pdf", at);
    let mut sized = many(30);
    for piece in &mut sized.pieces {
        let size = |k| Size::new(format!("S{k}"), SizeBy::Factor(0.5 + 0.04 * f64::from(k)));
        piece.sizes = (0..40).map(size).collect();
    }
    save("sized.ron", &sized);
    refused("sheet sized.ron -o s.txt", at, "at most 1000");
    refused("rounds sized.ron --all-sizes", at, "at most 1000");
    sized.pieces.truncate(4);
    save("sized.ron", &sized);
    done("sheet sized.ron -o s.txt", at);
    // More pieces than a project has, and lists without end, which no program saves.
    let text = std::fs::read_to_string(at.join("pin.ron")).expect("it is there");
    let start = text.find("pieces: [").expect("pieces") + "pieces: [".len();
    let end = start + text[start..].find("\n    ],\n").expect("their end") + 1;
    let piece = &text[start..end];
    let over = [&text[..start], &piece.repeat(2000), &text[end..]].concat();
    std::fs::write(at.join("over.ron"), over).expect("written");
    refused("rounds over.ron", at, "200");
    let mut faces = String::new();
    for k in 1..100_000 {
        // Writing to a string cannot fail.
        write!(faces, "(from_round: {k}, to_round: {}), ", k + 1).ok();
    }
    let faces = format!("faces: [{faces}],\n        outline:");
    let endless = text.replacen("faces: [],", "", 1).replacen("outline:", &faces, 1);
    std::fs::write(at.join("faces.ron"), endless).expect("written");
    refused("rounds faces.ron", at, "1200");
}
