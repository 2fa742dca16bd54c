//! The lines of a text: a heading with what belongs to it, even where that runs on over the
//! ends of lines, or words without a heading.

use super::heading::{bullets_of, heading};
use super::heading_range::{Heading, is_stitch};
use super::paragraph::piece_of_line;
use super::token::{Say, Tok, Token};

/// One line as it is meant.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct MeantLine<'a> {
    pub(super) heading: Option<Heading>,
    /// Its tokens, the heading's included.
    pub(super) tokens: &'a [Token],
}

impl<'a> MeantLine<'a> {
    /// The tokens without heading or bullets.
    pub(super) fn body(&self) -> &'a [Token] {
        let skipped = self.heading.map_or_else(|| bullets_of(self.tokens), |h| h.tokens);
        &self.tokens[skipped..]
    }
}

/// The lines of a text, blank ones left out.
pub(super) fn lines<'a>(tokens: &'a [Token], text: &str) -> Vec<MeantLine<'a>> {
    let mut found: Vec<MeantLine<'a>> = Vec::new();
    // Where the last line found starts, if it is a round that may run on.
    let mut open: Option<Open> = None;
    // The last number in the first column of a table.
    let mut table = 0_u32;
    // The last number of a round.
    let mut so_far = 0_u32;
    let small_hand = all_small(tokens, text);
    let mut start = 0;
    while start < tokens.len() {
        if tokens[start].tok == Tok::Newline {
            // A blank line ends whatever came before; the end of a line alone does not.
            let blank = start == 0 || tokens[start - 1].tok == Tok::Newline;
            open = open.filter(|round| !blank || round.empty);
            start += 1;
            continue;
        }
        let end = start + piece_of_line(&tokens[start..], text, so_far);
        let heading = heading(&tokens[start..end]).filter(|h| {
            // A table begins with round 1, behind no round, and counts on.
            let behind = found.last().and_then(|l| l.heading);
            !h.tabled
                || (h.first == 1 || Some(h.first) == table.checked_add(1))
                    && behind.is_none_or(|b| b.tabled)
        });
        if let Some(h) = heading.filter(|h| h.numbered) {
            so_far = h.last;
            table = if h.tabled { h.last } else { table };
        }
        let line = &tokens[start..end];
        match (&mut open, heading, found.last_mut()) {
            (Some(round), None, Some(last))
                if round.runs_on(last, line, text) && !tells_rounds(line) =>
            {
                last.tokens = &tokens[round.start..end];
                round.see(line);
            }
            _ => {
                open = heading.map(|h| Open::new(start, &line[h.tokens..], small_hand));
                found.push(MeantLine { heading, tokens: line });
            }
        }
        start = end;
    }
    found
}

/// Whether nearly all lines of a text begin small: then a small letter goes on with nothing.
fn all_small(tokens: &[Token], text: &str) -> bool {
    let lines = tokens.split(|t| t.tok == Tok::Newline).filter(|line| !line.is_empty());
    let (mut small, mut large) = (0_usize, 0_usize);
    for line in lines {
        let first = text.get(line[0].at()).and_then(|word| word.chars().next());
        match first {
            Some(c) if c.is_lowercase() => small += 1,
            Some(c) if c.is_uppercase() => large += 1,
            _ => {}
        }
    }
    small > FEW_LINES && small > SMALL_HAND * large
}

/// Lines that have to begin small, and how many times as many as begin large.
const FEW_LINES: usize = 4;
const SMALL_HAND: usize = 5;

/// Rounds that a table has at least.
const SHORTEST_TABLE: usize = 4;

/// Takes the headings off lines whose number follows on from no other and begins nothing: a
/// list, or “3 rounds even”.
pub(super) fn unhead_strays(lines: &mut Vec<MeantLine<'_>>) {
    settle_ranges(lines);
    unhead_short_tables(lines);
    let numbered: Vec<(usize, Heading)> = lines
        .iter()
        .enumerate()
        .filter_map(|(i, l)| l.heading.filter(|h| h.numbered).map(|h| (i, h)))
        .collect();
    let follows = |a: &Heading, b: &Heading| a.last.checked_add(1) == Some(b.first);
    // A number left out or there twice does not end a run.
    let nearly =
        |a: &Heading, b: &Heading| b.first >= a.last && b.first <= a.last.saturating_add(2);
    // The number with which the run of numbers begins that each belongs to.
    let mut from: Vec<u32> = Vec::with_capacity(numbered.len());
    for (k, (_, own)) in numbered.iter().enumerate() {
        let before = k.checked_sub(1).filter(|&b| nearly(&numbered[b].1, own));
        from.push(before.map_or(own.first, |b| from[b]));
    }
    let mut strays: Vec<usize> = Vec::new();
    for (k, (i, own)) in numbered.iter().enumerate().filter(|(_, (_, h))| h.bare) {
        let before = k.checked_sub(1).is_some_and(|b| nearly(&numbered[b].1, own));
        let after = numbered.get(k + 1).is_some_and(|(_, next)| follows(own, next));
        let begins = own.first == 1
            && lines[*i].body().iter().any(|t| matches!(t.tok, Tok::Ring | Tok::Chain));
        let from_one = from[k] == 1;
        let stray = !(before || after || begins) && numbered.len() > 1;
        if stray || own.weak && !(from_one && (before || after)) {
            strays.push(*i);
        }
    }
    unhead(lines, &strays);
}

/// Tokens between the numbers of a range, and the second number.
const REACH: usize = 4;

/// Makes ranges what the numbers around them say: “RND 1—6 SC IN RING” before round 2 is no
/// range, the dash parts the number from the work.
fn settle_ranges(lines: &mut [MeantLine<'_>]) {
    let mut next: Option<u32> = None;
    for line in lines.iter_mut().rev() {
        let Some(heading) = line.heading.as_mut().filter(|h| h.numbered) else { continue };
        let sign = (1..heading.tokens).rev().find(|&i| {
            matches!(line.tokens[i].tok, Tok::Dash | Tok::Slash | Tok::Say(Say::The))
        });
        if let Some(sign) = sign
            && heading.last > heading.first
            && next == heading.first.checked_add(1)
            && line.tokens[sign + 1].tok == Tok::Number(heading.last)
        {
            // “Round 3/12:” says of how many; “Rd12-13:” is closed, and 13 may be there twice.
            let counts = line.tokens[sign].tok == Tok::Dash;
            let open = heading.tokens == sign + 2
                && line.tokens.get(heading.tokens).is_some_and(|t| {
                    !t.tok.parts() && !matches!(t.tok, Tok::Newline | Tok::Close | Tok::Open(_))
                });
            if !counts || open {
                heading.last = heading.first;
                heading.tokens = if counts { sign + 1 } else { heading.tokens };
            }
        }
        // “R4 thru 8 …” before round 9, whatever stands between the two numbers.
        if let Some(last) = next.and_then(|n| n.checked_sub(1)).filter(|&n| n > heading.first)
            && heading.last == heading.first
            && let Some(at) = line.tokens[heading.tokens..]
                .iter()
                .take(REACH)
                .take_while(|t| {
                    !is_stitch(t.tok) && !matches!(t.tok, Tok::Newline | Tok::Equals)
                })
                .position(|t| t.tok == Tok::Number(last))
            && (1..REACH).contains(&at)
            && !line.tokens.get(heading.tokens + at + 1).is_some_and(|t| is_stitch(t.tok))
        {
            (heading.last, heading.tokens) = (last, heading.tokens + at + 1);
        }
        next = Some(heading.first);
    }
}

/// Takes the headings off lines that only look like rows of a table.
fn unhead_short_tables(lines: &mut Vec<MeantLine<'_>>) {
    let rows: Vec<(usize, Heading)> = lines
        .iter()
        .enumerate()
        .filter_map(|(i, l)| l.heading.filter(|h| h.tabled).map(|h| (i, h)))
        .collect();
    let runs = rows.chunk_by(|(_, a), (_, b)| a.last.checked_add(1) == Some(b.first));
    let short = runs.filter(|run| run.len() < SHORTEST_TABLE).flatten().map(|(i, _)| *i);
    unhead(lines, &short.collect::<Vec<usize>>());
}

/// Takes the headings off these lines.
fn unhead(lines: &mut Vec<MeantLine<'_>>, strays: &[usize]) {
    if strays.is_empty() {
        return;
    }
    // What went on from such a line in the next goes on from nothing.
    let all = std::mem::take(lines);
    for (i, line) in all.into_iter().enumerate() {
        if strays.binary_search(&i).is_err() {
            lines.push(line);
            continue;
        }
        let parts = line.tokens.split(|t| t.tok == Tok::Newline).filter(|p| !p.is_empty());
        lines.extend(parts.map(|tokens| MeantLine { heading: None, tokens }));
    }
}

/// “5 rounds even”: how many rounds come first.
fn tells_rounds(line: &[Token]) -> bool {
    matches!(line, [many, rounds, _, ..]
        if matches!(many.tok, Tok::Number(2..)) && rounds.tok == Tok::Round && rounds.plural
            || matches!(many.tok, Tok::Number(3..)) && rounds.tok == Tok::Round)
}

/// A round that may run on in the next line.
#[derive(Debug)]
struct Open {
    start: usize,
    /// Brackets that are open.
    depth: usize,
    empty: bool,
    /// Whether the text begins its sentences small.
    small_hand: bool,
}

impl Open {
    fn new(start: usize, body: &[Token], small_hand: bool) -> Self {
        let mut made = Self { start, depth: 0, empty: true, small_hand };
        made.see(body);
        made
    }

    fn see(&mut self, tokens: &[Token]) {
        for token in tokens {
            match token.tok {
                Tok::Open(_) => self.depth += 1,
                Tok::Close => self.depth = self.depth.saturating_sub(1),
                _ => {}
            }
            self.empty &= token.tok.parts();
        }
    }

    /// Whether `line`, which has no heading, belongs to the round `so_far`.
    fn runs_on(&self, so_far: &MeantLine<'_>, line: &[Token], text: &str) -> bool {
        let hanging = matches!(
            so_far.tokens.last().map(|t| t.tok),
            Some(
                Tok::Comma
                    | Tok::Say(Say::Then | Say::In | Say::The | Say::Next | Say::From)
                    | Tok::Dash
                    | Tok::Colon
                    | Tok::Times
                    | Tok::Equals
            )
        );
        // “… around -18-”
        let counted = matches!(
            so_far.tokens,
            [
                ..,
                Token { tok: Tok::Dash, .. },
                Token { tok: Tok::Number(_), .. },
                Token { tok: Tok::Dash, .. }
            ]
        );
        let hanging = hanging && !counted;
        let first = line.get(bullets_of(line)).map(|t| t.tok);
        // “or ch 3, join”: another way to do the same.
        if first == Some(Tok::Say(Say::Or)) {
            return false;
        }
        if self.depth == 0 && matches!(first, Some(Tok::Stuff | Tok::FastenOff)) {
            return false;
        }
        let works = |tok: Tok| {
            tok.is_work()
                || matches!(
                    tok,
                    Tok::Number(_)
                        | Tok::Open(_)
                        | Tok::Close
                        | Tok::Star
                        | Tok::TwoStars
                        | Tok::Equals
                        | Tok::InEach
                        | Tok::Loop(_)
                        | Tok::Join
                        | Tok::Times
                        | Tok::Comma
                        | Tok::Say(Say::Repeat | Say::In | Say::Each | Say::Around | Say::Then)
                )
        };
        let goes_on = first.is_some_and(works);
        // A line that begins small goes on with the sentence of the one before.
        let small = line.first().is_some_and(|t| {
            let first = text.get(t.at()).and_then(|word| word.chars().next());
            !self.small_hand && t.tok != Tok::Bullet && first.is_some_and(char::is_lowercase)
        });
        let stopped = matches!(so_far.tokens.last().map(|t| t.tok), Some(Tok::Stop));
        // A heading alone, and its work below.
        let begins = matches!(
            first,
            Some(Tok::Ring | Tok::Even(_) | Tok::Say(Say::Work | Say::Make | Say::With))
        );
        self.empty && (goes_on || begins)
            || self.depth > 0
            || hanging
            || (goes_on || small && !stopped)
                && !has_count(so_far.tokens)
                && !counted_early(so_far)
    }
}

/// Whether a round begins with its count: “R3 (18) 6x (1 sc, inc)”.
fn counted_early(line: &MeantLine<'_>) -> bool {
    let counted = matches!(
        line.body(),
        [
            Token { tok: Tok::Open(_), .. },
            Token { tok: Tok::Number(_), .. },
            Token { tok: Tok::Close, .. },
            _,
            ..
        ]
    );
    counted && line.heading.is_some()
}

/// Whether a line ends with its count.
fn has_count(line: &[Token]) -> bool {
    let ended = line.iter().rev().take_while(|t| t.tok == Tok::Stop).count();
    let line = &line[..line.len() - ended];
    let tail = &line[line.len().saturating_sub(9)..];
    let number = tail.iter().rposition(|t| matches!(t.tok, Tok::Number(_)));
    let (Some(at), Some(last)) = (number, tail.last()) else { return false };
    let before = at.checked_sub(1).map(|i| tail[i].tok);
    let plain = tail[at + 1..].iter().all(|t| {
        matches!(
            t.tok,
            Tok::Stitch
                | Tok::Kind(_)
                | Tok::Say(Say::Total | Say::Around)
                | Tok::Close
                | Tok::Dash
        )
    });
    match before {
        Some(Tok::Open(_)) => plain && last.tok == Tok::Close,
        Some(Tok::Equals | Tok::Dash | Tok::Bar | Tok::Slash) => plain,
        // “Sc in each sc. 15”
        Some(Tok::Stop) if at + 1 == tail.len() => true,
        Some(Tok::Comma | Tok::Stop | Tok::Close | Tok::Say(_)) => {
            plain && tail[at + 1..].iter().any(|t| t.tok == Tok::Stitch)
        }
        _ => false,
    }
}
