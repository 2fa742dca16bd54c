//! Gauge: how wide a stitch and how high a round of this maker's cloth is, unstuffed.

use serde::{Deserialize, Serialize};

use crate::error::{Result, within};
use crate::extent::StitchSize;

/// A swatch as it was counted: so many stitches over so many millimetres, and so many rounds.
///
/// The swatch is worked in the round, right side out, and measured unstretched. Any size
/// will do; width and height may be counted over different lengths.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Gauge {
    /// Stitches counted across the swatch (1 or more; a half counts).
    pub stitches: f64,
    /// Millimetres those stitches cover.
    pub across_mm: f64,
    /// Rounds counted along the swatch.
    pub rounds: f64,
    /// Millimetres those rounds cover.
    pub along_mm: f64,
    /// Shaft diameter of the hook the swatch was made with, mm.
    #[serde(default = "default_hook_mm")]
    pub hook_mm: f64,
}

fn default_hook_mm() -> f64 {
    3.5
}

/// How many times as tall as wide a stitch may be; the tallest stitches of the trade are some
/// four times. Common practice, no source.
const TALLEST: f64 = 8.0;

impl Gauge {
    /// A gauge counted over one length both ways, as `--stitches 22 --rounds 24 --per 10cm`.
    pub fn per(stitches: f64, rounds: f64, length_mm: f64) -> Self {
        Self {
            stitches,
            across_mm: length_mm,
            rounds,
            along_mm: length_mm,
            hook_mm: default_hook_mm(),
        }
    }

    /// A gauge given directly by stitch width and round height, mm.
    pub fn of_stitch(width_mm: f64, height_mm: f64) -> Self {
        Self {
            stitches: 1.0,
            across_mm: width_mm,
            rounds: 1.0,
            along_mm: height_mm,
            hook_mm: default_hook_mm(),
        }
    }

    /// Width of one stitch, mm, unstuffed.
    pub fn stitch_width_mm(&self) -> f64 {
        self.across_mm / self.stitches
    }

    /// Height of one round, mm, unstuffed.
    pub fn round_height_mm(&self) -> f64 {
        self.along_mm / self.rounds
    }

    /// Both of them.
    pub fn stitch_size(&self) -> StitchSize {
        StitchSize { width: self.stitch_width_mm(), height: self.round_height_mm() }
    }

    /// Stitches a round gains when the cloth lies flat: 2πh/w, the turn of a full circle
    /// for every round height outwards.
    pub fn flat_increase(&self) -> f64 {
        std::f64::consts::TAU * self.round_height_mm() / self.stitch_width_mm()
    }

    /// Refuses counts and lengths no swatch has, a stitch narrower than 0.3 mm or wider than
    /// 60 mm (finest thread to arm-thick roving), and one many times as tall as wide: each
    /// round could change to nearly any count, and the search for counts would have no end.
    ///
    /// # Errors
    /// Names the field that is out of range.
    pub fn validate(&self) -> Result<()> {
        within("gauge.stitches", self.stitches, 0.5, 1000.0, "")?;
        within("gauge.rounds", self.rounds, 0.5, 1000.0, "")?;
        within("gauge.across_mm", self.across_mm, 0.3, 2000.0, "mm")?;
        within("gauge.along_mm", self.along_mm, 0.3, 2000.0, "mm")?;
        within("gauge.hook_mm", self.hook_mm, 0.4, 50.0, "mm")?;
        within("gauge, stitch width", self.stitch_width_mm(), 0.3, 60.0, "mm")?;
        within("gauge, round height", self.round_height_mm(), 0.3, 60.0, "mm")?;
        let tall = self.round_height_mm() / self.stitch_width_mm();
        within("gauge, round height by stitch width", tall, 0.0, TALLEST, "")?;
        Ok(())
    }
}

impl Default for Gauge {
    /// Single crochet worked firmly for stuffing in an unturned spiral, 22 stitches and 21
    /// rounds to 10 cm: a stitch a little taller than wide, of which 6.6 more a round lie flat.
    ///
    /// Common practice, no source: toys are worked tighter than a yarn's label says, six to
    /// seven increases lie flat. Swatches worked in rows are flatter (published ones have a
    /// height of 0.80 to 1.00 of the width), since turning pulls rows together. At this gauge
    /// and [`Piece::new`](crate::Piece::new)'s stiffness the ball that the trade works as round
    /// is forecast round: see [`crate::plan::ball`].
    fn default() -> Self {
        Self::per(22.0, 21.0, 100.0)
    }
}
