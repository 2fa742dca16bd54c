//! The bench for everybody: every place of the studio walked by name, by hand and by Tab.

#[path = "../bench/mod.rs"]
mod bench;
mod controls;
#[path = "../homes/mod.rs"]
mod homes;
mod keyboard;
mod places;
mod reach;
mod settings;
mod signs;
mod text;
