//! How far hands differ from what a piece is planned for.

use serde::{Deserialize, Serialize};

use crate::error::{Result, within};

/// How far makers differ from what a piece is planned for, each as one standard deviation.
///
/// Common practice, no source: a swatch is counted to 2 %, “medium” is a third more or less
/// from hand to hand, the stiffness ratio of crocheted cloth is unmeasured, and a round's pull
/// is kept to 1 %.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Variation {
    /// Stitch width and round height, each, as a share.
    pub gauge: f64,
    /// Logarithm of the firmness.
    pub firmness: f64,
    /// Logarithm of the stiffness ratio Em/Eθ: 0.35 is 0.7 to 1.4.
    pub stiffness: f64,
    /// Circumference of one round against its neighbours, as a share.
    pub pull: f64,
}

impl Default for Variation {
    fn default() -> Self {
        Self { gauge: 0.02, firmness: 0.3, stiffness: 0.35, pull: 0.01 }
    }
}

impl Variation {
    pub(super) fn validate(&self) -> Result<()> {
        within("variation.gauge", self.gauge, 0.0, 0.5, "")?;
        within("variation.firmness", self.firmness, 0.0, 2.0, "")?;
        within("variation.stiffness", self.stiffness, 0.0, 2.0, "")?;
        within("variation.pull", self.pull, 0.0, 0.5, "")?;
        Ok(())
    }
}
