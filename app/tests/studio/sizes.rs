//! The Sizes stage as a person uses it.

use std::path::Path;
use std::time::{Duration, UNIX_EPOCH};

use egui::Key;
use egui_kittest::kittest::Queryable as _;
use plumpline::view::Stage;
use plumpline::view::sizes::SizesCard;
use plumpline::window::Studio;
use plumpline_core::calibrate::{Entry, GaugeBook};
use plumpline_core::companion::SeamKind;
use plumpline_core::{Firmness, Gauge, Piece, PieceId, file, plan};

use crate::bench::{Bench, opened};
use crate::hand::go_and_click as click;
use crate::wait::until_settled;

fn at_sizes<'a>() -> Bench<'a> {
    let mut bench = opened(1440.0, 900.0);
    bench.key_press(Key::Num3);
    bench.run();
    assert_eq!(bench.state().view().stage, Stage::Sizes);
    until_settled(&mut bench);
    bench
}

fn type_over(bench: &mut Bench<'_>, field: &str, text: &str) {
    bench.get_by_label(field).click();
    bench.run();
    bench.key_press_modifiers(egui::Modifiers::COMMAND, Key::A);
    bench.event(egui::Event::Text(text.into()));
    bench.run();
    bench.key_press(Key::Enter);
    bench.run();
}

#[test]
fn sizes_are_added_named_told_and_taken_back() {
    let mut bench = at_sizes();
    let before = bench.state().document().project().clone();
    for _ in 0..3 {
        click(&mut bench, "Add a size");
    }
    until_settled(&mut bench);
    let found = bench.state().sizing().found().expect("rows");
    let names: Vec<_> = found.rows.iter().map(|row| row.name.as_deref()).collect();
    assert_eq!(names, [None, Some("L"), Some("XL"), Some("XXL")]);
    let heights: Vec<f64> =
        found.rows[1..].iter().map(|row| row.made.as_ref().expect("made").height_mm).collect();
    assert!(heights.windows(2).all(|pair| pair[0] < pair[1]), "{heights:?}");
    for _ in 0..3 {
        bench.key_press_modifiers(egui::Modifiers::COMMAND, Key::Z);
        bench.run();
    }
    assert_eq!(bench.state().document().project(), &before);
}

#[test]
fn two_pieces_are_made_to_meet() {
    let mut bench = at_sizes();
    click(&mut bench, "Piece Float, selected");
    click(&mut bench, "Duplicate");
    bench.key_press(Key::Escape);
    bench.run();
    click(&mut bench, "Add a seam");
    assert_eq!(bench.state().document().project().seams.len(), 1);
    until_settled(&mut bench);
    let report = |bench: &Bench<'_>| {
        let found = bench.state().sizing().found().expect("an answer");
        found.seams[0].as_ref().expect("a report").clone()
    };
    assert!(report(&bench).met, "a piece meets its own twin");
    // With room to spare it does not, until one of them gives way.
    click(&mut bench, "Seam 1 is: slipped over");
    until_settled(&mut bench);
    let kind = bench.state().document().project().seams[0].kind;
    assert!(matches!(kind, SeamKind::Clearance { .. }));
    if !report(&bench).met {
        click(&mut bench, "Match seam 1");
        until_settled(&mut bench);
    }
    let now = report(&bench);
    assert!(now.met && now.off_stitches.abs() <= 0.5 + 1e-9, "{now:?}");
}

#[test]
fn another_yarn_is_compared_and_taken() {
    let mut bench = at_sizes();
    click(&mut bench, "Beside the sizes: Another yarn");
    assert_eq!(bench.state().view().sizes.card, SizesCard::Yarn);
    let was = bench.state().plan().expect("a plan").clone();
    type_over(&mut bench, "Other yarn, stitches", "14");
    type_over(&mut bench, "Other yarn, rounds", "15");
    until_settled(&mut bench);
    click(&mut bench, "Use it for the same rounds");
    let now = bench.state().plan().expect("a plan");
    assert_eq!(now.counts(), was.counts(), "the rounds are kept");
    assert!(now.size_mm.height > 1.2 * was.size_mm.height, "it is larger: {:?}", now.size_mm);
    bench.key_press_modifiers(egui::Modifiers::COMMAND, Key::Z);
    bench.run();
    assert_eq!(bench.state().plan().expect("a plan").size_mm, was.size_mm);
}

#[test]
fn a_toy_at_hand_is_matched_entered_as_a_size_and_taken() {
    let mut bench = at_sizes();
    let was = bench.state().plan().expect("a plan").size_mm;
    click(&mut bench, "Beside the sizes: Match");
    assert_eq!(bench.state().view().sizes.card, SizesCard::Match);
    assert!(bench.query_by_label("Add as a size").is_none(), "nothing is measured");
    click(&mut bench, "Toy measured: width");
    type_over(&mut bench, "Toy measures", &format!("{:.2} mm", 1.18 * was.width));
    until_settled(&mut bench);
    bench.get_by_label("1.18 of this piece as designed");
    let matched = matched(&bench);
    assert!((matched.scale - 1.18).abs() < 0.001 && matched.is_met(), "{}", matched.sentence());
    bench.get_by_label(&matched.sentence().to_string());
    type_over(&mut bench, "Name of the matched size", "Grandma's");
    click(&mut bench, "Add as a size");
    until_settled(&mut bench);
    let sizes = &bench.state().document().piece().sizes;
    assert_eq!(sizes.len(), 1);
    assert_eq!((sizes[0].name.as_str(), sizes[0].by), ("Grandma's", matched.by));
    let rows = &bench.state().sizing().found().expect("rows").rows;
    let (drawn, made) = (rows[0].made.as_ref(), rows[1].made.as_ref());
    let (drawn, made) = (drawn.expect("it plans"), made.expect("it is made"));
    let size = matched.made.plan.size_mm;
    assert_eq!((made.height_mm, made.width_mm), (size.height, size.width));
    assert!((made.times(drawn) - 1.18).abs() < 0.04, "{}", made.times(drawn));
    // A second of the same name is not entered.
    click(&mut bench, "Add as a size");
    assert_eq!(bench.state().document().piece().sizes.len(), 1);
    click(&mut bench, "Make the piece this size");
    until_settled(&mut bench);
    assert_eq!(bench.state().plan().expect("a plan").size_mm, matched.made.plan.size_mm);
    for _ in 0..2 {
        bench.key_press_modifiers(egui::Modifiers::COMMAND, Key::Z);
        bench.run();
    }
    assert_eq!(bench.state().plan().expect("a plan").size_mm, was);
    assert!(bench.state().document().piece().sizes.is_empty());
}

fn matched(bench: &Bench<'_>) -> plumpline_core::companion::Matched {
    let found = bench.state().sizing().found().expect("an answer");
    found.matched.as_ref().expect("it was asked").as_ref().expect("a match").clone()
}

#[test]
fn a_toy_is_measured_at_a_round_and_what_is_too_old_is_dropped() {
    let mut bench = at_sizes();
    let plan = bench.state().plan().expect("a plan").clone();
    let round = plan.rounds.len() / 2;
    click(&mut bench, "Beside the sizes: Match");
    click(&mut bench, "Toy measured: around");
    click(&mut bench, "Toy measured at: round");
    let around = std::f64::consts::TAU * plan.forecast[round].r;
    type_over(&mut bench, "Toy measures", &format!("{:.2} mm", 0.8 * around));
    until_settled(&mut bench);
    bench.get_by_label("0.80 of this piece as designed");
    assert!(matched(&bench).sentence().to_string().contains(&format!("around at Rnd {round}")));
    // While another answer is being worked out, the old one cannot be entered.
    type_over(&mut bench, "Toy measures", &format!("{:.2} mm", 1.5 * around));
    until_settled(&mut bench);
    bench.get_by_label("1.50 of this piece as designed");
    assert!((matched(&bench).toy_mm - 1.5 * around).abs() < 0.01);
}

#[test]
fn a_toy_is_not_measured_where_the_piece_is_gathered_shut() {
    let mut bench = opened(1440.0, 900.0);
    bench.key_press_modifiers(egui::Modifiers::COMMAND, Key::N);
    bench.run();
    click(&mut bench, "Starter Ball");
    click(&mut bench, "Create");
    bench.key_press(Key::Num3);
    bench.run();
    until_settled(&mut bench);
    let shut = bench.state().plan().expect("a plan").rounds.len();
    click(&mut bench, "Beside the sizes: Match");
    click(&mut bench, "Toy measured: around");
    click(&mut bench, "Toy measured at: round");
    type_over(&mut bench, "Toy measures", "100 mm");
    type_over(&mut bench, "Toy measured at round", &shut.to_string());
    until_settled(&mut bench);
    let found = bench.state().sizing().found().expect("an answer");
    let why = found.matched.as_ref().expect("it was asked").as_ref().err();
    assert!(why.is_some_and(|why| why.contains("gathered shut")), "{why:?}");
    assert!(bench.query_by_label("Add as a size").is_none());
}

fn at_home<'a>(home: &std::path::Path) -> Bench<'a> {
    let mut bench = egui_kittest::Harness::builder()
        .with_size(egui::vec2(1440.0, 900.0))
        .with_max_steps(60)
        .with_step_dt(0.05)
        .build_eframe(|cc| {
            let day = || UNIX_EPOCH + Duration::from_secs(1_709_202_600);
            Studio::new(cc, None).at_home(&cc.egui_ctx, home).with_clock(day)
        });
    bench.run();
    bench.key_press(Key::Num3);
    bench.run();
    until_settled(&mut bench);
    bench
}

#[test]
fn a_sample_teaches_and_the_gauge_book_keeps_it() {
    let home = tempfile::tempdir().expect("a folder");
    let mut bench = at_home(home.path());
    click(&mut bench, "Beside the sizes: Sample");
    let piece = bench.state().document().piece().clone();
    let width = piece.gauge.stitch_width_mm();
    type_over(&mut bench, "Stitches measured", &format!("{:.1} mm", 11.0 * width));
    until_settled(&mut bench);
    click(&mut bench, "Use this gauge");
    let learned = bench.state().document().piece().gauge.stitch_width_mm();
    assert!((learned / width - 1.1).abs() < 0.02, "{width} became {learned}");
    until_settled(&mut bench);
    click(&mut bench, "Save in the gauge book");
    drop(bench); // Waits until all is written.
    let bench = at_home(home.path());
    let entries = bench.state().home().gauges.entries();
    assert_eq!(entries.len(), 1);
    assert!(entries[0].gauge.stitch_width_mm() > width);
    assert_eq!(entries[0].date, "2024-02-29", "the day the studio's clock told");
    assert!(plan(bench.state().document().piece()).is_ok());
}

/// A gauge book of these yarns in the folder `home`.
fn written(home: &std::path::Path, yarns: &[&str]) -> GaugeBook {
    let mut book = GaugeBook::default();
    for (i, yarn) in yarns.iter().enumerate() {
        let gauge = Gauge { hook_mm: 3.5, stitches: 18.0 + i as f64, ..Gauge::default() };
        let entry = Entry {
            yarn: (*yarn).into(),
            hook_mm: 3.5,
            maker: "Ada".into(),
            gauge,
            firmness: Firmness(0.05),
            stiffness_along: 1.0,
            yarn_per_stitch: 9.4,
            date: "2024-02-01".into(),
            uncertainty: [0.0; 5],
        };
        book.put(entry).expect("it is entered");
    }
    let text = book.write().expect("it writes");
    std::fs::write(home.join("gauges.ron"), text).expect("it is written");
    book
}

fn on_disk(home: &std::path::Path) -> GaugeBook {
    let text = std::fs::read_to_string(home.join("gauges.ron")).expect("the book is there");
    GaugeBook::parse(&text).expect("a whole book")
}

#[test]
fn an_entry_is_struck_out_and_put_back_by_key_alone() {
    let home = tempfile::tempdir().expect("a folder");
    let book = written(home.path(), &["Moor", "Oat", "Slate"]);
    let mut bench = at_home(home.path());
    click(&mut bench, "Beside the sizes: Another yarn");
    bench.get_by_label("Gauge of Oat, 3.5 mm, Ada, measured 2024-02-01");
    bench.get_by_label("Delete Oat, 3.5 mm, Ada").focus();
    bench.run();
    bench.key_press(Key::Enter);
    bench.run();
    let yarns = |book: &GaugeBook| -> Vec<String> {
        book.entries().iter().map(|entry| entry.yarn.clone()).collect()
    };
    assert_eq!(yarns(&bench.state().home().gauges), ["Moor", "Slate"]);
    bench.get_by_label("Oat, 3.5 mm, Ada, deleted");
    drop(bench); // Waits until all is written.
    assert_eq!(yarns(&on_disk(home.path())), ["Moor", "Slate"]);
    // What is put back is the same book again.
    written(home.path(), &["Moor", "Oat", "Slate"]);
    let mut bench = at_home(home.path());
    click(&mut bench, "Beside the sizes: Another yarn");
    bench.get_by_label("Delete Oat, 3.5 mm, Ada").focus();
    bench.run();
    for _ in 0..2 {
        // The keyboard stays with the entry: it is struck out, then put back.
        bench.key_press(Key::Enter);
        bench.run();
        bench.run();
    }
    assert_eq!(bench.state().home().gauges, book);
    assert!(bench.get_by_label("Delete Oat, 3.5 mm, Ada").is_focused());
    assert!(bench.state().home().struck().is_empty());
    drop(bench);
    assert_eq!(on_disk(home.path()), book);
}

#[test]
fn what_is_learned_anew_is_not_put_back_over() {
    let home = tempfile::tempdir().expect("a folder");
    let mut bench = at_home(home.path());
    click(&mut bench, "Beside the sizes: Sample");
    let width = bench.state().document().piece().gauge.stitch_width_mm();
    type_over(&mut bench, "Stitches measured", &format!("{:.1} mm", 10.5 * width));
    until_settled(&mut bench);
    click(&mut bench, "Save in the gauge book");
    click(&mut bench, "Beside the sizes: Another yarn");
    let strike = |bench: &mut Bench<'_>| {
        bench.get_by_label_contains("Delete ").click();
        bench.run();
    };
    strike(&mut bench);
    assert_eq!(bench.state().home().struck().len(), 1);
    click(&mut bench, "Beside the sizes: Sample");
    click(&mut bench, "Save in the gauge book");
    assert!(bench.state().home().struck().is_empty(), "the newer one stands");
    assert_eq!(bench.state().home().gauges.entries().len(), 1);
}

#[test]
fn a_long_gauge_book_is_searched_by_yarn() {
    let home = tempfile::tempdir().expect("a folder");
    let names: Vec<String> = (10..40).map(|i| format!("Yarn {i}")).collect();
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    written(home.path(), &names);
    let mut bench = at_home(home.path());
    click(&mut bench, "Beside the sizes: Another yarn");
    let shown = |bench: &Bench<'_>| bench.query_all_by_label_contains("Delete ").count();
    assert_eq!(shown(&bench), 6);
    click(&mut bench, "Show 20 more of 30");
    assert_eq!(shown(&bench), 26);
    click(&mut bench, "Show 4 more of 30");
    assert_eq!(shown(&bench), 30);
    // Brought into sight by key, as it lies above the many.
    bench.get_by_label("Search the gauge book").focus();
    bench.run();
    type_over(&mut bench, "Search the gauge book", "yarn 27");
    assert_eq!(shown(&bench), 1);
    bench.get_by_label("Delete Yarn 27, 3.5 mm, Ada");
    type_over(&mut bench, "Search the gauge book", "silk");
    assert_eq!(shown(&bench), 0);
}

#[test]
fn a_nut_and_its_cap_teach_together() {
    let acorn = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects/acorn.ron");
    let was = file::load(&acorn).expect("it loads");
    let mut bench = egui_kittest::Harness::builder()
        .with_size(egui::vec2(1440.0, 900.0))
        .with_max_steps(60)
        .with_step_dt(0.05)
        .build_eframe(|cc| Studio::new(cc, Some(acorn)));
    bench.run();
    bench.key_press(Key::Num3);
    bench.run();
    until_settled(&mut bench);
    click(&mut bench, "Beside the sizes: Sample");
    bench.get_by_label_contains("What you measure on Cap counts too.");
    type_over(&mut bench, "Over both ends, measured", "204 mm");
    until_settled(&mut bench);
    // The other piece has measures of its own.
    bench.get_by_label("Piece Cap").click();
    bench.run();
    until_settled(&mut bench);
    bench.get_by_label_contains("Also measured: Nut.");
    type_over(&mut bench, "Height, measured", "46 mm");
    until_settled(&mut bench);
    let found = bench.state().sizing().found().expect("an answer");
    let learned = found.learned.as_ref().expect("measured").as_ref().expect("a calibration");
    let of: Vec<PieceId> = learned.table.iter().map(|row| row.piece).collect();
    assert_eq!(of, [1, 0].map(PieceId::new), "first the piece in hand");
    bench.get_by_label_contains("Nut: around over both ends: forecast ");
    click(&mut bench, "Use this gauge");
    for (now, was) in bench.state().document().project().pieces.iter().zip(&was.pieces) {
        let height = |piece: &Piece| piece.gauge.round_height_mm();
        assert_ne!(height(now), height(was), "{}", now.name);
    }
}
