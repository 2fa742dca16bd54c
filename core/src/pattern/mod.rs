//! Written patterns: one stitch-level tree ([`tree`]) that the writer and the reader share.

pub mod course;
pub mod lexicon;
pub mod proofread;
pub mod read;
pub mod shape;
pub mod tally;
pub mod tree;

pub use lexicon::{Lexicon, Term};
pub use tally::{Tally, TallyError};
pub use tree::{Decrease, Line, Op, Pattern, Placed, Rounds, Span, StitchKind, Times};
