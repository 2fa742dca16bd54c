//! One frame of the body while it is turned: the scene of a piece of about 2,000 stitches,
//! and its mesh; and, as after each change of the outline, the body itself.

use divan::{Bencher, black_box};
use egui::pos2;
use plumpline::work::body::mesh::mesh;
use plumpline_core::picture::{Body, Viewpoint};
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

fn look(cutaway: bool) -> Viewpoint {
    Viewpoint { scale: 2.2, cutaway, ..Viewpoint::default() }
}

#[divan::bench]
fn body_of_a_plan(bencher: Bencher<'_, '_>) {
    let (piece, plan) = pear();
    println!("{} stitches", plan.estimate.stitches);
    bencher.bench_local(|| Body::new(black_box(&piece), &plan));
}

#[divan::bench(args = [false, true])]
fn scene(bencher: Bencher<'_, '_>, cutaway: bool) {
    let (piece, plan) = pear();
    let (body, look) = (Body::new(&piece, &plan), look(cutaway));
    bencher.bench_local(|| body.scene(black_box(&look), &COLOURS));
}

#[divan::bench]
fn mesh_of_a_scene(bencher: Bencher<'_, '_>) {
    let (piece, plan) = pear();
    let scene = Body::new(&piece, &plan).scene(&look(false), &COLOURS);
    println!("{} polygons", scene.polygons().len());
    bencher.bench_local(|| mesh(black_box(&scene), pos2(200.0, 200.0), 1.0));
}

#[divan::bench]
fn whole_frame(bencher: Bencher<'_, '_>) {
    let (piece, plan) = pear();
    bencher.bench_local(|| {
        let body = Body::new(black_box(&piece), &plan);
        mesh(&body.scene(&look(false), &COLOURS), pos2(200.0, 200.0), 1.0)
    });
}
