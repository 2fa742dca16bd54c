//! Waiting for what other threads do: always for something to come about, never for a while.

use plumpline_core::PieceId;
use std::time::{Duration, Instant};

use egui_kittest::Harness;
use plumpline::view::Stage;
use plumpline::window::Studio;

/// Longer than anything takes on the slowest machine.
const LONGEST: Duration = Duration::from_secs(60);

/// Waits until `done`, for what comes about without a frame; `what` is said where that never
/// comes.
pub(crate) fn until_true(what: &str, mut done: impl FnMut() -> bool) {
    let began = Instant::now();
    while !done() {
        assert!(began.elapsed() < LONGEST, "{what}");
        std::thread::sleep(Duration::from_millis(2));
    }
}

/// Steps until `done`, for the threads that plan and write; `what` is said where that never
/// comes.
pub(crate) fn until(
    bench: &mut Harness<'_, Studio>,
    what: &str,
    mut done: impl FnMut(&Harness<'_, Studio>) -> bool,
) {
    let mut first = true;
    until_true(what, || {
        if !std::mem::take(&mut first) {
            bench.step();
        }
        done(bench)
    });
}

/// Steps until what the stage shows is of the project as it is, and is drawn.
pub(crate) fn until_settled(bench: &mut Harness<'_, Studio>) {
    bench.step();
    until(bench, "the stage did not settle", |bench| {
        let studio = bench.state();
        match studio.view().stage {
            Stage::Shape => !studio.body().is_busy(),
            Stage::Assembly => !studio.toy().is_busy(),
            Stage::Sizes => studio.sizing().is_current() && studio.line_up().is_whole(),
            Stage::Sheet => studio.printing().is_current(),
            Stage::Lesson => !studio.lesson().is_busy(),
            Stage::Proofread => !studio.proofreading().is_busy(),
            Stage::Make => studio.handiwork().course(PieceId::new(0)).is_some(),
        }
    });
    bench.run();
}

/// Steps until nothing asks for another frame.
pub(crate) fn until_at_rest(bench: &mut Harness<'_, Studio>) {
    until_true("it is drawn without end", || bench.run() == 1);
}
