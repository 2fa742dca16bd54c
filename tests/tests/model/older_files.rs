//! Project files of earlier versions open, and nothing in them is lost.

use std::path::{Path, PathBuf};

use plumpline_core::making::{Begun, By, WorkedPiece};
use plumpline_core::placement::Stitch;
use plumpline_core::words::Writer;
use plumpline_core::{FORMAT_VERSION, Project, file};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("projects/version-1")
}

/// The projects as version 1 saved them.
fn projects() -> Vec<(PathBuf, Project)> {
    let entries = std::fs::read_dir(folder()).expect("the stored projects are there");
    let mut paths: Vec<PathBuf> = entries.map(|e| e.expect("an entry").path()).collect();
    paths.retain(|path| path.extension().is_some_and(|end| end == "ron"));
    paths.sort();
    paths.into_iter().map(|path| (path.clone(), file::load(&path).expect("opens"))).collect()
}

#[test]
fn every_project_of_version_1_opens_and_is_saved_as_it_was() {
    let projects = projects();
    assert!(projects.len() >= 7, "{}", projects.len());
    for (path, project) in projects {
        let text = std::fs::read_to_string(&path).expect("it is text");
        assert!(text.contains("format_version: 1,"), "{}", path.display());
        let saved = file::write(&project).expect("it is written");
        assert!(saved.contains(&format!("format_version: {FORMAT_VERSION},")));
        assert_eq!(file::parse(&saved).expect("it opens again"), project, "{}", path.display());
    }
}

#[test]
fn work_under_way_in_version_1_goes_on_where_it_was() {
    let mut project = file::load(&folder().join("float-under-way.ron")).expect("it opens");
    let course = WorkedPiece::of_piece(&project.pieces[0], &Writer::bench()).expect("a plan");
    let repeated = |plain: usize, repeats: usize| {
        let once = std::iter::repeat_n(Stitch::Plain, plain).chain([Stitch::Increase]);
        Begun::of(once.collect::<Vec<_>>().repeat(repeats))
    };
    // “(sc 7, inc) × 4 [36]”, “sc in each st [42]” and “(sc 15, inc) × 3 [51]” in the file.
    let expected = [
        (7, 5, repeated(7, 4)),
        (21, 3, Begun::of([Stitch::Plain; 42])),
        (12, 2, repeated(15, 3)),
    ];
    for (copy, (round, done, of)) in (1..).zip(expected) {
        let progress = project.making.begin(0, None, copy);
        assert_eq!((progress.round, progress.done), (round, done));
        assert_eq!(progress.of, of, "copy {copy}");
        assert_eq!(progress.parted(&course), None, "copy {copy}: nothing has changed");
        assert_eq!(progress.worked.len(), round as usize - 1);
        assert_eq!((progress.seconds, progress.notes[&2].as_str()), (1234.0, "the blue hook"));
        // A round of as many stitches, shaped elsewhere, is another one.
        let mut other = progress.clone();
        other.of = Begun::of(backwards(&of));
        assert_eq!(other.parted(&course).is_some(), round != 21, "copy {copy}");
        progress.advance(&course, By::Round);
        assert_eq!(progress.round, round + 1);
    }
}

/// The stitches of `of`, worked from the last to the first.
fn backwards(of: &Begun) -> Vec<Stitch> {
    let Begun::Stitches(rows) = of else { panic!("words that say no stitches") };
    let rows = rows.iter().rev();
    rows.flat_map(|&(stitch, times)| std::iter::repeat_n(stitch, times as usize)).collect()
}
