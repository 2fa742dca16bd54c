//! The processor time of one frame while a knot is dragged: the plan, the rest of the frame,
//! and the tessellation of what it shows. No window and no graphics card take part.
//!
//! `cargo bench --workspace --bench frame`

use std::path::Path;
use std::time::{Duration, Instant};

use eframe::App as _;
use egui::{Context, Event, FullOutput, PointerButton, Pos2, RawInput, Rect, Vec2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use plumpline::window::Studio;
use plumpline_core::{Project, file, plan};
use plumpline_tests::fit_set::SHAPES;

/// Size of the window, points.
const SIZE: Vec2 = vec2(1440.0, 900.0);
/// Frames measured of each drag.
const FRAMES: usize = 400;
/// Frames before that, while caches fill.
const WARM: usize = 40;

fn main() {
    println!(
        "{:26} {:>6} {:>16} {:>16} {:>16} {:>16}",
        "", "rounds", "frame", "plan", "other work", "tessellation"
    );
    let shape = |name: &str, scale: f64| {
        let shape = SHAPES.iter().find(|s| s.name == name).expect("a shape of the set");
        Project::of_piece(shape.piece(None, scale))
    };
    let pear = shape("pear", 40.0 / 37.0);
    drag("pear", &pear, false);
    drag("pear, to a screen reader", &pear, true);
    let mut twelve = pear.clone();
    for _ in 1..12 {
        twelve.add(pear.pieces[0].clone());
    }
    drag("pear, 12 pieces", &twelve, false);
    drag("great ball", &shape("great ball", 1.0), false);
    drag("pebble", &shape("pebble", 1.0), false);
}

/// The studio, and frame after frame of what it draws.
struct Bench {
    ctx: Context,
    frame: eframe::Frame,
    studio: Studio,
    seconds: f64,
}

impl Bench {
    /// Open on the project at `path`. What a screen reader is told costs time too; nobody is
    /// told anything unless one listens.
    fn open(path: &Path, reader: bool) -> Self {
        let ctx = Context::default();
        if reader {
            ctx.enable_accesskit();
        }
        let with = eframe::CreationContext::_new_kittest(ctx.clone());
        let studio = Studio::new(&with, Some(path.to_owned()));
        Self { ctx, frame: eframe::Frame::_new_kittest(), studio, seconds: 0.0 }
    }

    fn step(&mut self, events: Vec<Event>) -> FullOutput {
        self.seconds += 1.0 / 60.0;
        let input = RawInput {
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, SIZE)),
            time: Some(self.seconds),
            events,
            ..RawInput::default()
        };
        let (studio, frame) = (&mut self.studio, &mut self.frame);
        self.ctx.run_ui(input, |ui| studio.ui(ui, frame))
    }
}

/// Where the third knot of the project at `path` lies in the window.
fn knot_of(path: &Path) -> Pos2 {
    let with_path = Some(path.to_owned());
    let mut harness = Harness::builder()
        .with_size(SIZE)
        .with_max_steps(20)
        .build_eframe(|cc| Studio::new(cc, with_path));
    harness.run();
    harness.get_by_label("Knot 3").rect().center()
}

/// What one frame took.
struct Spent {
    plan: Duration,
    frame: Duration,
    tessellation: Duration,
}

fn drag(name: &str, project: &Project, reader: bool) {
    let folder = tempfile::tempdir().expect("a folder for the project");
    let path = folder.path().join("dragged.ron");
    file::save(project, &path).expect("the project can be saved");
    let knot = knot_of(&path);
    let mut bench = Bench::open(&path, reader);
    for _ in 0..8 {
        bench.step(vec![Event::PointerMoved(knot)]);
    }
    bench.step(vec![Event::PointerButton {
        pos: knot,
        button: PointerButton::Primary,
        pressed: true,
        modifiers: egui::Modifiers::NONE,
    }]);
    let before = bench.studio.document().piece().clone();
    let mut spent: Vec<Spent> = (0..WARM + FRAMES)
        .map(|i| {
            let at = knot + 14.0 * Vec2::angled(i as f32 * 0.31) - vec2(14.0, 0.0);
            let begun = Instant::now();
            let output = bench.step(vec![Event::PointerMoved(at)]);
            let stepped = begun.elapsed();
            let meshes = bench.ctx.tessellate(output.shapes, output.pixels_per_point);
            let whole = begun.elapsed();
            drop(std::hint::black_box(meshes));
            // The studio planned this very piece in the step; how long that takes by itself.
            let piece = bench.studio.document().piece().clone();
            let begun = Instant::now();
            drop(std::hint::black_box(plan(&piece)));
            let plan = begun.elapsed();
            Spent { plan, frame: whole, tessellation: whole - stepped }
        })
        .collect();
    assert!(*bench.studio.document().piece() != before, "{name}: the knot was not dragged");
    spent.drain(..WARM);
    let rounds = bench.studio.plan().map_or(0, |p| p.rounds.len());
    let row = |of: &dyn Fn(&Spent) -> Duration| {
        let mut all: Vec<Duration> = spent.iter().map(of).collect();
        all.sort();
        let ms = |i: usize| 1e3 * all[i.min(all.len() - 1)].as_secs_f64();
        format!("{:6.2} / {:5.2}", ms(all.len() / 2), ms(all.len() * 99 / 100))
    };
    println!(
        "{name:26} {rounds:6} {:>16} {:>16} {:>16} {:>16}   ms, median / 99 of 100",
        row(&|s| s.frame),
        row(&|s| s.plan),
        row(&|s| s.frame.saturating_sub(s.plan + s.tessellation)),
        row(&|s| s.tessellation),
    );
}
