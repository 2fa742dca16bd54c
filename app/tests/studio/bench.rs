//! A studio without a window, for tests of what people do in it.

use egui::vec2;
use egui_kittest::Harness;
use plumpline::window::Studio;

pub(crate) type Bench<'a> = Harness<'a, Studio>;

/// The studio as it first opens, in a window of this size.
pub(crate) fn opened<'a>(width: f32, height: f32) -> Bench<'a> {
    let mut bench = Harness::builder()
        .with_size(vec2(width, height))
        .with_max_steps(60)
        .with_step_dt(0.05)
        .build_eframe(|cc| Studio::new(cc, None));
    bench.run();
    bench
}
