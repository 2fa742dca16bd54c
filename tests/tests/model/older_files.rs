//! Project files of earlier versions open, and nothing in them is lost.

use std::path::{Path, PathBuf};

use plumpline_core::making::{Begun, By, WorkedPiece};
use plumpline_core::placement::Stitch;
use plumpline_core::words::Writer;
use plumpline_core::{FORMAT_VERSION, PieceId, Project, file};

fn folder(version: u32) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("projects/version-{version}"))
}

/// The projects as `version` saved them.
fn projects(version: u32) -> Vec<(PathBuf, Project)> {
    let entries = std::fs::read_dir(folder(version)).expect("the stored projects are there");
    let mut paths: Vec<PathBuf> = entries.map(|e| e.expect("an entry").path()).collect();
    paths.retain(|path| path.extension().is_some_and(|end| end == "ron"));
    paths.sort();
    paths.into_iter().map(|path| (path.clone(), file::load(&path).expect("opens"))).collect()
}

#[test]
fn every_project_of_an_earlier_version_opens_and_is_saved_as_it_was() {
    for version in 1..FORMAT_VERSION {
        let projects = projects(version);
        assert!(projects.len() >= 7, "{}", projects.len());
        for (path, project) in projects {
            let text = std::fs::read_to_string(&path).expect("it is text");
            let name = path.display();
            assert!(text.contains(&format!("format_version: {version},")), "{name}");
            if version < 3 {
                assert!(project.toy.is_empty(), "{name}: nobody had put anything together");
            }
            let numbers = (0..project.pieces.len() as u32).map(PieceId::new);
            assert!(project.pieces.iter().map(|p| p.id).eq(numbers), "{name}: their places");
            let saved = file::write(&project).expect("it is written");
            assert!(saved.contains(&format!("format_version: {FORMAT_VERSION},")));
            assert_eq!(file::parse(&saved).expect("it opens again"), project, "{name}");
        }
    }
}

/// What version 2 had: rounds that are given, counts that were accepted, work under way.
#[test]
fn nothing_of_version_2_is_lost() {
    let project = file::load(&folder(2).join("float-given.ron")).expect("it opens");
    let [float, ball] = project.pieces.as_slice() else { panic!("two pieces") };
    assert_eq!(float.simplicity, Some(0.25));
    let accepted = float.accepted.as_ref().expect("counts were accepted");
    assert_eq!((accepted.simplicity, accepted.counts.len()), (Some(0.25), 35));
    assert_eq!(float.bands.len(), 3);
    let given = ball.given.as_ref().expect("it is given by its rounds");
    assert_eq!(given.counts(), [6, 12, 18, 24, 24, 24, 24, 18, 12, 6]);
    assert_eq!(project.making.at[0].notes[&2], "the blue hook");
}

/// Version 3 spoke of pieces by their places: seams, sizes that meet, parts and progress are
/// still those of the same pieces.
#[test]
fn what_version_3_said_of_pieces_is_said_of_the_same_ones() {
    let project = file::load(&folder(3).join("acorn-under-way.ron")).expect("it opens");
    let [nut, cap] = project.pieces.as_slice() else { panic!("two pieces") };
    assert_eq!((nut.name.as_str(), cap.name.as_str()), ("Nut", "Cap"));
    let seam = project.seams[0];
    assert_eq!((seam.a.piece, seam.b.piece), (nut.id, cap.id));
    assert_eq!(project.making.of(cap.id, None, 1).expect("begun").notes[&2], "the oat yarn");
    let cob = file::load(&folder(3).join("moor-cob.ron")).expect("it opens");
    let named = cob.toy.parts.iter().filter_map(|p| Some(cob.name_of(p.piece()?)));
    assert_eq!(named.collect::<Vec<_>>(), ["Body", "Head", "Ear", "Leg", "Leg", "Tail"]);
}

#[test]
fn work_under_way_in_version_1_goes_on_where_it_was() {
    let mut project = file::load(&folder(1).join("float-under-way.ron")).expect("it opens");
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
        let progress = project.making.begin(PieceId::new(0), None, copy);
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
