//! How each stage looks, in both themes: drawn by the software renderer and held against the
//! picture that was last judged good.
//!
//! `UPDATE_SNAPSHOTS=1 cargo test --workspace --test stages` takes new pictures; look
//! at every one before it is kept.

use plumpline_core::PieceId;
use std::path::Path;
use std::time::{Duration, Instant};

use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable as _;
use egui_kittest::{Harness, SnapshotOptions, SnapshotResults, try_image_snapshot_options};
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

/// Weighted squared distance of two colours (YIQ) up to which they count as the same.
const THRESHOLD: f32 = 2.0;
/// Pixels of a picture that may differ by more.
const MOST_PIXELS: usize = 12;

type Bench<'a> = Harness<'a, Studio>;

/// A copy of the acorn, since what is worked in the Make stage is saved at once.
fn opened<'a>(folder: &Path, width: f32, height: f32) -> Bench<'a> {
    opened_on("acorn.ron", folder, width, height)
}

/// A copy of the sample in this file.
fn opened_on<'a>(sample: &str, folder: &Path, width: f32, height: f32) -> Bench<'a> {
    let copy = folder.join(sample);
    let samples = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let sample = samples.join(sample);
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
            Stage::Sizes => studio.sizing().is_current() && studio.line_up().is_whole(),
            Stage::Sheet => studio.printing().is_current(),
            Stage::Proofread => studio.proofreading().checked().is_some(),
            Stage::Make => studio.handiwork().course(PieceId::new(0)).is_some(),
            Stage::Shape => !studio.body().is_busy(),
            Stage::Assembly => !studio.toy().is_busy(),
            Stage::Lesson => !studio.lesson().is_busy(),
        };
        if done {
            bench.run();
            return;
        }
        assert!(began.elapsed() < Duration::from_secs(60), "the stage did not settle");
        std::thread::sleep(Duration::from_millis(2));
    }
}

/// What the renderer itself may differ by from one processor to another.
fn tolerance() -> SnapshotOptions {
    SnapshotOptions::new().threshold(THRESHOLD).max_failed_pixels(MOST_PIXELS)
}

fn stages(width: f32, height: f32) {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = opened(folder.path(), width, height);
    let mut results = SnapshotResults::new();
    let options = tolerance();
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

/// A toy with a part in hand, its thread, its map and its steps.
#[test]
fn the_assembly_looks_as_it_was_judged_good() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut results = SnapshotResults::new();
    for (width, height) in [(1440.0, 900.0), (1024.0, 700.0)] {
        let mut bench = opened_on("moor-cob.ron", folder.path(), width, height);
        bench.get_by_label("Assembly").click();
        bench.run();
        bench.get_by_label_contains("Part Ear").click();
        bench.run();
        for theme in ["light", "dark"] {
            settle(&mut bench);
            let name = format!("assembly-{theme}-{width}");
            results.add(bench.try_snapshot_options(&name, &tolerance()));
            bench.key_press_modifiers(Modifiers::COMMAND, Key::D);
            bench.run();
        }
    }
}

/// The tolerance is for the renderer's noise: an icon that vanished is no noise, nor is the
/// smallest of them.
#[test]
fn a_picture_that_lacks_an_icon_is_not_taken_for_the_one_that_has_it() {
    if std::env::var_os("UPDATE_SNAPSHOTS").is_some() {
        return; // Whatever is compared then becomes the picture to compare with.
    }
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = opened(folder.path(), 1440.0, 900.0);
    settle(&mut bench);
    let picture = bench.render().expect("a picture");
    let kept = tempfile::tempdir().expect("a folder");
    picture.save(kept.path().join("whole.png")).expect("it is written");
    let options = tolerance().output_path(kept.path());
    try_image_snapshot_options(&picture, "whole", &options).expect("it is itself");
    let small = |rect: egui::Rect| rect.width() <= 34.0 && rect.height() <= 34.0;
    let window = egui::Rect::from_min_size(egui::Pos2::ZERO, vec2(1440.0, 900.0));
    let icons: Vec<egui::Rect> = bench
        .query_all_by_role(egui::accesskit::Role::Button)
        .map(|button| button.rect())
        .filter(|rect| small(*rect) && window.contains_rect(*rect))
        .collect();
    assert!(icons.len() >= 8, "only {} icons were found", icons.len());
    let mut least = usize::MAX;
    for rect in icons {
        let mut without = picture.clone();
        let (left, top) = (rect.left() as u32 + 2, rect.top() as u32 + 2);
        let ground = *without.get_pixel(left, top);
        for y in top..rect.bottom() as u32 - 2 {
            for x in left..rect.right() as u32 - 2 {
                without.put_pixel(x, y, ground);
            }
        }
        let changed = without.pixels().zip(picture.pixels()).filter(|(a, b)| a != b).count();
        least = least.min(changed);
        let found = try_image_snapshot_options(&without, "whole", &options);
        assert!(found.is_err(), "{rect:?}: {changed} pixels are another colour");
    }
    println!("the smallest icon has {least} pixels");
}
