//! Any outline a person may draw, for checks of what every plan must keep to.

use std::f64::consts::TAU;

use plumpline_core::forecast::Cloth;
use plumpline_core::skin::RestSkin;
use plumpline_core::{Firmness, Gauge, Knot, Outline, Piece};
use proptest::prelude::*;

/// Knots rising along the axis, or turned back once into a lip; ends closed or open.
pub fn knots() -> impl Strategy<Value = Vec<Knot>> {
    (3_usize..=10, 8.0..400.0_f64, 0.15..1.5_f64).prop_flat_map(|(n, height, slim)| {
        let radii = prop::collection::vec(0.12..1.0_f64, n);
        let steps = prop::collection::vec(0.3..1.0_f64, n - 1);
        let corners = prop::collection::vec(prop::bool::weighted(0.1), n);
        let ends = (prop::bool::weighted(0.8), prop::bool::weighted(0.7));
        let lip = prop::option::weighted(0.3, (1..n, 0.02..0.1_f64));
        (radii, steps, corners, ends, lip).prop_map(
            move |(radii, steps, corners, ends, lip)| {
                let total: f64 = steps.iter().sum();
                let mut z = 0.0;
                let mut knots = Vec::with_capacity(n);
                for i in 0..n {
                    if i > 0 {
                        let on = steps[i - 1] / total;
                        z += height * lip.filter(|&(at, _)| at == i).map_or(on, |(_, by)| -by);
                    }
                    let pole = (i == 0 && ends.0) || (i == n - 1 && ends.1);
                    let radius_mm = if pole { 0.0 } else { radii[i] * slim * 0.5 * height };
                    knots.push(Knot { corner: corners[i], ..Knot::new(radius_mm, z) });
                }
                knots
            },
        )
    })
}

prop_compose! {
    /// A piece that `plan` takes: a valid outline at least a ring wide, of 2 to 300 rounds.
    pub fn pieces()(
        knots in knots(),
        width in 1.5..14.0_f64,
        shape in 0.7..1.3_f64,
        firmness in 0.005..0.15_f64,
        simplicity in prop_oneof![
            3 => Just(None),
            1 => prop_oneof![Just(0.0), Just(1.0), 0.0..1.0_f64].prop_map(Some),
        ],
    ) -> Option<Piece> {
        let outline = Outline::new(knots).ok()?;
        let gauge = Gauge::of_stitch(width, width * shape);
        let mut piece = Piece::new("any", outline, gauge);
        piece.firmness = Firmness(firmness);
        piece.simplicity = simplicity;
        let rounds = rest_of(&piece).length_mm() / gauge.round_height_mm();
        let wide = TAU * piece.outline.profile(400).widest_mm() / width;
        (wide >= 6.0 && (2.0..300.0).contains(&rounds)).then_some(piece)
    }
}

/// A piece that `plan` takes: see [`pieces`].
pub fn any_piece() -> impl Strategy<Value = Piece> {
    pieces().prop_filter_map("an outline no cloth follows, or too many rounds", |piece| piece)
}

/// The skin as a plan finds it.
pub fn rest_of(piece: &Piece) -> RestSkin {
    let cloth = Cloth { along: piece.stiffness_along, ..Cloth::default() };
    RestSkin::of_oval(&piece.outline.profile(400), piece.firmness.0, &cloth, piece.straight_mm)
}
