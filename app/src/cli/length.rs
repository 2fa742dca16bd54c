//! Lengths on the command line.

use plumpline_core::{Unit, length};

/// A length in mm. Without a unit a number is mm.
///
/// # Errors
/// One line that says what was read, for clap to show.
pub(crate) fn parse_mm(text: &str) -> Result<f64, String> {
    length::parse(text, Unit::Mm)
}
