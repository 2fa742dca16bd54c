//! Files that hurt, and files that others write too.

use std::path::Path;
use std::process::{Command, Output, Stdio};
use std::time::{Duration, Instant};

use plumpline_core::calibrate::GaugeBook;
use plumpline_core::{LONGEST_NAME, Size, SizeBy, file};

const SAMPLES: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../sample-projects");

/// Longer than any of these may take, in a build that is not optimised on a busy machine.
const LONGEST: Duration = Duration::from_secs(30);

fn command(args: &str, folder: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_plumpline"));
    command.args(args.split_whitespace()).current_dir(folder).stdin(Stdio::null());
    command
}

/// What it prints, and that it ends.
fn run(args: &str, folder: &Path) -> Output {
    // Into files: a pipe that is full makes it wait for whoever reads.
    let said = [(); 2].map(|()| tempfile::NamedTempFile::new().expect("a file"));
    let [out, err] = said.each_ref().map(|file| Stdio::from(file.reopen().expect("a file")));
    let mut child = command(args, folder).stdout(out).stderr(err).spawn().expect("it runs");
    let began = Instant::now();
    while child.try_wait().expect("its state").is_none() {
        if began.elapsed() > LONGEST {
            child.kill().expect("ended");
            panic!("{args}: it does not end");
        }
        std::thread::sleep(Duration::from_millis(5));
    }
    let status = child.wait().expect("its status");
    let [stdout, stderr] = said.map(|file| std::fs::read(file.path()).expect("what it said"));
    Output { status, stdout, stderr }
}

fn refused(args: &str, folder: &Path, part: &str) {
    let out = run(args, folder);
    let said = String::from_utf8_lossy(&out.stderr).into_owned();
    assert_eq!(out.status.code(), Some(1), "{args}: {said}");
    assert_eq!(said.lines().count(), 1, "{args}: {said}");
    assert!(said.contains(part) && said.len() < 3000, "{args}: {said}");
    assert!(!said.trim_end().contains(char::is_control), "{args}: {said:?}");
}

fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    for name in ["acorn.ron", "pebble.ron", "float.ron"] {
        std::fs::copy(Path::new(SAMPLES).join(name), folder.path().join(name)).expect("copied");
    }
    folder
}

#[cfg(unix)]
#[test]
fn what_is_no_file_is_neither_waited_for_nor_replaced() {
    use std::os::unix::fs::{FileTypeExt as _, symlink};
    let folder = folder();
    let at = folder.path();
    assert!(
        Command::new("mkfifo").arg(at.join("pipe.ron")).status().is_ok_and(|s| s.success())
    );
    symlink("/dev/zero", at.join("zero.ron")).expect("a link");
    symlink("pipe.ron", at.join("to-pipe.svg")).expect("a link");
    std::fs::create_dir(at.join("folder.ron")).expect("a folder");
    for (name, what) in [("pipe", "pipe"), ("zero", "device"), ("folder", "folder")] {
        refused(&format!("rounds {name}.ron"), at, what);
        refused(&format!("proofread {name}.ron"), at, what);
        let new = "new --stitches 22 --rounds 24 --per 10cm -o x.ron";
        refused(&format!("{new} --profile {name}.ron"), at, what);
        refused(&format!("{new} --from-pattern {name}.ron"), at, what);
        let learn = "calibrate pebble.ron --height 64mm --of Moor --book";
        refused(&format!("{learn} {name}.ron"), at, what);
    }
    for (args, what) in [
        ("resize float.ron --factor 2 -o pipe.ron", "pipe"),
        ("picture float.ron --view body -o to-pipe.svg", "pipe"),
    ] {
        refused(args, at, what);
    }
    let pipe = std::fs::metadata(at.join("pipe.ron")).expect("it is there");
    assert!(pipe.file_type().is_fifo(), "it was replaced");
}

#[test]
fn files_larger_than_their_kind_may_be_are_refused_with_the_limit() {
    let folder = folder();
    let at = folder.path();
    let large = |name: &str, megabytes: u64| {
        let file = std::fs::File::create(at.join(name)).expect("a file");
        file.set_len(megabytes << 20).expect("as long as that, and empty on the disk");
    };
    large("a.ron", 17);
    large("a.txt", 5);
    large("a.csv", 5);
    refused("rounds a.ron", at, "8 MB");
    refused("proofread a.txt", at, "2 MB");
    let new = "new --stitches 22 --rounds 24 --per 10cm -o x.ron";
    refused(&format!("{new} --profile a.csv"), at, "4 MB");
    refused(&format!("{new} --from-pattern a.txt"), at, "2 MB");
    refused("calibrate pebble.ron --height 64mm --of Moor --book a.ron", at, "4 MB");
    assert!(!at.join("x.ron").exists());
}

#[test]
fn a_mark_of_byte_order_is_no_trouble() {
    let folder = folder();
    let at = folder.path();
    let text = std::fs::read_to_string(at.join("pebble.ron")).expect("it is there");
    std::fs::write(at.join("marked.ron"), format!("\u{feff}{text}")).expect("written");
    assert_eq!(file::load(&at.join("marked.ron")), file::load(&at.join("pebble.ron")));
}

/// Names of every kind: as long as they may be, in other scripts, with characters that command
/// terminals, pages and templates.
#[test]
fn whatever_a_name_holds_the_sheet_is_written_and_a_terminal_obeys_nothing() {
    let folder = folder();
    let at = folder.path();
    let kinds = [
        "x".repeat(76),
        "x".repeat(LONGEST_NAME),
        "\u{1b}]0;gone\u{7}\u{1b}[2J\u{9b}31m\u{202e}".to_owned(),
        "<script>alert(1)</script> & \"'`${}#*_\\ -->".to_owned(),
        "🧶 דוב ベア क्ष e\u{301}\u{200d}".to_owned(),
        " - 1. * # ".to_owned(),
    ];
    for name in kinds {
        let mut project = file::load(&at.join("acorn.ron")).expect("it loads");
        project.title.clone_from(&name);
        project.yarns[0].name.clone_from(&name);
        project.pieces[0].name.clone_from(&name);
        project.pieces[0].sizes = vec![Size::new(&*name, SizeBy::Factor(1.2))];
        project.making = Default::default();
        file::save(&project, &at.join("odd.ron")).expect("it saves");
        for form in ["txt", "md", "html"] {
            let out = run(&format!("sheet odd.ron -o odd.{form}"), at);
            assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
            let page = std::fs::read_to_string(at.join(format!("odd.{form}"))).expect("text");
            let obeyed = |c: char| c.is_control() && c != '\n';
            assert!(!page.contains(obeyed), "{form}, {name:?}");
            // Plain text is never markup.
            assert!(form == "txt" || !page.contains("<script>alert"), "{form}");
        }
        for view in ["body", "chart"] {
            let out = run(&format!("picture odd.ron --view {view} -o odd.svg"), at);
            assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
            let text = std::fs::read_to_string(at.join("odd.svg")).expect("text");
            resvg::usvg::Tree::from_str(&text, &Default::default()).expect("a sound picture");
        }
        for verb in ["rounds odd.ron --all-sizes", "rounds odd.ron --json"] {
            let out = run(verb, at);
            assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
            let said = String::from_utf8(out.stdout).expect("text");
            assert!(
                !said.contains(|c: char| c.is_control() && !"\n\t".contains(c)),
                "{name:?}"
            );
        }
    }
}

#[test]
fn a_name_without_end_is_refused_by_its_place() {
    let folder = folder();
    let at = folder.path();
    let text = std::fs::read_to_string(at.join("pebble.ron")).expect("it is there");
    for field in ["title", "name"] {
        let start = text.find(&format!("{field}: \"")).expect("a name") + field.len() + 3;
        let end = start + text[start..].find('"').expect("its end");
        let long = "\\u{1b}m".repeat(100_000);
        let long = format!("{}{long}{}", &text[..start], &text[end..]);
        std::fs::write(at.join("long.ron"), long).expect("written");
        refused("rounds long.ron", at, &format!("{LONGEST_NAME} characters"));
    }
}

#[test]
fn many_hands_write_in_one_gauge_book_and_no_entry_is_lost() {
    let folder = folder();
    let at = folder.path();
    let hands: Vec<_> = (0..20)
        .map(|hand| {
            let learn = "calibrate pebble.ron --height 64mm --of Moor --book book.ron --maker";
            command(&format!("{learn} hand{hand}"), at)
                .stdout(Stdio::null())
                .spawn()
                .expect("it runs")
        })
        .collect();
    for mut hand in hands {
        assert!(hand.wait().expect("it ends").success());
    }
    let text = std::fs::read_to_string(at.join("book.ron")).expect("it is there");
    let book = GaugeBook::parse(&text).expect("it is whole");
    assert_eq!(book.entries().len(), 20);
    assert_eq!(std::fs::read_dir(at).expect("a folder").count(), 4, "nothing lies about");
}
