//! A mass and its centre.

use crate::toy::vector::{V3, plus, scaled};

/// A mass and its centre.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Mass {
    /// g.
    pub grams: f64,
    /// In the toy's axes, mm.
    pub centre: V3,
}

impl Mass {
    /// As much at `other`'s place: how a thing that hangs on a cord pulls.
    #[must_use]
    pub fn at(self, centre: V3) -> Self {
        Self { centre, ..self }
    }
}

/// All masses as one.
pub fn sum(masses: impl IntoIterator<Item = Mass>) -> Mass {
    let (mut grams, mut moment) = (0.0, [0.0; 3]);
    for mass in masses {
        grams += mass.grams;
        moment = plus(moment, mass.centre, mass.grams);
    }
    let centre = if grams > 0.0 { scaled(moment, 1.0 / grams) } else { [0.0; 3] };
    Mass { grams, centre }
}
