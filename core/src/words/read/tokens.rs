//! Lexemes into tokens: what each word means in one lexicon, with its place in the text.

use super::lexemes::{Lexeme, LexemeKind, TWO_STARS};
use super::words::{Glossary, Say, Vocabulary};
use crate::piece::cloth::Loop;
use crate::words::tree::{Decrease, Span, StitchKind};

/// What a word, number or sign means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Tok {
    /// A number up to [`MAX_NUMBER`].
    Number(u32),
    /// A number that counts nothing here: with decimals, or beyond [`MAX_NUMBER`].
    OddNumber,
    /// “2nd”
    Ordinal(u32),
    /// “twice”
    Turns(u32),
    Kind(StitchKind),
    /// A bare “inc”, and the kind it is of.
    Increase(StitchKind),
    /// A bare “dec”, and the kind it is of.
    Decrease(StitchKind, Decrease),
    /// “even”, and the kind it is of.
    Even(StitchKind),
    Chain,
    /// “popcorn”: a stitch of its own kind that takes one and leaves one.
    Fancy,
    Ring,
    Round,
    Stitch,
    Loop(Loop),
    Skip,
    Turn,
    Join,
    FastenOff,
    Stuff,
    Marker,
    Yarn,
    Hook,
    Gauge,
    /// “in each st around”
    InEach,
    /// “times”, “×”
    Times,
    Say(Say),
    /// A bracket, and how many tokens further on its fellow stands; 0 where it has none.
    Open(usize),
    Close,
    Star,
    TwoStars,
    Comma,
    /// “/”
    Slash,
    /// “|”
    Bar,
    Stop,
    Colon,
    Dash,
    Equals,
    Bullet,
    Newline,
    Unknown,
}

impl Tok {
    /// Whether it parts one instruction from the next.
    pub(super) fn parts(self) -> bool {
        use Tok::{Bar, Bullet, Colon, Comma, Dash, Say as Word, Slash, Stop};
        matches!(self, Comma | Slash | Bar | Stop | Colon | Dash | Bullet | Word(Say::Then))
    }

    /// Whether it names something that is worked.
    pub(super) fn is_work(self) -> bool {
        use Tok::{Chain, Decrease, Even, Fancy, Increase, Kind, Skip};
        matches!(self, Kind(_) | Increase(_) | Decrease(..) | Even(_) | Chain | Skip | Fancy)
    }

    /// Whether it counts: words with it are more than a remark.
    pub(super) fn counts(self) -> bool {
        matches!(self, Self::Number(_) | Self::OddNumber | Self::Turns(_))
    }
}

/// A token and where it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Token {
    pub(super) tok: Tok,
    start: usize,
    end: usize,
    /// Whether nothing parts it from the token before.
    pub(super) glued: bool,
    /// Whether it is spelt out rather than written in digits or signs.
    spelt: bool,
    /// Whether it is a word in the plural, as far as an “s” tells.
    pub(super) plural: bool,
}

impl Token {
    pub(super) fn at(&self) -> Span {
        self.start..self.end
    }

    /// This place with another meaning.
    pub(super) fn meaning(self, tok: Tok) -> Self {
        Self { tok, ..self }
    }
}

/// From the first of `tokens` to the last; empty for none.
pub(super) fn span(tokens: &[Token]) -> Span {
    match (tokens.first(), tokens.last()) {
        (Some(first), Some(last)) => first.start..last.end,
        _ => 0..0,
    }
}

/// The largest number that counts something; larger ones are kept as text.
pub(super) const MAX_NUMBER: u32 = 99_999;

/// The tokens of `lexemes`, longest phrases first; what the text itself explains goes before.
pub(super) fn tokens(lexemes: &[Lexeme<'_>], words: &Vocabulary, own: &Glossary) -> Vec<Token> {
    let mut found: Vec<Token> = Vec::with_capacity(lexemes.len());
    let mut rest = lexemes;
    while let Some(first) = rest.first() {
        let previous = found.last().copied();
        let glued = previous.is_some_and(|p| p.end == first.at.start);
        let ordinal = || {
            let Tok::Number(n) = previous.filter(|_| glued)?.tok else { return None };
            (first.shape == LexemeKind::Word && words.makes_ordinal(n, &first.text))
                .then_some(n)
        };
        if let Some(n) = ordinal()
            && let Some(number) = found.last_mut()
        {
            number.tok = Tok::Ordinal(n);
            number.end = first.at.end;
            rest = &rest[1..];
            continue;
        }
        let known = words.longest(rest);
        let told = own.longest(rest).filter(|(_, n)| known.is_none_or(|(_, m)| *n >= m));
        let (tok, many) =
            told.or(known).unwrap_or_else(|| (plain(first.shape, &first.text), 1));
        let last = &rest[many - 1];
        found.push(Token {
            tok,
            start: first.at.start,
            end: last.at.end,
            glued,
            spelt: first.shape == LexemeKind::Word,
            plural: last.text.len() > 1 && last.text.ends_with('s'),
        });
        rest = &rest[many..];
        join_spelt(&mut found);
    }
    found
}

/// Makes one number of “twenty-four”.
fn join_spelt(found: &mut Vec<Token>) {
    let [.., tens, dash, ones] = found.as_slice() else { return };
    if let (Tok::Number(t), Tok::Dash, Tok::Number(n)) = (tens.tok, dash.tok, ones.tok)
        && (tens.spelt && ones.spelt && dash.glued && ones.glued)
        && (t >= 20 && t % 10 == 0 && n < 10)
    {
        let whole = Token { tok: Tok::Number(t + n), end: ones.end, ..*tens };
        found.truncate(found.len() - 3);
        found.push(whole);
    }
}

fn plain(shape: LexemeKind, text: &str) -> Tok {
    match shape {
        LexemeKind::Newline => Tok::Newline,
        LexemeKind::Word => Tok::Unknown,
        LexemeKind::Number => match text.parse() {
            Ok(n) if n <= MAX_NUMBER => Tok::Number(n),
            _ => Tok::OddNumber,
        },
        LexemeKind::Sign(sign) => match sign {
            '(' | '[' | '{' | '<' => Tok::Open(0),
            ')' | ']' | '}' | '>' => Tok::Close,
            '*' => Tok::Star,
            TWO_STARS => Tok::TwoStars,
            ',' | ';' | '+' | '&' | '…' => Tok::Comma,
            '/' => Tok::Slash,
            '.' | '!' => Tok::Stop,
            ':' => Tok::Colon,
            '-' => Tok::Dash,
            '|' => Tok::Bar,
            '=' | '→' => Tok::Equals,
            '•' => Tok::Bullet,
            '×' => Tok::Times,
            _ => Tok::Unknown,
        },
    }
}

/// Makes the tokens of one logical line ready to be read: without line ends, each bracket
/// knowing its fellow, each bare “inc” and “dec” knowing its kind. That is the kind of the
/// last plain stitch named before it in the line, else of the next one named after it, else
/// `kind`. Returns the kind that the line leaves for the next.
pub(super) fn prepare(tokens: &mut Vec<Token>, kind: StitchKind) -> StitchKind {
    tokens.retain(|t| t.tok != Tok::Newline);
    pair_bars(tokens);
    let mut open = Vec::new();
    let plain = |tok| match tok {
        Tok::Kind(kind) if kind != StitchKind::Slip => Some(kind),
        _ => None,
    };
    let mut current = tokens.iter().find_map(|t| plain(t.tok)).unwrap_or(kind);
    for i in 0..tokens.len() {
        match &mut tokens[i].tok {
            Tok::Open(_) => open.push(i),
            Tok::Close => {
                if let Some(at) = open.pop() {
                    tokens[at].tok = Tok::Open(i - at);
                }
            }
            Tok::Increase(of) | Tok::Decrease(of, _) | Tok::Even(of) => *of = current,
            tok => current = plain(*tok).unwrap_or(current),
        }
    }
    current
}

/// Makes brackets of bars that come in pairs around work, as in “|2 sc, inc| x 6”.
fn pair_bars(tokens: &mut [Token]) {
    let bars: Vec<usize> = (0..tokens.len()).filter(|&i| tokens[i].tok == Tok::Bar).collect();
    let around_work = |pair: &[usize]| matches!(pair, [a, b] if tokens[*a..*b].iter().any(|t| t.tok.is_work()));
    if bars.is_empty() || !bars.chunks(2).all(around_work) {
        return;
    }
    for (i, &at) in bars.iter().enumerate() {
        tokens[at].tok = if i % 2 == 0 { Tok::Open(0) } else { Tok::Close };
    }
}
