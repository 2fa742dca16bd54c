//! Plumpline's model: from a wanted profile and a gauge to whole stitches, words and
//! estimates. Pure and deterministic: no windows, no threads, no clock.
//!
//! A [`Project`] is what a person saves; [`plan`](plan()) turns one of its [`Piece`]s into a
//! [`Plan`]. The folders stand in the order in which one thing is made from another:
//!
//! 1. [`piece`]: what a person decides about one shape: outline, gauge, cloth, rules;
//! 2. [`plan`](mod@plan): the unstuffed skin, whole stitches, the stuffed shape they take, where each
//!    increase falls, and what all that needs;
//! 3. [`words`]: written patterns, as a tree: written, read and proofread;
//! 4. [`project`]: what is saved, and what is made from whole projects: sizes, seams, another
//!    yarn, the maker's cloth, the making itself;
//! 5. [`toy`]: the parts of a project in their places, what they weigh, how they hang or stand;
//! 6. [`picture`]: a plan drawn stitch by stitch, as charts and as schematics;
//! 7. [`lesson`]: why an increase bends cloth: curvature counted, and cloth let go stitch by
//!    stitch;
//! 8. [`sheet`]: the pattern as it is given to others.
//!
//! ```
//! use plumpline_core::words::Writer;
//! use plumpline_core::{Gauge, Knot, Outline, Piece, Project, plan, sheet, words};
//!
//! // An egg 80 mm long, from a ring to a drawn end, at 22 stitches and 24 rounds to 10 cm.
//! let outline = Outline::new(vec![
//!     Knot::new(0.0, 0.0),
//!     Knot::new(30.0, 30.0),
//!     Knot::new(22.0, 60.0),
//!     Knot::new(0.0, 80.0),
//! ])?;
//! let egg = Piece::new("Egg", outline, Gauge::per(22.0, 24.0, 100.0));
//!
//! let plan = plan(&egg)?;
//! assert!((plan.size_mm.height - 80.0).abs() < 5.0, "stuffed, it is about as long");
//!
//! let words = words(&plan, &egg, &Writer::bench());
//! assert!(words.lines[0].text.ends_with("sc in magic ring"));
//!
//! // The same on a sheet for somebody else.
//! let text = sheet::text(&Project::of_piece(egg))?;
//! assert!(text.contains(&words.lines[1].text));
//! # Ok::<(), plumpline_core::Error>(())
//! ```
//!
//! [`length`] reads and writes lengths in people's own units, a [`Sentence`] keeps them as
//! lengths, and its notes as keys, until somebody reads them in [`Units`]; [`Error`] says what, where and the mend.
//!
//! Lengths are mm, masses g; `z` grows along the axis in working order from the start pole.

pub mod piece;

pub mod plan;

pub mod words;

pub mod project;

pub mod toy;

pub mod picture;

pub mod lesson;

pub mod sheet;

pub mod disk;
mod error;
mod extent;
mod language;
pub mod length;
mod note;
mod sentence;
mod units;

pub use piece::{cloth, gauge, outline, starter};
pub use plan::{bend, counts, estimate, forecast, placement, skin, warning};
pub use project::{another_yarn, calibrate, companion, file, making, sizes};
pub use words as pattern;
pub use words::{simplicity, wording};

pub use error::{Error, LONGEST_NAME, LONGEST_TEXT, Result, plain};
pub use extent::{Bounds, Extent, StitchSize};
pub use language::Language;
pub use length::Unit;
pub use piece::cloth::{Hand, Kind, KindFrom, Loop, Swatches, Working};
pub use piece::gauge::Gauge;
pub use piece::outline::{Hold, Knot, Outline, Rz};
pub use piece::{
    Accepted, Band, Face, Firmness, Habits, Piece, PieceId, Rules, Spread, Variation, Yarn,
    YarnFace,
};
pub use plan::{Plan, Round, plan, plan_draft};
pub use project::seam::Seam;
pub use project::sizes::{Size, SizeBy};
pub use project::{FORMAT_VERSION, Project, WordingChoice};
pub use sentence::{NoteValue, Sentence};
pub use units::Units;
pub use words::{Wording, words};
