//! Cloth: kinds of stitch and how rounds are worked, and the width and height they give.

use serde::{Deserialize, Serialize};

use crate::error::Result;
use crate::piece::gauge::Gauge;

/// A kind of stitch, by US name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Kind {
    /// Single crochet.
    #[default]
    Single,
    /// Half double crochet.
    HalfDouble,
    /// Double crochet.
    Double,
}

impl Kind {
    /// `sc`, `hdc` or `dc`.
    pub fn code(self) -> &'static str {
        match self {
            Self::Single => "sc",
            Self::HalfDouble => "hdc",
            Self::Double => "dc",
        }
    }

    /// The kind in words.
    pub fn name(self) -> &'static str {
        match self {
            Self::Single => "single crochet",
            Self::HalfDouble => "half double crochet",
            Self::Double => "double crochet",
        }
    }

    /// Height against single crochet until a swatch says otherwise. From memory, no source:
    /// only a swatch in this kind of stitch makes a forecast of it.
    pub fn default_height(self) -> f64 {
        match self {
            Self::Single => 1.0,
            Self::HalfDouble => 1.5,
            Self::Double => 2.1,
        }
    }

    /// Chains that bring the hook up to this height where rounds are joined. Common
    /// practice, no source.
    pub fn turning_chain(self) -> u32 {
        match self {
            Self::Single => 1,
            Self::HalfDouble => 2,
            Self::Double => 3,
        }
    }
}

/// From this round on, work in this kind of stitch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KindFrom {
    /// First round of the kind, counted from 1.
    pub from_round: u32,
    /// The kind.
    pub kind: Kind,
}

/// The loop a round is worked into, where not into both.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Loop {
    /// Front loop only.
    Front,
    /// Back loop only.
    Back,
}

impl Loop {
    /// `FLO` or `BLO`.
    pub fn code(self) -> &'static str {
        match self {
            Self::Front => "FLO",
            Self::Back => "BLO",
        }
    }
}

/// The maker's swatches beyond that of single crochet.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Swatches {
    /// Half double crochet.
    pub half_double: Option<Gauge>,
    /// Double crochet.
    pub double: Option<Gauge>,
    /// Height of a round worked into one loop, against one worked into both.
    pub loop_only_height: Option<f64>,
    /// Whether single crochets are yarn-under (crossed) rather than yarn-over. Only noted:
    /// the swatch already has the height it gives.
    pub yarn_under: bool,
}

impl Swatches {
    /// Refuses swatches that [`Gauge::validate`] refuses, and loop heights of less than half
    /// or more than twice.
    pub(crate) fn validate(&self) -> Result<()> {
        for (name, gauge) in [("half_double", self.half_double), ("double", self.double)] {
            if let Some(gauge) = gauge {
                gauge.validate().map_err(|e| e.within(&format!("swatches.{name}")))?;
            }
        }
        if let Some(height) = self.loop_only_height {
            crate::error::within("swatches.loop_only_height", height, 0.5, 2.0, "")?;
        }
        Ok(())
    }
}

/// How one round follows another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Working {
    /// In a continuous spiral.
    #[default]
    Spiral,
    /// Each round joined by a slip stitch and begun with a chain.
    Joined {
        /// Whether that chain counts as the first stitch.
        chain_counts: bool,
    },
}

impl Working {
    /// Slip stitches and chains between a round of `kind` and the next, beyond its stitches.
    pub fn joining(self, kind: Kind) -> u32 {
        match self {
            Self::Spiral => 0,
            // Where the chain counts as a stitch it is counted already.
            Self::Joined { chain_counts: true } => 1,
            Self::Joined { chain_counts: false } => 1 + kind.turning_chain(),
        }
    }
}

/// The hand that holds the hook.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Hand {
    /// Rounds run counter-clockwise seen from outside.
    #[default]
    Right,
    /// Rounds run clockwise.
    Left,
}
