//! Plumpline's studio and command line, over [`plumpline_core`].
//!
//! - [`studio`]: the window, what it holds and how it changes;
//! - [`board`]: the outline board; [`bars`]: the round bars; [`body`]: the piece in 3-D;
//! - [`panels`]: everything round them, and how the window is divided;
//! - [`ui_kit`]: colours, type, icons;
//! - [`cli`]: the same work without a window; [`day`]: the day as records carry it.

pub mod bars;
pub mod board;
pub mod body;
pub mod cli;
pub mod day;
mod length;
pub mod panels;
pub mod sheet_file;
pub mod studio;
pub mod ui_kit;
