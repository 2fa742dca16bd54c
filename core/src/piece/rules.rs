//! Rules a person sets for the rounds of a piece.

use serde::{Deserialize, Serialize};

use crate::error::{Error, Result, within};

/// How increases and decreases sit from round to round.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Spread {
    /// Turned so that they do not line up into corners.
    #[default]
    Turned,
    /// Lined up, for those who want corners.
    Stacked,
}

/// What every round must keep to, beyond what can be worked at all.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Rules {
    /// Stitches of the magic ring; by the kind of stitch if `None` (six single crochets,
    /// eight half double, twelve double; four at a tip).
    pub ring: Option<u32>,
    /// Stitches of the last round of a piece drawn shut; five to eight if `None`.
    pub last: Option<u32>,
    /// Fewest stitches any round in the middle may have.
    pub smallest_neck: u32,
    /// Stitches come in multiples of this, ring and gathered round excepted; 1 for any.
    pub multiple_of: u32,
    /// Most stitches a round may gain or lose.
    pub largest_change: Option<u32>,
    /// Whether both halves of the piece have the same counts.
    pub symmetric: bool,
    /// Whether plain rounds are kept together rather than strewn between shaping rounds.
    pub plain_together: bool,
    /// Whether rounds may gain more than lies flat and stand in folds: a skirt, a wavy lip.
    pub frills: bool,
    /// How far a round leans against the one below in a spiral, stitches a round.
    /// Assumption until a swatch says otherwise.
    pub spiral_drift: f64,
}

impl Default for Rules {
    fn default() -> Self {
        Self {
            ring: None,
            last: None,
            smallest_neck: 4,
            multiple_of: 1,
            largest_change: None,
            symmetric: false,
            plain_together: false,
            frills: false,
            spiral_drift: 0.17,
        }
    }
}

/// Rounds between which nothing is shaped, a face to embroider for instance.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Face {
    /// First plain round, counted from 1.
    pub from_round: u32,
    /// Last plain round.
    pub to_round: u32,
}

impl Rules {
    pub(super) fn validate(&self) -> Result<()> {
        let whole = |place: &str, value: Option<u32>, low: u32, high: u32| match value {
            Some(v) if !(low..=high).contains(&v) => Err(Error::new(
                place,
                format!("{v} stitches is out of range"),
                format!("give a number from {low} to {high}"),
            )),
            _ => Ok(()),
        };
        whole("rules.ring", self.ring, 3, 24)?;
        whole("rules.last", self.last, 3, 200)?;
        whole("rules.multiple_of", Some(self.multiple_of), 1, 24)?;
        whole("rules.largest_change", self.largest_change, 1, 200)?;
        whole("rules.smallest_neck", Some(self.smallest_neck), 3, 200)?;
        within("rules.spiral_drift", self.spiral_drift, -1.0, 1.0, "stitches")?;
        Ok(())
    }
}
