//! Companions: seams hold to the stitch, room to half a stitch, and what cannot be is told.

use std::path::Path;

use plumpline_core::companion::{
    At, ChangeKind, Edge, SeamKind, Side, instructions, join, meet, meet_all, report,
};
use plumpline_core::pattern::write::Writer;
use plumpline_core::sizes::{self, sized};
use plumpline_core::starter::{Dimensions, Starter};
use plumpline_core::{Piece, PieceId, Project, Seam, Size, SizeBy, file, plan, sheet};
use plumpline_tests::rng::Rng;

fn acorn() -> Project {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let mut project = file::load(&folder.join("acorn.ron")).expect("the sample loads");
    project.seams.clear();
    for piece in &mut project.pieces {
        piece.sizes.clear();
    }
    project
}

const fn edge(piece: u32, at: At) -> Edge {
    Edge { piece: PieceId::new(piece), at }
}

/// The acorn, its cap's edge at round `round` of the nut.
fn joined(round: u32, kind: SeamKind, moves: Side) -> Project {
    let mut project = acorn();
    let (nut, cap) = (edge(0, At::Round(round)), edge(1, At::OpenEnd));
    project.seams = vec![Seam { moves, ..Seam::new(nut, cap, kind) }];
    project
}

#[test]
fn a_sewn_seam_has_the_same_stitches_on_both_sides_whoever_moves() {
    for round in [8, 11, 13, 15, 18] {
        for moves in [Side::A, Side::B, Side::Either] {
            let project = joined(round, SeamKind::SewnEqual, moves);
            let met = meet(&project, 0).expect("it meets");
            assert!(met.report.met, "{round} {moves:?}: {}", met.report.sentence());
            assert_eq!(met.report.a.stitches, met.report.b.stitches);
            // What is reported is what the saved project plans to.
            assert_eq!(report(&met.project, 0).expect("a report"), met.report);
            let moved = |i: usize| met.project.pieces[i] != project.pieces[i];
            match moves {
                Side::A => assert!(!moved(1), "{round}: the cap may not move"),
                Side::B => assert!(!moved(0), "{round}: the nut may not move"),
                Side::Either => assert!(!(moved(0) && moved(1)), "{round}: one side is enough"),
            }
            assert!(met.changes.len() <= 1);
            // Once met it stays as it is.
            let again = meet(&met.project, 0).expect("it meets");
            assert_eq!(again.report.a.stitches, again.report.b.stitches);
            assert_eq!(again.project, met.project, "{round} {moves:?}");
        }
    }
}

#[test]
fn a_few_stitches_go_into_the_edge_more_into_the_scale() {
    let mut kinds = [0; 2];
    for wide in [0.9, 0.95, 1.0, 1.03, 1.05, 1.07, 1.1, 1.13, 1.16, 1.2] {
        for round in [8, 12, 14] {
            let mut project = joined(round, SeamKind::SewnEqual, Side::B);
            project.pieces[0].outline = project.pieces[0].outline.scaled(wide, 1.0);
            let count =
                plan(&project.pieces[0]).expect("it plans").counts()[round as usize - 1];
            let edge =
                *plan(&project.pieces[1]).expect("it plans").counts().last().expect("any");
            let met = meet(&project, 0).expect("it meets");
            assert_eq!((met.report.a.stitches, met.report.b.stitches), (count, count));
            let Some(change) = met.changes.first() else {
                assert_eq!(count, edge);
                continue;
            };
            match change.kind {
                ChangeKind::Counts { from, to } => {
                    kinds[0] += 1;
                    assert_eq!((from, to), (edge, count));
                    assert!(from.abs_diff(to) <= 3, "Rnd {round}: {from} to {to}");
                }
                ChangeKind::Scale(scale) => {
                    kinds[1] += 1;
                    let asked = f64::from(count) / f64::from(edge);
                    assert!(
                        (scale / asked).ln().abs() < 0.08,
                        "Rnd {round}: {scale} of {asked}"
                    );
                }
            }
            assert!(change.said.to_string().contains("Cap"), "{}", change.said);
        }
    }
    assert!(kinds.iter().all(|&n| n > 0), "both ways were taken: {kinds:?}");
}

#[test]
fn room_is_left_to_half_a_stitch_on_the_forecast() {
    let mut rng = Rng::new(0x726f_6f6d);
    for i in 0..24 {
        let round = 9 + i % 8;
        let mm = rng.between(-2.0, 9.0);
        for (moves, stuffed) in [(Side::B, true), (Side::A, true), (Side::B, false)] {
            let kind = SeamKind::Clearance { mm, stuffed };
            let met = meet(&joined(round, kind, moves), 0).expect("it meets");
            let (a, b) = (met.report.a, met.report.b);
            let outer = if stuffed { b.stuffed_mm } else { b.slack_mm };
            // Half a stitch of the way round, as a width.
            let half = 0.5 * b.stitch_mm / std::f64::consts::PI;
            let off = (outer - a.stuffed_mm - mm).abs();
            assert!(
                off <= half + 1e-9,
                "Rnd {round}, {mm:.2} mm: {off:.2} of {half:.2} mm off"
            );
            let fresh = report(&met.project, 0).expect("a report");
            assert!(fresh.met && (fresh.room_mm - met.report.room_mm).abs() < 1e-9);
        }
    }
}

#[test]
fn an_open_start_meets_by_its_chain() {
    let mut project = acorn();
    let gauge = project.pieces[0].gauge;
    let dish = Starter::Dish.piece(&Dimensions::new(40.0, 70.0), gauge).expect("a dish");
    project.pieces[1] = Piece { id: project.pieces[1].id, ..dish };
    project.pieces[1].outline = project.pieces[1].outline.reversed();
    assert!(!project.pieces[1].outline.starts_closed());
    let seam = Seam::new(edge(0, At::Round(14)), edge(1, At::OpenStart), SeamKind::SewnEqual);
    project.seams = vec![Seam { moves: Side::B, ..seam }];
    let met = meet(&project, 0).expect("it meets");
    let chain = plan(&met.project.pieces[1]).expect("it plans").chain;
    assert_eq!(chain, Some(met.report.a.stitches));
    assert!(met.report.met);
}

#[test]
fn pins_on_both_sides_are_a_conflict_that_is_explained() {
    let mut project = joined(13, SeamKind::SewnEqual, Side::Either);
    project.pieces[0].pins.insert(13, 34);
    // A pin may make another number of rounds the better one: whichever is last is pinned.
    let rounds = |piece: &Piece| plan(piece).expect("it plans").rounds.len() as u32;
    let last = rounds(&project.pieces[1]);
    project.pieces[1].pins = [(last - 1, 40), (last, 40), (last + 1, 40)].into();
    let pinned = project.pieces[1].pins.contains_key(&rounds(&project.pieces[1]));
    assert!(pinned, "its edge is pinned");
    let error = meet(&project, 0).expect_err("both are pinned").to_string();
    assert!(error.contains("34") && error.contains("40"), "{error}");
    assert!(error.contains("Nut") && error.contains("Cap"), "{error}");
    assert_eq!(error.lines().count(), 1, "{error}");
    // One pin is in the way of its own side only.
    project.pieces[1].pins.clear();
    let met = meet(&project, 0).expect("the cap moves");
    assert_eq!(met.report.b.stitches, 34);
    project.seams[0].moves = Side::A;
    let error = meet(&project, 0).expect_err("the nut is pinned").to_string();
    assert!(error.contains("pinned at 34"), "{error}");
}

#[test]
fn a_seam_knows_its_own_pin_from_the_makers() {
    let project = joined(13, SeamKind::SewnEqual, Side::B);
    let mut met = meet(&project, 0).expect("it meets").project;
    // The nut changes; the cap follows although its edge is pinned by the seam.
    met.pieces[0].outline = met.pieces[0].outline.scaled(1.04, 1.0);
    let again = meet(&met, 0).expect("it follows");
    assert!(again.report.met);
    assert!(again.project.pieces[1].pins.len() <= 1, "{:?}", again.project.pieces[1].pins);
}

#[test]
fn two_seams_that_ask_different_things_of_one_edge_are_told_apart() {
    let mut project = joined(13, SeamKind::SewnEqual, Side::B);
    let nut = project.pieces[0].clone();
    project.add(nut);
    let other = Seam::new(edge(2, At::Round(4)), edge(1, At::OpenEnd), SeamKind::SewnEqual);
    project.seams.push(Seam { moves: Side::B, ..other });
    let (_, said) = meet_all(&project);
    assert!(said.iter().any(Option::is_some), "both cannot hold");
    for text in said.iter().flatten() {
        assert_eq!(text.to_string().lines().count(), 1, "{text}");
    }
    // Where the others may move, all hold.
    project.seams[0].moves = Side::A;
    project.seams[1].moves = Side::A;
    let (met, said) = meet_all(&project);
    assert_eq!(said, [None, None]);
    for i in 0..2 {
        assert!(report(&met, i).expect("a report").met);
    }
}

#[test]
fn edges_that_are_not_there_are_named() {
    for (at, part) in [(At::Round(99), "no Rnd 99"), (At::OpenStart, "start is closed")] {
        let mut project = joined(13, SeamKind::SewnEqual, Side::B);
        project.seams[0].a.at = at;
        let error = meet(&project, 0).expect_err("refused").to_string();
        assert!(error.contains("Nut") && error.contains(part), "{error}");
    }
}

#[test]
fn both_pieces_tell_of_the_seam_on_the_sheet_too() {
    let project = meet(&joined(13, SeamKind::SewnEqual, Side::B), 0).expect("it meets").project;
    let plans: Vec<_> =
        project.pieces.iter().map(|piece| plan(piece).expect("it plans")).collect();
    let of = |i: usize| {
        let told = instructions(&project, &plans, project.pieces[i].id, &Writer::bench());
        told.iter().map(ToString::to_string).collect::<Vec<_>>()
    };
    assert!(of(0)[0].starts_with("Rnd 13 is sewn to the last round"), "{:?}", of(0));
    assert!(of(1)[0].contains("Rnd 13 of the piece “Nut”, stitch to stitch"), "{:?}", of(1));
    let page = sheet::text(&project).expect("it prints");
    let flowed = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for text in of(0).iter().chain(&of(1)) {
        assert!(flowed.contains(text), "{text}\n{page}");
    }
}

#[test]
fn seams_follow_pieces_that_come_and_go() {
    let mut project = joined(13, SeamKind::SewnEqual, Side::B);
    project.pieces[1].sizes = vec![Size::new("M", SizeBy::Meet { companion: PieceId::new(0) })];
    let [nut, cap] = [0, 1].map(PieceId::new);
    let seams = project.seams.clone();
    let another = project.insert(0, project.pieces[0].clone());
    assert_eq!(project.pieces.iter().map(|p| p.id).collect::<Vec<_>>(), [another, nut, cap]);
    assert_eq!(project.seams, seams, "whatever came before them");
    assert_eq!(project.validate(), Ok(()));
    project.remove(another);
    assert_eq!(project.seams, seams);
    project.remove(nut);
    assert!(project.seams.is_empty() && project.pieces[0].sizes.is_empty());
    assert_eq!(project.validate(), Ok(()));
}

#[test]
fn a_cap_of_any_size_meets_its_nut() {
    let project = joined(13, SeamKind::SewnEqual, Side::B);
    let mut project = meet(&project, 0).expect("it meets").project;
    project.pieces[0].sizes =
        vec![Size::new("S", SizeBy::Height(50.0)), Size::new("L", SizeBy::Height(150.0))];
    project.pieces[1].sizes = vec![
        Size::new("S", SizeBy::Meet { companion: PieceId::new(0) }),
        Size::new("L", SizeBy::Meet { companion: PieceId::new(0) }),
    ];
    let base = plan(&project.pieces[1]).expect("it plans").size_mm.width;
    let tall = plan(&project.pieces[0]).expect("it plans").size_mm.height;
    for (name, factor) in [("S", 50.0 / tall), ("L", 150.0 / tall)] {
        let at = sizes::at_size(&project, name).expect("it is made");
        assert!(at.made.iter().all(Option::is_some));
        let report = report(&at.project, 0).expect("a report");
        assert!(report.met, "{name}: {}", report.sentence());
        assert_eq!(report.a.stitches, report.b.stitches);
        let wide = plan(&at.project.pieces[1]).expect("it plans").size_mm.width;
        assert!(
            (wide / base / factor).ln().abs() < 0.1,
            "{name}: the cap grows with the nut, {wide} of {base} at {factor}"
        );
        let size =
            project.pieces[1].sizes.iter().find(|s| s.name == name).expect("it is there");
        let alone = sized(&project, PieceId::new(1), size).expect("it is made");
        assert_eq!(alone.plan.size_mm.width, wide);
    }
    project.seams.clear();
    let size = project.pieces[1].sizes[0].clone();
    let error = sized(&project, PieceId::new(1), &size).expect_err("no seam").to_string();
    assert!(error.contains("no seam joins it to “Nut”"), "{error}");
}

#[test]
fn the_whole_acorn_is_resized_in_step_and_meets_again() {
    let mut project = joined(13, SeamKind::SewnEqual, Side::B);
    let again = project.seams[0];
    join(&mut project, again);
    assert_eq!(project.seams.len(), 1, "the same edges are one seam");
    let size = Size::new("new", SizeBy::Height(120.0));
    let done = sizes::resize(&project, None, &size).expect("it is made");
    let plans: Vec<_> =
        done.project.pieces.iter().map(|piece| plan(piece).expect("it plans")).collect();
    assert!((plans[0].size_mm.height - 120.0).abs() <= 2.1);
    assert!(report(&done.project, 0).expect("a report").met, "{:?}", done.seams);
    assert_eq!(done.project.seams[0].moves, Side::B, "the maker's choice stays");
    assert_eq!(file::parse(&file::write(&done.project).expect("it writes")), Ok(done.project));
}

#[test]
fn seams_are_saved_and_older_files_have_none() {
    let kind = SeamKind::Clearance { mm: 2.5, stuffed: false };
    let project = meet(&joined(12, kind, Side::B), 0).expect("it meets").project;
    let text = file::write(&project).expect("it writes");
    assert_eq!(file::parse(&text).expect("it reads"), project);
    let older = file::write(&acorn()).expect("it writes");
    assert!(!older.contains("seams"));
    assert!(file::parse(&older).expect("it reads").seams.is_empty());
    for (wrong, part) in [
        (
            "a: (piece: 0, at: Round(3)), b: (piece: 5, at: OpenEnd), kind: SewnEqual",
            "no piece 5",
        ),
        ("a: (piece: 0, at: Round(0)), b: (piece: 1, at: OpenEnd), kind: SewnEqual", "round 0"),
        (
            "a: (piece: 1, at: Round(3)), b: (piece: 1, at: OpenEnd), kind: SewnEqual",
            "one piece",
        ),
        (
            "a: (piece: 0, at: Round(3)), b: (piece: 1, at: OpenEnd), \
             kind: Clearance(mm: inf, stuffed: true)",
            "clearance",
        ),
    ] {
        let text =
            older.replacen("    pieces:", &format!("    seams: [({wrong})],\n    pieces:"), 1);
        assert_ne!(text, older);
        let error = file::parse(&text).expect_err("refused").to_string();
        assert!(error.contains(part) && error.lines().count() == 1, "{error}");
    }
}
