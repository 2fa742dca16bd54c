//! The words that join trade terms into instructions, as data per language, and the table of
//! every phrase that one lexicon reads.

use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::sync::OnceLock;

use serde::Deserialize;

use super::lexemes::{Lexeme, LexemeKind, lexemes};
use super::token::{Say, Tok};
use crate::piece::cloth::Loop;
use crate::words::lexicon::{self, Lexicon, Term};
use crate::words::tree::{Decrease, StitchKind};

/// A trade term that has more forms in the texts people write than a writer prints.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
enum TradeTerm {
    Slip,
    Single,
    HalfDouble,
    Double,
    Treble,
    Chain,
    Increase,
    Decrease,
    Ring,
    Round,
    Stitch,
    FrontLoop,
    BackLoop,
    Skip,
    Turn,
    Join,
    FastenOff,
    Stuff,
    Marker,
    Yarn,
    Hook,
    Gauge,
    InEach,
    Fancy,
}

impl TradeTerm {
    fn tok(self) -> Tok {
        let kind = StitchKind::Single;
        match self {
            Self::Slip => Tok::Kind(StitchKind::Slip),
            Self::Single => Tok::Kind(kind),
            Self::HalfDouble => Tok::Kind(StitchKind::HalfDouble),
            Self::Double => Tok::Kind(StitchKind::Double),
            Self::Treble => Tok::Kind(StitchKind::Treble),
            Self::Chain => Tok::Chain,
            Self::Increase => Tok::Increase(kind),
            Self::Decrease => Tok::Decrease(kind, Decrease::Plain),
            Self::Ring => Tok::Ring,
            Self::Round => Tok::Round,
            Self::Stitch => Tok::Stitch,
            Self::FrontLoop => Tok::Loop(Loop::Front),
            Self::BackLoop => Tok::Loop(Loop::Back),
            Self::Skip => Tok::Skip,
            Self::Turn => Tok::Turn,
            Self::Join => Tok::Join,
            Self::FastenOff => Tok::FastenOff,
            Self::Stuff => Tok::Stuff,
            Self::Marker => Tok::Marker,
            Self::Yarn => Tok::Yarn,
            Self::Hook => Tok::Hook,
            Self::Gauge => Tok::Gauge,
            Self::InEach => Tok::InEach,
            Self::Fancy => Tok::Fancy,
        }
    }
}

/// The joining words of one language.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Grammar {
    /// One, two, three …
    numbers: Vec<String>,
    /// Other words that count: “both”.
    #[serde(default)]
    also_numbers: Vec<(u32, String)>,
    /// Twenty, thirty …
    #[serde(default)]
    tens: Vec<String>,
    /// First, second, third …
    ordinals: Vec<String>,
    /// Endings that those take besides: “zweite”, “zweiten”.
    #[serde(default)]
    ordinal_suffixes: Vec<String>,
    /// Other forms of them.
    #[serde(default)]
    also_ordinals: Vec<(u32, String)>,
    /// Once, twice …
    turns: Vec<String>,
    /// What ends an ordinal after digits, and the last digits it follows; none for any.
    ordinal_endings: Vec<(String, Vec<u32>)>,
    /// Whether a number with a point is an ordinal: “die 2. Masche”.
    #[serde(default)]
    ordinal_point: bool,
    /// “even”: one stitch in each.
    even: Vec<String>,
    /// “times”, beyond what the lexicon reads so.
    times: Vec<String>,
    /// “you have”: what stands before a count as an equals sign does.
    #[serde(default)]
    gives: Vec<String>,
    /// Words that say so only before a number that ends the sentence: “now 18”.
    #[serde(default)]
    gives_at_end: Vec<String>,
    /// Forms of trade terms that are read and never printed.
    #[serde(default)]
    also: BTreeMap<TradeTerm, Vec<String>>,
    words: BTreeMap<Say, Vec<String>>,
}

/// What a text itself says its short forms mean.
#[derive(Debug, Clone, Default)]
pub(super) struct Glossary {
    root: Node,
}

impl Glossary {
    /// Takes `phrase`, as lexemes, to mean `tok`; what was said first stands.
    pub(super) fn add<'a>(&mut self, phrase: impl IntoIterator<Item = &'a str>, tok: Tok) {
        let mut node = &mut self.root;
        for part in phrase {
            node = node.next.entry(part.to_owned()).or_default();
        }
        node.means.get_or_insert(tok);
    }

    /// Whether it has no phrase.
    pub(super) fn is_empty(&self) -> bool {
        self.root.next.is_empty()
    }

    /// The longest phrase that `from` begins with, and its length in lexemes.
    pub(super) fn longest(&self, from: &[Lexeme<'_>]) -> Option<(Tok, usize)> {
        self.root.longest(from)
    }
}

/// Every phrase that one lexicon reads.
#[derive(Debug, Default)]
pub(super) struct Vocabulary {
    root: Node,
    /// What stands before a count as an equals sign does, whatever else it means: “macht”.
    gives: Node,
    /// Every word of its phrases.
    all: BTreeSet<String>,
    ordinal_endings: Vec<(String, Vec<u32>)>,
    /// Whether a number with a point is an ordinal.
    pub(super) ordinal_point: bool,
}

#[derive(Debug, Clone, Default)]
struct Node {
    means: Option<Tok>,
    next: HashMap<String, Self>,
}

impl Node {
    fn longest(&self, from: &[Lexeme<'_>]) -> Option<(Tok, usize)> {
        let mut node = self;
        let mut best = None;
        let mut broken = false;
        for (i, part) in from.iter().enumerate() {
            // “feste”, and “Masche” in the next line.
            if part.shape == LexemeKind::Newline && i > 0 && !broken {
                broken = true;
                continue;
            }
            let Some(next) = node.next.get(part.text.as_ref()) else { break };
            node = next;
            if let Some(tok) = node.means
                && (!broken || runs_over(tok))
            {
                best = Some((tok, i + 1));
            }
        }
        best
    }
}

/// Whether a phrase may go on in the next line: a term of the work, and not the word for a
/// round, which begins a line.
fn runs_over(tok: Tok) -> bool {
    tok.is_work() || matches!(tok, Tok::Ring | Tok::InEach | Tok::Join | Tok::Loop(_))
}

impl Vocabulary {
    /// The vocabulary of `code`, made once.
    pub(super) fn of(code: &str) -> &'static Self {
        static ALL: OnceLock<BTreeMap<&'static str, Vocabulary>> = OnceLock::new();
        static NONE: OnceLock<Vocabulary> = OnceLock::new();
        let all = ALL.get_or_init(|| {
            lexicon::all().iter().map(|words| (words.code.as_str(), Self::new(words))).collect()
        });
        all.get(code).unwrap_or_else(|| NONE.get_or_init(Self::default))
    }

    fn new(words: &Lexicon) -> Self {
        let mut made = Self::default();
        let kinds: Vec<&str> = KINDS.iter().flat_map(|&k| words.kind(k).forms()).collect();
        for (term, tok) in terms(words) {
            // “sc2tog” is read as a stitch and how it is worked: as one word it would lose
            // its kind.
            let shaping = matches!(tok, Tok::Increase(..) | Tok::Decrease(..));
            let named = |form: &str| {
                let parts = lexemes(form);
                parts.len() > 1
                    && parts.iter().any(|p| kinds.iter().any(|k| folds_to(k, &p.text)))
            };
            for form in term.forms().filter(|form| !shaping || !named(form)) {
                made.add(form, tok);
            }
        }
        let grammar = grammar(&words.code);
        for (n, form) in (1..).zip(&grammar.numbers) {
            made.add(form, Tok::Number(n));
        }
        for (n, form) in &grammar.also_numbers {
            made.add(form, Tok::Number(*n));
        }
        for (n, form) in (2..).zip(&grammar.tens) {
            made.add(form, Tok::Number(10 * n));
        }
        for (n, form) in (1..).zip(&grammar.ordinals) {
            made.add(form, Tok::Ordinal(n));
            for suffix in &grammar.ordinal_suffixes {
                made.add(&format!("{form}{suffix}"), Tok::Ordinal(n));
            }
        }
        for (n, form) in &grammar.also_ordinals {
            made.add(form, Tok::Ordinal(*n));
        }
        for (n, form) in (1..).zip(&grammar.turns) {
            made.add(form, Tok::Turns(n));
        }
        for form in &grammar.even {
            made.add(form, Tok::Even(StitchKind::Single));
        }
        for form in &grammar.times {
            made.add(form, Tok::Times);
        }
        for form in &grammar.gives {
            made.add(form, Tok::Equals);
            insert(&mut made.gives, form, Tok::Equals);
        }
        for form in &grammar.gives_at_end {
            insert(&mut made.gives, form, Tok::Equals);
        }
        for (trade, forms) in &grammar.also {
            for form in forms {
                made.add(form, trade.tok());
            }
        }
        for (&say, forms) in &grammar.words {
            for form in forms {
                made.add(form, Tok::Say(say));
            }
        }
        made.ordinal_endings = grammar
            .ordinal_endings
            .iter()
            .map(|(end, digits)| {
                let folded = lexemes(end).first().map(|l| l.text.as_ref().to_owned());
                (folded.unwrap_or_else(|| end.clone()), digits.clone())
            })
            .collect();
        made.ordinal_point = grammar.ordinal_point;
        made
    }

    fn add(&mut self, phrase: &str, tok: Tok) {
        insert(&mut self.root, phrase, tok);
        let words = lexemes(phrase).into_iter().filter(|l| l.shape == LexemeKind::Word);
        self.all.extend(words.map(|l| l.text.into_owned()));
    }

    /// Whether some phrase has this word.
    pub(super) fn has(&self, word: &str) -> bool {
        self.all.contains(word)
    }

    /// This word as the phrases have it, if they do.
    pub(super) fn known(&self, word: &str) -> Option<&str> {
        self.all.get(word).map(String::as_str)
    }

    /// How many lexemes of `from` say that a count comes, if its number and the end of the
    /// sentence stand behind them.
    pub(super) fn gives(&self, from: &[Lexeme<'_>]) -> Option<usize> {
        let (_, many) = self.gives.longest(from)?;
        let counted = from.get(many).is_some_and(|l| l.shape == LexemeKind::Number);
        let mut at = many + 1;
        while let Some((Tok::Stitch | Tok::Kind(_) | Tok::Say(Say::Total), more)) =
            from.get(at..).and_then(|rest| self.root.longest(rest)).filter(|_| at < many + 6)
        {
            at += more;
        }
        let ends = from.get(at).is_none_or(|l| {
            matches!(l.shape, LexemeKind::Newline | LexemeKind::Sign('.' | '!' | ')' | ']'))
        });
        (counted && ends).then_some(many)
    }

    /// The longest phrase that `from` begins with, and its length in lexemes.
    pub(super) fn longest(&self, from: &[Lexeme<'_>]) -> Option<(Tok, usize)> {
        self.root.longest(from)
    }

    /// Whether `ending` makes an ordinal of the digits of `n`: “2nd”.
    pub(super) fn makes_ordinal(&self, n: u32, ending: &str) -> bool {
        let fits = |digits: &[u32]| digits.is_empty() || digits.contains(&(n % 10));
        self.ordinal_endings.iter().any(|(e, digits)| e == ending && fits(digits))
    }
}

fn insert(root: &mut Node, phrase: &str, tok: Tok) {
    let mut node = root;
    for part in lexemes(phrase) {
        node = node.next.entry(part.text.into_owned()).or_default();
    }
    node.means = Some(tok);
}

const KINDS: [StitchKind; 5] = [
    StitchKind::Slip,
    StitchKind::Single,
    StitchKind::HalfDouble,
    StitchKind::Double,
    StitchKind::Treble,
];

fn folds_to(form: &str, text: &str) -> bool {
    let parts = lexemes(form);
    parts.len() == 1 && parts[0].text == text
}

/// The trade terms of a lexicon and what each is read as.
fn terms(words: &Lexicon) -> Vec<(&Term, Tok)> {
    let kinds = KINDS.iter().map(|&kind| (words.kind(kind), Tok::Kind(kind)));
    let kind = StitchKind::Single;
    kinds
        .chain([
            (&words.chain, Tok::Chain),
            (&words.increase, Tok::Increase(kind)),
            (&words.decrease, Tok::Decrease(kind, Decrease::Plain)),
            (&words.invisible_decrease, Tok::Decrease(kind, Decrease::Invisible)),
            (&words.ring, Tok::Ring),
            (&words.round, Tok::Round),
            (&words.stitch, Tok::Stitch),
            (&words.front_loop, Tok::Loop(Loop::Front)),
            (&words.back_loop, Tok::Loop(Loop::Back)),
            (&words.skip, Tok::Skip),
            (&words.turn, Tok::Turn),
            (&words.join, Tok::Join),
            (&words.fasten_off, Tok::FastenOff),
            (&words.stuff, Tok::Stuff),
            (&words.marker, Tok::Marker),
            (&words.yarn, Tok::Yarn),
            (&words.hook, Tok::Hook),
            (&words.gauge, Tok::Gauge),
            (&words.in_each, Tok::InEach),
            (&words.times, Tok::Times),
        ])
        .collect()
}

/// The joining words of the language of `code`; those of English where there are none.
fn grammar(code: &str) -> &'static Grammar {
    static ALL: OnceLock<Vec<(&'static str, Grammar)>> = OnceLock::new();
    let all = ALL.get_or_init(|| {
        let sources = [
            ("en", include_str!("../../../../assets/reading/en.ron")),
            ("de", include_str!("../../../../assets/reading/de.ron")),
            ("fr", include_str!("../../../../assets/reading/fr.ron")),
            ("es", include_str!("../../../../assets/reading/es.ron")),
        ];
        let read = |source| ron::from_str(source).expect("the words shipped are well formed");
        sources.map(|(language, source)| (language, read(source))).into()
    });
    let language = code.split('-').next().unwrap_or_default();
    let found = all.iter().find(|(of, _)| *of == language).or_else(|| all.first());
    &found.expect("the list is not empty").1
}
