//! What the explanation of a short form comes to.

use super::token::{Say, Tok, Token};
use crate::words::tree::{Decrease, StitchKind};

/// What a meaning comes to: an increase, a decrease or a kind of stitch.
pub(super) fn meant(meaning: &[Token]) -> Option<Tok> {
    let kind = meaning.iter().find_map(|t| match t.tok {
        Tok::Kind(kind) if kind != StitchKind::Slip => Some(kind),
        _ => None,
    });
    let of = kind.unwrap_or(StitchKind::Single);
    let more = Tok::Increase(of);
    let fewer = Tok::Decrease(of, Decrease::Plain);
    let has = |want: &dyn Fn(Tok) -> bool| meaning.iter().any(|t| want(t.tok));
    if has(&|t| matches!(t, Tok::Decrease(..) | Tok::Say(Say::Together))) {
        return Some(fewer);
    }
    if has(&|t| matches!(t, Tok::Increase(_) | Tok::Say(Say::Doubled))) {
        return Some(more);
    }
    // “(+1)”, “(-1)”
    let signed = meaning.windows(2).find_map(|pair| match (pair[0].tok, pair[1].tok) {
        (Tok::Comma, Tok::Number(1)) if pair[1].glued => Some(more),
        (Tok::Dash, Tok::Number(1)) if pair[1].glued => Some(fewer),
        _ => None,
    });
    if signed.is_some() {
        return signed;
    }
    // Two stitches become one, or one becomes two: the number that stitches are named with
    // is what is there before.
    let numbers: Vec<(u32, bool)> = meaning
        .iter()
        .enumerate()
        .filter_map(|(i, t)| match t.tok {
            Tok::Number(n @ 1..=2) => {
                let stitches = meaning.get(i + 1).is_some_and(|t| matches!(t.tok, Tok::Stitch));
                Some((n, stitches))
            }
            _ => None,
        })
        .collect();
    match numbers.as_slice() {
        [(2, false), (1, false)] if has(&|t| t == Tok::Say(Say::As)) => return Some(fewer),
        [(2, true)] => return Some(fewer),
        [(2, false)] => return Some(more),
        [(a, true), (b, _), ..] | [(b, false), (a, true), ..] if a > b => return Some(fewer),
        [(a, true), (b, _), ..] | [(b, false), (a, true), ..] if a < b => return Some(more),
        [(2, false), (1, false)] => return Some(more),
        _ => {}
    }
    if has(&|t| t == Tok::Fancy) {
        return Some(Tok::Fancy);
    }
    let early = meaning.iter().take(3).any(|t| matches!(t.tok, Tok::Kind(_)));
    let stitch = kind.filter(|_| early).map(Tok::Kind);
    stitch.or_else(|| term(meaning))
}

/// The one other term that a meaning of a few words is: “mg = cercle magique”.
fn term(meaning: &[Token]) -> Option<Tok> {
    let terms = || {
        meaning.iter().map(|t| t.tok).filter(|tok| {
            matches!(
                tok,
                Tok::Ring
                    | Tok::Loop(_)
                    | Tok::Chain
                    | Tok::Stitch
                    | Tok::Round
                    | Tok::Skip
                    | Tok::Kind(StitchKind::Slip)
            )
        })
    };
    let mut found = terms();
    let first = found.next()?;
    let sole = found.all(|tok| tok == first);
    (sole && meaning.len() <= SHORT_MEANING).then_some(first)
}

/// Words of a meaning that is a term and nothing else, at most.
const SHORT_MEANING: usize = 4;
