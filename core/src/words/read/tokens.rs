//! Lexemes into tokens: what each word means in one lexicon, with its place in the text.

use super::lexemes::{Lexeme, LexemeKind, TWO_STARS};
use super::token::{MAX_NUMBER, Say, Tok, Token};
use super::words::{Glossary, Vocabulary};
use crate::words::tree::StitchKind;

/// The tokens of `lexemes`, longest phrases first; what the text itself explains goes before.
pub(super) fn tokens(lexemes: &[Lexeme<'_>], words: &Vocabulary, own: &Glossary) -> Vec<Token> {
    let mut found: Vec<Token> = Vec::with_capacity(lexemes.len());
    let mut rest = lexemes;
    while let Some(first) = rest.first() {
        let previous = found.last().copied();
        let glued = previous.is_some_and(|p| p.end == first.at.start);
        let ordinal = || {
            let Tok::Number(n) = previous.filter(|_| glued)?.tok else { return None };
            // “1° giro”
            let degree = first.shape == LexemeKind::Sign('°');
            let ending = first.shape == LexemeKind::Word && words.makes_ordinal(n, &first.text);
            (degree || ending).then_some(n)
        };
        if let Some(n) = ordinal()
            && let Some(number) = found.last_mut()
        {
            number.tok = Tok::Ordinal(n);
            number.end = first.at.end;
            rest = &rest[1..];
            continue;
        }
        // “6.ª vuelta”
        if glued
            && first.shape == LexemeKind::Word
            && first.text.chars().count() == 1
            && let [.., number, stop] = found.as_mut_slice()
            && let Tok::Number(n) = number.tok
            && stop.tok == Tok::Stop
            && stop.glued
            && words.makes_ordinal(n, &first.text)
            && matches!(first.text.as_ref(), "ª" | "º")
        {
            number.tok = Tok::Ordinal(n);
            number.end = first.at.end;
            found.pop();
            rest = &rest[1..];
            continue;
        }
        let known = words.longest(rest);
        let told = own.longest(rest).filter(|(_, n)| known.is_none_or(|(_, m)| *n >= m));
        // “incx6”
        if told.or(known).is_none()
            && let Some(stem) = first.text.strip_suffix('x')
            && rest
                .get(1)
                .is_some_and(|n| n.shape == LexemeKind::Number && n.at.start == first.at.end)
            && let Some((tok, 1)) = stem_means(stem, first, words, own)
        {
            let end = first.at.end - 1;
            let token =
                Token { tok, start: first.at.start, end, glued, spelt: true, plural: false };
            found.push(token);
            found.push(Token {
                tok: Tok::Times,
                start: end,
                end: end + 1,
                glued: true,
                ..token
            });
            rest = &rest[1..];
            continue;
        }
        let (tok, many) =
            told.or(known).unwrap_or_else(|| (plain(first.shape, &first.text), 1));
        // “macht 18” states a count, “macht 18 fM in …” is work.
        let gives = words.gives(rest).filter(|&n| told.is_none() && n >= many);
        let (tok, many) = gives.map_or((tok, many), |n| (Tok::Equals, n));
        // “20 cm” is a length, whatever “cm” stands for beside.
        let measured = tok == Tok::Ring
            && first.text == UNIT
            && previous.is_some_and(|p| matches!(p.tok, Tok::Number(_) | Tok::OddNumber));
        let tok = if measured { Tok::Unknown } else { tok };
        let last = &rest[many - 1];
        let rounds = matches!(tok, Tok::Round | Tok::Say(Say::Row))
            && last.text.len() > 3
            && last.text.ends_with("en");
        found.push(Token {
            tok,
            start: first.at.start,
            end: last.at.end,
            glued,
            spelt: first.shape == LexemeKind::Word,
            plural: last.text.len() > 1 && last.text.ends_with('s') || rounds,
        });
        rest = &rest[many..];
        join_spelt(&mut found);
    }
    found
}

/// What `stem`, the beginning of a word, means by itself.
fn stem_means(
    stem: &str,
    word: &Lexeme<'_>,
    words: &Vocabulary,
    own: &Glossary,
) -> Option<(Tok, usize)> {
    let at = word.at.start..word.at.end - 1;
    let stem = [Lexeme { shape: LexemeKind::Word, text: stem.into(), at }];
    own.longest(&stem).or_else(|| words.longest(&stem))
}

/// Centimetres, and a ring in French.
const UNIT: &str = "cm";

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
            '#' => Tok::Say(Say::Numbered),
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
    // Behind a pair stands how often, or it parts the columns of a table.
    let multiplied = |at: usize| {
        let after = |n: usize| tokens.get(at + n).map(|t| t.tok);
        matches!(
            (after(1), after(2)),
            (Some(Tok::Times | Tok::Turns(_) | Tok::Say(Say::Repeat | Say::Around)), _)
                | (Some(Tok::Star), Some(Tok::Number(_)))
                | (Some(Tok::Number(_)), Some(Tok::Times))
        )
    };
    let around_work = |pair: &[usize]| {
        matches!(pair, [a, b] if tokens[*a..*b].iter().any(|t| t.tok.is_work())
            && multiplied(*b))
    };
    if bars.is_empty() || !bars.chunks(2).all(around_work) {
        return;
    }
    for (i, &at) in bars.iter().enumerate() {
        tokens[at].tok = if i % 2 == 0 { Tok::Open(0) } else { Tok::Close };
    }
}
