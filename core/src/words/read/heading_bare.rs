//! Numbers that head a round only where they count on: “#3”, “Step 2:”, “3 Rd …”, the first
//! column of a table.

use super::heading_range::{Heading, kind, made, round_word};
use super::token::{Say, Tok, Token};

/// “#3”, “#3:”: heads only where it follows on, as a bare number.
pub(super) fn signed(line: &[Token], from: usize) -> Option<Heading> {
    let Tok::Say(Say::Numbered) = kind(line, from)? else { return None };
    let Tok::Number(n @ 1..) = kind(line, from + 1)? else { return None };
    let range = match (kind(line, from + 2), kind(line, from + 3), kind(line, from + 4)) {
        (Some(Tok::Dash), Some(Tok::Number(last)), _) if last > n => Some((last, 4)),
        (Some(Tok::Dash), Some(Tok::Say(Say::Numbered)), Some(Tok::Number(last)))
            if last > n =>
        {
            Some((last, 5))
        }
        _ => None,
    };
    let (last, tokens) = range.unwrap_or((n, 2));
    Some(Heading { bare: true, weak: true, ..made(n, last, false, from + tokens) })
}

/// “Step 2: inc in each st”, “Steps 6 through 10: …”: heads only where the steps count on from
/// 1 and each is work.
pub(super) fn stepped(line: &[Token], from: usize) -> Option<Heading> {
    let (Tok::Unknown, Tok::Number(n @ 1..)) = (kind(line, from)?, kind(line, from + 1)?)
    else {
        return None;
    };
    // “Steps 6 through 10:”, “H6-H9:”
    let ranged =
        matches!(kind(line, from + 2), Some(Tok::Dash | Tok::Say(Say::To | Say::Work)));
    let again = usize::from(kind(line, from + 3) == Some(Tok::Unknown));
    let (last, at) = match kind(line, from + 3 + again) {
        Some(Tok::Number(last)) if ranged && last > n => (last, from + 4 + again),
        _ => (n, from + 2),
    };
    // “LL3 — …”: letters of a part, and a dash with room around it.
    let dashed = kind(line, at) == Some(Tok::Dash)
        && line.get(at + 1).is_some_and(|t| !t.glued)
        && line[from + 1].glued;
    let ends = dashed || kind(line, at) == Some(Tok::Colon);
    ends.then_some(Heading { bare: true, weak: true, ..made(n, last, false, at + 1) })
}

/// Most tokens of a row of a table.
const ROW: usize = 40;

/// “3 (1 sc, inc) x 6 18”, “6–9 sc in each st 30”: the number of a round in a table.
pub(super) fn tabled(line: &[Token], from: usize) -> Option<Heading> {
    let Tok::Number(first @ 1..) = kind(line, from)? else { return None };
    let range = match (kind(line, from + 1), kind(line, from + 2)) {
        (Some(Tok::Dash), Some(Tok::Number(last))) if last > first => Some(last),
        _ => None,
    };
    let at = if range.is_some() { from + 3 } else { from + 1 };
    let apart = line.get(at).is_some_and(|t| !t.glued);
    // “16  sc  36”, “21  dec rep around  6”: work, and a number at the end of the line.
    let row = line[at..].iter().take(ROW).take_while(|t| t.tok != Tok::Newline);
    let counted = row.last().is_some_and(|t| matches!(t.tok, Tok::Number(3..)));
    let works = match (kind(line, at)?, kind(line, at + 1)) {
        (Tok::Kind(_) | Tok::Increase(_) | Tok::Decrease(..), Some(_)) if counted => true,
        (
            Tok::Open(_) | Tok::Star | Tok::InEach | Tok::Ring | Tok::Loop(_) | Tok::Number(_),
            _,
        ) => true,
        (Tok::Kind(_), Some(after)) => {
            matches!(after, Tok::Number(_) | Tok::InEach | Tok::Times | Tok::Say(Say::Around))
        }
        (Tok::Increase(_) | Tok::Decrease(..), Some(after)) => {
            matches!(after, Tok::InEach | Tok::Times | Tok::Say(Say::Around))
        }
        _ => false,
    };
    let made = made(first, range.unwrap_or(first), false, at);
    (apart && works).then_some(Heading { bare: true, weak: true, tabled: true, ..made })
}

/// “3 Rd 2 fM, zun”: heads only where it follows on, as a bare number.
pub(super) fn unpointed(line: &[Token], from: usize) -> Option<Heading> {
    let Tok::Number(first @ 1..) = kind(line, from)? else { return None };
    let range = match (kind(line, from + 1), kind(line, from + 2)) {
        (Some(Tok::Dash | Tok::Say(Say::To)), Some(Tok::Number(last))) => Some(last),
        _ => None,
    };
    let at = if range.is_some() { from + 3 } else { from + 1 };
    let (row, plural) = round_word(line.get(at))?;
    let after = kind(line, at + 1).is_some_and(|t| t != Tok::Newline);
    let made = made(first, range.unwrap_or(first), row, at + 1);
    (after && !plural).then_some(Heading { bare: true, weak: true, ..made })
}
