//! The ball that the trade works as round, forecast at a maker's gauge: whether a swatch,
//! stiffness and firmness agree with what hands see every day.
//!
//! Common practice: rounds of six more out to n stitches, n/6 even rounds, rounds of six fewer
//! back to six. A count over 22 published balls and round heads (figures only) gives even
//! rounds after the last increase over n/6 a median of 1.00, the middle half 0.97 to 1.20; all
//! are sold as round. So at a gauge that is right for such hands the forecast of it is about
//! as high as wide.
//!
//! At 22 × 24 to 10 cm, a published size of swatch worked in rows, that ball comes out at 0.73
//! to 0.76 of its width; at 22 × 21 with Em/Eθ = 0.7, this program's defaults, at 0.98 to 1.02
//! for n from 30 to 60.

use super::plan;
use crate::error::{Error, Result};
use crate::extent::Extent;
use crate::piece::gauge::Gauge;
use crate::piece::given::{Given, Start};
use crate::piece::outline::{Knot, Outline};
use crate::piece::{Firmness, Piece};

/// A ball of sixes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TradeBall {
    /// Stitches around the middle, a multiple of six from 12 on.
    pub stitches: u32,
    /// Even rounds between the last increase and the first decrease.
    pub even: u32,
}

/// Height and width of a finished ball, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BallSize {
    /// From start to close.
    pub height_mm: f64,
    /// Across the middle.
    pub width_mm: f64,
}

impl BallSize {
    /// Height over width: 1 is round.
    pub fn ratio(self) -> f64 {
        self.height_mm / self.width_mm
    }
}

/// Round heights that are looked through, as shares of the stitch width.
const HEIGHTS: (f64, f64) = (0.4, 2.5);

impl TradeBall {
    /// The ball as it is usually worked: n/6 even rounds.
    pub fn usual(stitches: u32) -> Self {
        Self { stitches, even: stitches / 6 }
    }

    /// Stitches of every round.
    ///
    /// # Errors
    /// Unless the stitches are a multiple of six from 12 to 600, and the even rounds at most
    /// 200.
    pub fn counts(self) -> Result<Vec<u32>> {
        let Self { stitches, even } = self;
        if !stitches.is_multiple_of(6) || !(12..=600).contains(&stitches) || even > 200 {
            return Err(Error::new(
                "ball",
                format!("{stitches} stitches with {even} even rounds is not a ball of sixes"),
                "give a multiple of six from 12 to 600, and at most 200 even rounds",
            ));
        }
        let out = (1..=stitches / 6).map(|k| 6 * k);
        let middle = std::iter::repeat_n(stitches, even as usize);
        let back = (1..stitches / 6).rev().map(|k| 6 * k);
        Ok(out.chain(middle).chain(back).collect())
    }

    /// The ball as a piece at `gauge`, everything else as in a new piece.
    ///
    /// # Errors
    /// As [`TradeBall::counts`].
    pub fn piece(self, gauge: Gauge) -> Result<Piece> {
        let counts = self.counts()?;
        let radius = f64::from(self.stitches) * gauge.stitch_width_mm() / std::f64::consts::TAU;
        let knots =
            vec![Knot::new(0.0, 0.0), Knot::new(radius, radius), Knot::new(0.0, 2.0 * radius)];
        let mut piece = Piece::new("Ball", Outline { knots }, gauge);
        piece.given = Some(Given::of_counts(Start::Ring, &counts));
        Ok(piece)
    }

    /// Its size once stuffed, in cloth of `gauge` and stiffness ratio `along`.
    ///
    /// # Errors
    /// As [`TradeBall::counts`] and [`plan`](crate::plan()).
    pub fn size(self, gauge: Gauge, along: f64, firmness: Firmness) -> Result<BallSize> {
        let mut piece = self.piece(gauge)?;
        (piece.stiffness_along, piece.firmness) = (along, firmness);
        let Extent { height: height_mm, width: width_mm } = plan(&piece)?.size_mm;
        Ok(BallSize { height_mm, width_mm })
    }

    /// The round height at which the forecast is as high for its width as a ball that was made,
    /// `ratio` its height over its width; mm. A round higher by 1 % makes a ball higher by about
    /// 2 %, since it also flattens less.
    ///
    /// # Errors
    /// As [`TradeBall::size`], and where no round height gives that ratio.
    pub fn round_height_for(
        self,
        ratio: f64,
        gauge: Gauge,
        along: f64,
        firmness: Firmness,
    ) -> Result<f64> {
        let width = gauge.stitch_width_mm();
        let off = |share: f64| {
            let gauge = Gauge { along_mm: gauge.rounds * share * width, ..gauge };
            self.size(gauge, along, firmness).map(|size| size.ratio() - ratio)
        };
        let (mut low, mut high) = HEIGHTS;
        if off(low)? > 0.0 || off(high)? < 0.0 {
            return Err(Error::new(
                "ball",
                format!("no round height makes it {ratio:.2} times as high as wide"),
                "check its stitches, its even rounds and both measures",
            ));
        }
        while high - low > 1e-4 {
            let middle = 0.5 * (low + high);
            *if off(middle)? < 0.0 { &mut low } else { &mut high } = middle;
        }
        Ok(0.5 * (low + high) * width)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::piece::STIFFNESS_ALONG;

    #[test]
    fn the_trades_ball_comes_out_round_at_the_defaults() {
        for stitches in [30, 36, 48, 60] {
            let ball = TradeBall::usual(stitches);
            let size = ball.size(Gauge::default(), STIFFNESS_ALONG, Firmness::MEDIUM);
            let ratio = size.expect("it is a ball").ratio();
            assert!((0.93..=1.07).contains(&ratio), "{stitches}: {ratio:.3}");
        }
    }

    #[test]
    fn the_round_height_that_agrees_is_found_again() {
        let (ball, gauge) = (TradeBall::usual(36), Gauge::default());
        let size = ball.size(gauge, 0.7, Firmness::MEDIUM).expect("it is a ball");
        let rows = Gauge::per(22.0, 24.0, 100.0);
        let height = ball.round_height_for(size.ratio(), rows, 0.7, Firmness::MEDIUM);
        assert!((height.expect("there is one") - gauge.round_height_mm()).abs() < 0.01);
    }

    #[test]
    fn what_is_no_ball_of_sixes_is_refused() {
        assert!(TradeBall { stitches: 31, even: 5 }.counts().is_err());
        assert!(TradeBall { stitches: 6, even: 1 }.counts().is_err());
    }
}
