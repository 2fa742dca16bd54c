//! Lists of abbreviations: “sc = single crochet”, “inc: 2 sc in next st”.

use super::tokens::{Tok, Token, span};
use super::words::Say;
use crate::piece::cloth::Loop;
use crate::words::tree::{Decrease, Line, Placed};

/// Most tokens of a short form.
const SHORT: usize = 3;

/// The abbreviations that a line without a heading explains; empty where it explains none.
pub(super) fn abbreviations(line: &[Token], text: &str) -> Vec<Placed<Line>> {
    let line = match line {
        [
            Token { tok: Tok::Say(Say::Section), .. },
            Token { tok: Tok::Colon, .. },
            rest @ ..,
        ] => rest,
        _ => line,
    };
    let several = line.iter().filter(|t| t.tok == Tok::Equals).count() > 1;
    if !several {
        return one(line, text).into_iter().collect();
    }
    // Commas part one from the next only where the next explains something too.
    let mut parts: Vec<&[Token]> = Vec::new();
    let mut start = 0;
    let mut seen_equals = false;
    for (i, token) in line.iter().enumerate() {
        match token.tok {
            Tok::Comma => {
                let ahead = &line[i + 1..line.len().min(i + 2 + SHORT)];
                if seen_equals && ahead.iter().any(|t| t.tok == Tok::Equals) {
                    parts.push(&line[start..i]);
                    start = i + 1;
                    seen_equals = false;
                }
            }
            Tok::Equals => seen_equals = true,
            _ => {}
        }
    }
    parts.push(&line[start..]);
    let found: Vec<_> = parts.iter().filter_map(|part| one(part, text)).collect();
    if found.len() == parts.len() { found } else { Vec::new() }
}

fn one(line: &[Token], text: &str) -> Option<Placed<Line>> {
    let (short, meaning) = bracketed(line).or_else(|| signed(line))?;
    let words = |tokens| text.get(span(tokens)).map(|s| s.trim_end_matches('.').to_owned());
    let it = Line::Abbreviation { short: words(short)?, meaning: words(meaning)? };
    Some(Placed::at(it, span(line)))
}

/// “single crochet (sc)”
fn bracketed(line: &[Token]) -> Option<(&[Token], &[Token])> {
    match line {
        [meaning, Token { tok: Tok::Open(_), .. }, short, Token { tok: Tok::Close, .. }]
            if is_term(meaning.tok) && meaning.tok == short.tok =>
        {
            Some((std::slice::from_ref(short), std::slice::from_ref(meaning)))
        }
        _ => None,
    }
}

/// “sc = single crochet”, “sc: single crochet”, “sc – single crochet”
fn signed(line: &[Token]) -> Option<(&[Token], &[Token])> {
    let sign = line.iter().take(SHORT + 1).position(|t| {
        matches!(t.tok, Tok::Equals | Tok::Colon) || t.tok == Tok::Dash && !t.glued
    })?;
    let (short, meaning) = (&line[..sign], line.get(sign + 1..)?);
    let first = meaning.first()?.tok;
    let told = match line[sign].tok {
        // “sc around = 18” states a count.
        Tok::Equals => !matches!((first, meaning.len()), (Tok::Number(_), 1 | 2)),
        _ => {
            let known = matches!(short, [one] if is_term(one.tok))
                || matches!(short, [kind, _, tog] if is_term(kind.tok) && tog.tok == Tok::Say(Say::Together));
            // “MR: 6 sc” and “FLO: sc around” are work.
            let works = matches!(short[..], [Token { tok: Tok::Loop(_) | Tok::Ring, .. }])
                && (first.is_work() || first.counts());
            known && !works
        }
    };
    let plain =
        |t: &Token| !matches!(t.tok, Tok::Open(_) | Tok::Close | Tok::Comma | Tok::Star);
    let named = short.iter().any(|t| !t.tok.counts());
    (told && named && !short.is_empty() && short.iter().all(plain)).then_some((short, meaning))
}

fn is_term(tok: Tok) -> bool {
    use Tok::{Decrease, Increase, Kind, Loop, Marker, Ring, Round, Skip, Stitch};
    matches!(
        tok,
        Kind(_)
            | Increase(_)
            | Decrease(..)
            | Tok::Chain
            | Ring
            | Round
            | Stitch
            | Loop(_)
            | Skip
            | Marker
            | Tok::FastenOff
            | Tok::Turn
            | Tok::Yarn
            | Tok::Say(Say::Together | Say::Repeat)
    )
}

/// Whether `line` says that a plain “dec” is the invisible one. Some lists do; the sums are
/// the same.
pub(super) fn makes_invisible(line: &[Token]) -> bool {
    let invisible = |t: &Token| {
        matches!(t.tok, Tok::Decrease(_, Decrease::Invisible) | Tok::Loop(Loop::Front))
    };
    matches!(line, [first, .., ] if matches!(first.tok, Tok::Decrease(_, Decrease::Plain)))
        && line.iter().skip(1).any(invisible)
}
