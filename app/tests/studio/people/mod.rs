//! The bench for everybody: every place of the studio walked by name, by hand and by Tab.

mod controls;
mod keyboard;
mod language;
mod overlap;
mod places;
mod reach;
mod settings;
mod signs;
mod text;
mod typing;
