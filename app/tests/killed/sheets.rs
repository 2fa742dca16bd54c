//! Killed while it writes a sheet or a picture, the command line leaves the old file or the new
//! one, whole.

use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use plumpline_core::{Size, SizeBy, file};

/// How often each form is written and killed.
const KILLS: u32 = 40;

fn command(args: &[&str], folder: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_plumpline"));
    command.args(args).current_dir(folder).stdin(Stdio::null()).stdout(Stdio::null());
    command
}

#[test]
fn a_kill_at_any_moment_leaves_one_whole_sheet_or_picture() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = folder.path();
    let sample = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects/float.ron");
    let mut project = file::load(&sample).expect("it loads");
    project.pieces[0].sizes = Vec::new();
    file::save(&project, &at.join("a.ron")).expect("saved");
    project.title = "The other version".into();
    project.pieces[0].sizes = vec![Size::new("L", SizeBy::Factor(1.4))];
    project.pieces[0].outline = project.pieces[0].outline.scaled(1.2, 1.1);
    file::save(&project, &at.join("b.ron")).expect("saved");
    for (verb, output) in [
        (&["sheet"][..], "sheet.txt"),
        (&["sheet"], "sheet.html"),
        (&["picture", "--view", "chart"], "chart.svg"),
    ] {
        let write =
            |project: &'static str| command(&[verb, &[project, "-o", output]].concat(), at);
        let whole = ["a.ron", "b.ron"].map(|project| {
            let began = std::time::Instant::now();
            assert!(write(project).status().expect("it runs").success(), "{output}");
            (std::fs::read(at.join(output)).expect("written"), began.elapsed())
        });
        assert_ne!(whole[0].0, whole[1].0);
        let mut killed = 0;
        for kill in 0..KILLS {
            let mut child =
                write(["a.ron", "b.ron"][kill as usize % 2]).spawn().expect("it runs");
            // At any time from its start until after it has written.
            let longest = whole[1].1.max(Duration::from_millis(4));
            std::thread::sleep(longest.mul_f64(0.05 + f64::from(kill * 7919 % 97) / 90.0));
            child.kill().expect("it is ours");
            killed += u32::from(child.wait().expect("ended").code().is_none());
            let now = std::fs::read(at.join(output)).expect("it is there");
            assert!(whole.iter().any(|(bytes, _)| *bytes == now), "{output} is torn");
        }
        // Or else every one of them had been written by the time.
        assert!(killed > 0, "{output}");
    }
}
