//! What a text carries beside its words: marks of emphasis, the times of a video, who wrote a
//! message and when, words broken at the end of a line.

use std::borrow::Cow;
use std::collections::BTreeMap;

use super::lexemes::{Lexeme, LexemeKind, TWO_STARS};
use super::words::Vocabulary;

/// Lexemes between two marks of emphasis, at most.
const EMPHASISED: usize = 8;
/// Lexemes of a stamp and a name before a message, at most.
const STAMP: usize = 14;
/// Lines that have to begin with a time before times are taken off.
const FEWEST: usize = 3;

/// `lexemes` without what only says how or when they were written.
pub(super) fn without_markup<'t>(lexemes: Vec<Lexeme<'t>>) -> Vec<Lexeme<'t>> {
    let mut dropped = vec![false; lexemes.len()];
    for (from, to) in line_ranges(&lexemes) {
        emphasis(&lexemes[from..to], &mut dropped[from..to]);
    }
    stamps(&lexemes, &mut dropped);
    if !dropped.contains(&true) {
        return lexemes;
    }
    let kept = lexemes.into_iter().zip(dropped).filter(|(_, dropped)| !dropped);
    kept.map(|(lexeme, _)| lexeme).collect()
}

fn line_ranges(lexemes: &[Lexeme<'_>]) -> Vec<(usize, usize)> {
    let mut found = Vec::new();
    let mut start = 0;
    for (i, lexeme) in lexemes.iter().enumerate() {
        if lexeme.shape == LexemeKind::Newline {
            found.push((start, i));
            start = i + 1;
        }
    }
    found.push((start, lexemes.len()));
    found
}

fn sign(lexeme: Option<&Lexeme<'_>>) -> Option<char> {
    match lexeme?.shape {
        LexemeKind::Sign(sign) => Some(sign),
        _ => None,
    }
}

fn glued(lexemes: &[Lexeme<'_>], i: usize) -> bool {
    i > 0 && lexemes.get(i).is_some_and(|l| lexemes[i - 1].at.end == l.at.start)
}

/// Marks the signs of `**R2**`, `__12__` and of a whole line in `*…*`: tight around what they
/// hold. Where work is listed between them, or how often stands behind, they mark a repeat.
fn emphasis(line: &[Lexeme<'_>], dropped: &mut [bool]) {
    let bullets = line
        .iter()
        .take_while(|l| matches!(l.shape, LexemeKind::Sign('•' | '-' | '>' | '#')))
        .count();
    let mut at = 0;
    while at < line.len() {
        let Some(mark @ (TWO_STARS | '*' | '_')) = sign(line.get(at)) else {
            at += 1;
            continue;
        };
        let opens = !glued(line, at) || matches!(sign(line.get(at - 1)), Some('(' | '[' | '_'));
        let many = if mark == '*' { line.len() } else { EMPHASISED };
        let close = (at + 2..line.len().min(at + 2 + many))
            .find(|&i| sign(line.get(i)) == Some(mark) && glued(line, i));
        let Some(close) = close.filter(|_| opens && glued(line, at + 1)) else {
            at += 1;
            continue;
        };
        let inside = &line[at + 1..close];
        let listed =
            inside.iter().any(|l| matches!(l.shape, LexemeKind::Sign(',' | ';' | '+' | '*')));
        let whole = at == bullets && close + 1 == line.len();
        let repeated = line.get(close + 1).is_some_and(|l| match l.shape {
            LexemeKind::Number => true,
            LexemeKind::Sign(sign) => sign == '×',
            _ => l.text == "x",
        });
        let numbered = inside.iter().any(|l| l.shape == LexemeKind::Number);
        // “**Round 2:** 2 sc in each st”
        let heads = at == bullets && matches!(sign(inside.last()), Some(':' | '.' | ')'));
        let drops = match mark {
            '*' => whole,
            TWO_STARS => !listed && (!repeated || heads) && (numbered || whole),
            _ => true,
        };
        if drops {
            (dropped[at], dropped[close]) = (true, true);
        }
        at = close + 1;
    }
}

/// “01:35” at `at`, or “1:02:35”: how many lexemes it has.
fn clock(line: &[Lexeme<'_>], at: usize) -> Option<usize> {
    let number = |i: usize| {
        line.get(i).filter(|l| l.shape == LexemeKind::Number).map(|l| l.text.as_ref())
    };
    let tight = |i: usize| glued(line, i) && glued(line, i + 1);
    let two = |i: usize| number(i).is_some_and(|n| n.len() == 2 && n < "60");
    let one = number(at).is_some_and(|n| n.len() <= 2)
        && sign(line.get(at + 1)) == Some(':')
        && two(at + 2)
        && tight(at + 1);
    let more = one && sign(line.get(at + 3)) == Some(':') && two(at + 4) && tight(at + 3);
    one.then_some(if more { 5 } else { 3 })
}

/// How many lexemes at the start of `line` only say when it was said: “01:35 –”,
/// “[14/03, 21:07]”, “14.03.24, 21:07 -”.
fn stamp(line: &[Lexeme<'_>]) -> Option<usize> {
    let plain = |l: &Lexeme<'_>| {
        l.shape == LexemeKind::Number
            || matches!(l.shape, LexemeKind::Sign('/' | ',' | '.' | '-' | '['))
            || matches!(l.text.as_ref(), "am" | "pm" | "a" | "p" | "m" | "at" | "um")
    };
    let lead = line.iter().take(STAMP).take_while(|l| plain(l)).count();
    let at = (0..=lead).find(|&at| clock(line, at).is_some())?;
    let mut end = at + clock(line, at)?;
    // “01:35 – 02:20”
    if matches!(sign(line.get(end)), Some('-')) && clock(line, end + 1).is_some() {
        end += 1 + clock(line, end + 1)?;
    }
    if matches!(line.get(end).map(|l| l.text.as_ref()), Some("am" | "pm")) {
        end += 1;
    }
    while matches!(sign(line.get(end)), Some(']' | ')' | '-' | ':' | '|')) {
        end += 1;
    }
    Some(end)
}

/// Marks the times that lines begin with, and the names behind them.
fn stamps(lexemes: &[Lexeme<'_>], dropped: &mut [bool]) {
    let lines = line_ranges(lexemes);
    let stamped: Vec<(usize, usize, usize)> = lines
        .into_iter()
        .filter_map(|(from, to)| {
            let bullets = lexemes[from..to]
                .iter()
                .take_while(|l| matches!(l.shape, LexemeKind::Sign('•')))
                .count();
            let from = from + bullets;
            stamp(&lexemes[from..to]).map(|many| (from, from + many, to))
        })
        .collect();
    if stamped.len() < FEWEST {
        return;
    }
    // “Aunt Nena: …”: words alone before a colon.
    let named = |from: usize, to: usize| {
        let words = lexemes[from..to]
            .iter()
            .take(5)
            .take_while(|l| l.shape == LexemeKind::Word)
            .count();
        let name: Vec<&str> =
            lexemes[from..from + words].iter().map(|l| l.text.as_ref()).collect();
        (words > 0 && sign(lexemes.get(from + words)) == Some(':'))
            .then(|| (name.join(" "), from + words + 1))
    };
    let mut names: BTreeMap<String, usize> = BTreeMap::new();
    for &(_, end, to) in &stamped {
        if let Some((name, _)) = named(end, to) {
            *names.entry(name).or_default() += 1;
        }
    }
    for &(from, end, to) in &stamped {
        let end = match named(end, to) {
            Some((name, after)) if names.get(&name).is_some_and(|n| *n > 1) => after,
            _ => end,
        };
        dropped[from..end].fill(true);
    }
}

/// Makes one word of “to-” and “gether” in the next line, where `words` has it as one.
pub(super) fn rejoined<'t>(lexemes: Vec<Lexeme<'t>>, words: &Vocabulary) -> Vec<Lexeme<'t>> {
    let broken = |i: usize| {
        let [head, hyphen, end, tail] = lexemes.get(i..i + 4)? else { return None };
        let parts = head.shape == LexemeKind::Word
            && hyphen.shape == LexemeKind::Sign('-')
            && end.shape == LexemeKind::Newline
            && tail.shape == LexemeKind::Word
            && glued(&lexemes, i + 1);
        let text = format!("{}{}", head.text, tail.text);
        let at = head.at.start..tail.at.end;
        let whole = Lexeme { shape: LexemeKind::Word, text: Cow::Owned(text), at };
        (parts && words.has(&whole.text)).then_some(whole)
    };
    let mut found = Vec::new();
    let mut i = 0;
    let mut any = false;
    while i < lexemes.len() {
        if let Some(whole) = broken(i) {
            found.push(whole);
            any = true;
            i += 4;
        } else {
            found.push(lexemes[i].clone());
            i += 1;
        }
    }
    if any { found } else { lexemes }
}
