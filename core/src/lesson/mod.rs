//! The lesson: why an increase bends cloth.
//!
//! 1. [`curvature`]: the angle that each round's count takes away or puts in, a sum that is
//!    known before the first stitch;
//! 2. [`net`]: a piece as a net of its stitches;
//! 3. [`relax`]: the net let go in space, where too long an edge ruffles and stacked increases
//!    make corners;
//! 4. [`course`]: the lesson itself, as data: what it says, asks and has made by hand.

pub mod course;
pub mod curvature;
pub mod net;
pub mod relax;
mod space;

pub use course::LessonCourse;
pub use curvature::{ClosedEnds, Curvature, CurvatureSum, EdgeCurvature, RoundGain};
pub use net::{Net, NetEnd, NetRound};
pub use relax::{RelaxStep, Relaxation};
