//! A studio with a folder of its own, for tests of what outlasts a run.

use std::path::Path;

use egui::vec2;
use egui_kittest::Harness;
use plumpline::window::Studio;

/// The studio as it opens with its folder at `home`, on the project at `path` or a sample.
/// Dropped without a word, it ends as if it had crashed.
pub(crate) fn at_home<'a>(home: &Path, path: Option<&Path>) -> Harness<'a, Studio> {
    let mut bench = Harness::builder()
        .with_size(vec2(1440.0, 900.0))
        .with_max_steps(60)
        .with_step_dt(0.05)
        .build_eframe(|cc| {
            Studio::new(cc, path.map(Path::to_owned)).at_home(&cc.egui_ctx, home)
        });
    bench.run();
    bench
}
