//! Several sizes of one piece: told together where they differ in numbers alone.

use super::steps::{RoundsLine, Step};

/// The steps of all sizes as one list, `24 (30, 36)` where their numbers differ; `None`
/// where they are worded differently anywhere.
pub(super) fn together(sizes: &[Vec<Step>]) -> Option<Vec<Step>> {
    let (first, others) = sizes.split_first()?;
    if others.iter().any(|other| other.len() != first.len()) {
        return None;
    }
    (0..first.len())
        .map(|i| {
            let of_all: Vec<&Step> = sizes.iter().map(|steps| &steps[i]).collect();
            step(&of_all)
        })
        .collect()
}

fn step(sizes: &[&Step]) -> Option<Step> {
    match sizes.first()? {
        Step::Rounds(first) => {
            let lines = sizes.iter().map(|step| match step {
                Step::Rounds(line) if line.yarn == first.yarn => Some(line),
                _ => None,
            });
            let lines: Vec<&RoundsLine> = lines.collect::<Option<_>>()?;
            let told = |of: fn(&RoundsLine) -> &str| {
                agreed(&lines.iter().map(|line| of(line)).collect::<Vec<_>>())
            };
            Some(Step::Rounds(RoundsLine {
                number: told(|l| &l.number)?,
                heading: told(|l| &l.heading)?,
                text: told(|l| &l.text)?,
                count: told(|l| &l.count)?,
                boxes: lines.iter().map(|l| l.boxes).max().unwrap_or(1),
                ..first.clone()
            }))
        }
        Step::Yarn(first) => {
            let same = |step: &&Step| matches!(step, Step::Yarn(yarn) if yarn == first);
            sizes.iter().all(same).then(|| Step::Yarn(first.clone()))
        }
        Step::Stuff(_) => {
            let texts = sizes.iter().map(|step| match step {
                Step::Stuff(text) => Some(text.as_str()),
                _ => None,
            });
            Some(Step::Stuff(agreed(&texts.collect::<Option<Vec<_>>>()?)?))
        }
        Step::Inside(_) => {
            let texts = sizes.iter().map(|step| match step {
                Step::Inside(text) => Some(text.as_str()),
                _ => None,
            });
            Some(Step::Inside(agreed(&texts.collect::<Option<Vec<_>>>()?)?))
        }
    }
}

/// One text for all, where they differ in numbers alone.
pub(super) fn agreed(texts: &[&str]) -> Option<String> {
    let parts: Vec<Vec<TextPart<'_>>> = texts.iter().map(|text| parts(text)).collect();
    let (first, others) = parts.split_first()?;
    let mut told = String::new();
    for (i, part) in first.iter().enumerate() {
        match part {
            TextPart::Words(words) => told.push_str(words),
            TextPart::Number(number) => {
                told.push_str(number);
                let rest = others.iter().map(|other| match other.get(i) {
                    Some(TextPart::Number(number)) => Some(*number),
                    _ => None,
                });
                let rest: Vec<&str> = rest.collect::<Option<_>>()?;
                if rest.iter().any(|n| n != number) {
                    told.push_str(&format!(" ({})", rest.join(", ")));
                }
            }
        }
    }
    let alike = |other: &Vec<TextPart<'_>>| {
        other.len() == first.len()
            && first.iter().zip(other).all(|pair| match pair {
                (TextPart::Words(a), TextPart::Words(b)) => a == b,
                (TextPart::Number(_), TextPart::Number(_)) => true,
                _ => false,
            })
    };
    others.iter().all(alike).then_some(told)
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum TextPart<'a> {
    Words(&'a str),
    /// A number, with decimals and as a range where it is one: `12–16`, `4.9–11`.
    Number(&'a str),
}

fn parts(text: &str) -> Vec<TextPart<'_>> {
    let mut parts = Vec::new();
    let mut rest = text;
    while !rest.is_empty() {
        let words = rest.find(|c: char| c.is_ascii_digit()).unwrap_or(rest.len());
        if words > 0 {
            parts.push(TextPart::Words(&rest[..words]));
            rest = &rest[words..];
            continue;
        }
        let mut end = figure(rest);
        for dash in ['–', '-'] {
            if let Some(after) = rest[end..].strip_prefix(dash)
                && after.starts_with(|c: char| c.is_ascii_digit())
            {
                end += dash.len_utf8() + figure(after);
            }
        }
        parts.push(TextPart::Number(&rest[..end]));
        rest = &rest[end..];
    }
    parts
}

/// Length of the figure that `text` begins with, decimals included, after a point or a comma.
fn figure(text: &str) -> usize {
    let digits = |s: &str| s.len() - s.trim_start_matches(|c: char| c.is_ascii_digit()).len();
    let whole = digits(text);
    match text[whole..].strip_prefix(['.', ',']) {
        Some(after) if digits(after) > 0 => whole + 1 + digits(after),
        _ => whole,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_stand_side_by_side_where_they_differ() {
        let told = |texts: &[&str]| agreed(texts);
        assert_eq!(
            told(&["(sc 2, inc) × 6", "(sc 3, inc) × 6"]).as_deref(),
            Some("(sc 2 (3), inc) × 6")
        );
        assert_eq!(told(&["7–9", "7–10", "7–12"]).as_deref(), Some("7–9 (7–10, 7–12)"));
        assert_eq!(
            told(&["About 4.9–11 g.", "About 6–14 g."]).as_deref(),
            Some("About 4.9–11 (6–14) g.")
        );
        assert_eq!(told(&["[24]", "[24]"]).as_deref(), Some("[24]"));
        assert_eq!(told(&["sc 3, inc", "inc, sc 3"]), None);
        assert_eq!(told(&["sc in each st", "inc × 6"]), None);
    }
}
