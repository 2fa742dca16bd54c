//! What belongs to single rounds, carried to another number of rounds: each to the same share
//! of the working. Nothing vanishes unsaid.

use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

use crate::piece::cloth::{KindFrom, Loop};
use crate::piece::{Band, Face, Piece};
use crate::sentence::Sentence;

/// A piece held in more than this share of its rounds says nothing beyond its counts, so
/// another size of it is planned freely.
const MOSTLY_PINNED: f64 = 0.5;

/// The round of `to` at the same share of the working as round `round` of `from`, from 1.
pub(super) fn round_for(round: u32, from: u32, to: u32) -> u32 {
    if round <= 1 || round >= from {
        return if round <= 1 { 1 } else { to };
    }
    let middle = (f64::from(round) - 0.5) / f64::from(from) * f64::from(to);
    (middle.floor() as u32 + 1).clamp(1, to)
}

/// The first round of `to` above the edge under round `first` of `from`.
fn first_for(first: u32, from: u32, to: u32) -> u32 {
    let edge = f64::from(first.saturating_sub(1)) / f64::from(from) * f64::from(to);
    (edge.round() as u32 + 1).max(1)
}

/// `piece`, which was worked in `from` rounds, with its rounds' choices carried to `to`
/// rounds; pinned counts times `times`. Returns what has to be said.
pub(super) fn carry(piece: &mut Piece, from: u32, to: u32, times: f64) -> Vec<Sentence> {
    let mut notes = Vec::new();
    if from == to && times == 1.0 {
        return notes;
    }
    pins(piece, from, to, times, &mut notes);
    let faces = piece.faces.iter().map(|face| {
        let (first, last) = span(face.from_round, face.to_round.min(from), from, to);
        Face { from_round: first, to_round: last }
    });
    piece.faces = faces.collect();
    piece.bands.sort_by_key(|band| band.from_round);
    let to_starts = starts(piece.bands.iter().map(|b| b.from_round), from, to);
    let bands = piece.bands.drain(..).zip(&to_starts);
    piece.bands = bands.filter_map(|(b, at)| Some(Band { from_round: (*at)?, ..b })).collect();
    notes.extend(lost(&to_starts, "yarn_changes_lost"));
    piece.kinds.sort_by_key(|kind| kind.from_round);
    let to_starts = starts(piece.kinds.iter().map(|k| k.from_round), from, to);
    let kinds = piece.kinds.drain(..).zip(&to_starts);
    piece.kinds =
        kinds.filter_map(|(k, at)| Some(KindFrom { from_round: (*at)?, ..k })).collect();
    notes.extend(lost(&to_starts, "stitch_changes_lost"));
    loops(piece, from, to, &mut notes);
    piece.paint = piece.paint.carried(from, to);
    notes
}

/// The rounds of `to` for rounds `first` to `last` of `from`: at least one.
fn span(first: u32, last: u32, from: u32, to: u32) -> (u32, u32) {
    let start = first_for(first, from, to).min(to);
    let end = first_for(last + 1, from, to).saturating_sub(1).min(to);
    (start, end.max(start))
}

fn pins(piece: &mut Piece, from: u32, to: u32, times: f64, notes: &mut Vec<Sentence>) {
    if piece.pins.is_empty() {
        return;
    }
    if piece.pins.len() as f64 > MOSTLY_PINNED * f64::from(from) {
        let many = piece.pins.len();
        piece.pins.clear();
        let values = [("many", (many as u32).into()), ("from", from.into())];
        notes.push(Sentence::note("pins_left_out", values));
        return;
    }
    let multiple = piece.rules.multiple_of.max(1);
    let mut carried = BTreeMap::new();
    for (&round, &count) in &piece.pins {
        if round > from {
            continue; // It was met by nothing before, either.
        }
        // The ring and the gathered round are as small in any size.
        let end = (round == 1 && piece.outline.starts_closed())
            || (round == from && piece.outline.finishes_closed());
        let times = if end { 1.0 } else { times };
        let unit = if count.is_multiple_of(multiple) { multiple } else { 1 };
        let scaled = f64::from(count) * times / f64::from(unit);
        let scaled = (scaled.round() as u32).max(1) * unit;
        let at = round_for(round, from, to);
        match carried.entry(at) {
            Entry::Vacant(free) => {
                free.insert(scaled);
            }
            Entry::Occupied(_) => {
                notes.push(Sentence::note("pin_falls_on_another", [("round", round.into())]));
            }
        }
    }
    piece.pins = carried;
}

/// Where what starts at these rounds of `from`, in order, starts in `to`; each keeps at least
/// one round before the next where there is room, the others find none.
fn starts(rounds: impl Iterator<Item = u32>, from: u32, to: u32) -> Vec<Option<u32>> {
    let mut last = 0;
    rounds
        .map(|round| {
            let at = first_for(round, from, to).min(to).max(last + 1);
            let found = round <= from && at <= to;
            if found {
                last = at;
            }
            found.then_some(at)
        })
        .collect()
}

fn lost(starts: &[Option<u32>], note: &'static str) -> Option<Sentence> {
    let lost = starts.iter().filter(|at| at.is_none()).count() as u32;
    (lost > 0).then(|| Sentence::note(note, [("lost", lost.into())]))
}

/// A single round of one loop stays single; a longer stretch grows with the piece.
fn loops(piece: &mut Piece, from: u32, to: u32, notes: &mut Vec<Sentence>) {
    let mut runs: Vec<(u32, u32, Loop)> = Vec::new();
    for (&round, &only) in piece.loops.range(..=from) {
        match runs.last_mut() {
            Some((_, last, same)) if *last + 1 == round && *same == only => *last = round,
            _ => runs.push((round, round, only)),
        }
    }
    let mut carried = BTreeMap::new();
    for (first, last, only) in runs {
        let (start, end) = match first == last {
            true => (round_for(first, from, to), round_for(first, from, to)),
            false => span(first, last, from, to),
        };
        let lost = (start..=end).filter(|k| carried.contains_key(k)).count();
        if lost as u32 == end - start + 1 {
            notes.push(Sentence::note("loops_lost", [("round", first.into())]));
        }
        for k in start..=end {
            carried.entry(k).or_insert(only);
        }
    }
    piece.loops = carried;
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Gauge, Knot, Outline};

    fn piece() -> Piece {
        let knots = vec![Knot::new(0.0, 0.0), Knot::new(40.0, 40.0), Knot::new(0.0, 80.0)];
        Piece::new("Ball", Outline { knots }, Gauge::default())
    }

    #[test]
    fn ends_stay_ends_and_the_middle_stays_the_middle() {
        for to in 2..60 {
            assert_eq!(round_for(1, 20, to), 1);
            assert_eq!(round_for(20, 20, to), to);
            for k in 1..20 {
                let (a, b) = (round_for(k, 20, to), round_for(k + 1, 20, to));
                assert!(a <= b && b <= to);
            }
        }
        for k in 1..=20 {
            assert_eq!(round_for(k, 20, 20), k);
        }
    }

    #[test]
    fn a_stripe_keeps_a_round_while_there_is_room_and_is_missed_aloud() {
        let mut small = piece();
        let band = |from_round, yarn| Band { from_round, yarn };
        small.bands = vec![band(1, 0), band(20, 1), band(21, 0), band(39, 1)];
        let notes = carry(&mut small, 40, 8, 0.2);
        let starts: Vec<u32> = small.bands.iter().map(|b| b.from_round).collect();
        assert_eq!(starts, [1, 5, 6, 8]);
        assert!(notes.is_empty(), "{notes:?}");
        let mut tiny = piece();
        tiny.bands = (1..=10).map(|k| band(k, k as usize % 2)).collect();
        let notes = carry(&mut tiny, 40, 4, 0.1);
        assert_eq!(tiny.bands.len(), 4);
        assert!(notes[0].to_string().contains("6 of the changes of yarn"), "{notes:?}");
    }

    #[test]
    fn pins_faces_and_loops_go_to_their_share_of_the_working() {
        let mut grown = piece();
        grown.pins = BTreeMap::from([(1, 6), (10, 30)]);
        grown.faces = vec![Face { from_round: 9, to_round: 12 }];
        grown.loops = BTreeMap::from([(5, Loop::Back), (11, Loop::Front), (12, Loop::Front)]);
        let notes = carry(&mut grown, 20, 40, 2.0);
        assert!(notes.is_empty(), "{notes:?}");
        assert_eq!(grown.pins, BTreeMap::from([(1, 6), (20, 60)]));
        assert_eq!(grown.faces, [Face { from_round: 17, to_round: 24 }]);
        let back: Vec<u32> =
            grown.loops.iter().filter(|l| *l.1 == Loop::Back).map(|l| *l.0).collect();
        assert_eq!(back, [10], "a ridge is one round in any size");
        let front: Vec<u32> =
            grown.loops.iter().filter(|l| *l.1 == Loop::Front).map(|l| *l.0).collect();
        assert_eq!(front, [21, 22, 23, 24]);
    }
}
