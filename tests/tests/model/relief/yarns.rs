//! Yarns and what they look like close by; what lies flat; what stands in waves; small files.

use std::collections::BTreeMap;

use plumpline_core::picture::relief::{
    PosedRelief, Relief, ReliefFilling, ReliefScene, ReliefView, Still,
};
use plumpline_core::{Gauge, Knot, Outline, Piece, YarnFace, plan};

use super::{COLOURS, Picture, sample, samples, view};

/// How much neighbouring pixels inside differ, and how many are half covered or less.
fn texture(picture: &Picture) -> (f64, usize) {
    let (mut sum, mut many, mut soft) = (0.0, 0.0, 0);
    for y in 0..picture.tall {
        for x in 1..picture.wide {
            let [a, b] = [x - 1, x].map(|x| picture.pixels[y * picture.wide + x]);
            if a[3] == 255 && b[3] == 255 {
                sum += f64::from(a[1].abs_diff(b[1]));
                many += 1.0;
            }
            soft += usize::from((1..128).contains(&b[3]));
        }
    }
    (sum / many, soft)
}

#[test]
fn each_yarn_has_a_face_of_its_own() {
    let (project, plan) = sample("pear");
    let relief = Relief::new(&project.pieces[0], &plan);
    // Of a size at which fibres are seen.
    let own = |face: YarnFace| {
        let relief = relief.clone().in_yarns(&[face; 3]);
        let mut view = view(&relief, 1500, 30.0, 10.0);
        view.size = [500; 2];
        let edge =
            ReliefView { middle: [view.middle[0] + 0.45 * 60.0, 0.0, view.middle[2]], ..view };
        let picture =
            |view: &ReliefView| Picture::of(&[PosedRelief::new(&relief, &COLOURS)], view);
        (texture(&picture(&view)).0, texture(&picture(&edge)).1)
    };
    let faces: BTreeMap<&str, (f64, usize)> =
        YarnFace::ALL.into_iter().map(|face| (face.name(), own(face))).collect();
    println!("{faces:?}");
    let (smooth, wool, chenille) = (faces["Smooth"], faces["Wool"], faces["Chenille"]);
    assert!(wool.1 > 2 * smooth.1, "a halo stands off wool: {faces:?}");
    assert!((chenille.0 - smooth.0).abs() > 0.3, "{faces:?}");
    assert_eq!(relief.clone().in_yarns(&[]).ball(), relief.ball(), "no length changes");
}

#[test]
fn what_lies_flat_is_thin_one_way_and_wider_the_other() {
    let outline =
        Outline::new(vec![Knot::new(0.0, 0.0), Knot::new(20.0, 16.0), Knot::new(16.0, 36.0)]);
    let piece = Piece::new("Ear", outline.expect("an outline"), Gauge::default());
    let plan = plan(&piece).expect("it plans");
    let relief = Relief::new(&piece, &plan);
    let own = PosedRelief::new(&relief, &COLOURS);
    let size = |filling: ReliefFilling, turn: f32| {
        let view = view(&relief, 420, turn, 0.0);
        let view = ReliefView { scale: 0.6 * view.scale, ..view };
        let picture = Picture::of(&[PosedRelief { filling, ..own }], &view);
        assert_eq!(picture.holes(3), 0, "{filling:?} at {turn}°");
        let row = |y: usize| (0..420).map(|x| picture.covered(x, y)).sum::<f32>();
        (0..420).map(row).fold(0.0, f32::max) / view.scale
    };
    let round = size(ReliefFilling::Stuffed, 0.0);
    let [face, edge] = [0.0, 90.0].map(|turn| size(ReliefFilling::Pressed, turn));
    // A circle pressed to a line is π/2 times as wide; the cloth keeps it from that.
    assert!((1.2..1.57).contains(&(face / round)), "{face} of {round}");
    assert!(edge < 0.45 * round, "{edge} of {round}");
    assert!((size(ReliefFilling::Empty, 40.0) / round - 1.0).abs() < 0.01);
}

#[test]
fn an_end_shows_stuffing_only_where_there_is_some() {
    let (project, plan) = sample("mushroom");
    let relief = Relief::new(&project.pieces[0], &plan);
    let view = view(&relief, 300, 30.0, -70.0);
    let light = |filling: ReliefFilling| {
        let own = PosedRelief { filling, ..PosedRelief::new(&relief, &[[40, 60, 120]; 3]) };
        let picture = Picture::of(&[own], &view);
        let inside = picture.pixels.iter().zip(&picture.map);
        inside.filter(|(p, s)| s.part == 1 && s.round == 0 && p[0] > 150).count()
    };
    assert!(light(ReliefFilling::Stuffed) > 150, "{}", light(ReliefFilling::Stuffed));
    assert_eq!(light(ReliefFilling::Empty), 0);
}

/// A bell whose rim gains far more than lies flat.
fn skirt() -> Piece {
    let outline = Outline::new(vec![
        Knot::new(0.0, 0.0),
        Knot::new(22.0, 14.0),
        Knot::new(24.0, 40.0),
        Knot::new(34.0, 62.0),
    ]);
    let mut piece = Piece::new("Skirt", outline.expect("an outline"), Gauge::default());
    piece.rules.frills = true;
    // The last round holds in what the four before it have too much of.
    let counts = [6, 10, 20, 22, 26, 30, 32, 32, 32, 30, 26, 52, 66, 83, 96, 48];
    piece.pins = (1..).zip(counts).collect();
    piece
}

#[test]
fn a_frill_stands_in_waves_and_leaves_no_holes() {
    let mut piece = skirt();
    let plan_of = |piece: &Piece| plan(piece).expect("it plans");
    let frilled = plan_of(&piece);
    let relief = Relief::new(&piece, &frilled);
    let rim = |relief: &Relief, tilt: f32| {
        let view = view(relief, 460, 20.0, tilt);
        let picture = Picture::of(&[PosedRelief::new(relief, &COLOURS)], &view);
        assert!(picture.holes(3) <= 4, "{} holes at {tilt}°", picture.holes(3));
        // How often the lower edge turns from down to up, column by column.
        let lowest = |x: usize| (0..460).rev().find(|&y| picture.covered(x, y) > 0.5);
        let line: Vec<usize> = (0..460).filter_map(lowest).collect();
        let smooth: Vec<f32> =
            line.windows(5).map(|w| w.iter().sum::<usize>() as f32 / 5.0).collect();
        let (mut turns, mut top, mut down) = (0, smooth[0], true);
        for &y in &smooth {
            let back = if down { top - y } else { y - top };
            if back > 2.5 {
                (turns, down, top) = (turns + 1, !down, y);
            } else {
                top = if down { top.max(y) } else { top.min(y) };
            }
        }
        turns
    };
    let waves = rim(&relief, 35.0);
    rim(&relief, -30.0);
    piece.pins.clear();
    piece.rules.frills = false;
    let plain = rim(&Relief::new(&piece, &plan_of(&piece)), 35.0);
    // Half of its eleven waves look this way, and some of those hide behind others.
    assert!(waves >= 4 && plain <= 2, "{waves} turns of the rim, {plain} without a frill");
}

#[test]
fn small_files_are_small_and_look_alike() {
    for (name, piece, plan) in samples() {
        let relief = Relief::new(&piece, &plan);
        // As large as a page shows it, and half as large again.
        for side in [400, 600] {
            let view = view(&relief, side, 30.0, 14.0);
            let parts = [PosedRelief::new(&relief, &COLOURS)];
            let still = Still::new(&ReliefScene::new(&parts, &view)).expect("it is small");
            let file = still.small_png().expect("it is written");
            println!("{name}, {side} px: {} kB of {}", file.len() / 1000, {
                still.png(None).expect("it is written").len() / 1000
            });
            assert!(file.len() <= 150_000, "{name}, {side} px: {} bytes", file.len());
            let read = image::load_from_memory(&file).expect("it is read").into_rgba8();
            let straight = still.straight();
            let off = read.as_raw().iter().zip(&straight).zip((0..4).cycle());
            let (sum, many) = off
                .filter(|((_, _), c)| *c < 3)
                .fold((0.0, 0.0), |(sum, many), ((a, b), _)| {
                    (sum + f64::from(a.abs_diff(*b)), many + 1.0)
                });
            assert!(sum / many < 2.5, "{name}, {side} px: {} a channel", sum / many);
        }
    }
}
