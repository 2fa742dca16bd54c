//! The command line.

mod files;
mod sizing;
mod verbs;
