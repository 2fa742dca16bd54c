//! Outlines and skins by formula, for checks against closed solutions.

use std::f64::consts::PI;

use plumpline_core::forecast::{Cloth, Finish, Skin};
use plumpline_core::outline::Profile;
use plumpline_core::skin::RestSkin;
use plumpline_core::{Knot, Outline, Piece, PieceId, Rz};

/// Intervals at which checks sample a profile; finer than a plan does.
pub const FINE: usize = 4000;

/// A spheroid of equatorial radius `a` and polar semi-axis `b`, mm, through `spans + 1`
/// knots evenly spaced in the eccentric angle, its start pole at z = 0.
pub fn spheroid(a: f64, b: f64, spans: u32) -> Outline {
    let knot = |i: u32| {
        let t = PI * f64::from(i) / f64::from(spans);
        let r = if i == 0 || i == spans { 0.0 } else { a * t.sin() };
        Knot::new(r, b * (1.0 - t.cos()))
    };
    Outline { knots: (0..=spans).map(knot).collect() }
}

/// The meridian of a torus, ring radius `ring` and tube radius `tube`, from its inner
/// equator down, out, up and back in.
pub fn torus(ring: f64, tube: f64, spans: u32) -> Outline {
    let knot = |i: u32| {
        let t = 2.0 * PI * f64::from(i) / f64::from(spans);
        Knot::new(ring - tube * t.cos(), -tube * t.sin())
    };
    Outline { knots: (0..=spans).map(knot).collect() }
}

/// ∫ f ds over the profile by Simpson's rule; it needs an even number of intervals.
pub fn along(profile: &Profile, f: impl Fn(usize) -> f64) -> f64 {
    let last = profile.stations.len() - 1;
    assert!(last.is_multiple_of(2), "Simpson's rule needs an even number of intervals");
    let weight = |i: usize| match i {
        0 => 1.0,
        i if i == last => 1.0,
        i if i % 2 == 1 => 4.0,
        _ => 2.0,
    };
    let sum: f64 = (0..=last).map(|i| weight(i) * f(i)).sum();
    sum * profile.length_mm() / last as f64 / 3.0
}

/// Surface of the body of revolution, mm²: ∫ 2πr ds.
pub fn area_mm2(profile: &Profile) -> f64 {
    along(profile, |i| 2.0 * PI * profile.stations[i].at.r)
}

/// Volume of the body of revolution, mm³: ∫ πr² (dz/ds) ds.
pub fn volume_by_slope_mm3(profile: &Profile) -> f64 {
    along(profile, |i| {
        let st = &profile.stations[i];
        PI * st.at.r * st.at.r * st.dz
    })
}

/// Edges of `rounds` rounds of one height, by rest length, mm.
fn even_edges(rest: &RestSkin, rounds: usize) -> Vec<f64> {
    (0..=rounds).map(|k| rest.length_mm() * k as f64 / rounds as f64).collect()
}

/// Where the edges of `rounds` even rounds would lie if the forecast were perfect.
pub fn wanted_nodes(profile: &Profile, rest: &RestSkin, rounds: usize) -> Vec<Rz> {
    let along = &rest.along_mm;
    let place = |at: &f64| {
        let i = along.partition_point(|a| a < at).clamp(1, along.len() - 1);
        let u = (at - along[i - 1]) / (along[i] - along[i - 1]);
        let (a, b) = (profile.stations[i - 1].at, profile.stations[i].at);
        Rz::new(a.r + u * (b.r - a.r), a.z + u * (b.z - a.z))
    };
    even_edges(rest, rounds).iter().map(place).collect()
}

/// The closed-form skin of `piece` in `rounds` rounds, not rounded to whole stitches, its
/// height shared out evenly, and the pressure it was found for.
pub fn unrounded_skin(piece: &Piece, rounds: usize) -> (Skin, f64) {
    let cloth = Cloth { along: piece.stiffness_along, ..Cloth::default() };
    let rest = RestSkin::of(&piece.outline.profile(FINE), piece.firmness.0, &cloth);
    let drawn = piece.outline.finishes_closed();
    let around = rest.around_at(&even_edges(&rest, rounds));
    let skin = Skin::new(
        if piece.outline.starts_closed() { 0.0 } else { around[0] },
        around[1..].to_vec(),
        vec![rest.length_mm() / rounds as f64; rounds],
        if drawn { Finish::Drawn } else { Finish::Open },
        cloth,
    );
    (skin, rest.pressure)
}

/// The same skin in whole stitches of the piece's proportions, as uneven as real rounds are.
pub fn whole_stitch_skin(piece: &Piece, rounds: usize) -> (Skin, f64) {
    let (mut skin, pressure) = unrounded_skin(piece, rounds);
    let shape = piece.gauge.stitch_width_mm() / piece.gauge.round_height_mm();
    let width = skin.height_mm[0] * shape;
    for around in &mut skin.around_mm {
        *around = (*around / width).round().max(5.0) * width;
    }
    (skin, pressure)
}

/// The pieces, each with its place among them for its id.
pub fn numbered(pieces: &[Piece]) -> Vec<Piece> {
    let one =
        |(number, piece): (u32, &Piece)| Piece { id: PieceId::new(number), ..piece.clone() };
    (0..).zip(pieces).map(one).collect()
}
