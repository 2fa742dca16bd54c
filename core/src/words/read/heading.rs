//! The number of a round: “R3:”, “Rnds 5–9”, “Round 3 –”, “3)”, “3. Rd”, “Rnd 7, 8, 9:”,
//! “7.+8. Rd:”, “4eme tour :”, “Step 5: Round 4”, “[Rnd 3]”, “#3”, or none: “Foundation
//! round:”.

use super::heading_bare::{signed, stepped, tabled, unpointed};
use super::heading_range::{Heading, further, kind, made, round_word};
use super::token::{Say, Tok, Token};

/// The heading that `line` begins with.
pub(super) fn heading(line: &[Token]) -> Option<Heading> {
    let from = signs(line, true);
    let found = behind_count(line, from)
        .or_else(|| behind_list(line, from))
        .or_else(|| bracketed(line, from))
        .or_else(|| worded(line, from))
        .or_else(|| counted(line, from))
        .or_else(|| signed(line, from))
        .or_else(|| in_sentence(line, from))
        .or_else(|| bare(line, from))
        .or_else(|| unpointed(line, from))
        .or_else(|| stepped(line, from))
        .or_else(|| tabled(line, signs(line, false)))
        .or_else(|| unnumbered(line, from))?;
    (found.first <= found.last).then_some(found)
}

/// How many tokens of bullets and tick boxes `line` begins with.
pub(super) fn bullets_of(line: &[Token]) -> usize {
    signs(line, false)
}

fn signs(line: &[Token], stars: bool) -> usize {
    let mut at = 0;
    for _ in 0..4 {
        at += match (kind(line, at), kind(line, at + 1), kind(line, at + 2)) {
            (Some(Tok::Bullet | Tok::Dash), ..) => 1,
            (Some(Tok::Star | Tok::TwoStars), ..) if stars => 1,
            (Some(Tok::Open(_)), Some(Tok::Close), _) => 2,
            (Some(Tok::Open(_)), Some(Tok::Times), Some(Tok::Close)) => 3,
            _ => break,
        };
    }
    at
}

/// “(12) Rnd 2 – …”: a heading behind the count of its round.
fn behind_count(line: &[Token], from: usize) -> Option<Heading> {
    let counted = matches!(
        (kind(line, from)?, kind(line, from + 1)?, kind(line, from + 2)?),
        (Tok::Open(_), Tok::Number(_), Tok::Close)
    );
    worded(line, from + 3).filter(|_| counted)
}

/// A heading of its own behind the number of a list or of a step: “2. Round 1:”,
/// “Step 5: Round 4”.
fn behind_list(line: &[Token], from: usize) -> Option<Heading> {
    let ends = |t: Option<Tok>| {
        matches!(t, Some(Tok::Stop | Tok::Close | Tok::Colon | Tok::Dash | Tok::Comma))
    };
    let at = match (kind(line, from)?, kind(line, from + 1)) {
        (Tok::Number(_), after) if ends(after) => from + 2,
        (Tok::Say(Say::Row), _) => return None,
        (Tok::Unknown | Tok::Say(_), Some(Tok::Number(_))) if ends(kind(line, from + 2)) => {
            from + 3
        }
        _ => return None,
    };
    let found = worded(line, at)?;
    // “1. Rd. 9 fM” has its number before the word.
    let headed = matches!(
        kind(line, found.tokens),
        None | Some(
            Tok::Colon | Tok::Dash | Tok::Stop | Tok::Open(_) | Tok::Equals | Tok::Newline
        )
    );
    let closed = kind(line, found.tokens.checked_sub(1)?) == Some(Tok::Close);
    (headed || closed).then_some(found)
}

/// “[Rnd 3]”, “(Rnds 5–9)”: the whole heading in brackets.
fn bracketed(line: &[Token], from: usize) -> Option<Heading> {
    let Tok::Open(_) = kind(line, from)? else { return None };
    let found = worded(line, from + 1).or_else(|| counted(line, from + 1))?;
    let closed = kind(line, found.tokens.checked_sub(1)?) == Some(Tok::Close);
    (closed && line.get(found.tokens).is_some_and(|t| t.tok != Tok::Newline)).then_some(found)
}

/// “Rnd 3”, “Rd. 3”, “Rounds 5 to 9”, “R7-R9”, “Rnd-3”, “Rnd (3)”.
fn worded(line: &[Token], from: usize) -> Option<Heading> {
    let (row, plural) = round_word(line.get(from))?;
    let mut at = from + 1;
    if kind(line, at) == Some(Tok::Stop) {
        at += 1;
    }
    // “Tour n° 3”, “Round no. 3”
    if kind(line, at) == Some(Tok::Say(Say::Numbered)) {
        at += 1 + usize::from(kind(line, at + 1) == Some(Tok::Stop));
    }
    // “Rnd-3”
    let hyphen = line
        .get(at..at + 2)
        .is_some_and(|pair| pair[0].tok == Tok::Dash && pair[0].glued && pair[1].glued);
    at += usize::from(hyphen);
    // “Rnd (3):”
    if let (
        Some(Tok::Open(_)),
        Some(Tok::Number(n @ 1..)),
        Some(Tok::Close),
        Some(Tok::Colon),
    ) = (kind(line, at), kind(line, at + 1), kind(line, at + 2), kind(line, at + 3))
    {
        return Some(made(n, n, row, at + 3));
    }
    // “Vueltas de la 6 a la 9”
    let lead = line.get(at..).map_or(0, |rest| {
        let leads = |t: &&Token| matches!(t.tok, Tok::Say(Say::The | Say::From | Say::In));
        rest.iter().take(2).take_while(leads).count()
    });
    if lead > 0 && !plural {
        return None;
    }
    at += lead;
    let (Tok::Number(first) | Tok::Ordinal(first)) = kind(line, at)? else { return None };
    at += 1;
    // “T 5. à T 8.”
    if kind(line, at) == Some(Tok::Stop)
        && matches!(kind(line, at + 1), Some(Tok::Dash | Tok::Say(Say::To)))
        && (round_word(line.get(at + 2)).is_some()
            || matches!(
                (kind(line, at + 2), kind(line, at + 3)),
                (Some(Tok::Number(_)), Some(Tok::Stop | Tok::Colon))
            ))
    {
        at += 1;
    }
    // “Runde 6.) - 9.)”
    let marks = closing(line, at);
    if marks > 0
        && kind(line, at + marks) == Some(Tok::Dash)
        && matches!(kind(line, at + marks + 1), Some(Tok::Number(_)))
        && closing(line, at + marks + 2) > 0
    {
        at += marks;
    }
    let (last, at) = further(line, first, at, plural)?;
    Some(ended(line, made(first, last, row, at)))
}

/// What may stand after the last number and still belongs to the heading.
fn ended(line: &[Token], mut found: Heading) -> Heading {
    let ends = matches!(
        kind(line, found.tokens + 1),
        None | Some(Tok::Colon | Tok::Comma | Tok::Stop | Tok::Dash | Tok::Newline)
    );
    if kind(line, found.tokens) == Some(Tok::Say(Say::Around)) && ends {
        found.open = true;
        found.tokens += 1;
    }
    // “Round 12 of 12:”
    let all = matches!(kind(line, found.tokens), Some(Tok::Slash | Tok::Say(Say::The)))
        && kind(line, found.tokens + 1) == Some(Tok::Number(found.last))
        && matches!(kind(line, found.tokens + 2), Some(Tok::Colon | Tok::Dash | Tok::Close));
    found.tokens += if all { 2 } else { 0 };
    found.tokens += closing(line, found.tokens);
    // “Rd 3 = 6 fM in …”
    found.tokens += usize::from(kind(line, found.tokens) == Some(Tok::Equals));
    found
}

/// How many tokens of “)” or “.)” stand at `at`.
fn closing(line: &[Token], at: usize) -> usize {
    match (kind(line, at), kind(line, at + 1)) {
        (Some(Tok::Close), _) => 1,
        (Some(Tok::Stop), Some(Tok::Close)) => 2,
        _ => 0,
    }
}

/// “3. Rd”, “1.–3. Runde”, “7.+8. Rd”, “3rd round”, “7eme au 10eme tour”.
fn counted(line: &[Token], from: usize) -> Option<Heading> {
    let (first, mut pointed, mut at) = ordinal(line, from)?;
    let mut last = first;
    let short =
        |at: usize| line.get(at).is_some_and(|t| t.glued) && round_word(line.get(at)).is_some();
    // “6.R bis 11.R:”, “6. Rd. – 9. Rd.”: the word stands with each number.
    let beyond = at + 1 + usize::from(kind(line, at + 1) == Some(Tok::Stop));
    if round_word(line.get(at)).is_some()
        && matches!(kind(line, beyond), Some(Tok::Dash | Tok::Say(Say::To)))
        && ordinal(line, beyond + 1)
            .is_some_and(|(n, _, then)| n > first && round_word(line.get(then)).is_some())
    {
        at = beyond;
    }
    // “3v-9v.”: the word stands with each number.
    if short(at) && kind(line, at + 1) == Some(Tok::Dash) && ordinal(line, at + 2).is_some() {
        at += 1;
    }
    let sep = |t| {
        matches!(
            t,
            Some(
                Tok::Dash | Tok::Comma | Tok::Slash | Tok::Say(Say::To | Say::Then | Say::The)
            )
        )
    };
    while sep(kind(line, at))
        && let Some((next, point, then)) = ordinal(line, at + 1)
    {
        let lists = matches!(kind(line, at), Some(Tok::Comma | Tok::Say(Say::Then)));
        if lists && next != last.saturating_add(1) {
            return None;
        }
        (last, pointed, at) = (next, pointed || point, then);
    }
    let (row, plural) = round_word(line.get(at))?;
    // “1v.”, “3R)”
    let short = short(at)
        && matches!(kind(line, at + 1), Some(Tok::Stop | Tok::Colon | Tok::Close | Tok::Dash));
    at += 1;
    pointed |= short;
    let colon = matches!(kind(line, at), Some(Tok::Colon | Tok::Bar));
    // “5 rounds” says how many, and “5 round” without a point is no usage unless it heads.
    let heads = colon && (!plural || last > first);
    if !pointed && !heads {
        return None;
    }
    if matches!((kind(line, at), kind(line, at + 1)), (Some(Tok::Number(_)), Some(Tok::Colon)))
    {
        return None;
    }
    Some(ended(line, made(first, last, row, at)))
}

/// An ordinal in digits or words: its value, whether it is one without doubt, and what
/// follows it.
fn ordinal(line: &[Token], at: usize) -> Option<(u32, bool, usize)> {
    let point = usize::from(kind(line, at + 1) == Some(Tok::Stop));
    match kind(line, at)? {
        Tok::Ordinal(n) if n > 0 => Some((n, true, at + 1 + point)),
        Tok::Number(n) if n > 0 => Some((n, point > 0, at + 1 + point)),
        _ => None,
    }
}

/// “In der 2. Runde …”, “For round 3, …”: heads only where it follows on, as a bare number.
pub(super) fn in_sentence(line: &[Token], from: usize) -> Option<Heading> {
    let lead = line[from..]
        .iter()
        .take(3)
        .take_while(|t| {
            matches!(
                t.tok,
                Tok::Say(Say::In | Say::The | Say::For | Say::Then | Say::To | Say::From)
            )
        })
        .count();
    // “On the second round …”
    let on = matches!(
        (kind(line, from), kind(line, from + 1)),
        (Some(Tok::Say(Say::Work)), Some(Tok::Say(Say::The)))
    );
    let lead = if on { 2 } else { lead };
    if lead == 0 {
        return None;
    }
    // “De 6 à 9 :”
    let range = || bare(line, from + lead).filter(|h| h.last > h.first);
    let found =
        worded(line, from + lead).or_else(|| counted(line, from + lead)).or_else(range)?;
    Some(Heading { bare: true, ..found })
}

/// “3)”, “3.”, “3:”, “6-10:”, “2.–5.)”, “4 - sc around”.
fn bare(line: &[Token], from: usize) -> Option<Heading> {
    // “(3) 6 sc”
    let bracketed = matches!(
        (kind(line, from)?, kind(line, from + 1), kind(line, from + 2)),
        (Tok::Open(_), Some(Tok::Number(_)), Some(Tok::Close))
    ) && line.get(from + 3).is_some_and(|t| t.tok != Tok::Newline)
        || matches!(line.get(from..from + 5), Some([open, a, dash, b, close])
            if matches!(open.tok, Tok::Open(_))
                && matches!(a.tok, Tok::Number(_))
                && matches!(dash.tok, Tok::Dash | Tok::Say(Say::To))
                && matches!(b.tok, Tok::Number(_))
                && close.tok == Tok::Close);
    // “(4) to (7)”
    if let (
        true,
        Some(Tok::Number(first)),
        Some(Tok::Dash | Tok::Say(Say::To | Say::The | Say::Work)),
        Some(Tok::Open(_)),
        Some(Tok::Number(last)),
        Some(Tok::Close),
    ) = (
        bracketed,
        kind(line, from + 1),
        kind(line, from + 3),
        kind(line, from + 4),
        kind(line, from + 5),
        kind(line, from + 6),
    ) && last > first
    {
        return Some(Heading { bare: true, ..made(first, last, false, from + 7) });
    }
    let from = from + usize::from(bracketed);
    let first = match kind(line, from)? {
        Tok::Number(n) | Tok::Ordinal(n) if n > 0 => n,
        _ => return None,
    };
    let mut at = from + 1;
    // “6)-9) 25”, “6.) - 10.)”: each number has its mark.
    let marks = closing(line, at);
    if marks > 0
        && matches!(kind(line, at + marks), Some(Tok::Dash | Tok::Say(Say::To)))
        && let Some(Tok::Number(last)) = kind(line, at + marks + 1)
        && let more @ 1.. = closing(line, at + marks + 2)
    {
        return Some(Heading { bare: true, ..made(first, last, false, at + marks + 2 + more) });
    }
    // The point of a German ordinal, where more of the heading follows.
    let pointed = matches!(
        (kind(line, at), kind(line, at + 1), kind(line, at + 2), kind(line, at + 3)),
        (Some(Tok::Stop), Some(Tok::Close), ..)
            | (
                Some(Tok::Stop),
                Some(Tok::Dash | Tok::Say(Say::To)),
                Some(Tok::Number(_)),
                Some(Tok::Stop | Tok::Colon | Tok::Close)
            )
    );
    if pointed {
        at += 1;
    }
    // “4 → sc around”: weak, for an equals sign reads alike.
    let ends =
        |t| matches!(t, Some(Tok::Colon | Tok::Close | Tok::Stop | Tok::Bar | Tok::Equals));
    // “7-8/ ms”
    let slashed = |at: usize| {
        kind(line, at) == Some(Tok::Slash) && line.get(at + 1).is_some_and(|t| !t.glued)
    };
    let mut last = first;
    if let (Some(Tok::Dash | Tok::Say(Say::To)), Some(Tok::Number(n) | Tok::Ordinal(n))) =
        (kind(line, at), kind(line, at + 1))
        && (ends(kind(line, at + 2))
            || slashed(at + 2)
            || kind(line, at + 2) == Some(Tok::Dash)
                && (!line[at + 2].glued || line.get(at + 3).is_some_and(|t| !t.glued)))
    {
        (last, at) = (n, at + 2);
    }
    // “4 - sc around”: a dash with room around it, and work behind.
    let dashed = kind(line, at) == Some(Tok::Dash)
        && line.get(at + 1).is_some_and(|t| !t.glued && t.tok != Tok::Newline);
    if !ends(kind(line, at)) && !dashed && !slashed(at) {
        return None;
    }
    let weak = kind(line, at) == Some(Tok::Equals);
    at += 1;
    if pointed && kind(line, at) == Some(Tok::Close) {
        at += 1;
    }
    Some(Heading { bare: true, weak, ..made(first, last, false, at) })
}

/// How many rounds “next 3 rounds” and “4 tours suivants” are.
fn next_few(line: &[Token], from: usize) -> Option<u32> {
    match (kind(line, from)?, kind(line, from + 1)?, kind(line, from + 2)?) {
        (Tok::Say(Say::Next), Tok::Number(n), Tok::Round)
        | (Tok::Number(n), Tok::Round, Tok::Say(Say::Next))
            if (2..=500).contains(&n) =>
        {
            Some(n)
        }
        _ => None,
    }
}

/// “Foundation round:”, “next round –”: a round without a number.
fn unnumbered(line: &[Token], from: usize) -> Option<Heading> {
    if let Some(many) = next_few(line, from) {
        let ends = matches!(kind(line, from + 3), Some(Tok::Colon | Tok::Dash | Tok::Bar));
        let made = made(1, many, false, from + 4);
        return ends.then_some(Heading { numbered: false, ..made });
    }
    // “- Runde jede 2. Masche (21)”: the word alone, in a list.
    let listed = from > 0
        && kind(line, from) == Some(Tok::Round)
        && matches!(
            kind(line, from + 1),
            Some(Tok::InEach | Tok::Colon | Tok::Say(Say::Each | Say::The | Say::In))
        );
    if listed {
        let made = made(1, 1, false, from + 1);
        return Some(Heading { numbered: false, bare: true, ..made });
    }
    if kind(line, from) != Some(Tok::Say(Say::Unnumbered)) {
        return None;
    }
    // “Next round.—”
    let point = usize::from(
        kind(line, from + 1) == Some(Tok::Stop) && kind(line, from + 2) == Some(Tok::Dash),
    );
    let ends = matches!(kind(line, from + 1 + point), Some(Tok::Colon | Tok::Dash | Tok::Bar));
    ends.then_some(Heading { numbered: false, ..made(1, 1, false, from + 1 + point) })
}
