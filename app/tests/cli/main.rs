//! The command line.

mod sizing;
mod verbs;
