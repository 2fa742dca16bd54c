//! Stitches as a person counts them: from the first stitch of a round, allowing for the lean of
//! the spiral.

use super::solid::{OnCloth, Solid};
use crate::project::toy::part::BodyFront;

/// The lean of a spiral that nobody has measured, stitches a round. An assumption: see
/// [`crate::piece::Rules::spiral_drift`].
pub const USUAL_LEAN: f64 = 0.17;

/// The plane of a part's front through its axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Meridian {
    /// Turns from the first stitch of round 1.
    pub turns: f64,
}

impl Meridian {
    /// The plane through the stitch that `front` chooses.
    pub fn new(solid: &Solid, front: BodyFront) -> Self {
        let number = solid.number(solid.round_at(front.along));
        Self { turns: solid.begins(number) + front.around }
    }

    /// The place counted in stitches from the first stitch of round `number`, from 0 to the
    /// stitches of that round: 11.5 is the middle of the twelfth.
    pub fn stitch(&self, solid: &Solid, number: u32, turn: f64) -> f64 {
        let turns = (self.turns + turn - solid.begins(number)).rem_euclid(1.0);
        turns * solid.stitches(f64::from(number))
    }

    /// Between which round and the next a place is, and after which stitch of that round; 0 is
    /// before its first.
    pub(super) fn after(&self, solid: &Solid, on: OnCloth) -> (u32, u32) {
        let round = between(solid, on.round);
        let count = solid.stitches(f64::from(round)).round().max(1.0);
        (round, self.stitch(solid, round, on.turn).round().rem_euclid(count) as u32)
    }

    /// The turn, from half a turn before the front to half a turn after it, at which so many
    /// stitches of round `number` are worked: [`Self::stitch`] the other way round.
    pub fn turn(&self, solid: &Solid, number: u32, stitch: f64) -> f64 {
        let count = solid.stitches(f64::from(number)).max(1.0);
        let turn = stitch / count + solid.begins(number) - self.turns;
        turn - turn.round()
    }
}

/// Between which rounds a place is, where it is nearer to their edge than to the middle of a
/// round: the number of the lower round.
pub fn between(solid: &Solid, round: f64) -> u32 {
    (round.round().max(1.0) as u32).min(solid.rounds().max(1) as u32)
}

/// Where two things that mirror one another are put between two rounds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pair {
    /// They go between this round and the next.
    pub round: u32,
    /// Stitches between them, across the front.
    pub apart: u32,
    /// After this stitch of the round, counted from its first, the one that comes first when
    /// the rounds are worked; 0 is before the first stitch.
    pub after: (u32, u32),
}

/// Whole stitches for two places `on` and its mirror image: as many between them as there are,
/// to the nearest, and their middle as near to the front as whole stitches allow, within half
/// of one.
pub fn pair(solid: &Solid, front: Meridian, on: OnCloth) -> Pair {
    let round = between(solid, on.round);
    let count = solid.stitches(f64::from(round)).round().max(1.0);
    let side = (on.turn - on.turn.round()).abs();
    let apart = (2.0 * side * count).round().min(count);
    let middle = front.stitch(solid, round, 0.0);
    let first = (middle - 0.5 * apart).round();
    let after = |stitch: f64| stitch.rem_euclid(count) as u32;
    Pair { round, apart: apart as u32, after: (after(first), after(first + apart)) }
}
