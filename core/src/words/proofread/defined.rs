//! Abbreviations against the pattern's own list, where it has one.

use std::collections::BTreeSet;

use super::context::ProofContext;
use super::finding::{Finding, FindingKind, Mend};
use super::text::words;
use crate::words::lexicon::{Lexicon, Term};
use crate::words::tree::{Line, Span};

/// Abbreviations are at most so long; longer forms are words.
const LONGEST: usize = 7;

/// “Repeat”, as it is shortened. From memory, no source.
const REPEAT: [(&str, &str); 5] =
    [("en-us", "rep"), ("en-uk", "rep"), ("de", "wdh"), ("fr", "rép"), ("es", "rep")];

pub(super) fn check(desk: &ProofContext<'_>, findings: &mut Vec<Finding>) {
    let lines = &desk.reading.pattern.lines;
    let known = known(desk);
    let mut defined = BTreeSet::new();
    for line in lines {
        // “x = sc” is the key of a chart: it takes the abbreviation as known.
        if let Line::Abbreviation { short, meaning } = &line.it
            && !known.contains(&key(meaning))
        {
            let forms = short.split(['/', ',']).flat_map(|part| part.split(" or "));
            for form in forms {
                defined.insert(key(form));
                defined.insert(key(&form.replace("(s)", "")));
            }
        }
    }
    // “Gauge = …” and its like explain no abbreviation: that is no list.
    // Nor is one special stitch explained alone a list.
    if defined.intersection(&known).count() < 2 {
        return;
    }
    // The stitch that all is worked in goes without saying.
    let ground: BTreeSet<String> = abbreviations(&desk.lexicon.single).collect();
    let mut told = BTreeSet::new();
    let mut found = Vec::new();
    for line in lines {
        // What is done between the rounds, with chains and slip stitches, lists leave out.
        let Line::Rounds(rounds) = &line.it else { continue };
        let round = Some(rounds.first);
        for op in &rounds.work {
            for (at, short) in shorts(desk, &op.at, &known) {
                let stem = short.strip_suffix('s').unwrap_or(&short);
                if defined.contains(&short)
                    || ground.contains(&short)
                    || defined.contains(stem)
                    || !told.insert(stem.to_owned())
                {
                    continue;
                }
                let printed = desk.words(&at).to_owned();
                found.push(Finding {
                    kind: FindingKind::Undefined,
                    round,
                    at,
                    message: format!("“{printed}” is not in the list of abbreviations."),
                    mend: Some(Mend {
                        text: format!("Add “{printed}” and its meaning to the list."),
                        edit: None,
                    }),
                });
            }
        }
    }
    // One that is missing was forgotten; where several are, the list is a choice.
    if found.len() == 1 {
        findings.append(&mut found);
    }
}

/// A short form as it is compared: letters and digits, case aside.
fn key(form: &str) -> String {
    form.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

/// The abbreviations of the lexicon that a list has to explain: stitches, shaping, loops.
fn known(desk: &ProofContext<'_>) -> BTreeSet<String> {
    let l = desk.lexicon;
    let terms = &terms(l)[..EXPLAINED];
    let mut known: BTreeSet<String> =
        terms.iter().flat_map(|term| abbreviations(term)).collect();
    known.extend(
        REPEAT.iter().filter(|(code, _)| *code == l.code).map(|(_, r)| (*r).to_owned()),
    );
    known
}

/// How many of [`terms`] a list has to explain.
const EXPLAINED: usize = 13;

/// Terms of rounds, those first that a list of abbreviations has to explain.
pub(super) fn terms(l: &Lexicon) -> [&Term; 22] {
    [
        &l.slip,
        &l.single,
        &l.half_double,
        &l.double,
        &l.treble,
        &l.chain,
        &l.increase,
        &l.decrease,
        &l.invisible_decrease,
        &l.ring,
        &l.front_loop,
        &l.back_loop,
        &l.skip,
        &l.round,
        &l.stitch,
        &l.turn,
        &l.join,
        &l.in_each,
        &l.times,
        &l.stuff,
        &l.fasten_off,
        &l.yarn,
    ]
}

/// The short forms of a term: not its words, nor parts of them.
fn abbreviations(term: &Term) -> impl Iterator<Item = String> + '_ {
    let whole = [term.one.to_lowercase(), term.many.to_lowercase()];
    let is_word = move |form: &str| {
        let form = form.to_lowercase();
        whole.iter().any(|w| w.split_whitespace().any(|word| word == form) || *w == form)
    };
    let also = term.also.iter().map(String::as_str);
    let shorts = term.short.as_deref().into_iter().chain(also);
    shorts.filter(move |form| form.len() <= LONGEST && !is_word(form)).map(key)
}

/// Whether it is part of a longer word: “br” in “dem-br”.
fn within_word(desk: &ProofContext<'_>, at: &Span) -> bool {
    let before = desk.text.get(..at.start).unwrap_or_default().strip_suffix('-');
    before.is_some_and(|b| b.ends_with(char::is_alphabetic))
}

/// The abbreviations used in `at`, by their keys: one word, or two that make one.
fn shorts(desk: &ProofContext<'_>, at: &Span, known: &BTreeSet<String>) -> Vec<(Span, String)> {
    let words: Vec<(Span, String)> = words(desk.text, at).map(|(at, w)| (at, key(w))).collect();
    let mut found = Vec::new();
    let mut i = 0;
    while i < words.len() {
        let (at, one) = &words[i];
        let pair =
            words.get(i + 1).map(|(end, two)| (at.start..end.end, format!("{one}{two}")));
        if let Some((at, two)) = pair.filter(|(_, two)| known.contains(two)) {
            found.push((at, two));
            i += 1;
        } else if known.contains(one) && !within_word(desk, at) {
            found.push((at.clone(), one.clone()));
        }
        i += 1;
    }
    found
}
