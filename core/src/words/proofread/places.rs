//! “Between rounds 7 and 8”, where a text says it of the neck, the lip or the widest place:
//! whether the counts have it there.

use super::context::ProofContext;
use super::finding::{Finding, FindingKind, Mend};
use super::text::words;
use crate::words::course::Course;
use crate::words::tree::{Line, Span};

/// A place the counts have.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum CountPlace {
    Neck,
    Lip,
    Widest,
}

impl CountPlace {
    fn words(self) -> &'static str {
        match self {
            Self::Neck => "neck",
            Self::Lip => "lip",
            Self::Widest => "widest place",
        }
    }
}

/// The words for a place, by how they begin. From memory, no source, but for the English.
const NAMES: [(&str, CountPlace); 14] = [
    ("neck", CountPlace::Neck),
    ("hals", CountPlace::Neck),
    ("cou", CountPlace::Neck),
    ("cuello", CountPlace::Neck),
    ("lip", CountPlace::Lip),
    ("rim", CountPlace::Lip),
    ("rand", CountPlace::Lip),
    ("bord", CountPlace::Lip),
    ("borde", CountPlace::Lip),
    ("widest", CountPlace::Widest),
    ("breiteste", CountPlace::Widest),
    ("breitesten", CountPlace::Widest),
    ("large", CountPlace::Widest),
    ("ancha", CountPlace::Widest),
];

/// “Between”.
const BETWEEN: [&str; 3] = ["between", "zwischen", "entre"];

pub(super) fn check(desk: &ProofContext<'_>, findings: &mut Vec<Finding>) {
    for line in &desk.reading.pattern.lines {
        if matches!(line.it, Line::Note { unread: false, .. } | Line::Do(_)) {
            findings.extend(of_line(desk, &line.at));
        }
    }
}

fn of_line(desk: &ProofContext<'_>, line: &Span) -> Option<Finding> {
    let words: Vec<(Span, &str)> = words(desk.text, line).collect();
    let said = words.iter().position(|(_, w)| BETWEEN.contains(&w.to_lowercase().as_str()))?;
    // “between rounds A and B”, with an article or not.
    let mut numbers = words[said..].iter().take(6).filter_map(|(at, w)| {
        let number: u32 = w.parse().ok()?;
        Some((at, number))
    });
    let ((from, a), (to, b)) = (numbers.next()?, numbers.next()?);
    let place = words.iter().find_map(|(_, w)| {
        let w = w.to_lowercase();
        NAMES.iter().find(|(name, _)| *name == w).map(|(_, place)| *place)
    })?;
    let course = course_of(desk, line)?;
    let counts = counts(course)?;
    let rounds = rounds_of(&counts, place);
    if rounds.is_empty() || rounds.contains(&a) || rounds.contains(&b) {
        return None;
    }
    let &near = rounds.iter().min_by_key(|&&r| (r.abs_diff(a), r))?;
    // The first of the two is kept on the side from which the text looked.
    let last = counts.last()?.0;
    let (first, second) = if near < last { (near, near + 1) } else { (near - 1, near) };
    let edit = desk.text.get(from.end..to.start).map(|and| format!("{first}{and}{second}"));
    let at = from.start..to.end;
    let name = place.words();
    Some(Finding {
        kind: FindingKind::Reference,
        round: None,
        message: format!("The {name} is not between rounds {a} and {b} by the counts."),
        mend: Some(Mend {
            text: format!("Say “between rounds {first} and {second}”."),
            edit: edit.map(|new| (at.clone(), new)),
        }),
        at,
    })
}

/// The piece a line speaks of: one that it names, else the one it stands in.
fn course_of<'a>(desk: &'a ProofContext<'_>, line: &Span) -> Option<&'a Course<'a>> {
    let text = desk.words(line).to_lowercase();
    let named = |c: &&Course<'_>| c.name.is_some_and(|n| text.contains(&n.to_lowercase()));
    let before = |c: &&Course<'_>| c.steps.first().is_some_and(|s| s.at.start < line.start);
    let standing = desk.courses.iter().rev().find(before);
    desk.courses.iter().find(named).or(standing).or(desk.courses.first())
}

/// Every round's printed number and stitches, if all are known.
fn counts(course: &Course<'_>) -> Option<Vec<(u32, u32)>> {
    let all = course.steps.iter().flat_map(|step| step.counted());
    all.map(|(round, count)| Some((round, count?))).collect()
}

/// The rounds that are at a place.
fn rounds_of(counts: &[(u32, u32)], place: CountPlace) -> Vec<u32> {
    let runs: Vec<&[(u32, u32)]> = counts.chunk_by(|a, b| a.1 == b.1).collect();
    let stitches = |i: usize| runs[i][0].1;
    let widest = counts.iter().map(|c| c.1).max().unwrap_or(0);
    let neck = |i: usize| {
        i > 0
            && i + 1 < runs.len()
            && stitches(i - 1) > stitches(i)
            && stitches(i + 1) > stitches(i)
    };
    let last_neck = (0..runs.len()).rev().find(|&i| neck(i));
    let lip = |i: usize| match last_neck {
        Some(at) => {
            i > at
                && (i + 1 == runs.len() || stitches(i + 1) < stitches(i))
                && stitches(i - 1) < stitches(i)
        }
        None => i + 1 == runs.len(),
    };
    let at = (0..runs.len()).filter(|&i| match place {
        CountPlace::Neck => neck(i),
        CountPlace::Lip => lip(i),
        CountPlace::Widest => stitches(i) == widest,
    });
    at.flat_map(|i| runs[i].iter().map(|c| c.0)).collect()
}
