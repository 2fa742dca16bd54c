//! The command line.

mod files;
mod patterns;
mod shapes;
mod sizing;
mod verbs;
