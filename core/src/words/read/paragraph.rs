//! Where one round of a paragraph ends and the next begins: “R1: 6 sc in mr (6) R2: inc x 6”.

use super::heading::{heading, in_sentence};
use super::heading_range::Heading;
use super::token::{Say, Tok, Token};

/// Sentences shorter than this, in tokens, stay with what comes after.
const SENTENCE: usize = 6;

/// Whether a sentence ends at token `i` of `rest`, and another of some length follows.
fn sentence_ends(rest: &[Token], i: usize, text: &str) -> bool {
    let begins = |t: &Token| {
        let first = text.get(t.at()).and_then(|word| word.chars().next());
        !t.glued && first.is_some_and(char::is_uppercase)
    };
    // “… is the number of sts. 6 sc in mr (6)”
    let counts = matches!(
        (rest.get(i + 1).map(|t| t.tok), rest.get(i + 2).map(|t| t.tok)),
        (Some(Tok::Number(_)), Some(Tok::Kind(_)))
    );
    // Looked back over so far and no further: a line may be as long as a text.
    let near = &rest[i.saturating_sub(ROUND)..i];
    // “Now 5 rounds even. …” is short, and whole.
    let told = i > 2
        && near
            .windows(2)
            .any(|pair| matches!((pair[0].tok, pair[1].tok), (Tok::Number(2..), Tok::Round)));
    // “… so you have 12. After that …”
    let stated = i > 2 && matches!(rest[i - 2].tok, Tok::Equals | Tok::Say(Say::For));
    // A repeat, or what stands behind an open asterisk, goes on with the sentence.
    let goes_on = rest.get(i + 1).is_some_and(|t| t.tok == Tok::Say(Say::Repeat))
        || near.iter().filter(|t| t.tok == Tok::Star).count() % 2 == 1;
    rest[i].tok == Tok::Stop
        && (i >= SENTENCE || told)
        && !goes_on
        // “die 5. Masche”
        && (stated || !matches!(rest[i - 1].tok, Tok::Number(_)))
        && rest[i].glued
        && (counts || rest.get(i + 1).is_some_and(begins))
        && rest.get(i + 1..=i + SENTENCE).is_some_and(|more| {
            more.iter().all(|t| t.tok != Tok::Newline)
        })
}

/// How many tokens belong to the line that `rest` begins with: up to the end of the line or
/// to the next heading in it, as in “R1: 6 sc in mr (6) R2: inc around (12)”. `so_far` is the
/// last number that headed a round before it.
pub(super) fn piece_of_line(rest: &[Token], text: &str, so_far: u32) -> usize {
    let mut depth = 0_usize;
    let mut counted = false;
    // A heading never reaches over the end of a line. Looking for that end first would make
    // a long line of many headings quadratic.
    let headed = heading(rest).filter(|h| !h.tabled);
    let head = headed.map_or(1, |h| h.tokens.max(1));
    let before = headed.filter(|h| h.numbered);
    for i in head..rest.len() {
        match rest[i].tok {
            Tok::Newline => return i,
            Tok::Stop if headed.is_none() && depth == 0 && sentence_ends(rest, i, text) => {
                return i + 1;
            }
            // “6 sc in ring (6). 2 sc in each (12); …”: rounds without numbers, each with its count.
            Tok::Stop | Tok::Comma
                if headed.is_none_or(|h| h.weak)
                    && depth == 0
                    && rest.get(i + 1).is_some_and(|t| t.tok != Tok::Newline)
                    && (ends_with_count(&rest[..i])
                        || rest[i].tok == Tok::Comma
                            && ends_told(&rest[..i], &rest[i + 1..]))
                    && goes_on_counted(&rest[i + 1..]) =>
            {
                return i + 1;
            }
            // “… (24). Then 5 rounds even”: rounds told behind a count.
            Tok::Stop if depth == 0 && counted && tells_rounds(&rest[i + 1..]) => {
                return i + 1;
            }
            // “… (6) [Rnd 2] …”
            Tok::Open(_)
                if depth == 0
                    && counted
                    && before.is_some_and(|b| {
                        heading(&rest[i..]).is_some_and(|h| {
                            !h.bare && h.numbered && b.last.checked_add(1) == Some(h.first)
                        })
                    }) =>
            {
                return i;
            }
            Tok::Open(_) => depth += 1,
            Tok::Close => {
                depth = depth.saturating_sub(1);
                counted = true;
            }
            Tok::Equals => counted = true,
            // “… = 24 M etwa 5 Runden mit 24 M”: rounds told behind the count.
            Tok::Number(2..)
                if depth == 0
                    && counted
                    && matches!(
                        rest[i - 1].tok,
                        Tok::Unknown
                            | Tok::Stop
                            | Tok::Stitch
                            | Tok::Close
                            | Tok::Say(Say::Then)
                    )
                    && rest.get(i + 1).is_some_and(|t| t.tok == Tok::Round)
                    && !matches!(
                        rest.get(i + 2).map(|t| t.tok),
                        None | Some(Tok::Number(_) | Tok::Close | Tok::Newline)
                    ) =>
            {
                return i;
            }
            Tok::Round
            | Tok::Say(Say::Row | Say::Unnumbered)
            | Tok::Number(_)
            | Tok::Ordinal(_)
                if depth == 0
                    && (heads_anew(&rest[i - 1..])
                        || counts_on(&rest[i - 1..], before.as_ref(), (so_far, counted))) =>
            {
                return i;
            }
            // “… In der 3. Runde …”: a sentence that begins with its round.
            Tok::Say(Say::In | Say::The | Say::For | Say::To)
                if depth == 0
                    && rest[i - 1].tok == Tok::Stop
                    && in_sentence(&rest[i..], 0).is_some() =>
            {
                return i;
            }
            // “…, in round 3 every 2nd, in round 4 …”
            Tok::Say(Say::In | Say::For | Say::To)
                if depth == 0
                    && matches!(
                        rest[i - 1].tok,
                        Tok::Comma | Tok::Colon | Tok::Say(Say::Then)
                    )
                    && in_sentence(&rest[i..], 0).is_some_and(|h| {
                        h.numbered
                            && match before {
                                Some(before) => before.last.checked_add(1) == Some(h.first),
                                None => h.first == 1 || follows(so_far, h.first),
                            }
                    }) =>
            {
                return i;
            }
            _ => {}
        }
    }
    rest.len()
}

/// Whether the last of `tokens` are a count in brackets: “(18)”, “(18 sts)”.
fn ends_with_count(tokens: &[Token]) -> bool {
    let back = |n: usize| tokens.len().checked_sub(n).map(|i| tokens[i].tok);
    let named = matches!(back(2), Some(Tok::Stitch | Tok::Kind(_)));
    let from = if named { 3 } else { 2 };
    // “… all the way around for 18”, “… so you have 12”
    if let (Some(Tok::Number(3..)), Some(Tok::Equals | Tok::Say(Say::For))) = (back(1), back(2))
    {
        return true;
    }
    back(1) == Some(Tok::Close)
        && matches!(back(from), Some(Tok::Number(_)))
        && matches!(back(from + 1), Some(Tok::Open(_)))
}

/// Whether the first round of a sentence ends before a comma: “6 sc into the ring, then …”,
/// “sc for 4 rounds, …”.
fn ends_told(before: &[Token], after: &[Token]) -> bool {
    let rings = before.iter().rev().take(8).any(|t| t.tok == Tok::Ring)
        && before.iter().any(|t| matches!(t.tok, Tok::Number(3..)))
        && after.first().is_some_and(|t| t.tok == Tok::Say(Say::Then));
    let told = matches!(
        before,
        [.., many, rounds] if matches!(many.tok, Tok::Number(2..)) && rounds.tok == Tok::Round
    );
    rings || told
}

/// Whether the next sentence tells how many rounds: “Puis on fait 5 tours sans augmentation”.
fn tells_rounds(rest: &[Token]) -> bool {
    let sentence =
        rest.iter().take(ROUND).take_while(|t| !matches!(t.tok, Tok::Stop | Tok::Newline));
    let sentence: Vec<Tok> = sentence.map(|t| t.tok).collect();
    let at = sentence
        .windows(2)
        .take(6)
        .position(|pair| matches!((pair[0], pair[1]), (Tok::Number(2..), Tok::Round)));
    at.is_some_and(|at| !matches!(sentence.get(at + 2), Some(Tok::Number(_) | Tok::Colon)))
}

/// Tokens looked ahead for the count of the next round.
const ROUND: usize = 48;

/// Whether work and another count follow in the same line.
fn goes_on_counted(rest: &[Token]) -> bool {
    let line = rest.iter().take(ROUND).take_while(|t| t.tok != Tok::Newline).count();
    let line = &rest[..line];
    let works =
        |t: &Token| t.tok.is_work() || matches!(t.tok, Tok::Round | Tok::Say(Say::Doubled));
    line.iter().any(works) && (1..=line.len()).any(|n| ends_with_count(&line[..n]))
}

/// Whether work may end with it.
fn ends_work(tok: Tok) -> bool {
    tok.is_work()
        || matches!(
            tok,
            Tok::Ring
                | Tok::Stitch
                | Tok::InEach
                | Tok::Turns(_)
                | Tok::Join
                | Tok::Times
                | Tok::Say(Say::Around | Say::Doubled | Say::Together)
        )
}

/// Whether round `next` comes behind round `last`, where there is one.
fn follows(last: u32, next: u32) -> bool {
    last > 0 && last.checked_add(1) == Some(next)
}

/// Whether the round whose number follows on from `before` begins after the first of `rest`:
/// rounds told in one paragraph, whatever parts them. `counted` where a count may have ended
/// the one before.
fn counts_on(rest: &[Token], before: Option<&Heading>, (so_far, counted): (u32, bool)) -> bool {
    let refers = matches!(
        rest[0].tok,
        Tok::Say(
            Say::Repeat
                | Say::As
                | Say::In
                | Say::To
                | Say::From
                | Say::Over
                | Say::For
                | Say::Each
                | Say::Last
                | Say::Next
                | Say::Until
                | Say::The
                | Say::Numbered
                | Say::Row
        ) | Tok::Round
            | Tok::Slash
            | Tok::Open(_)
            | Tok::InEach
    ) || rest[0].tok == Tok::Dash && rest[0].glued;
    if refers {
        return false;
    }
    let Some(found) = heading(&rest[1..]).filter(|h| h.numbered) else { return false };
    let goes_on = match before {
        Some(before) => follows(before.last, found.first),
        None => !found.bare && (found.first == 1 || follows(so_far, found.first)),
    };
    let apart = match rest[0].tok {
        Tok::Close | Tok::Stop | Tok::Bullet | Tok::Bar => true,
        Tok::Comma | Tok::Colon | Tok::Dash | Tok::Number(_) => !found.bare,
        _ => !found.bare && (counted || before.is_some() && ends_work(rest[0].tok)),
    };
    // “… (x, V) 6 / 18” is no sixth round: a sign in a table begins one at the start of a line.
    let slashed = rest.get(found.tokens).is_some_and(|t| t.tok == Tok::Slash);
    let listed = found.bare && (slashed || !(counted && before.is_some_and(|b| b.bare)));
    let body = &rest[1 + found.tokens.min(rest.len() - 1)..];
    let lead = body.iter().take(2).take_while(|t| t.tok.parts()).count();
    let works = body.get(lead).is_some_and(|t| {
        begins_work(t.tok)
            || matches!(
                t.tok,
                Tok::Stitch
                    | Tok::Ordinal(_)
                    | Tok::Turns(_)
                    | Tok::Say(
                        Say::In
                            | Say::Work
                            | Say::Make
                            | Say::Repeat
                            | Say::Doubled
                            | Say::Around
                            | Say::As
                            | Say::With
                    )
            )
    });
    // “Chart: rounds 1–16, worked outward” begins nothing.
    let says = body.get(lead).is_some_and(|t| {
        matches!(t.tok, Tok::Say(Say::Work | Say::Make | Say::With | Say::As))
    });
    let works = works && !(says && before.is_none());
    // “zwischen Runde 5 und 6”
    let joined = matches!(body.first().map(|t| t.tok), Some(Tok::Say(Say::Then)));
    goes_on && apart && works && !listed && !joined
}

/// Whether it may stand first in what is worked, wherever that is.
fn begins_work(tok: Tok) -> bool {
    tok.is_work()
        || matches!(
            tok,
            Tok::Number(_)
                | Tok::InEach
                | Tok::Open(_)
                | Tok::Star
                | Tok::Ring
                | Tok::Loop(_)
                | Tok::Say(Say::Each | Say::The)
        )
}

/// Whether a heading with the word for a round and a colon stands after the first of `rest`,
/// and that lets one follow.
fn heads_anew(rest: &[Token]) -> bool {
    // “…, 2. Rd.: …”
    let pointed = matches!(
        (rest.get(1).map(|t| t.tok), rest.get(2).map(|t| t.tok), rest.get(3).map(|t| t.tok)),
        (Some(Tok::Number(_)), Some(Tok::Stop), Some(Tok::Round | Tok::Say(Say::Row)))
    );
    let refers = matches!(
        rest[0].tok,
        Tok::Say(Say::Repeat | Say::As | Say::In | Say::The | Say::Each | Say::Last | Say::Row)
            | Tok::Round
            | Tok::Slash
            | Tok::Open(_)
    ) || rest[0].tok == Tok::Dash && rest[0].glued
        || matches!(rest[0].tok, Tok::Number(_) | Tok::Say(Say::To | Say::Then) | Tok::Comma)
            && !(pointed && rest[0].tok == Tok::Comma)
            && matches!(rest[1].tok, Tok::Number(_) | Tok::Ordinal(_));
    // “2.R jede M verd (12) 3.R …”, “R2 inc around (12), R3 …”: behind a count.
    let behind = matches!(rest[0].tok, Tok::Close | Tok::Stop | Tok::Comma | Tok::Colon)
        && matches!(rest[1].tok, Tok::Round | Tok::Number(_))
        || matches!(rest[0].tok, Tok::Kind(_) | Tok::Stitch) && pointed;
    // A number at the start of what is worked, or one behind another heading's point.
    let listed = matches!(rest[1].tok, Tok::Number(_) | Tok::Ordinal(_));
    !refers
        && heading(&rest[1..]).is_some_and(|h| {
            let after = |n: usize| rest.get(1 + h.tokens + n).map(|t| t.tok);
            let closed = after(0) == Some(Tok::Colon)
                || after(0) == Some(Tok::Stop) && after(1) == Some(Tok::Colon);
            let own = !h.bare && (!listed || !in_list(&rest[1..]));
            let works = rest.get(1 + h.tokens).is_some_and(|t| begins_work(t.tok));
            (closed || behind && works && h.numbered) && own
        })
}

/// “2. Round 3:”: the number of a list before the heading.
fn in_list(rest: &[Token]) -> bool {
    matches!(rest.get(2).map(|t| t.tok), Some(Tok::Round | Tok::Say(Say::Row)))
        && matches!(rest.get(3).map(|t| t.tok), Some(Tok::Number(_)))
}
