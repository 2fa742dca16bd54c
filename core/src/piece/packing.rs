//! How densely a maker packs stuffing.

use std::fmt;

use serde::de::value::{MapAccessDeserializer, SeqAccessDeserializer};
use serde::de::{Deserializer, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Serialize};

use super::firmness::Firmness;
use crate::error::{Error, Result, within};

/// Stuffing in a litre of finished piece, g, by firmness.
///
/// Common practice, no source: published anchors lie far apart, 12–16 g/l in bed pillows,
/// about 38 g/l in one crocheted pumpkin, up to 100–130 g/l in one kit. Whoever weighs the
/// stuffing of a sample knows better.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Packing {
    /// At [`Firmness::SOFT`].
    pub soft: f64,
    /// At [`Firmness::MEDIUM`].
    pub medium: f64,
    /// At [`Firmness::FIRM`].
    pub firm: f64,
}

impl Default for Packing {
    fn default() -> Self {
        Self { soft: 20.0, medium: 35.0, firm: 55.0 }
    }
}

/// Strains past the words' own to which their densities are drawn on.
const STRAINS: (f64, f64) = (0.01, 0.11);

impl Packing {
    /// Grams a litre at `firmness`: drawn straight, in ratios, between the three words.
    pub fn at(&self, firmness: Firmness) -> f64 {
        let strain = firmness.0.clamp(STRAINS.0, STRAINS.1);
        let (from, to, below, above) = if strain < Firmness::MEDIUM.0 {
            (Firmness::SOFT.0, Firmness::MEDIUM.0, self.soft, self.medium)
        } else {
            (Firmness::MEDIUM.0, Firmness::FIRM.0, self.medium, self.firm)
        };
        below * (above / below).powf((strain - from) / (to - from))
    }

    /// The same maker's packing where a piece at `firmness` took `grams` a litre.
    #[must_use]
    pub fn weighed(&self, firmness: Firmness, grams: f64) -> Self {
        let times = grams / self.at(firmness);
        Self { soft: times * self.soft, medium: times * self.medium, firm: times * self.firm }
    }

    /// Refuses densities no stuffing has, and a firmer one that weighs less.
    ///
    /// # Errors
    /// Names the firmness that is out of range.
    pub(super) fn validate(&self) -> Result<()> {
        let Self { soft, medium, firm } = *self;
        within("habits.stuffing_g_per_litre, soft", soft, 0.1, 500.0, "g")?;
        within("habits.stuffing_g_per_litre, medium", medium, 0.1, 500.0, "g")?;
        within("habits.stuffing_g_per_litre, firm", firm, 0.1, 500.0, "g")?;
        if soft <= medium && medium <= firm {
            return Ok(());
        }
        Err(Error::new(
            "habits.stuffing_g_per_litre",
            format!("{soft}, {medium} and {firm} g do not grow from soft to firm"),
            "give soft no more than medium, and medium no more than firm",
        ))
    }
}

/// Least and most a litre at medium that version 1 gave everyone who had not said otherwise.
const UNCHOSEN: (f64, f64) = (16.0, 35.0);

impl<'de> Deserialize<'de> for Packing {
    fn deserialize<D: Deserializer<'de>>(input: D) -> std::result::Result<Self, D::Error> {
        input.deserialize_any(PackingVisitor)
    }
}

/// Reads three densities by name, or the least and most that version 1 wrote.
struct PackingVisitor;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Named {
    soft: f64,
    medium: f64,
    firm: f64,
}

impl<'de> Visitor<'de> for PackingVisitor {
    type Value = Packing;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("grams a litre: (soft: 20, medium: 35, firm: 55)")
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> std::result::Result<Packing, A::Error> {
        let Named { soft, medium, firm } = Named::deserialize(MapAccessDeserializer::new(map))?;
        Ok(Packing { soft, medium, firm })
    }

    fn visit_seq<A: SeqAccess<'de>>(self, seq: A) -> std::result::Result<Packing, A::Error> {
        let range = <(f64, f64)>::deserialize(SeqAccessDeserializer::new(seq))?;
        let usual = Packing::default();
        if range == UNCHOSEN {
            return Ok(usual);
        }
        Ok(usual.weighed(Firmness::MEDIUM, 0.5 * (range.0 + range.1)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn packing_grows_with_firmness_through_the_three_words() {
        let packing = Packing::default();
        assert!((packing.at(Firmness::SOFT) - 20.0).abs() < 1e-9);
        assert!((packing.at(Firmness::MEDIUM) - 35.0).abs() < 1e-9);
        assert!((packing.at(Firmness::FIRM) - 55.0).abs() < 1e-9);
        let at = |strain: f64| packing.at(Firmness(strain));
        assert!((1..15).all(|i| at(0.01 * f64::from(i)) <= at(0.01 * f64::from(i + 1))));
        assert!((packing.weighed(Firmness::FIRM, 110.0).soft - 40.0).abs() < 1e-9);
    }

    #[test]
    fn files_of_either_version_are_read() {
        let read = |text: &str| ron::from_str::<Packing>(text);
        assert_eq!(read("(16.0, 35.0)"), Ok(Packing::default()));
        let doubled = read("(60.0, 80.0)").expect("a range");
        assert!((doubled.medium - 70.0).abs() < 1e-9 && (doubled.firm - 110.0).abs() < 1e-9);
        let own = Packing { soft: 18.0, medium: 30.0, firm: 60.0 };
        let text = ron::to_string(&own).expect("it is written");
        assert_eq!(read(&text), Ok(own));
        assert!(read("(soft: 1)").is_err());
    }
}
