//! Which terms and which language a text is in.

use super::{all_read, in_terms, short_line};
use crate::words::read::{TermsFound, TermsWish, read};

fn terms(text: &str) -> (&'static str, TermsFound) {
    let reading = read(text, TermsWish::Infer);
    (reading.lexicon, reading.terms)
}

fn because(found: &TermsFound) -> Vec<&str> {
    match found {
        TermsFound::Inferred { because } => because.iter().map(|b| b.it.as_str()).collect(),
        _ => Vec::new(),
    }
}

#[test]
fn us_or_uk_terms_are_told_by_the_evidence() {
    let (code, found) = terms("R1: 6 sc in mr\nskip 1 st");
    assert_eq!((code, because(&found)), ("en-us", vec!["sc", "skip"]));
    let (code, found) = terms("R1: 6 dc in magic ring\nR2: htr 3");
    assert_eq!((code, because(&found)), ("en-uk", vec!["htr", "dc"]));
    // Six to a ring are so many as the short stitch takes.
    assert_eq!(terms("R1: 6 dc in magic ring").0, "en-uk");
    assert!(matches!(
        terms("R1: 12 dc in magic ring"),
        ("en-us", TermsFound::Undecided { read_as: "en-us", hangs_on }) if hangs_on.len() == 1
    ));
    let (code, found) = terms("Written in UK terms.\nR2: dc 6, tr 2");
    assert_eq!(code, "en-uk");
    let TermsFound::Said(said) = found else { panic!("it is said") };
    assert_eq!((said.it.as_str(), said.at), ("uk terms", 11..19));
    // A statement wins over one stray token.
    assert_eq!(terms("US terms.\nR2: sc 6, htr 2").0, "en-us");
    // One word each way decides nothing.
    assert!(matches!(terms("R2: sc 6, htr 2"), ("en-us", TermsFound::Undecided { .. })));
    let uk = "R1: 6 dc in magic ring (6)\nR2: 2 dc in next st, miss 1 st, htr 3";
    let reading = read(uk, TermsWish::Infer);
    assert_eq!(short_line(&reading.pattern.lines[0].it), "1: ring:6sc =6");
    assert_eq!(short_line(&reading.pattern.lines[1].it), "2: inc sk1 hdc3");
}

#[test]
fn other_languages_read_by_their_own_words() {
    let inferred = |text: &str| {
        let reading = read(text, TermsWish::Infer);
        let line = short_line(&reading.pattern.lines[0].it);
        format!("{} {line}", reading.lexicon)
    };
    let cases = [
        ("3. Rd: (1 fM, 1 M verdoppeln) 6x = 18 M", "de 3: (sc1 inc)6 =18"),
        ("3. Rd: jede 3. M verdoppeln (24)", "de 3: (sc2 inc)~ =24"),
        ("1. Rd: 6 fM in Fadenring (6)", "de 1: ring:6sc =6"),
        ("4. Rd: in jede M 1 fM (18)", "de 4: (sc1)~ =18"),
        ("5. Rd: (2 fM, 2 M zusammenhäkeln) x 6", "de 5: (sc2 dec)6"),
        ("3.–5. Rd: *1 fM, 1 M verdoppeln; ab * noch 5 x wiederholen", "de 3-5: (sc1 inc)6"),
        ("3. Rd: (1 f. M., 1 Zunahme) sechsmal", "de 3: (sc1 inc)6"),
        ("R3 : (1 ms, 1 aug) x 6 (18)", "fr 3: (sc1 inc)6 =18"),
        ("Tour 3 : *1 ms, 1 aug*, répéter 5 fois de plus (18)", "fr 3: (sc1 inc)6 =18"),
        (
            "Tour 3 : *1 ms, puis 2 ms dans la suivante* répéter de * à * 5 fois de plus",
            "fr 3: (sc1 inc)6",
        ),
        ("Rang 4 : *ms, aug* sur l'ensemble du rang (18)", "fr 4: (sc1 inc)~ =18"),
        ("Rang 1 : 6 ms dans un cercle magique", "fr 1: ring:6sc"),
        ("Tour 4 : 1 ms dans chaque maille (18)", "fr 4: (sc1)~ =18"),
        ("Tour 5 : 2 ms ensemble, 3 ms, 1 mc", "fr 5: dec sc3 ss1"),
        ("V3: (1 pb, 1 aum) x 6 (18)", "es 3: (sc1 inc)6 =18"),
        ("V3: (1 pb, aum) = 18 pb", "es 3: (sc1 inc)~ =18"),
        ("Vuelta 1: 6 pb en anillo mágico (6)", "es 1: ring:6sc =6"),
        ("V4: 1 pb en cada punto, repetir 2 veces", "es 4: ((sc1)~)2"),
        ("V5: (pb, dism) 6 veces", "es 5: (sc1 dec)6"),
    ];
    all_read(inferred, &cases);
}

#[test]
fn a_token_means_what_it_means_in_one_lexicon_only() {
    assert_eq!(in_terms("R2: dc 3, tr 2", "en-us"), "2: dc3 tr2");
    assert_eq!(in_terms("R2: dc 3, tr 2", "en-uk"), "2: sc3 dc2");
    assert_eq!(in_terms("R2 : 3 mc", "fr"), "2: ss3");
    assert_eq!(in_terms("R2: 6 sc in mc", "en-us"), "2: ring:6sc");
    assert_eq!(in_terms("V2: 3 pr", "es"), "2: ss3");
}
