//! The rounds that a step speaks of, worked out for the maker's own stitches.

use std::f64::consts::{PI, TAU};

use serde::Deserialize;

use crate::error::{Error, Result};
use crate::extent::StitchSize;
use crate::lesson::net::{Net, NetEnd};
use crate::lesson::relax::Relaxation;
use crate::piece::Piece;
use crate::piece::cloth::{Kind, KindFrom};
use crate::piece::gauge::Gauge;
use crate::piece::given::{Given, Start};
use crate::piece::outline::{Knot, Outline};
use crate::plan::bend::FLAT_BAND;
use crate::plan::plan;

/// Most rounds of a sample.
const MOST_ROUNDS: u32 = 120;

/// Most stitches around a sample.
const MOST_AROUND: u32 = 2000;

/// What a circle gains in every round.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum SampleGain {
    /// So many stitches.
    Fixed(u32),
    /// The most that still cup.
    Short,
    /// About half of what lies flat.
    Half,
}

/// How the rounds of a sample follow from a stitch.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum SampleRule {
    /// A circle that gains the same in every round.
    Steady {
        /// Stitches gained in each.
        gain: SampleGain,
        /// Rounds.
        rounds: u32,
        /// What it is worked in.
        kind: Kind,
    },
    /// A circle that stays as near flat as whole stitches do, 2πh/w a round.
    Level {
        /// Rounds.
        rounds: u32,
    },
    /// A stuffed ball: the sine of the way from end to end.
    Ball {
        /// Stitches around its middle.
        middle: u32,
    },
    /// A flat bottom and an even side.
    Cylinder {
        /// Rounds of the bottom, as near flat as whole stitches do.
        bottom: u32,
        /// Rounds of the side.
        side: u32,
    },
    /// A tube that draws in and opens again.
    Neck {
        /// Stitches around its edges.
        edge: u32,
        /// Stitches lost in each round down to the waist, gained in each round after.
        change: u32,
        /// Rounds to the waist, and as many after.
        rounds: u32,
    },
    /// A circle of the hyperbolic plane, 2πR·sinh(s/R), whose radius R is such that far from
    /// the middle one stitch in so many is an increase, R = h/ln((n+1)/n): the rule of
    /// Henderson and Taimina, *Crocheting the Hyperbolic Plane*, Mathematical Intelligencer
    /// 23(2), 2001, 17–28.
    Hyperbolic {
        /// Stitches to an increase, n.
        every: u32,
        /// Rounds.
        rounds: u32,
    },
}

/// What of a sample a learner can change.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum KnobOf {
    /// Stitches gained in every round.
    Gain,
    /// Stitches around the middle of a ball.
    Middle,
    /// Rounds of a cylinder's side.
    Side,
    /// Stitches by which each round of a neck changes.
    Change,
    /// Stitches to an increase.
    Every,
}

/// A whole number that a learner can change, and from where to where.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SampleKnob {
    /// What it is.
    pub of: KnobOf,
    /// Least value.
    pub low: u32,
    /// Largest value.
    pub high: u32,
    /// What it is now; none where rounds differ.
    pub value: Option<u32>,
}

/// Rounds that can be planned, let go and written.
#[derive(Debug, Clone, PartialEq)]
pub struct LessonSample {
    /// What it is worked on.
    pub start: Start,
    /// Stitches of every round.
    pub counts: Vec<u32>,
    /// What it is worked in.
    pub kind: Kind,
    /// Whether it is drawn shut and stuffed; otherwise it is a piece of cloth.
    pub stuffed: bool,
}

impl SampleRule {
    /// What it is worked in.
    pub fn kind(self) -> Kind {
        match self {
            Self::Steady { kind, .. } => kind,
            _ => Kind::Single,
        }
    }

    /// The size of its stitches in `gauge`, taller ones as tall as they are taken to be.
    pub fn stitch_mm(self, gauge: Gauge) -> StitchSize {
        let StitchSize { width, height } = gauge.stitch_size();
        StitchSize { width, height: height * self.kind().default_height() }
    }

    /// How many stitches a round gains where its cloth lies flat, 2πh/w.
    pub fn flat(self, gauge: Gauge) -> f64 {
        flat_of(self.stitch_mm(gauge))
    }

    /// What of it a learner can change, in stitches of `gauge`.
    pub fn knob(self, gauge: Gauge) -> SampleKnob {
        let flat = self.flat(gauge);
        // From a cone to half as much again as lies flat: beyond that cloth meets itself.
        let most = (1.5 * flat).ceil().max(8.0) as u32;
        let gain = |value| SampleKnob { of: KnobOf::Gain, low: 3, high: most, value };
        match self {
            Self::Steady { .. } => gain(self.counts(flat).first().copied()),
            Self::Level { .. } => gain(None),
            Self::Ball { middle } => {
                SampleKnob { of: KnobOf::Middle, low: 12, high: 60, value: Some(middle) }
            }
            Self::Cylinder { side, .. } => {
                SampleKnob { of: KnobOf::Side, low: 1, high: 20, value: Some(side) }
            }
            Self::Neck { edge, change, rounds } => {
                // Enough stitches stay at the waist for a round.
                let most = (edge.saturating_sub(6) / rounds.max(1)).max(1);
                SampleKnob { of: KnobOf::Change, low: 1, high: most, value: Some(change) }
            }
            Self::Hyperbolic { every, .. } => {
                SampleKnob { of: KnobOf::Every, low: 2, high: 12, value: Some(every) }
            }
        }
    }

    /// The same with its knob at `value`: a circle that lay flat gains that much in every round
    /// then.
    #[must_use]
    pub fn with_knob(self, value: u32) -> Self {
        match self {
            Self::Steady { rounds, kind, .. } => {
                Self::Steady { gain: SampleGain::Fixed(value), rounds, kind }
            }
            Self::Level { rounds } => {
                Self::Steady { gain: SampleGain::Fixed(value), rounds, kind: Kind::Single }
            }
            Self::Ball { .. } => Self::Ball { middle: value },
            Self::Cylinder { bottom, .. } => Self::Cylinder { bottom, side: value },
            Self::Neck { edge, rounds, .. } => Self::Neck { edge, change: value, rounds },
            Self::Hyperbolic { rounds, .. } => Self::Hyperbolic { every: value, rounds },
        }
    }

    /// Its rounds in stitches of this size.
    ///
    /// # Errors
    /// Of fewer than 2 or more than 120 rounds, of more than 2000 stitches around, and where no
    /// rounds follow from it.
    pub fn sample(self, stitch_mm: StitchSize) -> Result<LessonSample> {
        let counts = self.counts(flat_of(stitch_mm));
        let start = match self {
            Self::Neck { edge, .. } => Start::Chain(edge),
            _ => Start::Ring,
        };
        let most = counts.iter().copied().max().unwrap_or(0);
        if counts.len() < 2 || counts.len() > MOST_ROUNDS as usize || most > MOST_AROUND {
            return Err(Error::new(
                "lesson, sample",
                format!("{} rounds of up to {most} stitches follow from it", counts.len()),
                format!("2 to {MOST_ROUNDS} rounds of up to {MOST_AROUND} can be shown"),
            ));
        }
        Given::of_counts(start, &counts).validate()?;
        let stuffed = matches!(self, Self::Ball { .. });
        Ok(LessonSample { start, counts, kind: self.kind(), stuffed })
    }

    /// Its rounds in stitches of `gauge`, taller ones as tall as they are taken to be.
    ///
    /// # Errors
    /// As [`SampleRule::sample`] and [`Gauge::validate`].
    pub fn at(self, gauge: Gauge) -> Result<LessonSample> {
        gauge.validate()?;
        self.sample(self.stitch_mm(gauge))
    }

    /// Stitches of every round where `flat` a round lie flat. What would be more than a sample
    /// may have is cut off, so that it is refused.
    fn counts(self, flat: f64) -> Vec<u32> {
        let level = |rounds: u32| doubled((1..=rounds).map(move |k| flat * f64::from(k)));
        match self {
            Self::Steady { gain, rounds, .. } => {
                let gain = match gain {
                    SampleGain::Fixed(gain) => gain,
                    SampleGain::Short => ((flat - FLAT_BAND).ceil() - 1.0).max(3.0) as u32,
                    SampleGain::Half => (0.5 * flat).round().max(3.0) as u32,
                };
                (1..=rounds.min(MOST_ROUNDS + 1)).map(|k| gain.saturating_mul(k)).collect()
            }
            Self::Level { rounds } => level(rounds.min(MOST_ROUNDS + 1)),
            Self::Ball { middle } => {
                let around = f64::from(middle.min(MOST_AROUND + 1));
                // Half a circle is πR long and 2πR around: N w/2h rounds, the last one drawn up.
                let rounds =
                    (PI * around / flat).round().clamp(3.0, f64::from(MOST_ROUNDS + 2));
                let sine = |k: u32| around * (PI * f64::from(k) / rounds).sin();
                doubled((1..rounds as u32).map(sine))
            }
            Self::Cylinder { bottom, side } => {
                let mut counts = level(bottom.min(MOST_ROUNDS + 1));
                let last = counts.last().copied().unwrap_or(0);
                counts.extend(std::iter::repeat_n(last, side.min(MOST_ROUNDS + 1) as usize));
                counts
            }
            Self::Neck { edge, change, rounds } => {
                let rounds = rounds.min(MOST_ROUNDS + 1);
                let at = |k: u32| edge.saturating_sub(change.saturating_mul(k));
                (1..=rounds).chain((0..rounds).rev()).map(at).collect()
            }
            Self::Hyperbolic { every, rounds } => {
                let radius = 1.0 / growth(every);
                let around = |k: u32| flat * radius * (f64::from(k) / radius).sinh();
                let counts = (1..=rounds.min(MOST_ROUNDS + 1)).map(around);
                doubled(counts.map(|n| n.min(f64::from(MOST_AROUND + 1))))
            }
        }
    }
}

/// 2πh/w: what a round of stitches of this size gains where it lies flat.
fn flat_of(stitch_mm: StitchSize) -> f64 {
    TAU * stitch_mm.height / stitch_mm.width
}

/// ln((n+1)/n): the height of a round over the radius of a hyperbolic plane one stitch in
/// `every` of which is an increase.
pub fn growth(every: u32) -> f64 {
    let n = f64::from(every.max(1));
    ((n + 1.0) / n).ln()
}

/// Whole stitches nearest to `ideal`, none more than double or less than half the one before.
fn doubled(ideal: impl Iterator<Item = f64>) -> Vec<u32> {
    let mut below: Option<u32> = None;
    ideal
        .map(|n| {
            let nearest = n.round().max(3.0) as u32;
            let count = below.map_or(nearest, |b| nearest.clamp(b.div_ceil(2), 2 * b));
            below = Some(count);
            count
        })
        .collect()
}

impl LessonSample {
    /// Stitches in it.
    pub fn stitches(&self) -> u32 {
        self.counts.iter().sum()
    }

    /// It as a piece in `piece`'s cloth, to be planned, written and printed.
    pub fn piece(&self, name: &str, gauge: Gauge) -> Piece {
        let most = self.counts.iter().copied().max().unwrap_or(1);
        let radius = f64::from(most) * gauge.stitch_width_mm() / TAU;
        let from = if self.start == Start::Ring { 0.0 } else { radius };
        let to = if self.stuffed { 0.0 } else { radius };
        // Of a piece given by its rounds only the ends of the outline count.
        let knots =
            vec![Knot::new(from, 0.0), Knot::new(radius, radius), Knot::new(to, 2.0 * radius)];
        let mut piece = Piece::new(name, Outline { knots }, gauge);
        piece.given = Some(Given::of_counts(self.start, &self.counts));
        if self.kind != Kind::Single {
            piece.kinds = vec![KindFrom { from_round: 1, kind: self.kind }];
        }
        piece
    }

    /// It let go: stuffed where it is stuffed, otherwise as cloth on a table.
    ///
    /// # Errors
    /// Where it cannot be planned or is too large.
    pub fn relaxation(&self, gauge: Gauge) -> Result<Relaxation> {
        let piece = self.piece("Sample", gauge);
        if self.stuffed {
            return Relaxation::of_plan(&piece, &plan(&piece)?);
        }
        let net = Net::of_counts(&piece, self.start, &self.counts, NetEnd::Open)?;
        Ok(Relaxation::empty(net, piece.stiffness_along))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SQUARE: StitchSize = StitchSize { width: 5.0, height: 5.0 };

    fn counts(rule: SampleRule) -> Vec<u32> {
        rule.sample(SQUARE).expect("it can be worked").counts
    }

    #[test]
    fn square_stitches_lie_flat_at_the_published_counts() {
        // round(2πn), as on two general pages on the craft: 6, 13, 19, 25, 31, 38, 44, 50. No
        // round more than doubles, so the second has one fewer.
        let level = counts(SampleRule::Level { rounds: 8 });
        assert_eq!(level, [6, 12, 19, 25, 31, 38, 44, 50]);
    }

    #[test]
    fn a_ball_follows_the_sine_and_is_its_own_mirror_image() {
        let ball = counts(SampleRule::Ball { middle: 36 });
        assert_eq!(ball.len(), 17, "36 around are 18 high, the last of them drawn up");
        assert_eq!(ball[..9], [6, 12, 18, 23, 28, 31, 34, 35, 36]);
        assert!(ball.iter().eq(ball.iter().rev()));
    }

    #[test]
    fn a_hyperbolic_circle_ends_up_growing_by_one_stitch_in_so_many() {
        let grown = counts(SampleRule::Hyperbolic { every: 5, rounds: 24 });
        let ratio = f64::from(grown[23]) / f64::from(grown[22]);
        assert!((ratio - 6.0 / 5.0).abs() < 0.01, "{ratio}");
        // Near its middle every surface is flat.
        assert_eq!(grown[0], 6);
        // R/h for n = 5 and 12, worked to twelve places.
        assert!((1.0 / growth(5) - 5.484_814_947_747).abs() < 1e-9);
        assert!((1.0 / growth(12) - 12.493_330_486_503).abs() < 1e-9);
    }

    fn steady(gain: u32, rounds: u32) -> SampleRule {
        SampleRule::Steady { gain: SampleGain::Fixed(gain), rounds, kind: Kind::Single }
    }

    #[test]
    fn what_nobody_can_work_is_refused() {
        for rule in [
            steady(0, 5),
            steady(u32::MAX, u32::MAX),
            SampleRule::Level { rounds: 1 },
            SampleRule::Level { rounds: u32::MAX },
            SampleRule::Ball { middle: u32::MAX },
            SampleRule::Cylinder { bottom: u32::MAX, side: u32::MAX },
            SampleRule::Neck { edge: 12, change: 6, rounds: 2 },
            SampleRule::Neck { edge: 12, change: u32::MAX, rounds: u32::MAX },
            SampleRule::Hyperbolic { every: 0, rounds: u32::MAX },
        ] {
            assert!(rule.sample(SQUARE).is_err(), "{rule:?}");
        }
    }
}
