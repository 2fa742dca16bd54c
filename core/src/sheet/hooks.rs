//! Hook sizes: the same shaft by its US letter and its old UK number.

use super::length::knows_inches;
use crate::words::write::Writer;

/// Shaft, mm; US name; old UK and Canadian number. The US names are those of the Craft Yarn
/// Council's Standard Yarn Weight System; the rows are those found in two independent hook
/// tables that agree, 2.0, 15 and 19 mm in one. The older tables disagree about 3.75 mm in the
/// UK, and about 2.0 mm in the US.
const SIZES: [(f64, Option<&str>, Option<&str>); 17] = [
    (2.0, None, Some("14")),
    (2.25, Some("B-1"), Some("13")),
    (2.75, Some("C-2"), Some("12")),
    (3.25, Some("D-3"), Some("10")),
    (3.5, Some("E-4"), Some("9")),
    (3.75, Some("F-5"), None),
    (4.0, Some("G-6"), Some("8")),
    (4.5, Some("7"), Some("7")),
    (5.0, Some("H-8"), Some("6")),
    (5.5, Some("I-9"), Some("5")),
    (6.0, Some("J-10"), Some("4")),
    (6.5, Some("K-10 1/2"), Some("3")),
    (8.0, Some("L-11"), Some("0")),
    (9.0, Some("M/N-13"), Some("00")),
    (10.0, Some("N/P-15"), Some("000")),
    (15.0, Some("P/Q"), None),
    (19.0, Some("S"), None),
];

/// A hook in words: `3.5 mm (US E-4, old UK 9)`; by its shaft alone where no size has that,
/// and in languages whose hooks have no other names.
pub fn hook_size(mm: f64, writer: &Writer<'_>) -> String {
    // As many decimals as the shaft has: 2.25, 3.5, 4.
    let shaft = format!("{mm:.2}");
    let shaft = shaft.trim_end_matches('0').trim_end_matches('.');
    let shaft = format!("{} mm", writer.figure(shaft));
    let named = SIZES.iter().find(|(size, ..)| (size - mm).abs() < 0.01);
    let Some((_, us, uk)) = named.filter(|_| knows_inches(writer)) else { return shaft };
    let us = us.map(|us| format!("US {us}"));
    let uk = uk.map(|uk| format!("old UK {uk}"));
    let names = match writer.lexicon().code.as_str() {
        "en-uk" => [uk, us],
        _ => [us, uk],
    };
    let names: Vec<String> = names.into_iter().flatten().collect();
    format!("{shaft} ({})", names.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::lexicon::by_code;
    use crate::words::write::HouseStyle;

    #[test]
    fn a_hook_is_named_by_every_size_that_is_certain() {
        let said = |mm, code| {
            let lexicon = by_code(code).expect("a built-in lexicon");
            hook_size(mm, &Writer::new(HouseStyle::bench(), lexicon))
        };
        assert_eq!(said(3.5, "en-us"), "3.5 mm (US E-4, old UK 9)");
        assert_eq!(said(3.5, "en-uk"), "3.5 mm (old UK 9, US E-4)");
        assert_eq!(said(3.75, "en-us"), "3.75 mm (US F-5)");
        assert_eq!(said(2.0, "en-us"), "2 mm (old UK 14)");
        assert_eq!(said(19.0, "en-us"), "19 mm (US S)");
        assert_eq!(said(3.1, "en-us"), "3.1 mm");
        assert_eq!(said(3.5, "de"), "3,5 mm");
    }
}
