//! Written patterns from the files that people keep them in.

use std::path::Path;
use std::process::{Command, Output};

fn run(args: &[&str], folder: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_plumpline"))
        .args(args)
        .current_dir(folder)
        .output()
        .expect("plumpline runs")
}

fn stdout(out: &Output) -> String {
    String::from_utf8_lossy(&out.stdout).into_owned()
}

/// What a project is printed as reads as it was meant, from pages and from a PDF alike.
#[test]
fn printed_patterns_are_read_off_their_pages() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = folder.path();
    let bell = "radius_mm,height_mm\n0,0\n12,2\n22,8\n28,18\n31,30\n34,42\n40,52\n";
    std::fs::write(at.join("bell.csv"), bell).expect("writes");
    let new = "new --profile bell.csv --stitches 22 --rounds 24 --per 10cm -o bell.ron";
    assert!(run(&new.split(' ').collect::<Vec<_>>(), at).status.success());
    let rounds = |name: &str| {
        let out = run(&["sheet", "bell.ron", "-o", name], at);
        assert!(out.status.success(), "{name}: {}", String::from_utf8_lossy(&out.stderr));
        let out = run(&["proofread", "--json", name], at);
        let report: serde_json::Value = serde_json::from_slice(&out.stdout).expect("JSON");
        let rounds = report["rounds"].as_array().expect("rounds");
        rounds
            .iter()
            .map(|r| {
                (r["from"].as_u64(), r["to"].as_u64(), r["takes"].as_u64(), r["makes"].as_u64())
            })
            .collect::<Vec<_>>()
    };
    let plain = rounds("bell.txt");
    assert!(plain.len() > 5, "{plain:?}");
    assert_eq!(rounds("bell.html"), plain);
    assert_eq!(rounds("bell.pdf"), plain);
}

#[test]
fn documents_are_read_and_broken_ones_refused_in_one_line() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = folder.path();
    let rich = r"{\rtf1\ansi Rnd 1: 6 sc in MR (6)\par Rnd 2: inc x 6 (12)\par}";
    std::fs::write(at.join("a.rtf"), rich).expect("written");
    let out = run(&["proofread", "a.rtf"], at);
    assert!(out.status.success() && stdout(&out).contains("It adds up"), "{}", stdout(&out));
    for (name, bytes) in [
        ("a.pdf", &b"%PDF-1.7 and nothing more"[..]),
        ("a.docx", b"PK\x03\x04 and nothing more"),
        ("a.bin", b"\0\0\0\0"),
    ] {
        std::fs::write(at.join(name), bytes).expect("written");
        let out = run(&["proofread", name], at);
        let why = String::from_utf8_lossy(&out.stderr);
        assert!(!out.status.success() && why.trim_end().lines().count() == 1, "{why}");
        assert!(why.contains(name), "{why}");
    }
}

#[test]
fn what_words_mean_can_be_told() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = folder.path();
    let text = "Rnd 1: 6 sc in MR (6)\nRnd 2: blossoming\nRnd 3: 1 peacefully, blossoming\nRnd 4: 2 peacefully, blossoming\n";
    std::fs::write(at.join("bud.txt"), text).expect("written");
    assert_eq!(run(&["proofread", "bud.txt"], at).status.code(), Some(3));
    let told = [
        "--saying",
        "9 peacefully, blossoming = (9 sc, inc) x 6",
        "--saying",
        "blossoming = inc x 6",
    ];
    let out = run(&[&["proofread", "bud.txt"][..], &told].concat(), at);
    assert!(out.status.success(), "{}", stdout(&out));
    let out = run(&["proofread", "bud.txt", "--saying", "blossoming"], at);
    assert_eq!(out.status.code(), Some(2));
}
