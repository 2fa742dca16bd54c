//! How each stage looks, in both themes: drawn by the software renderer and held against the
//! picture that was last judged good.
//!
//! `UPDATE_SNAPSHOTS=1 cargo test --workspace --test stages` takes new pictures; look
//! at every one before it is kept.

use std::path::Path;
use std::time::{Duration, Instant};

use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable as _;
use egui_kittest::{Harness, SnapshotOptions, SnapshotResults};
use plumpline::view::Stage;
use plumpline::window::Studio;

/// A pattern with one round that does not add up.
const BROKEN: &str = "Cork\n\
    Rnd 1: 6 sc in magic ring (6)\n\
    Rnd 2: inc x 6 (12)\n\
    Rnd 3: (sc 1, inc) x 6 (18)\n\
    Rnd 4: (sc 2, inc) x 5 (24)\n\
    Rnds 5-9: sc in each st around (24)\n\
    Rnd 10: (sc 2, dec) x 6 (18)\n\
    Stuff now.\n\
    Rnd 11: (sc 1, dec) x 6 (12)\n\
    Rnd 12: dec x 6 (6)\n\
    Fasten off.\n";

type Bench<'a> = Harness<'a, Studio>;

/// A copy of the acorn, since what is worked in the Make stage is saved at once.
fn opened<'a>(folder: &Path, width: f32, height: f32) -> Bench<'a> {
    let sample = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects/acorn.ron");
    let copy = folder.join("acorn.ron");
    std::fs::copy(sample, &copy).expect("the sample is there");
    let mut bench = Harness::builder()
        .with_size(vec2(width, height))
        .with_max_steps(60)
        .with_step_dt(0.05)
        .with_render_cursor(false)
        .wgpu()
        .build_eframe(|cc| Studio::new(cc, Some(copy)).typing_paths(folder));
    bench.run();
    bench
}

/// Work on other threads is done, and shown.
fn settle(bench: &mut Bench<'_>) {
    let began = Instant::now();
    loop {
        bench.step();
        let studio = bench.state();
        let done = match studio.view().stage {
            Stage::Sizes => studio.sizing().is_current(),
            Stage::Sheet => studio.printing().is_current(),
            Stage::Proofread => studio.proofreading().checked().is_some(),
            Stage::Make => studio.handiwork().course(0).is_some(),
            Stage::Shape => true,
        };
        if done {
            bench.run();
            return;
        }
        assert!(began.elapsed() < Duration::from_secs(60), "the stage did not settle");
        std::thread::sleep(Duration::from_millis(2));
    }
}

fn stages(width: f32, height: f32) {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = opened(folder.path(), width, height);
    let mut results = SnapshotResults::new();
    // Renderers on other processors differ by a hair here and there, along the edges of
    // thousands of stitches say; a control that moved differs by more than this.
    let options = SnapshotOptions::new().threshold(2.0).max_failed_pixels(1_200);
    for theme in ["light", "dark"] {
        for stage in ["Shape", "Sizes", "Sheet", "Proofread", "Make"] {
            bench.get_by_label(stage).click();
            bench.run();
            if stage == "Shape" {
                // A round in hand, as the eye is mostly on one.
                bench.key_press(Key::Home);
                for _ in 0..8 {
                    bench.key_press(Key::ArrowDown);
                }
            }
            if stage == "Proofread" && theme == "light" {
                bench.get_by_label("Pattern text").focus();
                bench.run();
                bench.event(egui::Event::Paste(BROKEN.into()));
            }
            if stage == "Make" {
                // The next size, so that its heading is in the picture.
                bench.key_press(Key::S);
                bench.run();
            }
            settle(&mut bench);
            let name = format!("{}-{theme}-{width}", stage.to_lowercase());
            results.add(bench.try_snapshot_options(&name, &options));
        }
        bench.key_press_modifiers(Modifiers::COMMAND, Key::D);
        bench.run();
    }
}

#[test]
fn every_stage_looks_as_it_was_judged_good() {
    stages(1440.0, 900.0);
}

#[test]
fn every_stage_looks_as_it_was_judged_good_in_a_small_window() {
    stages(1024.0, 700.0);
}
