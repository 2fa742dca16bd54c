//! What is measured on a sample.

use crate::error::{Result, within};
use crate::piece::PieceId;
use crate::sentence::Sentence;

/// Something measured on a sample.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measure {
    /// So many stitches, unstuffed, are so wide.
    Stitches {
        /// Stitches counted.
        stitches: f64,
        /// Their width, mm.
        mm: f64,
    },
    /// So many rounds, unstuffed, are so long.
    Rounds {
        /// Rounds counted.
        rounds: f64,
        /// Their length, mm.
        mm: f64,
    },
    /// The stuffed piece measures this around its widest place, mm.
    Around(f64),
    /// The stuffed piece is this high, mm.
    Height(f64),
    /// A tape around the stuffed piece over both of its ends is this long, mm. It tells more
    /// of how cloth gives along the piece than the height does: more of it is measured.
    OverEnds(f64),
    /// Yarn at hand before and after the piece, g.
    Yarn {
        /// Before the first stitch.
        before_g: f64,
        /// After the last.
        after_g: f64,
    },
    /// The yarn of this round, unravelled, is so long.
    Unravelled {
        /// The round, from 1.
        round: u32,
        /// Length of its yarn, mm.
        mm: f64,
    },
}

impl Measure {
    /// What the measure came to, mm or g.
    pub fn value(&self) -> f64 {
        match *self {
            Self::Stitches { mm, .. } | Self::Rounds { mm, .. } => mm,
            Self::Around(mm) | Self::Height(mm) | Self::OverEnds(mm) => mm,
            Self::Unravelled { mm, .. } => mm,
            Self::Yarn { before_g, after_g } => before_g - after_g,
        }
    }

    /// `mm` or `g`.
    pub fn unit(&self) -> &'static str {
        if matches!(self, Self::Yarn { .. }) { "g" } else { "mm" }
    }

    /// How far off it may be unless the maker says otherwise, one standard deviation: 1 mm, and
    /// 1 g each time something is weighed.
    pub fn usual_error(&self) -> f64 {
        if matches!(self, Self::Yarn { .. }) { std::f64::consts::SQRT_2 } else { 1.0 }
    }

    /// What was measured, in words.
    pub fn sentence(&self) -> Sentence {
        let count = |n: f64| [("n", Sentence::from(n.to_string()).into())];
        match *self {
            Self::Stitches { stitches, .. } => {
                Sentence::note("measure_stitches", count(stitches))
            }
            Self::Rounds { rounds, .. } => Sentence::note("measure_rounds", count(rounds)),
            Self::Around(_) => Sentence::note("measure_around", []),
            Self::Height(_) => Sentence::note("measure_height", []),
            Self::OverEnds(_) => Sentence::note("measure_over_ends", []),
            Self::Yarn { .. } => Sentence::note("measure_yarn", []),
            Self::Unravelled { round, .. } => {
                Sentence::note("measure_unravelled", [("round", round.into())])
            }
        }
    }

    pub(super) fn validate(&self, error: f64) -> Result<()> {
        let place = self.sentence().to_string();
        let counted = match *self {
            Self::Stitches { stitches, .. } => Some(stitches),
            Self::Rounds { rounds, .. } => Some(rounds),
            _ => None,
        };
        if let Some(counted) = counted {
            within(&format!("{place}, counted"), counted, 0.5, 20_000.0, "")?;
        }
        within(&place, self.value(), 0.1, 100_000.0, self.unit())?;
        within(&format!("{place}, error"), error, 1e-3, 10_000.0, self.unit())?;
        Ok(())
    }
}

/// A measure and how far it may be off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// What was measured.
    pub measure: Measure,
    /// One standard deviation of its error, in its unit.
    pub error: f64,
}

impl From<Measure> for Measured {
    fn from(measure: Measure) -> Self {
        Self { measure, error: measure.usual_error() }
    }
}

/// What was measured on one piece of a project.
#[derive(Debug, Clone, PartialEq)]
pub struct OfPiece {
    /// The piece.
    pub piece: PieceId,
    /// What was measured on it.
    pub measures: Vec<Measured>,
}

/// A measure beside what the program makes of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Compared {
    /// The piece it was taken of.
    pub piece: PieceId,
    /// The measure and its error.
    pub measured: Measured,
    /// What was forecast before, in its unit.
    pub before: f64,
    /// What is forecast now.
    pub after: f64,
}

impl Compared {
    /// What is left between forecast and measure, in errors of the measure.
    pub fn off(&self) -> f64 {
        (self.measured.measure.value() - self.after) / self.measured.error
    }
}
