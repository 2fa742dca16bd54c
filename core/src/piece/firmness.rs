//! How hard a piece is stuffed.

use serde::{Deserialize, Serialize};

use crate::error::{Error, Result, within};

/// How hard a piece is stuffed: the hoop strain ε* that a ball shows, as a fraction.
///
/// Common practice, no source: stuffed toys stretch 5–15 % in width.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Firmness(pub f64);

impl Firmness {
    /// Squashes under a finger.
    pub const SOFT: Self = Self(0.02);
    /// Keeps its shape in the hand.
    pub const MEDIUM: Self = Self(0.05);
    /// As hard as the cloth allows without stuffing showing.
    pub const FIRM: Self = Self(0.08);
    /// Least strain the model is good for: below it the cloth hangs rather than stands.
    pub const LEAST: f64 = 0.005;
    /// Greatest strain: beyond it stuffing shows between the stitches.
    pub const MOST: f64 = 0.15;

    /// The nearest of the words soft, medium and firm.
    pub fn word(self) -> &'static str {
        match self.0 {
            e if e < 0.035 => "soft",
            e if e < 0.065 => "medium",
            _ => "firm",
        }
    }

    /// Reads `soft`, `medium`, `firm` or a strain such as `0.08`.
    ///
    /// # Errors
    /// For any other word, or a strain outside 0.005–0.15.
    pub fn parse(text: &str) -> Result<Self> {
        match text.trim() {
            "soft" => Ok(Self::SOFT),
            "medium" => Ok(Self::MEDIUM),
            "firm" => Ok(Self::FIRM),
            number => {
                let strain = number.parse::<f64>().map_err(|_| {
                    Error::new(
                        "firmness",
                        format!("“{number}” is not a firmness"),
                        "write soft, medium, firm or a strain such as 0.08",
                    )
                })?;
                within("firmness", strain, Self::LEAST, Self::MOST, "").map(Self)
            }
        }
    }
}

impl Default for Firmness {
    fn default() -> Self {
        Self::MEDIUM
    }
}
