//! A pattern as a text, in one size or in several at once.
//!
//! Several sizes share a line where they say the same but for its numbers: “24 (30, 36)”.
//! Taking one size's numbers out of such a line gives the line of that size alone. Lines
//! that are worded differently stand apart, each after the name of its size.

use super::Writer;
use super::abbreviations::used_in_pens;
use super::page::page;
use super::pen::{TextPen, Value};
use super::style::HouseStyle;
use crate::words::lexicon::Lexicon;
use crate::words::tree::Pattern;

/// The text of `pattern`: its terms and abbreviations, its lines, its stitches in all.
///
/// ```
/// use plumpline_core::words::lexicon::by_code;
/// use plumpline_core::words::read::{TermsWish, read};
/// use plumpline_core::words::write::{HouseStyle, write};
///
/// // One maker's pattern in another's terms: “sc” is “dc” in the United Kingdom.
/// let reading = read("Rnd 1: 6 sc in magic ring (6)", TermsWish::Lexicon("en-us"));
/// let terms = by_code("en-uk").expect("the terms are there");
/// let text = write(&reading.pattern, HouseStyle::bench(), terms);
/// assert!(text.contains("6 dc in magic ring [6]"));
/// ```
pub fn write(pattern: &Pattern, style: &HouseStyle, lexicon: &Lexicon) -> String {
    write_sizes(std::slice::from_ref(pattern), style, lexicon)
}

/// The text of several sizes of one pattern, smallest first as they are given. Of no pattern,
/// no text.
pub fn write_sizes(sizes: &[Pattern], style: &HouseStyle, lexicon: &Lexicon) -> String {
    let writer = Writer::new(style, lexicon);
    let pages: Vec<_> = sizes.iter().map(|pattern| page(&writer, pattern)).collect();
    let Some(first) = pages.first() else { return String::new() };
    let mut lines =
        merge(&writer, &pages.iter().map(|p| p.lines.as_slice()).collect::<Vec<_>>());
    let totals: Option<Vec<u64>> = pages.iter().map(|p| p.total).collect();
    if let Some(totals) = totals.filter(|_| first.total != Some(0)) {
        let said: Vec<TextPen> = totals.into_iter().map(|n| total(&writer, n)).collect();
        lines.push(TextPen::default());
        lines.extend(agree(&said.iter().collect::<Vec<_>>()));
    }
    let mut text = head(&writer, &lines);
    for line in &lines {
        text.push_str(&line.text);
        text.push('\n');
    }
    text
}

/// What stands above the lines: the terms, and the abbreviations that the lines use.
fn head(writer: &Writer<'_>, lines: &[TextPen]) -> String {
    let mut head = format!("{}\n", writer.lexicon.name);
    if !writer.lexicon.checked {
        head.push_str(&writer.phrases.unchecked);
        head.push('\n');
    }
    let used = used_in_pens(writer, lines);
    if !used.is_empty() {
        head.push_str(&format!("\n{}\n", writer.phrases.abbreviations));
    }
    for (short, meaning) in used {
        head.push_str(&format!("{short} = {meaning}\n"));
    }
    head.push('\n');
    head
}

fn total(writer: &Writer<'_>, total: u64) -> TextPen {
    let mut pen = TextPen::default();
    let phrase = writer.phrases.total.of(if total == 1 { 1 } else { 2 });
    let (before, after) = phrase.split_once("{n}").unwrap_or((phrase, ""));
    pen.words(before);
    pen.number(total);
    pen.words(after);
    pen.words(".");
    pen
}

/// One line for all of `sizes`, where they differ in numbers alone.
fn agree(sizes: &[&TextPen]) -> Option<TextPen> {
    let (first, others) = sizes.split_first()?;
    let skeleton = first.skeleton();
    if others.iter().any(|pen| pen.skeleton() != skeleton) {
        return None;
    }
    let mut merged = TextPen::default();
    let mut at = 0;
    for (i, number) in first.numbers.iter().enumerate() {
        merged.words(&first.text[at..number.start]);
        let said = |pen: &TextPen| pen.text[pen.numbers[i].clone()].to_owned();
        let own = said(first);
        merged.words(&own);
        let rest: Vec<String> = others.iter().map(|pen| said(pen)).collect();
        if rest.iter().any(|other| *other != own) {
            merged.words(&format!(" ({})", rest.join(", ")));
        }
        at = number.end;
    }
    merged.words(&first.text[at..]);
    // Given words are the same in all; their places are those of the first, moved along.
    let mut from = 0;
    for given in &first.theirs {
        let words = &first.text[given.clone()];
        if let Some(found) = merged.text[from..].find(words) {
            merged.theirs.push(from + found..from + found + words.len());
            from += found + words.len();
        }
    }
    Some(merged)
}

/// The lines of all sizes: those that agree once, the others apart.
fn merge(writer: &Writer<'_>, sizes: &[&[TextPen]]) -> Vec<TextPen> {
    let Some((first, others)) = sizes.split_first() else { return Vec::new() };
    if others.is_empty() {
        return first.to_vec();
    }
    let mut lines = Vec::new();
    let mut next = vec![0; sizes.len()];
    for anchor in anchors(sizes) {
        apart(writer, sizes, &mut next, &anchor, &mut lines);
        let pens: Vec<&TextPen> =
            sizes.iter().zip(&anchor).map(|(size, &i)| &size[i]).collect();
        lines.extend(agree(&pens));
        next = anchor.iter().map(|i| i + 1).collect();
    }
    let ends: Vec<usize> = sizes.iter().map(|size| size.len()).collect();
    apart(writer, sizes, &mut next, &ends, &mut lines);
    lines
}

/// Adds the lines of every size from `next` up to `ends`, each under the size's name.
fn apart(
    writer: &Writer<'_>,
    sizes: &[&[TextPen]],
    next: &mut [usize],
    ends: &[usize],
    lines: &mut Vec<TextPen>,
) {
    for (number, (size, (from, &to))) in (1..).zip(sizes.iter().zip(next.iter().zip(ends))) {
        for line in &size[*from..to] {
            let mut pen = TextPen::default();
            pen.fill(writer, &writer.phrases.size, &[("n", Value::Number(number))]);
            pen.words(": ");
            pen.append(line);
            lines.push(pen);
        }
    }
}

/// Lines that agree in every size: for each, its place in every size, in order.
fn anchors(sizes: &[&[TextPen]]) -> Vec<Vec<usize>> {
    let skeletons: Vec<Vec<String>> =
        sizes.iter().map(|size| size.iter().map(TextPen::skeleton).collect()).collect();
    let mut anchors: Vec<Vec<usize>> = (0..sizes[0].len()).map(|i| vec![i]).collect();
    for k in 1..sizes.len() {
        let score = |i: usize, j: usize| {
            let own = anchors[i][0];
            match skeletons[0][own] == skeletons[k][j] {
                false => 0,
                true => 2 + u32::from(same_but_heading(&sizes[0][own], &sizes[k][j])),
            }
        };
        let pairs = best_common(anchors.len(), sizes[k].len(), score);
        anchors = pairs
            .into_iter()
            .map(|(i, j)| {
                let mut places = std::mem::take(&mut anchors[i]);
                places.push(j);
                places
            })
            .collect();
    }
    anchors
}

/// Whether two lines of one wording differ in nothing after their round number.
fn same_but_heading(one: &TextPen, other: &TextPen) -> bool {
    let after = |pen: &TextPen| match pen.numbers.first() {
        Some(number) => pen.text[number.end..].to_owned(),
        None => pen.text.clone(),
    };
    after(one) == after(other)
}

/// The pairs of the common subsequence with the greatest sum of scores; 0 is no pair.
fn best_common(n: usize, m: usize, score: impl Fn(usize, usize) -> u32) -> Vec<(usize, usize)> {
    // best[i][j]: the greatest sum from i and j on.
    let mut best = vec![vec![0_u32; m + 1]; n + 1];
    for i in (0..n).rev() {
        for j in (0..m).rev() {
            let skip = best[i + 1][j].max(best[i][j + 1]);
            let pair = match score(i, j) {
                0 => 0,
                s => s + best[i + 1][j + 1],
            };
            best[i][j] = skip.max(pair);
        }
    }
    let (mut i, mut j) = (0, 0);
    let mut pairs = Vec::new();
    while i < n && j < m {
        let s = score(i, j);
        if s > 0 && best[i][j] == s + best[i + 1][j + 1] {
            pairs.push((i, j));
            (i, j) = (i + 1, j + 1);
        } else if best[i + 1][j] >= best[i][j + 1] {
            i += 1;
        } else {
            j += 1;
        }
    }
    pairs
}
