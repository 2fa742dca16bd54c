//! The command line.

mod characters;
mod files;
mod shapes;
mod sizing;
mod slow;
mod verbs;
