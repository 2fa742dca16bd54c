//! Whole numbers in words, for what is said aloud.

/// What a number stands with: languages with genders say one thing before a noun and another
/// by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NumeralFor {
    /// By itself: “vuelta veintiuno”.
    Itself,
    /// Before a masculine noun: “veintiún puntos”.
    Masculine,
    /// Before a feminine noun: “vingt et une mailles”.
    Feminine,
}

/// `n` in words of the language of this code (`en`, `de`, `fr`, `es`; the part before the
/// hyphen counts); in figures from 10,000 on, and in other languages.
pub fn numeral(n: u32, code: &str, with: NumeralFor) -> String {
    if n >= 10_000 {
        return n.to_string();
    }
    match code.split('-').next() {
        Some("en") => english(n),
        Some("de") => german(n),
        Some("fr") => french(n, with),
        Some("es") => spanish(n, with),
        _ => n.to_string(),
    }
}

fn english(n: u32) -> String {
    const SMALL: [&str; 20] = [
        "zero",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "thirteen",
        "fourteen",
        "fifteen",
        "sixteen",
        "seventeen",
        "eighteen",
        "nineteen",
    ];
    const TENS: [&str; 10] =
        ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];
    match n {
        0..20 => SMALL[n as usize].into(),
        20..100 => joined(TENS[n as usize / 10], n % 10, "-", english),
        100..1000 => joined(&format!("{} hundred", english(n / 100)), n % 100, " ", english),
        _ => joined(&format!("{} thousand", english(n / 1000)), n % 1000, " ", english),
    }
}

/// `head`, and what is left over after it, if anything.
fn joined(head: &str, rest: u32, by: &str, say: impl Fn(u32) -> String) -> String {
    if rest == 0 { head.to_owned() } else { format!("{head}{by}{}", say(rest)) }
}

fn german(n: u32) -> String {
    const SMALL: [&str; 20] = [
        "null",
        "eins",
        "zwei",
        "drei",
        "vier",
        "fünf",
        "sechs",
        "sieben",
        "acht",
        "neun",
        "zehn",
        "elf",
        "zwölf",
        "dreizehn",
        "vierzehn",
        "fünfzehn",
        "sechzehn",
        "siebzehn",
        "achtzehn",
        "neunzehn",
    ];
    const TENS: [&str; 10] = [
        "", "", "zwanzig", "dreißig", "vierzig", "fünfzig", "sechzig", "siebzig", "achtzig",
        "neunzig",
    ];
    // “ein” inside a longer number: einundzwanzig, einhundert.
    let inside = |n: u32| if n == 1 { "ein".to_owned() } else { german(n) };
    match n {
        0..20 => SMALL[n as usize].into(),
        20..100 => match n % 10 {
            0 => TENS[n as usize / 10].into(),
            ones => format!("{}und{}", inside(ones), TENS[n as usize / 10]),
        },
        100..1000 => joined(&format!("{}hundert", inside(n / 100)), n % 100, "", german),
        _ => joined(&format!("{}tausend", inside(n / 1000)), n % 1000, "", german),
    }
}

fn french(n: u32, with: NumeralFor) -> String {
    const SMALL: [&str; 20] = [
        "zéro", "un", "deux", "trois", "quatre", "cinq", "six", "sept", "huit", "neuf", "dix",
        "onze", "douze", "treize", "quatorze", "quinze", "seize", "dix-sept", "dix-huit",
        "dix-neuf",
    ];
    const TENS: [&str; 7] = ["", "", "vingt", "trente", "quarante", "cinquante", "soixante"];
    let again = |n| french(n, with);
    match n {
        1 if with == NumeralFor::Feminine => "une".into(),
        0..20 => SMALL[n as usize].into(),
        20..70 if n % 10 == 1 => format!("{} et {}", TENS[n as usize / 10], again(1)),
        20..70 => joined(TENS[n as usize / 10], n % 10, "-", again),
        71 => "soixante et onze".into(),
        70 | 72..80 => format!("soixante-{}", again(n - 60)),
        80 => "quatre-vingts".into(),
        81..100 => format!("quatre-vingt-{}", again(n - 80)),
        100..200 => joined("cent", n % 100, " ", again),
        200..1000 if n.is_multiple_of(100) => format!("{} cents", SMALL[n as usize / 100]),
        200..1000 => format!("{} cent {}", SMALL[n as usize / 100], again(n % 100)),
        1000..2000 => joined("mille", n % 1000, " ", again),
        _ => joined(&format!("{} mille", SMALL[n as usize / 1000]), n % 1000, " ", again),
    }
}

fn spanish(n: u32, with: NumeralFor) -> String {
    const SMALL: [&str; 30] = [
        "cero",
        "uno",
        "dos",
        "tres",
        "cuatro",
        "cinco",
        "seis",
        "siete",
        "ocho",
        "nueve",
        "diez",
        "once",
        "doce",
        "trece",
        "catorce",
        "quince",
        "dieciséis",
        "diecisiete",
        "dieciocho",
        "diecinueve",
        "veinte",
        "veintiuno",
        "veintidós",
        "veintitrés",
        "veinticuatro",
        "veinticinco",
        "veintiséis",
        "veintisiete",
        "veintiocho",
        "veintinueve",
    ];
    const TENS: [&str; 10] = [
        "",
        "",
        "",
        "treinta",
        "cuarenta",
        "cincuenta",
        "sesenta",
        "setenta",
        "ochenta",
        "noventa",
    ];
    const HUNDREDS: [&str; 10] = [
        "",
        "ciento",
        "doscientos",
        "trescientos",
        "cuatrocientos",
        "quinientos",
        "seiscientos",
        "setecientos",
        "ochocientos",
        "novecientos",
    ];
    let again = |n| spanish(n, with);
    match (n, with) {
        (1, NumeralFor::Masculine) => "un".into(),
        (1, NumeralFor::Feminine) => "una".into(),
        (21, NumeralFor::Masculine) => "veintiún".into(),
        (21, NumeralFor::Feminine) => "veintiuna".into(),
        (0..30, _) => SMALL[n as usize].into(),
        (30..100, _) => joined(TENS[n as usize / 10], n % 10, " y ", again),
        (100, _) => "cien".into(),
        (100..1000, _) => {
            let hundreds = HUNDREDS[n as usize / 100];
            let hundreds = match with {
                NumeralFor::Feminine => hundreds.replace("tos", "tas"),
                NumeralFor::Itself | NumeralFor::Masculine => hundreds.to_owned(),
            };
            joined(&hundreds, n % 100, " ", again)
        }
        (1000..2000, _) => joined("mil", n % 1000, " ", again),
        _ => joined(&format!("{} mil", SMALL[n as usize / 1000]), n % 1000, " ", again),
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    /// What the reader knows as numbers in each language, gathered from texts apart from this.
    #[test]
    fn numbers_are_those_the_reader_knows() {
        let files = [
            ("de", include_str!("../../../assets/reading/de.ron")),
            ("fr", include_str!("../../../assets/reading/fr.ron")),
            ("es", include_str!("../../../assets/reading/es.ron")),
        ];
        for (code, file) in files {
            let (_, list) = file.split_once("numbers: [").expect("a list of numbers");
            let (list, _) = list.split_once(']').expect("its end");
            let known: Vec<&str> = list.split('"').skip(1).step_by(2).collect();
            assert!(known.len() >= 20, "{code}: {known:?}");
            for (n, word) in (1..).zip(known) {
                let ours = numeral(n, code, NumeralFor::Itself);
                let plain = |text: &str| text.replace([' ', '-'], "");
                assert_eq!(plain(&ours), plain(word), "{code}, {n}");
            }
        }
    }

    #[test]
    fn genders_and_large_numbers() {
        use NumeralFor::{Feminine, Itself, Masculine};
        for (n, code, with, said) in [
            (24, "en-us", Itself, "twenty-four"),
            (105, "en-uk", Itself, "one hundred five"),
            (101, "de", Itself, "einhunderteins"),
            (1234, "de", Itself, "eintausendzweihundertvierunddreißig"),
            (21, "fr", Feminine, "vingt et une"),
            (80, "fr", Itself, "quatre-vingts"),
            (91, "fr", Itself, "quatre-vingt-onze"),
            (200, "fr", Itself, "deux cents"),
            (216, "fr", Itself, "deux cent seize"),
            (21, "es", Masculine, "veintiún"),
            (31, "es", Masculine, "treinta y un"),
            (500, "es", Feminine, "quinientas"),
            (101, "es", Itself, "ciento uno"),
            (12_000, "es", Itself, "12000"),
        ] {
            assert_eq!(numeral(n, code, with), said);
        }
    }

    /// No two numbers are said alike.
    #[test]
    fn every_number_has_words_of_its_own() {
        for code in ["en", "de", "fr", "es"] {
            let all: BTreeSet<String> =
                (0..10_000).map(|n| numeral(n, code, NumeralFor::Itself)).collect();
            assert_eq!(all.len(), 10_000, "{code}");
        }
    }
}
