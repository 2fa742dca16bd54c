//! The command line.

mod characters;
mod files;
mod patterns;
mod shapes;
mod sizing;
mod slow;
mod verbs;
