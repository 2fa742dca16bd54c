//! Lengths in words: centimetres, and inches beside them.

/// `11.1 cm`.
pub(super) fn cm(mm: f64) -> String {
    format!("{:.1} cm", mm / 10.0)
}

/// `4 3/8 in`, to the nearest eighth.
pub fn inches(mm: f64) -> String {
    let eighths = (mm / 25.4 * 8.0).round().max(0.0) as u64;
    let (whole, rest) = (eighths / 8, eighths % 8);
    let part = match rest {
        0 => "",
        1 => "1/8",
        2 => "1/4",
        3 => "3/8",
        4 => "1/2",
        5 => "5/8",
        6 => "3/4",
        _ => "7/8",
    };
    match (whole, part) {
        (_, "") => format!("{whole} in"),
        (0, _) => format!("{part} in"),
        _ => format!("{whole} {part} in"),
    }
}

/// Metres in yards: 1 yd is 0.9144 m exactly.
pub(super) fn yards(metres: f64) -> f64 {
    metres / 0.9144
}

/// A figure without needless decimals: `312`, `21.7`, `22`.
pub(super) fn number(value: f64) -> String {
    let rounded = (value * 10.0).round() / 10.0;
    if rounded.fract() == 0.0 || rounded >= 100.0 {
        format!("{rounded:.0}")
    } else {
        format!("{rounded:.1}")
    }
}

/// An estimated amount, to no more places than it deserves.
pub(super) fn amount(value: f64) -> String {
    if value >= 9.95 { format!("{value:.0}") } else { format!("{value:.1}") }
}

pub(super) fn capitalise(text: &mut str) {
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inches_are_said_in_eighths() {
        assert_eq!(inches(25.4), "1 in");
        assert_eq!(inches(111.0), "4 3/8 in");
        assert_eq!(inches(3.2), "1/8 in");
        assert_eq!(inches(0.4), "0 in");
    }
}
