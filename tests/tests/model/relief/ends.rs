//! What is looked into, cut open, pressed into an oval, worked in a spiral.

use plumpline_core::picture::Viewpoint;
use plumpline_core::picture::relief::{PosedRelief, Relief, ReliefScene, Still};
use plumpline_core::picture::svg::{self, Frame};
use plumpline_core::{Piece, Working, plan};
use plumpline_tests::fit_set::SHAPES;

use super::{COLOURS, Picture, sample, view};

#[test]
fn an_oval_is_wide_along_its_sides_and_deep_across_them() {
    let mut piece = SHAPES[0].piece(0.3, 1.0);
    piece.straight_mm = 40.0;
    let plan = plan(&piece).expect("an oval can be planned");
    let relief = Relief::new(&piece, &plan);
    let wide = |turn| {
        let view = view(&relief, 400, turn, 0.0);
        let picture = Picture::of(&[PosedRelief::new(&relief, &COLOURS)], &view);
        let row = |y: usize| (0..400).map(|x| picture.covered(x, y)).sum::<f32>();
        f64::from((0..400).map(row).fold(0.0, f32::max) / view.scale)
    };
    let deep = plan.depth_mm.expect("an oval has a depth");
    assert!((wide(0.0) / plan.size_mm.width - 1.0).abs() < 0.03, "{} wide", wide(0.0));
    assert!((wide(90.0) / deep - 1.0).abs() < 0.03, "{} deep", wide(90.0));
}

#[test]
fn a_spiral_climbs_and_joined_rounds_are_level() {
    let spiral = SHAPES[5].piece(0.3, 1.0);
    let joined = Piece { working: Working::Joined { chain_counts: false }, ..spiral.clone() };
    // How much lower the last stitch of a middle round lies than its first, in rounds.
    let climb = |piece: &Piece| {
        let plan = plan(piece).expect("it plans");
        let round = plan.rounds.len() / 2;
        let relief = Relief::new(piece, &plan);
        // The beginning is at the back.
        let view = view(&relief, 700, 180.0, 0.0);
        let picture = Picture::of(&[PosedRelief::new(&relief, &COLOURS)], &view);
        let y = |stitch: u32| {
            let own = |s: &plumpline_core::picture::relief::Seen| {
                usize::from(s.round) == round && u32::from(s.stitch) == stitch
            };
            let rows = (0..).zip(&picture.map).filter(|(_, s)| own(s)).map(|(i, _)| i / 700);
            let (sum, many) =
                rows.fold((0.0, 0.0), |(s, n), y: u32| (s + f64::from(y), n + 1.0));
            sum / many / f64::from(view.scale)
        };
        (y(plan.rounds[round - 1].count) - y(1)) / plan.stitch_mm.height
    };
    let (spiral, joined) = (climb(&spiral), climb(&joined));
    assert!((0.7..1.2).contains(&spiral), "{spiral}");
    assert!(joined.abs() < 0.1, "{joined}");
}

#[test]
fn a_cutaway_keeps_the_back_half_and_shows_what_is_inside() {
    let (project, plan) = sample("pear");
    let relief = Relief::new(&project.pieces[0], &plan);
    let own = PosedRelief::new(&relief, &COLOURS);
    let picture = |turn, cutaway| {
        Picture::of(&[PosedRelief { cutaway, ..own }], &view(&relief, 300, turn, 0.0))
    };
    let (whole, cut, behind) = (picture(0.0, false), picture(0.0, true), picture(180.0, true));
    let stuffing = |p: &Picture| p.map.iter().filter(|s| s.part == 1 && s.round == 0).count();
    assert!(stuffing(&cut) > 10_000 && stuffing(&whole) == 0 && stuffing(&behind) == 0);
    // From behind nothing is missing but what stands out beyond the middle.
    let behind_whole = picture(180.0, false);
    let other = behind.map.iter().zip(&behind_whole.map).filter(|(a, b)| a != b).count();
    assert!(other < 300, "{other} pixels are others");
    // The face: cloth at its edge in the yarn, stuffing in the middle, which is far lighter.
    let light = |x: usize| u32::from(cut.pixels[150 * 300 + x][2]);
    let first = (0..300).find(|&x| cut.covered(x, 150) > 0.99).expect("an edge");
    assert!(light(150) > light(first + 4) + 60, "{} and {}", light(150), light(first + 4));
}

#[test]
fn an_open_end_can_be_looked_into_and_a_closed_one_cannot() {
    let (project, plan) = sample("mushroom");
    let relief = Relief::new(&project.pieces[0], &plan);
    let stuffing = |tilt| {
        let picture = Picture::of(
            &[PosedRelief::new(&relief, &COLOURS)],
            &view(&relief, 300, 30.0, tilt),
        );
        picture.map.iter().filter(|s| s.part == 1 && s.round == 0).count()
    };
    assert!(stuffing(-70.0) > 200, "into the stem from below");
    assert_eq!(stuffing(70.0), 0, "not from above");
}

#[test]
fn pointing_finds_the_round_that_lies_there() {
    let (project, plan) = sample("pear");
    let relief = Relief::new(&project.pieces[0], &plan);
    let view = view(&relief, 500, 180.0, 0.0);
    let still = Still::new(&ReliefScene::new(&[PosedRelief::new(&relief, &COLOURS)], &view));
    let still = still.expect("it is small");
    for round in [8, 15, 22, 30_u16] {
        let (a, b) = (plan.forecast[usize::from(round) - 1], plan.forecast[usize::from(round)]);
        let z = 0.5 * (a.z + b.z);
        let [x, y, _] = view.project([0.0, 0.0, z as f32]);
        let seen = still.pick(x, y).expect("the body is there");
        // Where it begins a spiral is half a round off.
        assert!(seen.round.abs_diff(round) <= 1, "{seen:?}, not {round}");
    }
    assert_eq!(still.pick(2.0, 2.0), None);
    assert_eq!(still.pick(-1.0, 9000.0), None);
}

#[test]
fn a_file_carries_the_picture_and_its_outline() {
    let (project, plan) = sample("cushion");
    let relief = Relief::new(&project.pieces[0], &plan);
    let look = Viewpoint { scale: 2.0, ..Viewpoint::default() };
    let still = relief.still(&look, &COLOURS, 6.0).expect("it is small");
    let rings = still.outline();
    assert_eq!(rings.len(), 1, "one piece, no holes");
    // What the outline holds is what is covered.
    let ring = &rings[0];
    let around = ring.iter().zip(ring[1..].iter().chain(&ring[..1]));
    let area = 0.5 * around.map(|(a, b)| a[0] * b[1] - a[1] * b[0]).sum::<f32>().abs();
    let covered: f32 = still.pixels.iter().map(|p| f32::from(p[3]) / 255.0).sum();
    assert!((area / covered - 1.0).abs() < 0.005, "{area} px² of {covered}");
    let frame = Frame {
        title: "Cushion & <pins>",
        description: "From above.",
        margin: 6.0,
        background: Some([255; 3]),
        fonts: "sans-serif",
        ids: "",
    };
    let png = still.png(None).expect("it is written");
    let text = svg::still(&still, &png, &frame);
    assert!(text.starts_with("<svg ") && text.ends_with("</svg>\n"));
    assert!(text.contains("<title id=\"title\">Cushion &amp; &lt;pins&gt;</title>"));
    assert!(text.contains("data:image/png;base64,iVBORw0KGgo"));
    assert_eq!(text.matches("<path ").count(), 1);
    assert!(!text.contains("NaN") && !text.contains("inf"));
}
