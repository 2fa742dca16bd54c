//! Whether a part fits its place, and what would.

use super::curve::{Footprint, Meeting, Miss, footprint};
use crate::project::toy::part::EdgeHow;
use crate::toy::pose::edge_node;

/// A footprint may be longer or shorter than the edge by so much of it: one stitch in ten.
pub const GIVE: f64 = 0.1;

/// Smallest edge that is offered, stitches.
const LEAST_EDGE: f64 = 4.0;

/// How far from its place a part is tried for a smaller edge, in halvings.
const HALVINGS: u32 = 12;

/// Why a part does not fit its place, and what would.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FootprintMisfit {
    /// What is wrong.
    pub why: Why,
    /// The largest edge that would fit there, stitches.
    pub edge_that_fits: Option<u32>,
    /// Sunk in so much further it would fit, mm.
    pub sink_mm: Option<f64>,
    /// The largest of its proportions that has room there: wide, deep and long, whole mm.
    pub size_that_fits: Option<[f64; 3]>,
}

/// What is wrong with a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Why {
    /// There is no footprint.
    Misses(Miss),
    /// The edge has so many stitches and would have to reach this many.
    Stretches {
        /// Stitches of the edge.
        has: f64,
        /// Stitches that would lie there without a pull.
        wants: f64,
    },
    /// Put in, it would stand out of the cloth.
    TooLarge {
        /// How wide, deep and long it is, mm.
        sides: [f64; 3],
    },
    /// It would go through the card that is laid in after this round.
    ThroughCard {
        /// The round.
        after: u32,
    },
}

/// What is wrong with the footprint that `meeting` has, if anything.
pub(crate) fn misfit(
    meeting: &Meeting<'_>,
    found: &Result<Footprint, Miss>,
) -> Option<FootprintMisfit> {
    match found {
        Ok(print) => {
            let ratio = print.length_mm / print.edge_mm.filter(|&mm| mm > 0.0)?;
            if (ratio - 1.0).abs() <= GIVE {
                return None;
            }
            let has = print.edge_stitches;
            Some(FootprintMisfit {
                why: Why::Stretches { has, wants: has * ratio },
                edge_that_fits: edge_that_fits(meeting),
                sink_mm: (print.sink_mm > 0.0).then_some(print.sink_mm),
                size_that_fits: None,
            })
        }
        Err(miss) => Some(FootprintMisfit {
            why: Why::Misses(*miss),
            edge_that_fits: match miss {
                Miss::OffTheBody => edge_that_fits(meeting),
                Miss::NoEdge | Miss::TooHigh(_) | Miss::Swallowed => None,
            },
            sink_mm: match miss {
                // A stitch further than where it touches, so that there is something to sew.
                Miss::TooHigh(Some(mm)) => Some(mm + meeting.body.stitch_mm()),
                _ => None,
            },
            size_that_fits: None,
        }),
    }
}

/// The most stitches, fewer than it has, with which the edge would fit its place.
fn edge_that_fits(meeting: &Meeting<'_>) -> Option<u32> {
    let fits = |wide: f64| {
        footprint(meeting, wide).is_ok_and(|print| {
            let ratio = print.edge_mm.map_or(1.0, |mm| print.length_mm / mm);
            (ratio - 1.0).abs() <= GIVE
        })
    };
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if fits(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    let (node, _) = edge_node(meeting.part, meeting.edge);
    let mut stitches = (low * meeting.part.stitches(node as f64)).floor();
    if meeting.edge.how == EdgeHow::Flat {
        stitches -= stitches % 2.0;
    }
    (stitches >= LEAST_EDGE).then_some(stitches as u32)
}
