//! Lists of abbreviations: “sc = single crochet”, “inc: 2 sc in next st”.

use super::meaning::meant;
use super::token::{Say, Tok, Token, span};
use crate::piece::cloth::Loop;
use crate::words::tree::{Decrease, Line, Placed};

/// Most tokens of a short form.
const SHORT: usize = 3;

/// The abbreviations that a line without a heading explains; empty where it explains none.
pub(super) fn abbreviations(line: &[Token], text: &str) -> Vec<Placed<Line>> {
    let line = unstarred(line);
    let line = match line {
        [
            Token { tok: Tok::Say(Say::Section), .. },
            Token { tok: Tok::Colon, .. },
            rest @ ..,
        ] => rest,
        _ => line,
    };
    let several = line.iter().filter(|t| t.tok == Tok::Equals).count() > 1;
    let row = in_a_row(line);
    if !several && row.len() > 1 {
        return row.into_iter().filter_map(|part| one(part, text)).collect();
    }
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
    let parts: Vec<&[Token]> = parts.into_iter().flat_map(unjoined).collect();
    let found: Vec<_> = parts.iter().filter_map(|part| one(part, text)).collect();
    if found.len() == parts.len() { found } else { Vec::new() }
}

/// “a = inc   d = dec   x = sc”: each by itself, where nothing but room parts them.
fn unjoined(part: &[Token]) -> Vec<&[Token]> {
    let signs = part.iter().enumerate().filter(|(_, t)| t.tok == Tok::Equals);
    let mut starts: Vec<usize> =
        signs.skip(1).map(|(i, _)| i - 1).filter(|&start| start > 1).collect();
    starts.insert(0, 0);
    let ends = starts.iter().skip(1).copied().chain([part.len()]);
    starts.iter().zip(ends).map(|(&from, to)| &part[from..to]).collect()
}

/// `line` without the asterisk that stands before it as a bullet.
fn unstarred(line: &[Token]) -> &[Token] {
    match line {
        [Token { tok: Tok::Star, .. }, rest @ ..]
            if !rest.iter().any(|t| matches!(t.tok, Tok::Star | Tok::TwoStars)) =>
        {
            rest
        }
        _ => line,
    }
}

/// The short forms that a line explains, each with its meaning, as far as one line tells.
pub(super) fn explained(line: &[Token]) -> Vec<(&[Token], &[Token])> {
    let line = unstarred(line);
    let several = line.iter().filter(|t| t.tok == Tok::Equals).count() > 1;
    if several {
        return line
            .split(|t| t.tok == Tok::Comma || t.tok == Tok::Stop)
            .flat_map(unjoined)
            .map(|part| {
                let lead = part.iter().take_while(|t| t.tok.parts()).count();
                &part[lead..]
            })
            .filter_map(|part| bracketed(part).or_else(|| signed(part)))
            .collect();
    }
    let row = rowed(line);
    if !row.is_empty() {
        return row;
    }
    bracketed(line).or_else(|| signed(line)).or_else(|| loosely(line)).into_iter().collect()
}

/// Short forms that a row explains without a sign: “mc maille coulée, K kettmasche, …”, “Lm.
/// Luftmasche – f. M. feste Masche – K. Kettenmasche”. Those the lexicon has show that it is
/// such a row.
fn rowed(line: &[Token]) -> Vec<(&[Token], &[Token])> {
    let colon = line.iter().take(4).position(|t| t.tok == Tok::Colon);
    let line = &line[colon.map_or(0, |at| at + 1)..];
    // The first sentence, where another follows.
    let stop = line.iter().position(|t| t.tok == Tok::Stop);
    let line = &line[..stop.filter(|at| line.len() > at + 8).unwrap_or(line.len())];
    let parts: Vec<&[Token]> = line
        .split(|t| {
            matches!(t.tok, Tok::Comma | Tok::Slash | Tok::Bar)
                || t.tok == Tok::Dash && !t.glued
        })
        .filter(|part| !part.is_empty())
        .collect();
    let (mut known, mut said) = (0, 0);
    let mut found = Vec::new();
    for part in &parts {
        let part = match part {
            [rest @ .., Token { tok: Tok::Stop, .. }] => rest,
            all => all,
        };
        let point = usize::from(part.get(1).is_some_and(|t| t.tok == Tok::Stop));
        let Some((short, meaning)) = part.split_first() else { continue };
        let meaning = &meaning[point.min(meaning.len())..];
        // “W is an increase”
        let joins = meaning.iter().take_while(|t| matches!(t.tok, Tok::Say(Say::The))).count();
        let [meaning] = &meaning[joins..] else { continue };
        said += usize::from(joins > 1 && is_term(meaning.tok));
        if !is_term(meaning.tok) {
            continue;
        }
        if short.tok == meaning.tok {
            known += 1;
        } else if matches!(short.tok, Tok::Unknown | Tok::Say(_)) {
            found.push((std::slice::from_ref(short), std::slice::from_ref(meaning)));
        }
    }
    let enough = 3 * (known + found.len()) >= 2 * parts.len();
    if (known > 0 || said > 1) && parts.len() > 1 && enough { found } else { Vec::new() }
}

/// “2sc – two single crochet into one stitch”, “BLSC back loop single crochet”: a short form
/// that no lexicon has, known by what follows it.
fn loosely(line: &[Token]) -> Option<(&[Token], &[Token])> {
    let plain = |t: &Token| {
        !matches!(
            t.tok,
            Tok::Close | Tok::Comma | Tok::Star | Tok::Stop | Tok::Times | Tok::Say(Say::In)
        )
    };
    let sign = line.iter().take(SHORT + 3).enumerate().skip(1).find_map(|(i, t)| {
        matches!(t.tok, Tok::Equals | Tok::Colon)
            .then_some(i)
            .or_else(|| (t.tok == Tok::Dash && !t.glued).then_some(i))
    });
    let begun = matches!(
        line,
        [Token { tok: Tok::Unknown, .. }, Token { tok: Tok::Kind(_) | Tok::Loop(_), .. }, ..]
    );
    let (short, meaning) = match sign.filter(|_| !begun) {
        Some(sign) => (&line[..sign], line.get(sign + 1..)?),
        None => (line.get(..1)?, line.get(1..)?),
    };
    let known = |t: &Token| {
        matches!(
            t.tok,
            Tok::Unknown
                | Tok::Number(_)
                | Tok::Kind(_)
                | Tok::Dash
                | Tok::Slash
                | Tok::Say(Say::Together)
                | Tok::Decrease(..)
                | Tok::Increase(_)
        )
    };
    let odd = short.iter().any(|t| t.tok == Tok::Unknown)
        || matches!(
            short,
            [Token { tok: Tok::Number(2), .. }, Token { tok: Tok::Kind(_), .. }, ..]
        );
    let term = |t: &Token| matches!(t.tok, Tok::Kind(_) | Tok::Increase(_) | Tok::Decrease(..));
    let worded = meaning.iter().filter(|t| !t.tok.parts()).count() >= 2
        || matches!(meaning, [one] if term(one));
    let numbered = meaning.iter().any(|t| matches!(t.tok, Tok::Number(3..)));
    (odd && worded
        && !numbered
        && short.iter().all(plain)
        && short.iter().all(known)
        && meant(meaning).is_some()
        && (sign.is_some()
            || matches!(meaning.first().map(|t| t.tok), Some(Tok::Kind(_) | Tok::Loop(_)))))
    .then_some((short, meaning))
}

fn one(line: &[Token], text: &str) -> Option<Placed<Line>> {
    let (short, meaning) =
        bracketed(line).or_else(|| signed(line)).or_else(|| loosely(line))?;
    let words = |tokens| text.get(span(tokens)).map(|s| s.trim_end_matches('.').to_owned());
    let it = Line::Abbreviation { short: words(short)?, meaning: words(meaning)? };
    Some(Placed::at(it, span(line)))
}

/// “Chain (ch) Slip stitch (sl st)”: each by itself; none where something else stands there.
fn in_a_row(line: &[Token]) -> Vec<&[Token]> {
    let mut parts = Vec::new();
    let mut start = 0;
    for (i, token) in line.iter().enumerate() {
        if token.tok == Tok::Close {
            let part = &line[start..=i];
            if bracketed(part).is_none() {
                return Vec::new();
            }
            parts.push(part);
            start = i + 1;
        }
    }
    if start < line.len() { Vec::new() } else { parts }
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
    let same = |at: usize| {
        let meaning = line.get(at + 1).map(|t| t.tok);
        at == 1 && is_term(line[0].tok) && meaning == Some(line[0].tok)
    };
    let sign = line.iter().take(SHORT + 1).enumerate().position(|(i, t)| {
        matches!(t.tok, Tok::Equals | Tok::Colon) || t.tok == Tok::Dash && (!t.glued || same(i))
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
