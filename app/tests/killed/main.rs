//! Killed at any moment. A program of its own, since what is killed is this program, run anew.

#[path = "../studio/homes.rs"]
mod homes;
mod making;
mod saving;
mod sheets;
