//! The whole toy: what follows from the parts that [`crate::project::toy`] saves.
//!
//! ```text
//! Project: pieces, parts ──► plan of each piece ──► pose of each part on its body's forecast
//!                                               ──► footprint, words, figures, pictures
//! ```
//!
//! 1. [`solid`]: the stuffed shape of a piece in space, its places named by rounds and turns;
//!    [`lean`]: the stitches that a person counts there; [`counted`]: whole ones to move by;
//!    [`narrow`]: places a shape finds itself;
//! 2. [`pose`]: where each part and each copy of it is;
//! 3. [`footprint`]: where a part meets the cloth, in rounds and stitches, and whether it fits;
//!    `room`: whether what is put into a body has room there;
//! 4. [`figures`]: mass, balance, wire, small parts; [`held`]: what holds it together;
//!    [`embroidered`]: lines and knots on the cloth, and their yarn;
//! 5. [`assembled`](mod@assembled): all of that in one pass;
//! 6. [`steps`]: how it is put together, in words, and cautions by who it is for.

pub mod assembled;
pub mod counted;
pub mod embroidered;
pub mod figures;
pub mod footprint;
pub mod held;
pub mod lean;
pub mod narrow;
pub mod pose;
mod room;
pub mod solid;
pub mod steps;
mod through;
pub mod vector;

pub use assembled::{Assembled, PartFigures, Point, assembled, assembled_of};
pub use steps::{AssemblyStep, Caution, StepKind, cautions, steps};
