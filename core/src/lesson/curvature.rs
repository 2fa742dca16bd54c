//! Curvature, counted: what each round's increases and decreases do to the cloth, as angles
//! that add up.
//!
//! The top edge of round k is `C_k = N_k w_k` long at rest, a round `h_k` high. Where the way
//! round grows by 2π for every unit of height the cloth lies flat; where it grows by less, an
//! angle is missing there, where by more, there is one too many:
//!
//! ```text
//! missing at the start          2π − C_1/h_1
//! missing at the edge of k      (C_k − C_{k−1})/h_k − (C_{k+1} − C_k)/h_{k+1}
//! missing at a gathered close   2π + (C_M − C_{M−1})/h_M
//! ```
//!
//! The missing angle over the area it is missing from is the Gaussian curvature K, in the
//! limit the one of Bertrand, Diquet and Puiseux, C = 2πr − πKr³/3 + … (J. de Mathématiques 13,
//! 1848, 80–90). Of a closed piece the angles come to 4π, whatever its counts (Descartes, for
//! polyhedra; Gauss–Bonnet: 2πχ, χ = 2 for a ball, 1 for a disc, 0 for an open tube, what its
//! open edges turn counted in). So a ball's increases and decreases are the parts of a sum that
//! is known before the first stitch.

use std::f64::consts::TAU;

use crate::piece::Piece;
use crate::plan::Plan;
use crate::plan::bend::BendWord;
use crate::plan::counts::Start;

/// The angle that is missing at one round's top edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EdgeCurvature {
    /// Missing angle, radians; negative where there is too much cloth. 0 at the last round,
    /// whose edge belongs to the end.
    pub missing_rad: f64,
    /// The same over the cloth it is missing from: Gaussian curvature, 1/mm². 0 at the last
    /// round.
    pub gaussian_per_mm2: f64,
    /// Missing from the start to here, radians.
    pub running_rad: f64,
}

/// Missing angles from end to end of a surface in rounds.
#[derive(Debug, Clone, PartialEq)]
pub struct CurvatureSum {
    /// What the start takes, radians: what is missing around a ring's middle, or what the open
    /// edge of a chain turns.
    pub start_rad: f64,
    /// The top edge of each round; round `k` is at index `k − 1`.
    pub edges: Vec<EdgeCurvature>,
    /// What the end takes, radians: what the gathered loops close, or what an open edge turns.
    pub end_rad: f64,
}

/// Which ends of a surface in rounds are closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ClosedEnds {
    /// It starts in a ring or along an oval's chain, not at an open edge.
    pub start: bool,
    /// It is drawn shut.
    pub end: bool,
}

impl ClosedEnds {
    /// Euler's characteristic χ of the surface: 2, 1 or 0.
    pub fn characteristic(self) -> i32 {
        i32::from(self.start) + i32::from(self.end)
    }
}

impl CurvatureSum {
    /// The missing angles of a surface of M rounds: `around_mm` its M + 1 edges from the start
    /// on, `along_mm` the M heights between them; no height may be 0.
    ///
    /// Nothing of rounds that there are not: without any, both ends are 0.
    pub fn of(around_mm: &[f64], along_mm: &[f64], ends: ClosedEnds) -> Self {
        let slopes: Vec<f64> =
            around_mm.windows(2).zip(along_mm).map(|(c, h)| (c[1] - c[0]) / h).collect();
        let (Some(first), Some(last)) = (slopes.first(), slopes.last()) else {
            return Self { start_rad: 0.0, edges: Vec::new(), end_rad: 0.0 };
        };
        let start_rad = if ends.start { TAU } else { 0.0 } - first;
        let mut running_rad = start_rad;
        let mut edges = Vec::with_capacity(slopes.len());
        for k in 1..slopes.len() {
            let missing_rad = slopes[k - 1] - slopes[k];
            running_rad += missing_rad;
            let area = around_mm[k] * 0.5 * (along_mm[k - 1] + along_mm[k]);
            let gaussian_per_mm2 = if area > 0.0 { missing_rad / area } else { 0.0 };
            edges.push(EdgeCurvature { missing_rad, gaussian_per_mm2, running_rad });
        }
        edges.push(EdgeCurvature { missing_rad: 0.0, gaussian_per_mm2: 0.0, running_rad });
        let end_rad = if ends.end { TAU } else { 0.0 } + last;
        Self { start_rad, edges, end_rad }
    }

    /// All of it, both ends counted in, radians: 2πχ but for rounding, whatever the counts.
    pub fn total_rad(&self) -> f64 {
        let rounds: f64 = self.edges.iter().map(|edge| edge.missing_rad).sum();
        self.start_rad + rounds + self.end_rad
    }
}

/// What a round gains, by itself and on average, against what lies flat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoundGain {
    /// Stitches gained (negative: lost) against the round below.
    pub gained: i32,
    /// What a round of its height and width gains where it lies flat, 2πh/w.
    pub flat: f64,
    /// What the round does by itself.
    pub word: BendWord,
    /// Mean gain from the start to this round, stitches a round.
    pub mean_gained: f64,
    /// Mean of `flat` from the start to this round.
    pub mean_flat: f64,
    /// What the rounds so far do on average: six and seven in turn lie flat where 6½ do.
    pub mean_word: BendWord,
}

/// The curvature of a piece twice over: of its stitches at rest, which is what was decided by
/// counting, and of the shape they are forecast to take, which stretches.
#[derive(Debug, Clone, PartialEq)]
pub struct Curvature {
    /// What each round gains; round `k` is at index `k − 1`.
    pub gains: Vec<RoundGain>,
    /// Of the cloth as it is worked.
    pub worked: CurvatureSum,
    /// Of the surface of revolution through the forecast's nodes.
    pub forecast: CurvatureSum,
    /// Which of its ends are closed.
    pub ends: ClosedEnds,
}

impl Curvature {
    /// The curvature of `plan`, which is the plan of `piece`. An oval's straight sides count
    /// as part of every round.
    pub fn of_plan(piece: &Piece, plan: &Plan) -> Self {
        let ends = ClosedEnds {
            start: !matches!(plan.start, Start::Chain(_)),
            end: piece.outline.finishes_closed(),
        };
        let cloth = |k: usize| piece.cloth_of_round(k as u32);
        let straight =
            if matches!(plan.start, Start::Oval(_)) { piece.straight_mm } else { 0.0 };
        let chain = plan.start.joined().unwrap_or(0);
        let start_mm = f64::from(chain) * cloth(1).width + 2.0 * straight;
        let rounds = plan.rounds.len();
        let worked = (1..=rounds).map(|k| f64::from(plan.rounds[k - 1].count) * cloth(k).width);
        let around: Vec<f64> = std::iter::once(start_mm).chain(worked).collect();
        let along: Vec<f64> = (1..=rounds).map(|k| cloth(k).height).collect();

        let nodes = &plan.forecast[..plan.forecast.len().min(rounds + 1)];
        let stuffed: Vec<f64> =
            nodes.iter().map(|node| TAU * node.r + 2.0 * straight).collect();
        // Nodes of a card insert may share a place.
        let apart: Vec<f64> = nodes.windows(2).map(|p| p[0].distance(p[1]).max(1e-9)).collect();

        let flat: Vec<f64> =
            (1..=rounds).map(|k| TAU * cloth(k).height / cloth(k).width).collect();
        Self {
            gains: gains(chain, &plan.counts(), &flat),
            worked: CurvatureSum::of(&around, &along, ends),
            forecast: CurvatureSum::of(&stuffed, &apart, ends),
            ends,
        }
    }
}

/// What each round of `counts` gains on the one below it, `start` stitches below the first;
/// `flat` is what lies flat, round by round.
pub fn gains(start: u32, counts: &[u32], flat: &[f64]) -> Vec<RoundGain> {
    let mut below = start;
    let mut flat_so_far = 0.0;
    (1_u32..)
        .zip(counts.iter().zip(flat))
        .map(|(round, (&count, &flat))| {
            let gained = count as i32 - below as i32;
            below = count;
            flat_so_far += flat;
            let rounds = f64::from(round);
            let mean_gained = (f64::from(count) - f64::from(start)) / rounds;
            let mean_flat = flat_so_far / rounds;
            RoundGain {
                gained,
                flat,
                word: BendWord::of(f64::from(gained), flat),
                mean_gained,
                mean_flat,
                mean_word: BendWord::of(mean_gained, mean_flat),
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const ENDS: [ClosedEnds; 4] = [
        ClosedEnds { start: true, end: true },
        ClosedEnds { start: true, end: false },
        ClosedEnds { start: false, end: true },
        ClosedEnds { start: false, end: false },
    ];

    #[test]
    fn the_sum_is_known_before_the_first_stitch() {
        for ends in ENDS {
            let start = if ends.start { 0.0 } else { 31.0 };
            let around = [start, 28.0, 41.0, 90.0, 17.5, 66.0];
            let sum = CurvatureSum::of(&around, &[4.0, 3.0, 9.0, 4.5, 4.0], ends);
            let known = TAU * f64::from(ends.characteristic());
            assert!((sum.total_rad() - known).abs() < 1e-12, "{ends:?}: {sum:?}");
            assert_eq!(sum.edges.len(), 5);
        }
    }

    #[test]
    fn six_squares_a_round_miss_two_pi_less_six_at_the_start_and_nothing_after() {
        let around: Vec<f64> = (0..=9).map(|k| f64::from(6 * k) * 5.0).collect();
        let sum = CurvatureSum::of(&around, &[5.0; 9], ENDS[1]);
        // The cone of sixes lacks 2π − 6 around its tip.
        assert!((sum.start_rad - 0.283_185_307_179_586).abs() < 1e-12);
        assert!(sum.edges.iter().all(|edge| edge.missing_rad.abs() < 1e-12));
        assert!((sum.end_rad - 6.0).abs() < 1e-12, "the rim turns what is left");
    }

    #[test]
    fn six_and_seven_in_turn_lie_flat_where_six_and_a_half_do() {
        let counts = [6, 13, 19, 26, 32, 39, 45, 52];
        let gains = gains(0, &counts, &[6.5; 8]);
        let last = gains[7];
        assert!((last.mean_gained - 6.5).abs() < 1e-12);
        assert_eq!((last.gained, last.mean_word), (7, BendWord::Flat));
    }

    #[test]
    fn no_rounds_have_no_curvature() {
        assert_eq!(CurvatureSum::of(&[], &[], ENDS[0]).total_rad(), 0.0);
    }
}
