//! The body while it is turned: drafts of its card, the picture once it rests, and, as after
//! each change of the outline, the relief itself. A piece of about 2,000 stitches, one core.

use divan::{Bencher, black_box};
use plumpline_core::picture::relief::{
    PosedRelief, Quality, Relief, ReliefScene, ReliefView, Still,
};
use plumpline_core::{Piece, Plan, plan};
use plumpline_tests::fit_set::SHAPES;

fn main() {
    divan::main();
}

/// The pear of the fit set, larger: about 2,000 stitches.
fn pear() -> (Piece, Plan) {
    let mut piece = SHAPES[3].piece(0.3, 1.0);
    piece.outline = piece.outline.scaled(1.15, 1.15);
    let plan = plan(&piece).expect("it can be planned");
    (piece, plan)
}

const COLOURS: [[u8; 3]; 1] = [[184, 86, 64]];

fn view(relief: &Relief, size: [u32; 2], quality: Quality) -> ReliefView {
    ReliefView {
        turn_deg: 30.0,
        tilt_deg: 14.0,
        scale: relief.fitting(0.94 * size[0] as f32, 0.94 * size[1] as f32),
        middle: relief.ball().0,
        size,
        quality,
    }
}

#[divan::bench]
fn relief_of_a_plan(bencher: Bencher<'_, '_>) {
    let (piece, plan) = pear();
    println!("{} stitches", plan.estimate.stitches);
    bencher.bench_local(|| Relief::new(black_box(&piece), &plan));
}

fn drawn(bencher: Bencher<'_, '_>, size: [u32; 2], quality: Quality, cutaway: bool) {
    let (piece, plan) = pear();
    let relief = Relief::new(&piece, &plan);
    let view = view(&relief, size, quality);
    let parts = [PosedRelief { cutaway, ..PosedRelief::new(&relief, &COLOURS) }];
    bencher.bench_local(|| Still::new(&ReliefScene::new(black_box(&parts), &view)));
}

#[divan::bench(args = [false, true])]
fn draft_of_a_card(bencher: Bencher<'_, '_>, cutaway: bool) {
    drawn(bencher, [172, 170], Quality::Draft, cutaway);
}

#[divan::bench(args = [false, true])]
fn whole_card(bencher: Bencher<'_, '_>, cutaway: bool) {
    drawn(bencher, [344, 340], Quality::Full, cutaway);
}

#[divan::bench(sample_count = 5)]
fn print_of_2400_pixels(bencher: Bencher<'_, '_>) {
    drawn(bencher, [2400, 2400], Quality::Full, false);
}
