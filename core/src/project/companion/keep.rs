//! Seams kept true while a piece changes its rounds.

use super::{At, Seam};
use crate::piece::PieceId;
use crate::project::sizes::Resized;

/// `piece` is now `made`: its seams go to the same share of its working.
pub(crate) fn carry(seams: &mut [Seam], piece: PieceId, made: &Resized) {
    for seam in seams {
        for edge in [&mut seam.a, &mut seam.b] {
            if let (true, At::Round(k)) = (edge.piece == piece, edge.at) {
                edge.at = At::Round(made.round_for(k));
            }
        }
        if let Some(held) = seam.held.filter(|held| held.piece == piece) {
            let round = made.round_for(held.round);
            let pin = made.piece.pins.get(&round);
            seam.held = pin.map(|&count| super::Held { round, count, ..held });
        }
    }
}
