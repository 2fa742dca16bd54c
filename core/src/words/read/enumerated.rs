//! Rounds numbered “1) … 2) … 3) …” that run on in one line are told one from the other.

use super::token::{Say, Tok, Token};

/// Numbers that have to count on from one.
const FEWEST: usize = 3;

/// `tokens` with the end of a line before each number of such a list that stands in one.
pub(super) fn parted(tokens: Vec<Token>) -> Vec<Token> {
    let mut marks: Vec<(usize, u32)> = Vec::new();
    let mut depth = 0_usize;
    for (i, token) in tokens.iter().enumerate() {
        match token.tok {
            Tok::Newline => depth = 0,
            Tok::Open(_) => depth += 1,
            Tok::Close if depth > 0 => depth -= 1,
            Tok::Close if token.glued && i > 0 => {
                if let Tok::Number(n) = tokens[i - 1].tok {
                    marks.push((i - 1, n));
                }
            }
            _ => {}
        }
    }
    // “6) a 10)” is one number of the list.
    let reaches = |at: usize| {
        at.checked_sub(1).is_some_and(|b| {
            matches!(tokens[b].tok, Tok::Dash | Tok::Say(Say::To | Say::The | Say::Then))
                && b.checked_sub(1).is_some_and(|c| tokens[c].tok == Tok::Close)
        })
    };
    let mut run: Vec<usize> = Vec::new();
    let mut inner: Vec<usize> = Vec::new();
    let mut last = 0;
    for &(at, n) in &marks {
        if n > last && last > 0 && reaches(at) {
            last = n;
        } else if n == last + 1 {
            last = n;
            run.push(at);
        } else {
            if run.len() >= FEWEST {
                inner.append(&mut run);
            }
            run.clear();
            last = if n == 1 { 1 } else { 0 };
            run.extend((n == 1).then_some(at));
        }
    }
    if run.len() >= FEWEST {
        inner.append(&mut run);
    }
    // “Rnd 1)” is numbered where it stands.
    let within = |&at: &usize| {
        at > 0 && !matches!(tokens[at - 1].tok, Tok::Newline | Tok::Round | Tok::Say(Say::Row))
    };
    inner.retain(within);
    if inner.is_empty() {
        return tokens;
    }
    let mut found = Vec::with_capacity(tokens.len() + inner.len());
    for (i, token) in tokens.into_iter().enumerate() {
        if inner.binary_search(&i).is_ok() {
            let end = token.start;
            found.push(Token { tok: Tok::Newline, end, glued: false, spelt: false, ..token });
        }
        found.push(token);
    }
    found
}
