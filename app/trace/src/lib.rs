//! Shapes brought in from outside, as outlines: from a picture of a thing seen from the side,
//! a table of measures, a drawn path, a triangle mesh, or a formula.
//!
//! Everything here is a function over bytes and pixels: no file is read, no thread started.
//! Work on a picture takes a `&dyn Fn(f32) -> bool` that is told the share done, 0 … 1, and
//! answers whether to go on.
//!
//! From a picture the shape comes in this order:
//!
//! 1. [`picture`]: the file as pixels, upright, within limits, reduced for work;
//! 2. `ground`: which pixels are the thing and which its background;
//! 3. `axis`: the line about which both sides are alike, and how alike they are;
//! 4. `halves`: how far the thing reaches from the axis at each height, and which parts of
//!    it no turned shape has;
//! 5. [`line`](mod@line): the outline of few knots along that edge;
//! 6. [`trace`](mod@trace): all of it, with a report to judge it by.
//!
//! [`table`], [`drawing`], [`solid`] and [`formula`] bring the other kinds in; all but tables,
//! whose points are taken as measured, end in [`line`](mod@line) too.

mod axis;
mod distance;
pub mod drawing;
pub mod formula;
mod ground;
mod halves;
pub mod line;
mod mask;
pub mod picture;
mod pieces;
pub mod report;
pub mod solid;
pub mod table;
pub mod trace;
mod work;

pub use ground::{Stroke, TraceGround};
pub use halves::OddKind;
pub use picture::Photo;
pub use report::{Doubt, OddPart, TraceReport};
pub use trace::{Scale, Trace, TraceWish, TracedEnd, TracedSide, trace};
pub use work::{Halt, Step};
