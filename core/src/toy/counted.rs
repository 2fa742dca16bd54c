//! Places in whole rounds and stitches, as a person counts and moves them; what is saved is
//! shares.

use super::lean::between;
use super::solid::Solid;
use crate::project::toy::part::Place;

/// A place in whole rounds and stitches.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WholePlace {
    /// The round, from 1; of what goes through the cloth, the one after which it does.
    pub round: u32,
    /// Stitches from the front, the way the rounds run.
    pub stitch: i32,
}

/// How places of a part are counted: pieces lie on a round, small things go through the cloth
/// between two.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CountedBy {
    /// By the round that the middle lies on.
    Round,
    /// By the round after which it goes through.
    Gap,
}

impl CountedBy {
    /// The nearest whole place to `at` on `solid`.
    pub fn count(self, solid: &Solid, at: Place) -> WholePlace {
        let along = solid.round_at(at.along);
        let round = match self {
            Self::Round => solid.number(along),
            Self::Gap => between(solid, along).min(self.most(solid)),
        };
        WholePlace {
            round,
            stitch: (nearest(at.around) * self.stitches(solid, round)).round() as i32,
        }
    }

    /// The last round that can be counted.
    pub fn most(self, solid: &Solid) -> u32 {
        let rounds = solid.rounds().max(1) as u32;
        match self {
            Self::Round => rounds,
            Self::Gap => rounds.saturating_sub(1).max(1),
        }
    }

    /// Stitches once around where `round` is counted.
    pub fn stitches(self, solid: &Solid, round: u32) -> f64 {
        solid.stitches(f64::from(round)).max(1.0)
    }

    /// `at` moved to this round, as far around as it was.
    pub fn on_round(self, solid: &Solid, at: Place, round: u32) -> Place {
        let round = f64::from(round.clamp(1, self.most(solid)));
        let along = match self {
            Self::Round => round - 0.5,
            Self::Gap => round,
        };
        Place { along: solid.share_at(along), ..at }
    }

    /// `at` moved to so many whole stitches from the front, on the round it is on.
    pub fn on_stitch(self, solid: &Solid, at: Place, stitch: i32) -> Place {
        let all = self.stitches(solid, self.count(solid, at).round);
        Place { around: nearest(f64::from(stitch) / all), ..at }
    }

    /// `at` moved by whole rounds and stitches; it comes to lie on whole ones.
    pub fn stepped(self, solid: &Solid, at: Place, rounds: i32, stitches: i32) -> Place {
        let mut at = at;
        if rounds != 0 {
            let now = i64::from(self.count(solid, at).round) + i64::from(rounds);
            at = self.on_round(solid, at, now.clamp(1, i64::from(self.most(solid))) as u32);
        }
        if stitches != 0 {
            let now = self.count(solid, at).stitch;
            at = self.on_stitch(solid, at, now.saturating_add(stitches));
        }
        at
    }

    /// The whole place nearest to where `round` (from the start) and `turn` (from the front)
    /// are.
    pub fn nearest(self, solid: &Solid, round: f64, turn: f64) -> Place {
        let at = Place { along: solid.share_at(round), around: nearest(turn) };
        let WholePlace { round, stitch } = self.count(solid, at);
        let at = self.on_round(solid, at, round);
        self.on_stitch(solid, at, stitch)
    }
}

/// A turn as the nearest way from the front, −½ to ½.
fn nearest(turn: f64) -> f64 {
    turn - turn.round()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::piece::starter::Starter;
    use crate::{Gauge, plan};

    fn ball() -> Solid {
        let starter = Starter::Ball;
        let piece = starter.piece(&starter.usual(), Gauge::default()).expect("a ball");
        Solid::new(&piece, &plan(&piece).expect("a plan"))
    }

    #[test]
    fn every_whole_place_is_counted_as_itself() {
        let solid = ball();
        for by in [CountedBy::Round, CountedBy::Gap] {
            for round in 1..=by.most(&solid) {
                let all = by.stitches(&solid, round) as i32;
                for stitch in -(all - 1) / 2..=(all - 1) / 2 {
                    let at = by.on_round(&solid, Place { along: 0.5, around: 0.0 }, round);
                    let at = by.on_stitch(&solid, at, stitch);
                    assert_eq!(by.count(&solid, at), WholePlace { round, stitch }, "{by:?}");
                }
            }
        }
    }

    #[test]
    fn a_step_there_and_back_is_none_and_the_ends_hold() {
        let solid = ball();
        let by = CountedBy::Round;
        let at = by.nearest(&solid, 6.3, 0.21);
        let there = by.stepped(&solid, at, 0, 3);
        assert_eq!(by.count(&solid, there).stitch, by.count(&solid, at).stitch + 3);
        assert_eq!(by.stepped(&solid, there, 0, -3), at);
        let up = by.stepped(&solid, at, 2, 0);
        assert_eq!(by.count(&solid, up).round, by.count(&solid, at).round + 2);
        assert_eq!(up.around, at.around, "a round on, it is as far around");
        let last = by.stepped(&solid, at, 1000, 0);
        assert_eq!(by.count(&solid, last).round, by.most(&solid));
        assert_eq!(by.count(&solid, by.stepped(&solid, at, -1000, 0)).round, 1);
    }
}
