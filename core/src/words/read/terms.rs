//! Which lexicon a text is written in. US and UK patterns use the same words for different
//! stitches, so the evidence is weighed and shown, never guessed at in silence.

use std::collections::BTreeSet;

use super::lexemes::{Lexeme, LexemeKind};
use super::token::{Tok, Token};
use super::tokens::tokens;
use super::words::{Glossary, Vocabulary};
use crate::words::lexicon;
use crate::words::tree::{Placed, Span, StitchKind};

/// Which lexicon to read a text in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TermsWish<'a> {
    /// Find out from the text.
    Infer,
    /// This one, by its code; an unknown code reads as [`TermsWish::Infer`].
    Lexicon(&'a str),
}

/// How the reader knows the lexicon of a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TermsFound {
    /// Whoever asked for the reading said so.
    Wished,
    /// The text says so, here and in these words.
    Said(Placed<String>),
    /// These words of the text are used in that lexicon alone.
    Inferred {
        /// The words, each once, where it stands first.
        because: Vec<Placed<String>>,
    },
    /// Nothing in the text tells, or what tells is at odds.
    Undecided {
        /// The code of the lexicon that it was read in all the same.
        read_as: &'static str,
        /// Words whose meaning hangs on it, each once. With none, nothing hangs on it.
        hangs_on: Vec<Placed<String>>,
    },
}

/// Lexemes that are looked at to tell the language: some thousand lines.
const SAMPLE: usize = 20_000;
/// Words of evidence that are shown, at most.
const SHOWN: usize = 8;

/// The code of the lexicon of a text, and how that is known.
pub(super) fn find(lexemes: &[Lexeme<'_>], wish: TermsWish<'_>) -> (&'static str, TermsFound) {
    if let TermsWish::Lexicon(code) = wish
        && let Some(words) = lexicon::by_code(code)
    {
        return (&words.code, TermsFound::Wished);
    }
    let sample = &lexemes[..lexemes.len().min(SAMPLE)];
    let (code, because) = language(sample);
    if code.starts_with("en") {
        us_or_uk(lexemes)
    } else if because.is_empty() {
        (code, TermsFound::Undecided { read_as: code, hangs_on: Vec::new() })
    } else {
        (code, TermsFound::Inferred { because })
    }
}

/// The lexicon whose trade terms cover most of a text, and the terms that only it reads;
/// the first one where several do.
fn language(lexemes: &[Lexeme<'_>]) -> (&'static str, Vec<Placed<String>>) {
    let mut best: (&'static str, usize, Vec<Token>) = (US, 0, Vec::new());
    for words in lexicon::all().iter().filter(|words| words.code != ASKED_FOR) {
        let found = tokens(lexemes, Vocabulary::of(&words.code), &Glossary::default());
        // A letter alone is a sign of somebody's own as often as a word.
        let worded = |t: &&Token| t.end - t.start > 1;
        let weight = found.iter().filter(worded).map(|t| weight_in_language(t.tok)).sum();
        if weight > best.1 {
            best = (&words.code, weight, found);
        }
    }
    let (code, _, found) = best;
    let english = Vocabulary::of(US);
    let mut seen = BTreeSet::new();
    let because = found
        .iter()
        .filter(|t| weight_in_language(t.tok) > 1)
        .filter_map(|t| {
            let first = lexemes.partition_point(|l| l.at.start < t.at().start);
            let word = lexemes.get(first)?;
            let only = english.longest(&lexemes[first..]).is_none();
            (only && seen.len() < SHOWN && seen.insert(word.text.to_string()))
                .then(|| Placed::at(word.text.to_string(), t.at()))
        })
        .collect();
    (code, because)
}

fn weight_in_language(tok: Tok) -> usize {
    match tok {
        Tok::Kind(_) | Tok::Increase(_) | Tok::Decrease(..) | Tok::Ring => 3,
        Tok::Round | Tok::Stitch | Tok::Chain | Tok::InEach | Tok::Join => 2,
        Tok::Stuff | Tok::FastenOff | Tok::Hook | Tok::Yarn | Tok::Say(_) => 1,
        _ => 0,
    }
}

/// Terms that no text is taken for unasked: “medio punto” is single crochet in one country of
/// Latin America, half double in the next.
const ASKED_FOR: &str = "es-419";
pub(super) const US: &str = "en-us";
const UK: &str = "en-uk";

/// The side a word speaks for and how strongly. From the shift of names between the two
/// sets of terms: single and half double crochet exist in US terms alone, half treble in UK
/// terms alone; “skip” and “gauge” lean to the US, “miss” and “tension” to the UK.
fn evidence(word: &str, next: &str) -> Option<(bool, u32)> {
    Some(match (word, next) {
        ("sc" | "hdc", _) | ("single", "crochet") | ("half", "double") => (true, 3),
        ("skip" | "sk" | "gauge", _) => (true, 1),
        ("htr", _) | ("half", "treble") => (false, 3),
        ("miss" | "tension", _) => (false, 1),
        _ => return None,
    })
}

fn us_or_uk(lexemes: &[Lexeme<'_>]) -> (&'static str, TermsFound) {
    let text_of = |i: usize| lexemes.get(i).map_or("", |l| l.text.as_ref());
    let mut said: [Option<Placed<String>>; 2] = [None, None];
    let mut votes = [0; 2];
    let mut because: [Vec<Placed<String>>; 2] = [Vec::new(), Vec::new()];
    let mut hangs_on = Vec::new();
    let mut seen = BTreeSet::new();
    for (i, lexeme) in lexemes.iter().enumerate() {
        if lexeme.shape != LexemeKind::Word {
            continue;
        }
        let word = lexeme.text.as_ref();
        if let Some((us, at)) = statement(lexemes, i) {
            let words: Vec<&str> = (i..)
                .map_while(|j| {
                    lexemes.get(j).filter(|l| l.at.end <= at.end).map(|l| l.text.as_ref())
                })
                .collect();
            said[usize::from(!us)].get_or_insert_with(|| Placed::at(words.join(" "), at));
        }
        if let Some((us, weight)) = evidence(word, text_of(i + 1)) {
            if seen.insert(word) {
                votes[usize::from(!us)] += weight;
                because[usize::from(!us)].push(Placed::at(word.into(), lexeme.at.clone()));
            }
        } else if matches!(word, "dc" | "tr" | "dtr" | "treble" | "trebles")
            && seen.insert(word)
        {
            hangs_on.push(Placed::at(word.into(), lexeme.at.clone()));
        }
    }
    let said_at_odds = said.iter().all(Option::is_some);
    if !said_at_odds {
        for (code, said) in [US, UK].into_iter().zip(said) {
            if let Some(said) = said {
                return (code, TermsFound::Said(said));
            }
        }
    }
    if votes[0] == 0
        && let Some(ring) = ring_like_single(&lexemes[..lexemes.len().min(SAMPLE)])
    {
        votes[1] += 3;
        because[1].push(ring);
    }
    let [us, uk] = votes;
    let [because_us, because_uk] = because;
    // One word may have strayed in from other terms: twice the weight decides.
    if us > 0 && us >= 2 * uk {
        (US, TermsFound::Inferred { because: because_us })
    } else if uk > 0 && uk >= 2 * us {
        (UK, TermsFound::Inferred { because: because_uk })
    } else {
        let read_as = if uk > us { UK } else { US };
        (read_as, TermsFound::Undecided { read_as, hangs_on })
    }
}

/// “US terms”, “British abbreviations”: whether lexeme `i` begins such a statement, for
/// which side, and where it stands.
fn statement(lexemes: &[Lexeme<'_>], i: usize) -> Option<(bool, Span)> {
    let text = |j: usize| lexemes.get(j).map_or("", |l| l.text.as_ref());
    let (us, mut last) = match text(i) {
        "us" | "usa" | "american" => (true, i),
        "uk" | "british" => (false, i),
        "u" if text(i + 1) == "." && text(i + 3) == "." => match text(i + 2) {
            "s" => (true, i + 3),
            "k" => (false, i + 3),
            _ => return None,
        },
        _ => return None,
    };
    if text(last + 1) == "crochet" {
        last += 1;
    }
    let word = "term terms terminology abbreviation abbreviations notation";
    word.split(' ').any(|w| w == text(last + 1)).then_some(())?;
    Some((us, lexemes[i].at.start..lexemes.get(last + 1)?.at.end))
}

/// A ring that begins with so many “dc” as single crochet takes: at most eight, where the
/// taller US stitch would need twelve (common practice, no source).
fn ring_like_single(lexemes: &[Lexeme<'_>]) -> Option<Placed<String>> {
    let found = tokens(lexemes, Vocabulary::of(US), &Glossary::default());
    let at = found.iter().position(|t| t.tok == Tok::Ring)?;
    let near = &found[at.saturating_sub(5)..(at + 6).min(found.len())];
    near.windows(2).find_map(|pair| match (pair[0].tok, pair[1].tok) {
        (Tok::Number(4..=8), Tok::Kind(StitchKind::Double)) => {
            Some(Placed::at("dc".into(), pair[1].at()))
        }
        _ => None,
    })
}
