//! Footprints: where a part meets the cloth of what carries it, in rounds and stitches.
//!
//! `curve` follows an open edge along the part's axis, or the meeting of two shapes; `flat`
//! lays a pressed edge; `span` counts; `fit` says what does not fit and what would.

mod curve;
mod fit;
mod flat;
mod span;

pub use curve::{Footprint, Miss};
pub(crate) use curve::{Meeting, footprint};
pub(crate) use fit::misfit;
pub use fit::{FootprintMisfit, GIVE, Why};
pub use span::{Along, Apart, Span, span};
