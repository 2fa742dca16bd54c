//! Plumpline's model: from a wanted profile and a gauge to whole stitches, words and
//! estimates. Pure and deterministic: no windows, no threads, no clock.
//!
//! A [`Project`] is what a person saves; [`plan`](plan()) turns one of its [`Piece`]s into a
//! [`Plan`], in this order:
//!
//! 1. [`outline`]: the knots, as a smooth curve sampled by arc length;
//! 2. [`gauge`] and [`cloth`]: stitch width and height of every round of the maker's cloth;
//! 3. [`skin`]: the unstuffed cloth that would stuff into that profile, in closed form;
//! 4. [`counts`]: whole stitches per round, by dynamic programming and a polish;
//! 5. [`forecast`]: the profile those rounds really take when stuffed, and its fit;
//! 6. [`placement`]: which stitch of each round is an increase, a decrease, a plain one;
//! 7. [`pattern`], [`wording`], [`estimate`], [`bend`], [`warning`]: what people read and look at.
//!
//! Beside that flow, pieces and projects are made from pieces and projects: [`sizes`] plans one
//! anew at another size, [`companion`] makes two meet, [`another_yarn`] swaps the yarn, and
//! [`calibrate`] learns the maker's cloth from a finished sample.
//!
//! [`making`] follows the hands through a plan, stitch by stitch. [`picture`] draws a plan as
//! polygons for whoever shows it; [`length`] reads and writes lengths in people's own units.
//!
//! Lengths are mm, masses g; `z` grows along the axis in working order from the start pole.

pub mod another_yarn;
pub mod bend;
pub mod calibrate;
pub mod cloth;
pub mod companion;
pub mod counts;
pub mod disk;
pub mod ease;
mod error;
pub mod estimate;
pub mod file;
pub mod forecast;
pub mod gauge;
pub mod length;
pub mod making;
pub mod outline;
pub mod pattern;
pub mod picture;
pub mod piece;
pub mod placement;
mod plan;
mod project;
mod seam;
pub mod sheet;
pub mod sizes;
pub mod skin;
pub mod starter;
pub mod warning;
pub mod wording;

pub use cloth::{Hand, Kind, KindFrom, Loop, Swatches, Working};
pub use error::{Error, LONGEST_NAME, LONGEST_TEXT, Result, plain};
pub use gauge::Gauge;
pub use length::Unit;
pub use outline::{Hold, Knot, Outline, Rz};
pub use piece::{Band, Face, Firmness, Habits, Piece, Rules, Spread};
pub use plan::{Plan, Round, plan};
pub use project::{FORMAT_VERSION, Project, WordingChoice, Yarn};
pub use seam::Seam;
pub use sizes::{Size, SizeBy};
