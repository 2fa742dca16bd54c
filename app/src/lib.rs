//! Plumpline's studio: drag a side profile, get whole stitches, see the stuffed shape.
//!
//! - [`studio`]: the window, what it holds and how it changes;
//! - [`board`]: the outline board; [`bars`]: the round bars;
//! - [`panels`]: everything round them, and how the window is divided;
//! - [`ui_kit`]: colours, type, icons.

pub mod bars;
pub mod board;
pub mod panels;
pub mod studio;
pub mod ui_kit;
