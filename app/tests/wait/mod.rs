//! Waiting for what other threads do.

use std::time::{Duration, Instant};

use egui_kittest::Harness;
use plumpline::window::Studio;

/// Steps until `done`, for the threads that plan and write; `what` is said where that never
/// comes.
pub(crate) fn until(
    bench: &mut Harness<'_, Studio>,
    what: &str,
    mut done: impl FnMut(&Harness<'_, Studio>) -> bool,
) {
    let began = Instant::now();
    while !done(bench) {
        assert!(began.elapsed() < Duration::from_secs(20), "{what}");
        std::thread::sleep(Duration::from_millis(2));
        bench.step();
    }
}
