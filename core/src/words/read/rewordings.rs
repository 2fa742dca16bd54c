//! The tokens of a line as they may be meant instead: without remarks, with the stitch or the
//! verb that is left unsaid.

use super::count::figure_of;
use super::layers::rematch;
use super::token::{Say, Tok, Token};
use crate::words::tree::{Placed, StitchKind};

/// Without brackets that hold a remark: no count, and nothing says how often.
pub(super) fn without_remarks(tokens: &[Token]) -> Option<Vec<Token>> {
    let mut kept = Vec::with_capacity(tokens.len());
    let mut at = 0;
    while let Some(token) = tokens.get(at) {
        if let Tok::Open(n) = token.tok
            && n > 1
            && let Some(inside) = tokens.get(at + 1..at + n)
        {
            let worded = inside.iter().any(|t| matches!(t.tok, Tok::Unknown | Tok::Say(_)))
                || inside.iter().any(|t| t.tok.is_work());
            let multiplied = matches!(
                tokens.get(at + n + 1).map(|t| t.tok),
                Some(Tok::Times | Tok::Number(_) | Tok::Turns(_) | Tok::Say(_) | Tok::InEach)
            ) && !matches!(
                tokens.get(at + n + 1).map(|t| t.tok),
                Some(Tok::Say(Say::In))
            );
            if worded && !multiplied && figure_of(inside).is_none() && at > 0 {
                at += n + 1;
                continue;
            }
        }
        kept.push(*token);
        at += 1;
    }
    (kept.len() < tokens.len()).then(|| {
        rematch(&mut kept);
        kept
    })
}

/// “sc 8 in black, sc 8 in light blue”: without the names behind the stitches.
pub(super) fn without_colours(tokens: &[Token]) -> Option<Vec<Token>> {
    let mut kept = Vec::with_capacity(tokens.len());
    let mut at = 0;
    while let Some(token) = tokens.get(at) {
        let counted =
            at > 0 && matches!(tokens[at - 1].tok, Tok::Number(_) | Tok::Kind(_) | Tok::Stitch);
        let begins = matches!(token.tok, Tok::Say(Say::In | Say::With));
        // “sc 1 white, sc 1 red”
        let alone = token.tok == Tok::Unknown;
        let lead = usize::from(!alone);
        let words =
            tokens[at + lead..].iter().take(3).take_while(|t| t.tok == Tok::Unknown).count();
        let ends = tokens.get(at + lead + words).is_none_or(|t| {
            t.tok.parts() || matches!(t.tok, Tok::Open(_) | Tok::Close | Tok::Equals)
        });
        if counted && (begins || alone) && (1..=2).contains(&words) && ends {
            at += lead + words;
            continue;
        }
        kept.push(*token);
        at += 1;
    }
    (kept.len() < tokens.len()).then(|| {
        rematch(&mut kept);
        kept
    })
}

/// “2 sc inc” as two increases: without the kind of stitch before “inc” and “dec”.
pub(super) fn kinds_joined(tokens: &[Token]) -> Option<Vec<Token>> {
    let mut kept = Vec::with_capacity(tokens.len());
    for (i, token) in tokens.iter().enumerate() {
        let shaped = matches!(
            tokens.get(i + 1).map(|t| t.tok),
            Some(Tok::Increase(_) | Tok::Decrease(..))
        );
        if !(shaped && matches!(token.tok, Tok::Kind(_))) {
            kept.push(*token);
        }
    }
    (kept.len() < tokens.len()).then(|| {
        rematch(&mut kept);
        kept
    })
}

/// “18 sts”, where nothing else is worked: as many plain stitches.
pub(super) fn stitches_are_plain(tokens: &[Token], kind: StitchKind) -> Option<Vec<Token>> {
    if tokens.iter().any(|t| t.tok.is_work() || t.tok == Tok::Ring) {
        return None;
    }
    let named = tokens
        .windows(2)
        .position(|pair| matches!((pair[0].tok, pair[1].tok), (Tok::Number(_), Tok::Stitch)));
    let mut all = tokens.to_vec();
    if let Some(at) = named {
        all[at + 1] = all[at + 1].meaning(Tok::Kind(kind));
        return Some(all);
    }
    // “20 [20]”, “9 around (9)”: the number alone.
    let lead = tokens.iter().take_while(|t| t.tok.parts()).count();
    let number = tokens.get(lead).filter(|t| matches!(t.tok, Tok::Number(_)))?;
    let ends = matches!(
        tokens.get(lead + 1).map(|t| t.tok),
        None | Some(
            Tok::Open(_)
                | Tok::Equals
                | Tok::InEach
                | Tok::Stop
                | Tok::Dash
                | Tok::Slash
                | Tok::Bar
                | Tok::Say(Say::Around)
        )
    );
    all.insert(lead + 1, Token { start: number.end, ..number.meaning(Tok::Kind(kind)) });
    rematch(&mut all);
    ends.then_some(all)
}

/// “2 M häkeln, 1 M verdoppeln”: stitches that are counted and nothing else said of them are
/// plain ones.
pub(super) fn stitches_among(tokens: &[Token], kind: StitchKind) -> Option<Vec<Token>> {
    let mut all = tokens.to_vec();
    let mut changed = false;
    for i in 1..tokens.len() {
        let counted =
            tokens[i].tok == Tok::Stitch && matches!(tokens[i - 1].tok, Tok::Number(_));
        let placed = i.checked_sub(2).is_some_and(|b| {
            matches!(
                tokens[b].tok,
                Tok::InEach
                    | Tok::Say(
                        Say::In | Say::Next | Say::Each | Say::Last | Say::Over | Say::The
                    )
            ) || tokens[b].tok.is_work()
        });
        let said = matches!(
            tokens.get(i + 1).map(|t| t.tok),
            Some(Tok::Skip | Tok::Say(Say::Together | Say::Doubled | Say::Total | Say::Over))
        );
        // “un punto, un aumento”
        let article = tokens[i].tok == Tok::Stitch
            && tokens[i - 1].tok == Tok::Say(Say::The)
            && tokens.get(i.wrapping_sub(2)).is_none_or(|t| {
                t.tok.parts() || matches!(t.tok, Tok::Open(_) | Tok::Star | Tok::Say(Say::Work))
            })
            && tokens.get(i + 1).is_some_and(|t| t.tok.parts());
        if article || counted && !placed && !said {
            all[i] = all[i].meaning(Tok::Kind(kind));
            changed = true;
        }
    }
    // “1 m, 2 m ds la suivante” names no stitch, and where they go.
    let works = tokens.iter().any(|t| {
        t.tok.is_work()
            || matches!(t.tok, Tok::InEach | Tok::Say(Say::Next | Say::Together | Say::Doubled))
    });
    (changed && works).then_some(all)
}

/// “3, inc, six times”: numbers alone before what is worked are plain stitches.
pub(super) fn bare_numbers(tokens: &[Token], kind: StitchKind) -> Option<Vec<Token>> {
    if !tokens.iter().any(|t| matches!(t.tok, Tok::Increase(_) | Tok::Decrease(..))) {
        return None;
    }
    let parts = |t: &Token| {
        matches!(
            t.tok,
            Tok::Comma | Tok::Dash | Tok::Colon | Tok::Stop | Tok::Open(_) | Tok::Star
        )
    };
    let mut worked = false;
    kind_after(tokens, kind, |i, n| {
        worked |= tokens[i].tok.is_work();
        let begins = i.checked_sub(1).is_none_or(|b| parts(&tokens[b]));
        let ends = tokens.get(i + 1).is_some_and(|t| {
            matches!(
                t.tok,
                Tok::Comma | Tok::Say(Say::Then) | Tok::Increase(_) | Tok::Decrease(..)
            )
        });
        let more = || tokens[i + 1..].iter().any(|t| t.tok.is_work()) || worked;
        n >= 1 && begins && ends && more()
    })
}

/// `tokens` with a stitch of `kind` behind each number, at an index and so large, for which
/// `wants` says so; nothing where there is none.
fn kind_after(
    tokens: &[Token],
    kind: StitchKind,
    mut wants: impl FnMut(usize, u32) -> bool,
) -> Option<Vec<Token>> {
    let mut all = Vec::with_capacity(tokens.len() + 4);
    for (i, token) in tokens.iter().enumerate() {
        all.push(*token);
        let number = if let Tok::Number(n) = token.tok { n } else { 0 };
        if wants(i, number) {
            all.push(Token { start: token.end, ..token.meaning(Tok::Kind(kind)) });
        }
    }
    (all.len() > tokens.len()).then(|| {
        rematch(&mut all);
        all
    })
}

/// “one in each stitch”: a number without a stitch, and where it goes.
pub(super) fn kind_supplied(tokens: &[Token], kind: StitchKind) -> Option<Vec<Token>> {
    let all = kind_after(tokens, kind, |i, n| {
        let placed = i.checked_sub(1).is_some_and(|b| {
            !tokens[b].tok.parts()
                && !matches!(
                    tokens[b].tok,
                    Tok::Open(_) | Tok::Star | Tok::Say(Say::Work | Say::The)
                )
        });
        let goes =
            tokens.get(i + 1).is_some_and(|t| matches!(t.tok, Tok::InEach | Tok::Say(Say::In)));
        (1..=4).contains(&n) && !placed && goes
    })?;
    Some(behind_remark(&all).unwrap_or(all))
}

/// “just go around, sc in each”: what stands before the first sign, if it says nothing of
/// stitches, is a remark.
pub(super) fn behind_remark(tokens: &[Token]) -> Option<Vec<Token>> {
    let at = tokens.iter().position(|t| matches!(t.tok, Tok::Comma | Tok::Dash | Tok::Stop))?;
    let says = |t: &Token| {
        t.tok.is_work() && !matches!(t.tok, Tok::Even(_))
            || t.tok.counts()
            || matches!(t.tok, Tok::Ring | Tok::Loop(_) | Tok::Open(_) | Tok::Star)
    };
    let mut after = tokens[at + 1..].to_vec();
    rematch(&mut after);
    let works = after.iter().any(|t| t.tok.is_work());
    (at > 0 && works && !tokens[..at].iter().any(says)).then_some(after)
}

/// “Sc. Eyes: between 7 and 8”: the first sentence, where the next is no work.
pub(super) fn first_sentence(tokens: &[Token]) -> Option<Vec<Token>> {
    let at = tokens.iter().position(|t| t.tok == Tok::Stop && t.glued)?;
    let next = tokens.get(at + 1)?;
    let goes_on = next.tok.is_work()
        || next.tok.counts()
        || matches!(
            next.tok,
            Tok::Open(_)
                | Tok::Star
                | Tok::TwoStars
                | Tok::Equals
                | Tok::InEach
                | Tok::Say(Say::Repeat | Say::Then | Say::In | Say::Each | Say::Total)
        );
    let mut first = tokens[..at].to_vec();
    rematch(&mut first);
    let worked = first.iter().any(|t| t.tok.is_work() || t.tok == Tok::Ring);
    (worked && !goes_on && !next.glued).then_some(first)
}

/// “Decrease: 2 sc, dec”: what stands before the colon is a remark.
pub(super) fn behind_colon(tokens: &[Token]) -> Option<Vec<Token>> {
    let at = tokens.iter().rposition(|t| t.tok == Tok::Colon)?;
    let mut after = tokens[at + 1..].to_vec();
    rematch(&mut after);
    (at > 0 && after.iter().any(|t| t.tok.is_work())).then_some(after)
}

/// “16 sc (2 sc in each st)”: the count, and the work in brackets.
pub(super) fn bracketed_work(tokens: &[Token]) -> Option<(Placed<u32>, Vec<Token>)> {
    let lead = tokens.iter().take_while(|t| t.tok.parts()).count();
    let [count, named, open, inside @ ..] = &tokens[lead..] else { return None };
    let (Tok::Number(stated), Tok::Kind(_) | Tok::Stitch, Tok::Open(n)) =
        (count.tok, named.tok, open.tok)
    else {
        return None;
    };
    let inside = inside.get(..n.checked_sub(1)?)?;
    let mut work = inside.to_vec();
    rematch(&mut work);
    let works = |t: &Token| {
        t.tok.is_work()
            || matches!(t.tok, Tok::InEach | Tok::Say(Say::Next | Say::Together | Say::Doubled))
    };
    inside.iter().any(works).then(|| (Placed::at(stated, count.at()), work))
}

/// “every 3rd stitch (24)”: places without a word on what is done there.
/// `first` where it stands before them.
pub(super) fn with_verb(tokens: &[Token], shaping: Tok, first: bool) -> Option<Vec<Token>> {
    let at = tokens
        .iter()
        .position(|t| matches!(t.tok, Tok::Open(_) | Tok::Equals))
        .unwrap_or(tokens.len());
    let places = tokens[..at]
        .iter()
        .any(|t| matches!(t.tok, Tok::InEach | Tok::Ordinal(_) | Tok::Say(Say::Each)));
    if !places || tokens.iter().any(|t| t.tok.is_work()) || tokens.len() > 24 {
        return None;
    }
    let before = tokens.get(at.checked_sub(1)?)?;
    let mut all = tokens.to_vec();
    let lead = tokens.iter().take_while(|t| t.tok.parts()).count();
    match tokens.get(lead).filter(|_| first) {
        // It stands where the places begin, and takes no room there.
        Some(place) => {
            let verb = Token { end: place.start, ..place.meaning(shaping) };
            all.insert(lead, verb);
        }
        None => all.insert(at, before.meaning(shaping)),
    }
    rematch(&mut all);
    Some(all)
}

/// “in the next 2 sc”, where the word for the stitch that they go into is left out.
pub(super) fn noun_supplied(tokens: &[Token]) -> Option<Vec<Token>> {
    let mut all = Vec::with_capacity(tokens.len() + 1);
    for (i, token) in tokens.iter().enumerate() {
        all.push(*token);
        let unnamed =
            matches!(
                (tokens.get(i + 1).map(|t| t.tok), tokens.get(i + 2).map(|t| t.tok)),
                (Some(Tok::Number(2..=3)), Some(Tok::Kind(_)))
            ) && !matches!(tokens.get(i + 3).map(|t| t.tok), Some(Tok::Say(Say::Together)));
        if token.tok == Tok::Say(Say::Next) && unnamed {
            all.push(Token { start: token.end, ..token.meaning(Tok::Stitch) });
        }
    }
    (all.len() > tokens.len()).then(|| {
        rematch(&mut all);
        all
    })
}

/// The count that may end a line without any of the usual signs, “… 18”, “… *18*”, “… |18|”,
/// “… for 18 sts”, and the tokens before it. Only sums can tell that it is one.
pub(super) fn trailing(tokens: &[Token]) -> Option<(Placed<u32>, Vec<Token>)> {
    let mut end = tokens.len();
    let mut back = |want: &dyn Fn(Tok) -> bool, most: usize| {
        let many = tokens[..end].iter().rev().take(most).take_while(|t| want(t.tok)).count();
        end -= many;
        end
    };
    let sign = |tok| {
        tok == Tok::Equals
            || matches!(tok, Tok::Star | Tok::TwoStars | Tok::Close)
            || Tok::parts(tok)
    };
    back(&sign, 4);
    back(&|tok| matches!(tok, Tok::Stitch | Tok::Kind(_) | Tok::Say(Say::Total | Say::The)), 3);
    let at = back(&|tok| matches!(tok, Tok::Number(3..)), 1);
    let number = tokens.get(at).filter(|t| matches!(t.tok, Tok::Number(3..)))?;
    let Tok::Number(count) = number.tok else { return None };
    let lead = |tok| {
        sign(tok)
            || matches!(tok, Tok::Open(_) | Tok::Unknown)
            || matches!(tok, Tok::Say(Say::For | Say::Numbered | Say::Total | Say::The))
    };
    let to = back(&lead, 4);
    let mut before = tokens[..to].to_vec();
    rematch(&mut before);
    let works = |t: &Token| t.tok.is_work() || t.tok == Tok::Ring;
    before.iter().any(works).then(|| (Placed::at(count, number.at()), before))
}
