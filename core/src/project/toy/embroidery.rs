//! Embroidery on the crochet: lines of stitches and knots.

use serde::{Deserialize, Serialize};

use super::Toy;
use super::part::Place;
use crate::error::{Error, LONGEST_NAME, Result, no_longer, within};

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

/// Refuses embroidery on what is not crochet, in a yarn that is not there, without a place.
///
/// # Errors
/// Names the line, counted from 1, and the field.
pub(crate) fn validate(toy: &Toy, yarns: usize) -> Result<()> {
    let lines = toy.embroidery.len();
    if lines > MOST_LINES {
        let mend = format!("list at most {MOST_LINES}");
        return Err(Error::new("toy, embroidery", format!("{lines} of them"), mend));
    }
    for (number, line) in (1..).zip(&toy.embroidery) {
        let place = format!("toy, embroidery {number}");
        let fault = |what: String, mend: &str| Err(Error::new(place.clone(), what, mend));
        no_longer("name", &line.name, LONGEST_NAME).map_err(|e| e.within(&place))?;
        if toy.parts.get(line.part).and_then(|part| part.piece()).is_none() {
            return fault(format!("part {} is no crochet", line.part), "name a crocheted part");
        }
        if line.yarn >= yarns {
            return fault(
                format!("there is no yarn {}", line.yarn),
                "name a yarn of the project",
            );
        }
        if line.places.is_empty() || line.places.len() > MOST_PLACES {
            let what = format!("it has {} places", line.places.len());
            return fault(what, "list 1 to 400 places");
        }
        for at in &line.places {
            let along = within("along", at.along, 0.0, 1.0, "");
            let around = within("around", at.around, -1.0, 1.0, "");
            along.and(around).map_err(|e| e.within(&place))?;
        }
    }
    Ok(())
}
