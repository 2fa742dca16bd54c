//! Making: where a maker's hands are, stitch by stitch, and how they move on.
//!
//! 1. [`course`]: a plan as what the hands do, round by round, stitch by stitch;
//! 2. [`Progress`]: one copy of a piece, at one of its sizes, under the hook, as it is saved;
//! 3. [`steps`]: on by a stitch, a repeat or a round, back again, the stops between rounds;
//! 4. [`parted`]: what of it no longer fits when the plan has changed since;
//! 5. [`follow`]: whose progress is whose when pieces and sizes come and go;
//! 6. [`pace`]: time worked, and time left at the maker's own pace.
//!
//! There is no clock here: whoever calls says how many seconds were worked.

mod begun;
pub mod course;
mod follow;
pub mod pace;
pub mod parted;
pub(crate) mod progress;
pub mod steps;

pub use begun::Begun;
pub use course::{CourseRound, WorkedPiece};
pub use pace::Outlook;
pub use parted::Parted;
pub use progress::{LONGEST_NOTE, Making, Pace, Progress};
pub use steps::{By, ReturnPlace, Stand, Stop};
