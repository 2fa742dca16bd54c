//! Lengths, masses and metres of yarn as one person reads them: in a unit and a language.

use crate::language::Language;
use crate::length::Unit;

/// The unit a person works in, and the language that writes its numbers. Each text is that of
/// [`Unit`] with the decimal mark of the language.
///
/// ```
/// use plumpline_core::{Language, Unit, Units};
/// assert_eq!(Units { unit: Unit::Cm, language: Language::German }.text(93.2), "9,32 cm");
/// assert_eq!(Units::from(Unit::Cm).text(93.2), "9.32 cm");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Units {
    /// The unit of lengths; masses follow it.
    pub unit: Unit,
    /// The language of numbers and of the words around them.
    pub language: Language,
}

/// In English.
impl From<Unit> for Units {
    fn from(unit: Unit) -> Self {
        Self { unit, language: Language::English }
    }
}

impl Units {
    /// As [`Unit::text`].
    pub fn text(self, mm: f64) -> String {
        self.language.number(self.unit.text(mm))
    }

    /// As [`Unit::number`].
    pub fn number(self, mm: f64) -> String {
        self.language.number(self.unit.number(mm))
    }

    /// As [`Unit::rough_text`].
    pub fn rough_text(self, mm: f64) -> String {
        self.language.number(self.unit.rough_text(mm))
    }

    /// As [`Unit::rough_number`].
    pub fn rough_number(self, mm: f64) -> String {
        self.language.number(self.unit.rough_number(mm))
    }

    /// As [`Unit::short_number`].
    pub fn short_number(self, mm: f64) -> String {
        self.language.number(self.unit.short_number(mm))
    }

    /// As [`Unit::short_number`], with its unit: `10 cm`.
    pub fn short_text(self, mm: f64) -> String {
        format!("{} {}", self.short_number(mm), self.unit.symbol())
    }

    /// As [`Unit::yarn_text`].
    pub fn yarn_text(self, metres: f64) -> String {
        self.language.number(self.unit.yarn_text(metres))
    }

    /// As [`Unit::mass_text`].
    pub fn mass_text(self, grams: f64) -> String {
        self.language.number(self.unit.mass_text(grams))
    }

    /// As [`Unit::mass_range_text`].
    pub fn mass_range_text(self, low: f64, high: f64) -> String {
        self.language.number(self.unit.mass_range_text(low, high))
    }

    /// As [`Unit::mass_range`].
    pub fn mass_range(self, low: f64, high: f64) -> String {
        self.language.number(self.unit.mass_range(low, high))
    }

    /// As [`Unit::mass_symbol`].
    pub const fn mass_symbol(self) -> &'static str {
        self.unit.mass_symbol()
    }

    /// As [`Unit::symbol`].
    pub const fn symbol(self) -> &'static str {
        self.unit.symbol()
    }

    /// As [`Unit::grid_mm`].
    pub const fn grid_mm(self) -> f64 {
        self.unit.grid_mm()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_of_figure_has_the_comma_of_german_and_is_read_back() {
        let german = |unit| Units { unit, language: Language::German };
        assert_eq!(german(Unit::Mm).text(93.24), "93,2 mm");
        assert_eq!(german(Unit::Cm).rough_text(93.24), "9,3 cm");
        assert_eq!(german(Unit::Inch).short_text(88.9), "3,5 in");
        assert_eq!(german(Unit::Mm).yarn_text(14.6), "14,6 m");
        assert_eq!(german(Unit::Mm).mass_text(6.1), "6,1 g");
        assert_eq!(german(Unit::Mm).mass_range(4.3, 6.1), "4,3–6,1");
        let back = crate::length::parse(&german(Unit::Cm).text(93.2), Unit::Mm);
        assert!(back.is_ok_and(|mm| (mm - 93.2).abs() < 1e-9));
    }
}
