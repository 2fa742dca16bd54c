//! Numbers and words in the text, and where they stand.

use crate::words::tree::Span;

/// Every run of digits in `at`, with its value; longer ones than any count are left out.
pub(super) fn numbers<'a>(
    text: &'a str,
    at: &Span,
) -> impl DoubleEndedIterator<Item = (Span, u32)> + 'a {
    let part = text.get(at.clone()).unwrap_or_default();
    let start = at.start;
    let mut runs: Vec<Span> = Vec::new();
    for (i, _) in part.bytes().enumerate().filter(|(_, b)| b.is_ascii_digit()) {
        match runs.last_mut() {
            Some(run) if run.end == i => run.end += 1,
            _ => runs.push(i..i + 1),
        }
    }
    runs.into_iter().filter_map(move |run| {
        let value = part[run.clone()].parse().ok()?;
        Some((start + run.start..start + run.end, value))
    })
}

/// The first number in `at`.
pub(super) fn first_number(text: &str, at: &Span) -> Option<u32> {
    numbers(text, at).next().map(|(_, value)| value)
}

/// Words in `at`, letters and digits, each with its place.
pub(super) fn words<'a>(text: &'a str, at: &Span) -> impl Iterator<Item = (Span, &'a str)> {
    let part = text.get(at.clone()).unwrap_or_default();
    let start = at.start;
    part.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty()).map(move |word| {
        let from = start + (word.as_ptr() as usize - part.as_ptr() as usize);
        (from..from + word.len(), word)
    })
}
