//! The command line.

mod files;
mod shapes;
mod sizing;
mod verbs;
