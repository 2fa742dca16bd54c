//! What every panel is made of: colours, type, icons and a few controls.

#[macro_use]
pub mod words;

pub mod controls;
pub mod divide;
pub mod fit;
pub mod icons;
pub mod letters;
pub mod paint;
pub mod plot;
pub mod tokens;
pub mod type_faces;

pub use tokens::Tokens;
