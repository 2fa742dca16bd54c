//! The relief against the plan it draws: every stitch of every round, shaping where placement
//! has it, the forecast's silhouette, and the same bytes however a picture is cut into bands.

mod anything;
mod cloth;
mod ends;
mod yarns;

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use plumpline_core::picture::Rgb;
use plumpline_core::picture::relief::{
    PosedRelief, Quality, Relief, ReliefPose, ReliefScene, ReliefView, Seen,
};
use plumpline_core::{Hand, Piece, Plan, Project, file, plan};

const COLOURS: [Rgb; 3] = [[184, 86, 64], [230, 210, 166], [62, 125, 138]];

fn sample(name: &str) -> (Project, Plan) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let project = file::load(&folder.join(format!("{name}.ron"))).expect("the sample loads");
    let plan = plan(&project.pieces[0]).expect("it plans");
    (project, plan)
}

/// Every piece of every sample, with its plan.
fn samples() -> Vec<(String, Piece, Plan)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let files = std::fs::read_dir(folder).expect("the samples are there");
    let mut paths: Vec<PathBuf> = files.map(|f| f.expect("it is there").path()).collect();
    paths.sort();
    let mut all = Vec::new();
    for path in paths {
        let project = file::load(&path).expect("the sample loads");
        for piece in project.pieces {
            let name = format!("{}, {}", project.title, piece.name);
            let plan = plan(&piece).expect("it plans");
            all.push((name, piece, plan));
        }
    }
    assert!(all.len() > 9, "{} pieces", all.len());
    all
}

struct Picture {
    pixels: Vec<[u8; 4]>,
    map: Vec<Seen>,
    wide: usize,
    tall: usize,
}

impl Picture {
    fn of(parts: &[PosedRelief<'_>], view: &ReliefView) -> Self {
        Self::in_bands(parts, view, view.size[1])
    }

    fn in_bands(parts: &[PosedRelief<'_>], view: &ReliefView, rows: u32) -> Self {
        let [wide, tall] = view.size.map(|s| s as usize);
        let mut pixels = vec![[0; 4]; wide * tall];
        let mut map = vec![Seen::default(); wide * tall];
        let scene = ReliefScene::new(parts, view);
        let band = wide * rows as usize;
        let bands = pixels.chunks_mut(band).zip(map.chunks_mut(band));
        for ((pixels, map), from) in bands.zip((0..).step_by(rows as usize)) {
            scene.rows(from, from + rows, pixels, map);
        }
        Self { pixels, map, wide, tall }
    }

    fn covered(&self, x: usize, y: usize) -> f32 {
        f32::from(self.pixels[y * self.wide + x][3]) / 255.0
    }

    /// Pixels that are not covered whole and are no part of the silhouette: farther than `within`
    /// pixels from all that can be reached from the border without touching the piece.
    fn holes(&self, within: usize) -> usize {
        let mut outside = vec![false; self.pixels.len()];
        let mut open: Vec<usize> = Vec::new();
        for i in 0..self.pixels.len() {
            let (x, y) = (i % self.wide, i / self.wide);
            if x == 0 || y == 0 || x + 1 == self.wide || y + 1 == self.tall {
                open.push(i);
            }
        }
        while let Some(i) = open.pop() {
            if std::mem::replace(&mut outside[i], true) || self.pixels[i][3] > 0 {
                continue;
            }
            let (x, y) = (i % self.wide, i / self.wide);
            for (dx, dy) in [(0, 1), (2, 1), (1, 0), (1, 2), (0, 0), (2, 2), (0, 2), (2, 0)] {
                let (x, y) = ((x + dx).wrapping_sub(1), (y + dy).wrapping_sub(1));
                if x < self.wide && y < self.tall {
                    open.push(y * self.wide + x);
                }
            }
        }
        let near = |i: usize| {
            let (x, y) = (i % self.wide, i / self.wide);
            let rows = y.saturating_sub(within)..(y + within + 1).min(self.tall);
            let columns = x.saturating_sub(within)..(x + within + 1).min(self.wide);
            rows.flat_map(|y| columns.clone().map(move |x| (x, y)))
                .any(|(x, y)| outside[y * self.wide + x])
        };
        (0..self.pixels.len()).filter(|&i| self.pixels[i][3] < 255 && !near(i)).count()
    }
}

fn view(relief: &Relief, side: u32, turn_deg: f32, tilt_deg: f32) -> ReliefView {
    ReliefView {
        turn_deg,
        tilt_deg,
        scale: relief.fitting(0.96 * side as f32, 0.96 * side as f32),
        middle: relief.ball().0,
        size: [side; 2],
        quality: Quality::Full,
    }
}

#[test]
fn every_stitch_can_be_pointed_at() {
    for (name, piece, plan) in samples() {
        let relief = Relief::new(&piece, &plan);
        let mut seen = BTreeSet::new();
        for (turn, tilt) in
            [(0.0, 20.0), (120.0, 20.0), (240.0, -20.0), (30.0, 80.0), (30.0, -80.0)]
        {
            let view = view(&relief, 700, turn, tilt);
            let picture = Picture::of(&[PosedRelief::new(&relief, &COLOURS)], &view);
            let named = picture.map.iter().filter(|s| s.stitch > 0);
            seen.extend(named.map(|s| (u32::from(s.round), u32::from(s.stitch))));
        }
        for (number, round) in (1..).zip(&plan.rounds) {
            let stitches = seen.iter().filter(|s| s.0 == number).map(|s| s.1);
            assert!(stitches.eq(1..=round.count), "{name}, round {number}");
        }
        assert!(seen.iter().all(|s| s.0 as usize <= plan.rounds.len()), "{name}");
    }
}

#[test]
fn no_ground_shows_inside_the_silhouette() {
    for (name, piece, plan) in samples() {
        let relief = Relief::new(&piece, &plan);
        for (side, tilt) in
            [(64, 14.0), (200, -75.0), (300, 0.0), (300, 14.0), (480, 50.0), (600, 60.0)]
        {
            for quality in [Quality::Draft, Quality::Full] {
                let view = ReliefView { quality, ..view(&relief, side, 30.0, tilt) };
                let picture = Picture::of(&[PosedRelief::new(&relief, &COLOURS)], &view);
                // Between two stitches that touch at the silhouette one sees past the cloth.
                let notch = 0.2 * plan.stitch_mm.width as f32 * view.scale;
                let holes = picture.holes(3.max(notch as usize));
                assert!(holes == 0, "{name}, {side} px, {tilt}°, {quality:?}: {holes}");
            }
        }
    }
}

#[test]
fn the_silhouette_is_that_of_the_forecast() {
    for (name, piece, plan) in samples() {
        let relief = Relief::new(&piece, &plan);
        let view = view(&relief, 500, 40.0, 0.0);
        let picture = Picture::of(&[PosedRelief::new(&relief, &COLOURS)], &view);
        let stitch = plan.stitch_mm.width as f32 * view.scale;
        let low = view.project([0.0, 0.0, 0.0])[1];
        // Half the width of the forecast at a row, by its nodes; a lip counts by its widest.
        let half = |y: f32| {
            let z = f64::from((y - low) / view.scale);
            let at = |p: &[plumpline_core::Rz]| {
                let part = (z - p[0].z) / (p[1].z - p[0].z);
                (0.0..=1.0).contains(&part).then(|| p[0].r + part * (p[1].r - p[0].r))
            };
            let r = plan.forecast.windows(2).filter_map(at).fold(0.0, f64::max);
            r as f32 * view.scale
        };
        // How far an arc may stand out over the chord of a round at a row: by an eighth of its
        // length times the angle by which the profile turns at its ends.
        let sagitta = |y: f32| {
            let z = f64::from((y - low) / view.scale);
            let nodes = &plan.forecast;
            let way =
                |k: usize| (nodes[k + 1].z - nodes[k].z).atan2(nodes[k + 1].r - nodes[k].r);
            let turn = |a: usize, b: usize| (way(a) - way(b)).sin().abs().asin();
            let last = nodes.len() - 2;
            let of = |k: usize| {
                let long = (nodes[k + 1].z - nodes[k].z).hypot(nodes[k + 1].r - nodes[k].r);
                let before = if k > 0 { turn(k - 1, k) } else { 0.0 };
                let after = if k < last { turn(k, k + 1) } else { 0.0 };
                0.125 * long * before.max(after)
            };
            let there = |k: &usize| {
                let (a, b) = (nodes[*k].z, nodes[*k + 1].z);
                (a.min(b)..=a.max(b)).contains(&z)
            };
            (0..=last).filter(there).map(of).fold(0.0, f64::max) as f32 * view.scale
        };
        let (mut widest, mut rows) = (0.0_f32, 0);
        let mut slimmest = f32::INFINITY;
        for y in 0..picture.tall {
            let row = y as f32 + 0.5;
            // Where the outline is steep: elsewhere a row cuts through the relief.
            let (before, after) = (half(row - 4.0), half(row + 4.0));
            let own = half(row);
            if own < 2.0 * stitch || (before - after).abs() > 4.0 {
                continue;
            }
            let covered: f32 = (0..picture.wide).map(|x| picture.covered(x, y)).sum();
            // The forecast is smooth between its nodes: a chord lies inside by as much.
            let bulge =
                (0.5 * (2.0 * own - before - after)).max(sagitta(row)).max(0.0) + 0.02 * stitch;
            let off = 0.5 * covered - own;
            assert!(off < 0.5 + bulge, "{name}, row {y}: {off} px beyond the forecast");
            assert!(
                off > -0.5 - 0.42 * stitch,
                "{name}, row {y}: {off} px within the forecast"
            );
            (widest, slimmest, rows) = (widest.max(off), slimmest.min(off), rows + 1);
        }
        println!("{name}: {rows} rows, from {slimmest:.2} to {widest:.2} px of the forecast");
        assert!(rows > 60 && widest > -0.5, "{name}: {rows} rows, {widest} px at most");
    }
}

#[test]
fn a_picture_is_the_same_in_bands_and_at_once() {
    let (project, plan) = sample("float");
    let relief = Relief::new(&project.pieces[0], &plan);
    let pose = ReliefPose { at: [14.0, 30.0, 8.0], ..ReliefPose::default() };
    let parts = [
        PosedRelief::new(&relief, &COLOURS),
        PosedRelief {
            pose,
            cutaway: true,
            lit: Some((9, [240, 174, 43])),
            ..PosedRelief::new(&relief, &COLOURS)
        },
    ];
    for quality in [Quality::Draft, Quality::Full] {
        let view = ReliefView { quality, ..view(&relief, 220, 65.0, 14.0) };
        let whole = Picture::of(&parts, &view);
        for rows in [1, 3, 64] {
            let bands = Picture::in_bands(&parts, &view, rows);
            assert!(whole.pixels == bands.pixels, "{quality:?} in bands of {rows}");
            assert!(whole.map == bands.map, "{quality:?} in bands of {rows}");
        }
        assert!(whole.map.iter().any(|s| s.part == 1) && whole.map.iter().any(|s| s.part == 2));
    }
}

#[test]
fn four_threads_draw_what_one_does() {
    let (project, plan) = sample("mushroom");
    let relief = Relief::new(&project.pieces[0], &plan);
    let view = view(&relief, 330, 20.0, 14.0);
    let parts = [PosedRelief::new(&relief, &COLOURS)];
    let scene = ReliefScene::new(&parts, &view);
    let [wide, tall] = view.size.map(|s| s as usize);
    // Bands of rows that no block of pixels ends with, each to the thread whose turn it is.
    let rows = 7;
    let mut pixels = vec![[0; 4]; wide * tall];
    let mut map = vec![Seen::default(); wide * tall];
    std::thread::scope(|threads| {
        let bands = pixels.chunks_mut(wide * rows).zip(map.chunks_mut(wide * rows));
        let mut turns: [Vec<_>; 4] = Default::default();
        for (i, band) in bands.enumerate() {
            turns[i % 4].push((i * rows, band));
        }
        for turn in turns {
            let scene = &scene;
            threads.spawn(move || {
                for (from, (pixels, map)) in turn {
                    scene.rows(from as u32, (from + rows) as u32, pixels, map);
                }
            });
        }
    });
    let one = Picture::of(&parts, &view);
    assert!(one.pixels == pixels && one.map == map);
}

#[test]
fn the_nearer_part_hides_the_farther() {
    let (project, plan) = sample("pear");
    let relief = Relief::new(&project.pieces[0], &plan);
    let view = view(&relief, 200, 0.0, 0.0);
    // Turned about the view's own z, +Y looks at the eye.
    let before = ReliefPose { at: [0.0, 200.0, 0.0], ..ReliefPose::default() };
    let own = PosedRelief::new(&relief, &COLOURS);
    let near = PosedRelief { pose: before, ..own };
    for (parts, nearest) in [([own, near], 2), ([near, own], 1)] {
        let picture = Picture::of(&parts, &view);
        let inside = picture.map.iter().filter(|s| s.part > 0);
        let hidden = inside.clone().filter(|s| s.part != nearest).count();
        assert!(inside.count() > 5000 && hidden < 40, "{hidden} pixels of the part behind");
    }
}

#[test]
fn hands_mirror_one_another() {
    let (mut project, _) = sample("float");
    let mut numbers = Vec::new();
    for hand in [Hand::Right, Hand::Left] {
        project.pieces[0].hand = hand;
        let plan = plan(&project.pieces[0]).expect("it plans");
        let relief = Relief::new(&project.pieces[0], &plan);
        let view = view(&relief, 400, 0.0, 0.0);
        let picture = Picture::of(&[PosedRelief::new(&relief, &COLOURS)], &view);
        let row = &picture.map[200 * 400..201 * 400];
        numbers.push(row.iter().map(|s| (s.round, s.stitch)).collect::<Vec<_>>());
    }
    let mirrored: Vec<_> = numbers[1].iter().rev().copied().collect();
    let alike = numbers[0].iter().zip(&mirrored).filter(|(a, b)| a == b).count();
    assert!(alike > 380, "{alike} of 400 alike");
    let middle = &numbers[0][100..300];
    let in_round = || middle.windows(2).filter(|p| p[0].0 == p[1].0);
    let grows = in_round().filter(|p| p[0].1 < p[1].1).count();
    let falls = in_round().filter(|p| p[0].1 > p[1].1).count();
    assert!(
        grows > 5 && falls == 0,
        "{grows} to the right as the start points up, {falls} not"
    );
}

#[test]
fn colours_and_light_follow_the_yarn() {
    let (project, plan) = sample("float");
    let relief = Relief::new(&project.pieces[0], &plan);
    let view = view(&relief, 400, 30.0, 14.0);
    let lit = [240, 174, 43];
    let placed = PosedRelief { lit: Some((14, lit)), ..PosedRelief::new(&relief, &COLOURS) };
    let picture = Picture::of(&[placed], &view);
    let mut sums = [[0.0_f32; 3]; 4];
    let mut many = [0.0; 4];
    for (pixel, seen) in picture.pixels.iter().zip(&picture.map).filter(|(_, s)| s.round > 0) {
        let round = u32::from(seen.round);
        let yarn = if round == 14 { 3 } else { plan.rounds[round as usize - 1].yarn };
        (0..3).for_each(|c| sums[yarn][c] += f32::from(pixel[c]));
        many[yarn] += 1.0;
    }
    for (yarn, colour) in COLOURS.iter().chain([&lit]).enumerate() {
        let mean = sums[yarn].map(|s| s / many[yarn]);
        let strongest = |c: [f32; 3]| (0..3).max_by(|&a, &b| c[a].total_cmp(&c[b]));
        assert_eq!(strongest(mean), strongest(colour.map(f32::from)), "{yarn}: {mean:?}");
        for c in 0..3 {
            let share = mean[c] / f32::from(colour[c]);
            assert!((0.5..1.05).contains(&share), "{yarn}: {mean:?} of {colour:?}");
        }
    }
}
