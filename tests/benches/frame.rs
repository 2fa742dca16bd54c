//! The processor time of one frame while a knot is dragged: the plan, the rest of the frame,
//! and the tessellation of what it shows. No window and no graphics card take part.
//!
//! `cargo bench -p plumpline-tests --bench frame`

use std::time::{Duration, Instant};

use egui::{Vec2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use plumpline::studio::app::Studio;
use plumpline_core::{Project, file, plan};
use plumpline_tests::fit_set::SHAPES;

/// Frames measured of each drag.
const FRAMES: usize = 400;
/// Frames before that, while caches fill.
const WARM: usize = 40;

fn main() {
    println!(
        "{:10} {:>6} {:>16} {:>16} {:>16} {:>16}",
        "", "rounds", "frame", "plan", "other work", "tessellation"
    );
    for (name, scale) in [("pear", 40.0 / 37.0), ("great ball", 1.0), ("pebble", 1.0)] {
        let shape = SHAPES.iter().find(|s| s.name == name).expect("a shape of the set");
        drag(name, Project::of_piece(shape.piece(0.3, scale)));
    }
}

/// What one frame took.
struct Spent {
    plan: Duration,
    frame: Duration,
    tessellation: Duration,
}

fn drag(name: &str, project: Project) {
    let folder = tempfile::tempdir().expect("a folder for the project");
    let path = folder.path().join("dragged.ron");
    file::save(&project, &path).expect("the project can be saved");
    let mut bench = Harness::builder()
        .with_size(vec2(1440.0, 900.0))
        .with_max_steps(20)
        .build_eframe(|cc| Studio::new(cc, Some(path)));
    bench.run();
    let rounds = bench.state().plan().map_or(0, |p| p.rounds.len());
    let knot = bench.get_by_label("Knot 3").rect().center();
    bench.hover_at(knot);
    bench.step();
    bench.drag_at(knot);
    bench.step();
    let mut spent: Vec<Spent> = (0..WARM + FRAMES)
        .map(|i| {
            let turn = i as f32 * 0.31;
            bench.hover_at(knot + 14.0 * Vec2::angled(turn) - vec2(14.0, 0.0));
            let begun = Instant::now();
            bench.step();
            let stepped = begun.elapsed();
            let output = bench.output().shapes.clone();
            let begun = Instant::now();
            let meshes = bench.ctx.tessellate(output, bench.ctx.pixels_per_point());
            let tessellation = begun.elapsed();
            drop(std::hint::black_box(meshes));
            // The studio planned this very piece in the step; how long that takes by itself.
            let piece = bench.state().document().piece().clone();
            let begun = Instant::now();
            drop(std::hint::black_box(plan(&piece)));
            let plan = begun.elapsed();
            Spent { plan, frame: stepped + tessellation, tessellation }
        })
        .collect();
    spent.drain(..WARM);
    let row = |of: &dyn Fn(&Spent) -> Duration| {
        let mut all: Vec<Duration> = spent.iter().map(of).collect();
        all.sort();
        let ms = |i: usize| 1e3 * all[i.min(all.len() - 1)].as_secs_f64();
        format!("{:6.2} / {:5.2}", ms(all.len() / 2), ms(all.len() * 99 / 100))
    };
    println!(
        "{name:10} {rounds:6} {:>16} {:>16} {:>16} {:>16}   ms, median / 99 of 100",
        row(&|s| s.frame),
        row(&|s| s.plan),
        row(&|s| s.frame.saturating_sub(s.plan + s.tessellation)),
        row(&|s| s.tessellation),
    );
}
