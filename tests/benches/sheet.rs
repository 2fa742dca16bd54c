//! How long a sheet takes: content, first pages, pages again after a change.
//!
//! `cargo bench --workspace --bench sheet`

use divan::{Bencher, black_box};
use plumpline_core::sheet::{Sheet, sheet};
use plumpline_core::{Band, Gauge, Knot, Outline, Piece, Project, Size, SizeBy, Yarn, plan};
use plumpline_typeset::{Options, Press};

fn main() {
    let rounds: usize =
        project(0.0).pieces.iter().map(|p| plan(p).expect("a plan").rounds.len()).sum();
    println!("two pieces of {rounds} rounds in all, each in three sizes");
    divan::main();
}

/// Two pieces of about 60 rounds together, in three yarns and three sizes; `more` mm taller
/// than usual.
fn project(more: f64) -> Project {
    let piece = |name: &str, wide: f64, tall: f64| {
        let knots = vec![
            Knot::new(0.0, 0.0),
            Knot::new(wide, 0.4 * tall),
            Knot::new(0.6 * wide, 0.8 * tall),
            Knot::new(0.0, tall),
        ];
        let mut piece = Piece::new(name, Outline { knots }, Gauge::default());
        piece.bands = vec![Band { from_round: 1, yarn: 0 }, Band { from_round: 12, yarn: 1 }];
        piece.sizes = [("S", 0.75), ("M", 1.0), ("L", 1.3)]
            .map(|(name, factor)| Size::new(name, SizeBy::Factor(factor)))
            .into();
        piece
    };
    let mut project = Project::of_piece(piece("Body", 42.0, 116.0 + more));
    project.add(piece("Head", 30.0, 74.0));
    project.yarns = (0..3).map(Yarn::plain).collect();
    project
}

fn content(more: f64) -> Sheet {
    sheet(&project(more)).expect("a sheet")
}

#[divan::bench]
fn content_alone(bencher: Bencher<'_, '_>) {
    bencher.bench(|| content(black_box(0.0)));
}

#[divan::bench(sample_count = 10)]
fn first_sheet(bencher: Bencher<'_, '_>) {
    // Nothing kept from earlier: a new press, and no remembered layout.
    bencher.with_inputs(Press::forget).bench_values(|()| {
        let pages = Press::new().pages(&content(0.0), Options::default());
        pages.expect("pages").pdf().expect("a file")
    });
}

#[divan::bench(sample_count = 20)]
fn later_sheet(bencher: Bencher<'_, '_>) {
    let press = Press::new();
    press.pages(&content(0.0), Options::default()).expect("pages");
    let mut more = 0.0;
    bencher
        .with_inputs(|| {
            more += 0.7;
            more % 9.0
        })
        .bench_local_values(|more| {
            let pages = press.pages(&content(more), Options::default()).expect("pages");
            pages.picture(0, 1.5).expect("a picture")
        });
}

#[divan::bench(sample_count = 20)]
fn pdf_of_set_pages(bencher: Bencher<'_, '_>) {
    let pages = Press::new().pages(&content(0.0), Options::default()).expect("pages");
    bencher.bench(|| pages.pdf().expect("a file"));
}
