//! Patterns as people write them are read as they are meant, and nothing is said of them that
//! is not so. The texts of `corpus/people/fresh` were written after the reader.

use plumpline_tests::people::{Score, Written, together, written};

fn of<'a>(texts: &'a [Written], code: &'a str) -> Score {
    together(texts.iter().filter(|text| text.name.starts_with(code)))
}

/// The least that every set of texts has to reach.
fn good_enough(name: &str, texts: &[Written]) {
    for (code, least) in [("en", 90.0), ("de", 80.0), ("fr", 80.0), ("es", 80.0)] {
        let score = of(texts, code);
        let right = Score::share(score.right, score.rounds);
        assert!(score.texts > 1, "{name}, {code}: there are texts");
        assert!(right >= least, "{name}, {code}: {score}");
    }
    let all = together(texts);
    let just = all.accusations - all.false_accusations;
    assert!(10 * all.false_accusations <= all.texts, "{name}: {all}");
    assert!(Score::share(just, all.accusations) >= 80.0, "{name}: {all}");
    assert!(Score::share(all.found, all.errors) >= 85.0, "{name}: {all}");
    let rash = texts.iter().filter(|text| together(std::iter::once(*text)).rash > 0);
    let rash: Vec<&str> = rash.map(|text| text.name.as_str()).collect();
    println!("{name}: called clean though a round was not read: {rash:?}");
    assert!(50 * rash.len() <= texts.len(), "{name}: called clean rashly: {rash:?}");
    assert!(Score::share(all.perfect, all.texts) >= 60.0, "{name}: {all}");
}

#[test]
fn practised_texts_are_read() {
    good_enough("practised", &written("practised"));
}

#[test]
fn fresh_texts_are_read() {
    good_enough("fresh", &written("fresh"));
}
