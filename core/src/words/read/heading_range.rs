//! A heading, and the rounds that one names: “5–9”, “5 to 9”, “7, 8, 9”.

use super::token::{Say, Tok, Token};

/// The number of a round, or of several worked alike.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Heading {
    pub(super) first: u32,
    pub(super) last: u32,
    /// Whether it says “row”.
    pub(super) row: bool,
    /// Whether it is a number alone, which heads a round only where work follows.
    pub(super) bare: bool,
    /// Whether a number is printed: “next round:” has none, and is given the next.
    pub(super) numbered: bool,
    /// Whether it leaves open how far it goes: “14. Rd bis Ende”.
    pub(super) open: bool,
    /// Whether it could as well say how many rounds: “3 Rd 2 fM”. It heads only where the
    /// numbers count on from 1.
    pub(super) weak: bool,
    /// Whether it is a number and nothing more, as in the first column of a table: it heads
    /// only in a run of several from 1.
    pub(super) tabled: bool,
    /// How many tokens it takes up, bullets included.
    pub(super) tokens: usize,
}

/// A heading of these rounds with all else as usual.
pub(super) fn made(first: u32, last: u32, row: bool, tokens: usize) -> Heading {
    Heading {
        first,
        last,
        row,
        bare: false,
        numbered: true,
        open: false,
        weak: false,
        tabled: false,
        tokens,
    }
}

/// What stands at `at`.
pub(super) fn kind(line: &[Token], at: usize) -> Option<Tok> {
    line.get(at).map(|t| t.tok)
}

/// Whether it is the word for a round; whether it says “row”, and whether several.
pub(super) fn round_word(token: Option<&Token>) -> Option<(bool, bool)> {
    match token?.tok {
        Tok::Round => Some((false, token?.plural)),
        Tok::Say(Say::Row) => Some((true, token?.plural)),
        _ => None,
    }
}

/// Whether it names what a number before it counts.
pub(super) fn is_stitch(tok: Tok) -> bool {
    tok.is_work() && !matches!(tok, Tok::Even(_))
}

/// The last number of “5–9”, “5 to 9” or “7, 8, 9”, `first` where there is one number only,
/// and where the heading ends; none where the numbers are no range.
pub(super) fn further(
    line: &[Token],
    first: u32,
    mut at: usize,
    plural: bool,
) -> Option<(u32, usize)> {
    let mut last = first;
    // “6...9”, “6..9”
    let dots = line[at.min(line.len())..]
        .iter()
        .take(3)
        .take_while(|t| t.tok == Tok::Stop && t.glued)
        .count();
    if dots > 1
        && let Some(Tok::Number(next)) = kind(line, at + dots)
        && next > first
        && line[at + dots].glued
    {
        return Some((next, at + dots + 1));
    }
    loop {
        // “5, 6, and 7”
        let listed = kind(line, at) == Some(Tok::Comma)
            && kind(line, at + 1) == Some(Tok::Say(Say::Then))
            && matches!(kind(line, at + 2), Some(Tok::Number(_)));
        at += usize::from(listed);
        // “R5–R9” says the word again.
        let word = round_word(line.get(at + 1)).is_some();
        let again = usize::from(word || kind(line, at + 1) == Some(Tok::Say(Say::The)));
        let again = again + usize::from(word && kind(line, at + 2) == Some(Tok::Stop));
        // “nº6 à nº9”, “#4 thru #8”
        let sign = kind(line, at + 1 + again) == Some(Tok::Say(Say::Numbered));
        let again = again + usize::from(sign);
        let word = word || sign;
        let Some(Tok::Number(next) | Tok::Ordinal(next)) = kind(line, at + 1 + again) else {
            return Some((last, at));
        };
        let after = kind(line, at + 2 + again);
        let heads = matches!(
            after,
            None | Some(
                Tok::Colon
                    | Tok::Close
                    | Tok::Stop
                    | Tok::Open(_)
                    | Tok::Equals
                    | Tok::Dash
                    | Tok::Bar
                    | Tok::Newline
            )
        );
        let glued = line[at..].iter().take(2).all(|t| t.glued);
        // “17 — 18 — 18”: the work and the count of one round.
        let counts = after == Some(Tok::Dash)
            && !glued
            && matches!(kind(line, at + 3 + again), Some(Tok::Number(_)))
            && matches!(kind(line, at + 4 + again), None | Some(Tok::Newline));
        if counts && kind(line, at) == Some(Tok::Dash) && !word {
            return Some((last, at));
        }
        match kind(line, at) {
            // “5-6-7”
            Some(Tok::Dash)
                if next == last.saturating_add(1)
                    && after == Some(Tok::Dash)
                    && kind(line, at + 3 + again)
                        == Some(Tok::Number(next.saturating_add(1))) =>
            {
                last = next;
                at += 2 + again;
            }
            Some(Tok::Dash)
                if last > first && next == last.saturating_add(1) && (heads || glued) =>
            {
                return Some((next, at + 2 + again));
            }
            Some(Tok::Dash)
                if last == first && (heads || glued && next > first || plural || word) =>
            {
                return Some((next, at + 2 + again));
            }
            // “6 -> 9:”, “r6→r9 even”
            Some(Tok::Equals)
                if last == first
                    && (after == Some(Tok::Colon) && next > first.max(2)
                        || word && next > first) =>
            {
                return Some((next, at + 2 + again));
            }
            // “9/10/11”
            Some(Tok::Slash) if after == Some(Tok::Slash) && next == last.saturating_add(1) => {
                last = next;
                at += 2 + again;
            }
            Some(Tok::Slash) if (heads || glued) && next > last => {
                return Some((next, at + 2 + again));
            }
            Some(Tok::Say(Say::To)) if last == first => {
                return Some((next, at + 2 + again));
            }
            // “R3 through R12:”; “round 2 through 6 sc” is work.
            Some(Tok::Say(Say::Work))
                if last == first && next > first && (heads || plural || word) =>
            {
                return Some((next, at + 2 + again));
            }
            // “5 a 6:”, from another language.
            Some(Tok::Say(Say::The)) if last == first && heads && next > first => {
                return Some((next, at + 2 + again));
            }
            // “6+7 even”
            Some(Tok::Comma)
                if glued
                    && next == last.saturating_add(1)
                    && !after.is_some_and(|t| is_stitch(t) || t == Tok::Times) =>
            {
                last = next;
                at += 2 + again;
            }
            Some(Tok::Comma | Tok::Say(Say::Then))
                if heads || matches!(after, Some(Tok::Comma | Tok::Say(Say::Then))) =>
            {
                // Rounds that are not neighbours are no range.
                if next != last.saturating_add(1) {
                    return None;
                }
                last = next;
                at += 2 + again;
            }
            _ => return Some((last, at)),
        }
    }
}
