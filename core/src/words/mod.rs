//! Written patterns: one stitch-level tree ([`tree`]) that the writer and the reader share.
//! [`from_plan`] makes it from a plan, [`write`](mod@write) turns it into text, and [`words`] is
//! all that is read while a planned piece is worked.

pub mod course;
pub mod from_plan;
pub mod lexicon;
pub mod numerals;
pub mod proofread;
pub mod read;
pub mod simplicity;
pub mod stitches;
pub mod tally;
pub mod tree;
pub mod wording;
pub mod write;

pub use lexicon::{Lexicon, Term};
pub use tally::{Tally, TallyError};
pub use tree::{Decrease, Line, Op, Pattern, Placed, Rounds, Span, StitchKind, Times};
pub use wording::{Wording, words};
pub use write::{HouseStyle, Writer};
