//! Written patterns: one stitch-level tree ([`tree`]) that the writer and the reader share.
//! [`from_plan`] makes it from a plan, [`write`](mod@write) turns it into words.

pub mod from_plan;
pub mod lexicon;
pub mod tally;
pub mod tree;
pub mod write;

pub use lexicon::{Lexicon, Term};
pub use tally::{Tally, TallyError};
pub use tree::{Decrease, Line, Op, Pattern, Placed, Rounds, Span, StitchKind, Times};
pub use write::{HouseStyle, Writer};
