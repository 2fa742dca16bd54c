//! Whose progress is whose when pieces come, go and change, by a step or by taking one back.

use super::{Making, Progress};
use crate::piece::Piece;

impl Making {
    /// This progress, made on `before`, for the pieces `after`: each copy stays with its
    /// piece, wherever that stands now. What belongs to a piece that is gone is dropped.
    #[must_use]
    pub fn following(&self, before: &[Piece], after: &[Piece]) -> Self {
        let to = matched(before, after);
        let moved = |p: &Progress| {
            let piece = to.get(p.piece).copied().flatten()?;
            Some(Progress { piece, ..p.clone() })
        };
        Self { at: self.at.iter().filter_map(moved).collect() }
    }

    /// This progress, made on `now`, for the pieces `then` that a step taken back brings
    /// back; `theirs` is the progress as it was then, and holds for those of them that are
    /// not there now.
    #[must_use]
    pub fn taken_back(&self, now: &[Piece], then: &[Piece], theirs: &Self) -> Self {
        let to = matched(now, then);
        let mut all = self.following(now, then);
        let returns = |p: &&Progress| !to.contains(&Some(p.piece));
        all.at.extend(theirs.at.iter().filter(returns).cloned());
        all
    }
}

/// For each piece of `before` the index it has in `after`, if it is there. Equal pieces are
/// the same, nearest first; where one step leaves as many over on both sides, it changed
/// those in place.
fn matched(before: &[Piece], after: &[Piece]) -> Vec<Option<usize>> {
    let mut to: Vec<Option<usize>> = vec![None; before.len()];
    let mut free = vec![true; after.len()];
    let mut pair = |i: usize, j: usize, to: &mut [Option<usize>]| {
        if to[i].is_none() && free[j] {
            (to[i], free[j]) = (Some(j), false);
        }
    };
    // From the front, from the back, then anywhere: a piece put in or taken out leaves the
    // others in their order.
    let same = before.iter().zip(after).take_while(|(a, b)| a == b).count();
    for i in 0..same {
        pair(i, i, &mut to);
    }
    let ends = before.iter().rev().zip(after.iter().rev()).take_while(|(a, b)| a == b).count();
    let ends = ends.min(before.len() - same).min(after.len() - same);
    for back in 1..=ends {
        pair(before.len() - back, after.len() - back, &mut to);
    }
    for (i, piece) in before.iter().enumerate() {
        if to[i].is_none() {
            for (j, _) in after.iter().enumerate().filter(|(_, other)| *other == piece) {
                pair(i, j, &mut to);
            }
        }
    }
    let left: Vec<usize> = (0..before.len()).filter(|&i| to[i].is_none()).collect();
    let room: Vec<usize> = (0..after.len()).filter(|j| !to.contains(&Some(*j))).collect();
    if left.len() == room.len() {
        for (i, j) in left.into_iter().zip(room) {
            to[i] = Some(j);
        }
    }
    to
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Gauge, Outline};

    fn piece(name: &str) -> Piece {
        Piece::new(name, Outline { knots: Vec::new() }, Gauge::default())
    }

    fn pieces(names: &str) -> Vec<Piece> {
        names.chars().map(|c| piece(&c.to_string())).collect()
    }

    /// Progress whose round tells whose it was: 1 for the first piece.
    fn begun(pieces: &[usize]) -> Making {
        let of = |&i: &usize| Progress { round: i as u32 + 1, ..Progress::new(i, 1) };
        Making { at: pieces.iter().map(of).collect() }
    }

    fn whose(making: &Making) -> Vec<(usize, u32)> {
        let mut list: Vec<_> = making.at.iter().map(|p| (p.piece, p.round)).collect();
        list.sort_unstable();
        list
    }

    #[test]
    fn progress_stays_with_its_piece() {
        let three = begun(&[0, 1, 2]);
        for (after, expected) in [
            ("abc", vec![(0, 1), (1, 2), (2, 3)]),
            ("ac", vec![(0, 1), (1, 3)]),
            ("bc", vec![(0, 2), (1, 3)]),
            ("axbc", vec![(0, 1), (2, 2), (3, 3)]),
            ("abbc", vec![(0, 1), (1, 2), (3, 3)]),
            ("cab", vec![(0, 3), (1, 1), (2, 2)]),
            ("axc", vec![(0, 1), (1, 2), (2, 3)]),
        ] {
            let moved = three.following(&pieces("abc"), &pieces(after));
            assert_eq!(whose(&moved), expected, "{after}");
        }
    }

    #[test]
    fn a_piece_that_comes_back_brings_its_progress_and_takes_none_away() {
        let before = begun(&[0, 1, 2]);
        // The middle piece was removed, then the last one worked on.
        let mut now = before.following(&pieces("abc"), &pieces("ac"));
        now.begin(1, 1).round = 30;
        let again = now.taken_back(&pieces("ac"), &pieces("abc"), &before);
        assert_eq!(whose(&again), [(0, 1), (1, 2), (2, 30)]);
        // Begun since, and not there then: gone with its piece.
        let fresh = begun(&[1]).taken_back(&pieces("ab"), &pieces("a"), &Making::default());
        assert!(fresh.is_empty());
    }
}
