//! Embroidery on the crochet: lines of stitches and knots.

use serde::{Deserialize, Serialize};

use super::part::Place;

/// Most lines of embroidery on a toy.
pub const MOST_LINES: usize = 200;

/// Most places of one line.
pub const MOST_PLACES: usize = 400;

/// A line of embroidery, or some knots, on a crocheted part and each copy of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Embroidery {
    /// What it is, `mouth` say; empty where its stitch says enough.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub name: String,
    /// The part it is on, an index into the toy's.
    pub part: usize,
    /// How it is worked.
    pub stitch: EmbroideryStitch,
    /// The yarn, an index into the project's.
    pub yarn: usize,
    /// The places between stitches that it goes through, in order.
    pub places: Vec<Place>,
    /// Whether it is there a second time, mirrored about the front.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub mirrored: bool,
}

/// How embroidery is worked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum EmbroideryStitch {
    /// An unbroken line of short stitches, each begun a stitch ahead and brought back.
    Back,
    /// One long stitch from each place to the next.
    Straight,
    /// A knot at each place.
    FrenchKnot,
}

impl EmbroideryStitch {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Back, Self::Straight, Self::FrenchKnot];

    /// Places without which there is nothing to work.
    pub fn least_places(self) -> usize {
        if self == Self::FrenchKnot { 1 } else { 2 }
    }
}
