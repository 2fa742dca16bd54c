//! Choices about the selected piece beyond its outline: rules, cloth, what holds it.

use std::ops::RangeInclusive;

use plumpline_core::piece::Packing;
use plumpline_core::{
    Band, Face, Hand, Hold, Kind, KindFrom, Loop, Piece, Rules, Spread, Swatches, Working,
};

/// A choice about the selected piece.
#[derive(Debug, Clone, PartialEq)]
pub enum Choice {
    /// What every round must keep to.
    Rules(Rules),
    /// How increases sit from round to round.
    Spread(Spread),
    /// Rounds that stay plain.
    Faces(Vec<Face>),
    /// Keeps the rounds from one to another plain, or lets them be shaped.
    Plain {
        /// First round.
        from: u32,
        /// Last round.
        to: u32,
        /// Whether they stay plain.
        on: bool,
    },
    /// Straight part of an oval body, mm.
    Straight(f64),
    /// Work the piece from its other end. Whatever belongs to a round goes along with it.
    Reverse {
        /// Rounds the piece has now.
        rounds: u32,
    },
    /// What holds the cloth at a knot.
    Hold {
        /// Index of the knot.
        knot: usize,
        /// What holds it.
        hold: Option<Hold>,
    },
    /// A card insert from a knot to the next, or none.
    Card {
        /// Index of the knot.
        knot: usize,
        /// Whether there is one.
        on: bool,
    },
    /// From this round on, up to where the kind changes next, work in this kind of stitch.
    Kind {
        /// First round.
        round: u32,
        /// The kind.
        kind: Kind,
    },
    /// Work this round into one loop only, or into both.
    Loop {
        /// The round.
        round: u32,
        /// The loop, if only one.
        only: Option<Loop>,
    },
    /// Swatches of other kinds of stitch.
    Swatches(Swatches),
    /// Spiral or joined rounds.
    Working(Working),
    /// The hand that holds the hook.
    Hand(Hand),
    /// How densely it is stuffed.
    Packing(Packing),
}

impl Choice {
    /// Makes the choice.
    pub(crate) fn make(self, piece: &mut Piece) {
        match self {
            Self::Rules(rules) => piece.rules = rules,
            Self::Spread(spread) => piece.spread = spread,
            Self::Faces(mut faces) => {
                faces.retain(|f| f.from_round >= 1 && f.from_round <= f.to_round);
                faces.sort_by_key(|f| (f.from_round, f.to_round));
                piece.faces = faces;
            }
            Self::Plain { from, to, on } => set_plain(piece, from..=to, on),
            Self::Straight(mm) if piece.outline.starts_closed() => {
                piece.straight_mm = (mm.clamp(0.0, 1000.0) * 10.0).round() / 10.0;
            }
            Self::Straight(_) => {}
            Self::Reverse { rounds } => reverse(piece, rounds),
            Self::Hold { knot, hold } => {
                if let Some(knot) = piece.outline.knots.get_mut(knot).filter(|k| !k.is_pole()) {
                    knot.hold = hold;
                }
            }
            Self::Card { knot, on } => {
                let knots = &mut piece.outline.knots;
                if knot + 1 < knots.len() {
                    knots[knot].card = on;
                }
            }
            Self::Kind { round, kind } => set_kind(piece, round, kind),
            Self::Loop { round, only } => {
                match only {
                    Some(only) => piece.loops.insert(round, only),
                    None => piece.loops.remove(&round),
                };
            }
            Self::Swatches(swatches) => piece.swatches = swatches,
            Self::Working(working) => piece.working = working,
            Self::Hand(hand) => piece.hand = hand,
            Self::Packing(packing) => piece.habits.stuffing_g_per_litre = packing,
        }
    }
}

/// Faces that meet become one; a face is cut in two where part of it is let go.
fn set_plain(piece: &mut Piece, rounds: RangeInclusive<u32>, on: bool) {
    let last = piece.faces.iter().map(|f| f.to_round).max().unwrap_or(0).max(*rounds.end());
    let plain: Vec<bool> = (0..=last + 1)
        .map(|r| if rounds.contains(&r) { on } else { piece.is_in_face(r) })
        .collect();
    piece.faces.clear();
    let mut from = None;
    for round in 1..=last + 1 {
        match (from, plain[round as usize]) {
            (None, true) => from = Some(round),
            (Some(from_round), false) => {
                piece.faces.push(Face { from_round, to_round: round - 1 });
                from = None;
            }
            _ => {}
        }
    }
}

fn set_kind(piece: &mut Piece, round: u32, kind: Kind) {
    piece.kinds.retain(|k| k.from_round != round);
    piece.kinds.push(KindFrom { from_round: round, kind });
    piece.kinds.sort_by_key(|k| k.from_round);
    // A change to the kind there already is, is none.
    let mut now = Kind::Single;
    piece.kinds.retain(|k| std::mem::replace(&mut now, k.kind) != k.kind);
}

/// The rounds at which `of` changes, beginning from `now`.
fn changes<T: PartialEq + Copy>(
    rounds: u32,
    mut now: T,
    of: impl Fn(u32) -> T,
) -> Vec<(u32, T)> {
    let mut list = Vec::new();
    for round in 1..=rounds {
        let next = of(round);
        if next != now {
            list.push((round, next));
            now = next;
        }
    }
    list
}

fn reverse(piece: &mut Piece, rounds: u32) {
    let turned = |round: u32| (rounds + 1).checked_sub(round).filter(|&r| r > 0);
    let bands = changes(rounds, 0, |r| piece.yarn_of_round(rounds + 1 - r));
    let kinds = changes(rounds, Kind::Single, |r| piece.kind_of_round(rounds + 1 - r));
    piece.bands =
        bands.into_iter().map(|(from_round, yarn)| Band { from_round, yarn }).collect();
    piece.kinds =
        kinds.into_iter().map(|(from_round, kind)| KindFrom { from_round, kind }).collect();
    // A pin holds the upper edge of its round, which is the lower edge of the one above it.
    let edge = |round: u32| rounds.checked_sub(round).filter(|&r| r > 0);
    piece.pins = piece.pins.iter().filter_map(|(&r, &n)| Some((edge(r)?, n))).collect();
    piece.loops = piece.loops.iter().filter_map(|(&r, &l)| Some((turned(r)?, l))).collect();
    let face = |f: &Face| {
        let from_round = turned(f.to_round.min(rounds))?;
        Some(Face { from_round, to_round: turned(f.from_round)? })
    };
    piece.faces = piece.faces.iter().filter_map(face).collect();
    piece.faces.sort_by_key(|f| f.from_round);
    piece.paint = piece.paint.reversed(rounds);
    piece.outline = piece.outline.reversed();
    if !piece.outline.starts_closed() {
        piece.straight_mm = 0.0;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;

    fn sample() -> Piece {
        Document::sample().piece().clone()
    }

    #[test]
    fn a_kind_runs_to_where_it_changes_next_and_back_is_no_trace() {
        let mut piece = sample();
        Choice::Kind { round: 9, kind: Kind::Double }.make(&mut piece);
        Choice::Kind { round: 5, kind: Kind::HalfDouble }.make(&mut piece);
        let kinds: Vec<Kind> = [4, 5, 8, 9, 30].map(|r| piece.kind_of_round(r)).into();
        use Kind::{Double, HalfDouble, Single};
        assert_eq!(kinds, [Single, HalfDouble, HalfDouble, Double, Double]);
        // Now one run, which changes as one.
        Choice::Kind { round: 9, kind: HalfDouble }.make(&mut piece);
        assert_eq!(piece.kinds.len(), 1);
        Choice::Kind { round: 5, kind: Single }.make(&mut piece);
        assert!(piece.kinds.is_empty());
    }

    #[test]
    fn what_belongs_to_a_round_goes_along_when_the_piece_is_turned() {
        let mut piece = sample();
        piece.pins.insert(10, 45);
        piece.loops.insert(3, Loop::Back);
        piece.faces.push(Face { from_round: 12, to_round: 15 });
        let was = piece.clone();
        Choice::Reverse { rounds: 35 }.make(&mut piece);
        assert_eq!(piece.pins.get(&25), Some(&45));
        assert_eq!(piece.loops.get(&33), Some(&Loop::Back));
        assert_eq!(piece.faces, [Face { from_round: 21, to_round: 24 }]);
        assert_eq!(piece.yarn_of_round(35), was.yarn_of_round(1));
        assert_eq!(piece.yarn_of_round(1), was.yarn_of_round(35));
        Choice::Reverse { rounds: 35 }.make(&mut piece);
        assert_eq!(piece.outline, was.outline);
        assert_eq!((&piece.pins, &piece.faces), (&was.pins, &was.faces));
    }

    #[test]
    fn faces_join_and_part() {
        let mut piece = sample();
        for (from, to, on) in [(5, 6, true), (7, 9, true), (12, 12, true), (8, 8, false)] {
            Choice::Plain { from, to, on }.make(&mut piece);
        }
        let faces: Vec<_> = piece.faces.iter().map(|f| (f.from_round, f.to_round)).collect();
        assert_eq!(faces, [(5, 7), (9, 9), (12, 12)]);
        assert!(piece.is_in_face(6) && !piece.is_in_face(8));
    }

    #[test]
    fn nothing_holds_a_pole_and_no_card_lies_beyond_the_end() {
        let mut piece = sample();
        let last = piece.outline.knots.len() - 1;
        Choice::Hold { knot: 0, hold: Some(Hold::Sewn) }.make(&mut piece);
        Choice::Card { knot: last, on: true }.make(&mut piece);
        assert_eq!(piece, sample());
    }
}
