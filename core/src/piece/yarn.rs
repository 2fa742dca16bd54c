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
    /// Where it comes from, as its band says: maker, range and shade, in a line of the
    /// designer's own. Empty where nothing is said.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub brand: String,
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

    /// Whole balls that hold `metres` of it, at least one; none where nobody has said what a
    /// ball holds. A crumb over a whole ball, a hundredth of one, is within any estimate.
    pub fn balls(&self, metres: f64) -> Option<u32> {
        let balls = self.grams(metres) / self.ball_grams?;
        Some((balls - 0.01).ceil().max(1.0) as u32)
    }

    /// Length of a ball of it, m; none where nobody has said what a ball holds.
    pub fn ball_metres(&self) -> Option<f64> {
        self.ball_grams.map(|grams| 0.01 * grams * self.metres_per_100g)
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
            brand: String::new(),
            colour,
            metres_per_100g: 240.0,
            ball_grams: None,
            face: YarnFace::default(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn balls_are_whole_and_known_where_a_ball_is() {
        let yarn = Yarn { ball_grams: Some(50.0), ..Yarn::plain(0) };
        // 240 m in 100 g: a ball of 50 g is 120 m long.
        assert_eq!(yarn.ball_metres(), Some(120.0));
        let balls = [1.0, 120.0, 120.5, 130.0, 360.0].map(|metres| yarn.balls(metres));
        assert_eq!(balls, [Some(1), Some(1), Some(1), Some(2), Some(3)]);
        assert_eq!(Yarn::plain(0).balls(10.0), None);
    }
}
