//! Killed at any moment. A program of its own, since what is killed is this program, run anew.

mod every_call;
mod full_disk;
#[path = "../studio/homes.rs"]
mod homes;
mod kinds;
mod making;
mod saving;
mod sheets;
