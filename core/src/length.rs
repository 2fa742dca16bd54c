//! Lengths as people write them: read from `12 cm`, `3 1/2 in` or `2ft`, written in the unit
//! a person works in. Inside everything is mm.

use serde::{Deserialize, Serialize};

/// Inches and feet, mm: exact by definition since the international yard and pound agreement
/// of 1959.
const INCH_MM: f64 = 25.4;
const FOOT_MM: f64 = 12.0 * INCH_MM;

/// A yard, m, and an avoirdupois ounce, g: exact by the same agreement.
const YARD_M: f64 = 0.9144;
const OUNCE_G: f64 = 28.349_523_125;

/// The unit lengths are shown in, and read in where none is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Unit {
    /// Centimetres.
    Cm,
    /// Millimetres.
    #[default]
    Mm,
    /// Inches.
    Inch,
}

impl Unit {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Cm, Self::Mm, Self::Inch];

    /// What stands after a number: `cm`.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Cm => "cm",
            Self::Mm => "mm",
            Self::Inch => "in",
        }
    }

    /// Its name in full: `centimetres`.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Cm => "centimetres",
            Self::Mm => "millimetres",
            Self::Inch => "inches",
        }
    }

    /// How long one is, mm.
    pub const fn mm(self) -> f64 {
        match self {
            Self::Cm => 10.0,
            Self::Mm => 1.0,
            Self::Inch => INCH_MM,
        }
    }

    /// What drawn places snap to, mm: whole millimetres, sixteenths of an inch.
    pub const fn grid_mm(self) -> f64 {
        match self {
            Self::Cm | Self::Mm => 1.0,
            Self::Inch => INCH_MM / 16.0,
        }
    }

    /// A length of yarn, to about a decimetre: `14.6 m`, in yards where a person works in
    /// inches: `16.0 yd`. From a thousand on to a whole one, thousands apart: `3 750 m`.
    pub fn yarn_text(self, metres: f64) -> String {
        match self {
            Self::Cm | Self::Mm => format!("{} m", long_number(metres)),
            Self::Inch => format!("{} yd", long_number(metres / YARD_M)),
        }
    }

    /// A mass of yarn or stuffing: `6.1 g`, `22 g`, in ounces where a person works in inches:
    /// `0.22 oz`. Thousands stand apart: `1 562 g`.
    pub fn mass_text(self, grams: f64) -> String {
        format!("{} {}", self.mass_number(grams), self.mass_symbol())
    }

    /// Two masses, the lower first: `9–14 g`.
    pub fn mass_range_text(self, low: f64, high: f64) -> String {
        format!("{} {}", self.mass_range(low, high), self.mass_symbol())
    }

    /// The same without its unit: `9–14`; one number where both are told alike.
    pub fn mass_range(self, low: f64, high: f64) -> String {
        // As fine as the higher one is told: `4–12`, not `4.3–12`.
        let fine = |grams: f64| match self {
            Self::Cm | Self::Mm if high >= 9.95 => format!("{grams:.0}"),
            Self::Inch if high >= 9.95 * OUNCE_G => format!("{:.1}", grams / OUNCE_G),
            _ => self.mass_number(grams),
        };
        let (from, to) = (fine(low), fine(high));
        if from == to { to } else { format!("{from}–{to}") }
    }

    /// What stands after a mass: `g`.
    pub const fn mass_symbol(self) -> &'static str {
        match self {
            Self::Cm | Self::Mm => "g",
            Self::Inch => "oz",
        }
    }

    /// A mass as a number, to about what kitchen scales tell.
    pub fn mass_number(self, grams: f64) -> String {
        match self {
            Self::Cm | Self::Mm if grams < 9.95 => format!("{grams:.1}"),
            Self::Cm | Self::Mm if grams < 999.5 => format!("{grams:.0}"),
            Self::Cm | Self::Mm => grouped(grams.round() as u64),
            Self::Inch if grams < 9.95 * OUNCE_G => format!("{:.2}", grams / OUNCE_G),
            Self::Inch => long_number(grams / OUNCE_G),
        }
    }

    /// A length as a number, to about a tenth of a millimetre: `93.2`, `9.32`, `3.67`.
    pub fn number(self, mm: f64) -> String {
        self.places(mm, if self == Self::Mm { 1 } else { 2 })
    }

    /// The same with its unit: `9.32 cm`.
    pub fn text(self, mm: f64) -> String {
        self.with_symbol(&self.number(mm))
    }

    /// A length to about a millimetre, for sizes at a glance: `93`, `9.3`, `3.7`.
    pub fn rough_number(self, mm: f64) -> String {
        self.places(mm, if self == Self::Mm { 0 } else { 1 })
    }

    /// The same with its unit: `9.3 cm`.
    pub fn rough_text(self, mm: f64) -> String {
        self.with_symbol(&self.rough_number(mm))
    }

    /// A length without needless decimals, for fields: `100`, `10`, `3.94`.
    pub fn short_number(self, mm: f64) -> String {
        let text = self.places(mm, 2);
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }

    fn with_symbol(self, number: &str) -> String {
        format!("{number} {}", self.symbol())
    }

    /// Nothing rounds to a nought below nought.
    fn places(self, mm: f64, places: usize) -> String {
        let text = format!("{:.places$}", mm / self.mm());
        let nought = text.bytes().all(|b| matches!(b, b'-' | b'0' | b'.'));
        match text.strip_prefix('-') {
            Some(size) if nought => size.to_owned(),
            _ => text,
        }
    }
}

/// Reads a length greater than nothing, mm; a bare number is in `bare`.
///
/// A length is a number and a unit (mm, cm, m, in, ft or the marks " and '), or several of
/// them added up. A number may have a decimal comma or point, or a fraction: `3 1/2 in`,
/// `2½"`, `1 ft 3 in`.
///
/// # Errors
/// One line that says what was read, and how a length is written.
pub fn parse(text: &str, bare: Unit) -> Result<f64, String> {
    match total(text, bare)? {
        mm if mm > 0.0 => Ok(mm),
        _ => Err(no_length(text)),
    }
}

/// Reads a place along an axis, mm: a length that may also be nothing, or below it.
///
/// # Errors
/// As of [`parse`].
pub fn parse_place(text: &str, bare: Unit) -> Result<f64, String> {
    let trimmed = text.trim();
    match trimmed.strip_prefix(['-', '−']) {
        // Never the nought below nought.
        Some(size) => total(size, bare).map(|mm| 0.0 - mm),
        None => total(trimmed, bare),
    }
}

fn no_length(text: &str) -> String {
    format!("“{}” is no length; write it like 10 cm or 4 in", text.trim())
}

fn of_unit(c: char) -> bool {
    c.is_alphabetic() || matches!(c, '"' | '\'' | '″' | '′' | '”' | '’')
}

/// The sum of all parts, mm; never below nothing.
fn total(text: &str, bare: Unit) -> Result<f64, String> {
    let lower = text.to_lowercase();
    let mut rest = lower.trim();
    let (mut sum, mut parts) = (0.0, 0);
    let mut without_unit = false;
    while !rest.is_empty() {
        let (words, after) = rest.split_at(rest.find(of_unit).unwrap_or(rest.len()));
        let end = after.find(|c| !of_unit(c)).unwrap_or(after.len());
        let (unit, after) = after.split_at(end);
        let number = number(words).ok_or_else(|| no_length(text))?;
        without_unit |= unit.is_empty();
        parts += 1;
        sum += number * if unit.is_empty() { bare.mm() } else { unit_mm(unit)? };
        rest = after.trim_start();
    }
    // Of `1 ft 3` nobody can tell what the 3 is.
    let clear = parts == 1 || (parts > 1 && !without_unit);
    if clear && f64::is_finite(sum) { Ok(sum) } else { Err(no_length(text)) }
}

fn unit_mm(unit: &str) -> Result<f64, String> {
    Ok(match unit {
        "mm" => 1.0,
        "cm" => 10.0,
        "m" => 1000.0,
        "in" | "inch" | "inches" | "\"" | "″" | "”" => INCH_MM,
        "ft" | "foot" | "feet" | "'" | "′" | "’" => FOOT_MM,
        other => return Err(format!("“{other}” is no unit; use mm, cm, m, in or ft")),
    })
}

/// A number not below nothing: whole, decimal, a fraction, or a whole number and a fraction.
fn number(words: &str) -> Option<f64> {
    let mut words = words.trim();
    let mut part = 0.0;
    let vulgar = [('½', 0.5), ('¼', 0.25), ('¾', 0.75), ('⅛', 0.125)];
    let eighths = [('⅜', 0.375), ('⅝', 0.625), ('⅞', 0.875)];
    let last = words.chars().last()?;
    if let Some((sign, value)) = vulgar.into_iter().chain(eighths).find(|&(s, _)| s == last) {
        part = value;
        words = words.strip_suffix(sign)?.trim();
        if words.is_empty() {
            return Some(part);
        }
    } else if let Some((above, below)) = words.split_once('/') {
        let (whole, above) = above.trim().rsplit_once(' ').unwrap_or(("", above.trim()));
        let (above, below) = (digits(above)?, digits(below.trim())?);
        if below == 0.0 {
            return None;
        }
        part = above / below;
        words = whole.trim();
        if words.is_empty() {
            return Some(part);
        }
    }
    // A decimal and a fraction do not go together.
    Some(if part > 0.0 { digits(words)? + part } else { decimal(words)? })
}

fn digits(words: &str) -> Option<f64> {
    let whole = !words.is_empty() && words.bytes().all(|b| b.is_ascii_digit());
    whole.then(|| words.parse().ok()).flatten()
}

fn decimal(words: &str) -> Option<f64> {
    let words = words.replace(',', ".");
    let plain = words.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    plain.then(|| words.parse().ok()).flatten()
}

/// A whole number in groups of three: `1 203`.
pub fn grouped(number: u64) -> String {
    if number >= 1000 {
        format!("{} {:03}", grouped(number / 1000), number % 1000)
    } else {
        number.to_string()
    }
}

/// A number to one decimal, from a thousand on to none, thousands apart.
fn long_number(value: f64) -> String {
    if value < 999.95 { format!("{value:.1}") } else { grouped(value.round() as u64) }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What is read, to a millionth of a millimetre.
    fn read(text: &str, bare: Unit) -> Result<f64, String> {
        parse(text, bare).map(|mm| (mm * 1e6).round() / 1e6)
    }

    #[test]
    fn yarn_and_stuffing_are_told_as_a_reader_buys_them() {
        assert_eq!(Unit::Mm.yarn_text(14.6), "14.6 m");
        assert_eq!(Unit::Mm.yarn_text(3749.8), "3 750 m");
        assert_eq!(Unit::Mm.yarn_text(999.96), "1 000 m");
        assert_eq!(Unit::Mm.mass_text(1562.4), "1 562 g");
        assert_eq!(grouped(62), "62");
        assert_eq!(grouped(1_000_042), "1 000 042");
        assert_eq!(Unit::Inch.yarn_text(9.144), "10.0 yd");
        assert_eq!(Unit::Cm.mass_range_text(8.6, 14.2), "9–14 g");
        assert_eq!(Unit::Inch.mass_text(28.349_523_125), "1.00 oz");
        assert_eq!(Unit::Inch.mass_range_text(0.01, 0.02), "0.00 oz");
    }

    #[test]
    fn lengths_in_every_unit() {
        let mm = |text| read(text, Unit::Mm);
        assert_eq!(mm("9 cm"), Ok(90.0));
        assert_eq!(mm("90mm"), Ok(90.0));
        assert_eq!(mm("3.5 in"), Ok(88.9));
        assert_eq!(mm("2ft"), Ok(609.6));
        assert_eq!(mm(" 4 IN "), Ok(101.6));
        assert_eq!(mm("7,5 mm"), Ok(7.5));
        assert_eq!(mm("1.2 m"), Ok(1200.0));
        assert_eq!(mm("3\""), Ok(76.2));
    }

    #[test]
    fn a_bare_number_is_in_the_unit_in_use() {
        assert_eq!(read("11", Unit::Mm), Ok(11.0));
        assert_eq!(read("11", Unit::Cm), Ok(110.0));
        assert_eq!(read("2", Unit::Inch), Ok(50.8));
    }

    #[test]
    fn inches_come_in_fractions() {
        assert_eq!(read("3 1/2", Unit::Inch), Ok(88.9));
        assert_eq!(read("3/8 in", Unit::Mm), Ok(9.525));
        assert_eq!(read("2½\"", Unit::Mm), Ok(63.5));
        assert_eq!(read("½ in", Unit::Mm), Ok(12.7));
        assert_eq!(read("1 ft 3 in", Unit::Mm), Ok(381.0));
    }

    #[test]
    fn what_is_no_length_is_told() {
        for text in [
            "",
            " ",
            "a lot",
            "0",
            "0 cm",
            "-3cm",
            "3 ells",
            "NaN",
            "inf",
            "1e3",
            "1..2",
            "3/0",
            "/2",
            "1 2 3 cm",
            "1 ft 3",
            "1.5 1/2 in",
            "cm",
            "+4",
            "1.2,3",
        ] {
            let error = parse(text, Unit::Mm).expect_err(text);
            assert!(error.contains("is no") && !error.contains('\n'), "{error}");
        }
        assert!(parse("3 ells", Unit::Mm).expect_err("ells").contains("ells"));
    }

    #[test]
    fn places_may_be_nothing_or_below() {
        assert_eq!(parse_place("0", Unit::Cm), Ok(0.0));
        assert_eq!(parse_place("-2 cm", Unit::Mm), Ok(-20.0));
        assert_eq!(parse_place("−1/2", Unit::Inch), Ok(-12.7));
        assert!(parse_place("-0", Unit::Mm).is_ok_and(f64::is_sign_positive));
        assert!(parse_place("--1", Unit::Mm).is_err());
    }

    #[test]
    fn numbers_are_as_fine_as_they_are_true() {
        assert_eq!(Unit::Mm.text(93.24), "93.2 mm");
        assert_eq!(Unit::Cm.text(93.24), "9.32 cm");
        assert_eq!(Unit::Inch.text(93.24), "3.67 in");
        assert_eq!(Unit::Cm.rough_text(93.24), "9.3 cm");
        assert_eq!(Unit::Mm.rough_number(93.5), "94");
        assert_eq!(Unit::Cm.short_number(100.0), "10");
        assert_eq!(Unit::Mm.short_number(100.0), "100");
        assert_eq!(Unit::Inch.short_number(101.6), "4");
    }

    #[test]
    fn nothing_is_never_below_nothing() {
        for unit in Unit::ALL {
            for mm in [-0.0, -0.01, -0.004, 0.0] {
                for text in [unit.number(mm), unit.rough_number(mm), unit.short_number(mm)] {
                    let value: f64 = text.parse().expect("a number");
                    assert!(value != 0.0 || value.is_sign_positive(), "{mm} mm: {text}");
                }
            }
        }
        assert_eq!(Unit::Mm.number(-0.04), "0.0");
        assert_eq!(Unit::Mm.number(-0.3), "-0.3");
    }

    #[test]
    fn what_is_written_is_read_back() {
        for unit in Unit::ALL {
            for i in 1..2000 {
                let mm = 0.37 * f64::from(i);
                let back = parse(&unit.text(mm), Unit::Mm).expect("a length");
                assert!((back - mm).abs() <= 0.13, "{mm} mm in {}: {back}", unit.name());
            }
        }
    }
}
