//! A toy at hand: one measure of it gives the scale, and the size that comes nearest.

use std::f64::consts::PI;
use std::path::Path;

use plumpline_core::Extent;
use plumpline_core::companion::{Matched, Spot, ToyMeasure, match_toy, scale_to_match};
use plumpline_core::starter::{Dimensions, Starter};
use plumpline_core::{Gauge, Piece, PieceId, Project, Size, SizeBy, file, plan, sizes};

/// The projects whose first piece is measured.
const SAMPLES: [&str; 5] = ["acorn.ron", "float.ron", "pear.ron", "pebble.ron", "cushion.ron"];

fn sample(name: &str) -> Project {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    file::load(&folder.join(name)).expect("the sample loads")
}

/// The first piece of `project` as a toy measured `times` as large in `measure`.
fn matched(project: &Project, measure: ToyMeasure, times: f64) -> Matched {
    let now = plan(&project.pieces[0]).expect("it plans");
    let toy = times * measure.of(&now).expect("a measure");
    match_toy(project, PieceId::new(0), measure, toy).expect("a match")
}

/// The piece alone in a project.
fn ball() -> Piece {
    let ball = Starter::Ball.piece(&Dimensions::new(80.0, 80.0), Gauge::default());
    ball.expect("a ball")
}

#[test]
fn the_scale_is_the_toy_in_the_measure_of_the_piece() {
    let now = plan(&ball()).expect("it plans");
    let Extent { height: high, width: wide } = now.size_mm;
    for (measure, mine) in [
        (ToyMeasure::Height, high),
        (ToyMeasure::Width(Spot::Widest), wide),
        (ToyMeasure::Around(Spot::Widest), PI * wide),
        (ToyMeasure::Width(Spot::Round(5)), 2.0 * now.forecast[5].r),
        (ToyMeasure::Around(Spot::Round(5)), 2.0 * PI * now.forecast[5].r),
    ] {
        let scale = scale_to_match(&now, measure, 104.0).expect("a scale");
        assert!((scale - 104.0 / mine).abs() < 1e-9, "{measure:?}: {scale}");
    }
}

#[test]
fn a_tape_round_an_oval_goes_along_its_straight_sides() {
    let straight_mm = 30.0;
    let piece = Piece { straight_mm, ..ball() };
    let now = plan(&piece).expect("it plans");
    let across = now.depth_mm.expect("an oval has a depth");
    let around = ToyMeasure::Around(Spot::Widest).of(&now).expect("a measure");
    assert!((around - (PI * across + 2.0 * straight_mm)).abs() < 1e-9, "{around}");
    let wide = ToyMeasure::Width(Spot::Widest).of(&now).expect("a measure");
    assert!((wide - now.size_mm.width).abs() < 1e-9, "{wide}");
    let mut project = sample("pebble.ron");
    project.pieces[0] = piece;
    let found = matched(&project, ToyMeasure::Around(Spot::Widest), 1.25);
    let made = &found.made;
    assert!(made.piece.straight_mm > 1.2 * straight_mm, "its sides grow with it");
    let girth = PI * made.plan.depth_mm.expect("a depth") + 2.0 * made.piece.straight_mm;
    assert!((girth - found.made_mm).abs() < 1e-9, "{girth} is not {}", found.made_mm);
    assert!(found.is_met(), "{}", found.sentence());
}

/// Every measure of every sample, smaller and larger: the piece comes within one in a hundred
/// or half a round, or says that it does not.
#[test]
fn a_toy_of_the_pattern_is_matched_whatever_was_measured() {
    let (mut met, mut all) = (0, 0);
    for name in SAMPLES {
        let project = sample(name);
        let rounds = plan(&project.pieces[0]).expect("it plans").rounds.len() as u32;
        let middle = Spot::Round(rounds / 2);
        for measure in [
            ToyMeasure::Height,
            ToyMeasure::Width(Spot::Widest),
            ToyMeasure::Around(Spot::Widest),
            ToyMeasure::Width(middle),
            ToyMeasure::Around(middle),
        ] {
            for times in [0.8, 1.18, 1.6] {
                let found = matched(&project, measure, times);
                let said = format!("{name} {measure:?} × {times}: {}", found.sentence());
                assert!((found.scale - times).abs() < 1e-9, "{said}");
                assert!(found.off_mm().abs() < 0.05 * found.toy_mm, "{said}");
                assert!(said.contains(&format!("{:.1} mm", found.made_mm)), "{said}");
                assert_eq!(said.contains("no nearer"), !found.is_met(), "{said}");
                all += 1;
                met += u32::from(found.is_met());
            }
        }
    }
    assert!(10 * met >= 9 * all, "{met} of {all} are met");
}

/// What the card promises is what the table of sizes then holds.
#[test]
fn entered_as_a_size_it_is_what_was_matched() {
    for measure in [
        ToyMeasure::Height,
        ToyMeasure::Around(Spot::Widest),
        ToyMeasure::Around(Spot::Round(9)),
    ] {
        let mut project = sample("pear.ron");
        let found = matched(&project, measure, 1.3);
        project.pieces[0].sizes = vec![Size::new("Toy", found.by)];
        let rows = sizes::size_table(&project, &project.pieces[0]);
        let drawn = rows[0].made.as_ref().expect("it plans");
        let made = rows[1].made.as_ref().expect("it is made");
        assert_eq!(made.rounds as usize, found.made.plan.rounds.len(), "{measure:?}");
        let Extent { height, width } = found.made.plan.size_mm;
        assert_eq!((made.height_mm, made.width_mm), (height, width), "{measure:?}");
        assert!((made.times(drawn) - 1.3).abs() < 0.05, "{measure:?}: {}", made.times(drawn));
        assert!((drawn.times(drawn) - 1.0).abs() < 1e-12);
    }
}

#[test]
fn what_the_piece_measures_already_leaves_it_as_it_is() {
    let project = sample("pebble.ron");
    for measure in [ToyMeasure::Height, ToyMeasure::Width(Spot::Round(6))] {
        let found = matched(&project, measure, 1.0);
        assert_eq!(found.made.plan.counts(), found.now.counts(), "{measure:?}");
        assert!(
            found.sentence().to_string().ends_with("as the toy does."),
            "{}",
            found.sentence()
        );
    }
}

#[test]
fn what_cannot_be_measured_is_one_line() {
    let project = sample("float.ron");
    let now = plan(&project.pieces[0]).expect("it plans");
    let last = now.rounds.len() as u32;
    let error = |measure, mm| {
        let error =
            match_toy(&project, PieceId::new(0), measure, mm).expect_err("refused").to_string();
        assert_eq!(error.lines().count(), 1, "{error}");
        error
    };
    assert!(error(ToyMeasure::Height, f64::NAN).contains("the measure"));
    assert!(error(ToyMeasure::Height, 0.0).contains("the measure"));
    let beyond = error(ToyMeasure::Width(Spot::Round(last + 1)), 50.0);
    assert!(beyond.contains(&format!("the last is {last}")), "{beyond}");
    assert!(error(ToyMeasure::Around(Spot::Round(0)), 50.0).contains("no Rnd 0"));
    // A ball ends in a gathered round: there is nothing to put a tape round.
    let now = plan(&ball()).expect("it plans");
    let shut = ToyMeasure::Around(Spot::Round(now.rounds.len() as u32));
    let error = scale_to_match(&now, shut, 50.0).expect_err("refused").to_string();
    assert!(error.contains("gathered shut"), "{error}");
}

#[test]
fn a_toy_no_yarn_can_match_is_told() {
    let project = sample("pebble.ron");
    let found =
        match_toy(&project, PieceId::new(0), ToyMeasure::Height, 9_000.0).expect("the nearest");
    assert!(!found.is_met() && matches!(found.by, SizeBy::Height(_)));
    assert!(found.made.notes.iter().any(|note| note.to_string().contains("cannot be met")));
}
