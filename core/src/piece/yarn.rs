//! Yarns, which the pieces of a project share.

use serde::{Deserialize, Serialize};

/// What a yarn looks like close by. It changes pictures alone: no count and no length.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum YarnFace {
    /// Plies that lie close, as in cotton; what a project has that says nothing.
    #[default]
    Smooth,
    /// Wool: plies under a halo of fibres.
    Wool,
    /// Chenille: a pile, no plies.
    Chenille,
}

impl YarnFace {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Smooth, Self::Wool, Self::Chenille];

    /// What it is called.
    pub fn name(self) -> &'static str {
        match self {
            Self::Smooth => "Smooth",
            Self::Wool => "Wool",
            Self::Chenille => "Chenille",
        }
    }

    fn is_smooth(&self) -> bool {
        *self == Self::Smooth
    }
}

/// A yarn of the project.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Yarn {
    /// The maker's name for it.
    pub name: String,
    /// Its colour, sRGB.
    pub colour: [u8; 3],
    /// Length of 100 g, m.
    pub metres_per_100g: f64,
    /// What a ball of it holds, g, where that is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ball_grams: Option<f64>,
    /// What it looks like close by.
    #[serde(default, skip_serializing_if = "YarnFace::is_smooth")]
    pub face: YarnFace,
}

impl Yarn {
    /// Mass of `metres` of this yarn, g.
    pub fn grams(&self, metres: f64) -> f64 {
        metres * 100.0 / self.metres_per_100g
    }

    /// The letter that stands for the yarn wherever colour alone must not: A, B, C …, then
    /// A2, B2 …
    pub fn letter(index: usize) -> String {
        let letter = char::from(b'A' + (index % 26) as u8);
        if index < 26 { letter.to_string() } else { format!("{letter}{}", index / 26 + 1) }
    }

    /// A yarn in one of the three house colours, chosen by its place in the list.
    pub fn plain(index: usize) -> Self {
        const COLOURS: [(&str, [u8; 3]); 3] = [
            ("Madder", [0xB8, 0x56, 0x40]),
            ("Oat", [0xE6, 0xD2, 0xA6]),
            ("Lagoon", [0x3E, 0x7D, 0x8A]),
        ];
        let (name, colour) = COLOURS[index % COLOURS.len()];
        Self {
            name: name.into(),
            colour,
            metres_per_100g: 240.0,
            ball_grams: None,
            face: YarnFace::default(),
        }
    }
}
