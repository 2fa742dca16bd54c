//! Cloth: kinds of stitch and how rounds are worked, and the width and height they give.

use serde::{Deserialize, Serialize};

use crate::error::Result;
use crate::gauge::Gauge;
use crate::piece::Piece;

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

/// The hand that holds the hook.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Hand {
    /// Rounds run counter-clockwise seen from outside.
    #[default]
    Right,
    /// Rounds run clockwise.
    Left,
}

impl Piece {
    /// The kind of stitch of round `round` (from 1).
    pub fn kind_of_round(&self, round: u32) -> Kind {
        self.kinds
            .iter()
            .filter(|from| from.from_round <= round)
            .max_by_key(|from| from.from_round)
            .map_or(Kind::Single, |from| from.kind)
    }

    /// Width and height of a stitch of round `round` (from 1), mm, unstuffed.
    pub fn cloth_of_round(&self, round: u32) -> (f64, f64) {
        let (width, height) = self.cloth_of_kind(self.kind_of_round(round));
        let only = self.loops.contains_key(&round);
        let loop_height = self.swatches.loop_only_height.filter(|_| only).unwrap_or(1.0);
        (width, height * loop_height)
    }

    fn cloth_of_kind(&self, kind: Kind) -> (f64, f64) {
        let swatch = match kind {
            Kind::Single => Some(self.gauge),
            Kind::HalfDouble => self.swatches.half_double,
            Kind::Double => self.swatches.double,
        };
        match swatch {
            Some(gauge) => (gauge.stitch_width_mm(), gauge.round_height_mm()),
            None => (
                self.gauge.stitch_width_mm(),
                self.gauge.round_height_mm() * kind.default_height(),
            ),
        }
    }

    /// Kinds the piece uses whose swatch is missing.
    pub fn unmeasured_kinds(&self) -> Vec<Kind> {
        let uses = |kind| self.kinds.iter().any(|from| from.kind == kind);
        let missing = [
            (Kind::HalfDouble, self.swatches.half_double.is_none()),
            (Kind::Double, self.swatches.double.is_none()),
        ];
        missing.iter().filter(|&&(kind, none)| none && uses(kind)).map(|&(k, _)| k).collect()
    }

    /// Where the edges of `rounds` rounds lie, from 0 to `length_mm` of rest length: shared
    /// out by their heights.
    pub(crate) fn edges_mm(&self, rounds: usize, length_mm: f64) -> Vec<f64> {
        let mut edges = Vec::with_capacity(rounds + 1);
        let mut at = 0.0;
        edges.push(at);
        for k in 1..=rounds as u32 {
            at += self.cloth_of_round(k).1;
            edges.push(at);
        }
        let scale = length_mm / at;
        edges.iter_mut().for_each(|edge| *edge *= scale);
        edges
    }

    /// Number of rounds, not whole, whose heights add up to `length_mm`; `most` at most.
    pub(crate) fn rounds_in(&self, length_mm: f64, most: usize) -> f64 {
        if self.kinds.is_empty() && self.loops.is_empty() {
            return length_mm / self.gauge.round_height_mm();
        }
        let mut left = length_mm;
        for k in 1..=most as u32 + 1 {
            let height = self.cloth_of_round(k).1;
            if left <= height {
                return f64::from(k - 1) + left / height;
            }
            left -= height;
        }
        most as f64 + 1.0
    }
}
