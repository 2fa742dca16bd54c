//! What a person counts of a footprint: rounds and stitches.

use super::curve::Footprint;
use crate::toy::solid::Solid;

/// A footprint in whole rounds and stitches of what carries the part.
#[derive(Debug, Clone, PartialEq)]
pub struct Span {
    /// First and last round that it covers; where it lies between two rounds, the later and
    /// then the earlier of these.
    pub rounds: (u32, u32),
    /// Stitches it is wide in each round it covers; all of them where it goes around the axis.
    pub along: Vec<Along>,
    /// Stitches it is wide at its widest.
    pub widest: f64,
    /// Stitches between it and the nearest other copy, where they come nearest; none where
    /// there is none beside it.
    pub apart: Option<Apart>,
    /// Whether it goes around the axis.
    pub around: bool,
}

/// What a footprint covers of a round.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Along {
    /// The round.
    pub round: u32,
    /// Stitches.
    pub stitches: f64,
}

/// How near a footprint comes to another copy's.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Apart {
    /// Stitches between them; negative where they overlap.
    pub stitches: f64,
    /// In this round they come nearest.
    pub round: u32,
}

/// Rounds and stitches of `footprint` on `body`; `others` are the footprints of the other
/// copies.
pub fn span(body: &Solid, footprint: &Footprint, others: &[Footprint]) -> Span {
    let (low, high) = footprint.rounds();
    let most = body.rounds() as f64;
    let first = low.round().clamp(0.0, most - 1.0) as u32 + 1;
    let last = high.round().clamp(0.0, most) as u32;
    let around = footprint.winding() != 0;
    let wide = |round: f64| {
        let count = body.stitches(round);
        match footprint.turns_at(round) {
            _ if around => count,
            Some((from, to)) => (to - from) * count,
            None => 0.0,
        }
    };
    let along: Vec<Along> = (first..=last)
        .map(|round| {
            let edges = (f64::from(round) - 1.0, f64::from(round));
            let stitches = match footprint.closed {
                // The middle of the round, where that is covered, else as near as it comes.
                true => wide((0.5 * (edges.0 + edges.1)).clamp(low, high)),
                false => footprint.turns_between(edges) * body.stitches(edges.1),
            };
            Along { round, stitches }
        })
        .collect();
    let widest = match footprint.closed {
        true => footprint.curve.iter().map(|on| wide(on.round)).fold(0.0, f64::max),
        false => footprint.turns_between((low, high)) * body.stitches(0.5 * (low + high)),
    };
    let apart = others
        .iter()
        .filter_map(|other| nearest(body, footprint, other))
        .min_by(|a, b| a.stitches.total_cmp(&b.stitches));
    Span { rounds: (first, last.max(first - 1)), along, widest, apart, around }
}

/// Where two footprints come nearest in one round, counted along it.
fn nearest(body: &Solid, one: &Footprint, other: &Footprint) -> Option<Apart> {
    if one.winding() != 0 || other.winding() != 0 {
        return None;
    }
    let rounds = one.curve.iter().chain(&other.curve).map(|on| on.round);
    let apart = |round: f64| {
        let (a, b) = (one.turns_at(round)?, other.turns_at(round)?);
        let gap = |shift: f64| (b.0 + shift - a.1).max(a.0 - b.1 - shift);
        let shift = (0.5 * (a.0 + a.1) - 0.5 * (b.0 + b.1)).round();
        let turns = [-1.0, 0.0, 1.0].map(|by| gap(shift + by));
        let least = turns.into_iter().fold(f64::INFINITY, f64::min);
        Some(Apart { stitches: least * body.stitches(round), round: body.number(round) })
    };
    rounds.filter_map(apart).min_by(|a, b| a.stitches.total_cmp(&b.stitches))
}

impl Footprint {
    /// Turns that the curve covers between two rounds, from the least to the greatest.
    fn turns_between(&self, (from, to): (f64, f64)) -> f64 {
        let inside = self.curve.iter().filter(|on| (from..=to).contains(&on.round));
        let edges = [from, to].into_iter().filter_map(|round| self.turns_at(round));
        let all = inside.map(|on| (on.turn, on.turn)).chain(edges);
        let ends = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), (a, b)| {
            (low.min(a), high.max(b))
        });
        (ends.1 - ends.0).max(0.0)
    }

    /// The footprint of the mirror image.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        let mut mirrored = self.clone();
        mirrored.curve.iter_mut().for_each(|on| on.turn = -on.turn);
        mirrored
    }

    /// The footprint of a copy so many turns on.
    #[must_use]
    pub fn turned(&self, by: f64) -> Self {
        let mut turned = self.clone();
        turned.curve.iter_mut().for_each(|on| on.turn += by);
        turned
    }
}
