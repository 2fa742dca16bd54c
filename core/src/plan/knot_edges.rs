//! Which round edge lies nearest each knot of the outline.

use super::counts::worked_length_mm;
use super::skin::RestSkin;
use crate::piece::Piece;
use crate::piece::outline::Profile;

/// The round edge nearest each knot of `piece`, worked in `rounds` rounds: edge `k` is the top
/// of round `k`, edge 0 the start.
pub(super) fn knot_edges(
    piece: &Piece,
    profile: &Profile,
    rest: &RestSkin,
    rounds: usize,
) -> Vec<usize> {
    let edges = piece.edges_mm(rounds, worked_length_mm(piece, rest));
    let nearest = |&s: &f64| {
        let at = rest.rest_at(profile, s);
        let after = edges.partition_point(|&edge| edge < at);
        let before = after.saturating_sub(1);
        let nearer = edges.get(after).is_some_and(|&e| e - at < at - edges[before]);
        if nearer { after } else { before }
    };
    profile.knots_mm.iter().map(nearest).collect()
}
