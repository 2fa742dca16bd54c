//! The Sizes stage as a person uses it.

mod bench;

use bench::{Bench, opened};
use egui::Key;
use egui_kittest::kittest::Queryable as _;
use plumpline::studio::sizing::SizesCard;
use plumpline::studio::view::Stage;
use plumpline_core::companion::SeamKind;
use plumpline_core::plan;

fn at_sizes<'a>() -> Bench<'a> {
    let mut bench = opened(1440.0, 900.0);
    bench.key_press(Key::Num2);
    bench.run();
    assert_eq!(bench.state().view().stage, Stage::Sizes);
    settled(&mut bench);
    bench
}

/// Waits until what is shown is of the project as it is.
fn settled(bench: &mut Bench<'_>) {
    for _ in 0..2_000 {
        bench.step();
        if bench.state().sizing().is_current() {
            bench.run();
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(5));
    }
    panic!("the sizes were not worked out");
}

/// Goes to it by key, which brings it into sight, and clicks it.
fn click(bench: &mut Bench<'_>, name: &str) {
    bench.get_by_label(name).focus();
    bench.run();
    bench.get_by_label(name).click();
    bench.run();
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
    settled(&mut bench);
    let found = bench.state().sizing().found().expect("rows");
    let names: Vec<_> = found.rows.iter().map(|row| row.name.as_deref()).collect();
    assert_eq!(names, [None, Some("S"), Some("M"), Some("L")]);
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
    click(&mut bench, "Piece Float, in hand");
    click(&mut bench, "Duplicate");
    bench.key_press(Key::Escape);
    bench.run();
    click(&mut bench, "Add a seam");
    assert_eq!(bench.state().document().project().seams.len(), 1);
    settled(&mut bench);
    let report = |bench: &Bench<'_>| {
        let found = bench.state().sizing().found().expect("an answer");
        found.seams[0].as_ref().expect("a report").clone()
    };
    assert!(report(&bench).met, "a piece meets its own twin");
    // With room to spare it does not, until one of them gives way.
    click(&mut bench, "Seam 1 is: slipped over");
    settled(&mut bench);
    let kind = bench.state().document().project().seams[0].kind;
    assert!(matches!(kind, SeamKind::Clearance { .. }));
    if !report(&bench).met {
        click(&mut bench, "Make seam 1 meet");
        settled(&mut bench);
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
    settled(&mut bench);
    click(&mut bench, "Work the same rounds in it");
    let now = bench.state().plan().expect("a plan");
    assert_eq!(now.counts(), was.counts(), "the rounds are kept");
    assert!(now.size_mm.0 > 1.2 * was.size_mm.0, "it is larger: {:?}", now.size_mm);
    bench.key_press_modifiers(egui::Modifiers::COMMAND, Key::Z);
    bench.run();
    assert_eq!(bench.state().plan().expect("a plan").size_mm, was.size_mm);
}

#[test]
fn a_sample_teaches_and_the_gauge_book_keeps_it() {
    let home = tempfile::tempdir().expect("a folder");
    let at_home = |home: &std::path::Path| {
        let mut bench = egui_kittest::Harness::builder()
            .with_size(egui::vec2(1440.0, 900.0))
            .with_max_steps(60)
            .with_step_dt(0.05)
            .build_eframe(|cc| {
                plumpline::studio::app::Studio::new(cc, None).at_home(&cc.egui_ctx, home)
            });
        bench.run();
        bench.key_press(Key::Num2);
        bench.run();
        bench
    };
    let mut bench = at_home(home.path());
    settled(&mut bench);
    click(&mut bench, "Beside the sizes: Sample");
    let piece = bench.state().document().piece().clone();
    let width = piece.gauge.stitch_width_mm();
    type_over(&mut bench, "Stitches measured", &format!("{:.1} mm", 11.0 * width));
    settled(&mut bench);
    click(&mut bench, "Work with these hands");
    let learned = bench.state().document().piece().gauge.stitch_width_mm();
    assert!((learned / width - 1.1).abs() < 0.02, "{width} became {learned}");
    settled(&mut bench);
    click(&mut bench, "Keep in the gauge book");
    drop(bench); // Waits until all is written.
    let bench = at_home(home.path());
    let entries = bench.state().home().gauges.entries();
    assert_eq!(entries.len(), 1);
    assert!(entries[0].gauge.stitch_width_mm() > width);
    assert!(plan(bench.state().document().piece()).is_ok());
}
