//! Whose progress is whose when pieces and sizes come, go and change, by a step or by taking
//! one back.

use super::progress::has_size;
use super::{Making, Progress};
use crate::piece::size::Size;
use crate::piece::{Piece, PieceId};

impl Making {
    /// This progress, made on `before`, for the pieces `after`: each copy stays with its
    /// piece, whatever became of that, and with its size, whatever that is called now. What
    /// belongs to a piece or a size that is gone is dropped.
    ///
    /// Where a size takes a name that the same piece was made under for the sake of others,
    /// what was made as that size has it.
    #[must_use]
    pub fn following(&self, before: &[Piece], after: &[Piece]) -> Self {
        let mut at: Vec<Progress> = Vec::with_capacity(self.at.len());
        for progress in &self.at {
            if of(after, progress.piece).is_none() {
                continue;
            }
            let size = match &progress.size {
                None => None,
                Some(name) => match called(name, progress.piece, before, after) {
                    Some(name) => Some(name.to_owned()),
                    None => continue,
                },
            };
            let renamed = size != progress.size;
            let moved = Progress { size, ..progress.clone() };
            // Only a new name can come upon another's place.
            match at.iter().position(|p| p.is_of_same(&moved)) {
                Some(taken) if renamed => at[taken] = moved,
                Some(_) => {}
                None => at.push(moved),
            }
        }
        Self { at }
    }

    /// This progress, made on `now`, for the pieces `then` that a step taken back brings
    /// back; `theirs` is the progress as it was then, and holds for those of their copies
    /// that are not there now.
    #[must_use]
    pub fn taken_back(&self, now: &[Piece], then: &[Piece], theirs: &Self) -> Self {
        let mut all = self.following(now, then);
        let returns = |p: &&Progress| !all.at.iter().any(|known| known.is_of_same(p));
        let back: Vec<Progress> = theirs.at.iter().filter(returns).cloned().collect();
        // What was worked on last still is.
        all.at.splice(0..0, back);
        all
    }
}

fn of(pieces: &[Piece], id: PieceId) -> Option<&Piece> {
    pieces.iter().find(|piece| piece.id == id)
}

/// What the size called `name`, which a piece of `before` is made in, is called in `after`;
/// none where there is no such size any more.
fn called<'a>(
    name: &'a str,
    piece: PieceId,
    before: &[Piece],
    after: &'a [Piece],
) -> Option<&'a str> {
    let now = |id| renamed(&of(before, id)?.sizes, &of(after, id)?.sizes, name);
    now(piece)
        .or_else(|| has_size(after, name).then_some(name))
        // It was never its own: it goes with those whose it was.
        .or_else(|| before.iter().find_map(|piece| now(piece.id)))
}

/// What the size called `name` of the sizes `before` is called in `after`, if it has another
/// name in the same place.
fn renamed<'a>(before: &[Size], after: &'a [Size], name: &str) -> Option<&'a str> {
    let new = &after.get(before.iter().position(|s| s.name == name)?)?.name;
    let gone = after.iter().all(|s| s.name != name);
    (gone && before.iter().all(|s| s.name != *new)).then_some(new)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Gauge, Outline, SizeBy};

    fn piece(name: &str) -> Piece {
        Piece::new(name, Outline { knots: Vec::new() }, Gauge::default())
    }

    /// Pieces of one-letter names, each with the number of its letter for its id.
    fn pieces(names: &str) -> Vec<Piece> {
        let one = |c: char| Piece { id: id(c), ..piece(&c.to_string()) };
        names.chars().map(one).collect()
    }

    fn id(name: char) -> PieceId {
        PieceId::new(u32::from(name))
    }

    /// Progress whose round tells whose it was: 1 for `a`.
    fn begun(pieces: &str) -> Making {
        let round = |c| u32::from(c) - u32::from('a') + 1;
        let of = |c: char| Progress { round: round(c), ..Progress::new(id(c), 1) };
        Making { at: pieces.chars().map(of).collect() }
    }

    fn whose(making: &Making) -> Vec<(PieceId, u32)> {
        let mut list: Vec<_> = making.at.iter().map(|p| (p.piece, p.round)).collect();
        list.sort_unstable();
        list
    }

    #[test]
    fn progress_stays_with_its_piece() {
        for (after, left) in [
            ("abc", "abc"),
            ("ac", "ac"),
            ("bc", "bc"),
            ("axbc", "abc"),
            ("cab", "abc"),
            ("axc", "ac"),
        ] {
            let moved = begun("abc").following(&pieces("abc"), &pieces(after));
            assert_eq!(whose(&moved), whose(&begun(left)), "{after}");
        }
        // However it is changed meanwhile.
        let mut after = pieces("bca");
        after[2].name = "another".into();
        after[2].copies = 3;
        assert_eq!(
            whose(&begun("abc").following(&pieces("abc"), &after)),
            whose(&begun("abc"))
        );
    }

    #[test]
    fn a_piece_that_comes_back_brings_its_progress_and_takes_none_away() {
        let before = begun("abc");
        // The middle piece was removed, then the last one worked on.
        let mut now = before.following(&pieces("abc"), &pieces("ac"));
        now.begin(id('c'), None, 1).round = 30;
        let again = now.taken_back(&pieces("ac"), &pieces("abc"), &before);
        assert_eq!(whose(&again), [(id('a'), 1), (id('b'), 2), (id('c'), 30)]);
        // Begun since, and not there then: gone with its piece.
        let fresh = begun("b").taken_back(&pieces("ab"), &pieces("a"), &Making::default());
        assert!(fresh.is_empty());
    }

    /// A bear: its ear and its hat have sizes of these names, its body has none.
    fn bear(ear: &[&str], hat: &[&str]) -> Vec<Piece> {
        let sizes = |names: &[&str]| -> Vec<Size> {
            names.iter().map(|&n| Size::new(n, SizeBy::Factor(1.5))).collect()
        };
        let mut pieces = pieces("ehb");
        pieces[0].sizes = sizes(ear);
        pieces[1].sizes = sizes(hat);
        pieces
    }

    /// Progress of pieces by their place in the bear; its round tells whose it was.
    fn at_sizes(list: &[(usize, Option<&str>, u32)]) -> Making {
        let mut making = Making::default();
        for &(place, size, round) in list {
            making.begin(pieces("ehb")[place].id, size, 1).round = round;
        }
        making
    }

    fn sizes_of(making: &Making) -> Vec<(usize, Option<&str>, u32)> {
        let bear = pieces("ehb");
        let place = |id| bear.iter().position(|piece| piece.id == id).expect("a part of it");
        let mut list: Vec<_> =
            making.at.iter().map(|p| (place(p.piece), p.size.as_deref(), p.round)).collect();
        list.sort_unstable();
        list
    }

    #[test]
    fn progress_stays_with_its_size_whatever_that_is_called() {
        let before = bear(&["S", "M"], &["M"]);
        let making = at_sizes(&[
            (0, None, 1),
            (0, Some("S"), 2),
            (0, Some("M"), 3),
            (1, Some("M"), 4),
            (2, Some("S"), 5),
            (2, Some("M"), 6),
        ]);
        let after = |ear: &[&str], hat: &[&str]| making.following(&before, &bear(ear, hat));
        assert_eq!(sizes_of(&after(&["S", "M", "L"], &["M"])), sizes_of(&making));
        // Nobody else has an S: the body's goes along.
        assert_eq!(
            sizes_of(&after(&["Small", "M"], &["M"])),
            [
                (0, None, 1),
                (0, Some("M"), 3),
                (0, Some("Small"), 2),
                (1, Some("M"), 4),
                (2, Some("M"), 6),
                (2, Some("Small"), 5),
            ]
        );
        // The hat has an M still: the body's stays.
        assert_eq!(
            sizes_of(&after(&["S", "Mid"], &["M"])),
            [
                (0, None, 1),
                (0, Some("Mid"), 3),
                (0, Some("S"), 2),
                (1, Some("M"), 4),
                (2, Some("M"), 6),
                (2, Some("S"), 5),
            ]
        );
        // No S any more, and M is no new name for it.
        let less = after(&["M"], &["M"]);
        assert_eq!(
            sizes_of(&less),
            [(0, None, 1), (0, Some("M"), 3), (1, Some("M"), 4), (2, Some("M"), 6)]
        );
        // The ear has no M of its own any more, but the hat has, and it is made for that.
        assert_eq!(sizes_of(&after(&["S"], &["M"])), sizes_of(&making));
        // The only owner of S goes.
        let gone = making.following(&before, &before[1..]);
        assert_eq!(sizes_of(&gone), [(1, Some("M"), 4), (2, Some("M"), 6)]);
    }

    #[test]
    fn a_size_that_comes_back_brings_its_progress_and_a_name_taken_back_takes_it_along() {
        let (with, without) = (bear(&["S", "M"], &[]), bear(&["M"], &[]));
        let before = at_sizes(&[(0, Some("S"), 2), (0, Some("M"), 3), (2, Some("S"), 4)]);
        let mut now = before.following(&with, &without);
        assert_eq!(sizes_of(&now), [(0, Some("M"), 3)]);
        now.begin(id('e'), Some("M"), 1).round = 9;
        let again = now.taken_back(&without, &with, &before);
        let all = [(0, Some("M"), 9), (0, Some("S"), 2), (2, Some("S"), 4)];
        assert_eq!(sizes_of(&again), all);
        assert_eq!(again.at.last().map(|p| p.round), Some(9), "still worked on last");
        let renamed = bear(&["Small", "M"], &[]);
        let mut now = before.following(&with, &renamed);
        now.begin(id('e'), Some("Small"), 1).round = 7;
        let again = now.taken_back(&renamed, &with, &before);
        let all = [(0, Some("M"), 3), (0, Some("S"), 7), (2, Some("S"), 4)];
        assert_eq!(sizes_of(&again), all);
    }

    #[test]
    fn a_name_typed_through_the_place_of_another_can_be_taken_back() {
        let (before, after) = (bear(&["S"], &["L"]), bear(&["L"], &["L"]));
        for order in
            [[(0, Some("S"), 2), (0, Some("L"), 3)], [(0, Some("L"), 3), (0, Some("S"), 2)]]
        {
            let making = at_sizes(&order);
            let through = making.following(&before, &after);
            assert_eq!(sizes_of(&through), [(0, Some("L"), 2)], "what is the size's own");
            let back = through.taken_back(&after, &before, &making);
            assert_eq!(sizes_of(&back).len(), 2, "{back:?}");
        }
    }
}
