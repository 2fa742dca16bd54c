//! The picture of the body against the forecast it draws: every stitch, its order, its size,
//! its colour, its hand.

use std::collections::BTreeMap;
use std::path::Path;

use plumpline_core::Extent;
use plumpline_core::picture::svg::{Frame, svg};
use plumpline_core::picture::{Body, MOST_STITCHES, Rgb, Scene, Viewpoint};
use plumpline_core::{Hand, Piece, Plan, Project, file, plan};
use plumpline_tests::fit_set::SHAPES;

const SAMPLES: [&str; 5] = ["float", "pear", "pebble", "mushroom", "cushion"];
/// Small enough that no strands are drawn: a stitch is its cloth and two legs of three
/// polygons each.
const SMALL: f32 = 1.0;
const POLYGONS_A_STITCH: usize = 7;

fn sample(name: &str) -> (Project, Plan) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let project = file::load(&folder.join(format!("{name}.ron"))).expect("the sample loads");
    let plan = plan(&project.pieces[0]).expect("it plans");
    (project, plan)
}

fn colours(project: &Project) -> Vec<Rgb> {
    project.yarns.iter().map(|y| y.colour).collect()
}

fn level(turn_deg: f32, scale: f32) -> Viewpoint {
    Viewpoint { turn_deg, tilt_deg: 0.0, scale, ..Viewpoint::default() }
}

/// Polygons of every stitch in a scene.
fn drawn(scene: &Scene) -> BTreeMap<(u32, u32), usize> {
    let mut drawn = BTreeMap::new();
    for polygon in scene.polygons() {
        if let (Some(round), Some(stitch)) = (polygon.round, polygon.stitch) {
            *drawn.entry((round, stitch)).or_default() += 1;
        }
    }
    drawn
}

/// Fewest corners of a leg. What has fewer is cloth, or a strand, which lies towards the light
/// whichever hand made it.
const LEG: usize = 8;

/// Mean place of the corners of every stitch's legs.
fn places(scene: &Scene) -> BTreeMap<(u32, u32), [f32; 2]> {
    let mut sums: BTreeMap<(u32, u32), ([f32; 2], f32)> = BTreeMap::new();
    for polygon in scene.polygons() {
        let (Some(round), Some(stitch)) = (polygon.round, polygon.stitch) else { continue };
        if scene.corners(polygon).len() < LEG {
            continue;
        }
        let (sum, many) = sums.entry((round, stitch)).or_default();
        for corner in scene.corners(polygon) {
            *sum = [sum[0] + corner[0], sum[1] + corner[1]];
            *many += 1.0;
        }
    }
    sums.into_iter().map(|(key, (sum, many))| (key, sum.map(|s| s / many))).collect()
}

#[test]
fn every_stitch_in_sight_is_drawn_once_and_every_stitch_from_some_side() {
    for name in SAMPLES {
        let (project, plan) = sample(name);
        let body = Body::new(&project.pieces[0], &plan);
        let mut seen: BTreeMap<(u32, u32), usize> = BTreeMap::new();
        for (turn_deg, tilt_deg) in
            [(0.0, 20.0), (120.0, 20.0), (240.0, -20.0), (30.0, 80.0), (30.0, -80.0)]
        {
            let look = Viewpoint { turn_deg, tilt_deg, scale: SMALL, ..Viewpoint::default() };
            let drawn = drawn(&body.scene(&look, &colours(&project)));
            // Seen from within, a stitch is one polygon.
            let odd: Vec<_> =
                drawn.iter().filter(|&(_, &n)| n != POLYGONS_A_STITCH && n != 1).collect();
            assert!(odd.is_empty(), "{name}: {odd:?}");
            seen.extend(drawn);
        }
        for (number, round) in (1..).zip(&plan.rounds) {
            let many = seen.keys().filter(|(r, _)| *r == number).count();
            assert_eq!(many, round.count as usize, "{name}, round {number}");
            assert!(seen.contains_key(&(number, round.count)), "numbered from 1 to the count");
        }
    }
}

#[test]
fn nearer_stitches_are_painted_over_farther_ones() {
    for name in SAMPLES {
        let (project, plan) = sample(name);
        let body = Body::new(&project.pieces[0], &plan);
        // Cloth gives way to the legs around it by less than a stitch.
        let slack = plan.stitch_mm.width.max(plan.stitch_mm.height) as f32;
        for tilt_deg in [-50.0, -10.0, 0.0, 14.0, 60.0] {
            let look = Viewpoint { tilt_deg, ..Viewpoint::default() };
            let scene = body.scene(&look, &colours(&project));
            let mut nearest = f32::NEG_INFINITY;
            for polygon in scene.polygons() {
                assert!(polygon.depth >= nearest - slack, "{name} at {tilt_deg}°");
                nearest = nearest.max(polygon.depth);
            }
            assert!(nearest > 0.0);
        }
    }
}

#[test]
fn the_silhouette_is_the_forecasts() {
    for name in SAMPLES {
        let (project, plan) = sample(name);
        let body = Body::new(&project.pieces[0], &plan);
        let scene = body.scene(&level(40.0, 1.0), &colours(&project));
        let [low, high] = scene.bounds();
        let Extent { height: tall, width: wide } = plan.size_mm;
        let (got_wide, got_tall) = (f64::from(high[0] - low[0]), f64::from(high[1] - low[1]));
        println!("{name}: {got_tall:.1} × {got_wide:.1}, forecast {tall:.1} × {wide:.1}");
        assert!((got_wide / wide - 1.0).abs() < 0.02, "{name}: {got_wide} wide, not {wide}");
        assert!((got_tall / tall - 1.0).abs() < 0.02, "{name}: {got_tall} high, not {tall}");
        // What can be pointed at is as large as the forecast's outline, by frusta.
        let area: f64 =
            plan.forecast.windows(2).map(|p| (p[0].r + p[1].r) * (p[1].z - p[0].z).abs()).sum();
        let step = 0.7;
        let across = |from: f32, to: f32| {
            (0..((to - from) / step) as i32 + 1).map(move |i| from + step * i as f32)
        };
        let hits = across(low[1], high[1])
            .flat_map(|y| across(low[0], high[0]).map(move |x| [x, y]))
            .filter(|&at| scene.pick(at).is_some())
            .count();
        let got = hits as f64 * f64::from(step * step);
        println!("{name}: {got:.0} mm², forecast {area:.0} mm²");
        // A free rim that folds back on itself is counted twice by the frusta.
        if name != "mushroom" {
            assert!((got / area - 1.0).abs() < 0.03, "{name}: {got} mm², not {area}");
        }
    }
}

#[test]
fn an_oval_is_wide_along_its_sides_and_deep_across_them() {
    let mut piece = SHAPES[0].piece(0.3, 1.0);
    piece.straight_mm = 40.0;
    let plan = plan(&piece).expect("an oval can be planned");
    let body = Body::new(&piece, &plan);
    let wide = |turn| {
        let [low, high] = body.scene(&level(turn, 1.0), &[[90; 3]]).bounds();
        f64::from(high[0] - low[0])
    };
    let deep = plan.depth_mm.expect("an oval has a depth");
    assert!((wide(0.0) / plan.size_mm.width - 1.0).abs() < 0.02, "{} wide", wide(0.0));
    assert!((wide(90.0) / deep - 1.0).abs() < 0.02, "{} deep", wide(90.0));
}

#[test]
fn pointing_finds_the_round_that_lies_there() {
    let (project, plan) = sample("pear");
    let body = Body::new(&project.pieces[0], &plan);
    let scene = body.scene(&level(180.0, 2.0), &colours(&project));
    let middle = 0.5 * plan.size_mm.height;
    for round in [8, 15, 22, 30_u32] {
        let (a, b) = (plan.forecast[round as usize - 1], plan.forecast[round as usize]);
        let y = 2.0 * (0.5 * (a.z + b.z) - middle - plan.forecast[0].z) as f32;
        // At the seam a spiral is half a round off, a quarter of the way round a quarter.
        let picked = scene.pick([0.0, y]).expect("the body is there");
        assert!(picked.round.abs_diff(round) <= 1, "{picked:?}, not {round}");
        assert!(
            picked.stitch.is_some_and(|s| s <= plan.rounds[picked.round as usize - 1].count)
        );
    }
    assert_eq!(scene.pick([500.0, 0.0]), None);
}

#[test]
fn bands_have_the_colour_of_their_yarn_and_a_lit_round_its_own() {
    let (project, plan) = sample("float");
    let body = Body::new(&project.pieces[0], &plan);
    let yarns = colours(&project);
    let lit: Rgb = [0, 255, 0];
    let look = Viewpoint { lit: Some((20, lit)), ..Viewpoint::default() };
    let scene = body.scene(&look, &yarns);
    // Light changes how bright a colour is far more than its hue.
    let hue = |colour: [f32; 3]| {
        let sum: f32 = colour.iter().sum::<f32>().max(1.0);
        colour.map(|c| c / sum)
    };
    let apart =
        |a: [f32; 3], b: [f32; 3]| -> f32 { a.iter().zip(b).map(|(a, b)| (a - b).abs()).sum() };
    let wide = |colour: Rgb| colour.map(f32::from);
    for (number, round) in (1..).zip(&plan.rounds) {
        let mine: Vec<Rgb> = scene
            .polygons()
            .iter()
            .filter(|p| p.round == Some(number) && p.stitch.is_some())
            .map(|p| p.colour)
            .collect();
        let sum = mine.iter().fold([0.0; 3], |s, &c| {
            let c = wide(c);
            [s[0] + c[0], s[1] + c[1], s[2] + c[2]]
        });
        let choices: Vec<Rgb> = yarns.iter().copied().chain([lit]).collect();
        let nearest = choices
            .iter()
            .enumerate()
            .min_by(|a, b| {
                let to = |c: Rgb| apart(hue(sum), hue(wide(c)));
                to(*a.1).total_cmp(&to(*b.1))
            })
            .map(|(i, _)| i);
        let wanted = if number == 20 { yarns.len() } else { round.yarn };
        assert_eq!(nearest, Some(wanted), "round {number}");
    }
}

#[test]
fn the_left_hand_works_the_mirror_image() {
    for straight_mm in [0.0, 30.0] {
        let right = Piece { straight_mm, ..SHAPES[3].piece(0.3, 1.0) };
        let left = Piece { hand: Hand::Left, ..right.clone() };
        let scene = |piece: &Piece| {
            let plan = plan(piece).expect("it plans");
            Body::new(piece, &plan).scene(&level(0.0, SMALL), &[[90; 3]])
        };
        let (right, left) = (places(&scene(&right)), places(&scene(&left)));
        assert_eq!(right.len(), left.len());
        for (stitch, [x, y]) in right {
            let [mirrored, same] = left[&stitch];
            // To a hundredth of a stitch.
            assert!((x + mirrored).abs() < 0.05, "{stitch:?}: {x} and {mirrored}");
            assert!((y - same).abs() < 0.05, "{stitch:?}: {y} and {same}");
        }
    }
}

#[test]
fn the_right_hand_works_to_the_right_as_the_start_points_up() {
    let (project, plan) = sample("pear");
    let body = Body::new(&project.pieces[0], &plan);
    // The seam is at the back: seen from there, stitch 2 lies right of stitch 1.
    let places = places(&body.scene(&level(180.0, SMALL), &colours(&project)));
    let x = |stitch| places.get(&(10, stitch)).map(|at| at[0]);
    let (first, second) = (x(1).expect("in sight"), x(2).expect("in sight"));
    assert!(second > first, "{first} then {second}");
}

#[test]
fn a_spiral_climbs_and_joined_rounds_are_level() {
    let spiral = SHAPES[5].piece(0.3, 1.0);
    let joined = Piece {
        working: plumpline_core::Working::Joined { chain_counts: false },
        ..spiral.clone()
    };
    // How much lower the last stitch of a middle round lies than its first, in rounds.
    let climb = |piece: &Piece| {
        let plan = plan(piece).expect("it plans");
        let round = plan.rounds.len() as u32 / 2;
        let scene = Body::new(piece, &plan).scene(&level(180.0, SMALL), &[[90; 3]]);
        let places = places(&scene);
        let y = |stitch| places[&(round, stitch)][1];
        f64::from(y(plan.rounds[round as usize - 1].count) - y(1)) / plan.stitch_mm.height
    };
    let (spiral, joined) = (climb(&spiral), climb(&joined));
    assert!((0.7..1.2).contains(&spiral), "{spiral}");
    assert!(joined.abs() < 0.1, "{joined}");
}

#[test]
fn a_cutaway_keeps_the_back_half_and_shows_what_is_inside() {
    let (project, plan) = sample("pear");
    let body = Body::new(&project.pieces[0], &plan);
    let look = |turn_deg, cutaway| Viewpoint {
        turn_deg,
        cutaway,
        scale: SMALL,
        ..Viewpoint::default()
    };
    let scene = |turn, cut| body.scene(&look(turn, cut), &colours(&project));
    let stuffing =
        |scene: &Scene| scene.polygons().iter().filter(|p| p.round.is_none()).count();
    let (whole, cut, behind) = (scene(0.0, false), scene(0.0, true), scene(180.0, true));
    assert!(stuffing(&cut) > 50 && stuffing(&whole) == 0 && stuffing(&behind) == 0);
    // From behind nothing is missing.
    assert_eq!(
        drawn(&behind).len(),
        drawn(&scene(180.0, false)).len() - missing_at_the_rim(&body, &project)
    );
    // The face is cut through stuffing in the middle, cloth at its edge.
    assert_eq!(cut.pick([0.0, 0.0]), None);
    let [low, _] = cut.bounds();
    // Outside it, stitches of the back half may be seen.
    let across = (1..400).filter_map(|i| cut.pick([low[0] + 0.1 * i as f32, 0.0]));
    assert!(across.into_iter().any(|p| p.stitch.is_none()), "the cloth is cut");
}

/// Stitches a little round the edge, which a whole body shows and its back half does not.
fn missing_at_the_rim(body: &Body, project: &Project) -> usize {
    let look =
        |cutaway| Viewpoint { turn_deg: 180.0, cutaway, scale: SMALL, ..Viewpoint::default() };
    let whole = drawn(&body.scene(&look(false), &colours(project)));
    let half = drawn(&body.scene(&look(true), &colours(project)));
    let missing = whole.keys().filter(|k| !half.contains_key(k)).count();
    assert!(half.keys().all(|k| whole.contains_key(k)));
    assert!(missing * 3 < whole.len(), "{missing} of {}", whole.len());
    missing
}

#[test]
fn an_open_end_can_be_looked_into_and_a_closed_one_cannot() {
    let (project, plan) = sample("mushroom");
    let body = Body::new(&project.pieces[0], &plan);
    let within = |tilt_deg| {
        let look = Viewpoint { tilt_deg, scale: SMALL, ..Viewpoint::default() };
        drawn(&body.scene(&look, &colours(&project))).values().filter(|&&n| n == 1).count()
    };
    assert!(within(-20.0) > 50, "into the stem from below");
    assert_eq!(within(20.0), 0, "not from above");
}

#[test]
fn beyond_many_stitches_bands_stand_in() {
    let mut piece = SHAPES[0].piece(1.0, 1.0);
    piece.outline = piece.outline.scaled(5.5, 5.5);
    let plan = plan(&piece).expect("it plans");
    assert!(plan.estimate.stitches as usize > MOST_STITCHES, "{}", plan.estimate.stitches);
    let scene = Body::new(&piece, &plan).scene(&level(0.0, SMALL), &[[90; 3]]);
    assert!(drawn(&scene).is_empty());
    assert!(scene.polygons().len() < 72 * plan.rounds.len());
    assert!(scene.pick([0.0, 0.0]).is_some_and(|p| p.stitch.is_none()));
}

#[test]
fn the_same_look_gives_the_same_picture_and_its_text_is_whole() {
    let (project, plan) = sample("cushion");
    let scene = || {
        let body = Body::new(&project.pieces[0], &plan);
        body.scene(&Viewpoint { cutaway: true, ..Viewpoint::default() }, &colours(&project))
    };
    assert_eq!(scene(), scene());
    let frame = Frame {
        title: "Cushion & <pins>",
        description: "Cut open.",
        margin: 10.0,
        background: Some([255; 3]),
        fonts: "sans-serif",
    };
    let text = svg(&scene(), &frame);
    assert!(text.starts_with("<svg ") && text.ends_with("</svg>\n"));
    assert!(text.contains("<title id=\"title\">Cushion &amp; &lt;pins&gt;</title>"));
    assert_eq!(text.matches("<path ").count(), scene().polygons().len());
    assert!(!text.contains("NaN") && !text.contains("inf"));
}
