//! The fit set: how near the closed-form skin and whole stitches come to the outline.

use plumpline_core::counts::{fit_of, rule_of_thumb};
use plumpline_core::forecast::fit::{Fit, Trail, measure};
use plumpline_core::forecast::{Energy, pressure_for_outline, settle};
use plumpline_core::plan;
use plumpline_core::skin::RestSkin;
use plumpline_tests::fit_set::{SHAPES, Shape};
use plumpline_tests::shapes::{FINE, unrounded_skin};

/// The forecast of the skin in stitches that can be split, each round as high as in a plan
/// or `finer` times finer.
fn unrounded(shape: &Shape, finer: usize) -> Fit {
    let piece = shape.piece(0.0, 1.0);
    let profile = piece.outline.profile(FINE);
    let cloth = plumpline_core::forecast::Cloth::default();
    let rest = RestSkin::of(&profile, piece.firmness.0, &cloth);
    let rounds = (rest.length_mm() / piece.gauge.round_height_mm()).round() as usize;
    let (skin, pressure) = unrounded_skin(&piece, rounds * finer);
    let energy = Energy::new(&skin, pressure);
    let start = energy.flatten(&skin.slack_shape());
    let settled = settle(&energy, &start, 1e-7);
    assert!(settled.is_settled(1e-7), "{}: {:e}", shape.name, settled.residual);
    measure(&settled.nodes, &Trail::new(profile.places()), piece.gauge.stitch_width_mm())
}

/// The membrane equations solved backwards for the skin and minimised forwards to the shape
/// must meet. What is left is the polygon of the rounds.
#[test]
fn the_closed_form_skin_stuffs_into_the_outline() {
    for shape in &SHAPES {
        for finer in [1, 4] {
            let fit = unrounded(shape, finer);
            println!(
                "{:10} ×{finer}: rms {:.5} max {:.5} w",
                shape.name, fit.rms_stitches, fit.max_stitches
            );
        }
    }
}

/// RMS distance to the outline in stitch widths, at ease 0.
#[test]
fn whole_stitches_come_close_and_closer_than_the_rule_of_thumb() {
    let mut sum = 0.0;
    for shape in &SHAPES {
        let piece = shape.piece(0.0, 1.0);
        let fit = plan(&piece).expect("the set can be planned").fit.expect("it has an outline");
        let profile = piece.outline.profile(400);
        let pressure = pressure_for_outline(piece.firmness.0, profile.widest_mm());
        let thumb = fit_of(&piece, &profile, &rule_of_thumb(&piece, &profile), pressure);
        println!(
            "{:10} rms {:.4} max {:.4} thumb {:.3}",
            shape.name, fit.rms_stitches, fit.max_stitches, thumb.rms_stitches
        );
        assert!(fit.rms_stitches <= 0.065, "{}: {fit:?}", shape.name);
        assert!(fit.rms_stitches < thumb.rms_stitches, "{}: {fit:?}, {thumb:?}", shape.name);
        sum += fit.rms_stitches;
    }
    assert!(sum / SHAPES.len() as f64 <= 0.028, "mean {}", sum / SHAPES.len() as f64);
}
