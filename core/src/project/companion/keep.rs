//! Seams and the toy's parts kept true while pieces come, go and change their rounds.

use super::{At, Seam};
use crate::project::Project;
use crate::project::sizes::{Resized, SizeBy};

/// Piece `index` was taken out of `project`: what it met is let go, what counts pieces counts
/// anew.
pub fn removed(project: &mut Project, index: usize) {
    project.seams.retain(|seam| !seam.touches(index));
    project.toy.piece_removed(index);
    renumber(project, |piece| if piece > index { piece - 1 } else { piece }, Some(index));
}

/// A piece was put in at `index`: what counts pieces counts anew. Sizes of the new piece too
/// count the pieces there were before it.
pub fn inserted(project: &mut Project, index: usize) {
    project.toy.piece_inserted(index);
    renumber(project, |piece| if piece >= index { piece + 1 } else { piece }, None);
}

fn renumber(project: &mut Project, to: impl Fn(usize) -> usize, gone: Option<usize>) {
    for seam in &mut project.seams {
        seam.a.piece = to(seam.a.piece);
        seam.b.piece = to(seam.b.piece);
        if let Some(held) = &mut seam.held {
            held.piece = to(held.piece);
        }
    }
    for piece in &mut project.pieces {
        piece.sizes.retain(|size| match size.by {
            SizeBy::Meet { companion } => Some(companion) != gone,
            _ => true,
        });
        for size in &mut piece.sizes {
            if let SizeBy::Meet { companion } = &mut size.by {
                *companion = to(*companion);
            }
        }
    }
}

/// Piece `index` is now `made`: its seams go to the same share of its working.
pub(crate) fn carry(seams: &mut [Seam], index: usize, made: &Resized) {
    for seam in seams {
        for edge in [&mut seam.a, &mut seam.b] {
            if let (true, At::Round(k)) = (edge.piece == index, edge.at) {
                edge.at = At::Round(made.round_for(k));
            }
        }
        if let Some(held) = seam.held.filter(|held| held.piece == index) {
            let round = made.round_for(held.round);
            let pin = made.piece.pins.get(&round);
            seam.held = pin.map(|&count| super::Held { round, count, ..held });
        }
    }
}
