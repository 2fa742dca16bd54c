//! The sizes of a piece, as they are saved. What comes of them is worked out in
//! [`crate::project::sizes`].

use serde::{Deserialize, Serialize};

use super::id::PieceId;
use crate::error::{Error, Result, within};
use crate::extent::Bounds;
use crate::piece::gauge::Gauge;

/// A size of a piece: what it is called and what makes it that size.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Size {
    /// What the size is called: S, M, L.
    pub name: String,
    /// What makes it that size.
    pub by: SizeBy,
    /// Whether necks, lips and openings keep at least the stitches that they have in the
    /// piece itself. Otherwise they keep the least that the rules ask.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub keep: bool,
    /// Whether the size is to look like the piece itself: as many repeats a round, the same
    /// plain zone.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub family: bool,
}

/// What makes a piece a size.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum SizeBy {
    /// Height of the stuffed piece, mm.
    Height(f64),
    /// Greatest width of the stuffed piece, mm; along the straight sides of an oval.
    Width(f64),
    /// So many times as large as the piece itself, stuffed: height and width together.
    Factor(f64),
    /// The maker's cloth in another yarn or by another hook.
    Gauge {
        /// The other swatch.
        gauge: Gauge,
        /// What stays as it is.
        #[serde(default)]
        keeps: Keeps,
    },
    /// As large as the seams with this companion ask, which is in the same size where it
    /// has one of this name.
    Meet {
        /// The companion.
        companion: PieceId,
    },
}

/// What stays as it is when the gauge changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Keeps {
    /// The finished size; the rounds are planned anew.
    #[default]
    Size,
    /// The rounds; they come out larger or smaller.
    Rounds,
}

/// Least and greatest height or width that may be asked for, mm: the nearest that can be
/// worked is then found.
pub const ASKED_MM: Bounds = Bounds::new(0.01, 100_000.0);

/// Least and greatest factor that may be asked for.
pub const ASKED_FACTOR: Bounds = Bounds::new(1e-4, 1e4);

/// Most sizes of a piece.
pub const MOST_SIZES: usize = 40;

impl Size {
    /// A size of this name that keeps nothing and need not look alike.
    pub fn new(name: impl Into<String>, by: SizeBy) -> Self {
        Self { name: name.into(), by, keep: false, family: false }
    }

    /// Refuses measures that no finite piece has.
    ///
    /// # Errors
    /// Names the size and the number out of range.
    pub fn validate(&self) -> Result<()> {
        let place = format!("size “{}”", self.name);
        if self.name.trim().is_empty() {
            return Err(Error::new("sizes", "a size has no name", "name it, S or Large say"));
        }
        let checked = match self.by {
            SizeBy::Height(mm) => {
                within("height", mm, ASKED_MM.low, ASKED_MM.high, "mm").map(drop)
            }
            SizeBy::Width(mm) => {
                within("width", mm, ASKED_MM.low, ASKED_MM.high, "mm").map(drop)
            }
            SizeBy::Factor(factor) => {
                within("factor", factor, ASKED_FACTOR.low, ASKED_FACTOR.high, "").map(drop)
            }
            SizeBy::Gauge { gauge, .. } => gauge.validate(),
            SizeBy::Meet { .. } => Ok(()),
        };
        checked.map_err(|e| e.within(&place))
    }
}

/// Refuses sizes that [`Size::validate`] refuses, too many, and two of one name.
pub(crate) fn validate(sizes: &[Size]) -> Result<()> {
    if sizes.len() > MOST_SIZES {
        let what = format!("{} sizes", sizes.len());
        return Err(Error::new("sizes", what, format!("list at most {MOST_SIZES}")));
    }
    for (i, size) in sizes.iter().enumerate() {
        size.validate()?;
        if sizes[..i].iter().any(|other| other.name == size.name) {
            let what = format!("two sizes are called “{}”", size.name);
            return Err(Error::new("sizes", what, "give each a name of its own"));
        }
    }
    Ok(())
}

/// The sizes of a piece whose outline was multiplied by `scale`: those that go by a factor
/// are still as large as they were.
pub(crate) fn sizes_at(sizes: &[Size], scale: f64) -> Vec<Size> {
    let kept = |size: &Size| match size.by {
        SizeBy::Factor(factor) => {
            let factor = factor / scale;
            Size { by: SizeBy::Factor(factor), ..size.clone() }
        }
        _ => size.clone(),
    };
    sizes.iter().map(kept).collect()
}
