//! Hook sizes: the same shaft by its US letter and its old UK number.

/// Shaft, mm; US name; old UK and Canadian number. The US names are those of the Craft Yarn
/// Council's Standard Yarn Weight System; the rows are those found in two independent hook
/// tables that agree. The older tables disagree about 3.75 mm in the UK.
const SIZES: [(f64, &str, Option<&str>); 14] = [
    (2.25, "B-1", Some("13")),
    (2.75, "C-2", Some("12")),
    (3.25, "D-3", Some("10")),
    (3.5, "E-4", Some("9")),
    (3.75, "F-5", None),
    (4.0, "G-6", Some("8")),
    (4.5, "7", Some("7")),
    (5.0, "H-8", Some("6")),
    (5.5, "I-9", Some("5")),
    (6.0, "J-10", Some("4")),
    (6.5, "K-10 1/2", Some("3")),
    (8.0, "L-11", Some("0")),
    (9.0, "M/N-13", Some("00")),
    (10.0, "N/P-15", Some("000")),
];

/// A hook in words: `3.5 mm (US E-4, UK 9)`; by its shaft alone where no size has that.
pub fn hook_size(mm: f64) -> String {
    // As many decimals as the shaft has: 2.25, 3.5, 4.
    let shaft = format!("{mm:.2}");
    let shaft = shaft.trim_end_matches('0').trim_end_matches('.');
    match SIZES.iter().find(|(size, ..)| (size - mm).abs() < 0.01) {
        Some((_, us, Some(uk))) => format!("{shaft} mm (US {us}, UK {uk})"),
        Some((_, us, None)) => format!("{shaft} mm (US {us})"),
        None => format!("{shaft} mm"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hook_is_named_by_every_size_that_is_certain() {
        assert_eq!(hook_size(3.5), "3.5 mm (US E-4, UK 9)");
        assert_eq!(hook_size(3.75), "3.75 mm (US F-5)");
        assert_eq!(hook_size(4.0), "4 mm (US G-6, UK 8)");
        assert_eq!(hook_size(3.1), "3.1 mm");
    }
}
