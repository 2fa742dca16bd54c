//! The faces the studio is set in, and its four sizes.
//!
//! Routed Gothic names things (its 1 looks like an I, so it never sets numerals); Nunito
//! Sans sets everything else and all that a person has typed.

use egui::{FontData, FontDefinitions, FontFamily, FontId};

const REGULAR: &str = "nunito-sans-400";
const SEMIBOLD: &str = "nunito-sans-600";
const BOLD: &str = "nunito-sans-700";
const DRAFTING: &str = "routed-gothic";

/// Size of labels.
pub const SMALL: f32 = 11.0;
/// Size of wording and controls.
pub const BODY: f32 = 13.0;
/// Size of titles and values.
pub const TITLE: f32 = 16.0;
/// Size of the one big figure.
pub const BIG: f32 = 24.0;

/// The face that sets numerals, as its file holds it.
pub const REGULAR_FILE: &[u8] = include_bytes!("../../../assets/fonts/nunito-sans-400.ttf");

/// The face of titles that a person gave, as its file holds it.
pub const BOLD_FILE: &[u8] = include_bytes!("../../../assets/fonts/nunito-sans-700.ttf");

/// The faces, embedded.
pub fn definitions() -> FontDefinitions {
    let mut fonts = FontDefinitions::empty();
    let files: [(&str, &'static [u8]); 4] = [
        (REGULAR, REGULAR_FILE),
        (SEMIBOLD, include_bytes!("../../../assets/fonts/nunito-sans-600.ttf")),
        (BOLD, BOLD_FILE),
        (DRAFTING, include_bytes!("../../../assets/fonts/routed-gothic.ttf")),
    ];
    for (name, bytes) in files {
        fonts.font_data.insert(name.into(), FontData::from_static(bytes).into());
    }
    let families = [
        (FontFamily::Proportional, vec![REGULAR]),
        (FontFamily::Monospace, vec![REGULAR]),
        (FontFamily::Name(SEMIBOLD.into()), vec![SEMIBOLD]),
        (FontFamily::Name(BOLD.into()), vec![BOLD]),
        (FontFamily::Name(DRAFTING.into()), vec![DRAFTING, REGULAR]),
    ];
    for (family, names) in families {
        fonts.families.insert(family, names.into_iter().map(str::to_owned).collect());
    }
    fonts
}

/// Nunito Sans 400.
pub fn regular(size: f32) -> FontId {
    FontId::new(size, FontFamily::Proportional)
}

/// Nunito Sans 600.
pub fn semibold(size: f32) -> FontId {
    FontId::new(size, FontFamily::Name(SEMIBOLD.into()))
}

/// Nunito Sans 700.
pub fn bold(size: f32) -> FontId {
    FontId::new(size, FontFamily::Name(BOLD.into()))
}

/// Routed Gothic; no numerals.
pub fn drafting(size: f32) -> FontId {
    FontId::new(size, FontFamily::Name(DRAFTING.into()))
}
