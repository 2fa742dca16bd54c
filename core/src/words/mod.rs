//! Written patterns: one stitch-level tree ([`tree`]) that the writer and the reader share.
//! [`from_plan`] makes it from a plan, [`write`](mod@write) turns it into text, and [`words`] is
//! all that is read while a planned piece is worked.

pub mod course;
pub mod ease;
pub mod from_plan;
pub mod lexicon;
pub mod proofread;
pub mod read;
pub mod tally;
pub mod tree;
pub mod wording;
pub mod write;

pub use lexicon::{Lexicon, Term};
pub use tally::{Tally, TallyError};
pub use tree::{Decrease, Line, Op, Pattern, Placed, Rounds, Span, StitchKind, Times};
pub use wording::{Wording, words};
pub use write::{HouseStyle, Writer};

/// Text from the bytes of a file: UTF-8 with or without its mark, else Latin-1, which old
/// text files are in.
pub fn decoded(bytes: Vec<u8>) -> String {
    let text = String::from_utf8(bytes)
        .unwrap_or_else(|e| e.into_bytes().iter().map(|&b| char::from(b)).collect());
    text.strip_prefix('\u{feff}').map_or_else(|| text.clone(), str::to_owned)
}
