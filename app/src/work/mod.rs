//! What is worked out from the project, and what is read and written: the plan at once, all
//! that takes longer than a frame on threads.

pub mod body;
pub mod body_file;
pub mod carried;
pub mod day;
mod decoding;
pub mod ending;
pub(crate) mod faces;
pub mod files;
pub mod folders;
pub mod home;
pub mod lesson;
pub mod lesson_file;
pub mod line_up;
pub mod lingering;
pub mod making;
pub mod outlining;
pub(crate) mod own_pictures;
mod pace;
mod pattern_file;
pub mod picture;
pub mod plan;
pub mod proofread;
pub(crate) mod shape_file;
pub(crate) mod shape_reading;
pub mod sheet;
pub mod sheet_file;
pub mod sizes;
pub mod small_pictures;
pub mod still;
pub mod toy;
pub mod trade;
pub mod watch;
pub(crate) mod whole_toy;
pub mod worker;
